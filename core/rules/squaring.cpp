#include "rules/squaring.hpp"

#include <algorithm>

namespace stopgap::rules {

void change_set_and_reservoir(const Facts& facts, Proposal& proposal) {
  if (facts.off_or_dead) return;
  const bool new_line_fails = facts.last_needle && facts.since(facts.last_needle) >= facts.plan.limits.lock && !facts.fell;
  if (!facts.set_changed || new_line_fails) proposal.step(Step::changeSet);
  if (!facts.reservoir_changed || new_line_fails) proposal.step(Step::changeReservoir);
}

void square(const Facts& facts, Proposal& proposal) {
  if (facts.off_or_dead) return;  // a pump that is off counts nothing
  const Plan& plan = facts.plan;
  const bool tubed = plan.tubing == Tubing::tubed;
  const bool automated = plan.automation != Automation::none;
  const auto has_way = [&](SquaringWay way) {
    return std::find(plan.squaring.ways.begin(), plan.squaring.ways.end(), way) != plan.squaring.ways.end();
  };
  if (facts.acting) {
    if (automated) proposal.step(Step::automationOff);
    if (tubed && has_way(SquaringWay::offBody)) proposal.step(Step::offBody);
    return;
  }
  if (plan.squaring.preferred == SquaringWay::offBody) proposal.step(Step::offBody);
  else if (automated) proposal.step(Step::automationOff);
}

}  // namespace stopgap::rules
