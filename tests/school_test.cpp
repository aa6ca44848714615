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

// The whole answer, but for its reasons and for what names this plan and engine.
Json whole(Json answer) {
  // Whom a call rings, and what stands against the plan, have tests of their own.
  for (const char* key : {"because", "planFingerprint", "engine", "ring", "planFindings"}) answer.erase(key);
  return answer;
}
Json given_at(const char* at, const Json& more = Json::object()) {
  Json event{{"at", at}, {"kind", "injection"}, {"units", 1}};
  event.update(more);
  return Json::array({event});
}
Json parts(int rescue, int meal, int basal) { return {{"parts", {{"rescue", rescue}, {"meal", meal}, {"basal", basal}}}}; }
// The child's rows without the one from 3.0: what the row from 1.5 says holds to the end.
Json no_row_from_three() {
  Json rows = child()["ketones"]["rows"];
  rows.erase(3);
  rows[2]["urine"].push_back("large");
  return {{"/ketones/rows", rows}};
}

TEST(School, ThePrintedDoseAsAWholeAnswer) {
  const Json expected = Json::parse(R"({
    "outcome": "inject", "decidedBy": "KET", "gate": null, "call": "none", "callFirst": false,
    "dose": {"units": 1.5, "text": "1.5\u00a0units", "number": "1.5", "insulin": "rapid", "with": "syringe",
             "parts": {"rescue": 1.5, "meal": 0, "basal": 0},
             "working": {"correction": "1.75", "onBoard": "0", "net": "1.75", "extra": "1.68", "chosen": "net", "cap": "4.48",
                         "cut": null, "beforeRounding": "1.75"},
             "otherBound": "1.5", "timesUsual": "0.9", "cell": {"glucose": "250", "ketones": "0.6"},
             "device": {"kind": "syringe", "capacity": 30, "step": "0.5", "marks": 60, "at": 3,
                        "figures": [{"at": 10, "text": "5"}, {"at": 20, "text": "10"}, {"at": 30, "text": "15"}, {"at": 40, "text": "20"},
                                    {"at": 50, "text": "25"}, {"at": 60, "text": "30"}]}},
    "carbohydrateGrams": 0, "given": null,
    "steps": [{"id": "confirmChild", "key": "step-confirm-child", "slots": {"name": "Tilo Brandvik", "born": "2017-03-14"}},
              {"id": "callHome", "key": "step-call-home", "slots": {"name": "Signe Brandvik, mother", "phone": "+44 0000 000004"}},
              {"id": "inject", "key": "step-inject", "slots": {"dose": "1.5\u00a0units", "insulin": "aspart", "device": "syringe"}},
              {"id": "changeSet", "key": "step-change-set", "slots": {}},
              {"id": "changeReservoir", "key": "step-change-reservoir", "slots": {}},
              {"id": "automationOff", "key": "step-automation-off", "slots": {"until": "16:10"}},
              {"id": "drink", "key": "step-drink", "slots": {}},
              {"id": "setAlarm", "key": "step-set-alarm", "slots": {"at": "13:10"}}],
    "holds": [{"what": "correction", "until": "2026-11-25T16:10:00+01:00", "clock": "16:10"},
              {"what": "ketoneDose", "until": "2026-11-25T14:10:00+01:00", "clock": "14:10"},
              {"what": "automation", "until": "2026-11-25T16:10:00+01:00", "clock": "16:10"}],
    "hold": null,
    "looks": [{"at": "2026-11-25T13:10:00+01:00", "clock": "13:10", "what": ["glucose", "ketones"]},
              {"at": "2026-11-25T14:10:00+01:00", "clock": "14:10", "what": ["glucose", "ketones"]}],
    "cautions": [], "incident": "open"})");
  EXPECT_EQ(whole(asked::advise(child(), nothing, school(270, 0.8))), expected);
}

