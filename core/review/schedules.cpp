// Settings over the day: targets in their place, no sudden jump, and a night that is not stronger than the day.
#include <algorithm>
#include <optional>
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

// How much of one setting a value is; only compared with others of the same schedule.
std::int64_t size_of(CorrectionFactor factor) { return factor.in_grains_per_unit(); }
std::int64_t size_of(CarbohydrateRatio ratio) { return (ratio.in_grams_per_unit() * Fraction{10}).floor(); }
std::int64_t size_of(Glucose target) { return target.in_grains(); }
std::int64_t size_of(BasalRate rate) { return rate.in_hundredths_per_hour(); }

// Midnight joins the last value to the first, where the two are not neighbours already.
template <class Value>
void look_for_jumps(Review& review, const Scheduled<Value>& schedule, std::string_view list) {
  const auto& entries = schedule.entries;
  const auto compare = [&](std::size_t before, std::size_t after) {
    const Fraction a{size_of(entries[before].value)}, b{size_of(entries[after].value)};
    if (std::max(a, b) > figures::schedule_jump.value * std::min(a, b))
      review.find(figures::schedule_jump, "schedule-jump", FindingLevel::confirm, item_path(list, after, "value"),
                  {{"before", entries[before].from}, {"after", entries[after].from}});
  };
  if (entries.size() > 2) compare(entries.size() - 1, 0);
  for (std::size_t i = 1; i < entries.size(); ++i) compare(i - 1, i);
}

// A smaller factor, ratio or target means more insulin. Basal is left out: many people need more of it towards the morning.
template <class Value>
void look_for_strong_nights(Review& review, const Scheduled<Value>& schedule, std::string_view list) {
  const auto& entries = schedule.entries;
  const auto covers = [&](std::size_t i, bool night) {
    const TimeOfDay from = entries[i].from, end = TimeOfDay::minutes(minutes_a_day);
    const TimeOfDay until = i + 1 < entries.size() ? entries[i + 1].from : end;
    if (night) return from < figures::night_ends.value || until > figures::night_begins.value;
    return from < figures::night_begins.value && until > figures::night_ends.value;
  };
  std::optional<std::size_t> strongest_by_day, strongest_by_night;
  const auto keep = [&](std::optional<std::size_t>& strongest, std::size_t i) {
    if (!strongest || size_of(entries[i].value) < size_of(entries[*strongest].value)) strongest = i;
  };
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (covers(i, false)) keep(strongest_by_day, i);
    if (covers(i, true)) keep(strongest_by_night, i);
  }
  if (size_of(entries[*strongest_by_night].value) < size_of(entries[*strongest_by_day].value))
    review.find(figures::night_begins, "night-stronger", FindingLevel::confirm, item_path(list, *strongest_by_night, "value"),
                {{"night", entries[*strongest_by_night].from}, {"day", entries[*strongest_by_day].from}});
}

void look_at_targets(Review& review) {
  const Plan& plan = review.plan;
  const bool mmol = plan.unit == GlucoseUnit::mmol;
  const auto& least = mmol ? figures::target_least_mmol : figures::target_least_mg;
  const auto& most = mmol ? figures::target_most_mmol : figures::target_most_mg;
  const auto& entries = plan.target.entries;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const Glucose target = entries[i].value;
    const std::string path = item_path("/plan/day/target", i, "value");
    if (target < least.value || target > most.value)
      review.find(least, "target-unusual", FindingLevel::confirm, path, {{"target", target}, {"least", least.value}, {"most", most.value}});
    if (target <= plan.low.below)
      review.find(figures::target_apart, "target-at-low", FindingLevel::refuse, path, {{"target", target}, {"low", plan.low.below}});
    if (target >= plan.high.trigger)
      review.find(figures::target_apart, "target-at-trigger", FindingLevel::refuse, path, {{"target", target}, {"trigger", plan.high.trigger}});
  }
}

}  // namespace

void look_at_schedules(Review& review) {
  const Plan& plan = review.plan;
  look_at_targets(review);
  look_for_jumps(review, plan.correction_factor, "/plan/day/correctionFactor");
  look_for_jumps(review, plan.carbohydrate_ratio, "/plan/day/carbohydrateRatio");
  look_for_jumps(review, plan.target, "/plan/day/target");
  look_for_jumps(review, plan.basal, "/plan/day/basal");
  look_for_strong_nights(review, plan.correction_factor, "/plan/day/correctionFactor");
  look_for_strong_nights(review, plan.carbohydrate_ratio, "/plan/day/carbohydrateRatio");
  look_for_strong_nights(review, plan.target, "/plan/day/target");
}

}  // namespace stopgap::review
