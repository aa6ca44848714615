#include "off_pump/bridge.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "rules/dose.hpp"
#include "rules/gate.hpp"

namespace stopgap::without_pump {
namespace {

const Insulin record_step = Insulin::hundredths(1);   // parts are recorded in hundredths

void correct(const rules::Facts& facts, bool waits, Bridge& bridge) {
  const Working working = rules::rescue_working(facts, rules::Basis::netOnly, false, facts.counted);
  bridge.correction = working.correction;
  bridge.on_board = working.on_board;
  if (working.before_rounding.is_zero()) return;
  if (waits) {
    bridge.block = CorrectionBlock::first;
    return;
  }
  const rules::Opening opening = rules::gate_for_needle(facts, rules::Basis::netOnly, false);
  if (opening.gate != Gate::open) {
    bridge.block = CorrectionBlock::hold;
    bridge.correction_opens = opening.opens;
  } else if (rules::is_under_one_step(facts, working)) {
    bridge.block = CorrectionBlock::underStep;  // else a tenth of a unit would close the way to a ketone dose for hours
  } else {
    bridge.net = working.before_rounding;
    bridge.cut = working.cut;
  }
}

// Ketones act, or did and are not tested again; somebody is ill or high, or saw a fault: nobody knows since when nothing went in.
bool needs_basal_now(const rules::Facts& facts) {
  SetOf<Fault> before = facts.faults;
  before.remove(Fault::pumpDead);   // that is the outage itself
  return facts.acting || facts.last_acting || facts.unwell || facts.high || !before.empty();
}

// From when on nothing stands for basal.
Instant without_from(const Outage& outage, Instant now) { return std::max(outage.bare_since(now), outage.bridged_until().value_or(*outage.since)); }

}  // namespace

Hours hours_of(const Plan& plan, const Outage& outage, Instant now, bool long_acting_now) {
  const auto before = outage.bridged_until();
  const Duration tolerance = figures::bridge_tolerance.value;
  Hours hours{now, now, false};
  const auto& work = outage.long_acting;
  if (before && *before > now) {
    hours.from = *before;
    // A bridge that ends where long-acting insulin begins to work has no next one.
    const bool taken_over = work.last && now < *work.covers_until && *before + tolerance >= *work.covers_from;
    if (*before - now > tolerance) {
      const Instant next = taken_over ? *work.covers_until : *before;
      return {next, next, false};
    }
  }
  hours.to = hours.from + plan.off_pump.bridge;
  if (work.last && now < *work.covers_until) {
    if (work.continues || hours.from >= *work.covers_from) return {*work.covers_until, *work.covers_until, false};
    hours.to = std::min(hours.to, *work.covers_from);
  } else if (long_acting_now) {
    hours.to = std::min(hours.to, work.is_followed_at(now, *plan.long_acting) ? now : now + plan.long_acting->onset);
  }
  hours.due = hours.from < hours.to;
  if (!hours.due) hours.to = hours.from;
  return hours;
}

Bridge bridge_of(const rules::Facts& facts, const Outage& outage, const Hours& hours, bool correction_waits) {
  const Plan& plan = facts.plan;
  const Device& device = facts.device();
  Bridge bridge;
  bridge.with = facts.with();
  bridge.from = hours.from;
  bridge.to = hours.to;
  if (hours.due) {
    bridge.basal = basal_over(plan.basal, hours.from, hours.to, facts.situation.now.offset);
    bridge.carried = outage.carried_into(hours.from);
  }
  const Carbohydrate carbs = facts.vomits ? Carbohydrate{} : facts.situation.carbs.value_or(Carbohydrate{});
  bridge.meal = carbs / facts.ratio;
  correct(facts, correction_waits, bridge);
  bridge.sum = at_least_none(bridge.basal + bridge.carried) + bridge.meal + bridge.net;
  const Insulin most = device.capacity.down_to(device.step);
  const Insulin rounded = plan.to_step(bridge.sum, device.step);
  bridge.units = lesser(rounded, most);
  if (rounded > most) bridge.cut = bridge.cut + (bridge.sum - most);
  // The correction counts in full, so that what is on board is never thought less than it is; then basal, the meal last.
  bridge.parts.rescue = lesser(bridge.net, bridge.units).down_to(record_step);
  const Insulin basal = at_least_none(bridge.basal + bridge.carried);
  Insulin left = bridge.units - bridge.parts.rescue;
  if (rounded > most) {
    bridge.parts.basal = lesser(basal, left).down_to(record_step);
    bridge.parts.meal = left - bridge.parts.basal;
  } else {
    bridge.parts.meal = lesser(bridge.meal, left).down_to(record_step);
    bridge.parts.basal = left - bridge.parts.meal;
    // No basal is due: what rounding up added belongs to the meal.
    if (basal.is_zero()) {
      bridge.parts.meal = bridge.meal.is_zero() ? Insulin{} : left;
      bridge.parts.basal = Insulin{};
    }
  }
  // A correction alone is rounded down, whatever the plan's rounding, so that it is never over its cap.
  if (basal.is_zero() && bridge.meal.is_zero()) {
    bridge.units = lesser(bridge.units, bridge.net.down_to(device.step));
    bridge.parts = {bridge.units, {}, {}};
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
  return question.now.instant + *question.expected < latest && !(question.asleep_until && *question.asleep_until > latest);
}

bool is_back_soon(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question) {
  return is_missed_rather(facts, question, without_from(outage, question.now.instant));
}

Hours hours_while_back_soon(const Outage& outage, Instant now) {
  const Instant latest = without_from(outage, now) + figures::longest_without_insulin.value;
  return {latest, latest, false};
}

}  // namespace stopgap::without_pump
