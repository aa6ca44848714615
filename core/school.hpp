// What a school's signed orders change, after the rules have spoken: the printed cell's dose instead of the working where
// orders say tableOnly, no second needle of rapid insulin on one day, no dose while home does not answer, the call before the
// injection above a limit; at least the team is called where no dose is left. Expired orders are rule PLN.
// Source: staff act on signed orders, judgement is not delegated [school-nasn] [school-ada]; a table beside any sum is derived.
#pragma once
#include "rules/proposal.hpp"

namespace stopgap {

void apply_school_orders(const rules::Facts& facts, rules::Proposal& proposal);

}  // namespace stopgap
