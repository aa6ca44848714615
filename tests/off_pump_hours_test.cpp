// Which hours an injection stands for, and when none is needed yet. Worked by hand with the plan the contract prints: basal 0.75 an hour
// to 06:00, then 0.85; a syringe in steps of 1, down; ratio 12; onset 2 h; rapid insulin acts for 4.5 h.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json night = Json::array({off("25T22:00"), ketones("25T22:00", 0.3)});
const Json quiet{{"expectedHours", 6}, {"glucose", 8.0}};

// 22:00 to 00:00 is 1.7, down 1. Long-acting was to follow and did not: from midnight on there is no basal, and it is said.
TEST(OffPumpHours, ABridgeUntilLongActingWorksStandsForNoHourMore) {
  const Json events = with(night, {bridge("25T22:00", 1, 2)});
  EXPECT_EQ(clock(off_pump(plan, events, "25T22:05", {{"glucose", 8.0}})["nextBridge"]), "00:00");
  // 4 x 0.75 = 3.0, and 0.7 left of 1.7: 3.7 down is 3.
  const Json next = off_pump(plan, with(events, {ketones("26T00:00", 0.3)}), "26T00:00", quiet);
  EXPECT_EQ(screen(next, "bridge")["working"]["sum"], "3.7");
  EXPECT_EQ(dose(next, "bridge"), "3 units");
  EXPECT_EQ(clock(off_pump(plan, events, "26T01:00", quiet)["missed"]["since"]), "00:00");
  // Given 20 minutes later, long-acting works at 00:20: 1.7 and 0.25 are 1.95, within a step of what went in. Nothing more is due.
  EXPECT_EQ(clock(off_pump(plan, with(events, {long_dose("25T22:20", 19)}), "25T22:25", {{"glucose", 8.0}})["nextBridge"]), "none");
  // 25 minutes later it stands to midnight alone; for 25 minutes more nobody injects.
  EXPECT_EQ(clock(off_pump(plan, with(events, {long_dose("25T22:25", 19)}), "25T22:30", {{"glucose", 8.0}})["nextBridge"]), "none");
  // 40 minutes later there is a gap of 40 minutes: 0.5, and 0.7 left: 1.2 down is 1.
  const Json late = off_pump(plan, with(events, {long_dose("25T22:40", 19)}), "25T23:40", {{"glucose", 8.0}});
  EXPECT_EQ(clock(screen(late, "bridge")["working"]["from"]), "00:00");
  EXPECT_EQ(clock(screen(late, "bridge")["working"]["to"]), "00:40");
  EXPECT_EQ(dose(late, "bridge"), "1 unit");
}

// Three were shown and two went in: 1.7 to midnight, and 0.3 at 0.75 an hour are 24 minutes.
TEST(OffPumpHours, LessThanShownStandsForFewerHours) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 2)});
  const Json answer = off_pump(plan, events, "25T22:05", quiet);
  EXPECT_EQ(dose(answer, "bridge"), "none");
  EXPECT_EQ(clock(answer["nextBridge"]), "00:24");
  EXPECT_EQ(screen(off_pump(plan, events, "26T00:24", quiet), "bridge")["working"]["carried"], "0");
}

// More than shown stands for no hour more: rapid insulin does not last, and what is over counts as acting.
TEST(OffPumpHours, MoreThanShownStandsForNoHourMore) {
  const Json events = with(night, {rapid("25T22:00", 2, 0, 3)});
  EXPECT_EQ(clock(off_pump(plan, events, "25T22:05", {{"expectedHours", 6}, {"glucose", 12.0}})["nextBridge"]), "02:00");
  EXPECT_EQ(clock(off_pump(plan, with(night, {rapid("25T22:00", 0, 0, 6)}), "25T22:05", quiet)["nextBridge"]), "02:00");
}

Json parts_given(const Json& shown, double units) {
  return Json::parse(stopgap::ask("partsGiven", Json{{"shown", shown}, {"units", units}}.dump()));
}

