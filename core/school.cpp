#include "school.hpp"

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

// The cell that stands on the signed sheet for these readings; nothing where the sheet has none.
std::optional<Dose> printed_dose(const rules::Facts& facts) {
  if (!facts.row) return std::nullopt;
  std::optional<Glucose> row;
  if (facts.level == rules::Level::number) {
    row = table_row_of(facts.plan, facts.G);
    if (!row) return std::nullopt;
  } else if (facts.level != rules::Level::HI) {
    return std::nullopt;
  }
  return table_cell_advice(facts.plan, row, facts.row->from, facts.situation.now).dose;
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
    advice.dose.reset();
    advice.gate = Gate::SCH;
    if (advice.decided_by != Rule::EMR) advice.outcome = Outcome::hold;
    return;
  }
  if (orders.calculation == SchoolCalculation::tableOnly) advice.dose = printed_dose(facts);
  if (!advice.dose) {
    advice.gate = Gate::SCH;
    if (advice.decided_by != Rule::EMR) advice.outcome = Outcome::hold;
    return;
  }
  advice.call_first = orders.call_first_above && advice.dose->total() > *orders.call_first_above;
}

}  // namespace stopgap
