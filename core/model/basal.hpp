// Basal of the plan's schedule over a stretch of time, exactly, at the local time its offset gives; it runs on across midnight.
#pragma once
#include "model/plan.hpp"

namespace stopgap {

// Nothing where `to` is not after `from`.
Insulin basal_over(const Scheduled<BasalRate>& schedule, Instant from, Instant to, Offset offset);
Insulin basal_of_a_day(const Scheduled<BasalRate>& schedule);
// What long-acting insulin stands for in a day: that basal times the plan's factor.
Insulin long_acting_a_day(const Plan& plan);

}  // namespace stopgap
