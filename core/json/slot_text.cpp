#include "json/slot_text.hpp"

#include "json/reading_text.hpp"
#include "json/words.hpp"
#include "json/write.hpp"

namespace stopgap::json {

std::string level_text(std::int64_t grains, const Plan& plan) {
  if (plan.unit == GlucoseUnit::mg) return decimal_text(Fraction::of(grains, grains_per_mg_tenth * 10), 0, plan.decimal_mark);
  std::string out = decimal_text(Fraction::of(grains, grains_per_mmol_hundredth * 100), 1, plan.decimal_mark);
  if (out.find(plan.decimal_mark) == std::string::npos) (out += plan.decimal_mark) += '0';
  return out;
}

namespace {

constexpr std::string_view no_break_space = "\xC2\xA0";
constexpr int plain_digits = 2, percent_digits = 0;

std::string with_unit(std::string text, const Plan& plan) {
  return (std::move(text) += no_break_space) += words::glucose_units[static_cast<std::size_t>(plan.unit)];
}
std::string text_of_value(Insulin amount, const Plan& plan) { return dose_text(amount, plan.decimal_mark); }
std::string text_of_value(Glucose level, const Plan& plan) { return with_unit(level_text(level.in_grains(), plan), plan); }
// A fall or a factor keeps its own digits: 0.75 mmol/L is not 0.8.
std::string text_of_value(GlucoseFall fall, const Plan& plan) {
  const std::int64_t one = plan.unit == GlucoseUnit::mmol ? grains_per_mmol_hundredth * 100 : grains_per_mg_tenth * 10;
  return with_unit(decimal_text(Fraction::of(fall.in_grains(), one), plain_digits, plan.decimal_mark), plan);
}
std::string text_of_value(Ketones ketones, const Plan& plan) { return number_text(ketones, plan.decimal_mark); }
std::string text_of_value(Carbohydrate carbs, const Plan& plan) { return decimal_text(carbs.in_grams(), 0, plan.decimal_mark); }
std::string text_of_value(Day day, const Plan&) { return text_of(day); }
std::string text_of_value(TimeOfDay time, const Plan&) { return text_of(time); }
std::string text_of_value(Percent percent, const Plan& plan) {
  return decimal_text(percent.share * Fraction{100}, percent_digits, plan.decimal_mark);
}
std::string text_of_value(PlainNumber number, const Plan& plan) { return decimal_text(number.value, plain_digits, plan.decimal_mark); }
std::string text_of_value(StripWord word, const Plan&) { return std::string{words::strip_words[static_cast<std::size_t>(word)]}; }
std::string text_of_value(const std::string& word, const Plan&) { return word; }

}  // namespace

std::string slot_text(const SlotValue& value, const Plan& plan) {
  return std::visit([&](const auto& held) { return text_of_value(held, plan); }, value);
}

}  // namespace stopgap::json
