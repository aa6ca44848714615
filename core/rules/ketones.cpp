// DWN  A needle dose in the incident, ketones act but fell, and glucose is not high. Then: do not stop insulin; carbohydrate
//      with its insulin as a meal part by needle if the repeat span has passed and glucose allows it, else carbohydrate alone.
// KET  Ketones act and glucose is in the middle or above. Then: needle, never the pump; change set and reservoir, insulin if in
//      doubt; automation off, off-body besides if tubed; drink.
// EAT  Ketones act and glucose is below the middle. Then: under the carbohydrate-only level, or where the cell is none, eat;
//      else the dose with carbohydrate to match.
// Source: never the pump, then reservoir, line and cannula R-11 [rch-line] [alder-hey] [chop-home]; repeat the injection, not
// the change R-13 [rch-line] [uclh-hcl]; carbohydrate with insulin R-15 [chkd]; table rows from the plan (sources: ISPAD cells
// from memory, [se-ketones] read). Edges: the middle exactly is KET; an edge of a row falls in the upper, worse row.
#include "rules/carbohydrate.hpp"
#include "rules/gate.hpp"
#include "rules/rules.hpp"
#include "rules/squaring.hpp"

namespace stopgap::rules {

bool holds_DWN(const Facts& facts) { return facts.needle_doses_in_incident > 0 && facts.acting && facts.fell && !facts.high; }

void say_DWN(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.outcome = Outcome::comingDown;
  proposal.call_by_row(facts);
  if (const Gate gate = gate_for_meal(facts); gate != Gate::open) {
    say_closed(facts, proposal, {gate, false, std::nullopt}, false);
    return;
  }
  const Carbohydrate grams = facts.plan.ketones.carbohydrate;
  proposal.give(grams + matched(facts, Insulin{}, false));
  const bool span_passed = facts.since(facts.last_needle) >= facts.repeat_span();
  if (!span_passed || facts.below(facts.plan.ketones.carbohydrate_only_below) || facts.vomits) return;
  const Dose meal = meal_alone(facts, grams);
  if (!meal.meal.is_zero()) advice.dose = meal;
}

bool holds_KET(const Facts& facts) { return facts.acting && facts.at_or_above(facts.plan.high.middle); }

void say_KET(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.outcome = Outcome::inject;
  proposal.call_by_row(facts);
  change_set_and_reservoir(facts, proposal);
  if (!offer_by_needle(facts, proposal, Basis::table, true)) {
    advice.outcome = Outcome::callTeam;
    advice.raise_call(Call::team);
    advice.cautions.add(Caution::underStep);
    return;
  }
  if (!advice.dose || advice.dose->rescue.is_zero()) return;
  square(facts, proposal);
  if (!facts.high) proposal.give(matched(facts, advice.dose->rescue, false));
}

bool holds_EAT(const Facts& facts) { return facts.acting; }

void say_EAT(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  proposal.call_by_row(facts);
  const auto eat = [&] {
    advice.outcome = Outcome::eat;
    proposal.give(greater(facts.plan.ketones.carbohydrate, matched(facts, Insulin{}, true)));
  };
  if (facts.below(facts.plan.ketones.carbohydrate_only_below) || table_cell(facts).kind == Cell::Kind::none) {
    eat();
    return;
  }
  advice.outcome = Outcome::eatAndInject;
  if (!offer_by_needle(facts, proposal, Basis::table, true)) {
    eat();
    advice.raise_call(Call::team);
    advice.cautions.add(Caution::underStep);
    return;
  }
  if (!advice.dose || advice.dose->rescue.is_zero()) return;
  square(facts, proposal);
  proposal.give(matched(facts, advice.dose->rescue, true));
}

}  // namespace stopgap::rules
