#include "json/calendar.hpp"

#include "json/sha256.hpp"

namespace stopgap::json {
namespace {

constexpr std::size_t octets_of_line = 75;  // RFC 5545, 3.1
constexpr std::size_t digits_of_id = 32;    // of a SHA-256: enough that no two looks of a person's life share an id

// 2026-11-25T22:10:00Z without its signs: FORM #2 of RFC 5545, 3.3.5.
std::string utc(Instant instant) {
  std::string out;
  for (const char sign : text_of(instant, Offset::minutes_east(0)).substr(0, std::string_view{"2026-11-25T22:10:00"}.size()))
    if (sign != '-' && sign != ':') out += sign;
  return out + 'Z';
}

// RFC 5545, 3.3.11: what would end a value is written with a backslash before it.
std::string escaped(std::string_view words) {
  std::string out;
  for (const char sign : words) {
    if (sign == '\\' || sign == ';' || sign == ',') out += '\\';
    out += sign;
  }
  return out;
}

// A longer line goes on after a blank, and never breaks inside a character.
void append_line(std::string& out, std::string_view name, std::string_view value) {
  std::string line{name};
  line.append(1, ':').append(value);
  std::size_t from = 0, room = octets_of_line;
  while (line.size() - from > room) {
    std::size_t end = from + room;
    while ((static_cast<unsigned char>(line[end]) & 0xC0U) == 0x80U) --end;
    out.append(line, from, end - from).append("\r\n ");
    from = end;
    room = octets_of_line - 1;
  }
  out.append(line, from).append("\r\n");
}

}  // namespace

std::optional<std::string> calendar_text(const std::vector<Instant>& looks, std::string_view plan_id, Instant now,
                                         std::string_view words, std::string_view engine) {
  if (looks.empty()) return std::nullopt;
  const std::string said = escaped(words);
  std::string out;
  append_line(out, "BEGIN", "VCALENDAR");
  append_line(out, "VERSION", "2.0");
  append_line(out, "PRODID", "-//Stopgap//Stopgap " + std::string{engine} + "//EN");
  for (const Instant look : looks) {
    const std::string at = utc(look);
    append_line(out, "BEGIN", "VEVENT");
    append_line(out, "UID", sha256_hex(std::string{plan_id} + ' ' + at).substr(0, digits_of_id));
    append_line(out, "DTSTAMP", utc(now));
    append_line(out, "DTSTART", at);
    append_line(out, "SUMMARY", said);
    append_line(out, "BEGIN", "VALARM");
    append_line(out, "ACTION", "DISPLAY");
    append_line(out, "DESCRIPTION", said);
    append_line(out, "TRIGGER", "PT0S");
    append_line(out, "END", "VALARM");
    append_line(out, "END", "VEVENT");
  }
  append_line(out, "END", "VCALENDAR");
  return out;
}

}  // namespace stopgap::json
