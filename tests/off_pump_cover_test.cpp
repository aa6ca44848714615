// What a long-acting dose stands for, and when it no longer does. Worked by hand with the plan the contract prints: basal 0.75 an hour
// to 06:00, then 0.85 (19.8 a day); a syringe in steps of 1, down; onset 2 h, action 24 h.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json calm{{"glucose", 8.0}};
Json in_parts() { return asked::example_with({{"/offPump/parts", 2}}); }
Json at(const Json& of, const Json& events, const std::string& now, const Json& more = calm) { return off_pump(of, with(events, {ketones(now, 0.3)}), now, more); }

// The onset of a following dose is bridged only where more than 2 h would be bare: given at 08:00 it works at 10:00.
TEST(OffPumpCover, ALateDoseIsBridgedUntilItWorks) {
  const Json events = Json::array({off("25T06:00"), long_dose("25T08:00", 19)});
  EXPECT_EQ(dose(at(plan, events, "26T08:00"), "bridge"), "none");
  EXPECT_EQ(dose(at(plan, events, "26T08:00"), "longActing"), "19 units");
  EXPECT_EQ(dose(at(plan, events, "26T08:01"), "bridge"), "1 unit");
  // 08:31 to 10:31 is 1.7, down 1.
  const Json late = at(plan, events, "26T08:31");
  EXPECT_EQ(dose(late, "bridge"), "1 unit");
  EXPECT_EQ(clock(screen(late, "bridge")["working"]["to"]), "10:31");
  EXPECT_EQ(clock(late["missed"]["since"]), "08:00");
  // With the long-acting dose in and the bridge forgotten it is still asked for.
  EXPECT_EQ(dose(at(plan, with(events, {long_dose("26T08:31", 19)}), "26T08:45"), "bridge"), "1 unit");
  // Of two parts one covers all until the next is due, at 20:00, then half: 20:01 to 22:01 is 1.7, half of it 0.85.
  EXPECT_EQ(screen(at(in_parts(), events, "25T20:00"), "bridge"), Json());
  EXPECT_EQ(screen(at(in_parts(), events, "25T20:01"), "bridge")["working"]["basal"], "0.85");
}

// A half is one by the time it was worked out for, not by the minute in which it went in.
TEST(OffPumpCover, AHalfIsWhatWasShownAsOne) {
  const auto until = [](const std::string& shown, const std::string& given) {
    const Json events = Json::array({off("25T06:00"), event(shown, "doseShown", {{"id", "shown"}, {"insulin", "long"}, {"units", 9}}),
                                     event(given, "injection", {{"insulin", "long"}, {"units", 9}, {"shown", "shown"}})});
    return clock(at(in_parts(), events, given)["longActing"]["until"]);
  };
  EXPECT_EQ(until("25T11:59", "25T12:01"), "00:01");   // whole: twelve hours
  EXPECT_EQ(until("25T17:59", "25T18:01"), "00:01");   // half: six
  EXPECT_EQ(until("25T12:00", "25T12:01"), "18:01");
  EXPECT_EQ(until("25T18:00", "25T18:01"), "06:01");
}

// What the team names at 13:00 is no half of the plan's: its next part is twelve hours away, as its page says, and not six.
TEST(OffPumpCover, AnOrderIsNoHalf) {
  const Json asked_for = Json::array({off("25T06:00"), event("25T13:00", "call", {{"to", "team"}, {"answered", true}}),
                                      event("25T13:00", "order", {{"id", "order"}, {"by", "Night line"}, {"insulin", "long"}, {"units", 9}, {"text", "on the call"}})});
  const Json shown = at(in_parts(), asked_for, "25T13:05");
  EXPECT_EQ(screen(shown, "longActing")["share"], "whole");
  EXPECT_NE(alarms(shown).find("longActingPart 01:05"), std::string::npos);
  const Json given = event("25T13:05", "injection", {{"insulin", "long"}, {"units", 9}, {"order", "order"}});
  EXPECT_EQ(clock(at(in_parts(), with(asked_for, {given}), "25T13:10")["longActing"]["until"]), "01:05");
}

