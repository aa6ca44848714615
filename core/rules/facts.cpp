#include "rules/facts.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_set>
#include "figures/action.hpp"
#include "figures/ketones.hpp"
#include "figures/timing.hpp"

namespace stopgap::rules {
namespace {

using Entries = std::vector<History::Entry>;

bool is_needle_dose(const Event& event) {
  return event.kind == EventKind::injection && event.insulin == InsulinType::rapid && !event.rescue().is_zero();
}

bool is_pump_correction(const Event& event) { return event.kind == EventKind::pumpDose && event.purpose == PumpPurpose::correction; }

void later(std::optional<Instant>& latest, Instant at) {
  if (!latest || *latest < at) latest = at;
}

const KetoneRow* row_of(const Plan& plan, const KetoneReading& reading) {
  const auto& rows = plan.ketones.rows;
  switch (reading.kind) {
    case KetoneKind::bloodHI: return &rows.back();
    case KetoneKind::blood: {
      const KetoneRow* found = nullptr;
      for (const KetoneRow& row : rows)
        if (row.from <= reading.blood) found = &row;
      return found;
    }
    case KetoneKind::urine:
      for (const KetoneRow& row : rows)
        if (std::find(row.urine.begin(), row.urine.end(), reading.strip) != row.urine.end()) return &row;
      return nullptr;
    default: return nullptr;
  }
}

bool is_help_now(const KetoneReading& reading) {
  return reading.kind == KetoneKind::bloodHI || (reading.kind == KetoneKind::blood && reading.blood >= figures::ketones_help_now.value) ||
         (reading.kind == KetoneKind::urine && reading.strip == StripWord::large);
}

bool is_known(const KetoneReading& reading) {
  return reading.kind == KetoneKind::blood || reading.kind == KetoneKind::bloodHI || reading.kind == KetoneKind::urine;
}

// The last ketones of the record, or a stale reading of the situation: the higher of two at one instant.
struct LastKetones {
  std::optional<Instant> at;
  bool help_now = false, acting = false;
  void consider(const Plan& plan, const KetoneReading& reading, Instant taken, Instant now) {
    if (!is_known(reading) || now - taken > figures::last_ketones_matter.value || (at && taken < *at)) return;
    if (!at || taken > *at) help_now = acting = false;
    at = taken;
    const KetoneRow* row = row_of(plan, reading);
    help_now |= is_help_now(reading);
    acting |= is_help_now(reading) || (row && row->from >= plan.ketones.act_from);
  }
};

void read_glucose(Facts& facts) {
  const auto& given = facts.situation.glucose;
  if (!given) return;
  if (given->at && facts.now - *given->at > figures::glucose_reading_lasts.value) return;
  const GlucoseReading& reading = given->reading;
  facts.level = reading.word == MeterWord::HI ? Level::HI : reading.word == MeterWord::LO ? Level::LO : Level::number;
  facts.G = reading.value;
  facts.converted = facts.level == Level::number && reading.unit != facts.plan.unit;
  facts.from_sensor = reading.from == ReadFrom::sensor;
  facts.sensor_only = facts.from_sensor && given->no_meter && facts.level == Level::number;
  facts.finger = !facts.from_sensor || facts.sensor_only;
  facts.repeated = given->repeated;
  facts.high = facts.level == Level::HI || facts.at_or_above(facts.plan.high.trigger);
}

void read_ketones(Facts& facts, LastKetones& last) {
  KetoneReading reading = facts.situation.ketones.reading;
  const auto& at = facts.situation.ketones.at;
  if (at && is_known(reading) && facts.now - *at > figures::ketone_reading_lasts.value) {
    last.consider(facts.plan, reading, *at, facts.now);
    reading = KetoneReading{};
  }
  facts.row = row_of(facts.plan, reading);
  facts.blood = reading.kind == KetoneKind::blood || reading.kind == KetoneKind::bloodHI;
  if (reading.kind == KetoneKind::blood) facts.blood_value = reading.blood;
  facts.not_tested = reading.kind == KetoneKind::notYet || reading.kind == KetoneKind::error;
  facts.no_strips = reading.kind == KetoneKind::noStrips;
  facts.acting = facts.row && facts.row->from >= facts.plan.ketones.act_from;
  // A strip that shows nothing is not believed while a danger sign is there: strips miss what blood shows.
  const bool doubtful_strip = reading.kind == KetoneKind::urine && reading.strip <= StripWord::trace && facts.danger;
  const bool untested = facts.not_tested || facts.no_strips;
  facts.unknown = untested || doubtful_strip;
  facts.help_now = is_help_now(reading) || (untested && last.help_now);
  facts.last_acting = untested && last.acting;
}

void read_signs(Facts& facts) {
  const SetOf<Sign> signs = facts.situation.signs;
  facts.severe = signs.has(Sign::drowsy) || signs.has(Sign::confused) || signs.has(Sign::fastBreathing) || signs.has(Sign::cannotKeepFluid);
  facts.danger = facts.severe || signs.has(Sign::vomitedAgain) || signs.has(Sign::bellyPain);
  facts.vomits = signs.has(Sign::vomitedOnce) || signs.has(Sign::vomitedAgain);
  facts.unwell = facts.situation.unwell || signs.has(Sign::vomitedOnce) || facts.danger;
  facts.cannot_swallow = signs.has(Sign::fitting) || signs.has(Sign::cannotSwallow);
  facts.keeps_nothing_down = facts.cannot_swallow || signs.has(Sign::cannotKeepFluid) || signs.has(Sign::vomitedAgain);
}

// Faults that no change has answered since, and whether the pump is off: the last word of the record. Where two
// tie, off and paused stand.
void read_faults(Facts& facts) {
  struct LastSeen { std::optional<Instant> set, reservoir, insulin, pump_on, pump_off, paused, resumed; } last;
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    if (event->kind == EventKind::changed) {
      if (event->changed.has(Changed::set)) later(last.set, at);
      if (event->changed.has(Changed::reservoir)) later(last.reservoir, at);
      if (event->changed.has(Changed::insulin)) later(last.insulin, at);
    } else if (event->kind == EventKind::pump) {
      later(event->on ? last.pump_on : last.pump_off, at);
    } else if (event->kind == EventKind::automation) {
      later(event->on ? last.resumed : last.paused, at);
    }
  }
  facts.automation_paused = last.paused && !(last.resumed && *last.resumed > *last.paused);
  facts.faults = facts.situation.seen;
  const auto answered = [](const std::optional<Instant>& change, Instant seen) { return change && *change >= seen; };
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::seen) continue;
    const Instant at = event->at.instant;
    for (const Fault fault : {Fault::leak, Fault::blood, Fault::bentCannula, Fault::cameOut, Fault::occlusionAlarm})
      if (event->faults.has(fault) && !answered(last.set, at)) facts.faults.add(fault);
    if (event->faults.has(Fault::outOfInsulin) && !answered(last.reservoir, at)) facts.faults.add(Fault::outOfInsulin);
    if (event->faults.has(Fault::heatedInsulin) && !answered(last.insulin, at)) facts.faults.add(Fault::heatedInsulin);
    if (event->faults.has(Fault::pumpDead) && !answered(last.pump_on, at)) facts.faults.add(Fault::pumpDead);
  }
  const bool off = last.pump_off && !(last.pump_on && *last.pump_on > *last.pump_off);
  facts.off_or_dead = off || facts.faults.has(Fault::pumpDead);
}

