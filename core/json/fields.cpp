#include "json/fields.hpp"

#include <limits>

#include "json/plain_text.hpp"

namespace stopgap::json {
namespace {

using Kind = Node::Kind;

constexpr std::size_t keys_counted = std::numeric_limits<std::uint64_t>::digits;

void append_pointer(std::string& out, const Place& place) {
  if (place.parent == nullptr) { out += place.key; return; }
  append_pointer(out, *place.parent);
  if (place.in_list) append_pointer_step(out, std::to_string(place.index));
  else append_pointer_step(out, place.key);
}

std::string typed(const Node& node) {
  switch (node.kind) {
    case Kind::null: return "null";
    case Kind::boolean: return node.truth ? "true" : "false";
    case Kind::number:
    case Kind::string: return shortened(node.text);
    case Kind::array: return "[ ]";
    case Kind::object: return "{ }";
  }
  return {};
}

// The value if it is of this kind; otherwise refused, unless it is only absent.
const Node* of_kind(const Item& item, Kind kind, std::string_view accepted) {
  if (!item) return nullptr;
  if (item.node->kind == kind) return item.node;
  item.refuse(Reason::wrongType, accepted);
  return nullptr;
}

// "8.0, 8.1 to 25.0": the first two show how fine a number may be.
std::string steps_text(const figures::Range& range) {
  return decimal_text(range.lowest, range.digits) + ", " + decimal_text(range.lowest + range.multiple, range.digits) + " to " +
         decimal_text(range.highest, range.digits);
}

std::string length_text(std::size_t least, std::size_t most) { return std::to_string(least) + " to " + std::to_string(most); }

template <class Value>
std::optional<Value> parsed(const Item& item, std::optional<Value> (*parse)(std::string_view), std::string_view accepted) {
  const Node* const node = of_kind(item, Kind::string, accepted);
  if (node == nullptr) return std::nullopt;
  auto value = parse(node->text);
  if (!value) item.refuse(Reason::wrongType, accepted);
  return value;
}

}  // namespace

std::string pointer_of(const Place& place) {
  std::string out;
  append_pointer(out, place);
  return out;
}

void Item::refuse(Reason reason, std::string_view accepted) const {
  refusals->add(pointer_of(place), reason, node == nullptr ? std::string{} : typed(*node), std::string{accepted});
}

Item root_item(const Node& node, std::string_view path, Refusals& refusals) {
  return {&node, {nullptr, path, 0, false}, &refusals};
}

Fields::Fields(const Item& item) : place_(item.place), node_(of_kind(item, Kind::object, "{ }")), refusals_(item.refusals) {}

const Node* Fields::ask(std::string_view key) {
  if (node_ == nullptr) return nullptr;
  const auto& members = node_->members;
  for (std::size_t tried = 0, i = next_; tried < members.size(); ++tried, ++i) {
    if (i >= members.size()) i = 0;
    if (members[i].first != key) continue;
    if (i < keys_counted) asked_ |= std::uint64_t{1} << i;
    next_ = i + 1;
    return &members[i].second;
  }
  return nullptr;
}

Item Fields::need(std::string_view key) {
  const Item item{ask(key), {&place_, key, 0, false}, refusals_};
  if (!item && usable()) refuse_missing(key);
  return item;
}

Item Fields::may(std::string_view key) { return {ask(key), {&place_, key, 0, false}, refusals_}; }

void Fields::refuse(std::string_view key, Reason reason, std::string_view got, std::string_view accepted) const {
  refusals_->add(pointer_of({&place_, key, 0, false}), reason, shortened(got), std::string{accepted});
}

void Fields::finish() const {
  if (!usable()) return;
  const auto& members = node_->members;
  for (std::size_t i = 0; i < members.size() && i < keys_counted; ++i)
    if ((asked_ >> i & 1u) == 0) refuse(members[i].first, Reason::unknownKey, typed(members[i].second), {});
}

Elements::Elements(const Item& item, std::size_t least, std::size_t most)
    : place_(item.place), node_(of_kind(item, Kind::array, "[ ]")), refusals_(item.refusals) {
  if (node_ == nullptr || (node_->items.size() >= least && node_->items.size() <= most)) return;
  refusals_->add(pointer_of(place_), Reason::outOfRange, std::to_string(node_->items.size()), length_text(least, most));
  node_ = nullptr;
}

std::string decimal_text(std::int64_t count, int digits) {
  std::string out = std::to_string(count < 0 ? -count : count);
  const auto wanted = static_cast<std::size_t>(digits);
  if (out.size() <= wanted) out.insert(0, wanted + 1 - out.size(), '0');
  if (digits > 0) out.insert(out.size() - wanted, 1, '.');
  return count < 0 ? "-" + out : out;
}

std::string without_zeros(std::string typed) {
  if (typed.find('.') == std::string::npos) return typed;
  while (typed.back() == '0') typed.pop_back();
  if (typed.back() == '.') typed.pop_back();
  return typed;
}

std::string range_text(const figures::Range& range) {
  return decimal_text(range.lowest, range.digits) + " to " + decimal_text(range.highest, range.digits);
}

std::optional<Number> number(const Item& item, const figures::Range& range) {
  if (!item) return std::nullopt;
  if (item.node->kind != Kind::number) {
    item.refuse(Reason::wrongType, range_text(range));
    return std::nullopt;
  }
  const Decimal read = decimal(item.node->text, range.digits);
  if (read.state == Decimal::State::too_precise) {
    item.refuse(Reason::tooPrecise, steps_text(range));
  } else if (read.state == Decimal::State::out_of_range || read.count < range.lowest || read.count > range.highest) {
    item.refuse(Reason::outOfRange, range_text(range));
  } else if (read.count % range.multiple != 0) {
    item.refuse(Reason::tooPrecise, steps_text(range));
  } else {
    return Number{read.count, item.node->text};
  }
  return std::nullopt;
}

std::optional<std::int64_t> one_of(const Item& item, const std::int64_t* values, std::size_t count, int digits) {
  if (!item) return std::nullopt;
  const auto accepted = [&] {
    std::string out;
    for (std::size_t i = 0; i < count; ++i) out += (i == 0 ? "" : ", ") + without_zeros(decimal_text(values[i], digits));
    return out;
  };
  if (item.node->kind != Kind::number) {
    item.refuse(Reason::wrongType, accepted());
    return std::nullopt;
  }
  const Decimal read = decimal(item.node->text, digits);
  if (read.state == Decimal::State::exact)
    for (std::size_t i = 0; i < count; ++i)
      if (values[i] == read.count) return read.count;
  item.refuse(read.state == Decimal::State::too_precise ? Reason::tooPrecise : Reason::outOfRange, accepted());
  return std::nullopt;
}

std::optional<bool> flag(const Item& item) {
  const Node* const node = of_kind(item, Kind::boolean, "true, false");
  if (node == nullptr) return std::nullopt;
  return node->truth;
}

std::optional<std::string> text(const Item& item, std::size_t least, std::size_t most) {
  const Node* const node = of_kind(item, Kind::string, "text");
  if (node == nullptr) return std::nullopt;
  const PlainText found = inspect(node->text);
  if (found.unreadable) {
    item.refuse(Reason::wrongType, "plain text");
  } else if (found.decomposed) {
    item.refuse(Reason::wrongType, "NFC text");
  } else if (found.code_points < least || found.code_points > most || (least > 0 && found.blank)) {
    item.refuse(Reason::outOfRange, length_text(least, most));
  } else {
    return node->text;
  }
  return std::nullopt;
}

std::optional<std::string> name(const Item& item) { return text(item, 1, figures::title_length); }
std::optional<std::string> sentence(const Item& item) { return text(item, 0, figures::sentence_length); }

std::optional<std::string> id(const Item& item) {
  const Node* const node = of_kind(item, Kind::string, "A-Z a-z 0-9 _ -");
  if (node == nullptr) return std::nullopt;
  for (const char c : node->text) {
    const bool good = (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
    if (good) continue;
    item.refuse(Reason::wrongType, "A-Z a-z 0-9 _ -");
    return std::nullopt;
  }
  if (node->text.empty() || node->text.size() > figures::id_length) {
    item.refuse(Reason::outOfRange, length_text(1, figures::id_length));
    return std::nullopt;
  }
  return node->text;
}

std::optional<Day> day(const Item& item) { return parsed<Day>(item, parse_day, "YYYY-MM-DD"); }
std::optional<Moment> moment(const Item& item) { return parsed<Moment>(item, parse_moment, "2026-11-25T03:10:00+01:00"); }
std::optional<TimeOfDay> time_of_day(const Item& item) { return parsed<TimeOfDay>(item, parse_time_of_day, "HH:MM"); }

bool format(Fields& fields, std::string_view wanted) {
  if (!fields.usable()) return false;
  const Item format_item = fields.need("format");
  if (const Node* const node = of_kind(format_item, Kind::string, wanted); node != nullptr && node->text != wanted) {
    format_item.refuse(Reason::contradiction, wanted);
    return false;
  }
  const Item version = fields.need("version");
  if (version && version.node->kind == Kind::number) {
    const Decimal read = decimal(version.node->text, 0);
    const bool beyond_counting = read.state == Decimal::State::out_of_range && version.node->text.front() != '-';
    if (beyond_counting || read.count > 1) {
      version.refuse(Reason::newerFormat, "1");
      return false;
    }
    if (read.state != Decimal::State::exact || read.count != 1) version.refuse(Reason::outOfRange, "1");
  } else if (version) {
    version.refuse(Reason::wrongType, "1");
  }
  return true;
}

std::string joined(const std::string_view* words, std::size_t count) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) {
    if (i != 0) out += ", ";
    out += words[i];
  }
  return out;
}

std::optional<std::size_t> word_index(const Item& item, const std::string_view* words, std::size_t count, Reason unknown) {
  if (!item) return std::nullopt;
  if (item.node->kind != Kind::string) {
    item.refuse(Reason::wrongType, joined(words, count));
    return std::nullopt;
  }
  for (std::size_t i = 0; i < count; ++i)
    if (item.node->text == words[i]) return i;
  item.refuse(unknown, joined(words, count));
  return std::nullopt;
}

}  // namespace stopgap::json
