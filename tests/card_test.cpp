// What stands on the card: every cell as `advise` answers it at every hour it is printed for, and the rest worked by hand.
#include <gtest/gtest.h>

#include <set>
#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
using asked::nothing;

Json card_of(const Json& plan, const std::string& paper = "a4", const Json& languages = Json::array()) {
  return Json::parse(ask("card", Json{{"plan", plan}, {"paper", paper}, {"languages", languages}}.dump()));
}
Json changed(const std::string& base, const Json& changes) {
  Json plan = asked::plan_of(base);
  asked::change(plan, changes);
  return plan;
}
std::string refusal(const Json& answer) {
  return answer.contains("refused") ? answer["refused"][0]["path"].get<std::string>() + " " + answer["refused"][0]["reason"].get<std::string>() : "none";
}

int minutes_of(const std::string& clock) { return std::stoi(clock.substr(0, 2)) * 60 + std::stoi(clock.substr(3, 2)); }
bool covers(const Json& span, int minute) {
  const int from = minutes_of(span.at("from")), to = minutes_of(span.at("to"));
  return from == to || (from < to ? from <= minute && minute < to : from <= minute || minute < to);
}
std::string clock_of(int minute) {
  const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  return two(minute / 60) + ":" + two(minute % 60);
}

// A row's lower edge as a person types it, and the ketones of a column at its lower edge.
Json situation(const Json& plan, const Json& row, const Json& column, const std::string& clock) {
  Json out{{"now", plan["agreement"]["on"].get<std::string>() + "T" + clock + ":00+00:00"}};
  if (row["kind"] == "HI") out["glucose"] = {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
  else out["glucose"] = Json::parse(row["glucose"].get<std::string>());
  if (column["key"] == "notTested") out["ketones"] = "notYet";
  else if (column["key"] == "noStrips") out["ketones"] = "noStrips";
  else out["ketones"] = Json::parse(column["from"].get<std::string>());
  return out;
}

// Every whole hour, and every minute at which a setting changes with the one before it.
std::set<int> minutes_to_look_at(const Json& plan) {
  std::set<int> out;
  for (int hour = 0; hour < 24; ++hour) out.insert(hour * 60);
  for (const auto& [name, entries] : plan["day"].items())
    for (const Json& entry : entries) {
      const int minute = minutes_of(entry["from"]);
      out.insert(minute);
      out.insert((minute + 1439) % 1440);
    }
  return out;
}

void every_cell_is_what_advise_answers(const Json& plan) {
  const Json card = card_of(plan);
  std::size_t compared = 0;
  for (const int minute : minutes_to_look_at(plan)) {
    int spans = 0;
    for (const Json& span : card.at("spans")) spans += covers(span, minute) ? 1 : 0;
    ASSERT_EQ(spans, 1) << clock_of(minute) << " stands in so many tables";
    for (const Json& span : card.at("spans")) {
      if (!covers(span, minute)) continue;
      for (const Json& row : span["rows"])
        for (std::size_t i = 0; i < card["columns"].size(); ++i) {
          const Json& cell = row["cells"][i];
          const Json advice = asked::advise(plan, nothing, situation(plan, row, card["columns"][i], clock_of(minute)));
          const std::string place = clock_of(minute) + " " + row["glucose"].dump() + " " + card["columns"][i]["from"].dump();
          const bool none = advice["dose"].is_null() || advice["dose"]["units"] == 0;
          EXPECT_EQ(cell["dose"], none ? Json{} : advice["dose"]["text"]) << place;
          EXPECT_EQ(cell["outcome"], advice["outcome"]) << place;
          EXPECT_EQ(cell["call"], advice["call"]) << place;
          const int grams = cell["grams"].is_null() ? 0 : std::stoi(cell["grams"].get<std::string>());
          EXPECT_GE(grams, advice["carbohydrateGrams"].get<int>()) << place;
          ++compared;
        }
      for (const Json& row : span["rows"]) {
        const Json advice = asked::advise(plan, nothing, situation(plan, row, {{"key", "noStrips"}}, clock_of(minute)));
        const std::string place = clock_of(minute) + " " + row["glucose"].dump() + " no strips";
        const Json& cell = row["noStrips"];
        EXPECT_EQ(cell["dose"], advice["dose"].is_null() ? Json{} : advice["dose"]["text"]) << place;
        EXPECT_EQ(cell["outcome"], advice["outcome"]) << place;
        EXPECT_EQ(cell["call"], advice["call"]) << place;
        EXPECT_GE(cell["grams"].is_null() ? 0 : std::stoi(cell["grams"].get<std::string>()), advice["carbohydrateGrams"].get<int>()) << place;
      }
    }
  }
  EXPECT_GE(compared, 24u * 5 * 10);
}

TEST(Card, EveryCellOfTheAdultsCardIsWhatAdviseAnswersAtEveryHour) { every_cell_is_what_advise_answers(asked::plan_of("adult")); }
TEST(Card, EveryCellOfTheChildsCardIsWhatAdviseAnswersAtEveryHour) { every_cell_is_what_advise_answers(asked::plan_of("child")); }
TEST(Card, EveryCellWhilePregnantIsWhatAdviseAnswersAtEveryHour) {
  every_cell_is_what_advise_answers(changed("adult", {{"/person/pregnant", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.05}}}}));
}

