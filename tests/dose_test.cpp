// The dose, line by line of its rule: correction, extra, which of them, caps, rounding, meal part, matched carbohydrate, the other
// bound. Expected values are worked beside each test with the numbers of the plan the contract prints.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::advise;
using asked::at;
using asked::dose;
using asked::example_with;
using asked::Json;
using asked::nothing;
using asked::plan;

Json schedule(double value) { return Json::array({{{"from", "00:00"}, {"value", value}}}); }
std::string line(const Json& answer, const char* name) { return asked::word(answer.at("dose").at("working"), name); }
// The net dose alone: high, nothing the pump can try, ketones of no account.
Json by_needle(const Json& glucose) { return {{"glucose", glucose}, {"ketones", 0.2}, {"pumpOffersNothing", true}}; }
Json pump_dose(int ago, double units, const char* purpose) { return {{"ago", ago}, {"kind", "pumpDose"}, {"units", units}, {"purpose", purpose}}; }

TEST(Dose, CorrectionFollowsTheLocalTime) {
  // 16.0 - 6.5 = 9.5; by night 2.5 gives 3.8, from 06:00 a factor of 2.0 gives 4.75. One instant, two local times.
  const Json two = example_with({{"/day/correctionFactor", Json::array({{{"from", "00:00"}, {"value", 2.5}}, {{"from", "06:00"}, {"value", 2.0}}})}});
  Json situation = by_needle(16.0);
  situation["now"] = "2026-11-25T05:59:00+00:00";
  EXPECT_EQ(line(advise(two, nothing, situation), "correction"), "3.8");
  situation["now"] = "2026-11-25T06:00:00+00:00";
  EXPECT_EQ(line(advise(two, nothing, situation), "correction"), "4.75");
  situation["now"] = "2026-11-25T06:59:00+01:00";
  EXPECT_EQ(line(advise(two, nothing, situation), "correction"), "4.75");
  situation["now"] = "2026-11-25T05:59:00+01:00";
  EXPECT_EQ(line(advise(two, nothing, situation), "correction"), "3.8");
}

TEST(Dose, GlucoseAboveTheCeilingCountsAsTheCeiling) {
  // (25.0 - 6.5) / 2.5 = 7.4 at 25.0, 25.1 and 33.0.
  for (const double glucose : {25.0, 25.1, 33.0}) EXPECT_EQ(line(advise(plan(), nothing, by_needle(glucose)), "correction"), "7.4");
  EXPECT_EQ(line(advise(plan(), nothing, by_needle(24.9)), "correction"), "7.36");
}

TEST(Dose, AConvertedReadingKeepsEveryDigit) {
  // 300 mg/dL / 18.016 = 16.65187; (16.65187 - 6.5) / 2.5 = 4.0607, shown as 4.06.
  const Json reading{{"value", 300}, {"unit", "mg/dL"}, {"from", "finger"}};
  EXPECT_EQ(line(advise(plan(), nothing, by_needle(reading)), "correction"), "4.06");
}

TEST(Dose, RoundingDownAndNearest) {
  // (16.0 - 6.5) / 2.5 = 3.8: down 3, nearest 4. Half units (30-unit syringe): down 3.5, nearest 4.
  EXPECT_EQ(dose(advise(plan(), nothing, by_needle(16.0))), "3 units");
  EXPECT_EQ(dose(advise(example_with({{"/rounding", "nearest"}}), nothing, by_needle(16.0))), "4 units");
  const Json half{{"/syringe/capacity", 30}, {"/syringe/step", 0.5}};
  EXPECT_EQ(dose(advise(example_with(half), nothing, by_needle(16.0))), "3.5 units");
}

TEST(Dose, NearestTakesATieDown) {
  // (16.5 - 6.5) / 4 = 2.5: halfway between 2 and 3.
  const Json nearest = example_with({{"/rounding", "nearest"}, {"/day/correctionFactor", schedule(4.0)}});
  EXPECT_EQ(dose(advise(nearest, nothing, by_needle(16.5))), "2 units");
  EXPECT_EQ(dose(advise(nearest, nothing, by_needle(16.6))), "3 units");  // 2.525
}

TEST(Dose, NearestNeverGoesAboveTheCap) {
  // Cap 20 % of 38 = 7.6; 7.6 would round to 8, above the cap: 7.
  const Json nearest = example_with({{"/rounding", "nearest"}, {"/dailyTotal", 38}, {"/ketones/rows/3/cells/2", {{"shareOfDaily", 0.20}}}});
  EXPECT_EQ(dose(advise(nearest, nothing, at(16.0, 3.0))), "7 units");
}

