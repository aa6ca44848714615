// Factor, ratio, basal and weight against the daily total: rules of thumb that find slips of the pen. They never set a number.
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

constexpr std::string_view factors = "/plan/day/correctionFactor", ratios = "/plan/day/carbohydrateRatio";

Fraction daily_units(const Review& review) { return review.plan.daily_total.in_units(); }

// A number times the daily total, as a share of what the rule of thumb says: 1 is exactly the rule.
Fraction share_of_rule(const Review& review, Fraction value, Fraction rule) { return value * daily_units(review) / rule; }

bool is_off_by(Fraction share, Fraction limit) { return share > Fraction{1} + limit || share < Fraction{1} - limit; }

const Figure<GlucoseFall>& factor_rule(const Review& review) {
  return review.plan.unit == GlucoseUnit::mmol ? figures::yardstick_correction_mmol : figures::yardstick_correction_mg;
}
// A display step of the plan's own numbers: whole grains of 1 mmol/L or of 1 mg/dL.
Fraction grains_of_one(const Review& review) {
  return Fraction{(review.plan.unit == GlucoseUnit::mmol ? GlucoseFall::mmol_tenths(10) : GlucoseFall::mg(1)).in_grains()};
}
Fraction factor_share(const Review& review, CorrectionFactor factor) {
  return share_of_rule(review, Fraction{factor.in_grains_per_unit()}, Fraction{factor_rule(review).value.in_grains()});
}
Fraction ratio_share(const Review& review, CarbohydrateRatio ratio) {
  return share_of_rule(review, ratio.in_grams_per_unit(), figures::yardstick_carbohydrate.value.in_grams());
}

// A rule's number for this daily total, and the ends within which nothing is asked.
struct Expected {
  Fraction rule, from, to;
};
Expected expected(const Review& review, Fraction rule) {
  const Fraction here = rule / daily_units(review), off = figures::yardstick_off_confirm.value;
  return {here, here * (Fraction{1} - off), here * (Fraction{1} + off)};
}
GlucoseFall fall_of(Fraction grains) { return GlucoseFall::grains(grains.floor()); }

template <class Value>
void against_rule(Review& review, const Figure<Value>& rule, Fraction share, std::string_view id, std::string path, SlotValue value,
                  SlotValue yardstick) {
  if (!is_off_by(share, figures::yardstick_off_confirm.value)) return;
  const FindingLevel level = is_off_by(share, figures::yardstick_off_refuse.value) ? FindingLevel::refuse : FindingLevel::confirm;
  review.find(rule, id, level, std::move(path), {{"value", std::move(value)}, {"yardstick", std::move(yardstick)}, {"percent", Percent{share}}, {"total", review.plan.daily_total}});
}

void look_at_factors(Review& review) {
  const auto& entries = review.plan.correction_factor.entries;
  const Expected here = expected(review, Fraction{factor_rule(review).value.in_grains()});
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const Fraction share = factor_share(review, entries[i].value);
    const GlucoseFall fall = GlucoseFall::grains(entries[i].value.in_grains_per_unit());
    const std::string place = item_path(factors, i, "value");
    review.measure(factor_rule(review), "correction-factor", place, fall, fall_of(here.rule), fall_of(here.from), fall_of(here.to));
    against_rule(review, factor_rule(review), share, "correction-factor-far-off", item_path(factors, i, "value"), fall, fall_of(here.rule));
    const Fraction slip = figures::factor_unit_slip.value, ordinary = figures::yardstick_off_confirm.value;
    if (!is_off_by(share / slip, ordinary) || !is_off_by(share * slip, ordinary))
      review.find(figures::factor_unit_slip, "correction-factor-other-unit", FindingLevel::refuse, item_path(factors, i, "value"), {{"value", fall}});
  }
}

void look_at_ratios(Review& review) {
  const auto& entries = review.plan.carbohydrate_ratio.entries;
  const Expected here = expected(review, figures::yardstick_carbohydrate.value.in_grams());
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const PlainNumber ratio{entries[i].value.in_grams_per_unit()};
    const std::string place = item_path(ratios, i, "value");
    review.measure(figures::yardstick_carbohydrate, "carbohydrate-ratio", place, ratio, PlainNumber{here.rule},
                   PlainNumber{here.from}, PlainNumber{here.to});
    against_rule(review, figures::yardstick_carbohydrate, ratio_share(review, entries[i].value), "carbohydrate-ratio-far-off",
                 item_path(ratios, i, "value"), ratio, PlainNumber{here.rule});
  }
}

