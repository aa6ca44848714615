// One incident told in order: what happened, what the plan led to at each reading, and how long it took until something was
// done. Nothing here is a rule: the story asks the rules again, moment by moment.
#pragma once
#include <optional>
#include <vector>
#include "model/advice.hpp"

namespace stopgap {

// What the plan led to at a reading, with the record as it stood then.
struct LedTo {
  Outcome outcome = Outcome::lookAgain;
  Rule decided_by = Rule::NON;
  Gate gate = Gate::open;
  Call call = Call::none;
  std::optional<Insulin> dose;
  Carbohydrate carbohydrate;
};

struct StoryRow {
  const Event* event = nullptr;  // of the record that was asked about
  bool struck = false;
  bool counts = true;            // a struck dose counts until the team agreed
  std::int64_t minute = 0;       // since the story begins
  std::optional<std::int64_t> height;  // of a glucose reading in the picture, in hundredths of its height
  std::optional<LedTo> led_to;
};

struct Story {
  Instant since;                 // when the rules hold that it began
  bool recorded = false;         // opened by the person, not implied
  Moment from, to;               // the first and the last moment told
  std::optional<Moment> closed;
  // How long it took, counted from the first high reading or, where none is recorded, from the suspicion.
  bool from_high = false;
  Moment start;
  std::optional<Moment> ketone_test, needle, new_set;
  std::int64_t trigger_height = 0, low_height = 0;
  std::vector<StoryRow> rows;
  std::size_t rows_left_out = 0;
};

struct IncidentSpan {
  Moment from, to;
};

struct IncidentAnswer {
  std::optional<Story> story;          // the last incident of the record
  std::vector<IncidentSpan> others;    // the ones before it, the latest first
  bool more_others = false;
};

}  // namespace stopgap
