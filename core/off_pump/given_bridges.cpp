#include "off_pump/given_bridges.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"

namespace stopgap::without_pump {
namespace {

// A bridge shown and injected in another amount is a bridge all the same: offered again, its hours would be given twice.
class Bridges {
 public:
  explicit Bridges(const History& history) {
    for (const auto& [event, struck] : history.entries())
      if (event->kind == EventKind::doseShown && holds_basal(*event)) shown_.emplace(event->id, event->parts->basal);
  }
  // The basal of an injection: its own part, or without parts that of the dose it answers. None: it is no bridge.
  std::optional<Insulin> basal_of(const Event& event) const {
    if (event.kind != EventKind::injection || event.insulin != InsulinType::rapid) return std::nullopt;
    if (event.parts) return holds_basal(event) ? std::optional{event.parts->basal} : std::nullopt;
    const auto shown = shown_.find(event.refers_to);
    return shown == shown_.end() ? std::nullopt : std::optional{shown->second};
  }

 private:
  std::unordered_map<std::string_view, Insulin> shown_;
};

// What a bridge was worked out for is not in the record: only its amount is, which tells it.
class Coverage {
 public:
  Coverage(const Plan& plan, const Event& event, Instant from, Insulin carried, Insulin given)
      : plan_(plan), event_(event), from_(from), carried_(carried), given_(given),
        step_(greater(plan.syringe ? plan.syringe->step : Insulin{}, plan.pen ? plan.pen->step : Insulin{})) {}
  // What is left of these hours' basal once the amount is taken off.
  Insulin left(Instant to) const { return basal_over(plan_.basal, from_, to, event_.at.offset) + carried_ - given_; }
  // Rounding alone leaves less than a step: a whole one and more was meant by somebody, or for other hours.
  bool matches(Instant to) const { return left(to) < step_ && Insulin{} - left(to) < step_; }
  // The same for hours nobody may have meant: rounding down never gives more than they need.
  bool fits(Instant to) const { return matches(to) && (plan_.rounding == Rounding::nearest || left(to) >= Insulin{}); }
  // The whole minutes for which it is enough.
  Instant lasts(Instant latest) const {
    Instant to = from_;
    while (to + Duration::minutes(1) <= latest && left(to + Duration::minutes(1)) <= Insulin{}) to = to + Duration::minutes(1);
    return to;
  }

 private:
  const Plan& plan_;
  const Event& event_;
  Instant from_;
  Insulin carried_, given_, step_;
};

}  // namespace

bool holds_basal(const Event& event) { return event.insulin == InsulinType::rapid && event.parts && !event.parts->basal.is_zero(); }

Insulin Outage::carried_into(Instant from) const {
  if (bridges.empty()) return Insulin{};
  const Covered& last = bridges.back();
  return from >= last.to && from - last.to <= figures::bridge_tolerance.value ? last.carried : Insulin{};
}

// Basal starts where the last bridge's ends, if that is near; at once otherwise. A gap is never made up.
void read_bridges(Outage& outage, const Plan& plan, const History& history) {
  const Bridges bridges{history};
  for (const auto& [event, struck] : history.entries()) {
    const auto given = bridges.basal_of(*event);
    if (!given) continue;
    const Instant at = event->at.instant;
    const auto before = outage.bridged_until();
    if (before && *before - at > figures::bridge_tolerance.value) outage.bridged_twice = at;
    Covered next{before && *before > at ? *before : at, at, {}};
    next.to = std::min(next.from + plan.off_pump.bridge, at + plan.off_pump.bridge + figures::bridge_tolerance.value);
    for (const Covered& cover : outage.long_cover)
      if (cover.from > next.from && cover.from < next.to) next.to = cover.from;
    const Coverage coverage{plan, *event, next.from, outage.carried_into(next.from), *given};
    if (!coverage.matches(next.to)) {
      // Less than these hours need: given for the time until long-acting insulin works, or so much was drawn.
      const Instant onset = plan.long_acting ? std::clamp(at + plan.long_acting->onset, next.from, next.to) : next.to;
      next.to = coverage.fits(onset) ? onset : coverage.lasts(next.to);
    }
    if (event->parts && coverage.matches(next.to)) next.carried = coverage.left(next.to);
    outage.bridges.push_back(next);
  }
}

}  // namespace stopgap::without_pump
