#include "replay.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/timing.hpp"
#include "known.hpp"
#include "rules/facts.hpp"

namespace stopgap {
namespace {

bool is_insulin(const Event& event) {
  return event.kind == EventKind::injection || event.kind == EventKind::pumpDose || event.kind == EventKind::offBody ||
         event.kind == EventKind::doseShown;
}

bool is_reading(const Event& event) { return event.kind == EventKind::glucose || event.kind == EventKind::ketones; }

LedTo told(const Advice& advice) {
  LedTo led_to{advice.outcome, advice.decided_by, advice.gate, advice.call, std::nullopt, advice.carbohydrate};
  if (advice.dose) led_to.dose = advice.dose->total();
  return led_to;
}

// Danger signs were said just before the readings; the record does not say when they ended.
void add_signs(const History& history, Situation& situation) {
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::sign && situation.now.instant - event->at.instant <= figures::glucose_reading_lasts.value)
      situation.signs |= event->signs;
}

Situation situation_at(const History& history, const Moment& now) {
  Situation situation = known_at(history, now);
  add_signs(history, situation);
  return situation;
}

LedTo at_reading(const Plan& plan, const Record& then, const Moment& now) {
  const History history = History::of(then, now.instant);
  return told(evaluate(plan, history, situation_at(history, now)));
}

// The readings an injection was decided on, where the record has them nowhere else. The dose shown for it waits for no answer
// then: this injection is the answer.
std::optional<LedTo> at_injection(const Plan& plan, const Record& then, const Event& injection) {
  const Moment now = injection.at;
  const History whole = History::of(then, now.instant);
  const Event* shown = rules::unanswered_dose_at(plan, whole, now.instant);
  const History history = shown ? History::of(then, now.instant, 0, shown) : whole;
  Situation situation = situation_at(history, now);
  bool is_new = false;
  const auto lasts = [&](const std::optional<Instant>& at, Duration span) { return at && now.instant - *at <= span; };
  if (injection.glucose) {
    const bool there = situation.glucose && situation.glucose->reading == *injection.glucose &&
                       lasts(situation.glucose->at, figures::glucose_reading_lasts.value);
    // A dose decided on a word of the meter, or on a sensor, had that word repeated, or no meter.
    if (!there) situation.glucose = Situation::Glucose{*injection.glucose, now.instant, true, injection.glucose->from == ReadFrom::sensor};
    is_new |= !there;
  }
  if (injection.ketones && is_known(*injection.ketones)) {
    const bool there = situation.ketones.reading == *injection.ketones && lasts(situation.ketones.at, figures::ketone_reading_lasts.value);
    if (!there) situation.ketones = {*injection.ketones, now.instant};
    is_new |= !there;
  }
  if (!is_new) return std::nullopt;
  return told(evaluate(plan, history, situation));
}

}  // namespace

std::vector<std::optional<LedTo>> replay(const Plan& plan, const Record& record, std::size_t first, std::size_t end) {
  const auto& events = record.events;
  std::vector<std::optional<LedTo>> answers(end - first);
  Record then{record.plan_id, {}};
  then.events.reserve(end);
  for (std::size_t begin = 0; begin < end;) {
    std::size_t after = begin;
    while (after < end && events[after].at.instant == events[begin].at.instant) ++after;
    const auto old = static_cast<std::ptrdiff_t>(then.events.size());
    std::optional<std::size_t> reading;
    for (std::size_t i = begin; i < after; ++i) {
      if (!is_insulin(events[i])) then.events.push_back(events[i]);
      if (is_reading(events[i])) reading = i;
    }
    if (reading && *reading >= first) answers[*reading - first] = at_reading(plan, then, events[*reading].at);
    for (std::size_t i = std::max(begin, first); i < after; ++i)
      if (events[i].kind == EventKind::injection && events[i].insulin == InsulinType::rapid) answers[i - first] = at_injection(plan, then, events[i]);
    for (std::size_t i = begin; i < after; ++i)
      if (is_insulin(events[i])) then.events.push_back(events[i]);
    std::sort(then.events.begin() + old, then.events.end(), [](const Event& a, const Event& b) { return a.id < b.id; });
    begin = after;
  }
  return answers;
}

}  // namespace stopgap
