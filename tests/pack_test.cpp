// A plan as text for one printed code, and back. Expected values: the examples of RFC 9285, blocks of RFC 1951 written by hand, and
// the data codewords of ISO/IEC 18004. tests/second_reading/packed_plan.test.mjs reads the same texts with other tools.
#include <gtest/gtest.h>

#include "asked.hpp"
#include "figures/packing.hpp"
#include "figures/ranges.hpp"
#include "json/base45.hpp"
#include "json/deflate.hpp"
#include "json/known_plan.hpp"
#include "json/sha256.hpp"

namespace stopgap {
namespace {

using asked::Json;
using json::Inflated;

constexpr std::string_view letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

Json pack(const Json& plan) { return Json::parse(ask("packPlan", Json{{"plan", plan}}.dump())); }
Json unpack(const std::string& text) { return Json::parse(ask("unpackPlan", Json{{"text", text}}.dump())); }
// "reason path" of the first refusal, or "none".
std::string refusal(const Json& answer) {
  if (!answer.contains("refused")) return "none";
  return answer["refused"][0]["reason"].get<std::string>() + " " + answer["refused"][0]["path"].get<std::string>();
}
// A text as our own packing makes it, of whatever content, with a check that fits.
std::string packed_of(std::string_view content) {
  const std::string hex = json::sha256_hex(content);
  std::string bytes;
  for (std::size_t i = 0; i < 32; i += 2) bytes += static_cast<char>(std::stoi(hex.substr(i, 2), nullptr, 16));
  return "STOPGAP1:" + json::base45(bytes + json::deflate(content, json::known_plan));
}

TEST(Base45, WritesTheExamplesOfItsStandard) {  // RFC 9285, 4.3 and 4.4
  EXPECT_EQ(json::base45("AB"), "BB8");
  EXPECT_EQ(json::base45("Hello!!"), "%69 VD92EX0");
  EXPECT_EQ(json::base45("base-45"), "UJCLQE7W581");
  EXPECT_EQ(json::bytes_of_base45("QED8WEX0"), "ietf!");
  EXPECT_EQ(json::base45(""), "");
  EXPECT_EQ(json::bytes_of_base45(""), "");
}

TEST(Base45, RefusesWhatNoEncoderWrites) {
  EXPECT_EQ(json::bytes_of_base45("FGW"), "\xFF\xFF");  // 15 + 16 * 45 + 32 * 2025 = 65535
  EXPECT_FALSE(json::bytes_of_base45("GGW"));           // one more
  EXPECT_EQ(json::bytes_of_base45("U5"), "\xFF");       // 30 + 5 * 45 = 255
  EXPECT_FALSE(json::bytes_of_base45("V5"));
  for (const char* text : {"A", "BB8A", ":::", "bb8", "BB\n", "B_8", "BB\xC2\xA0"}) EXPECT_FALSE(json::bytes_of_base45(text)) << text;
}

TEST(Deflate, ReadsBlocksWrittenByHand) {
  const auto read = [](std::string_view bytes, std::string_view known = {}) { return json::inflate(bytes, known, 100); };
  // RFC 1951, 3.2.4: last block, stored, two bytes and their complement.
  const std::string_view stored{"\x01\x02\x00\xFD\xFFhi", 7};
  EXPECT_EQ(read(stored).text, "hi");
  EXPECT_EQ(read(stored, "something known").text, "hi");
  // 3.2.6: last block, fixed codes, 'a' is 10010001 and the end 0000000.
  const std::string_view fixed{"\x4B\x04\x00", 3};
  EXPECT_EQ(read(fixed).text, "a");
  // The same block asked to copy three letters from three letters back: 256+1 is 0000001, the distance code 2 is 00010.
  const std::string_view copy{"\x03\x22\x00", 3};
  EXPECT_EQ(read(copy, "abc").text, "abc");
  EXPECT_EQ(read(copy).state, Inflated::State::damaged);  // there is nothing to copy from
}

TEST(Deflate, ReadsAStreamThatEndsOnItsLastBit) {
  // Six letters of nine bits each in fixed codes: with the head of three bits and the end of seven they fill eight bytes.
  const std::string_view full{"\x9B\xB0\x70\xD3\xE1\x2B\x4F\x01", 8};
  EXPECT_EQ(json::inflate(full, "known", 100).text, "\x90\xA1\xB2\xC3\xD4\xE5");
  EXPECT_EQ(json::inflate(full.substr(0, 7), "known", 100).state, Inflated::State::damaged);
  EXPECT_EQ(json::inflate(std::string{full} + '\0', "known", 100).state, Inflated::State::damaged);
  EXPECT_EQ(json::inflate(std::string{full} + std::string(4, '\0'), "known", 100).state, Inflated::State::damaged);
}

TEST(Deflate, RefusesWhatIsCutOrHasSomethingAfterIt) {
  const std::string whole = json::deflate("a text of some length, a text of some length", "known");
  EXPECT_EQ(json::inflate(whole, "known", 100).text, "a text of some length, a text of some length");
  for (std::size_t length = 0; length < whole.size(); ++length)
    EXPECT_EQ(json::inflate(whole.substr(0, length), "known", 100).state, Inflated::State::damaged) << length;
  EXPECT_EQ(json::inflate(whole + '\0', "known", 100).state, Inflated::State::damaged);
}

TEST(Deflate, StopsWhereItWouldGrowTooLarge) {
  const std::string exact = json::deflate(std::string(1000, '0'), "known");
  EXPECT_EQ(json::inflate(exact, "known", 1000).text.size(), 1000u);
  EXPECT_EQ(json::inflate(exact, "known", 999).state, Inflated::State::too_large);
  // 50 MB of zeros; what comes back is nothing, and soon.
  const std::string bomb = json::deflate(std::string(50 * 1024 * 1024, '0'), "");
  EXPECT_LT(bomb.size(), 60000u);
  EXPECT_EQ(json::inflate(bomb, "", figures::plan_bytes).state, Inflated::State::too_large);
}

TEST(Code, HoldsWhatItsDataCodewordsHold) {
  // Data codewords of level M, versions 1 to 20, as the standard lists them. A character pair takes 11 bits, a single one 6; four
  // bits name the mode, and 9 (from version 10 on 11) say how many characters there are.
  const int codewords[] = {16, 28, 44, 64, 86, 108, 124, 154, 182, 216, 254, 290, 334, 365, 415, 453, 507, 563, 627, 669};
  ASSERT_EQ(std::size(codewords), figures::code_capacities.value.size());
  for (std::size_t i = 0; i < std::size(codewords); ++i) {
    const int bits = codewords[i] * 8 - 4 - (i + 1 < 10 ? 9 : 11);
    EXPECT_EQ(figures::code_capacities.value[i], bits / 11 * 2 + (bits % 11 >= 6 ? 1 : 0)) << "version " << i + 1;
  }
}

class PackedPlan : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Demo, PackedPlan, testing::Values("example", "adult", "child"));

TEST_P(PackedPlan, ComesBackWithItsFingerprint) {
  const Json plan = asked::plan_of(GetParam());
  const Json packed = pack(plan);
  ASSERT_TRUE(packed.contains("text")) << packed.dump();
  const std::string text = packed["text"];
  EXPECT_EQ(text.find_first_not_of(letters), std::string::npos) << "a code would need a wider alphabet";
  EXPECT_EQ(text.substr(0, 9), "STOPGAP1:");
  EXPECT_EQ(packed["level"], "M");
  EXPECT_EQ(packed["bytes"], (text.size() - 9) / 3 * 2 + (text.size() - 9) % 3 / 2);
  const int version = packed["version"];
  EXPECT_LE(text.size(), static_cast<std::size_t>(figures::code_capacities.value[static_cast<std::size_t>(version) - 1]));
  const Json back = unpack(text);
  ASSERT_TRUE(back.contains("plan")) << back.dump();
  EXPECT_EQ(back["plan"], plan);
  EXPECT_EQ(back["fingerprint"], packed["fingerprint"]);
  EXPECT_EQ(packed["fingerprint"], asked::advise(plan, Json::array(), {{"glucose", "LO"}, {"ketones", 0.1}})["planFingerprint"]);
  EXPECT_EQ(pack(back["plan"]), packed);
}

TEST_P(PackedPlan, IsRefusedWhereverItIsCut) {
  const std::string text = pack(asked::plan_of(GetParam()))["text"];
  for (std::size_t length = 0; length < text.size(); ++length) {
    const std::string found = refusal(unpack(text.substr(0, length)));
    EXPECT_EQ(found, length < 9 ? "wrongType /text" : "fingerprintMismatch /text") << length;
  }
  for (const char* more : {"0", "00", "000", " ", "BB8"}) EXPECT_EQ(refusal(unpack(text + more)), "fingerprintMismatch /text") << more;
}

TEST_P(PackedPlan, WithOneCharacterChangedIsRefusedOrTheSame) {
  const Json whole = unpack(pack(asked::plan_of(GetParam()))["text"]);
  const std::string text = pack(asked::plan_of(GetParam()))["text"];
  std::size_t refused = 0, tried = 0;
  for (std::size_t at = 9; at < text.size(); ++at)
    for (const std::size_t by : {1u, 7u, 20u, 38u}) {
      std::string changed = text;
      changed[at] = letters[(letters.find(text[at]) + by) % letters.size()];
      const Json answer = unpack(changed);
      ++tried;
      if (!answer.contains("refused")) {
        EXPECT_EQ(answer, whole) << changed;
        continue;
      }
      ++refused;
      EXPECT_EQ(answer["refused"][0]["path"], "/text");
    }
  EXPECT_GT(refused * 100, tried * 99);  // only the bits that fill the last byte carry nothing
}

TEST(Unpack, TellsWhatIsNoTextOfOursFromALaterOne) {
  const std::string text = pack(asked::plan_of("adult"))["text"];
  const auto headed = [&](const std::string& head) { return refusal(unpack(head + text.substr(9))); };
  EXPECT_EQ(headed("STOPGAP2:"), "newerFormat /text");
  EXPECT_EQ(headed("STOPGAP12:"), "newerFormat /text");
  for (const char* head : {"STOPGAP0:", "STOPGAP:", "stopgap1:", " STOPGAP1:", "STOPGAP1", "STOPGAP2", "HTTPS://"}) EXPECT_EQ(headed(head), "wrongType /text") << head;
  EXPECT_EQ(refusal(unpack("")), "wrongType /text");
  EXPECT_EQ(refusal(unpack(std::string(970, 'A'))), "wrongType /text");
  EXPECT_EQ(refusal(unpack(std::string(971, 'A'))), "tooLarge /text");
  EXPECT_EQ(unpack(std::string(971, 'A'))["refused"][0]["accepted"], "970");
  EXPECT_EQ(refusal(unpack(std::string(70000, 'A'))), "tooLarge /text");
  EXPECT_EQ(refusal(Json::parse(ask("unpackPlan", R"({"text":5})"))), "wrongType /text");
  EXPECT_EQ(refusal(Json::parse(ask("unpackPlan", "{}"))), "missing /text");
  EXPECT_EQ(refusal(Json::parse(ask("unpackPlan", R"({"text":"","plan":{}})"))), "unknownKey /plan");
}

TEST(Unpack, GivesTheWholeStrictReadingToWhatIsInside) {
  Json plan = asked::plan_of("adult");
  const auto inside = [&](const std::string& place, const Json& value) {
    Json changed = plan;
    changed[Json::json_pointer(place)] = value;
    return refusal(unpack(packed_of(changed.dump())));
  };
  EXPECT_EQ(refusal(unpack(packed_of(plan.dump()))), "fingerprintMismatch /text");  // "14.0" stands where the one text has "14"
  EXPECT_EQ(inside("/version", 2), "newerFormat /plan/version");
  EXPECT_EQ(inside("/high/trigger", 140), "outOfRange /plan/high/trigger");
  EXPECT_EQ(inside("/bolus", 1), "unknownKey /plan/bolus");
  EXPECT_EQ(refusal(unpack(packed_of("{\"a\":1,\"a\":2}"))), "duplicateKey /plan/a");
  EXPECT_EQ(refusal(unpack(packed_of("not at all"))), "notJson /plan");
  EXPECT_EQ(refusal(unpack(packed_of("[]"))), "wrongType /plan");
  EXPECT_EQ(refusal(unpack(packed_of(std::string(200, '[')))), "tooDeep /plan/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0");
  EXPECT_EQ(refusal(unpack(packed_of(std::string(100000, ' ')))), "tooLarge /text");
}

TEST(Pack, GivesThePlanTheWholeStrictReading) {
  Json plan = asked::plan_of("adult");
  plan["high"]["trigger"] = 140;
  EXPECT_EQ(refusal(pack(plan)), "outOfRange /plan/high/trigger");
  EXPECT_EQ(refusal(Json::parse(ask("packPlan", "{}"))), "missing /plan");
}

// A plan with everything that may be in one: every optional part, the day in parts, contacts, orders for a school.
Json full_plan() {
  return asked::example_with(Json::parse(R"({
    "/day/basal": [{"from":"00:00","value":0.75},{"from":"03:00","value":0.9},{"from":"06:00","value":0.85},{"from":"10:00","value":0.7},{"from":"16:30","value":0.8},{"from":"21:00","value":0.65}],
    "/day/correctionFactor": [{"from":"00:00","value":2.6},{"from":"06:30","value":2.1},{"from":"11:00","value":2.4},{"from":"22:00","value":2.8}],
    "/day/carbohydrateRatio": [{"from":"00:00","value":12},{"from":"06:30","value":8.5},{"from":"11:00","value":11},{"from":"17:00","value":9.5}],
    "/day/target": [{"from":"00:00","value":7.1},{"from":"06:30","value":6.2},{"from":"22:00","value":6.9}],
    "/contacts": [{"name":"Night line, diabetes unit","relation":"team","phone":"+44 0000 000011","when":"any hour"},{"name":"Ruth Varga","relation":"home","phone":"+44 0000 000012","when":"after four"},
                  {"name":"Tomas, next door","relation":"neighbour","phone":"+44 0000 000013","when":"nights"}],
    "/ketones/anyGlucose": {"shareOfDaily":0.05},
    "/school": {"prescriber":"Dr L. Okonjo","ordersExpire":"2027-07-20","mayInject":["Ms Adeyemi","Mr Brandt"],"calculation":"tableOnly","callFirstAbove":4,"staff":["Ms Adeyemi","Mr Brandt","Mrs Castellan"],
                "storage":"Blue box in the office fridge, second shelf","nurseReviewedOn":"2026-09-01"},
    "/travel": {"homeOffset":"+01:00","languages":["en","fr","it"]},
    "/notes": "Keep the spare pen in the kitchen drawer. The grey bag holds strips, needles and a spare set."})"));
}

TEST(Pack, AFullPlanFitsOneCode) {
  const Json packed = pack(full_plan());
  ASSERT_TRUE(packed.contains("text")) << packed.dump();
  EXPECT_LE(packed["version"].get<int>(), 20);
  EXPECT_EQ(unpack(packed["text"])["plan"], full_plan());
}

TEST(Pack, NamesTheLongestTextsOfAPlanThatDoesNotFit) {
  // No two sentences alike, so that nothing can be saved on them.
  const auto words = [](std::uint32_t seed, std::size_t length) {
    std::string out;
    while (out.size() < length) {
      seed = seed * 1664525u + 1013904223u;
      out += letters[10 + (seed >> 24) % 26];
    }
    return out;
  };
  Json plan = full_plan();
  plan["notes"] = words(1, 240);
  plan["agreement"]["retyped"] = Json::array();
  for (std::uint32_t i = 0; i < 3; ++i) plan["agreement"]["retyped"].push_back({{"path", "/plan/high/trigger"}, {"reason", words(2 + i, 200 + i)}});
  const Json answer = pack(plan);
  EXPECT_EQ(refusal(answer), "tooLarge /plan/notes");
  for (const Json& one : answer["refused"]) {
    EXPECT_EQ(one["reason"], "tooLarge");
    EXPECT_EQ(one["accepted"], "970");
    EXPECT_GT(std::stoi(one["got"].get<std::string>()), 970);
  }
  EXPECT_EQ(answer["refused"][1]["path"], "/plan/agreement/retyped/2/reason");
  EXPECT_EQ(answer["refused"][2]["path"], "/plan/agreement/retyped/1/reason");
}

TEST(Pack, AWordInAnyScriptComesBack) {
  Json plan = asked::plan_of("child");
  plan["title"] = "\u0423 \u0431\u0430\u0431\u0443\u0448\u043a\u0438, \u65c5\u884c, \"\u00e9t\u00e9\" \\ \U0001F319";
  EXPECT_EQ(unpack(pack(plan)["text"])["plan"], plan);
}

}  // namespace
}  // namespace stopgap