// The grams are the most that advise says within the hours of the table, and no more.
TEST(Card, TheFoodIsWhatTheHungriestHourAsksFor) {
  for (const char* base : {"adult", "child"}) {
    const Json plan = asked::plan_of(base), card = card_of(plan);
    for (const Json& span : card["spans"])
      for (const Json& row : span["rows"])
        for (std::size_t i = 0; i < card["columns"].size(); ++i) {
          int most = 0;
          for (const int minute : minutes_to_look_at(plan))
            if (covers(span, minute))
              most = std::max(most, asked::advise(plan, nothing, situation(plan, row, card["columns"][i], clock_of(minute)))["carbohydrateGrams"].get<int>());
          EXPECT_EQ(row["cells"][i]["grams"].is_null() ? "0" : row["cells"][i]["grams"].get<std::string>(), std::to_string(most));
        }
  }
}

// One table as a list: each row's glucose, and a column's cells.
std::string column(const Json& card, std::size_t span, std::size_t column) {
  std::string out;
  for (const Json& row : card["spans"][span]["rows"]) {
    const Json& cell = row["cells"][column];
    std::string dose = cell["dose"].is_null() ? cell["outcome"].get<std::string>() : cell["dose"].get<std::string>();
    if (const auto at = dose.find("\u00a0units"); at != std::string::npos) dose.erase(at);
    out += (out.empty() ? "" : " ") + dose + (cell["grams"].is_null() ? "" : "+" + cell["grams"].get<std::string>());
  }
  return out;
}

// Worked by hand from the demo plan. Night: (G - 7.0) / 2.5, extras 5 % of 46 = 2.3, 10 % = 4.6, on the way 20 % = 9.2; down to 1 unit.
// Ketones 1.5, 5.6: 2 units are (2 - (-0.56)) x 12 = 30.7, up to 35 g. 8.0: (2 - 0.4) x 12 = 19.2, 20 g.
// Day: (G - 6.0) / 2.2; 5.6: (2 + 0.18) x 11 = 24, 25 g; 8.0: (2 - 0.909) x 11 = 12, 15 g.
TEST(Card, TheAdultsTablesAsWorkedByHand) {
  const Json card = card_of(asked::plan_of("adult"));
  ASSERT_EQ(card["spans"].size(), 2u);
  EXPECT_EQ(card["spans"][0]["from"], "07:00");
  EXPECT_EQ(card["spans"][0]["to"], "22:00");
  EXPECT_EQ(card["spans"][1]["from"], "22:00");
  EXPECT_EQ(card["spans"][1]["to"], "07:00");
  EXPECT_EQ(column(card, 0, 1), "treatLow+15 eat+20 eat+20 eat+20 eat+20 2+5 2 4 4 5 6 6");
  EXPECT_EQ(column(card, 1, 1), "treatLow+15 eat+20 eat+20 eat+20 eat+20 2+10 2 4 4 4 5 6");
  EXPECT_EQ(column(card, 1, 2), "treatLow+15 eat+20 2+35 2+30 2+20 4+35 4+25 4 4 4 5 6");
  EXPECT_EQ(column(card, 1, 3), "emergency+15 emergency emergency emergency emergency emergency emergency 9 9 9 9 9");
  EXPECT_EQ(column(card, 1, 4), "treatLow+15 lookAgain lookAgain lookAgain lookAgain lookAgain lookAgain testKetones testKetones testKetones testKetones testKetones");
}

