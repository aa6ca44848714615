#include "off_pump/notes.hpp"

#include <algorithm>
#include <array>
#include "figures/off_pump.hpp"

namespace stopgap::without_pump {
namespace {

// Without long-acting insulin nobody can sleep through the night off the pump: the alarm alone may not wake them. What waits for nobody
// is said alone.
bool is_asleep_at_a_bridge(const OffPumpQuestion& question, const OffPumpAnswer& answer) {
  if (answer.first && answer.first->waits == Waits::everything) return false;
  return question.asleep_until && std::any_of(answer.alarms.begin(), answer.alarms.end(), [&](const OffAlarm& alarm) {
    return alarm.what == AlarmFor::bridge && alarm.at < *question.asleep_until;
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
  if (is_asleep_at_a_bridge(question, answer)) say(Note::bridgeWhileAsleep);
  if (answer.missed) answer.missed->too_long ? team(Note::missedTooLong) : say(Note::missedBridge);
  if (answer.long_state == LongState::hold) say(Note::longActingHeld);
  if (answer.long_dose) {
    if (answer.long_dose->injections.size() > 1) team(Note::longActingSplit);
    if (answer.long_dose->units.is_zero()) team(Note::longActingUnderStep);
    // On the day of a journey the published rule gives another amount than a day's: whose day it is only people know.
    const bool changes = answer.travel && (answer.travel->rule == TravelRule::east || answer.travel->rule == TravelRule::west);
    if (changes && !answer.long_dose->order) team(Note::travelAskFirst);
  }
  if (answer.bridged_twice) team(Note::bridgedTwice);
  if (outage.long_acting.other_than_planned) team(Note::longActingOther);
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

}  // namespace stopgap::without_pump
