// The bridges that the record tells of: which hours each one's basal stands for, and what is carried into the next.
#pragma once
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `bridges` and `single_steps`, after long-acting insulin was read: a bridge gives what that does not stand for.
void read_bridges(Outage& outage, const Plan& plan, const History& history);

// A dose of rapid insulin, shown or injected, that stands for hours of basal.
bool holds_basal(const Event& event);

}  // namespace stopgap::without_pump
