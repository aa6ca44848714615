// Hazards that come from what stands in the record, and from how it got there: struck and struck again, closed by a tap, typed
// too late, dated in the future, small deliveries that add up. Each was found by reading the core as an enemy would. Numbers are
// those of the plan the contract prints, at 03:10: factor 2.5, low at 3.9, action 4.5 h, lock 4 h, syringe step 1.
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

// --- whether insulin was too much is judged on the reading of now

Json off_body(double ago, double units, const char* end) { return {{"ago", ago}, {"kind", "offBody"}, {"units", units}, {"tubingEnd", end}}; }
Json read_at(double ago, double glucose) { return {{"ago", ago}, {"kind", "glucose"}, {"value", glucose}}; }

TEST(RecordHazard, AnUnsureDeliveryIsTooMuchOnlyWhileGlucoseCouldGoLow) {
  // 4 units at 02:00, nobody knows where; 3.10 of them would still act. 11.6 - 3.10 x 2.5 = 3.85, at most 3.9; 11.7 - 7.75 = 3.95.
  const Json events = Json::array({off_body(70, 4, "unsure"), read_at(60, 12.0)});
  const Json low = advise(plan(), events, at(11.6, 1.0));
  EXPECT_EQ(low["outcome"], "tooMuch");
  EXPECT_EQ(dose(low), "none");
  EXPECT_EQ(asked::hold_clock(low, "allRapid"), "06:30");  // 02:00 and 4.5 hours
  for (const Json& situation : {at(11.7, 1.0), at(18.0, 1.0), at(18.0, 0.2), at("HI", 1.0), Json{{"ketones", 1.0}}})
    EXPECT_NE(advise(plan(), events, situation)["outcome"], "tooMuch") << situation;
}

TEST(RecordHazard, ALowReadingOfAnHourAgoHoldsNoInsulinFromSomebodyWithABentCannula) {
  // The pump gave 3 units since 01:40 into a bent cannula, on top of 4 by needle at 01:30. One low-looking reading of a cold finger
  // stands in the record. Now 23.2 with ketones of 2.8: glucose can no longer go low, and the repeat of 2 h is 20 min away.
  const Json automatic = {{"ago", 90}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "automatic"}};
  const Json seen = {{"ago", 20}, {"kind", "seen"}, {"what", {"bentCannula"}}}, changed = {{"ago", 15}, {"kind", "changed"}, {"what", {"set", "reservoir"}}};
  Json events = Json::array({injection(100, 4), automatic, read_at(80, 4.2), seen, changed});
  const Json waits = advise(plan(), events, at(23.2, 2.8));
  EXPECT_EQ(waits["decidedBy"], "KET");
  EXPECT_EQ(waits["gate"], "HLD");
  EXPECT_EQ(asked::hold_clock(waits, "allRapid"), "none");
  events[0]["ago"] = 120;
  EXPECT_EQ(dose(advise(plan(), events, at(23.2, 2.8))), "4 units");
}

TEST(RecordHazard, WithoutAReadingTheHoldsGoByTheLatestOneRecorded) {
  // The last reading is an hour old: too old for a dose, but the only one that tells whether the delivery could lead to a low.
  // 10.3 - 3.10 x 2.5 = 2.55; 18.0 - 7.75 = 10.25.
  EXPECT_EQ(asked::hold_clock(asked::holds(plan(), Json::array({off_body(70, 4, "unsure"), read_at(60, 10.3)})), "allRapid"), "06:30");
  EXPECT_EQ(asked::hold_clock(asked::holds(plan(), Json::array({off_body(70, 4, "unsure"), read_at(60, 18.0)})), "allRapid"), "none");
}

TEST(RecordHazard, ManySmallDeliveriesIntoTheBodyAddUp) {
  const Json one = off_body(10, 0.5, "body"), two = off_body(20, 0.5, "body");
  EXPECT_EQ(advise(plan(), Json::array({one, two}), at(16.0, 0.8))["outcome"], "tooMuch");
  EXPECT_NE(advise(plan(), Json::array({one}), at(16.0, 0.8))["outcome"], "tooMuch");
}

