// The published rules that decide something in `advise`, each by its number. Those that do not are listed with the
// reason in tests/published/README.md.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::advise;
using asked::at;
using asked::dose;
using asked::example_with;
using asked::has_step;
using asked::Json;
using asked::nothing;
using asked::plan;

Json with_sign(const Json& glucose, const Json& ketones, const char* sign) { return {{"glucose", glucose}, {"ketones", ketones}, {"signs", {sign}}}; }
Json injection(int ago, double units, const Json& glucose, const Json& ketones) {
  return {{"ago", ago}, {"kind", "injection"}, {"units", units}, {"glucose", glucose}, {"ketones", ketones}};
}
Json pump_dose(int ago, double units, const Json& glucose) {
  return {{"ago", ago}, {"kind", "pumpDose"}, {"units", units}, {"purpose", "correction"}, {"glucose", glucose}};
}
Json change_of_all(int ago) { return {{"ago", ago}, {"kind", "changed"}, {"what", {"set", "reservoir"}}}; }

TEST(PublishedRule, R01KetonesOfThreeGoAtAnyGlucose) {
  for (const double glucose : {2.5, 6.0, 9.0, 12.0, 16.0, 24.0}) {
    EXPECT_EQ(advise(plan(), nothing, at(glucose, 3.0))["call"], "emergency") << glucose;
    EXPECT_NE(advise(plan(), nothing, at(glucose, 2.9))["outcome"], "emergency") << glucose;
  }
  EXPECT_EQ(advise(plan(), nothing, {{"ketones", {{"blood", 3.0}}}})["call"], "emergency");  // no glucose at all
}

TEST(PublishedRule, R01TheDoseAndTheHospitalDoNotWaitForEachOther) {
  const Json answer = advise(plan(), nothing, at(16.0, 3.0));
  EXPECT_EQ(asked::steps(answer).rfind("emergencyCall", 0), 0U);  // the call comes first
  EXPECT_EQ(dose(answer), "8 units");
}

TEST(PublishedRule, R02AndR04SignsOfKetoacidosisAreAnEmergency) {
  for (const char* sign : {"drowsy", "confused", "fastBreathing", "cannotKeepFluid", "fitting", "cannotSwallow"})
    EXPECT_EQ(advise(plan(), nothing, with_sign(12.0, 0.2, sign))["call"], "emergency") << sign;
  for (const char* sign : {"vomitedAgain", "bellyPain"}) EXPECT_EQ(advise(plan(), nothing, with_sign(12.0, 0.6, sign))["call"], "emergency") << sign;
}

TEST(PublishedRule, R03HighWithKetonesAndVomiting) {
  EXPECT_EQ(advise(plan(), nothing, with_sign(15.0, 0.6, "vomitedOnce"))["outcome"], "emergency");
  EXPECT_EQ(advise(plan(), nothing, with_sign(15.0, 0.5, "vomitedOnce"))["outcome"], "correctByPump");
}

TEST(PublishedRule, R04KeepsDroppingAndNothingStaysDown) {
  const Json answer = advise(plan(), nothing, with_sign(3.5, 0.2, "cannotKeepFluid"));
  EXPECT_EQ(answer["outcome"], "lowEmergency");
  EXPECT_EQ(answer["call"], "emergency");
}

TEST(PublishedRule, R06NoFallAfterTwoExtraDosesMeansCall) {
  const Json two = Json::array({injection(250, 4, 16.0, 1.0), change_of_all(240), injection(120, 4, 16.0, 1.0)});
  const Json answer = advise(plan(), two, at(16.0, 1.0));
  EXPECT_EQ(answer["outcome"], "callTeam");
  EXPECT_EQ(dose(answer), "none");
}

TEST(PublishedRule, R07PregnancyCallsEarlyAndAtLowerGlucose) {
  const Json pregnant = example_with({{"/person/pregnant", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.1}}}});
  EXPECT_EQ(advise(pregnant, nothing, at(8.0, 0.6))["call"], "team");
  EXPECT_EQ(advise(pregnant, nothing, at(8.0, "notYet"))["outcome"], "testKetones");
  EXPECT_EQ(advise(plan(), nothing, at(8.0, "notYet"))["outcome"], "lookAgain");
}

