#include "known.hpp"

namespace stopgap {

Situation known_at(const History& history, const Moment& now) {
  Situation situation;
  situation.now = now;
  for (const auto& [event, struck] : history.entries()) {
    if (event->at.instant > now.instant) continue;
    if (event->kind == EventKind::glucose)
      situation.glucose = Situation::Glucose{*event->glucose, event->at.instant, true, event->glucose->from == ReadFrom::sensor};
    if (event->kind == EventKind::ketones) situation.ketones = {*event->ketones, event->at.instant};
  }
  return situation;
}

}  // namespace stopgap
