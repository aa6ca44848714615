// What this engine is: its version, the plan format it reads, the source it was built from, and how old its figures are.
#pragma once
#include <string_view>
#include "model/answers.hpp"

namespace stopgap {

std::string_view engine_version();
VersionAnswer version();  // the commit is "unknown" when built outside a checkout

}  // namespace stopgap
