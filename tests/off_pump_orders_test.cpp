// Long-acting insulin within its hold comes only from the team, named on a call: a journey's second part, what was drawn too little.
// The plan of the contract: 19.8 a day, given as 19 units; onset 2 h, action 24 h, steps of 1.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json morning = Json::array({off("25T06:00"), ketones("25T08:00", 0.3), rapid("25T08:00", 0, 0, 1), long_dose("25T08:00", 10)});
const Json calm{{"glucose", 8.0}};

Json order(const std::string& at, double units, const std::string& insulin = "long") {
  return event(at, "order", {{"id", "order"}, {"by", "Night line"}, {"insulin", insulin}, {"units", units}, {"text", "on the call"}});
}
// Ketones stay tested, so that nothing else comes first.
std::string long_at(const std::string& now, std::initializer_list<Json> more, const Json& of = plan) {
  return dose(off_pump(of, with(with(morning, {ketones(now, 0.3)}), more), now, calm), "longActing");
}

TEST(OffPumpOrders, WithinTheHoldOnlyWhatTheTeamNamed) {
  EXPECT_EQ(long_at("25T14:00", {}), "none");
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55")}), "none");
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55"), order("25T13:58", 9)}), "9 units");
  const Json answer = off_pump(plan, with(morning, {ketones("25T14:00", 0.3), call("25T13:55"), order("25T13:58", 9)}), "25T14:00", calm);
  EXPECT_EQ(answer["screens"].size(), 1U);
  EXPECT_EQ(screen(answer, "longActing")["order"]["id"], "order");
  EXPECT_EQ(screen(answer, "longActing")["order"]["by"], "Night line");
  EXPECT_EQ(clock(screen(answer, "longActing")["order"]), "13:58");
  EXPECT_EQ(answer["longActing"]["state"], "hold");
  EXPECT_TRUE(answer["recorded"]);
  EXPECT_FALSE(off_pump(plan, asked::nothing, "25T14:00", calm)["recorded"]);
}

TEST(OffPumpOrders, NoOverlapWithoutACall) {
  EXPECT_EQ(long_at("25T14:00", {order("25T13:58", 9)}), "none");                                         // no call
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55", false), order("25T13:58", 9)}), "none");                 // nobody answered
  EXPECT_EQ(long_at("25T14:00", {call("25T13:59"), order("25T13:58", 9)}), "none");                        // called after it
  EXPECT_EQ(long_at("25T14:00", {call("25T12:57"), order("25T13:58", 9)}), "none");                        // another call
  EXPECT_EQ(long_at("25T08:30", {call("25T08:00"), order("25T08:20", 9)}), "none");                        // called before the last dose
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55"), order("25T13:58", 9, "rapid")}), "none");               // of the other insulin
  EXPECT_EQ(long_at("25T14:00", {call("25T13:58"), order("25T13:58", 9)}), "9 units");                    // in one second
}

TEST(OffPumpOrders, AnOrderIsForNow) {
  EXPECT_EQ(long_at("25T14:58", {call("25T13:55"), order("25T13:58", 9)}), "9 units");
  EXPECT_EQ(long_at("25T14:59", {call("25T13:55"), order("25T13:58", 9)}), "none");
}

TEST(OffPumpOrders, AnOrderIsInjectedOnce) {
  const Json given = event("25T14:00", "injection", {{"insulin", "long"}, {"units", 10}, {"order", "order"}});
  EXPECT_EQ(long_at("25T14:05", {call("25T13:55"), order("25T13:58", 9), given}), "none");
  // In the very second of the order, whichever is written first.
  for (const char* id : {"a", "z"}) {
    Json at_once = event("25T13:58", "injection", {{"id", id}, {"insulin", "long"}, {"units", 10}, {"order", "order"}});
    EXPECT_EQ(long_at("25T14:05", {call("25T13:58"), order("25T13:58", 9), at_once}), "none") << id;
  }
  // By a clock that was set back in between.
  const Json before = event("25T13:50", "injection", {{"insulin", "long"}, {"units", 10}, {"order", "order"}});
  EXPECT_EQ(long_at("25T14:05", {call("25T13:55"), order("25T13:58", 9), before}), "none");
  // Injected without a word of the order: the call was before it.
  EXPECT_EQ(long_at("25T14:05", {call("25T13:55"), order("25T13:58", 9), long_dose("25T14:00", 10)}), "none");
  const Json shown = event("25T14:00", "doseShown", {{"id", "shown"}, {"insulin", "long"}, {"units", 10}});
  EXPECT_EQ(first(off_pump(plan, with(morning, {ketones("25T14:01", 0.3), call("25T13:55"), order("25T13:58", 9), shown}), "25T14:01", calm)), "didYouInject");
  EXPECT_EQ(long_at("25T14:05", {call("25T13:55"), order("25T13:58", 9), shown, event("25T14:01", "doseRefused", {{"shown", "shown"}})}), "none");
  EXPECT_EQ(long_at("25T14:05", {call("25T13:55"), order("25T13:58", 9), event("25T14:01", "strike", {{"target", "order"}, {"reason", "slip"}})}), "none");
}

