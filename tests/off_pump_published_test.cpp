// The values that published texts print for somebody off the pump, to the digit, each with its source.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;

Json steps(const char* from, double value) { return Json::array({{{"from", from}, {"value", value}}}); }

// 4 h of 0.60 units/h, 40 g at 1 unit for 15 g, glucose 14.8 with target 6.0 and factor 4.0.
Json montreal(double step, const std::string& rounding) {
  return asked::example_with({{"/day/basal", steps("00:00", 0.6)}, {"/day/carbohydrateRatio", steps("00:00", 15)}, {"/day/target", steps("00:00", 6.0)},
                              {"/day/correctionFactor", steps("00:00", 4.0)}, {"/syringe/step", step}, {"/rounding", rounding}});
}
Json montreal_answer(double step, const std::string& rounding) {
  return off_pump(montreal(step, rounding), Json::array({off("25T22:00"), ketones("25T22:00", 0.2)}), "25T22:00",
                  {{"expectedHours", 6}, {"carbs", 40}, {"glucose", 14.8}});
}

TEST(OffPumpPublished, CV20TheBridgeInItsParts) {
  // [montreal], printed: 2.4 + 2.7 + 2.2 = 7.3, given as 7.
  const Json answer = montreal_answer(1, "down");
  const Json working = screen(answer, "bridge").at("working");
  EXPECT_EQ(working["basal"], "2.4");
  EXPECT_EQ(working["meal"], "2.67");
  EXPECT_EQ(working["net"], "2.2");
  EXPECT_EQ(working["sum"], "7.27");
  EXPECT_EQ(dose(answer, "bridge"), "7 units");
  // CV-19: the correction alone.
  EXPECT_EQ(working["correction"], "2.2");
  // The correction and the meal whole, rounded down to hundredths; the basal bears the rounding: 7 - 2.2 - 2.66.
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"], Json({{"rescue", 2.2}, {"meal", 2.66}, {"basal", 2.14}}));
}

TEST(OffPumpPublished, CV21TheSumIsRoundedOnce) {
  // [montreal], derived: 7.2667 down to 0.5 is 7; nearest 1 is 7; nearest 0.5 is 7.5.
  EXPECT_EQ(dose(montreal_answer(0.5, "down"), "bridge"), "7 units");
  EXPECT_EQ(dose(montreal_answer(1, "nearest"), "bridge"), "7 units");
  EXPECT_EQ(dose(montreal_answer(0.5, "nearest"), "bridge"), "7.5 units");
}

Json basal_of(const Json& schedule, double factor, int parts = 1, int capacity = 50) {
  return asked::example_with({{"/day/basal", schedule}, {"/offPump/longActingFactor", factor}, {"/offPump/parts", parts}, {"/syringe/capacity", capacity}});
}
Json long_answer(const Json& plan, const std::string& now = "25T10:00") {
  return off_pump(plan, Json::array({off(now), ketones(now, 0.2)}), now, {{"glucose", 8.0}});
}

TEST(OffPumpPublished, CV22ADaysBasalAtFactorOne) {
  // [hamilton], printed: 0.5 x 4 + 1.5 x 4 + 1.0 x 16 = 24.
  const Json plan = basal_of({{{"from", "00:00"}, {"value", 0.5}}, {{"from", "04:00"}, {"value", 1.5}}, {{"from", "08:00"}, {"value", 1.0}}}, 1.0);
  EXPECT_EQ(screen(long_answer(plan), "longActing")["working"]["aDay"], "24");
  EXPECT_EQ(dose(long_answer(plan), "longActing"), "24 units");
}

TEST(OffPumpPublished, CV23TwoParts) {
  // [fi-backup], printed: 20 x 1.2 = 24 = 12 + 12. The published 20 units a day are 0.83 an hour for 20 h and 0.85 for 4 h: 16.6 + 3.4.
  const Json plan = basal_of({{{"from", "00:00"}, {"value", 0.83}}, {{"from", "20:00"}, {"value", 0.85}}}, 1.2, 2);
  const Json answer = long_answer(plan);
  EXPECT_EQ(screen(answer, "longActing")["working"]["aDay"], "24");
  EXPECT_EQ(dose(answer, "longActing"), "12 units");
  EXPECT_NE(alarms(answer).find("longActingPart 22:00"), std::string::npos);
}

