// The ketone table of a plan: columns by glucose, rows by ketones or by the word of a strip, and the cells.
#include "json/plan_reader.hpp"
#include "model/record.hpp"

namespace stopgap::json {

// One cell: the word "none", or an object with the one key that says how the dose is worked out.
Cell PlanReader::cell(const Item& item, bool as_fallback) const {
  Cell made;
  const auto refuse = [&] { item.refuse(Reason::wrongType, joined(words::cells.data(), words::cells.size())); };
  const Node& node = *item.node;
  if (node.kind == Node::Kind::string && node.text == words::cells[0]) return made;
  if (node.kind != Node::Kind::object || node.members.empty()) { refuse(); return made; }
  std::size_t kind = 0;
  for (std::size_t i = 1; i < words::cells.size(); ++i)
    if (node.find(words::cells[i]) != nullptr) { kind = i; break; }
  made.kind = static_cast<Cell::Kind>(kind);
  const bool has_fallback = node.find("fallback") != nullptr;
  const bool times = made.kind == Cell::Kind::timesCorrection;
  // A fallback stands in where the correction is nothing, so it cannot itself be a multiple of the correction.
  const bool other_shape = kind == 0 || (has_fallback && !times) || node.members.size() > (times ? 2u : 1u) ||
                           (times && !has_fallback && node.members.size() > 1) || (times && as_fallback);
  if (other_shape) { refuse(); return made; }
  Fields fields{item};
  switch (made.kind) {
    case Cell::Kind::none: break;
    case Cell::Kind::shareOfDaily:
      fill(made.share, number(fields.need(words::cells[kind]), figures::share_range), Share::thousandths);
      break;
    case Cell::Kind::perKg:
      fill(made.per_kg, number(fields.need(words::cells[kind]), figures::per_kg_range), InsulinPerKg::unit_thousandths);
      break;
    case Cell::Kind::timesCorrection:
      fill(made.times, number(fields.need(words::cells[kind]), figures::times_correction_range),
           [](std::int64_t hundredths) { return Share::thousandths(hundredths * 10); });
      if (const Item fallback = fields.need("fallback")) made.fallback.push_back(cell(fallback, true));
      break;
    case Cell::Kind::addUnits: fill(made.add, number(fields.need(words::cells[kind]), figures::add_units_range), tenths); break;
  }
  return made;
}

void PlanReader::columns(const Item& item) {
  if (!item) return;
  const Elements list{item, 1, figures::most_columns};
  compared_.columns_good = list.usable();
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto edge = in_unit(list[i], figures::ceiling_range);
    if (!edge) { compared_.columns_good = false; continue; }
    if (i == 0 && edge->count != 0) list[i].refuse(Reason::contradiction, "0");
    if (!compared_.columns.empty() && edge->count <= compared_.columns.back().count) list[i].refuse(Reason::notAscending, {});
    compared_.columns.push_back(*edge);
    plan_.ketones.columns.push_back(level(*edge));
  }
}

void PlanReader::row(const Item& item, KetoneRow& row, std::optional<Number>& from) {
  Fields fields{item};
  from = number(fields.need("from"), figures::ketone_edge_range);
  fill(row.from, from, Ketones::mmol_tenths);
  if (const Item urine = fields.may("urine")) {
    const Elements list{urine, 0, words::strip_words.size()};
    for (std::size_t i = 0; i < list.size(); ++i)
      if (const auto strip = word<StripWord>(list[i], words::strip_words)) row.urine.push_back(*strip);
  }
  if (const Item cells = fields.need("cells")) {
    const Elements list{cells, 0, figures::most_columns};
    for (std::size_t i = 0; i < list.size(); ++i) row.cells.push_back(cell(list[i], false));
    if (list.usable() && compared_.columns_good && list.size() != compared_.columns.size())
      fields.refuse("cells", Reason::contradiction, std::to_string(list.size()), std::to_string(compared_.columns.size()));
  }
  if (const auto repeat = number(fields.may("repeatHours"), figures::repeat_hours_range))
    row.repeat = Duration::hour_hundredths(repeat->count);
  fill(row.call, word<Call>(fields.need("call"), words::calls));
  fields.finish();
}

