// A school asks: the plan's signed orders stand over the advice. The child of the demo plan, at midday: factor 80, target 110,
// 0.06 units/kg x 28 kg = 1.68 at ketones of 0.6 and up from 250 mg/dL; orders allow the table only, call first above 2 units.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::dose;
using asked::has_step;
using asked::Json;
using asked::nothing;

const std::string midday = "2026-11-25T12:10:00+01:00";

Json child(const Json& changes = Json::object()) {
  Json plan = asked::plan_of("child");
  asked::change(plan, changes);
  return plan;
}

Json school(const Json& glucose, const Json& ketones) { return {{"now", midday}, {"glucose", glucose}, {"ketones", ketones}, {"viewer", "school"}}; }
Json home(const Json& glucose, const Json& ketones) { return {{"now", midday}, {"glucose", glucose}, {"ketones", ketones}}; }
const Json sum_allowed{{"/school/calculation", "allowed"}};

TEST(School, TheTableStandsInsteadOfTheSum) {
  // 270 mg/dL: the sum is (270 - 110) / 80 = 2.00; the sheet's row from 250 says 1.75 or 1.68, down to 1.5 units.
  EXPECT_EQ(dose(asked::advise(child(), nothing, school(270, 0.8))), "1.5 units");
  EXPECT_EQ(dose(asked::advise(child(sum_allowed), nothing, school(270, 0.8))), "2 units");
  EXPECT_EQ(dose(asked::advise(child(), nothing, home(270, 0.8))), "2 units");
}

