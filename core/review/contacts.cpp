// Who can be called, and whether somebody answers at night.
#include <algorithm>
#include "review/findings.hpp"

namespace stopgap::review {
namespace {

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// "any hour", or one span of clock times such as "20:00-08:00" that holds the whole night. Anything else, and nothing at all,
// does not say that somebody answers at night: what is not known is not counted on.
bool reachable_at_night(std::string_view when) {
  when = without_blanks(when);
  const auto same_letter = [](char a, char b) { return a == b || (a >= 'A' && a <= 'Z' && a - 'A' + 'a' == b); };
  if (std::equal(when.begin(), when.end(), figures::any_hour.begin(), figures::any_hour.end(), same_letter)) return true;
  // A hyphen or the dash that printers put between two times.
  constexpr std::string_view hyphen = "-", long_dash = "\xE2\x80\x93";
  const std::string_view dash = when.find(long_dash) == std::string_view::npos ? hyphen : long_dash;
  const std::size_t place = when.find(dash);
  if (place == std::string_view::npos) return false;
  const auto from = parse_time_of_day(without_blanks(when.substr(0, place)));
  const auto until = parse_time_of_day(without_blanks(when.substr(place + dash.size())));
  if (!from || !until) return false;
  if (*from == *until) return true;  // round the clock
  constexpr std::int64_t day = minutes_a_day;
  const auto minutes_after = [&](std::int64_t minute) { return (minute - from->in_minutes() + day) % day; };
  const std::int64_t open = minutes_after(until->in_minutes());
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
