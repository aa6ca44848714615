// Requests for the tests: a plan of tests/plans, an empty record and one high reading at night, changed place by place.
#pragma once
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

namespace stopgap::requests {

inline std::string file(const std::string& path) {
  std::ifstream in(path);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

// "adult" (mmol/L) or "child" (mg/dL).
inline nlohmann::json plan(const std::string& name) {
  return nlohmann::json::parse(file(std::string{STOPGAP_TESTS_DIR} + "/plans/" + name + ".json"));
}

inline nlohmann::json request(const std::string& plan_name) {
  nlohmann::json out;
  out["plan"] = plan(plan_name);
  out["record"] = {{"format", "stopgap.record"}, {"version", 1}, {"planId", out["plan"]["id"]}, {"events", nlohmann::json::array()}};
  out["situation"] = nlohmann::json::parse(
      R"({"now": "2026-11-25T03:10:00+01:00", "glucose": {"value": 16.0, "unit": "mmol/L", "from": "finger"},
          "ketones": {"blood": 0.8}, "signs": [], "seen": []})");
  return out;
}

inline void remove(nlohmann::json& from, const std::string& place) {
  const nlohmann::json::json_pointer pointer{place};
  nlohmann::json& parent = from.at(pointer.parent_pointer());
  if (parent.is_array()) parent.erase(std::stoul(pointer.back()));
  else parent.erase(pointer.back());
}

}  // namespace stopgap::requests
