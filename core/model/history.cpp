#include "model/history.hpp"

#include <algorithm>
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

// Answers a shown dose, and was taken back within a minute with nothing but looks written down between.
bool is_mis_tap(const Record& record, std::size_t injection, std::size_t strike, const auto& left_out) {
  const auto [first, last] = std::minmax(injection, strike);
  const Duration since = record.events[strike].at.instant - record.events[injection].at.instant;
  if (since < Duration{} || since > figures::mis_tap_lasts.value) return false;
  for (std::size_t between = first + 1; between < last; ++between)
    if (record.events[between].kind != EventKind::look && !left_out(record.events[between])) return false;
  return true;
}

// Ids of the injections that standing strikes take back as mis-taps, once for each shown dose.
std::unordered_set<std::string_view> mis_taps_of(const Record& record, const std::unordered_set<std::string_view>& standing, const auto& left_out) {
  std::unordered_set<std::string_view> taken_back, shown_once;
  std::unordered_map<std::string_view, std::size_t> places;
  for (std::size_t i = 0; i < record.events.size(); ++i)
    if (record.events[i].kind == EventKind::injection || record.events[i].kind == EventKind::doseShown) places.emplace(record.events[i].id, i);
  for (std::size_t i = 0; i < record.events.size(); ++i) {
    const Event& strike = record.events[i];
    if (strike.kind != EventKind::strike || !strike.mis_tap || !standing.contains(strike.id)) continue;
    const auto target = places.find(strike.refers_to);
    if (target == places.end() || record.events[target->second].kind != EventKind::injection) continue;
    const std::string_view shown_id = record.events[target->second].refers_to;
    const auto shown = places.find(shown_id);
    if (shown == places.end() || record.events[shown->second].kind != EventKind::doseShown) continue;
    if (!is_mis_tap(record, target->second, i, left_out) || !shown_once.insert(shown_id).second) continue;
    taken_back.insert(strike.refers_to);
  }
  return taken_back;
}

// Two entries of one needle as one: the larger units, the later time, and never less of a rescue part than either said.
Event joined(const Event& a, const Event& b) {
  const Event& later = b.at.instant < a.at.instant ? a : b;
  const bool a_is_larger = *a.units > *b.units;
  Event one = a_is_larger ? a : b;
  const Event& other = a_is_larger ? b : a;
  if (one.parts && other.rescue() > one.parts->rescue) {
    one.parts->rescue = other.rescue();
    one.parts->meal = lesser(one.parts->meal, *one.units - one.parts->rescue);
    one.parts->basal = *one.units - one.parts->rescue - one.parts->meal;
  }
  one.at = later.at;
  one.sure = a.sure && b.sure;
  if (!one.glucose) one.glucose = other.glucose;
  if (!one.ketones) one.ketones = other.ketones;
  if (one.refers_to.empty()) one.refers_to = other.refers_to;
  if (one.order.empty()) one.order = other.order;
  return one;
}

bool comes_before(const History::Entry& a, const History::Entry& b) {
  const Instant first = a.event->at.instant, second = b.event->at.instant;
  return first != second ? first < second : a.event->id < b.event->id;
}

// Joins what is one needle. An entry whose wrong one is gone, or is of the other insulin, stands by itself.
std::shared_ptr<const std::deque<Event>> join_needles(std::vector<History::Entry>& entries) {
  if (std::none_of(entries.begin(), entries.end(), [](const History::Entry& entry) { return !entry.event->instead_of.empty(); })) return nullptr;
  const auto made = std::make_shared<std::deque<Event>>();
  std::unordered_map<std::string_view, std::string_view> joined_into;  // an id, and the entry that speaks for it now
  const auto speaker = [&](std::string_view id) {
    while (joined_into.contains(id)) id = joined_into.at(id);
    return id;
  };
  std::vector<const Event*> corrections;
  for (const History::Entry& entry : entries)
    if (!entry.event->instead_of.empty()) corrections.push_back(entry.event);
  for (const Event* correction : corrections) {
    const auto find = [&](std::string_view id) {
      return std::find_if(entries.begin(), entries.end(), [&](const History::Entry& entry) {
        return entry.event->kind == EventKind::injection && entry.event->id == id;
      });
    };
    const auto wrong = find(speaker(correction->instead_of)), right = find(speaker(correction->id));
    if (wrong == entries.end() || right == entries.end() || wrong == right) continue;
    if (wrong->event->insulin != right->event->insulin) continue;
    const Event *wrong_event = wrong->event, *right_event = right->event;
    made->push_back(joined(*wrong_event, *right_event));
    const Event& one = made->back();
    joined_into[wrong_event->id == one.id ? right_event->id : wrong_event->id] = one.id;
    const bool struck = right->struck;
    std::erase_if(entries, [&](const History::Entry& entry) { return entry.event == wrong_event || entry.event == right_event; });
    const History::Entry entry{&one, struck};
    entries.insert(std::upper_bound(entries.begin(), entries.end(), entry, comes_before), entry);
  }
  return made;
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

  const auto taken_back = standing.empty() ? std::unordered_set<std::string_view>{} : mis_taps_of(record, standing, left_out);

  History history;
  history.entries_.reserve(record.events.size());
  for (const Event& event : record.events) {
    if (left_out(event)) continue;
    const bool later_than_now = event.at.instant > latest;
    const bool is_struck = !struck.empty() && struck.contains(event.id);
    if (is_struck && taken_back.contains(event.id)) continue;
    if (is_struck && (!outlasts_a_strike(event.kind) || confirmed.contains(event.id))) continue;
    history.from_the_future_ |= later_than_now;
    if (later_than_now && reassures(event)) continue;
    history.entries_.push_back({&event, is_struck});
  }
  history.joined_ = join_needles(history.entries_);
  return history;
}

History History::up_to(Instant last) const {
  History shorter;
  shorter.joined_ = joined_;
  for (const Entry& entry : entries_)
    if (entry.event->at.instant <= last) shorter.entries_.push_back(entry);
  return shorter;
}

}  // namespace stopgap
