// TOO  A mistake with rapid-acting insulin, now or within the hours of action; off-body deliveries of a syringe step or more
//      that went into the body (or may have, and glucose could go low); pump corrections of a syringe step or more on top of a
//      needle dose within its lock, and glucose could go low. Whether it could is judged on the reading of now alone: where it no
//      longer can with every dose absorbed, the pump's doses did not arrive. Small deliveries add up. Then: call the team (emergency if the units
//      are not known, a severe sign is there, or the carbohydrate is over 100 g), no rapid-acting insulin until the hours of
//      action after the last of it, carbohydrate against it, automation off, a look every quarter of an hour, later every hour.
//      A later high is not corrected meanwhile.
// Source: house rule on carbohydrate; R-12 [rch-line] for what an unsquared pump does. Edges: a step exactly counts.
#include "figures/carbohydrate.hpp"
#include "rules/carbohydrate.hpp"
#include "rules/rules.hpp"

namespace stopgap::rules {

bool holds_TOO(const Facts& facts) { return facts.too_much(); }

void say_TOO(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.outcome = Outcome::tooMuch;
  advice.raise_call(Call::team);
  proposal.call_by_row(facts);
  const bool over = matched_in_full(facts, Insulin{}, true) > figures::carbohydrate_emergency.value;
  if (facts.mistake_units_unknown || facts.severe || over) advice.raise_call(Call::emergency);

  proposal.give(matched(facts, Insulin{}, true));
  if (!facts.high) proposal.give(facts.plan.low.grams);
  if (facts.is_low()) proposal.give(for_a_low(facts));
  proposal.step(Step::retest);
  if (facts.plan.automation != Automation::none && !facts.off_or_dead) proposal.step(Step::automationOff);

  look_every_quarter(facts, proposal);
  const Duration hour = figures::look_usual.value;
  for (Duration after = hour + hour; after <= facts.plan.rapid.action; after = after + hour) proposal.look_in(facts, after);
}

}  // namespace stopgap::rules
