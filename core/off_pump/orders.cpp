#include "off_pump/orders.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>
#include "figures/off_pump.hpp"
#include "model/basal.hpp"

namespace stopgap::without_pump {

// Two events may share their second, so that only instants and references are compared.
const Event* order_at(const History& history, Instant now, InsulinType insulin) {
  std::vector<Instant> calls;
  std::optional<Instant> last_in;   // what is in since the call the team did not know of
  std::unordered_set<std::string_view> used;
  std::unordered_map<std::string_view, Instant> shown;
  std::optional<Instant> refused;
  const Event* latest = nullptr;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::call && event->call_to == CallTo::team && event->answered) calls.push_back(event->at.instant);
    if (event->kind == EventKind::order && event->insulin == insulin) latest = event;
    if (event->insulin != insulin) continue;
    if (event->kind == EventKind::injection) used.insert(event->order);
    if (event->kind == EventKind::injection || event->kind == EventKind::mistake) last_in = event->at.instant;
    if (event->kind == EventKind::doseShown) shown.emplace(event->id, event->at.instant);
  }
  for (const auto& [event, struck] : history.entries())
    if (const auto dose = shown.find(event->refers_to); event->kind == EventKind::doseRefused && dose != shown.end()) refused = dose->second;
  if (!latest || !latest->units || used.contains(latest->id)) return nullptr;
  const Instant at = latest->at.instant;
  const Duration stands = figures::order_stands.value;
  if (at > now || now - at > stands || (refused && *refused >= at)) return nullptr;
  const auto led_to_it = [&](Instant call) { return call <= at && at - call <= stands && !(last_in && call <= *last_in); };
  return std::any_of(calls.begin(), calls.end(), led_to_it) ? latest : nullptr;
}

OrderBlock block_of(const Plan& plan, const LongAtWork& work, const Event& order) {
  const Insulin units = *order.units;
  if (order.insulin == InsulinType::rapid)
    return units > plan.limits.single_dose && !order.read_back ? OrderBlock::notReadBack : OrderBlock::none;
  const Insulin day = long_acting_a_day(plan);
  if (units > day) return OrderBlock::overADay;
  return units + work.last_20_hours > day ? OrderBlock::overWithLast : OrderBlock::none;
}

}  // namespace stopgap::without_pump
