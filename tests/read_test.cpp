// Strict reading: every way to be refused, with its answer; every key of a whole request missing, misspelt and mistyped; the
// ends of every range in threes; long and unordered records.
#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <set>

#include "ask.hpp"
#include "json/read.hpp"
#include "requests.hpp"

namespace stopgap {
namespace {

using Json = nlohmann::json;

constexpr std::array<std::string_view, 15> reason_words{
    "notJson",    "tooLarge",   "tooDeep",      "unknownKey",  "duplicateKey",  "missing",     "wrongType",          "wrongUnit",
    "outOfRange", "tooPrecise", "notAscending", "duplicateId", "contradiction", "newerFormat", "fingerprintMismatch"};

std::vector<std::string> shown(const Refusals& refusals) {
  std::vector<std::string> out;
  for (const Refusal& one : refusals.list())
    out.push_back(std::string{reason_words[static_cast<std::size_t>(one.reason)]} + " " + one.path);
  return out;
}

struct Read {
  Plan plan;
  Record record;
  Situation situation;
  Refusals refusals;
};
Read read(const Json& request) {
  Read out;
  const json::Node node = json::parse(request.dump(), out.refusals);
  if (!out.refusals.empty()) return out;
  out.plan = json::read_plan(*node.find("plan"), "/plan", out.refusals);
  out.record = json::read_record(*node.find("record"), "/record", &out.plan.id, out.refusals);
  out.situation = json::read_situation(*node.find("situation"), "/situation", out.plan, out.refusals);
  return out;
}
std::vector<std::string> refused(const Json& request) { return shown(read(request).refusals); }
using Shown = std::vector<std::string>;

// One file a way: a demo request with some places set, typed as they stand, or removed; or a whole request as text.
std::string request_of(const Json& way) {
  if (way.contains("request")) return way["request"];
  Json request = requests::request(way.value("plan", "adult"));
  const Json set = way.value("set", Json::object()), typed = way.value("typed", Json::object()), remove = way.value("remove", Json::array());
  for (const auto& [place, value] : set.items()) request[Json::json_pointer{place}] = value;
  for (const auto& [place, value] : typed.items()) request[Json::json_pointer{place}] = "typed " + place;
  for (const auto& place : remove) requests::remove(request, place);
  std::string text = request.dump();
  for (const auto& [place, value] : typed.items()) {
    const std::string stand_in = Json("typed " + place).dump();
    text.replace(text.find(stand_in), stand_in.size(), value.get<std::string>());
  }
  return text;
}

TEST(Refused, EveryWayHasItsAnswer) {
  std::set<std::string> reasons;
  std::size_t ways = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path{STOPGAP_TESTS_DIR} / "refused")) {
    const std::string name = entry.path().filename().string();
    SCOPED_TRACE(name);
    const Json way = Json::parse(requests::file(entry.path().string()));
    const std::string answer = ask(way.value("call", "advise"), request_of(way));
    EXPECT_TRUE(is_refusal(answer));
    const Json got = Json::parse(answer)["refused"];
    Json wanted = way["refused"];
    ASSERT_EQ(got.size(), wanted.size()) << got;
    for (std::size_t i = 0; i < wanted.size(); ++i)
      for (const auto& [key, value] : wanted[i].items()) EXPECT_EQ(got[i].value(key, ""), value) << key;
    for (const Json& one : wanted) reasons.insert(one["reason"].get<std::string>());
    ++ways;
  }
  EXPECT_GE(ways, 190u);
  // Too large needs more text than a file should hold; a fingerprint is compared by calls that unpack a plan.
  EXPECT_EQ(reasons.size() + 2, reason_words.size());
}

TEST(Read, GoodRequestsAreAccepted) {
  EXPECT_EQ(refused(requests::request("adult")), Shown{});
  EXPECT_EQ(refused(requests::request("child")), Shown{});
}

TEST(Read, BothDemoPlansAreAccepted) {
  for (const char* name : {"adult", "child"}) {
    Refusals refusals;
    const json::Node node = json::parse(requests::file(std::string{STOPGAP_DEMO_DIR} + "/" + name + ".json"), refusals);
    json::read_plan(node, "/plan", refusals);
    EXPECT_EQ(shown(refusals), Shown{}) << name;
  }
}

// Every place of a tree, objects and lists included.
void each_place(const Json& node, const Json::json_pointer& at, const std::function<void(const Json::json_pointer&, const Json&)>& visit) {
  visit(at, node);
  if (node.is_object())
    for (const auto& [key, value] : node.items()) each_place(value, at / key, visit);
  else if (node.is_array())
    for (std::size_t i = 0; i < node.size(); ++i) each_place(node[i], at / i, visit);
}

