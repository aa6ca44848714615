// What can go wrong off the pump, each held down: doubled bridges, long-acting given twice, rapid before what comes first.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json night = Json::array({off("25T22:00"), ketones("25T22:00", 0.3)});
const Json quiet{{"expectedHours", 6}, {"glucose", 8.0}};

TEST(OffPump, WhichWay) {
  const auto because = [](const Json& of, const Json& more) { return off_pump(of, night, "25T22:00", more)["wayBecause"]; };
  EXPECT_EQ(because(plan, {{"expectedHours", 11.75}}), "shorter");
  EXPECT_EQ(because(plan, {{"expectedHours", 12}}), "longer");
  EXPECT_EQ(because(plan, Json::object()), "unknown");
  EXPECT_EQ(because(plan, {{"expectedHours", 6}, {"asleepUntil", when("26T02:00")}}), "shorter");
  EXPECT_EQ(because(plan, {{"expectedHours", 6}, {"asleepUntil", when("26T02:01")}}), "asleep");
  const Json without = asked::example_with({{"/longActing", nullptr}});
  EXPECT_EQ(because(without, Json::object()), "noLongActing");
  const Json answer = off_pump(without, night, "25T22:00", {{"glucose", 8.0}});
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_TRUE(notes(answer, "getLongActing"));
  // The plan has some, but it lies at home: the same bridge of four hours, and where to get it.
  const Json away = off_pump(plan, night, "25T22:00", {{"glucose", 8.0}, {"noLongActing", true}});
  EXPECT_EQ(away["wayBecause"], "noLongActing");
  EXPECT_EQ(away["screens"].size(), 1U);
  EXPECT_EQ(dose(away, "bridge"), "3 units");
  EXPECT_TRUE(notes(away, "getLongActing"));
  EXPECT_EQ(alarms(away).substr(0, 25), "bridge 02:00, bridge 06:0");
  EXPECT_EQ(because(plan, {{"noLongActing", false}}), "unknown");
}

TEST(OffPump, RapidAndLongActingEachHaveAScreen) {
  // Onset 2 h: 22 to 24 is 1.7, down 1; then 19 units of long-acting.
  const Json answer = off_pump(plan, night, "25T22:00", {{"glucose", 8.0}});
  ASSERT_EQ(answer["screens"].size(), 2U);
  EXPECT_EQ(answer["screens"][0]["kind"], "bridge");
  EXPECT_EQ(answer["screens"][0]["insulin"], "rapid");
  EXPECT_EQ(answer["screens"][1]["kind"], "longActing");
  EXPECT_EQ(answer["screens"][1]["insulin"], "long");
  EXPECT_NE(answer["screens"][0]["name"], answer["screens"][1]["name"]);
  EXPECT_EQ(dose(answer, "bridge"), "1 unit");
  EXPECT_EQ(clock(screen(answer, "bridge")["working"]["to"]), "00:00");
}

TEST(OffPump, ARunningHoldBlocksTheCorrectionOnly) {
  // 2 units corrected at 21:00: locked until 01:00. Basal 3.2, down 3.
  const Json events = with(night, {rapid("25T21:00", 2, 0, 0)});
  const Json answer = off_pump(plan, events, "25T22:00", {{"expectedHours", 6}, {"glucose", 15.0}});
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_EQ(screen(answer, "bridge")["correctionWaits"]["why"], "hold");
  EXPECT_EQ(clock(screen(answer, "bridge")["correctionWaits"]["until"]), "01:00");
}

