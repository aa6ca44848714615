// Two glucose values have a difference and no sum.
// Says: no match for 'operator\+'
#include "units/glucose.hpp"

using stopgap::Glucose;

#ifdef FORBIDDEN
constexpr auto result = Glucose::mmol_tenths(160) + Glucose::mmol_tenths(65);
#else
constexpr auto result = Glucose::mmol_tenths(160) - Glucose::mmol_tenths(65);
#endif
