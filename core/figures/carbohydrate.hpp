// Carbohydrate amounts.
#pragma once
#include "figures/figure.hpp"
#include "units/body.hpp"

namespace stopgap::figures {

inline constexpr Figure<Carbohydrate> carbohydrate_step{
    "carbohydrate-step", Carbohydrate::grams(5), "g", "house", "matched carbohydrate goes up to the next 5 g", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Carbohydrate> carbohydrate_at_once{
    "carbohydrate-at-once", Carbohydrate::grams(60), "g", "house", "more is spread over the next looks", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Carbohydrate> carbohydrate_emergency{
    "carbohydrate-emergency", Carbohydrate::grams(100), "g", "house", "too much insulin that needs more than this: emergency call", Mark::house, {2026, 11, 25}};

}  // namespace stopgap::figures