// 7 units shown as in CV-20: 2.2 of correction, 2.66 of food, 2.14 of basal. The correction counts first, the food last.
TEST(OffPumpHours, WhatADoseDrawnOtherwiseIsMadeOf) {
  const Json shown{{"units", 7}, {"parts", {{"rescue", 2.2}, {"meal", 2.66}, {"basal", 2.14}}}};
  EXPECT_EQ(parts_given(shown, 7)["parts"], Json({{"rescue", 2.2}, {"meal", 2.66}, {"basal", 2.14}}));
  EXPECT_EQ(parts_given(shown, 6)["parts"], Json({{"rescue", 2.2}, {"meal", 1.66}, {"basal", 2.14}}));
  EXPECT_EQ(parts_given(shown, 3)["parts"], Json({{"rescue", 2.2}, {"meal", 0}, {"basal", 0.8}}));
  EXPECT_EQ(parts_given(shown, 1)["parts"], Json({{"rescue", 1}, {"meal", 0}, {"basal", 0}}));
  // 35 for 3.5: what is over is no basal, so that it is seen as what it is.
  EXPECT_EQ(parts_given({{"units", 3.5}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3.5}}}}, 35)["parts"], Json({{"rescue", 31.5}, {"meal", 0}, {"basal", 3.5}}));
  EXPECT_EQ(parts_given({{"units", 7}}, 6)["refused"][0]["path"], "/shown/parts");
  EXPECT_EQ(parts_given(shown, 0)["refused"][0]["path"], "/units");
  EXPECT_EQ(parts_given({{"units", 7}, {"parts", {{"rescue", 2}, {"meal", 2}, {"basal", 2}}}}, 6)["refused"][0]["reason"], "contradiction");
}

// not more than 2 h without insulin. R-24 [scheen-1987]: basal of a stop of 2 h given before it led to lows, given after it did not.
TEST(OffPumpHours, APumpThatIsBackSoonNeedsNoBridge) {
  const auto back_in = [](double hours, const std::string& now = "25T22:00") { return off_pump(plan, night, now, {{"expectedHours", hours}, {"glucose", 8.0}}); };
  const Json soon = back_in(0.5);
  EXPECT_EQ(soon["way"], "none");
  EXPECT_EQ(soon["wayBecause"], "soonBack");
  EXPECT_EQ(soon["screens"], Json::array());
  EXPECT_EQ(clock(soon["nextBridge"]), "00:00");
  EXPECT_EQ(clock(soon["expectedUntil"]), "22:30");
  EXPECT_EQ(clock(soon["look"]), "23:00");
  EXPECT_TRUE(soon["missed"].is_null());
  EXPECT_EQ(back_in(1.75)["wayBecause"], "soonBack");
  EXPECT_EQ(back_in(2)["wayBecause"], "shorter");
  EXPECT_EQ(dose(back_in(2), "bridge"), "1 unit");   // 2 x 0.85, until the pump is expected
  // The two hours run from when it stopped, however often somebody says "soon".
  EXPECT_EQ(back_in(0.5, "25T23:29")["wayBecause"], "soonBack");
  EXPECT_EQ(clock(back_in(0.5, "25T23:29")["nextBridge"]), "00:00");
  EXPECT_TRUE(back_in(0.5, "25T23:29")["missed"].is_null());
  EXPECT_EQ(back_in(0.5, "25T23:30")["wayBecause"], "shorter");
  // To 00:30 it is 0.81: fewer hours than fill a step would leave them bare. To 01:30 it is 1.55.
  EXPECT_EQ(dose(back_in(0.5, "25T23:30"), "bridge"), "1 unit");
  EXPECT_EQ(screen(back_in(0.5, "25T23:30"), "bridge")["basalHours"], 2);
  // Nobody would be awake then.
  EXPECT_NE(off_pump(plan, night, "25T22:00", {{"expectedHours", 0.5}, {"glucose", 8.0}, {"asleepUntil", when("26T00:01")}})["wayBecause"], "soonBack");
  EXPECT_EQ(off_pump(plan, night, "25T22:00", {{"expectedHours", 0.5}, {"glucose", 8.0}, {"asleepUntil", when("26T00:00")}})["wayBecause"], "soonBack");
  // With food: 24 g are 2 units, and no basal beside them.
  const Json fed = off_pump(plan, night, "25T22:00", {{"expectedHours", 0.5}, {"glucose", 8.0}, {"carbs", 24}});
  EXPECT_EQ(screen(fed, "bridge")["dose"]["parts"], Json({{"rescue", 0}, {"meal", 2}, {"basal", 0}}));
  // No long-acting insulin in the plan changes nothing of it.
  EXPECT_EQ(off_pump(asked::example_with({{"/longActing", nullptr}}), night, "25T22:00", {{"expectedHours", 0.5}, {"glucose", 8.0}})["wayBecause"], "soonBack");
}

