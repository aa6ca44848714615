#include "json/write_fhir.hpp"

#include <array>
#include "figures/codes.hpp"
#include "json/answer_words.hpp"
#include "json/reading_text.hpp"
#include "json/sha256.hpp"
#include "json/write.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr std::string_view loinc = "http://loinc.org", ucum = "http://unitsofmeasure.org",
                           interpretations = "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";
constexpr int units_digits = 2;

struct FhirPage {
  Writer& out;
  const Plan& plan;

  void key_text(std::string_view key, std::string_view text) const { out.key(key).text(text); }
  // A concept that has only words.
  void concept_text(std::string_view key, std::string_view text) const { out.key(key).open('{').key("text").text(text).close('}'); }

  // The same plan and event give the same address: from their text, in the form of a UUID of version 8.
  std::string address(std::string_view type, std::string_view id) const {
    const std::string hex = sha256_hex(plan.id + '/' + std::string{type} + '/' + std::string{id});
    const auto part = [&](std::size_t from, std::size_t length) { return hex.substr(from, length); };
    return "urn:uuid:" + part(0, 8) + '-' + part(8, 4) + "-8" + part(13, 3) + "-8" + part(17, 3) + '-' + part(20, 12);
  }
  void begin(std::string_view type, std::string_view id) const {
    out.open('{').key("fullUrl").text(address(type, id)).key("resource").open('{');
    key_text("resourceType", type);
    key_text("id", id);
  }
  void end() const { out.close('}').close('}'); }
  void reference(std::string_view key, std::string_view type, std::string_view id) const {
    out.key(key).open('{').key("reference").text(address(type, id)).close('}');
  }
  void subject() const { reference("subject", "Patient", "person"); }
  void effective(const Moment& at) const { key_text("effectiveDateTime", text_of(at.instant, at.offset)); }
  void note(std::string_view text) const {
    if (text.find_first_not_of(' ') == std::string_view::npos) return;  // an empty text is none
    out.key("note").open('[').open('{').key("text").text(text).close('}').close(']');
  }
  void quantity(std::string_view number, std::string_view unit, std::string_view code) const {
    out.open('{').key("value").raw(number);
    key_text("unit", unit);
    key_text("system", ucum);
    key_text("code", code);
    out.close('}');
  }
};

void write_person(const FhirPage& page) {
  page.begin("Patient", "person");
  page.out.key("name").open('[').open('{').key("text").text(page.plan.person.name).close('}').close(']');
  page.key_text("birthDate", text_of(page.plan.person.born));
  page.end();
}

std::string_view care_plan_status(PlanStatus status) {
  switch (status) {
    case PlanStatus::draft: return "draft";
    case PlanStatus::agreed: return "active";
    case PlanStatus::superseded: break;
    case PlanStatus::withdrawn: break;
  }
  return "revoked";
}

void write_plan(const FhirPage& page) {
  const Plan& plan = page.plan;
  Writer& out = page.out;
  page.begin("CarePlan", "plan");
  const auto identifier = [&](std::string_view type, std::string_view value) {
    out.open('{').key("type").open('{').key("text").text(type).close('}').key("value").text(value).close('}');
  };
  out.key("identifier").open('[');
  identifier("id", plan.id);
  identifier("revision", std::to_string(plan.revision));
  identifier("SHA-256", plan.fingerprint);
  out.close(']');
  page.key_text("status", care_plan_status(plan.agreement.status));
  page.key_text("intent", "plan");
  page.key_text("title", plan.title);
  page.subject();
  out.key("period").open('{').key("start").text(text_of(plan.agreement.on)).key("end").text(text_of(plan.agreement.review_by)).close('}');
  if (plan.agreement.by.find_first_not_of(' ') != std::string::npos) out.key("author").open('{').key("display").text(plan.agreement.by).close('}');
  page.end();
}

void write_code(const FhirPage& page, std::string_view code, std::string_view text) {
  page.out.key("code").open('{').key("coding").open('[').open('{').key("system").text(loinc).key("code").text(code).close('}').close(']');
  page.key_text("text", text);
  page.out.close('}');
}

// Off the scale of the meter, and on which side of it.
void write_off_scale(const FhirPage& page, MeterWord word) {
  const bool high = word == MeterWord::HI;
  page.concept_text("valueCodeableConcept", words::meter_words[high ? 0 : 1]);
  page.out.key("interpretation").open('[');
  for (const std::string_view code : high ? std::array<std::string_view, 2>{">", "H"} : std::array<std::string_view, 2>{"<", "L"})
    page.out.open('{').key("coding").open('[').open('{').key("system").text(interpretations).key("code").text(code).close('}').close(']').close('}');
  page.out.close(']');
}

void write_glucose(const FhirPage& page, const GlucoseReading& reading) {
  const bool number = reading.word == MeterWord::number, finger = reading.from == ReadFrom::finger;
  // A word of the meter has no unit; the plan's says which of the two codes is meant.
  const bool mmol = (number ? reading.unit : page.plan.unit) == GlucoseUnit::mmol;
  const auto& code = finger ? (mmol ? figures::loinc_finger_mmol : figures::loinc_finger_mg)
                            : (mmol ? figures::loinc_sensor_mmol : figures::loinc_sensor_mg);
  write_code(page, code.value, finger ? "Glucose, finger" : "Glucose, sensor");
}

