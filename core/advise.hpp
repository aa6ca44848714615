// The way down: plan, record and situation in, one piece of advice out. Pure: the same request gives the same answer, natively
// and in WebAssembly, byte for byte. Source of the order: the rules' own index, rules/rules.hpp.
#pragma once
#include <vector>
#include "model/advice.hpp"
#include "rules/facts.hpp"

namespace stopgap {

Advice advise(const Plan& plan, const Record& record, const Situation& situation);

// The record as this situation's viewer may use it: a school strikes nothing, so there every recorded event goes on counting.
History history_for(const Record& record, const Situation& situation, std::uint32_t without_kinds = 0, const Event* without = nullptr);

// One evaluation, with some kinds of events left out or some facts varied: what the reasons are found with.
Advice evaluate(const Plan& plan, const History& history, const Situation& situation, const rules::Variation& variation = {});

}  // namespace stopgap
