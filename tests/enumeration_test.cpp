// Every combination of classes of situations, from the record to the signs, is decided by exactly the rule the written order
// names, and every rule decides some of them. What a class means (low, acting, unwell, ...) is written beside it by hand, and
// the conditions of the rules are told here a second time from those marks alone, so that the order in the core, a condition
// and the derivation of a fact can each be found wrong.
// Plan: the example of the format, 14.0 / 10.0 / 5.6 / 3.9 mmol/L, ketones from 0.6, lock 4 h, repeat 2 h, action 4.5 h.
#include <gtest/gtest.h>

#include <array>

#include "nights.hpp"
#include "rules/rules.hpp"

namespace stopgap {
namespace {

using namespace nights;
constexpr GlucoseUnit mmol = GlucoseUnit::mmol;

// The order as it was agreed, by hand.
constexpr Rule agreed_order[] = {Rule::LWE, Rule::EMR, Rule::TOO, Rule::LOW, Rule::FAL, Rule::PLN, Rule::FNG, Rule::TST,
                                 Rule::NOS, Rule::CAL, Rule::ANY, Rule::DWN, Rule::KET, Rule::EAT, Rule::INJ, Rule::WAI,
                                 Rule::PMP, Rule::SGN, Rule::OFF, Rule::CHG, Rule::END, Rule::NON};
constexpr const char* names[] = {"LWE", "EMR", "TOO", "LOW", "FAL", "PLN", "FNG", "TST", "NOS", "CAL", "ANY", "DWN", "KET", "EAT", "INJ",
                                 "WAI", "PMP", "SGN", "OFF", "CHG", "END", "NON"};

enum class Word { missing, number, LO, HI };

struct GlucoseClass {
  const char* name;
  Word word;
  std::int64_t tenths = 0;
  bool low = false, at_most_5_6 = false, below_middle = false, below_trigger = false, high = false;
  ReadFrom from = ReadFrom::finger;
  bool no_meter = false, repeated = true;
  std::int64_t age = 0;
};
constexpr ReadFrom sensor = ReadFrom::sensor;
const GlucoseClass glucoses[] = {
    {.name = "missing", .word = Word::missing},
    {.name = "16.0, 16 minutes old", .word = Word::missing, .tenths = 160, .age = 16},
    {.name = "LO", .word = Word::LO, .low = true, .at_most_5_6 = true, .below_middle = true, .below_trigger = true},
    {.name = "3.9", .word = Word::number, .tenths = 39, .low = true, .at_most_5_6 = true, .below_middle = true, .below_trigger = true},
    {.name = "4.5", .word = Word::number, .tenths = 45, .at_most_5_6 = true, .below_middle = true, .below_trigger = true},
    {.name = "5.6", .word = Word::number, .tenths = 56, .at_most_5_6 = true, .below_middle = true, .below_trigger = true},
    {.name = "5.7", .word = Word::number, .tenths = 57, .below_middle = true, .below_trigger = true},
    {.name = "9.9", .word = Word::number, .tenths = 99, .below_middle = true, .below_trigger = true},
    {.name = "10.0", .word = Word::number, .tenths = 100, .below_trigger = true},
    {.name = "13.9", .word = Word::number, .tenths = 139, .below_trigger = true},
    {.name = "14.0", .word = Word::number, .tenths = 140, .high = true},
    {.name = "27.0, 15 minutes old", .word = Word::number, .tenths = 270, .high = true, .age = 15},
    {.name = "HI repeated", .word = Word::HI, .high = true},
    {.name = "HI once", .word = Word::HI, .high = true, .repeated = false},
    {.name = "HI of a sensor", .word = Word::HI, .high = true, .from = sensor, .no_meter = true},
    {.name = "sensor 9.9", .word = Word::number, .tenths = 99, .below_middle = true, .below_trigger = true, .from = sensor},
    {.name = "sensor 10.0", .word = Word::number, .tenths = 100, .below_trigger = true, .from = sensor},
    {.name = "sensor 16.0, no meter", .word = Word::number, .tenths = 160, .high = true, .from = sensor, .no_meter = true},
};

struct KetoneClass {
  const char* name;
  KetoneReading reading;
  bool acting = false, help = false, not_tested = false, no_strips = false, faint_strip = false, quiet_blood = false, number = false;
  bool last_acting = false, last_help = false;
  std::int64_t age = 0;
};
const KetoneClass ketones[] = {
    {.name = "0.0", .reading = blood(0), .quiet_blood = true, .number = true},
    {.name = "0.5", .reading = blood(5), .quiet_blood = true, .number = true},
    {.name = "0.6", .reading = blood(6), .acting = true, .number = true},
    {.name = "1.5, 30 minutes old", .reading = blood(15), .acting = true, .number = true, .age = 30},
    {.name = "2.9", .reading = blood(29), .acting = true, .number = true},
    {.name = "3.0", .reading = blood(30), .acting = true, .help = true, .number = true},
    {.name = "HI", .reading = unknown(KetoneKind::bloodHI), .acting = true, .help = true},
    {.name = "strip negative", .reading = strip(StripWord::negative), .faint_strip = true},
    {.name = "strip trace", .reading = strip(StripWord::trace), .faint_strip = true},
    {.name = "strip small", .reading = strip(StripWord::small), .acting = true},
    {.name = "strip large", .reading = strip(StripWord::large), .acting = true, .help = true},
    {.name = "not yet", .reading = unknown(KetoneKind::notYet), .not_tested = true},
    {.name = "strip failed", .reading = unknown(KetoneKind::error), .not_tested = true},
    {.name = "no strips", .reading = unknown(KetoneKind::noStrips), .no_strips = true},
    {.name = "0.8, 31 minutes old", .reading = blood(8), .not_tested = true, .last_acting = true, .age = 31},
    {.name = "3.0, 31 minutes old", .reading = blood(30), .not_tested = true, .last_acting = true, .last_help = true, .age = 31},
};

struct SignClass {
  const char* name;
  std::optional<Sign> sign{};
  bool severe = false, danger = false, unwell = false;
};
const SignClass signs[] = {
    {.name = "well"},
    {.name = "unwell", .unwell = true},
    {.name = "drowsy", .sign = Sign::drowsy, .severe = true, .danger = true, .unwell = true},
    {.name = "confused", .sign = Sign::confused, .severe = true, .danger = true, .unwell = true},
    {.name = "fast breathing", .sign = Sign::fastBreathing, .severe = true, .danger = true, .unwell = true},
    {.name = "keeps no fluid", .sign = Sign::cannotKeepFluid, .severe = true, .danger = true, .unwell = true},
    {.name = "vomited again", .sign = Sign::vomitedAgain, .danger = true, .unwell = true},
    {.name = "belly pain", .sign = Sign::bellyPain, .danger = true, .unwell = true},
    {.name = "vomited once", .sign = Sign::vomitedOnce, .unwell = true},
    {.name = "fitting", .sign = Sign::fitting},
    {.name = "cannot swallow", .sign = Sign::cannotSwallow},
};

const std::optional<Fault> seen[] = {std::nullopt, Fault::leak, Fault::pumpDead};

struct Extra {
  const char* name;
  bool rapid_mistake = false, pump_offers_nothing = false;
  std::int64_t high_for = 0;
};
const Extra extras[] = {{"", false, false, 89},
                        {"a mistake with rapid", true},
                        {"the pump offers nothing", false, true},
                        {"high for 90 minutes", false, false, 90}};

enum class Then { nothing, lower, higher };
struct RecordClass {
  const char* name;
  std::vector<Event> events;
  bool incident = false;
  int needle_doses = 0;
  std::int64_t since_needle = -1;        // minutes; none: -1
  bool ketones_were_higher = false;      // at the last needle dose, by more than any fall expected
  bool much_on_board = false;            // enough to take any number below 3.9
  bool much_if_pump_counts = false;      // the same, once suspect pump doses count
  std::int64_t since_correction = -1;
  Then glucose_then = Then::nothing;     // at the pump's correction
  bool leak = false, off = false, mistake = false, off_body_in_body = false, off_body_unsure = false, doubled = false;
  bool last_acting = false, last_help = false;
  bool quiet_before = false;             // the glucose before was under the middle, and the blood before under 0.6
};

// So little that it moves nothing, and so much that any number falls.
const Insulin little = Insulin::hundredths(5), much = Insulin::units(40);

Event injection(std::int64_t minutes, Insulin units, std::int64_t ketone_tenths) {
  Event event = injection_at(ago(minutes), units);
  event.ketones = blood(ketone_tenths);
  return event;
}
Event correction(std::int64_t minutes, Insulin units, Then then) {
  Event event = pump_dose_at(ago(minutes), units, PumpPurpose::correction);
  if (then != Then::nothing) event.glucose = number(then == Then::lower ? 50 : 330, mmol);
  return event;
}
Event with(EventKind kind, std::int64_t minutes, void (*set)(Event&)) {
  Event event = event_at(ago(minutes), kind);
  set(event);
  return event;
}

std::vector<RecordClass> record_classes() {
  const auto glucose = [](std::int64_t minutes, std::int64_t tenths) {
    Event event = event_at(ago(minutes), EventKind::glucose);
    event.glucose = number(tenths, mmol);
    return event;
  };
  const auto ketone = [](std::int64_t minutes, std::int64_t tenths) {
    Event event = event_at(ago(minutes), EventKind::ketones);
    event.ketones = blood(tenths);
    return event;
  };
  const Event opened = with(EventKind::incident, 300, [](Event& event) { event.opened = true; });
  std::vector<RecordClass> all;
  const auto add = [&](RecordClass made) { all.push_back(std::move(made)); };
  add({.name = "empty", .events = {}});
  add({.name = "incident", .events = {opened}, .incident = true});
  add({.name = "closed", .events = {opened, with(EventKind::incident, 200, [](Event&) {})}});
  add({.name = "quiet", .events = {opened, glucose(60, 80), ketone(60, 2)}, .incident = true, .quiet_before = true});
  add({.name = "a dose at 40", .events = {injection(40, little, 0)}, .incident = true, .needle_doses = 1, .since_needle = 40});
  add({.name = "a dose at 239, ketones higher then",
       .events = {injection(239, little, 150)},
       .incident = true, .needle_doses = 1, .since_needle = 239, .ketones_were_higher = true, .last_acting = true, .last_help = true});
  add({.name = "a dose at 40, much",
       .events = {injection(40, much, 0)},
       .incident = true, .needle_doses = 1, .since_needle = 40, .much_on_board = true, .much_if_pump_counts = true});
  add({.name = "two doses, the last at 119",
       .events = {injection(230, little, 0), injection(119, little, 0)}, .incident = true, .needle_doses = 2, .since_needle = 119});
  add({.name = "two doses, the last at 120",
       .events = {injection(230, little, 0), injection(120, little, 0)}, .incident = true, .needle_doses = 2, .since_needle = 120});
  add({.name = "two doses, the last at 120, ketones higher then",
       .events = {injection(230, little, 0), injection(120, little, 150)},
       .incident = true, .needle_doses = 2, .since_needle = 120, .ketones_were_higher = true, .last_acting = true, .last_help = true});
  add({.name = "two doses, the last at 240",
       .events = {injection(280, little, 0), injection(240, little, 0)}, .incident = true, .needle_doses = 2, .since_needle = 240});
  add({.name = "a dose at 270, quiet before",
       .events = {injection(270, little, 0), glucose(60, 80), ketone(60, 2)},
       .incident = true, .needle_doses = 1, .since_needle = 270, .quiet_before = true});
  add({.name = "a dose at 271, quiet before",
       .events = {injection(271, little, 0), glucose(60, 80), ketone(60, 2)},
       .incident = true, .needle_doses = 1, .since_needle = 271, .quiet_before = true});
  add({.name = "a dose at 271, not quiet",
       .events = {injection(271, little, 0), glucose(60, 100), ketone(60, 2)}, .incident = true, .needle_doses = 1, .since_needle = 271});
  add({.name = "pump correction at 59",
       .events = {correction(59, little, Then::lower)},
       .incident = true, .since_correction = 59, .glucose_then = Then::lower, .quiet_before = true});
  add({.name = "pump correction at 60, lower then",
       .events = {correction(60, little, Then::lower)},
       .incident = true, .since_correction = 60, .glucose_then = Then::lower, .quiet_before = true});
  add({.name = "pump correction at 60, higher then",
       .events = {correction(60, little, Then::higher)}, .incident = true, .since_correction = 60, .glucose_then = Then::higher});
  add({.name = "pump correction at 61", .events = {correction(61, little, Then::nothing)}, .incident = true, .since_correction = 61});
  add({.name = "pump correction at 120, higher then",
       .events = {correction(120, little, Then::higher)}, .incident = true, .since_correction = 120, .glucose_then = Then::higher});
  add({.name = "pump correction at 120, not known then",
       .events = {correction(120, little, Then::nothing)}, .incident = true, .since_correction = 120});
  add({.name = "pump correction at 240, higher then",
       .events = {correction(240, little, Then::higher)}, .incident = true, .since_correction = 240, .glucose_then = Then::higher});
  add({.name = "a dose, then the pump",
       .events = {injection(40, little, 0), correction(10, much, Then::nothing)},
       .incident = true, .needle_doses = 1, .since_needle = 40, .much_if_pump_counts = true, .since_correction = 10, .doubled = true});
  add({.name = "leak",
       .events = {with(EventKind::seen, 90, [](Event& event) { event.faults.add(Fault::leak); })}, .incident = true, .leak = true});
  add({.name = "leak, answered",
       .events = {with(EventKind::seen, 90, [](Event& event) { event.faults.add(Fault::leak); }), changed_at(ago(90), {Changed::set})},
       .incident = true});
  add({.name = "pump off", .events = {with(EventKind::pump, 90, [](Event&) {})}, .off = true});
  add({.name = "pump off and on again",
       .events = {with(EventKind::pump, 90, [](Event&) {}), with(EventKind::pump, 80, [](Event& event) { event.on = true; })}});
  add({.name = "mistake with rapid at 270",
       .events = {with(EventKind::mistake, 270, [](Event& event) { event.units = little; })}, .mistake = true});
  add({.name = "mistake with rapid at 271", .events = {with(EventKind::mistake, 271, [](Event& event) { event.units = little; })}});
  add({.name = "mistake with long-acting",
       .events = {with(EventKind::mistake, 60, [](Event& event) { event.insulin = InsulinType::long_acting; event.units = little; })}});
  add({.name = "off the body, into it",
       .events = {with(EventKind::offBody, 260, [](Event& event) { event.units = Insulin::units(1); event.tubing_end = TubingEnd::body; })},
       .off_body_in_body = true});
  add({.name = "off the body, not sure, much on board",
       .events = {with(EventKind::offBody, 10, [](Event& event) { event.units = much; event.tubing_end = TubingEnd::unsure; })},
       .much_on_board = true, .much_if_pump_counts = true, .off_body_unsure = true});
  add({.name = "off the body, not sure, a low hours ago",
       .events = {with(EventKind::offBody, 260, [](Event& event) { event.units = Insulin::units(1); event.tubing_end = TubingEnd::unsure; }), glucose(255, 45)},
       .off_body_unsure = true});
  add({.name = "a dose, then the pump, a low hours ago",
       .events = {injection(268, little, 0), correction(265, Insulin::units(1), Then::nothing), glucose(255, 45)},
       .incident = true, .needle_doses = 1, .since_needle = 268, .since_correction = 265});
  add({.name = "ketones 1.0 an hour ago", .events = {ketone(60, 10)}, .last_acting = true});
  add({.name = "ketones 3.0 at 240", .events = {ketone(240, 30)}, .last_acting = true, .last_help = true});
  add({.name = "ketones 3.0 at 241", .events = {ketone(241, 30)}});
  for (RecordClass& each : all) each.events = record_of(std::move(each.events)).events;
  return all;
}

struct PlanClass {
  const char* name;
  bool usable = true, risk = false;
  void (*set)(Plan&);
};
void with_a_cell_for_any_glucose(Plan& plan) {
  plan.ketones.any_glucose = Cell{};
  plan.ketones.any_glucose->kind = Cell::Kind::shareOfDaily;
  plan.ketones.any_glucose->share = Share::thousandths(100);
}
const PlanClass plan_classes[] = {
    {"agreed", true, false, [](Plan&) {}},
    {"last day of grace", true, false, [](Plan& plan) { plan.agreement.review_by = local_day(night()).plus_days(-30); }},
    {"a day past grace", false, false, [](Plan& plan) { plan.agreement.review_by = local_day(night()).plus_days(-31); }},
    {"draft", false, false, [](Plan& plan) { plan.agreement.status = PlanStatus::draft; }},
    {"pregnant", true, true, [](Plan& plan) { with_a_cell_for_any_glucose(plan); plan.person.pregnant = true; }},
    {"on an SGLT2 inhibitor", true, true, [](Plan& plan) { with_a_cell_for_any_glucose(plan); plan.person.sglt2_inhibitor = true; }},
};

struct Combination {
  const GlucoseClass& g;
  const KetoneClass& k;
  const SignClass& s;
  const std::optional<Fault>& fault;
  const RecordClass& r;
  const PlanClass& p;
  const Extra& x;

