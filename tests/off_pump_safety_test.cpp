// Off the pump: what an injection may never be, and who must not be left without basal. Worked by hand with the plan the contract prints:
// basal 0.75 an hour to 06:00, then 0.85; target 6.5, factor 2.5, ratio 12; trigger 14.0; carbohydrate alone below 5.6; lock 4 h;
// rolling cap 0.30 x 40 = 12; a syringe in steps of 1, down; rapid insulin acts for 4.5 h.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json night = Json::array({off("25T22:00"), ketones("25T22:00", 0.3)});
Json asks(double glucose, Json more = Json::object()) {
  more["expectedHours"] = 6;
  more["glucose"] = glucose;
  return more;
}
Json parts(const Json& answer) { return screen(answer, "bridge")["dose"]["parts"]; }
Json why(const Json& answer) { return screen(answer, "bridge")["correctionWaits"]["why"]; }

// 9 units went in at 20:30 and the ketone row asks for 4 more: 13 are over the rolling cap of 12. The plain correction of 3.8 less what acts
// would fit; it is not given in place of what the gate closed. Basal alone: 22:30 to 02:30 is 1.5 x 0.85 + 2.5 x 0.75 = 3.15.
TEST(OffPumpSafety, WhereTheGateIsClosedBasalComesAlone) {
  const Json events = Json::array({off("25T18:00"), event("25T18:00", "injection", {{"units", 9}, {"parts", {{"rescue", 9}, {"meal", 0}, {"basal", 0}}}, {"glucose", 22.0}, {"ketones", 0.8}}),
                                   ketones("25T22:30", 0.8)});
  const Json answer = off_pump(plan, events, "25T22:30", asks(22.0));
  EXPECT_EQ(first(answer), "nothing");
  EXPECT_EQ(parts(answer), Json({{"rescue", 0}, {"meal", 0}, {"basal", 3}}));
  EXPECT_EQ(why(answer), "hold");
  EXPECT_EQ(clock(screen(answer, "bridge")["correctionWaits"]["until"]), "22:31");   // 9 leave the 4.5 h after 22:30
}

// The rolling cap holds for the part that is recorded: 9 of 12 are in, 2.99 fit and 3.01 do not.
TEST(OffPumpSafety, TheRecordedCorrectionFitsUnderTheRollingCap) {
  // 9 units of basal and correction below the trigger, four hours ago: they count for the cap and start no lock.
  const Json given = event("25T20:00", "injection", {{"units", 10}, {"parts", {{"rescue", 9}, {"meal", 0}, {"basal", 1}}}, {"glucose", 13.0}, {"basalHours", 2}});
  const Json events = with(Json::array({off("25T20:00"), ketones("25T22:00", 0.3)}), {given});
  // 2 h after it 9 x 0.4213 act: 3.80 up. (33 - 6.5) is cut at the ceiling of 25.0: 7.4 - 3.8 = 3.6 is over 3.
  const Json over = off_pump(plan, events, "25T22:00", {{"expectedHours", 6}, {"glucose", 25.0}});
  EXPECT_EQ(parts(over)["rescue"], 0);
  EXPECT_EQ(why(over), "hold");
}

// At and above the trigger it is the dose the way down gives by needle: (15.0 - 6.5) / 2.5 = 3.4 beside 3.2 of basal, 6.6 down 6.
TEST(OffPumpSafety, FromTheTriggerUpItIsTheWayDownsDose) {
  EXPECT_EQ(parts(off_pump(plan, night, "25T22:00", asks(15.0))), Json({{"rescue", 3.4}, {"meal", 0}, {"basal", 2.6}}));
  // Below it the same to the target, from one step on: (9.0 - 6.5) / 2.5 = 1.0, and 8.9 is 0.96.
  EXPECT_EQ(parts(off_pump(plan, night, "25T22:00", asks(9.0)))["rescue"], 1);
  EXPECT_EQ(parts(off_pump(plan, night, "25T22:00", asks(8.9)))["rescue"], 0);
  EXPECT_EQ(why(off_pump(plan, night, "25T22:00", asks(8.9))), "underStep");
  // Nor alone: the bridge of 22:00 stands, and nothing is eaten.
  const Json in = with(night, {bridge("25T22:00", 3, 4), ketones("25T23:00", 0.3)});
  EXPECT_EQ(off_pump(plan, in, "25T23:00", asks(12.0))["screens"], Json::array());
  EXPECT_EQ(parts(off_pump(plan, in, "25T23:00", asks(12.0, {{"carbs", 24}}))), Json({{"rescue", 2.2}, {"meal", 1.8}, {"basal", 0}}));
}

