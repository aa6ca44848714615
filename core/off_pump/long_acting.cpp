#include "off_pump/long_acting.hpp"

#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "off_pump/given_long.hpp"

namespace stopgap::without_pump {

LongState long_state(const Plan& plan, const Outage& outage, Instant now) {
  if (!plan.long_acting) return LongState::notNow;
  return outage.long_acting.due && now < *outage.long_acting.due ? LongState::hold : LongState::due;
}

std::vector<Insulin> injections_of(Insulin units, const Device& device) {
  std::vector<Insulin> out;
  const Insulin most = device.capacity.down_to(device.step);
  while (units > Insulin{}) {
    out.push_back(lesser(units, most));
    units = units - out.back();
  }
  return out;
}

std::optional<std::int64_t> journey_of(const Outage& outage, const std::optional<std::int64_t>& asked) {
  const LongAtWork& work = outage.long_acting;
  if (work.second_half) return work.zones_east;
  if (!asked || !changes_basal(*asked) || work.zones_east == asked) return std::nullopt;   // its amounts are in: a whole day's again
  return asked;
}

LongDose long_dose(const Plan& plan, const Outage& outage, const OffPumpQuestion& question, bool ordered) {
  const Moment& now = question.now;
  const LongAtWork& work = outage.long_acting;
  LongDose dose;
  dose.with = question.long_with.value_or(plan.usual_kind());
  const Device& device = plan.device(dose.with);
  dose.basal_a_day = basal_of_a_day(plan.basal);
  dose.a_day = long_acting_a_day(plan);
  dose.exact = dose.a_day;
  bool half = false;
  if (plan.off_pump.parts > 1) {
    const TimeOfDay time = local_time(now);
    dose.exact = Insulin::exactly(dose.a_day.in_units() / Fraction{plan.off_pump.parts});
    dose.part = is_half_part(time) || !is_evening_part(time) ? PartName::morning : PartName::evening;
    half = is_half_part(time) && !work.is_followed_at(now.instant, *plan.long_acting);
    if (half) {
      dose.share = LongShare::half;
      dose.exact = figures::half_part.value * dose.exact;
    }
  }
  Duration next = span_to_next_part(plan, half);
  const auto zones = ordered ? std::nullopt : journey_of(outage, question.zones_east);
  if (const auto share = zones ? journey_share(plan, *zones) : std::nullopt) {
    dose.zones_east = zones;
    dose.second_half = work.second_half;
    dose.exact = Insulin::exactly(*share * dose.a_day.in_units());
    if (*zones > 0) next = next - Duration::hours(*zones);
    else if (!dose.second_half) next = Duration::hours(-*zones);
    if (*zones < 0) dose.share = LongShare::half;
  }
  dose.units = plan.to_step(dose.exact, device.step);
  if (ordered) {
    const Event& order = *work.order;
    dose.part = PartName::only;
    dose.share = LongShare::whole;
    dose.exact = *order.units;
    dose.units = dose.exact.down_to(device.step);   // never more than was ordered, whatever the plan's rounding
    dose.order = LongDose::Order{order.id, order.by, order.at.instant};
    next = span_to_next_part(plan, false);
  }
  dose.injections = injections_of(dose.units, device);
  dose.works_from = now.instant + plan.long_acting->onset;
  dose.next_due = now.instant + next;
  dose.pump_as_usual_from = now.instant + plan.long_acting->action;
  return dose;
}

}  // namespace stopgap::without_pump
