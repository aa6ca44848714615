// What the calls answer beside the advice itself: the reasons of an advice, what runs now, what this engine is.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "model/advice.hpp"

namespace stopgap {

enum class Fact : std::uint8_t {
  glucose, ketones, signs, seen, carbs, unwell, mistake, pumpOnBoard, pumpOffersNothing, highSince, with, viewer,  // entered
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
};

struct VersionAnswer {
  std::string_view engine;
  int plan_format = 1;
  std::string_view commit;
  std::string oldest_checked_on;  // YYYY-MM-DD
};

}  // namespace stopgap
