// The record: the append-only list of what happened, in the order of (instant, id), so that the order in the text never
// matters. References (`shown`, `for`, `target`) that name nothing have no effect.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>
#include "model/device.hpp"
#include "model/reading.hpp"
#include "units/body.hpp"

namespace stopgap {

enum class EventKind : std::uint8_t {
  incident, glucose, ketones, sign, seen, doseShown, doseRefused, injection, pumpDose, offBody, mistake, changed,
  automation, pump, carbs, look, call, order, alarmSet, note, expires, strike
};
inline constexpr int event_kinds = 22;

enum class Sign : std::uint8_t { drowsy, confused, fastBreathing, cannotKeepFluid, vomitedAgain, vomitedOnce, bellyPain, fitting, cannotSwallow };
enum class Fault : std::uint8_t { leak, blood, bentCannula, cameOut, occlusionAlarm, outOfInsulin, heatedInsulin, pumpDead };
enum class Changed : std::uint8_t { set, reservoir, insulin };
enum class InsulinType : std::uint8_t { rapid, long_acting };
enum class PumpPurpose : std::uint8_t { correction, meal, automatic };
enum class TubingEnd : std::uint8_t { sink, body, unsure };
enum class MistakeKind : std::uint8_t { wrongInsulin, tooManyUnits, twice, offBodyIntoBody };
enum class CallTo : std::uint8_t { team, emergency, home };
enum class Expires : std::uint8_t { vial, strips, glucagon, other };

// A small set of one of the enums above.
template <class Item>
class SetOf {
 public:
  constexpr SetOf() = default;
  constexpr void add(Item item) { bits_ |= bit(item); }
  constexpr void remove(Item item) { bits_ &= ~bit(item); }
  constexpr bool has(Item item) const { return (bits_ & bit(item)) != 0; }
  constexpr bool empty() const { return bits_ == 0; }
  constexpr std::uint32_t bits() const { return bits_; }
  constexpr SetOf& operator|=(SetOf other) { bits_ |= other.bits_; return *this; }
  friend constexpr bool operator==(SetOf, SetOf) = default;

 private:
  static constexpr std::uint32_t bit(Item item) { return std::uint32_t{1} << static_cast<unsigned>(item); }
  std::uint32_t bits_ = 0;
};

struct Parts {
  Insulin rescue, meal, basal;
  friend bool operator==(const Parts&, const Parts&) = default;
};

// One event. Which members are filled follows from `kind` (the comment names the kinds).
struct Event {
  std::string id;
  Moment at;
  EventKind kind = EventKind::note;

  bool opened = false;                     // incident: opened, else closed
  std::optional<Instant> suspected_since;  // incident
  std::optional<GlucoseReading> glucose;   // glucose, injection, pumpDose
  std::optional<KetoneReading> ketones;    // ketones, injection
  SetOf<Sign> signs;                       // sign
  SetOf<Fault> faults;                     // seen
  SetOf<Changed> changed;                  // changed
  InsulinType insulin = InsulinType::rapid;  // doseShown, injection, mistake
  std::optional<Insulin> units;            // doseShown, injection, pumpDose, offBody; mistake where known; order
  std::optional<Parts> parts;              // doseShown, injection
  DeviceKind with = DeviceKind::syringe;   // injection
  bool sure = true;                        // injection
  std::optional<Duration> basal_hours;     // injection: the hours its basal part is for
  std::optional<std::int64_t> zones_east;  // injection: of the journey its amount is for
  std::string instead_of;                  // injection: id of an injection said wrong; both are the same needle
  PumpPurpose purpose = PumpPurpose::automatic;  // pumpDose
  TubingEnd tubing_end = TubingEnd::unsure;      // offBody
  MistakeKind mistake = MistakeKind::wrongInsulin;  // mistake
  bool on = false;                         // automation: on, else paused; pump: on, else off
  Carbohydrate carbs;                      // carbs
  std::optional<Instant> due;              // look, alarmSet
  bool look_glucose = false, look_ketones = false;  // look
  CallTo call_to = CallTo::team;           // call
  bool answered = false;                   // call
  std::string refers_to;                   // doseRefused and injection: shown; carbs and call: for; strike: target
  std::string text;                        // note, order, expires; strike: the reason. Told again, never read by a rule
  bool mis_tap = false;                    // strike: the reason is misTap
  bool read_back = false;                  // order: it was repeated to whoever gave it
  Expires expires = Expires::other;        // expires
  std::optional<Day> expires_on;           // expires
  std::string by;                          // order
  std::string order;                       // injection: the order it followed

  // The correction and ketone share of a needle injection: all of it when no parts were given.
  Insulin rescue() const { return parts ? parts->rescue : units.value_or(Insulin{}); }
};

struct Record {
  std::string plan_id;
  std::vector<Event> events;  // ascending by (instant, id)
};

}  // namespace stopgap
