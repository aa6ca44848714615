// The answer of `exportFhir`: a FHIR R4 (4.0.1) Bundle of type collection, for a clinic's system. One way out, never back in.
// It names the person and the day of birth, because a clinic has to know whom it is about and the person hands it over.
// There is no clock here, so the Bundle says no time of its own. Words of a meter or a strip are no quantity: they stand as a
// concept in words, and off the scale as an interpretation, for a bound that nobody measured must not be made up.
// A struck entry is exported as entered in error, with the reason that was typed; one that may have gone in as unknown.
#pragma once
#include <string>
#include "documents/clinic_export.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

std::string write_fhir(const ClinicExport& exported, const Plan& plan);

}  // namespace stopgap::json
