#include "json/write_device.hpp"

#include "figures/syringe.hpp"
#include "json/answer_words.hpp"
#include "json/page.hpp"

namespace stopgap::json {

void write_device(Writer& out, const Plan& plan, DeviceKind with, Insulin total) {
  const bool syringe = with == DeviceKind::syringe;
  const Device& device = plan.device(with);
  const auto number = [&](Insulin amount, char mark) { return decimal_text(amount.in_units(), display_digits, mark); };
  out.key("device").open('{').key("kind").text(words::of(words::devices, with));
  out.key("capacity").raw(number(device.capacity, '.')).key("step").text(number(device.step, plan.decimal_mark));
  if (syringe) {
    const std::int64_t marks = (device.capacity.in_units() / device.step.in_units()).floor();
    const Insulin every = device.capacity > figures::close_figures_up_to.value ? figures::wide_figures.value : figures::close_figures.value;
    out.key("marks").raw(std::to_string(marks));
    out.key("at").raw(std::to_string((total.in_units() / device.step.in_units()).floor()));
    out.key("figures").open('[');
    for (Insulin figure = every; figure <= device.capacity; figure = figure + every) {
      const Fraction mark = figure.in_units() / device.step.in_units();
      if (mark.denominator() != 1) continue;
      out.open('{').key("at").raw(std::to_string(mark.floor())).key("text").text(number(figure, plan.decimal_mark)).close('}');
    }
    out.close(']');
  }
  out.close('}');
}

}  // namespace stopgap::json
