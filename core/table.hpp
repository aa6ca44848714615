// The table of doses: rows of glucose, each at its lower edge, × the plan's ketone rows. Each cell is what `advise` answers for
// that edge with an empty record, so that paper and screen cannot differ. Rows start at the carbohydrate-only level.
#pragma once
#include <vector>
#include "model/advice.hpp"
#include "model/answers.hpp"
#include "model/plan.hpp"
#include "model/situation.hpp"

namespace stopgap {

// Lower edges, ascending: the carbohydrate-only level, the middle, the trigger, round steps between, the dosing ceiling.
std::vector<Glucose> table_rows(const Plan& plan);
// The columns: lower edges of the plan's ketone rows, and the level of going for help where no row begins there. Inside one row the
// answer changes at that level, and a table that ends below it would say nothing of the ketones that matter most.
std::vector<Ketones> table_columns(const Plan& plan);
// A cell: `row` empty for HI.
Situation table_cell_situation(const Plan& plan, const std::optional<Glucose>& row, Ketones ketones, const Moment& at);
Advice table_cell_advice(const Plan& plan, const std::optional<Glucose>& row, Ketones ketones, const Moment& at);
// What `advise` answers for a row, as whoever asks sees it, while there are no strips.
TableCell cell_without_strips(const Plan& plan, const std::optional<Glucose>& row, const Moment& at, Viewer viewer);
// Every row as it is shown and printed: low, between low and the first row of doses, each edge, HI. In each row a cell for each
// column and one for "not tested". `usual` is left to whoever shows it.
std::vector<TableRow> whole_table(const Plan& plan, const Moment& at);

}  // namespace stopgap
