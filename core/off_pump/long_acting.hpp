// Long-acting insulin: a day's basal times the plan's factor, in one part or two, down to the device; on the day of a journey the
// amounts of the published rule instead. It has its own hold, in which no further amount is named.
// Source: R-27, CV-22 [hamilton]; factor and two parts CV-23, first day by the clock CV-26 [fi-backup]; CV-24; journey CV-28 to CV-31.
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

LongState long_state(const Plan& plan, const Outage& outage, Instant now);
// The journey that a dose given now is for: the one asked about, as long as its amounts are not in, or the one whose second half is due.
std::optional<std::int64_t> journey_of(const Outage& outage, const std::optional<std::int64_t>& asked);
// The amount the team ordered on a call, where there is such an order that may be shown; else the plan's.
LongDose long_dose(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, bool ordered);
// An amount in the device's steps, and in as many injections as the device needs.
std::vector<Insulin> injections_of(Insulin units, const Device& device);

}  // namespace stopgap::without_pump
