// Squaring: after an injection the pump's own count is kept true by one of two ways, a delivery off the body of the same
// amount or automation paused. Ketones acting: automation off always, off-body besides if tubed. Source [rch-line] 2024 prints
// both steps together; "either way is enough without ketones" is common practice.
#pragma once
#include "rules/proposal.hpp"

namespace stopgap::rules {

// New set and reservoir after a needle dose for ketones. What was changed since suspicion is not changed again while both
// improve, nor with the repeat of the ketone clock; still not falling after the lock, the new line is suspect as well.
void change_set_and_reservoir(const Facts& facts, Proposal& proposal);
void square(const Facts& facts, Proposal& proposal);

}  // namespace stopgap::rules
