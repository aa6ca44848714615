// The answer to somebody off the pump: each injection a screen of its own, rapid insulin and long-acting insulin never on one.
#pragma once
#include <string>
#include <string_view>
#include "model/answers.hpp"
#include "model/off_pump.hpp"

namespace stopgap::json {

std::string write_off_pump(const OffPumpAnswer& answer, const std::vector<Finding>& refused, const Plan& plan,
                           const Moment& now, std::string_view engine);

// {"parts": {"rescue", "meal", "basal"}}, as an injection of the record carries them.
std::string write_parts_given(const Parts& parts);

}  // namespace stopgap::json
