// Insulin that should not have gone in: the facts behind TOO.
#pragma once
#include "rules/facts.hpp"

namespace stopgap::rules {

// Fills mistake_*, off_body_went_in, pump_doubled and last_excess. Needs glucose, the incident and what acts to be known.
void read_excess(Facts& facts);

// The part of it that hangs on one reading: whether glucose could go low with every dose absorbed. Nothing earlier is remembered: where
// glucose can no longer go low, the pump's doses did not arrive, and a ketosis must not wait for them to wear off.
void judge_doubling(Facts& facts, bool could_go_low);

}  // namespace stopgap::rules
