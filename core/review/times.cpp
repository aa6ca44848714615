// Hours and minutes: how long insulin acts, what may be expected of a correction by a look, and how long a hold or a look waits.
#include "action/curve.hpp"
#include "review/findings.hpp"

namespace stopgap::review {

void look_at_high(Review& review) {
  const Plan& plan = review.plan;
  const auto& most = plan.unit == GlucoseUnit::mmol ? figures::trigger_most_mmol : figures::trigger_most_mg;
  if (plan.high.trigger > most.value)
    review.find(most, "trigger-late", FindingLevel::confirm, "/plan/high/trigger", {{"trigger", plan.high.trigger}, {"most", most.value}});
  if (plan.high.second_look > figures::second_look_latest.value)
    review.find(figures::second_look_latest, "second-look-late", FindingLevel::confirm, "/plan/high/secondLook",
                {{"minutes", minutes(plan.high.second_look)}, {"latest", minutes(figures::second_look_latest.value)}});
  if (plan.high.looks_after_injection.front() > figures::look_after_dose_latest.value)
    review.find(figures::look_after_dose_latest, "look-after-dose-late", FindingLevel::confirm, "/plan/high/looksAfterInjection/0",
                {{"minutes", minutes(plan.high.looks_after_injection.front())}, {"latest", minutes(figures::look_after_dose_latest.value)}});

  // The least that a correction from the trigger has brought about by the second look, over the day. Expecting more would call
  // a working correction failed, and lead to a needle on top of it.
  Glucose target = plan.target.entries.front().value;
  for (const auto& entry : plan.target.entries)
    if (entry.value > target) target = entry.value;
  const std::int64_t acted = whole_share - remaining_share(plan.high.second_look, plan.rapid.action);
  const Fraction predicted = Fraction{(plan.high.trigger - target).in_grains()} * Fraction::of(acted, whole_share);
  if (Fraction{plan.high.expected_fall.in_grains()} <= predicted) return;
  // The most that can be typed and is not refused: down to a step of the field.
  const Fraction step{(plan.unit == GlucoseUnit::mmol ? GlucoseFall::mmol_tenths(1) : GlucoseFall::mg(1)).in_grains()};
  const Fraction accepted = Fraction{(predicted / step).floor()} * step;
  review.find(figures::fall_within_curve, "expected-fall-too-large", FindingLevel::refuse, "/plan/high/expectedFall",
              {{"expected", plan.high.expected_fall}, {"most", GlucoseFall::grains(accepted.floor())}, {"minutes", minutes(plan.high.second_look)}});
}

void look_at_times(Review& review) {
  const Plan& plan = review.plan;
  const Duration action = plan.rapid.action;
  if (action < figures::action_least.value || action > figures::action_most.value) {
    const auto& limit = action < figures::action_least.value ? figures::action_least : figures::action_most;
    review.find(limit, "action-hours-unusual", FindingLevel::confirm, "/plan/rapid/actionHours",
                {{"hours", hours(action)}, {"least", hours(figures::action_least.value)}, {"most", hours(figures::action_most.value)}});
  }
  if (action < figures::action_as_clamped.value)
    review.find(figures::action_as_clamped, "action-hours-short", FindingLevel::note, "/plan/rapid/actionHours",
                {{"hours", hours(action)}, {"limit", hours(figures::action_as_clamped.value)}});
  if (plan.limits.lock < figures::lock_least.value)
    review.find(figures::lock_least, "lock-short", FindingLevel::confirm, "/plan/limits/lockHours",
                {{"hours", hours(plan.limits.lock)}, {"least", hours(figures::lock_least.value)}});
  for (std::size_t i = 0; i < plan.ketones.rows.size(); ++i) {
    const auto& repeat = plan.ketones.rows[i].repeat;
    if (repeat && *repeat < figures::repeat_least.value)
      review.find(figures::repeat_least, "repeat-short", FindingLevel::confirm, item_path("/plan/ketones/rows", i, "repeatHours"),
                  {{"hours", hours(*repeat)}, {"least", hours(figures::repeat_least.value)}});
  }
  const Fraction factor = plan.off_pump.long_acting_factor.value();
  if (factor < figures::long_acting_factor_least.value || factor > figures::long_acting_factor_most.value) {
    const auto& limit = factor < figures::long_acting_factor_least.value ? figures::long_acting_factor_least : figures::long_acting_factor_most;
    review.find(limit, "long-acting-factor-unusual", FindingLevel::confirm, "/plan/offPump/longActingFactor",
                {{"factor", PlainNumber{factor}}, {"least", PlainNumber{figures::long_acting_factor_least.value}}, {"most", PlainNumber{figures::long_acting_factor_most.value}}});
  }
}

}  // namespace stopgap::review