TEST(OffPumpPublished, CV24AndCV25TheScheduleAndAcrossMidnight) {
  // R-25, derived: 0.8 x 6 + 1.2 x 16 + 0.9 x 2 = 25.8; x 1.1 = 28.38; x 1.2 = 30.96; 22:00 to 02:00 is 1.8 + 1.6 = 3.4.
  const Json schedule{{{"from", "00:00"}, {"value", 0.8}}, {{"from", "06:00"}, {"value", 1.2}}, {{"from", "22:00"}, {"value", 0.9}}};
  const auto worked = [&](double factor) { return screen(long_answer(basal_of(schedule, factor)), "longActing")["working"]; };
  EXPECT_EQ(worked(1.0)["basal"], "25.8");
  EXPECT_EQ(worked(1.1)["aDay"], "28.38");
  EXPECT_EQ(worked(1.2)["aDay"], "30.96");
  const Json night = off_pump(basal_of(schedule, 1.0), Json::array({off("25T22:00"), ketones("25T22:00", 0.2)}), "25T22:00", {{"expectedHours", 5}, {"glucose", 8.0}});
  EXPECT_EQ(screen(night, "bridge")["working"]["basal"], "3.4");
}

TEST(OffPumpPublished, CV26TheFirstDayByTheClock) {
  // [fi-backup]: 10:00 whole morning dose; 13:00 half of it, and 19:00 the whole evening dose. 0.82 x 24 = 19.68, half 9.84, a quarter 4.92.
  const Json plan = basal_of(steps("00:00", 0.82), 1.0, 2);
  const auto at = [&](const std::string& now) { return screen(long_answer(plan, now), "longActing"); };
  EXPECT_EQ(at("25T10:00")["share"], "whole");
  EXPECT_EQ(at("25T10:00")["part"], "morning");
  EXPECT_EQ(at("25T13:00")["share"], "half");
  EXPECT_EQ(at("25T19:00")["share"], "whole");
  EXPECT_EQ(at("25T19:00")["part"], "evening");
  EXPECT_EQ(at("25T10:00")["working"]["exact"], "9.84");
  EXPECT_EQ(at("25T13:00")["working"]["exact"], "4.92");
  EXPECT_NE(alarms(long_answer(plan, "25T13:00")).find("longActingPart 19:00"), std::string::npos);
  EXPECT_EQ(at("25T11:59")["share"], "whole");
  EXPECT_EQ(at("25T12:00")["share"], "half");
  EXPECT_EQ(at("25T17:59")["share"], "half");
  EXPECT_EQ(at("25T18:00")["share"], "whole");
}

TEST(OffPumpPublished, CV27MissedBasalIsSaidAfterwards) {
  // [scheen-1987]: 2 h missed at 1.05 units/h are 2.1 units, after the restart, and for the talk with the clinic.
  const Json plan = asked::example_with({{"/day/basal", steps("00:00", 1.05)}});
  const Json answer = off_pump(plan, Json::array({off("25T10:00"), on("25T12:00")}), "25T12:05");
  EXPECT_EQ(answer["back"]["missedBasal"], "2.1");
  EXPECT_TRUE(notes(answer, "missedBasalTalk"));
  EXPECT_EQ(answer["screens"], Json::array());
}

Json travel(int zones, double a_day = 20) {
  // 20 units a day as in CV-23.
  const Json schedule = a_day == 20 ? Json{{{"from", "00:00"}, {"value", 0.83}}, {{"from", "20:00"}, {"value", 0.85}}} : steps("00:00", a_day / 24);
  return off_pump(basal_of(schedule, 1.0), Json::array({off("25T08:00"), ketones("25T08:00", 0.2), long_dose("25T08:00", 20)}), "25T20:00",
                  {{"zonesEast", zones}, {"glucose", 8.0}})["travel"];
}

TEST(OffPumpPublished, CV28AndCV29East) {
  // [zones-2013]: x (0.9 - z/24), at the home clock's hour.
  EXPECT_EQ(travel(6)["share"], "0.65");
  EXPECT_EQ(travel(6)["parts"][0]["exact"], "13");
  EXPECT_EQ(travel(5)["parts"][0]["exact"], "13.8333");
  EXPECT_EQ(travel(7)["parts"][0]["exact"], "12.1667");
  EXPECT_EQ(travel(8)["parts"][0]["exact"], "11.3333");
  EXPECT_EQ(travel(9)["parts"][0]["exact"], "10.5");
  EXPECT_EQ(travel(12)["parts"][0]["exact"], "8");
  EXPECT_EQ(travel(6)["parts"][0]["text"], "13\u00A0units");
  EXPECT_EQ(travel(6)["parts"][0]["due"]["at"], "2026-11-26T08:00:00+00:00");
}

