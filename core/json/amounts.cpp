// Numbers as people read them: a leading zero, no trailing zero, the plan's decimal mark [ismp-2021] [jc-list].
#include "json/write.hpp"

namespace stopgap::json {
namespace {

constexpr std::string_view no_break_space = "\xC2\xA0";
constexpr std::string_view one_word = "unit", many_word = "units";
constexpr int dose_digits = 2;

}  // namespace

std::string decimal_text(Fraction value, int digits, char mark) {
  std::int64_t scale = 1;
  for (int i = 0; i < digits; ++i) scale *= 10;
  const bool negative = value < Fraction{};
  const Fraction size = negative ? Fraction{} - value : value;
  const std::int64_t count = (size * Fraction{scale} + Fraction::of(1, 2)).floor();  // half up, away from zero
  std::string out = std::to_string(count / scale);
  std::string decimals;
  std::int64_t rest = count % scale;
  for (std::int64_t place = scale / 10; place > 0 && rest > 0; place /= 10) {
    decimals += static_cast<char>('0' + rest / place);
    rest %= place;
  }
  if (!decimals.empty()) out += mark + decimals;
  return negative && count != 0 ? '-' + out : out;
}

std::string dose_text(Insulin dose, char mark) {
  const std::string amount = decimal_text(dose.in_units(), dose_digits, mark);
  return amount + std::string{no_break_space} + std::string{amount == "1" ? one_word : many_word};
}

}  // namespace stopgap::json
