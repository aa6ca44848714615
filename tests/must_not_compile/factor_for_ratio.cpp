// Carbohydrate is covered by the carbohydrate ratio, never by the correction factor.
// Says: no match for 'operator/'
#include "units/body.hpp"

using namespace stopgap;

#ifdef FORBIDDEN
constexpr auto meal = Carbohydrate::grams(40) / CorrectionFactor::mmol_hundredths(250);
#else
constexpr auto meal = Carbohydrate::grams(40) / CarbohydrateRatio::gram_tenths_per_unit(120);
#endif
