// What the record itself says about a moment, as a situation of it: for calls that nobody answers questions for.
#pragma once
#include "model/history.hpp"
#include "model/situation.hpp"

namespace stopgap {

// The readings that stand in the record: the latest glucose and ketones that still count, with the times they were taken.
Situation known_at(const History& history, const Moment& now);

}  // namespace stopgap