// A pump that ran for half an hour or less gave next to nothing: the two hours are those of the first stop.
TEST(OffPumpHours, APumpThatRanForMinutesBeginsNoNewTwoHours) {
  const auto again = [](const std::string& off_again, const std::string& now) {
    return off_pump(plan, Json::array({off("25T22:00"), on("25T23:15"), off(off_again), ketones(now, 0.3)}), now, {{"expectedHours", 0.5}, {"glucose", 8.0}});
  };
  EXPECT_EQ(again("25T23:45", "25T23:45")["wayBecause"], "shorter");
  EXPECT_EQ(clock(again("25T23:45", "25T23:45")["since"]), "22:00");
  EXPECT_EQ(clock(again("25T23:45", "25T23:45")["missed"]["since"]), "22:00");
  EXPECT_EQ(again("25T23:46", "25T23:46")["wayBecause"], "soonBack");
  EXPECT_EQ(clock(again("25T23:46", "25T23:46")["nextBridge"]), "01:46");
}

TEST(OffPumpHours, AfterABridgeTheTwoHoursRunFromItsEnd) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3), ketones("26T01:45", 0.3)});
  const Json answer = off_pump(plan, events, "26T01:45", {{"expectedHours", 0.5}, {"glucose", 8.0}});
  EXPECT_EQ(answer["wayBecause"], "soonBack");
  EXPECT_EQ(clock(answer["nextBridge"]), "04:00");
  // While long-acting insulin works there is nothing to say about soon.
  EXPECT_EQ(off_pump(plan, with(night, {long_dose("25T20:00", 19)}), "25T22:30", {{"expectedHours", 0.5}, {"glucose", 8.0}})["wayBecause"], "atWork");
}

// Waiting is for somebody who is well. Where ketones act, or did and are not tested again, where somebody is ill or high, basal is not
// left out for a minute; nor where something failed before the pump was off, for nobody knows since when none went in.
TEST(OffPumpHours, NobodyIllOrWithKetonesWaitsForAPump) {
  const auto because = [](const Json& events, const Json& glucose = 8.0) {
    return off_pump(plan, events, "25T22:05", {{"expectedHours", 0.5}, {"glucose", glucose}})["wayBecause"];
  };
  const Json well = Json::array({off("25T22:00"), ketones("25T22:04", 0.3)});
  EXPECT_EQ(because(well), "soonBack");
  const Json acting = Json::array({off("25T22:00"), ketones("25T22:04", 0.8), event("25T22:04", "injection", {{"units", 4}, {"glucose", 16.0}, {"ketones", 0.8}})});
  EXPECT_EQ(because(acting, 16.0), "shorter");
  EXPECT_EQ(dose(off_pump(plan, acting, "25T22:05", {{"expectedHours", 0.5}, {"glucose", 16.0}}), "bridge"), "1 unit");
  EXPECT_EQ(because(Json::array({off("25T22:00"), ketones("25T20:30", 0.8)})), "shorter");
  EXPECT_EQ(because(with(well, {event("25T21:00", "sign", {{"what", {"vomitedOnce"}}})})), "shorter");
  EXPECT_EQ(because(well, {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}), "shorter");
  // The trigger is 14.0: so high nobody is by a pump that stopped five minutes ago.
  EXPECT_EQ(because(well, 13.9), "soonBack");
  EXPECT_EQ(because(well, 14.0), "shorter");
  EXPECT_EQ(because(with(well, {event("25T19:00", "seen", {{"what", {"occlusionAlarm"}}})})), "shorter");
  EXPECT_EQ(because(with(well, {event("25T19:00", "seen", {{"what", {"occlusionAlarm"}}}), event("25T19:10", "changed", {{"what", {"set"}}})})), "soonBack");
  EXPECT_EQ(because(with(well, {event("25T22:00", "seen", {{"what", {"pumpDead"}}})})), "soonBack");
}

