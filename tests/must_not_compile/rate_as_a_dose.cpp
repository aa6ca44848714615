// Basal is delivered by the hour: a rate is not added to a dose.
// Says: no match for 'operator\+'
#include "units/insulin.hpp"

using namespace stopgap;

constexpr Insulin dose = Insulin::units(2);

#ifdef FORBIDDEN
constexpr auto total = dose + BasalRate::hundredths_per_hour(75);
#else
constexpr auto total = dose + Insulin::hundredths(75);
#endif
