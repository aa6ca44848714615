// What must come before any basal: never two doses at once, and ketones, lows and a clock in doubt come first.
#pragma once
#include <optional>
#include "model/advice.hpp"
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"
#include "rules/facts.hpp"

namespace stopgap::without_pump {

// The situation as the record and the question give it: the readings that stand, what was typed now, signs noted lately.
Situation situation_of(const History& history, const OffPumpQuestion& question);
// A record that says nothing of the pump, as the way down must see it: with the pump off from now on.
Record with_pump_off(Record seen, const Moment& now);

// What the way down's advice means for somebody off the pump.
std::optional<ComesFirst> comes_first(const Advice& advice, const rules::Facts& facts);
// Nothing passes a record or a clock in doubt, nor a dose that was shown while nobody said whether it was injected: rescue, basal, long-acting.
std::optional<ComesFirst> nothing_passes(const rules::Facts& facts);

}  // namespace stopgap::without_pump
