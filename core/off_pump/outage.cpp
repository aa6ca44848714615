#include "off_pump/outage.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>
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

bool is_long(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::long_acting; }
bool is_mistaken_long(const Event& event) { return event.kind == EventKind::mistake && event.insulin == InsulinType::long_acting; }

// Off or dead, and since when without a break: a pump that ran for minutes, or a tap on the wrong button, is none. Where off and on
// tie, off stands.
void read_pump(Outage& outage, const History& history) {
  const auto went_off = [&](const Moment& moment) {
    const Instant at = moment.instant;
    if (!outage.off) {
      if (!outage.until || at - *outage.until > figures::bridge_tolerance.value) {
        outage.since = at;
        outage.stopped_at_offset = moment.offset;
      }
      outage.until.reset();
    }
    outage.off = outage.told = true;
  };
  const auto came_back = [&](Instant at) {
    outage.told = true;
    if (!outage.off || *outage.since == at) return;
    outage.off = false;
    outage.until = at;
  };
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::pump) event->on ? came_back(event->at.instant) : went_off(event->at);
    if (event->kind == EventKind::seen && event->faults.has(Fault::pumpDead)) went_off(event->at);
  }
}

void read_long(Outage& outage, const Plan& plan, const History& history) {
  if (!plan.long_acting) return;
  LongAtWork& work = outage.long_acting;
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
}

bool calls_team(const Event& event) { return event.kind == EventKind::call && event.call_to == CallTo::team && event.answered; }

// Another amount than the page showed is in: the team is to be told, until it was spoken to.
bool other_than_shown(const Event& given, const History& history) {
  bool other = false;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::doseShown && event->id == given.refers_to) other = !(*event->units == *given.units);
    if (calls_team(*event) && event->at.instant > given.at.instant) return false;
  }
  return other;
}

// An order for long-acting insulin holds if it was given on a call, is fresh, and is neither injected nor refused. Two events may
// share their second, so that only instants and references are compared.
const Event* order_of(const History& history, Instant now) {
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

// Basal starts where the last bridge's ends, if that is near; at once otherwise. A gap is never made up.
void read_bridges(Outage& outage, const Plan& plan, const History& history) {
  const Bridges bridges{history};
  for (const auto& [event, struck] : history.entries()) {
    const auto given = bridges.basal_of(*event);
    if (!given) continue;
    const Instant at = event->at.instant;
    const auto before = outage.bridged_until();
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

}  // namespace

bool holds_basal(const Event& event) { return event.insulin == InsulinType::rapid && event.parts && !event.parts->basal.is_zero(); }

bool is_half_part(TimeOfDay time) {
  return time >= figures::first_part_halves_from.value && time < figures::first_part_is_evening_from.value;
}
bool is_evening_part(TimeOfDay time) { return time >= figures::first_part_is_evening_from.value; }

Insulin Outage::carried_into(Instant from) const {
  if (bridges.empty()) return Insulin{};
  const Covered& last = bridges.back();
  return from >= last.to && from - last.to <= figures::bridge_tolerance.value ? last.carried : Insulin{};
}

bool LongAtWork::is_followed_at(Instant at, const InsulinKind& insulin) const {
  return covers_until && at - *covers_until <= insulin.onset && at - (last->at.instant + insulin.action) <= figures::bridge_tolerance.value;
}

Instant Outage::bare_since(Instant now) const {
  Instant bare = *since;
  for (const auto* list : {&bridges, &long_cover})
    for (const Covered& cover : *list)
      if (cover.to > bare && cover.from <= now) bare = cover.to;
  return bare;
}

Outage outage_of(const Plan& plan, const History& history, Instant now) {
  Outage outage;
  read_pump(outage, history);
  read_long(outage, plan, history);
  LongAtWork& work = outage.long_acting;
  work.other_than_shown = work.last && now < *work.due && other_than_shown(*work.last, history);
  if (plan.long_acting) work.order = order_of(history, now);
  read_bridges(outage, plan, history);
  if (!outage.told) {
    outage.off = true;  // who asks has no pump, as long as the record does not say that it is back
    outage.since = now;
  }
  return outage;
}

}  // namespace stopgap::without_pump
