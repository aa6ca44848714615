// The dose: exact on fractions, rounded once per part at the end.
//   correction = (min(G, dosing ceiling) - target) / correction factor; net = max(0, correction - counted)
//   extra      = a cell of the ketone table, not reduced by insulin on board (house rule "extraNotReduced")
//   rescue     = the greater of extra and net, never the sum (or extra alone where the plan replaces), then the caps, then the step
//   meal       = carbohydrate / ratio, down to a step, never capped but by the device
// Sources: greater of two [chop-path], replace [rch-line] [sickkids], +1 or +2 units [uva], cap by share [alder-hey]; CV-01 to CV-21.
#pragma once
#include "rules/facts.hpp"
#include "model/advice.hpp"

namespace stopgap::rules {

// Where the extra comes from: the table's cell, the cell for any glucose, the cell for HI, or nowhere.
enum class Basis : std::uint8_t { table, anyGlucose, hi, netOnly };

// The cell the table gives for the row and the glucose now; only with a known row.
const Cell& table_cell(const Facts& facts);

// The rescue part with its working. `extra_alone` is the ketone clock's dose; `counted` the insulin on board to take off.
Working rescue_working(const Facts& facts, Basis basis, bool extra_alone, Insulin counted);
// Down to a mark of the device, or the nearest with ties down; nothing under one step.
Insulin rounded_rescue(const Facts& facts, const Working& working);
bool is_under_one_step(const Facts& facts, const Working& working);

// The meal part that goes with a rescue part: the loss of a full device falls on the meal.
Insulin meal_part(const Facts& facts, Carbohydrate carbs, Insulin rescue);

// A whole dose, with the other bound worked out beside it.
Dose dose_of(const Facts& facts, Basis basis, bool extra_alone, const Working& working, Carbohydrate carbs);
// A meal part alone: no rescue.
Dose meal_alone(const Facts& facts, Carbohydrate carbs);

}  // namespace stopgap::rules