// Rapid insulin of two bridges at once does not last for eight hours: four and a half, and it is due again.
TEST(OffPumpHours, TwoAtOnceStandForNoSecondFourHours) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3), rapid("25T22:10", 0, 0, 3)});
  EXPECT_EQ(clock(off_pump(plan, events, "25T22:15", {{"expectedHours", 10}, {"glucose", 8.0}})["nextBridge"]), "02:40");
}

TEST(OffPumpHours, OnlyWhatRoundingLeftIsCarried) {
  const auto carried = [](const Json& events, const Json& of = plan, const Json& more = quiet) {
    return screen(off_pump(of, with(events, {ketones("26T02:00", 0.3)}), "26T02:00", more), "bridge")["working"];
  };
  EXPECT_EQ(carried(with(night, {rapid("25T22:00", 0, 0, 3)}))["carried"], "0.2");
  // 2.8 too much, given four hours ago: only what still acts comes off, 2.8 x F3(5.5963) = 2.8 x 0.0826 = 0.2314, up 0.24.
  EXPECT_EQ(carried(with(night, {rapid("25T22:00", 0, 0, 6)}))["carried"], "-0.24");
  // Without parts it is the bridge that was shown.
  const Json shown = event("25T22:00", "doseShown", {{"id", "shown"}, {"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3}}}});
  EXPECT_EQ(carried(with(night, {shown, event("25T22:00", "injection", {{"units", 3}, {"shown", "shown"}})}), plan, {{"expectedHours", 6}, {"glucose", 12.0}})["carried"], "0.2");
  // 4 x 0.4 is 1.6, rounded up to 2; of the next 4 x 0.3 the 0.4 too much come off, and the food is not less for it: 24 g are 2.
  const Json small = asked::example_with({{"/rounding", "nearest"}, {"/day/basal", Json::array({{{"from", "00:00"}, {"value", 0.4}}, {{"from", "02:00"}, {"value", 0.3}}, {{"from", "22:00"}, {"value", 0.4}}})}});
  const Json fed = carried(with(night, {rapid("25T22:00", 0, 0, 2)}), small, {{"expectedHours", 6}, {"glucose", 6.5}, {"carbs", 24}});
  EXPECT_EQ(fed["carried"], "-0.4");
  EXPECT_EQ(fed["sum"], "2.8");
}

// Where no basal is due, what is rounded up belongs to the food: 20 g are 1.67, nearest 2.
TEST(OffPumpHours, FoodAloneIsRoundedAsFood) {
  const Json nearest = asked::example_with({{"/rounding", "nearest"}});
  const Json answer = off_pump(nearest, with(night, {long_dose("25T18:00", 19)}), "25T22:00", {{"glucose", 6.5}, {"carbs", 20}});
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"], Json({{"rescue", 0}, {"meal", 2}, {"basal", 0}}));
}

// Below the trigger a correction comes only beside basal or a meal. From it up it is the way down's own: (14.0 - 6.5) / 2.5 = 3.0.
TEST(OffPumpHours, ACorrectionAloneIsTheWayDownsOwn) {
  const Json nearest = asked::example_with({{"/rounding", "nearest"}});
  const Json events = with(night, {long_dose("25T18:00", 19)});
  EXPECT_EQ(screen(off_pump(nearest, events, "25T22:00", {{"glucose", 13.9}}), "bridge"), Json());
  const Json answer = off_pump(nearest, events, "25T22:00", {{"glucose", 14.0}});
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"], Json({{"rescue", 3}, {"meal", 0}, {"basal", 0}}));
}

// Given a little early, the bridge at hand is the one of 02:00: asleep matters only past 06:00.
TEST(OffPumpHours, AnEarlyBridgeReachesToItsOwnEnd) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3), ketones("26T01:40", 0.3)});
  const auto asleep = [&](const std::string& until) { return off_pump(plan, events, "26T01:40", {{"expectedHours", 7}, {"glucose", 8.0}, {"asleepUntil", when(until)}})["wayBecause"]; };
  EXPECT_EQ(asleep("26T06:00"), "shorter");
  EXPECT_EQ(asleep("26T06:01"), "asleep");
}

