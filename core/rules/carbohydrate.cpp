#include "rules/carbohydrate.hpp"

#include "figures/carbohydrate.hpp"

namespace stopgap::rules {

Carbohydrate matched_in_full(const Facts& facts, Insulin rescue, bool absorbed) {
  const Insulin acting = absorbed ? facts.absorbed : facts.counted;
  const Insulin surplus = at_least_none(rescue + acting - facts.correction_for_carbohydrate());
  return (surplus * facts.ratio).up_to(figures::carbohydrate_step.value);
}

Carbohydrate matched(const Facts& facts, Insulin rescue, bool absorbed) {
  return lesser(matched_in_full(facts, rescue, absorbed), figures::carbohydrate_at_once.value);
}

Carbohydrate for_a_low(const Facts& facts) {
  const Carbohydrate acting = (facts.absorbed * facts.ratio).up_to(figures::carbohydrate_step.value);
  return greater(facts.plan.low.grams, lesser(acting, figures::carbohydrate_at_once.value));
}

}  // namespace stopgap::rules
