// The types of quantity: what may be written and, beside it, what may not; exact conversion; time and days.
#include <functional>
#include <gtest/gtest.h>

#include "figures/conversion.hpp"
#include "units/body.hpp"
#include "units/fraction.hpp"
#include "units/glucose.hpp"
#include "units/insulin.hpp"
#include "units/ketones.hpp"
#include "units/time.hpp"

namespace stopgap {
namespace {

// The survey of operators. A line here is a sentence: a difference of two glucose values divided by a correction factor is
// insulin; a glucose value divided by one is not, because the target was not taken off.
template <class Operation, class Left, class Right>
concept allowed = requires(Left left, Right right) { Operation{}(left, right); };
template <class Operation, class Left, class Right, class Result>
concept gives = requires(Left left, Right right) { { Operation{}(left, right) } -> std::same_as<Result>; };

static_assert(gives<std::minus<>, Glucose, Glucose, GlucoseFall>);
static_assert(gives<std::minus<>, Glucose, GlucoseFall, Glucose>);
static_assert(gives<std::plus<>, Glucose, GlucoseFall, Glucose>);
static_assert(!allowed<std::plus<>, Glucose, Glucose>);
static_assert(!allowed<std::divides<>, Glucose, CorrectionFactor>);  // the target was not taken off
static_assert(gives<std::divides<>, GlucoseFall, CorrectionFactor, Insulin>);
static_assert(!allowed<std::multiplies<>, Glucose, Glucose>);
static_assert(!allowed<std::multiplies<>, Insulin, CorrectionFactor>);
static_assert(!allowed<std::less<>, Glucose, GlucoseFall>);
static_assert(!allowed<std::less<>, Glucose, int>);
static_assert(!allowed<std::equal_to<>, Glucose, GlucoseFall>);
static_assert(!std::is_convertible_v<int, Glucose> && !std::is_constructible_v<Glucose, int>);
static_assert(!std::is_constructible_v<Glucose, double> && !std::is_constructible_v<Glucose, GlucoseFall>);
static_assert(!std::is_constructible_v<CorrectionFactor, double> && !std::is_constructible_v<CorrectionFactor, GlucoseFall>);

static_assert(gives<std::minus<>, Ketones, Ketones, KetoneFall>);
static_assert(!allowed<std::plus<>, Ketones, Ketones>);
static_assert(!allowed<std::less<>, Ketones, StripWord>);  // a strip word never becomes a number
static_assert(!allowed<std::equal_to<>, Ketones, StripWord>);
static_assert(!allowed<std::less<>, StripWord, int> && !std::is_convertible_v<StripWord, int>);
static_assert(!allowed<std::minus<>, Glucose, Ketones>);
static_assert(!allowed<std::less<>, Glucose, Ketones>);  // both in mmol/L, and still not the same thing
static_assert(!allowed<std::less<>, GlucoseFall, KetoneFall>);
static_assert(!std::is_constructible_v<Ketones, Glucose> && !std::is_constructible_v<Ketones, int>);

static_assert(gives<std::plus<>, Insulin, Insulin, Insulin>);
static_assert(gives<std::minus<>, Insulin, Insulin, Insulin>);
static_assert(gives<std::multiplies<>, Share, Insulin, Insulin>);
static_assert(!allowed<std::multiplies<>, Insulin, Insulin>);
static_assert(!allowed<std::divides<>, Insulin, Insulin>);
static_assert(!allowed<std::plus<>, Insulin, int> && !allowed<std::multiplies<>, Insulin, int>);
static_assert(!allowed<std::plus<>, Insulin, BasalRate> && !allowed<std::less<>, Insulin, BasalRate>);  // a rate is not a dose
static_assert(!allowed<std::plus<>, Insulin, Carbohydrate> && !allowed<std::less<>, Insulin, Glucose>);
static_assert(!std::is_constructible_v<Insulin, double> && !std::is_constructible_v<Insulin, int>);
static_assert(!std::is_constructible_v<Share, double> && !allowed<std::plus<>, Share, Share>);

static_assert(gives<std::divides<>, Carbohydrate, CarbohydrateRatio, Insulin>);
static_assert(gives<std::multiplies<>, Insulin, CarbohydrateRatio, Carbohydrate>);
static_assert(gives<std::plus<>, Carbohydrate, Carbohydrate, Carbohydrate>);
static_assert(!allowed<std::divides<>, Carbohydrate, CorrectionFactor>);  // factor and ratio swapped
static_assert(!allowed<std::divides<>, GlucoseFall, CarbohydrateRatio>);
static_assert(!allowed<std::multiplies<>, Carbohydrate, CarbohydrateRatio>);
static_assert(gives<std::multiplies<>, InsulinPerKg, Weight, Insulin>);
static_assert(!allowed<std::multiplies<>, InsulinPerKg, Insulin> && !allowed<std::multiplies<>, Share, Weight>);
static_assert(!allowed<std::plus<>, Weight, Carbohydrate>);

static_assert(gives<std::minus<>, Instant, Instant, Duration>);
static_assert(gives<std::plus<>, Instant, Duration, Instant>);
static_assert(gives<std::minus<>, Instant, Duration, Instant>);
static_assert(gives<std::plus<>, Duration, Duration, Duration>);
static_assert(!allowed<std::plus<>, Instant, Instant>);
static_assert(!allowed<std::less<>, Instant, Duration>);
static_assert(!allowed<std::less<>, Instant, TimeOfDay>);  // a hold compares instants, never clock times
static_assert(!allowed<std::minus<>, TimeOfDay, TimeOfDay>);
static_assert(!allowed<std::less<>, Moment, Moment>);  // which of the two is meant, the instant or the local time?
static_assert(!allowed<std::less<>, Day, Instant> && !allowed<std::minus<>, Day, Day>);
static_assert(!std::is_constructible_v<Instant, int> && !std::is_constructible_v<Duration, int>);

Fraction of(std::int64_t a, std::int64_t b) { return Fraction::of(a, b); }

TEST(Fraction, StaysInLowestTermsWithAPositiveDenominator) {
  EXPECT_EQ(of(6, -4).numerator(), -3);
  EXPECT_EQ(of(6, -4).denominator(), 2);
  EXPECT_EQ(of(0, -7).numerator(), 0);
  EXPECT_EQ(of(0, -7).denominator(), 1);
}

TEST(Fraction, AddsTenthsExactly) {
  // 0.1 + 0.2 is 0.3 here, which it is not in binary floating point.
  EXPECT_EQ(of(1, 10) + of(2, 10), of(3, 10));
  EXPECT_EQ(of(1, 3) - of(1, 2), of(-1, 6));
  EXPECT_EQ(of(2, 3) * of(-9, 4), of(-3, 2));
  EXPECT_EQ(of(2, 3) / of(-4, 9), of(-3, 2));
}

TEST(Fraction, ComparesAcrossDenominatorsAndSigns) {
  EXPECT_LT(of(1, 3), of(34, 100));
  EXPECT_LT(of(-1, 2), of(-1, 3));
  EXPECT_LE(of(2, 4), of(1, 2));
  EXPECT_GE(of(2, 4), of(1, 2));
  EXPECT_GT(of(0, 1), of(-1, 1000000));
}

TEST(Fraction, FloorAndCeilingGoTheirWayBelowZeroToo) {
  EXPECT_EQ(of(7, 2).floor(), 3);
  EXPECT_EQ(of(7, 2).ceiling(), 4);
  EXPECT_EQ(of(-7, 2).floor(), -4);
  EXPECT_EQ(of(-7, 2).ceiling(), -3);
  EXPECT_EQ(of(-8, 2).floor(), -4);
  EXPECT_EQ(of(8, 2).ceiling(), 4);
}

TEST(Fraction, HoldsItsLargestProductWithoutOverflow) {
  const Fraction large = of(9000000000000000000, 7);
  EXPECT_EQ(large * of(7, 9000000000000000000), of(1, 1));
  EXPECT_LT(large, large + of(1, 7));
}

// One decimal of mmol/L from a glucose value, ties up, as the table of CV-39 prints it: worked from grains here because no
// other place of the program rounds so.
std::int64_t in_mmol_tenths(Glucose value) { return (value.in_grains() * 2 / 22520 + 1) / 2; }
std::int64_t in_mg(Glucose value) { return (value.in_grains() * 2 / 12500 + 1) / 2; }

TEST(Conversion, MgToMmolAsPrinted) {
  // CV-39, at 18.016 mg/dL for 1 mmol/L, DERIVED, one decimal: 250, 300, 240, 70, 54, 100 mg/dL.
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(250)), 139);
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(300)), 167);
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(240)), 133);
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(70)), 39);
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(54)), 30);
  EXPECT_EQ(in_mmol_tenths(Glucose::mg(100)), 56);
}

