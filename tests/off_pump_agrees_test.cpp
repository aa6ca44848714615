// One record, three answers: what advise, holds and offPump say of the same moment agrees, and one needle said twice loses neither its lock
// nor its basal. Each was found by somebody who asked the core as an enemy would. Numbers of the plan the contract prints: basal 0.75 an
// hour to 06:00, then 0.85; target 6.5, factor 2.5; lock 4 h; rapid insulin acts for 4.5 h.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

Json needle(const std::string& at, const std::string& id, double rescue, double basal, Json more = Json::object()) {
  Json made = rapid(at, rescue, 0, basal);
  made["id"] = id;
  made.update(more);
  return made;
}
Json advise_at(const Json& events, const std::string& now, double glucose, double ketones, const Json& plan_used = plan) {
  return asked::advise(plan_used, events, {{"now", when(now)}, {"glucose", glucose}, {"ketones", ketones}});
}
std::string hold(const Json& answer, const char* what) { return asked::hold_clock(answer, what); }
Json with_long(double action, int parts) {
  Json changed = plan;
  changed["longActing"]["actionHours"] = action;
  changed["offPump"]["parts"] = parts;
  return changed;
}

// 5 units of basal at a glucose below the trigger are no needle dose; said again as a ketone dose of 4, the needle is one: its lock runs.
TEST(OneNeedleSaidTwice, KeepsTheLockOfEither) {
  const Json basal = needle("25T00:00", "a", 0, 5, {{"basalHours", 4}, {"glucose", 9.0}});
  const Json dose = needle("25T00:01", "b", 4, 0, {{"insteadOf", "a"}, {"glucose", 9.0}, {"ketones", 1.6}});
  const Json answer = advise_at(Json::array({basal, dose}), "25T01:00", 17.0, 1.6);
  EXPECT_EQ(answer["gate"], "HLD");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(hold(answer, "correction"), "04:01");
  // Of two that hold basal the one at or above the trigger decides.
  const Json above = needle("25T00:00", "a", 3, 3, {{"glucose", 16.0}}), below = needle("25T00:01", "b", 2, 3, {{"insteadOf", "a"}, {"glucose", 13.0}});
  EXPECT_EQ(advise_at(Json::array({above, below}), "25T01:00", 17.0, 0.8)["gate"], "HLD");
}

TEST(OneNeedleSaidTwice, KeepsTheHoursOfItsBridge) {
  const Json before = Json::array({off("25T00:00"), ketones("25T00:58", 0.1)});
  const Json rescue = needle("25T00:05", "a", 4, 0, {{"glucose", 19.0}}), bridge_again = needle("25T00:06", "b", 0, 4, {{"insteadOf", "a"}, {"basalHours", 4}});
  const Json answer = off_pump(plan, with(before, {rescue, bridge_again}), "25T01:00", {{"expectedHours", 8}, {"glucose", 13.0}});
  EXPECT_EQ(dose(answer, "bridge"), "none");
  EXPECT_TRUE(answer["bridged"]);
  EXPECT_EQ(clock(answer["nextBridge"]), "04:06");
}

// Two phones wrote down a bridge of 4 units for the same hours. The second one acts: 4 x F3(45 min) = 3.62, times 2.5 is 9.1.
TEST(BasalGivenTwice, CountsOnBoardInEveryAnswer) {
  const Json events = Json::array({off("25T00:00"), call("25T00:01"), bridge("25T00:10", 4, 4), bridge("25T00:15", 4, 4)});
  const Json low = advise_at(events, "25T01:00", 4.5, 0.2);
  EXPECT_EQ(low["outcome"], "eatNow");
  EXPECT_EQ(low["cautions"][0], "couldGoLow");
  EXPECT_NE(asked::holds(plan, events, when("25T01:00"))["onBoard"]["counted"], "0");
  // (16.0 - 6.5) / 2.5 = 3.8, and 3.62 up to 3.63 of it is there: under one step.
  EXPECT_EQ(asked::dose(advise_at(events, "25T01:00", 16.0, 0.2)), "none");
  // A bridge that follows on the last one is no second one.
  const Json follows = Json::array({off("25T00:00"), call("25T00:01"), bridge("25T00:10", 3, 4), bridge("25T03:45", 3, 4)});
  EXPECT_EQ(asked::holds(plan, follows, when("25T04:00"))["onBoard"]["counted"], "0");
}

