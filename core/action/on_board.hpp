// Insulin on board: what recorded doses still have to do. The parts are kept apart because the rules ask three questions of
// them: what counts, what would act if every dose had been absorbed, and the other bound of a dose.
#pragma once
#include <optional>
#include "action/curve.hpp"
#include "model/history.hpp"
#include "model/plan.hpp"
#include "model/situation.hpp"

namespace stopgap {

struct OnBoard {
  Remaining always;        // rescue parts, mistakes, uncovered meals by needle, basal given again for the same hours
  Remaining off_body;      // deliveries off the body that may have gone in: not over a sink
  Remaining pump_certain;  // pump doses outside the suspected span
  Remaining pump_suspect;  // pump doses since suspicion and before the set was changed
  Remaining over_sink;     // counted by the pump, never in the body
  std::optional<Remaining> typed;  // the pump's own figure

  // The sum, up to 0.01. With `suspect_counts` the suspect doses and, where it is larger, the pump's own figure count.
  Insulin counted(bool suspect_counts) const;
};

struct SuspectedSpan {
  std::optional<Instant> since;        // no value: no incident, every pump dose counts
  std::optional<Instant> set_changed;  // the latest change of the set since then
  std::optional<Instant> until{};      // what was recorded later is left out; no value: nothing is
};

// `situation` may be missing (the `holds` call). A mistake in the situation acts from now; one already recorded at this very
// moment is not counted twice.
OnBoard on_board(const Plan& plan, const History& history, const Situation* situation, Instant now, const SuspectedSpan& span);

}  // namespace stopgap