// Below the trigger the correction clock holds as well: 2 units at 21:00 lock until 01:00. At 00:30 0.37 of them act, and 1.83 would be left.
TEST(OffPumpSafety, BelowTheTriggerTheCorrectionClockHoldsAsWell) {
  const auto at = [](const std::string& now) {
    return off_pump(plan, with(Json::array({off("25T22:00"), rapid("25T21:00", 2, 0, 0)}), {ketones(now, 0.3)}), now, asks(12.0));
  };
  EXPECT_EQ(parts(at("26T00:30")), Json({{"rescue", 0}, {"meal", 0}, {"basal", 3}}));
  EXPECT_EQ(why(at("26T00:30")), "hold");
  EXPECT_EQ(clock(screen(at("26T00:30"), "bridge")["correctionWaits"]["until"]), "01:00");
  EXPECT_GT(parts(at("26T01:00"))["rescue"], 1.8);
}

TEST(OffPumpSafety, AfterBasalGivenTwiceThereIsNoCorrection) {
  const Json twice = with(night, {bridge("25T22:00", 3, 4), bridge("25T22:10", 3, 4)});
  const Json answer = off_pump(plan, twice, "25T22:15", asks(15.0, {{"carbs", 24}}));
  EXPECT_EQ(parts(answer), Json({{"rescue", 0}, {"meal", 2}, {"basal", 0}}));
  EXPECT_EQ(why(answer), "twice");
  EXPECT_EQ(answer["call"], "team");
}

// Rounded up, 1.6 became 2: 0.4 too much comes off the next bridge. With no next bridge it counts on board: long-acting works from 00:00.
TEST(OffPumpSafety, BasalBeyondItsHoursCountsOnBoardWhereNoBridgeFollows) {
  const Json events = with(night, {bridge("25T22:00", 3, 4), long_dose("25T22:00", 19)});
  const Json answer = off_pump(plan, events, "25T22:30", asks(15.0));
  // 22:00 to 00:00 needs 1.7, 3 went in: 1.3 too much. Half an hour after it z = 30 x 6.295794 / 270 = 0.69953, F3 = 0.96632... up 1.26.
  EXPECT_EQ(screen(answer, "bridge")["working"]["onBoard"], "1.26");
  EXPECT_EQ(parts(answer), Json({{"rescue", 2}, {"meal", 0}, {"basal", 0}}));   // 3.4 - 1.26 = 2.14
}

// Near low the bridge waits for 15 g and a look in 15 minutes; not for over two hours, and not where ketones act or nobody knows.
TEST(OffPumpSafety, NearLowCarbohydrateComesBeforeBasal) {
  const auto at = [](const std::string& now, double glucose, const Json& tested) {
    return off_pump(plan, with(Json::array({off("25T22:00")}), {tested}), now, asks(glucose));
  };
  const Json waits = at("25T22:00", 5.5, ketones("25T22:00", 0.3));
  EXPECT_EQ(waits["eat"], Json({{"grams", 15}, {"when", "before"}}));
  EXPECT_EQ(waits["screens"], Json::array());
  EXPECT_EQ(clock(waits["look"]), "22:15");
  EXPECT_TRUE(notes(waits, "eatFirst"));
  EXPECT_EQ(at("25T22:00", 5.6, ketones("25T22:00", 0.3))["eat"], Json());
  EXPECT_EQ(at("25T23:59", 5.5, ketones("25T23:59", 0.3))["eat"]["when"], "before");
  const Json bare = at("26T00:00", 5.5, ketones("26T00:00", 0.3));
  EXPECT_EQ(bare["eat"], Json({{"grams", 15}, {"when", "with"}}));
  EXPECT_EQ(parts(bare), Json({{"rescue", 0}, {"meal", 0}, {"basal", 3}}));
  // Not tested: nobody knows.
  EXPECT_EQ(at("25T22:00", 5.5, ketones("25T21:00", 0.3))["eat"]["when"], "with");
  // Ketones act: the way down's 20 g and basal together.
  const Json acting = at("25T22:00", 5.0, ketones("25T22:00", 0.8));
  EXPECT_EQ(first(acting), "eat");
  EXPECT_EQ(acting["eat"], Json({{"grams", 20}, {"when", "with"}}));
  EXPECT_EQ(dose(acting, "bridge"), "3 units");
}

