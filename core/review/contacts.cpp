// Who can be called, and whether somebody answers at night.
#include <optional>
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

// In a sentence: a dash stands where a draft has no number yet.
std::string emergency_of(const Plan& plan) { return plan.emergency_number.empty() ? "\xE2\x80\x93" : plan.emergency_number; }

// A number that a telephone cannot be told to dial. An empty one is found as missing.
void look_at_number(Review& review, const std::string& name, const std::string& phone, std::string path) {
  if (!phone.empty() && !can_be_dialled(phone))
    review.find(figures::number_to_dial, "phone-unclear", FindingLevel::refuse, std::move(path), {{"name", name}, {"phone", phone}});
}

// A moment of the week, in minutes from Monday at 00:00.
constexpr std::int64_t minutes_a_week = minutes_a_day * static_cast<std::int64_t>(figures::weekdays.size());

// The hours in which no contact of the team says that it answers: the longest stretch of the week.
struct Silence {
  std::int64_t from = 0, until = 0;
  bool every_day = false;  // the same at every day of the week, or all the time
};

std::optional<Silence> longest_silence(const std::vector<AnswerHours>& team) {
  std::vector<bool> silent(static_cast<std::size_t>(minutes_a_week));
  const auto monday = Day::epoch_days(static_cast<std::int64_t>(figures::weekdays.size()) - static_cast<std::int64_t>(figures::weekday_of_1970_01_01));
  const Instant week = Instant::epoch_seconds(monday.in_epoch_days() * 86400);
  for (std::int64_t minute = 0; minute < minutes_a_week; ++minute) {
    bool answered = false;
    for (const AnswerHours& hours : team) answered = answered || answers_at(hours, {week + Duration::minutes(minute), Offset{}});
    silent[static_cast<std::size_t>(minute)] = !answered;
  }
  const auto is_silent = [&](std::int64_t minute) { return silent[static_cast<std::size_t>(minute % minutes_a_week)]; };
  std::optional<Silence> longest;
  for (std::int64_t from = 0; from < minutes_a_week; ++from) {
    const bool begins = is_silent(from) && !is_silent(from + minutes_a_week - 1);
    if (!begins) continue;
    std::int64_t until = from;
    while (is_silent(until)) ++until;
    if (!longest || until - from > longest->until - longest->from) longest = Silence{from, until};
  }
  if (!longest && is_silent(0)) longest = Silence{};  // all week
  if (!longest) return std::nullopt;
  longest->every_day = true;
  for (std::int64_t minute = 0; minute < minutes_a_week; ++minute)
    longest->every_day = longest->every_day && is_silent(minute) == is_silent(minute + minutes_a_day);
  return longest;
}

std::string weekday_of(std::int64_t minute) {
  return std::string{figures::weekdays[static_cast<std::size_t>(minute % minutes_a_week / minutes_a_day)]};
}
TimeOfDay clock_of(std::int64_t minute) { return TimeOfDay::minutes(minute % minutes_a_day); }

// Who is rung then: a contact of the team whose hours cannot be read, else the emergency number.
void look_for_silent_hours(Review& review) {
  const Plan& plan = review.plan;
  std::vector<AnswerHours> team;
  std::optional<std::string> instead;
  for (const Contact& contact : plan.contacts) {
    if (contact.relation != Relation::team) continue;
    if (const auto hours = parse_answer_hours(contact.when)) team.push_back(*hours);
    else if (!instead) instead = contact.name;
  }
  const auto silence = longest_silence(team);
  if (!silence) return;
  review.find(figures::team_answers, "no-team-at-some-hour", FindingLevel::confirm, "/plan/contacts",
              {{"days", std::string{silence->every_day ? "every" : "some"}}, {"dayFrom", weekday_of(silence->from)}, {"from", clock_of(silence->from)},
               {"dayUntil", weekday_of(silence->until)}, {"until", clock_of(silence->until)}, {"instead", instead.value_or(emergency_of(plan))}});
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
  const std::string emergency = emergency_of(plan);
  for (std::size_t i = 0; i < plan.contacts.size(); ++i) {
    const Contact& contact = plan.contacts[i];
    look_at_number(review, contact.name, contact.phone, item_path("/plan/contacts", i, "phone"));
    if (contact.relation != Relation::other && !parse_answer_hours(contact.when))
      review.find(figures::team_answers, "hours-unreadable", FindingLevel::confirm, item_path("/plan/contacts", i, "when"),
                  {{"name", contact.name}, {"relation", contact.relation_text}, {"number", emergency}});
  }
  look_at_number(review, plan.emergency_number, plan.emergency_number, "/plan/emergencyNumber");
  if (team) look_for_silent_hours(review);
  if (plan.emergency_number.empty())
    review.find(figures::reachable_contact, "no-emergency-number", FindingLevel::refuse, "/plan/emergencyNumber", {});
}

}  // namespace stopgap::review