// A plan with every optional key, so that each of them is tried as well.
Json full_request() {
  Json request = requests::request("child");
  Json& plan = request["plan"];
  plan["pen"] = {{"capacity", 60}, {"step", 0.5}};
  plan["pump"]["tubing"] = "tubed";
  plan["squaring"]["ways"] = {"offBody", "paused"};
  plan["offPump"]["reducedBasalShare"] = 0.5;
  plan["ketones"]["anyGlucose"] = {{"timesCorrection", 1.5}, {"fallback", {{"addUnits", 1.5}}}};
  plan["travel"] = {{"homeOffset", "-03:30"}, {"languages", {"en", "pt-BR"}}};
  plan["notes"] = "Left arm only.";
  plan["contacts"][0]["relation"] = "neighbour";
  Json& events = request["record"]["events"];
  for (const char* event : {
           R"({"kind":"incident","state":"opened","suspectedSince":"2026-11-25T00:10:00+01:00"})",
           R"({"kind":"glucose","value":288,"unit":"mg/dL","from":"sensor"})", R"({"kind":"glucose","reading":"LO","from":"finger"})",
           R"({"kind":"ketones","blood":"HI"})", R"({"kind":"ketones","urine":"trace"})", R"({"kind":"sign","what":["vomitedOnce","bellyPain"]})",
           R"({"kind":"seen","what":["leak"]})", R"({"kind":"doseShown","units":4,"insulin":"rapid","parts":{"rescue":3,"meal":0.5,"basal":0.5}})",
           R"({"kind":"doseRefused","shown":"e7"})",
           R"({"kind":"injection","insulin":"rapid","units":4,"with":"pen","sure":false,"parts":{"rescue":3,"meal":1,"basal":0},"glucose":{"reading":"HI","from":"finger"},"ketones":{"unknown":"noStrips"},"shown":"e7","order":"e17"})",
           R"({"kind":"pumpDose","units":3.05,"purpose":"correction","glucose":{"value":15.6,"unit":"mmol/L","from":"finger"}})",
           R"({"kind":"offBody","units":4,"tubingEnd":"sink"})", R"({"kind":"mistake","what":"twice","insulin":"long","units":10})",
           R"({"kind":"changed","what":["set","reservoir","insulin"]})", R"({"kind":"automation","state":"paused"})", R"({"kind":"pump","state":"off"})",
           R"({"kind":"carbs","grams":15,"for":"e9"})", R"({"kind":"look","due":"2026-11-25T04:10:00+01:00","what":["glucose","ketones"]})",
           R"({"kind":"call","to":"team","answered":true,"for":"e20"})", R"({"kind":"order","by":"Dr P. Achterberg","units":2,"insulin":"rapid","text":"2 more now"})",
           R"({"kind":"alarmSet","due":"2026-11-25T04:10:00+01:00"})", R"({"kind":"note","text":""})", R"({"kind":"strike","target":"e10","reason":"typed twice"})"}) {
    Json one = Json::parse(event);
    one["id"] = "e" + std::to_string(events.size());
    one["at"] = "2026-11-25T01:10:00+01:00";
    events.push_back(one);
  }
  Json& situation = request["situation"];
  situation["glucose"].update({{"at", "2026-11-25T03:05:00+01:00"}, {"repeated", true}, {"noMeter", false}});
  situation["ketones"]["at"] = "2026-11-25T03:05:00+01:00";
  situation["signs"] = {"drowsy"};
  situation["seen"] = {"blood", "pumpDead"};
  situation["mistake"] = {{"what", "tooManyUnits"}, {"insulin", "rapid"}, {"units", 3}};
  situation.update({{"carbs", 40}, {"unwell", true}, {"pumpOnBoard", 1.25}, {"pumpOffersNothing", false}, {"highSince", "2026-11-25T01:00:00+01:00"},
                    {"with", "pen"}, {"viewer", "school"}});
  return request;
}

TEST(Read, ARequestWithEveryOptionalKeyIsAccepted) { EXPECT_EQ(refused(full_request()), Shown{}); }

