// The reasons of an advice, complete and minimal: a fact is named exactly if changing it alone can change the advice. They are
// found by asking again: each fact is varied, everything else left as it is, and the answers are compared. So no rule has to
// remember to explain itself, and an explanation cannot forget a fact that decided.
// Facts: every key of the situation (a key that is not there is a fact too), the plan's agreement and its two risk flags, and
// each kind of event that stands in the record (varied by leaving that kind out, or its latest alone, or turning a switch the other way).
#pragma once
#include <vector>
#include "model/answers.hpp"
#include "model/plan.hpp"
#include "model/record.hpp"
#include "model/situation.hpp"

namespace stopgap {

// `refused`: what plan_findings.hpp added to this advice, so that it is added to each one it is compared with.
std::vector<Because> because(const Plan& plan, const Record& record, const Situation& situation, const Advice& advice,
                             const std::vector<Finding>& refused = {});

}  // namespace stopgap