TEST(Conversion, FourDecimalsOfTheSameTable) {
  // CV-39, second line: 13.8766, 16.6519, 13.3215, 3.8854, 2.9973, 5.5506 mmol/L, rounded to the fourth decimal.
  const auto ten_thousandths = [](std::int64_t mg) {
    return (of(Glucose::mg(mg).in_grains() * 10000, 225200) + of(1, 2)).floor();
  };
  EXPECT_EQ(ten_thousandths(250), 138766);
  EXPECT_EQ(ten_thousandths(300), 166519);
  EXPECT_EQ(ten_thousandths(240), 133215);
  EXPECT_EQ(ten_thousandths(70), 38854);
  EXPECT_EQ(ten_thousandths(54), 29973);
  EXPECT_EQ(ten_thousandths(100), 55506);
}

TEST(Conversion, MmolToMgAsPrinted) {
  // CV-40, at 18.016, DERIVED, whole mg/dL: 5.5, 14, 15, 22, 33.3 mmol/L.
  EXPECT_EQ(in_mg(Glucose::mmol_tenths(55)), 99);
  EXPECT_EQ(in_mg(Glucose::mmol_tenths(140)), 252);
  EXPECT_EQ(in_mg(Glucose::mmol_tenths(150)), 270);
  EXPECT_EQ(in_mg(Glucose::mmol_tenths(220)), 396);
  EXPECT_EQ(in_mg(Glucose::mmol_tenths(333)), 600);
}