TEST(OffPumpOrders, AnAmountThatCannotBeRightIsSaid) {
  // 19.8 a day: 20 alone are more than a day; 10 at 08:00 and 9.9 more are more than one within 20 hours. Neither is ever an injection.
  const auto said = [](double units, const Json& before, const char* now = "25T14:00") {
    return off_pump(plan, with(before, {ketones(now, 0.3), call("25T13:55"), order("25T13:58", units)}), now, calm);
  };
  const Json bare = Json::array({off("25T06:00")});
  EXPECT_EQ(said(19, bare)["order"]["why"], Json());
  EXPECT_EQ(said(20, bare)["order"]["why"], "overADay");
  EXPECT_EQ(dose(said(20, bare), "longActing"), "none");
  EXPECT_TRUE(notes(said(20, bare), "orderTooLarge"));
  EXPECT_EQ(said(20, bare)["call"], "team");
  EXPECT_EQ(said(9.8, morning)["order"]["mayInject"], true);
  EXPECT_EQ(said(9.9, morning)["order"]["why"], "overWithLast");
  EXPECT_EQ(dose(said(9.9, morning), "longActing"), "none");
  // 20 hours and a minute after the last one it is an order like any other.
  const Json late = Json::array({off("24T06:00"), long_dose("24T17:59", 10)});
  EXPECT_EQ(said(15, late)["order"]["mayInject"], true);
  EXPECT_EQ(said(15, Json::array({off("24T06:00"), long_dose("24T18:00", 10)}))["order"]["why"], "overWithLast");
  // A syringe in whole units: never more than was ordered, whatever the plan's rounding.
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55"), order("25T13:58", 9.7)}, asked::example_with({{"/rounding", "nearest"}})), "9 units");
}

TEST(OffPumpOrders, TheTeamsWordStandsBeforeThePlans) {
  // The hold is over and 19 units would be due; a lesser dose was ordered for the day of the flight.
  const Json events = with(morning, {ketones("26T08:00", 0.3)});
  EXPECT_EQ(dose(off_pump(plan, events, "26T08:00", calm), "longActing"), "19 units");
  EXPECT_EQ(dose(off_pump(plan, with(events, {call("26T07:50"), order("26T07:55", 12)}), "26T08:00", calm), "longActing"), "12 units");
}

TEST(OffPumpOrders, TheSecondPartOfAJourney) {
  // 10 at 08:00 and, six zones west, 10 at 14:00: no bridge while it begins to work, and nothing again for a day.
  const Json events = with(morning, {event("25T14:00", "injection", {{"insulin", "long"}, {"units", 10}, {"order", "order"}}), ketones("25T15:00", 0.3)});
  const Json answer = off_pump(plan, events, "25T15:00", calm);
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_EQ(clock(answer["nextBridge"]), "none");
  EXPECT_EQ(answer["longActing"]["until"]["at"], when("26T14:00"));
  EXPECT_EQ(answer["back"]["usualFrom"]["at"], when("26T14:00"));
  // One ordered before the first works begins nothing anew: the bridge of 08:00 still reaches 10:00.
  const Json again = with(morning, {event("25T09:00", "injection", {{"insulin", "long"}, {"units", 9}, {"order", "order"}}), ketones("25T09:30", 0.3)});
  EXPECT_EQ(off_pump(plan, again, "25T09:30", calm)["screens"], Json::array());
  EXPECT_EQ(clock(off_pump(plan, again, "25T09:30", calm)["nextBridge"]), "none");
  // Without that bridge there is basal to give until the first one works, at 10:00, and not a minute longer.
  const Json bare = Json::array({off("25T06:00"), long_dose("25T08:00", 10), event("25T09:00", "injection", {{"insulin", "long"}, {"units", 9}, {"order", "order"}}), ketones("25T09:30", 0.3)});
  EXPECT_EQ(clock(screen(off_pump(plan, bare, "25T09:30", calm), "bridge")["working"]["to"]), "10:00");
}

TEST(OffPumpOrders, LongActingByMistakeWaitsForTheTeamsWord) {
  const Json mistaken = Json::array({off("25T06:00"), ketones("25T14:00", 0.3), event("25T13:00", "mistake", {{"what", "wrongInsulin"}, {"insulin", "long"}, {"units", 4}})});
  EXPECT_EQ(dose(off_pump(plan, mistaken, "25T14:00", calm), "longActing"), "none");
  EXPECT_EQ(dose(off_pump(plan, with(mistaken, {call("25T13:55"), order("25T13:58", 15)}), "25T14:00", calm), "longActing"), "15 units");
}

