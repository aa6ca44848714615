#include "version.hpp"

#include <algorithm>
#include <array>
#include "figures/action.hpp"
#include "figures/carbohydrate.hpp"
#include "figures/codes.hpp"
#include "figures/conversion.hpp"
#include "figures/ketones.hpp"
#include "figures/syringe.hpp"
#include "figures/table.hpp"
#include "figures/timing.hpp"

#ifndef STOPGAP_COMMIT
#define STOPGAP_COMMIT "unknown"
#endif

namespace stopgap {

std::string_view engine_version() { return "0.1.0"; }
VersionAnswer version() {
  using namespace figures;
  const std::array dates{mg_per_mmol_thousandths.checked_on, ketones_help_now.checked_on, action_end_z.checked_on,
                         longest_long_acting_hours.checked_on, glucose_reading_lasts.checked_on, ketone_reading_lasts.checked_on,
                         last_ketones_matter.checked_on, clock_tolerance.checked_on, incident_span.checked_on, change_before_dose.checked_on,
                         unanswered_call.checked_on, look_low.checked_on, look_going_low.checked_on, look_usual.checked_on,
                         look_quiet.checked_on, adult_years.checked_on, child_weight_days.checked_on, adult_weight_days.checked_on, review_notice_days.checked_on,
                         carbohydrate_step.checked_on, carbohydrate_at_once.checked_on, carbohydrate_emergency.checked_on,
                         table_step_mmol.checked_on, table_step_mg.checked_on,
                         loinc_finger_mg.checked_on, loinc_finger_mmol.checked_on, loinc_sensor_mg.checked_on, loinc_sensor_mmol.checked_on,
                         loinc_ketones_blood.checked_on, loinc_ketones_urine.checked_on, ucum_mg.checked_on, ucum_mmol.checked_on,
                         ucum_insulin.checked_on,
                         close_figures.checked_on, wide_figures.checked_on, close_figures_up_to.checked_on};
  const CheckedOn oldest = *std::min_element(dates.begin(), dates.end());
  const auto two = [](int value) { return std::string{static_cast<char>('0' + value / 10), static_cast<char>('0' + value % 10)}; };
  return {engine_version(), 1, STOPGAP_COMMIT,
          two(oldest.year / 100) + two(oldest.year % 100) + "-" + two(oldest.month) + "-" + two(oldest.day)};
}

}  // namespace stopgap
