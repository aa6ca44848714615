#include "json/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>
#include <nlohmann/json.hpp>

#include "figures/ranges.hpp"
#include "json/plain_text.hpp"

namespace stopgap::json {
namespace {

constexpr std::size_t few_members = 24;         // up to here comparing every pair is quickest
constexpr std::size_t first_members = 6;        // room made at once: most of our objects have about as many
constexpr int number_overflow = 406;            // the library's id for a number no double can hold
constexpr std::int64_t huge_exponent = 1000000000;
constexpr std::int64_t most_digits = 18;        // every decimal of so many digits fits 64 bits
constexpr std::int64_t most_zeros_written = 40;

// Builds the tree from the library's events, so that a number is still the text it was.
class Builder {
 public:
  explicit Builder(Refusals& refusals) : refusals_(refusals) {}
  Node take() { return std::move(root_); }

  bool null() { slot(); return true; }
  bool boolean(bool truth) {
    Node& node = slot();
    node.kind = Node::Kind::boolean;
    node.truth = truth;
    return true;
  }
  bool number_integer(std::int64_t value) { return whole(value); }
  bool number_unsigned(std::uint64_t value) { return whole(value); }
  bool number_float(double, const std::string& typed) { return number(typed); }
  bool string(std::string& text) {
    Node& node = slot();
    node.kind = Node::Kind::string;
    node.text = text;
    return true;
  }
  template <class Binary>
  bool binary(Binary&) { return false; }

  bool start_object(std::size_t) { return open(Node::Kind::object); }
  bool start_array(std::size_t) { return open(Node::Kind::array); }
  bool key(std::string& key) {
    auto& members = open_.back()->members;
    if (members.empty()) members.reserve(first_members);
    members.emplace_back(key, Node{});
    return true;
  }
  bool end_array() { open_.pop_back(); return true; }
  bool end_object() {
    refuse_duplicates();
    open_.pop_back();
    return true;
  }
  template <class Exception>
  bool parse_error(std::size_t, const std::string& token, const Exception& error) {
    if (error.id == number_overflow) {
      slot();  // so that the path counts the number itself
      refusals_.add(path(open_.size()), Reason::outOfRange, shortened(token));
    } else {
      refusals_.add("", Reason::notJson, shortened(token));
    }
    return false;
  }

 private:
  // Where the next value goes. Addresses in `open_` stay good: a list grows only while no child of it is open.
  Node& slot() {
    if (open_.empty()) return root_;
    Node& parent = *open_.back();
    if (parent.kind == Node::Kind::object) return parent.members.back().second;
    if (parent.items.empty()) parent.items.reserve(first_members);
    return parent.items.emplace_back();
  }
  bool open(Node::Kind kind) {
    Node& node = slot();
    if (open_.size() == static_cast<std::size_t>(figures::depth)) {
      refusals_.add(path(open_.size()), Reason::tooDeep);
      return false;
    }
    node.kind = kind;
    open_.push_back(&node);
    return true;
  }
  template <class Whole>
  bool whole(Whole value) {
    std::array<char, std::numeric_limits<Whole>::digits10 + 2> digits;  // a digit more than always fits, and a sign
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
    return number({digits.data(), static_cast<std::size_t>(end - digits.data())});
  }
  bool number(std::string_view typed) {
    Node& node = slot();
    node.kind = Node::Kind::number;
    node.text = typed;
    return true;
  }

