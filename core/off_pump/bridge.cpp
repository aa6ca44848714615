#include "off_pump/bridge.hpp"

#include <algorithm>
#include "action/curve.hpp"
#include "figures/off_pump.hpp"
#include "rules/dose.hpp"
#include "rules/gate.hpp"

namespace stopgap::without_pump {
namespace {

const Insulin record_step = Insulin::hundredths(1);   // parts are recorded in hundredths

// Basal that went in beyond what its hours need acts on; it counts only where no bridge follows to take it off.
Insulin basal_on_board(const rules::Facts& facts, const Outage& outage, const Hours& hours) {
  if (hours.due || outage.bridges.empty()) return Insulin{};
  const Covered& last = outage.bridges.back();
  if (last.owed >= Insulin{}) return Insulin{};
  Remaining acting;
  acting.add(Insulin{} - last.owed, remaining_share(facts.now - last.given, facts.plan.rapid.action));
  return acting.rounded_up();
}

bool asks_nothing_first(Rule rule) {
  return rule == Rule::OFF || rule == Rule::CHG || rule == Rule::WAI || rule == Rule::PMP || rule == Rule::NON;
}

bool was_bridged_twice(const rules::Facts& facts, const Outage& outage) {
  return outage.bridged_twice && facts.now - *outage.bridged_twice <= facts.plan.rapid.action;
}

struct Company {
  bool basal = false, meal = false;
  bool any() const { return basal || meal; }
};

void correct(const rules::Facts& facts, const Outage& outage, const Hours& hours, const Advice& advice, bool waits, Company beside,
             Bridge& bridge) {
  const Insulin counted = facts.counted + basal_on_board(facts, outage, hours);
  const Working working = rules::rescue_working(facts, rules::Basis::netOnly, false, counted);
  bridge.correction = working.correction;
  bridge.on_board = counted;
  const auto blocked = [&](CorrectionBlock why, std::optional<Instant> opens = std::nullopt) {
    bridge.block = why;
    bridge.correction_opens = opens;
  };
  // The way down closed its own gate: the hold it shows is the hold of this part.
  if (advice.gate == Gate::HLD) return blocked(CorrectionBlock::hold, advice.hold_until);
  if (was_bridged_twice(facts, outage) && working.correction > Insulin{}) return blocked(CorrectionBlock::twice);
  if (working.before_rounding.is_zero()) return;
  const bool is_rule_dose = advice.decided_by == Rule::INJ && advice.dose && !advice.dose->rescue.is_zero();
  if (waits) return blocked(CorrectionBlock::first);
  if (!is_rule_dose && !asks_nothing_first(advice.decided_by))
    return blocked(advice.decided_by == Rule::INJ ? CorrectionBlock::underStep : CorrectionBlock::first);
  // Under a step a tenth of a unit would close the way to a ketone dose for hours.
  if (rules::is_under_one_step(facts, working)) return blocked(CorrectionBlock::underStep);
  if (!is_rule_dose && !beside.any()) return blocked(CorrectionBlock::alone);
  const rules::Opening opening = rules::gate_for_needle(facts, rules::Basis::netOnly, false);
  if (opening.gate != Gate::open) return blocked(CorrectionBlock::hold, opening.opens);
  if (const auto opens = rules::rolling_cap_opens(facts, working.before_rounding.down_to(record_step)))
    return blocked(CorrectionBlock::hold, opens);
  bridge.net = beside.any() ? working.before_rounding : rules::rounded_rescue(facts, working);
  bridge.cut = working.cut;
}

// From when on nothing stands for basal.
Instant without_from(const Outage& outage, Instant now) {
  return std::max(outage.bare_since(now), outage.bridged_until().value_or(*outage.since));
}

bool is_young_child(const rules::Facts& facts) {
  return years_between(facts.plan.person.born, local_day(facts.situation.now)) < figures::young_child_years.value;
}

Offset here(const rules::Facts& facts) { return facts.situation.now.offset; }

Instant up_to_full_hours(Instant from, Instant to) {
  const Duration hour = Duration::hours(1);
  Instant end = from + hour;
  while (end < to) end = end + hour;
  return end;
}

// The first minute at which so much basal has been owed since `from`; a day later where it never is.
Instant owed_at(const rules::Facts& facts, const Outage& outage, Instant from, Insulin units) {
  return outage.has_needed(facts.plan, from, units, from + figures::long_acting_day.value, here(facts));
}

Hours single_step_hours(const rules::Facts& facts, const Outage& outage, Instant uncovered) {
  const Instant now = facts.now;
  // Covered still: nothing is owed yet.
  const Instant from = uncovered > now ? uncovered : outage.bare_since(now);
  Insulin owed = facts.device().step;
  // The last single step ended what was bare before it; more than one step stands for more hours.
  if (!outage.single_steps.empty() && outage.single_steps.back().at == from) owed = greater(owed, outage.single_steps.back().basal);
  const Instant at = owed_at(facts, outage, from, owed);
  if (at <= now) return {now, now, true, true};
  return {at, at, false, true};
}

}  // namespace

bool needs_basal_now(const rules::Facts& facts) {
  SetOf<Fault> before = facts.faults;
  before.remove(Fault::pumpDead);   // that is the outage itself
  return facts.acting || facts.last_acting || facts.unwell || facts.high || !before.empty() || facts.pregnant || facts.sglt2_inhibitor ||
         is_young_child(facts);
}

bool is_full_bridge_under_one_step(const rules::Facts& facts, const Outage& outage, Instant from) {
  return outage.needed_over(facts.plan, from, from + facts.plan.off_pump.bridge, here(facts)) < facts.device().step;
}

Instant bridge_end(const rules::Facts& facts, const Outage& outage, Instant from, const std::optional<Instant>& expected) {
  const Instant full = from + facts.plan.off_pump.bridge;
  if (!expected) return full;
  Instant end = std::min(full, up_to_full_hours(from, *expected));
  // Fewer hours than fill one step would leave these hours bare.
  while (end < full && outage.needed_over(facts.plan, from, end, here(facts)) < facts.device().step) end = std::min(full, end + Duration::hours(1));
  return end;
}

Instant after_single_step(const rules::Facts& facts, const Outage& outage, Instant given, Insulin basal) {
  return owed_at(facts, outage, given, greater(basal, facts.device().step));
}

Hours hours_of(const rules::Facts& facts, const Outage& outage, const HoursAsked& asked) {
  const Plan& plan = facts.plan;
  const Instant now = facts.now;
  const Duration tolerance = figures::bridge_tolerance.value;
  const auto& work = outage.long_acting;
  const auto bridged = outage.bridged_until();
  const Instant uncovered = outage.needed_from(std::max(now, bridged.value_or(now)));
  const bool partly = outage.long_share(uncovered) > Fraction{};
  const Instant takes_over = outage.needed_until(uncovered, uncovered + plan.off_pump.bridge);
  const bool is_taken_over = takes_over < uncovered + plan.off_pump.bridge;
  if ((asked.bridges || partly) && !is_taken_over && !asked.gives_long && is_full_bridge_under_one_step(facts, outage, uncovered))
    return single_step_hours(facts, outage, uncovered);
  if (uncovered - now > tolerance || (uncovered > now && !(bridged && *bridged == uncovered))) {
    // A gap of minutes before long-acting insulin works is no time for an injection.
    if (is_taken_over && takes_over - uncovered <= tolerance) {
      const Instant next = outage.needed_from(takes_over);
      return {next, next};
    }
    return {uncovered, uncovered};
  }
  Hours hours{uncovered, bridge_end(facts, outage, uncovered, asked.expected)};
  hours.to = std::min(hours.to, takes_over);
  if (is_taken_over && uncovered > now && takes_over - uncovered <= tolerance) {
    const Instant next = outage.needed_from(takes_over);
    return {next, next};
  }
  if (asked.gives_long) hours.to = std::min(hours.to, work.is_followed_at(now, *plan.long_acting) ? now : now + plan.long_acting->onset);
  hours.due = hours.from < hours.to;
  if (!hours.due) hours.to = hours.from;
  return hours;
}

Bridge bridge_of(const rules::Facts& facts, const Outage& outage, const Hours& hours, const Advice& advice, const BridgeAsked& asked) {
  const Plan& plan = facts.plan;
  const Device& device = facts.device();
  Bridge bridge;
  bridge.with = facts.with();
  bridge.from = hours.from;
  bridge.to = hours.to;
  bridge.single_step = hours.due && hours.single_step;
  if (bridge.single_step) {
    bridge.basal = device.step;
  } else if (hours.due) {
    bridge.basal = outage.needed_over(plan, hours.from, hours.to, facts.situation.now.offset);
    bridge.carried = outage.owed_to(hours.from, plan);
  }
  const Insulin basal = at_least_none(bridge.basal + bridge.carried);
  bridge.meal = (facts.vomits || asked.basal_alone ? Carbohydrate{} : asked.carbs) / facts.ratio;
  if (!asked.basal_alone) {
    const Company beside{!basal.is_zero(), !bridge.meal.is_zero()};
    correct(facts, outage, hours, advice, asked.correction_waits, beside, bridge);
  }
  bridge.sum = basal + bridge.meal + bridge.net;
  const Insulin most = device.capacity.down_to(device.step);
  // Below the trigger a correction stands only beside basal or a meal that is drawn with it.
  const bool is_alone = plan.to_step(bridge.sum, device.step) <= bridge.net && !bridge.single_step;
  if (!facts.high && is_alone && !bridge.net.is_zero() && !(basal.is_zero() && bridge.meal.is_zero())) {
    bridge.net = Insulin{};
    bridge.block = CorrectionBlock::alone;
    bridge.sum = basal + bridge.meal;
  }
  Insulin rounded = plan.to_step(bridge.sum, device.step);
  // A single step is whole already: what rounding takes off falls on the meal.
  if (bridge.single_step) rounded = basal + (bridge.meal + bridge.net).down_to(device.step);
  // A correction alone is the way down's own dose, rounded there.
  if (basal.is_zero() && bridge.meal.is_zero()) rounded = bridge.net.down_to(device.step);
  bridge.units = lesser(rounded, most);
  if (rounded > most) bridge.cut = bridge.cut + (bridge.sum - most);
  // The correction counts in full, so that what is on board is never thought less than it is; then basal, the meal last.
  bridge.parts.rescue = lesser(bridge.net, bridge.units).down_to(record_step);
  const Insulin left = bridge.units - bridge.parts.rescue;
  if (basal.is_zero()) {
    // No basal is due: what rounding up added belongs to the meal.
    bridge.parts.meal = bridge.meal.is_zero() ? Insulin{} : left;
    if (bridge.meal.is_zero()) bridge.parts.rescue = bridge.units;
  } else if (rounded > most || bridge.single_step) {
    bridge.parts.basal = lesser(basal, left).down_to(record_step);
    bridge.parts.meal = left - bridge.parts.basal;
    if (bridge.meal.is_zero()) {
      bridge.parts.basal = left;
      bridge.parts.meal = Insulin{};
    }
  } else {
    bridge.parts.meal = lesser(bridge.meal, left).down_to(record_step);
    bridge.parts.basal = left - bridge.parts.meal;
  }
  if (hours.due && !hours.single_step && !bridge.parts.basal.is_zero()) {
    const std::int64_t step = figures::basal_hours_step.value.in_seconds();
    bridge.basal_hours = Duration::seconds(((hours.to - hours.from).in_seconds() + step - 1) / step * step);
  }
  return bridge;
}

std::optional<Missed> missed_of(const Outage& outage, Instant now) {
  const Instant since = outage.bare_since(now);
  if (now - since <= figures::bridge_tolerance.value) return std::nullopt;
  return Missed{since, now - since > figures::longest_without_insulin.value};
}

bool is_missed_rather(const rules::Facts& facts, const OffPumpQuestion& question, Instant from) {
  if (!question.expected || needs_basal_now(facts)) return false;
  const Instant latest = from + figures::longest_without_insulin.value;
  const bool sleeps_on = question.asleep_until && *question.asleep_until > latest && !question.wakes;
  return question.now.instant + *question.expected < latest && !sleeps_on;
}

bool is_back_soon(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question) {
  return is_missed_rather(facts, question, without_from(outage, question.now.instant));
}

Hours hours_while_back_soon(const Outage& outage, Instant now) {
  const Instant latest = without_from(outage, now) + figures::longest_without_insulin.value;
  return {latest, latest};
}

}  // namespace stopgap::without_pump
