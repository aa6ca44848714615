#include "off_pump/travel.hpp"

#include "figures/off_pump.hpp"
#include "model/basal.hpp"
#include "off_pump/given_long.hpp"

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
  const LongAtWork& work = outage.long_acting;
  // The usual hour by the home clock: when the first half was given, or the next dose is due.
  std::optional<Instant> home;
  if (work.second_half) home = work.last_at;
  else if (work.last && work.due && now <= *work.due) home = work.due;
  travel.share = *journey_share(plan, zones_east);
  const auto part = [&](std::optional<Instant> at, bool given) {
    const Insulin exact = Insulin::exactly(travel.share * day.in_units());
    travel.parts.push_back({exact, plan.to_step(exact, plan.usual_device().step), at, given});
  };
  part(home, work.second_half);
  if (zones_east < 0) part(home ? std::optional<Instant>{*home + Duration::hours(zones)} : std::nullopt, false);
  else travel.next_whole = home ? std::optional<Instant>{*home + figures::long_acting_day.value - Duration::hours(zones)} : std::nullopt;
  return travel;
}

}  // namespace stopgap::without_pump
