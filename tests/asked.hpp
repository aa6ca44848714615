// Short ways to ask the core what a person asks it, text in and text out: a plan changed place by place, events by how many
// minutes ago they were, readings as plain numbers. Only the door of the core is used, so that both builds run the same tests.
#pragma once
#include <chrono>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

#include "core/ask.hpp"

namespace stopgap::asked {

using Json = nlohmann::json;

inline const std::string night = "2026-11-25T03:10:00+00:00";

inline std::string file_text(const std::string& path) {
  std::ifstream in(path);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

// "example" is the plan the contract prints; "adult" and "child" are the demo plans of the page.
inline Json plan_of(const std::string& base) {
  const std::string tests = STOPGAP_TESTS_DIR, demo = STOPGAP_DEMO_DIR;
  return Json::parse(file_text(base == "example" ? tests + "/cases/example_plan.json" : demo + "/" + base + ".json"));
}

// What most tests ask with: the plan the contract prints, a record of nothing, and a reading of each kind.
inline const Json nothing = Json::array();
inline const Json& plan() {
  static const Json example = plan_of("example");
  return example;
}
inline Json at(const Json& glucose, const Json& ketones) { return {{"glucose", glucose}, {"ketones", ketones}}; }

// Sets what a JSON pointer names; null takes it away.
inline void change(Json& document, const Json& changes) {
  for (const auto& [place, value] : changes.items()) {
    const Json::json_pointer pointer{place};
    if (value.is_null()) document.at(pointer.parent_pointer()).erase(pointer.back());
    else document[pointer] = value;
  }
}

// The instant so many minutes before `now`, written with the offset of `now`.
inline std::string minutes_before(const std::string& now, double minutes) {
  using namespace std::chrono;
  const auto part = [&](std::size_t at, std::size_t length) { return std::stoi(now.substr(at, length)); };
  const sys_days day = year{part(0, 4)} / month{static_cast<unsigned>(part(5, 2))} / std::chrono::day{static_cast<unsigned>(part(8, 2))};
  const seconds of_day = hours{part(11, 2)} + std::chrono::minutes{part(14, 2)} + seconds{part(17, 2)};
  const seconds then = day.time_since_epoch() + of_day - seconds{static_cast<long long>(minutes * 60)};
  const sys_days that_day{floor<days>(then)};
  const year_month_day date{that_day};
  const long long rest = (then - that_day.time_since_epoch()).count();
  char text[40];
  std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02lld:%02lld:%02lld%s", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                static_cast<unsigned>(date.day()), rest / 3600, rest / 60 % 60, rest % 60, now.substr(19).c_str());
  return text;
}

// 16.0 or "HI" as a reading from a finger in the plan's unit.
inline Json glucose_of(const Json& plan, const Json& reading) {
  if (reading.is_object()) return reading;
  if (reading.is_string()) return {{"reading", reading}, {"from", "finger"}};
  return {{"value", reading}, {"unit", plan.at("glucoseUnit")}, {"from", "finger"}};
}

// 0.8 or "HI" as blood ketones, "small" as a strip, "notYet" as not known.
inline Json ketones_of(const Json& reading) {
  if (reading.is_object()) return reading;
  if (reading.is_number() || reading == "HI") return {{"blood", reading}};
  const bool unknown = reading == "notYet" || reading == "noStrips" || reading == "error";
  return {{unknown ? "unknown" : "urine", reading}};
}

inline Json event_of(const Json& plan, const std::string& now, Json event, std::size_t number) {
  if (event.contains("ago")) event["at"] = minutes_before(now, event["ago"].get<double>());
  event.erase("ago");
  if (!event.contains("id")) event["id"] = "e" + std::to_string(number);
  const std::string kind = event.at("kind");
  if (kind == "glucose" && event.contains("value") && !event.contains("unit")) event["unit"] = plan.at("glucoseUnit");
  if ((kind == "glucose") && !event.contains("from")) event["from"] = "finger";
  if (kind == "injection" && !event.contains("with")) event["with"] = "syringe";
  if ((kind == "injection" || kind == "doseShown") && !event.contains("insulin")) event["insulin"] = "rapid";
  if (event.contains("glucose")) event["glucose"] = glucose_of(plan, event["glucose"]);
  if (kind == "injection" && event.contains("ketones")) event["ketones"] = ketones_of(event["ketones"]);
  return event;
}

inline Json record_of(const Json& plan, const std::string& now, const Json& events) {
  Json list = Json::array();
  for (const Json& event : events) list.push_back(event_of(plan, now, event, list.size()));
  return {{"format", "stopgap.record"}, {"version", 1}, {"planId", plan.at("id")}, {"events", list}};
}

inline Json situation_of(const Json& plan, Json situation) {
  if (!situation.contains("now")) situation["now"] = night;
  for (const char* list : {"signs", "seen"})
    if (!situation.contains(list)) situation[list] = Json::array();
  if (situation.contains("glucose")) situation["glucose"] = glucose_of(plan, situation["glucose"]);
  if (situation.contains("ketones")) situation["ketones"] = ketones_of(situation["ketones"]);
  return situation;
}

inline Json advise_request(const Json& plan, const Json& events, const Json& situation) {
  const Json whole = situation_of(plan, situation);
  return {{"plan", plan}, {"record", record_of(plan, whole.at("now"), events)}, {"situation", whole}};
}

inline Json advise(const Json& plan, const Json& events, const Json& situation) {
  return Json::parse(ask("advise", advise_request(plan, events, situation).dump()));
}

inline Json holds(const Json& plan, const Json& events, const std::string& now = night, bool curve = false) {
  Json request{{"plan", plan}, {"record", record_of(plan, now, events)}, {"now", now}};
  if (curve) request["curve"] = true;
  return Json::parse(ask("holds", request.dump()));
}

// The plan of the contract, changed place by place.
inline Json example_with(const Json& changes) {
  Json plan = plan_of("example");
  change(plan, changes);
  return plan;
}

inline std::string word(const Json& answer, const std::string& key) {
  const auto found = answer.find(key);
  return found == answer.end() || found->is_null() ? "none" : found->is_string() ? found->get<std::string>() : found->dump();
}

// "4 units", written with a common space here; "none" where no dose is given.
inline std::string dose(const Json& answer) {
  if (!answer.contains("dose")) return "no answer: " + answer.dump();
  if (answer["dose"].is_null()) return "none";
  std::string text = answer["dose"]["text"];
  if (const auto at = text.find("\u00A0"); at != std::string::npos) text.replace(at, 2, " ");
  return text;
}

inline bool has_step(const Json& answer, const std::string& id) {
  for (const Json& step : answer.value("steps", Json::array()))
    if (step.at("id") == id) return true;
  return false;
}

inline Json slots_of(const Json& answer, const std::string& id) {
  for (const Json& step : answer.at("steps"))
    if (step.at("id") == id) return step.at("slots");
  return nullptr;
}

inline std::string steps(const Json& answer) {
  std::string out;
  for (const Json& step : answer.value("steps", Json::array())) out += (out.empty() ? "" : " ") + step.at("id").get<std::string>();
  return out;
}

inline std::string hold_clock(const Json& answer, const std::string& what) {
  for (const Json& hold : answer.value("holds", Json::array()))
    if (hold.at("what") == what) return hold.at("clock");
  return "none";
}

// "03:25 03:40", in order.
inline std::string looks(const Json& answer) {
  std::string out;
  for (const Json& look : answer.value("looks", Json::array())) out += (out.empty() ? "" : " ") + look.at("clock").get<std::string>();
  return out;
}

inline bool has_look(const Json& answer, const std::string& clock) {
  for (const Json& look : answer.value("looks", Json::array()))
    if (look.at("clock") == clock) return true;
  return false;
}

inline bool has_caution(const Json& answer, const std::string& caution) {
  for (const Json& one : answer.value("cautions", Json::array()))
    if (one == caution) return true;
  return false;
}

}  // namespace stopgap::asked
