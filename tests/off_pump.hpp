// Short ways to ask what somebody off the pump asks: events by their clock time, and the answer's screens by their kind.
#pragma once
#include "asked.hpp"

namespace stopgap::off_pump_asked {

using asked::Json;

// "25T22:00" is that day of November 2026 at that time, in UTC unless an offset follows.
inline std::string when(const std::string& text) { return "2026-11-" + text.substr(0, 8) + ":00" + (text.size() > 8 ? text.substr(8) : "+00:00"); }

inline Json event(const std::string& at, const std::string& kind, Json more = Json::object()) {
  more["at"] = when(at);
  more["kind"] = kind;
  return more;
}
inline Json off(const std::string& at) { return event(at, "pump", {{"state", "off"}}); }
inline Json on(const std::string& at) { return event(at, "pump", {{"state", "on"}}); }
inline Json ketones(const std::string& at, double blood) { return event(at, "ketones", {{"blood", blood}}); }
inline Json long_dose(const std::string& at, double units) { return event(at, "injection", {{"insulin", "long"}, {"units", units}}); }
inline Json rapid(const std::string& at, double rescue, double meal, double basal) {
  return event(at, "injection", {{"units", rescue + meal + basal}, {"parts", {{"rescue", rescue}, {"meal", meal}, {"basal", basal}}}});
}

// A bridge as it is recorded: its basal, and the hours that it is for.
inline Json bridge(const std::string& at, double basal, double hours, Json more = Json::object()) {
  more["units"] = basal;
  more["parts"] = {{"rescue", 0}, {"meal", 0}, {"basal", basal}};
  more["basalHours"] = hours;
  return event(at, "injection", more);
}
inline Json call(const std::string& at, bool answered = true) { return event(at, "call", {{"to", "team"}, {"answered", answered}}); }

inline Json with(Json events, std::initializer_list<Json> more) {
  for (const Json& one : more) events.push_back(one);
  return events;
}

inline Json request(const Json& plan, const Json& events, const std::string& now, Json more = Json::object()) {
  more["plan"] = plan;
  more["now"] = when(now);
  more["record"] = asked::record_of(plan, more["now"], events);
  if (more.contains("glucose")) more["glucose"] = asked::glucose_of(plan, more["glucose"]);
  return more;
}
inline Json off_pump(const Json& plan, const Json& events, const std::string& now, const Json& more = Json::object()) {
  return Json::parse(ask("offPump", request(plan, events, now, more).dump()));
}

inline Json screen(const Json& answer, const std::string& kind) {
  for (const Json& one : answer.value("screens", Json::array()))
    if (one.at("kind") == kind) return one;
  return nullptr;
}
// "7 units", with a common space; "none" where that screen gives nothing.
inline std::string dose(const Json& answer, const std::string& kind) {
  const Json one = screen(answer, kind);
  return one.is_null() ? "none" : asked::dose(one);
}
inline std::string clock(const Json& time) { return time.is_null() ? "none" : time.at("clock").get<std::string>(); }
// "bridge 02:00, longActing 08:00"
inline std::string alarms(const Json& answer) {
  std::string out;
  for (const Json& one : answer.at("alarms"))
    out += (out.empty() ? "" : ", ") + one.at("what").get<std::string>() + " " + one.at("clock").get<std::string>();
  return out;
}
inline bool notes(const Json& answer, const std::string& note) {
  for (const Json& one : answer.at("notes"))
    if (one == note) return true;
  return false;
}
inline std::string first(const Json& answer) { return answer.at("first").is_null() ? "nothing" : answer["first"]["outcome"].get<std::string>(); }

}  // namespace stopgap::off_pump_asked
