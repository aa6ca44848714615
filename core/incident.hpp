// One incident told in order, for the talk afterwards. Pure: the record and the plan in, the story out.
// At each reading the plan is asked as the record stood then: what came later, strikes included, is not known yet. Insulin
// written down at the very moment of a reading comes after it, or every dose would seem to be given within its own hold.
#pragma once
#include "model/plan.hpp"
#include "model/record.hpp"
#include "model/story.hpp"

namespace stopgap {

// The rows point into the record, which must outlive the answer.
IncidentAnswer incident(const Plan& plan, const Record& record);

}  // namespace stopgap