TEST(OffPumpHours, AlarmsReachToTheMorningAndOverOneDay) {
  // Back in three hours, and nobody awake before eight: whoever has no long-acting insulin has to wake up.
  EXPECT_EQ(alarms(off_pump(plan, night, "25T22:00", {{"expectedHours", 3}, {"glucose", 8.0}, {"noLongActing", true}, {"asleepUntil", when("26T08:00")}})), "bridge 01:00, bridge 05:00, bridge 09:00");
  EXPECT_EQ(alarms(off_pump(plan, night, "25T22:00", {{"expectedHours", 48}, {"glucose", 8.0}, {"noLongActing", true}})),
            "bridge 02:00, bridge 06:00, bridge 10:00, bridge 14:00, bridge 18:00");
}

// The alarm that is told before the injection is the one that is told after it: who set it need not set another, and nobody wakes for
// nothing. R-23: not more than 2 h without insulin, so that 04:00 is the latest.
TEST(OffPumpHours, TheAlarmToldBeforeAnInjectionIsTheOneAfterIt) {
  const Json soon{{"expectedHours", 5}, {"glucose", 8.0}};
  EXPECT_EQ(alarms(off_pump(plan, night, "25T22:00", soon)), "bridge 02:00, bridge 04:00");
  const Json in = with(night, {rapid("25T22:00", 0, 0, 3)});
  EXPECT_EQ(clock(off_pump(plan, in, "25T22:05", soon)["nextBridge"]), "04:00");
  // Back six hours later, at 04:00 itself: that is not before the two hours are over.
  EXPECT_EQ(alarms(off_pump(plan, night, "25T22:00", {{"expectedHours", 6}, {"glucose", 8.0}})), "bridge 02:00, bridge 04:00");
  EXPECT_EQ(clock(off_pump(plan, in, "25T22:00", {{"expectedHours", 6}, {"glucose", 8.0}})["nextBridge"]), "02:00");
  // Who is ill does not wait.
  const Json ill = with(night, {event("25T21:50", "sign", {{"what", {"vomitedOnce"}}})});
  EXPECT_EQ(alarms(off_pump(plan, ill, "25T22:00", soon)), "bridge 02:00, bridge 04:00");
  // Long-acting insulin that is in and works from 03:00 stands for basal from then on: between 02:00 and 03:00 nobody waits for a pump.
  const Json slow = asked::example_with({{"/longActing/onsetHours", 5}});
  const Json taken = with(night, {long_dose("25T22:00", 19)});
  EXPECT_EQ(alarms(off_pump(slow, taken, "25T22:00", soon)), "bridge 02:00, longActing 22:00");
  EXPECT_EQ(clock(off_pump(slow, with(taken, {rapid("25T22:00", 0, 0, 3)}), "25T22:05", soon)["nextBridge"]), "02:00");
}

