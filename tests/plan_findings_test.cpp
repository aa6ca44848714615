// A plan in use with a number that could not be agreed today: it keeps dosing, it says so, and where that number bears on what is
// shown the team is called. Which numbers bear on what is worked out by hand beside each line.
#include "review.hpp"

namespace stopgap::desk {
namespace {

const std::string small_hours = "2026-11-25T03:10:00+00:00";

Json no_record(const Json& plan) { return {{"format", "stopgap.record"}, {"version", 1}, {"planId", plan.at("id")}, {"events", Json::array()}}; }

std::string advice_text(const Json& plan, const Json& glucose, const Json& ketones, const Json& more = Json::object()) {
  Json situation{{"now", small_hours}, {"glucose", asked::glucose_of(plan, glucose)}, {"ketones", asked::ketones_of(ketones)},
                 {"signs", Json::array()}, {"seen", Json::array()}};
  situation.update(more);
  return ask("advise", Json{{"plan", plan}, {"record", no_record(plan)}, {"situation", situation}}.dump());
}
Json advice(const Json& plan, const Json& glucose, const Json& ketones, const Json& more = Json::object()) {
  return Json::parse(advice_text(plan, glucose, ketones, more));
}
Json asked_of(const std::string& call, const Json& plan, const Json& record) {
  return Json::parse(ask(call, Json{{"plan", plan}, {"record", record}, {"now", small_hours}}.dump()));
}

bool cautions(const Json& answer) {
  for (const Json& one : answer.at("cautions"))
    if (one == "planFinding") return true;
  return false;
}
std::string findings(const Json& answer) {
  std::vector<std::string> ids;
  for (const Json& one : answer.at("planFindings")) ids.push_back(one.at("id").get<std::string>() + " " + one.at("path").get<std::string>());
  return joined(ids);
}
std::string dose(const Json& answer) { return answer.at("dose").is_null() ? none : plain(answer.at("dose").at("text")); }
bool calls_in_a_step(const Json& answer) {
  for (const Json& step : answer.at("steps"))
    if (step.at("id") == "callTeam") return true;
  return false;
}

// The test adult in mg/dL: 288 mg/dL are 16.0 mmol/L, and the factor that was 2.5 mmol/L is 45 mg/dL.
Json adult_in_mg(double factor) {
  return with({{"/glucoseUnit", "mg/dL"}, {"/day/correctionFactor", day({{"00:00", factor}})}, {"/day/target", day({{"00:00", 126}})},
               {"/high/trigger", 252}, {"/high/middle", 180}, {"/high/expectedFall", 36}, {"/ketones/columns", {0, 180, 252}},
               {"/ketones/carbohydrateOnlyBelow", 101}, {"/limits/dosingCeiling", 360}, {"/low/below", 70}, {"/low/veryLow", 54}}, "adult");
}

// (288 − 126) / 45 = 3.6 against 10 % of 46 = 4.6: 4 units. With the number of the other unit, 162 / 2.5 = 64.8, cut to 20 % of
// 46 = 9.2: 9 units.
TEST(PlanFindings, AFactorInTheOtherUnitIsSaidAndTheTeamCalled) {
  const Json right = advice(adult_in_mg(45), 288, 0.8), wrong = advice(adult_in_mg(2.5), 288, 0.8);
  EXPECT_EQ(dose(right), "4 units");
  EXPECT_EQ(right.at("call"), "none");
  EXPECT_FALSE(cautions(right));
  EXPECT_EQ(right.at("planFindings"), Json::array());
  EXPECT_EQ(dose(wrong), "9 units");
  EXPECT_EQ(wrong.at("call"), "team");
  EXPECT_TRUE(calls_in_a_step(wrong));
  EXPECT_TRUE(cautions(wrong));
  EXPECT_EQ(findings(wrong), "correction-factor-far-off /plan/day/correctionFactor/0/value; correction-factor-other-unit /plan/day/correctionFactor/0/value");
  EXPECT_EQ(plain(wrong.at("planFindings").at(1).at("slots").dump()), R"({"value":"2.5 mg/dL"})");
}

// 100 / 40 = 2.5 mmol/L a unit. 0.99 is over 60 % off it: (14.0 − 6.5) / 0.99 = 7.57, 7 units, which no cap cuts.
Json factor_far_off(double factor = 0.99) { return with({{"/day/correctionFactor", day({{"00:00", factor}})}}); }

TEST(PlanFindings, TheCallIsRaisedToTheTeam) {
  const Json answer = advice(factor_far_off(), 14.0, 0.8);
  EXPECT_EQ(dose(answer), "7 units");
  EXPECT_EQ(answer.at("dose").at("working").at("cut"), nullptr);
  EXPECT_EQ(answer.at("call"), "team");
  EXPECT_TRUE(calls_in_a_step(answer));
  // One step of the field nearer it is confirmed at the desk, and no longer said here.
  const Json near = advice(factor_far_off(1.0), 14.0, 0.8);
  EXPECT_EQ(dose(near), "7 units");
  EXPECT_EQ(near.at("call"), "none");
  EXPECT_FALSE(cautions(near));
}

// (14.0 − 6.5) / 30 = 0.25: under one step, so no dose is shown, and that is the factor's doing.
TEST(PlanFindings, ADoseThatTheNumberHidesCallsToo) {
  const Json answer = advice(factor_far_off(30), 14.0, 0.2, {{"pumpOffersNothing", true}});
  EXPECT_EQ(answer.at("decidedBy"), "INJ");
  EXPECT_EQ(dose(answer), none);
  EXPECT_EQ(answer.at("call"), "team");
}

TEST(PlanFindings, EveryAdviceSaysItAndACallIsNeverLowered) {
  const Json quiet = advice(factor_far_off(), 8.0, 0.2);
  EXPECT_TRUE(cautions(quiet));
  EXPECT_EQ(quiet.at("call"), "none");  // no number is shown
  const Json grave = advice(factor_far_off(), 22.0, 3.0);
  EXPECT_TRUE(cautions(grave));
  EXPECT_EQ(grave.at("call"), "emergency");
  EXPECT_FALSE(calls_in_a_step(grave));
}

// Grams of a low are worked out with the ratio: 500 / 40 = 12.5 g, 4.9 is over 60 % off.
TEST(PlanFindings, TheRatioBearsOnGrams) {
  const Json plan = with({{"/day/carbohydrateRatio", day({{"00:00", 4.9}})}});
  EXPECT_EQ(advice(plan, 3.0, 0.2).at("call"), "team");
  EXPECT_EQ(advice(plan, 14.0, 0.8).at("call"), "none");
  EXPECT_TRUE(cautions(advice(plan, 14.0, 0.8)));
  EXPECT_EQ(advice(with({{"/day/carbohydrateRatio", day({{"00:00", 5.0}})}}), 3.0, 0.2).at("call"), "none");
}

TEST(PlanFindings, WhatBearsOnNoNumberIsSaidAndCallsNobody) {
  const Json answer = advice(with({{"/agreement/houseRules", Json::array()}}), 14.0, 0.8);
  EXPECT_TRUE(cautions(answer));
  EXPECT_EQ(answer.at("call"), "none");
}

TEST(PlanFindings, ADraftIsInNobodysUse) {
  Json draft = factor_far_off();
  draft["agreement"]["status"] = "draft";
  const Json answer = advice(draft, 14.0, 0.8);
  EXPECT_EQ(answer.at("planFindings"), Json::array());
  EXPECT_FALSE(cautions(answer));
}

// The reasons are those of the advice as it is shown: here the call would be the team's with and without the mistake.
TEST(PlanFindings, TheReasonsAreThoseOfTheWholeAdvice) {
  const Json told = advice(factor_far_off(), 14.0, 0.8).at("because"), untold = advice(factor_far_off(1.0), 14.0, 0.8).at("because");
  EXPECT_EQ(told, untold);
}

// 10 % of 40 units a day as basal is far under; 40 units, 100 %, are refused: 40 / 24 = 1.67 an hour.
TEST(PlanFindings, OffThePumpTheBasalBears) {
  const auto off = [](const Json& plan) {
    Json record = no_record(plan);
    record["events"].push_back({{"id", "e-1"}, {"at", "2026-11-25T02:40:00+00:00"}, {"kind", "pump"}, {"state", "off"}});
    record["events"].push_back({{"id", "e-2"}, {"at", "2026-11-25T02:45:00+00:00"}, {"kind", "call"}, {"to", "team"}, {"answered", true}});
    Json request{{"plan", plan}, {"record", record}, {"now", small_hours}, {"expectedHours", 6},
                 {"glucose", {{"value", 9.0}, {"unit", "mmol/L"}, {"from", "finger"}}}};
    return Json::parse(ask("offPump", request.dump()));
  };
  const Json refused = off(with({{"/day/basal", day({{"00:00", 1.67}})}})), agreed = off(with({}));
  EXPECT_EQ(findings(refused), "basal-share /plan/day/basal");
  EXPECT_EQ(refused.at("screens").size(), 1U);
  EXPECT_EQ(refused.at("call"), "team");
  EXPECT_EQ(agreed.at("planFindings"), Json::array());
  EXPECT_EQ(agreed.at("screens").size(), 1U);
  EXPECT_EQ(agreed.at("call"), "none");
}

TEST(PlanFindings, HomeIsToldByDay) {
  EXPECT_EQ(findings(asked_of("holds", factor_far_off(), no_record(factor_far_off()))), "correction-factor-far-off /plan/day/correctionFactor/0/value");
  EXPECT_EQ(findings(asked_of("holds", with({}), no_record(with({})))), none);
}

// What is kept of a plan is that plan's: the same question has the same bytes, whatever was asked in between.
TEST(PlanFindings, WhatWasAskedBeforeChangesNoAnswer) {
  std::vector<std::string> first;
  const std::vector<double> factors{0.99, 1.0, 2.5, 0.9, 30, 0.8, 0.7};
  for (const double factor : factors) first.push_back(advice_text(factor_far_off(factor), 14.0, 0.8));
  for (std::size_t step : {3U, 5U, 1U, 2U})
    for (std::size_t i = 0; i < factors.size(); ++i) {
      const std::size_t at = i * step % factors.size();
      EXPECT_EQ(advice_text(factor_far_off(factors[at]), 14.0, 0.8), first[at]) << factors[at];
    }
  // Two plans of one id and revision that differ in one number.
  EXPECT_NE(first[0], first[1]);
}

}  // namespace
}  // namespace stopgap::desk
