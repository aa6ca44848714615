#include "because.hpp"

#include <algorithm>
#include <limits>
#include "advise.hpp"
#include "figures/ranges.hpp"
#include "plan_findings.hpp"

namespace stopgap {
namespace {

struct Asked {
  const Plan& plan;
  const History& history;
  const Situation& situation;
  const Advice& advice;
  const std::vector<Finding>& refused;

  bool changes(const Situation& other) const { return differs(evaluate(plan, history, other)); }
  bool changes(const rules::Variation& variation) const { return differs(evaluate(plan, history, situation, variation)); }
  bool changes(const History& other) const { return differs(evaluate(plan, other, situation)); }
  bool differs(Advice other) const {
    tell_plan_findings(refused, other);
    return !(other == advice);
  }
};

Glucose reading_of(std::int64_t count, GlucoseUnit unit) {
  return unit == GlucoseUnit::mmol ? Glucose::mmol_tenths(count) : Glucose::mg(count);
}

bool glucose_matters(const Asked& asked) {
  Situation other = asked.situation;
  other.glucose.reset();
  if (asked.situation.glucose && asked.changes(other)) return true;
  const GlucoseUnit unit = asked.plan.unit;
  const figures::Range& range = figures::glucose_reading_range.in(unit);
  for (const MeterWord word : {MeterWord::LO, MeterWord::HI, MeterWord::number})
    for (const Glucose value : {asked.plan.low.very_low, asked.plan.high.trigger, reading_of(range.highest, unit), asked.plan.high.middle,
                                asked.plan.ketones.carbohydrate_only_below, asked.plan.limits.dosing_ceiling})
      for (const ReadFrom from : {ReadFrom::finger, ReadFrom::sensor}) {
        other.glucose = Situation::Glucose{{word, word == MeterWord::number ? value : Glucose{}, unit, from}, std::nullopt, true, false};
        if (asked.changes(other)) return true;
      }
  return false;
}

bool ketones_matter(const Asked& asked) {
  Situation other = asked.situation;
  const auto differs = [&](KetoneReading reading) {
    other.ketones = {reading, std::nullopt};
    return asked.changes(other);
  };
  for (const KetoneKind kind : {KetoneKind::notYet, KetoneKind::bloodHI, KetoneKind::noStrips})
    if (differs({kind, {}, {}})) return true;
  for (const KetoneRow& row : asked.plan.ketones.rows) {
    if (differs({KetoneKind::blood, row.from, {}})) return true;
    for (const StripWord word : row.urine)
      if (differs({KetoneKind::urine, {}, word})) return true;
  }
  return false;
}

// Each item added or taken away alone, and none of them at all.
template <class Item, std::size_t count>
bool set_matters(const Asked& asked, SetOf<Item> Situation::*member, const Item (&items)[count]) {
  for (const Item toggled : items) {
    Situation other = asked.situation;
    SetOf<Item> set;
    for (const Item item : items)
      if ((asked.situation.*member).has(item) != (item == toggled)) set.add(item);
    other.*member = set;
    if (asked.changes(other)) return true;
  }
  Situation none = asked.situation;
  none.*member = {};
  return asked.changes(none);
}

bool signs_matter(const Asked& asked) {
  constexpr Sign all[] = {Sign::drowsy, Sign::cannotSwallow, Sign::fitting, Sign::vomitedAgain, Sign::bellyPain, Sign::vomitedOnce,
                          Sign::confused, Sign::fastBreathing, Sign::cannotKeepFluid};
  return set_matters(asked, &Situation::signs, all);
}

bool seen_matters(const Asked& asked) {
  constexpr Fault all[] = {Fault::pumpDead, Fault::outOfInsulin, Fault::heatedInsulin, Fault::leak, Fault::blood, Fault::bentCannula,
                           Fault::cameOut, Fault::occlusionAlarm};
  return set_matters(asked, &Situation::seen, all);
}

bool carbs_matter(const Asked& asked) {
  Situation other = asked.situation;
  other.carbs = Carbohydrate::grams(figures::carbs_range.highest);
  if (asked.changes(other)) return true;
  other.carbs.reset();
  return asked.changes(other);
}

bool mistake_matters(const Asked& asked) {
  Situation other = asked.situation;
  other.mistake.reset();
  if (asked.changes(other)) return true;
  const Insulin most = Insulin::hundredths(figures::injection_range.highest);
  for (const InsulinType insulin : {InsulinType::rapid, InsulinType::long_acting})
    for (const auto& units : {std::optional<Insulin>{}, std::optional<Insulin>{most}}) {
      other.mistake = Situation::Mistake{MistakeKind::tooManyUnits, insulin, units};
      if (asked.changes(other)) return true;
    }
  return false;
}

bool pump_on_board_matters(const Asked& asked) {
  Situation other = asked.situation;
  other.pump_on_board = Insulin::hundredths(figures::pump_on_board_range.highest);
  if (asked.changes(other)) return true;
  other.pump_on_board.reset();
  return asked.changes(other);
}

bool high_since_matters(const Asked& asked) {
  Situation other = asked.situation;
  other.high_since = other.now.instant - Duration::minutes(figures::look_minutes_range.highest);
  if (asked.changes(other)) return true;
  other.high_since.reset();
  return asked.changes(other);
}

bool flip_matters(const Asked& asked, bool Situation::*member) {
  Situation other = asked.situation;
  other.*member = !(other.*member);
  return asked.changes(other);
}

bool device_matters(const Asked& asked) {
  if (!asked.plan.syringe || !asked.plan.pen) return false;
  Situation other = asked.situation;
  other.with = other.with.value_or(DeviceKind::syringe) == DeviceKind::syringe ? DeviceKind::pen : DeviceKind::syringe;
  return asked.changes(other);
}

bool viewer_matters(const Asked& asked, const Record& record) {
  if (!asked.plan.school) return false;
  Situation other = asked.situation;
  other.viewer = other.viewer == Viewer::person ? Viewer::school : Viewer::person;
  return asked.differs(evaluate(asked.plan, history_for(record, other), other));
}

bool not_before_matters(const Asked& asked) {
  Situation other = asked.situation;
  other.not_before = Day::epoch_days(std::numeric_limits<std::int32_t>::max());  // any clock stands before it
  if (asked.changes(other)) return true;
  other.not_before.reset();
  return asked.changes(other);
}

// The status and the day of review come to one of three: no dose, doses, doses in the days of grace. A clock long before the day of
// the agreement is in doubt.
bool agreement_matters(const Asked& asked) {
  for (const bool before : {true, false}) {
    rules::Variation clock;
    clock.before_agreement = before;
    if (asked.changes(clock)) return true;
  }
  rules::Variation not_agreed, agreed, in_grace;
  not_agreed.plan_usable = false;
  agreed.plan_usable = in_grace.plan_usable = true;
  agreed.in_grace = false;
  in_grace.in_grace = true;
  return asked.changes(not_agreed) || asked.changes(agreed) || asked.changes(in_grace);
}

// A flag that could only be set with an order the plan lacks is not varied.
bool risk_matters(const Asked& asked, std::optional<bool> rules::Variation::*member, bool now) {
  if (!now && !asked.plan.ketones.any_glucose) return false;
  rules::Variation other;
  other.*member = !now;
  return asked.changes(other);
}

// One event left out, from the last back to the first. A record of thousands is a record of weeks: its last ones decide.
bool one_matters(const Asked& asked, const Record& record, const std::vector<const Event*>& events) {
  constexpr std::ptrdiff_t most = 24;
  const auto last = std::min<std::ptrdiff_t>(most, static_cast<std::ptrdiff_t>(events.size()));
  return std::any_of(events.rbegin(), events.rbegin() + last, [&](const Event* event) { return asked.changes(history_for(record, asked.situation, 0, event)); });
}

// Every switch of this kind turned the one way, then the other.
bool switch_matters(const Asked& asked, const Record& record, EventKind kind) {
  if (kind != EventKind::automation && kind != EventKind::pump) return false;
  Record other = record;
  for (const bool on : {true, false}) {
    for (Event& event : other.events)
      if (event.kind == kind) event.on = on;
    if (asked.changes(history_for(other, asked.situation))) return true;
  }
  return false;
}

}  // namespace

std::vector<Because> because(const Plan& plan, const Record& record, const Situation& situation, const Advice& advice,
                             const std::vector<Finding>& refused) {
  const History history = history_for(record, situation);
  const Asked asked{plan, history, situation, advice, refused};
  std::vector<Because> reasons;
  const auto name_if = [&](bool matters, Fact fact, Origin origin) {
    if (matters) reasons.push_back({fact, origin, EventKind::note, {}});
  };
  name_if(signs_matter(asked), Fact::signs, Origin::entered);
  name_if(glucose_matters(asked), Fact::glucose, Origin::entered);
  name_if(ketones_matter(asked), Fact::ketones, Origin::entered);
  name_if(seen_matters(asked), Fact::seen, Origin::entered);
  name_if(mistake_matters(asked), Fact::mistake, Origin::entered);
  name_if(carbs_matter(asked), Fact::carbs, Origin::entered);
  name_if(flip_matters(asked, &Situation::unwell), Fact::unwell, Origin::entered);
  name_if(pump_on_board_matters(asked), Fact::pumpOnBoard, Origin::entered);
  name_if(flip_matters(asked, &Situation::pump_offers_nothing), Fact::pumpOffersNothing, Origin::entered);
  name_if(high_since_matters(asked), Fact::highSince, Origin::entered);
  name_if(device_matters(asked), Fact::with, Origin::entered);
  name_if(viewer_matters(asked, record), Fact::viewer, Origin::entered);
  name_if(not_before_matters(asked), Fact::notBefore, Origin::entered);
  name_if(flip_matters(asked, &Situation::record_in_doubt), Fact::recordInDoubt, Origin::entered);
  name_if(agreement_matters(asked), Fact::agreement, Origin::plan);
  name_if(risk_matters(asked, &rules::Variation::pregnant, plan.person.pregnant), Fact::pregnant, Origin::plan);
  name_if(risk_matters(asked, &rules::Variation::sglt2_inhibitor, plan.person.sglt2_inhibitor), Fact::sglt2Inhibitor, Origin::plan);

  std::vector<const Event*> of_kind[event_kinds];
  for (const Event& event : record.events) of_kind[static_cast<std::size_t>(event.kind)].push_back(&event);
  for (int kind = 0; kind < event_kinds; ++kind) {
    const auto& events = of_kind[kind];
    if (events.empty()) continue;
    const auto event_kind = static_cast<EventKind>(kind);
    const bool matters = asked.changes(history_for(record, situation, std::uint32_t{1} << kind)) ||
                         one_matters(asked, record, events) || switch_matters(asked, record, event_kind);
    if (matters) reasons.push_back({Fact::event, Origin::recorded, event_kind, events.back()->at});
  }
  return reasons;
}

}  // namespace stopgap
