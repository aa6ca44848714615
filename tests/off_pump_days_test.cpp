// Whole days off the pump, as a record: the pump dies at 22:00, the night is bridged, long-acting insulin at 08:00, a flight of
// six zones, the pump back. Every expectation is worked by hand with the plan the contract prints: basal 0.75 to 06:00, then 0.85
// (4.5 + 15.3 = 19.8 a day); target 6.5, factor 2.5; a syringe in steps of 1, down; onset 2 h, action 24 h; automation corrects.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json evening = Json::array({off("25T22:00"), ketones("25T22:00", 0.3)});
const Json at_two = with(evening, {rapid("25T22:00", 0, 0, 3), ketones("26T02:00", 0.3)});
const Json at_six = with(at_two, {rapid("26T02:00", 1, 0, 3), ketones("26T06:00", 0.3)});
const Json at_eight = with(at_six, {rapid("26T06:00", 2.11, 0, 2.89), ketones("26T08:00", 0.3)});
const Json after_long = with(at_eight, {long_dose("26T08:00", 19)});

TEST(OffPumpDays, AtTenTheNightIsBridged) {
  const Json answer = off_pump(plan, evening, "25T22:00", {{"expectedHours", 10}, {"glucose", 8.0}});
  EXPECT_EQ(answer["way"], "bridge");
  EXPECT_EQ(answer["wayBecause"], "shorter");
  EXPECT_EQ(first(answer), "nothing");
  // 22 to 24: 2 x 0.85; 0 to 2: 2 x 0.75; 3.2 down is 3. The correction, 1.5 / 2.5 = 0.6, is under one step.
  EXPECT_EQ(screen(answer, "bridge")["working"]["basal"], "3.2");
  EXPECT_EQ(screen(answer, "bridge")["correctionWaits"]["why"], "underStep");
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_EQ(dose(answer, "longActing"), "none");
  EXPECT_EQ(alarms(answer), "bridge 02:00, bridge 06:00, bridge 08:00");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(clock(answer["look"]), "23:00");
}

TEST(OffPumpDays, AtTwoTheNextBridgeCarriesWhatTheStepLeft) {
  // 4 x 0.75 = 3.0, 0.2 left of 3.2, and (9.0 - 6.5) / 2.5 = 1.0: 4.2 down is 4.
  const Json answer = off_pump(plan, at_two, "26T02:00", {{"expectedHours", 6}, {"glucose", 9.0}});
  EXPECT_EQ(screen(answer, "bridge")["working"]["carried"], "0.2");
  EXPECT_EQ(screen(answer, "bridge")["working"]["sum"], "4.2");
  EXPECT_EQ(dose(answer, "bridge"), "4 units");
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"], Json({{"rescue", 1}, {"meal", 0}, {"basal", 3}}));
  EXPECT_EQ(alarms(answer), "bridge 06:00, bridge 08:00");
}

TEST(OffPumpDays, AtSixTheCorrectionIsNetOfWhatStillActs) {
  // 4 h after the last one its lock is open. 1 unit leaves F3(5.5963) = 22.255 x 0.0037117 = 0.0826, up to 0.09: 2.2 - 0.09 = 2.11.
  // A pump is expected at 08:00: 2 x 0.85 = 1.7 with 0.2 carried: 4.01 down is 4.
  const Json answer = off_pump(plan, at_six, "26T06:00", {{"expectedHours", 2}, {"glucose", 12.0}});
  EXPECT_EQ(screen(answer, "bridge")["working"]["onBoard"], "0.09");
  EXPECT_EQ(screen(answer, "bridge")["working"]["net"], "2.11");
  EXPECT_EQ(screen(answer, "bridge")["working"]["sum"], "4.01");
  EXPECT_EQ(dose(answer, "bridge"), "4 units");
  EXPECT_EQ(screen(answer, "bridge")["basalHours"], 2);
}

