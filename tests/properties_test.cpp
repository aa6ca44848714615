// What must hold for every dose, whatever the plan and the night (sources of the limits: the plan itself). Two ways of asking:
// every glucose step x every ketone reading x the minutes around every clock, for three plans; and nights drawn from a seed.
//   no rescue dose with a closed gate, at or below the low level, or in an outcome that does not name one
//   within the lock of a dose another one follows only by the clock of ketones
//   a rescue dose is within every cap and a whole number of steps
//   more blood ketones at the same glucose never call less urgently
//   blood ketones not tested, or glucose not read, never give a larger dose
//   a further injection never gives a larger dose while it acts
//   a reading typed in either unit decides alike
#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "nights.hpp"
#include "rules/facts.hpp"

namespace stopgap {
namespace {

using namespace nights;

// Every glucose the meter can show, the words and no reading at all.
std::vector<std::optional<GlucoseReading>> every_glucose(const Plan& plan) {
  std::vector<std::optional<GlucoseReading>> all{std::nullopt, GlucoseReading{MeterWord::LO, {}, plan.unit, ReadFrom::finger}};
  const bool mmol = plan.unit == GlucoseUnit::mmol;
  for (std::int64_t steps = mmol ? 10 : 18; steps <= (mmol ? 500 : 900); ++steps) all.push_back(number(steps, plan.unit));
  all.push_back(GlucoseReading{MeterWord::HI, {}, plan.unit, ReadFrom::finger});
  return all;
}

// Blood ketones in their order, 0.0 to 15.0 and HI; then what is no blood reading.
std::vector<KetoneReading> every_blood_reading() {
  std::vector<KetoneReading> all;
  for (std::int64_t tenths = 0; tenths <= 150; ++tenths) all.push_back(blood(tenths));
  all.push_back(unknown(KetoneKind::bloodHI));
  return all;
}
std::vector<KetoneReading> every_other_reading() {
  std::vector<KetoneReading> all;
  for (int word = 0; word < strip_words; ++word) all.push_back(strip(static_cast<StripWord>(word)));
  for (const KetoneKind kind : {KetoneKind::error, KetoneKind::noStrips}) all.push_back(unknown(kind));
  return all;
}

// No dose before, and a needle dose so many minutes ago: bare, with its readings and a new set, and as the second one.
std::vector<Record> records_around_every_clock(const Plan& plan) {
  std::vector<Record> all{Record{}};
  const Insulin units = plan.limits.share_of_daily * plan.daily_total;
  const auto with_readings = [&](std::int64_t minutes, std::int64_t ketone_tenths) {
    Event event = injection_at(ago(minutes), units);
    event.glucose = GlucoseReading{MeterWord::number, plan.high.trigger + (plan.high.trigger - plan.high.middle), plan.unit, ReadFrom::finger};
    event.ketones = blood(ketone_tenths);
    return event;
  };
  std::set<std::int64_t> minutes{0, 480};
  for (const Duration clock : {plan.high.first_look, plan.high.second_look, Duration::hours(3), plan.limits.lock, plan.rapid.action})
    for (const std::int64_t off : {-1, 0, 1}) minutes.insert(clock.in_seconds() / 60 + off);
  for (const std::int64_t since : minutes) {
    all.push_back(record_of({injection_at(ago(since), Insulin::hundredths(50))}));
    all.push_back(record_of({with_readings(since, 10), changed_at(ago(since), {Changed::set, Changed::reservoir})}));
    all.push_back(record_of({injection_at(ago(since + 130), Insulin::hundredths(50)), with_readings(since, 10),
                             changed_at(ago(since), {Changed::set, Changed::reservoir})}));
  }
  return all;
}

bool is_low(const Plan& plan, const Situation& situation) {
  if (!situation.glucose || (situation.glucose->at && situation.now.instant - *situation.glucose->at > Duration::minutes(15))) return false;
  const GlucoseReading& reading = situation.glucose->reading;
  if (reading.word != MeterWord::number) return reading.word == MeterWord::LO;
  return reading.value <= (reading.unit == plan.unit ? plan.low.below : plan.low.below + half_display_step(plan.unit));
}

// The last word of the record about the pump, or a dead one seen now or never answered: nothing of it is changed.
bool is_off_or_dead(const History& history, const Situation& situation) {
  std::optional<Instant> off, dead, on;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::pump) (event->on ? on : off) = event->at.instant;
    if (event->kind == EventKind::seen && event->faults.has(Fault::pumpDead)) dead = event->at.instant;
  }
  return situation.seen.has(Fault::pumpDead) || (off && !(on && *on > *off)) || (dead && !(on && *on >= *dead));
}

