#include "model/long_acting.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_map>
#include "figures/off_pump.hpp"
#include "figures/timing.hpp"

namespace stopgap {
namespace {

bool is_mistake(const Event& event) { return event.kind == EventKind::mistake && event.insulin == InsulinType::long_acting; }
bool is_injection(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::long_acting; }

}  // namespace

bool is_half_part(TimeOfDay time) {
  return time >= figures::first_part_halves_from.value && time < figures::first_part_is_evening_from.value;
}
bool is_evening_part(TimeOfDay time) { return time >= figures::first_part_is_evening_from.value; }

Duration span_to_next_part(const Plan& plan, bool half) {
  if (plan.off_pump.parts == 1) return figures::long_acting_day.value;
  return half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
}

std::int64_t count_of_zones(std::int64_t zones_east) { return zones_east < 0 ? -zones_east : zones_east; }
bool changes_basal(std::int64_t zones_east) { return count_of_zones(zones_east) >= figures::zones_that_change_basal.value; }

std::optional<Fraction> journey_share(const Plan& plan, std::int64_t zones_east) {
  if (!changes_basal(zones_east) || plan.off_pump.parts > 1) return std::nullopt;
  if (zones_east < 0) return figures::west_part.value.value();
  return figures::east_share.value.value() - Fraction::of(zones_east, figures::zones_of_a_day.value);
}

bool follows_on(const std::optional<Instant>& covers_until, Instant at, const InsulinKind& insulin) {
  const Duration longest = figures::onset_that_is_bridged.value;
  return covers_until && insulin.onset <= longest && at + insulin.onset - *covers_until <= longest;
}

std::vector<LongDoseTaken> long_doses_of(const Plan& plan, const History& history) {
  std::vector<LongDoseTaken> doses;
  if (!plan.long_acting) return doses;
  const Duration action = plan.long_acting->action;
  const bool in_parts = plan.off_pump.parts > 1;
  std::unordered_map<std::string_view, Moment> shown;
  std::optional<Instant> covers_until;
  const Event* first_half = nullptr;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::doseShown) shown.emplace(event->id, event->at);
    LongDoseTaken dose;
    dose.event = event;
    dose.mistaken = is_mistake(*event) && event->units;
    if (!dose.mistaken && !is_injection(*event)) continue;
    const Instant at = event->at.instant;
    // A half, or one that follows, is so by the time it was worked out for: a minute at the needle makes it no other.
    const auto worked_out = shown.find(event->refers_to);
    const Moment& decided = worked_out == shown.end() ? event->at : worked_out->second;
    dose.follows = follows_on(covers_until, decided.instant, *plan.long_acting);
    dose.half = in_parts && !dose.mistaken && !dose.follows && event->order.empty() && is_half_part(local_time(decided));
    dose.next = dose.mistaken ? figures::mistake_with_long_acting.value : span_to_next_part(plan, dose.half);
    bool eastward = false;
    if (!dose.mistaken) {
      const bool second = first_half && at - first_half->at.instant < figures::long_acting_day.value;
      first_half = nullptr;
      if (event->zones_east && journey_share(plan, *event->zones_east)) {
        const Duration zones = Duration::hours(count_of_zones(*event->zones_east));
        dose.first_half = *event->zones_east < 0 && !second;
        eastward = *event->zones_east > 0;
        if (eastward) dose.next = dose.next - zones;
        if (dose.first_half) {
          dose.next = zones;
          first_half = event;
        }
      }
    }
    // Where it follows, the tail of the one before bridges its onset; it works no sooner than that tail ends.
    const Instant works = at + plan.long_acting->onset;
    dose.works_from = dose.follows ? std::min(works, std::max(at, *covers_until)) : works;
    // The amount of a day's journey east is good until the usual hour there.
    dose.all_until = at + ((in_parts && !dose.mistaken) || eastward ? std::min(dose.next, action) : action);
    covers_until = std::max(covers_until.value_or(dose.all_until), dose.all_until);
    doses.push_back(dose);
  }
  return doses;
}

std::optional<Instant> long_acting_due(const Plan& plan, const History& history) {
  std::vector<LongDoseTaken> doses = long_doses_of(plan, history);
  std::optional<Instant> due;
  auto dose = doses.begin();
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    if (is_mistake(*event)) due = std::max(due.value_or(at), at + figures::mistake_with_long_acting.value);
    for (; dose != doses.end() && dose->event == event; ++dose)
      if (!dose->mistaken) due = at + dose->next;
  }
  return due;
}

}  // namespace stopgap
