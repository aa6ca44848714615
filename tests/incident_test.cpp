// The `incident` call: one made-up night worked by hand, what is told and what is not, and what stays unknown.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
using asked::plan;

Json answer_of(const Json& events) {
  const Json request{{"plan", plan()}, {"record", asked::record_of(plan(), asked::night, events)}};
  return Json::parse(ask("incident", request.dump()));
}

// "night" times lie on 25 November, the ones from 18:00 on the evening before.
Json at(const std::string& clock, Json event) {
  event["at"] = (clock >= "18:00" ? "2026-11-24T" : "2026-11-25T") + clock + ":00+00:00";
  return event;
}
Json glucose(const std::string& clock, const Json& value) {
  if (value.is_string()) return at(clock, {{"id", "g" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "glucose"}, {"reading", value}});
  return at(clock, {{"id", "g" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "glucose"}, {"value", value}});
}
Json ketones(const std::string& clock, double blood) {
  return at(clock, {{"id", "k" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "ketones"}, {"blood", blood}});
}

// High before bed, a pump correction that does nothing, one unit by needle, a new line, over in the morning; one wrong entry.
const Json& night() {
  static const Json events = Json::array({
      {{"id", "long-ago"}, {"kind", "injection"}, {"at", "2026-11-20T02:00:00+00:00"}, {"units", 3}},
      glucose("23:30", 15.6), ketones("23:31", 0.2),
      at("23:35", {{"id", "pump"}, {"kind", "pumpDose"}, {"units", 3.0}, {"purpose", "correction"}, {"glucose", 15.6}}),
      glucose("00:33", 11.0), at("00:34", {{"id", "slip"}, {"kind", "strike"}, {"target", "g0033"}, {"reason", "read upside down"}}),
      glucose("00:35", 16.0), ketones("00:36", 0.3),
      at("00:40", {{"id", "shown"}, {"kind", "doseShown"}, {"units", 1}}),
      at("00:44", {{"id", "needle"}, {"kind", "injection"}, {"units", 1}, {"glucose", 16.0}, {"ketones", 0.3}, {"shown", "shown"}}),
      at("00:50", {{"id", "line"}, {"kind", "changed"}, {"what", Json::array({"set", "reservoir"})}}),
      at("00:52", {{"id", "off"}, {"kind", "automation"}, {"state", "paused"}}),
      glucose("01:45", 15.0), ketones("01:46", 0.9),
      glucose("06:30", 7.0), ketones("06:31", 0.2), glucose("07:10", 6.8), ketones("07:11", 0.1),
      at("07:15", {{"id", "end"}, {"kind", "incident"}, {"state", "closed"}})});
  return events;
}

const Json& row(const Json& answer, const std::string& id) {
  static const Json none;
  for (const Json& one : answer.at("story").at("rows"))
    if (one.at("id") == id) return one;
  return none;
}

// "inject KET 4 units", "hold KET HLD", "nothing asked".
std::string led_to(const Json& answer, const std::string& id) {
  const Json& plan_then = row(answer, id).at("ledTo");
  if (plan_then.is_null()) return "nothing asked";
  std::string out = plan_then.at("outcome").get<std::string>() + " " + plan_then.at("decidedBy").get<std::string>();
  if (!plan_then.at("gate").is_null()) out += " " + plan_then.at("gate").get<std::string>();
  if (!plan_then.at("dose").is_null()) {
    std::string dose = plan_then.at("dose");
    if (const auto space = dose.find("\u00A0"); space != std::string::npos) dose.replace(space, 2, " ");
    out += " " + dose;
  }
  return out;
}

std::string minutes(const Json& answer, const char* what) {
  const Json& reached = answer.at("story").at("durations").at(what);
  return reached.is_null() ? "never" : reached.at("minutes").get<std::string>() + " at " + reached.at("clock").get<std::string>();
}

