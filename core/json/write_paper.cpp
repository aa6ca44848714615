#include "json/write_paper.hpp"

#include <algorithm>
#include "figures/paper.hpp"
#include "json/answer_words.hpp"
#include "json/slot_text.hpp"
#include "json/write.hpp"
#include "json/write_table.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr int length_digits = 2;

std::string length(std::int64_t hundredths) { return decimal_text(Fraction::of(hundredths, 100), length_digits, '.'); }

// As a person reads the cell: two that say the same need to be printed once.
bool says_the_same(const TableCell& a, const TableCell& b) {
  return a.outcome == b.outcome && a.call == b.call && a.dose == b.dose && a.carbohydrate == b.carbohydrate && a.cut == b.cut;
}

// The same but for the food, of which the row above asks for no less: a small table may leave this row out, because what the row
// above says is then still what `advise` answers for its own lower edge.
bool says_no_more(const TableCell& cell, const TableCell& above) {
  return cell.outcome == above.outcome && cell.call == above.call && cell.dose == above.dose && cell.cut == above.cut &&
         !(cell.carbohydrate > above.carbohydrate);
}

// "like": it says what the row or cell above it says. "spare": a small table may leave the row out.
void write_rows(Writer& out, const std::vector<TableRow>& rows, const Plan& plan, std::optional<Insulin> call_first_above) {
  out.key("rows").open('[');
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::vector<TableCell>& cells = rows[i].cells;
    const auto like = [&](std::size_t cell) { return i > 0 && says_the_same(cells[cell], rows[i - 1].cells[cell]); };
    bool all_like = true, spare = i > 0;
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
      all_like = all_like && like(cell);
      spare = spare && says_no_more(cells[cell], rows[i - 1].cells[cell]);
    }
    out.open('{');
    write_row_head(out, rows, i, plan);
    out.key("like").truth(all_like).key("spare").truth(spare).key("cells").open('[');
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
      out.open('{');
      write_cell(out, cells[cell], plan);
      if (call_first_above) out.key("callFirst").truth(cells[cell].dose && *cells[cell].dose > *call_first_above);
      out.key("like").truth(like(cell)).close('}');
    }
    out.close(']').key("noStrips").open('{');
    const TableCell& without = *rows[i].no_strips;
    write_cell(out, without, plan);
    if (call_first_above) out.key("callFirst").truth(without.dose && *without.dose > *call_first_above);
    out.key("like").truth(i > 0 && says_the_same(without, *rows[i - 1].no_strips)).close('}').close('}');
  }
  out.close(']');
}

// The call that every cell of a column asks for at least.
Call least_call(const std::vector<TableRow>& rows, std::size_t column) {
  Call least = Call::emergency;
  for (const TableRow& row : rows) least = std::min(least, row.cells[column].call);
  return least;
}

}  // namespace

void write_front(Writer& out, const Plan& plan, std::string_view engine) {
  const Plan::Agreement& agreement = plan.agreement;
  out.key("front").open('{').key("name").text(plan.person.name).key("born").text(text_of(plan.person.born));
  out.key("title").text(plan.title).key("revision").text(std::to_string(plan.revision));
  out.key("agreedOn").text(text_of(agreement.on)).key("agreedBy").text(agreement.by).key("role").text(agreement.role);
  out.key("reviewBy").text(text_of(agreement.review_by)).key("lastDay").text(text_of(agreement.last_day()));
  out.key("fingerprint").text(plan.fingerprint).key("engine").text(engine).close('}');
}

void write_paper(Writer& out, Paper paper) {
  const figures::PaperSize &sheet = paper == Paper::a4 ? figures::paper_a4.value : figures::paper_letter.value,
                           &panel = figures::card_panel.value;
  out.key("paper").open('{').key("kind").text(of(words::papers, paper)).key("width").text(length(sheet.width)).key("height").text(length(sheet.height));
  out.key("cardWidth").text(length(panel.width)).key("cardHeight").text(length(panel.height * 2)).key("panelHeight").text(length(panel.height));
  out.key("checkLine").text(std::to_string(figures::check_line_mm.value)).close('}');
}

void write_spans(Writer& out, const std::vector<DoseSpan>& spans, const Plan& plan, std::optional<Insulin> call_first_above) {
  out.key("unit").text(of(words::glucose_units, plan.unit)).key("test").text(of(words::ketone_tests, plan.ketones.test));
  // A printed plan has every column as a row.
  std::vector<Ketones> edges;
  for (const KetoneRow& row : plan.ketones.rows) edges.push_back(row.from);
  write_columns(out, edges, plan);
  out.key("spans").open('[');
  for (const DoseSpan& span : spans) {
    out.open('{').key("from").text(text_of(span.from)).key("to").text(text_of(span.to)).key("allDay").truth(span.from == span.to);
    out.key("settings").open('[');
    for (const TimeOfDay time : span.settings) out.text(text_of(time));
    out.close(']').key("calls").open('[');
    for (std::size_t column = 0; column < span.rows.front().cells.size(); ++column) out.text(of(words::calls, least_call(span.rows, column)));
    out.close(']');
    write_rows(out, span.rows, plan, call_first_above);
    out.close('}');
  }
  out.close(']');
}

void write_lines(Writer& out, std::string_view key, const std::vector<Line>& lines, const Plan& plan) {
  out.key(key).open('[');
  for (const Line& line : lines) {
    out.open('{').key("key").text(line.key).key("slots").open('{');
    for (const Slot& slot : line.slots) out.key(slot.name).text(slot_text(slot.value, plan));
    out.close('}').close('}');
  }
  out.close(']');
}

void write_contacts(Writer& out, const Plan& plan) {
  out.key("contacts").open('[');
  for (const Contact& contact : plan.contacts)
    out.open('{').key("name").text(contact.name).key("relation").text(contact.relation_text).key("phone").text(contact.phone).key("when").text(contact.when).close('}');
  out.close(']').key("emergencyNumber").text(plan.emergency_number);
}

}  // namespace stopgap::json
