#include "school.hpp"

#include "advise.hpp"
#include "rules/carbohydrate.hpp"
#include "table.hpp"

namespace stopgap {
namespace {

// Today, or so late last night that it still acts: a printed cell knows nothing of either.
bool a_needle_dose_was_given_today(const rules::Facts& facts) {
  const Moment& now = facts.situation.now;
  for (const auto& [event, struck] : facts.history.entries())
    if (event->kind == EventKind::injection && event->insulin == InsulinType::rapid && !event->rescue().is_zero() &&
        (local_day({event->at.instant, now.offset}) == local_day(now) || facts.since(event) <= facts.plan.rapid.action))
      return true;
  return false;
}

// The cell that stands on the signed sheet for these readings; nothing where the sheet has none. The sheet is for a finger
// and the usual device: a sensor's number has no correction in any cell, and a pen holds what a pen holds.
std::optional<Dose> printed_dose(const rules::Facts& facts) {
  if (!facts.row) return std::nullopt;
  std::optional<Glucose> row;
  if (facts.level == rules::Level::number) {
    row = table_row_of(facts.plan, facts.G);
    if (!row) return std::nullopt;
  } else if (facts.level != rules::Level::HI) {
    return std::nullopt;
  }
  Situation cell = table_cell_situation(facts.plan, row, facts.row->from, facts.situation.now);
  cell.with = facts.situation.with;
  if (facts.sensor_only) {
    cell.glucose->reading.from = ReadFrom::sensor;
    cell.glucose->no_meter = true;
  }
  std::optional<Dose> printed = advise(facts.plan, Record{}, cell).dose;
  // Said with the dose, so that whoever injects can lay a finger on the same cell of the paper.
  if (printed) printed->cell = SheetCell{row, facts.row->from};
  return printed;
}

// Without the dose nothing that only goes with it may stand: no carbohydrate matched to it, no squaring, no look after it.
void take_the_dose_away(const rules::Facts& facts, rules::Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.dose.reset();
  advice.gate = Gate::SCH;
  if (advice.decided_by == Rule::EMR) return;  // an emergency keeps its looks and its food
  advice.outcome = Outcome::hold;
  advice.steps.remove(Step::offBody);
  advice.steps.remove(Step::automationOff);
  advice.looks = Looks{};
  proposal.named_looks = false;
  advice.carbohydrate = Carbohydrate{};
  if (!facts.high && facts.would_go_low) proposal.give(rules::matched(facts, Insulin{}, false));
}

}  // namespace

void apply_school_orders(const rules::Facts& facts, rules::Proposal& proposal) {
  Advice& advice = proposal.advice;
  const SchoolOrders& orders = *facts.plan.school;
  proposal.step(Step::confirmChild);
  if (!advice.dose) return;
  // A meal part that passed a closed gate, or that goes on with what comes down, is in no printed cell: no dose at school.
  if (advice.dose->rescue.is_zero()) {
    advice.dose.reset();
    proposal.step(Step::callHome);
    return;
  }
  proposal.step(Step::callHome);  // today's insulin may have been given at home
  if (a_needle_dose_was_given_today(facts)) {
    take_the_dose_away(facts, proposal);
    return;
  }
  if (orders.calculation == SchoolCalculation::tableOnly) {
    const std::optional<Dose> printed = printed_dose(facts);
    if (!printed) {
      take_the_dose_away(facts, proposal);
      return;
    }
    // Insulin that still acts is on no sheet. Where it leaves less than the cell, the less is given, and only after a call.
    if (advice.dose->rescue < printed->rescue) {
      advice.dose->meal = Insulin{};
      advice.call_first = true;
      advice.raise_call(Call::team);
    } else {
      advice.dose = printed;
    }
    // What is eaten matches the dose that is given, which is the printed one.
    if (!facts.high && advice.decided_by != Rule::EMR)
      advice.carbohydrate = rules::matched(facts, advice.dose->rescue, advice.decided_by == Rule::EAT);
  }
  advice.call_first |= orders.call_first_above && advice.dose->total() > *orders.call_first_above;
}

}  // namespace stopgap
