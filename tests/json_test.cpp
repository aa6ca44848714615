// JSON text: the tree keeps numbers as typed, refuses what is no JSON, and writes one fixed form.
#include <gtest/gtest.h>

#include "json/sha256.hpp"
#include "json/text.hpp"

namespace stopgap::json {
namespace {

struct Parsed {
  Node node;
  Refusals refusals;
};
Parsed parsed(std::string_view text) {
  Parsed out;
  out.node = parse(text, out.refusals);
  return out;
}
// "reason path" of the first refusal, or nothing.
std::string refusal(std::string_view text, std::string* path = nullptr) {
  const Parsed out = parsed(text);
  if (out.refusals.empty()) return "";
  const Refusal& first = out.refusals.list().front();
  if (path != nullptr) *path = first.path;
  switch (first.reason) {
    case Reason::notJson: return "notJson";
    case Reason::tooDeep: return "tooDeep";
    case Reason::duplicateKey: return "duplicateKey";
    case Reason::outOfRange: return "outOfRange";
    default: return "another reason";
  }
}

TEST(Parse, KeepsEveryNumberAsItWasTyped) {
  for (const char* number : {"0", "14", "-3", "14.0", "14.00", "0.10", "1.40e1", "1E2", "123456789012345678901234567890", "0.1234567890123456789"}) {
    const Parsed out = parsed(number);
    EXPECT_TRUE(out.refusals.empty()) << number;
    EXPECT_EQ(out.node.kind, Node::Kind::number) << number;
    EXPECT_EQ(out.node.text, number);
  }
}

TEST(Parse, BuildsObjectsAndListsInTheOrderOfTheText) {
  const Parsed out = parsed(R"( {"b": [1, true, null, {"c": "x\u00e9\n"}], "a": {}, "d": []} )");
  ASSERT_TRUE(out.refusals.empty());
  ASSERT_EQ(out.node.members.size(), 3u);
  EXPECT_EQ(out.node.members[0].first, "b");
  const Node* const list = out.node.find("b");
  ASSERT_NE(list, nullptr);
  ASSERT_EQ(list->items.size(), 4u);
  EXPECT_EQ(list->items[0].text, "1");
  EXPECT_TRUE(list->items[1].truth);
  EXPECT_EQ(list->items[2].kind, Node::Kind::null);
  EXPECT_EQ(list->items[3].find("c")->text, "x\xC3\xA9\n");
  EXPECT_EQ(out.node.find("a")->kind, Node::Kind::object);
  EXPECT_EQ(out.node.find("d")->kind, Node::Kind::array);
  EXPECT_EQ(out.node.find("e"), nullptr);
}

TEST(Parse, RefusesWhatIsNoJson) {
  for (const char* text : {"", " ", "{", "[1,]", "{\"a\":1,}", "{'a':1}", "{a:1}", "[1 2]", "01", "1.", ".5", "+1", "NaN", "Infinity", "nul", "{} {}",
                           "[1]x", "// no\n1", "\"", "\"\n\"", "\"\\x\"", "3,5", "[\"\\ud800\"]", "[\"\\udc00\\ud800\"]", "\"\\ud83d\\u0041\""})
    EXPECT_EQ(refusal(text), "notJson") << text;
}

TEST(Parse, RefusesBytesThatAreNotUtf8) {
  for (const char* text : {"\"\xFF\"", "\"\xC0\xAF\"", "\"\xE2\x82\"", "\"\xED\xA0\x80\"", "\"\xF4\x90\x80\x80\"", "\xFF", "{\"\x80\":1}"})
    EXPECT_EQ(refusal(text), "notJson");
}

TEST(Parse, AZeroByteEndsNothing) {
  // The library behind takes it for the end of the text: what follows would go unread.
  EXPECT_EQ(refusal(std::string_view{"{}\0{\"x\":1}", 10}), "notJson");
  EXPECT_EQ(refusal(std::string_view{"\0", 1}), "notJson");
}

TEST(Parse, WhatWasTypedComesBackShortAndHarmless) {
  const std::string longer(100, '7');
  const Parsed out = parsed("[" + longer + "x]");
  ASSERT_FALSE(out.refusals.empty());
  EXPECT_LE(out.refusals.list().front().got.size(), 40u);
  const Parsed bytes = parsed("\"\xFF\"");
  ASSERT_FALSE(bytes.refusals.empty());
  EXPECT_EQ(bytes.refusals.list().front().got.find('\xFF'), std::string::npos);
}

std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }

TEST(Parse, RefusesWhatIsTooDeepAtSixteen) {
  EXPECT_EQ(refusal(nested(15)), "");
  EXPECT_EQ(refusal(nested(16)), "");
  std::string path;
  EXPECT_EQ(refusal(nested(17), &path), "tooDeep");
  EXPECT_EQ(path, "/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0");
}

TEST(Parse, AHundredThousandListsInEachOtherAreRefusedNotFollowed) {
  EXPECT_EQ(refusal(nested(100000)), "tooDeep");
  std::string objects;
  for (int i = 0; i < 100000; ++i) objects += "{\"a\":";
  EXPECT_EQ(refusal(objects), "tooDeep");
}

TEST(Parse, NamesEveryDuplicateKeyAtItsPlace) {
  const Parsed out = parsed(R"({"a":{"b":1,"c":2,"b":3},"l":[{"x":1},{"y":1,"y":1,"y":1}],"a/b":0,"a/b":1})");
  ASSERT_EQ(out.refusals.count(), 4u);
  EXPECT_EQ(out.refusals.list()[0].path, "/a/b");
  EXPECT_EQ(out.refusals.list()[1].path, "/l/1/y");
  EXPECT_EQ(out.refusals.list()[2].path, "/l/1/y");
  EXPECT_EQ(out.refusals.list()[3].path, "/a~1b");
  for (const Refusal& one : out.refusals.list()) EXPECT_EQ(one.reason, Reason::duplicateKey);
  // Spelled with an escape it is the same key.
  EXPECT_EQ(refusal(R"({"plan":1,"\u0070lan":2})"), "duplicateKey");
}

TEST(Parse, FindsADuplicateAmongVeryManyKeys) {
  std::string text = "{";
  for (int i = 0; i < 50000; ++i) text += "\"k" + std::to_string(i) + "\":0,";
  std::string path;
  EXPECT_EQ(refusal(text + "\"z\":0}"), "");
  EXPECT_EQ(refusal(text + "\"k777\":0}", &path), "duplicateKey");
  EXPECT_EQ(path, "/k777");
}

TEST(Parse, ANumberNoDoubleCanHoldIsOutOfRangeAtItsPlace) {
  std::string path;
  EXPECT_EQ(refusal(R"({"situation":{"signs":[0,1e999]}})", &path), "outOfRange");
  EXPECT_EQ(path, "/situation/signs/1");
  EXPECT_EQ(refusal("-1e999"), "outOfRange");
}

TEST(Parse, AStrangeLongKeyIsShortenedInItsPath) {
  const std::string key(5000, 'k');
  std::string path;
  EXPECT_EQ(refusal("{\"" + key + "\":1,\"" + key + "\":2}", &path), "duplicateKey");
  EXPECT_LE(path.size(), 41u);
}

// Expected counts are worked by hand from the text.
TEST(DecimalText, ReadsExactCounts) {
  const auto exact = [](std::string_view typed, int digits, std::int64_t count) {
    const Decimal read = decimal(typed, digits);
    EXPECT_EQ(read.state, Decimal::State::exact) << typed;
    EXPECT_EQ(read.count, count) << typed;
  };
  exact("14", 1, 140);
  exact("14.0", 1, 140);
  exact("14.00", 1, 140);
  exact("140.000", 0, 140);
  exact("1.40e1", 1, 140);
  exact("1.4E+1", 1, 140);
  exact("140e-1", 1, 140);
  exact("0.000140e5", 1, 140);
  exact("0.05", 2, 5);
  exact("0.3", 2, 30);
  exact("-0.3", 1, -3);
  exact("-0", 1, 0);
  exact("0.000", 0, 0);
  exact("0e999999999999", 0, 0);
  exact("2.675", 3, 2675);  // a double would hold 2.67499999...
  exact("1.005", 3, 1005);
  exact("999999999999999999", 0, 999999999999999999);
}

TEST(DecimalText, NoticesEveryDigitTooMany) {
  for (const char* typed : {"14.05", "14.01", "14.000000000000000000001", "1e-2", "0.14e0", "1e-999999999999999999999", "-14.05"})
    EXPECT_EQ(decimal(typed, 1).state, Decimal::State::too_precise) << typed;
}

TEST(DecimalText, RefusesWhatDoesNotFit) {
  for (const char* typed : {"1e300", "1e19", "99999999999999999999", "-1e300", "1e999999999999999999999", "1000000000000000000"})
    EXPECT_EQ(decimal(typed, 1).state, Decimal::State::out_of_range) << typed;
}

TEST(TopLevelMember, FindsTheTextOfAMember) {
  const std::string text = R"( { "a" : 1 , "plan" : {"x":"}]\"{", "plan": [2]} , "record":[1,{"b":2}],"s":"a,b" } )";
  EXPECT_EQ(top_level_member(text, "a"), "1");
  EXPECT_EQ(top_level_member(text, "plan"), R"({"x":"}]\"{", "plan": [2]})");
  EXPECT_EQ(top_level_member(text, "record"), R"([1,{"b":2}])");
  EXPECT_EQ(top_level_member(text, "s"), R"("a,b")");
  EXPECT_EQ(top_level_member(text, "x"), "");
  EXPECT_EQ(top_level_member("\xEF\xBB\xBF{\"a\":1}", "a"), "1");
}