// Each number in the other's place: as written both are off their rule, exchanged neither is.
void look_for_a_swap(Review& review) {
  const Fraction limit = figures::factor_ratio_swap.value, one = grains_of_one(review);
  const auto& entries = review.plan.correction_factor.entries;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const CarbohydrateRatio ratio = review.plan.carbohydrate_ratio.at(entries[i].from);
    const Fraction as_number = Fraction{entries[i].value.in_grains_per_unit()} / one;
    const Fraction factor_exchanged = share_of_rule(review, ratio.in_grams_per_unit() * one, Fraction{factor_rule(review).value.in_grains()});
    const Fraction ratio_exchanged = share_of_rule(review, as_number, figures::yardstick_carbohydrate.value.in_grams());
    const bool both_off = is_off_by(factor_share(review, entries[i].value), limit) && is_off_by(ratio_share(review, ratio), limit);
    if (both_off && !is_off_by(factor_exchanged, limit) && !is_off_by(ratio_exchanged, limit))
      review.find(figures::factor_ratio_swap, "factor-and-ratio-swapped", FindingLevel::refuse, item_path(factors, i, "value"),
                  {{"factor", PlainNumber{as_number}}, {"ratio", PlainNumber{ratio.in_grams_per_unit()}}});
  }
}

void look_at_basal(Review& review) {
  const auto& entries = review.plan.basal.entries;
  Fraction units;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::int64_t until = i + 1 < entries.size() ? entries[i + 1].from.in_minutes() : minutes_a_day;
    units = units + Fraction::of(entries[i].value.in_hundredths_per_hour() * (until - entries[i].from.in_minutes()), 100 * 60);
  }
  const Fraction share = units / daily_units(review);
  const std::vector<Slot> slots{{"basal", Insulin::exactly(units)}, {"percent", Percent{share}}, {"total", review.plan.daily_total},
                                {"least", Percent{figures::basal_share_least.value}}, {"most", Percent{figures::basal_share_most.value}}};
  review.measure(figures::basal_share_most, "basal-share", "/plan/day/basal", Percent{share}, std::nullopt, Percent{figures::basal_share_least.value},
                 Percent{figures::basal_share_most.value});
  if (share >= figures::basal_share_all.value)
    review.find(figures::basal_share_all, "basal-share", FindingLevel::refuse, "/plan/day/basal", slots);
  else if (share < figures::basal_share_least.value || share > figures::basal_share_most.value)
    review.find(figures::basal_share_most, "basal-share", FindingLevel::confirm, "/plan/day/basal", slots);
}

void look_at_daily_total(Review& review) {
  const Insulin total = review.plan.daily_total;
  const Fraction per_kg = total.in_units() * Fraction{10} / Fraction{review.plan.person.weight.in_kg_tenths()};
  review.measure(figures::daily_per_kg_most, "daily-total-per-kg", "/plan/dailyTotal", PlainNumber{per_kg}, std::nullopt,
                 PlainNumber{figures::daily_per_kg_least.value}, PlainNumber{figures::daily_per_kg_most.value});
  review.measure(figures::daily_total_most, "daily-total", "/plan/dailyTotal", total, std::nullopt, figures::daily_total_least.value,
                 figures::daily_total_most.value);
  if (per_kg < figures::daily_per_kg_least.value || per_kg > figures::daily_per_kg_most.value)
    review.find(figures::daily_per_kg_most, "daily-total-per-kg", FindingLevel::confirm, "/plan/dailyTotal", 
                {{"total", total}, {"perKg", PlainNumber{per_kg}}, {"least", PlainNumber{figures::daily_per_kg_least.value}},
                 {"most", PlainNumber{figures::daily_per_kg_most.value}}});
  if (total < figures::daily_total_least.value || total > figures::daily_total_most.value)
    review.find(figures::daily_total_most, "daily-total-unusual", FindingLevel::confirm, "/plan/dailyTotal",
                {{"total", total}, {"least", figures::daily_total_least.value}, {"most", figures::daily_total_most.value}});
}

}  // namespace

void look_at_yardsticks(Review& review) {
  look_at_daily_total(review);
  look_at_factors(review);
  look_for_a_swap(review);
  look_at_ratios(review);
  look_at_basal(review);
}

}  // namespace stopgap::review
