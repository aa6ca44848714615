// What the review refuses in a plan, kept beside the plan's fingerprint: a phone asks about one plan again and again, and the review
// works out hundreds of doses. The same text has the same findings, so keeping them never changes an answer.
#pragma once
#include <vector>
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap {

// Nothing for a draft: nobody is treated by one.
std::vector<Finding> refused_in_use(const Plan& plan);

}  // namespace stopgap
