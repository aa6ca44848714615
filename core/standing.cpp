#include "standing.hpp"

#include "figures/timing.hpp"

namespace stopgap {

// The review date and the last day of grace are both days on which the plan still works, as in the rules.
StandingAnswer standing(const Plan& plan, Day today) {
  const Plan::Agreement& agreement = plan.agreement;
  const Day last_day = agreement.review_by.plus_days(agreement.grace_days);
  const auto judged = [&] {
    switch (agreement.status) {
      case PlanStatus::draft: return Standing::draft;
      case PlanStatus::superseded: return Standing::superseded;
      case PlanStatus::withdrawn: return Standing::withdrawn;
      case PlanStatus::agreed: break;
    }
    if (today > last_day) return Standing::expired;
    if (today > agreement.review_by) return Standing::inGrace;
    return today.plus_days(figures::review_notice_days.value) >= agreement.review_by ? Standing::reviewDue : Standing::agreed;
  };
  return {judged(), last_day};
}

}  // namespace stopgap
