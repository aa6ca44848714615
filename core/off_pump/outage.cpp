#include "off_pump/outage.hpp"

#include "figures/timing.hpp"
#include "off_pump/given_bridges.hpp"
#include "off_pump/given_long.hpp"

namespace stopgap::without_pump {
namespace {

// Off or dead, and since when without a break: a pump that ran for minutes, or a tap on the wrong button, is none. Where the
// switches off and on tie, off stands; a dead pump that was seen is answered by one that is on, as the facts have it.
void read_pump(Outage& outage, const History& history) {
  std::optional<Instant> last_off;
  const auto went_off = [&](const Moment& moment) {
    const Instant at = moment.instant;
    if (!outage.off) {
      if (!outage.until || at - *outage.until > figures::short_run_of_pump.value) {
        outage.since = at;
        outage.stopped_at_offset = moment.offset;
      }
      outage.until.reset();
    }
    outage.off = outage.told = true;
  };
  const auto came_back = [&](Instant at) {
    outage.told = true;
    if (!outage.off || last_off == at) return;
    outage.off = false;
    outage.until = at;
  };
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::pump) {
      if (event->on) {
        came_back(event->at.instant);
      } else {
        went_off(event->at);
        last_off = event->at.instant;
      }
    }
    if (event->kind == EventKind::seen && event->faults.has(Fault::pumpDead)) went_off(event->at);
  }
}

}  // namespace

Outage outage_of(const Plan& plan, const History& history, Instant now) {
  Outage outage;
  read_pump(outage, history);
  read_long(outage, plan, history, now);
  if (!outage.told) {
    outage.off = true;  // who asks has no pump, as long as the record does not say that it is back
    outage.since = now;
  }
  read_bridges(outage, plan, history);
  return outage;
}

}  // namespace stopgap::without_pump
