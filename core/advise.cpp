#include "advise.hpp"

#include <algorithm>
#include "rules/rules.hpp"
#include "rules/hold.hpp"
#include "school.hpp"

namespace stopgap {
namespace {

using rules::Facts;
using rules::Proposal;

// Calls that hold under every rule.
void raise_calls(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  const bool doses_spent = facts.needle_doses_toward_call >= facts.plan.limits.doses_before_call;
  const bool cut = advice.dose && !advice.dose->working.cut.is_zero();
  const bool no_number = facts.sensor_only && (advice.decided_by == Rule::ANY || advice.decided_by == Rule::KET ||
                                               advice.decided_by == Rule::EAT || advice.decided_by == Rule::INJ);
  if (facts.level == rules::Level::HI || no_number || cut || facts.mistake_long ||
      (facts.off_or_dead && (facts.acting || facts.high || !facts.team_knows_it_is_off)) || (facts.no_strips && facts.last_acting) ||
      (doses_spent && (facts.acting || facts.high || advice.decided_by == Rule::FAL)) ||
      ((facts.pregnant || facts.sglt2_inhibitor) && facts.no_strips && facts.high) ||
      facts.danger || (facts.no_strips && facts.unwell))  // a danger sign under whatever rule decides first
    advice.raise_call(Call::team);
}

// Help, sugar or a question that must be answered first: no basal is drawn before it.
bool basal_waits(const Advice& advice) {
  switch (advice.decided_by) {
    case Rule::LWE:
    case Rule::EMR:
    case Rule::LOW:
    case Rule::FAL:
    case Rule::PLN: return true;
    default: return advice.gate == Gate::REC || advice.gate == Gate::CLK || advice.gate == Gate::ASK;
  }
}

// The steps for a fault stand under every rule. Nothing of a pump that is off is changed: injections stand in for it.
void answer_faults(const Facts& facts, Proposal& proposal) {
  for (const Fault fault : {Fault::leak, Fault::blood, Fault::bentCannula, Fault::cameOut, Fault::occlusionAlarm})
    if (facts.faults.has(fault)) proposal.step(Step::changeSet);
  if (facts.faults.has(Fault::outOfInsulin)) proposal.step(Step::changeReservoir);
  if (facts.faults.has(Fault::heatedInsulin)) {
    proposal.step(Step::changeInsulin);
    proposal.step(Step::changeReservoir);
  }
  if (!facts.off_or_dead) return;
  proposal.advice.steps.remove(Step::changeSet);
  proposal.advice.steps.remove(Step::changeReservoir);
  if (!basal_waits(proposal.advice)) proposal.step(Step::bridge);
}

void caution(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  const Insulin rescue = advice.dose ? advice.dose->rescue : Insulin{};
  if (facts.could_go_low(rescue)) {
    advice.cautions.add(Caution::couldGoLow);
    proposal.look_in(facts, figures::look_usual.value);
    if (facts.high) {
      proposal.look_in(facts, figures::look_going_low.value);
      advice.raise_call(Call::team);
    }
  }
  if (advice.dose && !advice.dose->working.cut.is_zero()) advice.cautions.add(Caution::cut);
  if (facts.in_grace) advice.cautions.add(Caution::inGrace);
  if (facts.weight_is_old) advice.cautions.add(Caution::staleWeight);
  if (facts.sensor_only) advice.cautions.add(Caution::sensorOnly);
  if (facts.no_strips) advice.cautions.add(Caution::noStrips);
  if (facts.mistake_long) advice.cautions.add(Caution::longActing);
  if (facts.set_changed && facts.last_needle && facts.since(facts.last_needle) <= facts.plan.rapid.action)
    advice.cautions.add(Caution::newLineUnproven);
}

// More than one step between the two bounds: an hour from now shows which one was right.
void look_at_the_other_bound(const Facts& facts, Proposal& proposal) {
  const auto& dose = proposal.advice.dose;
  if (!dose || dose->rescue.is_zero()) return;
  const Insulin step = facts.device().step, total = dose->total();
  if (dose->other_bound > total + step || total > dose->other_bound + step) proposal.look_in(facts, figures::look_usual.value);
}

// Sugar against a low, else something to eat.
Step step_of_carbohydrate(const Facts& facts, Rule rule) {
  switch (rule) {
    case Rule::LWE:
    case Rule::LOW:
    case Rule::FAL:
    case Rule::TOO: return Step::sugar;
    case Rule::EMR: return facts.would_go_low ? Step::sugar : Step::eat;
    default: return Step::eat;
  }
}

bool is_about_ketones(Rule rule) { return rule == Rule::ANY || rule == Rule::KET || rule == Rule::EAT || rule == Rule::DWN; }

// What follows from the rest: the steps that carry an amount, a call or a clock time, and what stands whatever the gate.
void add_common_steps(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  if (!proposal.named_looks) proposal.look_in(facts, figures::look_usual.value);
  if (advice.dose) proposal.step(Step::inject);
  if (advice.carbohydrate > Carbohydrate{}) proposal.step(step_of_carbohydrate(facts, advice.decided_by));
  if (is_about_ketones(advice.decided_by) && !facts.cannot_swallow) proposal.step(Step::drink);
  const bool goes_to_hospital = advice.decided_by == Rule::LWE || advice.decided_by == Rule::EMR;
  if (facts.no_strips && !goes_to_hospital) proposal.step(Step::getStrips);
  if (advice.call == Call::emergency) proposal.step(Step::emergencyCall);
  if (advice.call == Call::team) proposal.step(Step::callTeam);
  proposal.step(Step::setAlarm);
}

void note_what_was_given(const Facts& facts, Advice& advice) {
  if (facts.last_needle)
    advice.given = Given{*facts.last_needle->units, facts.last_needle->at.instant};
  const bool trouble = facts.high || facts.acting || facts.fault_seen() || facts.off_or_dead || advice.decided_by == Rule::EMR;
  if (advice.incident == IncidentChange::none && trouble && !facts.incident_recorded) advice.incident = IncidentChange::open;
}

}  // namespace

Advice evaluate(const Plan& plan, const History& history, const Situation& situation, const rules::Variation& variation) {
  const Facts facts = rules::facts_of(plan, history, situation, variation);
  Proposal proposal;
  for (const rules::RuleEntry& rule : rules::in_order) {
    if (!rule.holds(facts)) continue;
    proposal.advice.decided_by = rule.id;
    rule.say(facts, proposal);
    break;
  }
  if (situation.viewer == Viewer::school) apply_school_orders(facts, proposal);
  raise_calls(facts, proposal);
  answer_faults(facts, proposal);
  caution(facts, proposal);
  look_at_the_other_bound(facts, proposal);
  rules::add_holds(facts, proposal);
  add_common_steps(facts, proposal);
  note_what_was_given(facts, proposal.advice);
  return proposal.advice;
}

History history_for(const Record& record, const Situation& situation, std::uint32_t without_kinds, const Event* without) {
  const std::uint32_t strikes = std::uint32_t{1} << static_cast<unsigned>(EventKind::strike);
  return History::of(record, situation.now.instant, situation.viewer == Viewer::school ? without_kinds | strikes : without_kinds, without);
}

Advice advise(const Plan& plan, const Record& record, const Situation& situation) {
  return evaluate(plan, history_for(record, situation), situation);
}

}  // namespace stopgap
