// Short ways to ask what the desk asks. A finding is written in one line, as in
//   confirm /plan/limits/lockHours hours=2.75 least=3
// with its slots by name; every one that is seen must also have words that ask for no other slot.
#pragma once
#include <gtest/gtest.h>

#include <regex>
#include "asked.hpp"

namespace stopgap::desk {

using asked::Json;

inline const std::string none = "none";

inline Json review(const Json& plan) { return Json::parse(ask("reviewPlan", Json{{"plan", plan}}.dump())); }

// The plan of the contract, or a demo plan, changed place by place.
inline Json with(const Json& changes, const std::string& base = "example") {
  Json plan = asked::plan_of(base);
  asked::change(plan, changes);
  return plan;
}
inline Json child(const Json& changes) { return with(changes, "child"); }

inline std::string plain(std::string text) {
  for (std::size_t at; (at = text.find("\u00A0")) != std::string::npos;) text.replace(at, 2, " ");
  return text;
}

inline const std::string& words() {
  static const std::string all = asked::file_text(std::string{STOPGAP_TESTS_DIR} + "/../i18n/en.ftl");
  return all;
}

// What the sentence of a finding asks for must be there, or the page refuses to show it.
inline void expect_words(const Json& finding) {
  const std::string id = finding.at("id");
  const std::size_t begin = words().find("\nfinding-" + id + " = "), end = words().find("\n# ", begin + 1);
  ASSERT_NE(begin, std::string::npos) << id << " has no words";
  const std::string message = words().substr(begin, end - begin);
  const std::regex slot{R"(\$(\w+))"};
  for (std::sregex_iterator at{message.begin(), message.end(), slot}, last; at != last; ++at)
    EXPECT_FALSE(finding.at("slots").value((*at)[1].str(), "").empty()) << id << " lacks " << (*at)[1];
}

inline std::string joined(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : "; ") + part;
  return out.empty() ? none : out;
}

// Every finding of this id, in order.
inline std::vector<Json> all(const std::string& id, const Json& plan) {
  const Json answer = review(plan);
  if (!answer.contains("findings")) {
    ADD_FAILURE() << answer.dump();
    return {};
  }
  std::vector<Json> out;
  for (const Json& finding : answer["findings"])
    if (finding.at("id") == id) {
      expect_words(finding);
      out.push_back(finding);
    }
  return out;
}

inline std::string found(const std::string& id, const Json& plan) {
  std::vector<std::string> lines;
  for (const Json& finding : all(id, plan)) {
    std::string line = finding.at("level").get<std::string>() + " " + finding.at("path").get<std::string>();
    for (const auto& [name, value] : finding.at("slots").items()) line += " " + name + "=" + plain(value);
    lines.push_back(line);
  }
  return joined(lines);
}

inline std::string level(const std::string& id, const Json& plan) {
  std::vector<std::string> levels;
  for (const Json& finding : all(id, plan)) levels.push_back(finding.at("level"));
  return joined(levels);
}

// A setting over the day from one value or more: {{"00:00", 2.5}, {"06:00", 2.4}}.
inline Json day(std::initializer_list<std::pair<const char*, double>> entries) {
  Json out = Json::array();
  for (const auto& [from, value] : entries) out.push_back({{"from", from}, {"value", value}});
  return out;
}

inline Json share(double value) { return {{"shareOfDaily", value}}; }

}  // namespace stopgap::desk
