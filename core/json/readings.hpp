// A glucose or ketone reading inside a situation or an event, or the amount of an injection. Its other keys are asked for by the caller.
#pragma once
#include "json/fields.hpp"
#include "model/record.hpp"

namespace stopgap::json {

// {"value", "unit", "from"} or {"reading", "from"}; both at once contradict each other.
std::optional<GlucoseReading> glucose_reading(Fields& fields);
// Exactly one of {"blood"}, {"urine"} and, where a reading may be not known, {"unknown"}.
enum class Unknown : std::uint8_t { refused, allowed };
std::optional<KetoneReading> ketone_reading(Fields& fields, Unknown unknown);
// What somebody carried on an injection: the same, as an object of its own.
std::optional<GlucoseReading> glucose_reading(const Item& item);
std::optional<KetoneReading> ketone_reading(const Item& item);

// An amount that can be injected, and its "parts", which add up to it to the hundredth; no parts where there are none.
std::optional<Insulin> units_of(const Item& item);
std::optional<Parts> parts_of(Fields& event, const std::optional<Insulin>& units);

}  // namespace stopgap::json