TEST(Card, TheLastKetoneRowAlwaysGoesAndNothingUntestedHasADose) {
  for (const char* base : {"adult", "child", "example"}) {
    const Json card = card_of(asked::plan_of(base));
    for (const Json& span : card["spans"]) {
      EXPECT_EQ(span["calls"][3], "emergency");
      for (const Json& row : span["rows"]) {
        EXPECT_EQ(row["cells"][3]["outcome"], "emergency");
        EXPECT_TRUE(row["cells"].back()["dose"].is_null());
      }
    }
  }
}

TEST(Card, OneTableWhereTheDayHasOneSetting) {
  const Json card = card_of(asked::plan_of("example"));
  ASSERT_EQ(card["spans"].size(), 1u);
  EXPECT_EQ(card["spans"][0]["allDay"], true);
}

TEST(Card, ThreeDifferentTimesAreThreeTables) {
  const Json factors = Json::parse(R"([{"from":"00:00","value":2.5},{"from":"07:00","value":2.0},{"from":"18:00","value":3.2}])");
  const Json plan = changed("example", {{"/day/correctionFactor", factors}});
  const Json card = card_of(plan);
  ASSERT_EQ(card["spans"].size(), 3u);
  EXPECT_EQ(card["spans"][0]["from"], "07:00");
  EXPECT_EQ(card["spans"][2]["to"], "07:00");
  every_cell_is_what_advise_answers(plan);
}

TEST(Card, AnEqualRowSaysSo) {
  const Json rows = card_of(asked::plan_of("adult"))["spans"][1]["rows"];
  std::string like;
  for (const Json& row : rows) like += row["like"].get<bool>() ? '=' : '.';
  EXPECT_EQ(like, "........==..");  // at night 16.0 and 18.0 say what 14.0 says
}

// What a small table may leave out: the food of the row above is no less, so a reading of the left-out row is answered with no
// other dose, and never with less to eat.
TEST(Card, ARowThatMayBeLeftOutChangesNoDoseAndNeverEatsLess) {
  for (const char* base : {"adult", "child", "example"}) {
    int left_out = 0;
    const Json card = card_of(asked::plan_of(base));
    for (const Json& span : card["spans"]) {
      const Json* kept = nullptr;
      for (const Json& row : span["rows"]) {
        if (!row["spare"].get<bool>()) { kept = &row; continue; }
        ++left_out;
        for (std::size_t i = 0; i < row["cells"].size(); ++i) {
          const auto grams = [i](const Json& of) { return of["cells"][i]["grams"].is_null() ? 0 : std::stoi(of["cells"][i]["grams"].get<std::string>()); };
          for (const char* key : {"dose", "outcome", "call"}) EXPECT_EQ(row["cells"][i][key], (*kept)["cells"][i][key]) << base << row["glucose"];
          EXPECT_LE(grams(row), grams(*kept)) << base << row["glucose"];
        }
      }
    }
    EXPECT_GT(left_out, 0) << base;
  }
}

std::string keys(const Json& lines) {
  std::string out;
  for (const Json& line : lines) out += (out.empty() ? "" : " ") + line["key"].get<std::string>();
  return out;
}
Json slots(const Json& lines, const std::string& key) {
  for (const Json& line : lines)
    if (line["key"] == key) return line["slots"];
  return nullptr;
}

