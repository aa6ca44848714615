// A folder a rule and a gate, a file a case: what differs from a base plan, an empty record and the night of 03:10, and what
// the advice must hold, worked by hand from the rules. In a case an event may say how many minutes `ago` it was; a reading may
// be a plain number (finger, blood, the plan's unit). See tests/cases/README.md.
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
constexpr std::size_t cases_in_all = 260;

// In the order of the rules, then the gates.
constexpr std::array<const char*, 26> folders{"LWE", "EMR", "TOO", "LOW", "FAL", "PLN", "FNG", "TST", "NOS", "CAL", "ANY", "DWN", "KET",
                                              "EAT", "INJ", "WAI", "PMP", "SGN", "OFF", "CHG", "END", "NON", "CLK", "ASK", "HLD", "SCH"};

std::vector<fs::path> files_of(const std::string& folder) {
  std::vector<fs::path> files;
  const fs::path place = fs::path{STOPGAP_TESTS_DIR} / "cases" / folder;
  if (!fs::is_directory(place)) return files;
  for (const auto& entry : fs::directory_iterator(place))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

// A word, or null as "none".
std::string wanted_word(const Json& value) { return value.is_null() ? "none" : value.is_string() ? value.get<std::string>() : value.dump(); }

void expect_one(const Json& answer, const std::string& key, const Json& wanted) {
  if (key == "outcome" || key == "decidedBy" || key == "gate" || key == "call" || key == "incident" || key == "callFirst") {
    EXPECT_EQ(asked::word(answer, key), wanted_word(wanted)) << key;
  } else if (key == "dose") {
    EXPECT_EQ(asked::dose(answer), wanted_word(wanted)) << key;
  } else if (key == "parts") {
    for (const auto& [part, units] : wanted.items()) EXPECT_EQ(answer.at("dose").at("parts").at(part), units) << part;
  } else if (key == "working") {
    for (const auto& [line, text] : wanted.items()) EXPECT_EQ(answer.at("dose").at("working").at(line), text) << line;
  } else if (key == "grams") {
    EXPECT_EQ(answer.at("carbohydrateGrams"), wanted) << key;
  } else if (key == "given") {
    EXPECT_EQ(answer.at("given").is_null() ? Json("none") : answer.at("given").at("units"), wanted) << key;
  } else if (key == "steps") {
    for (const Json& id : wanted) EXPECT_TRUE(asked::has_step(answer, id)) << id << " is not in: " << asked::steps(answer);
  } else if (key == "notSteps") {
    for (const Json& id : wanted) EXPECT_FALSE(asked::has_step(answer, id)) << id << " is in: " << asked::steps(answer);
  } else if (key == "looks") {
    for (const Json& clock : wanted) EXPECT_TRUE(asked::has_look(answer, clock)) << clock << " is not in: " << asked::looks(answer);
  } else if (key == "firstLook") {
    EXPECT_EQ(answer.at("looks").at(0).at("clock"), wanted) << key;
  } else if (key == "holds") {
    for (const auto& [what, clock] : wanted.items()) EXPECT_EQ(asked::hold_clock(answer, what), wanted_word(clock)) << what;
  } else if (key == "cautions") {
    for (const Json& one : wanted) EXPECT_TRUE(asked::has_caution(answer, one)) << one << " is not in: " << answer.at("cautions");
  } else if (key == "notCautions") {
    for (const Json& one : wanted) EXPECT_FALSE(asked::has_caution(answer, one)) << one << " is in: " << answer.at("cautions");
  } else {
    ADD_FAILURE() << "A case may not expect the key " << key << '.';
  }
}

Json answer_to(const Json& given) {
  Json plan = asked::plan_of(given.at("base"));
  asked::change(plan, given.value("plan", Json::object()));
  return asked::advise(plan, given.value("record", Json::array()), given.at("situation"));
}

class Case : public testing::TestWithParam<const char*> {};

TEST_P(Case, HoldsWhatWasWorkedByHand) {
  for (const fs::path& path : files_of(GetParam())) {
    const Json given = Json::parse(asked::file_text(path.string()));
    SCOPED_TRACE(path.filename().string() + ": " + given.at("why").get<std::string>());
    const Json& expect = given.at("expect");
    ASSERT_TRUE(expect.contains("outcome") && expect.contains("decidedBy")) << "A case says which rule decides and to what.";
    const Json answer = answer_to(given);
    ASSERT_FALSE(answer.contains("refused")) << answer;
    for (const auto& [key, wanted] : expect.items()) expect_one(answer, key, wanted);
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
