// What the calls for paper ask beside the plan: the size of the sheet, the languages of the stranger's side, and a plan that may
// be printed. Errors: outOfRange for a paper or language there is none of, contradiction for a plan nobody may act on.
#pragma once
#include <vector>
#include "documents/card.hpp"
#include "json/text.hpp"

namespace stopgap::json {

Paper read_paper(const Node& node, std::string_view path, Refusals& refusals);
// In the order asked for; one said twice is refused.
std::vector<std::string_view> read_languages(const Node& node, std::string_view path, Refusals& refusals);
// A card outlives the screen: a draft, a withdrawn plan or one that another replaced is not printed at all.
void refuse_unless_agreed(const Plan& plan, std::string_view path, Refusals& refusals);

}  // namespace stopgap::json
