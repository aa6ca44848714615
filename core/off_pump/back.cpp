#include "off_pump/back.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"

namespace stopgap::without_pump {
namespace {

// Basal of the outage that neither a bridge nor long-acting insulin stood for.
Insulin missed(const Plan& plan, const Outage& outage, const Moment& now) {
  if (!outage.since) return Insulin{};
  const Instant end = outage.until.value_or(now.instant);
  const Offset offset = outage.stopped_at_offset.value_or(now.offset);
  std::vector<Covered> covers = outage.bridges;
  covers.insert(covers.end(), outage.long_cover.begin(), outage.long_cover.end());
  std::sort(covers.begin(), covers.end(), [](const Covered& a, const Covered& b) { return a.from < b.from; });
  Insulin sum;
  Instant from = *outage.since;
  for (const Covered& cover : covers) {
    sum = sum + basal_over(plan.basal, from, std::min(cover.from, end), offset);
    from = std::max(from, cover.to);
  }
  return sum + basal_over(plan.basal, from, end, offset);
}

}  // namespace

Back back_of(const Plan& plan, const Outage& outage, const Moment& now, const std::array<std::optional<Instant>, hold_kinds>& holds) {
  Back back;
  back.on = !outage.off;
  back.look_after = figures::back_first_look.value;
  back.looks_later = figures::back_later_looks.value;
  if (back.on && outage.until && now.instant <= *outage.until + back.look_after) back.look = *outage.until + back.look_after;
  back.usual_from = holds[static_cast<std::size_t>(HoldKind::longActing)];
  if (back.usual_from) back.reduced = plan.off_pump.reduced_basal;
  // The basal of a bridge acts on while the pump would deliver it a second time.
  if (const auto bridged = outage.bridged_until(); bridged && *bridged > now.instant && (!back.usual_from || *back.usual_from < *bridged)) back.usual_from = bridged;
  if (plan.automation != Automation::none) {
    back.automation_from = holds[static_cast<std::size_t>(HoldKind::automation)];
    if (back.usual_from && (!back.automation_from || *back.automation_from < *back.usual_from)) back.automation_from = back.usual_from;
  }
  back.missed_basal = missed(plan, outage, now);
  return back;
}

}  // namespace stopgap::without_pump