// What is wrong with a rescue dose while the last one still locks: only the clock of ketones opens, for the extra alone.
std::string wrong_within_the_lock(const Plan& plan, const History& history, const Situation& situation, const Advice& advice) {
  const Event* last = nullptr;
  bool set = false, reservoir = false;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind == EventKind::injection && event->insulin == InsulinType::rapid && !event->rescue().is_zero()) last = event;
    set |= event->kind == EventKind::changed && event->changed.has(Changed::set);
    reservoir |= event->kind == EventKind::changed && event->changed.has(Changed::reservoir);
  }
  if (!last || situation.now.instant - last->at.instant >= plan.limits.lock) return {};
  if (advice.decided_by != Rule::ANY && advice.decided_by != Rule::KET && advice.decided_by != Rule::EAT) return "within the lock, and not for ketones";
  const KetoneReading& ketones = situation.ketones.reading;
  if (ketones.kind != KetoneKind::blood && ketones.kind != KetoneKind::bloodHI) return "within the lock without a blood reading";
  if ((!set || !reservoir) && !is_off_or_dead(history, situation)) return "within the lock with the old set or reservoir";
  const KetoneRow* row = &plan.ketones.rows.back();
  if (ketones.kind == KetoneKind::blood)
    for (const KetoneRow& each : plan.ketones.rows)
      if (each.from <= ketones.blood) row = &each;
  if (!row->repeat || situation.now.instant - last->at.instant < *row->repeat) return "within the repeat span of the row";
  if (last->ketones && last->ketones->kind == KetoneKind::blood && ketones.kind == KetoneKind::blood && last->ketones->blood - ketones.blood >= plan.ketones.expected_fall)
    return "within the lock while ketones fall";
  return advice.dose->working.chosen == Chosen::extra ? "" : "within the lock with more than the extra";
}

// What is wrong with the dose of an advice; nothing if nothing is.
std::string wrong_with_the_dose(const Plan& plan, const History& history, const Situation& situation, const Advice& advice) {
  if (!advice.dose) return {};
  const Dose& dose = *advice.dose;
  const Device& device = dose.with == DeviceKind::syringe ? *plan.syringe : *plan.pen;
  if (dose.total() > device.capacity) return "more than the device holds";
  if (dose.total() <= Insulin{}) return "a dose of nothing";
  for (const Insulin part : {dose.rescue, dose.meal})
    if ((part.in_units() / device.step.in_units()).denominator() != 1) return "not a whole number of steps";
  if (dose.rescue.is_zero()) return {};
  if (advice.gate != Gate::open) return "rescue with a closed gate";
  if (is_low(plan, situation)) return "rescue into a low";
  const Outcome outcome = advice.outcome;
  if (outcome != Outcome::inject && outcome != Outcome::injectAtAnyGlucose && outcome != Outcome::eatAndInject && outcome != Outcome::emergency)
    return "rescue in an outcome that names none";
  if (dose.rescue > plan.limits.single_dose) return "over the single dose";
  if (dose.rescue > plan.limits.share_of_daily * plan.daily_total) return "over the share of the daily total";
  Insulin rolling = dose.rescue;
  for (const auto& [event, struck] : history.entries())
    if (event->kind == EventKind::injection && event->insulin == InsulinType::rapid && situation.now.instant - event->at.instant <= plan.rapid.action)
      rolling = rolling + event->rescue();
  if (rolling > plan.limits.rolling_share * plan.daily_total) return "over the rolling cap";
  return wrong_within_the_lock(plan, history, situation, advice);
}

class EveryReading : public testing::TestWithParam<const char*> {
 protected:
  const Plan& plan() const { return std::string(GetParam()) == "adult" ? adult() : std::string(GetParam()) == "child" ? child() : example(); }
};

