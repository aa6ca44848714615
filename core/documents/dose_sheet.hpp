// The doses as they go on paper: the day in as few tables as its settings allow. Hours whose doses, outcomes and calls are all
// the same share one table; where only the carbohydrate differs within them, the cell holds the most, since eating a little more
// than the dose asks for cannot end low. So every dose is what `advise` answers at every one of these hours.
#pragma once
#include <optional>
#include <vector>
#include "model/answers.hpp"
#include "model/plan.hpp"
#include "model/situation.hpp"

namespace stopgap {

struct DoseSpan {
  TimeOfDay from, to;          // equal: the whole day
  std::vector<TimeOfDay> settings;  // when the settings change within it
  std::vector<TableRow> rows;
};

// The plan as its columns are printed: where its last ketone row begins below the level from which it is always an emergency, one
// more column begins there, and reads "go". The strip's strongest word heads it, because `advise` reads that word as this level
// whatever row names it. A reader of paper sees columns and no rule behind them.
Plan as_printed(Plan plan);

// The hours of noon first, then onward through the day. `viewer`: who acts by the cells for "no strips".
std::vector<DoseSpan> dose_spans(const Plan& plan, Viewer viewer);
// How long nothing may have been injected for the table to hold: the hold on a correction, and until nothing acts any more.
Duration quiet_before_table(const Plan& plan);

// A sentence: its key, and what stands in its slots.
struct Line {
  std::string_view key;
  std::vector<Slot> slots;
};
inline PlainNumber in_hours(Duration span) { return {Fraction::of(span.in_seconds(), 3600)}; }
inline PlainNumber in_minutes(Duration span) { return {Fraction::of(span.in_seconds(), 60)}; }
inline PlainNumber counted(std::int64_t number) { return {Fraction{number}}; }

// Whom a call to the team rings, in the order of the plan. Nobody else stands in: without them it is the emergency number.
std::vector<const Contact*> team_of(const Plan& plan);
// Home, or the next best: the first contact of all; nothing only where there is none.
const Contact* home_of(const Plan& plan);
// A person who tests with strips reads a word where others read a number: the first word of a printed row, where it has one.
std::optional<Slot> strip_of(const Plan& plan, const KetoneRow& row);

}  // namespace stopgap
