// What the plan leads to: each dose of the table against the glucose it is given at, and HI against the highest number.
#include "model/history.hpp"
#include "review/findings.hpp"
#include "rules/dose.hpp"

namespace stopgap::review {
namespace {

struct Deep {
  Fraction lands;  // grains; may be under zero
  Glucose glucose;
  Ketones ketones;
  Insulin dose;
  TimeOfDay time;
};

// HI is more than the dosing ceiling, so it must not lead to less; and it is no number, so it must not lead to far more. Where
// ketones do not act, a failed pump correction leads to the net at the ceiling and to the cell for HI.
void look_at_HI(Review& review) {
  const Plan& plan = review.plan;
  const Glucose ceiling = plan.limits.dosing_ceiling;
  std::optional<std::pair<Insulin, Insulin>> least, most;  // at HI, at the ceiling
  // `alike`: a needle on both sides. Without ketones a number is first corrected by the pump, and HI is not.
  const auto compare = [&](Insulin at_HI, Insulin at_ceiling, bool alike) {
    if (at_HI < at_ceiling && (!least || least->second - least->first < at_ceiling - at_HI)) least = {at_HI, at_ceiling};
    const bool far_more = alike && at_HI.in_units() > figures::hi_times_most.value * at_ceiling.in_units();
    if (far_more && (!most || most->first - most->second < at_HI - at_ceiling)) most = {at_HI, at_ceiling};
  };
  const auto rescue = [](const Advice& advice) { return advice.dose ? advice.dose->rescue : Insulin{}; };
  const auto without_ketones = [&](const std::optional<Glucose>& glucose, rules::Basis basis, TimeOfDay time) {
    const Record record;
    const Situation situation = table_cell_situation(plan, glucose, plan.ketones.rows.front().from, review.at(time));
    const History history = History::of(record, situation.now.instant);
    const rules::Facts facts = rules::facts_of(plan, history, situation);
    return rules::rounded_rescue(facts, rules::rescue_working(facts, basis, false, Insulin{}));
  };
  for (const Setting& setting : review.settings) {
    compare(without_ketones(std::nullopt, rules::Basis::hi, setting.from), without_ketones(ceiling, rules::Basis::netOnly, setting.from), true);
    for (const KetoneRow& row : plan.ketones.rows)
      compare(rescue(table_cell_advice(plan, std::nullopt, row.from, review.at(setting.from))),
              rescue(table_cell_advice(plan, ceiling, row.from, review.at(setting.from))), row.from >= plan.ketones.act_from);
  }
  if (least)
    review.find(figures::hi_not_less, "hi-gives-less", FindingLevel::confirm, "/plan/ketones/hi",
                {{"dose", least->first}, {"ceilingDose", least->second}, {"ceiling", ceiling}});
  if (most)
    review.find(figures::hi_times_most, "hi-gives-far-more", FindingLevel::confirm, "/plan/ketones/hi",
                {{"dose", most->first}, {"ceilingDose", most->second}, {"ceiling", ceiling}});
}

}  // namespace

// A dose that alone, with nothing eaten, takes the lower edge of its row to the low level. The deepest one of a cell is told.
void look_at_deep_doses(Review& review) {
  const Plan& plan = review.plan;
  const auto tell = [&](std::string path, const Deep& deep) {
    review.find(figures::lands_above_low, "dose-could-go-low", FindingLevel::confirm, std::move(path),
                {{"dose", deep.dose}, {"glucose", deep.glucose}, {"ketones", deep.ketones}, {"low", plan.low.below}, {"at", deep.time}});
  };
  std::optional<Deep> deepest_at_any_glucose;  // pregnant or on an SGLT2 inhibitor: one cell stands for the whole table
  for (std::size_t r = 0; r < plan.ketones.rows.size(); ++r) {
    std::vector<std::optional<Deep>> deepest(plan.ketones.columns.size());
    for (const Glucose glucose : review.rows) {
      if (glucose < plan.high.trigger) continue;
      for (const Setting& setting : review.settings) {
        const Advice advice = table_cell_advice(plan, glucose, plan.ketones.rows[r].from, review.at(setting.from));
        if (!advice.dose) continue;
        const Insulin dose = advice.dose->rescue;
        const Fraction lands = Fraction{glucose.in_grains()} - dose.in_units() * Fraction{setting.factor.in_grains_per_unit()};
        std::optional<Deep>& found = advice.decided_by == Rule::ANY ? deepest_at_any_glucose : deepest[review.column_of(glucose)];
        if (lands <= Fraction{plan.low.below.in_grains()} && (!found || lands < found->lands))
          found = Deep{lands, glucose, plan.ketones.rows[r].from, dose, setting.from};
      }
    }
    for (std::size_t column = 0; column < deepest.size(); ++column)
      if (deepest[column]) tell(cell_path(r, column), *deepest[column]);
  }
  if (deepest_at_any_glucose) tell("/plan/ketones/anyGlucose", *deepest_at_any_glucose);
}

void look_at_doses(Review& review) {
  look_at_deep_doses(review);
  look_at_HI(review);
}

}  // namespace stopgap::review
