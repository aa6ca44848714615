// What a person asks who has no working pump, and what they are told: rapid insulin and long-acting insulin always apart, each
// with its own place in the list of screens, never two amounts on one.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>
#include "model/advice.hpp"
#include "model/situation.hpp"

namespace stopgap {

struct OffPumpQuestion {
  Moment now;
  std::optional<Duration> expected;       // how much longer; missing = not known
  std::optional<Instant> asleep_until;
  std::optional<Carbohydrate> carbs;
  std::optional<Situation::Glucose> glucose;
  std::optional<std::int64_t> zones_east;
  bool no_long_acting = false;            // none at hand, whatever the plan says
  bool no_meter = false;                  // no reading is to be had at all
  bool wakes = false;                     // somebody will wake them at the next bridge
  std::optional<Day> not_before;          // as in a situation
  bool record_in_doubt = false;           // as in a situation
  std::optional<DeviceKind> with, long_with;   // for rapid and for long-acting insulin; missing = the plan's usual device
};

enum class OffWay : std::uint8_t { none, bridge, longActing };  // none: the pump is on
// soonBack: the stop is so short that its basal is missed rather than given before.
// underStep: a whole bridge is less than one step of the device, a day's long-acting insulin is not.
enum class WayReason : std::uint8_t { pumpOn, soonBack, shorter, longer, unknown, asleep, noLongActing, atWork, underStep };
// How much of what could be given now waits for what comes first.
enum class Waits : std::uint8_t { nothing, correction, rapid, everything };
// alone: below the trigger a correction comes only beside basal or a meal. twice: basal for the same hours went in twice.
enum class CorrectionBlock : std::uint8_t { none, first, hold, underStep, alone, twice };
// Why an order of the team is never shown as an injection.
enum class OrderBlock : std::uint8_t { none, overADay, overWithLast, notReadBack };
enum class LongState : std::uint8_t { notNow, due, hold };

// What must come before: the advice of the way down, or a basal dose shown that nobody answered for.
struct ComesFirst {
  Outcome outcome = Outcome::lookAgain;
  std::optional<Rule> decided_by;
  Call call = Call::none;
  Waits waits = Waits::nothing;
  std::optional<Insulin> dose;            // the way down's own dose of rapid insulin, shown there and not here
  Carbohydrate carbohydrate;
  struct Shown { std::string id; Insulin units; InsulinType insulin; Instant at; std::string order; };   // `order`: the one it follows
  std::optional<Shown> shown;
};

// One injection of rapid insulin: basal of the coming hours, carbohydrate, net correction. Exact until it is rounded once.
struct Bridge {
  Instant from, to;                       // the hours its basal is for
  Insulin basal, carried, meal, correction, on_board, net, sum, cut;
  CorrectionBlock block = CorrectionBlock::none;
  std::optional<Instant> correction_opens;
  Insulin units;                          // as drawn
  Parts parts;                            // of `units`, for the record
  DeviceKind with = DeviceKind::syringe;
  bool single_step = false;               // one step for basal that was owed: it covers no hour ahead
  std::optional<Duration> basal_hours;    // as it is recorded: none where no hour ahead is covered
};

enum class LongShare : std::uint8_t { whole, half };
enum class PartName : std::uint8_t { only, morning, evening };

struct LongDose {
  Insulin basal_a_day, a_day, exact, units;   // the schedule's day, times the factor, this part, and as drawn
  PartName part = PartName::only;
  LongShare share = LongShare::whole;
  std::vector<Insulin> injections;            // more than one where the device holds less
  DeviceKind with = DeviceKind::syringe;
  Instant works_from;
  // The team's word on a call stands before the plan's amount, and alone within a hold.
  struct Order { std::string id, by; Instant at; };
  std::optional<Order> order;
  std::optional<std::int64_t> zones_east;     // of the journey that this amount is for, as it is recorded
  bool second_half = false;                   // of a journey west
  Instant next_due;                           // of the next dose, once this one is in
  Instant pump_as_usual_from;                 // when a pump may run as usual, once this one is in
  bool call_first = false;                    // the team is called before it
};

// What the team named on a call and is still to be injected, or must not be.
struct OrderSaid {
  std::string id, by;
  InsulinType insulin = InsulinType::rapid;
  Insulin units;
  Instant at, until;
  OrderBlock block = OrderBlock::none;
};

// Carbohydrate that belongs to an injection of basal while glucose is near low.
struct EatsBefore {
  Carbohydrate grams;
  bool together = false;                      // else the injection waits for it
};

enum class AlarmFor : std::uint8_t { bridge, longActing, longActingPart };
struct OffAlarm {
  Instant at;
  AlarmFor what = AlarmFor::bridge;
};

struct Missed {
  Instant since;              // from here on no basal was there
  bool too_long = false;      // longer than anyone should be without insulin
};

// What to do about the pump now: run it as usual; at the plan's reduced basal; not before a bridge has ended; ask the team first.
enum class BackDo : std::uint8_t { usual, reduced, afterBridge, askTeam };
enum class BackFood : std::uint8_t { byPump, byNeedle };
struct Back {
  BackDo now = BackDo::usual;
  BackFood food = BackFood::byPump;
  bool on = false;                            // the record says so
  std::optional<Instant> usual_from;          // when long-acting or a bridge has worn off; none: at once
  std::optional<Instant> bridge_until;        // a bridge still stands for basal: the pump gives none before
  std::optional<Share> reduced;               // sooner, only with what the plan wrote
  std::optional<Instant> automation_from;
  Duration look_after, looks_later;           // and then again and again, for the first day
  std::optional<Instant> look;                // the first one, by the time the pump came back
  Insulin missed_basal;                       // for the talk with the clinic, never a dose
};

enum class Keeps : std::uint8_t { unknown, good, lastDay, due, over };
struct Stored {
  std::optional<Day> last_use;
  std::optional<Instant> change_by;
  Keeps keeps = Keeps::unknown;
};
struct InsulinKept {
  Stored vial, reservoir, set;
  bool heated = false;
};

enum class TravelRule : std::uint8_t { ignore, sameBasal, east, west };
struct Travel {
  std::int64_t zones_east = 0;
  TravelRule rule = TravelRule::ignore;
  struct Part { Insulin exact, units; std::optional<Instant> at; bool given = false; };
  Fraction share;
  std::vector<Part> parts;                    // east one, west two
  std::optional<Instant> next_whole;          // east: the usual hour there, until which the smaller dose is good
};

enum class Note : std::uint8_t {
  getLongActing, missedBridge, missedTooLong, longActingHeld, longActingSplit, longActingUnderStep, bridgeUnderStep, bridgeCut,
  outlastsADay, callAfterADay, callAfterTwoDays, neverFromPen, otherVial, boxWins, heatedInsulin, missedBasalTalk, automationOff,
  travelIgnore, travelSameBasal, travelEast, travelWest, travelClock, suppliesTwice, longActingOther, travelAskFirst,
  bridgedTwice, bridgeWhileAsleep, longActingWhileAsleep, longActingTooLittle, longActingUnknown, orderTooLarge, orderNotReadBack,
  basalWithoutReading, askForBasal, eatFirst, eatWith, longActingForSmallBasal, longActingSecondHalf
};
inline constexpr int note_count = static_cast<int>(Note::longActingSecondHalf) + 1;

// More of them than a SetOf holds.
class Notes {
 public:
  void add(Note note) { said_[static_cast<std::size_t>(note)] = true; }
  bool has(Note note) const { return said_[static_cast<std::size_t>(note)]; }

