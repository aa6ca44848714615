// PLN  The plan is a draft, superseded, withdrawn, or past its review date and grace days (local days, last one included); for a
//      school, its orders have expired. Then: no dose, call the team if high or ketones act.
// Source: common practice, an order ends with its date. Edges: the last grace day still works, with the caution inGrace.
#include "rules/rules.hpp"

namespace stopgap::rules {

bool holds_PLN(const Facts& facts) { return !facts.plan_usable; }

void say_PLN(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::noPlan;
  proposal.call_by_row(facts);
  if (facts.high || facts.acting) proposal.advice.raise_call(Call::team);
  if (facts.not_tested) proposal.step(Step::testKetones);
}

}  // namespace stopgap::rules
