// Made-up nights for the tests that try everything: plans read as any plan is, and records and situations drawn from a fixed
// seed with whole-number steps only, so that a failure comes back on every machine and names the draw it came from.
#pragma once
#include <algorithm>
#include <cstdint>
#include <fstream>
#include <initializer_list>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "advise.hpp"
#include "json/read.hpp"

namespace stopgap::nights {

inline std::string text_of_file(const std::string& path) {
  std::ifstream in(path);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

inline Plan plan_from(const std::string& path) {
  Refusals refusals;
  Plan plan = json::read_plan(json::parse(text_of_file(path), refusals), "/plan", refusals);
  if (!refusals.empty()) throw std::runtime_error("refused: " + path);
  return plan;
}

inline const Plan& adult() { static const Plan plan = plan_from(STOPGAP_DEMO_DIR "/adult.json"); return plan; }
inline const Plan& child() { static const Plan plan = plan_from(STOPGAP_DEMO_DIR "/child.json"); return plan; }
inline const Plan& example() { static const Plan plan = plan_from(STOPGAP_TESTS_DIR "/cases/example_plan.json"); return plan; }

// 03:10 on a night on which the demo plans stand agreed.
inline const Moment& night() { static const Moment moment = *parse_moment("2026-11-25T03:10:00+00:00"); return moment; }
inline Instant ago(std::int64_t minutes) { return night().instant - Duration::minutes(minutes); }

// A reading in steps of the unit's own display: tenths of mmol/L, whole mg/dL.
inline Glucose in_steps(std::int64_t steps, GlucoseUnit unit) {
  return unit == GlucoseUnit::mmol ? Glucose::mmol_tenths(steps) : Glucose::mg(steps);
}
inline GlucoseReading number(std::int64_t steps, GlucoseUnit unit, ReadFrom from = ReadFrom::finger) {
  return {MeterWord::number, in_steps(steps, unit), unit, from};
}
inline KetoneReading blood(std::int64_t tenths) { return {KetoneKind::blood, Ketones::mmol_tenths(tenths), {}}; }
inline KetoneReading strip(StripWord word) { return {KetoneKind::urine, {}, word}; }
inline KetoneReading unknown(KetoneKind kind) { return {kind, {}, {}}; }

inline Situation situation_of(const std::optional<GlucoseReading>& glucose, KetoneReading ketones) {
  Situation situation;
  situation.now = night();
  if (glucose) situation.glucose = Situation::Glucose{*glucose, std::nullopt, glucose->word != MeterWord::number, false};
  situation.ketones.reading = ketones;
  return situation;
}

inline Event event_at(Instant at, EventKind kind) {
  static int made = 0;
  const std::string count = std::to_string(++made);
  Event event;
  event.id = "e" + std::string(8 - count.size(), '0') + count;  // in the order of making, as text too
  event.at = {at, night().offset};
  event.kind = kind;
  return event;
}
inline Event injection_at(Instant at, Insulin units) {
  Event event = event_at(at, EventKind::injection);
  event.units = units;
  return event;
}
inline Event pump_dose_at(Instant at, Insulin units, PumpPurpose purpose) {
  Event event = event_at(at, EventKind::pumpDose);
  event.units = units;
  event.purpose = purpose;
  return event;
}
inline Event changed_at(Instant at, std::initializer_list<Changed> what) {
  Event event = event_at(at, EventKind::changed);
  for (const Changed each : what) event.changed.add(each);
  return event;
}

inline Record record_of(std::vector<Event> events) {
  std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) {
    return a.at.instant != b.at.instant ? a.at.instant < b.at.instant : a.id < b.id;
  });
  return {"", std::move(events)};
}

inline Insulin rescue_of(const Advice& advice) { return advice.dose ? advice.dose->rescue : Insulin{}; }
inline Insulin total_of(const Advice& advice) { return advice.dose ? advice.dose->total() : Insulin{}; }

