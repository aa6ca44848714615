// What of a record a clinic's system can take: every reading and every dose of insulin that went in, or may have.
// A reading that a dose was decided on is told once: where the record holds it already, the dose points to it.
// A dose that was only shown, or ran over a sink, went into nobody and is not exported; neither is a note, nor when supplies expire.
// A dose that is struck but still counts is in doubt: who reads it must not take it for one that never was. What no longer counts
// is in error. Two entries of one needle are told as one dose in doubt, and the entry it does not stand under as in error.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "model/history.hpp"

namespace stopgap {

enum class ExportStatus : std::uint8_t { counts, in_doubt, in_error };

struct ExportedReading {
  std::string id;
  const Event* event = nullptr;
  std::optional<GlucoseReading> glucose;  // one of the two
  std::optional<KetoneReading> ketones;
  ExportStatus status = ExportStatus::counts;
  std::string_view reason;                // why it was struck, in the person's own words
};

struct ExportedDose {
  std::string id;
  const Event* event = nullptr;
  ExportStatus status = ExportStatus::counts;   // in doubt as well: not sure whether it went in
  std::string_view reason;
  std::vector<std::string> decided_on;    // ids of readings
};

struct ClinicExport {
  std::vector<ExportedReading> readings;  // by time
  std::vector<ExportedDose> doses;        // by time
  History history;                        // holds what was joined of two entries
};

// The texts point into the record, which must outlive the export.
ClinicExport clinic_export(const Record& record);

}  // namespace stopgap
