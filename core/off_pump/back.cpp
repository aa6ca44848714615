#include "off_pump/back.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"

namespace stopgap::without_pump {
namespace {

// Basal of the outage that neither a bridge nor long-acting insulin stood for. A single step counts as what it is.
Insulin missed(const Plan& plan, const Outage& outage, const Moment& now) {
  if (!outage.since) return Insulin{};
  const Instant end = outage.until.value_or(now.instant);
  const Offset offset = outage.stopped_at_offset.value_or(now.offset);
  std::vector<Covered> covers = outage.bridges;
  std::sort(covers.begin(), covers.end(), [](const Covered& a, const Covered& b) { return a.from < b.from; });
  Insulin sum;
  Instant from = *outage.since;
  for (const Covered& cover : covers) {
    sum = sum + outage.needed_over(plan, from, std::min(cover.from, end), offset);
    from = std::max(from, cover.to);
  }
  sum = sum + outage.needed_over(plan, from, end, offset);
  for (const SingleStep& step : outage.single_steps)
    if (step.at >= *outage.since && step.at <= end) sum = at_least_none(sum - step.basal);
  return sum;
}

// When long-acting insulin has worn off: one given by mistake acts as long.
std::optional<Instant> worn_off(const Plan& plan, const History& history, Instant now) {
  std::optional<Instant> until;
  if (!plan.long_acting) return until;
  for (const auto& [event, struck] : history.entries()) {
    const bool given = event->kind == EventKind::injection || event->kind == EventKind::mistake;
    const Instant end = event->at.instant + plan.long_acting->action;
    if (given && event->insulin == InsulinType::long_acting && end > now && (!until || *until < end)) until = end;
  }
  return until;
}

}  // namespace

Back back_of(const Plan& plan, const History& history, const Outage& outage, const Moment& now,
             const std::array<std::optional<Instant>, hold_kinds>& holds) {
  Back back;
  back.on = !outage.off;
  back.look_after = figures::back_first_look.value;
  back.looks_later = figures::back_later_looks.value;
  if (back.on && outage.until && now.instant <= *outage.until + back.look_after) back.look = *outage.until + back.look_after;
  back.usual_from = worn_off(plan, history, now.instant);
  if (back.usual_from) {
    back.reduced = plan.off_pump.reduced_basal;
    back.now = back.reduced ? BackDo::reduced : BackDo::askTeam;
    back.food = back.reduced ? BackFood::byPump : BackFood::byNeedle;
  }
  // The basal of a bridge acts on while the pump would deliver it a second time.
  if (const auto bridged = outage.bridged_until(); bridged && *bridged > now.instant) {
    back.now = BackDo::afterBridge;
    back.food = BackFood::byNeedle;
    back.bridge_until = bridged;
    if (!back.usual_from || *back.usual_from < *bridged) back.usual_from = bridged;
  }
  if (plan.automation != Automation::none) {
    back.automation_from = holds[static_cast<std::size_t>(HoldKind::automation)];
    if (back.usual_from && (!back.automation_from || *back.automation_from < *back.usual_from)) back.automation_from = back.usual_from;
  }
  back.missed_basal = missed(plan, outage, now);
  return back;
}

}  // namespace stopgap::without_pump
