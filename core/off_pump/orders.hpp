// What the team ordered on a call: whether it still stands, and whether it may be shown as an injection at all.
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// The order for this insulin that stands at this moment, or null: given on an answered call, for one hour, neither injected nor refused.
const Event* order_at(const History& history, Instant now, InsulinType insulin);
// Why an order is never shown as an injection, however often it was said.
OrderBlock block_of(const Plan& plan, const LongAtWork& work, const Event& order);

}  // namespace stopgap::without_pump
