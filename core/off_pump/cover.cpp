#include <algorithm>
#include "action/curve.hpp"
#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "off_pump/outage.hpp"

namespace stopgap::without_pump {
namespace {

const Fraction whole{1};

// The moments in between at which long-acting insulin begins or ends, with both ends.
std::vector<Instant> changes_of(const std::vector<LongCover>& covers, Instant from, Instant to) {
  std::vector<Instant> changes{from, to};
  for (const LongCover& cover : covers)
    for (const Instant at : {cover.from, cover.to})
      if (at > from && at < to) changes.push_back(at);
  std::sort(changes.begin(), changes.end());
  changes.erase(std::unique(changes.begin(), changes.end()), changes.end());
  return changes;
}

}  // namespace

const Device& device_of(const Plan& plan, DeviceKind kind) {
  const bool present = kind == DeviceKind::syringe ? plan.syringe.has_value() : plan.pen.has_value();
  return present ? plan.device(kind) : plan.usual_device();
}

Fraction Outage::long_share(Instant at) const {
  Fraction sum;
  for (const LongCover& cover : long_cover)
    if (cover.from <= at && at < cover.to) sum = sum + cover.share;
  return sum >= figures::enough_of_long_acting.value.value() ? whole : sum;
}

Instant Outage::needed_from(Instant at) const {
  while (long_share(at) >= whole) {
    std::optional<Instant> next;
    for (const LongCover& cover : long_cover)
      if (cover.to > at && (!next || cover.to < *next)) next = cover.to;
    at = *next;
  }
  return at;
}

Instant Outage::needed_until(Instant from, Instant to) const {
  for (const Instant at : changes_of(long_cover, from, to))
    if (at > from && at < to && long_share(at) >= whole) return at;
  return to;
}

Insulin Outage::needed_over(const Plan& plan, Instant from, Instant to, Offset offset) const {
  Insulin sum;
  if (to <= from) return sum;
  const std::vector<Instant> changes = changes_of(long_cover, from, to);
  for (std::size_t i = 0; i + 1 < changes.size(); ++i) {
    const Insulin basal = basal_over(plan.basal, changes[i], changes[i + 1], offset);
    sum = sum + Insulin::exactly((whole - long_share(changes[i])) * basal.in_units());
  }
  return sum;
}

Instant Outage::lasts(const Plan& plan, Instant from, Insulin units, Instant latest, Offset offset) const {
  const Duration minute = Duration::minutes(1);
  Insulin used;
  Instant to = from;
  while (to + minute <= latest) {
    used = used + needed_over(plan, to, to + minute, offset);
    if (used > units) return to;
    to = to + minute;
  }
  return latest;
}

Instant Outage::has_needed(const Plan& plan, Instant from, Insulin units, Instant latest, Offset offset) const {
  const Duration minute = Duration::minutes(1);
  Insulin used;
  for (Instant to = from; to < latest; to = to + minute) {
    used = used + needed_over(plan, to, to + minute, offset);
    if (used >= units) return to + minute;
  }
  return latest;
}

Insulin Outage::owed_to(Instant from, const Plan& plan) const {
  if (bridges.empty() || (since && bridges.back().given + figures::bridge_tolerance.value < *since)) return Insulin{};
  const Covered& last = bridges.back();
  const Insulin over = Insulin{} - last.owed, step = plan.usual_device().step;
  if (over < step) return last.owed;
  Remaining acting;
  acting.add(over, remaining_share(from - last.given, plan.rapid.action));
  return Insulin{} - acting.rounded_up();
}

Instant Outage::bare_since(Instant now) const {
  Instant bare = *since;
  for (const Covered& cover : bridges)
    if (cover.to > bare && cover.from <= now) bare = cover.to;
  for (const LongCover& cover : long_cover)
    if (cover.to > bare && cover.from <= now && long_share(cover.from) >= whole) bare = cover.to;
  for (const SingleStep& step : single_steps)
    if (step.at > bare && step.at <= now) bare = step.at;
  return bare;
}

}  // namespace stopgap::without_pump
