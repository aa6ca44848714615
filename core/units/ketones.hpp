// Blood ketones (beta-hydroxybutyrate) in tenths of mmol/L, and the words of a urine strip.
// A strip word never becomes a number: the two types share no operator. Range 0.0 to 15.0. Errors: none.
#pragma once
#include <compare>
#include <cstdint>

namespace stopgap {

class Ketones {
 public:
  constexpr Ketones() = default;
  static constexpr Ketones mmol_tenths(std::int64_t tenths) { return Ketones{tenths}; }
  constexpr std::int64_t in_mmol_tenths() const { return tenths_; }
  friend constexpr bool operator==(Ketones, Ketones) = default;
  friend constexpr auto operator<=>(Ketones, Ketones) = default;

 private:
  constexpr explicit Ketones(std::int64_t tenths) : tenths_(tenths) {}
  std::int64_t tenths_ = 0;
};

// A difference of two blood ketone values.
class KetoneFall {
 public:
  constexpr KetoneFall() = default;
  static constexpr KetoneFall mmol_tenths(std::int64_t tenths) { return KetoneFall{tenths}; }
  constexpr std::int64_t in_mmol_tenths() const { return tenths_; }
  friend constexpr bool operator==(KetoneFall, KetoneFall) = default;
  friend constexpr auto operator<=>(KetoneFall, KetoneFall) = default;

 private:
  constexpr explicit KetoneFall(std::int64_t tenths) : tenths_(tenths) {}
  std::int64_t tenths_ = 0;
};

constexpr KetoneFall operator-(Ketones a, Ketones b) { return KetoneFall::mmol_tenths(a.in_mmol_tenths() - b.in_mmol_tenths()); }

// The words printed on a urine strip, weakest first.
enum class StripWord : std::uint8_t { negative, trace, small, moderate, large };
inline constexpr int strip_words = 5;

}  // namespace stopgap
