// What runs now, worked out afresh from the record: holds, looks due and overdue, insulin on board, a dose that waits for an
// answer. Nothing is kept anywhere: a reload, a second tab, a changed zone or a struck entry cannot shorten a hold, because
// holds are instants counted from recorded events.
#pragma once
#include "model/answers.hpp"
#include "model/plan.hpp"
#include "model/record.hpp"

namespace stopgap {

HoldsAnswer holds(const Plan& plan, const Record& record, const Moment& now, bool with_curve);

}  // namespace stopgap
