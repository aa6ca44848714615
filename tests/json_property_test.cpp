// Decimals over their whole range: written by the test digit by digit, read back as the count they were written from.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "json/text.hpp"

namespace stopgap::json {
namespace {

// A decimal with `places` places after the point, zeros and all.
std::string written(std::int64_t count, int places) {
  std::string digits = std::to_string(count < 0 ? -count : count);
  while (static_cast<int>(digits.size()) <= places) digits.insert(digits.begin(), '0');
  if (places > 0) digits.insert(digits.end() - places, '.');
  return count < 0 ? "-" + digits : digits;
}

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

RC_GTEST_PROP(DecimalProperty, ReadsBackTheCountItWasWrittenFrom, ()) {
  const auto count = *rc::gen::inRange<std::int64_t>(-99999999, 100000000);
  const int places = *rc::gen::inRange(0, 6);
  const std::string zeros(static_cast<std::size_t>(places == 0 ? 0 : *rc::gen::inRange(0, 12)), '0');
  const Decimal read = decimal(written(count, places) + zeros, places);
  RC_ASSERT(read.state == Decimal::State::exact);
  RC_ASSERT(read.count == count);
}

RC_GTEST_PROP(DecimalProperty, AnExponentOnlyMovesThePoint, ()) {
  const auto count = *rc::gen::inRange<std::int64_t>(-999999, 1000000);
  const int places = *rc::gen::inRange(0, 5);
  const int moved = *rc::gen::inRange(-5, 6);
  const std::string typed = written(count, places + 5 + moved) + "e" + std::to_string(moved + 5);
  const Decimal read = decimal(typed, places);
  RC_ASSERT(read.state == Decimal::State::exact);
  RC_ASSERT(read.count == count);
}

RC_GTEST_PROP(DecimalProperty, IsTooPreciseExactlyWhenALastDigitIsLost, ()) {
  const auto count = *rc::gen::inRange<std::int64_t>(0, 100000000);
  const int places = *rc::gen::inRange(1, 6), kept = *rc::gen::inRange(0, places + 1);
  const std::int64_t lost = power_of_ten(places - kept);
  const Decimal read = decimal(written(count, places), kept);
  RC_ASSERT((read.state == Decimal::State::too_precise) == (count % lost != 0));
  if (read.state == Decimal::State::exact) RC_ASSERT(read.count == count / lost);
}

RC_GTEST_PROP(DecimalProperty, NoTextOfDigitsIsEverGuessed, ()) {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string{"0123456789.-+eE"}));
  const Decimal read = decimal(text, 2);  // must end, whatever it is handed
  RC_ASSERT(read.state == Decimal::State::exact || read.count == 0);
}

RC_GTEST_PROP(TextProperty, AnyBytesEndInATreeOrARefusal, ()) {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string{"{}[]\",:\\u0d8e1-.truefalsn \xC3\xA9\xFF"}));
  Refusals refusals;
  const Node node = parse(text, refusals);
  RC_ASSERT(refusals.count() <= most_refusals);
  top_level_member(text, "plan");
  if (!refusals.empty()) return;
  Refusals again;
  const Node back = parse(canonical(node), again);
  RC_ASSERT(again.empty());
  RC_ASSERT(canonical(back) == canonical(node));
}

}  // namespace
}  // namespace stopgap::json
