#include "rules/facts.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_set>
#include "figures/ketones.hpp"
#include "figures/off_pump.hpp"
#include "figures/timing.hpp"
#include "rules/events.hpp"
#include "rules/excess.hpp"

namespace stopgap::rules {
namespace {

using Entries = std::vector<History::Entry>;

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

bool is_blood(const KetoneReading& reading) { return reading.kind == KetoneKind::blood || reading.kind == KetoneKind::bloodHI; }

// A strip that shows nothing: strips miss what blood shows, so that it takes no blood value of 3.0 back.
bool is_faint_strip(const KetoneReading& reading) { return reading.kind == KetoneKind::urine && reading.strip <= StripWord::trace; }

// Where a reading stands: the row, whether it acts, whether it is 3.0 or more.
struct KetoneLevel {
  const KetoneRow* row = nullptr;
  std::optional<Ketones> blood;
  bool acts = false, help = false;

  // The higher of two readings of one instant.
  void rise_to(const KetoneLevel& other) {
    if (!row || (other.row && other.row->from > row->from)) row = other.row;
    if (other.blood && !(blood && *blood >= *other.blood)) blood = other.blood;
    acts |= other.acts;
    help |= other.help;
  }
};

KetoneLevel level_of(const Plan& plan, const KetoneReading& reading) {
  KetoneLevel level{row_of(plan, reading), std::nullopt, false, is_help_now(reading)};
  if (reading.kind == KetoneKind::blood) level.blood = reading.blood;
  level.acts = level.help || (level.row && level.row->from >= plan.ketones.act_from);
  return level;
}

// The last ketones before a moment: of the record, or a stale reading of the situation.
class LastKetones {
 public:
  LastKetones(const Plan& plan, Instant now) : plan_(plan), now_(now) {}

  void consider(const KetoneReading& reading, Instant taken) {
    if (!is_known(reading) || now_ - taken > figures::last_ketones_matter.value) return;
    const KetoneLevel level = level_of(plan_, reading);
    if (taken > now_ + figures::clock_tolerance.value) {  // from the future: it may warn, and takes nothing back
      later_.rise_to(level);
      return;
    }
    any_.put(level, taken);
    if (is_faint_strip(reading)) return;
    if (!solid_.known || taken > solid_.at) solid_is_blood_ = false;
    solid_.put(level, taken);
    solid_is_blood_ |= is_blood(reading);
  }
  void consider(const History& history) {
    for (const auto& [event, struck] : history.entries())
      if ((event->kind == EventKind::ketones || event->kind == EventKind::injection) && event->ketones)
        consider(*event->ketones, event->at.instant);
  }

  // The latest level; faint strips after a blood value of 3.0 or more leave it standing.
  KetoneLevel level() const { return solid_is_blood_ && solid_.level.help ? solid_.level : any_.level; }
  const KetoneLevel& later() const { return later_; }

 private:
  struct Latest {
    bool known = false;
    Instant at;
    KetoneLevel level;
    void put(const KetoneLevel& read, Instant taken) {
      if (known && taken < at) return;
      if (known && taken == at) level.rise_to(read);
      else level = read;
      known = true;
      at = taken;
    }
  };