TEST(OffPump, AMissedBridgeIsSaidAndNeverMadeUp) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3)});
  // 02:30 still follows: 3.5 x 0.75 + 0.5 x 0.85 = 3.05, and 0.2 carried. The hours gone are not made up.
  EXPECT_TRUE(off_pump(plan, events, "26T02:30", quiet)["missed"].is_null());
  EXPECT_EQ(screen(off_pump(plan, events, "26T02:30", quiet), "bridge")["working"]["carried"], "0.2");
  const Json late = off_pump(plan, events, "26T03:00", quiet);
  EXPECT_EQ(clock(late["missed"]["since"]), "02:00");
  EXPECT_EQ(late["missed"]["minutes"], 60);
  EXPECT_FALSE(late["missed"]["tooLong"]);
  EXPECT_EQ(screen(late, "bridge")["working"]["sum"], "3.3");   // 3 x 0.75 + 0.85 for the coming hours and 0.2 that rounding left; nothing for the gone
  EXPECT_TRUE(notes(late, "missedBridge"));
  EXPECT_FALSE(off_pump(plan, events, "26T04:00", quiet)["missed"]["tooLong"]);
  const Json later = off_pump(plan, events, "26T04:01", quiet);
  EXPECT_TRUE(later["missed"]["tooLong"]);
  EXPECT_TRUE(notes(later, "missedTooLong"));
}

TEST(OffPump, ABridgeIsNotGivenTwice) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3)});
  for (const char* now : {"25T22:01", "25T23:30", "26T01:29"}) {
    const Json answer = off_pump(plan, events, now, quiet);
    EXPECT_EQ(dose(answer, "bridge"), "none") << now;
    EXPECT_EQ(clock(answer["nextBridge"]), "02:00") << now;
  }
  // Half an hour early it follows on the last one, and is for 02:00 to 06:00.
  const Json early = off_pump(plan, events, "26T01:30", quiet);
  EXPECT_EQ(dose(early, "bridge"), "3 units");
  EXPECT_EQ(clock(screen(early, "bridge")["working"]["from"]), "02:00");
  EXPECT_EQ(clock(screen(early, "bridge")["working"]["to"]), "06:00");
}

TEST(OffPump, AStruckBridgeStillCounts) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3), event("25T22:05", "strike", {{"target", "e2"}, {"reason", "slip"}})});
  EXPECT_EQ(dose(off_pump(plan, events, "25T22:10", quiet), "bridge"), "none");
}

// A bridge is cut off where long-acting insulin begins to work: there is nothing to inject then, and nobody is woken for it.
TEST(OffPump, NothingIsDueWhereLongActingTakesOver) {
  // Bridge at 22:00 for the onset; long-acting at 22:05 works from 00:05, and holds until 22:05.
  const Json events = with(night, {rapid("25T22:00", 0, 0, 1), long_dose("25T22:05", 19)});
  const Json answer = off_pump(plan, events, "25T22:10", {{"expectedHours", 48}, {"glucose", 8.0}});
  EXPECT_EQ(clock(answer["nextBridge"]), "none");
  ASSERT_EQ(answer["alarms"].size(), 1U);
  EXPECT_EQ(answer["alarms"][0]["what"], "longActing");
  EXPECT_EQ(screen(answer, "bridge"), Json());
}

// The basal of a bridge acts on while the pump delivers it too: the pump runs as usual when the bridge is over.
TEST(OffPump, ThePumpComesBackWhenTheBridgeIsOver) {
  const Json events = with(night, {rapid("25T22:00", 0, 0, 3), on("25T23:00")});
  EXPECT_EQ(clock(off_pump(plan, events, "25T23:00")["back"]["usualFrom"]), "02:00");
  EXPECT_EQ(clock(off_pump(plan, events, "26T01:59")["back"]["usualFrom"]), "02:00");
  EXPECT_EQ(clock(off_pump(plan, events, "26T02:00")["back"]["usualFrom"]), "none");
  // The reduced basal of the plan is for long-acting insulin.
  EXPECT_TRUE(off_pump(plan, events, "25T23:00")["back"]["reducedPercent"].is_null());
  // The longer of the two holds.
  const Json both = with(night, {rapid("25T22:00", 0, 0, 1), long_dose("25T22:00", 19), on("25T23:00")});
  EXPECT_EQ(off_pump(plan, both, "25T23:00")["back"]["usualFrom"]["at"], when("26T22:00"));
}

