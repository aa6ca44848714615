// What a number may be: one table that reading, refusals and the desk share. Values are whole counts of `step`.
// The ranges are slip checks of the plan format, not advice (common practice); a clinician sets the numbers inside them.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include "units/glucose.hpp"

namespace stopgap::figures {

// Decimal digits after the point that a field keeps: the step is 10^-digits, or a multiple of it given in `multiple`.
struct Range {
  std::string_view name;
  std::int64_t lowest;    // in 10^-digits
  std::int64_t highest;   // in 10^-digits
  int digits;
  std::int64_t multiple = 1;
};

// A field whose range depends on the plan's unit.
struct GlucoseRange {
  Range mmol;
  Range mg;
  constexpr const Range& in(GlucoseUnit unit) const { return unit == GlucoseUnit::mmol ? mmol : mg; }
};

inline constexpr GlucoseRange trigger_range{{"trigger", 80, 250, 1}, {"trigger", 144, 450, 0}};
inline constexpr GlucoseRange level_range{{"level", 20, 150, 1}, {"level", 36, 270, 0}};
inline constexpr GlucoseRange ceiling_range{{"ceiling", 0, 333, 1}, {"ceiling", 0, 600, 0}};
inline constexpr GlucoseRange glucose_fall_range{{"glucoseFall", 1, 150, 1}, {"glucoseFall", 2, 270, 0}};
inline constexpr GlucoseRange correction_factor_range{{"correctionFactor", 10, 3000, 2}, {"correctionFactor", 20, 5400, 1}};
inline constexpr GlucoseRange glucose_reading_range{{"glucose", 10, 500, 1}, {"glucose", 18, 900, 0}};

inline constexpr Range carbohydrate_ratio_range{"carbohydrateRatio", 10, 1500, 1};
inline constexpr Range basal_range{"basal", 0, 1000, 2};
inline constexpr Range daily_total_range{"dailyTotal", 20, 4000, 1};
inline constexpr Range weight_range{"weight", 20, 3000, 1};
inline constexpr Range ketone_edge_range{"ketoneEdge", 0, 30, 1};
inline constexpr Range ketone_fall_range{"ketoneFall", 1, 20, 1};
inline constexpr Range ketone_reading_range{"ketones", 0, 150, 1};
inline constexpr Range share_range{"share", 10, 500, 3};
inline constexpr Range rolling_share_range{"rollingShare", 10, 1000, 3};
inline constexpr Range per_kg_range{"perKg", 10, 500, 3};
inline constexpr Range times_correction_range{"timesCorrection", 100, 300, 2};
inline constexpr Range add_units_range{"addUnits", 5, 20, 1, 5};
inline constexpr Range action_hours_range{"actionHours", 200, 800, 2, 25};
inline constexpr Range lock_hours_range{"lockHours", 100, 800, 2, 25};
inline constexpr Range repeat_hours_range{"repeatHours", 100, 600, 2, 25};
inline constexpr Range pause_hours_range{"pauseHours", 100, 800, 2, 25};
inline constexpr Range single_dose_range{"singleDose", 5, 1000, 1, 5};
inline constexpr Range pen_capacity_range{"penCapacity", 10, 1000, 1, 5};
inline constexpr Range look_minutes_range{"lookMinutes", 5, 360, 0};
inline constexpr Range injection_range{"units", 5, 10000, 2};
inline constexpr Range part_range{"part", 0, 10000, 2};
inline constexpr Range carbs_range{"carbs", 0, 150, 0};
inline constexpr Range low_grams_range{"grams", 5, 60, 0};
inline constexpr Range ketone_grams_range{"carbohydrateGrams", 0, 60, 0};
inline constexpr Range pump_step_range{"pumpStep", 1, 100, 2};
inline constexpr Range pump_on_board_range{"pumpOnBoard", 0, 10000, 2};
inline constexpr Range concentration_range{"unitsPerMl", 100, 100, 0};
inline constexpr Range in_use_days_range{"inUseDays", 1, 60, 0};
inline constexpr Range long_action_hours_range{"longActingHours", 12, 48, 0};
inline constexpr Range onset_hours_range{"onsetHours", 0, 800, 2, 25};
inline constexpr Range revision_range{"revision", 1, 9999, 0};
inline constexpr Range grace_days_range{"graceDays", 0, 90, 0};
inline constexpr Range doses_before_call_range{"dosesBeforeCall", 1, 4, 0};
inline constexpr Range long_acting_factor_range{"longActingFactor", 500, 1500, 3};
inline constexpr Range parts_range{"parts", 1, 2, 0};
inline constexpr Range cutover_hours_range{"cutoverHours", 1, 48, 0};
inline constexpr Range bridge_hours_range{"bridgeHours", 3, 4, 0};
inline constexpr Range reduced_basal_range{"reducedBasalShare", 0, 1000, 3};
inline constexpr Range expected_hours_range{"expectedHours", 0, 50400, 2, 25};
inline constexpr Range basal_hours_range{"basalHours", 5, 40, 1, 5};
inline constexpr Range zones_east_range{"zonesEast", -14, 14, 0};
inline constexpr Range school_limit_range{"callFirstAbove", 0, 1000, 1, 5};

inline constexpr std::array<std::int64_t, 3> syringe_capacities{30, 50, 100};
inline constexpr std::array<std::int64_t, 3> device_step_tenths{5, 10, 20};

// Lengths of text and lists.
inline constexpr std::size_t title_length = 60, phone_length = 30, sentence_length = 240, id_length = 40;
inline constexpr std::size_t most_rows = 6, most_columns = 6, most_schedule_entries = 12, most_contacts = 8;
inline constexpr std::size_t most_looks = 6, most_school_names = 12, most_languages = 8, most_retyped = 60;
inline constexpr std::size_t language_length = 8, path_length = 120, retyped_value_length = 60, word_list_length = 20, shown_length = 40;
inline constexpr std::size_t most_events = 20000;
inline constexpr std::size_t most_story_rows = 400, most_other_incidents = 60;
inline constexpr std::size_t plan_bytes = 64 * 1024, record_bytes = 4 * 1024 * 1024, situation_bytes = 64 * 1024;
inline constexpr int depth = 16;

}  // namespace stopgap::figures
