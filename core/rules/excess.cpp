#include "rules/excess.hpp"

#include "figures/action.hpp"
#include "rules/events.hpp"

namespace stopgap::rules {
namespace {

void read_mistakes(Facts& facts) {
  const Duration action = facts.plan.rapid.action;
  const Duration long_action = facts.plan.long_acting ? facts.plan.long_acting->action
                                                      : Duration::hours(figures::longest_long_acting_hours.value);
  if (const auto& mistake = facts.situation.mistake) {
    if (mistake->insulin == InsulinType::rapid) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown = !mistake->units;
      later(facts.last_excess, facts.now);
    } else {
      facts.mistake_long = true;
    }
  }
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::mistake) continue;
    const Duration since = facts.since(event);
    if (event->insulin == InsulinType::rapid && since <= action) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown |= !event->units;
      later(facts.last_excess, event->at.instant);
    } else if (event->insulin == InsulinType::long_acting && since <= long_action) {
      facts.mistake_long = true;
    }
  }
}

// Doses that together come to a syringe step are too much; `last` is when the last of them was given.
struct Sum {
  Insulin units;
  std::optional<Instant> last;
  bool comes_to(Insulin step) const { return last && units >= step; }
};

// Deliveries off the body with this end of the tubing, within the hours of action.
Sum off_body(const Facts& facts, TubingEnd end) {
  Sum sum;
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::offBody || event->tubing_end != end || facts.since(event) > facts.plan.rapid.action) continue;
    sum.units = sum.units + *event->units;
    later(sum.last, event->at.instant);
  }
  return sum;
}

// Corrections and automatic doses of the pump after the earliest needle dose within its lock.
Sum on_top_of_a_needle(const Facts& facts) {
  Sum sum;
  std::optional<Instant> needle;
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    if (is_needle_dose(*event, facts.plan)) {
      if (!needle && facts.since(event) < facts.plan.limits.lock) needle = at;
    } else if (event->kind == EventKind::pumpDose && event->purpose != PumpPurpose::meal && needle && at > *needle) {
      sum.units = sum.units + *event->units;
      later(sum.last, at);
    }
  }
  return sum;
}

void went_in(bool& fact, std::optional<Instant>& last_excess, const Sum& sum) {
  fact = true;
  later(last_excess, *sum.last);
}

}  // namespace

void judge_doubling(Facts& facts, bool could_go_low) {
  const Insulin step = facts.plan.usual_device().step;
  const Sum body = off_body(facts, TubingEnd::body);
  if (body.comes_to(step)) went_in(facts.off_body_went_in, facts.last_excess, body);
  if (!could_go_low) return;
  // Small deliveries add up: what surely went in counts together with what may have.
  const Sum unsure = off_body(facts, TubingEnd::unsure);
  if (unsure.last && body.units + unsure.units >= step) went_in(facts.off_body_went_in, facts.last_excess, unsure);
  const Sum on_top = on_top_of_a_needle(facts);
  const bool still_acts = on_top.last && facts.now - *on_top.last <= facts.plan.rapid.action;
  if (on_top.comes_to(step) && still_acts) went_in(facts.pump_doubled, facts.last_excess, on_top);
}

void read_excess(Facts& facts) {
  read_mistakes(facts);
  judge_doubling(facts, facts.would_go_low_absorbed);
}

}  // namespace stopgap::rules
