// An exact fraction of 64-bit integers, always in lowest terms with a positive denominator.
// Range: our largest products (glucose grains × hundredths of a unit × tenths of a gram) stay under 10^16; intermediate
// products are 128 bits wide. Errors: none at run time; a zero denominator is a mistake of ours and yields 0.
// Why not double: 0.1 + 0.2 must not push a dose over a syringe mark, and both builds must give the same bytes.
#pragma once
#include <cstdint>
#include <numeric>

namespace stopgap {

__extension__ typedef __int128 Wide;

// a / b towards zero. Where both fit, one instruction instead of a call that took a tenth of the time of an advice.
constexpr Wide quotient(Wide a, Wide b) {
  const auto small_a = static_cast<std::int64_t>(a), small_b = static_cast<std::int64_t>(b);
  return small_a == a && small_b == b && small_b != -1 ? Wide{small_a / small_b} : a / b;
}

class Fraction {
 public:
  constexpr Fraction() = default;
  constexpr explicit Fraction(std::int64_t whole) : numerator_(whole) {}
  static constexpr Fraction of(Wide numerator, Wide denominator) {
    if (denominator == 0) return Fraction{};
    if (denominator < 0) { numerator = -numerator; denominator = -denominator; }
    const Wide divisor = common(numerator < 0 ? -numerator : numerator, denominator);
    Fraction made;
    made.numerator_ = static_cast<std::int64_t>(quotient(numerator, divisor));
    made.denominator_ = static_cast<std::int64_t>(quotient(denominator, divisor));
    return made;
  }
  constexpr std::int64_t numerator() const { return numerator_; }
  constexpr std::int64_t denominator() const { return denominator_; }

  friend constexpr Fraction operator+(Fraction a, Fraction b) {
    return of(Wide{a.numerator_} * b.denominator_ + Wide{b.numerator_} * a.denominator_, Wide{a.denominator_} * b.denominator_);
  }
  friend constexpr Fraction operator-(Fraction a, Fraction b) {
    return of(Wide{a.numerator_} * b.denominator_ - Wide{b.numerator_} * a.denominator_, Wide{a.denominator_} * b.denominator_);
  }
  friend constexpr Fraction operator*(Fraction a, Fraction b) {
    return of(Wide{a.numerator_} * b.numerator_, Wide{a.denominator_} * b.denominator_);
  }
  friend constexpr Fraction operator/(Fraction a, Fraction b) {
    return of(Wide{a.numerator_} * b.denominator_, Wide{a.denominator_} * b.numerator_);
  }
  friend constexpr bool operator==(Fraction a, Fraction b) = default;
  friend constexpr bool operator<(Fraction a, Fraction b) {
    return Wide{a.numerator_} * b.denominator_ < Wide{b.numerator_} * a.denominator_;
  }
  friend constexpr bool operator>(Fraction a, Fraction b) { return b < a; }
  friend constexpr bool operator<=(Fraction a, Fraction b) { return !(b < a); }
  friend constexpr bool operator>=(Fraction a, Fraction b) { return !(a < b); }

  // The greatest whole number not above the fraction; the least not below it.
  constexpr std::int64_t floor() const {
    const std::int64_t towards_zero = numerator_ / denominator_;
    return numerator_ < 0 && towards_zero * denominator_ != numerator_ ? towards_zero - 1 : towards_zero;
  }
  constexpr std::int64_t ceiling() const { return -of(-Wide{numerator_}, denominator_).floor(); }

 private:
  static constexpr Wide common(Wide a, Wide b) {
    while (a > INT64_MAX || b > INT64_MAX) {
      if (b == 0) return a;
      const Wide rest = a % b;
      a = b;
      b = rest;
    }
    const std::int64_t divisor = std::gcd(static_cast<std::int64_t>(a), static_cast<std::int64_t>(b));
    return divisor == 0 ? 1 : divisor;
  }
  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;
};

}  // namespace stopgap
