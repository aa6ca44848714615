// Insulin in units (100 units are 1 mL), as an exact fraction. Doses are written in steps of the device; what is worked out
// before rounding keeps every digit. Range: doses to 100.00 units, intermediate values to some 10^4. Errors: none.
#pragma once
#include "units/fraction.hpp"
#include "units/glucose.hpp"

namespace stopgap {

class Insulin {
 public:
  constexpr Insulin() = default;
  static constexpr Insulin exactly(Fraction units) { return Insulin{units}; }
  static constexpr Insulin hundredths(std::int64_t count) { return Insulin{Fraction::of(count, 100)}; }
  static constexpr Insulin units(std::int64_t count) { return Insulin{Fraction{count}}; }
  constexpr Fraction in_units() const { return units_; }
  constexpr bool is_zero() const { return units_.numerator() == 0; }
  friend constexpr bool operator==(Insulin, Insulin) = default;
  friend constexpr bool operator<(Insulin a, Insulin b) { return a.units_ < b.units_; }
  friend constexpr bool operator>(Insulin a, Insulin b) { return b.units_ < a.units_; }
  friend constexpr bool operator<=(Insulin a, Insulin b) { return a.units_ <= b.units_; }
  friend constexpr bool operator>=(Insulin a, Insulin b) { return a.units_ >= b.units_; }
  friend constexpr Insulin operator+(Insulin a, Insulin b) { return Insulin{a.units_ + b.units_}; }
  friend constexpr Insulin operator-(Insulin a, Insulin b) { return Insulin{a.units_ - b.units_}; }
  // Down to a whole number of steps, and to the nearest with ties down.
  constexpr Insulin down_to(Insulin step) const { return Insulin{Fraction{(units_ / step.units_).floor()} * step.units_}; }
  constexpr Insulin nearest(Insulin step) const {
    const Fraction steps = units_ / step.units_;
    const Fraction lower{steps.floor()};
    const bool up = steps - lower > Fraction::of(1, 2);
    return Insulin{(up ? lower + Fraction{1} : lower) * step.units_};
  }

 private:
  constexpr explicit Insulin(Fraction units) : units_(units) {}
  Fraction units_;
};

// A dimensionless share of a daily total, or a multiple of a correction.
class Share {
 public:
  constexpr Share() = default;
  static constexpr Share thousandths(std::int64_t count) { return Share{Fraction::of(count, 1000)}; }
  constexpr Fraction value() const { return value_; }
  friend constexpr bool operator==(Share, Share) = default;

 private:
  constexpr explicit Share(Fraction value) : value_(value) {}
  Fraction value_;
};

constexpr Insulin operator*(Share share, Insulin of) { return Insulin::exactly(share.value() * of.in_units()); }
constexpr Insulin operator/(GlucoseFall fall, CorrectionFactor factor) {
  return Insulin::exactly(Fraction::of(fall.in_grains(), factor.in_grains_per_unit()));
}

// Basal delivery of a pump, in hundredths of a unit an hour.
class BasalRate {
 public:
  constexpr BasalRate() = default;
  static constexpr BasalRate hundredths_per_hour(std::int64_t count) { return BasalRate{count}; }
  constexpr std::int64_t in_hundredths_per_hour() const { return hundredths_; }
  friend constexpr bool operator==(BasalRate, BasalRate) = default;

 private:
  constexpr explicit BasalRate(std::int64_t count) : hundredths_(count) {}
  std::int64_t hundredths_ = 0;
};

constexpr Insulin lesser(Insulin a, Insulin b) { return a < b ? a : b; }
constexpr Insulin greater(Insulin a, Insulin b) { return a < b ? b : a; }
constexpr Insulin at_least_none(Insulin a) { return greater(a, Insulin{}); }

}  // namespace stopgap
