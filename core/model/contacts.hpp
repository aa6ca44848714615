// Who answers the telephone at an hour, and whom a call rings then. The text of a contact's hours and of a number is kept as it
// was written; here it is read. What cannot be read is never guessed.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>
#include "model/plan.hpp"

namespace stopgap {

// The hours in which somebody answers, as local clock times: one span of the day, on some days of the week. A span
// over midnight belongs to the day on which it begins; one that ends when it begins lasts 24 hours.
struct AnswerHours {
  std::array<bool, 7> days{true, true, true, true, true, true, true};  // from Monday
  TimeOfDay from, until;  // closed at `until` itself
};

// `any hour`, `HH:MM-HH:MM`, or weekdays before that span, as in `Mon-Fri 08:00-16:30` and `Sat 08:00-12:00`. Capitals and
// blanks do not matter, and the dash may be the one that printers set. Anything else cannot be read.
std::optional<AnswerHours> parse_answer_hours(std::string_view when);
bool answers_at(const AnswerHours& hours, const Moment& local);

// A number that a telephone can be told to dial: ASCII digits, 3 to 15 of them, at most one + and that in front, spaces and
// hyphens between. Two numbers in one, letters or "(0)" are shown as text: what a link would dial from them is not known.
bool can_be_dialled(std::string_view phone);

enum class Answers : std::uint8_t { now, unreadable, notNow };

struct Ringing {
  const Contact* contact;
  Answers answers;
};

// Whom a call rings at a moment. `team`: first those whose hours cannot be read, in plan order, then those who answer now, in plan
// order; nobody else, and where it is empty the emergency number is the one to ring. `home` is offered beside it: every contact at
// home, those who answer now first.
struct Ring {
  std::vector<Ringing> team, home;
};
Ring ring_at(const Plan& plan, const Moment& local);

}  // namespace stopgap