TEST(Card, TheHeadNamesTheHoursUntilNothingActs) {
  // The hold is 4 hours; lispro acts 4.5. A longer hold wins.
  EXPECT_EQ(card_of(asked::plan_of("adult"))["head"][0]["slots"]["hours"], "4.5");
  EXPECT_EQ(card_of(changed("adult", {{"/limits/lockHours", 5}}))["head"][0]["slots"]["hours"], "5");
  EXPECT_EQ(card_of(changed("adult", {{"/decimalMark", ","}}))["head"][0]["slots"]["hours"], "4,5");
}

TEST(Card, StepsFollowThePump) {
  EXPECT_EQ(keys(card_of(asked::plan_of("adult"))["steps"]), "card-step-inject card-step-change card-step-off-body card-step-join card-step-automation");
  EXPECT_EQ(keys(card_of(asked::plan_of("child"))["steps"]), "card-step-inject card-step-change-tubeless card-step-automation");
  EXPECT_EQ(keys(card_of(changed("child", {{"/pump/automation", "none"}}))["steps"]), "card-step-inject card-step-change-tubeless");
  EXPECT_EQ(keys(card_of(changed("adult", {{"/squaring/ways", {"paused"}}, {"/squaring/preferred", "paused"}}))["steps"]), "card-step-inject card-step-change card-step-automation");
}

// The adult's plan without its last row: what it says from 1.5 up holds to the end.
Json three_rows() {
  Json rows = asked::plan_of("adult")["ketones"]["rows"];
  rows.erase(3);
  rows[2]["urine"].push_back("large");
  return changed("adult", {{"/ketones/rows", rows}});
}

TEST(Card, APlanWhoseRowsEndBelowThreeStillHasAColumnThatGoes) {
  const Json plan = three_rows(), card = card_of(plan);
  ASSERT_EQ(card["columns"].size(), 5u);
  EXPECT_EQ(card["columns"][2]["to"], "2.9");
  EXPECT_EQ(card["columns"][3]["from"], "3.0");
  EXPECT_EQ(card["spans"][0]["calls"][3], "emergency");
  every_cell_is_what_advise_answers(plan);
}

// Columns by the words that head them.
std::string strips(const Json& card) {
  std::string out;
  for (const Json& column : card["columns"]) {
    if (column["key"] == "notTested") continue;
    out += (out.empty() ? "" : " | ") + column["from"].get<std::string>();
    for (const Json& word : column["urine"]) out += " " + word.get<std::string>();
  }
  return out;
}

TEST(Card, TheStripsStrongestWordHeadsTheColumnFromThree) {
  EXPECT_EQ(strips(card_of(asked::plan_of("adult"))), "0.0 negative trace | 0.6 small | 1.5 moderate | 3.0 large");
  EXPECT_EQ(strips(card_of(three_rows())), "0.0 negative trace | 0.6 small | 1.5 moderate | 3.0 large");
  // A row of its own from 3.0, and the word in the row before it: `advise` reads it as 3.0 all the same.
  Json rows = asked::plan_of("adult")["ketones"]["rows"];
  rows[3]["urine"] = Json::array();
  rows[2]["urine"].push_back("large");
  const Json plan = changed("adult", {{"/ketones/rows", rows}});
  EXPECT_EQ(strips(card_of(plan)), "0.0 negative trace | 0.6 small | 1.5 moderate | 3.0 large");
  EXPECT_EQ(asked::advise(plan, nothing, asked::at(16.0, "large"))["outcome"], "emergency");
  // The desk's table has the same heads.
  const Json review = Json::parse(ask("reviewPlan", Json{{"plan", plan}}.dump()));
  EXPECT_EQ(strips(review["table"]["day"]), "0.0 negative trace | 0.6 small | 1.5 moderate | 3.0 large");
  // A plan that reads no strip has no words.
  for (Json& row : rows) row.erase("urine");
  EXPECT_EQ(strips(card_of(changed("adult", {{"/ketones/rows", rows}}))), "0.0 | 0.6 | 1.5 | 3.0");
}

