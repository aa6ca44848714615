#include "version.hpp"

#include <algorithm>
#include "figures/all.hpp"

#ifndef STOPGAP_COMMIT
#define STOPGAP_COMMIT "unknown"
#endif

namespace stopgap {

std::string_view engine_version() { return "0.1.0"; }

VersionAnswer version() {
  // Worked out while compiling: no figure is read when the program starts.
  constexpr CheckedOn oldest = *std::min_element(figures::days_checked.begin(), figures::days_checked.end());
  const auto two = [](int value) { return std::string{static_cast<char>('0' + value / 10), static_cast<char>('0' + value % 10)}; };
  return {engine_version(), 1, STOPGAP_COMMIT,
          two(oldest.year / 100) + two(oldest.year % 100) + "-" + two(oldest.month) + "-" + two(oldest.day),
          static_cast<int>(figures::days_checked.size())};
}

}  // namespace stopgap
