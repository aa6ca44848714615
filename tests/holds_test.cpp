// The `holds` call: what runs, which looks are due or late, what still acts, and whether a dose waits for its answer.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
using asked::plan;

Json holds(const Json& events) { return asked::holds(plan(), events); }
Json injection(double ago, double units) { return {{"id", "needle"}, {"ago", ago}, {"kind", "injection"}, {"units", units}, {"glucose", 16.4}, {"ketones", 1.0}}; }
Json look(const char* due, Json what = {"glucose", "ketones"}) {
  return {{"ago", 180}, {"kind", "look"}, {"due", std::string{"2026-11-25T"} + due + ":00+00:00"}, {"what", std::move(what)}};
}
Json glucose(double ago) { return {{"ago", ago}, {"kind", "glucose"}, {"value", 12.0}}; }
Json ketones(double ago) { return {{"ago", ago}, {"kind", "ketones"}, {"blood", 0.4}}; }

TEST(Holds, NothingRunsOnAnEmptyRecord) {
  const Json answer = holds(Json::array());
  EXPECT_EQ(answer["holds"], Json::array());
  EXPECT_EQ(answer["looks"], Json::array());
  EXPECT_EQ(answer["onBoard"], Json({{"counted", "0"}, {"absorbed", "0"}}));
  EXPECT_TRUE(answer["unanswered"].is_null() && answer["incident"].is_null() && answer["given"].is_null());
}

TEST(Holds, ANeedleDoseHoldsTheNextOne) {
  // 4 units at 02:10 decided on ketones of 1.0: correction 4 h, ketone dose 2 h, automation 4 h after it.
  const Json answer = holds(Json::array({injection(60, 4)}));
  EXPECT_EQ(asked::hold_clock(answer, "correction"), "06:10");
  EXPECT_EQ(asked::hold_clock(answer, "ketoneDose"), "04:10");
  EXPECT_EQ(asked::hold_clock(answer, "automation"), "06:10");
  EXPECT_EQ(answer["given"]["text"], "4\u00A0units");
  EXPECT_EQ(answer["given"]["minutesAgo"], 60);
  EXPECT_EQ(answer["given"]["clock"], "02:10");
}

TEST(Holds, AHoldIsOpenExactlyAtItsEnd) {
  EXPECT_EQ(asked::hold_clock(holds(Json::array({injection(239, 4)})), "correction"), "03:11");
  EXPECT_EQ(asked::hold_clock(holds(Json::array({injection(240, 4)})), "correction"), "none");
}

TEST(Holds, AClockTimeIsNeverTooEarly) {
  // 02:10:30 + 4 h = 06:10:30: shown as the next full minute.
  EXPECT_EQ(asked::hold_clock(holds(Json::array({injection(59.5, 4)})), "correction"), "06:11");
}

TEST(Holds, AMealPartStartsNoHoldForCorrections) {
  Json meal = injection(60, 4);
  meal["parts"] = {{"rescue", 0}, {"meal", 4}, {"basal", 0}};
  EXPECT_EQ(asked::hold_clock(holds(Json::array({meal})), "correction"), "none");
}

TEST(Holds, AMistakeHoldsAllRapidInsulin) {
  // 4.5 h after 02:10.
  const Json answer = holds(Json::array({{{"ago", 60}, {"kind", "mistake"}, {"what", "twice"}, {"insulin", "rapid"}, {"units", 3}}}));
  EXPECT_EQ(asked::hold_clock(answer, "allRapid"), "06:40");
  EXPECT_EQ(asked::hold_clock(answer, "automation"), "06:40");
}

TEST(Holds, LongActingHoldsForItsHours) {
  const Json answer = holds(Json::array({{{"ago", 60}, {"kind", "injection"}, {"insulin", "long"}, {"units", 18}}}));
  EXPECT_EQ(asked::hold_clock(answer, "longActing"), "02:10");
  EXPECT_EQ(answer["holds"][0]["until"], "2026-11-26T02:10:00+00:00");
}

TEST(Holds, AnotherClockShowsTheSameInstant) {
  // The same record asked at +05:30: 06:10 at +00:00 is 11:40 there.
  Json request{{"plan", plan()}, {"record", asked::record_of(plan(), asked::night, Json::array({injection(60, 4)}))}, {"now", "2026-11-25T08:40:00+05:30"}};
  const Json answer = Json::parse(ask("holds", request.dump()));
  EXPECT_EQ(asked::hold_clock(answer, "correction"), "11:40");
  EXPECT_EQ(answer["given"]["minutesAgo"], 60);
}

