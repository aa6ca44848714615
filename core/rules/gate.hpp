// The gate on every correction or ketone dose. There is no way past it.
//   REC  the record could not be read whole: what was injected is not known.
//   CLK  a recorded event or a reading lies in the future, or the clock stands long before a day that is past: it is in doubt.
//   ASK  a dose was shown and nobody said whether it was injected.
//   HLD  the last needle dose is still at work, or too much was given within the hours of action (house rule "rollingShare").
// Two clocks open it: the correction clock (lockHours since the last needle dose) for a whole dose, and for ketones that do
// not fall the ketone clock (repeatHours of the row) for the extra alone. Sources: 2 h while ketones do not fall [chop-path]
// [clinidiabet]; 3 h between rapid doses [uva].
#pragma once
#include "rules/dose.hpp"
#include "rules/proposal.hpp"

namespace stopgap::rules {

struct Opening {
  Gate gate = Gate::open;
  bool extra_alone = false;            // open by the ketone clock only
  std::optional<Instant> opens;        // with HLD
};

// For rules that dose by needle. With `ketone_clock` the rule may use it (ANY, KET, EAT).
Opening gate_for_needle(const Facts& facts, Basis basis, bool ketone_clock);
// For one correction by the pump: a meal part by needle closes it as well, and so does a struck correction within its lock.
Opening gate_for_pump(const Facts& facts);
// REC, CLK and ASK alone, which even a meal part may not pass.
Gate gate_for_meal(const Facts& facts);

// When enough rescue insulin has left the hours of action for this dose to fit under the rolling cap; nothing if it fits now.
std::optional<Instant> rolling_cap_opens(const Facts& facts, Insulin dose);

// Puts a dose into the proposal if the gate is open; else the outcome that the gate prescribes. Returns false when the dose
// is under one step: the rule then says what happens instead.
bool offer_by_needle(const Facts& facts, Proposal& proposal, Basis basis, bool ketone_clock);
// A closed gate's outcome, steps and looks.
void say_closed(const Facts& facts, Proposal& proposal, const Opening& opening, bool with_meal);

}  // namespace stopgap::rules
