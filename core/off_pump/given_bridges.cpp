#include "off_pump/given_bridges.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/off_pump.hpp"

namespace stopgap::without_pump {
namespace {

// A bridge shown and injected in another amount is a bridge all the same: offered again, its hours would be given twice.
class Bridges {
 public:
  explicit Bridges(const History& history) {
    for (const auto& [event, struck] : history.entries())
      if (event->kind == EventKind::doseShown && holds_basal(*event)) shown_.emplace(event->id, event);
  }
  // The basal of an injection: its own part, or without parts that of the dose it answers. None: it is no bridge.
  std::optional<Insulin> basal_of(const Event& event) const {
    if (event.kind != EventKind::injection || event.insulin != InsulinType::rapid) return std::nullopt;
    if (event.parts) return holds_basal(event) ? std::optional{event.parts->basal} : std::nullopt;
    const auto shown = shown_.find(event.refers_to);
    return shown == shown_.end() ? std::nullopt : std::optional{shown->second->parts->basal};
  }
  std::optional<Instant> shown_at(const Event& event) const {
    const auto shown = shown_.find(event.refers_to);
    return shown == shown_.end() ? std::nullopt : std::optional{shown->second->at.instant};
  }

 private:
  std::unordered_map<std::string_view, const Event*> shown_;
};

}  // namespace

bool holds_basal(const Event& event) { return event.insulin == InsulinType::rapid && event.parts && !event.parts->basal.is_zero(); }

// Basal starts where the last bridge's ends, if that is near; at once otherwise. A gap is never made up.
void read_bridges(Outage& outage, const Plan& plan, const History& history) {
  const Bridges bridges{history};
  const Duration tolerance = figures::bridge_tolerance.value;
  for (const auto& [event, struck] : history.entries()) {
    const auto given = bridges.basal_of(*event);
    if (!given) continue;
    const Instant at = event->at.instant;
    const Offset offset = event->at.offset;
    const Insulin step = device_of(plan, event->with).step;
    const auto before = outage.bridged_until();
    const Instant from = before && *before > at ? *before : at;
    // Whether it can cover hours at all is judged by when it was worked out: a minute at the needle makes it no other.
    const Instant decided = bridges.shown_at(*event).value_or(at);
    const Instant full = decided + plan.off_pump.bridge;
    const bool long_acting_takes_over = outage.long_share(decided) >= Fraction{1} || outage.needed_until(decided, full) < full;
    const bool full_is_under_one_step = !long_acting_takes_over && outage.needed_over(plan, decided, full, offset) < step;
    if (!event->basal_hours && full_is_under_one_step) {
      outage.single_steps.push_back({at, *given});
      continue;
    }
    if (before && *before - at > tolerance) outage.bridged_twice = at;
    const Duration hours = event->basal_hours.value_or(plan.off_pump.bridge);
    Covered next{from, std::min(from + hours, at + hours + tolerance), {}, at};
    const Insulin owed = outage.owed_to(from, plan);
    const Insulin left = outage.needed_over(plan, from, next.to, offset) + owed - *given;
    // Rounding leaves less than a step. Where a whole one is missing it lasts as long as it does by the schedule, and no longer.
    if (left < step) next.owed = left;
    else next.to = outage.lasts(plan, from, *given, next.to, offset);
    outage.bridges.push_back(next);
  }
}

}  // namespace stopgap::without_pump
