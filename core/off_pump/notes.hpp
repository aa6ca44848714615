// What is good to know besides, and whether the team is called: and the house.
#pragma once
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {

// Fills `notes` and `calls`, and raises `call`; everything else of the answer is there already.
void add_notes(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, OffPumpAnswer& answer);

}  // namespace stopgap::without_pump
