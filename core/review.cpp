#include "review.hpp"

#include <algorithm>
#include "review/findings.hpp"

namespace stopgap {
namespace review {

Review::Review(const Plan& as_written) : plan(as_written) {
  plan.agreement.status = PlanStatus::agreed;
  std::vector<TimeOfDay> times;
  const auto add_times = [&times](const auto& schedule) {
    for (const auto& entry : schedule.entries) times.push_back(entry.from);
  };
  add_times(plan.correction_factor);
  add_times(plan.carbohydrate_ratio);
  add_times(plan.target);
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  for (const TimeOfDay time : times)
    settings.push_back({time, plan.correction_factor.at(time), plan.carbohydrate_ratio.at(time), plan.target.at(time)});

  rows = table_rows(plan);
  for (const Glucose edge : plan.ketones.columns)
    if (edge >= plan.ketones.carbohydrate_only_below) rows.push_back(edge);
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
}

Moment Review::at(TimeOfDay time) const {
  const Duration into_day = Duration::minutes(time.in_minutes());
  return {Instant::epoch_seconds(plan.agreement.on.in_epoch_days() * 86400) + into_day, Offset{}};
}

std::size_t Review::column_of(Glucose glucose) const {
  std::size_t found = 0;
  for (std::size_t i = 1; i < plan.ketones.columns.size(); ++i)
    if (plan.ketones.columns[i] <= glucose) found = i;
  return found;
}

std::vector<Device> Review::devices() const {
  std::vector<Device> out;
  if (plan.syringe) out.push_back(*plan.syringe);
  if (plan.pen) out.push_back(*plan.pen);
  return out;
}

}  // namespace review

namespace {

using review::Review;

DoseTable table_at(const Review& review, TimeOfDay time) {
  const Plan& plan = review.plan;
  DoseTable table{time, table_columns(plan), whole_table(plan, review.at(time))};
  for (TableRow& row : table.rows) {
    if (row.kind != TableRow::Kind::number) continue;
    // As the pump would work it out from the same numbers, before its own step.
    const Insulin usual = (std::min(row.glucose, plan.limits.dosing_ceiling) - plan.target.at(time)) / plan.correction_factor.at(time);
    if (usual > Insulin{}) row.usual = usual;
  }
  return table;
}

review::Setting setting_at(const Review& review, TimeOfDay time) {
  review::Setting found = review.settings.front();
  for (const review::Setting& setting : review.settings)
    if (setting.from <= time) found = setting;
  return found;
}

void lay_tables(const Review& review, ReviewAnswer& answer) {
  const TimeOfDay noon = figures::table_by_day.value, small_hours = figures::table_by_night.value;
  std::vector<review::Setting> shown{setting_at(review, noon)};
  answer.day = table_at(review, noon);
  const review::Setting by_night = setting_at(review, small_hours);
  if (!by_night.same_values(shown.front())) {
    answer.night = table_at(review, small_hours);
    shown.push_back(by_night);
  }
  for (const review::Setting& setting : review.settings) {
    if (std::any_of(shown.begin(), shown.end(), [&](const review::Setting& other) { return other.same_values(setting); })) continue;
    answer.others.push_back(table_at(review, setting.from));
    shown.push_back(setting);
  }
}

void look_at_everything(Review& work) {
  review::look_at_person(work);
  review::look_at_agreement(work);
  review::look_at_insulins(work);
  review::look_at_yardsticks(work);
  review::look_at_schedules(work);
  review::look_at_high(work);
  review::look_at_ketone_rows(work);
  review::look_at_extras(work);
  review::look_at_doses(work);
  review::look_at_fallbacks(work);
  review::look_at_limits(work);
  review::look_at_times(work);
  review::look_at_contacts(work);
}

// A number typed twice with its reason stays found, and is settled: for this finding, and as long as the number is the same. An
// entry of an earlier version names no finding, so it settles nothing. What cannot be agreed is settled by no reason.
void take_reasons(const Plan& plan, const TextAt& text_at, std::vector<Finding>& findings) {
  for (Finding& finding : findings) {
    finding.value = text_at(finding.path);
    if (finding.level != FindingLevel::confirm) continue;
    for (const auto& retyped : plan.agreement.retyped) {
      if (retyped.path != finding.path) continue;
      if (retyped.finding.empty()) finding.earlier = retyped.reason;
      else if (retyped.finding == finding.id && retyped.value == finding.value) finding.retyped = retyped.reason;
    }
  }
}

}  // namespace

ReviewAnswer review_plan(const Plan& plan, const TextAt& text_at, const std::vector<HiddenCharacter>& hidden) {
  Review work{plan};
  look_at_everything(work);
  review::look_at_text(work, hidden);
  ReviewAnswer answer;
  lay_tables(work, answer);
  answer.findings = std::move(work.findings);
  answer.yardsticks = std::move(work.yardsticks);
  take_reasons(plan, text_at, answer.findings);
  return answer;
}

std::vector<Finding> findings_of(const Plan& plan) {
  Review work{plan};
  look_at_everything(work);
  return std::move(work.findings);
}

}  // namespace stopgap