// --- the end of an incident

TEST(RecordHazard, AClosedIncidentGivesNoThirdDose) {
  // Two doses still act. A tap, or the other phone, closed their incident.
  const Json events = Json::array({{{"ago", 265}, {"kind", "injection"}, {"units", 3}}, {{"ago", 245}, {"kind", "injection"}, {"units", 3}},
                                   {{"ago", 1}, {"kind", "incident"}, {"state", "closed"}}});
  const Json answer = advise(plan(), events, at(16.0, 1.0));
  EXPECT_EQ(answer["decidedBy"], "CAL");
  EXPECT_EQ(dose(answer), "none");
}

TEST(RecordHazard, OpenedAndClosedInOneSecondIsOpen) {
  for (const char* closed : {"a", "z"}) {
    const Json events = Json::array({{{"ago", 590}, {"kind", "injection"}, {"units", 3}}, {{"ago", 310}, {"kind", "injection"}, {"units", 3}},
                                     {{"id", "m"}, {"ago", 300}, {"kind", "incident"}, {"state", "opened"}, {"suspectedSince", "2026-11-24T17:10:00+00:00"}},
                                     {{"id", closed}, {"ago", 300}, {"kind", "incident"}, {"state", "closed"}}});
    EXPECT_EQ(advise(plan(), events, at(16.0, 1.0))["decidedBy"], "CAL") << closed;
  }
}

// --- what lies in the future warns, and does not reassure

TEST(RecordHazard, AChangeFromTheFutureAnswersNoFault) {
  const Json events = Json::array({{{"ago", 30}, {"kind", "seen"}, {"what", {"leak"}}}, {{"ago", -600}, {"kind", "changed"}, {"what", {"set"}}}});
  EXPECT_EQ(advise(plan(), events, at(8.0, 0.1))["outcome"], "changeSet");
}

TEST(RecordHazard, APumpOnInTheFutureIsOffNow) {
  const Json events = Json::array({{{"ago", 30}, {"kind", "pump"}, {"state", "off"}}, {{"ago", -600}, {"kind", "pump"}, {"state", "on"}}});
  EXPECT_EQ(advise(plan(), events, at(8.0, 0.1))["outcome"], "offPump");
}

TEST(RecordHazard, KetonesFromTheFutureTakeNoEmergencyBack) {
  const Json events = Json::array({{{"ago", 60}, {"kind", "ketones"}, {"blood", 3.2}}, {{"ago", -60}, {"kind", "ketones"}, {"blood", 0.1}}});
  EXPECT_EQ(advise(plan(), events, at(16.0, "notYet"))["call"], "emergency");
}

TEST(RecordHazard, WhatLiesInTheFutureStillClosesTheGate) {
  EXPECT_EQ(advise(plan(), Json::array({{{"ago", -600}, {"kind", "changed"}, {"what", {"set"}}}}), at(16.0, 0.8))["outcome"], "clockInDoubt");
  EXPECT_EQ(dose(advise(plan(), Json::array({{{"ago", -2}, {"kind", "changed"}, {"what", {"set"}}}}), at(16.0, 0.8))), "4 units");
}

// --- the gate

TEST(RecordHazard, ARowThatRepeatsLaterThanTheLock) {
  const Json slow = example_with({{"/ketones/rows/1/repeatHours", 6}});
  const Json answer = advise(slow, Json::array({injection(245, 4)}), at(16.0, 1.0));
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(answer["hold"]["clock"], "05:05");  // 23:05 and six hours
  EXPECT_EQ(advise(slow, Json::array({injection(360, 4)}), at(16.0, 1.0))["outcome"], "inject");
}

TEST(RecordHazard, BasalByNeedleAnswersNothingAboutADoseShown) {
  const Json shown = {{"id", "shown"}, {"ago", 60}, {"kind", "doseShown"}, {"units", 4}};
  Json basal = {{"ago", 50}, {"kind", "injection"}, {"units", 2}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 2}}}};
  EXPECT_EQ(advise(plan(), Json::array({shown, basal}), at(16.0, 0.8))["outcome"], "didYouInject");
  basal["shown"] = "shown";
  EXPECT_EQ(dose(advise(plan(), Json::array({shown, basal}), at(16.0, 0.8))), "4 units");
}

