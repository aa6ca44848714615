// Raw deflate (RFC 1951) with a text that both sides know beforehand: what is spelled there need not be sent. The work is done by a
// kept library; here are only its two calls and the limit that stops a small text from growing without end.
// Errors: a damaged stream, one that ends early, one with something after its end, and one that grows past `most`.
#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace stopgap::json {

std::string deflate(std::string_view text, std::string_view known);

struct Inflated {
  enum class State : std::uint8_t { whole, damaged, too_large } state = State::damaged;
  std::string text;  // only when whole
};
Inflated inflate(std::string_view bytes, std::string_view known, std::size_t most);

}  // namespace stopgap::json