TEST(OffPumpPublished, CV30West) {
  // [zones-2013]: 10 at the home clock's 08:00, and 10 at 08:00 six zones west, which is 14:00 at home.
  const Json west = travel(-6);
  ASSERT_EQ(west["parts"].size(), 2U);
  EXPECT_EQ(west["parts"][0]["exact"], "10");
  EXPECT_EQ(west["parts"][1]["exact"], "10");
  EXPECT_EQ(clock(west["parts"][0]["due"]), "08:00");
  EXPECT_EQ(clock(west["parts"][1]["due"]), "14:00");
}

TEST(OffPumpPublished, CV31FewZonesChangeNothing) {
  // [fi-backup]: under 3 h ignore. [zones-2013]: the basal rule starts at 5.
  EXPECT_EQ(travel(2)["rule"], "ignore");
  EXPECT_EQ(travel(-2)["rule"], "ignore");
  EXPECT_EQ(travel(3)["rule"], "sameBasal");
  EXPECT_EQ(travel(4)["rule"], "sameBasal");
  EXPECT_EQ(travel(-4)["parts"], Json::array());
  EXPECT_EQ(travel(5)["rule"], "east");
  EXPECT_EQ(travel(-5)["rule"], "west");
}

TEST(OffPumpPublished, CV32TheLastDayOfAVial) {
  // [store-table]: opened 2026-03-01, 28, 42, 56 days: last use 29 March, 12 April, 26 April; the next day discard.
  const auto vial = [](int days, const std::string& now) {
    const Json plan = asked::example_with({{"/rapid/inUseDays", days}});
    Json opened{{"id", "o"}, {"at", "2026-03-01T09:00:00+00:00"}, {"kind", "changed"}, {"what", {"insulin"}}};
    Json request{{"plan", plan}, {"now", now}, {"record", asked::record_of(plan, now, Json::array({opened}))}};
    return Json::parse(stopgap::ask("offPump", request.dump()))["insulin"]["vial"];
  };
  EXPECT_EQ(vial(28, "2026-03-20T12:00:00+00:00")["lastUse"], "2026-03-29");
  EXPECT_EQ(vial(42, "2026-03-20T12:00:00+00:00")["lastUse"], "2026-04-12");
  EXPECT_EQ(vial(56, "2026-03-20T12:00:00+00:00")["lastUse"], "2026-04-26");
  EXPECT_EQ(vial(28, "2026-03-28T23:59:00+00:00")["keeps"], "good");
  EXPECT_EQ(vial(28, "2026-03-29T23:59:00+00:00")["keeps"], "lastDay");
  EXPECT_EQ(vial(28, "2026-03-30T00:00:00+00:00")["keeps"], "over");
}

TEST(OffPumpPublished, CV33AndCV34SetReservoirAndHeat) {
  // [lispro-2011]: set 72 h is due, 74.4 h is overdue; a lispro reservoir 7 days; heated insulin is said until it is changed.
  const Json plan = asked::plan_of("adult");   // lispro
  const Json events = Json::array({event("01T08:00", "changed", {{"what", {"set", "reservoir", "insulin"}}}), event("03T08:00", "seen", {{"what", {"heatedInsulin"}}})});
  const auto kept = [&](const std::string& now) { return off_pump(plan, events, now)["insulin"]; };
  EXPECT_EQ(kept("04T07:59")["set"]["keeps"], "good");
  EXPECT_EQ(kept("04T08:00")["set"]["keeps"], "due");
  EXPECT_EQ(kept("04T10:24")["set"]["keeps"], "over");
  EXPECT_EQ(kept("08T08:00")["reservoir"]["keeps"], "due");
  EXPECT_EQ(kept("08T07:59")["reservoir"]["keeps"], "good");
  EXPECT_FALSE(off_pump(plan, Json::array({events[0]}), "02T08:00")["insulin"]["heated"]);
  EXPECT_TRUE(kept("03T09:00")["heated"]);
  Json changed = events;
  changed.push_back(event("03T10:00", "changed", {{"what", {"insulin"}}}));
  EXPECT_FALSE(off_pump(plan, changed, "03T11:00")["insulin"]["heated"]);
}

}  // namespace
