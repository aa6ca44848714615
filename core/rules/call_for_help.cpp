// CAL  The needle doses of the incident, and any that still acts though its incident was closed, have reached what the plan
//      allows before a call, the repeat span of the row (none: the lock) has passed, and it is still high, or ketones act and
//      have not fallen. Then: call the team, no third number; a call unanswered for half an hour: call emergency.
// SGN  A danger sign is left under no other rule. Then: call the team, test both again in an hour.
// Source: no fall after two extra doses: call R-06 [clinidiabet] [uva] [chop-path]. Edges: exactly at the span.
#include "rules/rules.hpp"

namespace stopgap::rules {

bool holds_CAL(const Facts& facts) {
  if (!facts.last_needle || facts.needle_doses_toward_call < facts.plan.limits.doses_before_call) return false;
  if (facts.since(facts.last_needle) < facts.repeat_span()) return false;
  return facts.high || (facts.acting && !facts.fell);
}

void say_CAL(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::callTeam;
  proposal.advice.raise_call(Call::team);
  proposal.call_by_row(facts);
  if (facts.unanswered_call && facts.now - *facts.unanswered_call >= figures::unanswered_call.value)
    proposal.advice.raise_call(Call::emergency);
}

bool holds_SGN(const Facts& facts) { return facts.danger; }

void say_SGN(const Facts&, Proposal& proposal) {
  proposal.advice.outcome = Outcome::callTeam;
  proposal.advice.raise_call(Call::team);
  proposal.step(Step::retest);
  proposal.step(Step::testKetones);
}

}  // namespace stopgap::rules