  // The place of the value last begun inside the first `levels` open lists and objects.
  std::string path(std::size_t levels) const {
    std::string out;
    for (std::size_t i = 0; i < levels; ++i) {
      const Node& node = *open_[i];
      if (node.kind == Node::Kind::object) {
        if (!node.members.empty()) append_pointer_step(out, node.members.back().first);
      } else {
        append_pointer_step(out, std::to_string(node.items.empty() ? 0 : node.items.size() - 1));
      }
    }
    return out;
  }
  void refuse_duplicate(const std::string& key) {
    std::string place = path(open_.size() - 1);
    append_pointer_step(place, key);
    refusals_.add(std::move(place), Reason::duplicateKey);
  }
  void refuse_duplicates() {
    const auto& members = open_.back()->members;
    if (members.size() <= few_members) {
      for (std::size_t i = 1; i < members.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
          if (members[i].first == members[j].first) {
            refuse_duplicate(members[i].first);
            break;
          }
      return;
    }
    std::vector<std::string_view> keys;
    keys.reserve(members.size());
    for (const auto& member : members) keys.push_back(member.first);
    std::sort(keys.begin(), keys.end());
    for (std::size_t i = 1; i < keys.size(); ++i)
      if (keys[i] == keys[i - 1]) refuse_duplicate(std::string{keys[i]});
  }

  Refusals& refusals_;
  Node root_;
  std::vector<Node*> open_;
};

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

void skip_spaces(std::string_view text, std::size_t& at) {
  while (at < text.size() && is_space(text[at])) ++at;
}

// Past the closing quote of the string that begins at `at`.
void skip_string(std::string_view text, std::size_t& at) {
  for (++at; at < text.size() && text[at] != '"'; ++at)
    if (text[at] == '\\') ++at;
  at = std::min(at + 1, text.size());
}

void skip_value(std::string_view text, std::size_t& at) {
  std::size_t depth = 0;
  while (at < text.size()) {
    const char c = text[at];
    if (c == '"') { skip_string(text, at); continue; }
    if (c == '{' || c == '[') ++depth;
    else if (c == '}' || c == ']') {
      if (depth == 0) return;
      --depth;
    } else if (c == ',' && depth == 0) return;
    ++at;
  }
}

// Whether a key as typed, escapes and all, spells the wanted one: "\u0070lan" is "plan".
bool spells(std::string_view typed, std::string_view wanted) {
  if (typed.find('\\') == std::string_view::npos) return typed == wanted;
  std::string plain;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    if (typed[i] != '\\') { plain += typed[i]; continue; }
    if (++i == typed.size() || typed[i] != 'u' || i + 4 >= typed.size()) return false;
    unsigned code = 0;
    const char* const first = typed.data() + i + 1;
    if (std::from_chars(first, first + 4, code, 16).ptr != first + 4 || code > 0x7E) return false;
    plain += static_cast<char>(code);
    i += 4;
  }
  return plain == wanted;
}

// A decimal taken apart: sign, digits without zeros at either end, and the power of ten of the last digit.
struct Parts {
  bool negative = false;
  std::string digits;
  std::int64_t exponent = 0;
};

Parts take_apart(std::string_view typed) {
  Parts parts;
  std::size_t at = 0;
  if (at < typed.size() && (typed[at] == '-' || typed[at] == '+')) parts.negative = typed[at++] == '-';
  bool after_point = false;
  for (; at < typed.size() && (is_digit(typed[at]) || typed[at] == '.'); ++at) {
    if (typed[at] == '.') { after_point = true; continue; }
    if (!parts.digits.empty() || typed[at] != '0') parts.digits += typed[at];
    if (after_point) --parts.exponent;
  }
  if (at < typed.size() && (typed[at] == 'e' || typed[at] == 'E')) {
    ++at;
    bool down = false;
    if (at < typed.size() && (typed[at] == '-' || typed[at] == '+')) down = typed[at++] == '-';
    std::int64_t power = 0;
    for (; at < typed.size() && is_digit(typed[at]); ++at) power = std::min(power * 10 + (typed[at] - '0'), huge_exponent);
    parts.exponent += down ? -power : power;
  }
  while (!parts.digits.empty() && parts.digits.back() == '0') {
    parts.digits.pop_back();
    ++parts.exponent;
  }
  if (parts.digits.empty()) parts = Parts{};  // zero has no sign and no size
  return parts;
}

void append_number(std::string& out, std::string_view typed) {
  const Parts parts = take_apart(typed);
  if (parts.digits.empty()) { out += '0'; return; }
  if (parts.negative) out += '-';
  const auto length = static_cast<std::int64_t>(parts.digits.size());
  if (parts.exponent > most_zeros_written || length + parts.exponent < -most_zeros_written) {
    out += parts.digits + "e" + std::to_string(parts.exponent);  // never a million zeros
  } else if (parts.exponent >= 0) {
    out += parts.digits;
    out.append(static_cast<std::size_t>(parts.exponent), '0');
  } else if (length + parts.exponent > 0) {
    const auto whole = static_cast<std::size_t>(length + parts.exponent);
    out.append(parts.digits, 0, whole);
    out += '.';
    out.append(parts.digits, whole);
  } else {
    out += "0.";
    out.append(static_cast<std::size_t>(-(length + parts.exponent)), '0');
    out += parts.digits;
  }
}

void append_canonical(std::string& out, const Node& node) {
  switch (node.kind) {
    case Node::Kind::null: out += "null"; return;
    case Node::Kind::boolean: out += node.truth ? "true" : "false"; return;
    case Node::Kind::number: append_number(out, node.text); return;
    case Node::Kind::string: append_string(out, node.text); return;
    case Node::Kind::array: {
      out += '[';
      for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (i != 0) out += ',';
        append_canonical(out, node.items[i]);
      }
      out += ']';
      return;
    }
    case Node::Kind::object: {
      std::vector<const std::pair<std::string, Node>*> sorted;
      sorted.reserve(node.members.size());
      for (const auto& member : node.members) sorted.push_back(&member);
      std::sort(sorted.begin(), sorted.end(), [](const auto* a, const auto* b) { return a->first < b->first; });
      out += '{';
      for (std::size_t i = 0; i < sorted.size(); ++i) {
        if (i != 0) out += ',';
        append_string(out, sorted[i]->first);
        out += ':';
        append_canonical(out, sorted[i]->second);
      }
      out += '}';
      return;
    }
  }
}

}  // namespace