// Numbers from a seed: the published mixing steps of splitmix64, the same on every machine.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  std::int64_t from(std::int64_t lowest, std::int64_t highest) {
    return lowest + static_cast<std::int64_t>(next() % static_cast<std::uint64_t>(highest - lowest + 1));
  }
  bool chance(std::int64_t percent) { return from(0, 99) < percent; }
  template <class Item>
  Item one_of(std::initializer_list<Item> items) {
    return items.begin()[from(0, static_cast<std::int64_t>(items.size()) - 1)];
  }

 private:
  std::uint64_t next() {
    std::uint64_t mixed = (state_ += 0x9E3779B97F4A7C15U);
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31);
  }
  std::uint64_t state_;
};

struct Night {
  Plan plan;
  Record record;
  Situation situation;
  Advice advice() const { return advise(plan, record, situation); }
};

// Draws of one night. Values crowd at the edges of the plan, where rules turn.
class NightDrawn {
 public:
  explicit NightDrawn(Draw& draw) : draw_(draw) {}
  NightDrawn(Draw& draw, const Plan& plan) : draw_(draw), plan_(&plan) {}

  Night night_of_any_kind() {
    Night made;
    made.plan = plan();
    plan_ = &made.plan;
    made.record = record();
    made.situation = situation();
    return made;
  }

  Plan plan() {
    Plan made = *draw_.one_of({&adult(), &child(), &example()});
    if (draw_.chance(6)) made.agreement.status = draw_.one_of({PlanStatus::draft, PlanStatus::withdrawn, PlanStatus::superseded});
    const Day today = local_day(night());
    if (draw_.chance(12)) made.agreement.review_by = today.plus_days(draw_.one_of<std::int64_t>({0, -1, -14, -15, -30, -31}));
    if (draw_.chance(8)) made.person.pregnant = true;
    if (draw_.chance(8)) made.person.sglt2_inhibitor = true;
    if (made.person.pregnant || made.person.sglt2_inhibitor || draw_.chance(10)) made.ketones.any_glucose = cell();
    if (draw_.chance(20)) made.person.measured_on = today.plus_days(draw_.one_of<std::int64_t>({-90, -91, -365, -366}));
    made.automation = draw_.one_of({Automation::none, Automation::basal, Automation::basalAndCorrections});
    if (draw_.chance(15)) made.ketones.combine = Combine::replace;
    if (draw_.chance(40)) made.rounding = Rounding::nearest;
    if (draw_.chance(40)) made.squaring = {{SquaringWay::paused}, SquaringWay::paused, Duration::hours(draw_.from(3, 5))};
    if (draw_.chance(30)) made.limits.lock = Duration::hour_hundredths(draw_.one_of<std::int64_t>({250, 300, 500}));
    if (draw_.chance(40)) made.limits.doses_before_call = draw_.from(1, 3);
    if (draw_.chance(30)) made.limits.single_dose = Insulin::hundredths(draw_.one_of<std::int64_t>({50, 250, 400}));
    for (KetoneRow& row : made.ketones.rows) {
      if (row.repeat && draw_.chance(15)) row.repeat = draw_.one_of<std::optional<Duration>>({std::nullopt, Duration::hours(1), Duration::hours(3)});
      for (Cell& each : row.cells)
        if (each.kind != Cell::Kind::none && draw_.chance(15)) each = cell();
    }
    if (made.syringe && made.pen && draw_.chance(30)) (draw_.chance(50) ? made.syringe : made.pen).reset();
    if (!made.pen && draw_.chance(30)) made.pen = Device{Insulin::units(5), Insulin::hundredths(50)};
    return made;
  }

  GlucoseReading glucose_reading() {
    if (draw_.chance(7)) return {MeterWord::HI, {}, {}, from_where()};
    if (draw_.chance(3)) return {MeterWord::LO, {}, {}, from_where()};
    const bool mmol = (plan_->unit == GlucoseUnit::mmol) != draw_.chance(20);
    const GlucoseUnit unit = mmol ? GlucoseUnit::mmol : GlucoseUnit::mg;
    const std::int64_t grains = draw_.chance(55) ? edge().in_grains() : any_number(unit).in_grains();
    const std::int64_t step = in_steps(1, unit).in_grains();
    const std::int64_t steps = grains / step + draw_.from(-1, 1);
    return {MeterWord::number, in_steps(std::clamp<std::int64_t>(steps, mmol ? 10 : 18, mmol ? 500 : 900), unit), unit, from_where()};
  }

