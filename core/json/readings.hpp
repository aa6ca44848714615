// A glucose or ketone reading inside a situation or an event. Its other keys are asked for by the caller.
#pragma once
#include "json/fields.hpp"
#include "model/reading.hpp"

namespace stopgap::json {

// {"value", "unit", "from"} or {"reading", "from"}; both at once contradict each other.
std::optional<GlucoseReading> glucose_reading(Fields& fields);
// Exactly one of {"blood"}, {"urine"} and, where a reading may be not known, {"unknown"}.
enum class Unknown : std::uint8_t { refused, allowed };
std::optional<KetoneReading> ketone_reading(Fields& fields, Unknown unknown);
// What somebody carried on an injection: the same, as an object of its own.
std::optional<GlucoseReading> glucose_reading(const Item& item);
std::optional<KetoneReading> ketone_reading(const Item& item);

}  // namespace stopgap::json
