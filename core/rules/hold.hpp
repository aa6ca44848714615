// Holds: spans in which something must not be done. They are instants counted from recorded events, so nothing but the passing
// of time ends one; a dose given now starts its own.
//   correction   lockHours after the last needle dose, or until the gate opens
//   ketoneDose   repeatHours of the row after it, where the row acts and has them; or until the rolling cap lets the extra pass
//   automation   pauseHours after it, where ketones acted, automation is paused or pausing is the plan's way (R-12; the length is a setting of the plan)
//   longActing   until the next long-acting dose is due; a day after a mistake with it
//   allRapid     the hours of action after the last insulin that should not have gone in
#pragma once
#include "rules/proposal.hpp"

namespace stopgap::rules {

using Holds = std::array<std::optional<Instant>, hold_kinds>;

// What runs by the record alone.
Holds running_holds(const Facts& facts);
// What runs, and what this advice's own dose starts.
void add_holds(const Facts& facts, Proposal& proposal);

}  // namespace stopgap::rules
