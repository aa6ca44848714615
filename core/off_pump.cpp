#include "off_pump.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/off_pump.hpp"
#include "figures/timing.hpp"
#include "off_pump/alarms.hpp"
#include "off_pump/back.hpp"
#include "off_pump/bridge.hpp"
#include "off_pump/first.hpp"
#include "off_pump/given_long.hpp"
#include "off_pump/long_acting.hpp"
#include "off_pump/notes.hpp"
#include "off_pump/orders.hpp"
#include "off_pump/storage.hpp"
#include "off_pump/travel.hpp"
#include "rules/carbohydrate.hpp"
#include "rules/hold.hpp"

namespace stopgap {
namespace {

using namespace without_pump;

struct Asked {
  const rules::Facts& facts;
  const Outage& outage;
  const OffPumpQuestion& question;
  std::optional<Instant> expected;   // when a pump is

  Instant now() const { return question.now.instant; }
  const Plan& plan() const { return facts.plan; }
};

// Where basal by rapid insulin ends: the bridge that runs, or the one that would be given now.
Instant bridged_to(const Asked& asked) {
  const auto running = asked.outage.bridged_until();
  if (running && *running > asked.now() + figures::bridge_tolerance.value) return *running;
  return bridge_end(asked.facts, asked.outage, std::max(asked.now(), running.value_or(asked.now())), asked.expected);
}

bool is_pump_soon_after(const Asked& asked, Instant end) {
  return asked.expected && *asked.expected < end + figures::longest_without_insulin.value && !needs_basal_now(asked.facts);
}

bool is_small_basal_for_long_acting(const Asked& asked, Instant end) {
  const Instant from = std::max(asked.now(), asked.outage.bridged_until().value_or(asked.now()));
  if (!is_full_bridge_under_one_step(asked.facts, asked.outage, from)) return false;
  return !long_dose(asked.plan(), asked.outage, asked.question, false).units.is_zero() && !is_pump_soon_after(asked, end);
}

void choose_way(const Asked& asked, OffPumpAnswer& answer) {
  const Plan& plan = asked.plan();
  const OffPumpQuestion& question = asked.question;
  const auto say = [&](OffWay way, WayReason because) {
    answer.way = way;
    answer.because = because;
  };
  if (!asked.outage.off) return say(OffWay::none, WayReason::pumpOn);
  if (asked.outage.long_acting.at_work(asked.now())) return say(OffWay::longActing, WayReason::atWork);
  if (is_back_soon(asked.facts, asked.outage, question)) return say(OffWay::none, WayReason::soonBack);
  if (!plan.long_acting || question.no_long_acting) return say(OffWay::bridge, WayReason::noLongActing);
  if (!question.expected) return say(OffWay::longActing, WayReason::unknown);
  if (*question.expected >= plan.off_pump.cutover) return say(OffWay::longActing, WayReason::longer);
  const Instant end = bridged_to(asked);
  const bool sleeps_on = question.asleep_until && *question.asleep_until > end && !question.wakes;
  if (sleeps_on && !is_pump_soon_after(asked, end)) return say(OffWay::longActing, WayReason::asleep);
  if (is_small_basal_for_long_acting(asked, end)) return say(OffWay::longActing, WayReason::underStep);
  say(OffWay::bridge, WayReason::shorter);
}

// While one is at work the next is given at its time only where the pump stays away, or where it is the other half of a journey's day.
bool is_long_dose_planned(const Asked& asked, const OffPumpAnswer& answer) {
  if (answer.way != OffWay::longActing || answer.long_state != LongState::due) return false;
  if (answer.because != WayReason::atWork || asked.outage.long_acting.second_half) return true;
  return !asked.question.expected || *asked.question.expected >= asked.plan().off_pump.cutover;
}

// Too much rapid insulin is in: long-acting is given where basal is plainly missing and no low is near; otherwise the team says.
bool is_long_acting_held_by_excess(const rules::Facts& facts) {
  return !((facts.high || facts.acting) && !facts.is_low() && !facts.would_go_low);
}

// An order of the team: shown as an injection, or said why it is none.
void read_order(const Asked& asked, OffPumpAnswer& answer) {
  const LongAtWork& work = asked.outage.long_acting;
  const Event* order = asked.question.no_long_acting ? nullptr : work.order;
  if (!order) order = order_at(asked.facts.history, asked.now(), InsulinType::rapid);
  if (!order) return;
  answer.order = OrderSaid{order->id, order->by, order->insulin, *order->units, order->at.instant,
                           order->at.instant + figures::order_stands.value, block_of(asked.plan(), work, *order)};
}

void add_long_dose(const Asked& asked, const Advice& advice, OffPumpAnswer& answer) {
  if (asked.question.no_long_acting || asked.outage.long_acting.unknown_since) return;
  if (answer.order && answer.order->insulin == InsulinType::long_acting) {
    if (answer.order->block == OrderBlock::none) answer.long_dose = long_dose(asked.plan(), asked.outage, asked.question, true);
    return;
  }
  if (!is_long_dose_planned(asked, answer)) return;
  if (advice.outcome == Outcome::tooMuch && is_long_acting_held_by_excess(asked.facts)) return;
  // The published rule is for one dose a day: of two parts the team names the amounts.
  const auto zones = journey_of(asked.outage, asked.question.zones_east);
  if (zones && asked.plan().off_pump.parts > 1) {
    answer.notes.add(Note::travelAskFirst);
    answer.call = std::max(answer.call, Call::team);
    return;
  }
  answer.long_dose = long_dose(asked.plan(), asked.outage, asked.question, false);
  answer.long_dose->call_first = answer.because == WayReason::underStep;
}

// Near low, basal waits for carbohydrate; not for over two hours, and not where ketones act or nobody knows.
std::optional<EatsBefore> eats_before(const Asked& asked, const Hours& hours, Carbohydrate by_rule) {
  const rules::Facts& facts = asked.facts;
  if (!hours.due || !facts.below(asked.plan().ketones.carbohydrate_only_below)) return std::nullopt;
  const bool bare = asked.now() - asked.outage.bare_since(asked.now()) >= figures::longest_without_insulin.value;
  EatsBefore eats{asked.plan().low.grams, bare || facts.acting || facts.unknown};
  if (eats.together) eats.grams = greater(greater(eats.grams, by_rule), rules::matched(facts, Insulin{}, true));
  return eats;
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
  const Asked asked{facts, outage, question, answer.expected_until};
  choose_way(asked, answer);
  answer.long_state = long_state(plan, outage, now);
  answer.long_due = outage.long_acting.due;
  if (answer.long_state != LongState::hold) answer.long_due.reset();

  if (outage.off) {
    const Advice advice = advise(plan, seen, situation);
    answer.call = advice.call;
    answer.first = nothing_passes(facts);
    if (const auto first = comes_first(advice, facts); first && (!answer.first || first->waits == Waits::everything)) answer.first = first;
    Waits waits = answer.first ? answer.first->waits : Waits::nothing;
    const bool bare_too_long = now - outage.bare_since(now) >= figures::longest_without_insulin.value;
    const bool unread = facts.level == rules::Level::missing;
    BridgeAsked bridge_asked{false, false, question.carbs.value_or(Carbohydrate{})};
    // No reading is to be had: basal is not left out for over two hours because of it.
    if (waits == Waits::rapid && advice.outcome == Outcome::testGlucose && question.no_meter && bare_too_long) {
      waits = answer.first->waits = Waits::correction;
      bridge_asked.basal_alone = true;
      answer.notes.add(Note::basalWithoutReading);
      answer.call = std::max(answer.call, Call::team);
    }
    if (outage.long_acting.unknown_since && waits != Waits::everything) waits = Waits::rapid;
    const bool waits_for_pump = answer.because == WayReason::soonBack;
    if (!waits_for_pump) answer.missed = missed_of(outage, now);
    read_order(asked, answer);
    if (waits != Waits::everything) add_long_dose(asked, advice, answer);
    const bool bridges = answer.way == OffWay::bridge;
    const Hours hours =
        waits_for_pump ? hours_while_back_soon(outage, now) : hours_of(facts, outage, {asked.expected, answer.gives_long(), bridges});
    answer.small_basal = hours.single_step;
    const LongAtWork& work = outage.long_acting;
    answer.long_acting_bridges = !hours.due && hours.from > now && work.last && work.at_work(now) && !(hours.from < *work.due);
    // Told even where a long-acting dose is due that would work by then: until it is in, nobody knows that it will be.
    if (!hours.due && hours.from > now && !answer.long_acting_bridges) answer.next_bridge = hours.from;
    const auto bridged = outage.bridged_until();
    answer.bridged = bridged && *bridged > now;
    bool held = waits == Waits::everything || waits == Waits::rapid;
    if (!held) {
      answer.eats = eats_before(asked, hours, advice.carbohydrate);
      held = answer.eats && !answer.eats->together;
      if (advice.outcome == Outcome::comingDown && advice.dose) bridge_asked.carbs = greater(bridge_asked.carbs, plan.ketones.carbohydrate);
      bridge_asked.correction_waits = waits == Waits::correction || answer.eats;
    }
    if (!held) {
      const Bridge bridge = bridge_of(facts, outage, hours, advice, bridge_asked);
      if (hours.due || !bridge.units.is_zero()) answer.bridge = bridge;
      answer.could_go_low = facts.could_go_low(bridge.parts.rescue);
    }
    if (waits == Waits::nothing || waits == Waits::correction) answer.could_go_low |= facts.below(plan.ketones.carbohydrate_only_below);
    if (waits != Waits::everything && advice.outcome == Outcome::tooMuch && !answer.gives_long() && (hours.due || answer.next_bridge))
      answer.notes.add(Note::askForBasal);
    set_alarms(facts, outage, question, hours, answer);
    if (held && unread && question.no_meter && !bare_too_long && !answer.bridged && !work.at_work(now))
      answer.alarms.insert(answer.alarms.begin(), {outage.bare_since(now) + figures::longest_without_insulin.value, AlarmFor::bridge});
    for (const Look& look : advice.looks) answer.look = std::min(answer.look, look.at);
    if (answer.eats) answer.look = std::min(answer.look, now + figures::look_low.value);
    for (const OffAlarm& alarm : answer.alarms) answer.look = std::min(answer.look, alarm.at);
  }
  answer.bridged_twice = outage.bridged_twice && now - *outage.bridged_twice <= plan.rapid.action;
  answer.could_go_low |= answer.bridged_twice;
  answer.back = back_of(plan, history, outage, question.now, answer.holds);
  answer.insulin = storage_of(plan, history, question.now);
  if (question.zones_east) answer.travel = travel_of(plan, outage, *question.zones_east, now);
  add_notes(plan, outage, question, answer);
  return answer;
}

}  // namespace stopgap
