#include "off_pump/alarms.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"
#include "off_pump/bridge.hpp"

namespace stopgap::without_pump {

void set_alarms(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question, const Hours& hours, OffPumpAnswer& answer) {
  const Plan& plan = facts.plan;
  const Instant now = question.now.instant;
  const bool gives_long = answer.gives_long();
  const LongAtWork& work = outage.long_acting;
  const bool at_work = work.last && now < *work.covers_until;
  Instant until = now + question.expected.value_or(figures::long_acting_day.value);
  if (question.asleep_until) until = std::max(until, *question.asleep_until);
  if (at_work) until = work.ends_before_the_next() ? *work.due : *work.covers_from;
  else if (gives_long) until = answer.long_dose->works_from;
  until = std::min(until, now + figures::long_acting_day.value);
  // Once this injection is in, a pump that is expected soon after it is waited for: told before as it will be told then. Not where
  // long-acting insulin is in already: then nobody waits.
  const bool waits = hours.due && !gives_long && !at_work && is_missed_rather(facts, question, hours.to);
  const Instant first = hours.due ? hours.to : hours.from;
  if (!answer.long_acting_bridges)
    for (Instant at = first; at > now && at < until; at = at + plan.off_pump.bridge)
      answer.alarms.push_back({waits ? at + figures::longest_without_insulin.value : at, AlarmFor::bridge});
  const bool in_parts = plan.off_pump.parts > 1;
  const AlarmFor what = in_parts ? AlarmFor::longActingPart : AlarmFor::longActing;
  if (gives_long) {
    const Duration part = answer.long_dose->share == LongShare::half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
    answer.alarms.push_back({now + (in_parts ? part : std::max(plan.long_acting->action, figures::long_acting_day.value)), what});
  } else if (answer.long_state == LongState::hold) {
    answer.alarms.push_back({*answer.long_due, what});
  }
}

}  // namespace stopgap::without_pump
