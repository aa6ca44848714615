#include "units/time.hpp"

#include <chrono>

namespace stopgap {
namespace {

namespace calendar = std::chrono;  // calendar arithmetic only; the clocks of this header are never read

constexpr std::int64_t seconds_a_day = 86400;
constexpr std::int64_t seconds_a_minute = 60;
constexpr int first_year = 1900, last_year = 2199;

std::int64_t floor_divide(std::int64_t a, std::int64_t b) {
  const std::int64_t towards_zero = a / b;
  return a % b < 0 ? towards_zero - 1 : towards_zero;
}

std::int64_t local_seconds(const Moment& moment) {
  return moment.instant.in_epoch_seconds() + moment.offset.in_minutes_east() * seconds_a_minute;
}

// Reads exactly `digits` decimal digits at `at`; nothing on anything else.
std::optional<int> number(std::string_view text, std::size_t at, std::size_t digits) {
  if (at + digits > text.size()) return std::nullopt;
  int value = 0;
  for (std::size_t i = at; i < at + digits; ++i) {
    if (text[i] < '0' || text[i] > '9') return std::nullopt;
    value = value * 10 + (text[i] - '0');
  }
  return value;
}

void two_digits(std::string& out, std::int64_t value) {
  out += static_cast<char>('0' + value / 10 % 10);
  out += static_cast<char>('0' + value % 10);
}

}  // namespace

Instant start_in_utc(Day day) { return Instant::epoch_seconds(day.in_epoch_days() * seconds_a_day); }

Day local_day(const Moment& moment) { return Day::epoch_days(floor_divide(local_seconds(moment), seconds_a_day)); }

TimeOfDay local_time(const Moment& moment) {
  const std::int64_t seconds = local_seconds(moment);
  return TimeOfDay::minutes((seconds - floor_divide(seconds, seconds_a_day) * seconds_a_day) / seconds_a_minute);
}

std::int64_t years_between(Day born, Day on) {
  const calendar::year_month_day a{calendar::sys_days{calendar::days{born.in_epoch_days()}}};
  const calendar::year_month_day b{calendar::sys_days{calendar::days{on.in_epoch_days()}}};
  const int years = static_cast<int>(b.year()) - static_cast<int>(a.year());
  const bool before_birthday = b.month() < a.month() || (b.month() == a.month() && b.day() < a.day());
  return before_birthday ? years - 1 : years;
}

std::optional<Day> parse_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = number(text, 0, 4), month = number(text, 5, 2), day = number(text, 8, 2);
  if (!year || !month || !day || *year < first_year || *year > last_year) return std::nullopt;
  const calendar::year_month_day date{calendar::year{*year}, calendar::month{static_cast<unsigned>(*month)},
                                      calendar::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) return std::nullopt;
  return Day::epoch_days(calendar::sys_days{date}.time_since_epoch().count());
}

std::optional<TimeOfDay> parse_time_of_day(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto hour = number(text, 0, 2), minute = number(text, 3, 2);
  if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
  return TimeOfDay::minutes(*hour * 60 + *minute);
}

std::optional<Moment> parse_moment(std::string_view text) {
  if (text.size() < 17 || text[10] != 'T') return std::nullopt;
  const auto day = parse_day(text.substr(0, 10));
  const auto time = parse_time_of_day(text.substr(11, 5));
  if (!day || !time) return std::nullopt;
  std::size_t at = 16;
  int seconds = 0;
  if (text[at] == ':') {
    const auto read = number(text, at + 1, 2);
    if (!read || *read > 59) return std::nullopt;
    seconds = *read;
    at += 3;
  }
  const std::string_view zone = text.substr(at);
  std::int64_t east = 0;
  if (zone != "Z") {
    if (zone.size() != 6 || (zone[0] != '+' && zone[0] != '-')) return std::nullopt;
    const auto offset = parse_time_of_day(zone.substr(1));
    if (!offset || offset->in_minutes() > 14 * 60) return std::nullopt;
    east = zone[0] == '+' ? offset->in_minutes() : -offset->in_minutes();
  }
  const std::int64_t local = day->in_epoch_days() * seconds_a_day + time->in_minutes() * seconds_a_minute + seconds;
  return Moment{Instant::epoch_seconds(local - east * seconds_a_minute), Offset::minutes_east(east)};
}

std::string text_of(Day day) {
  const calendar::year_month_day date{calendar::sys_days{calendar::days{day.in_epoch_days()}}};
  std::string out;
  two_digits(out, static_cast<int>(date.year()) / 100);
  two_digits(out, static_cast<int>(date.year()) % 100);
  out += '-';
  two_digits(out, static_cast<unsigned>(date.month()));
  out += '-';
  two_digits(out, static_cast<unsigned>(date.day()));
  return out;
}

std::string text_of(TimeOfDay time) {
  std::string out;
  two_digits(out, time.in_minutes() / 60);
  out += ':';
  two_digits(out, time.in_minutes() % 60);
  return out;
}

std::string text_of(Instant instant, Offset offset) {
  const Moment moment{instant, offset};
  std::string out = text_of(local_day(moment));
  out += 'T';
  out += text_of(local_time(moment));
  out += ':';
  const std::int64_t seconds = local_seconds(moment);
  two_digits(out, seconds - floor_divide(seconds, seconds_a_minute) * seconds_a_minute);
  const std::int64_t east = offset.in_minutes_east();
  out += east < 0 ? '-' : '+';
  out += text_of(TimeOfDay::minutes(east < 0 ? -east : east));
  return out;
}

std::string clock_rounded_down(Instant instant, Offset offset) { return text_of(local_time({instant, offset})); }

Instant next_full_minute(Instant instant) {
  const std::int64_t into_minute = ((instant.in_epoch_seconds() % seconds_a_minute) + seconds_a_minute) % seconds_a_minute;
  return into_minute == 0 ? instant : instant + Duration::seconds(seconds_a_minute - into_minute);
}

std::string clock_rounded_up(Instant instant, Offset offset) { return clock_rounded_down(next_full_minute(instant), offset); }

}  // namespace stopgap