TEST(OffPump, LongActingIsNeverNamedTwice) {
  const Json events = with(night, {long_dose("25T22:00", 19)});
  for (const char* now : {"25T22:01", "26T10:00", "26T21:59"}) {
    const Json answer = off_pump(plan, events, now, {{"glucose", 8.0}});
    EXPECT_EQ(dose(answer, "longActing"), "none") << now;
    EXPECT_TRUE(notes(answer, "longActingHeld")) << now;
  }
  // Not even after a call: the team names what it wants.
  const Json called = with(events, {event("25T23:00", "call", {{"to", "team"}, {"answered", true}, {"for", "e2"}})});
  EXPECT_EQ(dose(off_pump(plan, called, "26T00:00", {{"glucose", 8.0}}), "longActing"), "none");
  // A struck one holds as well, and so does one given by mistake.
  const Json struck = with(events, {event("25T22:05", "strike", {{"target", "e2"}, {"reason", "slip"}})});
  EXPECT_EQ(off_pump(plan, struck, "25T22:10", {{"glucose", 8.0}})["longActing"]["state"], "hold");
  const Json mistaken = with(night, {event("25T21:00", "mistake", {{"what", "wrongInsulin"}, {"insulin", "long"}, {"units", 8}})});
  EXPECT_EQ(dose(off_pump(plan, mistaken, "25T22:10", {{"glucose", 8.0}}), "longActing"), "none");
}

