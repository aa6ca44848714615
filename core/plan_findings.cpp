#include "plan_findings.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace stopgap {
namespace {

using Places = std::initializer_list<std::string_view>;

// Where in a plan the numbers stand that an amount is worked out from.
constexpr std::string_view factor = "/plan/day/correctionFactor", ratio = "/plan/day/carbohydrateRatio", target = "/plan/day/target",
                           basal = "/plan/day/basal", high = "/plan/high", table = "/plan/ketones", caps = "/plan/limits",
                           total = "/plan/dailyTotal", rapid = "/plan/rapid", long_acting = "/plan/longActing", syringe = "/plan/syringe",
                           pen = "/plan/pen", off_pump = "/plan/offPump";

bool stand_in(const std::vector<Finding>& findings, Places places) {
  const auto is_in = [&](const Finding& finding) {
    return std::any_of(places.begin(), places.end(), [&](std::string_view place) { return finding.path.starts_with(place); });
  };
  return std::any_of(findings.begin(), findings.end(), is_in);
}

bool bears_on_a_correction(const std::vector<Finding>& refused) {
  return stand_in(refused, {factor, target, high, table, caps, total, rapid, syringe, pen});
}
// Grams are worked out from the dose and what still acts, so the factor bears on them as the ratio does.
bool bears_on_a_meal(const std::vector<Finding>& refused) { return stand_in(refused, {ratio, factor, rapid, syringe, pen}); }
bool bears_on_basal(const std::vector<Finding>& refused) { return stand_in(refused, {basal, total, rapid, syringe, pen}); }
bool bears_on_long_acting(const std::vector<Finding>& refused) { return stand_in(refused, {basal, total, long_acting, off_pump, syringe, pen}); }

}  // namespace

void tell_plan_findings(const std::vector<Finding>& refused, Advice& advice) {
  if (refused.empty()) return;
  advice.cautions.add(Caution::planFinding);
  // A dose too small to draw is shown as none: a factor many times too large hides one that way.
  const bool correction = (advice.dose && !advice.dose->rescue.is_zero()) || advice.cautions.has(Caution::underStep);
  const bool meal = (advice.dose && !advice.dose->meal.is_zero()) || advice.carbohydrate > Carbohydrate{};
  const bool bears = (correction && bears_on_a_correction(refused)) || (meal && bears_on_a_meal(refused));
  if (!bears || advice.call != Call::none) return;
  advice.raise_call(Call::team);
  advice.steps.add(Step::callTeam);
}

void tell_plan_findings(const std::vector<Finding>& refused, OffPumpAnswer& answer) {
  if (refused.empty()) return;
  const bool way_down = answer.first && (answer.first->dose || answer.first->carbohydrate > Carbohydrate{}) &&
                        (bears_on_a_correction(refused) || bears_on_a_meal(refused));
  const bool bridge = answer.bridge && (bears_on_basal(refused) || bears_on_a_correction(refused) || bears_on_a_meal(refused));
  const bool long_dose = answer.long_dose && bears_on_long_acting(refused);
  if (!way_down && !bridge && !long_dose) return;
  if (answer.call < Call::team) answer.call = Call::team;
  if (way_down && answer.first->call < Call::team) answer.first->call = Call::team;
}

}  // namespace stopgap