  std::string told() const {
    return std::string(g.name) + " / " + k.name + " / " + s.name + " / seen " + (fault ? std::to_string(static_cast<int>(*fault)) : "nothing") +
           " / " + r.name + " / " + p.name + " / " + x.name;
  }
  Situation situation() const {
    std::optional<GlucoseReading> reading;
    if (g.word == Word::LO || g.word == Word::HI) reading = {g.word == Word::LO ? MeterWord::LO : MeterWord::HI, {}, mmol, g.from};
    else if (g.tenths > 0) reading = number(g.tenths, mmol, g.from);
    Situation made = situation_of(reading, k.reading);
    if (made.glucose) {
      made.glucose->repeated = g.repeated;
      made.glucose->no_meter = g.no_meter;
      if (g.age > 0) made.glucose->at = ago(g.age);
    }
    if (k.age > 0) made.ketones.at = ago(k.age);
    if (s.sign) made.signs.add(*s.sign);
    else made.unwell = s.unwell;
    if (fault) made.seen.add(*fault);
    if (x.rapid_mistake) made.mistake = Situation::Mistake{MistakeKind::twice, InsulinType::rapid, little};
    made.pump_offers_nothing = x.pump_offers_nothing;
    if (x.high_for > 0) made.high_since = ago(x.high_for);
    return made;
  }
};

// The conditions of the rules over the marks of the classes.
class Reading {
 public:
  explicit Reading(const Combination& c) : g(c.g), k(c.k), s(c.s), r(c.r), p(c.p), x(c.x) {
    fault_seen = c.fault.has_value() || r.leak;
    off = r.off || c.fault == Fault::pumpDead;
    const bool untested = k.not_tested || k.no_strips;
    last_acting = untested && (k.last_acting || (k.age == 0 && r.last_acting));
    // A strip that shows nothing takes no 3.0 of the last hours back.
    help = k.help || ((untested || k.faint_strip) && (k.last_help || (k.age == 0 && r.last_help)));
    unknown = untested || (k.faint_strip && s.danger);
    fell = k.acting && k.number && r.ketones_were_higher;
    failed = r.since_correction >= 60 && (r.since_correction < 120 ? r.glucose_then == Then::lower || (g.word == Word::HI && r.glucose_then != Then::nothing)
                                                                  : r.glucose_then != Then::higher || g.word == Word::HI);
    const bool pump_counts = !(fault_seen || k.acting);
    would = number() ? g.low || r.much_on_board || (r.much_if_pump_counts && pump_counts) : g.word == Word::LO;
    could = number() ? g.low || r.much_on_board || r.much_if_pump_counts : g.word == Word::LO;
  }

