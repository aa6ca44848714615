// Exact writing of answers. Amounts carry text made here, with the plan's decimal mark; JavaScript only places it.
#pragma once
#include <string>
#include <vector>
#include "model/answers.hpp"
#include "model/refusal.hpp"
#include "model/situation.hpp"

namespace stopgap::json {

// A decimal text rounded half up to so many digits, no needless zeros, a leading zero: 3.5, 0.5, 12 (CV-79 [ismp-2021]).
std::string decimal_text(Fraction value, int digits, char mark);
// The number, a no-break space and the word: a dose is never split over two lines.
std::string dose_text(Insulin dose, char mark);

std::string write_refusals(const Refusals& refusals);
// `refused`: what the review refuses in the plan in use.
std::string write_advice(const Advice& advice, const std::vector<Because>& because, const std::vector<Finding>& refused, const Plan& plan,
                         const Situation& situation, std::string_view engine);
std::string write_holds(const HoldsAnswer& answer, const std::vector<Finding>& refused, const Plan& plan, const Moment& now);
// The looks as a list, and those still ahead as a calendar text that says `words` at each.
std::string write_reminders(const HoldsAnswer& answer, const Plan& plan, const Moment& now, std::string_view words, std::string_view engine);
std::string write_version(const VersionAnswer& version);

}  // namespace stopgap::json
