// The answer of `incident`: the story as data and texts, amounts and clock times written here.
#pragma once
#include <string>
#include <string_view>
#include "model/plan.hpp"
#include "model/story.hpp"

namespace stopgap::json {

std::string write_incident(const IncidentAnswer& answer, const Plan& plan, std::string_view engine);

}  // namespace stopgap::json
