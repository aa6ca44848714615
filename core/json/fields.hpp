// Reading one field at a time: the value, or a refusal with the place, what was typed and what would be accepted.
// A place is a chain on the stack; it becomes text only when something is refused.
// Errors: every reader here gives no value for a field that is missing or wrong, and has added the refusal by then.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "figures/ranges.hpp"
#include "json/text.hpp"
#include "units/time.hpp"

namespace stopgap::json {

struct Place {
  const Place* parent = nullptr;
  std::string_view key;   // a key, or at the root the whole path
  std::size_t index = 0;  // in a list, where there is no key
  bool in_list = false;
};
std::string pointer_of(const Place& place);

// A value that may be absent (an optional key that is not there, or a needed one that was refused as missing).
struct Item {
  const Node* node = nullptr;
  Place place;
  Refusals* refusals = nullptr;
  explicit operator bool() const { return node != nullptr; }
  void refuse(Reason reason, std::string_view accepted) const;  // `got` is the value as typed
};
Item root_item(const Node& node, std::string_view path, Refusals& refusals);

// An object being read. Every key is asked for by name; finish() refuses the ones nobody asked for.
class Fields {
 public:
  explicit Fields(const Item& item);
  Fields(const Fields&) = delete;
  Fields& operator=(const Fields&) = delete;
  bool usable() const { return node_ != nullptr; }
  Item need(std::string_view key);
  Item may(std::string_view key);
  // A key that other keys rule out or make needed is looked at without being asked for.
  bool has(std::string_view key) const { return node_ != nullptr && node_->find(key) != nullptr; }
  void refuse(std::string_view key, Reason reason, std::string_view got, std::string_view accepted) const;
  void refuse_missing(std::string_view key) const { refuse(key, Reason::missing, {}, {}); }
  void finish() const;

 private:
  const Node* ask(std::string_view key);
  Place place_;
  const Node* node_ = nullptr;
  Refusals* refusals_ = nullptr;
  std::size_t next_ = 0;      // keys usually come in the order they are asked for
  std::uint64_t asked_ = 0;   // one bit for each of the first members; no object of ours has as many keys
};

// A list being read.
class Elements {
 public:
  Elements(const Item& item, std::size_t least, std::size_t most);
  Elements(const Elements&) = delete;
  Elements& operator=(const Elements&) = delete;
  bool usable() const { return node_ != nullptr; }
  std::size_t size() const { return node_ == nullptr ? 0 : node_->items.size(); }
  Item operator[](std::size_t index) const { return {&node_->items[index], {&place_, {}, index, true}, refusals_}; }

 private:
  Place place_;
  const Node* node_ = nullptr;
  Refusals* refusals_ = nullptr;
};

// A number inside its range, as whole counts of its last decimal, with the text it was typed as.
struct Number {
  std::int64_t count = 0;
  std::string_view typed;
};
std::string range_text(const figures::Range& range);
std::string decimal_text(std::int64_t count, int digits);
std::string without_zeros(std::string typed);  // "4.00" is "4"
std::optional<Number> number(const Item& item, const figures::Range& range);
// A number that must be one of a few, all written with `digits` decimals at most.
std::optional<std::int64_t> one_of(const Item& item, const std::int64_t* values, std::size_t count, int digits);

std::optional<bool> flag(const Item& item);
std::optional<std::string> text(const Item& item, std::size_t least, std::size_t most);
std::optional<std::string> name(const Item& item);
std::optional<std::string> sentence(const Item& item);
std::optional<std::string> id(const Item& item);
std::optional<Day> day(const Item& item);
std::optional<Moment> moment(const Item& item);
std::optional<TimeOfDay> time_of_day(const Item& item);
// The format's name and version; false when what follows is of another format and says nothing about this one.
bool format(Fields& fields, std::string_view wanted);

std::string joined(const std::string_view* words, std::size_t count);
// Where a word stands in its list.
std::optional<std::size_t> word_index(const Item& item, const std::string_view* words, std::size_t count, Reason unknown);

template <class Enum, std::size_t count>
std::optional<Enum> word(const Item& item, const std::array<std::string_view, count>& words, Reason unknown = Reason::outOfRange) {
  const auto index = word_index(item, words.data(), count, unknown);
  if (!index) return std::nullopt;
  return static_cast<Enum>(*index);
}

// A list of words into anything with add(); one said twice counts once.
template <class Enum, std::size_t count, class Set>
void word_set(const Item& item, const std::array<std::string_view, count>& words, std::size_t least, Set& set) {
  const Elements list{item, least, figures::word_list_length};
  for (std::size_t i = 0; i < list.size(); ++i)
    if (const auto found = word<Enum>(list[i], words)) set.add(*found);
}

// Puts a value where it belongs, if there is one.
template <class Target, class Value>
void fill(Target& target, std::optional<Value>&& value) {
  if (value) target = std::move(*value);
}
template <class Target, class Maker>
void fill(Target& target, const std::optional<Number>& value, Maker make) {
  if (value) target = make(value->count);
}

}  // namespace stopgap::json
