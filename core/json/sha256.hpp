// SHA-256 (FIPS 180-4) of a text, as 64 lower-case hexadecimal digits: the fingerprint of a plan. Checked in the tests against
// the examples of the standard. Errors: none.
#pragma once
#include <string>
#include <string_view>

namespace stopgap::json {

std::string sha256_hex(std::string_view text);

}  // namespace stopgap::json
