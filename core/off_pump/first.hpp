// What must come before any basal: never two doses at once, and ketones, lows and a clock in doubt come first.
#pragma once
#include <optional>
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// The situation as the record and the question give it: the readings that stand, what was typed now, signs noted lately.
Situation situation_of(const History& history, const OffPumpQuestion& question);
// The record as the way down must see it: with the pump off from now on, where nothing was recorded of it.
Record with_pump_off(const Record& record, const Outage& outage, const Moment& now);

// What the way down's advice means for somebody off the pump.
std::optional<ComesFirst> comes_first(const Advice& advice);
// A basal or long-acting dose that was shown, and nobody said whether it was injected.
std::optional<ComesFirst> unanswered_basal(const Plan& plan, const History& history, Instant now);

}  // namespace stopgap::without_pump
