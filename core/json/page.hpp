// What an answer about one moment needs to write amounts and times. Amounts are texts rounded for display, with the plan's mark.
#pragma once
#include <string>
#include "json/write.hpp"
#include "json/writer.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

inline constexpr int display_digits = 2;

struct Page {
  Writer& out;
  const Plan& plan;
  const Moment& now;

  std::string number(Insulin amount) const { return decimal_text(amount.in_units(), display_digits, plan.decimal_mark); }
  std::string json_number(Insulin amount) const { return decimal_text(amount.in_units(), display_digits, '.'); }
  std::string grams(Carbohydrate carbs) const { return decimal_text(carbs.in_grams(), 0, '.'); }
  std::string time(Instant instant) const { return text_of(instant, now.offset); }
  // A hold's clock time is the next full minute, a look's the minute begun.
  std::string hold_clock(Instant instant) const { return clock_rounded_up(instant, now.offset); }
  std::string look_clock(Instant instant) const { return clock_rounded_down(instant, now.offset); }
};

}  // namespace stopgap::json
