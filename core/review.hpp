// What the desk must find in a plan before somebody agrees it, and the table of every dose it can lead to. The review never
// changes a number. What cannot be read at all (edges out of order, another concentration, a missing cell for any glucose) is
// refused by the reader and never comes here.
#pragma once
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap {

ReviewAnswer review_plan(const Plan& plan);
// The findings alone, without the tables and the numbers beside them.
std::vector<Finding> findings_of(const Plan& plan);

}  // namespace stopgap