// One that acts for twelve hours may be given once a day: for the other twelve somebody has to know of the bridges.
TEST(OffPumpCover, WhereItWearsOffBeforeItsHoldBridgesAreTold) {
  const Json twelve = asked::example_with({{"/longActing/actionHours", 12}});
  const Json answer = at(twelve, Json::array({off("25T06:00"), rapid("25T08:00", 0, 0, 1), long_dose("25T08:00", 19)}), "25T12:00");
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_EQ(clock(answer["nextBridge"]), "20:00");
  EXPECT_EQ(alarms(answer), "bridge 20:00, bridge 00:00, bridge 04:00, longActing 08:00");
}

// 0.4 units cannot be drawn: nothing will work from 00:05 on, and no bridge falls away for it.
TEST(OffPumpCover, WhatCannotBeDrawnTakesNothingOver) {
  const Json events = Json::array({off("25T22:00"), rapid("25T22:00", 0, 0, 3), event("25T22:04", "call", {{"to", "team"}, {"answered", true}}),
                                   event("25T22:04", "order", {{"by", "Night line"}, {"insulin", "long"}, {"units", 0.4}, {"text", "on the call"}})});
  const Json answer = at(plan, events, "25T22:05");
  EXPECT_EQ(dose(answer, "longActing"), "none");
  EXPECT_TRUE(notes(answer, "longActingUnderStep"));
  EXPECT_EQ(clock(answer["nextBridge"]), "02:00");
  EXPECT_EQ(alarms(answer).substr(0, 12), "bridge 02:00");
  EXPECT_EQ(alarms(answer).find("longActing"), std::string::npos);
}

// 1 unit at 22:00 stands to midnight, and long-acting works at 00:25. At 22:30 nothing is injected for those 25 minutes.
TEST(OffPumpCover, NothingIsGivenHoursAheadForAShortGap) {
  const Json events = Json::array({off("25T22:00"), bridge("25T22:00", 1, 2), long_dose("25T22:25", 19)});
  EXPECT_EQ(at(plan, events, "25T22:30")["screens"], Json::array());
  EXPECT_EQ(clock(at(plan, events, "25T22:30")["nextBridge"]), "none");
}

// Ordered for a pump that is thought to be back tomorrow morning: where it works nobody is woken for a bridge.
TEST(OffPumpCover, AnOrderedDoseEndsTheBridgesToo) {
  const Json events = Json::array({off("25T22:00"), event("25T22:00", "call", {{"to", "team"}, {"answered", true}}),
                                   event("25T22:00", "order", {{"by", "Night line"}, {"insulin", "long"}, {"units", 10}, {"text", "on the call"}})});
  const Json answer = at(plan, events, "25T22:05", {{"glucose", 8.0}, {"expectedHours", 10}});
  EXPECT_EQ(answer["wayBecause"], "shorter");
  EXPECT_EQ(alarms(answer), "longActing 22:05");
}

// The next part is due twelve hours after the last however long it acts, six after a half (CV-26).
TEST(OffPumpCover, TheNextPartIsDueHoweverLongTheLastActs) {
  const Json thirty = asked::example_with({{"/offPump/parts", 2}, {"/longActing/actionHours", 30}});
  const auto until = [&](const std::string& one, const std::string& two) {
    return at(thirty, Json::array({off("25T06:00"), long_dose(one, 9), long_dose(two, 9)}), two)["longActing"]["until"]["at"];
  };
  EXPECT_EQ(until("25T08:00", "25T20:00"), when("26T08:00"));
  EXPECT_EQ(until("25T13:00", "25T19:00"), when("26T07:00"));
}

TEST(OffPumpCover, LongActingByMistakeHoldsAsWell) {
  const Json events = Json::array({off("25T22:00"), event("25T21:00", "mistake", {{"what", "wrongInsulin"}, {"insulin", "long"}, {"units", 8}})});
  EXPECT_EQ(at(plan, events, "26T20:59")["longActing"]["state"], "hold");
  EXPECT_EQ(clock(at(plan, events, "26T20:59")["longActing"]["until"]), "21:00");
  EXPECT_EQ(at(plan, events, "26T21:00")["longActing"]["state"], "due");
  EXPECT_EQ(clock(at(plan, events, "26T21:00")["longActing"]["until"]), "none");
  EXPECT_EQ(dose(at(plan, events, "26T21:00"), "longActing"), "19 units");
}