TEST(Read, AnUnknownKeyIsRefusedInEveryObject) {
  const Json whole = full_request();
  std::size_t objects = 0;
  each_place(whole, Json::json_pointer{}, [&](const Json::json_pointer& at, const Json& node) {
    if (!node.is_object() || at.empty()) return;
    Json changed = whole;
    changed[at]["zzz"] = 1;
    // In a cell another key makes another shape, and that is refused as a whole.
    const bool cell = node.contains("perKg") || node.contains("timesCorrection") || node.contains("addUnits");
    const Shown wanted{cell ? "wrongType " + at.to_string() : "unknownKey " + at.to_string() + "/zzz"};
    EXPECT_EQ(refused(changed), wanted);
    ++objects;
  });
  EXPECT_GT(objects, 60u);
}

// The keys that may be missing, from sections 3 and 4 of the contract; at the end of a path, so that they hold for each event.
bool may_be_missing(const std::string& path) {
  const auto ends = [&](std::string_view end) { return path.size() >= end.size() && path.compare(path.size() - end.size(), end.size(), end) == 0; };
  for (const char* end : {"/plan/longActing", "/plan/pen", "/plan/syringe", "/ketones/anyGlucose", "/repeatHours", "/reducedBasalShare", "/glucagon",
                          "/plan/travel", "/plan/notes", "/retyped", "/when", "/callFirstAbove",
                          "/storage", "/nurseReviewedOn", "/suspectedSince",
                          "/parts", "/sure", "/shown", "/order", "/for", "/situation/glucose", "/situation/glucose/at", "/ketones/at", "/repeated", "/noMeter",
                          "/carbs", "/unwell", "/situation/mistake", "/mistake/units", "/pumpOnBoard", "/pumpOffersNothing", "/highSince", "/with", "/viewer"})
    if (ends(end) && !(std::string_view{end} == "/shown" && ends("/8/shown")) && !(std::string_view{end} == "/with" && ends("/9/with")) &&
        !(std::string_view{end} == "/parts" && path.find("/plan/") == 0))
      return true;
  // A retype of an earlier version names no finding; one of a finding without a single number names no value.
  if (path.find("/retyped/") != std::string::npos && (ends("/finding") || ends("/value"))) return true;
  // Of the events: readings and units that the table of kinds marks with a question mark.
  for (const char* end : {"/9/glucose", "/9/ketones", "/10/glucose", "/12/units", "/19/units", "/19/insulin"})
    if (path.find("/record/events") == 0 && ends(end)) return true;
  return false;
}

TEST(Read, EveryOtherKeyIsNeeded) {
  const Json whole = full_request();
  std::size_t needed = 0;
  each_place(whole, Json::json_pointer{}, [&](const Json::json_pointer& at, const Json&) {
    if (at.empty() || at.parent_pointer().empty() || !whole.at(at.parent_pointer()).is_object()) return;
    const std::string path = at.to_string();
    Json changed = whole;
    requests::remove(changed, path);
    const Shown found = refused(changed);
    if (path == "/plan/school") {  // the school that asks needs it
      EXPECT_EQ(found, Shown{"contradiction /situation/viewer"});
    } else if (path == "/plan/pen") {  // the situation injects with it
      EXPECT_EQ(found, Shown{"contradiction /situation/with"});
    } else if (may_be_missing(path)) {
      EXPECT_EQ(found, Shown{}) << path;
    } else {
      const std::string parent = at.parent_pointer().to_string();
      bool said = false;  // missing at its place, or at the other key of two that may stand there; a cell has no shape without it
      for (const std::string& one : found)
        said = said || one == "missing " + path || one == "missing " + parent + "/value" || one == "missing " + parent + "/blood" ||
               one == "wrongType " + parent;
      EXPECT_TRUE(said) << path;
      ++needed;
    }
  });
  EXPECT_GT(needed, 150u);
}

TEST(Read, EveryValueOfAnotherTypeIsRefusedAtItsPlace) {
  const Json whole = full_request();
  std::size_t values = 0;
  each_place(whole, Json::json_pointer{}, [&](const Json::json_pointer& at, const Json& node) {
    if (at.empty() || at.parent_pointer().empty()) return;
    for (const Json& other : {Json(nullptr), Json(true), Json("a word"), Json(7), Json::array(), Json::object()}) {
      if (other.type() == node.type() || (other.is_number() && node.is_number())) continue;
      if (at.back() == "blood" && other.is_number()) continue;  // the word HI may stand there, and so may a number
      Json changed = whole;
      changed[at] = other;
      const Shown found = refused(changed);
      const std::string path = at.to_string();
      bool at_place = false;
      for (const std::string& one : found) at_place = at_place || one.compare(one.size() - std::min(one.size(), path.size()), path.size(), path) == 0;
      EXPECT_TRUE(at_place) << path << " " << other;
    }
    ++values;
  });
  EXPECT_GT(values, 250u);
}

