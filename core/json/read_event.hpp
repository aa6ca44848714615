// One entry of a record, read by itself: a row that cannot be read must not hide the others.
// Errors: what is wrong is added to the refusals; the event is used only if nothing was added.
#pragma once
#include <string_view>
#include "json/text.hpp"
#include "model/record.hpp"

namespace stopgap::json {

Event read_event(const Node& node, std::string_view path, Refusals& refusals);

}  // namespace stopgap::json
