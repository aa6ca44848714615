#include "model/history.hpp"

#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include "figures/timing.hpp"

namespace stopgap {
namespace {

bool outlasts_a_strike(EventKind kind) {
  return kind == EventKind::injection || kind == EventKind::pumpDose || kind == EventKind::offBody || kind == EventKind::mistake ||
         kind == EventKind::doseShown;
}

bool reassures(const Event& event) {
  switch (event.kind) {
    case EventKind::changed: case EventKind::doseRefused: case EventKind::carbs: return true;
    case EventKind::pump: case EventKind::automation: return event.on;
    case EventKind::incident: return !event.opened;
    case EventKind::call: return event.answered;
    default: return false;
  }
}

}  // namespace

History History::of(const Record& record, Instant now, std::uint32_t without_kinds, const Event* without) {
  const auto left_out = [&](const Event& event) { return &event == without || (without_kinds >> static_cast<unsigned>(event.kind) & 1U) != 0; };
  // A strike stands unless a standing strike names it. Strikes that name each other in a ring stand for nothing.
  std::unordered_map<std::string_view, std::string_view> target_of;
  std::unordered_map<std::string_view, Instant> struck_at;
  for (const Event& event : record.events)
    if (event.kind == EventKind::strike && !left_out(event)) {
      target_of.emplace(event.id, event.refers_to);
      struck_at.emplace(event.id, event.at.instant);
    }
  std::unordered_map<std::string_view, int> unsettled;  // strikes against a strike that are not settled yet
  for (const auto& [strike, target] : target_of)
    if (target_of.contains(target)) ++unsettled[target];
  std::vector<std::string_view> settled;
  for (const auto& [strike, target] : target_of)
    if (!unsettled.contains(strike)) settled.push_back(strike);
  std::unordered_set<std::string_view> struck, standing, confirmed;
  for (std::size_t i = 0; i < settled.size(); ++i) {
    const std::string_view target = target_of.at(settled[i]);
    if (!struck.contains(settled[i])) {
      struck.insert(target);
      standing.insert(settled[i]);
    }
    if (const auto waiting = unsettled.find(target); waiting != unsettled.end() && --waiting->second == 0) settled.push_back(target);
  }

  const Instant latest = now + figures::clock_tolerance.value;
  if (!target_of.empty())
    for (const Event& event : record.events) {
      if (event.kind != EventKind::call || event.call_to != CallTo::team || !event.answered || left_out(event) || struck.contains(event.id)) continue;
      const auto strike = target_of.find(event.refers_to);
      if (strike == target_of.end() || !standing.contains(strike->first)) continue;
      // Nobody agrees on a call to a strike that is made later.
      if (event.at.instant >= struck_at.at(strike->first) && event.at.instant <= latest) confirmed.insert(strike->second);
    }

  History history;
  history.entries_.reserve(record.events.size());
  for (const Event& event : record.events) {
    if (left_out(event)) continue;
    const bool later_than_now = event.at.instant > latest;
    const bool is_struck = !struck.empty() && struck.contains(event.id);
    if (is_struck && (!outlasts_a_strike(event.kind) || confirmed.contains(event.id))) continue;
    history.from_the_future_ |= later_than_now;
    if (later_than_now && reassures(event)) continue;
    history.entries_.push_back({&event, is_struck});
  }
  return history;
}

History History::up_to(Instant last) const {
  History shorter;
  for (const Entry& entry : entries_)
    if (entry.event->at.instant <= last) shorter.entries_.push_back(entry);
  return shorter;
}

}  // namespace stopgap