TEST(Story, TellsTheNightFromTheFirstHighToItsEnd) {
  const Json answer = answer_of(night());
  const Json& story = answer.at("story");
  EXPECT_EQ(story.at("since"), "2026-11-24T23:35:00+00:00");  // the pump's correction is the first sign of it
  EXPECT_EQ(story.at("from").at("clock"), "23:30");           // the high that led to it is told as well
  EXPECT_EQ(story.at("from").at("day"), "2026-11-24");
  EXPECT_EQ(story.at("closed").at("clock"), "07:15");
  EXPECT_EQ(story.at("to").at("clock"), "07:15");
  EXPECT_EQ(story.at("recorded"), false);
  EXPECT_EQ(story.at("picture").at("minutes"), 465);
  std::string ids;
  for (const Json& one : story.at("rows")) ids += one.at("id").get<std::string>() + " ";
  EXPECT_EQ(ids, "g2330 k2331 pump g0033 slip g0035 k0036 shown needle line off g0145 k0146 g0630 k0631 g0710 k0711 end ");
  EXPECT_EQ(answer.at("others"), Json::array({{{"from", "2026-11-20T02:00:00+00:00"}, {"to", "2026-11-20T02:00:00+00:00"}}}));
}

// Worked by hand with the plan of the contract (trigger 14.0, middle 10.0, target 6.5, factor 2.5, aspart 4.5 h).
TEST(Story, SaysWhatThePlanLedToAtEachReading) {
  const Json answer = answer_of(night());
  EXPECT_EQ(led_to(answer, "g2330"), "testKetones TST");    // high, ketones not tested
  EXPECT_EQ(led_to(answer, "k2331"), "correctByPump PMP");  // high, ketones 0.2, nothing else
  EXPECT_EQ(led_to(answer, "pump"), "nothing asked");
  EXPECT_EQ(led_to(answer, "g0035"), "testKetones TST");    // the ketones are 64 min old
  // 61 min after the correction it is higher: INJ. (16.0 - 6.5)/2.5 = 3.80; on board 3.0 x F3(61 min): z = 61*6.295794/270 =
  // 1.42238, F3 0.82807, 2.4842 -> 2.49; net 1.31, down to 1 unit.
  EXPECT_EQ(led_to(answer, "k0036"), "inject INJ 1 unit");
  EXPECT_EQ(led_to(answer, "needle"), "nothing asked");     // decided on readings that stand above already
  EXPECT_EQ(led_to(answer, "k0146"), "hold KET HLD");       // ketones act, the needle dose is 62 min old
  EXPECT_EQ(led_to(answer, "k0631"), "lookAgain NON");      // the reading before was 15.0
  EXPECT_EQ(led_to(answer, "k0711"), "over END");           // two under 10.0, two ketones under 0.6, 6 h 27 after the dose
}

TEST(Story, MeasuresFromTheFirstHigh) {
  const Json answer = answer_of(night());
  EXPECT_EQ(answer.at("story").at("durations").at("from"), "high");
  EXPECT_EQ(answer.at("story").at("durations").at("clock"), "23:30");
  EXPECT_EQ(minutes(answer, "ketoneTest"), "1 at 23:31");
  EXPECT_EQ(minutes(answer, "needle"), "74 at 00:44");
  EXPECT_EQ(minutes(answer, "newSet"), "80 at 00:50");
}

TEST(Story, ShowsAStruckEntryAsStruckAndAsItWasBelievedThen) {
  const Json answer = answer_of(night());
  EXPECT_EQ(row(answer, "g0033").at("struck"), true);
  EXPECT_EQ(row(answer, "g0033").at("counts"), false);
  EXPECT_EQ(led_to(answer, "g0033"), "testKetones TST");  // within an incident, ketones 62 min old
  EXPECT_EQ(row(answer, "slip").at("what"), Json({{"target", "g0033"}, {"text", "read upside down"}}));
  EXPECT_EQ(row(answer, "g0035").at("struck"), false);
}

TEST(Story, AStruckDoseGoesOnCountingAndIsMeasured) {
  Json events = night();
  events.push_back(at("01:00", {{"id", "no"}, {"kind", "strike"}, {"target", "needle"}, {"reason", "not sure"}}));
  const Json answer = answer_of(events);
  EXPECT_EQ(row(answer, "needle").at("struck"), true);
  EXPECT_EQ(row(answer, "needle").at("counts"), true);
  EXPECT_EQ(minutes(answer, "needle"), "74 at 00:44");
  events.push_back(at("01:05", {{"id", "agreed"}, {"kind", "call"}, {"to", "team"}, {"answered", true}, {"for", "no"}}));
  const Json after = answer_of(events);
  EXPECT_EQ(row(after, "needle").at("counts"), false);
  EXPECT_EQ(minutes(after, "needle"), "never");
}

