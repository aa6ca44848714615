// A folder a rule and a gate, a file a case: what differs from a base plan, an empty record and the night of 03:10, and what
// the whole answer must be, worked from the text of the rules. In a case an event may say how many minutes `ago` it was; a
// reading may be a plain number (finger, blood, the plan's unit). See tests/cases/README.md.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
namespace fs = std::filesystem;

// A lost file must not go unnoticed: whoever adds a case changes this number.
constexpr std::size_t cases_in_all = 383;

// In the order of the rules, then the gates.
constexpr std::array<const char*, 27> folders{
    "LWE", "EMR", "TOO", "LOW", "FAL", "PLN", "FNG", "TST", "NOS", "CAL", "ANY", "DWN", "KET", "EAT",
    "INJ", "WAI", "PMP", "SGN", "OFF", "CHG", "END", "NON", "REC", "CLK", "ASK", "HLD", "SCH"};

std::vector<fs::path> files_of(const std::string& folder) {
  std::vector<fs::path> files;
  const fs::path place = fs::path{STOPGAP_TESTS_DIR} / "cases" / folder;
  if (!fs::is_directory(place)) return files;
  for (const auto& entry : fs::directory_iterator(place))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::string with_common_space(std::string text) {
  for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0")) text.replace(at, 2, " ");
  return text;
}

// "inject: device syringe, dose 4 units, insulin aspart"
std::string step_text(const Json& step) {
  std::string text = step.at("id");
  for (const auto& [name, value] : step.at("slots").items())
    text += (text.find(':') == std::string::npos ? ": " : ", ") + name + " " + value.get<std::string>();
  return with_common_space(text);
}

// "04:10 glucose ketones"
std::string look_text(const Json& look) {
  std::string text = look.at("clock");
  for (const Json& what : look.at("what")) text += " " + what.get<std::string>();
  return text;
}

Json in_order(Json list) {
  std::sort(list.begin(), list.end());
  return list;
}

// The whole answer in the words of a case.
Json whole(const Json& answer) {
  Json told;
  for (const char* key : {"outcome", "decidedBy", "gate", "call", "callFirst", "incident"}) told[key] = answer.at(key);
  const Json& dose = answer.at("dose");
  told["dose"] = dose.is_null() ? Json() : Json(with_common_space(dose.at("text")));
  told["parts"] = dose.is_null() ? Json() : dose.at("parts");
  told["grams"] = answer.at("carbohydrateGrams");
  const Json& given = answer.at("given");
  told["given"] = given.is_null() ? Json() : Json{{"units", given.at("units")}, {"minutesAgo", given.at("minutesAgo")}};
  told["steps"] = told["looks"] = told["cautions"] = Json::array();
  told["holds"] = Json::object();
  for (const Json& step : answer.at("steps")) told["steps"].push_back(step_text(step));
  for (const Json& hold : answer.at("holds")) told["holds"][hold.at("what").get<std::string>()] = hold.at("clock");
  for (const Json& look : answer.at("looks")) told["looks"].push_back(look_text(look));
  told["cautions"] = in_order(answer.at("cautions"));
  return told;
}

void expect_whole(const Json& answer, Json expect) {
  if (expect.contains("working")) {
    EXPECT_EQ(answer.at("dose").at("working"), expect["working"]);
    expect.erase("working");
  }
  if (expect.contains("cautions")) expect["cautions"] = in_order(expect["cautions"]);
  const Json told = whole(answer);
  for (const auto& [key, value] : told.items()) EXPECT_EQ(value, expect.value(key, Json("not stated"))) << key;
  for (const auto& [key, value] : expect.items())
    EXPECT_TRUE(told.contains(key)) << "A case may not expect the key " << key << '.';
}

Json answer_to(const Json& given) {
  Json plan = asked::plan_of(given.at("base"));
  asked::change(plan, given.value("plan", Json::object()));
  return asked::advise(plan, given.value("record", Json::array()), given.at("situation"));
}

class Case : public testing::TestWithParam<const char*> {};

TEST_P(Case, IsAnsweredAsStated) {
  for (const fs::path& path : files_of(GetParam())) {
    const Json given = Json::parse(asked::file_text(path.string()));
    SCOPED_TRACE(path.filename().string() + ": " + given.at("why").get<std::string>());
    const Json& expect = given.at("expect");
    const Json answer = answer_to(given);
    ASSERT_FALSE(answer.contains("refused")) << answer;
    expect_whole(answer, expect);
  }
}

TEST_P(Case, ComesInThreesAndIsDecidedByItsRule) {
  const std::string id = GetParam();
  const std::vector<fs::path> files = files_of(id);
  EXPECT_GE(files.size(), 3U);
  bool decides = false;
  for (const fs::path& path : files) {
    const Json expect = Json::parse(asked::file_text(path.string())).at("expect");
    decides = decides || expect.value("decidedBy", "") == id || asked::word(expect, "gate") == id;
  }
  EXPECT_TRUE(decides) << "No case shows " << id << " deciding.";
}

INSTANTIATE_TEST_SUITE_P(Rule, Case, testing::ValuesIn(folders), [](const auto& one) { return std::string{one.param}; });

TEST(Cases, NoneIsLost) {
  std::size_t count = 0;
  for (const char* folder : folders) count += files_of(folder).size();
  EXPECT_EQ(count, cases_in_all);
}

}  // namespace
}  // namespace stopgap