const Node* Node::find(std::string_view key) const {
  for (const auto& member : members)
    if (member.first == key) return &member.second;
  return nullptr;
}

Node parse(std::string_view text, Refusals& refusals) {
  // The library takes a zero byte for the end of the text, and would not look at what follows.
  if (text.find('\0') != std::string_view::npos) {
    refusals.add("", Reason::notJson);
    return {};
  }
  Builder builder{refusals};
  nlohmann::json::sax_parse(text.data(), text.data() + text.size(), &builder);
  return builder.take();
}

std::string_view top_level_member(std::string_view text, std::string_view key) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  std::size_t at = text.substr(0, byte_order_mark.size()) == byte_order_mark ? byte_order_mark.size() : 0;
  skip_spaces(text, at);
  if (at >= text.size() || text[at] != '{') return {};
  ++at;
  while (at < text.size()) {
    skip_spaces(text, at);
    if (at >= text.size() || text[at] != '"') return {};
    const std::size_t key_start = at + 1;
    skip_string(text, at);
    if (at <= key_start) return {};
    const std::string_view found = text.substr(key_start, at - key_start - 1);
    skip_spaces(text, at);
    if (at >= text.size() || text[at] != ':') return {};
    ++at;
    skip_spaces(text, at);
    const std::size_t start = at;
    skip_value(text, at);
    if (spells(found, key)) {
      std::string_view value = text.substr(start, at - start);
      while (!value.empty() && is_space(value.back())) value.remove_suffix(1);
      return value;
    }
    if (at >= text.size() || text[at] != ',') return {};
    ++at;
  }
  return {};
}

Decimal decimal(std::string_view typed, int digits) {
  const Parts parts = take_apart(typed);
  if (parts.digits.empty()) return {};
  const std::int64_t zeros = parts.exponent + digits;
  if (zeros < 0) return {0, Decimal::State::too_precise};
  if (static_cast<std::int64_t>(parts.digits.size()) + zeros > most_digits) return {0, Decimal::State::out_of_range};
  std::int64_t count = 0;
  for (const char digit : parts.digits) count = count * 10 + (digit - '0');
  for (std::int64_t i = 0; i < zeros; ++i) count *= 10;
  return {parts.negative ? -count : count, Decimal::State::exact};
}

std::string canonical(const Node& node) {
  std::string out;
  append_canonical(out, node);
  return out;
}

void append_string(std::string& out, std::string_view text) {
  constexpr std::string_view hex = "0123456789abcdef";
  out += '"';
  for (const char c : text) {
    switch (c) {
      case '"': out += "\\\""; break;
      case '\\': out += "\\\\"; break;
      case '\b': out += "\\b"; break;
      case '\f': out += "\\f"; break;
      case '\n': out += "\\n"; break;
      case '\r': out += "\\r"; break;
      case '\t': out += "\\t"; break;
      default: {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20) {
          out += "\\u00";
          out += hex[byte >> 4];
          out += hex[byte & 0x0Fu];
        } else {
          out += c;
        }
      }
    }
  }
  out += '"';
}

}  // namespace stopgap::json
