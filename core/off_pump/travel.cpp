#include "off_pump/travel.hpp"

#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "off_pump/long_acting.hpp"

namespace stopgap::without_pump {

Travel travel_of(const Plan& plan, const Outage& outage, std::int64_t zones_east, Instant now) {
  Travel travel;
  travel.zones_east = zones_east;
  const std::int64_t zones = zones_east < 0 ? -zones_east : zones_east;
  travel.share = Fraction{1};
  if (zones < figures::zones_that_matter.value) return travel;
  travel.rule = TravelRule::sameBasal;
  if (zones < figures::zones_that_change_basal.value || !plan.long_acting) return travel;
  travel.rule = zones_east > 0 ? TravelRule::east : TravelRule::west;
  if (plan.off_pump.parts > 1) return travel;   // the published rule is for one dose a day: of two parts the team names the amounts
  const Insulin day = long_acting_a_day(plan);
  std::optional<Instant> home;   // the usual hour by the home clock: when the next dose is due
  if (outage.long_acting.last && outage.long_acting.due && now <= *outage.long_acting.due) home = outage.long_acting.due;
  const auto part = [&](Fraction share, std::optional<Instant> at) {
    const Insulin exact = Insulin::exactly(share * day.in_units());
    travel.parts.push_back({exact, plan.to_step(exact, plan.usual_device().step), at});
  };
  if (zones_east > 0) {
    travel.share = figures::east_share.value.value() - Fraction::of(zones, figures::zones_of_a_day.value);
    part(travel.share, home);
  } else {
    part(figures::west_part.value.value(), home);
    part(figures::west_part.value.value(), home ? std::optional<Instant>{*home + Duration::hours(zones)} : std::nullopt);
  }
  return travel;
}

}  // namespace stopgap::without_pump
