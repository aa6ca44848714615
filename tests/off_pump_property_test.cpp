// Somebody follows the answers for three days: asks when an alarm rings, and injects what the screens say. Whatever the plan, the
// basal of any 24 hours is 90 to 115 % of the plan's, and no two long-acting doses overlap. Native only: generated.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;

constexpr int minutes_a_day = 24 * 60, days = 3;
const std::string start = "2026-11-10T22:00:00+00:00";

// 45 or more units a day, so that a step of the syringe is small beside a day: what a coarser step loses, the desk asks about.
Json plan_of(int parts, int onset_quarters, int bridge, bool nearest, bool half_steps) {
  Json schedule = Json::array();
  for (const char* from : {"00:00", "05:30", "13:00"}) schedule.push_back({{"from", from}, {"value", *rc::gen::inRange(190, 240) / 100.0}});
  return asked::example_with({{"/day/basal", schedule}, {"/offPump/parts", parts}, {"/offPump/bridgeHours", bridge}, {"/longActing/onsetHours", onset_quarters / 4.0},
                              {"/rounding", nearest ? "nearest" : "down"}, {"/syringe/step", half_steps ? 0.5 : 1.0}, {"/syringe/capacity", 100}});
}

struct Stretch { long from, to; double units; };   // minutes after the pump stopped

long minute_of(const Json& time) {
  const std::string text = time.at("at");
  return (std::stol(text.substr(8, 2)) - 10) * minutes_a_day + std::stol(text.substr(11, 2)) * 60 + std::stol(text.substr(14, 2)) - 22 * 60;
}

RC_GTEST_PROP(OffPumpProperty, ADayOfBasalIsADayOfBasal, ()) {
  const int parts = *rc::gen::inRange(1, 3), bridge = *rc::gen::inRange(3, 5), onset = *rc::gen::inRange(0, 13);
  const Json plan = plan_of(parts, onset, bridge, *rc::gen::arbitrary<bool>(), *rc::gen::arbitrary<bool>());
  const long bridged_for = *rc::gen::inRange(0, 20) * 60;   // as long as the pump is thought to be back within two hours
  double a_day = 0;
  const auto& schedule = plan["/day/basal"_json_pointer];
  a_day = schedule[0]["value"].get<double>() * 5.5 + schedule[1]["value"].get<double>() * 7.5 + schedule[2]["value"].get<double>() * 11;

  Json events = Json::array({{{"at", start}, {"kind", "pump"}, {"state", "off"}}});
  std::vector<Stretch> given;
  std::vector<long> long_at;
  long now = 0;
  while (now < days * minutes_a_day) {
    const std::string at = asked::minutes_before(start, static_cast<double>(-now));
    Json request{{"plan", plan}, {"record", asked::record_of(plan, at, events)}, {"now", at}, {"glucose", asked::glucose_of(plan, 6.5)}};
    if (now < bridged_for) request["expectedHours"] = 2;
    const Json answer = Json::parse(stopgap::ask("offPump", request.dump()));
    RC_ASSERT(!answer.contains("refused"));
    const Json rapid = screen(answer, "bridge"), slow = screen(answer, "longActing");
    if (!rapid.is_null() && !rapid["dose"].is_null()) {
      const Json& dose = rapid["dose"];
      events.push_back({{"at", at}, {"kind", "injection"}, {"units", dose["units"]}, {"parts", dose["parts"]}});
      given.push_back({minute_of(rapid["working"]["from"]), minute_of(rapid["working"]["to"]), dose["parts"]["basal"].get<double>()});
    }
    long next = now + 60;
    if (!slow.is_null()) {
      const double units = slow["dose"]["units"];
      events.push_back({{"at", at}, {"kind", "injection"}, {"insulin", "long"}, {"units", units}});
      const long works = now + onset * 15, lasts = parts == 1 ? minutes_a_day : slow["share"] == "half" ? 6 * 60 : 12 * 60;
      given.push_back({works, works + lasts, units});
      // The hold of one whole day; of two parts, no third before the first has worn off.
      const std::size_t back = static_cast<std::size_t>(parts);
      if (long_at.size() >= back) RC_ASSERT(now - long_at[long_at.size() - back] >= (parts == 1 ? minutes_a_day : 18 * 60));
      long_at.push_back(now);
    }
    // Asked again every hour, and at each alarm: what was given once is not named again.
    for (const Json& alarm : answer["alarms"]) {
      const long rings = minute_of(alarm);
      if (rings > now) next = std::min(next, rings);
    }
    now = next;
  }
  for (long from = 0; from + minutes_a_day <= days * minutes_a_day; from += 30) {
    double basal = 0;
    for (const Stretch& one : given) {
      const long overlap = std::min(one.to, from + minutes_a_day) - std::max(one.from, from);
      if (overlap > 0) basal += one.units * static_cast<double>(overlap) / static_cast<double>(one.to - one.from);
    }
    RC_ASSERT(basal >= 0.90 * a_day);
    RC_ASSERT(basal <= 1.15 * a_day);
  }
}

}  // namespace
