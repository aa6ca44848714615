#include "known.hpp"

#include "figures/timing.hpp"

namespace stopgap {

namespace {

// HI stands only where the meter said it twice: another one was recorded shortly before.
bool is_repeated(const History& history, const Event& reading) {
  for (const auto& [event, struck] : history.entries()) {
    const Duration before = reading.at.instant - event->at.instant;
    if (event->kind != EventKind::glucose || before <= Duration{} || before > figures::glucose_reading_lasts.value) continue;
    if (event->glucose->word == reading.glucose->word && event->glucose->from == reading.glucose->from) return true;
  }
  return false;
}

}  // namespace

Situation known_at(const History& history, const Moment& now) {
  Situation situation;
  situation.now = now;
  for (const auto& [event, struck] : history.entries()) {
    if (event->at.instant > now.instant) continue;
    if (event->kind == EventKind::glucose)
      situation.glucose = Situation::Glucose{*event->glucose, event->at.instant, is_repeated(history, *event), false};
    if (event->kind == EventKind::ketones) situation.ketones = {*event->ketones, event->at.instant};
  }
  return situation;
}

}  // namespace stopgap
