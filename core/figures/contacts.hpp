// How the hours of a contact and a telephone number are written in a plan: names, not thresholds.
#pragma once
#include <array>
#include <cstddef>
#include <string_view>

namespace stopgap::figures {

inline constexpr std::string_view any_hour = "any hour";
// From Monday, as ISO 8601 counts the days of a week.
inline constexpr std::array<std::string_view, 7> weekdays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
// 1970-01-01, the day that days are counted from, was a Thursday.
inline constexpr std::size_t weekday_of_1970_01_01 = 3;

// The shortest numbers in use are those of an emergency; ITU-T E.164 allows 15 digits at most.
inline constexpr std::size_t phone_digits_least = 3, phone_digits_most = 15;

}  // namespace stopgap::figures
