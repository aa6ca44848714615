// Whom a call rings: by the hour, by the day of the week, and never somebody who is not there. Who rings first has no published
// text; the hours are worked out by hand beside each line. 2026-11-25 is a Wednesday.
#include "review.hpp"

namespace stopgap::desk {
namespace {

Json contact(const std::string& name, const std::string& relation, const Json& when, const std::string& phone = "+44 0000 000000") {
  Json out{{"name", name}, {"relation", relation}, {"phone", phone}};
  if (!when.is_null()) out["when"] = when;
  return out;
}

Json calling(const Json& contacts) { return with({{"/contacts", contacts}}); }

Json advice(const Json& plan, const std::string& now) {
  const Json situation{{"now", now}, {"ketones", {{"blood", 0.2}}}, {"glucose", {{"value", 9.0}, {"unit", "mmol/L"}, {"from", "finger"}}},
                       {"signs", {"bellyPain"}}, {"seen", Json::array()}};
  const Json record{{"format", "stopgap.record"}, {"version", 1}, {"planId", plan.at("id")}, {"events", Json::array()}};
  return Json::parse(ask("advise", Json{{"plan", plan}, {"record", record}, {"situation", situation}}.dump()));
}
Json ring(const Json& plan, const std::string& now) { return advice(plan, now).at("ring"); }

// Who is rung, in order, of a plan's team with the night line's number everywhere.
std::string rung(const Json& contacts, const std::string& now) {
  std::vector<std::string> names;
  const Json all = ring(calling(contacts), now);
  for (const Json& one : all.at("team")) names.push_back(one.at("name").get<std::string>() + (one.at("readable") ? "" : "?"));
  return joined(names);
}
bool answers(const char* when, const std::string& now) { return rung(Json::array({contact("Line", "team", when)}), now) == "Line"; }
bool is_read(const char* when) { return rung(Json::array({contact("Line", "team", when)}), "2026-11-25T03:10:00+00:00") != "Line?"; }

TEST(Contacts, AnyHourAnswersAlways) {
  for (const char* when : {"any hour", "Any hour", " ANY HOUR "}) EXPECT_TRUE(answers(when, "2026-11-25T03:10:00+00:00")) << when;
}

TEST(Contacts, ASpanBeginsAtItsMinuteAndIsClosedAtItsEnd) {
  for (const char* when : {"08:00-16:30", "08:00 - 16:30", "08:00\u201316:30", " 08:00-16:30 "}) {
    EXPECT_FALSE(answers(when, "2026-11-25T07:59:59+00:00")) << when;
    EXPECT_TRUE(answers(when, "2026-11-25T08:00:00+00:00")) << when;
    EXPECT_TRUE(answers(when, "2026-11-25T16:29:59+00:00")) << when;
    EXPECT_FALSE(answers(when, "2026-11-25T16:30:00+00:00")) << when;
  }
}

TEST(Contacts, ASpanOverMidnight) {
  EXPECT_FALSE(answers("20:00-08:00", "2026-11-25T19:59:00+00:00"));
  EXPECT_TRUE(answers("20:00-08:00", "2026-11-25T20:00:00+00:00"));
  EXPECT_TRUE(answers("20:00-08:00", "2026-11-26T00:00:00+00:00"));
  EXPECT_TRUE(answers("20:00-08:00", "2026-11-26T07:59:00+00:00"));
  EXPECT_FALSE(answers("20:00-08:00", "2026-11-26T08:00:00+00:00"));
}

TEST(Contacts, ASpanThatEndsWhenItBeginsIsRoundTheClock) {
  for (const char* now : {"2026-11-25T05:59:00+00:00", "2026-11-25T06:00:00+00:00"}) EXPECT_TRUE(answers("06:00-06:00", now)) << now;
}

// Wednesday the 25th to Tuesday the 1st.
TEST(Contacts, DaysOfTheWeek) {
  const auto days = [](const char* when) {
    std::string out;
    for (const char* day : {"2026-11-30", "2026-12-01", "2026-11-25", "2026-11-26", "2026-11-27", "2026-11-28", "2026-11-29"})
      out += answers(when, std::string{day} + "T12:00:00+00:00") ? 'x' : '.';
    return out;  // from Monday
  };
  EXPECT_EQ(days("Mon-Fri 08:00-16:30"), "xxxxx..");
  EXPECT_EQ(days("mon - fri 08:00-16:30"), "xxxxx..");
  EXPECT_EQ(days("Sat-Sun 08:00-16:30"), ".....xx");
  EXPECT_EQ(days("Fri-Mon 08:00-16:30"), "x...xxx");
  EXPECT_EQ(days("Wed 08:00-16:30"), "..x....");
  EXPECT_EQ(days("Tue-Mon 08:00-16:30"), "xxxxxxx");
}

// Friday's night ends on Saturday morning; Monday morning belongs to Sunday's, which is not there.
TEST(Contacts, ANightBelongsToTheDayItBeginsOn) {
  EXPECT_TRUE(answers("Mon-Fri 22:00-06:00", "2026-11-28T05:59:00+00:00"));
  EXPECT_FALSE(answers("Mon-Fri 22:00-06:00", "2026-11-28T22:00:00+00:00"));
  EXPECT_FALSE(answers("Mon-Fri 22:00-06:00", "2026-11-30T05:59:00+00:00"));
  EXPECT_TRUE(answers("Mon-Fri 22:00-06:00", "2026-11-30T22:00:00+00:00"));
}

// 23:30 in UTC on Sunday the 29th is 00:30 on Monday an hour further east.
TEST(Contacts, TheHourIsTheLocalOne) {
  EXPECT_TRUE(answers("Mon 00:00-01:00", "2026-11-30T00:30:00+01:00"));
  EXPECT_FALSE(answers("Mon 00:00-01:00", "2026-11-29T23:30:00+00:00"));
}

TEST(Contacts, WhatElseIsWrittenCannotBeRead) {
  for (const char* when : {"any hour", "08:00-16:30", "Mon-Fri 08:00-16:30", "Sat 08:00-12:00"}) EXPECT_TRUE(is_read(when)) << when;
  for (const char* when : {"", "any hours", "any", "at night", "24 h", "08:00", "08-16", "8:00-16:30", "08:00-24:00", "08:00-16:60", "08:00-12:00, 13:00-16:00",
                           "Mon, Wed 08:00-16:30", "Mon-Fri", "Mon-Fri08:00-16:30", "Monday 08:00-16:30", "Mon-Fri any hour", "weekdays 08:00-16:30",
                           "08:00-16:30 Mon-Fri", "08:00-16:30 not on holidays", "-08:00-16:30"})
    EXPECT_FALSE(is_read(when)) << when;
  EXPECT_EQ(rung(Json::array({contact("Line", "team", nullptr)}), "2026-11-25T03:10:00+00:00"), "Line?");
}

TEST(Contacts, TheTeamIsRungInTheOrderOfThePlan) {
  const Json contacts{contact("Day line", "team", "Mon-Fri 08:00-16:30"), contact("Night line", "team", "any hour"), contact("Ward", "team", "12:00-08:00")};
  EXPECT_EQ(rung(contacts, "2026-11-25T12:00:00+00:00"), "Day line; Night line; Ward");
  EXPECT_EQ(rung(contacts, "2026-11-25T16:30:00+00:00"), "Night line; Ward");
  EXPECT_EQ(rung(contacts, "2026-11-25T08:00:00+00:00"), "Day line; Night line");
}

TEST(Contacts, HoursThatCannotBeReadAreRungFirst) {
  const Json contacts{contact("Day line", "team", "Mon-Fri 08:00-16:30"), contact("Night line", "team", "any hour"), contact("Ward", "team", "most evenings"),
                      contact("Nurse", "team", "ask at the desk")};
  EXPECT_EQ(rung(contacts, "2026-11-25T12:00:00+00:00"), "Ward?; Nurse?; Day line; Night line");
  EXPECT_EQ(rung(contacts, "2026-11-25T03:10:00+00:00"), "Ward?; Nurse?; Night line");
}

// The whole key, word for word: the page draws from nothing else.
TEST(Contacts, TheWholeAnswer) {
  const Json contacts{contact("Day line", "team", "Mon-Fri 08:00-16:30", "0000 000001"), contact("Ward", "team", "most evenings", "0000 000002 or 000003"),
                      contact("Ana, sister", "home", "18:00-23:00", "+44 0000 000004"), contact("Per, father", "home", "any hour", "+44 0000 000005"),
                      contact("Ines, mother", "home", nullptr, "+44 0000 000006"), contact("Jo, next door", "neighbour", "any hour")};
  const auto one = [](const char* name, const char* phone, const char* when, bool dial, bool readable, bool open) {
    return Json{{"name", name}, {"phone", phone}, {"when", when}, {"dial", dial}, {"readable", readable}, {"open", open}};
  };
  const Json expected{{"team", {one("Ward", "0000 000002 or 000003", "most evenings", false, false, false), one("Day line", "0000 000001", "Mon-Fri 08:00-16:30", true, true, true)}},
                      {"emergency", "112"}, {"emergencyDial", true},
                      {"home", {one("Per, father", "+44 0000 000005", "any hour", true, true, true), one("Ines, mother", "+44 0000 000006", "", true, false, false),
                                one("Ana, sister", "+44 0000 000004", "18:00-23:00", true, true, false)}}};
  EXPECT_EQ(ring(calling(contacts), "2026-11-25T12:00:00+00:00"), expected);
}

Json call_slots(const Json& contacts, const std::string& now) {
  const Json answer = advice(calling(contacts), now);
  for (const Json& step : answer.at("steps"))
    if (step.at("id") == "callTeam") return step.at("slots");
  return nullptr;
}

TEST(Contacts, TheStepNamesTheOneToRingFirst) {
  const Json contacts{contact("Day line", "team", "Mon-Fri 08:00-16:30", "0000 000001"), contact("Night line", "team", "16:30-08:00", "0000 000002")};
  EXPECT_EQ(call_slots(contacts, "2026-11-25T12:00:00+00:00"), (Json{{"name", "Day line"}, {"phone", "0000 000001"}}));
  EXPECT_EQ(call_slots(contacts, "2026-11-25T03:10:00+00:00"), (Json{{"name", "Night line"}, {"phone", "0000 000002"}}));
}

// Nobody of the team is there: the emergency number, and not the first contact, and not the sister.
TEST(Contacts, WhereNobodyAnswersItIsTheEmergencyNumber) {
  const Json contacts{contact("Day line", "team", "Mon-Fri 08:00-16:30", "0000 000001"), contact("Ana, sister", "home", "any hour")};
  EXPECT_EQ(rung(contacts, "2026-11-28T12:00:00+00:00"), none);
  EXPECT_EQ(call_slots(contacts, "2026-11-28T12:00:00+00:00"), (Json{{"name", ""}, {"phone", "112"}}));
  EXPECT_EQ(call_slots(Json::array(), "2026-11-25T12:00:00+00:00"), (Json{{"name", ""}, {"phone", "112"}}));
}

TEST(Contacts, ANumberThatCanBeDialled) {
  const auto dials = [](const char* phone) { return ring(calling(Json::array({contact("Line", "team", "any hour", phone)})), "2026-11-25T12:00:00+00:00").at("team").at(0).at("dial").get<bool>(); };
  for (const char* phone : {"112", "+44 0000 000000", "0000-000-000", "+123456789012345", "123456789012345", "1-2-3"}) EXPECT_TRUE(dials(phone)) << phone;
  for (const char* phone : {"11", "+11", "1234567890123456", "++44 0000", "44+0000", "+ 44 0000 x", "0000 000000 ext 4", "+44 (0) 0000", "0000/000", "0000.000",
                            "000-LINE", "0000 000001, 0000 000002", "\u0661\u0661\u0662", "- -"})
    EXPECT_FALSE(dials(phone)) << phone;
}

TEST(Contacts, AnEmergencyNumberThatCannotBeDialled) {
  EXPECT_EQ(ring(with({{"/emergencyNumber", "112 or 999 (landline)"}}), "2026-11-25T12:00:00+00:00").at("emergencyDial"), false);
}

// The same key stands in every answer that a page calls from.
TEST(Contacts, HoldsAndOffPumpCarryTheSame) {
  const Json plan = calling({contact("Day line", "team", "Mon-Fri 08:00-16:30"), contact("Night line", "team", "16:30-08:00")});
  const Json record{{"format", "stopgap.record"}, {"version", 1}, {"planId", plan.at("id")}, {"events", Json::array()}};
  for (const char* now : {"2026-11-25T12:00:00+00:00", "2026-11-25T03:10:00+00:00"})
    for (const char* call : {"holds", "offPump"})
      EXPECT_EQ(Json::parse(ask(call, Json{{"plan", plan}, {"record", record}, {"now", now}}.dump())).at("ring"), ring(plan, now)) << call;
}

}  // namespace
}  // namespace stopgap::desk