// Whether a reading in mg/dL counts as at a trigger in mmol/L: within half a display step it takes the worse side.
bool at_or_above(Glucose reading, Glucose trigger) { return !(reading + half_display_step(GlucoseUnit::mmol) < trigger); }

TEST(Conversion, HalfADisplayStepDecidesAtTheTrigger) {
  // CV-41, plan 14.0 mmol/L: 250 and 251 mg/dL are below, 252 (13.9876) is within half a step and so at the trigger.
  EXPECT_FALSE(at_or_above(Glucose::mg(250), Glucose::mmol_tenths(140)));
  EXPECT_FALSE(at_or_above(Glucose::mg(251), Glucose::mmol_tenths(140)));
  EXPECT_TRUE(at_or_above(Glucose::mg(252), Glucose::mmol_tenths(140)));
  // CV-42, plan 15.0 mmol/L: 269 is below, 270 (14.9867) is at it.
  EXPECT_FALSE(at_or_above(Glucose::mg(269), Glucose::mmol_tenths(150)));
  EXPECT_TRUE(at_or_above(Glucose::mg(270), Glucose::mmol_tenths(150)));
}

TEST(Conversion, OneMgIsNotOneMmol) {
  EXPECT_EQ(Glucose::mmol_tenths(10000).in_grains(), Glucose::mg(18016).in_grains());  // 1000 mmol/L, molar mass over ten
  EXPECT_EQ(half_display_step(GlucoseUnit::mmol), Glucose::mmol_tenths(1) - (Glucose::mmol_tenths(1) - half_display_step(GlucoseUnit::mmol)));
  EXPECT_EQ(half_display_step(GlucoseUnit::mg).in_grains() * 2, GlucoseFall::mg(1).in_grains());
  EXPECT_EQ(half_display_step(GlucoseUnit::mmol).in_grains() * 2, GlucoseFall::mmol_tenths(1).in_grains());
}

