// The one conversion between mg/dL and mmol/L: 1 mmol/L = 18.016 mg/dL. Against the molar 18.0156 it differs at one decimal
// for 2 of the integers 20 to 600 mg/dL (345 and 572); printed pairs such as 14 mmol/L = 250 mg/dL are not conversions.
#pragma once
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/glucose.hpp"

namespace stopgap::figures {

inline constexpr Figure<std::int64_t> mg_per_mmol_thousandths{
    "mg-per-mmol", 18016, "mg/dL for 1000 mmol/L", sources::loinc.id, "180.156 g/mol", Mark::derived, {2026, 11, 25}};

// Grains must say the same: 0.01 mmol/L is to 0.1 mg/dL as 18.016 is to 10.
static_assert(grains_per_mmol_hundredth * 10000 == grains_per_mg_tenth * mg_per_mmol_thousandths.value);

}  // namespace stopgap::figures