void read_needle_doses(Facts& facts) {
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    switch (event->kind) {
      case EventKind::injection:
        if (event->insulin != InsulinType::rapid) break;
        if (is_needle_dose(*event)) {
          facts.last_needle = event;
          if (facts.in_incident(at)) ++facts.needle_doses_in_incident;
        }
        if (!event->rescue().is_zero() || (event->parts && !event->parts->meal.is_zero())) later(facts.last_rapid_injection, at);
        break;
      case EventKind::pumpDose:
        if (!is_pump_correction(*event)) break;
        later(facts.last_pump_correction, at);
        // One from the future is no correction to wait for: the clock is in doubt.
        if (!struck && facts.since(event) <= facts.plan.rapid.action && at <= facts.now + figures::clock_tolerance.value)
          facts.pump_correction = event;
        break;
      case EventKind::seen:
        if (facts.in_incident(at)) facts.fault_in_incident = true;
        break;
      case EventKind::changed:
        if (!facts.in_incident(at)) break;
        if (event->changed.has(Changed::set)) later(facts.set_changed, at);
        if (event->changed.has(Changed::reservoir)) later(facts.reservoir_changed, at);
        break;
      case EventKind::call:
        if (event->call_to != CallTo::team || !facts.in_incident(at)) break;
        if (event->answered) facts.unanswered_call.reset();
        else if (!facts.unanswered_call) facts.unanswered_call = at;
        break;
      default: break;
    }
  }
}

