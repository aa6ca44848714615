// The parts of a table of doses that the desk, the card and the school's sheet write alike.
#pragma once
#include <optional>
#include <string_view>
#include <vector>
#include "json/writer.hpp"
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

void write_dose(Writer& out, std::string_view key, const std::optional<Insulin>& dose, const Plan& plan);
// Keys of an object the caller opens and closes.
void write_row_head(Writer& out, const std::vector<TableRow>& rows, std::size_t index, const Plan& plan);
void write_cell(Writer& out, const TableCell& cell, const Plan& plan);
// The lower edges of the columns, then "not tested". The words of the strip stand with the ketone row they belong to.
void write_columns(Writer& out, const std::vector<Ketones>& edges, const Plan& plan);

}  // namespace stopgap::json