 private:
  std::array<bool, note_count> said_{};
};

struct OffPumpAnswer {
  bool off = false;
  bool recorded = false;                      // the record itself says so, not only who asks
  std::optional<Instant> since;
  OffWay way = OffWay::none;
  WayReason because = WayReason::pumpOn;
  std::optional<Instant> expected_until;      // when a pump is expected, by the hours of the question
  std::optional<ComesFirst> first;
  std::optional<EatsBefore> eats;
  std::optional<OrderSaid> order;
  std::optional<Bridge> bridge;
  std::optional<Instant> next_bridge;         // when a bridge is not due yet
  bool bridged = false;                       // what was injected in place of the pump still stands for its hours
  bool long_acting_bridges = false;           // long-acting insulin is at work and needs no bridge
  LongState long_state = LongState::notNow;
  std::optional<Instant> long_due;
  std::optional<LongDose> long_dose;
  bool gives_long() const { return long_dose && !long_dose->units.is_zero(); }   // one under a step cannot be drawn
  std::vector<OffAlarm> alarms;
  std::optional<Missed> missed;
  Back back;
  InsulinKept insulin;
  std::optional<Travel> travel;
  Call call = Call::none;
  std::vector<Instant> calls;                 // a day and two days after it stopped
  std::array<std::optional<Instant>, hold_kinds> holds{};
  Instant look;
  bool could_go_low = false;
  bool small_basal = false;                   // a whole bridge is under one step: single steps, as they are owed
  bool bridged_twice = false;                 // basal for the same hours went in twice, and still acts
  Notes notes;
};

}  // namespace stopgap