TEST(Dose, TheSmallestCapWins) {
  // Wanted: (25.0 - 6.5) / 1 = 18.5. Caps: a single dose of 6; 20 % of 40 = 8; a pen of 5.
  const Json strong{{"/day/correctionFactor", schedule(1.0)}};
  const auto capped = [&](Json more) {
    more.update(strong);
    return advise(example_with(more), nothing, by_needle(25.0));
  };
  EXPECT_EQ(dose(capped({{"/limits/singleDose", 6}})), "6 units");
  EXPECT_EQ(line(capped({{"/limits/singleDose", 6}}), "cut"), "12.5");
  EXPECT_EQ(dose(capped(Json::object())), "8 units");
  EXPECT_EQ(dose(capped({{"/syringe", nullptr}, {"/pen/capacity", 5}})), "5 units");
  const Json answer = capped(Json::object());
  EXPECT_EQ(answer["call"], "team");
  EXPECT_TRUE(asked::has_caution(answer, "cut"));
}

TEST(Dose, TheMealPartIsOnTopAndTheDeviceEndsIt) {
  // Rescue 3 (3.8 down); 150 g / 12 = 12.5, down 12. A 10-unit pen holds 3 + 7: the loss falls on the meal.
  Json situation = by_needle(16.0);
  situation["carbs"] = 150;
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["parts"], Json({{"rescue", 3}, {"meal", 12}, {"basal", 0}}));
  const Json pen = example_with({{"/syringe", nullptr}, {"/pen/capacity", 10}});
  EXPECT_EQ(advise(pen, nothing, situation)["dose"]["parts"], Json({{"rescue", 3}, {"meal", 7}, {"basal", 0}}));
}

TEST(Dose, NoMealPartWhileVomiting) {
  Json situation = by_needle(16.0);
  situation["carbs"] = 60;
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["parts"]["meal"], 5);
  situation["signs"] = {"vomitedOnce"};
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["parts"]["meal"], 0);
}

TEST(Dose, NoMealPartOnTheWayToHospital) {
  Json situation = at(16.0, 3.0);
  situation["carbs"] = 60;
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["parts"]["meal"], 0);
}

TEST(Dose, ExtraIsNotReducedByInsulinOnBoard) {
  // 3 units by the pump's meal 60 min ago count 2.51 as no incident runs: net 1.29, extra 4.00.
  const Json answer = advise(plan(), Json::array({pump_dose(60, 3, "meal")}), at(16.0, 0.8));
  EXPECT_EQ(line(answer, "onBoard"), "2.51");
  EXPECT_EQ(line(answer, "net"), "1.29");
  EXPECT_EQ(line(answer, "extra"), "4");
  EXPECT_EQ(dose(answer), "4 units");
}

TEST(Dose, ReplaceTakesTheExtraAloneAndNetWhereTheCellIsNone) {
  // 20.0: net 5.4, extra 4.00.
  const Json replace{{"/ketones/combine", "replace"}};
  EXPECT_EQ(dose(advise(plan(), nothing, at(20.0, 0.8))), "5 units");
  EXPECT_EQ(dose(advise(example_with(replace), nothing, at(20.0, 0.8))), "4 units");
  Json none = replace;
  none["/ketones/rows/1/cells/2"] = "none";
  EXPECT_EQ(dose(advise(example_with(none), nothing, at(20.0, 0.8))), "5 units");
}

TEST(Dose, TimesTheCorrectionFallsBackWhereThereIsNone) {
  // 9.0 with a target of 9.0: correction 0, so the fallback, 5 % of 40 = 2.00. At 16.0: 7.0 / 2.5 = 2.8 x 1.5 = 4.2.
  const Json cell{{"timesCorrection", 1.5}, {"fallback", {{"shareOfDaily", 0.05}}}};
  const Json times = example_with({{"/ketones/rows/2/cells/0", cell}, {"/ketones/rows/2/cells/2", cell}, {"/day/target", schedule(9.0)}});
  EXPECT_EQ(line(advise(times, nothing, at(9.0, 1.6)), "extra"), "2");
  EXPECT_EQ(line(advise(times, nothing, at(16.0, 1.6)), "extra"), "4.2");
}

TEST(Dose, TimesTheCorrectionIsTakenBeforeInsulinOnBoard) {
  const Json cell{{"timesCorrection", 1.5}, {"fallback", {{"shareOfDaily", 0.05}}}};
  const Json times = example_with({{"/ketones/rows/1/cells/2", cell}});
  const Json answer = advise(times, Json::array({pump_dose(60, 3, "meal")}), at(16.0, 0.8));
  EXPECT_EQ(line(answer, "extra"), "5.7");  // 3.8 x 1.5
  EXPECT_EQ(line(answer, "net"), "1.29");
}

