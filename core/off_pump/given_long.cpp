#include "off_pump/given_long.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"
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
    const bool names_long = event->units && event->insulin == InsulinType::long_acting;
    if (!event->units || (names_long && now - event->at.instant <= figures::order_stands.value)) return true;
  }
  return false;
}

std::int64_t count_of(std::int64_t zones_east) { return zones_east < 0 ? -zones_east : zones_east; }

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

// A mistake whose units nobody knows: until the team answers nobody knows how much basal is in either.
void read_unknown(LongAtWork& work, const Event& mistake, const History& history) {
  if (team_knows_of(mistake.at.instant, history)) return;
  if (!work.unknown_since) work.unknown_since = mistake.at.instant;
  for (const auto& [event, struck] : history.entries())
    if (calls_team(*event) && !event->answered && event->at.instant >= *work.unknown_since && !work.unanswered_call)
      work.unanswered_call = event->at.instant;
}

}  // namespace

bool is_half_part(TimeOfDay time) {
  return time >= figures::first_part_halves_from.value && time < figures::first_part_is_evening_from.value;
}
bool is_evening_part(TimeOfDay time) { return time >= figures::first_part_is_evening_from.value; }

Duration span_to_next_part(const Plan& plan, bool half) {
  if (plan.off_pump.parts == 1) return figures::long_acting_day.value;
  return half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
}

bool changes_basal(std::int64_t zones_east) { return count_of(zones_east) >= figures::zones_that_change_basal.value; }

std::optional<Fraction> journey_share(const Plan& plan, std::int64_t zones_east) {
  if (!changes_basal(zones_east) || plan.off_pump.parts > 1) return std::nullopt;
  if (zones_east < 0) return figures::west_part.value.value();
  return figures::east_share.value.value() - Fraction::of(zones_east, figures::zones_of_a_day.value);
}

bool LongAtWork::is_followed_at(Instant at, const InsulinKind& insulin) const {
  const Duration longest = figures::onset_that_is_bridged.value;
  return covers_until && insulin.onset <= longest && at + insulin.onset - *covers_until <= longest;
}

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
  const Duration action = plan.long_acting->action, onset = plan.long_acting->onset;
  const bool in_parts = plan.off_pump.parts > 1;
  const Event* first_half = nullptr;   // of a journey west, as long as its second half is not in
  std::unordered_map<std::string_view, Moment> shown;
  Fraction share;
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    if (event->kind == EventKind::doseShown) shown.emplace(event->id, event->at);
    const bool mistaken = is_mistaken_long(*event);
    if (mistaken) work.due = std::max(work.due.value_or(at), at + figures::long_acting_day.value);
    if (!(is_long(*event) || (mistaken && event->units))) continue;
    // A half, or one that follows, is so by the time it was worked out for: a minute at the needle makes it no other.
    const auto worked_out = shown.find(event->refers_to);
    const Moment& decided = worked_out == shown.end() ? event->at : worked_out->second;
    work.follows = work.is_followed_at(decided.instant, *plan.long_acting);
    const bool half = in_parts && !mistaken && !work.follows && event->order.empty() && is_half_part(local_time(decided));
    Duration next = mistaken ? figures::long_acting_day.value : span_to_next_part(plan, half);
    if (!mistaken) {
      work.zones_east = event->zones_east;
      const bool journey = event->zones_east && journey_share(plan, *event->zones_east);
      const bool second = first_half && at - first_half->at.instant < figures::long_acting_day.value;
      first_half = nullptr;
      if (journey && *event->zones_east > 0) next = next - Duration::hours(*event->zones_east);
      if (journey && *event->zones_east < 0 && !second) {
        next = Duration::hours(count_of(*event->zones_east));
        first_half = event;
      }
    }
    share = Fraction{1};
    if (event->order.empty() && !has_ordered_since(at, history, now)) {
      share = event->units->in_units() / planned(plan, *event, half).in_units();
      if (share >= figures::enough_of_long_acting.value.value()) share = Fraction{1};
    }
    // The tail of the one before bridges its onset where it follows, but it works no sooner than that tail ends.
    const Instant works = at + onset;
    const Instant from = work.follows ? std::min(works, std::max(at, *work.covers_until)) : works;
    const Instant all_until = at + (in_parts && !mistaken ? next : action);
    outage.long_cover.push_back({from, all_until, share});
    if (in_parts && !mistaken && all_until < at + action)
      outage.long_cover.push_back({all_until, at + action, figures::half_part.value.value() * share});
    work.last = event;
    work.last_at = at;
    work.covers_from = from;
    work.covers_until = std::max(work.covers_until.value_or(all_until), all_until);
    work.due = mistaken ? work.due : at + next;
    work.too_little = share < Fraction{1};
  }
  // A second half that was never injected is no longer due once the next whole dose would be.
  if (first_half && now - first_half->at.instant >= figures::long_acting_day.value) first_half = nullptr;
  work.second_half = first_half != nullptr;
  if (work.last && now >= *work.covers_until && now >= *work.due) work.too_little = false;
  const bool counts = work.last && now < *work.due;
  work.other_than_planned = counts && (work.too_little || other_than_shown(*work.last, history)) && !team_knows_of(*work.last_at, history);
}

}  // namespace stopgap::without_pump