TEST(Story, WritesAmountsAndReadingsAsTexts) {
  const Json answer = answer_of(night());
  EXPECT_EQ(row(answer, "needle").at("what"),
            Json({{"dose", "1\u00A0unit"}, {"insulin", "rapid"}, {"with", "syringe"}, {"sure", true},
                  {"glucose", {{"value", "16.0"}, {"unit", "mmol/L"}, {"from", "finger"}}}, {"ketones", {{"blood", "0.3"}}}}));
  EXPECT_EQ(row(answer, "pump").at("what").at("dose"), "3\u00A0units");
  EXPECT_EQ(row(answer, "g0145").at("what"), Json({{"value", "15.0"}, {"unit", "mmol/L"}, {"from", "finger"}}));
  EXPECT_EQ(row(answer, "g0145").at("minute"), 135);
  EXPECT_EQ(row(answer, "g0035").at("height"), 100);  // the highest of the picture; 7.0 of 16.0 is 43.75 hundredths
  EXPECT_EQ(row(answer, "g0630").at("height"), 44);
}

TEST(Story, IsNullWithoutAnIncident) {
  const Json none{{"story", nullptr}, {"others", Json::array()}, {"moreOthers", false}};
  EXPECT_EQ(answer_of(Json::array()), none);
  EXPECT_EQ(answer_of(Json::array({glucose("02:00", 16.0), ketones("02:01", 0.1)})), none);
}

TEST(Story, WhatNeverCameIsNullAndNeverNought) {
  const Json answer = answer_of(Json::array({at("02:00", {{"id", "seen"}, {"kind", "seen"}, {"what", Json::array({"leak"})}})}));
  EXPECT_EQ(answer.at("story").at("durations").at("from"), "suspicion");
  for (const char* what : {"ketoneTest", "needle", "newSet"}) EXPECT_EQ(minutes(answer, what), "never") << what;
  EXPECT_TRUE(answer.at("story").at("closed").is_null());
  EXPECT_EQ(row(answer, "seen").at("height"), nullptr);
}

// The contract works 16.0 and 0.8 with nothing tried: extra 4.00, 4 units.
TEST(Story, AsksAtTheReadingsAnInjectionCarries) {
  const Json answer = answer_of(Json::array({at("03:10", {{"id", "needle"}, {"kind", "injection"}, {"units", 4}, {"glucose", 16.0}, {"ketones", 0.8}})}));
  EXPECT_EQ(led_to(answer, "needle"), "inject KET 4 units");
  EXPECT_EQ(minutes(answer, "ketoneTest"), "0 at 03:10");
  EXPECT_EQ(minutes(answer, "needle"), "0 at 03:10");
  EXPECT_EQ(minutes(answer, "newSet"), "never");
}

TEST(Story, ADoseWrittenDownInTheMinuteOfAReadingComesAfterIt) {
  const Json answer = answer_of(Json::array({glucose("03:10", 16.0), ketones("03:10", 0.8), at("03:10", {{"id", "a-needle"}, {"kind", "injection"}, {"units", 4}})}));
  EXPECT_EQ(led_to(answer, "g0310"), "nothing asked");  // one answer a moment, at its last reading
  EXPECT_EQ(led_to(answer, "k0310"), "inject KET 4 units");
}

TEST(Story, ADangerSignSaidJustBeforeIsPartOfTheMoment) {
  const auto told = [](const char* clock) {
    return answer_of(Json::array({at("02:50", {{"id", "sign"}, {"kind", "sign"}, {"what", Json::array({"drowsy"})}}),
                                  at("02:51", {{"id", "open"}, {"kind", "incident"}, {"state", "opened"}}), glucose(clock, 16.0)}));
  };
  EXPECT_EQ(led_to(told("03:05"), "g0305"), "emergency EMR");
  EXPECT_EQ(led_to(told("03:06"), "g0306"), "testKetones TST");  // 16 min later nobody knows
}

TEST(Story, AWordOfTheMeterIsBelievedTheSecondTime) {
  const Json answer = answer_of(Json::array({at("02:51", {{"id", "open"}, {"kind", "incident"}, {"state", "opened"}}), ketones("02:52", 0.1),
                                             glucose("03:00", "HI"), glucose("03:05", "HI")}));
  EXPECT_EQ(led_to(answer, "g0300"), "testGlucose FNG");
  // HI again, ketones 0.1: INJ with the plan's own dose for HI, 10 % of 40.
  EXPECT_EQ(led_to(answer, "g0305"), "inject INJ 4 units");
  EXPECT_EQ(row(answer, "g0305").at("height"), 100);
}

