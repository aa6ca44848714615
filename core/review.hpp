// What the desk must find in a plan before somebody agrees it, and the table of every dose it can lead to. The review never
// changes a number. What cannot be read at all (edges out of order, another concentration, a missing cell for any glucose) is
// refused by the reader and never comes here.
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>
#include "model/answers.hpp"
#include "model/hidden_character.hpp"
#include "model/plan.hpp"

namespace stopgap {

// The text that stands at a path of the plan, or none: see Finding::value.
using TextAt = std::function<std::string(std::string_view path)>;

// `hidden`: what the reader found in the plan's texts, beside what the plan says.
ReviewAnswer review_plan(const Plan& plan, const TextAt& text_at, const std::vector<HiddenCharacter>& hidden);
// The findings alone, without what was confirmed, the tables, the numbers beside them, and the characters that nobody sees: those
// change no dose, so a plan in use is not called wrong at night because of one.
std::vector<Finding> findings_of(const Plan& plan);

}  // namespace stopgap
