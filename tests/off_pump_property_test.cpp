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
      Json injection{{"at", at}, {"kind", "injection"}, {"units", dose["units"]}, {"parts", dose["parts"]}};
      if (!rapid["basalHours"].is_null()) injection["basalHours"] = rapid["basalHours"];
      events.push_back(injection);
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

// A random night: injections with and without their hours, corrections above and below the trigger, long-acting doses, mistakes, orders.
// Whatever it holds, the correction shown is one that gate and rolling cap let through, and basal is never given for hours that have it.
RC_GTEST_PROP(OffPumpProperty, ACorrectionIsNeverMoreThanGateAndCapAllow, ()) {
  const Json plan = asked::example_with({{"/syringe/step", *rc::gen::element(0.5, 1.0, 2.0)}, {"/rounding", *rc::gen::element("down", "nearest")},
                                         {"/day/basal", Json::array({{{"from", "00:00"}, {"value", *rc::gen::inRange(5, 200) / 100.0}}})}});
  const long now = 12 * 60;
  Json events = Json::array({{{"at", start}, {"kind", "pump"}, {"state", "off"}}});
  const auto at = [](long minute) { return asked::minutes_before(start, static_cast<double>(-minute)); };
  double rescue_acting = 0;
  bool locked = false, called = false;
  const int count = *rc::gen::inRange(0, 6);
  for (int i = 0; i < count; ++i) {
    const long minute = *rc::gen::inRange(0, static_cast<int>(now));
    const int kind = *rc::gen::inRange(0, 4);
    if (kind == 3) {
      events.push_back({{"at", at(minute)}, {"kind", "injection"}, {"insulin", "long"}, {"units", *rc::gen::inRange(1, 25)}});
      continue;
    }
    const double rescue = kind == 0 ? 0 : *rc::gen::inRange(1, 8), basal = kind == 1 ? 0 : *rc::gen::inRange(1, 5);
    const double glucose = *rc::gen::inRange(60, 250) / 10.0;
    Json injection{{"at", at(minute)}, {"kind", "injection"}, {"units", rescue + basal}, {"parts", {{"rescue", rescue}, {"meal", 0}, {"basal", basal}}},
                   {"glucose", asked::glucose_of(plan, glucose)}};
    if (basal > 0 && *rc::gen::arbitrary<bool>()) {
      injection["basalHours"] = *rc::gen::inRange(1, 5);
    }
    events.push_back(injection);
    if (rescue > 0 && now - minute <= 270) rescue_acting += rescue;                                        // 4.5 h of action
    if (rescue > 0 && now - minute < 240 && (basal == 0 || glucose >= 14.0)) locked = true;                // the lock of 4 h
  }
  Json asked_for = {{"plan", plan}, {"now", at(now)}, {"glucose", asked::glucose_of(plan, *rc::gen::inRange(40, 250) / 10.0)}};
  events.push_back({{"at", at(now)}, {"kind", "ketones"}, {"blood", *rc::gen::element(0.1, 0.3, 0.8)}});
  asked_for["record"] = asked::record_of(plan, at(now), events);
  if (*rc::gen::arbitrary<bool>()) asked_for["expectedHours"] = *rc::gen::inRange(0, 20);
  if (*rc::gen::arbitrary<bool>()) asked_for["carbs"] = *rc::gen::inRange(1, 80);
  if (*rc::gen::arbitrary<bool>()) asked_for["noLongActing"] = true;
  const Json answer = Json::parse(stopgap::ask("offPump", asked_for.dump()));
  RC_ASSERT(!answer.contains("refused"));
  called = answer["call"] != "none";
  const Json rapid = screen(answer, "bridge");
  if (!rapid.is_null() && !rapid["dose"].is_null()) {
    const Json& dose = rapid["dose"];
    const double rescue = dose["parts"]["rescue"], meal = dose["parts"]["meal"], basal = dose["parts"]["basal"];
    RC_ASSERT(std::abs(rescue + meal + basal - dose["units"].get<double>()) < 1e-9);
    if (rescue > 0) {
      RC_ASSERT(!locked);
      RC_ASSERT(rescue_acting + rescue <= 12.0 + 1e-9);   // 0.30 x 40
      RC_ASSERT(rescue <= 8.0 + 1e-9);                    // 0.20 x 40, and 10 a dose
    }
  }
  // Somebody without basal has an injection to give, something that comes first, an alarm, or a call.
  const bool alarmed = !answer["alarms"].empty(), shown = !answer["screens"].empty(), first_comes = !answer["first"].is_null() || !answer["eat"].is_null();
  RC_ASSERT(alarmed || shown || first_comes);
  if (!answer["missed"].is_null() && answer["missed"]["tooLong"].get<bool>()) RC_ASSERT(called);
}

// Somebody asks every half hour and at each alarm, and injects what is shown: no two bridges stand for the same hour, and never more than
// two hours pass without basal, a call or something that comes first.
RC_GTEST_PROP(OffPumpProperty, NoHourIsGivenTwiceAndNoneIsLeftOut, ()) {
  const Json plan = asked::example_with({{"/syringe/step", *rc::gen::element(0.5, 1.0)}, {"/offPump/bridgeHours", *rc::gen::inRange(3, 5)},
                                         {"/day/basal", Json::array({{{"from", "00:00"}, {"value", *rc::gen::inRange(5, 200) / 100.0}},
                                                                     {{"from", "04:00"}, {"value", *rc::gen::inRange(5, 200) / 100.0}}})}});
  const long expected = *rc::gen::inRange(4, 60) * 30;
  Json events = Json::array({{{"at", start}, {"kind", "pump"}, {"state", "off"}}});
  long covered_until = 0, now = 0;
  while (now < expected && now < 20 * 60) {
    const std::string at = asked::minutes_before(start, static_cast<double>(-now));
    Json asked_for{{"plan", plan}, {"now", at}, {"glucose", asked::glucose_of(plan, 6.5)}, {"noLongActing", true}};
    asked_for["record"] = asked::record_of(plan, at, events);
    asked_for["expectedHours"] = static_cast<double>((expected - now + 14) / 15 * 15) / 60.0;
    const Json answer = Json::parse(stopgap::ask("offPump", asked_for.dump()));
    RC_ASSERT(!answer.contains("refused"));
    const Json rapid = screen(answer, "bridge");
    if (!rapid.is_null() && !rapid["dose"].is_null()) {
      const Json& dose = rapid["dose"];
      Json injection{{"at", at}, {"kind", "injection"}, {"units", dose["units"]}, {"parts", dose["parts"]}, {"glucose", asked::glucose_of(plan, 6.5)}};
      if (!rapid["basalHours"].is_null()) injection["basalHours"] = rapid["basalHours"];
      events.push_back(injection);
      if (!rapid["singleStep"].get<bool>()) {
        RC_ASSERT(minute_of(rapid["working"]["from"]) >= covered_until);
        covered_until = minute_of(rapid["working"]["to"]);
      } else {
        RC_ASSERT(now >= covered_until);
      }
    } else if (now - covered_until > 120) {
      RC_ASSERT(answer["call"] != "none");
    }
    long next = now + 30;
    for (const Json& alarm : answer["alarms"])
      if (const long rings = minute_of(alarm); rings > now) next = std::min(next, rings);
    now = next;
  }
}

}  // namespace
