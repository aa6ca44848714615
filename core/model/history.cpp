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

// An injection taken back within a minute with nothing but looks written down between. What stands at the second of either counts as
// between: an injection that was given must not vanish by the order of ids.
bool is_mis_tap(const Record& record, const Event& injection, const Event& strike, const Event& shown, const auto& left_out) {
  const Instant from = injection.at.instant, to = strike.at.instant;
  if (to < from || to - from > figures::mis_tap_lasts.value) return false;
  const auto earlier = [](const Event& event, Instant at) { return event.at.instant < at; };
  for (auto event = std::lower_bound(record.events.begin(), record.events.end(), from, earlier);
       event != record.events.end() && event->at.instant <= to; ++event) {
    const bool is_of_the_tap = &*event == &injection || &*event == &strike || &*event == &shown;
    if (!is_of_the_tap && event->kind != EventKind::look && !left_out(*event)) return false;
  }
  return true;
}

// Ids of the injections that standing strikes take back as mis-taps, once for each shown dose.
std::unordered_set<std::string_view> mis_taps_of(const Record& record, const std::unordered_set<std::string_view>& standing, const auto& left_out) {
  std::unordered_set<std::string_view> taken_back, shown_once;
  std::unordered_map<std::string_view, const Event*> injections, shown;
  for (const Event& event : record.events) {
    if (event.kind == EventKind::injection) injections.emplace(event.id, &event);
    if (event.kind == EventKind::doseShown) shown.emplace(event.id, &event);
  }
  for (const Event& strike : record.events) {
    if (strike.kind != EventKind::strike || !strike.mis_tap || !standing.contains(strike.id)) continue;
    const auto target = injections.find(strike.refers_to);
    if (target == injections.end()) continue;
    const auto dose = shown.find(target->second->refers_to);
    if (dose == shown.end() || !is_mis_tap(record, *target->second, strike, *dose->second, left_out)) continue;
    if (shown_once.insert(dose->first).second) taken_back.insert(strike.refers_to);
  }
  return taken_back;
}

// The higher of two readings: HI is above every number, LO below.
GlucoseReading higher(const GlucoseReading& a, const GlucoseReading& b) {
  const auto rank = [](const GlucoseReading& reading) { return reading.word == MeterWord::HI ? 2 : reading.word == MeterWord::LO ? 0 : 1; };
  if (rank(a) != rank(b)) return rank(a) > rank(b) ? a : b;
  return a.value > b.value ? a : b;
}

// Beside basal a glucose below the trigger makes an injection no needle dose. Two entries stay one if either was one.
std::optional<GlucoseReading> glucose_of_both(const Event& wrong, const Event& right) {
  const auto is_plain_rescue = [](const Event& event) { return !event.rescue().is_zero() && !(event.parts && !event.parts->basal.is_zero()); };
  if (is_plain_rescue(wrong) || is_plain_rescue(right) || !wrong.glucose || !right.glucose) return std::nullopt;
  return higher(*wrong.glucose, *right.glucose);
}

Insulin part_of(const Event& event, Insulin Parts::*part) { return event.parts ? (*event.parts).*part : Insulin{}; }

// Two entries of one needle as one: the larger units and the later time. Until the team has settled which was right each part counts as
// the larger of the two, so that neither a lock nor the hours of a bridge are lost; together they may then be more than the units.
Event joined(const Event& wrong, const Event& right) {
  const Event& later = right.at.instant < wrong.at.instant ? wrong : right;
  const bool wrong_is_larger = *wrong.units > *right.units;
  Event one = wrong_is_larger ? wrong : right;
  const Event& other = wrong_is_larger ? right : wrong;
  if (wrong.parts || right.parts)
    one.parts = Parts{greater(wrong.rescue(), right.rescue()), greater(part_of(wrong, &Parts::meal), part_of(right, &Parts::meal)),
                      greater(part_of(wrong, &Parts::basal), part_of(right, &Parts::basal))};
  if (!one.basal_hours) one.basal_hours = other.basal_hours;
  if (!one.zones_east) one.zones_east = other.zones_east;
  one.at = later.at;
  one.sure = wrong.sure && right.sure;
  if (one.parts && !one.parts->basal.is_zero() && !one.parts->rescue.is_zero()) one.glucose = glucose_of_both(wrong, right);
  else one.glucose = right.glucose ? right.glucose : wrong.glucose;
  one.ketones = right.ketones ? right.ketones : wrong.ketones;
  if (one.refers_to.empty()) one.refers_to = other.refers_to;
  if (one.order.empty()) one.order = other.order;
  return one;
}

Event ketones_of(const Event& injection) {
  Event reading;
  reading.id = injection.id;
  reading.at = injection.at;
  reading.kind = EventKind::ketones;
  reading.ketones = injection.ketones;
  return reading;
}

bool comes_before(const History::Entry& a, const History::Entry& b) {
  const Instant first = a.event->at.instant, second = b.event->at.instant;
  return first != second ? first < second : a.event->id < b.event->id;
}

// Joins what is one needle. An entry whose wrong one is gone, or is of the other insulin, stands by itself.
std::shared_ptr<const std::deque<Event>> join_needles(std::vector<History::Entry>& entries, std::vector<History::Entry>& said_twice) {
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
    const auto is_made = [&](const Event* event) {
      return std::any_of(made->begin(), made->end(), [&](const Event& one) { return &one == event; });
    };
    for (const auto& entry : {wrong, right})
      if (!is_made(entry->event)) said_twice.push_back(*entry);
    made->push_back(joined(*wrong_event, *right_event));
    const Event& one = made->back();
    joined_into[wrong_event->id == one.id ? right_event->id : wrong_event->id] = one.id;
    const auto put = [&](const Event& event, bool struck) {
      const History::Entry entry{&event, struck};
      entries.insert(std::upper_bound(entries.begin(), entries.end(), entry, comes_before), entry);
    };
    const bool struck = right->struck;
    std::erase_if(entries, [&](const History::Entry& entry) { return entry.event == wrong_event || entry.event == right_event; });
    put(one, struck);
    // Only the injection was said wrong: a ketone reading that it carried was taken all the same.
    if (wrong_event->ketones && right_event->ketones && is_known(*wrong_event->ketones)) {
      made->push_back(ketones_of(*wrong_event));
      put(made->back(), false);
    }
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
  history.joined_ = join_needles(history.entries_, history.said_twice_);
  return history;
}

History History::up_to(Instant last) const {
  History shorter;
  shorter.joined_ = joined_;
  shorter.said_twice_ = said_twice_;
  for (const Entry& entry : entries_)
    if (entry.event->at.instant <= last) shorter.entries_.push_back(entry);
  return shorter;
}

}  // namespace stopgap
