#include "off_pump/storage.hpp"

#include "figures/off_pump.hpp"

namespace stopgap::without_pump {
namespace {

// Due exactly at its end, over once past it (CV-33 [lispro-2011]).
Stored by_hours(const std::optional<Moment>& changed, std::optional<Duration> lasts, Instant now) {
  Stored stored;
  if (!changed || !lasts) return stored;
  stored.change_by = changed->instant + *lasts;
  stored.keeps = now > *stored.change_by ? Keeps::over : now == *stored.change_by ? Keeps::due : Keeps::good;
  return stored;
}

std::optional<Duration> reservoir_lasts(const Plan& plan) {
  for (const auto& [insulin, lasts] : figures::reservoirs)
    if (plan.rapid.name == insulin) return lasts;
  return std::nullopt;
}

}  // namespace

InsulinKept storage_of(const Plan& plan, const History& history, const Moment& now) {
  std::optional<Moment> vial, reservoir, set;
  InsulinKept kept;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::seen && event->faults.has(Fault::heatedInsulin)) kept.heated = true;
    if (event->kind != EventKind::changed) continue;
    if (event->changed.has(Changed::insulin)) {
      vial = event->at;
      kept.heated = false;
    }
    if (event->changed.has(Changed::reservoir)) reservoir = event->at;
    if (event->changed.has(Changed::set)) set = event->at;
  }
  if (vial) {
    const Day today = local_day(now), last = local_day(*vial).plus_days(plan.rapid.in_use_days);
    kept.vial = {last, std::nullopt, today > last ? Keeps::over : today == last ? Keeps::lastDay : Keeps::good};
  }
  kept.reservoir = by_hours(reservoir, reservoir_lasts(plan), now.instant);
  kept.set = by_hours(set, figures::set_lasts.value, now.instant);
  return kept;
}

}  // namespace stopgap::without_pump