TEST(Insulin, ACorrectionKeepsEveryDigit) {
  // (16.0 - 6.5) / 2.5 = 3.80 and (18.5 - 6.5) / 2.5 = 4.80, the hand-worked table of the contract, section 6.
  const auto correction = [](std::int64_t glucose_tenths) {
    return (Glucose::mmol_tenths(glucose_tenths) - Glucose::mmol_tenths(65)) / CorrectionFactor::mmol_hundredths(250);
  };
  EXPECT_EQ(correction(160), Insulin::hundredths(380));
  EXPECT_EQ(correction(185), Insulin::hundredths(480));
  // (60 - 160) / 30 = -3.333...: a third stays a third.
  EXPECT_EQ((Glucose::mg(60) - Glucose::mg(160)) / CorrectionFactor::mg_tenths(300), Insulin::exactly(of(-10, 3)));
}

TEST(Insulin, RoundsDownToAStep) {
  const Insulin half = Insulin::hundredths(50);
  EXPECT_EQ(Insulin::hundredths(449).down_to(half), Insulin::hundredths(400));
  EXPECT_EQ(Insulin::hundredths(450).down_to(half), Insulin::hundredths(450));
  EXPECT_EQ(Insulin::hundredths(451).down_to(half), Insulin::hundredths(450));
  EXPECT_EQ(Insulin::hundredths(49).down_to(half), Insulin{});
}

TEST(Insulin, RoundsToTheNearestWithTiesDown) {
  const Insulin one = Insulin::units(1);
  EXPECT_EQ(Insulin::hundredths(349).nearest(one), Insulin::units(3));
  EXPECT_EQ(Insulin::hundredths(350).nearest(one), Insulin::units(3));  // a tie gives less insulin, not more
  EXPECT_EQ(Insulin::hundredths(351).nearest(one), Insulin::units(4));
  // CV-01: 38 units a day, 10 %, printed as 3.8 -> 4 units.
  EXPECT_EQ((Share::thousandths(100) * Insulin::units(38)).nearest(one), Insulin::units(4));
}

TEST(Insulin, SharesAndBounds) {
  EXPECT_EQ(Share::thousandths(100) * Insulin::units(40), Insulin::units(4));  // contract, section 6: 10 % of 40
  EXPECT_EQ(lesser(Insulin::units(3), Insulin::units(2)), Insulin::units(2));
  EXPECT_EQ(greater(Insulin::units(3), Insulin::units(2)), Insulin::units(3));
  EXPECT_EQ(at_least_none(Insulin::units(2) - Insulin::units(5)), Insulin{});
}

TEST(Body, CarbohydratePairsWithInsulin) {
  EXPECT_EQ(Carbohydrate::grams(40) / CarbohydrateRatio::gram_tenths_per_unit(150), Insulin::exactly(of(8, 3)));  // CV-20: 40 g at 1/15 = 2.66...
  EXPECT_EQ(Insulin::units(1) * CarbohydrateRatio::gram_tenths_per_unit(120), Carbohydrate::grams(12));  // contract 6: (2 - 1) x 12
}

TEST(Body, CarbohydrateGoesUpToAMeasurableAmount) {
  const Carbohydrate five = Carbohydrate::grams(5);
  EXPECT_EQ(Carbohydrate::grams(12).up_to(five), Carbohydrate::grams(15));  // contract 6: 12 -> 15 g
  EXPECT_EQ(Carbohydrate::exactly(of(425, 10)).up_to(five), Carbohydrate::grams(45));  // contract 6: 42.5 -> 45 g
  EXPECT_EQ(Carbohydrate::grams(15).up_to(five), Carbohydrate::grams(15));
  EXPECT_EQ(Carbohydrate{}.up_to(five), Carbohydrate{});
}

