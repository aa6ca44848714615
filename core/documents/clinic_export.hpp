// What of a record a clinic's system can take: every reading and every dose of insulin that went in, or may have.
// A reading that a dose was decided on is told once: where the record holds it already, the dose points to it.
// A dose that was only shown, or ran over a sink, went into nobody and is not exported.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>
#include "model/record.hpp"

namespace stopgap {

struct ExportedReading {
  std::string id;
  const Event* event = nullptr;
  std::optional<GlucoseReading> glucose;  // one of the two
  std::optional<KetoneReading> ketones;
  bool struck = false;
  std::string_view reason;                // why it was struck, in the person's own words
};

struct ExportedDose {
  std::string id;
  const Event* event = nullptr;
  bool struck = false;
  bool in_doubt = false;                  // not sure whether it went in
  std::string_view reason;
  std::vector<std::string> decided_on;    // ids of readings
};

struct ClinicExport {
  std::vector<ExportedReading> readings;  // by time
  std::vector<ExportedDose> doses;        // by time
};

// The texts point into the record, which must outlive the export.
ClinicExport clinic_export(const Record& record);

}  // namespace stopgap