// The table of numbers in section 3 of the contract: under, lowest, highest, over, and one digit too many.
struct Edge {
  const char* plan;
  const char* place;
  const char *under, *lowest, *highest, *over, *too_precise;
};
constexpr Edge edges[] = {
    {"adult", "/plan/high/trigger", "7.9", "8.0", "25.0", "25.1", "14.01"},
    {"child", "/plan/high/trigger", "143", "144", "450", "451", "250.5"},
    {"adult", "/plan/high/middle", "1.9", "2.0", "15.0", "15.1", "10.01"},
    {"child", "/plan/high/middle", "35", "36", "270", "271", "180.5"},
    {"adult", "/plan/day/target/0/value", "1.9", "2.0", "15.0", "15.1", "7.05"},
    {"child", "/plan/day/target/0/value", "35", "36", "270", "271", "120.1"},
    {"adult", "/plan/low/below", "1.9", "2.0", "15.0", "15.1", "3.95"},
    {"child", "/plan/low/veryLow", "35", "36", "270", "271", "54.5"},
    {"adult", "/plan/ketones/carbohydrateOnlyBelow", "1.9", "2.0", "15.0", "15.1", "5.55"},
    {"adult", "/plan/limits/dosingCeiling", "-0.1", "0", "33.3", "33.4", "20.05"},
    {"child", "/plan/limits/dosingCeiling", "-1", "0", "600", "601", "400.5"},
    {"adult", "/plan/ketones/columns/2", "-0.1", "0.0", "33.3", "33.4", "14.05"},
    {"child", "/plan/ketones/columns/2", "-1", "0", "600", "601", "250.5"},
    {"adult", "/plan/high/expectedFall", "0.0", "0.1", "15.0", "15.1", "2.05"},
    {"child", "/plan/high/expectedFall", "1", "2", "270", "271", "36.5"},
    {"adult", "/plan/day/correctionFactor/0/value", "0.09", "0.10", "30.00", "30.01", "2.505"},
    {"child", "/plan/day/correctionFactor/0/value", "1.9", "2.0", "540.0", "540.1", "90.05"},
    {"adult", "/plan/day/carbohydrateRatio/0/value", "0.9", "1.0", "150.0", "150.1", "12.05"},
    {"adult", "/plan/day/basal/0/value", "-0.01", "0.00", "10.00", "10.01", "0.805"},
    {"adult", "/plan/dailyTotal", "1.9", "2.0", "400.0", "400.1", "46.05"},
    {"adult", "/plan/person/weightKg", "1.9", "2.0", "300.0", "300.1", "78.55"},
    {"adult", "/plan/ketones/rows/1/from", "-0.1", "0.0", "3.0", "3.1", "0.65"},
    {"adult", "/plan/ketones/actFrom", "-0.1", "0.0", "3.0", "3.1", "0.65"},
    {"adult", "/plan/ketones/expectedFall", "0.0", "0.1", "2.0", "2.1", "0.25"},
    {"adult", "/plan/limits/shareOfDaily", "0.009", "0.010", "0.500", "0.501", "0.2005"},
    {"adult", "/plan/limits/rollingShare", "0.009", "0.010", "1.000", "1.001", "0.3005"},
    {"child", "/plan/ketones/hi/perKg", "0.009", "0.01", "0.5", "0.501", "0.1305"},
    {"adult", "/plan/rapid/actionHours", "1.75", "2", "8", "8.25", "4.3"},
    {"adult", "/plan/limits/lockHours", "0.75", "1", "8", "8.25", "4.1"},
    {"adult", "/plan/ketones/rows/1/repeatHours", "0.75", "1", "6", "6.25", "2.2"},
    {"adult", "/plan/squaring/pauseHours", "0.75", "1", "8", "8.25", "4.4"},
    {"adult", "/plan/limits/singleDose", "0", "0.5", "100", "100.5", "10.2"},
    {"adult", "/plan/pen/capacity", "0.5", "1", "100", "100.5", "60.1"},
    {"adult", "/plan/high/firstLook", "4", "5", "360", "361", "60.5"},
    {"adult", "/plan/high/secondLook", "4", "5", "360", "361", "120.5"},
    {"adult", "/plan/low/recheckMinutes", "4", "5", "360", "361", "15.5"},
    {"adult", "/situation/glucose/value", "0.9", "1.0", "50.0", "50.1", "16.05"},
    {"adult", "/situation/ketones/blood", "-0.1", "0.0", "15.0", "15.1", "0.85"},
    {"adult", "/situation/carbs", "-1", "0", "150", "151", "40.5"},
};

