// Exact writing of what the desk asks: the findings of a review with the table of doses, and the changes between two plans.
// Amounts are texts made here, with the plan's decimal mark; a level of glucose carries its unit.
#pragma once
#include <string>
#include <string_view>
#include <vector>
#include "json/writer.hpp"
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

std::string write_review(const ReviewAnswer& answer, const Plan& plan);
// The key `planFindings`: what the review refuses in a plan that is in use all the same.
void write_plan_findings(Writer& out, const std::vector<Finding>& refused, const Plan& plan);
std::string write_changes(const std::vector<PlanChange>& changes, std::string_view fingerprint_before, std::string_view fingerprint_after);

}  // namespace stopgap::json
