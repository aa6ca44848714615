#include "off_pump/given_long.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>
#include <vector>
#include "figures/off_pump.hpp"

namespace stopgap::without_pump {
namespace {

bool is_long(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::long_acting; }
bool is_mistaken_long(const Event& event) { return event.kind == EventKind::mistake && event.insulin == InsulinType::long_acting; }

bool calls_team(const Event& event) { return event.kind == EventKind::call && event.call_to == CallTo::team && event.answered; }

bool other_than_shown(const Event& given, const History& history) {
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::doseShown && event->id == given.refers_to) return !(*event->units == *given.units);
  return false;
}
bool team_knows_of(const Event& given, const History& history) {
  for (const auto& [event, struck] : history.entries())
    if (calls_team(*event) && event->at.instant > given.at.instant) return true;
  return false;
}

}  // namespace

bool is_half_part(TimeOfDay time) {
  return time >= figures::first_part_halves_from.value && time < figures::first_part_is_evening_from.value;
}
bool is_evening_part(TimeOfDay time) { return time >= figures::first_part_is_evening_from.value; }

bool LongAtWork::is_followed_at(Instant at, const InsulinKind& insulin) const {
  return covers_until && at - *covers_until <= insulin.onset && at - (last->at.instant + insulin.action) <= figures::bridge_tolerance.value;
}

// An order for long-acting insulin holds if it was given on a call, is fresh, and is neither injected nor refused. Two events may
// share their second, so that only instants and references are compared.
const Event* order_at(const History& history, Instant now) {
  std::vector<Instant> calls;
  std::optional<Instant> last_in;   // what is in since the call the team did not know of
  std::unordered_set<std::string_view> used;
  std::unordered_map<std::string_view, Instant> shown;
  std::optional<Instant> refused;
  for (const auto& [event, struck] : history.entries()) {
    if (calls_team(*event)) calls.push_back(event->at.instant);
    if (is_long(*event) || is_mistaken_long(*event)) last_in = event->at.instant;
    if (is_long(*event)) used.insert(event->order);
    if (event->kind == EventKind::doseShown && event->insulin == InsulinType::long_acting) shown.emplace(event->id, event->at.instant);
  }
  for (const auto& [event, struck] : history.entries())
    if (const auto dose = shown.find(event->refers_to); event->kind == EventKind::doseRefused && dose != shown.end()) refused = dose->second;
  const Event* latest = nullptr;
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::order && event->insulin == InsulinType::long_acting) latest = event;
  if (!latest || !latest->units || used.contains(latest->id)) return nullptr;
  const Instant at = latest->at.instant;
  const Duration stands = figures::order_stands.value;
  if (at > now || now - at > stands || (refused && *refused >= at)) return nullptr;
  const auto led_to_it = [&](Instant call) { return call <= at && at - call <= stands && !(last_in && call <= *last_in); };
  return std::any_of(calls.begin(), calls.end(), led_to_it) ? latest : nullptr;
}

void read_long(Outage& outage, const Plan& plan, const History& history, Instant now) {
  LongAtWork& work = outage.long_acting;
  if (!plan.long_acting) {
    // Nobody knows how long it works; the team does.
    for (const auto& [event, struck] : history.entries())
      if (is_long(*event) && now - event->at.instant < figures::long_acting_day.value) work.other_than_planned = !team_knows_of(*event, history);
    return;
  }
  work.order = order_at(history, now);
  const Duration action = plan.long_acting->action, onset = plan.long_acting->onset;
  const bool in_parts = plan.off_pump.parts > 1;
  std::optional<Instant> before;   // the part before, where it still holds this one's successor
  std::unordered_map<std::string_view, Moment> shown;
  const auto hold = [&](Instant until) { if (!work.due || *work.due < until) work.due = until; };
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    if (event->kind == EventKind::doseShown) shown.emplace(event->id, event->at);
    if (is_mistaken_long(*event)) hold(at + action);
    if (!is_long(*event)) continue;
    // A half, or one that follows, is so by the time it was worked out for: a minute at the needle makes it no other.
    const auto worked_out = shown.find(event->refers_to);
    const Moment& decided = worked_out == shown.end() ? event->at : worked_out->second;
    const bool follows = work.is_followed_at(decided.instant, *plan.long_acting);
    const bool half = in_parts && !follows && event->order.empty() && is_half_part(local_time(decided));
    // A second one before the first works begins nothing anew.
    const bool waits = work.covers_from && at < *work.covers_from;
    const Duration next = half ? figures::part_after_a_half.value : figures::later_long_acting_part.value;
    work.continues = waits ? work.continues : follows;
    work.last = event;
    if (!waits) work.covers_from = at + onset;
    work.covers_until = at + (in_parts ? next : action);
    hold(at + (in_parts ? next : std::max(action, figures::long_acting_day.value)));
    if (in_parts && before) hold(*before + action);
    before = half ? std::nullopt : std::optional<Instant>{at};
    outage.long_cover.push_back({work.continues ? at : *work.covers_from, *work.covers_until, {}});
  }
  work.other_than_planned = work.last && now < *work.due && other_than_shown(*work.last, history) && !team_knows_of(*work.last, history);
}

}  // namespace stopgap::without_pump
