// A plan in use with a finding that would keep it from being agreed today still gives its doses: an update must not take them away
// at 03:00. But every advice says so, and where the number found bears on what is shown, the team is called at least. The findings
// come in from outside: the rules and the advice know nothing of the review.
#pragma once
#include <vector>
#include "model/advice.hpp"
#include "model/answers.hpp"
#include "model/off_pump.hpp"

namespace stopgap {

// `refused`: the findings of the plan that are `refuse`; without any, nothing changes.
void tell_plan_findings(const std::vector<Finding>& refused, Advice& advice);
void tell_plan_findings(const std::vector<Finding>& refused, OffPumpAnswer& answer);

}  // namespace stopgap
