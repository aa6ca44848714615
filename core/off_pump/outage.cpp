#include "off_pump/outage.hpp"

#include <algorithm>
#include <unordered_set>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"

namespace stopgap::without_pump {
namespace {

// A bridge shown and injected in another amount is a bridge all the same: offered again, its hours would be given twice.
class Bridges {
 public:
  explicit Bridges(const History& history) {
    for (const auto& [event, struck] : history.entries())
      if (event->kind == EventKind::doseShown && holds_basal(*event)) shown_.insert(event->id);
  }
  bool has(const Event& event) const {
    if (event.kind != EventKind::injection || event.insulin != InsulinType::rapid) return false;
    return event.parts ? holds_basal(event) : shown_.contains(event.refers_to);
  }

 private:
  std::unordered_set<std::string_view> shown_;
};
bool is_long(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::long_acting; }

// Off or dead, and since when without a break. Where off and on tie, off stands.
void read_pump(Outage& outage, const History& history) {
  const auto went_off = [&](Instant at) {
    if (!outage.off) {
      outage.since = at;
      outage.until.reset();
    }
    outage.off = outage.told = true;
  };
  const auto came_back = [&](Instant at) {
    outage.told = true;
    if (!outage.off || *outage.since == at) return;
    outage.off = false;
    outage.until = at;
  };
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::pump) event->on ? came_back(event->at.instant) : went_off(event->at.instant);
    if (event->kind == EventKind::seen && event->faults.has(Fault::pumpDead)) went_off(event->at.instant);
  }
}

void read_long(Outage& outage, const Plan& plan, const History& history) {
  if (!plan.long_acting) return;
  LongAtWork& work = outage.long_acting;
  const Duration action = plan.long_acting->action, onset = plan.long_acting->onset;
  const bool in_parts = plan.off_pump.parts > 1;
  std::optional<Instant> before;   // the part before, where it still holds this one's successor
  const auto hold = [&](Instant until) { if (!work.due || *work.due < until) work.due = until; };
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    if (event->kind == EventKind::mistake && event->insulin == InsulinType::long_acting) hold(at + action);
    if (!is_long(*event)) continue;
    const bool follows = work.covers_until && at - *work.covers_until <= onset;
    const bool half = in_parts && !follows && is_half_part(local_time(event->at));
    const Duration next = half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
    work.continues = follows;
    work.last = event;
    work.covers_from = at + onset;
    work.covers_until = at + (in_parts ? next : action);
    hold(at + (in_parts ? next : std::max(action, figures::long_acting_day.value)));
    if (in_parts && before) hold(*before + action);
    before = half ? std::nullopt : std::optional<Instant>{at};
    outage.long_cover.push_back({follows ? at : *work.covers_from, *work.covers_until, {}});
  }
}

// Basal starts where the last bridge's ends, if that is near; at once otherwise. A gap is never made up.
void read_bridges(Outage& outage, const Plan& plan, const History& history) {
  const Bridges bridges{history};
  for (const auto& [event, struck] : history.entries()) {
    if (!bridges.has(*event)) continue;
    const Instant at = event->at.instant;
    const auto before = outage.bridged_until();
    Covered next{before && *before > at ? *before : at, at, {}};
    next.to = std::min(next.from + plan.off_pump.bridge, at + plan.off_pump.bridge + figures::bridge_tolerance.value);
    for (const Covered& cover : outage.long_cover)
      if (cover.from > next.from && cover.from < next.to) next.to = cover.from;
    if (next.to < next.from) next.to = next.from;
    if (event->parts) {
      const Insulin due = basal_over(plan.basal, next.from, next.to, event->at.offset) + outage.carried_into(next.from);
      const Insulin left = due - event->parts->basal;
      const Insulin step = greater(plan.syringe ? plan.syringe->step : Insulin{}, plan.pen ? plan.pen->step : Insulin{});
      // Only what rounding left: an amount of a whole step and more was meant by somebody, and is not made up.
      if (left < step && Insulin{} - left < step) next.carried = left;
    }
    outage.bridges.push_back(next);
  }
}

}  // namespace

bool holds_basal(const Event& event) { return event.insulin == InsulinType::rapid && event.parts && !event.parts->basal.is_zero(); }

bool is_half_part(TimeOfDay time) {
  return time >= figures::first_part_halves_from.value && time < figures::first_part_is_evening_from.value;
}
bool is_evening_part(TimeOfDay time) { return time >= figures::first_part_is_evening_from.value; }

Insulin Outage::carried_into(Instant from) const {
  if (bridges.empty()) return Insulin{};
  const Covered& last = bridges.back();
  return from >= last.to && from - last.to <= figures::bridge_tolerance.value ? last.carried : Insulin{};
}

Outage outage_of(const Plan& plan, const History& history, Instant now) {
  Outage outage;
  read_pump(outage, history);
  read_long(outage, plan, history);
  read_bridges(outage, plan, history);
  if (!outage.told) {
    outage.off = true;  // who asks has no pump, as long as the record does not say that it is back
    outage.since = now;
  }
  return outage;
}

}  // namespace stopgap::without_pump
