// INJ  High, and: HI, the pump's correction failed, the pump failed, a fault is seen, or there are no strips and no pump
//      correction in the last firstLook minutes. Then: net by needle (for HI the plan's HI dose), change the set, square; pump
//      off or dead: bridge. Under one step: change the set, no dose.
// OFF  The pump is off or dead. Then: the off-pump plan.
// CHG  A fault is seen. Then: change what failed now, no dose.
// Source: first the pump, then the pen [rch-high] [oxford-pump] [uclh-pump]; "enough" is 50 mg/dL in an hour [us-pump]; HI by
// share of the daily dose R-21 [tayside]; a new set is unproven R-14 [rch-line]. Edges: firstLook exactly is judged.
#include "rules/gate.hpp"
#include "rules/rules.hpp"
#include "rules/squaring.hpp"

namespace stopgap::rules {

bool holds_INJ(const Facts& facts) {
  if (!facts.high) return false;
  const bool pump_tried = facts.pump_correction && facts.since(facts.pump_correction) <= facts.plan.high.first_look;
  return facts.level == Level::HI || facts.correction_failed != CorrectionFailure::no || facts.pump_failed || facts.fault_seen() ||
         (facts.no_strips && !pump_tried);
}

void say_INJ(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.outcome = Outcome::inject;
  if (!offer_by_needle(facts, proposal, facts.level == Level::HI ? Basis::hi : Basis::netOnly, false)) {
    advice.outcome = Outcome::changeSet;
    advice.cautions.add(Caution::underStep);
  } else if (advice.dose && !advice.dose->rescue.is_zero()) {
    square(facts, proposal);
  }
  // A new set is not changed again while the gate waits; with a dose, or one too small to draw, it always is.
  const bool waits_with_a_new_set = advice.gate != Gate::open && facts.set_changed && is_recent_change(facts, *facts.set_changed);
  if (!waits_with_a_new_set) proposal.step(Step::changeSet);
  if (facts.no_strips) proposal.look_in(facts, figures::look_usual.value);
}

bool holds_OFF(const Facts& facts) { return facts.off_or_dead; }

void say_OFF(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::offPump;
  if (facts.plan.long_acting) proposal.step(Step::longActing);
}

bool holds_CHG(const Facts& facts) { return facts.fault_seen(); }

void say_CHG(const Facts&, Proposal& proposal) { proposal.advice.outcome = Outcome::changeSet; }

}  // namespace stopgap::rules
