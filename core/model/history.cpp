#include "model/history.hpp"

#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace stopgap {
namespace {

bool outlasts_a_strike(EventKind kind) {
  return kind == EventKind::injection || kind == EventKind::pumpDose || kind == EventKind::offBody || kind == EventKind::mistake ||
         kind == EventKind::doseShown;
}

}  // namespace

History History::of(const Record& record, std::uint32_t without_kinds, const Event* without) {
  const auto left_out = [&](const Event& event) { return &event == without || (without_kinds >> static_cast<unsigned>(event.kind) & 1U) != 0; };
  // A strike stands unless a standing strike names it. Strikes that name each other in a ring stand for nothing.
  std::unordered_map<std::string_view, std::string_view> target_of;
  for (const Event& event : record.events)
    if (event.kind == EventKind::strike && !left_out(event)) target_of.emplace(event.id, event.refers_to);
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

  if (!target_of.empty())
    for (const Event& event : record.events)
      if (event.kind == EventKind::call && event.call_to == CallTo::team && event.answered && !left_out(event) && !struck.contains(event.id))
        if (const auto strike = target_of.find(event.refers_to); strike != target_of.end() && standing.contains(strike->first)) confirmed.insert(strike->second);

  History history;
  history.entries_.reserve(record.events.size());
  for (const Event& event : record.events) {
    if (left_out(event)) continue;
    const bool is_struck = !struck.empty() && struck.contains(event.id);
    if (is_struck && (!outlasts_a_strike(event.kind) || confirmed.contains(event.id))) continue;
    history.entries_.push_back({&event, is_struck});
  }
  return history;
}

}  // namespace stopgap
