// END  An incident; the record read whole; not unwell; the pump on; this reading and the one before it under the middle; blood ketones do not act;
//      and after a needle dose: the hours of action since it and the last two blood readings do not act. Then: when automation
//      returns, what to restock, what to tell the clinic; the incident may be closed.
// NON  Nothing of all that. Then: nothing found, look again in two hours (one in an incident).
// Source: stop rule R-09 [umass]; a new line is unproven until the injected insulin has worn off R-14 [rch-line].
// Edges: exactly the hours of action after the dose is still within them.
#include "rules/rules.hpp"

namespace stopgap::rules {
namespace {

bool is_under_the_middle(const Facts& facts, const GlucoseReading& reading) {
  if (reading.word != MeterWord::number) return reading.word == MeterWord::LO;
  const Glucose middle = facts.plan.high.middle;
  return reading.unit == facts.plan.unit ? reading.value < middle : reading.value < middle - half_display_step(facts.plan.unit);
}

// The reading before this one, among all that were recorded; one reading recorded twice is one.
bool reading_before_is_under_the_middle(const Facts& facts) {
  const Instant taken = facts.situation.glucose->at.value_or(facts.now);
  const auto& entries = facts.history.entries();
  for (auto entry = entries.rbegin(); entry != entries.rend(); ++entry) {
    const auto& reading = entry->event->glucose;
    const Instant at = entry->event->at.instant;
    if (!reading || at > taken) continue;
    const GlucoseReading& current = facts.situation.glucose->reading;
    if (at == taken && reading->word == current.word && reading->value == current.value) continue;
    return is_under_the_middle(facts, *reading);
  }
  return false;
}

bool blood_before_does_not_act(const Facts& facts) {
  const Instant taken = facts.situation.ketones.at.value_or(facts.now);
  const auto& entries = facts.history.entries();
  for (auto entry = entries.rbegin(); entry != entries.rend(); ++entry) {
    const auto& reading = entry->event->ketones;
    const Instant at = entry->event->at.instant;
    if (!reading || at > taken || (reading->kind != KetoneKind::blood && reading->kind != KetoneKind::bloodHI)) continue;
    if (at == taken && *reading == facts.situation.ketones.reading) continue;
    return reading->kind == KetoneKind::blood && reading->blood < facts.plan.ketones.act_from;
  }
  return false;
}

}  // namespace

bool holds_END(const Facts& facts) {
  // What is not known to have been read whole is not over.
  if (facts.situation.record_in_doubt) return false;
  if (!facts.incident() || facts.unwell || facts.off_or_dead || facts.level == Level::missing) return false;
  if (facts.at_or_above(facts.plan.high.middle) || !reading_before_is_under_the_middle(facts)) return false;
  if (!facts.blood_value || *facts.blood_value >= facts.plan.ketones.act_from) return false;
  if (!facts.last_needle) return true;
  if (facts.since(facts.last_needle) <= facts.plan.rapid.action) return false;  // of an earlier incident as well
  return !facts.in_incident(facts.last_needle->at.instant) || blood_before_does_not_act(facts);
}

void say_END(const Facts&, Proposal& proposal) {
  proposal.advice.outcome = Outcome::over;
  proposal.advice.incident = IncidentChange::close;
  proposal.step(Step::restock);
  proposal.step(Step::closeIncident);
}

bool holds_NON(const Facts&) { return true; }

void say_NON(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::lookAgain;
  proposal.look_in(facts, facts.incident() ? figures::look_usual.value : figures::look_quiet.value, true, facts.incident());
}

}  // namespace stopgap::rules
