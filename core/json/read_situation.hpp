// The reading of a situation as other requests carry it too.
#pragma once
#include "json/fields.hpp"
#include "model/plan.hpp"
#include "model/situation.hpp"

namespace stopgap::json {

std::optional<Situation::Glucose> situation_glucose(const Item& item);

// Refuses what stands at `key` where the plan has no such device.
void check_device(const Plan& plan, DeviceKind with, std::string_view key, Fields& fields);

}  // namespace stopgap::json
