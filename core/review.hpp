// What the desk must find in a plan before somebody agrees it, and the table of every dose it can lead to. The review never
// changes a number. What cannot be read at all (edges out of order, another concentration, a missing cell for any glucose) is
// refused by the reader and never comes here.
#pragma once
#include <vector>
#include "model/answers.hpp"
#include "model/hidden_character.hpp"
#include "model/plan.hpp"

namespace stopgap {

// `hidden`: what the reader found in the plan's texts, beside what the plan says.
ReviewAnswer review_plan(const Plan& plan, const std::vector<HiddenCharacter>& hidden = {});

}  // namespace stopgap