TEST_P(EveryReading, DosesCallsAndWhatIsMissing) {
  const auto glucoses = every_glucose(plan());
  const auto bloods = every_blood_reading(), others = every_other_reading();
  std::int64_t asked = 0, doses = 0;
  int failures = 0;
  const auto fail = [&](const std::string& what, const Record& record, const Situation& situation) {
    if (++failures <= 5) ADD_FAILURE() << what << ": " << told({plan(), record, situation});
  };
  for (const Record& record : records_around_every_clock(plan())) {
    const History history = History::of(record, night().instant);
    const auto ask = [&](const Situation& situation) {
      ++asked;
      const Advice advice = evaluate(plan(), history, situation);
      doses += !rescue_of(advice).is_zero();
      if (const std::string wrong = wrong_with_the_dose(plan(), history, situation, advice); !wrong.empty()) fail(wrong, record, situation);
      return advice;
    };
    std::vector<Insulin> without_glucose;  // the dose of each blood reading when glucose was not read
    for (const auto& glucose : glucoses) {
      Situation situation = situation_of(glucose, unknown(KetoneKind::notYet));
      if (glucose && glucose->word == MeterWord::HI) situation.glucose->repeated = true;
      situation.carbs = Carbohydrate::grams(30);
      const Insulin not_tested = total_of(ask(situation));
      Call urgent = Call::none;
      for (std::size_t i = 0; i < bloods.size(); ++i) {
        situation.ketones.reading = bloods[i];
        const Advice advice = ask(situation);
        if (advice.call < urgent) fail("more ketones, a less urgent call", record, situation);
        urgent = std::max(urgent, advice.call);
        if (not_tested > total_of(advice)) fail("a larger dose with ketones not tested", record, situation);
        if (!glucose) without_glucose.push_back(total_of(advice));
        else if (without_glucose[i] > total_of(advice)) fail("a larger dose with glucose not read", record, situation);
      }
      for (const KetoneReading& other : others) {
        situation.ketones.reading = other;
        ask(situation);
      }
    }
  }
  EXPECT_EQ(failures, 0);
  EXPECT_GT(asked, 1000000);
  EXPECT_GT(doses, 100000);
}
INSTANTIATE_TEST_SUITE_P(Plan, EveryReading, testing::Values("adult", "child", "example"));

// Takes away what a failure does not need.
Night smallest(Night night, const std::function<bool(const Night&)>& fails) {
  const auto keep_if_failing = [&](Night simpler) {
    if (!fails(simpler)) return false;
    night = std::move(simpler);
    return true;
  };
  for (bool simpler = true; simpler;) {
    simpler = false;
    for (std::size_t i = 0; i < night.record.events.size(); ++i) {
      Night other = night;
      other.record.events.erase(other.record.events.begin() + static_cast<std::ptrdiff_t>(i));
      simpler |= keep_if_failing(std::move(other));
    }
  }
  Night bare = night;
  bare.situation = situation_of(std::nullopt, night.situation.ketones.reading);
  bare.situation.glucose = night.situation.glucose;
  keep_if_failing(std::move(bare));
  return night;
}

// `wrong` says what is wrong with a night, or nothing; the night it judges may be its own variation.
void for_drawn_nights(std::uint64_t count, const std::function<std::string(const Night&)>& wrong) {
  int failures = 0;
  for (std::uint64_t draw = 0; draw < count && failures < 5; ++draw) {
    const Night night = night_of(draw);
    if (wrong(night).empty()) continue;
    ++failures;
    const Night least = smallest(night, [&](const Night& other) { return !wrong(other).empty(); });
    ADD_FAILURE() << "draw " << draw << ": " << wrong(least) << "\n" << told(least);
  }
}

constexpr std::uint64_t nights_drawn = 150000;

TEST(DrawnNights, EveryDoseIsWithinItsLimits) {
  std::int64_t doses = 0;
  for_drawn_nights(nights_drawn, [&](const Night& night) {
    const Advice advice = night.advice();
    doses += !rescue_of(advice).is_zero();
    return wrong_with_the_dose(night.plan, History::of(night.record, night.situation.now.instant), night.situation, advice);
  });
  EXPECT_GT(doses, 1000);
}

TEST(DrawnNights, WhatIsMissingNeverGivesALargerDose) {
  for_drawn_nights(nights_drawn, [](const Night& night) -> std::string {
    const Insulin dose = total_of(night.advice());
    Night other = night;
    if (const KetoneKind kind = night.situation.ketones.reading.kind; kind == KetoneKind::blood || kind == KetoneKind::bloodHI) {
      other.situation.ketones = {unknown(KetoneKind::notYet), std::nullopt};
      if (total_of(other.advice()) > dose) return "a larger dose with ketones not tested";
    }
    other = night;
    other.situation.glucose.reset();
    if (total_of(other.advice()) > dose) return "a larger dose with glucose not read";
    return {};
  });
}

// Left out are calls whose reason more ketones take away, as the rules are written:
//   with `replace` a small extra takes the place of a net that was cut, or that could go low: the smaller dose needs no call;
//   a call unanswered for half an hour becomes an emergency under CAL, and CAL waits for the row's own repeat span, which may
//   be longer in a worse row (there the call stays at least at the team);
//   at school the team is called where the signed sheet has no dose for what is seen, such as a leak without ketones: with more
//   ketones the sheet has one.
TEST(DrawnNights, MoreKetonesNeverCallLessUrgently) {
  for_drawn_nights(nights_drawn, [](const Night& night) -> std::string {
    if (night.situation.ketones.reading.kind != KetoneKind::blood) return {};
    const Advice advice = night.advice();
    if (advice.gate == Gate::SCH) return {};
    const bool by_its_size = advice.cautions.has(Caution::cut) || advice.cautions.has(Caution::couldGoLow);
    if (advice.dose && night.plan.ketones.combine == Combine::replace && by_its_size) return {};
    const Call least = advice.decided_by == Rule::CAL ? Call::team : advice.call;
    const std::int64_t tenths = night.situation.ketones.reading.blood.in_mmol_tenths();
    for (const std::int64_t more : {std::int64_t{1}, std::int64_t{3}, std::int64_t{9}, std::int64_t{20}}) {
      Night other = night;
      other.situation.ketones.reading = blood(std::min<std::int64_t>(150, tenths + more));
      if (other.advice().call < least) return "a less urgent call at " + std::to_string(tenths + more) + " tenths";
    }
    return {};
  });
}

