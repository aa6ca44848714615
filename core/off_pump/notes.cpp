#include "off_pump/notes.hpp"

#include <algorithm>
#include <array>
#include "figures/off_pump.hpp"
#include "figures/timing.hpp"

namespace stopgap::without_pump {
namespace {

// An injection falls due while they sleep: the alarm alone may not wake them. What waits for nobody is said alone.
bool is_asleep_at(bool bridge, const OffPumpQuestion& question, const OffPumpAnswer& answer) {
  if (answer.first && answer.first->waits == Waits::everything) return false;
  return question.asleep_until && std::any_of(answer.alarms.begin(), answer.alarms.end(), [&](const OffAlarm& alarm) {
    return (alarm.what == AlarmFor::bridge) == bridge && alarm.at < *question.asleep_until;
  });
}

}  // namespace

void add_notes(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, OffPumpAnswer& answer) {
  const auto say = [&](Note what) { answer.notes.add(what); };
  const auto team = [&](Note what) {
    say(what);
    answer.call = std::max(answer.call, Call::team);
  };
  if (answer.because == WayReason::noLongActing) team(Note::getLongActing);
  if (answer.because == WayReason::underStep) team(Note::longActingForSmallBasal);
  if (is_asleep_at(true, question, answer)) say(Note::bridgeWhileAsleep);
  if (is_asleep_at(false, question, answer)) say(Note::longActingWhileAsleep);
  if (answer.missed) answer.missed->too_long ? team(Note::missedTooLong) : say(Note::missedBridge);
  if (answer.long_state == LongState::hold) say(Note::longActingHeld);
  if (answer.eats) say(answer.eats->together ? Note::eatWith : Note::eatFirst);
  if (answer.order && answer.order->block != OrderBlock::none)
    team(answer.order->block == OrderBlock::notReadBack ? Note::orderNotReadBack : Note::orderTooLarge);
  if (answer.long_dose) {
    if (answer.long_dose->injections.size() > 1) team(Note::longActingSplit);
    if (answer.long_dose->units.is_zero()) team(Note::longActingUnderStep);
    if (answer.long_dose->second_half) say(Note::longActingSecondHalf);
  }
  if (answer.bridged_twice) team(Note::bridgedTwice);
  if (outage.long_acting.other_than_planned) team(Note::longActingOther);
  if (answer.off && outage.long_acting.too_little) team(Note::longActingTooLittle);
  if (outage.long_acting.unknown_since) {
    team(Note::longActingUnknown);
    const auto& unanswered = outage.long_acting.unanswered_call;
    if (unanswered && question.now.instant - *unanswered >= figures::unanswered_call.value) answer.call = Call::emergency;
  }
  if (plan.long_acting && plan.long_acting->action > figures::long_acting_day.value) say(Note::outlastsADay);
  if (answer.small_basal || (answer.bridge && answer.bridge->units.is_zero() && !answer.bridge->basal.is_zero())) team(Note::bridgeUnderStep);
  if (answer.bridge && !answer.bridge->cut.is_zero()) team(Note::bridgeCut);
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

}  // namespace stopgap::without_pump
