#include "documents/school_sheet.hpp"

#include "figures/ketones.hpp"
#include "figures/paper.hpp"

namespace stopgap {
namespace {

std::vector<Slot> who(const Contact* contact) {
  if (!contact) return {};
  return {{"name", contact->name}, {"phone", contact->phone}};
}
std::vector<Slot> with(std::vector<Slot> slots, const std::vector<Slot>& more) {
  slots.insert(slots.end(), more.begin(), more.end());
  return slots;
}

std::string listed(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) (out += out.empty() ? "" : "; ") += name;
  return out;
}

std::vector<Line> low_of(const Plan& plan, const Contact* home) {
  const Slot number{"number", plan.emergency_number};
  std::vector<Line> out{{"school-low-sugar", {{"glucose", plan.low.below}, {"grams", plan.low.grams}}},
                        {"school-low-recheck", {{"minutes", in_minutes(plan.low.recheck)}}},
                        {"school-low-no-insulin", {}},
                        {"school-low-swallow", {number}}};
  if (!plan.low.glucagon.empty()) out.push_back({"school-low-glucagon", {{"glucagon", plan.low.glucagon}}});
  out.push_back({"school-low-call", who(home)});
  return out;
}

// In the order a person does them; a name and a number at each place where somebody must judge.
std::vector<Line> steps_of(const Plan& plan, const Contact* home) {
  const SchoolOrders& orders = *plan.school;
  std::vector<Line> out{{"school-step-who", {{"name", plan.person.name}, {"day", plan.person.born}}},
                        {plan.ketones.test == KetoneTest::urine ? "school-step-test-strip" : "school-step-test", {}},
                        {"school-step-home", who(home)},
                        {"school-step-home-needle", {{"hours", in_hours(quiet_before_table(plan))}}},
                        {"school-step-row", {}}};
  if (orders.calculation == SchoolCalculation::allowed) out.push_back({"school-step-sum", {}});
  // Whom the answer to the same numbers names: the call that comes before the injection is the one home.
  if (orders.call_first_above) out.push_back({"school-step-call-first", with({{"dose", *orders.call_first_above}}, who(home))});
  out.push_back({"school-step-inject", {{"who", listed(orders.may_inject)}, {"insulin", plan.rapid.name}}});
  out.push_back({"school-step-write", {}});
  out.push_back({plan.tubing == Tubing::tubed ? "school-step-change" : "school-step-change-tubeless", who(home)});
  if (plan.automation != Automation::none) out.push_back({"school-step-automation", {{"hours", in_hours(plan.squaring.pause)}}});
  for (const Duration look : plan.high.looks_after_injection) out.push_back({"card-look", {{"minutes", in_minutes(look)}}});
  out.push_back({"school-step-no-second", who(home)});
  // The team stands below the steps, each with its hours.
  if (team_of(plan).empty()) out.push_back({"school-step-no-row-number", {{"number", plan.emergency_number}}});
  else out.push_back({"school-step-no-row", {}});
  return out;
}

std::vector<Line> danger_of(const Plan& plan, const Contact* home) {
  const Slot number{"number", plan.emergency_number};
  const auto strip = strip_of(plan, plan.ketones.rows.back());
  return {{"school-danger-signs", {number}},
          {strip ? "school-danger-strip" : "school-danger-ketones", {strip ? *strip : Slot{"ketones", figures::ketones_help_now.value}, number}},
          {"stranger-say", {}},
          {"school-danger-home", who(home)}};
}

std::vector<Line> orders_of(const Plan& plan) {
  const SchoolOrders& orders = *plan.school;
  std::vector<Line> out{{"school-order-prescriber", {{"name", orders.prescriber}}},
                        {"school-order-expire", {{"day", orders.orders_expire}}},
                        {"school-order-insulin", {{"insulin", plan.rapid.name}, {"count", counted(figures::units_per_ml.value)}}},
                        {orders.calculation == SchoolCalculation::tableOnly ? "school-order-table" : "school-order-sum", {}},
                        {"school-order-most", {{"dose", plan.limits.single_dose}}},
                        {"school-order-inject", {{"who", listed(orders.may_inject)}}}};
  if (orders.call_first_above) out.push_back({"school-order-call-first", {{"dose", *orders.call_first_above}}});
  return out;
}

std::vector<Line> school_of(const Plan& plan) {
  const SchoolOrders& orders = *plan.school;
  std::vector<Line> out{{"school-field-staff", {{"who", listed(orders.staff)}}}};
  if (!orders.storage.empty()) out.push_back({"school-field-storage", {{"place", orders.storage}}});
  if (orders.nurse_reviewed_on) out.push_back({"school-field-reviewed", {{"day", *orders.nurse_reviewed_on}}});
  out.push_back({"school-field-ask", {}});
  return out;
}

}  // namespace

SchoolSheet school_sheet(const Plan& plan) {
  const Contact* home = home_of(plan);
  SchoolSheet out;
  out.spans = dose_spans(plan, Viewer::school);
  out.head = {{"card-only-if", {{"hours", in_hours(quiet_before_table(plan))}}}, {"school-not-sure", who(home)}};
  out.low = low_of(plan, home);
  out.steps = steps_of(plan, home);
  out.danger = danger_of(plan, home);
  out.orders = orders_of(plan);
  out.school = school_of(plan);
  return out;
}

}  // namespace stopgap
