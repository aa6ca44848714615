#include "model/basal.hpp"

#include <algorithm>

namespace stopgap {
namespace {

constexpr std::int64_t seconds_a_day = 86400;

std::int64_t second_of_day(Instant instant, Offset offset) {
  const std::int64_t within = (instant.in_epoch_seconds() + offset.in_minutes_east() * 60) % seconds_a_day;
  return within < 0 ? within + seconds_a_day : within;
}

Insulin at_rate(BasalRate rate, Duration span) {
  return Insulin::exactly(Fraction::of(Wide{rate.in_hundredths_per_hour()} * span.in_seconds(), 100 * 3600));
}

}  // namespace

Insulin basal_over(const Scheduled<BasalRate>& schedule, Instant from, Instant to, Offset offset) {
  Insulin sum;
  while (from < to) {
    const std::int64_t second = second_of_day(from, offset);
    std::int64_t change = seconds_a_day;
    for (const auto& entry : schedule.entries)
      if (entry.from.in_minutes() * 60 > second) change = std::min(change, entry.from.in_minutes() * 60);
    const Instant end = std::min(to, from + Duration::seconds(change - second));
    sum = sum + at_rate(schedule.at(TimeOfDay::minutes(second / 60)), end - from);
    from = end;
  }
  return sum;
}

Insulin basal_of_a_day(const Scheduled<BasalRate>& schedule) {
  return basal_over(schedule, Instant{}, Instant{} + Duration::seconds(seconds_a_day), Offset{});
}

Insulin long_acting_a_day(const Plan& plan) { return plan.off_pump.long_acting_factor * basal_of_a_day(plan.basal); }

}  // namespace stopgap