TEST(OffPump, ADoseShownIsAskedAboutBeforeAnother) {
  const Json shown_long = with(night, {event("25T22:00", "doseShown", {{"units", 19}, {"insulin", "long"}})});
  const Json answer = off_pump(plan, shown_long, "26T12:00", {{"glucose", 8.0}});
  EXPECT_EQ(first(answer), "didYouInject");
  EXPECT_EQ(answer["first"]["shown"]["insulin"], "long");
  EXPECT_EQ(answer["screens"], Json::array());
  const Json shown_bridge = with(night, {event("25T22:00", "doseShown", {{"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3}}}})});
  EXPECT_EQ(first(off_pump(plan, shown_bridge, "25T22:05", quiet)), "didYouInject");
  EXPECT_EQ(off_pump(plan, shown_bridge, "25T22:05", quiet)["screens"], Json::array());
  const Json refused = with(shown_bridge, {event("25T22:04", "doseRefused", {{"shown", "e2"}})});
  EXPECT_EQ(dose(off_pump(plan, refused, "25T22:05", quiet), "bridge"), "3 units");
}

TEST(OffPump, AnotherAmountThanShownIsABridgeAllTheSame) {
  // Three units of basal were shown, two went in, recorded as given and so without parts: the hours to 02:00 are not given twice.
  // Without parts it counts as rescue in full, so glucose stands where two units cannot lead low: 12.0 less 5.0.
  const Json asks{{"expectedHours", 6}, {"glucose", 12.0}};
  const Json shown = event("25T22:00", "doseShown", {{"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3}}}});
  const Json two = event("25T22:01", "injection", {{"units", 2}, {"shown", "e2"}});
  const Json answer = off_pump(plan, with(night, {shown, two}), "25T22:05", asks);
  EXPECT_EQ(dose(answer, "bridge"), "none");
  EXPECT_EQ(clock(answer["nextBridge"]), "02:01");
  // A rescue dose shown and given otherwise stands for no hour of basal.
  const Json rescue = event("25T22:00", "doseShown", {{"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 3}, {"meal", 0}, {"basal", 0}}}});
  EXPECT_EQ(dose(off_pump(plan, with(night, {rescue, two}), "25T22:05", asks), "bridge"), "3 units");
}

TEST(OffPump, WhatComesFirstComesAlone) {
  const auto at = [](const Json& glucose, double blood) {
    return off_pump(plan, Json::array({off("25T22:00"), ketones("25T22:00", blood)}), "25T22:00", {{"glucose", glucose}});
  };
  const auto alone = [](const Json& answer) { return first(answer) + " " + std::to_string(answer["screens"].size()); };
  EXPECT_EQ(alone(at(3.5, 0.3)), "treatLow 0");
  EXPECT_EQ(alone(at(16.0, 0.8)), "inject 0");       // ketones act: their dose, given by itself
  EXPECT_EQ(at(16.0, 0.8)["first"]["decidedBy"], "KET");
  EXPECT_EQ(at(16.0, 0.8)["first"]["dose"], "4\u00A0units");
  EXPECT_EQ(alone(at(9.0, 1.6)), "eatAndInject 0");
  EXPECT_EQ(alone(at(16.0, 3.0)), "emergency 0");
  EXPECT_EQ(at(16.0, 3.0)["call"], "emergency");
  EXPECT_EQ(alone(off_pump(asked::example_with({{"/agreement/status", "withdrawn"}}), night, "25T22:00", {{"glucose", 8.0}})), "noPlan 0");
  EXPECT_EQ(alone(off_pump(plan, with(night, {rapid("25T22:30", 0, 0, 3)}), "25T22:00", {{"glucose", 8.0}})), "clockInDoubt 0");
  // A correction that was shown closes the way to basal as well, until somebody says whether it went in.
  EXPECT_EQ(alone(off_pump(plan, with(night, {event("25T21:50", "doseShown", {{"units", 2}, {"insulin", "rapid"}})}), "25T22:00", {{"glucose", 8.0}})), "didYouInject 0");
  const Json sick = with(night, {event("25T21:00", "sign", {{"what", {"drowsy"}}})});
  EXPECT_EQ(alone(off_pump(plan, sick, "25T22:00", {{"glucose", 12.0}})), "emergency 0");
}

TEST(OffPump, ADueKetoneDoseThenTheBasal) {
  // 4 units for ketones at 22:00: the bridge follows without a correction.
  const Json events = with(Json::array({off("25T22:00"), ketones("25T22:00", 0.8)}), {event("25T22:00", "injection", {{"units", 4}, {"glucose", 16.0}, {"ketones", 0.8}})});
  const Json answer = off_pump(plan, events, "25T22:05", {{"expectedHours", 6}, {"glucose", 20.0}});
  EXPECT_EQ(first(answer), "nothing");
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_EQ(screen(answer, "bridge")["correctionWaits"]["why"], "hold");
}

TEST(OffPump, WithoutAKetoneTestThereIsBasalAndNoCorrection) {
  const Json answer = off_pump(plan, Json::array({off("25T22:00")}), "25T22:00", {{"expectedHours", 6}, {"glucose", 15.0}});
  EXPECT_EQ(first(answer), "testKetones");
  EXPECT_EQ(answer["first"]["waits"], "correction");
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"]["rescue"], 0);
}

TEST(OffPump, WithoutAReadingNoRapidInsulin) {
  const Json answer = off_pump(plan, night, "25T22:00", {{"expectedHours", 6}});
  EXPECT_EQ(first(answer), "testGlucose");
  EXPECT_EQ(dose(answer, "bridge"), "none");
}

TEST(OffPump, NoMealInsulinWhileVomiting) {
  const Json sick = with(night, {event("25T21:00", "sign", {{"what", {"vomitedOnce"}}})});
  const Json answer = off_pump(plan, sick, "25T22:00", {{"expectedHours", 6}, {"glucose", 8.0}, {"carbs", 40}});
  EXPECT_EQ(screen(answer, "bridge")["working"]["meal"], "0");
}

TEST(OffPump, TheDeviceHoldsWhatItHolds) {
  // 1.7 x 24 = 40.8, down 40: 30 and 10 from a syringe of 30, and the team is called.
  const Json small = asked::example_with({{"/syringe/capacity", 30}, {"/day/basal", Json::array({{{"from", "00:00"}, {"value", 1.7}}})}});
  const Json answer = off_pump(small, night, "25T22:00", {{"glucose", 8.0}});
  const Json injections = screen(answer, "longActing")["injections"];
  ASSERT_EQ(injections.size(), 2U);
  EXPECT_EQ(injections[0]["units"], 30);
  EXPECT_EQ(injections[1]["units"], 10);
  EXPECT_TRUE(notes(answer, "longActingSplit"));
  // 7 x 4 = 28 of basal and 5 of food: 30 is all it holds, and the food bears the loss.
  const Json large = asked::example_with({{"/syringe/capacity", 30}, {"/day/basal", Json::array({{{"from", "00:00"}, {"value", 7.0}}})}});
  const Json bridge = off_pump(large, night, "25T22:00", {{"expectedHours", 6}, {"glucose", 8.0}, {"carbs", 60}});
  EXPECT_EQ(dose(bridge, "bridge"), "30 units");
  EXPECT_EQ(screen(bridge, "bridge")["dose"]["parts"], Json({{"rescue", 0}, {"meal", 2}, {"basal", 28}}));
  EXPECT_TRUE(notes(bridge, "bridgeCut"));
}

TEST(OffPump, ClocksChangedEitherWayShortenNothing) {
  // 19 units at 22:00 at +02:00 hold 24 h: an hour back it is 21:00 at +01:00, an hour forward 23:00 at +03:00.
  const Json events = Json::array({off("24T22:00+02:00"), ketones("24T22:00+02:00", 0.3), long_dose("24T22:00+02:00", 19)});
  const auto state = [&](const std::string& now) { return off_pump(plan, events, now, {{"glucose", 8.0}})["longActing"]; };
  EXPECT_EQ(clock(state("25T20:59+01:00")["until"]), "21:00");
  EXPECT_EQ(state("25T21:00+01:00")["state"], "due");
  EXPECT_EQ(clock(state("25T22:59+03:00")["until"]), "23:00");
  EXPECT_EQ(state("25T23:00+03:00")["state"], "due");
  // A bridge lasts its four hours of instants as well.
  const Json bridged = Json::array({off("25T00:00+02:00"), ketones("25T00:00+02:00", 0.3), rapid("25T00:00+02:00", 0, 0, 3)});
  EXPECT_EQ(clock(off_pump(plan, bridged, "25T02:00+01:00", quiet)["nextBridge"]), "03:00");
}

TEST(OffPump, TheScheduleIsReadAtLocalTime) {
  // 00:00 at +02:00 is 22:00 in UTC: four hours of 0.75, not two of 0.85 and two of 0.75.
  const Json answer = off_pump(plan, Json::array({off("25T00:00+02:00"), ketones("25T00:00+02:00", 0.3)}), "25T00:00+02:00", quiet);
  EXPECT_EQ(screen(answer, "bridge")["working"]["basal"], "3");
}

TEST(OffPump, WhoAsksIsOffUntilTheRecordSaysBack) {
  EXPECT_TRUE(off_pump(plan, asked::nothing, "25T22:00", quiet)["off"]);
  EXPECT_TRUE(off_pump(plan, Json::array({event("25T21:00", "seen", {{"what", {"pumpDead"}}})}), "25T22:00", quiet)["off"]);
  const Json back = off_pump(plan, Json::array({off("25T20:00"), on("25T21:00")}), "25T22:00", quiet);
  EXPECT_FALSE(back["off"]);
  EXPECT_EQ(back["screens"], Json::array());
  // An outage that ends before it began is no outage that ended: off stands.
  EXPECT_TRUE(off_pump(plan, Json::array({on("25T20:00"), off("25T21:00")}), "25T22:00", quiet)["off"]);
  // Where the two tie, off stands, whichever was written first.
  EXPECT_TRUE(off_pump(plan, Json::array({on("25T21:00"), off("25T21:00")}), "25T22:00", quiet)["off"]);
  EXPECT_TRUE(off_pump(plan, Json::array({off("25T21:00"), on("25T21:00")}), "25T22:00", quiet)["off"]);
  EXPECT_TRUE(off_pump(plan, Json::array({off("25T20:00"), off("25T21:00"), on("25T21:00")}), "25T22:00", quiet)["off"]);
}

// Hazard: drawn from a pen. Whoever has a pen and no syringe at hand is told what to dial, in the pen's own steps and to its capacity.
TEST(OffPump, ABridgeIsForTheDeviceAtHand) {
  Json both = plan;
  both["pen"] = {{"capacity", 3}, {"step", 0.5}};
  const auto dose = [&](const Json& more) {
    Json asked{{"expectedHours", 6}, {"glucose", 8.0}};
    asked.update(more);
    return screen(off_pump(both, night, "25T22:00", asked), "bridge")["dose"];
  };
  const Json usual = dose(Json::object()), pen = dose({{"with", "pen"}});
  EXPECT_EQ(usual["with"], "syringe");
  EXPECT_EQ(pen["with"], "pen");
  EXPECT_EQ(pen["device"]["step"], "0.5");
  EXPECT_EQ(dose({{"carbs", 60}, {"with", "pen"}})["units"], 3);
  EXPECT_GT(dose({{"carbs", 60}})["units"], 3);
  // 6 x 0.75 + 18 x 0.85 = 19.8 a day: by marks of 1 that is 19, by a pen of 0.5 it is 19.5, seven injections of 3 at most. Each insulin
  // by its own device.
  const auto whole_day = [&](const Json& more) {
    Json asked{{"glucose", 8.0}};
    asked.update(more);
    return off_pump(both, night, "25T22:00", asked);
  };
  const Json by_pen = whole_day({{"longActingWith", "pen"}}), by_syringe = whole_day({{"with", "pen"}});
  EXPECT_EQ(screen(by_pen, "longActing")["dose"]["units"], 19.5);
  EXPECT_EQ(screen(by_pen, "longActing")["dose"]["with"], "pen");
  EXPECT_EQ(screen(by_pen, "longActing")["injections"].size(), 7);
  EXPECT_EQ(screen(by_pen, "bridge")["dose"]["with"], "syringe");
  EXPECT_EQ(screen(by_syringe, "longActing")["dose"]["units"], 19);
  EXPECT_EQ(screen(by_syringe, "bridge")["dose"]["with"], "pen");
  both.erase("pen");
  for (const std::string key : {"with", "longActingWith"}) {
    const Json refused = Json::parse(stopgap::ask("offPump", request(both, night, "25T22:00", {{key, "pen"}}).dump()))["refused"][0];
    EXPECT_EQ(refused["path"], "/" + key);
    EXPECT_EQ(refused["reason"], "contradiction");
  }
}

TEST(OffPump, WhatCannotBeIsRefusedWithItsPlace) {
  const auto refusal = [](const Json& more, const std::string& key = {}) {
    Json asked_for = request(plan, night, "25T22:00", more);
    if (!key.empty()) asked_for.erase(key);
    const Json answer = Json::parse(stopgap::ask("offPump", asked_for.dump()));
    return answer.contains("refused") ? answer["refused"][0]["path"].get<std::string>() + " " + answer["refused"][0]["reason"].get<std::string>() : "answered";
  };
  EXPECT_EQ(refusal({{"asleepUntil", when("25T21:59")}}), "/asleepUntil contradiction");
  EXPECT_EQ(refusal({{"asleepUntil", when("25T22:00")}}), "/asleepUntil contradiction");
  EXPECT_EQ(refusal({{"asleepUntil", "2026-11-26T02:00:00+15:00"}}).substr(0, 12), "/asleepUntil");
  EXPECT_EQ(refusal({{"expectedHours", -1}}), "/expectedHours outOfRange");
  EXPECT_EQ(refusal({{"expectedHours", 0.1}}), "/expectedHours tooPrecise");
  EXPECT_EQ(refusal({{"zonesEast", 15}}), "/zonesEast outOfRange");
  EXPECT_EQ(refusal({{"zonesEast", -15}}), "/zonesEast outOfRange");
  EXPECT_EQ(refusal({{"zonesEast", 5.5}}), "/zonesEast tooPrecise");
  EXPECT_EQ(refusal({{"carbs", 151}}), "/carbs outOfRange");
  EXPECT_EQ(refusal({{"noLongActing", "yes"}}), "/noLongActing wrongType");
  EXPECT_EQ(refusal({{"with", "needle"}}).substr(0, 5), "/with");
  EXPECT_EQ(refusal({{"with", "pen"}}), "answered");
  EXPECT_EQ(refusal({{"ketones", 1}}), "/ketones unknownKey");
  EXPECT_EQ(refusal(Json::object(), "now"), "/now missing");
  EXPECT_EQ(refusal(Json::object(), "plan"), "/plan missing");
  EXPECT_EQ(refusal(Json::object(), "record"), "/record missing");
  EXPECT_EQ(refusal({{"zonesEast", 14}}), "answered");
}

}  // namespace
