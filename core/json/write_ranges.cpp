#include "json/write_ranges.hpp"

#include "json/fields.hpp"
#include "json/words.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using namespace figures;

// A number of the plan: its place, what it counts, and its range in either unit.
struct Entry {
  std::string_view path;
  std::string_view counts;
  const Range* range;
  const GlucoseRange* by_unit;
};
constexpr Entry plain(std::string_view path, std::string_view counts, const Range& range) { return {path, counts, &range, nullptr}; }
constexpr Entry glucose(std::string_view path, std::string_view counts, const GlucoseRange& range) { return {path, counts, nullptr, &range}; }

constexpr Entry entries[] = {
    plain("/plan/revision", "count", revision_range),
    plain("/plan/person/weightKg", "kg", weight_range),
    plain("/plan/agreement/graceDays", "days", grace_days_range),
    plain("/plan/rapid/unitsPerMl", "unitsPerMl", concentration_range),
    plain("/plan/rapid/actionHours", "hours", action_hours_range),
    plain("/plan/rapid/inUseDays", "days", in_use_days_range),
    plain("/plan/longActing/unitsPerMl", "unitsPerMl", concentration_range),
    plain("/plan/longActing/actionHours", "hours", long_action_hours_range),
    plain("/plan/longActing/onsetHours", "hours", onset_hours_range),
    plain("/plan/longActing/inUseDays", "days", in_use_days_range),
    plain("/plan/pen/capacity", "units", pen_capacity_range),
    plain("/plan/pump/step", "units", pump_step_range),
    plain("/plan/dailyTotal", "units", daily_total_range),
    glucose("/plan/day/correctionFactor/*/value", "glucosePerUnit", correction_factor_range),
    plain("/plan/day/carbohydrateRatio/*/value", "gramsPerUnit", carbohydrate_ratio_range),
    glucose("/plan/day/target/*/value", "glucose", level_range),
    plain("/plan/day/basal/*/value", "unitsPerHour", basal_range),
    glucose("/plan/high/trigger", "glucose", trigger_range),
    glucose("/plan/high/middle", "glucose", level_range),
    plain("/plan/high/firstLook", "minutes", look_minutes_range),
    plain("/plan/high/secondLook", "minutes", look_minutes_range),
    glucose("/plan/high/expectedFall", "glucose", glucose_fall_range),
    plain("/plan/high/automationMinutes", "minutes", look_minutes_range),
    plain("/plan/high/looksAfterInjection/*", "minutes", look_minutes_range),
    plain("/plan/ketones/actFrom", "ketones", ketone_edge_range),
    plain("/plan/ketones/expectedFall", "ketones", ketone_fall_range),
    glucose("/plan/ketones/columns/*", "glucose", ceiling_range),
    plain("/plan/ketones/rows/*/from", "ketones", ketone_edge_range),
    plain("/plan/ketones/rows/*/repeatHours", "hours", repeat_hours_range),
    glucose("/plan/ketones/carbohydrateOnlyBelow", "glucose", level_range),
    plain("/plan/ketones/carbohydrateGrams", "grams", ketone_grams_range),
    plain("cell/shareOfDaily", "share", share_range),
    plain("cell/perKg", "unitsPerKg", per_kg_range),
    plain("cell/timesCorrection", "times", times_correction_range),
    plain("cell/addUnits", "units", add_units_range),
    plain("/plan/limits/singleDose", "units", single_dose_range),
    plain("/plan/limits/shareOfDaily", "share", share_range),
    plain("/plan/limits/rollingShare", "share", rolling_share_range),
    plain("/plan/limits/lockHours", "hours", lock_hours_range),
    plain("/plan/limits/dosesBeforeCall", "count", doses_before_call_range),
    glucose("/plan/limits/dosingCeiling", "glucose", ceiling_range),
    plain("/plan/squaring/pauseHours", "hours", pause_hours_range),
    plain("/plan/offPump/longActingFactor", "times", long_acting_factor_range),
    plain("/plan/offPump/parts", "count", parts_range),
    plain("/plan/offPump/cutoverHours", "hours", cutover_hours_range),
    plain("/plan/offPump/bridgeHours", "hours", bridge_hours_range),
    plain("/plan/offPump/reducedBasalShare", "share", reduced_basal_range),
    glucose("/plan/low/below", "glucose", level_range),
    glucose("/plan/low/veryLow", "glucose", level_range),
    plain("/plan/low/grams", "grams", low_grams_range),
    plain("/plan/low/recheckMinutes", "minutes", look_minutes_range),
    plain("/plan/school/callFirstAbove", "units", school_limit_range)};

// Numbers of which only a few are made.
struct Choice {
  std::string_view path;
  const std::array<std::int64_t, 3>& values;
  int digits;
};
constexpr Choice choices[] = {{"/plan/syringe/capacity", syringe_capacities, 0},
                              {"/plan/syringe/step", device_step_tenths, 1},
                              {"/plan/pen/step", device_step_tenths, 1}};

// In the order of Standing.
constexpr std::array<std::string_view, 7> standings{"draft", "agreed", "reviewDue", "inGrace", "expired", "superseded", "withdrawn"};

}  // namespace

std::string write_ranges(GlucoseUnit unit) {
  Writer writer;
  writer.open('{').key("ranges").open('{');
  for (const Entry& entry : entries) {
    const Range& range = entry.range ? *entry.range : entry.by_unit->in(unit);
    writer.key(entry.path).open('{');
    writer.key("from").text(decimal_text(range.lowest, range.digits)).key("to").text(decimal_text(range.highest, range.digits));
    writer.key("step").text(decimal_text(range.multiple, range.digits)).key("counts").text(entry.counts);
    writer.close('}');
  }
  for (const Choice& choice : choices) {
    writer.key(choice.path).open('{').key("choices").open('[');
    for (const std::int64_t value : choice.values) writer.text(without_zeros(decimal_text(value, choice.digits)));
    writer.close(']').key("counts").text("units").close('}');
  }
  writer.close('}').key("houseRules").open('[');
  for (const std::string_view rule : words::house_rules) writer.text(rule);
  return writer.close(']').close('}').take();
}

std::string write_standing(const StandingAnswer& answer) {
  Writer writer;
  writer.open('{').key("standing").text(standings[static_cast<std::size_t>(answer.standing)]);
  return writer.key("lastDay").text(text_of(answer.last_day)).close('}').take();
}

}  // namespace stopgap::json
