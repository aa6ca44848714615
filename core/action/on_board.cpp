#include "action/on_board.hpp"

#include <string_view>
#include <unordered_map>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"

namespace stopgap {
namespace {

using Entries = std::vector<History::Entry>;

bool is_vomiting(SetOf<Sign> signs) { return signs.has(Sign::vomitedOnce) || signs.has(Sign::vomitedAgain); }

// Grams that still cover a dose, by its id: what was eaten for it, unless vomiting was noted after it.
using Covered = std::unordered_map<std::string_view, Carbohydrate>;

Covered what_is_covered(const Entries& entries, const Situation* situation, Instant now) {
  std::optional<Instant> vomiting;
  if (situation && is_vomiting(situation->signs)) vomiting = now;
  for (const auto& [event, struck] : entries)
    if (event->kind == EventKind::sign && is_vomiting(event->signs) && !(vomiting && *vomiting > event->at.instant))
      vomiting = event->at.instant;
  Covered covered;
  for (const auto& [event, struck] : entries) {
    if (event->kind != EventKind::carbs || event->refers_to.empty() || (vomiting && *vomiting >= event->at.instant)) continue;
    Carbohydrate& grams = covered[event->refers_to];
    grams = grams + event->carbs;
  }
  return covered;
}

Insulin uncovered(Insulin meal, const Event& dose, const Plan& plan, const Covered& covered) {
  const auto eaten = covered.find(dose.id);
  if (meal.is_zero() || eaten == covered.end()) return meal;
  const CarbohydrateRatio ratio = plan.carbohydrate_ratio.at(local_time(dose.at));
  return at_least_none(meal - eaten->second / ratio);
}

// Basal that was injected for hours that had theirs already, by its injection: it acts like any other insulin.
using GivenAgain = std::unordered_map<std::string_view, Insulin>;

GivenAgain basal_given_again(const Plan& plan, const Entries& entries) {
  GivenAgain again;
  std::optional<Instant> covered_until;
  for (const auto& [event, struck] : entries) {
    if (event->kind != EventKind::injection || event->insulin != InsulinType::rapid) continue;
    if (!event->parts || event->parts->basal.is_zero()) continue;
    const Instant at = event->at.instant;
    const Insulin needed = basal_over(plan.basal, at, at + plan.off_pump.bridge, event->at.offset);
    const Insulin step = plan.usual_device().step;
    // A step that makes up for hours gone covers none ahead.
    if (!event->basal_hours && needed < step) continue;
    if (covered_until && *covered_until - at > figures::bridge_tolerance.value) again[event->id] = event->parts->basal;
    const bool is_short = needed - event->parts->basal >= step;
    const Fraction share = is_short ? event->parts->basal.in_units() / needed.in_units() : Fraction{1};
    const std::int64_t seconds = (share * Fraction{plan.off_pump.bridge.in_seconds()}).floor();
    const Duration lasts = event->basal_hours.value_or(Duration::seconds(seconds));
    covered_until = (covered_until && *covered_until > at ? *covered_until : at) + lasts;
  }
  return again;
}

bool already_recorded(const Situation::Mistake& mistake, Instant now, const Entries& entries) {
  for (const auto& entry : entries)
    if (entry.event->kind == EventKind::mistake && entry.event->at.instant == now && entry.event->mistake == mistake.what &&
        entry.event->insulin == mistake.insulin && entry.event->units == mistake.units)
      return true;
  return false;
}

}  // namespace

Insulin OnBoard::counted(bool suspect_counts) const {
  // The pump's own figure holds its off-body deliveries too: those over a sink come off it, the others it stands for.
  Remaining pump = pump_certain;
  pump.add(off_body);
  if (suspect_counts) {
    pump.add(pump_suspect);
    if (typed) {
      Remaining figure = *typed;
      figure.subtract_down_to_none(over_sink);
      pump = greater(pump, figure);
    }
  }
  pump.add(always);
  return pump.rounded_up();
}

OnBoard on_board(const Plan& plan, const History& history, const Situation* situation, Instant now, const SuspectedSpan& span) {
  OnBoard sums;
  const Duration action = plan.rapid.action;
  const Entries& entries = history.entries();
  const Covered covered = what_is_covered(entries, situation, now);
  const GivenAgain again = basal_given_again(plan, entries);
  for (const auto& [event, struck] : entries) {
    const Instant at = event->at.instant;
    if (now - at > action || (span.until && at > *span.until)) continue;
    switch (event->kind) {
      case EventKind::injection: {
        if (event->insulin != InsulinType::rapid) break;
        const std::int64_t share = remaining_share(now - at, action);
        sums.always.add(event->rescue(), share);
        if (event->parts) sums.always.add(uncovered(event->parts->meal, *event, plan, covered), share);
        if (const auto twice = again.find(event->id); twice != again.end()) sums.always.add(twice->second, share);
        break;
      }
      case EventKind::mistake:
        if (event->insulin == InsulinType::rapid && event->units) sums.always.add(*event->units, remaining_share(now - at, action));
        break;
      case EventKind::offBody: {
        Remaining& sum = event->tubing_end == TubingEnd::sink ? sums.over_sink : sums.off_body;
        sum.add(*event->units, remaining_share(now - at, action));
        break;
      }
      case EventKind::pumpDose: {
        const bool certain = !span.since || at < *span.since || (span.set_changed && at > *span.set_changed);
        const Insulin units = event->purpose == PumpPurpose::meal ? uncovered(*event->units, *event, plan, covered) : *event->units;
        (certain ? sums.pump_certain : sums.pump_suspect).add(units, remaining_share(now - at, action));
        break;
      }
      default: break;
    }
  }
  if (situation) {
    if (situation->mistake && situation->mistake->insulin == InsulinType::rapid && situation->mistake->units &&
        !already_recorded(*situation->mistake, now, entries))
      sums.always.add(*situation->mistake->units, whole_share);
    if (situation->pump_on_board) {
      sums.typed = Remaining{};
      sums.typed->add(*situation->pump_on_board, whole_share);
    }
  }
  return sums;
}

}  // namespace stopgap
