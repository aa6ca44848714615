#include "model/contacts.hpp"

#include <algorithm>
#include "figures/contacts.hpp"

namespace stopgap {
namespace {

constexpr std::size_t days_a_week = figures::weekdays.size();
using Days = std::array<bool, days_a_week>;

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool same_word(std::string_view a, std::string_view b) {
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return lower(x) == lower(y); });
}

struct Two {
  std::string_view before, after;
};

// What stands on either side of the one dash.
std::optional<Two> around_the_dash(std::string_view text) {
  constexpr std::string_view hyphen = "-", long_dash = "\xE2\x80\x93";
  const std::string_view dash = text.find(long_dash) == std::string_view::npos ? hyphen : long_dash;
  const std::size_t place = text.find(dash);
  if (place == std::string_view::npos) return std::nullopt;
  return Two{without_blanks(text.substr(0, place)), without_blanks(text.substr(place + dash.size()))};
}

std::optional<std::size_t> weekday_named(std::string_view text) {
  for (std::size_t i = 0; i < days_a_week; ++i)
    if (same_word(text, figures::weekdays[i])) return i;
  return std::nullopt;
}

// One day, or from one day to another, over Sunday if need be.
std::optional<Days> parse_days(std::string_view text) {
  Days days{};
  if (const auto one = weekday_named(text)) {
    days[*one] = true;
    return days;
  }
  const auto ends = around_the_dash(text);
  if (!ends) return std::nullopt;
  const auto first = weekday_named(ends->before), last = weekday_named(ends->after);
  if (!first || !last) return std::nullopt;
  for (std::size_t day = *first;; day = (day + 1) % days_a_week) {
    days[day] = true;
    if (day == *last) return days;
  }
}

std::size_t weekday_of(Day day) {
  constexpr std::int64_t week = days_a_week, first = figures::weekday_of_1970_01_01;
  return static_cast<std::size_t>(((day.in_epoch_days() + first) % week + week) % week);
}

}  // namespace

std::optional<AnswerHours> parse_answer_hours(std::string_view when) {
  when = without_blanks(when);
  AnswerHours hours;
  if (same_word(when, figures::any_hour)) return hours;
  const std::size_t first_digit = when.find_first_of("0123456789");
  if (first_digit == std::string_view::npos) return std::nullopt;
  if (first_digit > 0) {
    // A blank stands between the days and the span.
    if (when[first_digit - 1] != ' ') return std::nullopt;
    const auto days = parse_days(without_blanks(when.substr(0, first_digit)));
    if (!days) return std::nullopt;
    hours.days = *days;
  }
  const auto ends = around_the_dash(when.substr(first_digit));
  if (!ends) return std::nullopt;
  const auto from = parse_time_of_day(ends->before), until = parse_time_of_day(ends->after);
  if (!from || !until) return std::nullopt;
  hours.from = *from;
  hours.until = *until;
  return hours;
}

bool answers_at(const AnswerHours& hours, const Moment& local) {
  const std::size_t today = weekday_of(local_day(local)), yesterday = (today + days_a_week - 1) % days_a_week;
  const TimeOfDay time = local_time(local);
  const bool over_midnight = hours.until <= hours.from;
  if (!over_midnight) return hours.days[today] && time >= hours.from && time < hours.until;
  return (hours.days[today] && time >= hours.from) || (hours.days[yesterday] && time < hours.until);
}

bool can_be_dialled(std::string_view phone) {
  phone = without_blanks(phone);
  if (phone.starts_with('+')) phone.remove_prefix(1);
  std::size_t digits = 0;
  for (const char c : phone) {
    if (c >= '0' && c <= '9') ++digits;
    else if (c != ' ' && c != '-') return false;
  }
  return digits >= figures::phone_digits_least && digits <= figures::phone_digits_most;
}

Ring ring_at(const Plan& plan, const Moment& local) {
  const auto answers = [&](const Contact& contact) {
    const auto hours = parse_answer_hours(contact.when);
    if (!hours) return Answers::unreadable;
    return answers_at(*hours, local) ? Answers::now : Answers::notNow;
  };
  const auto add = [&](std::vector<Ringing>& list, Relation relation, Answers wanted) {
    for (const Contact& contact : plan.contacts)
      if (contact.relation == relation && answers(contact) == wanted) list.push_back({&contact, wanted});
  };
  Ring ring;
  add(ring.team, Relation::team, Answers::unreadable);
  add(ring.team, Relation::team, Answers::now);
  add(ring.home, Relation::home, Answers::now);
  add(ring.home, Relation::home, Answers::unreadable);
  add(ring.home, Relation::home, Answers::notNow);
  return ring;
}

}  // namespace stopgap
