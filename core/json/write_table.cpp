#include "json/write_table.hpp"

#include "figures/ketones.hpp"
#include "json/answer_words.hpp"
#include "json/reading_text.hpp"
#include "json/slot_text.hpp"
#include "json/write.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr std::array<std::string_view, 3> row_kinds{"low", "number", "HI"};
constexpr int times_digits = 1;

}  // namespace

void write_dose(Writer& out, std::string_view key, const std::optional<Insulin>& dose, const Plan& plan) {
  out.key(key);
  if (dose) out.text(dose_text(*dose, plan.decimal_mark));
  else out.null();
}

void write_cell(Writer& out, const TableCell& cell, const Plan& plan) {
  out.key("outcome").text(of(words::outcomes, cell.outcome)).key("decidedBy").text(of(words::rules, cell.decided_by));
  out.key("call").text(of(words::calls, cell.call));
  write_dose(out, "dose", cell.dose, plan);
  out.key("chosen");
  if (cell.dose) out.text(of(words::chosen, cell.chosen));
  else out.null();
  out.key("cut").truth(cell.cut).key("timesUsual");
  if (cell.times_usual) out.text(decimal_text(*cell.times_usual, times_digits, plan.decimal_mark));
  else out.null();
  out.key("grams");
  if (cell.carbohydrate > Carbohydrate{}) out.text(decimal_text(cell.carbohydrate.in_grams(), 0, plan.decimal_mark));
  else out.null();
}

void write_row_head(Writer& out, const std::vector<TableRow>& rows, std::size_t index, const Plan& plan) {
  const TableRow& row = rows[index];
  out.key("kind").text(of(row_kinds, row.kind)).key("glucose");
  if (row.kind == TableRow::Kind::HI) out.null();
  else out.text(level_text(row.glucose.in_grains(), plan));
  // The last reading of a row of numbers: one display step under the next row.
  out.key("to");
  const bool ends = row.kind == TableRow::Kind::number && rows[index + 1].kind == TableRow::Kind::number;
  const std::int64_t step = plan.unit == GlucoseUnit::mmol ? grains_per_mmol_hundredth * 10 : grains_per_mg_tenth * 10;
  if (ends) out.text(level_text(rows[index + 1].glucose.in_grains() - step, plan));
  else out.null();
}

void write_columns(Writer& out, const std::vector<Ketones>& edges, const Plan& plan) {
  out.key("columns").open('[');
  for (std::size_t i = 0; i < edges.size(); ++i) {
    out.open('{').key("key").text("blood").key("from").text(number_text(edges[i], plan.decimal_mark)).key("to");
    if (i + 1 < edges.size()) out.text(number_text(Ketones::mmol_tenths(edges[i + 1].in_mmol_tenths() - 1), plan.decimal_mark));
    else out.null();
    out.key("urine").open('[');
    // Whatever row names it, the strip's strongest word stands where it is read: at the level that is always an emergency.
    for (const KetoneRow& row : plan.ketones.rows)
      for (const StripWord strip : row.urine) {
        const Ketones column = strip == StripWord::large ? figures::ketones_help_now.value : row.from;
        if (column == edges[i]) out.text(of(words::strip_words, strip));
      }
    out.close(']').key("acts").truth(edges[i] >= plan.ketones.act_from).close('}');
  }
  out.open('{').key("key").text("notTested").key("from").null().key("to").null().key("urine").open('[').close(']');
  out.key("acts").truth(false).close('}').close(']');
}

}  // namespace stopgap::json