TEST(Story, ASensorIsNoFinger) {
  Json sensor = glucose("03:00", 16.0);
  sensor["from"] = "sensor";
  const Json answer = answer_of(Json::array({at("02:51", {{"id", "open"}, {"kind", "incident"}, {"state", "opened"}}), ketones("02:52", 0.1), sensor}));
  EXPECT_EQ(led_to(answer, "g0300"), "testGlucose FNG");
}

TEST(Story, EndsByTimeWhereNobodyClosedIt) {
  // Opened at 03:10, then silence for more than a day: what comes after is not part of it.
  const Json open = at("03:10", {{"id", "open"}, {"kind", "incident"}, {"state", "opened"}});
  Json later = glucose("03:11", 8.0);
  later["id"] = "later";
  later["at"] = "2026-11-26T03:11:00+00:00";
  const Json answer = answer_of(Json::array({open, later}));
  EXPECT_EQ(answer.at("story").at("to").at("clock"), "03:10");
  EXPECT_EQ(answer.at("story").at("rows").size(), 1U);
  later["at"] = "2026-11-26T03:10:00+00:00";  // exactly a day is not over
  EXPECT_EQ(answer_of(Json::array({open, later})).at("story").at("rows").size(), 2U);
}

TEST(Story, TellsTheLastOfSeveralAndNamesTheOthers) {
  Json events = Json::array();
  for (int day = 10; day < 14; ++day) {
    const std::string date = "2026-11-" + std::to_string(day) + "T";
    events.push_back({{"id", "o" + std::to_string(day)}, {"kind", "incident"}, {"state", "opened"}, {"at", date + "01:00:00+00:00"}});
    events.push_back({{"id", "c" + std::to_string(day)}, {"kind", "incident"}, {"state", "closed"}, {"at", date + "05:00:00+00:00"}});
  }
  const Json answer = answer_of(events);
  EXPECT_EQ(answer.at("story").at("from").at("day"), "2026-11-13");
  EXPECT_EQ(answer.at("story").at("recorded"), true);
  ASSERT_EQ(answer.at("others").size(), 3U);
  EXPECT_EQ(answer.at("others")[0], Json({{"from", "2026-11-12T01:00:00+00:00"}, {"to", "2026-11-12T05:00:00+00:00"}}));
  EXPECT_EQ(answer.at("moreOthers"), false);
}

TEST(Story, ALongOneSaysHowManyRowsAreLeftOut) {
  Json events = Json::array({at("00:00", {{"id", "open"}, {"kind", "incident"}, {"state", "opened"}})});
  for (int minute = 1; minute <= 420; ++minute) {
    char clock[8];
    std::snprintf(clock, sizeof clock, "%02d:%02d", minute / 60, minute % 60);
    events.push_back(at(clock, {{"id", "n" + std::to_string(minute)}, {"kind", "note"}, {"text", "x"}}));
  }
  const Json answer = answer_of(events);
  EXPECT_EQ(answer.at("story").at("rows").size(), 400U);
  EXPECT_EQ(answer.at("story").at("rowsLeftOut"), 21);
}

// What an incident begins and ends with, and what is measured in it: each at its edge.
Json opened(const std::string& clock) { return at(clock, {{"id", "o" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "incident"}, {"state", "opened"}}); }
Json closed(const std::string& clock) { return at(clock, {{"id", "c" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "incident"}, {"state", "closed"}}); }
Json change(const std::string& clock, const char* what) { return at(clock, {{"id", "h" + clock.substr(0, 2) + clock.substr(3)}, {"kind", "changed"}, {"what", Json::array({what})}}); }
std::string begins(const Json& events) { return answer_of(events).at("story").at("from").at("clock"); }

// Aspart acts 4.5 h: a high that long before the next one leads in, a minute earlier it is another matter.
TEST(Story, AHighLeadsInWithinTheHoursOfAction) {
  EXPECT_EQ(begins(Json::array({glucose("19:00", 16.0), glucose("23:30", 15.6), opened("23:35")})), "19:00");
  EXPECT_EQ(begins(Json::array({glucose("18:59", 16.0), glucose("23:30", 15.6), opened("23:35")})), "23:30");
}

TEST(Story, ALowerReadingBreaksTheLeadIn) {
  EXPECT_EQ(begins(Json::array({glucose("22:00", 16.0), glucose("22:30", 13.9), glucose("23:30", 15.6), opened("23:35")})), "23:30");
}

