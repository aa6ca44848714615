// The times to set an alarm for: each bridge by its clock time, for as long as it is needed; then the next long-acting.
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/bridge.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `alarms`; the way, the doses and the hours are chosen by then.
void set_alarms(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question, const Hours& hours, OffPumpAnswer& answer);

}  // namespace stopgap::without_pump
