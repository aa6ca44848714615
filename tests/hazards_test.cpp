// The hazards of the job that the core holds down, one test or a few for each, named by the hazard: what could happen, and what
// the core does so that it does not. Numbers are those of the plan the contract prints, at 03:10, worked beside the test.
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

Json injection(double ago, double units) { return {{"id", "needle"}, {"ago", ago}, {"kind", "injection"}, {"units", units}, {"glucose", 16.4}, {"ketones", 1.0}}; }
Json strike_of(const char* target) { return {{"id", "strike"}, {"ago", 20}, {"kind", "strike"}, {"target", target}, {"reason", "Typed by mistake."}}; }
bool refused_at(const Json& answer, const std::string& path, const std::string& reason) {
  for (const Json& one : answer.value("refused", Json::array()))
    if (one["path"] == path && one["reason"] == reason) return true;
  return false;
}

// --- units and writing

TEST(Hazard, WrongUnit) {
  // 250 with the plan's mmol/L is no reading; 14.0 as mg/dL is none either. Said with its own unit it is the same reading.
  EXPECT_TRUE(refused_at(advise(plan(), nothing, at(250, 0.8)), "/situation/glucose/value", "outOfRange"));
  EXPECT_TRUE(advise(plan(), nothing, at({{"value", 14.0}, {"unit", "mg/dL"}, {"from", "finger"}}, 0.8)).contains("refused"));
  EXPECT_TRUE(refused_at(advise(plan(), nothing, at({{"value", 14.0}, {"from", "finger"}}, 0.8)), "/situation/glucose/unit", "missing"));
  EXPECT_EQ(dose(advise(plan(), nothing, at({{"value", 288}, {"unit", "mg/dL"}, {"from", "finger"}}, 0.8))), dose(advise(plan(), nothing, at(16.0, 0.8))));
}

TEST(Hazard, CommaReadAsPoint) {
  // "3,5" is no JSON number, and a text is not a number.
  std::string request = asked::advise_request(plan(), nothing, at(16.0, 3.5)).dump();
  request.replace(request.find("{\"blood\":3.5}"), 13, "{\"blood\":3,5}");
  EXPECT_TRUE(is_refusal(ask("advise", request)));
  EXPECT_TRUE(advise(plan(), nothing, at(16.0, {{"blood", "3,5"}})).contains("refused"));
}

TEST(Hazard, ThirtyFiveForThreeFive) {
  // Ketones of 35 are out of range; a plan that leads to more than its cap is cut and the team called.
  EXPECT_TRUE(refused_at(advise(plan(), nothing, at(16.0, 35)), "/situation/ketones/blood", "outOfRange"));
  const Json slipped = advise(example_with({{"/day/correctionFactor", Json::array({{{"from", "00:00"}, {"value", 0.25}}})}}), nothing, at(16.0, 0.8));
  EXPECT_EQ(dose(slipped), "8 units");  // 38 wanted, 20 % of 40
  EXPECT_EQ(slipped["call"], "team");
}

TEST(Hazard, GlucoseAndKetonesSwapped) {
  // Ketones of 16.0 are above every meter; a glucose of 0.8 is below every meter.
  const Json answer = advise(plan(), nothing, at(0.8, 16.0));
  EXPECT_TRUE(refused_at(answer, "/situation/glucose/value", "outOfRange"));
  EXPECT_TRUE(refused_at(answer, "/situation/ketones/blood", "outOfRange"));
}

