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

// As the field shows it.
SlotValue shown(CorrectionFactor factor) { return GlucoseFall::grains(factor.in_grains_per_unit()); }
SlotValue shown(CarbohydrateRatio ratio) { return PlainNumber{ratio.in_grams_per_unit()}; }
SlotValue shown(Glucose target) { return target; }
SlotValue shown(BasalRate rate) { return PlainNumber{Fraction::of(rate.in_hundredths_per_hour(), 100)}; }

// Midnight joins the last value to the first, where the two are not neighbours already.
template <class Value>
void look_for_jumps(Review& review, const Scheduled<Value>& schedule, std::string_view list) {
  const auto& entries = schedule.entries;
  const auto compare = [&](std::size_t before, std::size_t after) {
    const Fraction a{size_of(entries[before].value)}, b{size_of(entries[after].value)};
    if (std::max(a, b) > figures::schedule_jump.value * std::min(a, b))
      review.find(figures::schedule_jump, "schedule-jump", FindingLevel::confirm, item_path(list, after, "value"),
                  {{"before", entries[before].from}, {"valueBefore", shown(entries[before].value)}, {"after", entries[after].from},
                   {"valueAfter", shown(entries[after].value)}, {"times", PlainNumber{figures::schedule_jump.value}}});
  };
  if (entries.size() > 2) compare(entries.size() - 1, 0);
  for (std::size_t i = 1; i < entries.size(); ++i) compare(i - 1, i);
}

// An entry belongs to the night or to the day, wherever it lies longer; the night where it lies equally long in both.
bool is_of_the_night(TimeOfDay from, TimeOfDay until) {
  const auto within = [&](TimeOfDay begin, TimeOfDay end) {
    return std::max<std::int64_t>(0, std::min(until, end).in_minutes() - std::max(from, begin).in_minutes());
  };
  const TimeOfDay midnight{}, next_midnight = TimeOfDay::minutes(minutes_a_day), begins = figures::night_begins.value, ends = figures::night_ends.value;
  return within(midnight, ends) + within(begins, next_midnight) >= within(ends, begins);
}

// A smaller factor, ratio or target means more insulin. Basal is left out: many people need more of it towards the morning.
template <class Value>
void look_for_strong_nights(Review& review, const Scheduled<Value>& schedule, std::string_view list) {
  const auto& entries = schedule.entries;
  std::optional<std::size_t> strongest_by_day, strongest_by_night;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const TimeOfDay until = i + 1 < entries.size() ? entries[i + 1].from : TimeOfDay::minutes(minutes_a_day);
    auto& strongest = is_of_the_night(entries[i].from, until) ? strongest_by_night : strongest_by_day;
    if (!strongest || size_of(entries[i].value) < size_of(entries[*strongest].value)) strongest = i;
  }
  if (!strongest_by_day || !strongest_by_night) return;
  const auto& night = entries[*strongest_by_night];
  const auto& day = entries[*strongest_by_day];
  if (size_of(night.value) < size_of(day.value))
    review.find(figures::night_begins, "night-stronger", FindingLevel::confirm, item_path(list, *strongest_by_night, "value"),
                {{"night", night.from}, {"valueNight", shown(night.value)}, {"day", day.from}, {"valueDay", shown(day.value)}});
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
    if (target >= plan.high.middle)
      review.find(figures::target_under_middle, "target-at-middle", FindingLevel::refuse, path, {{"target", target}, {"middle", plan.high.middle}});
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
