// Ketone figures that no plan may change.
#pragma once
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/ketones.hpp"

namespace stopgap::figures {

// at and above this, at any glucose: urgent dose and hospital, neither waits for the other. The worse reading of
// "3.0" and "above 3.0" is taken.
inline constexpr Figure<Ketones> ketones_help_now{
    "ketones-help-now", Ketones::mmol_tenths(30), "mmol/L", sources::rch_ketones.id, "3.0 or more: hospital (R-01)", Mark::read, {2026, 11, 25}};

}  // namespace stopgap::figures
