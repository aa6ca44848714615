// Who can be called, and whether somebody answers at night.
#include "figures/contacts.hpp"
#include "model/contacts.hpp"
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

bool reachable_at_night(std::string_view when) {
  const auto hours = parse_answer_hours(when);
  if (!hours) return false;  // what is not known is not counted on
  const TimeOfDay begins = figures::night_begins.value, ends = figures::night_ends.value;
  bool all_night = true;
  for (std::int64_t day = 0; day < static_cast<std::int64_t>(figures::weekdays.size()); ++day)
    for (std::int64_t minute = begins.in_minutes(); minute < minutes_a_day + ends.in_minutes(); ++minute)
      all_night = all_night && answers_at(*hours, {Instant::epoch_seconds(day * 86400 + minute * 60), Offset{}});
  return all_night;
}

}  // namespace

void look_at_contacts(Review& review) {
  const Plan& plan = review.plan;
  bool at_night = false, team = false, home = false;
  for (const Contact& contact : plan.contacts) {
    at_night = at_night || reachable_at_night(contact.when);
    team = team || contact.relation == Relation::team;
    home = home || contact.relation == Relation::home;
  }
  if (!at_night) review.find(figures::reachable_contact, "no-contact-at-night", FindingLevel::refuse, "/plan/contacts",
                              {{"from", figures::night_begins.value}, {"until", figures::night_ends.value}});
  // "Call the team" would show a button that calls nobody.
  if (!team) review.find(figures::reachable_contact, "no-team-contact", FindingLevel::refuse, "/plan/contacts", {});
  // A school phones home whenever its orders end.
  if (!home && plan.school) review.find(figures::reachable_contact, "no-home-contact", FindingLevel::refuse, "/plan/contacts", {});
  if (plan.emergency_number.empty())
    review.find(figures::reachable_contact, "no-emergency-number", FindingLevel::refuse, "/plan/emergencyNumber", {});
}

}  // namespace stopgap::review
