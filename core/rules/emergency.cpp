// EMR  Blood ketones of 3.0 and above or HI (also the last ones while not tested again), a strip that says large; a severe
//      sign, a fit, cannot swallow; vomiting again or belly pain with ketones acting or unknown, or high; vomited once with
//      ketones acting. Then: go now, call emergency, say what it is. The plan's dose on the way, never instead of going: plan
//      usable, finger, high (HI only if repeated), row known and acting, TOO does not hold, correction clock open.
// Source: 3.0 hospital [rch-ketones] [rch-line], call now [oxford-pump]; signs R-02 to R-04 [rch-line] [triage].
// Edges: 3.0 exactly is 3.0 and above; 2.9 is not.
#include "rules/carbohydrate.hpp"
#include "rules/gate.hpp"
#include "rules/rules.hpp"
#include "rules/squaring.hpp"

namespace stopgap::rules {

bool holds_EMR(const Facts& facts) {
  const SetOf<Sign> signs = facts.situation.signs;
  if (facts.help_now || facts.severe || facts.cannot_swallow) return true;
  const bool pain_or_vomiting = signs.has(Sign::vomitedAgain) || signs.has(Sign::bellyPain);
  if (pain_or_vomiting && (facts.acting || facts.unknown || facts.high)) return true;
  return signs.has(Sign::vomitedOnce) && facts.acting;
}

void say_EMR(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.outcome = Outcome::emergency;
  advice.raise_call(Call::emergency);
  proposal.step(Step::tellThem);

  const bool may_dose = facts.plan_usable && facts.finger && facts.high && (facts.level != Level::HI || facts.repeated) && facts.row &&
                        facts.acting && !facts.too_much();
  if (may_dose) {
    const Opening opening = gate_for_needle(facts, Basis::table, false);
    advice.gate = opening.gate;
    if (opening.gate == Gate::HLD) advice.hold_until = opening.opens;
    if (opening.gate == Gate::open) {
      const Working working = rescue_working(facts, Basis::table, false, facts.counted);
      if (is_under_one_step(facts, working)) {
        advice.cautions.add(Caution::underStep);
      } else {
        advice.dose = dose_of(facts, Basis::table, false, working, Carbohydrate{});
        for (const Duration span : facts.plan.high.looks_after_injection) proposal.look_in(facts, span);
        if (facts.plan.automation != Automation::none && !facts.off_or_dead) proposal.step(Step::automationOff);
      }
    }
  }

  const Insulin rescue = advice.dose ? advice.dose->rescue : Insulin{};
  if (facts.is_low() && !facts.cannot_swallow) proposal.give(for_a_low(facts));
  if (facts.would_go_low || facts.too_much()) {
    if (!facts.keeps_nothing_down) proposal.give(matched(facts, rescue, facts.too_much()));
    look_every_quarter(facts, proposal);
  }
}

void look_every_quarter(const Facts& facts, Proposal& proposal) {
  const Duration quarter = figures::look_low.value;
  for (Duration after = quarter; after <= figures::look_usual.value; after = after + quarter) proposal.look_in(facts, after);
}

}  // namespace stopgap::rules
