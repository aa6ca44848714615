// The rows of a store against their seals. The seals of the first test were worked out by sha256sum of GNU coreutils, an outside tool,
// over the owner or the seal before, a line break and the entry. Each damage of a row is told as what it is, and puts the record in doubt.
#include <gtest/gtest.h>

#include "asked.hpp"
#include "core/ask.hpp"

namespace stopgap {
namespace {

using asked::Json;

const char* const now = "2026-11-25T03:10:00+01:00";

Json ask_json(const char* call, const Json& request) { return Json::parse(ask(call, request.dump())); }
Json look(const char* id, const char* at) {
  return {{"id", id}, {"at", at}, {"kind", "look"}, {"due", "2026-11-25T04:00:00+01:00"}, {"what", {"glucose"}}};
}

// Rows as a store keeps them, sealed for one owner.
Json sealed(const std::vector<Json>& events, const char* owner = "p-1") {
  Json texts = Json::array(), rows = Json::array();
  for (const Json& event : events) texts.push_back(event.dump());
  const Json seals = ask_json("seal", {{"seal", owner}, {"entries", texts}})["seals"];
  std::string before = owner;
  for (std::size_t i = 0; i < events.size(); ++i) {
    rows.push_back({{"id", events[i]["id"]}, {"text", texts[i]}, {"place", i + 1}, {"before", before}, {"seal", seals[i]}});
    before = seals[i];
  }
  return {{"owner", owner}, {"now", now}, {"plan", asked::plan()}, {"rows", rows}, {"seal", {{"count", events.size()}, {"seal", before}}}};
}
Json night() {
  return sealed({look("a", "2026-11-25T02:00:00+01:00"), look("b", "2026-11-25T02:10:00+01:00"), look("c", "2026-11-25T02:20:00+01:00")});
}
// What is told of a store: "2 changed" is the third row, "- missing" a row that is gone; "!" says that the record is in doubt.
std::string told(const Json& request) {
  const Json answer = ask_json("checkRecord", request);
  if (answer.contains("refused")) return answer.dump();
  std::string out = answer["recordInDoubt"] == true ? "!" : "";
  for (const Json& row : answer["damaged"])
    out += (row["row"].is_null() ? std::string{" -"} : " " + row["row"].dump()) + " " + row["damage"].get<std::string>();
  return out;
}

TEST(CheckRecord, SealsAreThoseOfAnOutsideTool) {
  const Json answer = ask_json("seal", {{"seal", "p-1"}, {"entries", {R"({"id":"a"})", R"({"id":"b"})"}}});
  EXPECT_EQ(answer, Json({{"seals", {"ae5cfc02ba76aed19a74a3cd94c972065a53a0c327ad7b6a01083cc5821118c2",
                                     "98529efc544ed821ba7767dda739ffc562fdc92b35a0af42b36ceb4e31100962"}}}));
}

TEST(CheckRecord, WholeRecordsAreNotInDoubt) {
  EXPECT_EQ(told(night()), "");
  EXPECT_EQ(told(sealed({})), "");
  // One of a release that knew no seals, too: it is for the page to seal it.
  Json bare = night();
  bare.erase("seal");
  for (Json& row : bare["rows"]) for (const char* key : {"place", "before", "seal"}) row.erase(key);
  EXPECT_EQ(told(bare), "");
  EXPECT_EQ(ask_json("checkRecord", bare)["sealed"], false);
  bare["rows"][1]["text"] = "{";
  EXPECT_EQ(told(bare), "! 1 unknown");
}

TEST(CheckRecord, EveryDamageOfARowIsTold) {
  const auto changed = [](const auto& deed) { Json store = night(); deed(store, store["rows"]); return told(store); };
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.erase(1); }), "! - missing");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.erase(0); }), "! - missing");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.erase(2); }), "! - missing");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.clear(); }), "! - missing");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows[1] = Json::object(); }), "! 1 unreadable");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows[1]["text"] = rows[1]["text"].get<std::string>().substr(0, 20); }), "! 1 changed");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows[1]["id"] = "z"; }), "! 1 unknown");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows[2]["text"] = look("c", "2026-11-25T02:21:00+01:00").dump(); }), "! 2 changed");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows[1].erase("seal"); }), "! 1 changed");
  EXPECT_EQ(changed([](Json&, Json& rows) { std::swap(rows[0], rows[1]); }), "! - missing 1 outOfPlace");
  EXPECT_EQ(changed([](Json&, Json& rows) { std::swap(rows[0]["text"], rows[1]["text"]); }), "! 0 changed 1 changed");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.push_back(rows[1]); }), "! 3 outOfPlace");
  EXPECT_EQ(changed([](Json&, Json& rows) { rows.push_back({{"id", "d"}, {"text", look("d", "2026-11-25T02:30:00+01:00").dump()}}); }),
            "! 3 outOfPlace");
  EXPECT_EQ(changed([](Json& store, Json&) { store.erase("seal"); store["sealLost"] = true; }), "! - missing");
  EXPECT_EQ(changed([](Json& store, Json&) { store["seal"]["count"] = 4; }), "! - missing");
  EXPECT_EQ(changed([](Json& store, Json&) { store["owner"] = "p-2"; }), "! - missing");
}

