#include "off_pump.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/off_pump.hpp"
#include "off_pump/back.hpp"
#include "off_pump/bridge.hpp"
#include "off_pump/first.hpp"
#include "off_pump/long_acting.hpp"
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

// Each bridge by its clock time, for as long as it is needed; then the next long-acting.
void set_alarms(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, const Hours& hours, OffPumpAnswer& answer) {
  const Instant now = question.now.instant;
  const bool gives_long = answer.gives_long();
  const LongAtWork& work = outage.long_acting;
  const bool at_work = work.last && now < *work.covers_until;
  Instant until = now + question.expected.value_or(figures::long_acting_day.value);
  if (question.asleep_until) until = std::max(until, *question.asleep_until);
  if (at_work) until = work.ends_before_the_next() ? *work.due : *work.covers_from;
  else if (gives_long) until = answer.long_dose->works_from;
  until = std::min(until, now + figures::long_acting_day.value);
  const Instant first = hours.due ? hours.to : hours.from;
  if (!answer.long_acting_bridges)
    for (Instant at = first; at > now && at < until; at = at + plan.off_pump.bridge) answer.alarms.push_back({at, AlarmFor::bridge});
  const bool in_parts = plan.off_pump.parts > 1;
  const AlarmFor what = in_parts ? AlarmFor::longActingPart : AlarmFor::longActing;
  if (gives_long) {
    const Duration part = answer.long_dose->share == LongShare::half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
    answer.alarms.push_back({now + (in_parts ? part : std::max(plan.long_acting->action, figures::long_acting_day.value)), what});
  } else if (answer.long_state == LongState::hold) {
    answer.alarms.push_back({*answer.long_due, what});
  }
}

void note(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, OffPumpAnswer& answer) {
  const auto say = [&](Note what) { answer.notes.add(what); };
  const auto team = [&](Note what) {
    say(what);
    answer.call = std::max(answer.call, Call::team);
  };
  if (answer.because == WayReason::noLongActing) team(Note::getLongActing);
  if (answer.missed) answer.missed->too_long ? team(Note::missedTooLong) : say(Note::missedBridge);
  if (answer.long_state == LongState::hold) say(Note::longActingHeld);
  if (answer.long_dose) {
    if (answer.long_dose->injections.size() > 1) team(Note::longActingSplit);
    if (answer.long_dose->units.is_zero()) team(Note::longActingUnderStep);
    // On the day of a journey the published rule gives another amount than a day's: whose day it is only people know.
    if (answer.travel && !answer.travel->parts.empty() && !answer.long_dose->order) team(Note::travelAskFirst);
  }
  if (outage.long_acting.other_than_shown) team(Note::longActingOther);
  if (plan.long_acting && plan.long_acting->action > figures::long_acting_day.value) say(Note::outlastsADay);
  if (answer.bridge) {
    if (answer.bridge->units.is_zero() && !answer.bridge->basal.is_zero()) team(Note::bridgeUnderStep);
    if (!answer.bridge->cut.is_zero()) team(Note::bridgeCut);
  }
  if (answer.off && answer.since) {
    const Duration off_for = question.now.instant - *answer.since;
    answer.calls = {*answer.since + figures::outage_call.value, *answer.since + figures::outage_call_again.value};
    if (off_for >= figures::outage_call_again.value) team(Note::callAfterTwoDays);
    else if (off_for >= figures::outage_call.value) team(Note::callAfterADay);
  }
  if (answer.off) {
    say(Note::neverFromPen);
    say(Note::otherVial);
  }
  say(Note::boxWins);
  if (answer.insulin.heated) say(Note::heatedInsulin);
  if (!answer.back.missed_basal.is_zero()) say(Note::missedBasalTalk);
  if (answer.back.automation_from) say(Note::automationOff);
  if (answer.travel) {
    constexpr std::array<Note, 4> rules{Note::travelIgnore, Note::travelSameBasal, Note::travelEast, Note::travelWest};
    say(rules[static_cast<std::size_t>(answer.travel->rule)]);
    if (answer.travel->rule != TravelRule::ignore) say(Note::travelClock);
    say(Note::suppliesTwice);
  }
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
      answer.long_dose = long_dose(plan, outage, question.now);
    const Hours hours = waits_for_pump ? hours_while_back_soon(outage, now) : hours_of(plan, outage, now, answer.gives_long());
    const LongAtWork& work = outage.long_acting;
    answer.long_acting_bridges = hours.from > now && work.last && hours.from == *work.covers_until && !work.ends_before_the_next();
    // Told even where a long-acting dose is due that would work by then: until it is in, nobody knows that it will be.
    if (!hours.due && hours.from > now && !answer.long_acting_bridges) answer.next_bridge = hours.from;
    if (waits == Waits::nothing || waits == Waits::correction) {
      const Bridge bridge = bridge_of(facts, outage, hours, waits == Waits::correction);
      if (hours.due || !bridge.units.is_zero()) answer.bridge = bridge;
      answer.could_go_low = facts.could_go_low(bridge.parts.rescue) || facts.below(plan.ketones.carbohydrate_only_below);
    }
    set_alarms(plan, outage, question, hours, answer);
  }
  answer.back = back_of(plan, outage, question.now, answer.holds);
  answer.insulin = storage_of(plan, history, question.now);
  if (question.zones_east) answer.travel = travel_of(plan, outage, *question.zones_east, now);
  note(plan, outage, question, answer);
  return answer;
}

}  // namespace stopgap
