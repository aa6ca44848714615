// Readings as a meter shows them: mmol/L to one decimal always, mg/dL whole. A reading keeps its last zero; a dose never has one.
#pragma once
#include <string>
#include "model/reading.hpp"

namespace stopgap::json {

std::string number_text(const GlucoseReading& reading, char mark);  // only where the reading is a number
std::string number_text(Ketones blood, char mark);
std::string number_text(Glucose level, GlucoseUnit unit, char mark);

}  // namespace stopgap::json