TEST(PublishedRule, R07FeelingIllMeansTestKetones) {
  EXPECT_EQ(advise(plan(), nothing, {{"glucose", 8.0}, {"ketones", "notYet"}, {"unwell", true}})["outcome"], "testKetones");
}

TEST(PublishedRule, R08WithAnSglt2InhibitorGlucoseDoesNotGuide) {
  const Json taking = example_with({{"/person/sglt2Inhibitor", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.1}}}});
  const Json answer = advise(taking, nothing, at(8.0, 0.8));
  EXPECT_EQ(answer["outcome"], "injectAtAnyGlucose");
  EXPECT_EQ(dose(answer), "4 units");
  EXPECT_TRUE(has_step(answer, "stopSglt2"));
  EXPECT_EQ(advise(plan(), nothing, at(8.0, 0.8))["outcome"], "eat");
}

TEST(PublishedRule, R09BothAreLookedAtAgainInTwoHours) {
  const Json answer = advise(plan(), nothing, at(16.0, 0.8));
  for (const Json& look : answer["looks"]) EXPECT_EQ(look["what"], Json({"glucose", "ketones"}));
  EXPECT_TRUE(asked::has_look(answer, "05:10"));
}

TEST(PublishedRule, R10KetonesOfTheLastFourHoursStillMatter) {
  const auto last = [](int ago) { return Json::array({{{"ago", ago}, {"kind", "ketones"}, {"blood", 0.8}}}); };
  EXPECT_EQ(advise(plan(), last(240), at(8.0, "notYet"))["outcome"], "testKetones");
  EXPECT_EQ(advise(plan(), last(241), at(8.0, "notYet"))["outcome"], "lookAgain");
}

TEST(PublishedRule, R11ByNeedleNeverByPumpThenReservoirAndSet) {
  const Json answer = advise(plan(), nothing, at(16.0, 0.8));
  EXPECT_TRUE(has_step(answer, "inject") && has_step(answer, "changeSet") && has_step(answer, "changeReservoir"));
  EXPECT_FALSE(has_step(answer, "pumpCorrection"));
  const std::string steps = asked::steps(answer);
  EXPECT_LT(steps.find("inject"), steps.find("changeSet"));
}

TEST(PublishedRule, R12AutomationOffAndTheSameAmountOffTheBody) {
  const Json answer = advise(plan(), nothing, at(16.0, 0.8));
  EXPECT_TRUE(has_step(answer, "automationOff"));
  EXPECT_EQ(asked::slots_of(answer, "offBody")["dose"], answer["dose"]["text"]);
  EXPECT_EQ(asked::hold_clock(answer, "automation"), "07:10");  // the plan's 4 h
  Json tubeless = plan();
  asked::change(tubeless, {{"/pump/tubing", "tubeless"}, {"/squaring/ways", {"paused"}}, {"/squaring/preferred", "paused"}});
  EXPECT_FALSE(has_step(advise(tubeless, nothing, at(16.0, 0.8)), "offBody"));
}

TEST(PublishedRule, R13TheInjectionIsRepeatedNotTheChange) {
  const Json first = Json::array({change_of_all(118), injection(120, 4, 16.0, 1.0)});
  const Json again = advise(plan(), first, at(16.0, 1.0));
  EXPECT_EQ(dose(again), "4 units");
  EXPECT_FALSE(has_step(again, "changeSet") || has_step(again, "changeReservoir"));
}

TEST(PublishedRule, R13NoSecondChangeWhileBothImprove) {
  const Json first = Json::array({change_of_all(118), injection(120, 4, 20.0, 1.4)});
  const Json better = advise(plan(), first, at(16.0, 0.8));
  EXPECT_EQ(better["outcome"], "hold");
  EXPECT_FALSE(has_step(better, "changeSet") || has_step(better, "changeReservoir"));
}

TEST(PublishedRule, R14ANewLineIsUnprovenUntilTheInjectionHasWornOff) {
  const auto after = [](int ago) { return Json::array({change_of_all(ago - 5), injection(ago, 4, 16.0, 1.0)}); };
  EXPECT_TRUE(asked::has_caution(advise(plan(), after(270), at(8.0, 0.2)), "newLineUnproven"));
  EXPECT_FALSE(asked::has_caution(advise(plan(), after(271), at(8.0, 0.2)), "newLineUnproven"));
}

