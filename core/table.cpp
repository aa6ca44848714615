#include "table.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/ketones.hpp"
#include "figures/table.hpp"

namespace stopgap {

std::vector<Glucose> table_rows(const Plan& plan) {
  const Glucose first = plan.ketones.carbohydrate_only_below, last = plan.limits.dosing_ceiling;
  std::vector<Glucose> rows{first, plan.high.middle, plan.high.trigger, last};
  const GlucoseFall step = plan.unit == GlucoseUnit::mmol ? figures::table_step_mmol.value : figures::table_step_mg.value;
  for (Glucose edge = Glucose{} + step; edge < last; edge = edge + step)
    if (edge > first) rows.push_back(edge);
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

std::vector<Ketones> table_columns(const Plan& plan) {
  std::vector<Ketones> edges{figures::ketones_help_now.value};
  for (const KetoneRow& row : plan.ketones.rows) edges.push_back(row.from);
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  return edges;
}

Situation table_cell_situation(const Plan& plan, const std::optional<Glucose>& row, Ketones ketones, const Moment& at) {
  Situation situation;
  situation.now = at;
  Situation::Glucose glucose;
  glucose.reading.unit = plan.unit;
  glucose.reading.word = row ? MeterWord::number : MeterWord::HI;
  glucose.reading.value = row.value_or(Glucose{});
  glucose.repeated = !row;
  situation.glucose = glucose;
  situation.ketones.reading.kind = KetoneKind::blood;
  situation.ketones.reading.blood = ketones;
  return situation;
}

Advice table_cell_advice(const Plan& plan, const std::optional<Glucose>& row, Ketones ketones, const Moment& at) {
  return advise(plan, Record{}, table_cell_situation(plan, row, ketones, at));
}

namespace {

TableCell cell_of(const Advice& advice) {
  TableCell cell;
  cell.outcome = advice.outcome;
  cell.decided_by = advice.decided_by;
  cell.call = advice.call;
  cell.carbohydrate = advice.carbohydrate;
  if (!advice.dose) return cell;
  cell.dose = advice.dose->total();
  cell.chosen = advice.dose->working.chosen;
  cell.cut = !advice.dose->working.cut.is_zero();
  cell.times_usual = advice.dose->times_usual;
  return cell;
}

TableRow row_of(const Plan& plan, TableRow::Kind kind, const std::optional<Glucose>& edge, const Moment& at) {
  TableRow row;
  row.kind = kind;
  row.glucose = edge.value_or(Glucose{});
  for (const Ketones ketones : table_columns(plan)) row.cells.push_back(cell_of(table_cell_advice(plan, edge, ketones, at)));
  Situation not_tested = table_cell_situation(plan, edge, {}, at);
  not_tested.ketones.reading = {};
  row.cells.push_back(cell_of(advise(plan, Record{}, not_tested)));
  return row;
}

}  // namespace

TableCell cell_without_strips(const Plan& plan, const std::optional<Glucose>& row, const Moment& at, Viewer viewer) {
  Situation situation = table_cell_situation(plan, row, {}, at);
  situation.ketones.reading = {};
  situation.ketones.reading.kind = KetoneKind::noStrips;
  situation.viewer = viewer;
  return cell_of(advise(plan, Record{}, situation));
}

std::vector<TableRow> whole_table(const Plan& plan, const Moment& at) {
  std::vector<TableRow> rows{row_of(plan, TableRow::Kind::low, plan.low.below, at)};
  // Between low and the first row of doses: carbohydrate at most.
  const GlucoseFall step = plan.unit == GlucoseUnit::mmol ? GlucoseFall::mmol_tenths(1) : GlucoseFall::mg(1);
  const Glucose above_low = plan.low.below + step;
  if (above_low < plan.ketones.carbohydrate_only_below) rows.push_back(row_of(plan, TableRow::Kind::number, above_low, at));
  for (const Glucose edge : table_rows(plan)) rows.push_back(row_of(plan, TableRow::Kind::number, edge, at));
  rows.push_back(row_of(plan, TableRow::Kind::HI, std::nullopt, at));
  return rows;
}

}  // namespace stopgap
