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

History History::of(const Record& record, std::uint32_t without_kinds) {
  const auto left_out = [&](const Event& event) { return (without_kinds >> static_cast<unsigned>(event.kind) & 1U) != 0; };
  // Later strikes first: only a later strike can undo an earlier one.
  std::unordered_set<std::string_view> struck, confirmed;
  std::unordered_map<std::string_view, std::string_view> target_of;
  for (auto event = record.events.rbegin(); event != record.events.rend(); ++event) {
    if (event->kind != EventKind::strike || left_out(*event) || struck.contains(event->id)) continue;
    struck.insert(event->refers_to);
    target_of.emplace(event->id, event->refers_to);
  }
  if (!target_of.empty())
    for (const Event& event : record.events)
      if (event.kind == EventKind::call && event.call_to == CallTo::team && event.answered && !left_out(event) && !struck.contains(event.id))
        if (const auto strike = target_of.find(event.refers_to); strike != target_of.end()) confirmed.insert(strike->second);

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
