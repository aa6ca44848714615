// Insulin that should not have gone in: the facts behind TOO.
#pragma once
#include "rules/facts.hpp"

namespace stopgap::rules {

// Fills mistake_*, off_body_went_in, pump_doubled and last_excess. Needs glucose, the incident and what acts to be known.
void read_excess(Facts& facts);

}  // namespace stopgap::rules
