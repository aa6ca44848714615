// Base45 (RFC 9285): two bytes in three of the 45 characters that a QR code holds most closely. Checked in the tests against the
// examples of the RFC. Errors: no bytes for a text that no encoder writes (a strange character, a group too large or too short).
#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace stopgap::json {

std::string base45(std::string_view bytes);
std::optional<std::string> bytes_of_base45(std::string_view text);

}  // namespace stopgap::json
