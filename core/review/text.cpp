// The texts of a plan: a character that nobody can see makes two names that look the same differ, and a name begin with something else
// than it seems to. Such a plan is never agreed. One that is in use already goes on giving its doses: taking it away at night is worse.
#include "review/findings.hpp"

namespace stopgap::review {

void look_at_text(Review& review, const std::vector<HiddenCharacter>& hidden) {
  for (const HiddenCharacter& place : hidden)
    review.find(figures::text_is_seen, "hidden-character", FindingLevel::refuse, place.path, {{"code", place.code}});
}

}  // namespace stopgap::review
