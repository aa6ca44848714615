// What is printed on a syringe for insulin of 100 units/mL, as far as the drawing needs it.
#pragma once
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/insulin.hpp"

namespace stopgap::figures {

inline constexpr Figure<Insulin> close_figures{
    "syringe-close-figures", Insulin::units(5), "units", sources::iso_8537.id, "Table 1: 0.3 and 0.5 mL, a figure every 5 units", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Insulin> wide_figures{
    "syringe-wide-figures", Insulin::units(10), "units", sources::iso_8537.id, "Table 1: 1 mL, a figure every 10 units", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Insulin> close_figures_up_to{
    "syringe-close-figures-up-to", Insulin::units(50), "units", sources::iso_8537.id, "Table 1: 0.5 mL holds 50 units", Mark::derived, {2026, 11, 25}};

}  // namespace stopgap::figures
