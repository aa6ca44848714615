// The sheet a school acts on: what the orders say and what the school fills in, apart; the table first, and at each step where
// somebody must judge, who is called. It states no law. Orders that the plan does not hold never come here.
// Source: staff act on signed orders, judgement is not delegated [school-nasn] [school-ada].
#pragma once
#include "documents/dose_sheet.hpp"

namespace stopgap {

struct SchoolSheet {
  std::vector<DoseSpan> spans;
  std::vector<Line> head, low, steps, danger, orders, school;
};

// `plan` as it is printed (dose_sheet.hpp).
SchoolSheet school_sheet(const Plan& plan);

}  // namespace stopgap
