#include "rules/squaring.hpp"

#include <algorithm>

namespace stopgap::rules {

bool is_recent_change(const Facts& facts, Instant changed) { return facts.now - changed < facts.plan.limits.lock; }

void change_set_and_reservoir(const Facts& facts, Proposal& proposal) {
  const auto is_new = [&](const std::optional<Instant>& changed) {
    return changed && is_recent_change(facts, *changed) && !(facts.last_fault && *changed <= *facts.last_fault);
  };
  if (!is_new(facts.set_changed)) proposal.step(Step::changeSet);
  if (!is_new(facts.reservoir_changed)) proposal.step(Step::changeReservoir);
}

void square(const Facts& facts, Proposal& proposal) {
  if (facts.off_or_dead) return;  // a pump that is off counts nothing
  const Plan& plan = facts.plan;
  const bool tubed = plan.tubing == Tubing::tubed;
  const bool automated = plan.automation != Automation::none;
  const auto has_way = [&](SquaringWay way) {
    return std::find(plan.squaring.ways.begin(), plan.squaring.ways.end(), way) != plan.squaring.ways.end();
  };
  // What is pumped into a sink leaves the tubing off the body: it is joined again, or nothing arrives from then on.
  const auto deliver_off_body = [&] {
    proposal.step(Step::offBody);
    proposal.step(Step::joinTubing);
  };
  if (facts.acting) {
    if (automated) proposal.step(Step::automationOff);
    if (tubed && has_way(SquaringWay::offBody)) deliver_off_body();
    return;
  }
  if (plan.squaring.preferred == SquaringWay::offBody) deliver_off_body();
  else if (automated) proposal.step(Step::automationOff);
}

}  // namespace stopgap::rules