TEST(RecordHazard, ACallBeforeTheStrikeAgreesToNothing) {
  const Json strike = {{"id", "s1"}, {"ago", 10}, {"kind", "strike"}, {"target", "needle"}, {"reason", "Slip."}};
  Json call = {{"ago", 20}, {"kind", "call"}, {"to", "team"}, {"answered", true}, {"for", "s1"}};
  EXPECT_EQ(advise(plan(), Json::array({injection(30, 4), strike, call}), at(16.0, 0.8))["outcome"], "hold");
  call["ago"] = 10;
  EXPECT_EQ(advise(plan(), Json::array({injection(30, 4), strike, call}), at(16.0, 0.8))["outcome"], "inject");
}

TEST(RecordHazard, AnInjectionTypedInAfterwardsRestsOnTheReadingsBesideIt) {
  // The table of the contract: 4 units at 1.0, now 0.8, they fell by 0.2. The same where the 1.0 stands beside the injection.
  const auto events = [](double before) {
    return Json::array({{{"ago", 120 + before}, {"kind", "ketones"}, {"blood", 1.0}}, {{"ago", 120}, {"kind", "injection"}, {"units", 4}},
                        {{"ago", 110}, {"kind", "changed"}, {"what", {"set", "reservoir"}}}});
  };
  EXPECT_EQ(advise(plan(), events(30), at(16.0, 0.8))["outcome"], "hold");
  EXPECT_EQ(advise(plan(), events(31), at(16.0, 0.8))["outcome"], "inject");
}

// --- a danger sign under a rule that decides first

TEST(RecordHazard, ADangerSignCallsTheTeamUnderEveryRule) {
  Json eat = at(6.0, 0.2), unread{{"ketones", 0.2}};
  eat["signs"] = unread["signs"] = {"bellyPain"};
  const Json falling = advise(plan(), Json::array({injection(60, 4)}), eat);
  EXPECT_EQ(falling["decidedBy"], "FAL");
  EXPECT_EQ(falling["call"], "team");
  EXPECT_EQ(advise(plan(), nothing, unread)["decidedBy"], "FNG");
  EXPECT_EQ(advise(plan(), nothing, unread)["call"], "team");
  EXPECT_EQ(advise(example_with({{"/agreement/status", "draft"}}), nothing, at(8.0, 0.2))["call"], "none");
}

