// What stands at a place of a plan as one text: the number to be typed again for a finding, by which its confirmation is known.
#pragma once
#include <string>
#include <string_view>
#include "json/text.hpp"

namespace stopgap::json {

// `pointer` begins with /plan. A number without needless zeros, the one number of a cell, or a text; empty where several values or
// none stand there.
std::string text_at(const Node& plan, std::string_view pointer);

}  // namespace stopgap::json
