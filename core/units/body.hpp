// Carbohydrate in grams, the ratio that pairs it with insulin, and body weight. All exact. Errors: none.
#pragma once
#include "units/insulin.hpp"

namespace stopgap {

class Carbohydrate {
 public:
  constexpr Carbohydrate() = default;
  static constexpr Carbohydrate grams(std::int64_t count) { return Carbohydrate{Fraction{count}}; }
  static constexpr Carbohydrate exactly(Fraction grams) { return Carbohydrate{grams}; }
  constexpr Fraction in_grams() const { return grams_; }
  // Up to the next whole step, so that a person measures a round amount.
  constexpr Carbohydrate up_to(Carbohydrate step) const {
    return Carbohydrate{Fraction{(grams_ / step.grams_).ceiling()} * step.grams_};
  }
  friend constexpr bool operator==(Carbohydrate, Carbohydrate) = default;
  friend constexpr bool operator<(Carbohydrate a, Carbohydrate b) { return a.grams_ < b.grams_; }
  friend constexpr bool operator>(Carbohydrate a, Carbohydrate b) { return b.grams_ < a.grams_; }
  friend constexpr Carbohydrate operator+(Carbohydrate a, Carbohydrate b) { return Carbohydrate{a.grams_ + b.grams_}; }

 private:
  constexpr explicit Carbohydrate(Fraction grams) : grams_(grams) {}
  Fraction grams_;
};

constexpr Carbohydrate greater(Carbohydrate a, Carbohydrate b) { return a < b ? b : a; }
constexpr Carbohydrate lesser(Carbohydrate a, Carbohydrate b) { return a < b ? a : b; }

// Grams of carbohydrate that one unit of rapid-acting insulin covers, in tenths of a gram.
class CarbohydrateRatio {
 public:
  constexpr CarbohydrateRatio() = default;
  static constexpr CarbohydrateRatio gram_tenths_per_unit(std::int64_t tenths) { return CarbohydrateRatio{tenths}; }
  constexpr Fraction in_grams_per_unit() const { return Fraction::of(tenths_, 10); }
  friend constexpr bool operator==(CarbohydrateRatio, CarbohydrateRatio) = default;

 private:
  constexpr explicit CarbohydrateRatio(std::int64_t tenths) : tenths_(tenths) {}
  std::int64_t tenths_ = 10;
};

constexpr Insulin operator/(Carbohydrate carbs, CarbohydrateRatio ratio) {
  return Insulin::exactly(carbs.in_grams() / ratio.in_grams_per_unit());
}
constexpr Carbohydrate operator*(Insulin insulin, CarbohydrateRatio ratio) {
  return Carbohydrate::exactly(insulin.in_units() * ratio.in_grams_per_unit());
}

// Body weight in tenths of a kilogram, and insulin per kilogram in thousandths of a unit.
class Weight {
 public:
  constexpr Weight() = default;
  static constexpr Weight kg_tenths(std::int64_t tenths) { return Weight{tenths}; }
  constexpr std::int64_t in_kg_tenths() const { return tenths_; }
  friend constexpr bool operator==(Weight, Weight) = default;

 private:
  constexpr explicit Weight(std::int64_t tenths) : tenths_(tenths) {}
  std::int64_t tenths_ = 10;
};

class InsulinPerKg {
 public:
  constexpr InsulinPerKg() = default;
  static constexpr InsulinPerKg unit_thousandths(std::int64_t count) { return InsulinPerKg{count}; }
  friend constexpr Insulin operator*(InsulinPerKg each, Weight weight) {
    return Insulin::exactly(Fraction::of(Wide{each.thousandths_} * weight.in_kg_tenths(), 10000));
  }
  friend constexpr bool operator==(InsulinPerKg, InsulinPerKg) = default;

 private:
  constexpr explicit InsulinPerKg(std::int64_t count) : thousandths_(count) {}
  std::int64_t thousandths_ = 0;
};

}  // namespace stopgap
