#include "rules/dose.hpp"

namespace stopgap::rules {
namespace {

// What a cell comes to. `correction` is before insulin on board; `net` after it, and added to only by addUnits.
Insulin amount_of(const Cell& cell, const Facts& facts, Insulin correction, Insulin net) {
  switch (cell.kind) {
    case Cell::Kind::none: return Insulin{};
    case Cell::Kind::shareOfDaily: return cell.share * facts.plan.daily_total;
    case Cell::Kind::perKg: return cell.per_kg * facts.plan.person.weight;
    case Cell::Kind::timesCorrection:
      if (correction <= Insulin{}) return amount_of(cell.fallback.front(), facts, correction, net);
      return cell.times * correction;
    case Cell::Kind::addUnits: return net + cell.add;
  }
  return Insulin{};
}

Insulin smallest_cap(const Facts& facts) {
  const auto& limits = facts.plan.limits;
  return lesser(lesser(limits.single_dose, limits.share_of_daily * facts.plan.daily_total), facts.device().capacity);
}

}  // namespace

const Cell& table_cell(const Facts& facts) {
  const auto& columns = facts.plan.ketones.columns;
  std::size_t column = 0;
  for (std::size_t i = 1; i < columns.size(); ++i)
    if (facts.at_or_above(columns[i])) column = i;
  return facts.row->cells[column];
}

Working rescue_working(const Facts& facts, Basis basis, bool extra_alone, Insulin counted) {
  Working working;
  working.correction = facts.correction();
  working.on_board = counted;
  working.net = at_least_none(working.correction - counted);
  const Insulin net = extra_alone ? Insulin{} : working.net;

  bool has_cell = false;
  const auto consider = [&](const Cell& cell) {
    has_cell |= cell.kind != Cell::Kind::none;
    working.extra = greater(working.extra, amount_of(cell, facts, working.correction, net));
  };
  if (basis == Basis::table) consider(table_cell(facts));
  if (basis == Basis::anyGlucose && facts.plan.ketones.any_glucose) consider(*facts.plan.ketones.any_glucose);
  if (basis == Basis::hi || (basis != Basis::netOnly && facts.level == Level::HI)) consider(facts.plan.ketones.hi);

  const bool replaces = facts.plan.ketones.combine == Combine::replace && has_cell;
  const bool takes_extra = has_cell && (replaces || working.extra >= net);
  Insulin amount = takes_extra ? working.extra : net;
  // Without a meter there is no correction, and a cell may then fall back on a larger one: never more than for a finger.
  if (facts.sensor_only) {
    Facts by_finger = facts;
    by_finger.sensor_only = false;
    const Working finger = rescue_working(by_finger, basis, extra_alone, counted);
    amount = lesser(amount, finger.before_rounding + finger.cut);
    working.extra = lesser(working.extra, amount);
  }
  working.chosen = amount.is_zero() ? Chosen::none : takes_extra ? Chosen::extra : Chosen::net;
  working.cap = smallest_cap(facts);
  if (amount > working.cap) {
    working.cut = amount - working.cap;
    amount = working.cap;
  }
  working.before_rounding = amount;
  return working;
}

bool is_under_one_step(const Facts& facts, const Working& working) { return working.before_rounding < facts.device().step; }

Insulin rounded_rescue(const Facts& facts, const Working& working) {
  const Insulin step = facts.device().step;
  if (is_under_one_step(facts, working)) return Insulin{};
  if (facts.plan.rounding == Rounding::down) return working.before_rounding.down_to(step);
  // Never above the cap: rounding to the nearest may not undo it.
  return lesser(working.before_rounding.nearest(step), working.cap.down_to(step));
}

Insulin meal_part(const Facts& facts, Carbohydrate carbs, Insulin rescue) {
  const Device& device = facts.device();
  const Insulin meal = (carbs / facts.ratio).down_to(device.step);
  return lesser(meal, at_least_none(device.capacity - rescue).down_to(device.step));
}

Dose dose_of(const Facts& facts, Basis basis, bool extra_alone, const Working& working, Carbohydrate carbs) {
  Dose dose;
  dose.with = facts.with();
  dose.working = working;
  dose.rescue = rounded_rescue(facts, working);
  dose.meal = meal_part(facts, carbs, dose.rescue);
  const Insulin otherwise = facts.incident() ? facts.on_board.counted(!facts.suspect_doses_count) : facts.counted;
  const Working other = rescue_working(facts, basis, extra_alone, otherwise);
  dose.other_bound = rounded_rescue(facts, other) + dose.meal;
  if (working.correction > Insulin{} && !dose.rescue.is_zero())
    dose.times_usual = dose.rescue.in_units() / working.correction.in_units();
  return dose;
}

Dose meal_alone(const Facts& facts, Carbohydrate carbs) {
  Dose dose;
  dose.with = facts.with();
  dose.meal = meal_part(facts, carbs, Insulin{});
  dose.other_bound = dose.meal;
  dose.working.cap = facts.device().capacity;
  return dose;
}

}  // namespace stopgap::rules
