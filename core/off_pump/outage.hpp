// The outage as the record tells it: since when the pump is off, what has been bridged, and what long-acting insulin is at work.
// Everything is an instant: a clock set forward or a zone crossed shortens nothing.
#pragma once
#include <optional>
#include <vector>
#include "model/history.hpp"
#include "model/plan.hpp"

namespace stopgap::without_pump {

// The hours that one bridge's basal stands for, and what all bridges of this outage so far still owe: less than one step, left over by
// rounding. Below zero: so much went in beyond what the hours needed.
struct Covered {
  Instant from, to;
  Insulin owed;
  Instant given;
};

// A stretch in which long-acting insulin stands for this share of the basal.
struct LongCover {
  Instant from, to;
  Fraction share;
};

// One step of rapid insulin for basal that was owed, where a whole bridge is under one step. It covers no hour ahead.
struct SingleStep {
  Instant at;
  Insulin basal;
};

struct LongAtWork {
  const Event* last = nullptr;               // an injection, or a mistake whose units are known
  std::optional<Instant> last_at;
  std::optional<Instant> covers_from, covers_until;
  std::optional<Instant> due;                // not before: the hold's end, or the next part of the same day
  bool follows = false;                      // the last one follows on the one before, whose tail bridges it
  bool other_than_planned = false;           // it, or its amount, is not the plan's, and no team was told since
  bool too_little = false;                   // under nine tenths of the plan's amount, and the team ordered nothing since
  std::optional<Instant> unknown_since;      // a mistake with no units, and no team answered since
  std::optional<Instant> unanswered_call;    // the first call to the team since then that nobody answered
  std::optional<std::int64_t> zones_east;    // of the journey that the last injection was for
  bool second_half = false;                  // of a day's journey west: the first half is in, the second is not
  Insulin last_20_hours;                     // all units of it, mistakes included
  const Event* order = nullptr;              // an amount the team named on a call, still to be injected

  bool at_work(Instant now) const { return last && now < *covers_until; }
  // It wears off before the next may be given: bridges stand in between.
  bool ends_before_the_next() const { return last && *covers_until < *due; }
  // Whether a dose at this moment follows on the last one: no more than two hours lie between the last one's end and its own onset.
  bool is_followed_at(Instant at, const InsulinKind& insulin) const;
};

struct Outage {
  bool off = false;
  bool told = false;                         // the record says something of the pump
  std::optional<Instant> since, until;       // `until`: when the pump came back
  std::optional<Offset> stopped_at_offset;   // the schedule of the hours gone is read where they were lived, not where it is asked
  std::vector<Covered> bridges;              // in the order of time
  std::vector<SingleStep> single_steps;
  std::vector<LongCover> long_cover;
  std::optional<Instant> bridged_twice;      // when basal was injected for hours that had theirs already
  LongAtWork long_acting;

  std::optional<Instant> bridged_until() const { return bridges.empty() ? std::nullopt : std::optional<Instant>{bridges.back().to}; }
  // What the bridges of this outage owe the next one. What a whole step and more was too much comes off only as far as it still acts.
  Insulin owed_to(Instant from, const Plan& plan) const;
  // From when on nothing that was given stands for basal; while the pump is off. A single step stands for what lies before it.
  Instant bare_since(Instant now) const;
  // The share of basal that long-acting insulin stands for at this moment, at most 1.
  Fraction long_share(Instant at) const;
  // The first moment from `at` on at which it stands for less than all.
  Instant needed_from(Instant at) const;
  // The first moment after `from` at which it stands for all; `to` where there is none before.
  Instant needed_until(Instant from, Instant to) const;
  // The basal of a stretch less what long-acting insulin stands for.
  Insulin needed_over(const Plan& plan, Instant from, Instant to, Offset offset) const;
  // The last whole minute to which this much is enough; `latest` where it is enough beyond.
  Instant lasts(const Plan& plan, Instant from, Insulin units, Instant latest, Offset offset) const;
  // The first whole minute at which so much has been needed since `from`; `latest` where it never is.
  Instant has_needed(const Plan& plan, Instant from, Insulin units, Instant latest, Offset offset) const;
};

Outage outage_of(const Plan& plan, const History& history, Instant now);

// The device that an entry names; the plan's usual one where the plan has no such device any more.
const Device& device_of(const Plan& plan, DeviceKind kind);

}  // namespace stopgap::without_pump
