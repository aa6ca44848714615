// Insulins by their international nonproprietary names, in small letters. No name under which one is sold stands here.
#pragma once
#include <array>
#include <string_view>
#include "figures/review.hpp"

namespace stopgap::figures {

inline constexpr Ground insulin_names{"common practice", "one kind in the place of the other is a day's dose at once, or none", Mark::practice};

// What a plan of this kind is written for.
inline constexpr std::array<std::string_view, 3> rapid_names{"aspart", "glulisine", "lispro"};
inline constexpr std::array<std::string_view, 3> long_names{"degludec", "detemir", "glargine"};
// Whatever acts for half a day or longer, alone or in a mixture: none of it may be given as a correction.
inline constexpr std::array<std::string_view, 10> slow_names{"biphasic", "degludec", "detemir", "glargine", "icodec", "isophane", "lente", "nph", "protamine", "ultralente"};
// Whatever is over within hours: it covers no day.
inline constexpr std::array<std::string_view, 5> fast_names{"aspart", "glulisine", "lispro", "regular", "soluble"};

}  // namespace stopgap::figures