TEST(Card, WhoTestsWithStripsIsToldToCallByTheirWords) {
  const Json card = card_of(changed("adult", {{"/ketones/test", "urine"}}));
  EXPECT_EQ(card["test"], "urine");
  EXPECT_EQ(slots(card["calls"], "card-call-team-strip"), Json({{"strip", "moderate"}}));
  EXPECT_EQ(slots(card["calls"], "card-call-emergency-strip"), Json({{"strip", "large"}, {"number", "112"}}));
  EXPECT_EQ(keys(card["calls"]).find("-from"), std::string::npos);
  EXPECT_EQ(card_of(asked::plan_of("adult"))["test"], "blood");
  EXPECT_EQ(keys(card_of(asked::plan_of("adult"))["calls"]).find("-strip"), std::string::npos);
}

// Worked by hand, as above: by day (G - 6.0) / 2.2, by night (G - 7.0) / 2.5, down to 1 unit; HI gives 14 % of 46 = 6.44.
TEST(Card, WithoutStripsTheDosesAreTheCorrection) {
  const Json card = card_of(asked::plan_of("adult"));
  const auto doses = [&](std::size_t span) {
    std::string out;
    for (const Json& row : card["spans"][span]["rows"]) {
      const Json& cell = row["noStrips"];
      std::string dose = cell["dose"].is_null() ? cell["outcome"].get<std::string>() : cell["dose"].get<std::string>();
      if (const auto at = dose.find("\u00a0units"); at != std::string::npos) dose.erase(at);
      out += (out.empty() ? "" : " ") + dose + (cell["call"] == "none" ? "" : "!") + (cell["like"].get<bool>() ? "=" : "");
    }
    return out;
  };
  EXPECT_EQ(doses(0), "treatLow lookAgain lookAgain= lookAgain= lookAgain= lookAgain= lookAgain= 3 4 5 6 6!");
  EXPECT_EQ(doses(1), "treatLow lookAgain lookAgain= lookAgain= lookAgain= lookAgain= lookAgain= 2 3 4 5 6!");
  EXPECT_EQ(keys(card["noStrips"]), "card-no-strips-get card-no-strips-change card-no-strips-look card-no-strips-unwell");
  EXPECT_EQ(slots(card["noStrips"], "card-no-strips-look")["minutes"], "60");
  EXPECT_EQ(keys(card_of(asked::plan_of("child"))["noStrips"]),
            "card-no-strips-get card-no-strips-change-tubeless card-no-strips-look card-no-strips-unwell");
}

// The lines beside those doses are what `advise` says with them.
TEST(Card, WhatStandsBesideADoseWithoutStripsIsWhatAdviseSays) {
  const Json plan = asked::plan_of("adult"), answer = asked::advise(plan, nothing, asked::at(16.0, "noStrips"));
  EXPECT_EQ(asked::steps(answer), "inject changeSet offBody joinTubing setAlarm getStrips");
  EXPECT_EQ(answer["looks"][0]["clock"], "04:10");
  Json unwell = asked::at(16.0, "noStrips");
  unwell["unwell"] = true;
  EXPECT_EQ(asked::advise(plan, nothing, unwell)["call"], "team");
  // Pregnant and not high: the team, and no dose.
  const Json risk = card_of(changed("adult", {{"/person/pregnant", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.05}}}}));
  EXPECT_EQ(risk["spans"][0]["rows"][4]["noStrips"]["outcome"], "callTeam");
}

TEST(Card, EveryOneOfTheTeamIsNamedAndNobodyStandsInForThem) {
  const auto calls = [](const Json& card) {
    std::string out;
    for (const Json& line : card["stranger"])
      if (line["key"] == "stranger-call") out += line["slots"]["name"].get<std::string>() + ";";
    return out;
  };
  const Json day{{"name", "Clinic"}, {"relation", "team"}, {"phone", "+44 0000 000009"}, {"when", "Mon-Fri 08:00-16:30"}};
  const Json night = asked::plan_of("adult")["contacts"][0], home = asked::plan_of("adult")["contacts"][1];
  EXPECT_EQ(calls(card_of(changed("adult", {{"/contacts", {day, home, night}}}))), "Clinic;Diabetes night line;");
  EXPECT_EQ(calls(card_of(changed("adult", {{"/contacts", {home}}}))), "");
}

