// How the rows of the printed table of doses are spaced.
#pragma once
#include "figures/figure.hpp"
#include "units/glucose.hpp"

namespace stopgap::figures {

inline constexpr Figure<GlucoseFall> table_step_mmol{
    "table-step-mmol", GlucoseFall::mmol_tenths(20), "mmol/L", "house", "rows a person can find by eye", Mark::house, {2026, 11, 25}};
inline constexpr Figure<GlucoseFall> table_step_mg{
    "table-step-mg", GlucoseFall::mg(40), "mg/dL", "house", "rows a person can find by eye", Mark::house, {2026, 11, 25}};

}  // namespace stopgap::figures