bool same_or_higher(const Facts& facts, const GlucoseReading& then) {
  if (facts.level == Level::HI || then.word == MeterWord::LO) return true;
  if (then.word == MeterWord::HI) return false;
  return facts.G >= then.value - half_display_step(facts.plan.unit);
}

bool fell_enough(const Facts& facts, const GlucoseReading& then) {
  if (facts.level != Level::number || then.word == MeterWord::LO) return false;
  // HI was at least the dosing ceiling: a fall from there down is a fall, so that a working set is not condemned.
  const Glucose before = then.word == MeterWord::HI ? facts.plan.limits.dosing_ceiling : then.value;
  return before - facts.G >= facts.plan.high.expected_fall;
}

void judge_pump_correction(Facts& facts) {
  if (!facts.pump_correction || !facts.high) return;
  const Duration since = facts.since(facts.pump_correction);
  const auto& then = facts.pump_correction->glucose;
  if (since >= facts.plan.high.second_look) {
    if (!then) facts.correction_failed = CorrectionFailure::at_second_look_unrecorded;
    else if (!fell_enough(facts, *then)) facts.correction_failed = CorrectionFailure::at_second_look;
  } else if (since >= facts.plan.high.first_look && then && same_or_higher(facts, *then)) {
    facts.correction_failed = CorrectionFailure::at_first_look;
  }
}

void judge_pump(Facts& facts) {
  const bool corrects_by_itself = facts.plan.automation == Automation::basalAndCorrections;
  const auto& since = facts.situation.high_since;
  const bool high_for_long = facts.high && since && facts.now - *since >= facts.plan.high.automation_minutes;
  facts.pump_failed = (corrects_by_itself && high_for_long && !facts.automation_paused) || facts.situation.pump_offers_nothing || facts.off_or_dead;
}

// Against the readings the last needle dose was decided on.
bool has_fallen(const Facts& facts) {
  if (!facts.last_needle) return false;
  if (facts.acting) {
    const auto& then = facts.last_needle->ketones;
    return facts.blood_value && then && then->kind == KetoneKind::blood && then->blood - *facts.blood_value >= facts.plan.ketones.expected_fall;
  }
  const auto& then = facts.last_needle->glucose;
  if (facts.level != Level::number || !then || then->word != MeterWord::number) return false;
  const Glucose ceiling = facts.plan.limits.dosing_ceiling;
  return std::min(then->value, ceiling) - std::min(facts.G, ceiling) >= facts.plan.high.expected_fall;
}

void read_excess(Facts& facts) {
  const Duration action = facts.plan.rapid.action;
  const Duration long_action = facts.plan.long_acting ? facts.plan.long_acting->action
                                                      : Duration::hours(figures::longest_long_acting_hours.value);
  if (const auto& mistake = facts.situation.mistake) {
    if (mistake->insulin == InsulinType::rapid) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown = !mistake->units;
      later(facts.last_excess, facts.now);
    } else {
      facts.mistake_long = true;
    }
  }
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::mistake) continue;
    const Duration since = facts.since(event);
    if (event->insulin == InsulinType::rapid && since <= action) {
      facts.mistake_rapid = true;
      facts.mistake_units_unknown |= !event->units;
      later(facts.last_excess, event->at.instant);
    } else if (event->insulin == InsulinType::long_acting && since <= long_action) {
      facts.mistake_long = true;
    }
  }
}

