// Off the pump, and back: what comes first, which way, the bridge, long-acting insulin, the return, and what keeps how long.
// Pure, as the way down is: the same request gives the same answer on both sides.
#pragma once
#include "model/off_pump.hpp"
#include "model/plan.hpp"
#include "model/record.hpp"

namespace stopgap {

OffPumpAnswer off_pump(const Plan& plan, const Record& record, const OffPumpQuestion& question);

// The parts of an injection when another amount went in than was shown: the correction counts first, then basal, then the meal, and
// what was drawn over the dose counts as correction, so that what is on board is never thought less than it is.
Parts parts_given(const Parts& shown, Insulin units);

}  // namespace stopgap