void PlanReader::rows(const Item& item) {
  if (!item) return;
  const Elements list{item, 1, figures::most_rows};
  compared_.rows_good = list.usable();
  for (std::size_t i = 0; i < list.size(); ++i) {
    KetoneRow made;
    std::optional<Number> from;
    row(list[i], made, from);
    plan_.ketones.rows.push_back(std::move(made));
    if (!from) { compared_.rows_good = false; continue; }
    Item from_item = list[i];
    const Place row_place = from_item.place;
    from_item = {from_item.node->find("from"), {&row_place, "from", 0, false}, &refusals_};
    if (i == 0 && from->count != 0) from_item.refuse(Reason::contradiction, "0.0");
    if (!compared_.row_edges.empty() && from->count <= compared_.row_edges.back().count) from_item.refuse(Reason::notAscending, {});
    compared_.row_edges.push_back(*from);
  }
  if (list.usable()) strip_words(item);
}

// Strips are read by word, so either no row names one or each of the five words leads to exactly one row, worse words to
// rows no better. A word left out would leave somebody with a wet strip and no answer.
void PlanReader::strip_words(const Item& rows_item) {
  const auto& rows = plan_.ketones.rows;
  bool any = false;
  for (const Node& node : rows_item.node->items) any = any || node.find("urine") != nullptr;
  if (!any) return;
  const std::string path = pointer_of(rows_item.place);
  SetOf<StripWord> found;
  std::optional<StripWord> worst;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string place = path + "/" + std::to_string(i) + "/urine";
    if (rows_item.node->items[i].kind == Node::Kind::object && rows_item.node->items[i].find("urine") == nullptr)
      refusals_.add(place, Reason::missing);
    std::optional<StripWord> worst_here;
    for (std::size_t j = 0; j < rows[i].urine.size(); ++j) {
      const StripWord strip = rows[i].urine[j];
      const std::string word_place = place + "/" + std::to_string(j);
      const std::string typed{words::strip_words[static_cast<std::size_t>(strip)]};
      if (found.has(strip)) refusals_.add(word_place, Reason::contradiction, typed);
      else if (worst && strip < *worst) refusals_.add(word_place, Reason::notAscending, typed);
      found.add(strip);
      if (!worst_here || *worst_here < strip) worst_here = strip;
    }
    if (worst_here && (!worst || *worst < *worst_here)) worst = worst_here;
  }
  for (std::size_t i = 0; i < words::strip_words.size(); ++i)
    if (!found.has(static_cast<StripWord>(i))) refusals_.add(path, Reason::contradiction, {}, std::string{words::strip_words[i]});
}

void PlanReader::ketones(const Item& item) {
  if (!item) return;
  Fields fields{item};
  if (!fields.usable()) return;
  Plan::KetoneTable& table = plan_.ketones;
  fill(table.test, word<KetoneTest>(fields.need("test"), words::ketone_tests));
  compared_.act_from = number(fields.need("actFrom"), figures::ketone_edge_range);
  fill(table.act_from, compared_.act_from, Ketones::mmol_tenths);
  fill(table.expected_fall, number(fields.need("expectedFall"), figures::ketone_fall_range), KetoneFall::mmol_tenths);
  columns(fields.need("columns"));
  fill(table.combine, word<Combine>(fields.need("combine"), words::combines));
  rows(fields.need("rows"));
  if (const Item hi = fields.need("hi")) table.hi = cell(hi, false);
  if (const Item any_glucose = fields.may("anyGlucose")) table.any_glucose = cell(any_glucose, false);
  else if (plan_.person.pregnant || plan_.person.sglt2_inhibitor) fields.refuse_missing("anyGlucose");
  compared_.carbohydrate_only_below = in_unit(fields.need("carbohydrateOnlyBelow"), figures::level_range);
  fill_level(table.carbohydrate_only_below, compared_.carbohydrate_only_below);
  fill(table.carbohydrate, number(fields.need("carbohydrateGrams"), figures::ketone_grams_range), Carbohydrate::grams);
  fields.finish();
}

}  // namespace stopgap::json
