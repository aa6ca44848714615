// Looks as a calendar text (iCalendar, RFC 5545), for a phone whose own calendar can wake somebody. It holds times and one line
// of words from whoever asks: no name, no dose, nothing of the record.
// Shape: times in UTC, lines of at most 75 octets ended by CRLF, each look an event with one alarm, which comes last. The id of an
// event is made from the plan's id and the time alone, so that a look brought in twice stands there once.
// Errors: none; without a look there is no calendar (RFC 5545, 3.6: a calendar holds at least one component).
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "units/time.hpp"

namespace stopgap::json {

std::optional<std::string> calendar_text(const std::vector<Instant>& looks, std::string_view plan_id, Instant now,
                                         std::string_view words, std::string_view engine);

}  // namespace stopgap::json
