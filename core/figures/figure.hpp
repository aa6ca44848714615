// A figure: one clinical or trade number with everything needed to check it. Core code reads `.value`; nothing else in core
// types such a number. `mark` says how far it can be trusted: read in the source, derived from it, reported second-hand,
// common practice, from memory, a rule of this house that an agreeing clinician must accept, or a rule of thumb that only finds
// slips of the pen and never sets a number.
#pragma once
#include <cstdint>
#include <string_view>

namespace stopgap {

enum class Mark : std::uint8_t { read, second_hand, derived, memory, model, practice, house, rule };

struct CheckedOn {
  std::int16_t year;
  std::int8_t month;
  std::int8_t day;
  friend constexpr auto operator<=>(const CheckedOn&, const CheckedOn&) = default;
};

template <class Value>
struct Figure {
  std::string_view id;
  Value value;
  std::string_view unit;
  std::string_view source;  // an id of figures/sources.hpp, or "house"
  std::string_view place;
  Mark mark;
  CheckedOn checked_on;
};

}  // namespace stopgap
