// Back on the pump: usual rates once the long-acting has worn off, sooner only with what the plan wrote; automation off until
// then; a look at 2 h; what to do with the pump and for food now. The basal that was missed is for the talk with the clinic: R-24 [scheen-1987], R-27 [hamilton].
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

Back back_of(const Plan& plan, const History& history, const Outage& outage, const Moment& now,
             const std::array<std::optional<Instant>, hold_kinds>& holds);

}  // namespace stopgap::without_pump
