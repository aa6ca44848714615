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

// A needle dose, with the ketones it was decided on: those it carries, else the last ones then.
struct NeedleDose {
  Instant at;
  const KetoneRow* row;
  bool acted;
};

// When a further ketone dose may follow: by the row of the ketones now; while they are unknown by the row of the dose. A row that does
// not act has no further dose.
std::optional<Duration> repeat_after(const Facts& facts, const NeedleDose& dose) {
  if (!facts.unknown) return facts.acting ? facts.row->repeat : std::nullopt;
  return dose.row && dose.acted ? dose.row->repeat : std::nullopt;
}

void after_needle(Running& running, const Facts& facts, const NeedleDose& dose) {
  const Plan& plan = facts.plan;
  running.until(HoldKind::correction, dose.at + plan.limits.lock);
  if (const auto repeat = repeat_after(facts, dose)) running.until(HoldKind::ketoneDose, dose.at + *repeat);
  const bool automation_waits =
      facts.acting || dose.acted || facts.automation_paused || plan.squaring.preferred == SquaringWay::paused;
  if (plan.automation != Automation::none && automation_waits) running.until(HoldKind::automation, dose.at + plan.squaring.pause);
}

}  // namespace

Holds running_holds(const Facts& facts) {
  Holds holds{};
  Running running(holds, facts.now);
  const Plan& plan = facts.plan;
  const bool automated = plan.automation != Automation::none;
  if (facts.last_needle)
    after_needle(running, facts, {facts.last_needle->at.instant, facts.row_at_last_needle, facts.acted_at_last_needle});
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
    const bool acts = facts.acting || facts.last_acting;
    after_needle(running, facts, {facts.now, facts.row ? facts.row : facts.last_row, acts});
  }
  if (!advice.hold_until) return;
  running.until(HoldKind::correction, *advice.hold_until);
  if (advice.hold_is_ketone_dose) running.until(HoldKind::ketoneDose, *advice.hold_until);
}

}  // namespace stopgap::rules
