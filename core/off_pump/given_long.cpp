#include "off_pump/given_long.hpp"

#include <algorithm>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "model/long_acting.hpp"
#include "off_pump/orders.hpp"

namespace stopgap::without_pump {
namespace {

bool is_long(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::long_acting; }
bool is_mistaken_long(const Event& event) { return event.kind == EventKind::mistake && event.insulin == InsulinType::long_acting; }

bool calls_team(const Event& event) { return event.kind == EventKind::call && event.call_to == CallTo::team; }

bool other_than_shown(const Event& given, const History& history) {
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::doseShown && event->id == given.refers_to) return !(*event->units == *given.units);
  return false;
}
bool team_knows_of(Instant given, const History& history) {
  for (const auto& [event, struck] : history.entries())
    if (calls_team(*event) && event->answered && event->at.instant > given) return true;
  return false;
}

// The team ordered what follows on this dose: a word without an amount, or an amount that is in or still stands. Until then bridges give
// what the dose is short of.
bool has_ordered_since(Instant given, const History& history, Instant now) {
  for (const auto& [event, struck] : history.entries()) {
    if (event->at.instant <= given) continue;
    if (is_long(*event) && !event->order.empty()) return true;
    if (event->kind != EventKind::order) continue;
    if (event->insulin != InsulinType::long_acting) continue;
    if (!event->units || now - event->at.instant <= figures::order_stands.value) return true;
  }
  return false;
}

// The amount that the plan names for such a dose, as its device draws it.
Insulin planned(const Plan& plan, const Event& given, bool half) {
  Insulin exact = long_acting_a_day(plan);
  if (const auto share = given.zones_east ? journey_share(plan, *given.zones_east) : std::nullopt) {
    exact = Insulin::exactly(*share * exact.in_units());
  } else {
    exact = Insulin::exactly(exact.in_units() / Fraction{plan.off_pump.parts});
    if (half) exact = figures::half_part.value * exact;
  }
  const Insulin drawn = plan.to_step(exact, device_of(plan, given.with).step);
  return drawn.is_zero() ? exact : lesser(drawn, exact);
}

// Struck without the team's word, or said with "not sure".
bool is_last_long_in_doubt(const History& history) {
  bool in_doubt = false;
  for (const auto& [event, struck] : history.entries())
    if (is_long(*event)) in_doubt = struck || !event->sure;
  return in_doubt;
}

// A mistake whose units nobody knows: until the team answers nobody knows how much basal is in either.
void read_unknown(LongAtWork& work, const Event& mistake, const History& history) {
  if (team_knows_of(mistake.at.instant, history)) return;
  if (!work.unknown_since) work.unknown_since = mistake.at.instant;
  for (const auto& [event, struck] : history.entries())
    if (calls_team(*event) && !event->answered && event->at.instant >= *work.unknown_since && !work.unanswered_call)
      work.unanswered_call = event->at.instant;
}

}  // namespace

bool LongAtWork::is_followed_at(Instant at, const InsulinKind& insulin) const { return follows_on(covers_until, at, insulin); }

void read_long(Outage& outage, const Plan& plan, const History& history, Instant now) {
  LongAtWork& work = outage.long_acting;
  for (const auto& [event, struck] : history.entries()) {
    if (!(is_long(*event) || is_mistaken_long(*event))) continue;
    if (event->units && now - event->at.instant <= figures::long_acting_sum_span.value) work.last_20_hours = work.last_20_hours + *event->units;
    if (is_mistaken_long(*event) && !event->units && now - event->at.instant < figures::long_acting_day.value) read_unknown(work, *event, history);
  }
  if (!plan.long_acting) {
    // Nobody knows how long it works; the team does.
    for (const auto& [event, struck] : history.entries())
      if (is_long(*event) && now - event->at.instant < figures::long_acting_day.value)
        work.other_than_planned = !team_knows_of(event->at.instant, history);
    return;
  }
  work.order = order_at(history, now, InsulinType::long_acting);
  const Duration action = plan.long_acting->action;
  const bool in_parts = plan.off_pump.parts > 1;
  const Event* first_half = nullptr;   // of a journey west, as long as its second half is not in
  Fraction share;
  for (const LongDoseTaken& dose : long_doses_of(plan, history)) {
    const Event& event = *dose.event;
    const Instant at = event.at.instant;
    work.follows = dose.follows;
    if (!dose.mistaken) {
      work.zones_east = event.zones_east;
      first_half = dose.first_half ? dose.event : nullptr;
    }
    share = Fraction{1};
    if (event.order.empty() && !has_ordered_since(at, history, now)) {
      share = event.units->in_units() / planned(plan, event, dose.half).in_units();
      if (share >= figures::enough_of_long_acting.value.value()) share = Fraction{1};
    }
    outage.long_cover.push_back({dose.works_from, dose.all_until, share});
    if (in_parts && !dose.mistaken && dose.all_until < at + action)
      outage.long_cover.push_back({dose.all_until, at + action, figures::half_part.value.value() * share});
    work.last = dose.event;
    work.last_at = at;
    work.covers_from = dose.works_from;
    work.covers_until = std::max(work.covers_until.value_or(dose.all_until), dose.all_until);
    work.too_little = share < Fraction{1};
  }
  work.due = long_acting_due(plan, history);
  // A second half that was never injected is no longer due once the next whole dose would be.
  if (first_half && now - first_half->at.instant >= figures::long_acting_day.value) first_half = nullptr;
  work.second_half = first_half != nullptr;
  if (work.last && now >= *work.covers_until && now >= *work.due) work.too_little = false;
  const bool counts = work.last && now < *work.due;
  // Struck, or perhaps not given at all: nobody knows how much basal is in until the team has been told.
  const bool in_doubt = is_last_long_in_doubt(history);
  const Insulin day = plan.to_step(long_acting_a_day(plan), plan.usual_device().step);
  const bool too_much = work.last_20_hours > greater(day, long_acting_a_day(plan));
  work.other_than_planned = counts && (work.too_little || in_doubt || too_much || other_than_shown(*work.last, history)) && !team_knows_of(*work.last_at, history);
}

}  // namespace stopgap::without_pump