  KetoneReading ketone_reading(bool may_be_unknown) {
    if (may_be_unknown && draw_.chance(18)) return unknown(draw_.one_of({KetoneKind::notYet, KetoneKind::noStrips, KetoneKind::error}));
    if (draw_.chance(15)) return strip(static_cast<StripWord>(draw_.from(0, 4)));
    if (draw_.chance(4)) return unknown(KetoneKind::bloodHI);
    return blood(draw_.chance(60) ? draw_.one_of<std::int64_t>({0, 2, 5, 6, 7, 8, 14, 15, 16, 29, 30}) : draw_.from(0, 150));
  }

  Situation situation() {
    Situation made = situation_of(std::nullopt, ketone_reading(true));
    if (draw_.chance(94)) {
      const GlucoseReading reading = glucose_reading();
      made.glucose = Situation::Glucose{reading, std::nullopt, draw_.chance(reading.word == MeterWord::HI ? 75 : 10), draw_.chance(50)};
      if (draw_.chance(15)) made.glucose->at = ago(draw_.one_of<std::int64_t>({0, 5, 15, 16, -1, -3}));
    }
    if (draw_.chance(12)) made.ketones.at = ago(draw_.one_of<std::int64_t>({0, 10, 30, 31, 60, 240, 241}));
    while (draw_.chance(12)) made.signs.add(any_sign());
    while (draw_.chance(12)) made.seen.add(any_fault());
    if (draw_.chance(25)) made.carbs = Carbohydrate::grams(draw_.from(0, 150));
    made.unwell = draw_.chance(10);
    if (draw_.chance(3)) made.mistake = Situation::Mistake{MistakeKind::tooManyUnits, any_insulin(), some_units()};
    if (draw_.chance(15)) made.pump_on_board = Insulin::hundredths(draw_.from(0, 600));
    made.pump_offers_nothing = draw_.chance(6);
    if (draw_.chance(25)) made.high_since = ago(draw_.one_of<std::int64_t>({20, 89, 90, 200}));
    if (plan_->syringe && plan_->pen && draw_.chance(40)) made.with = draw_.one_of({DeviceKind::syringe, DeviceKind::pen});
    if (plan_->school && draw_.chance(15)) made.viewer = Viewer::school;
    return made;
  }

  Record record() {
    std::vector<Event> events;
    for (std::int64_t count = draw_.one_of<std::int64_t>({0, 0, 1, 1, 2, 3, 4, 6, 9}); count > 0; --count) events.push_back(event(events));
    return record_of(std::move(events));
  }

 private:
  ReadFrom from_where() { return draw_.chance(80) ? ReadFrom::finger : ReadFrom::sensor; }
  Sign any_sign() { return static_cast<Sign>(draw_.from(0, 8)); }
  Fault any_fault() { return static_cast<Fault>(draw_.from(0, 7)); }
  InsulinType any_insulin() { return draw_.chance(70) ? InsulinType::rapid : InsulinType::long_acting; }
  std::optional<Insulin> some_units() {
    if (draw_.chance(30)) return std::nullopt;
    return Insulin::units(draw_.from(1, 12));
  }
  Glucose edge() {
    const Plan& plan = *plan_;
    return draw_.one_of({plan.high.trigger, plan.high.trigger, plan.high.middle, plan.low.below, plan.ketones.carbohydrate_only_below,
                         plan.limits.dosing_ceiling, plan.low.very_low});
  }
  Glucose any_number(GlucoseUnit unit) {
    return unit == GlucoseUnit::mmol ? Glucose::mmol_tenths(draw_.from(20, 330)) : Glucose::mg(draw_.from(36, 600));
  }

  Cell cell() {
    Cell made;
    made.kind = draw_.one_of({Cell::Kind::shareOfDaily, Cell::Kind::perKg, Cell::Kind::timesCorrection, Cell::Kind::addUnits});
    made.share = Share::thousandths(draw_.one_of<std::int64_t>({30, 50, 100, 200}));
    made.per_kg = InsulinPerKg::unit_thousandths(draw_.one_of<std::int64_t>({50, 100}));
    made.times = Share::thousandths(draw_.one_of<std::int64_t>({1000, 1500, 2000}));
    made.add = Insulin::hundredths(draw_.one_of<std::int64_t>({50, 100, 200}));
    if (made.kind == Cell::Kind::timesCorrection) {
      Cell otherwise = made;
      otherwise.kind = Cell::Kind::shareOfDaily;
      made.fallback = {otherwise};
    }
    return made;
  }

