// Glucose, its differences and the correction factor, as whole grains: 225,200 grains are 1 mmol/L, 12,500 are 1 mg/dL.
// Why grains: at 18.016 mg/dL per mmol/L both 0.01 mmol/L (2,252) and 0.1 mg/dL (1,250) are whole, so a reading in either
// unit and a factor in either unit are exact (figures/conversion.hpp holds the factor and checks these counts).
// Range: readings to 50.0 mmol/L; no operation here can overflow. Errors: none.
#pragma once
#include <compare>
#include <cstdint>
#include "units/fraction.hpp"

namespace stopgap {

enum class GlucoseUnit : std::uint8_t { mmol, mg };

inline constexpr std::int64_t grains_per_mmol_hundredth = 2252;
inline constexpr std::int64_t grains_per_mg_tenth = 1250;

class GlucoseFall;

// An amount of glucose in blood. Glucose - Glucose is a GlucoseFall; Glucose + Glucose does not exist.
class Glucose {
 public:
  constexpr Glucose() = default;
  static constexpr Glucose grains(std::int64_t count) { return Glucose{count}; }
  static constexpr Glucose mmol_tenths(std::int64_t tenths) { return Glucose{tenths * 10 * grains_per_mmol_hundredth}; }
  static constexpr Glucose mg(std::int64_t whole) { return Glucose{whole * 10 * grains_per_mg_tenth}; }
  constexpr std::int64_t in_grains() const { return grains_; }
  friend constexpr bool operator==(Glucose, Glucose) = default;
  friend constexpr auto operator<=>(Glucose, Glucose) = default;

 private:
  constexpr explicit Glucose(std::int64_t grains) : grains_(grains) {}
  std::int64_t grains_ = 0;
};

// A difference of two glucose values; may be negative.
class GlucoseFall {
 public:
  constexpr GlucoseFall() = default;
  static constexpr GlucoseFall grains(std::int64_t count) { return GlucoseFall{count}; }
  static constexpr GlucoseFall mmol_tenths(std::int64_t tenths) { return GlucoseFall{tenths * 10 * grains_per_mmol_hundredth}; }
  static constexpr GlucoseFall mg(std::int64_t whole) { return GlucoseFall{whole * 10 * grains_per_mg_tenth}; }
  constexpr std::int64_t in_grains() const { return grains_; }
  friend constexpr bool operator==(GlucoseFall, GlucoseFall) = default;
  friend constexpr auto operator<=>(GlucoseFall, GlucoseFall) = default;

 private:
  constexpr explicit GlucoseFall(std::int64_t grains) : grains_(grains) {}
  std::int64_t grains_ = 0;
};

constexpr GlucoseFall operator-(Glucose a, Glucose b) { return GlucoseFall::grains(a.in_grains() - b.in_grains()); }
constexpr Glucose operator+(Glucose a, GlucoseFall b) { return Glucose::grains(a.in_grains() + b.in_grains()); }
constexpr Glucose operator-(Glucose a, GlucoseFall b) { return Glucose::grains(a.in_grains() - b.in_grains()); }

// How far one unit of rapid-acting insulin brings glucose down.
class CorrectionFactor {
 public:
  constexpr CorrectionFactor() = default;
  static constexpr CorrectionFactor grains_per_unit(std::int64_t count) { return CorrectionFactor{count}; }
  static constexpr CorrectionFactor mmol_hundredths(std::int64_t h) { return CorrectionFactor{h * grains_per_mmol_hundredth}; }
  static constexpr CorrectionFactor mg_tenths(std::int64_t tenths) { return CorrectionFactor{tenths * grains_per_mg_tenth}; }
  constexpr std::int64_t in_grains_per_unit() const { return grains_; }
  friend constexpr bool operator==(CorrectionFactor, CorrectionFactor) = default;

 private:
  constexpr explicit CorrectionFactor(std::int64_t grains) : grains_(grains) {}
  std::int64_t grains_ = 1;
};

// Half a display step of the plan's unit: within it a converted reading takes the worse side of a threshold.
constexpr GlucoseFall half_display_step(GlucoseUnit unit) {
  return unit == GlucoseUnit::mmol ? GlucoseFall::grains(5 * grains_per_mmol_hundredth) : GlucoseFall::grains(5 * grains_per_mg_tenth);
}

}  // namespace stopgap