TEST(School, TheDoseNamesItsCellOfTheSheet) {
  const Json from_table = asked::advise(child(), nothing, school(270, 0.8))["dose"]["cell"];
  EXPECT_EQ(from_table, Json({{"glucose", "250"}, {"ketones", "0.6"}}));
  const Json hi = {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
  EXPECT_EQ(asked::advise(child(), nothing, school(hi, 1.6))["dose"]["cell"], Json({{"glucose", "HI"}, {"ketones", "1.5"}}));
  // No cell is named where the dose is not the printed one: the sum, less because insulin still acts, or at home.
  EXPECT_FALSE(asked::advise(child(sum_allowed), nothing, school(270, 0.8))["dose"].contains("cell"));
  const Json events = Json::array({{{"at", "2026-11-25T12:09:00+01:00"}, {"kind", "pumpDose"}, {"units", 2}, {"purpose", "meal"}}});
  EXPECT_FALSE(asked::advise(child(), events, school(350, 0.8))["dose"].contains("cell"));
  EXPECT_FALSE(asked::advise(child(), nothing, home(270, 0.8))["dose"].contains("cell"));
}

TEST(School, TheTableReadsKetonesAtTheLowerEdgeOfTheirRow) {
  // 1.4 is in the row of 0.6, whatever the correction: the same cell as 0.6.
  EXPECT_EQ(dose(asked::advise(child(), nothing, school(250, 1.4))), dose(asked::advise(child(), nothing, school(250, 0.6))));
}

TEST(School, NoMealPartWithTheTable) {
  Json situation = school(270, 0.8);
  situation["carbs"] = 44;
  EXPECT_EQ(asked::advise(child(), nothing, situation)["dose"]["parts"]["meal"], 0);
}

TEST(School, NoSecondDoseTheSameDay) {
  const auto given = [](const char* at) { return Json::array({{{"at", at}, {"kind", "injection"}, {"units", 1}}}); };
  const Json again = asked::advise(child(), given("2026-11-25T00:00:00+01:00"), school(270, 0.8));
  EXPECT_EQ(dose(again), "none");
  EXPECT_EQ(again["gate"], "SCH");
  EXPECT_TRUE(has_step(again, "callHome"));
  EXPECT_FALSE(has_step(again, "inject"));
  EXPECT_EQ(dose(asked::advise(child(), given("2026-11-24T23:59:59+01:00"), school(270, 0.8))), "1.5 units");
}

TEST(School, TheDayIsTheSchoolsOwn) {
  // 23:30 on the 24th at +00:00 is 00:30 on the 25th at the school.
  const Json given = Json::array({{{"at", "2026-11-24T23:30:00+00:00"}, {"kind", "injection"}, {"units", 1}}});
  EXPECT_EQ(asked::advise(child(), given, school(270, 0.8))["gate"], "SCH");
}

TEST(School, NothingThatGoesWithADoseStandsWithoutOne) {
  // Given at half past seven: no carbohydrate matched to a dose, no squaring of one, and the look is the usual one.
  const Json given = Json::array({{{"at", "2026-11-25T07:30:00+01:00"}, {"kind", "injection"}, {"units", 1}}});
  const Json answer = asked::advise(child(), given, school(200, 1.6));
  EXPECT_EQ(answer["gate"], "SCH");
  EXPECT_EQ(answer["carbohydrateGrams"], 0);
  for (const char* step : {"eat", "sugar", "offBody", "automationOff"}) EXPECT_FALSE(has_step(answer, step)) << step;
  ASSERT_EQ(answer["looks"].size(), 1u);
  EXPECT_EQ(answer["looks"][0]["clock"], "13:10");
}

TEST(School, WhatIsEatenMatchesThePrintedDose) {
  // 200 mg/dL with 1.6: the sheet's row from 180 says 0.1 units/kg x 28 kg = 2.8, down to 2.5 units. Matched to it:
  // (2.5 - (200 - 110) / 80) x 22 = 30.25, up to 35 g.
  const Json answer = asked::advise(child({{"/ketones/rows/2/cells/1", {{"perKg", 0.1}}}}), nothing, school(200, 1.6));
  EXPECT_EQ(dose(answer), "2.5 units");
  EXPECT_EQ(answer["carbohydrateGrams"], 35);
}

TEST(School, ASensorHasNoCorrectionInAnyCell) {
  // 1.68 of the ketones alone, down to 1.5; with 400 from a finger the row from 400 says (400 - 110) / 80 = 3.63, 3.5 units.
  Json situation = school(400, 0.8);
  EXPECT_EQ(dose(asked::advise(child(), nothing, situation)), "3.5 units");
  situation["glucose"] = {{"value", 400}, {"unit", "mg/dL"}, {"from", "sensor"}, {"noMeter", true}};
  EXPECT_EQ(dose(asked::advise(child(), nothing, situation)), "1.5 units");
}

TEST(School, InsulinThatStillActsIsOnNoSheet) {
  // No incident yet, so 2 units by the pump at 12:09 all count: (350 - 110) / 80 - 2.00 = 1.00, the ketones' 1.68 are more, down
  // to 1.5 units. The row from 320 says (320 - 110) / 80, down to 2.5. The less is given, after a call.
  const Json events = Json::array({{{"at", "2026-11-25T12:09:00+01:00"}, {"kind", "pumpDose"}, {"units", 2}, {"purpose", "meal"}}});
  EXPECT_EQ(dose(asked::advise(child(), nothing, school(350, 0.8))), "2.5 units");
  const Json answer = asked::advise(child(), events, school(350, 0.8));
  EXPECT_EQ(dose(answer), "1.5 units");
  EXPECT_EQ(answer["callFirst"], true);
  EXPECT_EQ(answer["call"], "team");
}

TEST(School, CallFirstAboveTheLimitAndNotAtIt) {
  EXPECT_EQ(asked::advise(child(sum_allowed), nothing, school(270, 0.8))["callFirst"], false);  // 2 units, limit 2
  const Json above = asked::advise(child(sum_allowed), nothing, school(310, 0.8));              // 2.5 units
  EXPECT_EQ(above["callFirst"], true);
  const std::string steps = asked::steps(above);
  ASSERT_NE(steps.find("callHome"), std::string::npos);
  EXPECT_LT(steps.find("callHome"), steps.find("inject"));
  EXPECT_EQ(asked::advise(child(sum_allowed), nothing, home(310, 0.8))["callFirst"], false);
}

TEST(School, CallFirstNamesWhoAndWhere) {
  const Json slots = asked::slots_of(asked::advise(child(sum_allowed), nothing, school(310, 0.8)), "callHome");
  EXPECT_EQ(slots["name"], "Signe Brandvik, mother");
  EXPECT_EQ(slots["phone"], "+44 0000 000004");
}

TEST(School, TheChildIsConfirmedFirst) {
  const Json answer = asked::advise(child(), nothing, school(270, 0.8));
  EXPECT_EQ(asked::slots_of(answer, "confirmChild"), Json({{"name", "Tilo Brandvik"}, {"born", "2017-03-14"}}));
  EXPECT_LT(asked::steps(answer).find("confirmChild"), asked::steps(answer).find("inject"));
  EXPECT_FALSE(has_step(asked::advise(child(), nothing, home(270, 0.8)), "confirmChild"));
}

TEST(School, OrdersEndWithTheirLastDay) {
  EXPECT_EQ(dose(asked::advise(child({{"/school/ordersExpire", "2026-11-25"}}), nothing, school(270, 0.8))), "1.5 units");
  const Json expired = asked::advise(child({{"/school/ordersExpire", "2026-11-24"}}), nothing, school(270, 0.8));
  EXPECT_EQ(expired["outcome"], "noPlan");
  EXPECT_EQ(dose(expired), "none");
  EXPECT_EQ(expired["call"], "team");
}

TEST(School, ExpiredOrdersDoNotStopTheAmbulanceOrTheSugar) {
  const Json expired = child({{"/school/ordersExpire", "2026-11-24"}});
  const Json gone = asked::advise(expired, nothing, school(300, 3.2));
  EXPECT_EQ(gone["call"], "emergency");
  EXPECT_EQ(dose(gone), "none");
  EXPECT_EQ(asked::advise(expired, nothing, school(60, 0.2))["outcome"], "treatLow");
}

TEST(School, ASchoolWithoutOrdersIsRefused) {
  Json plan = child();
  plan.erase("school");
  const Json answer = asked::advise(plan, nothing, school(270, 0.8));
  ASSERT_TRUE(answer.contains("refused"));
  EXPECT_EQ(answer["refused"][0]["path"], "/situation/viewer");
}

}  // namespace
}  // namespace stopgap