// The next dose is due a day after the last however long it acts; with two parts after half a day, six hours after a half first part.
TEST(LongActingHold, EndsWhenTheNextIsDue) {
  const auto held = [](const Json& used, const std::string& given, const std::string& now) {
    const Json events = Json::array({off("25T06:00"), long_dose(given, 9)});
    const std::string by_advise = hold(advise_at(events, now, 9.0, 0.1, used), "longActing");
    EXPECT_EQ(hold(asked::holds(used, events, when(now)), "longActing"), by_advise);
    EXPECT_EQ(hold(off_pump(used, events, now, {{"glucose", 9.0}}), "longActing"), by_advise);
    return by_advise;
  };
  EXPECT_EQ(held(with_long(42, 1), "25T07:00", "26T06:59"), "07:00");
  EXPECT_EQ(held(with_long(42, 1), "25T07:00", "26T07:00"), "none");
  EXPECT_EQ(held(with_long(20, 1), "25T07:00", "26T06:59"), "07:00");
  EXPECT_EQ(held(with_long(24, 2), "25T07:00", "25T18:59"), "19:00");
  EXPECT_EQ(held(with_long(24, 2), "25T13:00", "25T14:00"), "19:00");
}

// East by six zones: 0.65 of a day's dose at 00:00, good for 18 hours. From then on basal is missing until the next is in.
TEST(EastwardAmount, StandsForItsHoursOnly) {
  Json given = long_dose("25T00:00", 12);
  given["zonesEast"] = 6;
  const Json events = Json::array({off("25T00:00"), given, ketones("25T19:50", 0.1)});
  const Json in_time = off_pump(plan, events, "25T17:00", {{"expectedHours", 3}, {"glucose", 9.0}});
  EXPECT_EQ(in_time["wayBecause"], "atWork");
  const Json late = off_pump(plan, events, "25T20:00", {{"expectedHours", 3}, {"glucose", 9.0}});
  EXPECT_NE(dose(late, "bridge"), "none");
}

// Only what the question says is a meter that is not there; a sensor's number of the record is no finger's, and HI is said twice.
TEST(OffPumpReading, OfTheRecordIsJudgedAsAdviseJudgesIt) {
  const Json events = Json::array({off("25T00:00"), call("25T00:01"), ketones("25T00:58", 0.8),
                                   event("25T00:58", "glucose", {{"value", 17.0}, {"unit", "mmol/L"}, {"from", "sensor"}})});
  EXPECT_EQ(first(off_pump(plan, events, "25T01:00", {{"expectedHours", 8}})), "testGlucose");
  EXPECT_EQ(first(off_pump(plan, events, "25T01:00", {{"expectedHours", 8}, {"noMeter", true}})), "inject");
  const auto word = [](const std::string& at) { return event(at, "glucose", {{"reading", "HI"}, {"from", "finger"}}); };
  const Json once = Json::array({off("25T00:00"), call("25T00:01"), ketones("25T00:58", 0.2), word("25T00:58")});
  EXPECT_EQ(first(off_pump(plan, once, "25T01:00", {{"expectedHours", 8}})), "testGlucose");
  EXPECT_EQ(first(off_pump(plan, with(once, {word("25T00:55")}), "25T01:00", {{"expectedHours", 8}})), "inject");
}

// An order that the team gave stands for an hour, but sugar, a record or a clock in doubt come first and alone.
TEST(OffPumpOrder, IsNotShownBesideWhatComesFirst) {
  const Json order = event("25T00:56", "order", {{"by", "Night line"}, {"units", 8}, {"insulin", "rapid"}, {"text", "8 units now"}, {"readBack", true}});
  const Json events = Json::array({off("25T00:00"), call("25T00:55"), order, ketones("25T00:58", 0.2)});
  EXPECT_TRUE(off_pump(plan, events, "25T01:00", {{"expectedHours", 8}, {"glucose", 12.0}})["order"]["mayInject"]);
  EXPECT_TRUE(off_pump(plan, events, "25T01:00", {{"expectedHours", 8}, {"glucose", 3.0}})["order"].is_null());
  const Json in_doubt = off_pump(plan, events, "25T01:00", {{"expectedHours", 8}, {"glucose", 12.0}, {"recordInDoubt", true}});
  EXPECT_TRUE(in_doubt["order"].is_null());
  EXPECT_EQ(in_doubt["call"], "team");
}

// A dead pump and one that is on, written down in one second: it is on, for both answers.
TEST(DeadAndOnInOneSecond, IsOnForBothAnswers) {
  const Json events = Json::array({event("25T00:00", "seen", {{"what", {"pumpDead"}}}), on("25T00:00")});
  EXPECT_EQ(advise_at(events, "25T01:00", 9.0, 0.1)["decidedBy"], "NON");
  EXPECT_FALSE(off_pump(plan, events, "25T01:00", {{"glucose", 9.0}})["off"]);
}

