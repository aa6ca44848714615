#include "rules/gate.hpp"

#include <algorithm>
#include "figures/timing.hpp"
#include "rules/carbohydrate.hpp"

namespace stopgap::rules {
namespace {

// Set and reservoir were changed since suspicion, or shortly before the last needle dose.
bool changed(const Facts& facts, Changed what, const std::optional<Instant>& since_suspicion) {
  if (since_suspicion) return true;
  const Instant dose = facts.last_needle->at.instant;
  return std::any_of(facts.history.entries().begin(), facts.history.entries().end(), [&](const History::Entry& entry) {
    const Instant at = entry.event->at.instant;
    return entry.event->kind == EventKind::changed && entry.event->changed.has(what) && at <= dose &&
           dose - at <= figures::change_before_dose.value;
  });
}

// All that the ketone clock asks for except the time.
bool ketone_clock_may_open(const Facts& facts, Basis basis) {
  const bool high_enough = basis == Basis::anyGlucose ? facts.level != Level::missing && !facts.below(facts.plan.ketones.carbohydrate_only_below)
                                                      : facts.high;
  // The injection is repeated, not the change; a pump that is off has nothing to change.
  const bool line_is_new = facts.off_or_dead || (changed(facts, Changed::set, facts.set_changed) &&
                                                 changed(facts, Changed::reservoir, facts.reservoir_changed));
  return facts.blood && facts.acting && !facts.fell && facts.finger && facts.level == Level::number && high_enough && line_is_new &&
         facts.needle_doses_toward_call < facts.plan.limits.doses_before_call;
}

// Meals pass a hold: what will be eaten needs its insulin. Not while vomiting, and only carbohydrate the person will eat.
Carbohydrate meal_carbs(const Facts& facts) {
  return facts.vomits ? Carbohydrate{} : facts.situation.carbs.value_or(Carbohydrate{});
}

}  // namespace

std::optional<Instant> rolling_cap_opens(const Facts& facts, Insulin dose) {
  const Insulin cap = facts.plan.limits.rolling_share * facts.plan.daily_total;
  const Duration action = facts.plan.rapid.action;
  Insulin given;
  std::vector<const Event*> doses;
  for (const auto& [event, struck] : facts.history.entries())
    if (event->kind == EventKind::injection && event->insulin == InsulinType::rapid && facts.since(event) <= action) {
      given = given + event->rescue();
      doses.push_back(event);
    }
  if (given + dose <= cap) return std::nullopt;
  Instant opens = facts.now;
  for (const Event* event : doses) {
    if (given + dose <= cap) break;
    given = given - event->rescue();
    opens = event->at.instant + action + Duration::seconds(1);  // the last moment still counts
  }
  return opens;
}

Gate gate_for_meal(const Facts& facts) {
  if (facts.situation.record_in_doubt) return Gate::REC;
  if (facts.clock_in_doubt) return Gate::CLK;
  return facts.unanswered_dose ? Gate::ASK : Gate::open;
}

Opening gate_for_needle(const Facts& facts, Basis basis, bool ketone_clock) {
  Opening opening;
  opening.gate = gate_for_meal(facts);
  if (opening.gate != Gate::open) return opening;
  // Ketones are not dosed again before their row allows it, even where that is longer than the lock.
  const Duration closed = ketone_clock ? std::max(facts.plan.limits.lock, facts.repeat_span()) : facts.plan.limits.lock;
  if (facts.last_needle && facts.since(facts.last_needle) < closed) {
    const Instant last = facts.last_needle->at.instant;
    opening.gate = Gate::HLD;
    opening.opens = last + closed;
    if (ketone_clock && ketone_clock_may_open(facts, basis)) {
      if (facts.since(facts.last_needle) >= facts.repeat_span()) {
        opening = {Gate::open, true, std::nullopt};
      } else {
        opening.opens = std::min(*opening.opens, last + facts.repeat_span());
      }
    }
    if (opening.gate != Gate::open) return opening;
  }
  const Working working = rescue_working(facts, basis, opening.extra_alone, facts.counted);
  if (const auto opens = rolling_cap_opens(facts, rounded_rescue(facts, working))) {
    opening.gate = Gate::HLD;
    opening.opens = opens;
  }
  return opening;
}

Opening gate_for_pump(const Facts& facts) {
  Opening opening;
  opening.gate = gate_for_meal(facts);
  if (opening.gate != Gate::open) return opening;
  const auto bar = [&](const std::optional<Instant>& given) {
    if (!given || facts.now - *given >= facts.plan.limits.lock) return;
    opening.gate = Gate::HLD;
    const Instant end = *given + facts.plan.limits.lock;
    if (!opening.opens || *opening.opens < end) opening.opens = end;
  };
  bar(facts.last_rapid_injection);
  bar(facts.last_pump_correction);  // a tap that strikes one must not open a second
  return opening;
}

void say_closed(const Facts& facts, Proposal& proposal, const Opening& opening, bool with_meal) {
  Advice& advice = proposal.advice;
  advice.gate = opening.gate;
  advice.dose.reset();
  advice.carbohydrate = Carbohydrate{};
  if (opening.gate != Gate::HLD) {
    advice.outcome = opening.gate == Gate::REC   ? Outcome::recordInDoubt
                     : opening.gate == Gate::CLK ? Outcome::clockInDoubt
                                                 : Outcome::didYouInject;
    if (opening.gate != Gate::ASK) advice.raise_call(Call::team);
    return;
  }
  advice.outcome = Outcome::hold;
  advice.hold_until = opening.opens;
  advice.hold_is_ketone_dose = opening.extra_alone;
  proposal.call_by_row(facts);
  // The end of a hold is told as a full minute, and nobody is called to look before it.
  proposal.look(std::min(next_full_minute(*opening.opens), facts.now + figures::look_usual.value));
  if (!facts.high && facts.would_go_low) proposal.give(matched(facts, Insulin{}, false));
  if (with_meal) {
    const Dose meal = meal_alone(facts, meal_carbs(facts));
    if (!meal.meal.is_zero()) advice.dose = meal;
  }
}

bool offer_by_needle(const Facts& facts, Proposal& proposal, Basis basis, bool ketone_clock) {
  const Opening opening = gate_for_needle(facts, basis, ketone_clock);
  if (opening.gate != Gate::open) {
    say_closed(facts, proposal, opening, true);
    return true;
  }
  const Working working = rescue_working(facts, basis, opening.extra_alone, facts.counted);
  if (is_under_one_step(facts, working)) return false;
  proposal.advice.dose = dose_of(facts, basis, opening.extra_alone, working, meal_carbs(facts));
  for (const Duration span : facts.plan.high.looks_after_injection) proposal.look_in(facts, span);
  return true;
}

}  // namespace stopgap::rules
