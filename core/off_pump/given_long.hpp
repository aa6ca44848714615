// The long-acting insulin that the record tells of: what it covers, how long it holds, what the team ordered of it on a call.
#pragma once
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `long_acting` and `long_cover`.
void read_long(Outage& outage, const Plan& plan, const History& history, Instant now);
// The order for long-acting insulin that stands at this moment, or null.
const Event* order_at(const History& history, Instant now);

// Whether a first part at this clock time is the morning's, half of it, or the evening's (CV-26 [fi-backup]).
bool is_half_part(TimeOfDay time);
bool is_evening_part(TimeOfDay time);

}  // namespace stopgap::without_pump
