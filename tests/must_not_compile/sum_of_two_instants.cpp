// Two instants have a span between them and no sum.
// Says: no match for 'operator\+'
#include "units/time.hpp"

using stopgap::Instant;

#ifdef FORBIDDEN
constexpr auto result = Instant::epoch_seconds(60) + Instant::epoch_seconds(30);
#else
constexpr auto result = Instant::epoch_seconds(60) - Instant::epoch_seconds(30);
#endif
