// The long-acting insulin that the record tells of: what it covers, when the next is due, what of a journey is in.
#pragma once
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `long_acting` and `long_cover`.
void read_long(Outage& outage, const Plan& plan, const History& history, Instant now);

// Whether a first part at this clock time is the morning's, half of it, or the evening's (CV-26 [fi-backup]).
bool is_half_part(TimeOfDay time);
bool is_evening_part(TimeOfDay time);
// How long after a part the next one is due; once a day where there is one part.
Duration span_to_next_part(const Plan& plan, bool half);

// The share of a day's dose that the published rule gives on the day of a journey: one dose going east, each of two going west.
// Nothing where no such rule applies: few zones, or a plan in two parts.
std::optional<Fraction> journey_share(const Plan& plan, std::int64_t zones_east);
bool changes_basal(std::int64_t zones_east);

}  // namespace stopgap::without_pump
