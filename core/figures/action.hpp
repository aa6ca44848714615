// The curve of what a rapid-acting dose still has to do: F3(z) = (1 + z + z²/2) e^(-z).
#pragma once
#include "figures/figure.hpp"
#include "figures/sources.hpp"

namespace stopgap::figures {

// The z at which F3 is 0.05: at the stated hours of action 5 % is left.
inline constexpr Figure<double> action_end_z{
    "action-end-z", 6.295794, "1", sources::clamp_2005.id, "F3(6.295794) = 0.05; three equal compartments fit the clamp curve",
    Mark::derived, {2026, 11, 25}};

// The longest published duration of a long-acting insulin (degludec 42 h): used where a plan names none.
inline constexpr Figure<std::int64_t> longest_long_acting_hours{
    "longest-long-acting", 42, "h", sources::aace_2022.id, "Table 19, degludec", Mark::read, {2026, 11, 25}};

}  // namespace stopgap::figures
