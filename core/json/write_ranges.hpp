// What each number of a plan may be, for whoever types one: the same table that reading judges by, told before anything is typed.
#pragma once
#include <string>
#include "model/answers.hpp"

namespace stopgap::json {

// "*" in a path stands for any place in a list. A cell of the ketone table has one path wherever it stands.
std::string write_ranges(GlucoseUnit unit);
std::string write_standing(const StandingAnswer& answer);

}  // namespace stopgap::json