TEST(Story, WhatBelongsToTheIncidentBeforeDoesNotLeadIn) {
  EXPECT_EQ(begins(Json::array({opened("21:00"), glucose("22:50", 16.0), closed("23:00"), glucose("23:30", 15.6), opened("23:35")})), "23:30");
}

TEST(Story, KetonesTestedJustBeforeTheFirstHighWereKnownThen) {
  const auto tested = [](const char* clock) { return minutes(answer_of(Json::array({opened("01:00"), ketones(clock, 0.2), glucose("02:00", 16.0)})), "ketoneTest"); };
  EXPECT_EQ(tested("01:30"), "0 at 01:30");  // they last 30 min
  EXPECT_EQ(tested("01:29"), "never");
}

TEST(Story, TheWordHIOfAKetoneMeterIsATest) {
  EXPECT_EQ(minutes(answer_of(Json::array({opened("01:00"), glucose("02:00", 16.0), at("02:10", {{"id", "k"}, {"kind", "ketones"}, {"blood", "HI"}})})), "ketoneTest"), "10 at 02:10");
}

// 7.0 against a trigger of 14.0 stands at half the height, although it is the highest there is.
TEST(Story, ThePictureIsAtLeastAsHighAsTheTrigger) {
  const Json answer = answer_of(Json::array({opened("01:00"), glucose("02:00", 7.0), glucose("03:00", "LO")}));
  EXPECT_EQ(row(answer, "g0200").at("height"), 50);
  EXPECT_EQ(row(answer, "g0300").at("height"), 0);
}

TEST(Story, WhatComesAfterTheEndIsNotMeasured) {
  EXPECT_EQ(minutes(answer_of(Json::array({opened("01:00"), glucose("01:10", 16.0), closed("03:00"), change("03:01", "set")})), "newSet"), "never");
  EXPECT_EQ(minutes(answer_of(Json::array({opened("01:00"), glucose("01:10", 16.0), change("03:00", "set"), closed("03:00")})), "newSet"), "110 at 03:00");
}

TEST(Story, ANewReservoirIsNoNewSet) {
  EXPECT_EQ(minutes(answer_of(Json::array({opened("01:00"), glucose("01:10", 16.0), change("01:20", "reservoir"), change("01:30", "set")})), "newSet"), "20 at 01:30");
}

TEST(Story, ClosingWhatEndedByTimeLongAgoClosesNothing) {
  Json late = closed("03:11");
  late["at"] = "2026-11-27T03:11:00+00:00";
  const Json answer = answer_of(Json::array({opened("03:10"), late}));
  EXPECT_EQ(answer.at("story").at("to").at("clock"), "03:10");
  EXPECT_TRUE(answer.at("story").at("closed").is_null());
}

// Sixty others are named, and that there are more is said.
TEST(Story, NamesSixtyOthersAndSaysThatThereAreMore) {
  const auto told = [](int count) {
    Json events = Json::array();
    for (int n = 0; n < count; ++n) {
      char day[32];
      std::snprintf(day, sizeof day, "2026-%02d-%02dT", 5 + n / 28, 1 + n % 28);
      events.push_back({{"id", "o" + std::to_string(n)}, {"kind", "incident"}, {"state", "opened"}, {"at", std::string{day} + "01:00:00+00:00"}});
      events.push_back({{"id", "c" + std::to_string(n)}, {"kind", "incident"}, {"state", "closed"}, {"at", std::string{day} + "02:00:00+00:00"}});
    }
    const Json answer = answer_of(events);
    return std::to_string(answer.at("others").size()) + (answer.at("moreOthers") == true ? " and more" : "");
  };
  EXPECT_EQ(told(61), "60");
  EXPECT_EQ(told(62), "60 and more");
}

TEST(Story, RefusesWhatEveryCallRefuses) {
  EXPECT_TRUE(is_refusal(ask("incident", "{}")));
  const Json request{{"plan", plan()}, {"record", asked::record_of(plan(), asked::night, Json::array())}, {"now", asked::night}};
  const Json refused = Json::parse(ask("incident", request.dump()));
  EXPECT_EQ(refused.at("refused")[0].at("path"), "/now");
  EXPECT_EQ(refused.at("refused")[0].at("reason"), "unknownKey");
}

}  // namespace
}  // namespace stopgap