// It stands for nothing before it works, and who has not bridged until then is told.
TEST(OffPumpCover, BeforeItWorksNothingStandsForBasal) {
  EXPECT_EQ(clock(at(plan, Json::array({off("25T22:00"), long_dose("25T22:00", 19)}), "25T23:00")["missed"]["since"]), "22:00");
}

TEST(OffPumpCover, NoneAtHandNoneIsNamedThoughItWasOrdered) {
  const Json events = Json::array({off("25T22:00"), event("25T22:00", "call", {{"to", "team"}, {"answered", true}}),
                                   event("25T22:00", "order", {{"by", "Night line"}, {"insulin", "long"}, {"units", 10}, {"text", "on the call"}})});
  EXPECT_EQ(dose(at(plan, events, "25T22:05"), "longActing"), "10 units");
  EXPECT_EQ(dose(at(plan, events, "25T22:05", {{"glucose", 8.0}, {"noLongActing", true}}), "longActing"), "none");
}

// What nothing stood for, hour by hour: 0.85 an hour by day.
TEST(OffPumpCover, MissedBasalIsWhatNothingStoodFor) {
  const auto missed = [](const Json& events, const std::string& now) { return off_pump(plan, events, now, calm)["back"]["missedBasal"]; };
  const Json events = Json::array({off("25T08:00"), long_dose("25T08:00", 19)});
  EXPECT_EQ(missed(events, "25T20:00"), "1.7");                                                  // 08:00 to 10:00
  EXPECT_EQ(missed(with(events, {rapid("25T12:00", 0, 0, 3)}), "25T20:00"), "1.7");               // a bridge inside it takes nothing away
  EXPECT_EQ(missed(with(events, {on("25T09:00")}), "25T20:00"), "0.85");                         // back before it worked
  EXPECT_EQ(missed(with(events, {long_dose("26T08:20", 19)}), "26T09:00"), "2.55");              // and from 08:00: it works at 10:20
  // Asked eight zones east it was the same night: 5 x 0.75.
  const Json at_night = Json::array({off("25T00:00"), on("25T05:00")});
  EXPECT_EQ(missed(at_night, "25T21:00"), "3.75");
  EXPECT_EQ(missed(at_night, "26T05:00+08:00"), "3.75");
}

// Two parents, two phones: basal of the same hours twice. It is no correction and counts nowhere, so it is said, as long as it acts.
TEST(OffPumpCover, BasalForTheSameHoursTwiceIsSaid) {
  const Json once = Json::array({off("25T22:00"), ketones("25T22:00", 0.3), rapid("25T22:00", 0, 0, 3)});
  const Json twice = with(once, {rapid("25T22:10", 0, 0, 3)});
  const Json answer = off_pump(asked::plan(), twice, "25T22:15", {{"expectedHours", 6}, {"glucose", 8.0}});
  EXPECT_TRUE(notes(answer, "bridgedTwice"));
  EXPECT_TRUE(answer["couldGoLow"]);
  EXPECT_EQ(answer["call"], "team");
  EXPECT_TRUE(notes(off_pump(asked::plan(), with(twice, {on("26T01:00")}), "26T02:40"), "bridgedTwice"));   // 4.5 h, the pump back or not
  EXPECT_FALSE(notes(off_pump(asked::plan(), twice, "26T02:41", {{"glucose", 8.0}}), "bridgedTwice"));
  EXPECT_FALSE(notes(off_pump(asked::plan(), once, "25T22:15", {{"expectedHours", 6}, {"glucose", 8.0}}), "bridgedTwice"));
  // Half an hour early is the next one's time.
  EXPECT_FALSE(notes(off_pump(asked::plan(), with(once, {rapid("26T01:30", 0, 0, 3)}), "26T01:35", {{"glucose", 8.0}}), "bridgedTwice"));
  EXPECT_TRUE(notes(off_pump(asked::plan(), with(once, {rapid("26T01:29", 0, 0, 3)}), "26T01:35", {{"glucose", 8.0}}), "bridgedTwice"));
}

}  // namespace
