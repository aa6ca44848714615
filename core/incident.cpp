#include "incident.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/ranges.hpp"
#include "figures/timing.hpp"
#include "incident_spans.hpp"
#include "replay.hpp"
#include "rules/events.hpp"
#include "rules/facts.hpp"

namespace stopgap {
namespace {

using Entries = std::vector<History::Entry>;

bool is_high(const Plan& plan, const GlucoseReading& reading, const Moment& at) {
  Situation situation;
  situation.now = at;
  situation.glucose = Situation::Glucose{reading, at.instant, true, false};
  return rules::facts_of(plan, History{}, situation).high;
}

// A high leads in when it stood unbroken before the incident, each reading within the hours of action of the next.
const Event* first_of_the_lead_in(const Plan& plan, const Entries& entries, Instant since, const std::optional<Instant>& after) {
  const Event* lead_in = nullptr;
  Instant next = since;
  for (std::size_t i = entries.size(); i-- > 0;) {
    const Event& event = *entries[i].event;
    const Instant at = event.at.instant;
    if (at >= since || !event.glucose) continue;
    if ((after && at <= *after) || next - at > plan.rapid.action || !is_high(plan, *event.glucose, event.at)) break;
    lead_in = &event;
    next = at;
  }
  return lead_in;
}

bool tests_ketones(const Event& event) {
  return event.ketones && (event.ketones->kind == KetoneKind::blood || event.ketones->kind == KetoneKind::bloodHI ||
                           event.ketones->kind == KetoneKind::urine);
}

void measure(const Plan& plan, const Entries& entries, Instant from, Instant to, Story& story) {
  const auto first = [&](Instant at_least, auto wanted) -> const Event* {
    for (const auto& [event, struck] : entries)
      if (event->at.instant >= at_least && event->at.instant <= to && wanted(*event)) return event;
    return nullptr;
  };
  const Event* high = first(from, [&](const Event& event) { return event.glucose && is_high(plan, *event.glucose, event.at); });
  story.from_high = high != nullptr;
  story.start = high ? high->at : Moment{story.since, story.from.offset};
  const Instant start = story.start.instant;
  const auto put = [](std::optional<Moment>& place, const Event* event) { if (event) place = event->at; };
  // Ketones tested shortly before the glucose were known when it was read.
  put(story.ketone_test, first(start - figures::ketone_reading_lasts.value, tests_ketones));
  put(story.needle, first(start, [&](const Event& event) { return rules::is_needle_dose(event, plan); }));
  put(story.new_set, first(start, [](const Event& event) { return event.kind == EventKind::changed && event.changed.has(Changed::set); }));
}

std::int64_t hundredths_of(Glucose part, Glucose whole) {
  return (Fraction::of(part.in_grains(), whole.in_grains()) * Fraction{100} + Fraction::of(1, 2)).floor();
}

// The picture is as high as the highest reading in it, and at least as the level from which glucose is high. HI stands at the
// top and LO at the bottom: neither is a number.
void place_in_picture(const Plan& plan, Story& story) {
  Glucose top = plan.high.trigger;
  for (const StoryRow& row : story.rows)
    if (row.event->glucose && row.event->glucose->word == MeterWord::number) top = std::max(top, row.event->glucose->value);
  for (StoryRow& row : story.rows) {
    if (!row.event->glucose) continue;
    const GlucoseReading& reading = *row.event->glucose;
    row.height = reading.word == MeterWord::HI ? 100 : reading.word == MeterWord::LO ? 0 : hundredths_of(reading.value, top);
  }
  story.trigger_height = hundredths_of(plan.high.trigger, top);
  story.low_height = hundredths_of(plan.low.below, top);
}

void tell_rows(const Plan& plan, const Record& record, const History& whole, Story& story) {
  const auto& events = record.events;
  const auto place = [&](Instant instant, bool after) {
    return static_cast<std::size_t>(std::partition_point(events.begin(), events.end(), [&](const Event& event) {
      return after ? event.at.instant <= instant : event.at.instant < instant;
    }) - events.begin());
  };
  const std::size_t first = place(story.from.instant, false), end = place(story.to.instant, true);
  const std::size_t told = std::min(end - first, figures::most_story_rows);
  story.rows_left_out = end - first - told;
  const auto led_to = replay(plan, record, first, first + told);
  std::unordered_map<const Event*, bool> counting;  // and whether it is struck all the same
  for (const auto* list : {&whole.entries(), &whole.said_twice()})
    for (const auto& [event, struck] : *list) counting.emplace(event, struck);
  for (std::size_t i = first; i < first + told; ++i) {
    const auto entry = counting.find(&events[i]);
    const bool counts = entry != counting.end();
    StoryRow row{&events[i], counts ? entry->second : true, counts, 0, {}, led_to[i - first]};
    row.minute = (events[i].at.instant - story.from.instant).in_seconds() / 60;
    story.rows.push_back(std::move(row));
  }
}

}  // namespace

IncidentAnswer incident(const Plan& plan, const Record& record) {
  IncidentAnswer answer;
  if (record.events.empty()) return answer;
  // As the record stands now: its own last moment is late enough for everything in it.
  const History whole = History::of(record, record.events.back().at.instant);
  const Entries& entries = whole.entries();
  const auto span_of = [&](const FoundIncident& found) {
    const auto first = std::partition_point(entries.begin(), entries.end(), [&](const auto& entry) { return entry.event->at.instant < found.since; });
    return IncidentSpan{{found.since, first->event->at.offset}, entries[found.last].event->at};
  };

  const auto found = incident_before(plan, whole, std::nullopt);
  if (!found) return answer;
  for (auto before = incident_before(plan, whole, found->since); before; before = incident_before(plan, whole, before->since)) {
    answer.more_others = answer.others.size() == figures::most_other_incidents;
    if (answer.more_others) break;
    answer.others.push_back(span_of(*before));
  }

  Story story;
  story.since = found->since;
  story.recorded = found->recorded;
  const IncidentSpan span = span_of(*found);
  story.from = span.from;
  story.to = span.to;
  if (found->closed_by) story.closed = found->closed_by->at;
  const auto previous_end = answer.others.empty() ? std::optional<Instant>{} : answer.others.front().to.instant;
  if (const Event* lead_in = first_of_the_lead_in(plan, entries, found->since, previous_end)) story.from = lead_in->at;
  measure(plan, entries, story.from.instant, story.to.instant, story);
  tell_rows(plan, record, whole, story);
  place_in_picture(plan, story);
  answer.story = std::move(story);
  return answer;
}

}  // namespace stopgap
