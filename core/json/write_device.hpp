// The device as it is drawn: marks after zero, the mark the plunger's edge stands at, and the marks that carry a printed figure.
#pragma once
#include "json/writer.hpp"
#include "model/plan.hpp"
#include "model/record.hpp"

namespace stopgap::json {

void write_device(Writer& out, const Plan& plan, DeviceKind with, Insulin total);

}  // namespace stopgap::json
