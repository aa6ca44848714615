#include "json/write_review.hpp"

#include <algorithm>
#include "figures/review.hpp"
#include "json/answer_words.hpp"
#include "json/reading_text.hpp"
#include "json/write.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr std::array<std::string_view, 3> levels{"refuse", "confirm", "note"};
constexpr std::array<std::string_view, 3> change_kinds{"changed", "added", "removed"};
constexpr std::array<std::string_view, 3> row_kinds{"low", "number", "HI"};
// In the order of Mark.
constexpr std::array<std::string_view, 8> marks{"READ", "SECOND-HAND", "DERIVED", "MEMORY", "MODEL", "PRACTICE", "HOUSE", "RULE"};
// What a figure names in the place of a source: the mark already says it.
constexpr std::array<std::string_view, 3> no_sources{"house", "common practice", "from memory"};
// A plan can list exactly the rules the review asks for.
static_assert(words::house_rules == figures::house_rules_to_agree);
constexpr std::string_view no_break_space = "\xC2\xA0";
constexpr int plain_digits = 2, percent_digits = 0, times_digits = 1;

// A glucose as a meter shows it: one decimal in mmol/L, always; none in mg/dL.
std::string level_text(std::int64_t grains, const Plan& plan) {
  if (plan.unit == GlucoseUnit::mg) return decimal_text(Fraction::of(grains, grains_per_mg_tenth * 10), 0, plan.decimal_mark);
  std::string out = decimal_text(Fraction::of(grains, grains_per_mmol_hundredth * 100), 1, plan.decimal_mark);
  if (out.find(plan.decimal_mark) == std::string::npos) (out += plan.decimal_mark) += '0';
  return out;
}
std::string with_unit(std::string text, const Plan& plan) {
  return (std::move(text) += no_break_space) += of(words::glucose_units, plan.unit);
}
std::string text_of_value(Insulin amount, const Plan& plan) { return dose_text(amount, plan.decimal_mark); }
std::string text_of_value(Glucose level, const Plan& plan) { return with_unit(level_text(level.in_grains(), plan), plan); }
// A fall or a factor keeps its own digits: 0.75 mmol/L is not 0.8.
std::string text_of_value(GlucoseFall fall, const Plan& plan) {
  const std::int64_t one = plan.unit == GlucoseUnit::mmol ? grains_per_mmol_hundredth * 100 : grains_per_mg_tenth * 10;
  return with_unit(decimal_text(Fraction::of(fall.in_grains(), one), plain_digits, plan.decimal_mark), plan);
}
std::string text_of_value(Ketones ketones, const Plan& plan) { return number_text(ketones, plan.decimal_mark); }
std::string text_of_value(Carbohydrate carbs, const Plan& plan) { return decimal_text(carbs.in_grams(), 0, plan.decimal_mark); }
std::string text_of_value(Day day, const Plan&) { return text_of(day); }
std::string text_of_value(TimeOfDay time, const Plan&) { return text_of(time); }
std::string text_of_value(Percent percent, const Plan& plan) {
  return decimal_text(percent.share * Fraction{100}, percent_digits, plan.decimal_mark);
}
std::string text_of_value(PlainNumber number, const Plan& plan) { return decimal_text(number.value, plain_digits, plan.decimal_mark); }
std::string text_of_value(const std::string& word, const Plan&) { return word; }

// A source where there is one; where there is none the mark already says so.
void write_ground(Writer& out, Mark mark, std::string_view source) {
  out.key("mark").text(of(marks, mark)).key("source");
  if (std::find(no_sources.begin(), no_sources.end(), source) != no_sources.end()) out.null();
  else out.text(source);
}

void write_findings(Writer& out, const std::vector<Finding>& findings, const Plan& plan) {
  out.key("findings").open('[');
  for (const Finding& finding : findings) {
    out.open('{').key("id").text(finding.id).key("level").text(of(levels, finding.level)).key("path").text(finding.path);
    out.key("slots").open('{');
    for (const Slot& slot : finding.slots)
      out.key(slot.name).text(std::visit([&](const auto& value) { return text_of_value(value, plan); }, slot.value));
    out.close('}');
    write_ground(out, finding.mark, finding.source);
    if (!finding.retyped.empty()) out.key("retyped").text(finding.retyped);
    out.close('}');
  }
  out.close(']');
}

void write_yardsticks(Writer& out, const std::vector<Yardstick>& yardsticks, const Plan& plan) {
  const auto text = [&](const SlotValue& slot) { return std::visit([&](const auto& value) { return text_of_value(value, plan); }, slot); };
  out.key("yardsticks").open('[');
  for (const Yardstick& yardstick : yardsticks) {
    out.open('{').key("id").text(yardstick.id).key("path").text(yardstick.path).key("have").text(text(yardstick.have)).key("expected");
    if (yardstick.expected) out.text(text(*yardstick.expected));
    else out.null();
    out.key("from").text(text(yardstick.from)).key("to").text(text(yardstick.to));
    write_ground(out, yardstick.mark, yardstick.source);
    out.close('}');
  }
  out.close(']');
}

