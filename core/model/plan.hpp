// The plan: the numbers and orders a clinician agreed with one person. Valid by construction: json/read_plan.cpp makes it
// from text or refuses; contradictions (edges out of order, a trigger that is no column) never reach this struct.
// Glucose is in the plan's unit on screen and exact here.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>
#include "model/device.hpp"
#include "units/body.hpp"
#include "units/ketones.hpp"
#include "units/time.hpp"

namespace stopgap {

enum class PlanStatus : std::uint8_t { draft, agreed, superseded, withdrawn };
enum class Call : std::uint8_t { none, team, emergency };  // in order of urgency
enum class KetoneTest : std::uint8_t { blood, urine, none };
enum class Combine : std::uint8_t { greater, replace };
enum class Tubing : std::uint8_t { tubed, tubeless };
enum class Automation : std::uint8_t { none, basal, basalAndCorrections };
enum class Rounding : std::uint8_t { down, nearest };
enum class SquaringWay : std::uint8_t { offBody, paused };
enum class Relation : std::uint8_t { team, home, other };
enum class SchoolCalculation : std::uint8_t { tableOnly, allowed };

// A setting that changes over the day. Entries ascend from 00:00.
template <class Value>
struct Scheduled {
  struct Entry {
    TimeOfDay from;
    Value value;
    friend bool operator==(const Entry&, const Entry&) = default;
  };
  std::vector<Entry> entries;
  const Value& at(TimeOfDay time) const {
    const Value* found = &entries.front().value;
    for (const Entry& entry : entries)
      if (entry.from <= time) found = &entry.value;
    return *found;
  }
};

// One cell of the ketone table: how the extra insulin is worked out. `fallback` holds one cell for timesCorrection.
struct Cell {
  enum class Kind : std::uint8_t { none, shareOfDaily, perKg, timesCorrection, addUnits };
  Kind kind = Kind::none;
  Share share;              // shareOfDaily
  InsulinPerKg per_kg;      // perKg
  Share times;              // timesCorrection
  Insulin add;              // addUnits
  std::vector<Cell> fallback;
};

struct KetoneRow {
  Ketones from;
  std::vector<StripWord> urine;
  std::vector<Cell> cells;  // one for each column
  std::optional<Duration> repeat;
  Call call = Call::none;
};

struct InsulinKind {
  std::string name;
  Duration action;
  Duration onset;  // long-acting only
  std::int64_t in_use_days = 0;
};

struct Contact {
  std::string name, phone, when;
  Relation relation = Relation::other;
  std::string relation_text;
};

struct SchoolOrders {
  std::string prescriber;
  Day orders_expire;
  std::vector<std::string> may_inject, staff;
  SchoolCalculation calculation = SchoolCalculation::tableOnly;
  std::optional<Insulin> call_first_above;
  std::string storage;
  std::optional<Day> nurse_reviewed_on;
};

struct Plan {
  std::string id, title, notes;
  std::int64_t revision = 1;

  struct Person {
    std::string name;
    Day born;
    Weight weight;
    bool pregnant = false;
    bool sglt2_inhibitor = false;
    Day measured_on;
  } person;

  struct Agreement {
    PlanStatus status = PlanStatus::draft;
    std::string by, role;
    Day on, review_by;
    std::int64_t grace_days = 0;
    Day last_day() const { return review_by.plus_days(grace_days); }  // on which it still works
    std::vector<std::string> house_rules;
    // An unusual number that was typed twice, with the reason. It belongs to one finding and one value; an entry of an earlier
    // version names no finding and settles nothing.
    struct Retyped { std::string path, reason, finding, value; };
    std::vector<Retyped> retyped;
  } agreement;

  GlucoseUnit unit = GlucoseUnit::mmol;
  char decimal_mark = '.';
  InsulinKind rapid;
  std::optional<InsulinKind> long_acting;
  std::optional<Device> syringe, pen;
  // What is at hand where nobody says otherwise; one of them is in every plan.
  DeviceKind usual_kind() const { return syringe ? DeviceKind::syringe : DeviceKind::pen; }
  // One that the plan has.
  const Device& device(DeviceKind kind) const { return kind == DeviceKind::syringe ? *syringe : *pen; }
  const Device& usual_device() const { return device(usual_kind()); }

  Tubing tubing = Tubing::tubed;
  Automation automation = Automation::none;

  Insulin daily_total;
  Scheduled<CorrectionFactor> correction_factor;
  Scheduled<CarbohydrateRatio> carbohydrate_ratio;
  Scheduled<Glucose> target;
  Scheduled<BasalRate> basal;

  struct High {
    Glucose trigger, middle;
    Duration first_look, second_look;
    GlucoseFall expected_fall;
    Duration automation_minutes;
    std::vector<Duration> looks_after_injection;
  } high;

  struct KetoneTable {
    KetoneTest test = KetoneTest::blood;
    Ketones act_from;
    KetoneFall expected_fall;
    std::vector<Glucose> columns;
    Combine combine = Combine::greater;
    std::vector<KetoneRow> rows;
    Cell hi;
    std::optional<Cell> any_glucose;
    Glucose carbohydrate_only_below;
    Carbohydrate carbohydrate;
  } ketones;

  struct Limits {
    Insulin single_dose;
    Share share_of_daily, rolling_share;
    Duration lock;
    std::int64_t doses_before_call = 2;
    Glucose dosing_ceiling;
  } limits;

  Rounding rounding = Rounding::down;
  Insulin to_step(Insulin exact, Insulin step) const { return rounding == Rounding::down ? exact.down_to(step) : exact.nearest(step); }

  struct Squaring {
    std::vector<SquaringWay> ways;
    SquaringWay preferred = SquaringWay::paused;
    Duration pause;
  } squaring;

  struct OffPump {
    Share long_acting_factor;
    std::int64_t parts = 1;
    Duration cutover, bridge;
    std::optional<Share> reduced_basal;
  } off_pump;

  struct Low {
    Glucose below, very_low;
    Carbohydrate grams;
    Duration recheck;
    std::string glucagon;
  } low;

  std::vector<Contact> contacts;
  std::string emergency_number;
  std::optional<SchoolOrders> school;

  std::string fingerprint;  // SHA-256 of the canonical text, lower-case hexadecimal
};

}  // namespace stopgap