// No meter: for two hours nothing, and it rings; then basal alone, and the team is called.
TEST(OffPumpSafety, WithoutAMeterBasalComesAfterTwoHours) {
  const auto at = [](const std::string& now, bool none = true) {
    return off_pump(plan, with(night, {ketones(now, 0.3)}), now, {{"expectedHours", 6}, {"noMeter", none}, {"carbs", 24}});
  };
  EXPECT_EQ(dose(at("25T23:59"), "bridge"), "none");
  EXPECT_EQ(alarms(at("25T23:59")).substr(0, 12), "bridge 00:00");
  EXPECT_EQ(parts(at("26T00:00")), Json({{"rescue", 0}, {"meal", 0}, {"basal", 3}}));
  EXPECT_EQ(at("26T00:00")["call"], "team");
  EXPECT_TRUE(notes(at("26T00:00"), "basalWithoutReading"));
  EXPECT_EQ(dose(at("26T00:00", false), "bridge"), "none");
}

// A test holds the correction only: HI that was read once is no reason to leave basal out.
TEST(OffPumpSafety, AReadingToRepeatHoldsNoBasal) {
  const Json answer = off_pump(plan, night, "25T22:00", {{"expectedHours", 6}, {"glucose", {{"reading", "HI"}, {"from", "finger"}}}});
  EXPECT_EQ(first(answer), "testGlucose");
  EXPECT_EQ(parts(answer), Json({{"rescue", 0}, {"meal", 0}, {"basal", 3}}));
  // HI read twice is the plan's dose for it, given by itself.
  const Json twice = off_pump(plan, night, "25T22:00", {{"expectedHours", 6}, {"glucose", {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}}});
  EXPECT_EQ(first(twice), "inject");
  EXPECT_EQ(twice["screens"], Json::array());
}

// Too much rapid insulin: nothing more of it; long-acting only where glucose is high and stays off the low.
TEST(OffPumpSafety, TooMuchHoldsRapidInsulinOnly) {
  const auto at = [](double glucose, double units) {
    const Json mistake = event("25T21:50", "mistake", {{"what", "tooManyUnits"}, {"insulin", "rapid"}, {"units", units}});
    return off_pump(plan, with(night, {mistake}), "25T22:00", {{"glucose", glucose}});
  };
  const Json high = at(20.0, 3);   // 20.0 less 7.5
  EXPECT_EQ(first(high), "tooMuch");
  EXPECT_EQ(dose(high, "longActing"), "19 units");
  EXPECT_EQ(screen(high, "bridge"), Json());
  const Json usual = at(12.0, 1);
  EXPECT_EQ(usual["screens"], Json::array());
  EXPECT_TRUE(notes(usual, "askForBasal"));
  EXPECT_EQ(usual["call"], "team");
  EXPECT_EQ(at(16.0, 10)["screens"], Json::array());   // 16.0 less 25 would go low
}

