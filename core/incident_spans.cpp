#include "incident_spans.hpp"

#include <algorithm>
#include "rules/events.hpp"
#include "rules/facts.hpp"

namespace stopgap {
namespace {

// Only these events can begin an incident or be its reason.
bool begins(const Event& event, const Plan& plan) {
  return rules::is_pump_correction(event) || rules::is_needle_dose(event, plan) || event.kind == EventKind::seen ||
         (event.kind == EventKind::incident && event.opened);
}

}  // namespace

std::optional<FoundIncident> incident_before(const Plan& plan, const History& whole, std::optional<Instant> limit) {
  const auto& entries = whole.entries();
  const auto end = std::partition_point(entries.begin(), entries.end(),
                                        [&](const History::Entry& entry) { return !limit || entry.event->at.instant < *limit; });
  const std::size_t count = static_cast<std::size_t>(end - entries.begin());
  const auto at = [&](std::size_t place) { return entries[place].event->at.instant; };
  const auto incident_when = [&](Instant moment) { return rules::incident_at(plan, whole.up_to(moment), moment); };

  std::size_t last = count;
  rules::Incident incident;
  while (last > 0) {
    --last;
    if (!begins(*entries[last].event, plan)) continue;
    incident = incident_when(at(last));
    if (incident.suspected_since) break;  // one that is closed at the very moment it begins is none
  }
  if (!incident.suspected_since) return std::nullopt;

  const Instant reason = at(last);
  const auto still_runs = [&](Instant moment) {
    const auto then = incident_when(moment);
    return then.suspected_since && *then.suspected_since <= reason;
  };
  FoundIncident found{*incident.suspected_since, incident.recorded, last, nullptr};
  // After its last reason an incident can only end: by being closed, or by time. Between two such words it ends once.
  std::size_t next = last + 1;
  while (next < count) {
    std::size_t word = next;
    while (word < count && entries[word].event->kind != EventKind::incident) ++word;
    const auto from = entries.begin() + static_cast<std::ptrdiff_t>(next), to = entries.begin() + static_cast<std::ptrdiff_t>(word);
    const auto ended = std::partition_point(from, to, [&](const History::Entry& entry) { return still_runs(entry.event->at.instant); });
    if (ended != from) found.last = static_cast<std::size_t>(ended - entries.begin()) - 1;
    if (ended != to || word == count) break;
    if (!still_runs(at(word))) {
      // Closed by this word, unless it had ended by time before.
      const bool ran_until_then = still_runs(at(word) - Duration::seconds(1));
      if (ran_until_then && !entries[word].event->opened) {
        found.last = word;
        found.closed_by = entries[word].event;
      }
      break;
    }
    found.last = word;
    next = word + 1;
  }
  return found;
}

}  // namespace stopgap