  // Minutes before now, crowded around every span that matters.
  std::int64_t minutes() {
    if (draw_.chance(30)) return draw_.from(0, 1800);
    const auto in = [](Duration span) { return span.in_seconds() / 60; };
    const Plan& plan = *plan_;
    return std::max<std::int64_t>(0, draw_.one_of({in(plan.limits.lock), in(plan.rapid.action), std::int64_t{120}, std::int64_t{60}, std::int64_t{30},
                                                   std::int64_t{240}, in(plan.high.automation_minutes), std::int64_t{1440}}) + draw_.from(-1, 1));
  }

  Event event(const std::vector<Event>& before) {
    const auto kind = draw_.one_of({EventKind::injection, EventKind::injection, EventKind::injection, EventKind::pumpDose, EventKind::pumpDose,
                                    EventKind::changed, EventKind::changed, EventKind::incident, EventKind::glucose, EventKind::ketones,
                                    EventKind::seen, EventKind::sign, EventKind::doseShown, EventKind::doseRefused, EventKind::offBody,
                                    EventKind::mistake, EventKind::automation, EventKind::pump, EventKind::carbs, EventKind::call,
                                    EventKind::strike, EventKind::look, EventKind::note});
    Event made = event_at(ago(draw_.chance(1) ? -3 : minutes()), kind);
    const auto name_another = [&] {
      if (!before.empty()) made.refers_to = before[static_cast<std::size_t>(draw_.from(0, static_cast<std::int64_t>(before.size()) - 1))].id;
    };
    switch (kind) {
      case EventKind::injection:
        made.insulin = draw_.chance(90) ? InsulinType::rapid : InsulinType::long_acting;
        made.units = Insulin::hundredths(draw_.one_of<std::int64_t>({50, 100, 200, 400, 600}));
        if (made.insulin == InsulinType::rapid && draw_.chance(40))
          made.parts = draw_.one_of<Parts>({{*made.units, {}, {}}, {{}, *made.units, {}}, {{}, {}, *made.units}});
        if (draw_.chance(75)) made.glucose = glucose_reading();
        if (draw_.chance(75)) made.ketones = ketone_reading(false);
        if (draw_.chance(20)) name_another();
        break;
      case EventKind::pumpDose:
        made.units = Insulin::hundredths(draw_.from(1, 80) * 5);
        made.purpose = draw_.one_of({PumpPurpose::correction, PumpPurpose::correction, PumpPurpose::meal, PumpPurpose::automatic});
        if (draw_.chance(80)) made.glucose = glucose_reading();
        break;
      case EventKind::changed:
        made.changed.add(Changed::set);
        if (draw_.chance(70)) made.changed.add(Changed::reservoir);
        if (draw_.chance(20)) made.changed.add(Changed::insulin);
        break;
      case EventKind::incident:
        made.opened = draw_.chance(70);
        if (made.opened && draw_.chance(30)) made.suspected_since = made.at.instant - Duration::minutes(draw_.from(0, 300));
        break;
      case EventKind::glucose: made.glucose = glucose_reading(); break;
      case EventKind::ketones: made.ketones = ketone_reading(false); break;
      case EventKind::seen: made.faults.add(any_fault()); break;
      case EventKind::sign: made.signs.add(any_sign()); break;
      case EventKind::doseShown:
        made.units = Insulin::units(draw_.from(1, 6));
        break;
      case EventKind::doseRefused: name_another(); break;
      case EventKind::offBody:
        made.units = Insulin::hundredths(draw_.from(1, 80) * 5);
        made.tubing_end = draw_.one_of({TubingEnd::sink, TubingEnd::body, TubingEnd::unsure});
        break;
      case EventKind::mistake:
        made.insulin = any_insulin();
        made.units = some_units();
        break;
      case EventKind::automation: made.on = draw_.chance(50); break;
      case EventKind::pump: made.on = draw_.chance(60); break;
      case EventKind::carbs:
        made.carbs = Carbohydrate::grams(draw_.from(0, 60));
        name_another();
        break;
      case EventKind::call:
        made.call_to = draw_.one_of({CallTo::team, CallTo::team, CallTo::emergency, CallTo::home});
        made.answered = draw_.chance(50);
        name_another();
        break;
      case EventKind::strike: name_another(); break;
      case EventKind::look:
        made.due = made.at.instant + Duration::hours(1);
        made.look_glucose = true;
        break;
      default: break;
    }
    return made;
  }