TEST(OffPumpDays, AtEightLongActingAloneForTheBridgeLastsUntilItWorks) {
  // Nobody knows how long: 19.8 down is 19. The bridge of 06:00 reaches 10:00, when long-acting works: no second amount.
  const Json answer = off_pump(plan, at_eight, "26T08:00", {{"glucose", 10.0}});
  EXPECT_EQ(answer["wayBecause"], "unknown");
  EXPECT_EQ(dose(answer, "longActing"), "19 units");
  EXPECT_EQ(screen(answer, "longActing")["worksFrom"]["clock"], "10:00");
  EXPECT_EQ(dose(answer, "bridge"), "none");
  EXPECT_EQ(answer["screens"].size(), 1U);
  EXPECT_EQ(alarms(answer), "longActing 08:00");
  // Should it not be injected, the next bridge is due at 10:00; once it is, nothing is.
  EXPECT_EQ(clock(answer["nextBridge"]), "10:00");
  EXPECT_EQ(clock(off_pump(plan, after_long, "26T08:05", {{"glucose", 8.0}})["nextBridge"]), "none");
}

TEST(OffPumpDays, WhileLongActingWorksNothingIsBridgedAndNoSecondIsNamed) {
  for (const char* now : {"26T08:05", "26T14:00", "27T07:59"}) {
    const Json answer = off_pump(plan, after_long, now, {{"glucose", 8.0}});
    EXPECT_EQ(answer["wayBecause"], "atWork") << now;
    EXPECT_EQ(answer["screens"], Json::array()) << now;
    EXPECT_EQ(answer["longActing"]["state"], "hold") << now;
    EXPECT_EQ(clock(answer["longActing"]["until"]), "08:00") << now;
    EXPECT_EQ(alarms(answer), "longActing 08:00") << now;
  }
  // A day off the pump at 22:00: the team.
  EXPECT_FALSE(notes(off_pump(plan, after_long, "26T21:59", {{"glucose", 8.0}}), "callAfterADay"));
  EXPECT_TRUE(notes(off_pump(plan, after_long, "26T22:00", {{"glucose", 8.0}}), "callAfterADay"));
}

TEST(OffPumpDays, TheNextMorningTheNextDoseFollowsWithoutABridge) {
  const Json answer = off_pump(plan, after_long, "27T08:00", {{"glucose", 8.0}});
  EXPECT_EQ(dose(answer, "longActing"), "19 units");
  EXPECT_EQ(dose(answer, "bridge"), "none");
}

TEST(OffPumpDays, AFlightOfSixZonesShortensNoHold) {
  // 20:00 at home is 02:00 there. East: 19.8 x 0.65 = 12.87, down 12, at the home clock's 08:00, which is 14:00 there.
  const Json answer = off_pump(plan, after_long, "27T02:00+06:00", {{"glucose", 8.0}, {"zonesEast", 6}});
  EXPECT_EQ(answer["travel"]["parts"][0]["exact"], "12.87");
  EXPECT_EQ(answer["travel"]["parts"][0]["text"], "12\u00A0units");
  EXPECT_EQ(clock(answer["travel"]["parts"][0]["due"]), "14:00");
  EXPECT_EQ(clock(answer["longActing"]["until"]), "14:00");
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_TRUE(notes(answer, "suppliesTwice"));
}

TEST(OffPumpDays, BackOnThePump) {
  const Json answer = off_pump(plan, with(after_long, {on("26T20:00")}), "26T20:00");
  EXPECT_FALSE(answer["off"]);
  EXPECT_EQ(answer["way"], "none");
  EXPECT_EQ(answer["screens"], Json::array());
  EXPECT_EQ(answer["back"]["usualFrom"]["at"], "2026-11-27T08:00:00+00:00");
  EXPECT_EQ(answer["back"]["reducedPercent"], "50");
  EXPECT_EQ(answer["back"]["automationFrom"]["at"], "2026-11-27T08:00:00+00:00");
  EXPECT_EQ(answer["back"]["lookAfterMinutes"], 120);
  EXPECT_EQ(answer["back"]["missedBasal"], "0");
  const Json unwritten = asked::example_with({{"/offPump/reducedBasalShare", nullptr}});
  EXPECT_TRUE(off_pump(unwritten, with(after_long, {on("26T20:00")}), "26T20:00")["back"]["reducedPercent"].is_null());
  // When it has worn off nothing waits any more.
  EXPECT_EQ(clock(off_pump(plan, with(after_long, {on("26T20:00")}), "27T08:00")["back"]["usualFrom"]), "none");
}

}  // namespace
