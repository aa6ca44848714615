// WAI  High, and a pump correction less than the lock ago that has not failed. Then: wait; look at firstLook, at secondLook
//      after it, then every hour, the last one at the end of the lock.
// PMP  High and nothing of the above. Then: one correction by the pump, a look at firstLook, no second one before the lock;
//      within the lock of a needle dose, a meal part included: hold.
// Source: by pump first [rch-high] [oxford-pump] [uclh-pump]; wait 1 h [uclh-pump] [us-pump], 2 h [rch-high] [yale].
// Edges: the lock exactly is over.
#include "rules/gate.hpp"
#include "rules/rules.hpp"

namespace stopgap::rules {

bool holds_WAI(const Facts& facts) {
  return facts.high && facts.pump_correction && facts.since(facts.pump_correction) < facts.plan.limits.lock &&
         facts.correction_failed == CorrectionFailure::no;
}

void say_WAI(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::wait;
  proposal.step(Step::wait);
  const Instant given = facts.pump_correction->at.instant, end = given + facts.plan.limits.lock;
  proposal.advice.second_pump_correction = end;
  const Duration hour = figures::look_usual.value;
  if (const Instant first = given + facts.plan.high.first_look; first > facts.now && first < end) proposal.look(first);
  for (Instant look = given + facts.plan.high.second_look; look < end; look = look + hour)
    if (look > facts.now) proposal.look(look);
  proposal.look(next_full_minute(end));
}

bool holds_PMP(const Facts& facts) { return facts.high; }

void say_PMP(const Facts& facts, Proposal& proposal) {
  if (const Opening opening = gate_for_pump(facts); opening.gate != Gate::open) {
    say_closed(facts, proposal, opening, false);
    return;
  }
  proposal.advice.outcome = Outcome::correctByPump;
  proposal.step(Step::pumpCorrection);
  proposal.advice.second_pump_correction = facts.now + facts.plan.limits.lock;
  proposal.look_in(facts, facts.plan.high.first_look);
}

}  // namespace stopgap::rules
