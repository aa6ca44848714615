#include "json/base45.hpp"

#include <cstddef>

namespace stopgap::json {
namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
constexpr unsigned base = 45, byte_values = 256;
constexpr std::size_t pair = 2, group = 3;

}  // namespace

std::string base45(std::string_view bytes) {
  std::string out;
  out.reserve((bytes.size() + 1) / pair * group);
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(bytes[at]); };
  for (std::size_t at = 0; at < bytes.size(); at += pair) {
    const bool both = at + 1 < bytes.size();
    const unsigned value = both ? byte(at) * byte_values + byte(at + 1) : byte(at);
    out += alphabet[value % base];
    out += alphabet[value / base % base];
    if (both) out += alphabet[value / base / base];
  }
  return out;
}

std::optional<std::string> bytes_of_base45(std::string_view text) {
  std::string out;
  out.reserve(text.size() / group * pair + 1);
  for (std::size_t at = 0; at < text.size(); at += group) {
    const std::string_view letters = text.substr(at, group);
    if (letters.size() == 1) return std::nullopt;
    unsigned value = 0, place = 1;
    for (const char letter : letters) {
      const std::size_t digit = alphabet.find(letter);
      if (digit == std::string_view::npos) return std::nullopt;
      value += static_cast<unsigned>(digit) * place;
      place *= base;
    }
    const bool both = letters.size() == group;
    if (value >= (both ? byte_values * byte_values : byte_values)) return std::nullopt;
    if (both) out += static_cast<char>(value / byte_values);
    out += static_cast<char>(value % byte_values);
  }
  return out;
}

}  // namespace stopgap::json
