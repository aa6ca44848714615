// What comes before an injection off the pump, and how much of it waits. With the plan the contract prints: target 6.5, factor 2.5,
// ratio 12, low 3.9, carbohydrate alone below 5.6, trigger 14.0; 22:00 to 02:00 is 3.2 of basal, down 3.
#include <gtest/gtest.h>

#include "off_pump.hpp"

namespace {

using namespace stopgap::off_pump_asked;
namespace asked = stopgap::asked;
const Json& plan = asked::plan();

const Json night = Json::array({off("25T22:00"), ketones("25T22:00", 0.3)});
Json asks(double glucose) { return {{"expectedHours", 6}, {"glucose", glucose}}; }
Json answer_to(const Json& events, double glucose, const Json& of = plan) { return off_pump(of, events, "25T22:00", asks(glucose)); }
std::string alone(const Json& answer) { return first(answer) + " " + std::to_string(answer["screens"].size()); }
// Basal passes, the correction does not.
void expect_basal_alone(const Json& answer, const std::string& outcome) {
  EXPECT_EQ(first(answer), outcome);
  EXPECT_EQ(answer["first"]["waits"], "correction");
  EXPECT_EQ(dose(answer, "bridge"), "3 units");
  EXPECT_EQ(screen(answer, "bridge")["dose"]["parts"]["rescue"], 0);
  EXPECT_EQ(screen(answer, "bridge")["correctionWaits"]["why"], "first");
}

TEST(OffPumpFirst, NothingIsInjectedBesideAFallOrTooMuch) {
  // 4 units half an hour ago take 6.0 far below 3.9.
  EXPECT_EQ(alone(answer_to(with(night, {rapid("25T21:30", 4, 0, 0)}), 6.0)), "eatNow 0");
  const Json mistake = event("25T21:50", "mistake", {{"what", "tooManyUnits"}, {"insulin", "rapid"}, {"units", 5}});
  EXPECT_EQ(alone(answer_to(with(night, {mistake}), 15.0)), "tooMuch 0");
}

TEST(OffPumpFirst, ADoseOfTheWayDownIsGivenByItself) {
  const Json pregnant = asked::example_with({{"/person/pregnant", true}, {"/ketones/anyGlucose", {{"shareOfDaily", 0.1}}}});
  EXPECT_EQ(alone(answer_to(Json::array({off("25T22:00"), ketones("25T22:00", 1.6)}), 12.0, pregnant)), "injectAtAnyGlucose 0");
  // Two hours after 4 units ketones fell from 1.6 to 1.0: 20 g are 1.67, and 00:00 to 04:00 is 3.0 of basal: 4.67 in one injection.
  const Json falling = Json::array({off("25T22:00"), event("25T22:00", "injection", {{"units", 4}, {"glucose", 16.0}, {"ketones", 1.6}}), ketones("26T00:00", 1.0)});
  const Json down = off_pump(plan, falling, "26T00:00", asks(10.0));
  EXPECT_EQ(alone(down), "comingDown 1");
  EXPECT_EQ(screen(down, "bridge")["working"]["meal"], "1.67");
  EXPECT_EQ(screen(down, "bridge")["dose"]["parts"], Json({{"rescue", 0}, {"meal", 1.66}, {"basal", 2.34}}));
}

TEST(OffPumpFirst, BasalPassesWhereOnlyACallOrFoodComesFirst) {
  expect_basal_alone(answer_to(with(night, {event("25T21:00", "sign", {{"what", {"bellyPain"}}})}), 12.0), "callTeam");
  expect_basal_alone(answer_to(Json::array({off("25T22:00"), ketones("25T22:00", 0.8)}), 9.0), "eat");
}

// House: signs noted up to 4 h ago hold.
TEST(OffPumpFirst, ASignHoldsForFourHours) {
  const auto after = [](const std::string& noted) { return first(answer_to(with(night, {event(noted, "sign", {{"what", {"bellyPain"}}})}), 12.0)); };
  EXPECT_EQ(after("25T18:00"), "callTeam");
  EXPECT_EQ(after("25T17:59"), "nothing");
}

TEST(OffPumpFirst, ADoseShownAndTheAnswerToIt) {
  const Json shown = event("25T21:50", "doseShown", {{"units", 3}, {"insulin", "rapid"}, {"parts", {{"rescue", 0}, {"meal", 0}, {"basal", 3}}}});
  EXPECT_EQ(first(answer_to(with(night, {shown}), 8.0)), "didYouInject");
  // A low waits for no answer.
  EXPECT_EQ(first(answer_to(with(night, {shown}), 3.5)), "treatLow");
  // A bridge written down by hand answers it, though it does not name it.
  EXPECT_EQ(first(answer_to(with(night, {shown, rapid("25T21:55", 0, 0, 3)}), 8.0)), "nothing");
}

TEST(OffPumpFirst, CouldGoLowIsSaid) {
  EXPECT_TRUE(answer_to(night, 5.5)["couldGoLow"].get<bool>());
  EXPECT_FALSE(answer_to(night, 5.6)["couldGoLow"].get<bool>());
  // The pump gave 3 units an hour ago through a set that leaked. If they went in, 3 x 0.834 still act: 10.0 falls by 6.25.
  const Json leaked = Json::array({event("25T21:00", "pumpDose", {{"units", 3}, {"purpose", "correction"}, {"glucose", 15.0}}), event("25T21:30", "seen", {{"what", {"leak"}}}), off("25T22:00"), ketones("25T22:00", 0.3)});
  EXPECT_EQ(first(answer_to(leaked, 10.0)), "nothing");
  EXPECT_TRUE(answer_to(leaked, 10.0)["couldGoLow"].get<bool>());
  EXPECT_FALSE(answer_to(night, 10.0)["couldGoLow"].get<bool>());
}

}  // namespace
