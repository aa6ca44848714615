// The person and the agreement: what was measured, when, and who has agreed to what.
#include "figures/timing.hpp"
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

// A share of the weight that the formula for small children gives, or an adult's weight against wide bounds: pounds typed for
// kilograms double every dose by weight.
void look_at_weight(Review& review) {
  const Plan::Person& person = review.plan.person;
  const Fraction kg = Fraction::of(person.weight.in_kg_tenths(), 10);
  const std::int64_t years = years_between(person.born, person.measured_on);
  const auto tell = [&](const auto& figure, Fraction least, Fraction most) {
    if (kg < least || kg > most)
      review.find(figure, "weight-for-age", FindingLevel::confirm, "/plan/person/weightKg",
                  {{"weight", PlainNumber{kg}}, {"years", whole(years)}, {"least", PlainNumber{least}}, {"most", PlainNumber{most}}});
  };
  if (years >= figures::weight_formula_from.value && years <= figures::weight_formula_to.value) {
    const Fraction expected{figures::weight_formula_each.value * (years + figures::weight_formula_added.value)};
    tell(figures::weight_off, expected / figures::weight_off.value, expected * figures::weight_off.value);
  }
  if (years >= figures::adult_years.value)
    tell(figures::adult_weight_least, Fraction{figures::adult_weight_least.value}, Fraction{figures::adult_weight_most.value});
}

}  // namespace

void look_at_person(Review& review) {
  const Plan::Person& person = review.plan.person;
  const Plan::Agreement& agreement = review.plan.agreement;
  look_at_weight(review);
  if (person.measured_on > agreement.on) {
    review.find(figures::dates_in_order, "measured-after-agreement", FindingLevel::confirm, "/plan/person/measuredOn",
                {{"measured", person.measured_on}, {"agreed", agreement.on}});
    return;
  }
  // An adult's weight is told as well: every dose of such a plan would carry the caution for an old weight from its first day.
  const bool child = years_between(person.born, agreement.on) < figures::adult_years.value;
  const auto& limit = child ? figures::child_weight_days : figures::adult_weight_days;
  const std::int64_t age = agreement.on.in_epoch_days() - person.measured_on.in_epoch_days();
  if (age > limit.value)
    review.find(limit, "measured-long-ago", FindingLevel::note, "/plan/person/measuredOn",
                {{"measured", person.measured_on}, {"days", whole(age)}, {"limit", whole(limit.value)}});
}

void look_at_agreement(Review& review) {
  const Plan::Agreement& agreement = review.plan.agreement;
  // The day before the review already a whole number of years later: over the limit, not at it.
  if (years_between(agreement.on, agreement.review_by.plus_days(-1)) >= figures::review_years.value)
    review.find(figures::review_years, "review-far-ahead", FindingLevel::confirm, "/plan/agreement/reviewBy",
                {{"review", agreement.review_by}, {"agreed", agreement.on}});
  for (const std::string_view rule : figures::house_rules_to_agree) {
    bool listed = false;
    for (const std::string& agreed : agreement.house_rules) listed = listed || agreed == rule;
    if (!listed)
      review.find(figures::house_rules_agreed, "house-rule-not-agreed", FindingLevel::refuse, "/plan/agreement/houseRules", {{"rule", std::string{rule}}});
  }
}

}  // namespace stopgap::review
