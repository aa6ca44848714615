// What the parts of the review share: the plan as it would be used, the times its settings change, and the list of findings.
// Each part looks at one subject and names its findings in kebab case; a threshold comes from figures/review.hpp with its mark.
#pragma once
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>
#include "figures/review.hpp"
#include "model/answers.hpp"
#include "model/hidden_character.hpp"
#include "table.hpp"

namespace stopgap::review {

// A time of day from which factor, ratio and target stand as they are.
struct Setting {
  TimeOfDay from;
  CorrectionFactor factor;
  CarbohydrateRatio ratio;
  Glucose target;
  bool same_values(const Setting& other) const { return factor == other.factor && ratio == other.ratio && target == other.target; }
};

class Review {
 public:
  explicit Review(const Plan& as_written);

  // A draft gives no dose: doses are worked out as if it were agreed, on the day of its agreement.
  Plan plan;
  std::vector<Setting> settings;
  std::vector<Glucose> rows;     // the rows of the table and every column edge from the carbohydrate-only level up
  std::vector<Finding> findings;
  std::vector<Yardstick> yardsticks;

  Moment at(TimeOfDay time) const;
  // The column of the ketone table a glucose falls in.
  std::size_t column_of(Glucose glucose) const;
  // Every device a dose may be drawn with.
  std::vector<Device> devices() const;

  template <class Value>
  void find(const Figure<Value>& figure, std::string_view id, FindingLevel level, std::string path, std::vector<Slot> slots) {
    findings.push_back({id, level, std::move(path), std::move(slots), figure.mark, figure.source, {}, {}, {}});
  }
  void find(const figures::Ground& ground, std::string_view id, FindingLevel level, std::string path, std::vector<Slot> slots) {
    findings.push_back({id, level, std::move(path), std::move(slots), ground.mark, ground.source, {}, {}, {}});
  }
  // Beside a number, whether or not anything is found in it.
  template <class Value>
  void measure(const Figure<Value>& rule, std::string_view id, std::string path, SlotValue have, std::optional<SlotValue> expected,
               SlotValue from, SlotValue to) {
    yardsticks.push_back({id, std::move(path), std::move(have), std::move(expected), std::move(from), std::move(to), rule.mark, rule.source});
  }
};

inline constexpr std::int64_t minutes_a_day = 86400 / 60;

inline std::string item_path(std::string_view list, std::size_t index, std::string_view key) {
  return std::string{list} + "/" + std::to_string(index) + "/" + std::string{key};
}
inline std::string cell_path(std::size_t row, std::size_t column) {
  return item_path("/plan/ketones/rows", row, "cells/") + std::to_string(column);
}
inline PlainNumber hours(Duration span) { return {Fraction::of(span.in_seconds(), 3600)}; }
inline PlainNumber minutes(Duration span) { return {Fraction::of(span.in_seconds(), 60)}; }
inline PlainNumber whole(std::int64_t count) { return {Fraction{count}}; }

// In the order of a plan's text.
void look_at_person(Review& review);
void look_at_agreement(Review& review);
void look_at_insulins(Review& review);
void look_at_yardsticks(Review& review);
void look_at_schedules(Review& review);
void look_at_high(Review& review);
void look_at_ketone_rows(Review& review);
void look_at_extras(Review& review);
void look_at_doses(Review& review);
// Part of the doses: what one of them alone would do.
void look_at_deep_doses(Review& review);
void look_at_fallbacks(Review& review);
void look_at_limits(Review& review);
void look_at_times(Review& review);
void look_at_contacts(Review& review);
void look_at_text(Review& review, const std::vector<HiddenCharacter>& hidden);

}  // namespace stopgap::review