bool refused_for_its_size(const Edge& edge, const char* typed) {
  Json request = requests::request(edge.plan);
  request[Json::json_pointer{edge.place}] = Json::parse(typed);
  const Shown found = refused(request);
  return std::find(found.begin(), found.end(), std::string{"outOfRange "} + edge.place) != found.end();
}
bool refused_for_its_digits(const Edge& edge, const char* typed) {
  Json request = requests::request(edge.plan);
  request[Json::json_pointer{edge.place}] = Json::parse(typed);
  const Shown found = refused(request);
  return std::find(found.begin(), found.end(), std::string{"tooPrecise "} + edge.place) != found.end();
}

TEST(Ranges, EndWhereTheContractSays) {
  for (const Edge& edge : edges) {
    SCOPED_TRACE(std::string{edge.plan} + " " + edge.place);
    EXPECT_TRUE(refused_for_its_size(edge, edge.under));
    EXPECT_FALSE(refused_for_its_size(edge, edge.lowest));
    EXPECT_FALSE(refused_for_its_digits(edge, edge.lowest));
    EXPECT_FALSE(refused_for_its_size(edge, edge.highest));
    EXPECT_FALSE(refused_for_its_digits(edge, edge.highest));
    EXPECT_TRUE(refused_for_its_size(edge, edge.over));
    EXPECT_TRUE(refused_for_its_digits(edge, edge.too_precise));
  }
}

TEST(Ranges, OfAReadingFollowItsOwnUnit) {
  Json request = requests::request("adult");
  request["situation"]["glucose"] = {{"value", 18}, {"unit", "mg/dL"}, {"from", "finger"}};
  EXPECT_EQ(refused(request), Shown{});
  request["situation"]["glucose"]["value"] = 900;
  EXPECT_EQ(refused(request), Shown{});
  for (const int value : {17, 901}) {
    request["situation"]["glucose"]["value"] = value;
    EXPECT_EQ(refused(request), Shown{"outOfRange /situation/glucose/value"}) << value;
  }
}

TEST(Ranges, OfAnInjectionEndAtFiveHundredthsAndAtAHundred) {
  for (const auto& [typed, good] : std::vector<std::pair<double, bool>>{{0.04, false}, {0.05, true}, {100.0, true}, {100.01, false}}) {
    Json request = requests::request("adult");
    request["record"]["events"] = {{{"id", "e"}, {"at", "2026-11-25T01:00:00+01:00"}, {"kind", "offBody"}, {"units", typed}, {"tubingEnd", "sink"}}};
    EXPECT_EQ(refused(request).empty(), good) << typed;
  }
}

TEST(Plan, HoldsExactlyWhatWasTyped) {
  const Read done = read(requests::request("adult"));
  ASSERT_EQ(shown(done.refusals), Shown{});
  const Plan& plan = done.plan;
  EXPECT_EQ(plan.daily_total, Insulin::units(46));
  EXPECT_EQ(plan.person.weight, Weight::kg_tenths(785));
  EXPECT_EQ(plan.high.trigger, Glucose::mmol_tenths(140));
  EXPECT_EQ(plan.high.expected_fall, GlucoseFall::mmol_tenths(20));
  EXPECT_EQ(plan.rapid.action, Duration::minutes(270));
  EXPECT_EQ(plan.long_acting->onset, Duration::hours(2));
  EXPECT_EQ(plan.syringe->capacity, Insulin::units(50));
  EXPECT_EQ(plan.pen->capacity, Insulin::units(60));
  EXPECT_EQ(plan.correction_factor.at(*parse_time_of_day("06:59")), CorrectionFactor::mmol_hundredths(250));
  EXPECT_EQ(plan.correction_factor.at(*parse_time_of_day("07:00")), CorrectionFactor::mmol_hundredths(220));
  EXPECT_EQ(plan.carbohydrate_ratio.at(*parse_time_of_day("03:10")), CarbohydrateRatio::gram_tenths_per_unit(120));
  EXPECT_EQ(plan.basal.at(*parse_time_of_day("04:00")), BasalRate::hundredths_per_hour(95));
  ASSERT_EQ(plan.ketones.rows.size(), 4u);
  EXPECT_EQ(plan.ketones.rows[1].from, Ketones::mmol_tenths(6));
  EXPECT_EQ(plan.ketones.rows[1].urine, std::vector<StripWord>{StripWord::small});
  EXPECT_EQ(plan.ketones.rows[1].cells[1].kind, Cell::Kind::shareOfDaily);
  EXPECT_EQ(plan.ketones.rows[1].cells[1].share, Share::thousandths(50));
  EXPECT_EQ(plan.ketones.rows[1].repeat, Duration::hours(2));
  EXPECT_FALSE(plan.ketones.rows[0].repeat.has_value());
  EXPECT_EQ(plan.ketones.rows[3].call, Call::emergency);
  EXPECT_EQ(plan.ketones.hi.share, Share::thousandths(140));
  EXPECT_FALSE(plan.ketones.any_glucose.has_value());
  EXPECT_EQ(plan.limits.rolling_share, Share::thousandths(300));
  EXPECT_EQ(plan.limits.dosing_ceiling, Glucose::mmol_tenths(200));
  EXPECT_EQ(plan.low.grams, Carbohydrate::grams(15));
  EXPECT_EQ(plan.contacts[0].relation, Relation::team);
  EXPECT_EQ(plan.contacts[1].relation, Relation::home);
  EXPECT_EQ(plan.emergency_number, "112");
  EXPECT_EQ(plan.fingerprint.size(), 64u);
}

