// Two plans told apart: every value that differs, in the order of the plan format, and nothing else.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;

Json compare(const Json& before, const Json& after) { return Json::parse(ask("comparePlans", Json{{"before", before}, {"after", after}}.dump())); }

// "changed /plan/dailyTotal 40 > 42", one a line; a missing side is a dash.
std::string told(const Json& answer) {
  std::string out;
  const auto side = [](const Json& text) { return text.is_null() ? std::string{"-"} : text.get<std::string>(); };
  for (const Json& change : answer.at("changes"))
    out += change.at("kind").get<std::string>() + " " + change.at("path").get<std::string>() + " " + side(change.at("before")) + " > " + side(change.at("after")) + "\n";
  return out;
}
std::string told(const Json& changes, const Json& also_before) { return told(compare(asked::example_with(also_before), asked::example_with(changes))); }

TEST(Compare, APlanDoesNotDifferFromItself) {
  const Json plan = asked::plan_of("child"), answer = compare(plan, plan);
  EXPECT_EQ(told(answer), "");
  EXPECT_EQ(answer["fingerprints"]["before"], answer["fingerprints"]["after"]);
}

TEST(Compare, BlanksOrderOfKeysAndNeedlessZerosAreNoChange) {
  std::string text = asked::plan_of("example").dump();  // keys sorted, no blanks
  text.replace(text.find("\"dailyTotal\":40.0"), 17, "\"dailyTotal\":40");
  const std::string request = "{\"before\":" + asked::file_text(std::string{STOPGAP_TESTS_DIR} + "/cases/example_plan.json") + ",\"after\":" + text + "}";
  const Json answer = Json::parse(ask("comparePlans", request));
  EXPECT_EQ(told(answer), "");
  EXPECT_EQ(answer["fingerprints"]["before"], answer["fingerprints"]["after"]);
}

TEST(Compare, AValueIsToldWithBothTexts) {
  EXPECT_EQ(told({{"/dailyTotal", 42.5}}, Json::object()), "changed /plan/dailyTotal 40 > 42.5\n");
  EXPECT_EQ(told({{"/title", "Winter"}}, Json::object()), "changed /plan/title Ferry weeks > Winter\n");
  EXPECT_EQ(told({{"/person/pregnant", true}, {"/ketones/anyGlucose", "none"}}, {{"/ketones/anyGlucose", "none"}}), "changed /plan/person/pregnant false > true\n");
}

TEST(Compare, TheFingerprintsAreThoseOfThePlans) {
  const Json before = asked::plan_of("example"), after = asked::example_with({{"/dailyTotal", 42.5}});
  const auto fingerprint = [](const Json& plan) { return Json::parse(ask("reviewPlan", Json{{"plan", plan}}.dump())).at("fingerprint"); };
  const Json answer = compare(before, after);
  EXPECT_EQ(answer["fingerprints"]["before"], fingerprint(before));
  EXPECT_EQ(answer["fingerprints"]["after"], fingerprint(after));
  EXPECT_NE(answer["fingerprints"]["before"], answer["fingerprints"]["after"]);
}

// Changed here from the last to the first.
TEST(Compare, ChangesStandInTheOrderOfThePlan) {
  EXPECT_EQ(told({{"/emergencyNumber", "999"}, {"/low/grams", 20}, {"/limits/lockHours", 3.5}, {"/limits/singleDose", 9}, {"/ketones/rows/2/call", "emergency"},
                  {"/ketones/rows/1/repeatHours", 3}, {"/high/expectedFall", 2.5}, {"/high/firstLook", 45}, {"/day/target/0/value", 6}, {"/agreement/by", "Dr A. Lind"},
                  {"/revision", 4}},
                 Json::object()),
            "changed /plan/revision 3 > 4\n"
            "changed /plan/agreement/by Dr L. Okonjo > Dr A. Lind\n"
            "changed /plan/day/target/0/value 6.5 > 6\n"
            "changed /plan/high/firstLook 60 > 45\n"
            "changed /plan/high/expectedFall 2 > 2.5\n"
            "changed /plan/ketones/rows/1/repeatHours 2 > 3\n"
            "changed /plan/ketones/rows/2/call team > emergency\n"
            "changed /plan/limits/singleDose 10 > 9\n"
            "changed /plan/limits/lockHours 4 > 3.5\n"
            "changed /plan/low/grams 15 > 20\n"
            "changed /plan/emergencyNumber 112 > 999\n");
}

