#include "review_kept.hpp"

#include <array>
#include <string>
#include "review.hpp"

namespace stopgap {
namespace {

struct Kept {
  std::string fingerprint;
  std::vector<Finding> refused;
};

std::vector<Finding> refused_in(const Plan& plan) {
  std::vector<Finding> refused = findings_of(plan);
  std::erase_if(refused, [](const Finding& finding) { return finding.level != FindingLevel::refuse; });
  return refused;
}

}  // namespace

std::vector<Finding> refused_in_use(const Plan& plan) {
  if (plan.agreement.status == PlanStatus::draft) return {};
  if (plan.fingerprint.empty()) return refused_in(plan);
  // The plan in use, and the few that a page lays beside it; the oldest makes room.
  thread_local std::array<Kept, 4> kept;
  thread_local std::size_t next = 0;
  for (const Kept& one : kept)
    if (one.fingerprint == plan.fingerprint) return one.refused;
  Kept& place = kept[next];
  next = (next + 1) % kept.size();
  place = {plan.fingerprint, refused_in(plan)};
  return place.refused;
}

}  // namespace stopgap
