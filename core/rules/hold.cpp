#include "rules/hold.hpp"

namespace stopgap::rules {
namespace {

class Running {
 public:
  Running(Holds& holds, Instant now) : holds_(holds), now_(now) {}
  void until(HoldKind what, Instant end) {
    auto& present = holds_[static_cast<std::size_t>(what)];
    if (end > now_ && !(present && *present >= end)) present = end;
  }

 private:
  Holds& holds_;
  Instant now_;
};

// When a further ketone dose may follow: by the row of the ketones now; while they are unknown by that of the last needle dose. A
// row that does not act has no further dose.
std::optional<Duration> repeat_after(const Facts& facts) {
  if (!facts.unknown) return facts.acting ? facts.row->repeat : std::nullopt;
  return facts.row_at_last_needle && facts.acted_at_last_needle ? facts.row_at_last_needle->repeat : std::nullopt;
}

void after_needle(Running& running, const Facts& facts, Instant needle) {
  running.until(HoldKind::correction, needle + facts.plan.limits.lock);
  if (const auto repeat = repeat_after(facts)) running.until(HoldKind::ketoneDose, needle + *repeat);
}

// Ketones act now, or acted when this dose was decided; or pausing is the plan's way, or it is paused already.
bool automation_waits(const Facts& facts, bool acted_at_dose) {
  return facts.acting || acted_at_dose || facts.automation_paused || facts.plan.squaring.preferred == SquaringWay::paused;
}

}  // namespace

Holds running_holds(const Facts& facts) {
  Holds holds{};
  Running running(holds, facts.now);
  const Plan& plan = facts.plan;
  const bool automated = plan.automation != Automation::none;
  if (const Event* needle = facts.last_needle) {
    const Instant at = needle->at.instant;
    after_needle(running, facts, at);
    if (automated && automation_waits(facts, facts.acted_at_last_needle))
      running.until(HoldKind::automation, at + plan.squaring.pause);
  }
  if (facts.too_much()) {
    const Instant end = *facts.last_excess + plan.rapid.action;
    running.until(HoldKind::allRapid, end);
    if (automated) running.until(HoldKind::automation, end);
  }
  const Duration after_mistake = figures::mistake_with_long_acting.value;
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->insulin != InsulinType::long_acting) continue;
    if (event->kind == EventKind::mistake) running.until(HoldKind::longActing, event->at.instant + after_mistake);
    if (event->kind == EventKind::injection && plan.long_acting)
      running.until(HoldKind::longActing, event->at.instant + plan.long_acting->action);
  }
  if (const auto& mistake = facts.situation.mistake; mistake && mistake->insulin == InsulinType::long_acting)
    running.until(HoldKind::longActing, facts.now + after_mistake);
  return holds;
}

void add_holds(const Facts& facts, Proposal& proposal) {
  Advice& advice = proposal.advice;
  advice.holds = running_holds(facts);
  Running running(advice.holds, facts.now);
  if (advice.dose && !advice.dose->rescue.is_zero()) {
    after_needle(running, facts, facts.now);
    if (facts.plan.automation != Automation::none && automation_waits(facts, facts.acting))
      running.until(HoldKind::automation, facts.now + facts.plan.squaring.pause);
  }
  if (!advice.hold_until) return;
  running.until(HoldKind::correction, *advice.hold_until);
  if (advice.hold_is_ketone_dose) running.until(HoldKind::ketoneDose, *advice.hold_until);
}

}  // namespace stopgap::rules
