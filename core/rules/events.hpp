// What the rules call an event of the record.
#pragma once
#include <optional>
#include "model/record.hpp"

namespace stopgap::rules {

// An injection of rapid insulin with a rescue part.
inline bool is_needle_dose(const Event& event) {
  return event.kind == EventKind::injection && event.insulin == InsulinType::rapid && !event.rescue().is_zero();
}

inline bool is_pump_correction(const Event& event) { return event.kind == EventKind::pumpDose && event.purpose == PumpPurpose::correction; }

inline void later(std::optional<Instant>& latest, Instant at) {
  if (!latest || *latest < at) latest = at;
}

}  // namespace stopgap::rules