TEST(Card, CallsRiseAndAlwaysEndAtTheAmbulance) {
  const Json calls = card_of(asked::plan_of("adult"))["calls"];
  EXPECT_EQ(slots(calls, "card-call-team-from")["ketones"], "1.5");
  EXPECT_EQ(slots(calls, "card-call-emergency-from")["ketones"], "3.0");
  EXPECT_EQ(slots(calls, "card-call-emergency-from")["number"], "112");
  // A plan whose last row is written as a call to the team still goes at 3.0, and so does one whose rows end below it.
  EXPECT_EQ(slots(card_of(changed("adult", {{"/ketones/rows/3/call", "team"}}))["calls"], "card-call-emergency-from")["ketones"], "3.0");
  EXPECT_EQ(slots(card_of(three_rows())["calls"], "card-call-emergency-from")["ketones"], "3.0");
  // Pregnant: the team at the first ketones that act.
  EXPECT_EQ(slots(card_of(changed("adult", {{"/person/pregnant", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.05}}}}))["calls"], "card-call-team-from")["ketones"], "0.6");
}

std::string long_acting(const Json& changes) {
  const Json lines = card_of(changed("example", changes))["offPump"];
  for (const char* key : {"card-long-acting", "card-long-acting-parts"})
    if (const Json found = slots(lines, key); !found.is_null()) return std::string{key} + " " + found["dose"].get<std::string>();
  return keys(lines);
}
Json basal(const std::string& text) { return Json::parse(text); }

// Published and hand-worked days of basal: CV-22 (24.0 units), CV-23 (20 x 1.2 in two parts of 12), CV-24 (25.8 x 1.1 = 28.38).
TEST(Card, LongActingIsTheBasalOfADay) {
  const Json cv22 = basal(R"([{"from":"00:00","value":0.5},{"from":"04:00","value":1.5},{"from":"08:00","value":1.0}])");
  EXPECT_EQ(long_acting({{"/day/basal", cv22}}), "card-long-acting 24\u00a0units");
  const Json twenty = basal(R"([{"from":"00:00","value":0.85},{"from":"12:00","value":0.81},{"from":"16:00","value":0.82},{"from":"20:00","value":0.82}])");
  // 0.85 x 12 + 0.81 x 4 + 0.82 x 8 = 10.2 + 3.24 + 6.56 = 20.00
  EXPECT_EQ(long_acting({{"/day/basal", twenty}, {"/offPump/longActingFactor", 1.2}, {"/offPump/parts", 2}}), "card-long-acting-parts 12\u00a0units");
  const Json cv24 = basal(R"([{"from":"00:00","value":0.8},{"from":"06:00","value":1.2},{"from":"22:00","value":0.9}])");
  EXPECT_EQ(long_acting({{"/day/basal", cv24}, {"/offPump/longActingFactor", 1.1}}), "card-long-acting 28\u00a0units");
  EXPECT_EQ(long_acting({{"/day/basal", cv24}, {"/offPump/longActingFactor", 1.2}, {"/rounding", "nearest"}}), "card-long-acting 31\u00a0units");
  // More than the syringe holds, or no such insulin: ask, and no number.
  EXPECT_EQ(long_acting({{"/day/basal", basal(R"([{"from":"00:00","value":2.2}])")}}), "card-long-acting-ask card-off-pump-bridge card-off-pump-call");
  EXPECT_EQ(long_acting({{"/longActing", nullptr}}), "card-long-acting-ask card-off-pump-bridge card-off-pump-call");
}

// Hazard: the pump works again, and its basal runs beside long-acting insulin, for whoever has only the card. Rules section 6: back after
// the long-acting's hold, which is its own hours of action.
TEST(Card, APumpThatWorksAgainWaitsForLongActingInsulin) {
  const auto back = [](const Json& changes) { return slots(card_of(changed("example", changes))["offPump"], "card-off-pump-back"); };
  EXPECT_EQ(back(Json::object()), Json({{"hours", "24"}, {"insulin", "glargine"}}));
  EXPECT_EQ(back({{"/longActing/actionHours", 42}})["hours"], "42");
  EXPECT_TRUE(back({{"/longActing", nullptr}}).is_null());
}