TEST(OffPumpSafety, NothingPassesARecordOrAClockInDoubt) {
  const Json answer = off_pump(plan, night, "25T22:00", asks(15.0, {{"recordInDoubt", true}}));
  EXPECT_EQ(first(answer), "recordInDoubt");
  EXPECT_EQ(answer["first"]["waits"], "everything");
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(first(off_pump(plan, night, "25T22:00", asks(3.5, {{"recordInDoubt", true}}))), "treatLow");
  const Json early = off_pump(plan, night, "25T22:00", asks(15.0, {{"notBefore", "2026-11-28"}}));
  EXPECT_EQ(first(early), "clockInDoubt");
  EXPECT_EQ(early["screens"], Json::array());
}

// A meal that was shown and answered by nobody is asked about like basal: for four and a half hours.
TEST(OffPumpSafety, AMealShownIsAskedAboutToo) {
  const Json shown = event("25T22:00", "doseShown", {{"id", "shown"}, {"units", 2}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 2}, {"basal", 0}}}});
  EXPECT_EQ(first(off_pump(plan, with(night, {shown}), "25T22:10", asks(8.0))), "didYouInject");
  EXPECT_EQ(first(off_pump(plan, with(night, {shown, rapid("25T22:05", 0, 2, 0)}), "25T22:10", asks(12.0))), "nothing");
}

// A child of 0.1 units an hour, steps of 1, no long-acting insulin at hand: a whole bridge is 0.4. One step is owed after ten hours.
const Json small = asked::example_with({{"/day/basal", Json::array({{{"from", "00:00"}, {"value", 0.25}}})}, {"/syringe/step", 2},
                                        {"/longActing", nullptr}});
// 0.25 x 4 = 1 of a step of 2; a step is owed after eight hours.
Json child(const Json& events, const std::string& now, Json more = Json::object()) {
  more["glucose"] = 8.0;
  return off_pump(small, with(events, {ketones(now, 0.3)}), now, more);
}
TEST(OffPumpSafety, WhereABridgeIsUnderOneStepASingleStepIsGivenWhenItIsOwed) {
  const Json events = Json::array({off("25T06:00")});
  const Json before = child(events, "25T08:00");
  EXPECT_EQ(dose(before, "bridge"), "none");
  EXPECT_TRUE(before["smallBasal"].get<bool>());
  EXPECT_EQ(clock(before["nextBridge"]), "14:00");
  EXPECT_EQ(alarms(before), "bridge 14:00");
  EXPECT_EQ(before["call"], "team");
  EXPECT_TRUE(notes(before, "bridgeUnderStep"));
  EXPECT_EQ(dose(child(events, "25T13:59"), "bridge"), "none");
  const Json due = child(events, "25T14:00");
  EXPECT_EQ(dose(due, "bridge"), "2 units");
  EXPECT_TRUE(screen(due, "bridge")["singleStep"].get<bool>());
  EXPECT_EQ(screen(due, "bridge")["basalHours"], Json());
  EXPECT_EQ(alarms(due), "bridge 22:00");
  // Never two at once: twenty hours late it is one, and the rest is missed basal.
  EXPECT_EQ(dose(child(events, "26T02:00"), "bridge"), "2 units");
  // The next not before the eight hours of the last one have passed, whenever it was given.
  const Json in = with(events, {rapid("25T18:00", 0, 0, 2)});
  EXPECT_EQ(dose(child(in, "25T18:05"), "bridge"), "none");
  EXPECT_EQ(clock(child(in, "25T18:05")["nextBridge"]), "02:00");
  EXPECT_EQ(dose(child(in, "26T01:59"), "bridge"), "none");
  EXPECT_EQ(dose(child(in, "26T02:00"), "bridge"), "2 units");
  // Two steps at once, drawn by mistake, stand for sixteen hours.
  EXPECT_EQ(child(with(events, {rapid("25T18:00", 0, 0, 4)}), "25T18:05")["nextBridge"]["at"], when("26T10:00"));
  // Food is dosed meanwhile: 24 g are 2, and no basal beside it.
  EXPECT_EQ(parts(child(in, "25T19:00", {{"carbs", 24}})), Json({{"rescue", 0}, {"meal", 2}, {"basal", 0}}));
}

