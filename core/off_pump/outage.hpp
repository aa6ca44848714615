// The outage as the record tells it: since when the pump is off, what has been bridged, and what long-acting insulin is at work.
// Everything is an instant: a clock set forward or a zone crossed shortens nothing.
#pragma once
#include <optional>
#include "model/history.hpp"
#include "model/plan.hpp"

namespace stopgap::without_pump {

// The hours that one bridge's basal stands for: those it was worked out for, where it matches their basal to a step; else, where less
// went in, as long as that lasts by the schedule. And how much the device's step left over or took too much.
struct Covered {
  Instant from, to;
  Insulin carried;
};

struct LongAtWork {
  const Event* last = nullptr;               // an injection; a mistake holds, but covers no basal
  std::optional<Instant> covers_from, covers_until;
  std::optional<Instant> due;                // not before: the hold's end, or the next part of the same day
  bool continues = false;                    // it follows on the last one, whose tail bridges it
  bool other_than_planned = false;           // it, or its amount, is not the plan's, and no team was told since
  const Event* order = nullptr;              // an amount the team named on a call, still to be injected

  // Whether a dose at this moment follows on the last one: it may come late by what it takes to work, while the last one still acts.
  bool is_followed_at(Instant at, const InsulinKind& insulin) const;
  // It wears off before the next may be given: bridges stand in between.
  bool ends_before_the_next() const { return last && *covers_until < *due; }
};

struct Outage {
  bool off = false;
  bool told = false;                         // the record says something of the pump
  std::optional<Instant> since, until;       // `until`: when the pump came back
  std::optional<Offset> stopped_at_offset;   // the schedule of the hours gone is read where they were lived, not where it is asked
  std::vector<Covered> bridges;              // in the order of time
  std::vector<Covered> long_cover;
  std::optional<Instant> bridged_twice;      // when basal was injected for hours that had theirs already
  LongAtWork long_acting;

  std::optional<Instant> bridged_until() const { return bridges.empty() ? std::nullopt : std::optional<Instant>{bridges.back().to}; }
  // What the last bridge owes the next, if the next follows on it.
  Insulin carried_into(Instant from) const;
  // From when on nothing that was given stands for basal; while the pump is off.
  Instant bare_since(Instant now) const;
};

Outage outage_of(const Plan& plan, const History& history, Instant now);

}  // namespace stopgap::without_pump
