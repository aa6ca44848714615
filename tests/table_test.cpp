// The table of doses that is printed and that a school reads: worked by hand for both demo plans, and each cell the same as
// the advice for the lower edge of its row when the question comes in as text.
#include <gtest/gtest.h>

#include "asked.hpp"
#include "nights.hpp"
#include "table.hpp"

namespace stopgap {
namespace {

const Moment at_night = *parse_moment(asked::night), at_noon = *parse_moment("2026-11-25T12:10:00+00:00");

std::vector<std::int64_t> edges(const Plan& plan) {
  std::vector<std::int64_t> steps;
  const std::int64_t step = nights::in_steps(1, plan.unit).in_grains();
  for (const Glucose edge : table_rows(plan)) steps.push_back(edge.in_grains() / step);
  return steps;
}

// One ketone row of the table, from the first edge up to HI, in half units; 0 where no dose stands.
std::vector<std::int64_t> halves(const Plan& plan, std::int64_t ketone_tenths, const Moment& at) {
  std::vector<std::optional<Glucose>> rows;
  for (const Glucose edge : table_rows(plan)) rows.push_back(edge);
  rows.push_back(std::nullopt);
  std::vector<std::int64_t> out;
  for (const auto& row : rows) {
    const Advice advice = table_cell_advice(plan, row, Ketones::mmol_tenths(ketone_tenths), at);
    out.push_back((nights::total_of(advice).in_units() * Fraction{2}).floor());
  }
  return out;
}

using Halves = std::vector<std::int64_t>;

TEST(Table, RowsStartAtTheCarbohydrateOnlyLevelAndHoldEveryEdge) {
  EXPECT_EQ(edges(nights::adult()), (std::vector<std::int64_t>{56, 60, 80, 100, 120, 140, 160, 180, 200}));
  EXPECT_EQ(edges(nights::child()), (std::vector<std::int64_t>{100, 120, 160, 180, 200, 240, 250, 280, 320, 360, 400}));
}

// Adult at 03:10: correction (G - 7.0) / 2.5; 5 % of 46 = 2.3, 10 % = 4.6, 20 % = 9.2 = the cap, HI 14 % = 6.44; down to 1 unit.
// The first column of the row of 0.6 is `none`; 20.0: (20.0 - 7.0) / 2.5 = 5.2 is more than 4.6.
// Without ketones the pump corrects, except at HI: INJ gives the cell for HI.
TEST(Table, AdultAtNightAsWorkedByHand) {
  EXPECT_EQ(halves(nights::adult(), 0, at_night), (Halves{0, 0, 0, 0, 0, 0, 0, 0, 0, 12}));
  EXPECT_EQ(halves(nights::adult(), 6, at_night), (Halves{0, 0, 0, 4, 4, 8, 8, 8, 10, 12}));
  EXPECT_EQ(halves(nights::adult(), 15, at_night), (Halves{4, 4, 4, 8, 8, 8, 8, 8, 10, 12}));
  EXPECT_EQ(halves(nights::adult(), 30, at_night), (Halves{0, 0, 0, 0, 0, 18, 18, 18, 18, 18}));
}

// At 12:10: (G - 6.0) / 2.2: 18.0 gives 5.45, 20.0 gives 6.36.
TEST(Table, AdultByDayAsWorkedByHand) {
  EXPECT_EQ(halves(nights::adult(), 6, at_noon), (Halves{0, 0, 0, 4, 4, 8, 8, 10, 12, 12}));
}

// Child at 03:10: correction (G - 120) / 90; 0.04 / 0.06 / 0.1 / 0.15 units for each of 28 kg = 1.12 / 1.68 / 2.8 / 4.2, HI 3.64;
// down to half a unit, cap 20 % of 22.4 = 4.48. 400: 280 / 90 = 3.11.
TEST(Table, ChildAtNightAsWorkedByHand) {
  EXPECT_EQ(halves(nights::child(), 0, at_night), (Halves{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7}));
  EXPECT_EQ(halves(nights::child(), 6, at_night), (Halves{0, 0, 0, 2, 2, 2, 3, 3, 4, 5, 6, 7}));
  EXPECT_EQ(halves(nights::child(), 15, at_night), (Halves{2, 2, 2, 3, 3, 3, 5, 5, 5, 5, 6, 7}));
  EXPECT_EQ(halves(nights::child(), 30, at_night), (Halves{0, 0, 0, 0, 0, 0, 8, 8, 8, 8, 8, 8}));
}

// The last ketone row is "go": its doses are those on the way.
TEST(Table, TheLastKetoneRowReadsGo) {
  for (const Plan* plan : {&nights::adult(), &nights::child(), &nights::example()})
    for (const Glucose edge : table_rows(*plan)) {
      const Advice advice = table_cell_advice(*plan, edge, plan->ketones.rows.back().from, at_night);
      EXPECT_EQ(advice.outcome, Outcome::emergency);
      EXPECT_EQ(advice.call, Call::emergency);
      EXPECT_EQ(advice.dose.has_value(), edge >= plan->high.trigger);
    }
}

TEST(Table, EachCellIsTheAdviceForItsLowerEdgeAskedAsText) {
  const std::vector<std::pair<std::string, const Plan*>> plans{{"adult", &nights::adult()}, {"child", &nights::child()}, {"example", &nights::example()}};
  for (const auto& [name, plan] : plans) {
    const asked::Json text = asked::plan_of(name);
    const bool mmol = plan->unit == GlucoseUnit::mmol;
    for (const KetoneRow& row : plan->ketones.rows)
      for (const std::int64_t steps : edges(*plan)) {
        const asked::Json situation{{"glucose", mmol ? asked::Json(static_cast<double>(steps) / 10) : asked::Json(steps)},
                                    {"ketones", static_cast<double>(row.from.in_mmol_tenths()) / 10}};
        const asked::Json answer = asked::advise(text, asked::Json::array(), situation);
        const Advice cell = table_cell_advice(*plan, nights::in_steps(steps, plan->unit), row.from, at_night);
        const double units = answer.at("dose").is_null() ? 0 : answer["dose"].at("units").get<double>();
        EXPECT_EQ((nights::total_of(cell).in_units() * Fraction{2}).floor(), static_cast<std::int64_t>(units * 2)) << name << " " << situation.dump();
      }
  }
}

}  // namespace
}  // namespace stopgap