TEST(Plan, InMgHoldsMg) {
  const Plan plan = read(requests::request("child")).plan;
  EXPECT_EQ(plan.high.trigger, Glucose::mg(250));
  EXPECT_EQ(plan.high.expected_fall, GlucoseFall::mg(36));
  EXPECT_EQ(plan.correction_factor.at(*parse_time_of_day("00:00")), CorrectionFactor::mg_tenths(900));
  EXPECT_EQ(plan.ketones.rows[1].cells[1].per_kg, InsulinPerKg::unit_thousandths(40));
  EXPECT_EQ(plan.school->call_first_above, Insulin::units(2));
}

TEST(Plan, CellsAreReadAsWritten) {
  const Plan plan = read(full_request()).plan;
  ASSERT_TRUE(plan.ketones.any_glucose.has_value());
  EXPECT_EQ(plan.ketones.any_glucose->kind, Cell::Kind::timesCorrection);
  EXPECT_EQ(plan.ketones.any_glucose->times, Share::thousandths(1500));
  ASSERT_EQ(plan.ketones.any_glucose->fallback.size(), 1u);
  EXPECT_EQ(plan.ketones.any_glucose->fallback[0].add, Insulin::hundredths(150));
}

TEST(Plan, ItsFingerprintFollowsItsContentOnly) {
  const std::string text = requests::file(std::string{STOPGAP_TESTS_DIR} + "/plans/adult.json");
  const auto fingerprint = [](const std::string& plan_text) {
    Refusals refusals;
    const json::Node node = json::parse(plan_text, refusals);
    const Plan plan = json::read_plan(node, "/plan", refusals);
    EXPECT_EQ(shown(refusals), Shown{});
    return plan.fingerprint;
  };
  const auto with = [&](const std::string& before, const std::string& after) {
    std::string changed = text;
    changed.replace(changed.find(before), before.size(), after);
    return changed;
  };
  const std::string first = fingerprint(text);
  EXPECT_EQ(fingerprint(Json::parse(text).dump()), first);  // other blanks, other order of keys
  EXPECT_EQ(fingerprint(with("\"dailyTotal\": 46.0", "\"dailyTotal\": 46")), first);
  EXPECT_NE(fingerprint(with("\"dailyTotal\": 46.0", "\"dailyTotal\": 46.1")), first);
  EXPECT_NE(fingerprint(with("Maren", "maren")), first);
}

TEST(Plan, ADraftMayLackWhoAgreedAndTheEmergencyNumber) {
  Json request = requests::request("adult");
  request["plan"]["agreement"].update({{"status", "draft"}, {"by", ""}, {"role", ""}});
  request["plan"]["emergencyNumber"] = "";
  EXPECT_EQ(refused(request), Shown{});
  request["plan"]["agreement"]["status"] = "agreed";
  EXPECT_EQ(refused(request), (Shown{"outOfRange /plan/agreement/by", "outOfRange /plan/agreement/role", "outOfRange /plan/emergencyNumber"}));
}