// 0.25 an hour by steps of 2 with long-acting insulin in the plan: 6 a day can be drawn. The team is called first.
TEST(OffPumpSafety, WhereOnlyLongActingCanBeDrawnItIsTheWay) {
  const Json both = asked::example_with({{"/day/basal", Json::array({{{"from", "00:00"}, {"value", 0.25}}})}, {"/syringe/step", 2}});
  const auto at = [&](double hours) { return off_pump(both, night, "25T22:00", {{"glucose", 8.0}, {"expectedHours", hours}}); };
  EXPECT_EQ(at(6)["wayBecause"], "underStep");
  EXPECT_EQ(dose(at(6), "longActing"), "6 units");
  EXPECT_EQ(screen(at(6), "longActing")["callFirst"], true);
  EXPECT_EQ(screen(at(6), "longActing")["pumpAsUsualFrom"]["at"], when("26T22:00"));
  EXPECT_EQ(screen(at(6), "longActing")["reducedPercent"], "50");
  EXPECT_EQ(at(6)["call"], "team");
  EXPECT_EQ(at(5.75)["wayBecause"], "shorter");   // within two hours of the bridge's end, at 02:00
}

TEST(OffPumpSafety, SomebodyToWakeThemIsABridgeAndItsAlarm) {
  const auto way = [](const Json& more) {
    Json asked = asks(8.0, more);
    asked["expectedHours"] = 8;
    return off_pump(plan, night, "25T22:00", asked);
  };
  EXPECT_EQ(way({{"asleepUntil", when("26T07:00")}})["wayBecause"], "asleep");
  EXPECT_EQ(way({{"asleepUntil", when("26T02:00")}})["wayBecause"], "shorter");
  const Json woken = way({{"asleepUntil", when("26T07:00")}, {"wakes", true}});
  EXPECT_EQ(woken["wayBecause"], "shorter");
  EXPECT_EQ(alarms(woken).substr(0, 12), "bridge 02:00");
}

// pregnant, on an SGLT2 inhibitor, or under five: no waiting for the pump.
TEST(OffPumpSafety, WhoNeedsBasalSoonDoesNotWaitForThePump) {
  const auto because = [](const Json& of) { return off_pump(of, night, "25T22:00", {{"expectedHours", 0.5}, {"glucose", 8.0}})["wayBecause"]; };
  const Json any{{"shareOfDaily", 0.1}};
  EXPECT_EQ(because(plan), "soonBack");
  EXPECT_EQ(because(asked::example_with({{"/person/pregnant", true}, {"/ketones/anyGlucose", any}})), "shorter");
  EXPECT_EQ(because(asked::example_with({{"/person/sglt2Inhibitor", true}, {"/ketones/anyGlucose", any}})), "shorter");
  EXPECT_EQ(because(asked::example_with({{"/person/born", "2021-11-26"}})), "shorter");    // five tomorrow
  EXPECT_EQ(because(asked::example_with({{"/person/born", "2021-11-25"}})), "soonBack");   // five today
}

// The hours written down with it are the hours it stands for; one given early runs from the end of the one before.
TEST(OffPumpSafety, ABridgeCoversTheHoursWrittenDown) {
  const auto next = [](std::initializer_list<Json> given, const std::string& now) {
    return clock(off_pump(plan, with(night, given), now, {{"glucose", 8.0}, {"expectedHours", 10}})["nextBridge"]);
  };
  EXPECT_EQ(next({bridge("25T22:00", 3, 4)}, "25T22:05"), "02:00");
  EXPECT_EQ(next({bridge("25T22:00", 1, 1.5)}, "25T22:05"), "23:30");
  EXPECT_EQ(next({bridge("25T22:00", 3, 4), bridge("26T01:40", 3, 4)}, "26T01:45"), "06:00");
  // Without them: 1 of 3.2 is more than a step short and lasts 1 / 0.85 h.
  EXPECT_EQ(next({rapid("25T22:00", 0, 0, 1)}, "25T22:05"), "23:10");
  // Less than a step short it lasts the plan's hours; by a pen of half steps, 0.7 short is more than one.
  EXPECT_EQ(next({rapid("25T22:00", 0, 0, 2.5)}, "25T22:05"), "02:00");
}

}  // namespace
