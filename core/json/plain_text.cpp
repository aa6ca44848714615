#include "json/plain_text.hpp"

#include <array>
#include <cstdint>

#include "figures/ranges.hpp"

namespace stopgap::json {
namespace {

constexpr std::uint32_t not_a_character = 0xFFFD;

// The next code point; bytes that are no UTF-8 come out as U+FFFD, one at a time.
std::uint32_t next(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at);
  std::size_t more = 0;
  std::uint32_t value = first;
  if (first < 0x80) { ++at; return value; }
  if (first >= 0xC2 && first < 0xE0) { more = 1; value = first & 0x1Fu; }
  else if (first >= 0xE0 && first < 0xF0) { more = 2; value = first & 0x0Fu; }
  else if (first >= 0xF0 && first < 0xF5) { more = 3; value = first & 0x07u; }
  else { ++at; return not_a_character; }
  if (at + more >= text.size()) { ++at; return not_a_character; }
  for (std::size_t i = 1; i <= more; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80) { ++at; return not_a_character; }
    value = (value << 6) | (byte(at + i) & 0x3Fu);
  }
  at += more + 1;
  return value;
}

constexpr bool is_unreadable(std::uint32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0x2028 || c == 0x2029 ||  // control, line and paragraph separator
         c == 0x061C || c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

constexpr bool is_blank(std::uint32_t c) {
  return c == ' ' || c == 0xA0 || (c >= 0x2000 && c <= 0x200B) || c == 0x202F || c == 0x205F || c == 0x3000 || c == 0xFEFF;
}

// Unicode's Default_Ignorable_Code_Point (DerivedCoreProperties.txt of version 15.1), and the marks around an annotation.
struct Span {
  std::uint32_t first, last;
};
constexpr std::array<Span, 17> hidden{{{0xAD, 0xAD}, {0x34F, 0x34F}, {0x61C, 0x61C}, {0x115F, 0x1160}, {0x17B4, 0x17B5}, {0x180B, 0x180F},
                                       {0x200B, 0x200F}, {0x202A, 0x202E}, {0x2060, 0x206F}, {0x3164, 0x3164}, {0xFE00, 0xFE0F}, {0xFEFF, 0xFEFF},
                                       {0xFFA0, 0xFFA0}, {0xFFF0, 0xFFFB}, {0x1BCA0, 0x1BCA3}, {0x1D173, 0x1D17A}, {0xE0000, 0xE0FFF}}};
// Scripts whose words need a joiner: Arabic, Syriac and N'Ko; those of India and Sri Lanka; Myanmar; Khmer; Mongolian; Arabic's own forms.
constexpr std::array<Span, 7> joined{{{0x600, 0x7FF}, {0x840, 0x8FF}, {0x900, 0xDFF}, {0x1000, 0x109F}, {0x1780, 0x18AF}, {0xFB50, 0xFDFF}, {0xFE70, 0xFEFC}}};
constexpr Span indic = joined[2];
constexpr std::uint32_t non_joiner = 0x200C, joiner = 0x200D;

template <std::size_t count>
constexpr bool is_in(const std::array<Span, count>& spans, std::uint32_t c) {
  for (const Span& span : spans)
    if (c >= span.first && c <= span.last) return true;
  return false;
}
// Between two letters of such a script; a joiner of India also ends a word.
constexpr bool is_wanted(std::uint32_t before, std::uint32_t c, std::uint32_t after) {
  if (c != joiner && c != non_joiner) return false;
  return is_in(joined, before) && (is_in(joined, after) || (c == joiner && before >= indic.first && before <= indic.last));
}

// The letters a to z that make one character with the accent (Unicode's canonical compositions).
struct Accent {
  std::uint32_t mark;
  std::string_view letters;
};
constexpr std::array<Accent, 28> accents{{
    {0x300, "AEINOUWYaeinouwy"}, {0x301, "ACEGIKLMNOPRSUWYZacegiklmnoprsuwyz"}, {0x302, "ACEGHIJOSUWYZaceghijosuwyz"},
    {0x303, "AEINOUVYaeinouvy"}, {0x304, "AEGIOUYaegiouy"}, {0x306, "AEGIOUaegiou"},
    {0x307, "ABCDEFGHIMNOPRSTWXYZabcdefghmnoprstwxyz"}, {0x308, "AEHIOUWXYaehiotuwxy"}, {0x309, "AEIOUYaeiouy"},
    {0x30A, "AUauwy"}, {0x30B, "OUou"}, {0x30C, "ACDEGHIKLNORSTUZacdeghijklnorstuz"}, {0x30F, "AEIORUaeioru"},
    {0x311, "AEIORUaeioru"}, {0x31B, "OUou"}, {0x323, "ABDEHIKLMNORSTUVWYZabdehiklmnorstuvwyz"}, {0x324, "Uu"},
    {0x325, "Aa"}, {0x326, "STst"}, {0x327, "CDEGHKLNRSTcdeghklnrst"}, {0x328, "AEIOUaeiou"}, {0x32D, "DELNTUdelntu"},
    {0x32E, "Hh"}, {0x330, "EIUeiu"}, {0x331, "BDKLNRTZbdhklnrtz"}, {0x340, "AEINOUWYaeinouwy"},
    {0x341, "ACEGIKLMNOPRSUWYZacegiklmnoprsuwyz"}, {0x344, "IUiu"}}};

bool makes_one_character(std::uint32_t letter, std::uint32_t mark) {
  if (letter >= 0x80) return false;
  for (const Accent& accent : accents)
    if (accent.mark == mark) return accent.letters.find(static_cast<char>(letter)) != std::string_view::npos;
  return false;
}

// The small letter of a capital, in the scripts that have both and that names are usually written in (Unicode's simple case folding).
constexpr std::uint32_t small_letter(std::uint32_t c) {
  const auto within = [c](std::uint32_t first, std::uint32_t last) { return c >= first && c <= last; };
  const bool even = c % 2 == 0;
  if (within('A', 'Z') || (within(0xC0, 0xDE) && c != 0xD7) || within(0x391, 0x3AB) || within(0x410, 0x42F)) return c + 0x20;
  if (within(0x400, 0x40F)) return c + 0x50;
  if (even && (within(0x100, 0x12F) || within(0x132, 0x137) || within(0x14A, 0x177) || within(0x218, 0x21B) || within(0x460, 0x481) ||
               within(0x48A, 0x4BF) || within(0x4D0, 0x52F) || within(0x1E00, 0x1E95) || within(0x1EA0, 0x1EFF)))
    return c + 1;
  if (!even && (within(0x139, 0x148) || within(0x179, 0x17E))) return c + 1;
  switch (c) {
    case 0x178: return 0xFF;
    case 0x386: return 0x3AC;
    case 0x388: case 0x389: case 0x38A: return c + 0x25;
    case 0x38C: return 0x3CC;
    case 0x38E: case 0x38F: return c + 0x3F;
    case 0x3C2: return 0x3C3;
    default: return c;
  }
}

void append_utf8(std::string& out, std::uint32_t c) {
  const auto byte = [&out](std::uint32_t value) { out += static_cast<char>(static_cast<unsigned char>(value)); };
  const auto more = [&](int shift) { byte(0x80u | ((c >> shift) & 0x3Fu)); };
  if (c < 0x80) { byte(c); return; }
  if (c < 0x800) { byte(0xC0u | (c >> 6)); more(0); return; }
  if (c < 0x10000) { byte(0xE0u | (c >> 12)); more(6); more(0); return; }
  byte(0xF0u | (c >> 18)); more(12); more(6); more(0);
}

}  // namespace

