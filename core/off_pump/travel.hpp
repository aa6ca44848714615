// Long-acting insulin across time zones, by the published rule. East shortens the day: less, at the home clock's time. West
// lengthens it: half at the home clock's time, half at the usual hour there. Times are instants, so no hold is shortened.
// Source: CV-28 to CV-30 [zones-2013]; CV-31 [fi-backup].
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

Travel travel_of(const Plan& plan, const Outage& outage, std::int64_t zones_east, Instant now);

}  // namespace stopgap::without_pump
