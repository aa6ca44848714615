// A cell written as times the correction has a fallback, which is given where there is no correction to multiply: at HI, and for a
// sensor's number. So each finding on doses is looked for a second time, with every fallback standing in its cell, at the lower edge
// of its column.
#include <algorithm>
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

// The paths of the cells that have one.
std::vector<std::string> put_fallbacks_in_place(Plan& plan) {
  std::vector<std::string> places;
  const auto put = [&](Cell& cell, std::string path) {
    if (cell.fallback.empty()) return;
    const Cell fallback = cell.fallback.front();
    cell = fallback;
    places.push_back(std::move(path));
  };
  for (std::size_t r = 0; r < plan.ketones.rows.size(); ++r)
    for (std::size_t c = 0; c < plan.ketones.rows[r].cells.size(); ++c) put(plan.ketones.rows[r].cells[c], cell_path(r, c));
  put(plan.ketones.hi, "/plan/ketones/hi");
  if (plan.ketones.any_glucose) put(*plan.ketones.any_glucose, "/plan/ketones/anyGlucose");
  return places;
}

}  // namespace

void look_at_fallbacks(Review& review) {
  Plan plan = review.plan;
  const std::vector<std::string> places = put_fallbacks_in_place(plan);
  if (places.empty()) return;
  Review work{plan};
  work.rows.clear();
  for (const Glucose edge : plan.ketones.columns) work.rows.push_back(std::max(edge, plan.ketones.carbohydrate_only_below));
  work.rows.erase(std::unique(work.rows.begin(), work.rows.end()), work.rows.end());
  look_at_extras(work);
  look_at_deep_doses(work);
  for (Finding& finding : work.findings) {
    const auto same = [&](const Finding& other) { return other.id == finding.id && other.path == finding.path; };
    const bool idle = finding.level == FindingLevel::note;
    if (idle || std::any_of(review.findings.begin(), review.findings.end(), same)) continue;
    if (std::find(places.begin(), places.end(), finding.path) != places.end()) finding.path += "/fallback";
    review.findings.push_back(std::move(finding));
  }
}

}  // namespace stopgap::review
