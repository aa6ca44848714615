// What the calls answer beside the advice itself: the reasons of an advice, what runs now, what this engine is.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>
#include "figures/figure.hpp"
#include "model/advice.hpp"

namespace stopgap {

enum class Fact : std::uint8_t {
  glucose, ketones, signs, seen, carbs, unwell, mistake, pumpOnBoard, pumpOffersNothing, highSince, with, viewer,  // entered
  notBefore, recordInDoubt,
  agreement, pregnant, sglt2Inhibitor,                                                                            // plan
  event                                                                                                           // recorded
};
enum class Origin : std::uint8_t { entered, recorded, plan };

struct Because {
  Fact fact = Fact::glucose;
  Origin origin = Origin::entered;
  EventKind kind = EventKind::note;  // with Fact::event
  Moment latest;                     // with Fact::event: when the latest of that kind was
};

struct LookDue {
  Instant due;
  bool glucose = false, ketones = false;
  bool overdue = false;
  std::int64_t minutes_late = 0;
};

struct DoseWaiting {
  std::string id;
  Insulin units;
  Instant at;
};

struct CurveRow {
  std::int64_t minute = 0;
  Insulin counted, absorbed;
};

// How far insulin still takes glucose down from now on: as it acts, and with the last needle dose once more by a pump that was
// not told of it. Insulin alone: neither food nor missing basal is in it, so that nobody reads a forecast.
struct TakenOff {
  struct Row { std::int64_t minute = 0; GlucoseFall told, untold; };
  Insulin again;                       // the rescue part of the last needle dose
  std::optional<GlucoseFall> to_low;   // from the last reading down to the low level, while the reading stands
  std::vector<Row> rows;
};

struct HoldsAnswer {
  std::array<std::optional<Instant>, hold_kinds> holds{};
  std::vector<LookDue> looks;             // by time; a look is answered by its readings taken from shortly before it on
  Insulin counted, absorbed;
  std::optional<DoseWaiting> unanswered;
  std::optional<Given> given;
  bool incident_recorded = false;
  std::optional<Instant> incident_since;
  bool clock_in_doubt = false;
  std::optional<std::vector<CurveRow>> curve;  // one row a minute, over the hours of action
  std::optional<TakenOff> taken;               // beside the curve, while a needle dose acts
};

// What the review says of a plan: refuse = cannot be agreed; confirm = retype the number with a reason; note = good to know.
enum class FindingLevel : std::uint8_t { refuse, confirm, note };

struct Percent { Fraction share; };      // 0.46 reads as 46
struct PlainNumber { Fraction value; };  // hours, minutes, kilograms, multiples: the sentence says which
using SlotValue = std::variant<Insulin, Glucose, GlucoseFall, Ketones, Carbohydrate, Day, TimeOfDay, Percent, PlainNumber, StripWord,
                               std::string>;

struct Slot {
  std::string_view name;
  SlotValue value;
};

struct Finding {
  std::string_view id;
  FindingLevel level = FindingLevel::note;
  std::string path;  // a JSON pointer that begins with /plan, as in a refusal
  std::vector<Slot> slots;
  Mark mark = Mark::house;
  std::string_view source;   // an id of figures/sources.hpp, or where it comes from instead
  std::string value;         // what stands at that path as one text; empty where several values or none do
  std::string retyped;       // confirm: the reason given when this finding was confirmed for this value; else empty
  std::string earlier;       // confirm: the reason an earlier version gave for this path, which settles nothing
  bool settled() const { return !retyped.empty(); }
};

// A rule of thumb beside a number of the plan. It finds slips of the pen and sets nothing: outside `from` to `to` the review asks.
struct Yardstick {
  std::string_view id;
  std::string path;
  SlotValue have;
  std::optional<SlotValue> expected;  // where the rule names one number
  SlotValue from, to;
  Mark mark = Mark::rule;
  std::string_view source;
};

// One cell of the table of doses as the desk shows it: what `advise` answers there.
struct TableCell {
  Outcome outcome = Outcome::lookAgain;
  Rule decided_by = Rule::NON;
  Call call = Call::none;
  std::optional<Insulin> dose;
  Chosen chosen = Chosen::none;
  bool cut = false;
  std::optional<Fraction> times_usual;
  Carbohydrate carbohydrate;
};

struct TableRow {
  enum class Kind : std::uint8_t { low, number, HI };  // low: at and under this glucose; number: from it up to the next row
  Kind kind = Kind::number;
  Glucose glucose;                 // not with HI
  std::optional<Insulin> usual;    // the plain correction, where there is one to give
  std::vector<TableCell> cells;    // one for each column of ketones, then one for "not tested"
  std::optional<TableCell> no_strips;  // on paper: ketones cannot be tested
};

// The table while one set of factor, ratio and target is in force.
struct DoseTable {
  TimeOfDay at;
  std::vector<Ketones> columns;  // lower edges
  std::vector<TableRow> rows;
};

struct ReviewAnswer {
  std::vector<Finding> findings;
  std::vector<Yardstick> yardsticks;
  DoseTable day;
  std::optional<DoseTable> night;  // none where the night has the settings of the day
  std::vector<DoseTable> others;   // settings that are in force neither at noon nor in the deep of the night
};

// One value that differs between two plans, as it stands in the JSON; with `added` there is no text before, and so on.
struct PlanChange {
  enum class Kind : std::uint8_t { changed, added, removed };
  std::string path;
  Kind kind = Kind::changed;
  std::string before, after;
};

// A plan on the shelf: reviewDue shortly before its review date, inGrace after it, expired after the last day of grace.
enum class Standing : std::uint8_t { draft, agreed, reviewDue, inGrace, expired, superseded, withdrawn };
struct StandingAnswer {
  Standing standing = Standing::draft;
  Day last_day;
};

struct VersionAnswer {
  std::string_view engine;
  int plan_format = 1;
  std::string_view commit;
  std::string oldest_checked_on;  // YYYY-MM-DD, of every figure
  int figures = 0;                // how many figures that is
};

}  // namespace stopgap
