// The situation: what the person tells us now.
#pragma once
#include <optional>
#include "model/record.hpp"

namespace stopgap {

enum class Viewer : std::uint8_t { person, school };

struct Situation {
  Moment now;

  struct Glucose {
    GlucoseReading reading;
    std::optional<Instant> at;  // missing = now
    bool repeated = false;
    bool no_meter = false;
  };
  std::optional<Glucose> glucose;  // missing = not read

  struct Ketone {
    KetoneReading reading;
    std::optional<Instant> at;
  } ketones;

  SetOf<Sign> signs;
  SetOf<Fault> seen;
  std::optional<Carbohydrate> carbs;
  bool unwell = false;

  struct Mistake {
    MistakeKind what = MistakeKind::wrongInsulin;
    InsulinType insulin = InsulinType::rapid;
    std::optional<Insulin> units;
  };
  std::optional<Mistake> mistake;

  std::optional<Insulin> pump_on_board;
  bool pump_offers_nothing = false;
  std::optional<Instant> high_since;
  std::optional<DeviceKind> with;
  Viewer viewer = Viewer::person;
  std::optional<Day> not_before;   // the day of the commit this release was built from: a clock a day before it is wrong
  bool record_in_doubt = false;    // the record could not be read whole
};

}  // namespace stopgap
