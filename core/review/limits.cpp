// Caps against what a device holds, and where low begins.
#include "review/findings.hpp"

namespace stopgap::review {

void look_at_limits(Review& review) {
  const Plan& plan = review.plan;
  const Insulin by_share = plan.limits.share_of_daily * plan.daily_total;
  Insulin capacity = review.devices().front().capacity;
  for (const Device& device : review.devices()) capacity = lesser(capacity, device.capacity);
  const auto over = [&](Insulin cap, std::string path) {
    if (cap > capacity) review.find(figures::cap_in_device, "cap-over-device", FindingLevel::refuse, std::move(path), {{"cap", cap}, {"capacity", capacity}});
  };
  over(plan.limits.single_dose, "/plan/limits/singleDose");
  over(by_share, "/plan/limits/shareOfDaily");

  const Fraction single = plan.limits.share_of_daily.value(), rolling = plan.limits.rolling_share.value();
  if (single > figures::share_of_daily_most.value)
    review.find(figures::share_of_daily_most, "single-share-large", FindingLevel::confirm, "/plan/limits/shareOfDaily",
                {{"percent", Percent{single}}, {"most", Percent{figures::share_of_daily_most.value}}});
  if (rolling > figures::rolling_share_most.value)
    review.find(figures::rolling_share_most, "rolling-share-large", FindingLevel::confirm, "/plan/limits/rollingShare",
                {{"percent", Percent{rolling}}, {"most", Percent{figures::rolling_share_most.value}}});

  const auto& least = plan.unit == GlucoseUnit::mmol ? figures::low_least_mmol : figures::low_least_mg;
  if (plan.low.below < least.value)
    review.find(least, "low-late", FindingLevel::confirm, "/plan/low/below", {{"low", plan.low.below}, {"least", least.value}});
}

}  // namespace stopgap::review
