// Strict reading of plan, record and situation: the tree in, a valid model out, or every reason at once with its path.
// Nothing is guessed: an unknown key, a value out of its range, a digit too many and a contradiction all refuse.
// A caller uses the result only if no refusal was added.
#pragma once
#include "json/text.hpp"
#include "model/plan.hpp"
#include "model/record.hpp"
#include "model/situation.hpp"

namespace stopgap::json {

Plan read_plan(const Node& node, std::string_view path, Refusals& refusals);
Record read_record(const Node& node, std::string_view path, const std::string* plan_id, Refusals& refusals);
Situation read_situation(const Node& node, std::string_view path, const Plan& plan, Refusals& refusals);
// "now" of the calls that take no situation.
Moment read_now(const Node& node, std::string_view path, Refusals& refusals);
// One short line of words.
std::optional<std::string> read_title(const Node& node, std::string_view path, Refusals& refusals);
std::optional<Day> read_day(const Node& node, std::string_view path, Refusals& refusals);
std::optional<GlucoseUnit> read_glucose_unit(const Node& node, std::string_view path, Refusals& refusals);

}  // namespace stopgap::json
