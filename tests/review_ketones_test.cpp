// What the review finds in the ketone table and in the doses it leads to: each finding with a plan that has it and a neighbour
// that has not. The example: 40 units a day, drawn to whole units, factor 2.5, target 6.5; caps 10 units and 20 % = 8 units.
#include "review.hpp"

namespace stopgap::desk {
namespace {

std::string cell(int row, int column) { return "/ketones/rows/" + std::to_string(row) + "/cells/" + std::to_string(column); }

TEST(ReviewKetones, TheyActFrom0point6To1point5) {
  const auto of = [](int row, double from) { return with({{"/ketones/actFrom", from}, {"/ketones/rows/" + std::to_string(row) + "/from", from}}); };
  EXPECT_EQ(level("act-from-unusual", of(1, 0.6)), none);
  EXPECT_EQ(found("act-from-unusual", of(1, 0.5)), "confirm /plan/ketones/actFrom from=0.5 least=0.6 most=1.5");
  EXPECT_EQ(level("act-from-unusual", of(2, 1.5)), none);
  EXPECT_EQ(level("act-from-unusual", of(2, 1.6)), "confirm");
}

TEST(ReviewKetones, MoreKetonesNeverCallLess) {
  EXPECT_EQ(level("calls-not-rising", with({{"/ketones/rows/1/call", "team"}})), none);
  EXPECT_EQ(found("calls-not-rising", with({{"/ketones/rows/1/call", "emergency"}})),
            "refuse /plan/ketones/rows/2/call ketones=1.5 ketonesBefore=0.6");
}

TEST(ReviewKetones, WhatThePersonTestsWith) {
  const Json strips{{"/ketones/test", "urine"}};
  Json without_rows = with(strips);
  for (Json& row : without_rows["ketones"]["rows"]) row.erase("urine");
  EXPECT_EQ(found("strips-without-rows", without_rows), "refuse /plan/ketones/rows");
  EXPECT_EQ(level("strips-without-rows", with(strips)), none);
  EXPECT_EQ(found("strips-lag", with(strips)), "note /plan/ketones/test");
  EXPECT_EQ(level("strips-lag", with({})), none);
  EXPECT_EQ(found("no-ketone-test", with({{"/ketones/test", "none"}})), "confirm /plan/ketones/test");
  EXPECT_EQ(level("no-ketone-test", with({})), none);
}

// 10 % of 40 = 4 in the row of 0.6; 9.9 % = 3.96.
TEST(ReviewExtras, MoreKetonesNeverGiveLess) {
  EXPECT_EQ(level("extras-not-rising", with({})), none);  // 4 and 4 from 14.0
  EXPECT_EQ(found("extras-not-rising", with({{cell(2, 2), share(0.099)}})),
            "refuse /plan/ketones/rows/2/cells/2 extra=3.96 units extraBefore=4 units glucose=14.0 mmol/L ketones=1.5 ketonesBefore=0.6");
  EXPECT_EQ(found("extras-not-rising", with({{cell(2, 1), "none"}})),
            "refuse /plan/ketones/rows/2/cells/1 extra=0 units extraBefore=2 units glucose=10.0 mmol/L ketones=1.5 ketonesBefore=0.6");
}

// From 3.0 a dose is given on the way alone, from the trigger up: what stands below it is compared with nothing.
TEST(ReviewExtras, TheLastRowCountsFromTheTriggerOnly) {
  EXPECT_EQ(level("extras-not-rising", with({{cell(3, 2), share(0.1)}})), none);
  EXPECT_EQ(level("extras-not-rising", with({{cell(3, 2), share(0.099)}})), "refuse");
}

// 1.5 times the correction: at 14.0 it is 7.5 / 2.5 × 1.5 = 4.5, and every row above it more; 10 % is 4 everywhere.
TEST(ReviewExtras, WhatDependsOnGlucoseIsComparedRowByRow) {
  const Json times{{"timesCorrection", 1.5}, {"fallback", share(0.1)}};
  EXPECT_EQ(level("extras-not-rising", with({{cell(2, 2), times}, {cell(3, 2), times}})), none);
  // The other way round: 4.5 at 14.0 in the better row, 4 in the worse.
  EXPECT_EQ(level("extras-not-rising", with({{cell(1, 2), times}, {cell(3, 2), times}})), "refuse");
}

TEST(ReviewExtras, AHigherColumnWithLessIsAsked) {
  EXPECT_EQ(level("extra-falls-with-glucose", with({{cell(1, 1), share(0.1)}})), none);
  EXPECT_EQ(found("extra-falls-with-glucose", with({{cell(1, 1), share(0.101)}})),
            "confirm /plan/ketones/rows/1/cells/2 extra=4 units extraBefore=4.04 units glucose=14.0 mmol/L ketones=0.6");
}

TEST(ReviewExtras, AnExtraOfAtLeastOneStep) {
  EXPECT_EQ(level("extra-under-step", with({{cell(1, 1), share(0.025)}})), none);  // 1.00
  EXPECT_EQ(found("extra-under-step", with({{cell(1, 1), share(0.024)}})),
            "refuse /plan/ketones/rows/1/cells/1 extra=0.96 units ketones=0.6 step=1 unit");
  EXPECT_EQ(level("extra-under-step", with({{cell(1, 1), "none"}})), none);
}

// Whichever device is at hand: a pen of 2 units makes 1.96 too little, though the syringe draws 1.
TEST(ReviewExtras, TheCoarserDeviceCounts) {
  EXPECT_EQ(level("extra-under-step", with({{"/pen/step", 2}})), none);  // the smallest extra is 2.00
  EXPECT_EQ(found("extra-under-step", with({{"/pen/step", 2}, {cell(1, 1), share(0.049)}})),
            "refuse /plan/ketones/rows/1/cells/1 extra=1.96 units ketones=0.6 step=2 units");
}

// Added units stand alone when the ketone clock repeats the dose.
TEST(ReviewExtras, AddedUnitsStandAloneInARepeat) {
  const auto add = [](double units) { return with({{cell(1, 2), {{"addUnits", units}}}, {cell(2, 2), {{"addUnits", 2}}}}); };
  EXPECT_EQ(level("extra-under-step", add(1)), none);
  EXPECT_EQ(level("extra-under-step", add(0.5)), "refuse");
}

TEST(ReviewExtras, TheCellForHI) {
  EXPECT_EQ(level("extra-under-step", with({{"/ketones/hi", share(0.025)}})), none);
  EXPECT_EQ(found("extra-under-step", with({{"/ketones/hi", share(0.024)}})), "refuse /plan/ketones/hi extra=0.96 units step=1 unit");
}

TEST(ReviewExtras, TheCellForAnyGlucose) {
  const auto of = [](const Json& any) { return with({{"/person/sglt2Inhibitor", true}, {"/ketones/anyGlucose", any}}); };
  EXPECT_EQ(level("extra-under-step", of(share(0.025))), none);
  EXPECT_EQ(found("extra-under-step", of(share(0.024))), "refuse /plan/ketones/anyGlucose extra=0.96 units step=1 unit");
  EXPECT_EQ(level("no-dose-at-any-glucose", of(share(0.025))), none);
  EXPECT_EQ(found("no-dose-at-any-glucose", of("none")), "refuse /plan/ketones/anyGlucose");
  EXPECT_EQ(level("no-dose-at-any-glucose", with({{"/person/pregnant", true}, {"/ketones/anyGlucose", "none"}})), "refuse");
  EXPECT_EQ(level("no-dose-at-any-glucose", with({{"/ketones/anyGlucose", "none"}})), none);
  // Not there at all: the reader refuses it, with its place.
  const Json missing = review(with({{"/person/pregnant", true}}));
  EXPECT_EQ(missing["refused"][0]["path"], "/plan/ketones/anyGlucose");
  EXPECT_EQ(missing["refused"][0]["reason"], "missing");
}

// 50 units a day: 2.5 % = 1.25 is drawn as 1, which loses exactly a fifth; 2.6 % = 1.3 loses 23 %. To the nearest, 1.6 is 2.
TEST(ReviewExtras, RoundingLosesAtMostAFifth) {
  const auto of = [](double part, const char* rounding) {
    return with({{"/dailyTotal", 50}, {cell(1, 1), share(part)}, {"/rounding", rounding}});
  };
  EXPECT_EQ(level("rounding-loss", of(0.025, "down")), none);
  EXPECT_EQ(found("rounding-loss", of(0.026, "down")), "confirm /plan/ketones/rows/1/cells/1 extra=1.3 units ketones=0.6 left=1 unit");
  EXPECT_EQ(level("rounding-loss", of(0.032, "down")), "confirm");
  EXPECT_EQ(level("rounding-loss", of(0.032, "nearest")), none);
}

TEST(ReviewExtras, TheLimitIsNotUnderAnExtra) {
  EXPECT_EQ(level("cap-under-extra", with({{cell(3, 2), share(0.2)}})), none);  // 8 and 8
  EXPECT_EQ(found("cap-under-extra", with({{cell(3, 2), share(0.201)}})),
            "confirm /plan/ketones/rows/3/cells/2 cap=8 units extra=8.04 units ketones=3.0");
}

TEST(ReviewExtras, CellsNothingLeadsTo) {
  EXPECT_EQ(level("cell-never-used", with({})), none);
  EXPECT_EQ(found("cell-never-used", with({{cell(0, 2), share(0.05)}})), "note /plan/ketones/rows/0/cells/2 ketones=0.0");
  EXPECT_EQ(found("cell-never-used", with({{cell(3, 1), share(0.2)}})), "note /plan/ketones/rows/3/cells/1 ketones=3.0");
}

// Under the carbohydrate-only level of 5.6 nobody doses: a column that ends there is never used, one that ends at 5.7 is.
TEST(ReviewExtras, AColumnUnderTheCarbohydrateOnlyLevel) {
  const auto of = [](double edge) {
    Json plan = with({{"/ketones/columns", {0, edge, 10.0, 14.0}}});
    for (Json& row : plan["ketones"]["rows"]) row["cells"].insert(row["cells"].begin(), "none");
    plan["ketones"]["rows"][2]["cells"][0] = share(0.05);
    return plan;
  };
  EXPECT_EQ(found("cell-never-used", of(5.6)), "note /plan/ketones/rows/2/cells/0 ketones=1.5");
  EXPECT_EQ(level("cell-never-used", of(5.7)), none);
}

// From 14.0 down to 3.9 are 10.1, 4.04 units: 4 units end at 4.0, 5 units at 1.5. With low at 4.0, 4 units end at low.
TEST(ReviewDoses, ADoseThatAloneEndsLow) {
  const Json mild{{cell(3, 2), share(0.1)}};
  EXPECT_EQ(level("dose-could-go-low", with(mild)), none);
  Json at_low = with(mild);
  at_low["low"]["below"] = 4.0;
  EXPECT_EQ(all("dose-could-go-low", at_low).size(), 3);  // each acting row gives 4 units from 14.0
  EXPECT_EQ(found("dose-could-go-low", at_low).find("confirm /plan/ketones/rows/1/cells/2 at=00:00 dose=4 units glucose=14.0 mmol/L ketones=0.6 low=4.0 mmol/L;"), 0);
  Json five = with(mild);
  five["ketones"]["rows"][2]["cells"][2] = five["ketones"]["rows"][3]["cells"][2] = share(0.125);
  EXPECT_EQ(found("dose-could-go-low", five),
            "confirm /plan/ketones/rows/2/cells/2 at=00:00 dose=5 units glucose=14.0 mmol/L ketones=1.5 low=3.9 mmol/L; "
            "confirm /plan/ketones/rows/3/cells/2 at=00:00 dose=5 units glucose=14.0 mmol/L ketones=3.0 low=3.9 mmol/L");
}

// A stronger hour of the day is found too: at 08:00 one unit lowers by 2.6, so 4 units end at 3.6.
TEST(ReviewDoses, EveryHourOfTheDayIsLookedAt) {
  const auto of = [](double factor) { return with({{cell(3, 2), share(0.1)}, {"/day/correctionFactor", day({{"00:00", 2.5}, {"08:00", factor}})}}); };
  EXPECT_EQ(level("dose-could-go-low", of(2.52)), none);  // 3.92
  EXPECT_EQ(found("dose-could-go-low", of(2.53)),         // 3.88
            "confirm /plan/ketones/rows/1/cells/2 at=08:00 dose=4 units glucose=14.0 mmol/L ketones=0.6 low=3.9 mmol/L; "
            "confirm /plan/ketones/rows/2/cells/2 at=08:00 dose=4 units glucose=14.0 mmol/L ketones=1.5 low=3.9 mmol/L; "
            "confirm /plan/ketones/rows/3/cells/2 at=08:00 dose=4 units glucose=14.0 mmol/L ketones=3.0 low=3.9 mmol/L");
}

// A column may begin between two rows of the table. From 17.0 15 % = 6 units × 2.3 = 13.8 end at 3.2; from 18.0 at 4.2.
TEST(ReviewDoses, TheEdgeOfAColumnIsLookedAtToo) {
  const auto of = [](double part) {
    Json plan = with({{"/ketones/columns", {0, 10.0, 14.0, 17.0}}, {"/day/correctionFactor/0/value", 2.3}});
    for (Json& row : plan["ketones"]["rows"]) row["cells"].push_back("none");
    plan["ketones"]["rows"][3]["cells"] = {"none", "none", share(0.1), share(part)};
    return plan;
  };
  EXPECT_EQ(level("dose-could-go-low", of(0.125)), none);  // 5 units end at 5.5
  EXPECT_EQ(found("dose-could-go-low", of(0.15)), "confirm /plan/ketones/rows/3/cells/3 at=00:00 dose=6 units glucose=17.0 mmol/L ketones=3.0 low=3.9 mmol/L");
}

// Pregnant: one cell stands for the whole table below 3.0. 12.5 % = 5 units.
TEST(ReviewDoses, TheDoseForAnyGlucoseToo) {
  const auto of = [](double part) { return with({{"/person/pregnant", true}, {"/ketones/anyGlucose", share(part)}, {cell(3, 2), share(0.1)}}); };
  EXPECT_EQ(level("dose-could-go-low", of(0.1)), none);
  EXPECT_EQ(found("dose-could-go-low", of(0.125)), "confirm /plan/ketones/anyGlucose at=00:00 dose=5 units glucose=14.0 mmol/L ketones=0.6 low=3.9 mmol/L");
}

// At the ceiling of 25.0: (25.0 - 6.5) / 2.5 = 7.4, drawn as 7. HI: 17.5 % = 7.0; 17.4 % = 6.96 is drawn as 6.
TEST(ReviewDoses, HIIsNotLessThanTheCeiling) {
  EXPECT_EQ(level("hi-gives-less", with({{"/ketones/hi", share(0.175)}})), none);
  EXPECT_EQ(found("hi-gives-less", with({{"/ketones/hi", share(0.174)}})),
            "confirm /plan/ketones/hi ceiling=25.0 mmol/L ceilingDose=7 units dose=6 units");
}

// At a ceiling of 14.0: (14.0 - 6.5) / 2.5 = 3 units. HI: 15 % = 6, just twice; 17.5 % = 7.
TEST(ReviewDoses, HIIsAtMostTwiceTheCeiling) {
  const auto of = [](double part) { return with({{"/limits/dosingCeiling", 14.0}, {"/ketones/hi", share(part)}}); };
  EXPECT_EQ(level("hi-gives-far-more", of(0.15)), none);
  EXPECT_EQ(found("hi-gives-far-more", of(0.175)), "confirm /plan/ketones/hi ceiling=14.0 mmol/L ceilingDose=3 units dose=7 units");
}

// At HI, and with a sensor's number, nothing is left to multiply: the fallback is the dose. 40 units a day, steps of 1 unit.
Json fallback(const std::string& place, double times, double part) {
  return with({{place, {{"timesCorrection", times}, {"fallback", share(part)}}}, {cell(3, 2), share(0.1)}});
}

TEST(ReviewFallbacks, OfAtLeastOneStep) {
  EXPECT_EQ(level("extra-under-step", fallback(cell(1, 1), 1.5, 0.025)), none);  // 1 unit
  EXPECT_EQ(found("extra-under-step", fallback(cell(1, 1), 1.5, 0.024)),
            "refuse /plan/ketones/rows/1/cells/1/fallback extra=0.96 units ketones=0.6 step=1 unit");
}

TEST(ReviewFallbacks, RoundingLosesAtMostAFifth) {
  EXPECT_EQ(level("rounding-loss", fallback(cell(1, 1), 1.5, 0.031)), none);  // 1.24 drawn as 1
  EXPECT_EQ(found("rounding-loss", fallback(cell(1, 1), 1.5, 0.032)), "confirm /plan/ketones/rows/1/cells/1/fallback extra=1.28 units ketones=0.6 left=1 unit");
}

TEST(ReviewFallbacks, TheLimitIsNotUnderOne) {
  EXPECT_EQ(level("cap-under-extra", fallback(cell(1, 2), 1.0, 0.2)), none);  // 8 units, the cap
  EXPECT_EQ(found("cap-under-extra", fallback(cell(1, 2), 1.0, 0.201)), "confirm /plan/ketones/rows/1/cells/2/fallback cap=8 units extra=8.04 units ketones=0.6");
}

// The row of 0.6 gives 5 % = 2 units there. Twice the correction is more at every number: (10.0 - 6.5) / 2.5 x 2 = 2.8.
TEST(ReviewFallbacks, MoreKetonesNeverGiveLess) {
  EXPECT_EQ(level("extras-not-rising", fallback(cell(2, 1), 2.0, 0.05)), none);
  EXPECT_EQ(found("extras-not-rising", fallback(cell(2, 1), 2.0, 0.049)),
            "refuse /plan/ketones/rows/2/cells/1/fallback extra=1.96 units extraBefore=2 units glucose=10.0 mmol/L ketones=1.5 ketonesBefore=0.6");
  // Where the row above has the fallback, it is the plain cell below that is too small.
  EXPECT_EQ(found("extras-not-rising", fallback(cell(1, 1), 1.0, 0.101)),
            "refuse /plan/ketones/rows/2/cells/1 extra=4 units extraBefore=4.04 units glucose=10.0 mmol/L ketones=1.5 ketonesBefore=0.6");
}

// 14.0 - 4 x 2.5 = 4.0; 14.0 - 5 x 2.5 = 1.5. Once the correction, 3 units, ends at 6.5.
TEST(ReviewFallbacks, ADoseThatAloneEndsLow) {
  EXPECT_EQ(level("dose-could-go-low", fallback(cell(1, 2), 1.0, 0.1)), none);
  EXPECT_EQ(found("dose-could-go-low", fallback(cell(1, 2), 1.0, 0.125)),
            "confirm /plan/ketones/rows/1/cells/2/fallback at=00:00 dose=5 units glucose=14.0 mmol/L ketones=0.6 low=3.9 mmol/L");
}

}  // namespace
}  // namespace stopgap::desk