// Adult, 14 days: 2 x 14 x 46 = 1288 units, 2 vials or 5 pens; basal 3.2 + 3.8 + 13.6 = 20.6 a day, 576.8 units, 2 pens; a set each 3 days, 5 for 14 days, twice.
TEST(Card, AKitIsTwiceWhatIsUsed) {
  const Json kits = card_of(asked::plan_of("adult"))["kits"];
  ASSERT_EQ(kits.size(), 4u);
  EXPECT_EQ(kits[2], Json::parse(R"({"days":"14","rapidVials":"2","rapidPens":"5","longPens":"2","sets":"10"})"));
  EXPECT_EQ(kits[0], Json::parse(R"({"days":"3","rapidVials":"1","rapidPens":"1","longPens":"1","sets":"2"})"));
  EXPECT_TRUE(card_of(changed("adult", {{"/longActing", nullptr}}))["kits"][0]["longPens"].is_null());
}

TEST(Card, TheStrangersSideAbroadNamesNoNumberThatMayRingNowhere) {
  const Json card = card_of(asked::plan_of("adult"), "a4", {"ar", "es"});
  EXPECT_EQ(card["abroad"]["languages"], Json::parse(R"(["ar","es"])"));
  EXPECT_TRUE(slots(card["abroad"]["lines"], "stranger-unwell-number").is_null());
  EXPECT_EQ(slots(card["stranger"], "stranger-unwell-number")["number"], "112");
  EXPECT_EQ(slots(card["abroad"]["lines"], "stranger-call")["phone"], "+44 0000 000001");
}

TEST(Card, FrontSizesAndFingerprint) {
  const Json plan = asked::plan_of("adult"), card = card_of(plan, "letter");
  EXPECT_EQ(card["front"]["name"], "Maren Oduya");
  EXPECT_EQ(card["front"]["revision"], "2");
  EXPECT_EQ(card["front"]["agreedOn"], "2026-10-12");
  EXPECT_EQ(card["front"]["reviewBy"], "2027-04-12");
  EXPECT_EQ(card["front"]["lastDay"], "2027-05-12");  // 30 days of grace
  EXPECT_EQ(card["front"]["fingerprint"], asked::advise(plan, nothing, asked::at(16.0, 0.8))["planFingerprint"]);
  EXPECT_EQ(card["paper"]["width"], "215.9");
  EXPECT_EQ(card["paper"]["height"], "279.4");
  EXPECT_EQ(card["paper"]["cardHeight"], "107.96");
}

TEST(Card, APlanNobodyMayActOnIsNotPrinted) {
  for (const char* status : {"draft", "withdrawn", "superseded"})
    EXPECT_EQ(refusal(card_of(changed("adult", {{"/agreement/status", status}}))), "/plan/agreement/status contradiction") << status;
  EXPECT_EQ(refusal(card_of(asked::plan_of("adult"))), "none");
}

TEST(Card, OtherPapersAndLanguagesAreRefused) {
  const Json plan = asked::plan_of("adult");
  EXPECT_EQ(refusal(card_of(plan, "a5")), "/paper outOfRange");
  EXPECT_EQ(refusal(card_of(plan, "a4", {"es", "tlh"})), "/languages/1 outOfRange");
  EXPECT_EQ(refusal(card_of(plan, "a4", {"es", "es"})), "/languages/1 contradiction");
  EXPECT_EQ(refusal(Json::parse(ask("card", Json{{"plan", plan}, {"paper", "a4"}}.dump()))), "/languages missing");
  EXPECT_EQ(refusal(Json::parse(ask("card", Json{{"plan", plan}, {"paper", "a4"}, {"languages", Json::array()}, {"now", asked::night}}.dump()))), "/now unknownKey");
}

}  // namespace
}  // namespace stopgap