  Draw& draw_;
  const Plan* plan_ = nullptr;
};

// The same draw gives the same night.
inline Night night_of(std::uint64_t draw_number) {
  Draw draw(20261125 + draw_number);
  return NightDrawn(draw).night_of_any_kind();
}

// A night in a few words, for the message of a failure.
inline std::string told(const Night& night) {
  std::ostringstream out;
  const auto reading = [&](const GlucoseReading& glucose) {
    if (glucose.word != MeterWord::number) out << (glucose.word == MeterWord::HI ? "HI" : "LO");
    else if (glucose.unit == GlucoseUnit::mmol) out << static_cast<double>(glucose.value.in_grains()) / 225200 << " mmol/L";
    else out << glucose.value.in_grains() / 12500 << " mg/dL";
    out << (glucose.from == ReadFrom::sensor ? " sensor" : "");
  };
  const auto ketones = [&](const KetoneReading& k) {
    if (k.kind == KetoneKind::blood) out << " blood ketones " << static_cast<double>(k.blood.in_mmol_tenths()) / 10;
    else out << " ketones kind " << static_cast<int>(k.kind) << " strip " << static_cast<int>(k.strip);
  };
  const auto& [plan, record, situation] = night;
  out << plan.title << (plan.person.pregnant ? ", pregnant" : "") << (plan.person.sglt2_inhibitor ? ", SGLT2" : "") << ", status "
      << static_cast<int>(plan.agreement.status) << ", review in "
      << plan.agreement.review_by.in_epoch_days() - local_day(situation.now).in_epoch_days() << " days; ";
  if (situation.glucose) {
    reading(situation.glucose->reading);
    out << (situation.glucose->repeated ? " repeated" : "") << (situation.glucose->no_meter ? " no meter" : "");
    if (situation.glucose->at) out << " " << (situation.now.instant - *situation.glucose->at).in_seconds() / 60 << " min old";
  }
  ketones(situation.ketones.reading);
  if (situation.ketones.at) out << " " << (situation.now.instant - *situation.ketones.at).in_seconds() / 60 << " min old";
  out << " signs " << situation.signs.bits() << " seen " << situation.seen.bits() << (situation.unwell ? " unwell" : "");
  if (situation.carbs) out << " carbs " << situation.carbs->in_grams().floor();
  if (situation.mistake) out << " mistake" << (situation.mistake->insulin == InsulinType::rapid ? " rapid" : " long");
  if (situation.pump_on_board) out << " on board " << (situation.pump_on_board->in_units() * Fraction{100}).floor() << "/100";
  if (situation.pump_offers_nothing) out << " pump offers nothing";
  if (situation.high_since) out << " high for " << (situation.now.instant - *situation.high_since).in_seconds() / 60 << " min";
  if (situation.viewer == Viewer::school) out << " school";
  for (const Event& event : record.events) {
    out << "\n    " << (situation.now.instant - event.at.instant).in_seconds() / 60 << " min ago " << event.id << " kind " << static_cast<int>(event.kind);
    if (event.units) out << ", " << (event.units->in_units() * Fraction{100}).floor() << "/100 units";
    if (event.parts) out << ", rescue " << (event.parts->rescue.in_units() * Fraction{100}).floor() << "/100";
    if (event.glucose) { out << ", "; reading(*event.glucose); }
    if (event.ketones) { out << ","; ketones(*event.ketones); }
    out << (event.insulin == InsulinType::long_acting ? " long" : "") << (event.opened ? " opened" : "") << (event.on ? " on" : "") << (event.answered ? " answered" : "")
        << " purpose " << static_cast<int>(event.purpose) << " tubing " << static_cast<int>(event.tubing_end);
    if (!event.refers_to.empty()) out << " for " << event.refers_to;
  }
  return out.str();
}

}  // namespace stopgap::nights
