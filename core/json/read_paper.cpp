#include "json/read_paper.hpp"

#include <algorithm>
#include "json/fields.hpp"
#include "json/words.hpp"

namespace stopgap::json {

Paper read_paper(const Node& node, std::string_view path, Refusals& refusals) {
  return word<Paper>(root_item(node, path, refusals), words::papers).value_or(Paper::a4);
}

std::vector<std::string_view> read_languages(const Node& node, std::string_view path, Refusals& refusals) {
  std::vector<std::string_view> out;
  const Elements list{root_item(node, path, refusals), 0, words::travel_languages.size()};
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto index = word_index(list[i], words::travel_languages.data(), words::travel_languages.size(), Reason::outOfRange);
    if (!index) continue;
    const std::string_view language = words::travel_languages[*index];
    if (std::find(out.begin(), out.end(), language) != out.end()) list[i].refuse(Reason::contradiction, {});
    else out.push_back(language);
  }
  return out;
}

void refuse_unless_agreed(const Plan& plan, std::string_view path, Refusals& refusals) {
  if (plan.agreement.status == PlanStatus::agreed) return;
  const auto word_of = [](PlanStatus status) { return std::string{words::plan_statuses[static_cast<std::size_t>(status)]}; };
  refusals.add(std::string{path} + "/agreement/status", Reason::contradiction, word_of(plan.agreement.status), word_of(PlanStatus::agreed));
}

}  // namespace stopgap::json
