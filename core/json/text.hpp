// Strict reading of JSON text into a tree that keeps every number as it was typed, and exact writing of answers.
// Shape: UTF-8 text in, tree or refusals out. Numbers stay text until a field asks for them as a decimal: a float never
// stands between. Errors: notJson, tooDeep, duplicateKey, outOfRange (a number no double can hold).
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>
#include "model/refusal.hpp"

namespace stopgap::json {

struct Node {
  enum class Kind : std::uint8_t { null, boolean, number, string, array, object };
  Kind kind = Kind::null;
  bool truth = false;
  std::string text;                                      // a string's characters, or a number as typed
  std::vector<Node> items;                               // array
  std::vector<std::pair<std::string, Node>> members;     // object, in the order of the text

  const Node* find(std::string_view key) const;
};

// Parses the text; on refusals the tree must not be used.
Node parse(std::string_view text, Refusals& refusals);

// The value of a member at the top level as it stands in the text, without parsing it: size limits are checked before
// anything is built. Empty when the key is not there or the text is not an object.
std::string_view top_level_member(std::string_view text, std::string_view key);

// A decimal as whole counts of 10^-digits; no value when it has more digits than that. Trailing zeros carry nothing.
struct Decimal {
  std::int64_t count = 0;
  enum class State : std::uint8_t { exact, too_precise, out_of_range } state = State::exact;
};
Decimal decimal(std::string_view typed, int digits);

// The same tree as text in one fixed way: keys sorted, no blanks, numbers without needless zeros. The fingerprint of a plan
// is taken from it, so that blanks and the order of keys do not change a fingerprint and any changed value does.
std::string canonical(const Node& node);

// Appends text as a JSON string.
void append_string(std::string& out, std::string_view text);

}  // namespace stopgap::json
