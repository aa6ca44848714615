// What somebody off the pump asks: the members of the request beside plan and record.
#pragma once
#include "json/text.hpp"
#include "model/off_pump.hpp"

namespace stopgap::json {

// `request` may also hold "plan" and "record", which are read elsewhere; anything else unknown is refused. `plan`: as it was read, and
// asked only if nothing in it was refused.
OffPumpQuestion read_off_pump(const Node& request, const Plan& plan, Refusals& refusals);

// `shown`: units and parts as they were shown; `units`: what went in.
struct PartsAsked { Parts shown; Insulin units; };
PartsAsked read_parts_given(const Node& request, Refusals& refusals);

}  // namespace stopgap::json
