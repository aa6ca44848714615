// A hold ends at an instant; the time on a clock is no instant, because zones change.
// Says: no match for 'operator<'
#include "units/time.hpp"

using namespace stopgap;

constexpr Instant until = Instant::epoch_seconds(1795572600);

#ifdef FORBIDDEN
constexpr bool over = until < TimeOfDay::minutes(430);
#else
constexpr bool over = until < Instant::epoch_seconds(1795572601);
#endif
