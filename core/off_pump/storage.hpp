// How long the insulin at hand, the reservoir and the set keep, from when each was last changed, CV-32 to CV-34.
// The plan says the days of its insulin; the box in hand wins.
#pragma once
#include "model/history.hpp"
#include "model/off_pump.hpp"

namespace stopgap::without_pump {

InsulinKept storage_of(const Plan& plan, const History& history, const Moment& now);

}  // namespace stopgap::without_pump
