// The long-acting insulin that the record tells of: what it covers, when the next is due, what of a journey is in.
#pragma once
#include "model/long_acting.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `long_acting` and `long_cover`.
void read_long(Outage& outage, const Plan& plan, const History& history, Instant now);

}  // namespace stopgap::without_pump