  const Plan& plan_;
  Instant now_;
  Latest any_, solid_;  // solid: but for faint strips
  KetoneLevel later_;
  bool solid_is_blood_ = false;
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
    last.consider(reading, *at);
    reading = KetoneReading{};
  }
  facts.row = row_of(facts.plan, reading);
  facts.blood = is_blood(reading);
  if (reading.kind == KetoneKind::blood) facts.blood_value = reading.blood;
  facts.not_tested = reading.kind == KetoneKind::notYet || reading.kind == KetoneKind::error;
  facts.no_strips = reading.kind == KetoneKind::noStrips;
  facts.acting = facts.row && facts.row->from >= facts.plan.ketones.act_from;
  // A strip that shows nothing is not believed while a danger sign is there.
  const bool faint_strip = is_faint_strip(reading);
  const bool untested = facts.not_tested || facts.no_strips;
  facts.unknown = untested || (faint_strip && facts.danger);
  // Nor does it take back an emergency of the last hours: 3.0 in the blood stands until blood says otherwise.
  facts.help_now = is_help_now(reading) || ((untested || faint_strip) && (last.level().help || last.later().help));
  facts.last_acting = untested && (last.level().acts || last.later().acts);
  if (untested) facts.last_row = last.level().row;
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

// When the pump stopped. A run that lasted minutes is no return: the pump has been off since before it.
Instant stopped_at(const Facts& facts) {
  bool off = false, was_off = false;
  Instant since, until;
  std::optional<Instant> last_off;
  const auto went_off = [&](Instant at) {
    if (off) return;
    if (!was_off || at - until > figures::short_run_of_pump.value) since = at;
    off = was_off = true;
  };
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    const bool is_switch = event->kind == EventKind::pump;
    if ((is_switch && !event->on) || (event->kind == EventKind::seen && event->faults.has(Fault::pumpDead))) {
      went_off(at);
      if (is_switch) last_off = at;
    } else if (is_switch && off && !(last_off && *last_off == at)) {  // where off and on tie, off stands
      off = false;
      until = at;
    }
  }
  went_off(facts.now);  // dead by what is seen now, unless the record says so
  return since;
}

// A stopped pump is told to the team once it has stopped, again after a day and again after two.
bool is_told_to_the_team(const Facts& facts) {
  const Instant stopped = stopped_at(facts);
  Instant from = stopped;
  for (const Duration span : {figures::outage_call.value, figures::outage_call_again.value})
    if (facts.now >= stopped + span) from = stopped + span;
  const auto& entries = facts.history.entries();
  return std::any_of(entries.begin(), entries.end(), [&](const History::Entry& entry) {
    const Event& event = *entry.event;
    return event.kind == EventKind::call && event.call_to == CallTo::team && event.answered && event.at.instant >= from;
  });
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
  if (!facts.faults.empty()) facts.last_fault = facts.now;
  const auto answered = [](const std::optional<Instant>& change, Instant seen) { return change && *change >= seen; };
  for (const auto& [event, struck] : facts.history.entries()) {
    if (event->kind != EventKind::seen) continue;
    const Instant at = event->at.instant;
    later(facts.last_fault, at);
    for (const Fault fault : {Fault::leak, Fault::blood, Fault::bentCannula, Fault::cameOut, Fault::occlusionAlarm})
      if (event->faults.has(fault) && !answered(last.set, at)) facts.faults.add(fault);
    if (event->faults.has(Fault::outOfInsulin) && !answered(last.reservoir, at)) facts.faults.add(Fault::outOfInsulin);
    // Heat spoils what is in the reservoir as well as what is to be filled in.
    const bool fresh = answered(last.insulin, at) && answered(last.reservoir, at);
    if (event->faults.has(Fault::heatedInsulin) && !fresh) facts.faults.add(Fault::heatedInsulin);
    if (event->faults.has(Fault::pumpDead) && !answered(last.pump_on, at)) facts.faults.add(Fault::pumpDead);
  }
  const bool off = last.pump_off && !(last.pump_on && *last.pump_on > *last.pump_off);
  facts.off_or_dead = off || facts.faults.has(Fault::pumpDead);
  facts.team_knows_it_is_off = facts.off_or_dead && is_told_to_the_team(facts);
}

void read_needle_doses(Facts& facts) {
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    switch (event->kind) {
      case EventKind::injection:
        if (event->insulin != InsulinType::rapid) break;
        if (is_needle_dose(*event, facts.plan)) {
          facts.last_needle = event;
          if (facts.in_incident(at)) ++facts.needle_doses_in_incident;
          // Closing an incident does not stop its insulin: what still acts goes on counting toward the call.
          if (facts.in_incident(at) || facts.since(event) <= facts.plan.rapid.action) ++facts.needle_doses_toward_call;
        }
        if (is_needle_dose(*event, facts.plan) || (event->parts && !event->parts->meal.is_zero())) later(facts.last_rapid_injection, at);
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
        if (event->call_to != CallTo::team) break;
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

// The readings the last needle dose was decided on: those it carries, else recorded beside it while they were fresh. An injection typed
// in afterwards carries none. Whether ketones acted at it is told by the last ketones then, fresh or not.
void read_what_the_last_needle_rested_on(Facts& facts) {
  if (!facts.last_needle) return;
  const Event& needle = *facts.last_needle;
  const Instant dose = needle.at.instant;
  facts.glucose_at_last_needle = needle.glucose;
  const bool carries_ketones = needle.ketones && is_known(*needle.ketones);
  LastKetones before(facts.plan, dose);
  for (const auto& [event, struck] : facts.history.entries()) {
    const Instant at = event->at.instant;
    if (at > dose) break;
    if (event->kind == EventKind::glucose && !needle.glucose && dose - at <= figures::glucose_reading_lasts.value)
      facts.glucose_at_last_needle = event->glucose;
    if ((event->kind != EventKind::ketones && event->kind != EventKind::injection) || !event->ketones) continue;
    before.consider(*event->ketones, at);
    const bool is_fresh = is_known(*event->ketones) && dose - at <= figures::ketone_reading_lasts.value;
    if (is_fresh && !carries_ketones) facts.blood_at_last_needle = level_of(facts.plan, *event->ketones).blood;
  }
  const auto& said = facts.situation.ketones;
  const bool is_stale = said.at && facts.now - *said.at > figures::ketone_reading_lasts.value;
  if (is_stale && *said.at <= dose) before.consider(said.reading, *said.at);
  const KetoneLevel then = carries_ketones ? level_of(facts.plan, *needle.ketones) : before.level();
  if (carries_ketones) facts.blood_at_last_needle = then.blood;
  facts.row_at_last_needle = then.row;
  facts.acted_at_last_needle = then.acts;
}

bool has_fallen(const Facts& facts) {
  if (!facts.last_needle) return false;
  if (facts.acting) {
    const auto& then = facts.blood_at_last_needle;
    return facts.blood_value && then && *then - *facts.blood_value >= facts.plan.ketones.expected_fall;
  }
  const auto& then = facts.glucose_at_last_needle;
  if (facts.level != Level::number || !then || then->word != MeterWord::number) return false;
  const Glucose ceiling = facts.plan.limits.dosing_ceiling;
  return std::min(then->value, ceiling) - std::min(facts.G, ceiling) >= facts.plan.high.expected_fall;
}

// A clock that says a day well before one that is known to be past.
bool is_long_before(Instant now, Day day) {
  return start_in_utc(day) - now > figures::clock_behind.value;
}

void read_clock(Facts& facts, const Variation& variation) {
  const Instant latest = facts.now + figures::clock_tolerance.value;
  facts.clock_in_doubt = facts.history.from_the_future();
  facts.clock_in_doubt |= variation.before_agreement.value_or(is_long_before(facts.now, facts.plan.agreement.on));
  facts.clock_in_doubt |= facts.situation.not_before && is_long_before(facts.now, *facts.situation.not_before);
  facts.clock_in_doubt |= facts.situation.glucose && facts.situation.glucose->at && *facts.situation.glucose->at > latest;
  facts.clock_in_doubt |= facts.situation.ketones.at && *facts.situation.ketones.at > latest;
}

void read_plan(Facts& facts, const Variation& variation) {
  const Plan& plan = facts.plan;
  const Day today = local_day(facts.situation.now);
  const bool agreed = plan.agreement.status == PlanStatus::agreed && today <= plan.agreement.last_day();
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

bool comes_to_low(const Plan& plan, Glucose glucose, bool converted, CorrectionFactor factor, Insulin acting) {
  const Fraction taken_off = acting.in_units() * Fraction{factor.in_grains_per_unit()};
  const Glucose low = converted ? plan.low.below + half_display_step(plan.unit) : plan.low.below;
  return Fraction{(glucose - low).in_grains()} <= taken_off;
}

bool Facts::goes_low(Insulin acting_insulin) const {
  if (level != Level::number) return level == Level::LO;
  return comes_to_low(plan, G, converted, factor, acting_insulin);
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

Incident incident_at(const Plan& plan, const History& history, Instant now) {
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
      } else if (!event->opened && !(opened && *opened == at)) {  // where the two tie, it stays open
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
    if (is_pump_correction(*event) || event->kind == EventKind::seen || is_needle_dose(*event, plan)) {
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
  std::optional<Instant> last_rescue;  // basal or a meal answers nothing about a rescue dose
  std::unordered_set<std::string_view> answered;
  for (const auto& [event, struck] : history.entries()) {
    const bool rapid_injection = is_rapid_injection(*event);
    if (rapid_injection && !event->rescue().is_zero()) later(last_rescue, event->at.instant);
    if ((rapid_injection || event->kind == EventKind::doseRefused) && !event->refers_to.empty()) answered.insert(event->refers_to);
  }
  const Event* waiting = nullptr;
  for (const auto& [event, struck] : history.entries()) {
    if (event->kind != EventKind::doseShown || event->insulin != InsulinType::rapid || event->rescue().is_zero()) continue;
    const bool followed = last_rescue && *last_rescue > event->at.instant;
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
  read_clock(facts, variation);
  read_glucose(facts);
  read_signs(facts);
  LastKetones last(plan, facts.now);
  last.consider(history);
  read_ketones(facts, last);
  read_faults(facts);
  const Incident incident = incident_at(plan, history, facts.now);
  facts.incident_recorded = incident.recorded;
  facts.suspected_since = incident.suspected_since;
  read_needle_doses(facts);
  facts.unanswered_dose = unanswered_dose_at(plan, history, facts.now);
  judge_pump_correction(facts);
  judge_pump(facts);
  read_what_the_last_needle_rested_on(facts);
  facts.fell = has_fallen(facts);
  facts.suspect_doses_count = !(facts.fault_seen() || facts.fault_in_incident || facts.acting ||
                                facts.correction_failed == CorrectionFailure::at_second_look);
  facts.on_board = stopgap::on_board(plan, history, &situation, facts.now, {facts.suspected_since, facts.set_changed});
  // Without an incident every pump dose counts, whatever else is seen.
  facts.counted = facts.on_board.counted(facts.suspect_doses_count || !facts.incident());
  facts.absorbed = facts.on_board.counted(true);
  facts.would_go_low = facts.goes_low(facts.counted);
  facts.would_go_low_absorbed = facts.goes_low(facts.absorbed);
  read_excess(facts);
  return facts;
}

}  // namespace stopgap::rules
