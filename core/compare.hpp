// Every value that differs between two plans, in the order of the plan format. Both have passed the strict reading by then.
#pragma once
#include <vector>
#include "json/text.hpp"
#include "model/answers.hpp"

namespace stopgap {

// Lists are compared place by place. Each change is one value, never a whole object, so that each can be told in words.
std::vector<PlanChange> compare_plans(const json::Node& before, const json::Node& after);

}  // namespace stopgap
