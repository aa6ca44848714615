// Which incidents a record holds. The rules know the incident of one moment; here they are asked moment by moment, so that no
// second idea of what an incident is can arise. Source: the facts of the rules, incident_at.
// Edge: an incident nobody opened is implied from at most 24 hours, so a longer unrecorded one is told in parts.
#pragma once
#include <optional>
#include <vector>
#include "model/history.hpp"
#include "model/plan.hpp"

namespace stopgap {

struct FoundIncident {
  Instant since;
  bool recorded = false;
  std::size_t last = 0;                    // the last event of it, as a place in the history's entries
  const Event* closed_by = nullptr;
};

// The latest incident that begins before this moment; events from `limit` on are not part of it.
std::optional<FoundIncident> incident_before(const Plan& plan, const History& whole, std::optional<Instant> limit);

}  // namespace stopgap
