// Time as instants with an offset, spans in whole seconds, and days of the calendar. The core has no clock: every "now" is
// an argument. Holds compare instants, never clock times, so a changed zone or a clock set back cannot shorten one.
// Range: the years 1900 to 2199. Errors: parsing gives no value for anything but RFC 3339 with an offset, to the minute or second.
#pragma once
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace stopgap {

class Duration {
 public:
  constexpr Duration() = default;
  static constexpr Duration seconds(std::int64_t count) { return Duration{count}; }
  static constexpr Duration minutes(std::int64_t count) { return Duration{count * 60}; }
  static constexpr Duration hours(std::int64_t count) { return Duration{count * 3600}; }
  static constexpr Duration hour_hundredths(std::int64_t count) { return Duration{count * 36}; }
  constexpr std::int64_t in_seconds() const { return seconds_; }
  friend constexpr bool operator==(Duration, Duration) = default;
  friend constexpr auto operator<=>(Duration, Duration) = default;

 private:
  constexpr explicit Duration(std::int64_t seconds) : seconds_(seconds) {}
  std::int64_t seconds_ = 0;
};

constexpr Duration operator+(Duration a, Duration b) { return Duration::seconds(a.in_seconds() + b.in_seconds()); }
constexpr Duration operator-(Duration a, Duration b) { return Duration::seconds(a.in_seconds() - b.in_seconds()); }

// A moment of the world (seconds since 1970 in UTC). Two moments differ by a Duration; their sum does not exist.
class Instant {
 public:
  constexpr Instant() = default;
  static constexpr Instant epoch_seconds(std::int64_t count) { return Instant{count}; }
  constexpr std::int64_t in_epoch_seconds() const { return seconds_; }
  friend constexpr bool operator==(Instant, Instant) = default;
  friend constexpr auto operator<=>(Instant, Instant) = default;

 private:
  constexpr explicit Instant(std::int64_t seconds) : seconds_(seconds) {}
  std::int64_t seconds_ = 0;
};

constexpr Duration operator-(Instant a, Instant b) { return Duration::seconds(a.in_epoch_seconds() - b.in_epoch_seconds()); }
constexpr Instant operator+(Instant a, Duration b) { return Instant::epoch_seconds(a.in_epoch_seconds() + b.in_seconds()); }
constexpr Instant operator-(Instant a, Duration b) { return Instant::epoch_seconds(a.in_epoch_seconds() - b.in_seconds()); }

// How far local time is ahead of UTC.
class Offset {
 public:
  constexpr Offset() = default;
  static constexpr Offset minutes_east(std::int64_t minutes) { return Offset{minutes}; }
  constexpr std::int64_t in_minutes_east() const { return minutes_; }
  friend constexpr bool operator==(Offset, Offset) = default;

 private:
  constexpr explicit Offset(std::int64_t minutes) : minutes_(minutes) {}
  std::int64_t minutes_ = 0;
};

// An instant as somebody wrote it down: the offset gives the local time for schedules.
struct Moment {
  Instant instant;
  Offset offset;
  friend constexpr bool operator==(const Moment&, const Moment&) = default;
};

// A day of the calendar, as days since 1970-01-01.
class Day {
 public:
  constexpr Day() = default;
  static constexpr Day epoch_days(std::int64_t count) { return Day{count}; }
  constexpr std::int64_t in_epoch_days() const { return days_; }
  constexpr Day plus_days(std::int64_t count) const { return Day{days_ + count}; }
  friend constexpr bool operator==(Day, Day) = default;
  friend constexpr auto operator<=>(Day, Day) = default;

 private:
  constexpr explicit Day(std::int64_t days) : days_(days) {}
  std::int64_t days_ = 0;
};

// Minutes after midnight, 0 to 1439, as a schedule entry starts.
class TimeOfDay {
 public:
  constexpr TimeOfDay() = default;
  static constexpr TimeOfDay minutes(std::int64_t count) { return TimeOfDay{count}; }
  constexpr std::int64_t in_minutes() const { return minutes_; }
  friend constexpr bool operator==(TimeOfDay, TimeOfDay) = default;
  friend constexpr auto operator<=>(TimeOfDay, TimeOfDay) = default;

 private:
  constexpr explicit TimeOfDay(std::int64_t minutes) : minutes_(minutes) {}
  std::int64_t minutes_ = 0;
};

// Midnight in UTC at which a day begins.
Instant start_in_utc(Day day);
Day local_day(const Moment& moment);
TimeOfDay local_time(const Moment& moment);
// Whole years from one day to another, as a birthday counts them.
std::int64_t years_between(Day born, Day on);

std::optional<Moment> parse_moment(std::string_view text);
std::optional<Day> parse_day(std::string_view text);
std::optional<TimeOfDay> parse_time_of_day(std::string_view text);

// RFC 3339 in the given offset, to the second.
std::string text_of(Instant instant, Offset offset);
std::string text_of(Day day);
std::string text_of(TimeOfDay time);
Instant next_full_minute(Instant instant);  // the same, where it is one
// The clock time a person reads: a hold ends at the next full minute, a look is due at the minute begun.
std::string clock_rounded_up(Instant instant, Offset offset);
std::string clock_rounded_down(Instant instant, Offset offset);

}  // namespace stopgap
