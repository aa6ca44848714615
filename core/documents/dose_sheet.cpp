#include "documents/dose_sheet.hpp"

#include <algorithm>
#include "figures/ketones.hpp"
#include "figures/review.hpp"
#include "table.hpp"

namespace stopgap {
namespace {

std::vector<TimeOfDay> setting_times(const Plan& plan) {
  std::vector<TimeOfDay> times;
  const auto add = [&times](const auto& schedule) {
    for (const auto& entry : schedule.entries) times.push_back(entry.from);
  };
  add(plan.correction_factor);
  add(plan.carbohydrate_ratio);
  add(plan.target);
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

// On the day of the agreement, when the plan was surely in force.
Moment moment_at(const Plan& plan, TimeOfDay time) {
  return {Instant::epoch_seconds(plan.agreement.on.in_epoch_days() * 86400) + Duration::minutes(time.in_minutes()), Offset{}};
}

bool same_but_for_food(const TableCell& a, const TableCell& b) {
  return a.outcome == b.outcome && a.call == b.call && a.dose == b.dose && a.cut == b.cut;
}
bool same_doses(const std::vector<TableRow>& a, const std::vector<TableRow>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const TableRow& one, const TableRow& other) {
    return std::equal(one.cells.begin(), one.cells.end(), other.cells.begin(), other.cells.end(), same_but_for_food) &&
           same_but_for_food(*one.no_strips, *other.no_strips);
  });
}
void take_more_food(std::vector<TableRow>& into, const std::vector<TableRow>& from) {
  const auto take = [](TableCell& cell, const TableCell& other) { cell.carbohydrate = greater(cell.carbohydrate, other.carbohydrate); };
  for (std::size_t row = 0; row < into.size(); ++row) {
    for (std::size_t i = 0; i < into[row].cells.size(); ++i) take(into[row].cells[i], from[row].cells[i]);
    take(*into[row].no_strips, *from[row].no_strips);
  }
}

// A dose of nothing is no dose: what stands there is the outcome.
std::vector<TableRow> rows_at(const Plan& plan, TimeOfDay time, Viewer viewer) {
  const Moment at = moment_at(plan, time);
  std::vector<TableRow> rows = whole_table(plan, at);
  const auto clear = [](TableCell& cell) {
    if (cell.dose && cell.dose->is_zero()) cell.dose.reset();
  };
  for (TableRow& row : rows) {
    const auto edge = row.kind == TableRow::Kind::HI ? std::optional<Glucose>{} : std::optional{row.glucose};
    row.no_strips = cell_without_strips(plan, edge, at, viewer);
    for (TableCell& cell : row.cells) clear(cell);
    clear(*row.no_strips);
  }
  return rows;
}

}  // namespace

Plan as_printed(Plan plan) {
  std::vector<KetoneRow>& rows = plan.ketones.rows;
  if (rows.back().from < figures::ketones_help_now.value) {
    KetoneRow last = rows.back();
    last.from = figures::ketones_help_now.value;
    last.urine.clear();
    last.call = Call::emergency;
    rows.push_back(std::move(last));
  }
  for (KetoneRow& row : rows)
    if (const auto found = std::find(row.urine.begin(), row.urine.end(), StripWord::large); found != row.urine.end()) {
      row.urine.erase(found);
      rows.back().urine.push_back(StripWord::large);
      break;
    }
  return plan;
}

std::vector<DoseSpan> dose_spans(const Plan& plan, Viewer viewer) {
  std::vector<DoseSpan> spans;
  for (const TimeOfDay time : setting_times(plan)) {
    std::vector<TableRow> rows = rows_at(plan, time, viewer);
    if (!spans.empty() && same_doses(spans.back().rows, rows)) {
      take_more_food(spans.back().rows, rows);
      spans.back().settings.push_back(time);
    } else {
      spans.push_back({time, time, {time}, std::move(rows)});
    }
  }
  // What runs over midnight is one table.
  if (spans.size() > 1 && same_doses(spans.front().rows, spans.back().rows)) {
    DoseSpan& first = spans.front();
    first.from = spans.back().from;
    first.settings.insert(first.settings.begin(), spans.back().settings.begin(), spans.back().settings.end());
    take_more_food(first.rows, spans.back().rows);
    spans.pop_back();
  }
  for (std::size_t i = 0; i < spans.size(); ++i) spans[i].to = spans[(i + 1) % spans.size()].from;
  const TimeOfDay noon = figures::table_by_day.value;
  const auto by_day = std::find_if(spans.begin(), spans.end(), [noon](const DoseSpan& span) {
    return span.from < span.to ? span.from <= noon && noon < span.to : span.from <= noon || noon < span.to;
  });
  if (by_day != spans.end()) std::rotate(spans.begin(), by_day, spans.end());
  return spans;
}

Duration quiet_before_table(const Plan& plan) { return std::max(plan.limits.lock, plan.rapid.action); }

std::vector<const Contact*> team_of(const Plan& plan) {
  std::vector<const Contact*> team;
  for (const Contact& contact : plan.contacts)
    if (contact.relation == Relation::team) team.push_back(&contact);
  return team;
}

const Contact* home_of(const Plan& plan) {
  for (const Contact& contact : plan.contacts)
    if (contact.relation == Relation::home) return &contact;
  return plan.contacts.empty() ? nullptr : &plan.contacts.front();
}

std::optional<Slot> strip_of(const Plan& plan, const KetoneRow& row) {
  if (plan.ketones.test != KetoneTest::urine || row.urine.empty()) return std::nullopt;
  return Slot{"strip", row.urine.front()};
}

}  // namespace stopgap