TEST(CheckRecord, AnEntryOfUnknownKindOrKeyIsSoundAndNotRead) {
  for (const char* key : {"kind", "depth"}) {
    Json event = look("b", "2026-11-25T02:10:00+01:00");
    event[key] = "infusion";
    EXPECT_EQ(told(sealed({look("a", "2026-11-25T02:00:00+01:00"), event, look("c", "2026-11-25T02:20:00+01:00")})), "! 1 unknown");
  }
}

// actionHours 4.5 and lockHours 4 of the contract's plan, and 24 h of its long-acting insulin: the longer one decides.
TEST(CheckRecord, ARowBetweenOldNeighboursClosesNothing) {
  const auto store = [](const char* before, const Json& after) {
    Json rows = sealed({look("a", before), look("b", "2026-11-24T01:00:00+01:00"), after});
    rows["rows"][1] = Json::object();
    return told(rows);
  };
  EXPECT_EQ(store("2026-11-24T03:09:59+01:00", look("c", "2026-11-24T03:09:59+01:00")), " 1 unreadable");
  EXPECT_EQ(store("2026-11-24T03:10:00+01:00", look("c", "2026-11-24T03:09:59+01:00")), "! 1 unreadable");
  EXPECT_EQ(store("2026-11-24T03:09:59+01:00", look("c", "2026-11-24T03:10:00+01:00")), "! 1 unreadable");
  // The time of an injection is typed: it says nothing about when the row before it was written.
  const Json typed = {{"id", "c"}, {"at", "2026-11-24T02:00:00+01:00"}, {"kind", "injection"}, {"insulin", "rapid"}, {"units", 2}, {"with", "syringe"}};
  EXPECT_EQ(store("2026-11-24T01:00:00+01:00", typed), "! 1 unreadable");
  // Without a plan nobody knows how long a dose counts.
  Json bare = sealed({look("a", "2026-11-01T01:00:00+01:00"), look("b", "2026-11-01T01:00:00+01:00"), look("c", "2026-11-01T01:00:00+01:00")});
  bare["rows"][1] = Json::object();
  EXPECT_EQ(told(bare), " 1 unreadable");
  bare.erase("plan");
  EXPECT_EQ(told(bare), "! 1 unreadable");
}

TEST(SamePerson, NameAndDayOfBirthDecide) {
  const auto same = [](const char* name, const char* born, const char* id = "b", const char* own = "a") {
    return ask_json("samePerson", {{"person", {{"id", own}, {"name", "Zoë Varga"}, {"born", "1987-02-11"}}},
                                   {"others", {{{"id", id}, {"name", name}, {"born", born}}}}})["same"][0] == true;
  };
  EXPECT_TRUE(same("Zoë Varga", "1987-02-11"));
  EXPECT_TRUE(same("  ZOË   varga ", "1987-02-11"));
  EXPECT_TRUE(same("somebody", "2000-01-01", "a"));
  EXPECT_FALSE(same("Zoë Varga", "1987-02-12"));
  EXPECT_FALSE(same("Zoe Varga", "1987-02-11"));
  EXPECT_FALSE(same("ZoëVarga", "1987-02-11"));
  EXPECT_FALSE(same("Zoë Varga", "1987-02-11", "p-demo-adult"));
  EXPECT_FALSE(same("Zoë Varga", "1987-02-11", "b", "p-demo-adult"));
}

}  // namespace
}  // namespace stopgap
