#include <algorithm>
#include <array>
#include <numeric>

#include "json/read.hpp"
#include "json/read_event.hpp"
#include "json/readings.hpp"
#include "json/words.hpp"

namespace stopgap::json {
namespace {

std::optional<Instant> instant_of(const Item& item) {
  if (const auto read = moment(item)) return read->instant;
  return std::nullopt;
}

void read_look_at(const Item& item, Event& event) {
  SetOf<EventKind> seen;  // what to look at is named by the two kinds of reading
  const Elements list{item, 1, figures::word_list_length};
  for (std::size_t i = 0; i < list.size(); ++i)
    if (const auto found = word_index(list[i], words::look_at.data(), words::look_at.size(), Reason::outOfRange))
      seen.add(*found == 0 ? EventKind::glucose : EventKind::ketones);
  event.look_glucose = seen.has(EventKind::glucose);
  event.look_ketones = seen.has(EventKind::ketones);
}

bool second_word(const Item& item, const std::array<std::string_view, 2>& states) {
  return word_index(item, states.data(), states.size(), Reason::outOfRange) == std::size_t{1};
}

void read_injection(Fields& fields, Event& event) {
  fill(event.insulin, word<InsulinType>(fields.need("insulin"), words::insulins));
  event.units = units_of(fields.need("units"));
  fill(event.with, word<DeviceKind>(fields.need("with"), words::devices));
  fill(event.sure, flag(fields.may("sure")));
  event.parts = parts_of(fields, event.units);
  event.glucose = glucose_reading(fields.may("glucose"));
  event.ketones = ketone_reading(fields.may("ketones"));
  fill(event.refers_to, id(fields.may("shown")));
  fill(event.order, id(fields.may("order")));
  if (const auto hours = number(fields.may("basalHours"), figures::basal_hours_range)) event.basal_hours = Duration::hour_hundredths(hours->count * 10);
  if (const auto zones = number(fields.may("zonesEast"), figures::zones_east_range)) event.zones_east = zones->count;
  fill(event.instead_of, id(fields.may("insteadOf")));
}

void read_incident(Fields& fields, Event& event) {
  event.opened = !second_word(fields.need("state"), words::incident_states);
  // A suspicion typed later than the opening is a slip of the clock, no reason to lock a record away at night; the rules then
  // go by the opening.
  event.suspected_since = instant_of(fields.may("suspectedSince"));
}

void read_kind(Fields& fields, Event& event) {
  switch (event.kind) {
    case EventKind::incident: read_incident(fields, event); return;
    case EventKind::glucose: event.glucose = glucose_reading(fields); return;
    case EventKind::ketones: event.ketones = ketone_reading(fields, Unknown::refused); return;
    case EventKind::sign: word_set<Sign>(fields.need("what"), words::signs, 1, event.signs); return;
    case EventKind::seen: word_set<Fault>(fields.need("what"), words::faults, 1, event.faults); return;
    case EventKind::changed: word_set<Changed>(fields.need("what"), words::changed, 1, event.changed); return;
    case EventKind::doseShown:
      event.units = units_of(fields.need("units"));
      fill(event.insulin, word<InsulinType>(fields.need("insulin"), words::insulins));
      event.parts = parts_of(fields, event.units);
      return;
    case EventKind::doseRefused: fill(event.refers_to, id(fields.need("shown"))); return;
    case EventKind::injection: read_injection(fields, event); return;
    case EventKind::pumpDose:
      event.units = units_of(fields.need("units"));
      fill(event.purpose, word<PumpPurpose>(fields.need("purpose"), words::pump_purposes));
      event.glucose = glucose_reading(fields.may("glucose"));
      return;
    case EventKind::offBody:
      event.units = units_of(fields.need("units"));
      fill(event.tubing_end, word<TubingEnd>(fields.need("tubingEnd"), words::tubing_ends));
      return;
    case EventKind::mistake:
      fill(event.mistake, word<MistakeKind>(fields.need("what"), words::mistakes));
      fill(event.insulin, word<InsulinType>(fields.need("insulin"), words::insulins));
      event.units = units_of(fields.may("units"));
      return;
    case EventKind::automation: event.on = second_word(fields.need("state"), words::automation_states); return;
    case EventKind::pump: event.on = second_word(fields.need("state"), words::pump_states); return;
    case EventKind::carbs:
      fill(event.carbs, number(fields.need("grams"), figures::carbs_range), Carbohydrate::grams);
      fill(event.refers_to, id(fields.may("for")));
      return;
    case EventKind::look:
      event.due = instant_of(fields.need("due"));
      read_look_at(fields.need("what"), event);
      return;
    case EventKind::call:
      fill(event.call_to, word<CallTo>(fields.need("to"), words::call_to));
      fill(event.answered, flag(fields.need("answered")));
      fill(event.refers_to, id(fields.may("for")));
      return;
    case EventKind::order:
      fill(event.by, name(fields.need("by")));
      event.units = units_of(fields.may("units"));
      fill(event.insulin, word<InsulinType>(fields.may("insulin"), words::insulins));
      fill(event.text, sentence(fields.need("text")));
      fill(event.read_back, flag(fields.may("readBack")));
      return;
    case EventKind::alarmSet: event.due = instant_of(fields.need("due")); return;
    case EventKind::note: fill(event.text, sentence(fields.need("text"))); return;
    case EventKind::expires:
      fill(event.expires, word<Expires>(fields.need("what"), words::expires));
      event.expires_on = day(fields.need("on"));
      fill(event.text, sentence(fields.may("text")));
      return;
    case EventKind::strike:
      fill(event.refers_to, id(fields.need("target")));
      fill(event.text, sentence(fields.need("reason")));
      event.mis_tap = event.text == words::mis_tap;
      return;
  }
}

void read_event(const Item& item, Event& event) {
  Fields fields{item};
  fill(event.id, id(fields.need("id")));
  fill(event.at, moment(fields.need("at")));
  const auto kind = word<EventKind>(fields.need("kind"), words::event_kinds);
  if (!kind) return;  // of an unknown kind no key can be judged
  event.kind = *kind;
  read_kind(fields, event);
  fields.finish();
}

std::string event_id_path(std::string_view path, std::size_t index) {
  return std::string{path} + "/events/" + std::to_string(index) + "/id";
}

// One id names one event: the second in the order of the text is refused.
void refuse_repeated_ids(const std::vector<Event>& events, std::string_view path, Refusals& refusals) {
  std::vector<std::size_t> order(events.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const int difference = events[a].id.compare(events[b].id);
    return difference != 0 ? difference < 0 : a < b;
  });
  std::vector<std::size_t> repeated;
  for (std::size_t i = 1; i < order.size(); ++i)
    if (!events[order[i]].id.empty() && events[order[i]].id == events[order[i - 1]].id) repeated.push_back(order[i]);
  std::sort(repeated.begin(), repeated.end());
  for (const std::size_t index : repeated) refusals.add(event_id_path(path, index), Reason::duplicateId, events[index].id);
}

bool earlier(const Event& a, const Event& b) {
  return a.at.instant != b.at.instant ? a.at.instant < b.at.instant : a.id < b.id;
}

// In order of time; whole events are moved once only.
void put_in_order(std::vector<Event>& events) {
  if (std::is_sorted(events.begin(), events.end(), earlier)) return;
  std::vector<std::size_t> order(events.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return earlier(events[a], events[b]); });
  std::vector<Event> sorted;
  sorted.reserve(events.size());
  for (const std::size_t index : order) sorted.push_back(std::move(events[index]));
  events = std::move(sorted);
}

}  // namespace

Event read_event(const Node& node, std::string_view path, Refusals& refusals) {
  Event event;
  read_event(root_item(node, path, refusals), event);
  return event;
}

Record read_record(const Node& node, std::string_view path, const std::string* plan_id, Refusals& refusals) {
  Record record;
  Fields fields{root_item(node, path, refusals)};
  if (!format(fields, "stopgap.record")) return record;
  const Item owner = fields.need("planId");
  fill(record.plan_id, id(owner));
  // Somebody else's doses must not be counted for this person.
  if (plan_id != nullptr && !plan_id->empty() && !record.plan_id.empty() && record.plan_id != *plan_id)
    owner.refuse(Reason::contradiction, *plan_id);
  const Elements events{fields.need("events"), 0, figures::most_events};
  record.events.resize(events.size());
  for (std::size_t i = 0; i < events.size(); ++i) read_event(events[i], record.events[i]);
  fields.finish();
  refuse_repeated_ids(record.events, path, refusals);
  put_in_order(record.events);
  return record;
}

}  // namespace stopgap::json
