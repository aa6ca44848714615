// What a rapid-acting dose still has to do, as a share: F3(z) = (1 + z + z²/2) e^(-z), z = t · 6.295794 / (hours of action),
// 0 after the hours of action. Action, not depot: a depot curve calls insulin gone while most of the fall is still to come.
// Range: shares from 0 to 1, in trillionths, so that sums are whole numbers. Errors: none.
#pragma once
#include <cstdint>
#include "units/insulin.hpp"
#include "units/time.hpp"

namespace stopgap {

inline constexpr std::int64_t whole_share = 1'000'000'000'000;

// e^x for -64 <= x <= 64 from +, × and ÷ only: the C library's exp differs in the last bit between our two builds for about
// six arguments in ten thousand, and a byte of a dose must not. Relative error under 3e-16.
double exponential(double x);

// F3 without an end; z >= 0.
double f3(double z);

// The share of a dose still to act, in trillionths, `since` after it. A dose of the next minutes counts whole.
std::int64_t remaining_share(Duration since, Duration action);

// The same kept up to date minute by minute (exact for any step): S1 → S2 → S3, on board is their sum.
struct ActionStream {
  double s1 = 0, s2 = 0, s3 = 0;
  void add(double units) { s1 += units; }
  void advance(Duration step, Duration action);
  double on_board() const { return s1 + s2 + s3; }
};

// A sum of doses × shares, exact to a trillionth of a billionth of a unit, rounded up to 0.01 units at the end.
class Remaining {
 public:
  void add(Insulin units, std::int64_t share);
  void add(Remaining other) { total_ += other.total_; }
  void subtract_down_to_none(Remaining other) { total_ = total_ > other.total_ ? total_ - other.total_ : 0; }
  friend Remaining greater(Remaining a, Remaining b) { return a.total_ < b.total_ ? b : a; }
  Insulin rounded_up() const;

 private:
  Wide total_ = 0;
};

}  // namespace stopgap
