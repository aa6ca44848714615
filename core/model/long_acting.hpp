// The long-acting insulin that a record tells of: how long each dose stands for basal, and when the next one is due.
// The next is due a day after the last however long that one acts; with two parts half a day, after a half first part six hours; on the
// day of a journey by the published rule (CV-22, CV-23, CV-26, CV-28 to CV-31).
#pragma once
#include <optional>
#include <vector>
#include "model/history.hpp"
#include "model/plan.hpp"

namespace stopgap {

struct LongDoseTaken {
  const Event* event = nullptr;
  bool mistaken = false;   // a mistake whose units are known
  bool follows = false;    // the tail of the one before bridges its onset
  bool half = false;       // a half first part
  bool first_half = false; // of a journey west, its second half is still to come
  Duration next;           // the next one is due so long after it
  Instant works_from, all_until;
};

// In the order of time. Nothing where the plan has no long-acting insulin: nobody knows how long it works.
std::vector<LongDoseTaken> long_doses_of(const Plan& plan, const History& history);

// When the next dose may be given; a mistake holds it for a day. No value where nothing was given.
std::optional<Instant> long_acting_due(const Plan& plan, const History& history);

// Whether a dose at this moment follows on one that covers until then: no more than two hours lie between that end and its own onset.
bool follows_on(const std::optional<Instant>& covers_until, Instant at, const InsulinKind& insulin);

// Whether a first part at this clock time is the morning's, half of it, or the evening's (CV-26 [fi-backup]).
bool is_half_part(TimeOfDay time);
bool is_evening_part(TimeOfDay time);
// How long after a part the next one is due; once a day where there is one part.
Duration span_to_next_part(const Plan& plan, bool half);

// The share of a day's dose that the published rule gives on the day of a journey: one dose going east, each of two going west.
// Nothing where no such rule applies: few zones, or a plan in two parts.
std::optional<Fraction> journey_share(const Plan& plan, std::int64_t zones_east);
bool changes_basal(std::int64_t zones_east);
std::int64_t count_of_zones(std::int64_t zones_east);

}  // namespace stopgap
