// What a dose still has to do, against published and hand-worked values: the exponential, the curve F3, its streaming form, and
// the older curves it is compared with. Values and their sources: tests/published/action, hovorka-2004, dallaman-2007,
// wilinska-2005, clamp-2005, e.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "asked.hpp"
#include "core/action/curve.hpp"
#include "core/figures/action.hpp"

namespace stopgap {
namespace {

using asked::Json;

std::vector<std::vector<double>> table(const std::string& path) {
  std::istringstream lines(asked::file_text(std::string{STOPGAP_TESTS_DIR} + "/published/" + path));
  std::vector<std::vector<double>> rows;
  std::string line;
  std::getline(lines, line);  // the heading
  while (std::getline(lines, line)) {
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(std::stod(cell));
  }
  return rows;
}

double share(double minutes, double hours) {
  const auto seconds = [](double m) { return Duration::seconds(static_cast<std::int64_t>(m * 60)); };
  return static_cast<double>(remaining_share(seconds(minutes), seconds(hours * 60))) / static_cast<double>(whole_share);
}

// How many representable numbers lie between two of one sign.
int steps_apart(double a, double b) {
  int steps = 0;
  for (double x = std::min(a, b); x < std::max(a, b) && steps < 100; x = std::nextafter(x, HUGE_VAL)) ++steps;
  return steps;
}

TEST(Exponential, PublishedDigitsOfE) {
  // Decimal expansions of the OEIS: A001113 (e), and 1/e, e², √e worked to 30 digits. See tests/published/e.
  for (const auto& row : table("e/digits.csv")) {
    ASSERT_EQ(row.size(), 2U);
    EXPECT_LE(steps_apart(exponential(row[0]), row[1]), 1) << row[0];
  }
}

TEST(Exponential, WithinTwoLastDigitsOfTheLibrary) {
  int worst = 0;
  for (int i = -64000; i <= 64000; ++i) worst = std::max(worst, steps_apart(exponential(i / 1000.0), std::exp(i / 1000.0)));
  EXPECT_LE(worst, 2);
}

TEST(Exponential, OfNothingIsOne) { EXPECT_EQ(exponential(0), 1); }

TEST(Curve, CV47TheFiveHourCurveHourByHour) {
  // CV-47, sources section 7, DERIVED, four decimals.
  EXPECT_NEAR(share(60, 5), .8664, 1e-4);
  EXPECT_NEAR(share(120, 5), .5391, 1e-4);
  EXPECT_NEAR(share(180, 5), .2726, 1e-4);
  EXPECT_NEAR(share(240, 5), .1216, 1e-4);
  EXPECT_NEAR(share(300, 5), .0500, 1e-4);
}

TEST(Curve, EveryValueOfThePrintedTable) {
  // Printed to four decimals: 3, 4, 5 and 6 h of action at 0.5 to 6 h. After the hours of action ours is 0: the table's tail is
  // checked on F3 itself.
  const std::vector<double> hours{0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6};
  const auto rows = table("action/f3.csv");
  ASSERT_EQ(rows.size(), 4U);
  for (const auto& row : rows) {
    ASSERT_EQ(row.size(), 12U);
    for (std::size_t i = 0; i < hours.size(); ++i) {
      EXPECT_NEAR(f3(hours[i] * 60 / row[1]), row[i + 2], 5.1e-5) << row[0] << " h of action at " << hours[i] << " h";
      if (hours[i] > row[0]) continue;
      EXPECT_NEAR(share(hours[i] * 60, row[0]), row[i + 2], 5.1e-5) << row[0] << " h of action at " << hours[i] << " h";
    }
  }
}

TEST(Curve, CV48FivePercentIsLeftAtTheStatedHours) {
  // CV-48, DERIVED: tau in minutes, F3 then F2, tolerance 1e-3; F2(4.743865) = 5 %.
  const double f3_tau[] = {28.5905, 38.1207, 47.6509, 57.1810}, f2_tau[] = {37.9437, 50.5917, 63.2396, 75.8875};
  for (int hours = 3; hours <= 6; ++hours) {
    EXPECT_NEAR(hours * 60 / figures::action_end_z.value, f3_tau[hours - 3], 1e-3);
    EXPECT_NEAR(share(hours * 60, hours), .05, 1e-6);
    const double z = hours * 60 / f2_tau[hours - 3];
    EXPECT_NEAR((1 + z) * exponential(-z), .05, 1e-5);
  }
}

TEST(Curve, NothingIsLeftAfterTheStatedHoursAndAllBefore) {
  EXPECT_EQ(remaining_share(Duration::seconds(270 * 60 + 1), Duration::minutes(270)), 0);
  EXPECT_GT(remaining_share(Duration::minutes(270), Duration::minutes(270)), 0);
  EXPECT_EQ(remaining_share(Duration{}, Duration::minutes(270)), whole_share);
}

TEST(Curve, CV49And50DosesOnBoard) {
  // CV-49, CV-50, DERIVED, 1e-4.
  EXPECT_NEAR(4 * share(120, 5), 2.1565, 1e-4);
  EXPECT_NEAR(6 * share(180, 5), 1.6353, 1e-4);
  EXPECT_NEAR(5 * share(90, 4), 2.8998, 1e-4);
  EXPECT_NEAR(3.5 * share(60, 4), 2.7652, 1e-4);
}

TEST(Curve, CV49And50ThroughTheDoorRoundedUpToAHundredth) {
  const auto counted = [](double hours, double units, int ago) {
    const Json plan = asked::example_with({{"/rapid/actionHours", hours}});
    const Json events = Json::array({{{"ago", ago}, {"kind", "injection"}, {"units", units}}});
    return asked::holds(plan, events)["onBoard"]["counted"].get<std::string>();
  };
  EXPECT_EQ(counted(5, 4, 120), "2.16");
  EXPECT_EQ(counted(5, 6, 180), "1.64");
  EXPECT_EQ(counted(4, 5, 90), "2.9");
  EXPECT_EQ(counted(4, 3.5, 60), "2.77");
}

TEST(Curve, CV51StreamingEqualsTheClosedForm) {
  // CV-51, DERIVED: 4 units at 0 and 2 at 60 min, now 150 min, 5 h: 2.9771.
  const Duration action = Duration::hours(5), minute = Duration::minutes(1);
  ActionStream stream;
  for (int now = 0; now < 150; ++now) {
    if (now == 0) stream.add(4);
    if (now == 60) stream.add(2);
    stream.advance(minute, action);
  }
  EXPECT_NEAR(stream.on_board(), 2.9771, 1e-4);
  EXPECT_NEAR(4 * share(150, 5) + 2 * share(90, 5), 2.9771, 1e-4);
  ActionStream in_two_steps;
  in_two_steps.add(4);
  in_two_steps.advance(Duration::minutes(60), action);
  in_two_steps.add(2);
  in_two_steps.advance(Duration::minutes(90), action);
  EXPECT_NEAR(in_two_steps.on_board(), stream.on_board(), 1e-12);  // exact for any step
}

TEST(OtherCurves, CV53TwoCompartments) {
  // CV-53, [hovorka-2004], DERIVED: F2 with tau 55 min at 60 to 300 min, and 5 % left at 260.91 min.
  const double printed[] = {.7024, .3590, .1619, .0683, .0276};
  const auto f2 = [](double minutes) { return (1 + minutes / 55) * exponential(-minutes / 55); };
  for (int hour = 1; hour <= 5; ++hour) EXPECT_NEAR(f2(hour * 60), printed[hour - 1], 1e-4);
  EXPECT_NEAR(f2(260.91), .05, 1e-5);
}

TEST(OtherCurves, CV54TwoRates) {
  // CV-54, [dallaman-2007], DERIVED: (1 + .0164 t) e^(-.0182 t).
  const double printed[] = {.6657, .3342, .1493, .0626, .0252};
  for (int hour = 1; hour <= 5; ++hour) EXPECT_NEAR((1 + .0164 * hour * 60) * exponential(-.0182 * hour * 60), printed[hour - 1], 1e-4);
}

TEST(OtherCurves, CV55TwoChannels) {
  // CV-55, [wilinska-2005], DERIVED, structure MEMORY: .67 (1 + .011 t) e^(-.011 t) + .33 e^(-.021 t).
  const double printed[] = {.6684, .4418, .2832, .1762, .1069};
  for (int hour = 1; hour <= 5; ++hour) {
    const double t = hour * 60;
    EXPECT_NEAR(.67 * (1 + .011 * t) * exponential(-.011 * t) + .33 * exponential(-.021 * t), printed[hour - 1], 1e-4);
  }
}

TEST(Curve, CV70ActivityPeaksWhereClampsSawIt) {
  // CV-70: twice tau, 95.3 min for 5 h and 114.4 for 6 h, inside the 85 to 136 min of [clamp-2005].
  const auto peak = [](int hours) {
    int best = 0;
    double greatest = 0;
    for (int minute = 1; minute < hours * 60; ++minute) {
      const double fall = share(minute - 0.5, hours) - share(minute + 0.5, hours);
      if (fall > greatest) greatest = fall, best = minute;
    }
    return best;
  };
  EXPECT_NEAR(peak(5), 95.3, 1);
  EXPECT_NEAR(peak(6), 114.4, 1);
  for (const int hours : {5, 6}) EXPECT_TRUE(peak(hours) >= 85 && peak(hours) <= 136);
}

TEST(Curve, LessIsLeftEveryMinute) {
  for (int minute = 1; minute <= 270; ++minute)
    EXPECT_LT(remaining_share(Duration::minutes(minute), Duration::minutes(270)), remaining_share(Duration::minutes(minute - 1), Duration::minutes(270)));
}

}  // namespace
}  // namespace stopgap
