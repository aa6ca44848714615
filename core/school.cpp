#include "school.hpp"

#include "figures/ketones.hpp"
#include "rules/carbohydrate.hpp"
#include "rules/squaring.hpp"
#include "table.hpp"

namespace stopgap {
namespace {

// Orders allow one needle of rapid insulin a day, whatever it was for: for high glucose, for a meal or as basal. One given so late
// last night that it still acts counts as well, because a printed cell knows nothing of it. A mistake with rapid insulin went in by
// needle too, but for what the pump gave off the body.
bool is_a_needle_of_rapid(const Event& event) {
  const bool by_needle = event.kind == EventKind::injection ||
                         (event.kind == EventKind::mistake && event.mistake != MistakeKind::offBodyIntoBody);
  return by_needle && event.insulin == InsulinType::rapid;
}

bool a_rapid_needle_was_given_today(const rules::Facts& facts) {
  const Moment& now = facts.situation.now;
  for (const auto& [event, struck] : facts.history.entries())
    if (is_a_needle_of_rapid(*event) &&
        (local_day({event->at.instant, now.offset}) == local_day(now) || facts.since(event) <= facts.plan.rapid.action))
      return true;
  return false;
}

// What was given at home is known by a call alone: while the last one was not answered, nobody knows it.
bool home_does_not_answer(const rules::Facts& facts) {
  const Event* last = nullptr;
  for (const auto& [event, struck] : facts.history.entries())
    if (event->kind == EventKind::call && event->call_to == CallTo::home) last = event;
  return last && !last->answered;
}

// The cell that is printed for these readings: by the row and the column that the sheet has, which has one from 3.0 even where the
// plan has no such row. A reading in the other unit, so near to an edge that the display cannot tell, is read on the worse side.
std::optional<SheetCell> printed_cell(const rules::Facts& facts) {
  if (!facts.row) return std::nullopt;
  SheetCell cell{std::nullopt, facts.help_now ? figures::ketones_help_now.value : facts.row->from};
  if (facts.level == rules::Level::HI) return cell;
  if (facts.level != rules::Level::number || facts.below(facts.plan.ketones.carbohydrate_only_below)) return std::nullopt;
  for (const Glucose edge : table_rows(facts.plan))
    if (facts.at_or_above(edge)) cell.row = edge;
  return cell.row ? std::optional{cell} : std::nullopt;
}

// The dose that stands in it, as it is printed: for a finger and the plan's usual device.
std::optional<Dose> printed_dose(const rules::Facts& facts) {
  const std::optional<SheetCell> cell = printed_cell(facts);
  if (!cell) return std::nullopt;
  std::optional<Dose> printed = table_cell_advice(facts.plan, cell->row, cell->column, facts.situation.now).dose;
  // Named with the dose, so that whoever injects can lay a finger on the same cell of the paper.
  if (printed) printed->cell = cell;
  return printed;
}

// Without the dose nothing that only goes with it may stand: no carbohydrate matched to it, no squaring, no look after it.
void take_the_dose_away(const rules::Facts& facts, rules::Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.dose.reset();
  advice.gate = Gate::SCH;
  for (const Step step : {Step::offBody, Step::joinTubing, Step::automationOff}) advice.steps.remove(step);
  advice.looks = Looks{};
  proposal.named_looks = false;
  advice.carbohydrate = Carbohydrate{};
  if (advice.decided_by == Rule::EMR) {  // still an emergency: its outcome, its call and what keeps a low away stay
    if (!facts.would_go_low) return;
    if (!facts.keeps_nothing_down) proposal.give(rules::matched(facts, Insulin{}, false));
    rules::look_every_quarter(facts, proposal);
    return;
  }
  advice.outcome = Outcome::hold;
  // As behind every closed gate: a set that INJ would change with its dose is not changed again while it is new.
  const bool new_set = facts.set_changed && rules::is_recent_change(facts, *facts.set_changed);
  if (advice.decided_by == Rule::INJ && new_set) advice.steps.remove(Step::changeSet);
  if (!facts.high && facts.would_go_low) proposal.give(rules::matched(facts, Insulin{}, false));
}

// The printed dose, but never more than the working leaves, and only what the device at hand can draw up. Anything less than the
// printed dose is in no cell: it is given after a call. Returns whether a dose is left.
bool give_the_printed_dose(const rules::Facts& facts, Dose printed, Advice& advice) {
  const Device& device = facts.device();
  const Insulin drawn = lesser(printed.rescue, device.capacity).down_to(device.step);
  printed.with = facts.with();
  advice.dose->meal = Insulin{};
  if (advice.dose->rescue >= drawn) {
    if (drawn.is_zero()) return false;
    if (drawn < printed.rescue) printed.cell.reset();
    printed.rescue = drawn;
    advice.dose = printed;
  }
  if (!advice.dose->cell) {
    advice.call_first = true;
    advice.raise_call(Call::team);
  }
  return true;
}

}  // namespace

void apply_school_orders(const rules::Facts& facts, rules::Proposal& proposal) {
  Advice& advice = proposal.advice;
  const SchoolOrders& orders = *facts.plan.school;
  proposal.step(Step::confirmChild);
  if (!advice.dose) return;
  proposal.step(Step::callHome);  // today's insulin may have been given at home
  // A meal part that passed a closed gate, or that goes on with what comes down, is in no printed cell: no dose at school.
  if (advice.dose->rescue.is_zero()) {
    advice.dose.reset();
  } else if (a_rapid_needle_was_given_today(facts) || home_does_not_answer(facts)) {
    take_the_dose_away(facts, proposal);
  } else if (orders.calculation == SchoolCalculation::tableOnly) {
    const std::optional<Dose> printed = printed_dose(facts);
    if (!printed || !give_the_printed_dose(facts, *printed, advice)) {
      take_the_dose_away(facts, proposal);
    // What is eaten matches the dose that is given, which is the printed one.
    } else if (!facts.high && advice.decided_by != Rule::EMR) {
      advice.carbohydrate = rules::matched(facts, advice.dose->rescue, advice.decided_by == Rule::EAT);
    }
  }
  // The orders give no dose where the plan has one: somebody has to say what is done instead.
  if (!advice.dose && (facts.high || facts.acting)) advice.raise_call(Call::team);
  advice.call_first |= advice.dose && orders.call_first_above && advice.dose->total() > *orders.call_first_above;
}

}  // namespace stopgap