// Every key of the contract's example, changed to another order, comes out in the order it is printed in.
TEST(Compare, EveryKeyHasItsPlace) {
  const nlohmann::ordered_json printed =
      nlohmann::ordered_json::parse(asked::file_text(std::string{STOPGAP_TESTS_DIR} + "/cases/example_plan.json"));
  std::vector<std::string> leaves;
  const std::function<void(const std::string&, const nlohmann::ordered_json&)> walk = [&](const std::string& path, const nlohmann::ordered_json& node) {
    if (!node.is_structured()) return leaves.push_back(path);
    for (const auto& [key, value] : node.items()) walk(path + "/" + key, value);
  };
  walk("", printed);
  // The longest list of leaves that can change at once: each number a little, each name by a letter.
  Json after = asked::plan_of("example");
  std::string expected;
  for (const std::string& leaf : leaves) {
    const Json::json_pointer place{leaf};
    const Json old = after.at(place);
    Json changed = old;
    if (old.is_string()) changed = old.get<std::string>() + "x";
    else if (old.is_number()) changed = old.get<double>() + (old.is_number_integer() ? 1 : 0.1);
    else continue;
    after[place] = changed;
    const Json answer = compare(asked::plan_of("example"), after);
    if (answer.contains("refused")) after[place] = old;
    else expected += leaf + "\n";
  }
  std::string got;
  const Json answer = compare(asked::plan_of("example"), after);
  for (const Json& change : answer.at("changes")) got += change.at("path").get<std::string>().substr(5) + "\n";
  EXPECT_EQ(got, expected);
  EXPECT_GT(std::count(expected.begin(), expected.end(), '\n'), 50);
}

TEST(Compare, WhatComesAndWhatGoes) {
  EXPECT_EQ(told({{"/pen", nullptr}, {"/low/glucagon", nullptr}}, Json::object()),
            "removed /plan/pen/capacity 60 > -\nremoved /plan/pen/step 1 > -\nremoved /plan/low/glucagon nasal 3 mg > -\n");
  EXPECT_EQ(told({{"/notes", "Eats late."}}, Json::object()), "added /plan/notes - > Eats late.\n");
}

TEST(Compare, ListsGoPlaceByPlace) {
  const Json two = Json::array({{{"from", "00:00"}, {"value", 6.5}}, {{"from", "06:00"}, {"value", 6}}});
  EXPECT_EQ(told({{"/day/target", two}}, Json::object()), "added /plan/day/target/1/from - > 06:00\nadded /plan/day/target/1/value - > 6\n");
  EXPECT_EQ(told(Json::object(), {{"/day/target", two}}), "removed /plan/day/target/1/from 06:00 > -\nremoved /plan/day/target/1/value 6 > -\n");
}

// A cell that changes its kind: all of the old goes, all of the new comes.
TEST(Compare, ACellOfAnotherKind) {
  EXPECT_EQ(told({{"/ketones/hi", {{"perKg", 0.1}}}}, Json::object()),
            "removed /plan/ketones/hi/shareOfDaily 0.1 > -\nadded /plan/ketones/hi/perKg - > 0.1\n");
  EXPECT_EQ(told({{"/ketones/hi", "none"}}, Json::object()), "removed /plan/ketones/hi/shareOfDaily 0.1 > -\nadded /plan/ketones/hi - > none\n");
}

TEST(Compare, AListThatBecomesEmpty) {
  EXPECT_EQ(told({{"/agreement/houseRules", Json::array()}}, {{"/agreement/houseRules", {"rollingShare"}}}),
            "removed /plan/agreement/houseRules/0 rollingShare > -\n");
}

TEST(Compare, BothAreReadStrictly) {
  const Json answer = compare(asked::example_with({{"/dailyTotal", 1}}), asked::example_with({{"/rapid/unitsPerMl", 200}}));
  EXPECT_EQ(answer["refused"][0]["path"], "/before/dailyTotal");
  EXPECT_EQ(answer["refused"][1]["path"], "/after/rapid/unitsPerMl");
  EXPECT_EQ(Json::parse(ask("comparePlans", "{}"))["refused"].size(), 2);
}

TEST(Compare, EachIsAtMost64KiB) {
  Json large = asked::plan_of("example");
  large["notes"] = std::string(70000, 'a');
  const Json answer = compare(asked::plan_of("example"), large);
  EXPECT_EQ(answer["refused"][0]["path"], "/after");
  EXPECT_EQ(answer["refused"][0]["reason"], "tooLarge");
}

}  // namespace
}  // namespace stopgap