TEST(Looks, ADueLookIsNotYetLate) {
  const Json answer = holds(Json::array({look("04:10")}));
  EXPECT_EQ(answer["looks"][0]["clock"], "04:10");
  EXPECT_EQ(answer["looks"][0]["overdue"], false);
  EXPECT_EQ(answer["looks"][0]["minutesLate"], 0);
}

TEST(Looks, ALateLookSaysByHowMuch) {
  const Json answer = holds(Json::array({look("02:45")}));
  EXPECT_EQ(answer["looks"][0]["overdue"], true);
  EXPECT_EQ(answer["looks"][0]["minutesLate"], 25);
}

TEST(Looks, AreAnsweredByBothReadings) {
  EXPECT_EQ(holds(Json::array({look("02:45"), glucose(20), ketones(19)}))["looks"], Json::array());
  // What is still to be read is what is asked for.
  EXPECT_EQ(holds(Json::array({look("02:45"), glucose(20)}))["looks"][0]["what"], Json({"ketones"}));
  EXPECT_EQ(holds(Json::array({look("02:45"), ketones(19)}))["looks"][0]["what"], Json({"glucose"}));
  EXPECT_EQ(holds(Json::array({look("02:45")}))["looks"][0]["what"], Json({"glucose", "ketones"}));
  EXPECT_EQ(holds(Json::array({look("02:45", Json::array({"glucose"})), glucose(20)}))["looks"], Json::array());
}

TEST(Looks, AReadingLongBeforeIsNoAnswer) {
  // 16 min before the look is over the 15 min a reading lasts.
  EXPECT_EQ(holds(Json::array({look("02:45", Json::array({"glucose"})), glucose(41)}))["looks"].size(), 1U);
  EXPECT_EQ(holds(Json::array({look("02:45", Json::array({"glucose"})), glucose(40)}))["looks"], Json::array());
}

// A low at 03:00 asks for a look at 03:15: the reading that asked is within 15 min of the look, and is not its answer.
TEST(Looks, TheReadingThatLedToALookIsNotItsAnswer) {
  Json asked_now = look("03:15", Json::array({"glucose"}));
  asked_now["ago"] = 10;
  EXPECT_EQ(holds(Json::array({asked_now, glucose(10)}))["looks"].size(), 1U);
  EXPECT_EQ(holds(Json::array({asked_now, glucose(10), glucose(1)}))["looks"], Json::array());
}

TEST(Looks, ComeInOrderAndOncePerTime) {
  const Json answer = holds(Json::array({look("05:10"), look("02:45"), look("02:45", Json::array({"glucose"}))}));
  EXPECT_EQ(asked::looks(answer), "02:45 05:10");
  EXPECT_EQ(answer["looks"][0]["what"], Json({"glucose", "ketones"}));
}

TEST(OnBoard, CountedAndAbsorbedDifferWhileTheSetIsBlamed) {
  // 3 units by the pump 60 min ago, then a leak: they may not be in. 3 x 0.83372 = 2.5012, up 2.51.
  const Json pump{{"ago", 60}, {"kind", "pumpDose"}, {"units", 3}, {"purpose", "correction"}};
  const Json leak{{"ago", 30}, {"kind", "seen"}, {"what", {"leak"}}};
  EXPECT_EQ(holds(Json::array({pump}))["onBoard"], Json({{"counted", "2.51"}, {"absorbed", "2.51"}}));
  EXPECT_EQ(holds(Json::array({pump, leak}))["onBoard"], Json({{"counted", "0"}, {"absorbed", "2.51"}}));
}

TEST(Unanswered, ADoseShownWaitsUntilItIsSaid) {
  const Json shown{{"id", "shown"}, {"ago", 30}, {"kind", "doseShown"}, {"units", 3.5}};
  const Json waiting = holds(Json::array({shown}))["unanswered"];
  EXPECT_EQ(waiting["id"], "shown");
  EXPECT_EQ(waiting["units"], 3.5);
  EXPECT_EQ(waiting["text"], "3.5\u00A0units");
  EXPECT_EQ(waiting["clock"], "02:40");
  EXPECT_TRUE(holds(Json::array({shown, {{"ago", 29}, {"kind", "doseRefused"}, {"shown", "shown"}}}))["unanswered"].is_null());
  EXPECT_TRUE(holds(Json::array({shown, injection(28, 3.5)}))["unanswered"].is_null());
  EXPECT_FALSE(holds(Json::array({shown, injection(31, 3.5)}))["unanswered"].is_null());  // the injection before it is another one
}

