#include "json/reading_text.hpp"

namespace stopgap::json {
namespace {

std::string tenths_text(std::int64_t tenths, char mark) {
  return std::to_string(tenths / 10) + mark + std::to_string(tenths % 10);
}

}  // namespace

std::string number_text(Glucose level, GlucoseUnit unit, char mark) {
  // Both divide without a rest: the readers take no finer reading.
  if (unit == GlucoseUnit::mmol) return tenths_text(level.in_grains() / (grains_per_mmol_hundredth * 10), mark);
  return std::to_string(level.in_grains() / (grains_per_mg_tenth * 10));
}

std::string number_text(const GlucoseReading& reading, char mark) { return number_text(reading.value, reading.unit, mark); }

std::string number_text(Ketones blood, char mark) { return tenths_text(blood.in_mmol_tenths(), mark); }

}  // namespace stopgap::json
