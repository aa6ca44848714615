// A glucose is not divided by a correction factor: the target has to be taken off first.
// Says: no match for 'operator/'
#include "units/insulin.hpp"

using stopgap::CorrectionFactor;
using stopgap::Glucose;

constexpr Glucose reading = Glucose::mmol_tenths(160);
[[maybe_unused]] constexpr Glucose target = Glucose::mmol_tenths(65);
constexpr CorrectionFactor factor = CorrectionFactor::mmol_hundredths(250);

#ifdef FORBIDDEN
constexpr auto dose = reading / factor;
#else
constexpr auto dose = (reading - target) / factor;
#endif
