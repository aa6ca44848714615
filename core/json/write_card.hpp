// The answers of `card` and `schoolSheet`: content as keys, slots and texts, never layout.
#pragma once
#include <string>
#include <string_view>
#include <vector>
#include "documents/card.hpp"
#include "documents/school_sheet.hpp"

namespace stopgap::json {

std::string write_card(const Card& card, const Plan& plan, Paper paper, const std::vector<std::string_view>& languages, std::string_view engine);
std::string write_school_sheet(const SchoolSheet& sheet, const Plan& plan, Paper paper, std::string_view engine);

}  // namespace stopgap::json