TEST(PublishedRule, R14RisingAlthoughThePumpGivesMoreMeansTheSet) {
  const Json answer = advise(plan(), nothing, {{"glucose", 16.0}, {"ketones", 0.2}, {"highSince", "2026-11-25T01:40:00+00:00"}});
  EXPECT_EQ(answer["outcome"], "inject");
  EXPECT_TRUE(has_step(answer, "changeSet"));
}

TEST(PublishedRule, R15ComingDownWithKetonesLeftGoesOnWithInsulinAndFood) {
  const Json answer = advise(plan(), Json::array({injection(120, 4, 16.4, 1.4)}), at(9.0, 0.8));
  EXPECT_EQ(answer["outcome"], "comingDown");
  EXPECT_EQ(answer["dose"]["parts"], Json({{"rescue", 0}, {"meal", 1}, {"basal", 0}}));  // 20 g / 12
  EXPECT_GE(answer["carbohydrateGrams"], 20);
}

TEST(PublishedRule, R16LowWithKetonesIsShortOfCarbohydrate) {
  const Json answer = advise(plan(), nothing, at(3.9, 1.5));
  EXPECT_EQ(answer["outcome"], "treatLow");
  EXPECT_EQ(dose(answer), "none");
  EXPECT_EQ(answer["carbohydrateGrams"], 15);
  EXPECT_EQ(answer["looks"][0]["clock"], "03:25");
}

TEST(PublishedRule, R21AFingerBeforeInsulin) {
  const Json sensor{{"value", 16.0}, {"unit", "mmol/L"}, {"from", "sensor"}};
  EXPECT_EQ(advise(plan(), nothing, at(sensor, 0.8))["outcome"], "testGlucose");
  EXPECT_EQ(dose(advise(plan(), nothing, at(sensor, 3.2))), "none");
}

TEST(PublishedRule, R21HITakesTheShareOfTheDay) {
  const Json high{{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
  const Json answer = advise(plan(), nothing, at(high, 0.2));
  EXPECT_EQ(dose(answer), "4 units");  // 10 % of 40
  EXPECT_EQ(answer["dose"]["working"]["correction"], "0");
}

TEST(PublishedRule, R22AStripIsNeverANumber) {
  // The strip's row leads to its first dose, but not to a second one: the ketone clock asks for blood.
  EXPECT_EQ(dose(advise(plan(), nothing, at(16.0, "small"))), "4 units");
  const Json first = Json::array({change_of_all(118), injection(120, 4, 16.0, 1.0)});
  EXPECT_EQ(dose(advise(plan(), first, at(16.0, "small"))), "none");
}

TEST(PublishedRule, R23OffThePumpLookHourlyAndReplaceBasal) {
  const Json answer = advise(plan(), Json::array({{{"ago", 30}, {"kind", "pump"}, {"state", "off"}}}), at(8.0, 0.2));
  EXPECT_EQ(answer["outcome"], "offPump");
  EXPECT_EQ(asked::looks(answer), "04:10");
  EXPECT_TRUE(has_step(answer, "bridge"));
}

TEST(PublishedRule, R31TheCorrectionIsWaitedFor) {
  const auto answer_after = [](int ago) { return advise(plan(), Json::array({pump_dose(ago, 3, 18.0)}), at(16.0, 0.2)); };
  EXPECT_EQ(answer_after(119)["outcome"], "wait");
  EXPECT_EQ(answer_after(239)["outcome"], "wait");  // it fell by 2.0
  EXPECT_EQ(answer_after(240)["outcome"], "correctByPump");
}

TEST(PublishedRule, R33LessThanAStepIsNotDrawn) {
  const Json answer = advise(example_with({{"/dailyTotal", 9}, {"/day/target", Json::array({{{"from", "00:00"}, {"value", 9.5}}})}}), nothing, at(10.0, 0.8));
  EXPECT_EQ(dose(answer), "none");  // 5 % of 9 = 0.45, correction 0.2, step 1
  EXPECT_EQ(answer["call"], "team");
  EXPECT_TRUE(asked::has_caution(answer, "underStep"));
}

}  // namespace
}  // namespace stopgap