// Nobody knows how much long-acting insulin went in by mistake: no basal. The correction that is due does not wait for that.
TEST(LongActingByMistake, HoldsBasalAndNotTheCorrection) {
  const Json events = Json::array({off("25T00:00"), event("25T00:10", "mistake", {{"what", "wrongInsulin"}, {"insulin", "long"}}), ketones("25T03:19", 0.2)});
  const Json answer = off_pump(plan, events, "25T03:20", {{"expectedHours", 8}, {"glucose", 20.0}});
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"], Json({{"rescue", 5}, {"meal", 0}, {"basal", 0}}));
  EXPECT_TRUE(notes(answer, "longActingUnknown"));
}

// Struck, perhaps not given, or given twice: nobody knows how much basal is in, and the team is called.
TEST(LongActingInDoubt, IsSaidAndCalled) {
  const auto at_five = [](std::initializer_list<Json> more) {
    return off_pump(plan, with(Json::array({off("25T00:00"), call("25T00:01"), ketones("25T04:50", 0.2)}), more), "25T05:00", {{"glucose", 9.0}});
  };
  Json given = long_dose("25T00:10", 19), unsure = given, again = long_dose("25T00:15", 19);
  given["id"] = "g";
  unsure["sure"] = false;
  EXPECT_FALSE(notes(at_five({given}), "longActingOther"));
  for (const Json& answer : {at_five({given, event("25T00:15", "strike", {{"target", "g"}, {"reason", "wrong"}})}), at_five({unsure}), at_five({given, again})}) {
    EXPECT_TRUE(notes(answer, "longActingOther"));
    EXPECT_EQ(answer["call"], "team");
  }
}

// A word about rapid insulin is no order for long-acting: bridges go on giving the share that is missing.
TEST(LongActingTooLittle, IsOrderedByNoWordAboutRapidInsulin) {
  const Json events = Json::array({off("25T00:00"), long_dose("25T00:10", 10), call("25T05:00"), ketones("25T05:50", 0.2),
                                   event("25T05:01", "order", {{"by", "Night line"}, {"insulin", "rapid"}, {"text", "4 units for food"}})});
  EXPECT_NE(dose(off_pump(plan, events, "25T06:00", {{"expectedHours", 20}, {"glucose", 9.0}}), "bridge"), "none");
}

// The plan rounds 19.8 to 20: what its own screen shows may be ordered.
TEST(OffPumpOrder, OfThePlansOwnAmountIsNotTooLarge) {
  Json nearest = plan;
  nearest["rounding"] = "nearest";
  const Json order = event("25T00:56", "order", {{"by", "Night line"}, {"units", 20}, {"insulin", "long"}, {"text", "20 units"}});
  const Json events = Json::array({off("25T00:00"), call("25T00:55"), order, ketones("25T00:58", 0.2)});
  EXPECT_EQ(dose(off_pump(nearest, events, "25T01:00", {{"glucose", 9.0}}), "longActing"), "20 units");
  EXPECT_EQ(off_pump(plan, events, "25T01:00", {{"glucose", 9.0}})["order"]["why"], "overADay");
}

// Below the trigger a correction is drawn only with basal or a meal: alone it would start a lock for nothing.
TEST(OffPumpCorrection, BelowTheTriggerNeverComesAlone) {
  const Json events = Json::array({off("25T00:00"), long_dose("25T00:10", 19), ketones("25T00:58", 0.2)});
  const Json answer = off_pump(plan, events, "25T01:00", {{"glucose", 9.0}});
  const Json drawn = screen(answer, "bridge");
  const bool is_alone = !drawn.is_null() && !drawn["dose"].is_null() && drawn["dose"]["parts"]["rescue"] > 0 && drawn["dose"]["parts"]["basal"] == 0;
  EXPECT_FALSE(is_alone) << drawn;
}

// A record that could not be read whole ends no incident.
TEST(RecordInDoubt, EndsNoIncident) {
  const Json events = Json::array({event("25T00:00", "incident", {{"state", "opened"}}), event("25T00:30", "glucose", {{"value", 8.0}, {"unit", "mmol/L"}, {"from", "finger"}})});
  const Json over = asked::advise(plan, events, {{"now", when("25T01:00")}, {"glucose", 8.0}, {"ketones", 0.1}});
  EXPECT_EQ(over["incident"], "close");
  const Json in_doubt = asked::advise(plan, events, {{"now", when("25T01:00")}, {"glucose", 8.0}, {"ketones", 0.1}, {"recordInDoubt", true}});
  EXPECT_TRUE(in_doubt["incident"].is_null());
  EXPECT_EQ(in_doubt["decidedBy"], "NON");
}

}  // namespace
