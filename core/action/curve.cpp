#include "action/curve.hpp"

#include "figures/action.hpp"

namespace stopgap {
namespace {

constexpr std::int64_t billionths = 1'000'000'000;
constexpr double ln2_high = 6.93147180369123816490e-01;  // the first 33 bits: whole multiples of it are exact
constexpr double ln2_low = 1.90821492927058770002e-10;
constexpr int taylor_terms = 14;                         // 0.35^15 / 15! is below 1e-19

double z_of(Duration since, Duration action) {
  return static_cast<double>(since.in_seconds()) * figures::action_end_z.value / static_cast<double>(action.in_seconds());
}

}  // namespace

double exponential(double x) {
  const double turns = x / (ln2_high + ln2_low);
  const int whole = static_cast<int>(turns < 0 ? turns - 0.5 : turns + 0.5);
  const double rest = (x - whole * ln2_high) - whole * ln2_low;
  double sum = 1;
  for (int term = taylor_terms; term > 0; --term) sum = 1 + sum * rest / term;
  double power = 1;
  for (int i = 0; i < whole; ++i) power *= 2;
  for (int i = 0; i > whole; --i) power /= 2;
  return sum * power;
}

double f3(double z) { return (1 + z + z * z / 2) * exponential(-z); }

std::int64_t remaining_share(Duration since, Duration action) {
  if (since <= Duration{}) return whole_share;
  if (since > action) return 0;
  return static_cast<std::int64_t>(f3(z_of(since, action)) * static_cast<double>(whole_share) + 0.5);
}

void ActionStream::advance(Duration step, Duration action) {
  const double z = z_of(step, action), decay = exponential(-z);
  s3 = (s3 + s2 * z + s1 * z * z / 2) * decay;
  s2 = (s2 + s1 * z) * decay;
  s1 = s1 * decay;
}

void Remaining::add(Insulin units, std::int64_t share) {
  const Fraction exact = units.in_units();
  const Wide scaled = Wide{exact.numerator()} * billionths;
  // Up to a billionth: what is counted as acting may not fall short.
  const Wide whole = quotient(scaled + exact.denominator() - 1, exact.denominator());
  total_ += whole * share;
}

Insulin Remaining::rounded_up() const {
  constexpr Wide hundredth = Wide{whole_share} * billionths / 100;
  return Insulin::hundredths(static_cast<std::int64_t>((total_ + hundredth - 1) / hundredth));
}

}  // namespace stopgap
