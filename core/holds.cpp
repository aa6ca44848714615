#include "holds.hpp"

#include <algorithm>
#include "advise.hpp"
#include "figures/timing.hpp"
#include "known.hpp"
#include "rules/excess.hpp"
#include "rules/hold.hpp"

namespace stopgap {
namespace {

// When glucose and ketones were read, ascending.
struct Readings {
  std::vector<Instant> glucose, ketones;

  explicit Readings(const History& history) {
    for (const auto& [event, struck] : history.entries()) {
      if (event->kind == EventKind::glucose) glucose.push_back(event->at.instant);
      if (event->kind == EventKind::ketones) ketones.push_back(event->at.instant);
    }
  }
};

// What of a look is still to be read. It is answered by readings from shortly before it on, but never by the reading that led to it: a
// look of 15 minutes would be lost.
LookDue still_open(const Readings& readings, const Event& look) {
  const Instant due = *look.due, from = due - figures::glucose_reading_lasts.value;
  const auto read = [&](const std::vector<Instant>& times) { return !times.empty() && times.back() >= from && times.back() > look.at.instant; };
  return {due, look.look_glucose && !read(readings.glucose), look.look_ketones && !read(readings.ketones), false, 0};
}

std::vector<LookDue> open_looks(const History& history, Instant now) {
  std::vector<LookDue> looks;
  const Readings readings(history);
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind != EventKind::look || now - *event->due > figures::incident_span.value) continue;
    LookDue look = still_open(readings, *event);
    if (!look.glucose && !look.ketones) continue;
    look.overdue = look.due < now;
    if (look.overdue) look.minutes_late = (now - look.due).in_seconds() / 60;
    const auto same = std::find_if(looks.begin(), looks.end(), [&](const LookDue& other) { return other.due == look.due; });
    if (same == looks.end()) {
      looks.push_back(look);
    } else {
      same->glucose |= look.glucose;
      same->ketones |= look.ketones;
    }
  }
  std::sort(looks.begin(), looks.end(), [](const LookDue& a, const LookDue& b) { return a.due < b.due; });
  return looks;
}

constexpr std::int64_t minutes_a_point = 15;  // of the drawn line

GlucoseFall taken_by(Insulin amount, CorrectionFactor factor) {
  return GlucoseFall::grains((amount.in_units() * Fraction{factor.in_grains_per_unit()}).floor());
}

std::optional<TakenOff> taken_off(const rules::Facts& facts, const std::vector<CurveRow>& curve) {
  const Duration action = facts.plan.rapid.action;
  if (!facts.last_needle || facts.since(facts.last_needle) >= action) return std::nullopt;
  TakenOff taken;
  taken.again = facts.last_needle->rescue();
  if (facts.level == rules::Level::number && facts.G >= facts.plan.low.below) taken.to_low = facts.G - facts.plan.low.below;
  for (const CurveRow& row : curve) {
    if (row.minute % minutes_a_point != 0 && row.minute != curve.back().minute) continue;
    const Insulin acted = at_least_none(facts.absorbed - row.absorbed);
    Remaining left;
    left.add(taken.again, remaining_share(Duration::minutes(row.minute), action));
    const Insulin twice = acted + at_least_none(taken.again - left.rounded_up());
    taken.rows.push_back({row.minute, taken_by(acted, facts.factor), taken_by(twice, facts.factor)});
  }
  return taken;
}

// This call is given no reading: whether insulin was too much is judged by the latest one recorded, however old it is.
void judge_by_the_latest_reading(rules::Facts& facts) {
  if (facts.level != rules::Level::missing || !facts.situation.glucose) return;
  const GlucoseReading& reading = facts.situation.glucose->reading;
  if (reading.word == MeterWord::HI) return;
  const bool converted = reading.unit != facts.plan.unit;
  const bool could_go_low = reading.word == MeterWord::LO ||
                            rules::comes_to_low(facts.plan, reading.value, converted, facts.factor, facts.absorbed);
  rules::judge_doubling(facts, could_go_low);
}

}  // namespace

HoldsAnswer holds(const Plan& plan, const Record& record, const Moment& now, bool with_curve) {
  const History history = History::of(record, now.instant);
  const Situation situation = known_at(history, now);
  rules::Facts facts = rules::facts_of(plan, history, situation);
  judge_by_the_latest_reading(facts);

  HoldsAnswer answer;
  // Only what runs already: a dose that advice would offer now starts nothing here.
  answer.holds = rules::running_holds(facts);
  answer.looks = open_looks(history, now.instant);
  answer.counted = facts.counted;
  answer.absorbed = facts.absorbed;
  if (facts.unanswered_dose) {
    const Event& shown = *facts.unanswered_dose;
    answer.unanswered = DoseWaiting{shown.id, *shown.units, shown.at.instant};
  }
  if (facts.last_needle)
    answer.given = Given{*facts.last_needle->units, facts.last_needle->at.instant};
  answer.incident_recorded = facts.incident_recorded;
  answer.incident_since = facts.suspected_since;
  answer.clock_in_doubt = facts.clock_in_doubt;
  if (with_curve) {
    answer.curve.emplace();
    const std::int64_t last = plan.rapid.action.in_seconds() / 60;
    for (std::int64_t minute = 0; minute <= last; ++minute) {
      const Instant then = now.instant + Duration::minutes(minute);
      const OnBoard later = on_board(plan, history, nullptr, then, {facts.suspected_since, facts.set_changed});
      answer.curve->push_back({minute, later.counted(facts.suspect_doses_count || !facts.incident()), later.counted(true)});
    }
    answer.taken = taken_off(facts, *answer.curve);
  }
  return answer;
}

}  // namespace stopgap