std::string folded_name(std::string_view text) {
  std::string out;
  bool gap = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::uint32_t c = next(text, at);
    if (is_blank(c)) { gap = !out.empty(); continue; }
    if (gap) out += ' ';
    gap = false;
    append_utf8(out, small_letter(c));
  }
  return out;
}

PlainText inspect(std::string_view text) {
  PlainText found;
  std::uint32_t before = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::uint32_t c = next(text, at);
    ++found.code_points;
    found.blank = found.blank && is_blank(c);
    found.unreadable = found.unreadable || is_unreadable(c);
    if (c >= 0x300 && c < 0x370) found.decomposed = found.decomposed || makes_one_character(before, c);
    before = c;
  }
  return found;
}

std::optional<std::uint32_t> first_hidden(std::string_view text) {
  std::uint32_t before = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::uint32_t c = next(text, at);
    std::size_t ahead = at;
    const std::uint32_t after = ahead < text.size() ? next(text, ahead) : 0;
    if (is_in(hidden, c) && !is_wanted(before, c, after)) return c;
    before = c;
  }
  return std::nullopt;
}

std::string shortened(std::string_view text) {
  std::string out;
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size() && characters < figures::shown_length; ++characters) {
    const std::size_t start = at;
    const std::uint32_t c = next(text, at);
    if (c == not_a_character || is_unreadable(c)) out += "\xEF\xBF\xBD";
    else out.append(text, start, at - start);
  }
  return out;
}

void append_pointer_step(std::string& path, std::string_view key) {
  path += '/';
  const std::string shown = shortened(key);
  for (const char c : shown) {
    if (c == '~') path += "~0";
    else if (c == '/') path += "~1";
    else path += c;
  }
}

}  // namespace stopgap::json
