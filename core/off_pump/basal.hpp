// Basal of the plan's schedule over a stretch of time, exactly, at the local time its offset gives; it runs on across midnight.
#pragma once
#include "model/plan.hpp"

namespace stopgap::without_pump {

// Nothing where `to` is not after `from`.
Insulin basal_over(const Scheduled<BasalRate>& schedule, Instant from, Instant to, Offset offset);
Insulin basal_of_a_day(const Scheduled<BasalRate>& schedule);

}  // namespace stopgap::without_pump
