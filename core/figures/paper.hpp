// The sizes of what is printed, and what a travel kit holds. Lengths in hundredths of a millimetre.
#pragma once
#include <array>
#include <cstdint>
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/insulin.hpp"
#include "units/time.hpp"

namespace stopgap::figures {

struct PaperSize {
  std::int64_t width, height;  // hundredths of a millimetre
};

// One panel of the card; open it is two panels high.
inline constexpr Figure<PaperSize> card_panel{
    "card-panel", {8560, 5398}, "0.01 mm", sources::iso_7810.id, "ID-1: 85.60 x 53.98 mm", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<PaperSize> paper_a4{"paper-a4", {21000, 29700}, "0.01 mm", "common practice", "A4: 210 x 297 mm", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<PaperSize> paper_letter{
    "paper-letter", {21590, 27940}, "0.01 mm", "common practice", "US Letter: 8.5 x 11 inches of 25.4 mm", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> check_line_mm{
    "check-line", 50, "mm", "house", "a line to lay a ruler on: printers shrink pages", Mark::house, {2026, 11, 25}};

inline constexpr Figure<std::array<std::int64_t, 4>> kit_days{
    "kit-days", {3, 7, 14, 21}, "days", "house", "journeys a kit is counted for", Mark::house, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> kit_times{
    "kit-times", 2, "times", "common practice", "twice the supplies, in hand luggage (two health services' pages, addresses not kept)", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Insulin> vial_holds{
    "vial-holds", Insulin::units(1000), "units", "common practice", "10 mL of 100 units/mL", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Insulin> pen_holds{
    "pen-holds", Insulin::units(300), "units", "common practice", "3 mL of 100 units/mL", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> units_per_ml{
    "units-per-ml", 100, "units/mL", "common practice", "the one concentration a plan may hold", Mark::practice, {2026, 11, 25}};

// Keeping insulin cool.
inline constexpr Figure<std::int64_t> carry_coolest{
    "carry-coolest", 4, "degrees Celsius", "common practice", "travel pages of two health services, addresses not kept", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> carry_warmest{
    "carry-warmest", 30, "degrees Celsius", "common practice", "travel pages of two health services, addresses not kept", Mark::practice, {2026, 11, 25}};

}  // namespace stopgap::figures
