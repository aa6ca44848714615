// Carbohydrate against a low. House rule "matchedCarbohydrate": no published text gives it, the agreeing clinician accepts it.
#pragma once
#include "rules/facts.hpp"

namespace stopgap::rules {

// max(0, dose + acting - correction) × ratio, up to the next 5 g: what keeps this dose and the insulin on board from going
// under the target. With `absorbed` every dose is treated as absorbed. Not yet limited to what is eaten at once.
Carbohydrate matched_in_full(const Facts& facts, Insulin rescue, bool absorbed);
// The same, at most 60 g now; the rest follows at the next looks.
Carbohydrate matched(const Facts& facts, Insulin rescue, bool absorbed);
// For a low: the plan's grams, or all units acting × ratio if more, at most 60 g.
Carbohydrate for_a_low(const Facts& facts);

}  // namespace stopgap::rules