TEST(School, NoDoseAsAWholeAnswer) {
  // A meal by needle at five past seven. The child's plan calls nobody at 0.8, but somebody has to say what is done instead.
  const Json expected = Json::parse(R"({
    "outcome": "hold", "decidedBy": "KET", "gate": "SCH", "call": "team", "callFirst": false, "dose": null, "carbohydrateGrams": 0,
    "given": null,
    "steps": [{"id": "confirmChild", "key": "step-confirm-child", "slots": {"name": "Tilo Brandvik", "born": "2017-03-14"}},
              {"id": "callHome", "key": "step-call-home", "slots": {"name": "Signe Brandvik, mother", "phone": "+44 0000 000004"}},
              {"id": "changeSet", "key": "step-change-set", "slots": {}},
              {"id": "changeReservoir", "key": "step-change-reservoir", "slots": {}},
              {"id": "drink", "key": "step-drink", "slots": {}},
              {"id": "setAlarm", "key": "step-set-alarm", "slots": {"at": "13:10"}},
              {"id": "callTeam", "key": "step-call-team", "slots": {"name": "Children's night line", "phone": "+44 0000 000003"}}],
    "holds": [], "hold": null,
    "looks": [{"at": "2026-11-25T13:10:00+01:00", "clock": "13:10", "what": ["glucose", "ketones"]}],
    "cautions": [], "incident": "open"})");
  EXPECT_EQ(whole(asked::advise(child(), given_at("2026-11-25T07:05:00+01:00", parts(0, 1, 0)), school(270, 0.8))), expected);
}

TEST(School, AColumnFromThreeIsPrintedWhereThePlanHasNoSuchRow) {
  // 300 with 3.2, on the way: the row from 280 says 0.1 x 28 = 2.8, down to 2.5 units, more than (280 - 110) / 80 = 2.13.
  const Json cell{{"glucose", "280"}, {"ketones", "3.0"}};
  for (const Json& ketones : {Json(3.2), Json("HI"), Json("large")}) {
    const Json answer = asked::advise(child(no_row_from_three()), nothing, school(300, ketones));
    EXPECT_EQ(answer["outcome"], "emergency") << ketones;
    EXPECT_EQ(dose(answer), "2.5 units") << ketones;
    EXPECT_EQ(answer["dose"]["cell"], cell) << ketones;
  }
  // Just under it is still the column from 1.5.
  EXPECT_EQ(asked::advise(child(no_row_from_three()), nothing, school(300, 2.9))["dose"]["cell"]["ketones"], "1.5");
}

TEST(School, AReadingInTheOtherUnitIsReadOnTheWorseSideOfAnEdge) {
  // 11.1 mmol/L are 199.98 mg/dL: the display of 200 cannot be told from it. 1.12 units of the ketones, down to 1 unit.
  const Json answer = asked::advise(child(), nothing, school({{"value", 11.1}, {"unit", "mmol/L"}, {"from", "finger"}}, 0.8));
  EXPECT_EQ(dose(answer), "1 unit");
  EXPECT_EQ(answer["dose"]["cell"], Json({{"glucose", "200"}, {"ketones", "0.6"}}));
}

TEST(School, AnyNeedleOfRapidInsulinTodayClosesTheDay) {
  const char* morning = "2026-11-25T07:05:00+01:00";
  const auto gate = [](const Json& events) { return asked::advise(child(), events, school(270, 0.8))["gate"]; };
  EXPECT_EQ(gate(given_at(morning, parts(0, 1, 0))), "SCH");
  EXPECT_EQ(gate(given_at(morning, parts(0, 0, 1))), "SCH");
  EXPECT_EQ(gate(given_at(morning, {{"sure", false}})), "SCH");
  EXPECT_EQ(gate(Json::array({{{"at", morning}, {"kind", "mistake"}, {"what", "twice"}, {"insulin", "rapid"}, {"units", 1}}})), "SCH");
  EXPECT_EQ(gate(given_at(morning, {{"insulin", "long"}})), nullptr);
  EXPECT_EQ(gate(Json::array({{{"at", morning}, {"kind", "pumpDose"}, {"units", 1}, {"purpose", "meal"}}})), nullptr);
  // A strike of the family's phone takes nothing back here.
  Json struck = given_at(morning, {{"id", "i1"}});
  struck.push_back({{"at", "2026-11-25T07:05:30+01:00"}, {"kind", "strike"}, {"target", "i1"}, {"reason", "misTap"}});
  EXPECT_EQ(gate(struck), "SCH");
}

TEST(School, NoDoseWhileHomeDoesNotAnswer) {
  const auto call = [](const char* at, const char* to, bool answered) {
    return Json{{"at", at}, {"kind", "call"}, {"to", to}, {"answered", answered}};
  };
  const Json unanswered = call("2026-11-25T12:07:00+01:00", "home", false);
  const Json none = asked::advise(child(), Json::array({unanswered}), school(270, 0.8));
  EXPECT_EQ(none["outcome"], "hold");
  EXPECT_EQ(none["gate"], "SCH");
  EXPECT_EQ(dose(none), "none");
  EXPECT_EQ(none["call"], "team");
  EXPECT_EQ(asked::steps(none), "confirmChild callHome changeSet changeReservoir drink setAlarm callTeam");
  // The last call counts, and only one to home.
  const auto gate = [](const Json& events) { return asked::advise(child(), events, school(270, 0.8))["gate"]; };
  EXPECT_EQ(gate(Json::array({unanswered, call("2026-11-25T12:09:00+01:00", "home", true)})), nullptr);
  EXPECT_EQ(gate(Json::array({call("2026-11-25T12:05:00+01:00", "home", true), unanswered})), "SCH");
  EXPECT_EQ(gate(Json::array({unanswered, call("2026-11-25T12:09:00+01:00", "team", true)})), "SCH");
  EXPECT_EQ(gate(Json::array({call("2026-11-25T12:07:00+01:00", "team", false)})), nullptr);
}