// Insulin the pump put in where it should not have: off-body into the body, or corrections on top of a needle dose.
void read_doubling(Facts& facts) {
  const Plan& plan = facts.plan;
  const Insulin step = plan.syringe ? plan.syringe->step : plan.pen->step;
  std::optional<Instant> needle;  // the earliest needle dose within lockHours
  Insulin by_pump_after;
  std::optional<Instant> last_pump_dose;
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    if (is_needle_dose(*event) && !needle && facts.since(event) < plan.limits.lock) needle = at;
    if (event->kind == EventKind::pumpDose && event->purpose != PumpPurpose::meal && needle && at >= *needle) {
      by_pump_after = by_pump_after + *event->units;
      last_pump_dose = at;
    }
    if (event->kind != EventKind::offBody || *event->units < step || facts.since(event) > plan.rapid.action) continue;
    if (event->tubing_end == TubingEnd::body || (event->tubing_end == TubingEnd::unsure && facts.would_go_low_absorbed)) {
      facts.off_body_went_in = true;
      later(facts.last_excess, at);
    }
  }
  if (needle && by_pump_after >= step && facts.would_go_low_absorbed) {
    facts.pump_doubled = true;
    later(facts.last_excess, *last_pump_dose);
  }
}

void read_clock(Facts& facts) {
  const Instant latest = facts.now + figures::clock_tolerance.value;
  for (const auto& [event, struck] : facts.history.entries()) facts.clock_in_doubt |= event->at.instant > latest;
  facts.clock_in_doubt |= facts.situation.glucose && facts.situation.glucose->at && *facts.situation.glucose->at > latest;
  facts.clock_in_doubt |= facts.situation.ketones.at && *facts.situation.ketones.at > latest;
}

void read_plan(Facts& facts, const Variation& variation) {
  const Plan& plan = facts.plan;
  const Day today = local_day(facts.situation.now);
  const Day last_day = plan.agreement.review_by.plus_days(plan.agreement.grace_days);
  const bool agreed = plan.agreement.status == PlanStatus::agreed && today <= last_day;
  const bool orders_stand = facts.situation.viewer != Viewer::school || (plan.school && today <= plan.school->orders_expire);
  facts.plan_usable = variation.plan_usable.value_or(agreed) && orders_stand;
  facts.in_grace = facts.plan_usable && variation.in_grace.value_or(today > plan.agreement.review_by);
  const bool adult = years_between(plan.person.born, today) >= figures::adult_years.value;
  const std::int64_t days = today.in_epoch_days() - plan.person.measured_on.in_epoch_days();
  facts.weight_is_old = days > (adult ? figures::adult_weight_days.value : figures::child_weight_days.value);
}

}  // namespace

bool Facts::at_or_above(Glucose threshold) const {
  if (level == Level::HI) return true;
  if (level != Level::number) return false;
  return converted ? G >= threshold - half_display_step(plan.unit) : G >= threshold;
}

bool Facts::at_or_below(Glucose threshold) const {
  if (level == Level::LO) return true;
  if (level != Level::number) return false;
  return converted ? G <= threshold + half_display_step(plan.unit) : G <= threshold;
}

bool Facts::below(Glucose threshold) const {
  if (level == Level::LO) return true;
  if (level != Level::number) return false;
  return converted ? G <= threshold + half_display_step(plan.unit) : G < threshold;
}

bool Facts::goes_low(Insulin acting_insulin) const {
  if (level == Level::LO) return true;
  if (level != Level::number) return false;
  const Fraction taken_off = acting_insulin.in_units() * Fraction{factor.in_grains_per_unit()};
  const Glucose low = converted ? plan.low.below + half_display_step(plan.unit) : plan.low.below;
  return Fraction{(G - low).in_grains()} <= taken_off;
}

Insulin Facts::correction() const {
  if (level != Level::number || sensor_only) return Insulin{};
  return (std::min(G, plan.limits.dosing_ceiling) - target) / factor;
}

Insulin Facts::correction_for_carbohydrate() const {
  if (level == Level::LO) return (plan.low.very_low - target) / factor;
  if (level != Level::number) return Insulin{};
  return (std::min(G, plan.limits.dosing_ceiling) - target) / factor;
}

