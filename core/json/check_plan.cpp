// What may not stand together in one plan. Only numbers that are good by themselves are compared.
#include "json/plan_reader.hpp"

namespace stopgap::json {

// veryLow < below < carbohydrateOnlyBelow <= middle <= trigger <= dosingCeiling, each broken one at the later field.
void PlanReader::check_levels() {
  if (!unit_known_) return;
  struct Step {
    const std::optional<Number>& before;
    const std::optional<Number>& after;
    std::string_view place;
    std::int64_t least_above;  // 1 where the two may not be equal
    const figures::GlucoseRange& range;
  };
  const Step steps[] = {
      {compared_.very_low, compared_.below, "/low/below", 1, figures::level_range},
      {compared_.below, compared_.carbohydrate_only_below, "/ketones/carbohydrateOnlyBelow", 1, figures::level_range},
      {compared_.carbohydrate_only_below, compared_.middle, "/high/middle", 0, figures::level_range},
      {compared_.middle, compared_.trigger, "/high/trigger", 0, figures::trigger_range},
      {compared_.trigger, compared_.ceiling, "/limits/dosingCeiling", 0, figures::ceiling_range}};
  for (const Step& step : steps) {
    if (!step.before || !step.after || step.after->count >= step.before->count + step.least_above) continue;
    figures::Range accepted = step.range.in(plan_.unit);
    accepted.lowest = step.before->count + step.least_above;
    contradict(step.place, step.after->typed, range_text(accepted));
  }
}

void PlanReader::check_edges() {
  const auto is_among = [](const std::vector<Number>& edges, std::int64_t count) {
    for (const Number& edge : edges)
      if (edge.count == count) return true;
    return false;
  };
  const auto listed = [](const std::vector<Number>& edges, int digits) {
    std::string out;
    for (const Number& edge : edges) out += (out.empty() ? "" : ", ") + decimal_text(edge.count, digits);
    return out;
  };
  // Both are counted in the same steps: middle, trigger and column edges share their last decimal.
  if (compared_.columns_good && compared_.middle && !is_among(compared_.columns, compared_.middle->count))
    contradict("/high/middle", compared_.middle->typed, listed(compared_.columns, level_digits()));
  if (compared_.columns_good && compared_.trigger && !is_among(compared_.columns, compared_.trigger->count))
    contradict("/high/trigger", compared_.trigger->typed, listed(compared_.columns, level_digits()));
  if (compared_.rows_good && compared_.act_from && !is_among(compared_.row_edges, compared_.act_from->count))
    contradict("/ketones/actFrom", compared_.act_from->typed, listed(compared_.row_edges, figures::ketone_edge_range.digits));
}

void PlanReader::check_rest() {
  const auto at_least = [this](std::string_view place, const std::optional<Number>& after, const std::optional<Number>& before,
                               std::int64_t least_above, figures::Range range) {
    if (!before || !after || after->count >= before->count + least_above) return;
    range.lowest = before->count + least_above;
    contradict(place, after->typed, range_text(range));
  };
  at_least("/high/secondLook", compared_.second_look, compared_.first_look, 1, figures::look_minutes_range);
  at_least("/limits/rollingShare", compared_.rolling_share, compared_.share_of_daily, 0, figures::rolling_share_range);
}

}  // namespace stopgap::json
