#include "off_pump.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/off_pump.hpp"
#include "off_pump/alarms.hpp"
#include "off_pump/back.hpp"
#include "off_pump/bridge.hpp"
#include "off_pump/first.hpp"
#include "off_pump/long_acting.hpp"
#include "off_pump/notes.hpp"
#include "off_pump/storage.hpp"
#include "off_pump/travel.hpp"
#include "rules/hold.hpp"

namespace stopgap {
namespace {

using namespace without_pump;

void choose_way(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question, OffPumpAnswer& answer) {
  const Plan& plan = facts.plan;
  const Instant now = question.now.instant;
  const auto say = [&](OffWay way, WayReason because) {
    answer.way = way;
    answer.because = because;
  };
  if (!outage.off) return say(OffWay::none, WayReason::pumpOn);
  const auto& work = outage.long_acting;
  if (work.last && now < *work.covers_until) return say(OffWay::longActing, WayReason::atWork);
  if (is_back_soon(facts, outage, question)) return say(OffWay::none, WayReason::soonBack);
  if (!plan.long_acting || question.no_long_acting) return say(OffWay::bridge, WayReason::noLongActing);
  if (!question.expected) return say(OffWay::longActing, WayReason::unknown);
  if (*question.expected >= plan.off_pump.cutover) return say(OffWay::longActing, WayReason::longer);
  const auto bridged = outage.bridged_until();
  const Instant next = std::max(now, bridged.value_or(now)) + plan.off_pump.bridge;
  if (question.asleep_until && *question.asleep_until > (bridged && *bridged > now + figures::bridge_tolerance.value ? *bridged : next))
    return say(OffWay::longActing, WayReason::asleep);
  say(OffWay::bridge, WayReason::shorter);
}

}  // namespace

Parts parts_given(const Parts& shown, Insulin units) {
  Parts given;
  given.rescue = lesser(shown.rescue, units);
  given.basal = lesser(shown.basal, units - given.rescue);
  given.meal = lesser(shown.meal, units - given.rescue - given.basal);
  given.rescue = units - given.basal - given.meal;
  return given;
}

OffPumpAnswer off_pump(const Plan& plan, const Record& record, const OffPumpQuestion& question) {
  const Instant now = question.now.instant;
  const History told = History::of(record, now);
  const Outage outage = outage_of(plan, told, now);
  // A long record is not copied for nothing.
  const auto completed = outage.told ? std::nullopt : std::optional{with_pump_off(record, question.now)};
  const Record& seen = completed ? *completed : record;
  const History history = completed ? History::of(seen, now) : told;
  const Situation situation = situation_of(history, question);
  const rules::Facts facts = rules::facts_of(plan, history, situation);

  OffPumpAnswer answer;
  answer.off = outage.off;
  answer.recorded = outage.off && outage.told;
  answer.since = outage.since;
  if (question.expected) answer.expected_until = now + *question.expected;
  answer.holds = rules::running_holds(facts);
  answer.look = now + figures::off_pump_look.value;
  choose_way(facts, outage, question, answer);
  answer.long_state = long_state(plan, outage, now);
  answer.long_due = outage.long_acting.due;
  if (answer.long_state != LongState::hold) answer.long_due.reset();

  if (outage.off) {
    const Advice advice = advise(plan, seen, situation);
    answer.call = advice.call;
    answer.first = nothing_passes(facts);
    if (const auto first = comes_first(advice); first && (!answer.first || first->waits == Waits::everything)) answer.first = first;
    const Waits waits = answer.first ? answer.first->waits : Waits::nothing;
    const bool waits_for_pump = answer.because == WayReason::soonBack;
    if (!waits_for_pump) answer.missed = missed_of(outage, now);
    // Within the hold, and whatever the way, only what the team named on a call.
    const bool plans_long = answer.way == OffWay::longActing && answer.long_state == LongState::due;
    if (waits != Waits::everything && !question.no_long_acting && (plans_long || outage.long_acting.order))
      answer.long_dose = long_dose(plan, outage, question);
    const Hours hours = waits_for_pump ? hours_while_back_soon(outage, now) : hours_of(plan, outage, now, answer.gives_long());
    const LongAtWork& work = outage.long_acting;
    answer.long_acting_bridges = hours.from > now && work.last && hours.from == *work.covers_until && !work.ends_before_the_next();
    // Told even where a long-acting dose is due that would work by then: until it is in, nobody knows that it will be.
    if (!hours.due && hours.from > now && !answer.long_acting_bridges) answer.next_bridge = hours.from;
    const auto bridged = outage.bridged_until();
    answer.bridged = bridged && *bridged > now;
    if (waits == Waits::nothing || waits == Waits::correction) {
      const Bridge bridge = bridge_of(facts, outage, hours, waits == Waits::correction);
      if (hours.due || !bridge.units.is_zero()) answer.bridge = bridge;
      answer.could_go_low = facts.could_go_low(bridge.parts.rescue) || facts.below(plan.ketones.carbohydrate_only_below);
    }
    set_alarms(facts, outage, question, hours, answer);
  }
  answer.bridged_twice = outage.bridged_twice && now - *outage.bridged_twice <= plan.rapid.action;
  answer.could_go_low |= answer.bridged_twice;
  answer.back = back_of(plan, outage, question.now, answer.holds);
  answer.insulin = storage_of(plan, history, question.now);
  if (question.zones_east) answer.travel = travel_of(plan, outage, *question.zones_east, now);
  add_notes(plan, outage, question, answer);
  return answer;
}

}  // namespace stopgap
