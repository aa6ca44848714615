// The thresholds of the review of a plan: beyond them a number is asked about or refused, never overwritten. Most are rules of
// thumb or our own; the mark says which, and the desk shows it beside the finding.
#pragma once
#include <array>
#include <string_view>
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/body.hpp"
#include "units/ketones.hpp"
#include "units/time.hpp"

namespace stopgap::figures {

// What a finding without a threshold rests on.
struct Ground {
  std::string_view source;
  std::string_view place;
  Mark mark;
};

// Factor, ratio and daily total against each other.
inline constexpr Figure<GlucoseFall> yardstick_correction_mg{
    "yardstick-correction-mg", GlucoseFall::mg(1800), "mg/dL", "common practice", "1800 over the daily total (CV-36)", Mark::rule, {2026, 11, 25}};
inline constexpr Figure<GlucoseFall> yardstick_correction_mmol{
    "yardstick-correction-mmol", GlucoseFall::mmol_tenths(1000), "mmol/L", sources::ratio_rules.id, "100 over the daily total", Mark::rule, {2026, 11, 25}};
inline constexpr Figure<Carbohydrate> yardstick_carbohydrate{
    "yardstick-carbohydrate", Carbohydrate::grams(500), "g", "common practice", "500 over the daily total (CV-36)", Mark::rule, {2026, 11, 25}};
inline constexpr Figure<Fraction> yardstick_off_confirm{
    "yardstick-off-confirm", Fraction::of(40, 100), "share", "house", "formulas disagree by 13 to 50 %", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Fraction> yardstick_off_refuse{
    "yardstick-off-refuse", Fraction::of(60, 100), "share", "house", "a slip rather than a choice", Mark::house, {2026, 11, 25}};
// The other unit's number in this unit's field is 18.016 times out, and back within the yardstick once that is undone.
inline constexpr Figure<Fraction> factor_unit_slip{
    "factor-unit-slip", Fraction::of(18016, 1000), "1", "common practice", "mg/dL typed for mmol/L, or the other way", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Fraction> factor_ratio_swap{
    "factor-ratio-swap", Fraction::of(40, 100), "share", "common practice", "both are off, and neither is once exchanged", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Fraction> basal_share_least{
    "basal-share-least", Fraction::of(25, 100), "share of the daily total", "from memory", "basal 25 to 65 %", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Fraction> basal_share_most{
    "basal-share-most", Fraction::of(65, 100), "share of the daily total", "from memory", "basal 25 to 65 %", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Fraction> basal_share_all{
    "basal-share-all", Fraction{1}, "share of the daily total", "from memory", "a part is less than the whole", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Fraction> daily_per_kg_least{
    "daily-per-kg-least", Fraction::of(3, 10), "units/kg", "from memory", "daily dose slips: 0.3 to 1.5 units/kg", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Fraction> daily_per_kg_most{
    "daily-per-kg-most", Fraction::of(15, 10), "units/kg", "from memory", "daily dose slips: 0.3 to 1.5 units/kg", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Insulin> daily_total_least{
    "daily-total-least", Insulin::units(5), "units", "from memory", "daily dose slips: warn under 5 units", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Insulin> daily_total_most{
    "daily-total-most", Insulin::units(150), "units", "from memory", "daily dose slips: warn over 150 units", Mark::memory, {2026, 11, 25}};

// Targets, levels and schedules.
inline constexpr Figure<Glucose> target_least_mmol{
    "target-least-mmol", Glucose::mmol_tenths(44), "mmol/L", "from memory", "targets 4.4 to 8.3 mmol/L", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Glucose> target_most_mmol{
    "target-most-mmol", Glucose::mmol_tenths(83), "mmol/L", "from memory", "targets 4.4 to 8.3 mmol/L", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Glucose> target_least_mg{
    "target-least-mg", Glucose::mg(80), "mg/dL", "from memory", "targets 80 to 150 mg/dL", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Glucose> target_most_mg{
    "target-most-mg", Glucose::mg(150), "mg/dL", "from memory", "targets 80 to 150 mg/dL", Mark::memory, {2026, 11, 25}};
inline constexpr Ground target_apart{"common practice", "a correction must end above low", Mark::practice};
inline constexpr Ground target_under_middle{"house", "from the middle up there is something to correct", Mark::house};
inline constexpr Figure<Fraction> schedule_jump{
    "schedule-jump", Fraction{2}, "times", "common practice", "neighbours over 2 times apart: a slipped digit", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<TimeOfDay> night_begins{
    "night-begins", TimeOfDay::minutes(22 * 60), "time of day", "common practice", "the hours in which nobody looks by chance", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<TimeOfDay> night_ends{
    "night-ends", TimeOfDay::minutes(6 * 60), "time of day", "common practice", "the hours in which nobody looks by chance", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Glucose> trigger_most_mmol{
    "trigger-most-mmol", Glucose::mmol_tenths(167), "mmol/L", "common practice", "triggers printed reach 300 mg/dL", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Glucose> trigger_most_mg{
    "trigger-most-mg", Glucose::mg(300), "mg/dL", "common practice", "triggers printed reach 300 mg/dL", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Glucose> low_least_mmol{
    "low-least-mmol", Glucose::mmol_tenths(39), "mmol/L", sources::hypo_2023.id, "level 1 is below 3.9", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<Glucose> low_least_mg{
    "low-least-mg", Glucose::mg(70), "mg/dL", sources::hypo_2023.id, "level 1 is below 70", Mark::second_hand, {2026, 11, 25}};

// The ketone table and its caps.
inline constexpr Ground extras_rise{"house", "more ketones never give a smaller extra", Mark::house};
inline constexpr Figure<Fraction> extra_least_steps{
    "extra-least-steps", Fraction{1}, "steps", "house", "an acting extra that cannot be drawn up is no extra", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Fraction> rounding_loss{
    "rounding-loss", Fraction::of(20, 100), "share", "house", "rounding loses over a fifth", Mark::house, {2026, 11, 25}};
inline constexpr Ground extras_keep_with_glucose{"common practice", "a higher column with less: a slipped column", Mark::practice};
inline constexpr Ground dose_at_any_glucose{"house", "with this risk glucose does not guide, so one cell has to", Mark::house};
inline constexpr Ground cap_in_device{"house", "one dose is one injection", Mark::house};
inline constexpr Ground cap_over_extra{"common practice", "a cap under an extra: one of the two is a slip", Mark::practice};
inline constexpr Ground cell_never_used{"house", "rows that do not act, and the last row below the trigger", Mark::house};
inline constexpr Ground lands_above_low{"house", "lower edge less dose times factor, against the low level", Mark::derived};
inline constexpr Figure<Fraction> hi_times_most{
    "hi-times-most", Fraction{2}, "times", "house", "HI is no number: over twice the dose at the ceiling", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Fraction> share_of_daily_most{
    "share-of-daily-most", Fraction::of(25, 100), "share of the daily total", "house", "one dose over a quarter of a day", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Fraction> rolling_share_most{
    "rolling-share-most", Fraction::of(50, 100), "share of the daily total", "house", "doses over half of a day", Mark::house, {2026, 12, 1}};
inline constexpr Ground hi_not_less{sources::tayside.id, "HI is above 33 mmol/L and has no correction", Mark::read};
inline constexpr Figure<Ketones> act_from_least{
    "act-from-least", Ketones::mmol_tenths(6), "mmol/L", sources::rch_line.id, "step 1: from 0.6, the lowest edge printed", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Ketones> act_from_most{
    "act-from-most", Ketones::mmol_tenths(15), "mmol/L", sources::know.id, "above 1.5 every page read gives insulin", Mark::read, {2026, 11, 25}};
inline constexpr Ground calls_rise{"house", "more ketones never give a less urgent call", Mark::house};
inline constexpr Ground blood_ketone_meter{sources::rch_ketones.id, "blood ketones preferred, strips lag (R-22)", Mark::read};

// Times.
inline constexpr Ground fall_within_curve{sources::clamp_2005.id, "(trigger less target) times what has acted by then", Mark::derived};
inline constexpr Figure<Duration> lock_least{
    "lock-least", Duration::hours(3), "h", sources::uva.id, "3 h between rapid doses (R-31)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> repeat_least{
    "repeat-least", Duration::hours(2), "h", sources::rch_line.id, "recheck in 2 h, then repeat (R-13)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> action_least{
    "action-least", Duration::hours(3), "h", sources::aace_2022.id, "Table 19: rapid-acting from 3 h", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> action_most{
    "action-most", Duration::hours(6), "h", "common practice", "beyond it, not a rapid-acting insulin", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<Duration> action_as_clamped{
    "action-as-clamped", Duration::hours(4), "h", sources::clamp_2005.id, "under 4 h the curve leaves less than a clamp does", Mark::model, {2026, 11, 25}};
inline constexpr Figure<Duration> look_after_dose_latest{
    "look-after-dose-latest", Duration::minutes(120), "min", sources::rch_line.id, "glucose and ketones again in 2 h (R-09)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> second_look_latest{
    "second-look-latest", Duration::minutes(120), "min", sources::rch_high.id, "2 h after a pump correction", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Fraction> long_acting_factor_least{
    "long-acting-factor-least", Fraction{1}, "times basal", sources::hamilton.id, "1.0; below it no source", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Fraction> long_acting_factor_most{
    "long-acting-factor-most", Fraction::of(12, 10), "times basal", sources::fi_backup.id, "1.2", Mark::read, {2026, 11, 25}};

// The person, the people and the agreement.
inline constexpr Figure<std::int64_t> review_years{
    "review-years", 1, "years", "common practice", "a plan is looked at every year", Mark::practice, {2026, 11, 25}};
inline constexpr Ground reachable_contact{"common practice", "somebody answers at night, and the way to call is there", Mark::practice};
inline constexpr Ground number_to_dial{"common practice", "digits, one plus in front, spaces and hyphens: what a telephone dials", Mark::practice};
inline constexpr Ground team_answers{"common practice", "at every hour somebody of the team, or it is known who is rung instead", Mark::practice};
inline constexpr Ground dates_in_order{"common practice", "measured first, agreed after", Mark::practice};
inline constexpr Figure<std::int64_t> weight_formula_from{
    "weight-formula-from", 1, "years", "from memory", "2 kg for each of (age + 4), for ages 1 to 10", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> weight_formula_to{
    "weight-formula-to", 10, "years", "from memory", "2 kg for each of (age + 4), for ages 1 to 10", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> weight_formula_added{
    "weight-formula-added", 4, "years", "from memory", "2 kg for each of (age + 4)", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> weight_formula_each{
    "weight-formula-each", 2, "kg", "from memory", "2 kg for each of (age + 4)", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Fraction> weight_off{
    "weight-off", Fraction{2}, "times", "from memory", "over twice or under half: pounds for kilograms", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> adult_weight_least{
    "adult-weight-least", 35, "kg", "common practice", "an adult under it: a slip is likely", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> adult_weight_most{
    "adult-weight-most", 200, "kg", "common practice", "an adult over it: pounds for kilograms", Mark::practice, {2026, 11, 25}};

// The rules of this house that a plan has to list, by the words of the plan format.
inline constexpr std::array<std::string_view, 3> house_rules_to_agree{"rollingShare", "matchedCarbohydrate", "extraNotReduced"};
inline constexpr Ground house_rules_agreed{"house", "every rule without a published text", Mark::house};

// A plan's texts are read by people.
inline constexpr Ground text_is_seen{"house", "what cannot be seen cannot be compared with the paper", Mark::house};

// Where the table of doses is shown from: one time by day, one in the deep of the night.
inline constexpr Figure<TimeOfDay> table_by_day{
    "table-by-day", TimeOfDay::minutes(12 * 60), "time of day", "house", "the settings of noon", Mark::house, {2026, 11, 25}};
inline constexpr Figure<TimeOfDay> table_by_night{
    "table-by-night", TimeOfDay::minutes(3 * 60), "time of day", "house", "the settings of the small hours", Mark::house, {2026, 11, 25}};

}  // namespace stopgap::figures