void write_glucose_value(const FhirPage& page, const GlucoseReading& reading) {
  if (reading.word != MeterWord::number) {
    write_off_scale(page, reading.word);
    return;
  }
  const auto& unit = reading.unit == GlucoseUnit::mmol ? figures::ucum_mmol : figures::ucum_mg;
  page.out.key("valueQuantity");
  page.quantity(number_text(reading, '.'), unit.value, unit.value);
}

void write_ketones_value(const FhirPage& page, const KetoneReading& reading) {
  if (reading.kind == KetoneKind::urine) {
    page.concept_text("valueCodeableConcept", of(words::strip_words, reading.strip));
  } else if (reading.kind == KetoneKind::bloodHI) {
    write_off_scale(page, MeterWord::HI);
  } else {
    page.out.key("valueQuantity");
    page.quantity(number_text(reading.blood, '.'), figures::ucum_mmol.value, figures::ucum_mmol.value);
  }
}

std::string_view status_of(ExportStatus status, std::string_view counts) {
  switch (status) {
    case ExportStatus::counts: return counts;
    case ExportStatus::in_doubt: return "unknown";
    case ExportStatus::in_error: break;
  }
  return "entered-in-error";
}

void write_reading(const FhirPage& page, const ExportedReading& reading) {
  page.begin("Observation", reading.id);
  page.key_text("status", status_of(reading.status, "final"));
  if (reading.glucose) write_glucose(page, *reading.glucose);
  else if (reading.ketones->kind == KetoneKind::urine) write_code(page, figures::loinc_ketones_urine.value, "Ketones, urine");
  else write_code(page, figures::loinc_ketones_blood.value, "Ketones, blood");
  page.subject();
  page.effective(reading.event->at);
  if (reading.glucose) write_glucose_value(page, *reading.glucose);
  else write_ketones_value(page, *reading.ketones);
  page.note(reading.reason);
  page.end();
}

std::string_view insulin_name(const FhirPage& page, const Event& event) {
  if (event.insulin == InsulinType::rapid) return page.plan.rapid.name;
  return page.plan.long_acting ? std::string_view{page.plan.long_acting->name} : std::string_view{"long-acting insulin"};
}

// What the dose was for, and what gave it, in the words of the record.
void write_purpose(const FhirPage& page, const Event& event) {
  Writer& out = page.out;
  const auto reason = [&](std::string_view text) { out.open('{').key("text").text(text).close('}'); };
  if (event.kind == EventKind::pumpDose) {
    out.key("reasonCode").open('[');
    reason(of(words::pump_purposes, event.purpose));
    out.close(']');
  } else if (event.kind == EventKind::mistake) {
    out.key("reasonCode").open('[');
    reason(of(words::mistakes, event.mistake));
    out.close(']');
  } else if (event.parts) {
    out.key("reasonCode").open('[');
    if (!event.parts->rescue.is_zero()) reason("rescue");
    if (!event.parts->meal.is_zero()) reason("meal");
    if (!event.parts->basal.is_zero()) reason("basal");
    out.close(']');
  }
}

void write_dosage(const FhirPage& page, const Event& event) {
  if (!event.units) return;  // how much went in is not known
  page.out.key("dosage").open('{');
  if (event.kind == EventKind::injection) page.concept_text("method", of(words::devices, event.with));
  else if (event.kind != EventKind::mistake) page.concept_text("method", "pump");
  page.out.key("dose");
  page.quantity(decimal_text(event.units->in_units(), units_digits, '.'), "units", figures::ucum_insulin.value);
  page.out.close('}');
}

void write_administration(const FhirPage& page, const ExportedDose& dose) {
  const Event& event = *dose.event;
  page.begin("MedicationAdministration", dose.id);
  page.key_text("status", status_of(dose.status, "completed"));
  page.concept_text("medicationCodeableConcept", insulin_name(page, event));
  page.subject();
  page.effective(event.at);
  write_purpose(page, event);
  if (!dose.decided_on.empty()) {
    page.out.key("reasonReference").open('[');
    for (const std::string& id : dose.decided_on) page.out.open('{').key("reference").text(page.address("Observation", id)).close('}');
    page.out.close(']');
  }
  page.note(dose.reason);
  write_dosage(page, event);
  page.end();
}

}  // namespace

std::string write_fhir(const ClinicExport& exported, const Plan& plan) {
  Writer out;
  const FhirPage page{out, plan};
  out.open('{').key("resourceType").text("Bundle").key("type").text("collection").key("entry").open('[');
  write_person(page);
  write_plan(page);
  for (const ExportedReading& reading : exported.readings) write_reading(page, reading);
  for (const ExportedDose& dose : exported.doses) write_administration(page, dose);
  out.close(']').close('}');
  return out.take();
}

}  // namespace stopgap::json
