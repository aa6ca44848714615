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

LongDose long_dose(const Plan& plan, const Outage& outage, const OffPumpQuestion& question) {
  const Moment& now = question.now;
  LongDose dose;
  dose.with = question.long_with.value_or(plan.usual_kind());
  const Device& device = plan.device(dose.with);
  dose.basal_a_day = basal_of_a_day(plan.basal);
  dose.a_day = long_acting_a_day(plan);
  dose.exact = dose.a_day;
  if (plan.off_pump.parts > 1) {
    const TimeOfDay time = local_time(now);
    dose.exact = Insulin::exactly(dose.a_day.in_units() / Fraction{plan.off_pump.parts});
    dose.part = is_half_part(time) || !is_evening_part(time) ? PartName::morning : PartName::evening;
    if (is_half_part(time) && !outage.long_acting.is_followed_at(now.instant, *plan.long_acting)) {
      dose.share = LongShare::half;
      dose.exact = figures::half_part.value * dose.exact;
    }
  }
  dose.units = plan.to_step(dose.exact, device.step);
  if (const Event* order = outage.long_acting.order) {
    dose.part = PartName::only;
    dose.share = LongShare::whole;
    dose.exact = *order->units;
    dose.units = dose.exact.down_to(device.step);   // never more than was ordered, whatever the plan's rounding
    dose.order = LongDose::Order{order->id, order->by, order->at.instant, dose.exact > dose.a_day};
  }
  dose.injections = injections_of(dose.units, device);
  dose.works_from = now.instant + plan.long_acting->onset;
  return dose;
}

}  // namespace stopgap::without_pump