TEST(TopLevelMember, AnEscapedKeyDoesNotSlipPast) {
  EXPECT_EQ(top_level_member(R"({"\u0070lan":[1,2,3]})", "plan"), "[1,2,3]");
  EXPECT_EQ(top_level_member(R"({"pl\u0061n":[1]})", "plan"), "[1]");
  EXPECT_EQ(top_level_member(R"({"pl\nan":[1]})", "plan"), "");
}

TEST(TopLevelMember, EndsWithTheTextWhateverItHolds) {
  for (const char* text : {"", "{", "{\"", "{\"plan", "{\"plan\"", "{\"plan\":", "{\"plan\":\"", "{\"plan\":\"\\", "{\"plan\":[[", "[]", "{\"a\\", "{\"\\u00", "{,}", "{\"a\":1 \"plan\":2}"})
    EXPECT_LE(top_level_member(text, "plan").size(), 2u) << text;
}

TEST(Canonical, IsTheSameForTheSameContent) {
  const Parsed one = parsed(R"({"b": 14.0, "a": [1.50, -0.0, 1e2, 0.05], "é": "x\u0041\/", "c": {"z": true, "y": null}})");
  const Parsed two = parsed("{\"c\":{\"y\":null,\"z\":true},\"\xC3\xA9\":\"xA/\",\"a\":[1.5,0,100,5e-2],\"b\":14}");
  ASSERT_TRUE(one.refusals.empty());
  ASSERT_TRUE(two.refusals.empty());
  const std::string wanted = "{\"a\":[1.5,0,100,0.05],\"b\":14,\"c\":{\"y\":null,\"z\":true},\"\xC3\xA9\":\"xA/\"}";
  EXPECT_EQ(canonical(one.node), wanted);
  EXPECT_EQ(canonical(two.node), wanted);
}

TEST(Canonical, DiffersWithAnyChangedValue) {
  const auto form = [](std::string_view text) { return canonical(parsed(text).node); };
  EXPECT_NE(form("[14]"), form("[14.1]"));
  EXPECT_NE(form("[1,2]"), form("[2,1]"));
  EXPECT_NE(form("[true]"), form("[\"true\"]"));
  EXPECT_NE(form("[1]"), form("[\"1\"]"));
  EXPECT_NE(form("[0.1]"), form("[0.10000000000000000001]"));  // equal as doubles
  EXPECT_EQ(form("[1e-2000000]").size(), 12u);                  // never two million zeros
}

TEST(Canonical, WritesStringsWithTheFewestEscapes) {
  std::string out;
  append_string(out, "a\"\\\n\t\b\f\r\x01\x1F\x7F/\xC2\xA0");
  EXPECT_EQ(out, "\"a\\\"\\\\\\n\\t\\b\\f\\r\\u0001\\u001f\x7F/\xC2\xA0\"");
}

TEST(Fingerprint, MatchesTheExamplesOfTheStandard) {
  // FIPS 180-4, examples for SHA-256: one block, two blocks; and the empty message.
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

}  // namespace
}  // namespace stopgap::json
