// ANY  Pregnant or taking an SGLT2 inhibitor, and ketones act: glucose does not guide. Then: call the team at once, stop the
//      SGLT2 inhibitor; under the carbohydrate-only level eat, else the plan's dose for any glucose by needle.
// Source: R-07 [fi-ketones] [wtd], R-08 [tg] [dapa-2024], hourly carbohydrate with its insulin [danne-2019].
// Edges: exactly at the carbohydrate-only level is not under it; a converted number takes the lower side.
#include "rules/carbohydrate.hpp"
#include "rules/gate.hpp"
#include "rules/rules.hpp"
#include "rules/squaring.hpp"

namespace stopgap::rules {

bool holds_ANY(const Facts& facts) { return (facts.pregnant || facts.sglt2_inhibitor) && facts.acting; }

void say_ANY(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.raise_call(Call::team);
  proposal.call_by_row(facts);
  if (facts.sglt2_inhibitor) proposal.step(Step::stopSglt2);

  const auto eat = [&] {
    advice.outcome = Outcome::eat;
    proposal.give(greater(facts.plan.ketones.carbohydrate, matched(facts, Insulin{}, true)));
  };
  if (facts.below(facts.plan.ketones.carbohydrate_only_below)) {
    eat();
    return;
  }
  advice.outcome = Outcome::injectAtAnyGlucose;
  if (facts.at_or_above(facts.plan.high.middle)) change_set_and_reservoir(facts, proposal);
  // The cell for HI counts here as in the table: a meter's word must not give less than it gives anybody else.
  if (!offer_by_needle(facts, proposal, Basis::anyGlucose, true)) {
    advice.cautions.add(Caution::underStep);
    if (facts.high) advice.outcome = Outcome::callTeam;
    else eat();
    return;
  }
  if (!advice.dose || advice.dose->rescue.is_zero()) return;
  square(facts, proposal);
  if (!facts.high) proposal.give(matched(facts, advice.dose->rescue, false));
}

}  // namespace stopgap::rules