TEST(Hazard, HiTreatedAsANumber) {
  const Json high{{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
  EXPECT_EQ(advise(plan(), nothing, at(high, 0.8))["dose"]["working"]["correction"], "0");
  EXPECT_EQ(advise(plan(), nothing, at(high, 0.8))["call"], "team");
  EXPECT_EQ(dose(advise(plan(), nothing, at("HI", 0.8))), "none");  // once is not twice
}

TEST(Hazard, DoseLargerThanTheDevice) {
  // A pen of 3 units: 4 wanted, 3 given, the rest said.
  const Json answer = advise(example_with({{"/syringe", nullptr}, {"/pen/capacity", 3}}), nothing, at(16.0, 0.8));
  EXPECT_EQ(dose(answer), "3 units");
  EXPECT_TRUE(asked::has_caution(answer, "cut"));
  EXPECT_EQ(answer["call"], "team");
}

TEST(Hazard, SmallerThanAStep) {
  // 5 % of 18 = 0.9 and (10.0 - 9.0) / 2.5 = 0.4 with marks of one unit.
  const Json small = example_with({{"/dailyTotal", 18}, {"/day/target", Json::array({{{"from", "00:00"}, {"value", 9.0}}})}});
  const Json answer = advise(small, nothing, at(10.0, 0.8));
  EXPECT_EQ(dose(answer), "none");
  EXPECT_TRUE(asked::has_caution(answer, "underStep"));
  EXPECT_EQ(answer["call"], "team");
}

// --- insulin and device

TEST(Hazard, WrongConcentration) {
  for (const int strength : {40, 200}) {
    EXPECT_TRUE(advise(example_with({{"/rapid/unitsPerMl", strength}}), nothing, at(16.0, 0.8)).contains("refused")) << strength;
    EXPECT_TRUE(advise(example_with({{"/longActing/unitsPerMl", strength}}), nothing, at(16.0, 0.8)).contains("refused")) << strength;
  }
}

TEST(Hazard, DrawnFromAPen) {
  // The device of the answer is the one that is named; one the plan does not have is refused.
  Json situation = at(16.0, 0.8);
  situation["with"] = "pen";
  EXPECT_EQ(asked::slots_of(advise(plan(), nothing, situation), "inject")["device"], "pen");
  EXPECT_TRUE(advise(example_with({{"/pen", nullptr}}), nothing, situation).contains("refused"));
}

TEST(Hazard, LongActingTakenForRapid) {
  // 20 units of the rapid one instead of the long one: far too much. 20 of the long one: say so, and its hold.
  Json situation = at(12.0, 0.2);
  situation["mistake"] = {{"what", "wrongInsulin"}, {"insulin", "rapid"}, {"units", 20}};
  const Json rapid = advise(plan(), nothing, situation);
  EXPECT_EQ(rapid["outcome"], "tooMuch");
  EXPECT_EQ(rapid["call"], "emergency");  // (20 - 2.2) x 12 = 214 g
  EXPECT_EQ(dose(rapid), "none");
  situation["mistake"]["insulin"] = "long";
  const Json long_acting = advise(plan(), nothing, situation);
  EXPECT_EQ(long_acting["call"], "team");
  EXPECT_TRUE(asked::has_caution(long_acting, "longActing"));
  EXPECT_EQ(asked::hold_clock(long_acting, "allRapid"), "none");
}

TEST(Hazard, LongActingGivenTwice) {
  const Json given = Json::array({{{"ago", 60}, {"kind", "injection"}, {"insulin", "long"}, {"units", 18}}});
  EXPECT_EQ(asked::holds(plan(), given)["holds"][0]["what"], "longActing");
  EXPECT_EQ(asked::holds(plan(), given)["holds"][0]["until"], "2026-11-26T02:10:00+00:00");
}

// --- dosing twice

TEST(Hazard, DoseTwiceByHand) {
  // Shown to one parent, unanswered; the other asks.
  const Json shown = Json::array({{{"id", "shown"}, {"ago", 10}, {"kind", "doseShown"}, {"units", 4}}});
  const Json answer = advise(plan(), shown, at(16.0, 0.8));
  EXPECT_EQ(answer["outcome"], "didYouInject");
  EXPECT_EQ(dose(answer), "none");
}

TEST(Hazard, DoseTwiceAfterADeadPhone) {
  // An hour without the phone: the question stands.
  const Json shown = Json::array({{{"id", "shown"}, {"ago", 60}, {"kind", "doseShown"}, {"units", 4}}});
  EXPECT_EQ(asked::holds(plan(), shown)["unanswered"]["id"], "shown");
  EXPECT_EQ(advise(plan(), shown, at(16.0, 0.8))["gate"], "ASK");
}

TEST(Hazard, DoseTwiceByThePump) {
  // Needle 3 units 60 min ago and 1 unit by automation since: 3.47 acting x 2.5 = 8.7 under 12.0.
  const Json both = Json::array({injection(60, 3), {{"ago", 30}, {"kind", "pumpDose"}, {"units", 1}, {"purpose", "automatic"}}});
  const Json answer = advise(plan(), both, at(12.0, 0.2));
  EXPECT_EQ(answer["outcome"], "tooMuch");
  EXPECT_TRUE(has_step(answer, "automationOff") && has_step(answer, "sugar"));
}

TEST(Hazard, OffBodyWhileStillConnected) {
  const Json delivered = Json::array({{{"ago", 10}, {"kind", "offBody"}, {"units", 4}, {"tubingEnd", "body"}}});
  EXPECT_EQ(advise(plan(), delivered, at(16.0, 0.2))["outcome"], "tooMuch");
}

TEST(Hazard, AutomationResumedTooSoon) {
  // Every needle dose against ketones starts the pause anew: 4 h after the last.
  const Json two = Json::array({injection(200, 4), {{"ago", 100}, {"kind", "injection"}, {"units", 2}, {"glucose", 16.0}, {"ketones", 1.0}}});
  EXPECT_EQ(asked::hold_clock(asked::holds(plan(), two), "automation"), "05:30");
  EXPECT_EQ(asked::hold_clock(advise(plan(), two, at(9.0, 0.2)), "automation"), "05:30");
}

// --- the hold

TEST(Hazard, StackingWithinTheHold) {
  const Json answer = advise(plan(), Json::array({injection(60, 4)}), at(20.0, 0.8));
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(dose(answer), "none");
  EXPECT_FALSE(has_step(answer, "inject") || has_step(answer, "pumpCorrection"));
}

TEST(Hazard, StackingByRollingDoses) {
  // 9 units 250 min ago and 4 now are 13, over 30 % of 40.
  EXPECT_EQ(dose(advise(plan(), Json::array({injection(250, 9)}), at(16.0, 1.0))), "none");
}

TEST(Hazard, HoldLostByZoneChange) {
  // The phone flew two hours east: 05:10 there is 03:10 here. The hold of 06:10 ends at 08:10 there.
  Json request = asked::advise_request(plan(), Json::array({injection(60, 4)}), at(16.0, 0.8));
  request["situation"]["now"] = "2026-11-25T05:10:00+02:00";
  const Json east = Json::parse(ask("advise", request.dump()));
  EXPECT_EQ(east["outcome"], "hold");
  EXPECT_EQ(asked::hold_clock(east, "correction"), "08:10");
}

TEST(Hazard, HoldLostByAStruckEntry) {
  const Json struck = Json::array({injection(60, 4), strike_of("needle")});
  EXPECT_EQ(advise(plan(), struck, at(16.0, 0.8))["outcome"], "hold");
  EXPECT_EQ(asked::hold_clock(asked::holds(plan(), struck), "correction"), "06:10");
}

TEST(Hazard, HoldLostByAnUnansweredCall) {
  // A call that nobody answered confirms no strike.
  Json events = Json::array({injection(60, 4), strike_of("needle"), {{"ago", 10}, {"kind", "call"}, {"to", "team"}, {"answered", false}, {"for", "strike"}}});
  EXPECT_EQ(advise(plan(), events, at(16.0, 0.8))["outcome"], "hold");
  events[2]["answered"] = true;
  EXPECT_EQ(dose(advise(plan(), events, at(16.0, 0.8))), "4 units");
}

TEST(Hazard, HoldLostByClockSetBack) {
  // The injection of 02:10 lies ahead of a clock that now says 01:50: no dose, ask another clock.
  Json request = asked::advise_request(plan(), Json::array({injection(60, 4)}), at(16.0, 0.8));
  request["situation"]["now"] = "2026-11-25T01:50:00+00:00";
  const Json answer = Json::parse(ask("advise", request.dump()));
  EXPECT_EQ(answer["outcome"], "clockInDoubt");
  EXPECT_EQ(dose(answer), "none");
}

TEST(Hazard, HoldLostByAnUnsureInjection) {
  Json unsure = injection(60, 4);
  unsure["sure"] = false;
  EXPECT_EQ(advise(plan(), Json::array({unsure}), at(16.0, 0.8))["outcome"], "hold");
}

TEST(Hazard, HoldLostByClosingTheIncident) {
  const Json closed = Json::array({injection(60, 4), {{"ago", 5}, {"kind", "incident"}, {"state", "closed"}}});
  EXPECT_EQ(advise(plan(), closed, at(16.0, 0.8))["outcome"], "hold");
}

// --- is it the set?

TEST(Hazard, WorkingSetCondemnedTooEarly) {
  // 30 min after a correction nothing can be said; at 60 min a little lower is lower; at 120 min a fall of 2.0 is enough.
  const auto after = [](int ago, double then) { return Json::array({{{"ago", ago}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", then}}}); };
  EXPECT_EQ(advise(plan(), after(30, 16.0), at(16.5, 0.2))["outcome"], "wait");
  EXPECT_EQ(advise(plan(), after(60, 16.1), at(16.0, 0.2))["outcome"], "wait");
  EXPECT_EQ(advise(plan(), after(120, 18.0), at(16.0, 0.2))["outcome"], "wait");
}

TEST(Hazard, FailedSetTrustedTooLong) {
  const auto after = [](int ago, double then) { return Json::array({{{"ago", ago}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", then}}}); };
  EXPECT_EQ(advise(plan(), after(60, 16.0), at(16.0, 0.2))["outcome"], "inject");
  EXPECT_EQ(advise(plan(), after(120, 17.9), at(16.0, 0.2))["outcome"], "inject");
  EXPECT_TRUE(has_step(advise(plan(), after(120, 17.9), at(16.0, 0.2)), "changeSet"));
}

TEST(Hazard, ANewSetTakenForProven) {
  const Json after = Json::array({{{"ago", 65}, {"kind", "incident"}, {"state", "opened"}}, injection(60, 4), {{"ago", 50}, {"kind", "changed"}, {"what", {"set"}}}});
  EXPECT_TRUE(asked::has_caution(advise(plan(), after, at(12.0, 0.2)), "newLineUnproven"));
}

// --- ketones

TEST(Hazard, KetonesNotTested) {
  const Json answer = advise(plan(), nothing, at(16.0, "notYet"));
  EXPECT_EQ(answer["outcome"], "testKetones");
  EXPECT_EQ(dose(answer), "none");
}

TEST(Hazard, OldKetonesTakenForNew) {
  // 0.1 of two hours ago is not a test of now.
  EXPECT_EQ(advise(plan(), nothing, at(16.0, {{"blood", 0.1}, {"at", "2026-11-25T01:10:00+00:00"}}))["outcome"], "testKetones");
}

TEST(Hazard, NegativeUrineStripBelieved) {
  const Json pain{{"glucose", 9.0}, {"ketones", "negative"}, {"signs", {"bellyPain"}}};
  EXPECT_EQ(advise(plan(), nothing, pain)["outcome"], "emergency");
  Json blood = pain;
  blood["ketones"] = 0.1;
  EXPECT_EQ(advise(plan(), nothing, blood)["outcome"], "callTeam");
}

TEST(Hazard, UrineChased) {
  // A strip stays positive after the blood has cleared: no second dose by the ketone clock on a strip.
  const Json given = Json::array({{{"ago", 125}, {"kind", "changed"}, {"what", {"set", "reservoir"}}}, injection(120, 4)});
  EXPECT_EQ(dose(advise(plan(), given, at(16.0, "moderate"))), "none");
}

TEST(Hazard, HomeDosingAtThree) {
  EXPECT_EQ(advise(plan(), nothing, at(16.0, 3.0))["outcome"], "emergency");
  EXPECT_EQ(advise(plan(), nothing, at(16.0, 3.0))["call"], "emergency");
  EXPECT_EQ(advise(plan(), nothing, at(9.0, 3.0))["call"], "emergency");
}

TEST(Hazard, NormalGlucoseHidesKetones) {
  EXPECT_EQ(advise(plan(), nothing, at(8.0, 2.0))["decidedBy"], "EAT");
  EXPECT_EQ(advise(plan(), nothing, at(8.0, 2.0))["call"], "team");
}

// --- low

TEST(Hazard, InsulinGivenIntoALow) {
  for (const double glucose : {2.0, 3.0, 3.9})
    for (const double ketones : {0.1, 0.8, 1.6, 3.2}) {
      EXPECT_EQ(dose(advise(plan(), nothing, at(glucose, ketones))), "none") << glucose << " with " << ketones;
      EXPECT_GE(advise(plan(), nothing, at(glucose, ketones))["carbohydrateGrams"], 15) << glucose << " with " << ketones;
    }
}

TEST(Hazard, FoodIntoAMouthThatCannotSwallow) {
  for (const char* sign : {"fitting", "cannotSwallow"}) {
    const Json answer = advise(plan(), nothing, {{"glucose", 3.0}, {"ketones", 0.1}, {"signs", {sign}}});
    EXPECT_EQ(answer["call"], "emergency");
    EXPECT_EQ(answer["carbohydrateGrams"], 0);
    EXPECT_FALSE(has_step(answer, "sugar") || has_step(answer, "eat"));
  }
}

TEST(Hazard, FallingFastTakenForFine) {
  // 8.0 with 3 units of an hour ago: 8.0 - 2.51 x 2.5 = 1.7.
  EXPECT_EQ(advise(plan(), Json::array({injection(60, 3)}), at(8.0, 0.1))["outcome"], "eatNow");
}

// --- readings

TEST(Hazard, SensorBelieved) {
  const Json sensor{{"value", 16.0}, {"unit", "mmol/L"}, {"from", "sensor"}};
  EXPECT_EQ(advise(plan(), nothing, at(sensor, 0.8))["outcome"], "testGlucose");
  EXPECT_EQ(dose(advise(plan(), nothing, at(sensor, 0.8))), "none");
}

TEST(Hazard, StickyFinger) {
  // HI of a finger is washed and repeated before any dose.
  EXPECT_EQ(advise(plan(), nothing, at("HI", 0.8))["outcome"], "testGlucose");
  EXPECT_TRUE(has_step(advise(plan(), nothing, at("HI", 0.8)), "retest"));
}

TEST(Hazard, OldReadingTakenForNew) {
  const Json old{{"value", 16.0}, {"unit", "mmol/L"}, {"from", "finger"}, {"at", "2026-11-25T02:54:00+00:00"}};
  EXPECT_EQ(advise(plan(), nothing, at(old, 0.8))["outcome"], "testGlucose");
}

TEST(Hazard, AMissingFactBecomesANumber) {
  EXPECT_EQ(dose(advise(plan(), nothing, {{"ketones", "notYet"}})), "none");
  EXPECT_EQ(dose(advise(plan(), nothing, {{"ketones", 1.0}})), "none");
  EXPECT_TRUE(refused_at(advise(plan(), nothing, {{"glucose", 16.0}}), "/situation/ketones", "missing"));
}

// --- plan

TEST(Hazard, SomeoneElsesPlan) {
  Json request = asked::advise_request(plan(), nothing, at(16.0, 0.8));
  request["record"]["planId"] = "p-somebody";
  EXPECT_TRUE(refused_at(Json::parse(ask("advise", request.dump())), "/record/planId", "contradiction"));
}

TEST(Hazard, OldRevision) {
  EXPECT_EQ(dose(advise(example_with({{"/agreement/reviewBy", "2026-10-25"}}), nothing, at(16.0, 0.8))), "none");  // 31 days, 30 of grace
  const Json grace = advise(example_with({{"/agreement/reviewBy", "2026-10-26"}}), nothing, at(16.0, 0.8));
  EXPECT_EQ(dose(grace), "4 units");
  EXPECT_TRUE(asked::has_caution(grace, "inGrace"));
}

TEST(Hazard, ADraftTakenForAPlan) {
  for (const char* status : {"draft", "withdrawn"}) {
    const Json answer = advise(example_with({{"/agreement/status", status}}), nothing, at(16.0, 0.8));
    EXPECT_EQ(answer["outcome"], "noPlan") << status;
    EXPECT_EQ(dose(answer), "none") << status;
  }
}

TEST(Hazard, OldWeight) {
  // An adult's after 365 days, a child's after 90.
  const auto stale = [](const Json& one) { return asked::has_caution(advise(one, nothing, {{"ketones", 0.2}}), "staleWeight"); };
  EXPECT_FALSE(stale(example_with({{"/person/measuredOn", "2025-11-25"}})));
  EXPECT_TRUE(stale(example_with({{"/person/measuredOn", "2025-11-24"}})));
  Json child = asked::plan_of("child");
  asked::change(child, {{"/person/measuredOn", "2026-08-27"}});
  EXPECT_FALSE(stale(child));
  asked::change(child, {{"/person/measuredOn", "2026-08-26"}});
  EXPECT_TRUE(stale(child));
}

TEST(Hazard, PlanAlteredOnTheWay) {
  const Json untouched = advise(plan(), nothing, at(16.0, 0.8));
  const Json altered = advise(example_with({{"/dailyTotal", 40.1}}), nothing, at(16.0, 0.8));
  EXPECT_NE(untouched["planFingerprint"], altered["planFingerprint"]);
  Json twice = plan();
  twice["dailyTotall"] = 80;
  EXPECT_TRUE(refused_at(advise(twice, nothing, at(16.0, 0.8)), "/plan/dailyTotall", "unknownKey"));
}

TEST(Hazard, APlanOfANewerFormatIsGuessedAt) {
  EXPECT_TRUE(refused_at(advise(example_with({{"/version", 2}}), nothing, at(16.0, 0.8)), "/plan/version", "newerFormat"));
}

// --- school

Json school(const Json& events, const Json& changes = Json::object()) {
  Json plan = asked::plan_of("child");
  asked::change(plan, changes);
  return advise(plan, events, {{"now", "2026-11-25T12:10:00+01:00"}, {"glucose", 270}, {"ketones", 0.8}, {"viewer", "school"}});
}

TEST(Hazard, TableUsedForASecondDose) {
  const Json answer = school(Json::array({{{"at", "2026-11-25T07:30:00+01:00"}, {"kind", "injection"}, {"units", 1}}}));
  EXPECT_EQ(dose(answer), "none");
  EXPECT_EQ(answer["gate"], "SCH");
  EXPECT_TRUE(has_step(answer, "callHome"));
}

TEST(Hazard, NurseLeftToJudge) {
  // The printed cell, 1.5 units, not a sum; home is called first; orders that ended are no orders.
  EXPECT_EQ(dose(school(nothing)), "1.5 units");
  EXPECT_TRUE(has_step(school(nothing), "callHome"));
  EXPECT_EQ(school(nothing, {{"/school/ordersExpire", "2026-11-24"}})["outcome"], "noPlan");
}

TEST(Hazard, StruckAtSchool) {
  // No strike opens a dose at school.
  const Json events = Json::array({{{"id", "needle"}, {"at", "2026-11-25T07:30:00+01:00"}, {"kind", "injection"}, {"units", 1}}, strike_of("needle")});
  EXPECT_EQ(school(events)["gate"], "SCH");
}

TEST(Hazard, StruckAtHomeAndAgreedOnACallStillCountsAtSchool) {
  const Json events = Json::array({{{"id", "needle"}, {"at", "2026-11-25T07:30:00+01:00"}, {"kind", "injection"}, {"units", 1}}, strike_of("needle"),
                                   {{"id", "call"}, {"at", "2026-11-25T07:50:00+01:00"}, {"kind", "call"}, {"to", "team"}, {"answered", true}, {"for", "strike"}}});
  EXPECT_EQ(school(events)["gate"], "SCH");
  EXPECT_TRUE(school(events)["dose"].is_null());
}

// --- the person

TEST(Hazard, AdviceTrustedOverHowThePersonFeels) {
  // Good numbers and a grave sign: go.
  EXPECT_EQ(advise(plan(), nothing, {{"glucose", 7.0}, {"ketones", 0.1}, {"signs", {"confused"}}})["call"], "emergency");
}

TEST(Hazard, EveryAdviceNamesALookAndAnAlarm) {
  for (const double glucose : {3.0, 6.0, 9.0, 12.0, 16.0, 24.0})
    for (const double ketones : {0.1, 0.8, 1.6, 3.2}) {
      const Json answer = advise(plan(), nothing, at(glucose, ketones));
      ASSERT_FALSE(answer["looks"].empty()) << glucose << " with " << ketones;
      EXPECT_EQ(asked::slots_of(answer, "setAlarm")["at"], answer["looks"][0]["clock"]);
    }
}

}  // namespace
}  // namespace stopgap