// The team named its amount before the mistake: what it would say now only another call tells.
TEST(OffPumpOrders, AMistakeAfterTheCallEndsTheOrder) {
  const Json mistake = event("25T13:59", "mistake", {{"what", "wrongInsulin"}, {"insulin", "long"}, {"units", 4}});
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55"), order("25T13:58", 9), mistake}), "none");
  EXPECT_EQ(long_at("25T14:05", {mistake, call("25T14:01"), order("25T14:02", 5)}), "5 units");
}

// The last word stands, and where it names no amount there is none.
TEST(OffPumpOrders, ALaterWordWithoutAnAmountEndsTheOrder) {
  const Json later = event("25T13:59", "order", {{"by", "Night line"}, {"insulin", "long"}, {"text", "no more tonight"}});
  EXPECT_EQ(long_at("25T14:00", {call("25T13:55"), order("25T13:58", 9), later}), "none");
}

TEST(OffPumpOrders, AnotherAmountThanShownIsForTheTeam) {
  const Json shown = event("25T08:00", "doseShown", {{"id", "shown"}, {"insulin", "long"}, {"units", 19}});
  const auto given = [&](double units) { return Json::array({off("25T06:00"), ketones("25T08:00", 0.3), shown, event("25T08:01", "injection", {{"insulin", "long"}, {"units", units}, {"shown", "shown"}})}); };
  const Json answer = off_pump(plan, given(10), "25T08:05", calm);
  EXPECT_TRUE(notes(answer, "longActingOther"));
  EXPECT_EQ(answer["call"], "team");
  EXPECT_FALSE(notes(off_pump(plan, given(19), "25T08:05", calm), "longActingOther"));
  EXPECT_FALSE(notes(off_pump(plan, with(given(10), {call("25T08:03")}), "25T08:05", calm), "longActingOther"));
  EXPECT_TRUE(notes(off_pump(plan, with(given(10), {call("25T08:03", false)}), "25T08:05", calm), "longActingOther"));
  EXPECT_FALSE(notes(off_pump(plan, given(10), "26T08:01", calm), "longActingOther"));   // worn off
}

// A revision of the plan has no long-acting insulin any more: nobody here knows how long it works.
TEST(OffPumpOrders, LongActingThatIsNotInThePlanIsForTheTeam) {
  const Json without = asked::example_with({{"/longActing", nullptr}});
  const Json events = Json::array({off("25T06:00"), long_dose("25T08:00", 19), ketones("25T14:00", 0.3)});
  EXPECT_TRUE(notes(off_pump(without, events, "25T14:00", calm), "longActingOther"));
  EXPECT_TRUE(notes(off_pump(without, events, "26T07:59", calm), "longActingOther"));
  EXPECT_FALSE(notes(off_pump(without, events, "26T08:00", calm), "longActingOther"));
  EXPECT_FALSE(notes(off_pump(without, with(events, {call("25T13:00")}), "25T14:00", calm), "longActingOther"));
}

// Asked about after a dead phone, an ordered dose is still the one that was ordered.
TEST(OffPumpOrders, AnOrderedDoseThatWasShownIsAskedAboutWithItsOrder) {
  const Json shown = event("25T14:00", "doseShown", {{"id", "shown"}, {"insulin", "long"}, {"units", 10}});
  const Json events = with(morning, {ketones("25T14:00", 0.3), call("25T13:55"), order("25T13:58", 9), shown});
  EXPECT_EQ(off_pump(plan, events, "25T18:00", calm)["first"]["shown"]["order"], "order");
  EXPECT_TRUE(off_pump(plan, with(morning, {shown}), "25T18:00", calm)["first"]["shown"]["order"].is_null());
}

// The published rule for journeys is for one dose a day.
TEST(OffPumpOrders, OfAPlanInTwoPartsTheTeamNamesTheAmountsOfAJourney) {
  const Json halves = asked::example_with({{"/offPump/parts", 2}});
  const Json answer = off_pump(halves, Json::array({off("25T06:00"), ketones("25T08:00", 0.3)}), "25T08:00", {{"glucose", 8.0}, {"zonesEast", 6}});
  EXPECT_EQ(answer["travel"]["rule"], "east");
  EXPECT_EQ(answer["travel"]["parts"], Json::array());
  EXPECT_TRUE(notes(answer, "travelAskFirst"));
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(dose(answer, "longActing"), "none");
}

}  // namespace
