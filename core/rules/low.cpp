// LWE  A grave sign (severe, vomiting again, a fit, cannot swallow) with LO, with glucose at or below the low level, or under
//      the middle and going low; a fit or no swallowing at or below the carbohydrate-only level; a fit, no swallowing, drowsy
//      or confused with no reading at all, unless ketones are 3.0 and above. Then: emergency call, never insulin, stop the pump,
//      glucagon if the plan has it and they may not swallow safely, sugar only if awake and swallowing, look at 15 min.
// LOW  Glucose at or below the low level, or LO. Then: the plan's grams or what acts, no insulin.
// FAL  A number under the trigger (a converted one takes the lower side) that would go low; under the middle with ketones not
//      acting every pump dose is treated as absorbed. Then: eat now, no insulin.
// Source: level 1 low at or below 3.9 mmol/L [hypo-2017] [hypo-2023]; 15 g and a look at 15 min R-16 [au-pump] [chop-path];
// matched carbohydrate is a house rule. Edges: exactly at the level is low; half a display step for a converted number.
#include "rules/carbohydrate.hpp"
#include "rules/rules.hpp"

namespace stopgap::rules {
namespace {

bool may_not_swallow_safely(const Facts& facts) {
  const SetOf<Sign> signs = facts.situation.signs;
  return facts.cannot_swallow || signs.has(Sign::drowsy) || signs.has(Sign::confused);
}

bool falls_with_every_dose(const Facts& facts) { return !facts.at_or_above(facts.plan.high.middle) && !facts.acting; }

}  // namespace

bool holds_LWE(const Facts& facts) {
  const SetOf<Sign> signs = facts.situation.signs;
  const bool grave = facts.severe || signs.has(Sign::vomitedAgain) || facts.cannot_swallow;
  const bool going_low = facts.level == Level::number && !facts.at_or_above(facts.plan.high.middle) && facts.would_go_low;
  if (grave && (facts.is_low() || going_low)) return true;
  if (facts.cannot_swallow && facts.at_or_below(facts.plan.ketones.carbohydrate_only_below)) return true;
  return may_not_swallow_safely(facts) && facts.level == Level::missing && !facts.help_now;
}

void say_LWE(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::lowEmergency;
  proposal.advice.raise_call(Call::emergency);
  proposal.step(Step::tellThem);
  proposal.step(Step::stopPump);
  // With somebody drowsy or confused both stand: the words of each say when it is the right one.
  if (!facts.plan.low.glucagon.empty() && may_not_swallow_safely(facts)) proposal.step(Step::glucagon);
  if (!facts.cannot_swallow) proposal.give(for_a_low(facts));
  proposal.step(Step::retest);
  proposal.look_in(facts, figures::look_low.value, true, false);
}

bool holds_LOW(const Facts& facts) { return facts.is_low(); }

void say_LOW(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::treatLow;
  proposal.call_by_row(facts);
  proposal.give(for_a_low(facts));
  proposal.step(Step::retest);
  proposal.look_in(facts, facts.plan.low.recheck, true, facts.acting);
}

bool holds_FAL(const Facts& facts) {
  if (facts.level != Level::number || !facts.below(facts.plan.high.trigger)) return false;
  return facts.would_go_low || (falls_with_every_dose(facts) && facts.would_go_low_absorbed);
}

void say_FAL(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::eatNow;
  proposal.call_by_row(facts);
  if (facts.acting) proposal.advice.raise_call(Call::team);
  proposal.give(greater(facts.plan.low.grams, matched(facts, Insulin{}, falls_with_every_dose(facts))));
  proposal.step(Step::retest);
  const bool from_the_middle = facts.at_or_above(facts.plan.high.middle);
  proposal.look_in(facts, from_the_middle ? figures::look_going_low.value : figures::look_low.value, true, facts.acting);
}

}  // namespace stopgap::rules
