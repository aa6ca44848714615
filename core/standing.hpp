// How a plan stands on a day: what the shelf of the desk shows. The rules judge for themselves whether it may be acted on.
#pragma once
#include "model/answers.hpp"
#include "model/plan.hpp"

namespace stopgap {

StandingAnswer standing(const Plan& plan, Day today);

}  // namespace stopgap
