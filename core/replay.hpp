// A record as it stood, moment by moment, and what the plan led to at its readings.
#pragma once
#include <optional>
#include <vector>
#include "model/plan.hpp"
#include "model/record.hpp"
#include "model/story.hpp"

namespace stopgap {

// What the plan led to, for each event of the record between the two moments that brought a reading; one answer a moment, at
// the last reading of it.
std::vector<std::optional<LedTo>> replay(const Plan& plan, const Record& record, std::size_t first, std::size_t end);

}  // namespace stopgap
