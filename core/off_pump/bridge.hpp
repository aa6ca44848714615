// The bridge: rapid insulin for the basal of the coming hours, with carbohydrate and a correction, each part shown.
//   sum   = basal (and what rounding left of the bridges before) + carbohydrate / ratio + correction; rounded once, to the step
//   parts = correction and meal as worked out, the basal what is left: the loss of rounding falls on the basal, and is owed to the
//           next bridge, so that a day of bridges is a day's basal
// The correction is the one the way down would give by needle now, or net to the target beside basal or a meal; it is never more than
// the gate and the rolling cap let through.
// Source: R-25 [montreal] [rch-malf]; CV-20, CV-21, CV-24. A running hold blocks the correction part only.
#pragma once
#include "model/advice.hpp"
#include "model/off_pump.hpp"
#include "off_pump/outage.hpp"
#include "rules/facts.hpp"

namespace stopgap::without_pump {

// The hours a bridge given now is for: from where the last one ends, to where long-acting insulin takes over or the pump is expected.
struct Hours {
  Instant from, to;
  bool due = false;
  bool single_step = false;   // a whole bridge is under one step: one step for what is owed, and none ahead
};

// What hours_of goes by.
struct HoursAsked {
  std::optional<Instant> expected;   // when a pump is
  bool gives_long = false;           // a dose of long-acting insulin is given now
  bool bridges = false;              // rapid insulin is the way
};
Hours hours_of(const rules::Facts& facts, const Outage& outage, const HoursAsked& asked);

// When the next single step is due after one given at this moment.
Instant after_single_step(const rules::Facts& facts, const Outage& outage, Instant given, Insulin basal);
// Whether a bridge of the plan's full hours from this moment on is less than one step.
bool is_full_bridge_under_one_step(const rules::Facts& facts, const Outage& outage, Instant from);
// Where a bridge from this moment on ends, with a pump expected then: up to the full hour, and long enough for one step.
Instant bridge_end(const rules::Facts& facts, const Outage& outage, Instant from, const std::optional<Instant>& expected);

struct BridgeAsked {
  bool correction_waits = false;     // a test, a call or carbohydrate comes first
  bool basal_alone = false;          // without a reading
  Carbohydrate carbs;
};
Bridge bridge_of(const rules::Facts& facts, const Outage& outage, const Hours& hours, const Advice& advice, const BridgeAsked& asked);

// From when on no basal was there, if that is long enough to say so.
std::optional<Missed> missed_of(const Outage& outage, Instant now);

// Ketones act, or did and are not tested again; somebody is ill, high, pregnant, on an SGLT2 inhibitor or under five; or saw a fault, so
// that nobody knows since when nothing went in.
bool needs_basal_now(const rules::Facts& facts);
// Whether the pump is back before anybody should be without insulin for longer, if nothing stands for its basal from `from` on.
// Its basal is given by nobody then: given before a stop of two hours it led to lows, and after the restart it did not (R-24
// [scheen-1987]). Those were well: who needs basal now does not wait.
bool is_missed_rather(const rules::Facts& facts, const OffPumpQuestion& question, Instant from);
// The same of what has gone in until now.
bool is_back_soon(const rules::Facts& facts, const Outage& outage, const OffPumpQuestion& question);
// No injection before the longest time without insulin is over.
Hours hours_while_back_soon(const Outage& outage, Instant now);

}  // namespace stopgap::without_pump
