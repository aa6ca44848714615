// Ketones and glucose share a unit and are never compared.
// Says: no match for 'operator<'
#include "units/ketones.hpp"

#include "units/glucose.hpp"

using namespace stopgap;

#ifdef FORBIDDEN
constexpr bool less = Ketones::mmol_tenths(6) < Glucose::mmol_tenths(140);
#else
constexpr bool less = Ketones::mmol_tenths(6) < Ketones::mmol_tenths(14);
#endif