TEST(Dose, UnitsAddedComeOnTopOfNet) {
  // net 1.29 + 2 = 3.29; by the ketone clock the 2 units alone.
  const Json adds = example_with({{"/ketones/rows/1/cells/2", {{"addUnits", 2}}}});
  EXPECT_EQ(line(advise(adds, Json::array({pump_dose(60, 3, "meal")}), at(16.0, 0.8)), "extra"), "3.29");
  const Json given = Json::array({{{"ago", 125}, {"kind", "changed"}, {"what", {"set", "reservoir"}}},
                                  {{"ago", 120}, {"kind", "injection"}, {"units", 4}, {"glucose", 16.0}, {"ketones", 1.0}}});
  EXPECT_EQ(dose(advise(adds, given, at(16.0, 1.0))), "2 units");
}

TEST(Dose, HIGivesAtLeastItsOwnCell) {
  // Row 0.6 last column 10 % = 4.00; HI cell 15 % = 6.00.
  const Json more = example_with({{"/ketones/hi", {{"shareOfDaily", 0.15}}}});
  EXPECT_EQ(dose(advise(more, nothing, at({{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}, 0.8))), "6 units");
  EXPECT_EQ(dose(advise(plan(), nothing, at({{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}, 0.8))), "4 units");
}

TEST(Dose, WeightAndDailyTotalCarryTheirCells) {
  // 0.05 units/kg x 72 kg = 3.6; net (16.0 - 10.2) / 2.5 = 2.32.
  const Json by_weight = example_with({{"/ketones/rows/1/cells/2", {{"perKg", 0.05}}}, {"/day/target", schedule(10.2)}});
  const Json answer = advise(by_weight, nothing, at(16.0, 0.8));
  EXPECT_EQ(line(answer, "extra"), "3.6");
  EXPECT_EQ(line(answer, "net"), "2.32");
  EXPECT_EQ(dose(answer), "3 units");
}

TEST(Dose, ThePumpsOwnFigureCountsWhereItIsLarger) {
  // No incident: typed 3.0 over nothing recorded: net 0.80, under a step. Typed 1.0 under a recorded 2.51: 2.51 stands.
  Json situation = by_needle(16.0);
  situation["pumpOnBoard"] = 3.0;
  EXPECT_EQ(advise(plan(), nothing, situation)["outcome"], "changeSet");
  situation["pumpOnBoard"] = 1.0;
  EXPECT_EQ(line(advise(plan(), Json::array({pump_dose(60, 3, "meal")}), situation), "onBoard"), "2.51");
}

TEST(Dose, WhatRanOverASinkComesOffThePumpsFigure) {
  // The pump says 5.0; 4 units went over a sink 60 min ago, of which it still holds 3.33: 1.665.. up to 1.67 counts.
  Json situation = by_needle(16.0);
  situation["pumpOnBoard"] = 5.0;
  const Json sink = Json::array({{{"ago", 60}, {"kind", "offBody"}, {"units", 4}, {"tubingEnd", "sink"}}});
  EXPECT_EQ(line(advise(plan(), sink, situation), "onBoard"), "1.67");  // 5 - 4 x 0.83372 = 1.6651
}

TEST(Dose, AMealCountsLessWhatItsFoodCovers) {
  // 4 units for a meal 60 min ago, 24 g eaten with it: 24 / 12 = 2 covered; 2 x 0.83372 = 1.6674, up 1.67.
  const Json meal{{"id", "meal"}, {"ago", 60}, {"kind", "pumpDose"}, {"units", 4}, {"purpose", "meal"}};
  const Json food{{"ago", 58}, {"kind", "carbs"}, {"grams", 24}, {"for", "meal"}};
  EXPECT_EQ(line(advise(plan(), Json::array({meal, food}), by_needle(16.0)), "onBoard"), "1.67");
  const Json other{{"ago", 58}, {"kind", "carbs"}, {"grams", 24}};
  EXPECT_EQ(line(advise(plan(), Json::array({meal, other}), at(16.0, 0.8)), "onBoard"), "3.34");  // food for nothing in particular
  const Json vomit{{"ago", 30}, {"kind", "sign"}, {"what", {"vomitedOnce"}}};
  EXPECT_EQ(line(advise(plan(), Json::array({meal, food, vomit}), at(16.0, 0.8)), "onBoard"), "3.34");  // and it came up again
}

TEST(Dose, SuspectPumpDosesDoNotCountOnceTheSetIsBlamed) {
  // 3 units by the pump 60 min ago within an incident: with a leak seen they may not be in. 3.8, down 3; the other bound 1.29, down 1.
  const Json pump = Json::array({pump_dose(60, 3, "correction")});
  Json situation = by_needle(16.0);
  EXPECT_EQ(line(advise(plan(), pump, situation), "onBoard"), "2.51");
  situation["seen"] = {"leak"};
  const Json answer = advise(plan(), pump, situation);
  EXPECT_EQ(line(answer, "onBoard"), "0");
  EXPECT_EQ(dose(answer), "3 units");
  EXPECT_EQ(answer["dose"]["otherBound"], "1");
  EXPECT_TRUE(asked::has_look(answer, "04:10"));
}

TEST(Dose, PumpDosesBeforeSuspicionAndThroughANewSetAlwaysCount) {
  const Json opened{{"ago", 90}, {"kind", "incident"}, {"state", "opened"}, {"suspectedSince", "2026-11-25T01:40:00+00:00"}};
  Json situation = by_needle(16.0);
  situation["seen"] = {"leak"};
  EXPECT_EQ(line(advise(plan(), Json::array({opened, pump_dose(91, 3, "automatic")}), situation), "onBoard"), "1.94");  // F3(91 min) = 0.64372: 1.9312, up
  EXPECT_EQ(line(advise(plan(), Json::array({opened, pump_dose(60, 3, "automatic")}), situation), "onBoard"), "0");
  const Json new_set{{"ago", 70}, {"kind", "changed"}, {"what", {"set"}}};
  EXPECT_EQ(line(advise(plan(), Json::array({opened, new_set, pump_dose(60, 3, "automatic")}), situation), "onBoard"), "2.51");
}

TEST(Dose, MatchedCarbohydrateGoesUpToFiveGrams) {
  // 9.0 with 1.6: (2 - 1.0) x 12 = 12, up 15. Ratio 10: exactly 10. Ratio 10.1: 10.1, up 15.
  const auto grams = [](double ratio) { return advise(example_with({{"/day/carbohydrateRatio", schedule(ratio)}}), nothing, at(9.0, 1.6))["carbohydrateGrams"]; };
  EXPECT_EQ(grams(12), 15);
  EXPECT_EQ(grams(10), 10);
  EXPECT_EQ(grams(10.1), 15);
}

TEST(Dose, AtMostSixtyGramsAtOnce) {
  // 6.0 with 0.1 and 6 units too many: (6 + 0.2) x 12 = 74.4, up 75; 60 now.
  const Json answer = advise(plan(), nothing, {{"glucose", 6.0}, {"ketones", 0.1}, {"mistake", {{"what", "tooManyUnits"}, {"insulin", "rapid"}, {"units", 6}}}});
  EXPECT_EQ(answer["carbohydrateGrams"], 60);
}

TEST(Dose, TimesUsualIsTheDoseOverTheCorrection) {
  // 22.0 with 3.0: 8 / 6.2 = 1.29, shown as 1.3. Without a correction there is nothing to compare with.
  EXPECT_EQ(advise(plan(), nothing, at(22.0, 3.0))["dose"]["timesUsual"], "1.3");
  EXPECT_TRUE(advise(plan(), nothing, at({{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}, 0.8))["dose"]["timesUsual"].is_null());
}

TEST(Dose, ThePenIsUsedWhereItIsChosenOrTheOnlyOne) {
  Json situation = at(16.0, 0.8);
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["with"], "syringe");
  situation["with"] = "pen";
  EXPECT_EQ(advise(plan(), nothing, situation)["dose"]["with"], "pen");
  situation.erase("with");
  EXPECT_EQ(advise(example_with({{"/syringe", nullptr}}), nothing, situation)["dose"]["with"], "pen");
}

TEST(Dose, TheSyringeIsDrawnWithTheMarksItHas) {
  // 30 units in half-unit marks: 60 marks, the plunger of 3.5 units at the 7th, a figure every 5 units [iso-8537].
  const Json small = example_with({{"/syringe/capacity", 30}, {"/syringe/step", 0.5}});
  const Json device = advise(small, nothing, by_needle(16.0))["dose"]["device"];
  EXPECT_EQ(device["marks"], 60);
  EXPECT_EQ(device["at"], 7);
  EXPECT_EQ(device["figures"].size(), 6U);
  EXPECT_EQ(device["figures"][0], Json({{"at", 10}, {"text", "5"}}));
  // 100 units in marks of 2: 50 marks, figures every 10 units.
  const Json large = advise(example_with({{"/syringe/capacity", 100}, {"/syringe/step", 2}}), nothing, at(16.0, 0.8))["dose"]["device"];
  EXPECT_EQ(large["marks"], 50);
  EXPECT_EQ(large["at"], 2);
  EXPECT_EQ(large["figures"].size(), 10U);
  EXPECT_EQ(large["figures"][0], Json({{"at", 5}, {"text", "10"}}));
  EXPECT_FALSE(advise(example_with({{"/syringe", nullptr}}), nothing, at(16.0, 0.8))["dose"]["device"].contains("marks"));
}

}  // namespace
}  // namespace stopgap
