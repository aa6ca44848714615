// The names of the two insulins: each in its own place, and a name that is known.
#include <algorithm>
#include "figures/insulins.hpp"
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// The words of a name in small letters: "Insulin glargine 100" has glargine among them.
std::vector<std::string> words_of(std::string_view name) {
  std::vector<std::string> words;
  bool inside = false;
  for (const char c : name) {
    if (!is_letter(c)) {
      inside = false;
      continue;
    }
    if (!inside) words.emplace_back();
    inside = true;
    words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return words;
}

template <class Names>
bool names_one_of(const std::vector<std::string>& words, const Names& names) {
  return std::any_of(names.begin(), names.end(), [&](std::string_view name) { return std::find(words.begin(), words.end(), name) != words.end(); });
}

template <class Own, class Others>
void look_at_name(Review& review, std::string_view slot, const std::string& name, const Own& own, const Others& others, std::string path) {
  const std::vector<std::string> words = words_of(name);
  const std::vector<Slot> slots{{"slot", std::string{slot}}, {"name", name}};
  if (names_one_of(words, others))
    review.find(figures::insulin_names, "insulin-of-the-other-kind", FindingLevel::refuse, std::move(path), slots);
  else if (!names_one_of(words, own))
    review.find(figures::insulin_names, "insulin-name-unknown", FindingLevel::confirm, std::move(path), slots);
}

}  // namespace

void look_at_insulins(Review& review) {
  const Plan& plan = review.plan;
  look_at_name(review, "rapid", plan.rapid.name, figures::rapid_names, figures::slow_names, "/plan/rapid/name");
  if (plan.long_acting) look_at_name(review, "long", plan.long_acting->name, figures::long_names, figures::fast_names, "/plan/longActing/name");
}

}  // namespace stopgap::review