  bool holds(Rule rule) const {
    const bool no_mouth = is(Sign::fitting) || is(Sign::cannotSwallow);
    const bool missing = g.word == Word::missing;
    switch (rule) {
      case Rule::LWE:
        return ((s.severe || is(Sign::vomitedAgain) || no_mouth) && (g.low || (g.below_middle && would))) || (no_mouth && g.at_most_5_6) ||
               ((no_mouth || is(Sign::drowsy) || is(Sign::confused)) && missing && !help);
      case Rule::EMR:
        return help || s.severe || no_mouth || ((is(Sign::vomitedAgain) || is(Sign::bellyPain)) && (k.acting || unknown || g.high)) ||
               (is(Sign::vomitedOnce) && k.acting);
      case Rule::TOO: return x.rapid_mistake || r.mistake || r.off_body_in_body || ((r.off_body_unsure || r.doubled) && could);
      case Rule::LOW: return g.low;
      case Rule::FAL: return number() && g.below_trigger && (would || (g.below_middle && !k.acting && could));
      case Rule::PLN: return !p.usable;
      case Rule::FNG:
        return missing || (g.word == Word::HI && (!g.repeated || g.from == sensor)) ||
               (number() && g.from == sensor && !g.no_meter && (!g.below_middle || k.acting));
      case Rule::TST: return k.not_tested && (g.high || s.unwell || p.risk || fault_seen || off || r.incident || last_acting);
      case Rule::NOS: return k.no_strips && !g.high && (s.unwell || p.risk);
      case Rule::CAL: return r.needle_doses >= 2 && r.since_needle >= (k.acting ? 120 : 240) && (g.high || (k.acting && !fell));
      case Rule::ANY: return p.risk && k.acting;
      case Rule::DWN: return r.needle_doses > 0 && k.acting && fell && !g.high;
      case Rule::KET: return k.acting && !g.below_middle;
      case Rule::EAT: return k.acting && g.below_middle;
      case Rule::INJ:
        return g.high && (g.word == Word::HI || failed || x.high_for == 90 || x.pump_offers_nothing || off || fault_seen ||
                          (k.no_strips && !(r.since_correction >= 0 && r.since_correction <= 60)));
      case Rule::WAI: return g.high && r.since_correction >= 0 && r.since_correction < 240 && !failed;
      case Rule::PMP: return g.high;
      case Rule::SGN: return s.danger;
      case Rule::OFF: return off;
      case Rule::CHG: return fault_seen;
      case Rule::END:
        return r.incident && !s.unwell && !off && g.below_middle && k.quiet_blood && r.quiet_before && (r.since_needle < 0 || r.since_needle > 270);
      case Rule::NON: return true;
    }
    return false;
  }
  Rule decides() const {
    for (const Rule rule : agreed_order)
      if (holds(rule)) return rule;
    return Rule::NON;
  }

