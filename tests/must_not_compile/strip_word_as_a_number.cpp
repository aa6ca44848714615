// A word of a urine strip is never compared with a number of blood ketones.
// Says: no match for 'operator<'
#include "units/ketones.hpp"

using stopgap::Ketones;
using stopgap::StripWord;

[[maybe_unused]] constexpr Ketones act_from = Ketones::mmol_tenths(6);

#ifdef FORBIDDEN
constexpr bool below = StripWord::small < act_from;
#else
constexpr bool below = Ketones::mmol_tenths(5) < act_from;
#endif
