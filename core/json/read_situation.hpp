// The reading of a situation as other requests carry it too.
#pragma once
#include "json/fields.hpp"
#include "model/situation.hpp"

namespace stopgap::json {

std::optional<Situation::Glucose> situation_glucose(const Item& item);

}  // namespace stopgap::json
