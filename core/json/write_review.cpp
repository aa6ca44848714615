#include "json/write_review.hpp"

#include <algorithm>
#include "figures/review.hpp"
#include "json/answer_words.hpp"
#include "json/slot_text.hpp"
#include "json/write.hpp"
#include "json/write_table.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr std::array<std::string_view, 3> levels{"refuse", "confirm", "note"};
constexpr std::array<std::string_view, 3> change_kinds{"changed", "added", "removed"};
// In the order of Mark.
constexpr std::array<std::string_view, 8> marks{"READ", "SECOND-HAND", "DERIVED", "MEMORY", "MODEL", "PRACTICE", "HOUSE", "RULE"};
// What a figure names in the place of a source: the mark already says it.
constexpr std::array<std::string_view, 3> no_sources{"house", "common practice", "from memory"};
// A plan can list exactly the rules the review asks for.
static_assert(words::house_rules == figures::house_rules_to_agree);

// A source where there is one; where there is none the mark already says so.
void write_ground(Writer& out, Mark mark, std::string_view source) {
  out.key("mark").text(of(marks, mark)).key("source");
  if (std::find(no_sources.begin(), no_sources.end(), source) != no_sources.end()) out.null();
  else out.text(source);
}

void write_slots(Writer& out, const Finding& finding, const Plan& plan) {
  out.key("slots").open('{');
  for (const Slot& slot : finding.slots) out.key(slot.name).text(slot_text(slot.value, plan));
  out.close('}');
}

void write_findings(Writer& out, const std::vector<Finding>& findings, const Plan& plan) {
  out.key("findings").open('[');
  for (const Finding& finding : findings) {
    out.open('{').key("id").text(finding.id).key("level").text(of(levels, finding.level)).key("path").text(finding.path);
    write_slots(out, finding, plan);
    write_ground(out, finding.mark, finding.source);
    out.key("value");
    if (finding.value.empty()) out.null();
    else out.text(finding.value);
    if (finding.level == FindingLevel::confirm) out.key("settled").truth(finding.settled());
    if (finding.settled()) out.key("retyped").text(finding.retyped);
    if (!finding.earlier.empty()) out.key("earlier").text(finding.earlier);
    out.close('}');
  }
  out.close(']');
  const auto is_refused = [](const Finding& finding) { return finding.level == FindingLevel::refuse; };
  const auto is_open = [](const Finding& finding) { return finding.level == FindingLevel::confirm && !finding.settled(); };
  out.key("mayBeTaken").truth(std::none_of(findings.begin(), findings.end(), is_refused));
  out.key("toConfirm").raw(std::to_string(std::count_if(findings.begin(), findings.end(), is_open)));
}

void write_yardsticks(Writer& out, const std::vector<Yardstick>& yardsticks, const Plan& plan) {
  out.key("yardsticks").open('[');
  for (const Yardstick& yardstick : yardsticks) {
    out.open('{').key("id").text(yardstick.id).key("path").text(yardstick.path).key("have").text(slot_text(yardstick.have, plan)).key("expected");
    if (yardstick.expected) out.text(slot_text(*yardstick.expected, plan));
    else out.null();
    out.key("from").text(slot_text(yardstick.from, plan)).key("to").text(slot_text(yardstick.to, plan));
    write_ground(out, yardstick.mark, yardstick.source);
    out.close('}');
  }
  out.close(']');
}

void write_row(Writer& out, const DoseTable& table, std::size_t index, const Plan& plan) {
  const TableRow& row = table.rows[index];
  out.open('{');
  write_row_head(out, table.rows, index, plan);
  write_dose(out, "usual", row.usual, plan);
  out.key("cells").open('[');
  for (const TableCell& cell : row.cells) {
    out.open('{');
    write_cell(out, cell, plan);
    out.close('}');
  }
  out.close(']').close('}');
}

void write_table(Writer& out, const DoseTable& table, const Plan& plan) {
  out.open('{').key("at").text(text_of(table.at));
  write_columns(out, table.columns, plan);
  out.key("rows").open('[');
  for (std::size_t i = 0; i < table.rows.size(); ++i) write_row(out, table, i, plan);
  out.close(']').close('}');
}

}  // namespace

void write_plan_findings(Writer& out, const std::vector<Finding>& refused, const Plan& plan) {
  out.key("planFindings").open('[');
  for (const Finding& finding : refused) {
    out.open('{').key("id").text(finding.id).key("path").text(finding.path);
    write_slots(out, finding, plan);
    out.close('}');
  }
  out.close(']');
}

std::string write_review(const ReviewAnswer& answer, const Plan& plan) {
  Writer out;
  out.open('{');
  write_findings(out, answer.findings, plan);
  write_yardsticks(out, answer.yardsticks, plan);
  // Said beside the birth date, so that whoever agrees sees whose plan it is.
  out.key("ageYears").raw(std::to_string(years_between(plan.person.born, plan.agreement.on)));
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