// Hazard: whoever reads that the last injection lasts waits without any basal. The half of 13:00 worked until 19:00, whatever it holds.
TEST(OffPumpHours, WhetherTheLastInjectionStillStandsIsSaid) {
  const Json in = with(night, {rapid("25T22:00", 0, 0, 3)});
  EXPECT_EQ(off_pump(plan, night, "25T22:00", {{"expectedHours", 1}, {"glucose", 8.0}})["bridged"], false);
  EXPECT_EQ(off_pump(plan, in, "26T01:59", {{"expectedHours", 1}, {"glucose", 8.0}})["bridged"], true);
  EXPECT_EQ(off_pump(plan, in, "26T02:00", {{"expectedHours", 1}, {"glucose", 8.0}})["bridged"], false);
  const Json half = Json::array({off("25T13:00"), ketones("25T19:15", 0.3), long_dose("25T13:00", 5)});
  const Json answer = off_pump(asked::example_with({{"/offPump/parts", 2}}), half, "25T19:15", {{"expectedHours", 1}, {"glucose", 8.0}});
  EXPECT_EQ(answer["wayBecause"], "soonBack");
  EXPECT_EQ(answer["bridged"], false);
}

// The alarm alone may not wake them. At 02:00 sharp they are awake again, and long-acting lasts the night.
TEST(OffPumpHours, ABridgeThatWouldBeSleptThroughIsSaid) {
  const auto said = [&](const Json& asked, const Json& events = night, const char* now = "25T22:00") {
    Json question{{"expectedHours", 6}, {"glucose", 8.0}};
    question.update(asked);
    return notes(off_pump(plan, events, now, question), "bridgeWhileAsleep");
  };
  EXPECT_TRUE(said({{"noLongActing", true}, {"asleepUntil", when("26T02:01")}}));
  EXPECT_FALSE(said({{"noLongActing", true}, {"asleepUntil", when("26T02:00")}}));
  EXPECT_FALSE(said({{"noLongActing", true}}));
  EXPECT_FALSE(said({{"asleepUntil", when("26T07:00")}}));
  EXPECT_TRUE(said({{"noLongActing", true}, {"asleepUntil", when("26T07:00")}}, with(night, {rapid("25T22:00", 0, 0, 3)}), "25T22:05"));
  // A low comes first, and alone.
  EXPECT_FALSE(said({{"noLongActing", true}, {"asleepUntil", when("26T07:00")}, {"glucose", 3.2}}));
  // Back within the two hours no injection is due at all.
  EXPECT_FALSE(said({{"expectedHours", 0.5}, {"noLongActing", true}, {"asleepUntil", when("25T23:59")}}));
}

// Long-acting wears off at 22:00, the bridge given a little earlier at 01:45: the later of the two.
TEST(OffPumpHours, TheLaterOfBridgeAndLongActingKeepsThePumpBack) {
  const Json events = Json::array({off("24T22:00"), long_dose("24T22:00", 19), rapid("25T21:45", 0, 0, 3), on("25T21:50")});
  EXPECT_EQ(clock(off_pump(plan, events, "25T21:50")["back"]["usualFrom"]), "01:45");
}

// Basal that was shown is asked about as long as it may still act: four and a half hours, not only the four it was for.
TEST(OffPumpHours, ABasalDoseShownIsAskedAboutWhileItMayAct) {
  const Json events = with(night, {event("25T22:00", "doseShown", {{"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3}}}})});
  EXPECT_EQ(first(off_pump(plan, events, "26T02:30", quiet)), "didYouInject");
  EXPECT_NE(first(off_pump(plan, events, "26T02:31", quiet)), "didYouInject");
}

// R-27 [hamilton]: look at 2 h, then 4-hourly.
TEST(OffPumpHours, BackOnThePumpTheFirstLookHasItsTime) {
  const Json events = with(night, {on("25T23:00")});
  EXPECT_EQ(clock(off_pump(plan, events, "25T23:05")["back"]["look"]), "01:00");
  EXPECT_EQ(off_pump(plan, events, "25T23:05")["back"]["laterLooksHours"], 4);
  EXPECT_EQ(clock(off_pump(plan, events, "26T01:00")["back"]["look"]), "01:00");
  EXPECT_EQ(clock(off_pump(plan, events, "26T01:01")["back"]["look"]), "none");
  EXPECT_EQ(clock(off_pump(plan, night, "25T23:05", quiet)["back"]["look"]), "none");
}

}  // namespace
