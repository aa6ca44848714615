#include "rules/excess.hpp"

#include <algorithm>
#include <initializer_list>
#include <vector>
#include "figures/action.hpp"
#include "rules/events.hpp"

namespace stopgap::rules {
namespace {

void read_mistakes(Facts& facts) {
  const Duration action = facts.plan.rapid.action;
  const Duration long_action = facts.plan.long_acting ? facts.plan.long_acting->action
                                                      : Duration::hours(figures::longest_long_acting_hours.value);
  if (const auto& mistake = facts.situation.mistake) {
    if (mistake->insulin == InsulinType::rapid) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown = !mistake->units;
      later(facts.last_excess, facts.now);
    } else {
      facts.mistake_long = true;
    }
  }
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::mistake) continue;
    const Duration since = facts.since(event);
    if (event->insulin == InsulinType::rapid && since <= action) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown |= !event->units;
      later(facts.last_excess, event->at.instant);
    } else if (event->insulin == InsulinType::long_acting && since <= long_action) {
      facts.mistake_long = true;
    }
  }
}

// A delivery off the body that may have gone in, and pump doses on top of a needle, count as too much once glucose could go low.
// From then on they stand for the hours of action: a higher reading later, or none at all, takes no insulin out again.
class Doubling {
 public:
  explicit Doubling(Facts& facts) : facts_(facts), step_(facts.plan.usual_device().step) {
    for (const auto& [event, struck] : facts.history.entries()) {
      if (facts.since(event) > facts.plan.rapid.action + facts.plan.limits.lock) continue;
      if (event->kind == EventKind::offBody && event->tubing_end != TubingEnd::sink) off_body_.push_back(event);
      if (is_needle_dose(*event) || (event->kind == EventKind::pumpDose && event->purpose != PumpPurpose::meal)) by_needle_and_pump_.push_back(event);
    }
  }

  void judge() {
    if (off_body_.empty() && by_needle_and_pump_.empty()) return;
    went_in(facts_.off_body_went_in, off_body_until(facts_.now, {TubingEnd::body}, TubingEnd::body));
    if (facts_.would_go_low_absorbed) {
      went_in(facts_.off_body_went_in, unsure_until(facts_.now));
      went_in(facts_.pump_doubled, on_top_until(facts_.now));
    }
    for (const auto& [event, struck] : facts_.history.entries()) {
      if (!event->glucose || event->at.instant > facts_.now) continue;
      const auto unsure = unsure_until(event->at.instant), on_top = on_top_until(event->at.instant);
      if (!(says_more(facts_.off_body_went_in, unsure) || says_more(facts_.pump_doubled, on_top)) || !could_go_low_then(*event)) continue;
      went_in(facts_.off_body_went_in, unsure);
      went_in(facts_.pump_doubled, on_top);
    }
  }

 private:
  using Last = std::optional<Instant>;  // the last of the doses, if together they come to a syringe step

  // A moment of the past knows nothing of what came after it; now, a dose from the future counts as well.
  bool not_yet(Instant at, Instant moment) const { return at > moment && moment != facts_.now; }

  Last off_body_until(Instant moment, std::initializer_list<TubingEnd> ends, TubingEnd last_of) const {
    Insulin sum;
    Last last;
    for (const Event* event : off_body_) {
      if (not_yet(event->at.instant, moment) || moment - event->at.instant > facts_.plan.rapid.action) continue;
      if (std::find(ends.begin(), ends.end(), event->tubing_end) == ends.end()) continue;
      sum = sum + *event->units;
      if (event->tubing_end == last_of) later(last, event->at.instant);
    }
    return sum >= step_ ? last : std::nullopt;
  }
  Last unsure_until(Instant moment) const { return off_body_until(moment, {TubingEnd::body, TubingEnd::unsure}, TubingEnd::unsure); }

  // Corrections and automatic doses after the earliest needle dose that was within its lock at that moment; the last of them
  // is the last within that lock, even if it came after the moment.
  Last on_top_until(Instant moment) const {
    std::optional<Instant> needle;
    Insulin sum;
    Last last;
    for (const Event* event : by_needle_and_pump_) {
      const Instant at = event->at.instant;
      if (event->kind == EventKind::injection) {
        if (!needle && !not_yet(at, moment) && moment - at < facts_.plan.limits.lock) needle = at;
      } else if (needle) {
        const bool there = !not_yet(at, moment);
        if (there) sum = sum + *event->units;
        if (there || at - *needle < facts_.plan.limits.lock) later(last, at);
      }
    }
    return sum >= step_ ? last : std::nullopt;
  }

  bool says_more(bool known, const Last& last) const {
    return last && facts_.now - *last <= facts_.plan.rapid.action && !(known && facts_.last_excess && *facts_.last_excess >= *last);
  }
  void went_in(bool& fact, const Last& last) {
    if (!says_more(fact, last)) return;
    fact = true;
    later(facts_.last_excess, *last);
  }

  // As glucose stood when this reading was taken, with every dose until then absorbed.
  bool could_go_low_then(const Event& event) const {
    const GlucoseReading& reading = *event.glucose;
    if (reading.word != MeterWord::number) return reading.word == MeterWord::LO;
    const Instant then = event.at.instant;
    const OnBoard acting = on_board(facts_.plan, facts_.history, nullptr, then, {facts_.suspected_since, facts_.set_changed, then});
    return comes_to_low(facts_.plan, reading.value, reading.unit != facts_.plan.unit, facts_.plan.correction_factor.at(local_time(event.at)),
                        acting.counted(true));
  }

  Facts& facts_;
  Insulin step_;
  std::vector<const Event*> off_body_, by_needle_and_pump_;
};

}  // namespace

void read_excess(Facts& facts) {
  read_mistakes(facts);
  Doubling(facts).judge();
}

}  // namespace stopgap::rules