void write_dose(Writer& out, std::string_view key, const std::optional<Insulin>& dose, const Plan& plan) {
  out.key(key);
  if (dose) out.text(dose_text(*dose, plan.decimal_mark));
  else out.null();
}

void write_cell(Writer& out, const TableCell& cell, const Plan& plan) {
  out.open('{').key("outcome").text(of(words::outcomes, cell.outcome)).key("decidedBy").text(of(words::rules, cell.decided_by));
  out.key("call").text(of(words::calls, cell.call));
  write_dose(out, "dose", cell.dose, plan);
  out.key("chosen");
  if (cell.dose) out.text(of(words::chosen, cell.chosen));
  else out.null();
  out.key("cut").truth(cell.cut).key("timesUsual");
  if (cell.times_usual) out.text(decimal_text(*cell.times_usual, times_digits, plan.decimal_mark));
  else out.null();
  out.key("grams");
  if (cell.carbohydrate > Carbohydrate{}) out.text(text_of_value(cell.carbohydrate, plan));
  else out.null();
  out.close('}');
}

void write_row(Writer& out, const DoseTable& table, std::size_t index, const Plan& plan) {
  const TableRow& row = table.rows[index];
  out.open('{').key("kind").text(of(row_kinds, row.kind)).key("glucose");
  if (row.kind == TableRow::Kind::HI) out.null();
  else out.text(level_text(row.glucose.in_grains(), plan));
  // The last reading of a row of numbers: one display step under the next row.
  out.key("to");
  const bool ends = row.kind == TableRow::Kind::number && table.rows[index + 1].kind == TableRow::Kind::number;
  const std::int64_t step = plan.unit == GlucoseUnit::mmol ? grains_per_mmol_hundredth * 10 : grains_per_mg_tenth * 10;
  if (ends) out.text(level_text(table.rows[index + 1].glucose.in_grains() - step, plan));
  else out.null();
  write_dose(out, "usual", row.usual, plan);
  out.key("cells").open('[');
  for (const TableCell& cell : row.cells) write_cell(out, cell, plan);
  out.close(']').close('}');
}

// The columns of the table, then "not tested". The words of the strip stand with the row they belong to.
void write_columns(Writer& out, const std::vector<Ketones>& edges, const Plan& plan) {
  out.key("columns").open('[');
  for (std::size_t i = 0; i < edges.size(); ++i) {
    out.open('{').key("key").text("blood").key("from").text(number_text(edges[i], plan.decimal_mark)).key("to");
    if (i + 1 < edges.size()) out.text(number_text(Ketones::mmol_tenths(edges[i + 1].in_mmol_tenths() - 1), plan.decimal_mark));
    else out.null();
    out.key("urine").open('[');
    for (const KetoneRow& row : plan.ketones.rows)
      if (row.from == edges[i])
        for (const StripWord strip : row.urine) out.text(of(words::strip_words, strip));
    out.close(']').key("acts").truth(edges[i] >= plan.ketones.act_from).close('}');
  }
  out.open('{').key("key").text("notTested").key("from").null().key("to").null().key("urine").open('[').close(']');
  out.key("acts").truth(false).close('}').close(']');
}

void write_table(Writer& out, const DoseTable& table, const Plan& plan) {
  out.open('{').key("at").text(text_of(table.at));
  write_columns(out, table.columns, plan);
  out.key("rows").open('[');
  for (std::size_t i = 0; i < table.rows.size(); ++i) write_row(out, table, i, plan);
  out.close(']').close('}');
}

}  // namespace

std::string write_review(const ReviewAnswer& answer, const Plan& plan) {
  Writer out;
  out.open('{');
  write_findings(out, answer.findings, plan);
  write_yardsticks(out, answer.yardsticks, plan);
  out.key("table").open('{').key("unit").text(of(words::glucose_units, plan.unit)).key("day");
  write_table(out, answer.day, plan);
  out.key("night");
  if (answer.night) write_table(out, *answer.night, plan);
  else out.null();
  out.key("others").open('[');
  for (const DoseTable& table : answer.others) write_table(out, table, plan);
  out.close(']').close('}').key("fingerprint").text(plan.fingerprint).close('}');
  return out.take();
}

std::string write_changes(const std::vector<PlanChange>& changes, std::string_view fingerprint_before, std::string_view fingerprint_after) {
  Writer out;
  out.open('{').key("changes").open('[');
  for (const PlanChange& change : changes) {
    out.open('{').key("path").text(change.path).key("kind").text(of(change_kinds, change.kind)).key("before");
    if (change.kind == PlanChange::Kind::added) out.null();
    else out.text(change.before);
    out.key("after");
    if (change.kind == PlanChange::Kind::removed) out.null();
    else out.text(change.after);
    out.close('}');
  }
  out.close(']').key("fingerprints").open('{').key("before").text(fingerprint_before).key("after").text(fingerprint_after).close('}').close('}');
  return out.take();
}

}  // namespace stopgap::json
