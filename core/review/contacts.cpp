// Who can be called, and whether somebody answers at night.
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

constexpr std::string_view any_hour = "any hour";

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// "any hour", or one span of clock times such as "20:00-08:00" that holds the whole night. Anything else, and nothing at all,
// does not say that somebody answers at night: what is not known is not counted on.
bool reachable_at_night(std::string_view when) {
  when = without_blanks(when);
  if (when == any_hour) return true;
  const std::size_t dash = when.find('-');
  if (dash == std::string_view::npos) return false;
  const auto from = parse_time_of_day(without_blanks(when.substr(0, dash))), until = parse_time_of_day(without_blanks(when.substr(dash + 1)));
  if (!from || !until) return false;
  constexpr std::int64_t day = minutes_a_day;
  const auto minutes_after = [&](std::int64_t minute) { return (minute - from->in_minutes() + day) % day; };
  const std::int64_t open = *from == *until ? day : minutes_after(until->in_minutes());
  const std::int64_t night_begins = minutes_after(figures::night_begins.value.in_minutes());
  const std::int64_t night = (figures::night_ends.value.in_minutes() - figures::night_begins.value.in_minutes() + day) % day;
  return night_begins + night <= open;
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
  if (!at_night) review.find(figures::reachable_contact, "no-contact-at-night", FindingLevel::refuse, "/plan/contacts", {});
  // "Call the team" would show the first contact of the list, whoever that is.
  if (!team && !plan.contacts.empty()) review.find(figures::reachable_contact, "no-team-contact", FindingLevel::confirm, "/plan/contacts", {});
  // A school phones home before its first dose.
  if (!home && plan.school) review.find(figures::reachable_contact, "no-home-contact", FindingLevel::confirm, "/plan/contacts", {});
  if (plan.emergency_number.empty())
    review.find(figures::reachable_contact, "no-emergency-number", FindingLevel::refuse, "/plan/emergencyNumber", {});
}

}  // namespace stopgap::review
