// The bridge: rapid insulin for the basal of the coming hours, with carbohydrate and net correction, each part shown.
//   sum   = basal (and what rounding left of the last bridge) + carbohydrate / ratio + net correction; rounded once, to the step
//   parts = correction and meal as worked out, the basal what is left: the loss of rounding falls on the basal, and is carried
//           into the next bridge, so that a day of bridges is a day's basal
// Source: R-25 [montreal] [rch-malf]; CV-20, CV-21, CV-24. A running hold blocks the correction part only.
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"
#include "rules/facts.hpp"

namespace stopgap::without_pump {

// The hours a bridge given now is for: from where the last one ends, to where long-acting insulin takes over.
struct Hours {
  Instant from, to;
  bool due = false;
};
Hours hours_of(const Plan& plan, const Outage& outage, Instant now, bool long_acting_now);

Bridge bridge_of(const rules::Facts& facts, const Outage& outage, const Hours& hours, bool correction_waits);

// From when on no basal was there, if that is long enough to say so.
std::optional<Missed> missed_of(const Outage& outage, Instant now);

// Whether the pump is back before anybody should be without insulin for longer, if nothing stands for its basal from `from` on.
// Its basal is given by nobody then: given before a stop of two hours it led to lows, and after the restart it did not (R-24
// [scheen-1987]). Those were well: who is ill, is high or has ketones does not wait.
bool is_missed_rather(const rules::Facts& facts, const OffPumpQuestion& question, Instant from);
// The same of what has gone in until now.
bool is_back_soon(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question);
// No injection before the longest time without insulin is over.
Hours hours_while_back_soon(const Outage& outage, Instant now);

}  // namespace stopgap::without_pump