TEST(RecordHazard, UnwellWithoutStripsCallsTheTeamWhileAPumpCorrectionIsWaitedFor) {
  Json situation = at(16.0, "noStrips");
  situation["unwell"] = true;
  const Json events = Json::array({{{"ago", 30}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", 16.0}}});
  const Json answer = advise(plan(), events, situation);
  EXPECT_EQ(answer["decidedBy"], "WAI");
  EXPECT_EQ(answer["call"], "team");
}

TEST(RecordHazard, AStripThatShowsNothingTakesNoEmergencyBack) {
  const Json events = Json::array({{{"ago", 60}, {"kind", "ketones"}, {"blood", 3.2}}});
  EXPECT_EQ(advise(plan(), events, at(12.0, "negative"))["call"], "emergency");
  EXPECT_NE(advise(plan(), events, at(12.0, 0.4))["call"], "emergency");
}

// --- strikes and slips of the clock

TEST(RecordHazard, AThirdDoseAfterASuspicionTypedTooLate) {
  // 23:10 typed after midnight lands tonight: it must not empty the incident of its two doses.
  const Json late = Json::array({{{"ago", 560}, {"kind", "incident"}, {"state", "opened"}, {"suspectedSince", "2026-11-25T23:10:00+00:00"}},
                                 {{"ago", 540}, {"kind", "injection"}, {"units", 3}}, {{"ago", 245}, {"kind", "injection"}, {"units", 3}}});
  const Json answer = advise(plan(), late, at(16.0, 1.0));
  EXPECT_EQ(answer["decidedBy"], "CAL");
  EXPECT_EQ(dose(answer), "none");
  EXPECT_EQ(answer["call"], "team");
}

TEST(RecordHazard, AStrikeMadeAgainNeedsItsOwnCall) {
  // Struck, agreed on a call, undone, struck again without a call: the injection counts.
  const Json events = Json::array({injection(30, 4), {{"id", "s1"}, {"ago", 25}, {"kind", "strike"}, {"target", "needle"}, {"reason", "Slip."}},
                                   {{"ago", 24}, {"kind", "call"}, {"to", "team"}, {"answered", true}, {"for", "s1"}},
                                   {{"id", "s2"}, {"ago", 20}, {"kind", "strike"}, {"target", "s1"}, {"reason", "It was given."}},
                                   {{"id", "s3"}, {"ago", 10}, {"kind", "strike"}, {"target", "needle"}, {"reason", "Slip."}}});
  EXPECT_EQ(advise(plan(), events, at(16.0, 0.8))["outcome"], "hold");
}

TEST(RecordHazard, APumpCorrectionFromTheFuture) {
  // A phone whose clock was set back: the clock is in doubt, and the next look is an hour away, not a day.
  const Json events = Json::array({{{"ago", -600}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", 15.6}}});
  const Json answer = advise(plan(), events, at(16.0, 0.2));
  EXPECT_EQ(answer["outcome"], "clockInDoubt");
  EXPECT_EQ(answer["looks"][0]["clock"], "04:10");
}

TEST(RecordHazard, AStruckPumpCorrectionOpensNoSecondOne) {
  const Json events = Json::array({{{"id", "pump"}, {"ago", 20}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", 15.6}},
                                   {{"ago", 10}, {"kind", "strike"}, {"target", "pump"}, {"reason", "Slip."}}});
  const Json answer = advise(plan(), events, at(16.0, 0.2));
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(answer["hold"]["clock"], "06:50");  // 02:50 and four hours
}

TEST(RecordHazard, ALockLongerThanTheActionStillBarsASecondPumpCorrection) {
  const Json long_lock = example_with({{"/limits/lockHours", 8}, {"/rapid/actionHours", 2}});
  const Json events = Json::array({{{"ago", 121}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}, {"glucose", 20.0}}});
  EXPECT_EQ(advise(long_lock, events, at(16.0, 0.2))["outcome"], "hold");
}

TEST(RecordHazard, LongActingByMistakeJustNowHoldsTheNextOne) {
  Json situation = at(12.0, 0.2);
  situation["mistake"] = {{"what", "wrongInsulin"}, {"insulin", "long"}, {"units", 20}};
  EXPECT_EQ(asked::hold_clock(advise(plan(), nothing, situation), "longActing"), "03:10");  // a day on
}

TEST(RecordHazard, NobodyElseStandsUnderTheNameOfTheTeam) {
  const Json only_family = example_with({{"/contacts", Json::array({{{"name", "Grandad"}, {"relation", "grandfather"}, {"phone", "+44 0000 000009"}, {"when", "any hour"}}})}});
  EXPECT_EQ(asked::slots_of(advise(only_family, nothing, at(18.5, 1.5)), "callTeam")["name"], "");
}

TEST(RecordHazard, PausedStandsWhereTwoWordsOnAutomationTie) {
  for (const char* paused : {"a", "z"}) {
    const Json events = Json::array({{{"id", paused}, {"ago", 100}, {"kind", "automation"}, {"state", "paused"}},
                                     {{"id", "m"}, {"ago", 100}, {"kind", "automation"}, {"state", "on"}}});
    Json situation = at(16.0, 0.2);
    situation["highSince"] = "2026-11-25T00:10:00+00:00";
    EXPECT_EQ(advise(plan(), events, situation)["decidedBy"], "PMP") << paused;
  }
}

}  // namespace
}  // namespace stopgap
