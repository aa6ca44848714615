// The advice: one outcome, ordered steps, at most one dose, holds and looks, as data without words. Every member is a plain
// value, so that two pieces of advice can be compared: that is how the reasons are found.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include "model/plan.hpp"
#include "model/record.hpp"

namespace stopgap {

// The rules in their order; rules/rules.hpp says each in a sentence.
enum class Rule : std::uint8_t {
  LWE, EMR, TOO, LOW, FAL, PLN, FNG, TST, NOS, CAL, ANY, DWN, KET, EAT, INJ, WAI, PMP, SGN, OFF, CHG, END, NON
};
inline constexpr int rule_count = 22;

// What closed the way to a dose. SCH: the school's orders allow no second dose.
enum class Gate : std::uint8_t { open, REC, CLK, ASK, HLD, SCH };

enum class Outcome : std::uint8_t {
  lowEmergency, emergency, tooMuch, treatLow, noPlan, testGlucose, eatNow, testKetones, callTeam, injectAtAnyGlucose, comingDown,
  inject, eatAndInject, eat, wait, correctByPump, offPump, changeSet, over, lookAgain, hold, recordInDoubt, clockInDoubt, didYouInject
};

// In the order a person does them.
enum class Step : std::uint8_t {
  emergencyCall, tellThem, stopPump, glucagon, sugar, retest, testKetones, confirmChild, callHome, inject, eat, changeSet,
  changeReservoir, changeInsulin, offBody, joinTubing, automationOff, drink, pumpCorrection, wait, setAlarm, callTeam, getStrips,
  stopSglt2, longActing, bridge, restock, closeIncident
};
inline constexpr int step_count = 28;

enum class HoldKind : std::uint8_t { correction, ketoneDose, automation, longActing, allRapid };
inline constexpr int hold_kinds = 5;

enum class Caution : std::uint8_t {
  couldGoLow, inGrace, planFinding, staleWeight, cut, underStep, sensorOnly, noStrips, longActing, newLineUnproven
};
inline constexpr int caution_count = 10;

enum class Chosen : std::uint8_t { none, net, extra };
enum class IncidentChange : std::uint8_t { none, open, close };

// How a dose came about; every value exact, before the display rounds it to 0.01.
struct Working {
  Insulin correction, on_board, net, extra, cap, cut, before_rounding;
  Chosen chosen = Chosen::none;
  friend bool operator==(const Working&, const Working&) = default;
};

// Where a school's dose stands on the signed sheet: row and column by their lower edges; without a glucose the row of HI.
struct SheetCell {
  std::optional<Glucose> row;
  Ketones column;
  friend bool operator==(const SheetCell&, const SheetCell&) = default;
};

struct Dose {
  Insulin rescue, meal;
  DeviceKind with = DeviceKind::syringe;
  Working working;
  Insulin other_bound;                    // the dose if the pump's suspect doses were treated the other way
  std::optional<Fraction> times_usual;    // rescue part over the plain correction, where that is positive
  std::optional<SheetCell> cell;          // only where the printed cell is the dose
  constexpr Insulin total() const { return rescue + meal; }
  friend bool operator==(const Dose&, const Dose&) = default;
};

struct Look {
  Instant at;
  bool glucose = false, ketones = false;
  friend bool operator==(const Look&, const Look&) = default;
};

// Looks in the order of time, one a moment.
class Looks {
 public:
  void add(Look look) {
    std::size_t place = 0;
    while (place < count_ && looks_[place].at < look.at) ++place;
    if (place < count_ && looks_[place].at == look.at) {
      looks_[place].glucose |= look.glucose;
      looks_[place].ketones |= look.ketones;
      return;
    }
    if (count_ == looks_.size()) return;  // the earliest ones are kept: more than a day of looks is never needed
    for (std::size_t i = count_; i > place; --i) looks_[i] = looks_[i - 1];
    looks_[place] = look;
    ++count_;
  }
  const Look* begin() const { return looks_.data(); }
  const Look* end() const { return looks_.data() + count_; }
  bool empty() const { return count_ == 0; }
  friend bool operator==(const Looks&, const Looks&) = default;

 private:
  std::array<Look, 24> looks_{};
  std::size_t count_ = 0;
};

struct Given {
  Insulin units;
  Instant at;
  friend bool operator==(const Given&, const Given&) = default;
};

struct Advice {
  Outcome outcome = Outcome::lookAgain;
  Rule decided_by = Rule::NON;
  Gate gate = Gate::open;
  Call call = Call::none;
  bool call_first = false;
  std::optional<Dose> dose;
  Carbohydrate carbohydrate;
  std::optional<Given> given;
  SetOf<Step> steps;
  std::array<std::optional<Instant>, hold_kinds> holds{};
  std::optional<Instant> hold_until;    // with gate HLD: when it opens
  bool hold_is_ketone_dose = false;     // with gate HLD: the extra alone waits, for the rolling cap
  std::optional<Instant> second_pump_correction;  // with correctByPump and wait: not before
  Looks looks;
  SetOf<Caution> cautions;
  IncidentChange incident = IncidentChange::none;

  void raise_call(Call at_least) { if (call < at_least) call = at_least; }
  friend bool operator==(const Advice&, const Advice&) = default;
};

}  // namespace stopgap
