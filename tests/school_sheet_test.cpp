// The sheet a school acts on: what the orders of the demo child say, a call at each judgement, and the same cells a school is
// answered with on the screen.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
using asked::nothing;

Json sheet_of(const Json& plan) { return Json::parse(ask("schoolSheet", Json{{"plan", plan}, {"paper", "a4"}}.dump())); }
Json child(const Json& changes = Json::object()) {
  Json plan = asked::plan_of("child");
  asked::change(plan, changes);
  return plan;
}
const Json* line(const Json& lines, const std::string& key) {
  for (const Json& one : lines)
    if (one["key"] == key) return &one["slots"];
  return nullptr;
}
std::string keys(const Json& lines) {
  std::string out;
  for (const Json& one : lines) out += (out.empty() ? "" : " ") + one["key"].get<std::string>();
  return out;
}

void every_cell_is_answered(const Json& plan, const Json& sheet, const Json& span, const std::string& clock) {
  SCOPED_TRACE(clock);
  for (const Json& row : span["rows"])
    for (std::size_t i = 0; i < sheet["columns"].size(); ++i) {
      Json situation{{"now", "2026-11-25T" + clock + ":00+01:00"}, {"viewer", "school"}};
      if (row["kind"] == "HI") situation["glucose"] = {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
      else situation["glucose"] = Json::parse(row["glucose"].get<std::string>());
      if (sheet["columns"][i]["key"] == "notTested") situation["ketones"] = "notYet";
      else situation["ketones"] = Json::parse(sheet["columns"][i]["from"].get<std::string>());
      const Json advice = asked::advise(plan, nothing, situation);
      EXPECT_EQ(row["cells"][i]["dose"], advice["dose"].is_null() ? Json{} : advice["dose"]["text"]) << row["glucose"] << i;
      EXPECT_EQ(row["cells"][i]["outcome"], advice["outcome"]) << row["glucose"] << i;
      EXPECT_EQ(row["cells"][i]["callFirst"], advice["callFirst"]) << row["glucose"] << i;
    }
}

TEST(SchoolSheet, EveryCellIsWhatASchoolIsAnswered) {
  const Json plan = child(), sheet = sheet_of(plan);
  every_cell_is_answered(plan, sheet, sheet["spans"][0], "12:10");
}

TEST(SchoolSheet, EveryCellOfEveryTableWhereAFactorChangesInTheSchoolDay) {
  // 80 until eleven, 100 until eight in the evening, 90 by night.
  const Json factors = Json::parse(R"([{"from": "00:00", "value": 90}, {"from": "07:00", "value": 80}, {"from": "11:00", "value": 100}, {"from": "20:00", "value": 90}])");
  const Json plan = child({{"/day/correctionFactor", factors}}), sheet = sheet_of(plan);
  ASSERT_EQ(sheet["spans"].size(), 3u);
  for (const Json& span : sheet["spans"])
    for (const Json& clock : span["settings"]) every_cell_is_answered(plan, sheet, span, clock.get<std::string>());
}

TEST(SchoolSheet, ADoseAboveTheLimitIsCalledForFirst) {
  const Json steps = sheet_of(child())["steps"];
  const Json* call = line(steps, "school-step-call-first");
  ASSERT_TRUE(call);
  EXPECT_EQ((*call)["dose"], "2\u00a0units");
  // Home, as School.CallFirstNamesWhoAndWhere holds it for the screen: paper and screen must not name two people.
  EXPECT_EQ((*call)["name"], "Signe Brandvik, mother");
  EXPECT_EQ((*call)["phone"], "+44 0000 000004");
  EXPECT_LT(keys(steps).find("school-step-call-first"), keys(steps).find("school-step-inject"));
  EXPECT_FALSE(line(sheet_of(child({{"/school/callFirstAbove", nullptr}}))["steps"], "school-step-call-first"));
}

// Without strips there is no cell for a table that is the only dose; where a sum is allowed it is what the screen answers.
TEST(SchoolSheet, WithoutStripsTheSheetSaysWhatASchoolIsAnswered) {
  for (const char* calculation : {"tableOnly", "allowed"}) {
    const Json plan = child({{"/school/calculation", calculation}}), sheet = sheet_of(plan);
    int doses = 0;
    for (const Json& span : sheet["spans"])
      for (const Json& clock : span["settings"])
        for (const Json& row : span["rows"]) {
          Json situation{{"now", "2026-11-25T" + clock.get<std::string>() + ":00+01:00"}, {"viewer", "school"}, {"ketones", "noStrips"}};
          if (row["kind"] == "HI") situation["glucose"] = {{"reading", "HI"}, {"from", "finger"}, {"repeated", true}};
          else situation["glucose"] = Json::parse(row["glucose"].get<std::string>());
          const Json advice = asked::advise(plan, nothing, situation);
          for (const char* key : {"outcome", "call", "callFirst"}) EXPECT_EQ(row["noStrips"][key], advice[key]) << row["glucose"] << key;
          EXPECT_EQ(row["noStrips"]["dose"], advice["dose"].is_null() ? Json{} : advice["dose"]["text"]) << row["glucose"];
          doses += advice["dose"].is_null() ? 0 : 1;
        }
    EXPECT_EQ(doses > 0, std::string{calculation} == "allowed");
  }
}

TEST(SchoolSheet, InDoubtTheTeamIsCalledAndNobodyElseInItsPlace) {
  EXPECT_TRUE(line(sheet_of(child())["steps"], "school-step-no-row"));
  const Json home = child()["contacts"][1];
  const Json steps = sheet_of(child({{"/contacts", {home}}}))["steps"];
  EXPECT_FALSE(line(steps, "school-step-no-row"));
  EXPECT_EQ((*line(steps, "school-step-no-row-number"))["number"], "112");
}

TEST(SchoolSheet, AChildTestedWithStripsIsReadByTheirWords) {
  const Json sheet = sheet_of(child({{"/ketones/test", "urine"}}));
  EXPECT_EQ(sheet["test"], "urine");
  EXPECT_TRUE(line(sheet["steps"], "school-step-test-strip"));
  EXPECT_FALSE(line(sheet["steps"], "school-step-test"));
  EXPECT_EQ((*line(sheet["danger"], "school-danger-strip")), Json({{"strip", "large"}, {"number", "112"}}));
}

TEST(SchoolSheet, HomeIsPhonedBeforeTheFirstCell) {
  const Json steps = sheet_of(child())["steps"];
  EXPECT_EQ((*line(steps, "school-step-home"))["phone"], "+44 0000 000004");
  EXPECT_LT(keys(steps).find("school-step-home "), keys(steps).find("school-step-row"));
}

TEST(SchoolSheet, TheSumIsNamedOnlyWhereOrdersAllowIt) {
  EXPECT_FALSE(line(sheet_of(child())["steps"], "school-step-sum"));
  EXPECT_TRUE(line(sheet_of(child())["orders"], "school-order-table"));
  const Json allowed = sheet_of(child({{"/school/calculation", "allowed"}}));
  EXPECT_TRUE(line(allowed["steps"], "school-step-sum"));
  EXPECT_TRUE(line(allowed["orders"], "school-order-sum"));
}

TEST(SchoolSheet, LowTreatmentComesFirstWithItsAmount) {
  const Json low = sheet_of(child())["low"];
  EXPECT_EQ(low[0]["key"], "school-low-sugar");
  EXPECT_EQ(low[0]["slots"]["glucose"], "70\u00a0mg/dL");
  EXPECT_EQ(low[0]["slots"]["grams"], "10");
  EXPECT_EQ((*line(low, "school-low-recheck"))["minutes"], "15");
  EXPECT_EQ((*line(low, "school-low-glucagon"))["glucagon"], "nasal 3 mg");
}

TEST(SchoolSheet, WhoMayInjectIsWhatTheOrdersSay) {
  const Json orders = sheet_of(child())["orders"];
  EXPECT_EQ((*line(orders, "school-order-inject"))["who"], "School nurse; Trained staff named here");
  EXPECT_EQ((*line(orders, "school-order-expire"))["day"], "2027-01-20");
  EXPECT_EQ((*line(orders, "school-order-most"))["dose"], "5\u00a0units");
  EXPECT_EQ(keys(sheet_of(child({{"/school/storage", nullptr}, {"/school/nurseReviewedOn", nullptr}}))["school"]), "school-field-staff school-field-ask");
}

TEST(SchoolSheet, NoOrdersNoSheet) {
  const Json answer = sheet_of(asked::plan_of("adult"));
  EXPECT_EQ(answer["refused"][0]["path"], "/plan/school");
  EXPECT_EQ(answer["refused"][0]["reason"], "missing");
  EXPECT_EQ(sheet_of(child({{"/agreement/status", "withdrawn"}}))["refused"][0]["path"], "/plan/agreement/status");
}

}  // namespace
}  // namespace stopgap