TEST(School, WhereTheOrdersGiveNoDoseTheTeamIsCalled) {
  // A leak at 270 without ketones: the plan injects a sum, and no cell of the sheet has it.
  Json leak = school(270, 0.2);
  leak["seen"] = {"leak"};
  const Json answer = asked::advise(child(), nothing, leak);
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(answer["gate"], "SCH");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(asked::steps(answer), "confirmChild callHome changeSet setAlarm callTeam");
  // A row that calls for more keeps its call.
  EXPECT_EQ(asked::advise(child(), given_at("2026-11-25T07:05:00+01:00"), school(300, 3.2))["call"], "emergency");
}

TEST(School, WithoutADoseANewSetIsNotChangedAgain) {
  Json events = given_at("2026-11-25T07:05:00+01:00");
  events.push_back({{"at", "2026-11-25T07:00:00+01:00"}, {"kind", "incident"}, {"state", "opened"}});
  const Json hi = {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
  EXPECT_EQ(asked::steps(asked::advise(child(), events, school(hi, 0.2))), "confirmChild callHome changeSet setAlarm callTeam");
  events.push_back({{"at", "2026-11-25T08:11:00+01:00"}, {"kind", "changed"}, {"what", {"set"}}});
  EXPECT_EQ(asked::steps(asked::advise(child(), events, school(hi, 0.2))), "confirmChild callHome setAlarm callTeam");
  // Four hours after the change it is new no more.
  events.back()["at"] = "2026-11-25T08:10:00+01:00";
  EXPECT_EQ(asked::steps(asked::advise(child(), events, school(hi, 0.2))), "confirmChild callHome changeSet setAlarm callTeam");
}

TEST(School, AnEmergencyWithoutItsDoseHasNothingThatGoesWithADose) {
  const Json answer = asked::advise(child(), given_at("2026-11-25T07:05:00+01:00"), school(300, 3.2));
  EXPECT_EQ(answer["outcome"], "emergency");
  EXPECT_EQ(answer["gate"], "SCH");
  EXPECT_EQ(asked::steps(answer), "emergencyCall tellThem confirmChild callHome setAlarm");
  ASSERT_EQ(answer["looks"].size(), 1u);
  EXPECT_EQ(answer["looks"][0]["clock"], "13:10");
}

TEST(School, APenThatCannotDrawThePrintedDoseGivesLessAfterACall) {
  // 1.5 units are printed for the syringe; the pen has whole units.
  Json situation = school(270, 0.8);
  situation["with"] = "pen";
  const Json answer = asked::advise(child({{"/pen", {{"capacity", 60}, {"step", 1}}}}), nothing, situation);
  EXPECT_EQ(dose(answer), "1 unit");
  EXPECT_EQ(answer["dose"]["with"], "pen");
  EXPECT_FALSE(answer["dose"].contains("cell"));
  EXPECT_EQ(answer["callFirst"], true);
  EXPECT_EQ(answer["call"], "team");
  // With a step of 2 nothing of it can be drawn up.
  const Json none = asked::advise(child({{"/pen", {{"capacity", 60}, {"step", 2}}}}), nothing, situation);
  EXPECT_EQ(dose(none), "none");
  EXPECT_EQ(none["gate"], "SCH");
}

TEST(School, TheChildIsConfirmedUnderEveryRuleAfterWhatALowNeeds) {
  Json not_tested = school(270, "notYet");
  EXPECT_EQ(asked::steps(asked::advise(child(), nothing, not_tested)), "testKetones confirmChild setAlarm");
  EXPECT_EQ(asked::steps(asked::advise(child(), nothing, school(60, 0.2))), "sugar retest confirmChild setAlarm");
  EXPECT_EQ(asked::steps(asked::advise(child(), nothing, school(150, 0.2))), "confirmChild setAlarm");
  // No call before an injection where there is none.
  EXPECT_FALSE(has_step(asked::advise(child(), nothing, school(270, 0.2)), "callHome"));
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
