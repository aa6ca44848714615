#include "off_pump/first.hpp"

#include <algorithm>
#include <unordered_set>
#include "figures/off_pump.hpp"
#include "known.hpp"
#include "off_pump/given_bridges.hpp"
#include "off_pump/orders.hpp"

namespace stopgap::without_pump {
namespace {

// Basal passes the gate and waits for no test but a missing reading; a low, an emergency and a ketone dose that is due wait for nobody.
Waits waits_for(const Advice& advice, const rules::Facts& facts) {
  const bool dose = advice.dose.has_value();
  switch (advice.outcome) {
    case Outcome::lowEmergency:
    case Outcome::emergency:
    case Outcome::treatLow:
    case Outcome::eatNow:
    case Outcome::noPlan:
    case Outcome::recordInDoubt:
    case Outcome::clockInDoubt:
    case Outcome::didYouInject:
    case Outcome::injectAtAnyGlucose:
    case Outcome::eatAndInject: return Waits::everything;
    // A plain correction is the bridge's own part; what ketones or HI ask for is given by itself.
    case Outcome::inject: return advice.decided_by == Rule::INJ && dose && advice.dose->working.chosen == Chosen::net ? Waits::nothing : Waits::everything;
    case Outcome::tooMuch: return Waits::rapid;
    case Outcome::testGlucose: return facts.level == rules::Level::missing ? Waits::rapid : Waits::correction;
    // Its meal part goes into the same injection as basal.
    case Outcome::comingDown:
    case Outcome::testKetones:
    case Outcome::callTeam:
    case Outcome::eat: return Waits::correction;
    default: return Waits::nothing;
  }
}

// Any dose shown that nobody answered for: long-acting, basal, a meal. What was injected later of the same kind answers it as well.
const Event* unanswered_dose(const Plan& plan, const History& history, Instant now) {
  std::unordered_set<std::string_view> answered;
  std::optional<Instant> last_long, last_basal, last_meal;
  const auto holds_meal = [](const Event& event) {
    return event.insulin == InsulinType::rapid && event.parts && !event.parts->meal.is_zero();
  };
  for (const auto& [event, struck] : history.entries()) {
    const bool injected = event->kind == EventKind::injection;
    if ((injected || event->kind == EventKind::doseRefused) && !event->refers_to.empty()) answered.insert(event->refers_to);
    if (!injected) continue;
    if (event->insulin == InsulinType::long_acting) last_long = event->at.instant;
    if (holds_basal(*event)) last_basal = event->at.instant;
    if (holds_meal(*event)) last_meal = event->at.instant;
  }
  const Event* waiting = nullptr;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind != EventKind::doseShown || answered.contains(event->id)) continue;
    const bool is_long = event->insulin == InsulinType::long_acting;
    if (!is_long && !holds_basal(*event) && !holds_meal(*event)) continue;   // a correction alone is the way down's own question
    const Duration matters = is_long ? (plan.long_acting ? plan.long_acting->action : figures::long_acting_day.value)
                                     : std::max(plan.off_pump.bridge, plan.rapid.action);  // as long as it may still act
    const auto& last = is_long ? last_long : holds_basal(*event) ? last_basal : last_meal;
    if (now - event->at.instant <= matters && !(last && *last > event->at.instant)) waiting = event;
  }
  return waiting;
}

}  // namespace

Situation situation_of(const History& history, const OffPumpQuestion& question) {
  Situation situation = known_at(history, question.now);
  if (question.glucose) situation.glucose = question.glucose;
  situation.carbs = question.carbs;
  situation.with = question.with;
  situation.not_before = question.not_before;
  situation.record_in_doubt = question.record_in_doubt;
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::sign && question.now.instant - event->at.instant <= figures::signs_last.value)
      for (int sign = 0; sign <= static_cast<int>(Sign::cannotSwallow); ++sign)
        if (event->signs.has(static_cast<Sign>(sign))) situation.signs.add(static_cast<Sign>(sign));
  return situation;
}

Record with_pump_off(Record seen, const Moment& now) {
  Event off;
  off.at = now;
  off.kind = EventKind::pump;
  const auto later = [](const Instant& at, const Event& event) { return at < event.at.instant; };
  seen.events.insert(std::upper_bound(seen.events.begin(), seen.events.end(), now.instant, later), off);
  return seen;
}

std::optional<ComesFirst> comes_first(const Advice& advice, const rules::Facts& facts) {
  const Waits waits = waits_for(advice, facts);
  if (waits == Waits::nothing) return std::nullopt;
  ComesFirst first;
  first.outcome = advice.outcome;
  first.decided_by = advice.decided_by;
  first.call = advice.call;
  first.waits = waits;
  if (advice.dose) first.dose = advice.dose->total();
  first.carbohydrate = advice.carbohydrate;
  return first;
}

std::optional<ComesFirst> nothing_passes(const rules::Facts& facts) {
  ComesFirst first;
  first.waits = Waits::everything;
  const Event* waiting = facts.unanswered_dose ? facts.unanswered_dose : unanswered_dose(facts.plan, facts.history, facts.now);
  if (facts.situation.record_in_doubt) {
    first.outcome = Outcome::recordInDoubt;
    first.call = Call::team;
  } else if (facts.clock_in_doubt) {
    first.call = Call::team;
    first.outcome = Outcome::clockInDoubt;
  } else if (waiting) {
    first.outcome = Outcome::didYouInject;
    const Event* order = waiting->insulin == InsulinType::long_acting ? order_at(facts.history, waiting->at.instant, InsulinType::long_acting) : nullptr;
    first.shown = ComesFirst::Shown{waiting->id, *waiting->units, waiting->insulin, waiting->at.instant, order ? order->id : std::string{}};
  } else {
    return std::nullopt;
  }
  return first;
}

}  // namespace stopgap::without_pump
