// Long-acting insulin: the days of a journey, too little of it, a mistake with it, how long it acts, and back on the pump. Worked by hand
// with the plan the contract prints: 19.8 a day, 19 drawn; onset 2 h, action 24 h; 0.75 an hour to 06:00, then 0.85.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json calm{{"glucose", 8.0}};
Json at(const Json& of, const Json& events, const std::string& now, const Json& more = calm) {
  return off_pump(of, with(events, {ketones(now, 0.3)}), now, more);
}
Json flying(int zones) { return {{"glucose", 8.0}, {"zonesEast", zones}}; }
Json long_for(const std::string& when_given, double units, int zones) {
  return event(when_given, "injection", {{"insulin", "long"}, {"units", units}, {"zonesEast", zones}});
}
const Json day_before = Json::array({off("24T06:00"), long_dose("24T08:00", 19)});

// CV-30: 10 at the home clock's 08:00 and 10 at 08:00 six zones west, 14:00 at home. Here 19.8 / 2 = 9.9, down 9.
TEST(OffPumpLong, WestTheSecondHalfIsDueAtItsHour) {
  const Json first_half = at(plan, day_before, "25T08:00", flying(-6));
  EXPECT_EQ(dose(first_half, "longActing"), "9 units");
  EXPECT_EQ(screen(first_half, "longActing")["zonesEast"], -6);
  EXPECT_EQ(screen(first_half, "longActing")["secondHalf"], false);
  EXPECT_EQ(screen(first_half, "longActing")["nextDue"]["clock"], "14:00");
  EXPECT_EQ(alarms(first_half), "longActingPart 14:00");
  const Json in = with(day_before, {long_for("25T08:00", 9, -6)});
  EXPECT_EQ(dose(at(plan, in, "25T13:59"), "longActing"), "none");
  EXPECT_EQ(clock(at(plan, in, "25T13:59")["longActing"]["until"]), "14:00");
  // No hold of the first half bars it, whether or not the journey is named again. The half covers its day: nothing is bridged.
  for (const Json& more : {calm, flying(-6)}) {
    const Json second = at(plan, in, "25T14:00", more);
    EXPECT_EQ(dose(second, "longActing"), "9 units");
    EXPECT_EQ(screen(second, "longActing")["secondHalf"], true);
    EXPECT_EQ(screen(second, "bridge"), Json());
    EXPECT_NE(second["call"], "emergency");
  }
  // Then a whole day's dose, 24 h after the second half, by the clock there.
  const Json both = with(in, {long_for("25T14:00", 9, -6)});
  EXPECT_EQ(at(plan, both, "26T13:59", flying(-6))["longActing"]["state"], "hold");
  EXPECT_EQ(dose(at(plan, both, "26T14:00", flying(-6)), "longActing"), "19 units");
}

// CV-28: x (0.9 - 6/24) = 0.65: 12.87, down 12, at the home clock's 08:00; good until 08:00 six zones east, eighteen hours later.
TEST(OffPumpLong, EastTheSmallerDoseIsGoodUntilTheUsualHourThere) {
  const Json answer = at(plan, day_before, "25T08:00", flying(6));
  EXPECT_EQ(dose(answer, "longActing"), "12 units");
  EXPECT_EQ(screen(answer, "longActing")["working"]["exact"], "12.87");
  EXPECT_EQ(screen(answer, "longActing")["zonesEast"], 6);
  EXPECT_EQ(alarms(answer), "longActing 02:00");
  const Json in = with(day_before, {long_for("25T08:00", 12, 6)});
  // Its amount is the plan's of that day: no missing share is bridged, and nobody is called for it.
  const Json later = at(plan, in, "25T20:00");
  EXPECT_EQ(later["screens"], Json::array());
  EXPECT_FALSE(notes(later, "longActingTooLittle"));
  EXPECT_EQ(later["longActing"]["until"]["at"], when("26T02:00"));
  EXPECT_EQ(dose(at(plan, in, "26T02:00", flying(6)), "longActing"), "19 units");
}

TEST(OffPumpLong, BelowFiveZonesTheDayIsAsItWas) {
  EXPECT_EQ(dose(at(plan, day_before, "25T08:00", flying(4)), "longActing"), "19 units");
  EXPECT_EQ(screen(at(plan, day_before, "25T08:00", flying(-4)), "longActing")["zonesEast"], Json());
}

// 10 of 19 are 0.526: bridges give the rest. 12:00 to 16:00 is 3.4, less 10/19 of it: 1.61, down 1.
TEST(OffPumpLong, BridgesGiveTheShareThatIsMissing) {
  const Json events = Json::array({off("25T06:00"), long_dose("25T08:00", 10)});
  const Json answer = at(plan, events, "25T12:00");
  EXPECT_EQ(screen(answer, "bridge")["working"]["basal"], "1.61");
  EXPECT_EQ(dose(answer, "bridge"), "1 unit");
  EXPECT_TRUE(notes(answer, "longActingTooLittle"));
  EXPECT_EQ(answer["call"], "team");
  // A call alone orders nothing; a word of the team does.
  EXPECT_EQ(dose(at(plan, with(events, {call("25T09:00")}), "25T12:00"), "bridge"), "1 unit");
  const Json word = event("25T09:01", "order", {{"by", "Night line"}, {"text", "leave it at that"}});
  EXPECT_EQ(at(plan, with(events, {call("25T09:00"), word}), "25T12:00")["screens"], Json::array());
  // 18 of 19 are over nine tenths, 17 are under.
  EXPECT_EQ(at(plan, Json::array({off("25T06:00"), long_dose("25T08:00", 18)}), "25T12:00")["screens"], Json::array());
  EXPECT_TRUE(notes(at(plan, Json::array({off("25T06:00"), long_dose("25T08:00", 17)}), "25T12:00"), "longActingTooLittle"));
}