 private:
  bool number() const { return g.word == Word::number; }
  bool is(Sign sign) const { return s.sign == sign; }
  const GlucoseClass& g;
  const KetoneClass& k;
  const SignClass& s;
  const RecordClass& r;
  const PlanClass& p;
  const Extra& x;
  bool fault_seen, off, last_acting, help, unknown, fell, failed, would, could;
};

TEST(Enumeration, OneRuleDecidesEveryCombinationAndEveryRuleDecidesSome) {
  std::array<std::int64_t, rule_count> decided{}, passed_over{};
  std::int64_t combinations = 0, different = 0;
  for (const PlanClass& p : plan_classes) {
    Plan plan = example();
    p.set(plan);
    for (const RecordClass& r : record_classes()) {
      const Record record{"", r.events};
      const History history = History::of(record, night().instant);
      for (const GlucoseClass& g : glucoses)
        for (const KetoneClass& k : ketones)
          for (const SignClass& s : signs)
            for (const auto& fault : seen)
              for (const Extra& x : extras) {
                const Combination combination{g, k, s, fault, r, p, x};
                const Reading reading(combination);
                const Rule rule = reading.decides();
                const Situation situation = combination.situation();
                const rules::Facts facts = rules::facts_of(plan, history, situation);
                std::optional<Rule> found;
                for (const rules::RuleEntry& entry : rules::in_order)
                  if (entry.holds(facts)) { found = entry.id; break; }
                ++combinations;
                ++decided[static_cast<std::size_t>(rule)];
                // What this rule came before: that its place in the order is not idle.
                for (const Rule later : agreed_order)
                  if (later > rule && later != Rule::NON && reading.holds(later)) { ++passed_over[static_cast<std::size_t>(rule)]; break; }
                if (combinations % 97 == 0 && evaluate(plan, history, situation).decided_by != rule) ++different;
                if (found == rule) continue;
                if (++different <= 10)
                  ADD_FAILURE() << combination.told() << ": by hand " << names[static_cast<int>(rule)] << ", the core "
                                << (found ? names[static_cast<int>(*found)] : "nothing");
              }
    }
  }
  EXPECT_EQ(different, 0);
  EXPECT_GT(combinations, 1000000);
  for (int rule = 0; rule < rule_count; ++rule) {
    EXPECT_GT(decided[static_cast<std::size_t>(rule)], 0) << names[rule] << " decides nothing";
    // After the high glucoses are gone nothing is left that PMP could take from a later rule; END and NON are the last.
    if (rule < static_cast<int>(Rule::END) && rule != static_cast<int>(Rule::PMP)) {
      EXPECT_GT(passed_over[static_cast<std::size_t>(rule)], 0) << names[rule] << " could stand last";
    }
  }
}

}  // namespace
}  // namespace stopgap
