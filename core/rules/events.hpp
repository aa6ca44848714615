// What the rules call an event of the record.
#pragma once
#include <optional>
#include "model/plan.hpp"
#include "model/record.hpp"

namespace stopgap::rules {

inline bool is_rapid_injection(const Event& event) { return event.kind == EventKind::injection && event.insulin == InsulinType::rapid; }

// A recorded reading is under the trigger. A converted number within half a display step of it is not: the worse side.
inline bool is_below_trigger(const GlucoseReading& reading, const Plan& plan) {
  if (reading.word != MeterWord::number) return reading.word == MeterWord::LO;
  const Glucose trigger = plan.high.trigger;
  return reading.value < (reading.unit == plan.unit ? trigger : trigger - half_display_step(plan.unit));
}

// An injection of rapid insulin with a rescue part. One that replaces basal and was given below the trigger is none: its rescue part
// acts and counts toward the rolling cap, but it was no dose against a high and starts no lock.
inline bool is_needle_dose(const Event& event, const Plan& plan) {
  if (!is_rapid_injection(event) || event.rescue().is_zero()) return false;
  const bool holds_basal = event.parts && !event.parts->basal.is_zero();
  return !(holds_basal && event.glucose && is_below_trigger(*event.glucose, plan));
}

inline bool is_pump_correction(const Event& event) { return event.kind == EventKind::pumpDose && event.purpose == PumpPurpose::correction; }

inline void later(std::optional<Instant>& latest, Instant at) {
  if (!latest || *latest < at) latest = at;
}

}  // namespace stopgap::rules