Incident incident_at(const History& history, Instant now) {
  const Duration span = figures::incident_span.value;
  std::optional<Instant> closed, opened, suspected, previous;
  const auto close_if_silent = [&](Instant until) {
    if (opened && until - *previous > span) {
      closed = *previous + span;
      opened.reset();
    }
  };
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    close_if_silent(at);
    if (event->kind == EventKind::incident) {
      if (event->opened && !opened) {
        opened = at;
        suspected = event->suspected_since;
      } else if (!event->opened) {
        closed = at;
        opened.reset();
      }
    }
    previous = at;
  }
  close_if_silent(now);

  std::optional<Instant> implied;
  for (const auto& [event, struck] : history.entries()) {
    const Instant at = event->at.instant;
    if (now - at > span || (closed && at <= *closed)) continue;
    if (is_pump_correction(*event) || event->kind == EventKind::seen || is_needle_dose(*event)) {
      implied = at;
      break;
    }
  }
  if (!opened) return {false, implied};
  // A suspicion typed later than the opening is a slip: believed, it would empty the incident of its doses.
  if (suspected && *suspected <= *opened) return {true, suspected};
  return {true, implied && *implied < *opened ? implied : opened};
}

const Event* unanswered_dose_at(const Plan& plan, const History& history, Instant now) {
  std::optional<Instant> last_rapid;
  std::unordered_set<std::string_view> answered;
  for (const auto& [event, struck] : history.entries()) {
    const bool rapid_injection = event->kind == EventKind::injection && event->insulin == InsulinType::rapid;
    if (rapid_injection) later(last_rapid, event->at.instant);
    if ((rapid_injection || event->kind == EventKind::doseRefused) && !event->refers_to.empty()) answered.insert(event->refers_to);
  }
  const Event* waiting = nullptr;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind != EventKind::doseShown || event->insulin != InsulinType::rapid || event->rescue().is_zero()) continue;
    const bool followed = last_rapid && *last_rapid > event->at.instant;
    if (!followed && now - event->at.instant <= plan.rapid.action && !answered.contains(event->id)) waiting = event;
  }
  return waiting;
}

Facts facts_of(const Plan& plan, const History& history, const Situation& situation, const Variation& variation) {
  const TimeOfDay time = local_time(situation.now);
  Facts facts{plan, history, situation, situation.now.instant, plan.correction_factor.at(time), plan.carbohydrate_ratio.at(time),
              plan.target.at(time)};
  facts.pregnant = variation.pregnant.value_or(plan.person.pregnant);
  facts.sglt2_inhibitor = variation.sglt2_inhibitor.value_or(plan.person.sglt2_inhibitor);
  read_plan(facts, variation);
  read_clock(facts);
  read_glucose(facts);
  read_signs(facts);
  LastKetones last;
  for (const auto& [event, struck] : history.entries())
    if ((event->kind == EventKind::ketones || event->kind == EventKind::injection) && event->ketones)
      last.consider(plan, *event->ketones, event->at.instant, facts.now);
  read_ketones(facts, last);
  read_faults(facts);
  const Incident incident = incident_at(history, facts.now);
  facts.incident_recorded = incident.recorded;
  facts.suspected_since = incident.suspected_since;
  read_needle_doses(facts);
  facts.unanswered_dose = unanswered_dose_at(plan, history, facts.now);
  judge_pump_correction(facts);
  judge_pump(facts);
  if (facts.last_needle && facts.last_needle->ketones) facts.row_at_last_needle = row_of(plan, *facts.last_needle->ketones);
  facts.fell = has_fallen(facts);
  read_excess(facts);
  facts.suspect_doses_count = !(facts.fault_seen() || facts.fault_in_incident || facts.acting ||
                                facts.correction_failed == CorrectionFailure::at_second_look);
  facts.on_board = stopgap::on_board(plan, history, &situation, facts.now, {facts.suspected_since, facts.set_changed});
  // Without an incident every pump dose counts, whatever else is seen.
  facts.counted = facts.on_board.counted(facts.suspect_doses_count || !facts.incident());
  facts.absorbed = facts.on_board.counted(true);
  facts.would_go_low = facts.goes_low(facts.counted);
  facts.would_go_low_absorbed = facts.goes_low(facts.absorbed);
  read_doubling(facts);
  return facts;
}

}  // namespace stopgap::rules