TEST(Incident, IsImpliedOrRecorded) {
  // The first needle dose, pump correction or fault of the last 24 h.
  const Json implied = holds(Json::array({injection(60, 4), {{"ago", 90}, {"kind", "seen"}, {"what", {"leak"}}}}))["incident"];
  EXPECT_EQ(implied["clock"], "01:40");
  EXPECT_EQ(implied["recorded"], false);
  const Json opened{{"ago", 50}, {"kind", "incident"}, {"state", "opened"}};
  const Json recorded = holds(Json::array({opened}))["incident"];
  EXPECT_EQ(recorded["clock"], "02:20");
  EXPECT_EQ(recorded["recorded"], true);
  EXPECT_TRUE(holds(Json::array({opened, {{"ago", 40}, {"kind", "incident"}, {"state", "closed"}}}))["incident"].is_null());
  EXPECT_EQ(holds(Json::array({injection(24 * 60, 4)}))["incident"]["recorded"], false);
  EXPECT_TRUE(holds(Json::array({injection(24 * 60 + 1, 4)}))["incident"].is_null());
}

TEST(CurveOfHolds, IsOneRowAMinuteToTheEndOfAction) {
  // 4 units now: 4, then F3 by the printed fractions for 4.5 h of action; the last row is 270 min on.
  const Json curve = asked::holds(plan(), Json::array({injection(0, 4)}), asked::night, true)["curve"];
  ASSERT_EQ(curve.size(), 271U);
  EXPECT_EQ(curve[0], Json({0, "4", "4"}));
  EXPECT_EQ(curve[60], Json({60, "3.34", "3.34"}));    // 4 x 0.83372
  EXPECT_EQ(curve[120], Json({120, "1.88", "1.88"}));  // 4 x 0.4699
  EXPECT_EQ(curve[270][0], 270);
  EXPECT_FALSE(asked::holds(plan(), Json::array()).contains("curve"));
}

// 4 units just given at 16.0, factor 2.5. After 60 min 4 - 3.34 = 0.66 units have acted: 0.66 x 2.5 = 1.65; the same again makes 3.3.
// After 120 min 2.12 x 2.5 = 5.3 and 10.6. F3 is 0.05 at the end: 4 x 0.95 x 2.5 = 9.5 and 19. From 16.0 to the low level of 3.9 it is 12.1.
TEST(TakenOff, IsWorkedByHandToldAndNotTold) {
  Json now = glucose(0);
  now["value"] = 16.0;
  const Json taken = asked::holds(plan(), Json::array({now, injection(0, 4)}), asked::night, true)["taken"];
  EXPECT_EQ(taken["dose"], "4\u00A0units");
  EXPECT_EQ(taken["toLow"], "12.1");
  ASSERT_EQ(taken["rows"].size(), 19U);
  EXPECT_EQ(taken["rows"][0], Json({0, "0.0", "0.0"}));
  EXPECT_EQ(taken["rows"][4], Json({60, "1.7", "3.3"}));
  EXPECT_EQ(taken["rows"][8], Json({120, "5.3", "10.6"}));
  EXPECT_EQ(taken["rows"][18], Json({270, "9.5", "19.0"}));
}

// An hour on, what has already acted is no longer to come; the pump would give the whole dose from now.
TEST(TakenOff, CountsFromNow) {
  const Json taken = asked::holds(plan(), Json::array({injection(60, 4)}), asked::night, true)["taken"];
  EXPECT_TRUE(taken["toLow"].is_null());                      // nobody has read glucose in the last minutes
  EXPECT_EQ(taken["rows"][4], Json({60, "3.7", "5.3"}));      // 3.34 - 1.88 = 1.46; x 2.5 = 3.65; and 0.66 x 2.5 = 1.65 more
  EXPECT_EQ(taken["rows"][18], Json({270, "8.4", "17.9"}));   // 3.34 x 2.5 = 8.35, and 9.5 more
}

TEST(TakenOff, IsNotDrawnWhereNoNeedleDoseActs) {
  EXPECT_FALSE(asked::holds(plan(), Json::array(), asked::night, true).contains("taken"));
  EXPECT_FALSE(asked::holds(plan(), Json::array({injection(270, 4)}), asked::night, true).contains("taken"));
  EXPECT_FALSE(asked::holds(plan(), Json::array({injection(60, 4)}), asked::night, false).contains("taken"));
}

TEST(Holds, BadInputIsRefusedWithItsPlace) {
  const Json answer = Json::parse(ask("holds", Json({{"plan", plan()}, {"now", "soon"}}).dump()));
  ASSERT_TRUE(answer.contains("refused"));
  std::string paths;
  for (const Json& one : answer["refused"]) paths += one["path"].get<std::string>() + " ";
  EXPECT_NE(paths.find("/record"), std::string::npos);
  EXPECT_NE(paths.find("/now"), std::string::npos);
}

}  // namespace
}  // namespace stopgap
