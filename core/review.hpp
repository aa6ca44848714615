// What the desk must find in a plan before somebody agrees it, and the table of every dose it can lead to. The review never
// changes a number. What cannot be read at all (edges out of order, another concentration, a missing cell for any glucose) is
// refused by the reader and never comes here.
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap {

// The text that stands at a path of the plan, or none: see Finding::value.
using TextAt = std::function<std::string(std::string_view path)>;

ReviewAnswer review_plan(const Plan& plan, const TextAt& text_at);
// The findings alone, without what was confirmed, the tables and the numbers beside them.
std::vector<Finding> findings_of(const Plan& plan);

}  // namespace stopgap
