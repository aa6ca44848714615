// What the review finds in factor, ratio, basal, targets, times and limits: each finding with a plan that has it and a
// neighbour, one step of the field away, that has not. The example: 40 units a day, 72 kg, mmol/L; the demo child: mg/dL.
#include "review.hpp"

namespace stopgap::desk {
namespace {

Json of_factor(double value) { return with({{"/day/correctionFactor/0/value", value}}); }
Json of_ratio(double value) { return with({{"/day/carbohydrateRatio/0/value", value}}); }
// 1800 / 20 = 90 mg/dL a unit.
Json small_child(double factor) { return child({{"/dailyTotal", 20}, {"/day/correctionFactor", day({{"00:00", factor}})}}); }

// 100 / 40 = 2.5 mmol/L a unit. 40 % off: 1.5 and 3.5. 60 % off: 1.0 and 4.0.
TEST(ReviewYardsticks, TheFactorAgainstTheDailyTotal) {
  for (const double near : {1.5, 2.5, 3.5}) EXPECT_EQ(level("correction-factor-far-off", of_factor(near)), none) << near;
  for (const double far : {1.0, 1.49, 3.51, 4.0}) EXPECT_EQ(level("correction-factor-far-off", of_factor(far)), "confirm") << far;
  for (const double slip : {0.99, 4.01}) EXPECT_EQ(level("correction-factor-far-off", of_factor(slip)), "refuse") << slip;
  EXPECT_EQ(found("correction-factor-far-off", with({{"/day/correctionFactor/0/value", 4.25}})),
            "refuse /plan/day/correctionFactor/0/value percent=170 total=40 units value=4.25 mmol/L yardstick=2.5 mmol/L");
}

// 40 % off 90: 54 and 126. 60 % off: 36 and 144.
TEST(ReviewYardsticks, TheFactorInMgPerDl) {
  for (const double near : {54.0, 126.0}) EXPECT_EQ(level("correction-factor-far-off", small_child(near)), none) << near;
  for (const double far : {36.0, 53.9, 126.1, 144.0}) EXPECT_EQ(level("correction-factor-far-off", small_child(far)), "confirm") << far;
  for (const double slip : {35.9, 144.1}) EXPECT_EQ(level("correction-factor-far-off", small_child(slip)), "refuse") << slip;
}

TEST(ReviewYardsticks, EachEntryOfTheDayIsLookedAt) {
  EXPECT_EQ(found("correction-factor-far-off", with({{"/day/correctionFactor", day({{"00:00", 2.5}, {"06:00", 3.6}, {"22:00", 2.5}})}})),
            "confirm /plan/day/correctionFactor/1/value percent=144 total=40 units value=3.6 mmol/L yardstick=2.5 mmol/L");
}

// 500 / 40 = 12.5 g. 40 % off: 7.5 and 17.5. 60 % off: 5.0 and 20.0.
TEST(ReviewYardsticks, TheRatioAgainstTheDailyTotal) {
  for (const double near : {7.5, 17.5}) EXPECT_EQ(level("carbohydrate-ratio-far-off", of_ratio(near)), none) << near;
  for (const double far : {5.0, 7.4, 17.6, 20.0}) EXPECT_EQ(level("carbohydrate-ratio-far-off", of_ratio(far)), "confirm") << far;
  for (const double slip : {4.9, 20.1}) EXPECT_EQ(level("carbohydrate-ratio-far-off", of_ratio(slip)), "refuse") << slip;
  EXPECT_EQ(found("carbohydrate-ratio-far-off", with({{"/day/carbohydrateRatio/0/value", 25}})),
            "refuse /plan/day/carbohydrateRatio/0/value percent=200 total=40 units value=25 yardstick=12.5");
}

// 100 units a day, so that the rule gives 1.0 mmol/L a unit: 18.016 is exactly the other unit. From 0.6 to 1.4 times that is
// 10.81 to 25.22. In mg/dL at 20 units a day: 90 / 18.016 = 5.0 and from 3.0 to 6.99.
TEST(ReviewYardsticks, AFactorInTheOtherUnit) {
  const auto of = [](double factor) { return with({{"/dailyTotal", 100}, {"/day/correctionFactor/0/value", factor}}); };
  EXPECT_EQ(found("correction-factor-other-unit", of(18)), "refuse /plan/day/correctionFactor/0/value value=18 mmol/L");
  for (const double slip : {10.81, 25.22}) EXPECT_EQ(level("correction-factor-other-unit", of(slip)), "refuse") << slip;
  for (const double other : {1.0, 10.80, 25.23}) EXPECT_EQ(level("correction-factor-other-unit", of(other)), none) << other;
  for (const double slip : {3.0, 5.0, 6.9}) EXPECT_EQ(level("correction-factor-other-unit", small_child(slip)), "refuse") << slip;
  for (const double other : {2.9, 7.0, 90.0}) EXPECT_EQ(level("correction-factor-other-unit", small_child(other)), none) << other;
}

// 2.5 and 12.5 are the rule. Exchanged, 7.5 as a ratio and 1.5 as a factor are just within 40 % of it.
TEST(ReviewYardsticks, FactorAndRatioExchanged) {
  const auto of = [](double factor, double ratio) {
    return with({{"/day/correctionFactor/0/value", factor}, {"/day/carbohydrateRatio/0/value", ratio}});
  };
  EXPECT_EQ(found("factor-and-ratio-swapped", of(12, 2.5)), "refuse /plan/day/correctionFactor/0/value factor=12 ratio=2.5");
  EXPECT_EQ(level("factor-and-ratio-swapped", of(7.5, 1.5)), "refuse");
  EXPECT_EQ(level("factor-and-ratio-swapped", of(7.49, 1.5)), none);
  EXPECT_EQ(level("factor-and-ratio-swapped", of(7.5, 1.4)), none);
  EXPECT_EQ(level("factor-and-ratio-swapped", of(12, 12)), none);
  EXPECT_EQ(level("factor-and-ratio-swapped", of(2.5, 12)), none);
  // 90 mg/dL and 25 g are the rule at 20 units a day.
  Json swapped = small_child(25);
  swapped["day"]["carbohydrateRatio"] = day({{"00:00", 90}});
  EXPECT_EQ(found("factor-and-ratio-swapped", swapped), "refuse /plan/day/correctionFactor/0/value factor=25 ratio=90");
}

// Of 40 units: 10 are 25 %, 26 are 65 %. Most of it runs until 20:00, so 0.5 units an hour are 10.
TEST(ReviewYardsticks, BasalAsPartOfTheDailyTotal) {
  const auto of = [](const Json& basal) { return with({{"/day/basal", basal}}); };
  EXPECT_EQ(level("basal-share", of(day({{"00:00", 0.5}, {"20:00", 0}}))), none);
  EXPECT_EQ(found("basal-share", of(day({{"00:00", 0.5}, {"19:00", 0.49}, {"20:00", 0}}))),
            "confirm /plan/day/basal basal=9.99 units least=25 most=65 percent=25 total=40 units");
  EXPECT_EQ(level("basal-share", of(day({{"00:00", 1.3}, {"20:00", 0}}))), none);
  EXPECT_EQ(level("basal-share", of(day({{"00:00", 1.3}, {"20:00", 0.01}}))), "confirm");
  EXPECT_EQ(level("basal-share", of(day({{"00:00", 2}, {"19:00", 1.99}, {"20:00", 0}}))), "confirm");
  EXPECT_EQ(found("basal-share", of(day({{"00:00", 2}, {"20:00", 0}}))), "refuse /plan/day/basal basal=40 units least=25 most=65 percent=100 total=40 units");
}

// 72 kg: 0.3 units are 21.6, 1.5 units are 108.
TEST(ReviewYardsticks, TheDailyTotalForTheWeight) {
  for (const double usual : {21.6, 108.0}) EXPECT_EQ(level("daily-total-per-kg", with({{"/dailyTotal", usual}})), none) << usual;
  EXPECT_EQ(level("daily-total-per-kg", with({{"/dailyTotal", 21.5}})), "confirm");
  EXPECT_EQ(level("daily-total-per-kg", with({{"/dailyTotal", 108.1}})), "confirm");
  EXPECT_EQ(found("daily-total-per-kg", with({{"/dailyTotal", 144}})), "confirm /plan/dailyTotal least=0.3 most=1.5 perKg=2 total=144 units");
}

TEST(ReviewYardsticks, TheDailyTotalItself) {
  for (const double usual : {5.0, 150.0}) EXPECT_EQ(level("daily-total-unusual", with({{"/dailyTotal", usual}})), none) << usual;
  EXPECT_EQ(level("daily-total-unusual", with({{"/dailyTotal", 4.9}})), "confirm");
  EXPECT_EQ(found("daily-total-unusual", with({{"/dailyTotal", 150.1}})), "confirm /plan/dailyTotal least=5 units most=150 units total=150.1 units");
}

// Beside each number of the plan, in words of the core; nothing of it is ever put into the plan.
std::string beside(const std::string& id, const Json& plan) {
  std::vector<std::string> said;
  const Json answer = review(plan);
  for (const Json& one : answer.at("yardsticks")) {
    if (one.at("id") != id) continue;
    const std::string expected = one.at("expected").is_null() ? "-" : one.at("expected").get<std::string>(), source = one.at("source").is_null() ? "-" : one.at("source").get<std::string>();
    said.push_back(plain(one.at("path").get<std::string>() + " " + one.at("have").get<std::string>() + " | " + expected + " | " + one.at("from").get<std::string>() + " to " + one.at("to").get<std::string>() +
                         " | " + one.at("mark").get<std::string>() + " " + source));
  }
  return joined(said);
}

// The example: 100 / 40 = 2.5, 40 % either way 1.5 and 3.5; 500 / 40 = 12.5, 7.5 and 17.5.
TEST(ReviewYardsticks, StandBesideEachNumberWhetherOrNotSomethingIsFound) {
  const Json plan = with({{"/day/correctionFactor", day({{"00:00", 2.5}, {"06:00", 4.25}})}, {"/day/carbohydrateRatio", day({{"00:00", 10}})}});
  EXPECT_EQ(beside("correction-factor", plan),
            "/plan/day/correctionFactor/0/value 2.5 mmol/L | 2.5 mmol/L | 1.5 mmol/L to 3.5 mmol/L | RULE ratio-rules; "
            "/plan/day/correctionFactor/1/value 4.25 mmol/L | 2.5 mmol/L | 1.5 mmol/L to 3.5 mmol/L | RULE ratio-rules");
  EXPECT_EQ(beside("carbohydrate-ratio", plan), "/plan/day/carbohydrateRatio/0/value 10 | 12.5 | 7.5 to 17.5 | RULE -");
}

// 1800 / 20 = 90 mg/dL; 40 % either way 54 and 126. 500 / 20 = 25; 15 and 35.
TEST(ReviewYardsticks, StandBesideAChildsNumbersInMgPerDl) {
  EXPECT_EQ(beside("correction-factor", small_child(90)), "/plan/day/correctionFactor/0/value 90 mg/dL | 90 mg/dL | 54 mg/dL to 126 mg/dL | RULE -");
  EXPECT_EQ(beside("carbohydrate-ratio", child({{"/dailyTotal", 20}, {"/day/carbohydrateRatio", day({{"00:00", 24}})}})), "/plan/day/carbohydrateRatio/0/value 24 | 25 | 15 to 35 | RULE -");
}

// 10 units of basal in 40 are 25 %; 36 units for 72 kg are 0.5 a kilogram.
TEST(ReviewYardsticks, StandBesideBasalAndTheDailyTotal) {
  EXPECT_EQ(beside("basal-share", with({{"/day/basal", day({{"00:00", 0.5}, {"20:00", 0}})}})), "/plan/day/basal 25 | - | 25 to 65 | MEMORY -");
  EXPECT_EQ(beside("daily-total-per-kg", with({{"/dailyTotal", 36}})), "/plan/dailyTotal 0.5 | - | 0.3 to 1.5 | MEMORY -");
  EXPECT_EQ(beside("daily-total", with({{"/dailyTotal", 36}})), "/plan/dailyTotal 36 units | - | 5 units to 150 units | MEMORY -");
}

// A yardstick's ends are where the review begins to ask: at the end nothing, one step beyond it something.
TEST(ReviewYardsticks, EndWhereTheReviewBeginsToAsk) {
  EXPECT_EQ(beside("correction-factor", with({{"/dailyTotal", 50}, {"/day/correctionFactor/0/value", 2.8}})), "/plan/day/correctionFactor/0/value 2.8 mmol/L | 2 mmol/L | 1.2 mmol/L to 2.8 mmol/L | RULE ratio-rules");
  EXPECT_EQ(level("correction-factor-far-off", with({{"/dailyTotal", 50}, {"/day/correctionFactor/0/value", 2.8}})), none);
  EXPECT_EQ(level("correction-factor-far-off", with({{"/dailyTotal", 50}, {"/day/correctionFactor/0/value", 2.81}})), "confirm");
}

TEST(ReviewSchedules, TargetsIn4point4To8point3) {
  const auto of = [](double target) { return with({{"/day/target/0/value", target}}); };
  for (const double usual : {4.4, 8.3}) EXPECT_EQ(level("target-unusual", of(usual)), none) << usual;
  EXPECT_EQ(found("target-unusual", of(4.3)), "confirm /plan/day/target/0/value least=4.4 mmol/L most=8.3 mmol/L target=4.3 mmol/L");
  EXPECT_EQ(level("target-unusual", of(8.4)), "confirm");
}

TEST(ReviewSchedules, TargetsIn80To150) {
  const auto of = [](double target) { return child({{"/day/target/1/value", target}}); };
  for (const double usual : {80.0, 150.0}) EXPECT_EQ(level("target-unusual", of(usual)), none) << usual;
  EXPECT_EQ(found("target-unusual", of(79)), "confirm /plan/day/target/1/value least=80 mg/dL most=150 mg/dL target=79 mg/dL");
  EXPECT_EQ(level("target-unusual", of(151)), "confirm");
}

TEST(ReviewSchedules, TargetsBetweenLowAndTheMiddle) {
  const auto of = [](double target) { return with({{"/day/target/0/value", target}}); };
  EXPECT_EQ(found("target-at-low", of(3.9)), "refuse /plan/day/target/0/value low=3.9 mmol/L target=3.9 mmol/L");
  EXPECT_EQ(level("target-at-low", of(4.0)), none);
  EXPECT_EQ(found("target-at-middle", of(10)), "refuse /plan/day/target/0/value middle=10.0 mmol/L target=10.0 mmol/L");
  EXPECT_EQ(level("target-at-middle", of(9.9)), none);
  EXPECT_EQ(level("target-at-middle", of(14)), "refuse");
}

TEST(ReviewSchedules, NeighboursAtMostTwiceApart) {
  const auto of = [](const char* list, const Json& entries) { return with({{std::string{"/day/"} + list, entries}}); };
  EXPECT_EQ(level("schedule-jump", of("correctionFactor", day({{"00:00", 4}, {"06:00", 2}}))), none);
  EXPECT_EQ(found("schedule-jump", of("correctionFactor", day({{"00:00", 4.01}, {"06:00", 2}}))),
            "confirm /plan/day/correctionFactor/1/value after=06:00 before=00:00 times=2 valueAfter=2 mmol/L valueBefore=4.01 mmol/L");
  EXPECT_EQ(level("schedule-jump", of("carbohydrateRatio", day({{"00:00", 8}, {"06:00", 16}}))), none);
  EXPECT_EQ(found("schedule-jump", of("carbohydrateRatio", day({{"00:00", 8}, {"06:00", 16.1}}))),
            "confirm /plan/day/carbohydrateRatio/1/value after=06:00 before=00:00 times=2 valueAfter=16.1 valueBefore=8");
  EXPECT_EQ(level("schedule-jump", of("target", day({{"00:00", 10}, {"06:00", 5}}))), none);
  EXPECT_EQ(level("schedule-jump", of("target", day({{"00:00", 10.1}, {"06:00", 5}}))), "confirm");
  EXPECT_EQ(level("schedule-jump", of("basal", day({{"00:00", 0.5}, {"06:00", 1}}))), none);
  EXPECT_EQ(found("schedule-jump", of("basal", day({{"00:00", 0.01}, {"06:00", 0}}))),
            "confirm /plan/day/basal/1/value after=06:00 before=00:00 times=2 valueAfter=0 valueBefore=0.01");
}

// The last value and the first meet at midnight.
TEST(ReviewSchedules, MidnightJoinsTheEnds) {
  const auto of = [](double last) { return with({{"/day/correctionFactor", day({{"00:00", 1.5}, {"08:00", 3}, {"16:00", last}})}}); };
  EXPECT_EQ(level("schedule-jump", of(3)), none);
  EXPECT_EQ(found("schedule-jump", of(3.01)),
            "confirm /plan/day/correctionFactor/0/value after=00:00 before=16:00 times=2 valueAfter=1.5 mmol/L valueBefore=3.01 mmol/L");
}

TEST(ReviewSchedules, TheNightIsNotStrongerThanTheDay) {
  const auto of = [](const char* list, const Json& entries) { return with({{std::string{"/day/"} + list, entries}}); };
  EXPECT_EQ(found("night-stronger", of("correctionFactor", day({{"00:00", 2.49}, {"06:00", 2.5}}))),
            "confirm /plan/day/correctionFactor/0/value day=06:00 night=00:00 valueDay=2.5 mmol/L valueNight=2.49 mmol/L");
  EXPECT_EQ(level("night-stronger", of("correctionFactor", day({{"00:00", 2.5}, {"06:00", 2.5}}))), none);
  EXPECT_EQ(level("night-stronger", of("carbohydrateRatio", day({{"00:00", 12}, {"07:00", 12.1}, {"22:00", 13}}))), "confirm");
  EXPECT_EQ(level("night-stronger", of("carbohydrateRatio", day({{"00:00", 12.1}, {"07:00", 12.1}, {"22:00", 12}}))), "confirm");
  EXPECT_EQ(level("night-stronger", of("carbohydrateRatio", day({{"00:00", 12.1}, {"07:00", 12.1}, {"22:00", 12.1}}))), none);
  EXPECT_EQ(level("night-stronger", of("target", day({{"00:00", 5.9}, {"07:00", 6}}))), "confirm");
  // More basal towards the morning is common.
  EXPECT_EQ(level("night-stronger", of("basal", day({{"00:00", 1}, {"06:00", 0.7}}))), none);
}

// From 00:00 to 12:00: six hours before 06:00 and six after it, so it is of the night; a minute more and it is of the day.
TEST(ReviewSchedules, AnEntryIsOfTheNightWhereItLiesLonger) {
  EXPECT_EQ(level("night-stronger", with({{"/day/correctionFactor", day({{"00:00", 2.4}, {"12:00", 2.5}})}})), "confirm");
  EXPECT_EQ(level("night-stronger", with({{"/day/correctionFactor", day({{"00:00", 2.4}, {"12:01", 2.5}})}})), none);
}

TEST(ReviewTimes, ATriggerOfAtMost16point7) {
  const auto of = [](double trigger) { return with({{"/high/trigger", trigger}, {"/ketones/columns", {0, 10.0, trigger}}}); };
  EXPECT_EQ(level("trigger-late", of(16.7)), none);
  EXPECT_EQ(found("trigger-late", of(16.8)), "confirm /plan/high/trigger most=16.7 mmol/L trigger=16.8 mmol/L");
  const auto mg = [](int trigger) { return child({{"/high/trigger", trigger}, {"/ketones/columns", {0, 180, trigger}}}); };
  EXPECT_EQ(level("trigger-late", mg(300)), none);
  EXPECT_EQ(found("trigger-late", mg(301)), "confirm /plan/high/trigger most=300 mg/dL trigger=301 mg/dL");
}

TEST(ReviewTimes, LooksWithinTwoHours) {
  EXPECT_EQ(level("second-look-late", with({{"/high/secondLook", 120}})), none);
  EXPECT_EQ(found("second-look-late", with({{"/high/secondLook", 121}})), "confirm /plan/high/secondLook latest=120 minutes=121");
  EXPECT_EQ(level("look-after-dose-late", with({{"/high/looksAfterInjection", {120, 240}}})), none);
  EXPECT_EQ(found("look-after-dose-late", with({{"/high/looksAfterInjection", {121}}})),
            "confirm /plan/high/looksAfterInjection/0 latest=120 minutes=121");
}

// Action of 4 h leaves 0.3909 at 2 h (published table of F3), so 0.6091 has acted: 7.5 × 0.6091 = 4.57 mmol/L from 14.0 to 6.5.
TEST(ReviewTimes, TheExpectedFallIsWhatTheCurvePredicts) {
  const auto of = [](double fall) { return with({{"/rapid/actionHours", 4}, {"/high/expectedFall", fall}}); };
  EXPECT_EQ(level("expected-fall-too-large", of(4.5)), none);
  EXPECT_EQ(found("expected-fall-too-large", of(4.6)), "refuse /plan/high/expectedFall expected=4.6 mmol/L minutes=120 most=4.5 mmol/L");
}

// The highest target of the day leaves the smallest fall: (14.0 - 7.5) × 0.6091 = 3.96.
TEST(ReviewTimes, TheHighestTargetBoundsTheFall) {
  const auto of = [](double fall) {
    return with({{"/rapid/actionHours", 4}, {"/high/expectedFall", fall}, {"/day/target", day({{"00:00", 7.5}, {"07:00", 6}})}});
  };
  EXPECT_EQ(level("expected-fall-too-large", of(3.9)), none);
  EXPECT_EQ(level("expected-fall-too-large", of(4)), "refuse");
}

// At 1 h 0.7901 is left: 7.5 × 0.2099 = 1.57.  The child: (250 - 120) × 0.6091 = 79.2 mg/dL.
TEST(ReviewTimes, AnEarlierSecondLookSeesLess) {
  const auto of = [](double fall) { return with({{"/rapid/actionHours", 4}, {"/high/firstLook", 30}, {"/high/secondLook", 60}, {"/high/expectedFall", fall}}); };
  EXPECT_EQ(level("expected-fall-too-large", of(1.5)), none);
  EXPECT_EQ(level("expected-fall-too-large", of(1.6)), "refuse");
  EXPECT_EQ(level("expected-fall-too-large", child({{"/high/expectedFall", 79}})), none);
  EXPECT_EQ(found("expected-fall-too-large", child({{"/high/expectedFall", 80}})),
            "refuse /plan/high/expectedFall expected=80 mg/dL minutes=120 most=79 mg/dL");
}

TEST(ReviewTimes, HoursOfActionFrom3To6) {
  for (const double usual : {3.0, 6.0}) EXPECT_EQ(level("action-hours-unusual", with({{"/rapid/actionHours", usual}})), none) << usual;
  EXPECT_EQ(level("action-hours-unusual", with({{"/rapid/actionHours", 6.25}})), "confirm");
  EXPECT_EQ(found("action-hours-unusual", with({{"/rapid/actionHours", 2.75}})), "confirm /plan/rapid/actionHours hours=2.75 least=3 most=6");
}

TEST(ReviewTimes, Under4HoursTheCurveLeavesTooLittle) {
  EXPECT_EQ(level("action-hours-short", with({{"/rapid/actionHours", 4}})), none);
  EXPECT_EQ(found("action-hours-short", with({{"/rapid/actionHours", 3.75}})), "note /plan/rapid/actionHours hours=3.75 limit=4");
}

TEST(ReviewTimes, HoldsThatAreLongEnough) {
  EXPECT_EQ(level("lock-short", with({{"/limits/lockHours", 3}})), none);
  EXPECT_EQ(found("lock-short", with({{"/limits/lockHours", 2.75}})), "confirm /plan/limits/lockHours hours=2.75 least=3");
  EXPECT_EQ(level("repeat-short", with({{"/ketones/rows/2/repeatHours", 2}})), none);
  EXPECT_EQ(found("repeat-short", with({{"/ketones/rows/2/repeatHours", 1.75}})), "confirm /plan/ketones/rows/2/repeatHours hours=1.75 least=2");
}

TEST(ReviewTimes, LongActingFrom1To1point2TimesBasal) {
  const auto of = [](double factor) { return with({{"/offPump/longActingFactor", factor}}); };
  for (const double printed : {1.0, 1.2}) EXPECT_EQ(level("long-acting-factor-unusual", of(printed)), none) << printed;
  EXPECT_EQ(level("long-acting-factor-unusual", of(1.201)), "confirm");
  EXPECT_EQ(found("long-acting-factor-unusual", with({{"/offPump/longActingFactor", 0.9}})),
            "confirm /plan/offPump/longActingFactor factor=0.9 least=1 most=1.2");
}

// The syringe holds 50 units, the pen 60: the smaller one counts, whichever is at hand.
TEST(ReviewLimits, NoCapOverWhatADeviceHolds) {
  EXPECT_EQ(level("cap-over-device", with({{"/limits/singleDose", 50}})), none);
  EXPECT_EQ(found("cap-over-device", with({{"/limits/singleDose", 50.5}})), "refuse /plan/limits/singleDose cap=50.5 units capacity=50 units");
  EXPECT_EQ(level("cap-over-device", with({{"/limits/singleDose", 60}, {"/syringe", nullptr}})), none);
  const auto by_share = [](double total) { return with({{"/dailyTotal", total}, {"/limits/shareOfDaily", 0.5}, {"/limits/rollingShare", 0.5}}); };
  EXPECT_EQ(level("cap-over-device", by_share(100)), none);
  EXPECT_EQ(found("cap-over-device", by_share(100.1)), "refuse /plan/limits/shareOfDaily cap=50.05 units capacity=50 units");
}

TEST(ReviewLimits, LowBeginsAt3point9) {
  EXPECT_EQ(level("low-late", with({{"/low/below", 3.9}})), none);
  EXPECT_EQ(found("low-late", with({{"/low/below", 3.8}})), "confirm /plan/low/below least=3.9 mmol/L low=3.8 mmol/L");
  EXPECT_EQ(level("low-late", child({{"/low/below", 70}})), none);
  EXPECT_EQ(found("low-late", child({{"/low/below", 69}})), "confirm /plan/low/below least=70 mg/dL low=69 mg/dL");
}

TEST(ReviewLimits, CapsWithinAQuarterAndAHalfOfTheDay) {
  EXPECT_EQ(level("single-share-large", with({{"/limits/shareOfDaily", 0.25}})), none);
  EXPECT_EQ(found("single-share-large", with({{"/limits/shareOfDaily", 0.251}})), "confirm /plan/limits/shareOfDaily most=25 percent=25");
  EXPECT_EQ(level("rolling-share-large", with({{"/limits/rollingShare", 0.5}})), none);
  EXPECT_EQ(found("rolling-share-large", with({{"/limits/rollingShare", 0.51}})), "confirm /plan/limits/rollingShare most=50 percent=51");
}

Json insulins(const Json& rapid, const Json& long_acting) { return with({{"/rapid/name", rapid}, {"/longActing/name", long_acting}}); }

TEST(ReviewInsulins, EachInItsOwnPlace) {
  for (const char* rapid : {"aspart", "Lispro", "insulin glulisine", "Insulin aspart 100 units/mL", "fast-acting aspart"})
    EXPECT_EQ(level("insulin-of-the-other-kind", insulins(rapid, "glargine")), none) << rapid;
  for (const char* slow : {"glargine", "Degludec", "insulin detemir"}) EXPECT_EQ(level("insulin-of-the-other-kind", insulins("aspart", slow)), none) << slow;
  EXPECT_EQ(found("insulin-of-the-other-kind", insulins("Insulin glargine", "degludec")), "refuse /plan/rapid/name name=Insulin glargine slot=rapid");
  EXPECT_EQ(found("insulin-of-the-other-kind", insulins("lispro", "LISPRO")), "refuse /plan/longActing/name name=LISPRO slot=long");
  for (const char* slow : {"degludec", "detemir", "isophane", "NPH", "icodec", "aspart protamine", "biphasic aspart 30", "degludec/aspart"})
    EXPECT_EQ(level("insulin-of-the-other-kind", insulins(slow, "glargine")), "refuse") << slow;
  for (const char* fast : {"aspart", "glulisine", "soluble insulin", "regular", "degludec/aspart"})
    EXPECT_EQ(level("insulin-of-the-other-kind", insulins("aspart", fast)), "refuse") << fast;
}

// One letter away from a generic name, and no generic name at all.
TEST(ReviewInsulins, NamesThatAreKnown) {
  EXPECT_EQ(level("insulin-name-unknown", insulins("aspart", "glargine")), none);
  EXPECT_EQ(found("insulin-name-unknown", insulins("aspar", "glargine")), "confirm /plan/rapid/name name=aspar slot=rapid");
  EXPECT_EQ(found("insulin-name-unknown", insulins("aspart", "glargin")), "confirm /plan/longActing/name name=glargin slot=long");
  for (const char* other : {"the clear one", "soluble", "insulin", "100"}) EXPECT_EQ(level("insulin-name-unknown", insulins(other, "glargine")), "confirm") << other;
  EXPECT_EQ(level("insulin-name-unknown", insulins("glargine", "glargine")), none);  // refused already
  EXPECT_EQ(level("insulin-name-unknown", with({{"/longActing", nullptr}, {"/rapid/name", "aspart"}})), none);
}

}  // namespace
}  // namespace stopgap::desk
