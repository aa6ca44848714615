#include "off_pump/alarms.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"
#include "off_pump/bridge.hpp"

namespace stopgap::without_pump {
namespace {

const Duration day = figures::long_acting_day.value;

// As long as bridges are needed: until long-acting insulin stands for all, or its next dose is due.
Instant bridges_until(const Outage& outage, Instant first, Instant now, const OffPumpAnswer& answer) {
  Instant until = now + day;
  if (answer.gives_long()) until = std::min(until, answer.long_dose->works_from);
  if (outage.long_acting.ends_before_the_next() && now < *outage.long_acting.due) until = std::min(until, *outage.long_acting.due);
  return outage.needed_until(first - Duration::seconds(1), until);
}

}  // namespace

void set_alarms(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question, const Hours& hours, OffPumpAnswer& answer) {
  const Instant now = question.now.instant;
  const auto ring = [&](Instant at, AlarmFor what) {
    const auto same = [&](const OffAlarm& alarm) { return alarm.at == at && alarm.what == what; };
    if (at > now && std::none_of(answer.alarms.begin(), answer.alarms.end(), same)) answer.alarms.push_back({at, what});
  };
  const auto expected = answer.expected_until;
  if (const auto bridged = outage.bridged_until(); bridged && outage.long_share(*bridged) < Fraction{1} && !answer.long_acting_bridges &&
                                                   hours.from > *bridged)
    ring(*bridged, AlarmFor::bridge);
  if (hours.single_step) {
    const Insulin basal = answer.bridge ? answer.bridge->parts.basal : Insulin{};
    ring(hours.due ? after_single_step(facts, outage, now, basal) : hours.from, AlarmFor::bridge);
  } else if (!answer.long_acting_bridges) {
    // What is due and held back covers nothing: the look that comes first leads back here.
    const bool given = hours.due && answer.bridge && !answer.bridge->units.is_zero();
    Instant at = given ? hours.to : hours.from;
    const Instant until = bridges_until(outage, at, now, answer);
    Instant needed = expected.value_or(until);
    if (question.asleep_until) needed = std::max(needed, *question.asleep_until);
    while (at > now && at < until) {
      ring(at, AlarmFor::bridge);
      // Every end of cover rings. A pump that is expected soon after it is waited for, and then it rings again.
      const Instant latest = at + figures::longest_without_insulin.value;
      if (expected && *expected > at && latest < until && is_missed_rather(facts, question, at)) {
        ring(latest, AlarmFor::bridge);
        break;
      }
      if (at >= needed) break;
      at = bridge_end(facts, outage, at, expected && *expected > at ? expected : std::nullopt);
    }
  }
  const AlarmFor what = facts.plan.off_pump.parts > 1 || (answer.long_dose && answer.long_dose->zones_east && !answer.long_dose->second_half &&
                                                          *answer.long_dose->zones_east < 0) ||
                                outage.long_acting.second_half
                            ? AlarmFor::longActingPart
                            : AlarmFor::longActing;
  if (answer.gives_long()) ring(answer.long_dose->next_due, what);
  else if (answer.long_state == LongState::hold) ring(*answer.long_due, what);
  std::sort(answer.alarms.begin(), answer.alarms.end(), [](const OffAlarm& a, const OffAlarm& b) { return a.at < b.at; });
}

}  // namespace stopgap::without_pump
