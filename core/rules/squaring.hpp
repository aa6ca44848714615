// Squaring: after an injection the pump's own count is kept true by one of two ways, a delivery off the body of the same
// amount or automation paused. Ketones acting: automation off always, off-body besides if tubed. Source [rch-line] 2024 prints
// both steps together; "either way is enough without ketones" is common practice.
#pragma once
#include "rules/proposal.hpp"

namespace stopgap::rules {

// Changed within the lock.
bool is_recent_change(const Facts& facts, Instant changed);
// New set and reservoir for ketones. What was changed since suspicion, within the lock and after the last fault, is not changed
// again: the injection is repeated, not the change.
void change_set_and_reservoir(const Facts& facts, Proposal& proposal);
// Steps that keep the pump's count true; none where the pump is off.
void square(const Facts& facts, Proposal& proposal);

}  // namespace stopgap::rules