TEST(Text, IsMeasuredInCharactersNotBytes) {
  const auto title = [](const std::string& text) {
    Json request = requests::request("adult");
    request["plan"]["title"] = text;
    return refused(request);
  };
  std::string sixty;
  for (int i = 0; i < 60; ++i) sixty += "\xE2\x82\xAC";  // three bytes a character
  EXPECT_EQ(title(sixty), Shown{});
  EXPECT_EQ(title(sixty + "a"), Shown{"outOfRange /plan/title"});
  EXPECT_EQ(title("e\xCC\x81"), Shown{"wrongType /plan/title"});      // e and an acute accent apart
  EXPECT_EQ(title("\xC3\xA9"), Shown{});                              // the same as one character
  EXPECT_EQ(title("q\xCC\x84"), Shown{});                             // no such character: apart is the only way
  EXPECT_EQ(title("\xE0\xA4\x95\xE0\xA5\x80 \xE6\xBC\xA2"), Shown{});  // Devanagari with its vowel sign, Han
  EXPECT_EQ(title("a\xE2\x80\x8F"), Shown{"wrongType /plan/title"});  // right-to-left mark
}

TEST(Reading, WhatIsNotGivenStaysUnknown) {
  Json request = requests::request("adult");
  requests::remove(request, "/situation/glucose");
  request["situation"]["ketones"] = {{"unknown", "notYet"}};
  const Situation situation = read(request).situation;
  EXPECT_FALSE(situation.glucose.has_value());
  EXPECT_EQ(situation.ketones.reading.kind, KetoneKind::notYet);
  EXPECT_FALSE(situation.carbs.has_value());
  EXPECT_FALSE(situation.pump_on_board.has_value());
  EXPECT_FALSE(situation.high_since.has_value());
  EXPECT_FALSE(situation.with.has_value());
  EXPECT_FALSE(situation.mistake.has_value());
  EXPECT_EQ(situation.viewer, Viewer::person);
}

TEST(Reading, KetonesKeepWhatTheyAre) {
  const auto kind = [](const Json& ketones) {
    Json request = requests::request("adult");
    request["situation"]["ketones"] = ketones;
    const Read done = read(request);
    EXPECT_EQ(shown(done.refusals), Shown{});
    return done.situation.ketones.reading;
  };
  EXPECT_EQ(kind({{"blood", 1.2}}), (KetoneReading{KetoneKind::blood, Ketones::mmol_tenths(12), {}}));
  EXPECT_EQ(kind({{"blood", "HI"}}).kind, KetoneKind::bloodHI);
  EXPECT_EQ(kind({{"urine", "large"}}), (KetoneReading{KetoneKind::urine, {}, StripWord::large}));
  EXPECT_EQ(kind({{"unknown", "noStrips"}}).kind, KetoneKind::noStrips);
  EXPECT_EQ(kind({{"unknown", "error"}}).kind, KetoneKind::error);
}

TEST(Record, EveryKindIsReadAsWritten) {
  const Read done = read(full_request());
  ASSERT_EQ(done.record.events.size(), 23u);
  const auto event = [&](const std::string& id) -> const Event& {
    for (const Event& one : done.record.events)
      if (one.id == id) return one;
    ADD_FAILURE() << id;
    return done.record.events.front();
  };
  EXPECT_TRUE(event("e0").opened);
  EXPECT_EQ(event("e0").suspected_since, parse_moment("2026-11-25T00:10:00+01:00")->instant);
  EXPECT_EQ(event("e1").glucose->value, Glucose::mg(288));
  EXPECT_EQ(event("e1").glucose->from, ReadFrom::sensor);
  EXPECT_EQ(event("e2").glucose->word, MeterWord::LO);
  EXPECT_EQ(event("e3").ketones->kind, KetoneKind::bloodHI);
  EXPECT_EQ(event("e4").ketones->strip, StripWord::trace);
  EXPECT_TRUE(event("e5").signs.has(Sign::bellyPain));
  EXPECT_TRUE(event("e6").faults.has(Fault::leak));
  EXPECT_EQ(event("e7").parts->meal, Insulin::hundredths(50));
  EXPECT_EQ(event("e8").refers_to, "e7");
  const Event& injection = event("e9");
  EXPECT_EQ(injection.units, Insulin::units(4));
  EXPECT_EQ(injection.rescue(), Insulin::units(3));
  EXPECT_EQ(injection.with, DeviceKind::pen);
  EXPECT_FALSE(injection.sure);
  EXPECT_EQ(injection.glucose->word, MeterWord::HI);
  EXPECT_EQ(injection.ketones->kind, KetoneKind::noStrips);
  EXPECT_EQ(injection.refers_to, "e7");
  EXPECT_EQ(event("e10").purpose, PumpPurpose::correction);
  EXPECT_EQ(event("e10").units, Insulin::hundredths(305));
  EXPECT_EQ(event("e11").tubing_end, TubingEnd::sink);
  EXPECT_EQ(event("e12").mistake, MistakeKind::twice);
  EXPECT_EQ(event("e12").insulin, InsulinType::long_acting);
  EXPECT_TRUE(event("e13").changed.has(Changed::insulin));
  EXPECT_FALSE(event("e14").on);
  EXPECT_FALSE(event("e15").on);
  EXPECT_EQ(event("e16").carbs, Carbohydrate::grams(15));
  EXPECT_EQ(event("e16").refers_to, "e9");
  EXPECT_TRUE(event("e17").look_glucose && event("e17").look_ketones);
  EXPECT_EQ(event("e17").due, parse_moment("2026-11-25T04:10:00+01:00")->instant);
  EXPECT_EQ(event("e18").call_to, CallTo::team);
  EXPECT_TRUE(event("e18").answered);
  EXPECT_EQ(event("e20").due, parse_moment("2026-11-25T04:10:00+01:00")->instant);
  EXPECT_EQ(event("e22").refers_to, "e10");
}