// A dose that was shown and waits for its answer is left out of both: a further injection would be that answer.
TEST(DrawnNights, AFurtherInjectionNeverGivesALargerDoseWhileItActs) {
  std::int64_t tried = 0;
  for_drawn_nights(nights_drawn, [&](Night night) -> std::string {
    std::erase_if(night.record.events, [](const Event& event) { return event.kind == EventKind::doseShown; });
    const History history = History::of(night.record, night.situation.now.instant);
    if (!rules::incident_at(night.plan, history, night.situation.now.instant).suspected_since) return {};
    const Event* last = nullptr;
    for (const auto& [event, struck] : history.entries())
      if (event->kind == EventKind::injection && event->insulin == InsulinType::rapid && !event->rescue().is_zero()) last = event;
    if (!last) return {};
    const Insulin dose = rescue_of(night.advice());
    for (const std::int64_t since : {0, 1, 60, 119, 120, 121, 180, 239, 240, 241, 270}) {
      Event further = injection_at(ago(since), Insulin::units(1));
      if (night.situation.now.instant - further.at.instant > night.plan.rapid.action) continue;
      if (night.record.events.back().at.instant >= further.at.instant) continue;
      further.glucose = last->glucose;
      further.ketones = last->ketones;
      Night other = night;
      other.record.events.push_back(further);
      ++tried;
      if (rescue_of(other.advice()) > dose) return "a larger dose with 1 unit more " + std::to_string(since) + " minutes ago";
    }
    return {};
  });
  EXPECT_GT(tried, 1000);
}

// A value in the other unit and the nearest step of the plan's unit, where no edge lies within half a display step of either.
// The last dose has worn off, so that no edge moves with what is on board.
TEST(EitherUnit, DecidesAlikeOffTheHalfStepAroundAnEdge) {
  std::int64_t compared = 0;
  for (const Plan* plan : {&adult(), &child(), &example()}) {
    const bool mmol = plan->unit == GlucoseUnit::mmol;
    const GlucoseUnit other_unit = mmol ? GlucoseUnit::mg : GlucoseUnit::mmol;
    std::vector<Glucose> edges{plan->low.below, plan->low.very_low, plan->high.middle, plan->high.trigger, plan->ketones.carbohydrate_only_below,
                               plan->limits.dosing_ceiling};
    edges.insert(edges.end(), plan->ketones.columns.begin(), plan->ketones.columns.end());
    const std::vector<Record> records{Record{}, record_of({injection_at(ago(300), Insulin::units(1))}), record_of({changed_at(ago(30), {Changed::set})})};
    for (std::int64_t steps = mmol ? 18 : 10; steps <= (mmol ? 900 : 500); ++steps) {
      const GlucoseReading typed = number(steps, other_unit);
      const std::int64_t step = in_steps(1, plan->unit).in_grains();
      const std::int64_t nearest = (typed.value.in_grains() + step / 2) / step;
      const GlucoseReading same = number(nearest, plan->unit);
      const bool near_an_edge = std::any_of(edges.begin(), edges.end(), [&](Glucose edge) {
        return std::abs((typed.value - edge).in_grains()) <= half_display_step(plan->unit).in_grains() || same.value == edge;
      });
      if (near_an_edge) continue;
      for (const Record& record : records) {
        const History history = History::of(record, night().instant);
        for (const std::int64_t tenths : {0, 3, 6, 15, 29, 30}) {
          const Advice one = evaluate(*plan, history, situation_of(typed, blood(tenths))), two = evaluate(*plan, history, situation_of(same, blood(tenths)));
          ++compared;
          ASSERT_EQ(one.decided_by, two.decided_by) << told({*plan, record, situation_of(typed, blood(tenths))});
          ASSERT_EQ(one.outcome, two.outcome) << told({*plan, record, situation_of(typed, blood(tenths))});
          ASSERT_EQ(one.gate, two.gate);
          ASSERT_EQ(one.dose.has_value(), two.dose.has_value());
        }
      }
    }
  }
  EXPECT_GT(compared, 20000);
}

}  // namespace
}  // namespace stopgap