Json mistake(const std::string& at_time, const Json& units) {
  Json more{{"what", "wrongInsulin"}, {"insulin", "long"}};
  if (!units.is_null()) more["units"] = units;
  return event(at_time, "mistake", more);
}

// 10 units by mistake at 08:00 cover 10/19 from 10:00 on: 12:00 to 16:00 needs 1.61.
TEST(OffPumpLong, AMistakeCoversItsShare) {
  const Json answer = at(plan, Json::array({off("25T06:00"), mistake("25T08:00", 10)}), "25T12:00");
  EXPECT_EQ(screen(answer, "bridge")["working"]["basal"], "1.61");
  EXPECT_EQ(dose(answer, "longActing"), "none");
}

TEST(OffPumpLong, OfAMistakeWithUnknownUnitsTheTeamAnswersFirst) {
  const Json events = Json::array({off("25T06:00"), mistake("25T08:00", nullptr)});
  const Json answer = at(plan, events, "25T09:00");
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_TRUE(notes(answer, "longActingUnknown"));
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(clock(answer["look"]), "10:00");
  EXPECT_EQ(at(plan, with(events, {call("25T08:30", false)}), "25T08:59")["call"], "team");
  EXPECT_EQ(at(plan, with(events, {call("25T08:30", false)}), "25T09:00")["call"], "emergency");
  const Json answered = with(events, {call("25T08:30", false), call("25T08:50")});
  EXPECT_FALSE(notes(at(plan, answered, "25T09:00"), "longActingUnknown"));
  EXPECT_EQ(dose(at(plan, answered, "25T09:00"), "bridge"), "3 units");
}

// However long it acts the next is due 24 h after the last; the one before covers its onset.
TEST(OffPumpLong, OneThatActsLongerIsDueAfterADay) {
  for (const int hours : {30, 42}) {
    const Json of = asked::example_with({{"/longActing/actionHours", hours}});
    const Json answer = at(of, day_before, "25T08:00");
    EXPECT_EQ(dose(answer, "longActing"), "19 units") << hours;
    EXPECT_EQ(screen(answer, "bridge"), Json()) << hours;
    EXPECT_EQ(alarms(answer), "longActing 08:00") << hours;
    EXPECT_EQ(dose(at(of, day_before, "25T07:59"), "longActing"), "none") << hours;
    // A pump is expected while the last one still acts: no further day's dose.
    EXPECT_EQ(at(of, day_before, "25T08:00", {{"glucose", 8.0}, {"expectedHours", 3}})["screens"], Json::array()) << hours;
  }
}

// Onset 3 h: the hours from 08:00 to 11:00 of a following dose are bridged as well: 3 x 0.85 = 2.55, down 2.
TEST(OffPumpLong, ALateOnsetOfAFollowingDoseIsBridged) {
  const Json slow = asked::example_with({{"/longActing/onsetHours", 3}});
  const Json answer = at(slow, day_before, "25T08:00");
  EXPECT_EQ(dose(answer, "longActing"), "19 units");
  EXPECT_EQ(screen(answer, "bridge")["working"]["basal"], "2.55");
  EXPECT_EQ(screen(answer, "bridge")["basalHours"], 3);
}

TEST(OffPumpLong, ADoseThatWouldBeSleptThroughIsSaid) {
  const Json in = Json::array({off("25T06:00"), long_dose("25T08:00", 19)});
  const auto said = [&](const std::string& until) { return notes(at(plan, in, "26T01:00", {{"glucose", 8.0}, {"asleepUntil", when(until)}}), "longActingWhileAsleep"); };
  EXPECT_TRUE(said("26T08:01"));
  EXPECT_FALSE(said("26T08:00"));
}

// An order of rapid insulin over the plan's single dose (10) is shown as an injection only once it was read back.
TEST(OffPumpLong, ALargeOrderOfRapidInsulinIsReadBackFirst) {
  const auto ordered = [](double units, const Json& more) {
    Json order{{"id", "order"}, {"by", "Night line"}, {"insulin", "rapid"}, {"units", units}, {"text", "on the call"}};
    order.update(more);
    return at(plan, Json::array({off("25T06:00"), call("25T08:00"), event("25T08:01", "order", order)}), "25T08:05")["order"];
  };
  EXPECT_EQ(ordered(10, Json::object())["mayInject"], true);
  EXPECT_EQ(ordered(10.5, Json::object())["why"], "notReadBack");
  EXPECT_EQ(ordered(10.5, {{"readBack", true}})["mayInject"], true);
}

// What to do with the pump now.
TEST(OffPumpLong, BackOnThePumpItIsSaidWhatToDo) {
  const auto back = [](const Json& of, const Json& events) { return at(of, events, "25T20:00", Json::object())["back"]; };
  const Json unwritten = asked::example_with({{"/offPump/reducedBasalShare", nullptr}});
  const Json in = Json::array({off("25T06:00"), long_dose("25T08:00", 19), on("25T19:00")});
  EXPECT_EQ(back(plan, in)["do"], "reduced");
  EXPECT_EQ(back(plan, in)["food"], "byPump");
  EXPECT_EQ(back(unwritten, in)["do"], "askTeam");
  EXPECT_EQ(back(unwritten, in)["food"], "byNeedle");
  const Json bridged = Json::array({off("25T17:00"), bridge("25T18:00", 3, 4), on("25T19:00")});
  EXPECT_EQ(back(plan, bridged)["do"], "afterBridge");
  EXPECT_EQ(clock(back(plan, bridged)["bridgeUntil"]), "22:00");
  EXPECT_EQ(back(plan, Json::array({off("25T17:00"), on("25T18:00")}))["do"], "usual");
}

}  // namespace
