// Where a text of a plan holds a character that nobody can see. Such a plan is read and gives its doses: it must not be taken away from
// somebody who has it. The review refuses to agree it.
// Shape: a tree that passed the strict reading in, places out, in the order of the text. Errors: none.
#pragma once
#include <string>
#include <string_view>
#include <vector>
#include "json/text.hpp"
#include "model/hidden_character.hpp"

namespace stopgap::json {

std::vector<HiddenCharacter> hidden_characters(const Node& plan, std::string_view path);

}  // namespace stopgap::json
