// Facts derived before any rule. Everything a rule may ask stands here once, under the word the plan's authors use; a rule
// reads facts and decides, it never reads the record itself.
// "Within" a span includes its last moment; a lock is open exactly at its limit and closed before it.
#pragma once
#include <optional>
#include "action/on_board.hpp"
#include "model/history.hpp"
#include "model/plan.hpp"
#include "model/situation.hpp"

namespace stopgap::rules {

// What the reasons of an advice vary without touching the plan or the record.
struct Variation {
  std::optional<bool> pregnant, sglt2_inhibitor, plan_usable, in_grace, before_agreement;
};

enum class Level : std::uint8_t { missing, number, HI, LO };
// Whether the latest pump correction has done its work, seen while glucose is high.
enum class CorrectionFailure : std::uint8_t { no, at_first_look, at_second_look, at_second_look_unrecorded };

struct Facts {
  const Plan& plan;
  const History& history;
  const Situation& situation;
  Instant now;

  // settings at the local time of now
  CorrectionFactor factor;
  CarbohydrateRatio ratio;
  Glucose target;

  // glucose
  Level level = Level::missing;
  Glucose G{};                 // with Level::number
  bool converted = false;    // read in the other unit than the plan's
  bool from_sensor = false;
  bool finger = false;       // from a finger, or a number of a sensor with no meter at hand
  bool sensor_only = false;  // a number of a sensor with no meter at hand
  bool repeated = false;
  bool high = false;

  // ketones now
  const KetoneRow* row = nullptr;  // none while unknown
  bool blood = false;              // a blood reading, HI included
  std::optional<Ketones> blood_value{};
  bool acting = false;
  bool unknown = false;
  bool not_tested = false;         // notYet or error
  bool no_strips = false;
  bool help_now = false;           // 3.0 and above, now or last
  bool last_acting = false;        // the last ketones act, while unknown
  const KetoneRow* last_row = nullptr;  // their row, while unknown

  // how the person is
  bool severe = false, danger = false, unwell = false;
  bool vomits = false, cannot_swallow = false, keeps_nothing_down = false;
  bool pregnant = false, sglt2_inhibitor = false;

  // the pump and its set
  SetOf<Fault> faults{};             // seen now, or not yet answered by a change
  bool off_or_dead = false;
  bool team_knows_it_is_off = false;  // a call to the team was answered since it stopped; anew after a day and after two
  std::optional<Instant> last_fault{};  // the latest fault of any part, recorded or seen now
  bool automation_paused = false;
  bool pump_failed = false;
  const Event* pump_correction = nullptr;
  std::optional<Instant> last_pump_correction{};  // struck or past its action as well: it still bars a second one
  CorrectionFailure correction_failed = CorrectionFailure::no;

  // the incident
  bool incident_recorded = false;
  std::optional<Instant> suspected_since{};  // no value: no incident
  bool fault_in_incident = false;
  std::optional<Instant> set_changed{}, reservoir_changed{};  // latest, since suspicion
  int needle_doses_in_incident = 0;
  int needle_doses_toward_call = 0;        // those, and any that still acts
  std::optional<Instant> unanswered_call{};  // the first call to the team since one was answered, in any incident

  // needle doses and what was shown
  const Event* last_needle = nullptr;      // needle dose, of the whole record
  std::optional<GlucoseReading> glucose_at_last_needle{};  // what it was decided on
  std::optional<Ketones> blood_at_last_needle{};  // a number
  const KetoneRow* row_at_last_needle = nullptr;
  bool acted_at_last_needle = false;       // ketones acted then
  std::optional<Instant> last_rapid_injection{};  // a meal part alone included
  bool fell = false;
  const Event* unanswered_dose = nullptr;  // a dose shown, neither refused nor followed by an injection
  bool clock_in_doubt = false;

  // too much insulin
  bool mistake_rapid = false, mistake_units_unknown = false, mistake_long = false;
  bool off_body_went_in = false;           // an off-body delivery that reached the body, or may have and could go low
  bool pump_doubled = false;               // the pump corrected after a needle dose, and it could go low
  std::optional<Instant> last_excess{};    // the last insulin that should not have gone in

  // insulin on board
  OnBoard on_board{};
  bool suspect_doses_count = true;
  Insulin counted{}, absorbed{};
  bool would_go_low = false;               // as counted
  bool would_go_low_absorbed = false;      // with every dose treated as absorbed: could go low before any dose of ours

  // the plan
  bool plan_usable = false, in_grace = false, weight_is_old = false;

  // Comparisons of a converted number take the worse side within half a display step of a threshold.
  bool at_or_above(Glucose threshold) const;   // HI is above everything; missing and LO are not
  bool at_or_below(Glucose threshold) const;   // LO is below everything; missing and HI are not
  bool below(Glucose threshold) const;
  bool too_much() const { return mistake_rapid || off_body_went_in || pump_doubled; }
  bool is_low() const { return at_or_below(plan.low.below); }
  bool incident() const { return suspected_since.has_value(); }
  bool in_incident(Instant at) const { return suspected_since && at >= *suspected_since; }
  bool fault_seen() const { return !faults.empty(); }
  Duration since(const Event* event) const { return now - event->at.instant; }
  // Whether glucose, with this dose on top and every dose treated as absorbed, could reach the low level.
  bool could_go_low(Insulin dose) const { return goes_low(absorbed + dose); }
  bool goes_low(Insulin acting) const;
  // The device the dose is drawn with: as said, by default the syringe if the plan has one.
  DeviceKind with() const { return situation.with.value_or(plan.usual_kind()); }
  const Device& device() const { return plan.device(with()); }
  Duration repeat_span() const { return row && row->repeat ? *row->repeat : plan.limits.lock; }
  // The correction, negative below target; zero for a word of the meter, a missing reading or a sensor without a meter.
  Insulin correction() const;
  // The same as carbohydrate is matched: a sensor's number is used, LO stands for the very low level.
  Insulin correction_for_carbohydrate() const;
};

Facts facts_of(const Plan& plan, const History& history, const Situation& situation, const Variation& variation = {});

// Whether this much acting insulin brings a glucose to the low level; a converted one has half a display step less.
bool comes_to_low(const Plan& plan, Glucose glucose, bool converted, CorrectionFactor factor, Insulin acting);

// The incident of a record at a moment, for calls that have no situation.
struct Incident {
  bool recorded = false;
  std::optional<Instant> suspected_since;
};
Incident incident_at(const Plan& plan, const History& history, Instant now);

// The dose shown that waits for an answer, within the hours of action.
const Event* unanswered_dose_at(const Plan& plan, const History& history, Instant now);

}  // namespace stopgap::rules
