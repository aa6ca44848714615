// What stands in a slot, as a person reads it: amounts with the plan's decimal mark, a level of glucose with its unit.
#pragma once
#include <string>
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

// A glucose as a meter shows it: one decimal in mmol/L, always; none in mg/dL.
std::string level_text(std::int64_t grains, const Plan& plan);
std::string slot_text(const SlotValue& value, const Plan& plan);

}  // namespace stopgap::json
