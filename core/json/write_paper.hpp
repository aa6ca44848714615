// What every sheet of paper shares: whose plan and which revision, the sizes, the tables of doses, and lists of sentences.
#pragma once
#include <string_view>
#include <vector>
#include "documents/card.hpp"
#include "json/writer.hpp"

namespace stopgap::json {

void write_front(Writer& out, const Plan& plan, std::string_view engine);
void write_paper(Writer& out, Paper paper);
// A school's orders may ask for a call before a dose above a limit: each cell then says whether its dose is.
void write_spans(Writer& out, const std::vector<DoseSpan>& spans, const Plan& plan, std::optional<Insulin> call_first_above = std::nullopt);
void write_lines(Writer& out, std::string_view key, const std::vector<Line>& lines, const Plan& plan);
void write_contacts(Writer& out, const Plan& plan);

}  // namespace stopgap::json
