// What stands on the card and on the sheets beside it, as keys and amounts; how it is laid out is the page's. Only an agreed
// plan comes here: whoever asks refuses a draft, a withdrawn plan and one that another has taken the place of.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "documents/dose_sheet.hpp"

namespace stopgap {

enum class Paper : std::uint8_t { a4, letter };

// What to take for a journey of so many days: twice what is used, up to whole packs.
struct Kit {
  std::int64_t days = 0, rapid_vials = 0, rapid_pens = 0, long_pens = 0, sets = 0;
};

struct Card {
  std::vector<DoseSpan> spans;
  std::vector<Line> head, steps, after, calls, no_strips, off_pump, storage, stranger, stranger_abroad, security, carry, zones;
  std::vector<Kit> kits;
};

// `plan` as it is printed (dose_sheet.hpp).
Card card(const Plan& plan);
// 24 hours of basal as long-acting, in the parts of the plan, to a mark of the device; nothing where the plan has no long-acting
// insulin or no device holds it (rules, section 6; R-25).
std::optional<Insulin> long_acting_part(const Plan& plan);

}  // namespace stopgap
