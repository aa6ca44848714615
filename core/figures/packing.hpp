// How much one printed code holds. A plan goes into one code of level M, no larger than version 20, so that it stays 40 mm wide
// with squares a phone still reads.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include "figures/figure.hpp"
#include "figures/sources.hpp"

namespace stopgap::figures {

// Characters of the alphanumeric mode, versions 1 to 20 in order.
using CodeCapacities = std::array<std::int16_t, 20>;
inline constexpr Figure<CodeCapacities> code_capacities{
    "code-capacities", {20, 38, 61, 90, 122, 154, 178, 221, 262, 311, 366, 419, 483, 528, 600, 656, 734, 816, 909, 970}, "characters",
    sources::iso_18004.id, "data capacities, level M, alphanumeric; computed from the data codewords of each version", Mark::derived,
    {2026, 11, 25}};

inline constexpr std::size_t code_characters = code_capacities.value.back();

}  // namespace stopgap::figures