Json note(std::size_t number, const std::string& at) {
  return {{"id", "n" + std::to_string(number)}, {"at", at}, {"kind", "note"}, {"text", ""}};
}

TEST(Record, IsOrderedByInstantAndId) {
  Json request = requests::request("adult");
  // 02:30 at +01:00 is earlier than 01:45 at +00:00, whatever the clocks showed.
  request["record"]["events"] = {note(3, "2026-11-25T01:45:00+00:00"), note(2, "2026-11-25T02:30:00+01:00"), note(1, "2026-11-25T01:45:00+00:00")};
  const Read done = read(request);
  ASSERT_EQ(done.record.events.size(), 3u);
  EXPECT_EQ(done.record.events[0].id, "n2");
  EXPECT_EQ(done.record.events[1].id, "n1");
  EXPECT_EQ(done.record.events[2].id, "n3");
}

TEST(Record, HoldsTwentyThousandEventsAndNoMore) {
  Json request = requests::request("adult");
  Json& events = request["record"]["events"];
  const std::string at = "2026-11-25T01:45:00+00:00";
  for (std::size_t i = 0; i < 20000; ++i) events.push_back(note(19999 - i, at));
  const Read done = read(request);
  EXPECT_EQ(shown(done.refusals), Shown{});
  ASSERT_EQ(done.record.events.size(), 20000u);
  EXPECT_EQ(done.record.events.front().id, "n0");
  events.push_back(note(20000, at));
  EXPECT_EQ(refused(request), Shown{"outOfRange /record/events"});
}

TEST(Record, NamesADuplicateIdFarApart) {
  Json request = requests::request("adult");
  Json& events = request["record"]["events"];
  for (std::size_t i = 0; i < 2000; ++i) events.push_back(note(i, "2026-11-25T01:45:00+00:00"));
  events[1999]["id"] = "n7";
  EXPECT_EQ(refused(request), Shown{"duplicateId /record/events/1999/id"});
}

TEST(Refusals, AreAtMostTwenty) {
  Json request = requests::request("adult");
  for (int i = 0; i < 100; ++i) request["plan"]["key" + std::to_string(i)] = 1;
  EXPECT_EQ(refused(request).size(), 20u);
}

TEST(Sizes, OfAPlanAndARecordAreJudgedBeforeTheyAreRead) {
  const auto answer = [](const std::string& member, std::size_t bytes) {
    // The text of the member alone, quotes included, has so many bytes.
    return ask("advise", "{\"" + member + "\":\"" + std::string(bytes - 2, 'x') + "\"}");
  };
  const auto too_large = [&](const std::string& member, std::size_t bytes) {
    return Json::parse(answer(member, bytes))["refused"][0]["reason"] == "tooLarge";
  };
  EXPECT_FALSE(too_large("plan", 64 * 1024));
  EXPECT_TRUE(too_large("plan", 64 * 1024 + 1));
  EXPECT_FALSE(too_large("record", 4 * 1024 * 1024));
  EXPECT_TRUE(too_large("record", 4 * 1024 * 1024 + 1));
}

}  // namespace
}  // namespace stopgap
