#include "standing.hpp"

#include "figures/timing.hpp"

namespace stopgap {

// The review date and the last day of grace are both days on which the plan still works, as in the rules.
StandingAnswer standing(const Plan& plan, Day today) {
  const Plan::Agreement& agreement = plan.agreement;
  const auto judged = [&] {
    switch (agreement.status) {
      case PlanStatus::draft: return Standing::draft;
      case PlanStatus::superseded: return Standing::superseded;
      case PlanStatus::withdrawn: return Standing::withdrawn;
      case PlanStatus::agreed: break;
    }
    if (today > agreement.last_day()) return Standing::expired;
    if (today > agreement.review_by) return Standing::inGrace;
    return today.plus_days(figures::review_notice_days.value) >= agreement.review_by ? Standing::reviewDue : Standing::agreed;
  };
  return {judged(), agreement.last_day()};
}

}  // namespace stopgap