TEST(Body, UnitsForAKilogram) {
  // CV-08: 10, 20 ... 90 kg at 0.1 units per kg give 1, 2 ... 9 units.
  for (std::int64_t tens = 1; tens <= 9; ++tens)
    EXPECT_EQ(InsulinPerKg::unit_thousandths(100) * Weight::kg_tenths(tens * 100), Insulin::units(tens)) << tens;
  EXPECT_EQ(InsulinPerKg::unit_thousandths(100) * Weight::kg_tenths(300), Insulin::units(3));  // CV-15: 30 kg, 0.1 -> 3 units
}

Moment moment_of(std::string_view text) {
  const auto read = parse_moment(text);
  EXPECT_TRUE(read.has_value()) << text;
  return read.value_or(Moment{});
}
Day day_of(std::string_view text) {
  const auto read = parse_day(text);
  EXPECT_TRUE(read.has_value()) << text;
  return read.value_or(Day{});
}

TEST(Time, ReadsAnInstantWithItsOffset) {
  // Seconds since 1970 from `date -u -d ... +%s`.
  EXPECT_EQ(moment_of("2026-11-25T03:10:00+01:00").instant.in_epoch_seconds(), 1795572600);
  EXPECT_EQ(moment_of("2026-11-25T02:10Z").instant.in_epoch_seconds(), 1795572600);
  EXPECT_EQ(moment_of("2026-11-24T21:10:00-05:00").instant, moment_of("2026-11-25T03:10:00+01:00").instant);
  EXPECT_EQ(moment_of("1970-01-01T00:00:00+00:00").instant.in_epoch_seconds(), 0);
  EXPECT_EQ(moment_of("2026-11-25T03:10:00+05:45").offset.in_minutes_east(), 345);
  EXPECT_EQ(moment_of("2026-11-25T03:10:00-03:30").offset.in_minutes_east(), -210);
}

TEST(Time, RefusesWhatIsNotRfc3339WithAnOffset) {
  for (const char* text : {"", "2026-11-25", "2026-11-25T03:10", "2026-11-25T03:10:00", "2026-11-25 03:10:00+01:00", "2026-11-25t03:10:00Z",
                           "2026-11-25T24:00:00Z", "2026-11-25T23:60Z", "2026-11-25T23:59:60Z", "2026-02-29T12:00:00Z", "2026-13-01T12:00:00Z",
                           "2026-11-25T03:10:00+1:00", "2026-11-25T03:10:00+0100", "2026-11-25T03:10:00+15:00", "2026-11-25T03:10:00.5Z",
                           "2026-11-25T03:10:00+01:00 ", " 2026-11-25T03:10:00+01:00", "1899-12-31T23:59:00Z", "2200-01-01T00:00:00Z",
                           "2026-11-25T03:10:00z", "2026-11-25T3:10:00Z", "+026-11-25T03:10:00Z"})
    EXPECT_FALSE(parse_moment(text).has_value()) << text;
  EXPECT_TRUE(parse_moment("2028-02-29T12:00:00Z").has_value());
  EXPECT_FALSE(parse_moment("2100-02-29T12:00:00Z").has_value());  // no leap year
}

TEST(Time, ReadsDaysAndClockTimes) {
  EXPECT_EQ(day_of("1970-01-01").in_epoch_days(), 0);
  EXPECT_EQ(day_of("1969-12-31").in_epoch_days(), -1);
  EXPECT_EQ(day_of("2026-11-25").in_epoch_days(), 20782);  // `date -u -d 2026-11-25 +%s` / 86400
  for (const char* text : {"", "2026-2-01", "2026/02/01", "2026-02-30", "26-02-01", "2026-02-01T"}) EXPECT_FALSE(parse_day(text)) << text;
  EXPECT_EQ(parse_time_of_day("00:00")->in_minutes(), 0);
  EXPECT_EQ(parse_time_of_day("23:59")->in_minutes(), 1439);
  for (const char* text : {"", "24:00", "7:00", "07:60", "07-00", "07:00 "}) EXPECT_FALSE(parse_time_of_day(text)) << text;
}

