// The ketone table as it is written: where ketones begin to act, calls, strips, extras and cells that nothing leads to.
#include "figures/ketones.hpp"
#include "model/history.hpp"
#include "review/findings.hpp"
#include "rules/dose.hpp"

namespace stopgap::review {
namespace {

using rules::Basis;

bool acts(const Plan& plan, const KetoneRow& row) { return row.from >= plan.ketones.act_from; }

// From 3.0 a dose is given on the way only, and only while high.
bool leads_to_a_dose(const Plan& plan, const KetoneRow& row, Glucose glucose) {
  return acts(plan, row) && (row.from < figures::ketones_help_now.value || glucose >= plan.high.trigger);
}

// What the core itself works out there with nothing on board. HI where there is no glucose.
Working working_at(const Review& review, const std::optional<Glucose>& glucose, const KetoneRow& row, TimeOfDay time, Basis basis, bool alone) {
  const Record record;
  const Situation situation = table_cell_situation(review.plan, glucose, row.from, review.at(time));
  const History history = History::of(record, situation.now.instant);
  return rules::rescue_working(rules::facts_of(review.plan, history, situation), basis, alone, Insulin{});
}

// One place an extra is written, with everything found there over the glucose rows and the day.
struct Written {
  std::string path;
  std::optional<Ketones> ketones;
  std::optional<std::pair<Insulin, Insulin>> under_step;  // the amount, the step
  std::optional<std::pair<Insulin, Insulin>> lost;        // the amount, what is left of it
  std::optional<std::pair<Insulin, Insulin>> cut;         // the amount, the cap
};

// `working` is the extra as it comes, `alone` as the ketone clock gives it: with addUnits the added units only.
void weigh(const Review& review, const Working& working, const Working& alone, Written& written) {
  for (const Device& device : review.devices()) {
    const Insulin least = Insulin::exactly(figures::extra_least_steps.value * device.step.in_units());
    const Insulin smallest = lesser(working.extra, alone.extra);
    if (smallest < least && (!written.under_step || smallest < written.under_step->first)) written.under_step = {smallest, device.step};
    if (working.extra < least) continue;
    const Insulin left = review.plan.to_step(working.extra, device.step);
    const Fraction allowed = working.extra.in_units() * (Fraction{1} - figures::rounding_loss.value);
    const auto share_left = [](const std::pair<Insulin, Insulin>& pair) { return pair.second.in_units() / pair.first.in_units(); };
    const std::pair<Insulin, Insulin> now{working.extra, left};
    if (left.in_units() < allowed && (!written.lost || share_left(now) < share_left(*written.lost))) written.lost = now;
  }
  if (working.extra > working.cap && (!written.cut || working.extra > written.cut->first)) written.cut = {working.extra, working.cap};
}

void tell(Review& review, const Written& written) {
  const auto slots = [&](std::string_view first, const std::pair<Insulin, Insulin>& pair, std::string_view second) {
    std::vector<Slot> out{{first, pair.first}, {second, pair.second}};
    if (written.ketones) out.push_back({"ketones", *written.ketones});
    return out;
  };
  if (written.under_step)
    review.find(figures::extra_least_steps, "extra-under-step", FindingLevel::refuse, written.path, slots("extra", *written.under_step, "step"));
  if (written.lost)
    review.find(figures::rounding_loss, "rounding-loss", FindingLevel::confirm, written.path, slots("extra", *written.lost, "left"));
  if (written.cut)
    review.find(figures::cap_over_extra, "cap-under-extra", FindingLevel::confirm, written.path, slots("extra", *written.cut, "cap"));
}

void weigh_cells(Review& review) {
  const Plan& plan = review.plan;
  for (std::size_t r = 0; r < plan.ketones.rows.size(); ++r) {
    const KetoneRow& row = plan.ketones.rows[r];
    std::vector<Written> cells(plan.ketones.columns.size());
    for (const Glucose glucose : review.rows) {
      const std::size_t column = review.column_of(glucose);
      if (!leads_to_a_dose(plan, row, glucose) || row.cells[column].kind == Cell::Kind::none) continue;
      for (const Setting& setting : review.settings)
        weigh(review, working_at(review, glucose, row, setting.from, Basis::table, false),
              working_at(review, glucose, row, setting.from, Basis::table, true), cells[column]);
    }
    for (std::size_t column = 0; column < cells.size(); ++column) {
      cells[column].path = cell_path(r, column);
      cells[column].ketones = row.from;
      tell(review, cells[column]);
    }
  }
}

void weigh_single_cells(Review& review) {
  const Plan& plan = review.plan;
  const KetoneRow& any_row = plan.ketones.rows.back();
  if (plan.ketones.hi.kind != Cell::Kind::none) {
    Written hi{"/plan/ketones/hi", {}, {}, {}, {}};
    for (const Setting& setting : review.settings)
      weigh(review, working_at(review, std::nullopt, any_row, setting.from, Basis::hi, false),
            working_at(review, std::nullopt, any_row, setting.from, Basis::hi, true), hi);
    tell(review, hi);
  }
  const bool at_risk = plan.person.pregnant || plan.person.sglt2_inhibitor;
  if (!at_risk) return;
  // The reader refuses a plan without this cell; one that says none is no better.
  if (!plan.ketones.any_glucose || plan.ketones.any_glucose->kind == Cell::Kind::none) {
    review.find(figures::dose_at_any_glucose, "no-dose-at-any-glucose", FindingLevel::refuse, "/plan/ketones/anyGlucose", {});
    return;
  }
  Written any{"/plan/ketones/anyGlucose", {}, {}, {}, {}};
  for (const Glucose glucose : review.rows)
    for (const Setting& setting : review.settings)
      weigh(review, working_at(review, glucose, any_row, setting.from, Basis::anyGlucose, false),
            working_at(review, glucose, any_row, setting.from, Basis::anyGlucose, true), any);
  tell(review, any);
}

// Down each column, glucose row by glucose row: a worse row of ketones never gives a smaller extra.
void look_for_falling_extras(Review& review) {
  const Plan& plan = review.plan;
  const auto& rows = plan.ketones.rows;
  for (std::size_t r = 1; r < rows.size(); ++r) {
    std::vector<bool> told(plan.ketones.columns.size(), false);
    for (const Glucose glucose : review.rows) {
      const std::size_t column = review.column_of(glucose);
      if (told[column] || !leads_to_a_dose(plan, rows[r - 1], glucose) || !leads_to_a_dose(plan, rows[r], glucose)) continue;
      for (const Setting& setting : review.settings) {
        const Insulin before = working_at(review, glucose, rows[r - 1], setting.from, Basis::table, false).extra;
        const Insulin extra = working_at(review, glucose, rows[r], setting.from, Basis::table, false).extra;
        if (told[column] || extra >= before) continue;
        told[column] = true;
        review.find(figures::extras_rise, "extras-not-rising", FindingLevel::refuse, cell_path(r, column),
                    {{"ketones", rows[r].from}, {"extra", extra}, {"ketonesBefore", rows[r - 1].from}, {"extraBefore", before}, {"glucose", glucose}});
      }
    }
  }
}

// From one column to the next, in the same row of ketones: a higher glucose with a smaller extra is often a slipped column.
void look_for_slipped_columns(Review& review) {
  const Plan& plan = review.plan;
  for (std::size_t r = 0; r < plan.ketones.rows.size(); ++r) {
    const KetoneRow& row = plan.ketones.rows[r];
    for (std::size_t i = 1; i < review.rows.size(); ++i) {
      const Glucose below = review.rows[i - 1], edge = review.rows[i];
      const std::size_t column = review.column_of(edge);
      if (column == review.column_of(below) || !leads_to_a_dose(plan, row, below)) continue;
      for (const Setting& setting : review.settings) {
        const Insulin before = working_at(review, below, row, setting.from, Basis::table, false).extra;
        const Insulin extra = working_at(review, edge, row, setting.from, Basis::table, false).extra;
        if (extra >= before) continue;
        review.find(figures::extras_keep_with_glucose, "extra-falls-with-glucose", FindingLevel::confirm, cell_path(r, column),
                    {{"ketones", row.from}, {"extra", extra}, {"extraBefore", before}, {"glucose", edge}});
        break;
      }
    }
  }
}

void look_for_idle_cells(Review& review) {
  const Plan& plan = review.plan;
  const auto& columns = plan.ketones.columns;
  for (std::size_t r = 0; r < plan.ketones.rows.size(); ++r) {
    const KetoneRow& row = plan.ketones.rows[r];
    for (std::size_t c = 0; c < columns.size(); ++c) {
      if (row.cells[c].kind == Cell::Kind::none) continue;
      const bool under_carbohydrate_only = c + 1 < columns.size() && columns[c + 1] <= plan.ketones.carbohydrate_only_below;
      if (leads_to_a_dose(plan, row, columns[c]) && !under_carbohydrate_only) continue;
      review.find(figures::cell_never_used, "cell-never-used", FindingLevel::note, cell_path(r, c), {{"ketones", row.from}});
    }
  }
}

}  // namespace

void look_at_ketone_rows(Review& review) {
  const Plan& plan = review.plan;
  const auto& rows = plan.ketones.rows;
  const Ketones from = plan.ketones.act_from;
  if (from < figures::act_from_least.value || from > figures::act_from_most.value) {
    const auto& limit = from < figures::act_from_least.value ? figures::act_from_least : figures::act_from_most;
    review.find(limit, "act-from-unusual", FindingLevel::confirm, "/plan/ketones/actFrom",
                {{"from", from}, {"least", figures::act_from_least.value}, {"most", figures::act_from_most.value}});
  }
  for (std::size_t r = 1; r < rows.size(); ++r)
    if (rows[r].call < rows[r - 1].call)
      review.find(figures::calls_rise, "calls-not-rising", FindingLevel::refuse, item_path("/plan/ketones/rows", r, "call"),
                  {{"ketones", rows[r].from}, {"ketonesBefore", rows[r - 1].from}});
  bool strips_have_rows = false;
  for (const KetoneRow& row : rows) strips_have_rows = strips_have_rows || !row.urine.empty();
  if (plan.ketones.test == KetoneTest::urine && !strips_have_rows)
    review.find(figures::blood_ketone_meter, "strips-without-rows", FindingLevel::refuse, "/plan/ketones/rows", {});
  if (plan.ketones.test == KetoneTest::urine)
    review.find(figures::blood_ketone_meter, "strips-lag", FindingLevel::note, "/plan/ketones/test", {});
  if (plan.ketones.test == KetoneTest::none)
    review.find(figures::blood_ketone_meter, "no-ketone-test", FindingLevel::confirm, "/plan/ketones/test", {});
}

void look_at_extras(Review& review) {
  look_for_falling_extras(review);
  look_for_slipped_columns(review);
  weigh_cells(review);
  weigh_single_cells(review);
  look_for_idle_cells(review);
}

}  // namespace stopgap::review