TEST(Time, LocalTimeFollowsTheOffsetAcrossMidnight) {
  // The same instant is the 24th in New York, the 25th in Paris.
  EXPECT_EQ(local_day(moment_of("2026-11-24T21:10:00-05:00")), day_of("2026-11-24"));
  EXPECT_EQ(local_day(moment_of("2026-11-25T03:10:00+01:00")), day_of("2026-11-25"));
  EXPECT_EQ(local_time(moment_of("2026-11-24T21:10:00-05:00")).in_minutes(), 21 * 60 + 10);
  EXPECT_EQ(local_time(moment_of("2026-11-25T00:00:59+01:00")).in_minutes(), 0);
  EXPECT_EQ(local_day(moment_of("1969-12-31T23:30:00-01:00")), day_of("1969-12-31"));  // before 1970 too
  EXPECT_EQ(local_time(moment_of("1969-12-31T23:30:00-01:00")).in_minutes(), 23 * 60 + 30);
}

TEST(Time, WritesAnInstantBackAsItWasRead) {
  for (const char* text : {"2026-11-25T03:10:00+01:00", "1969-12-31T23:59:59-11:30", "2028-02-29T00:00:01+00:00", "2199-12-31T23:59:59+14:00"}) {
    const Moment read = moment_of(text);
    EXPECT_EQ(text_of(read.instant, read.offset), text);
  }
  EXPECT_EQ(text_of(day_of("2027-04-02")), "2027-04-02");
  EXPECT_EQ(text_of(TimeOfDay::minutes(65)), "01:05");
}

TEST(Time, AHoldEndsAtTheNextFullMinuteAndALookIsDueAtTheOneBegun) {
  const Moment on_time = moment_of("2026-11-25T07:10:00+01:00"), after = moment_of("2026-11-25T07:10:01+01:00"),
               late = moment_of("2026-11-25T23:59:59+01:00");
  EXPECT_EQ(clock_rounded_up(on_time.instant, on_time.offset), "07:10");
  EXPECT_EQ(clock_rounded_up(after.instant, after.offset), "07:11");
  EXPECT_EQ(clock_rounded_up(late.instant, late.offset), "00:00");
  EXPECT_EQ(clock_rounded_down(after.instant, after.offset), "07:10");
  EXPECT_EQ(clock_rounded_down(late.instant, late.offset), "23:59");
}

TEST(Time, SpansCountInSeconds) {
  EXPECT_EQ(Duration::hour_hundredths(450), Duration::minutes(270));  // 4.5 h
  EXPECT_EQ(Duration::hour_hundredths(25), Duration::minutes(15));
  EXPECT_EQ(moment_of("2026-11-25T03:10:00+01:00").instant - moment_of("2026-11-25T01:10:00+00:00").instant, Duration::hours(1));
}

TEST(Time, YearsAreCountedByBirthday) {
  const auto years = [](std::string_view born, std::string_view on) { return years_between(day_of(born), day_of(on)); };
  EXPECT_EQ(years("2008-11-25", "2026-11-24"), 17);
  EXPECT_EQ(years("2008-11-25", "2026-11-25"), 18);
  EXPECT_EQ(years("2008-11-25", "2026-11-26"), 18);
  // Born on a leap day: in a common year the birthday has not come on 28 February, and has on 1 March.
  EXPECT_EQ(years("2008-02-29", "2026-02-28"), 17);
  EXPECT_EQ(years("2008-02-29", "2026-03-01"), 18);
  EXPECT_EQ(years("2008-02-29", "2028-02-29"), 20);
}

}  // namespace
}  // namespace stopgap
