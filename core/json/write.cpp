#include "json/write.hpp"

#include <algorithm>
#include "json/answer_words.hpp"
#include "json/calendar.hpp"
#include "json/page.hpp"
#include "json/reading_text.hpp"
#include "json/slot_text.hpp"
#include "json/write_contacts.hpp"
#include "json/write_device.hpp"
#include "json/write_review.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr int times_digits = 1;

void write_given(const Page& page, const std::optional<Given>& given) {
  Writer& out = page.out;
  out.key("given");
  if (!given) {
    out.null();
    return;
  }
  out.open('{').key("units").raw(page.json_number(given->units)).key("text").text(dose_text(given->units, page.plan.decimal_mark));
  out.key("at").text(page.time(given->at)).key("clock").text(page.look_clock(given->at));
  out.key("minutesAgo").raw(std::to_string(std::max<std::int64_t>(0, (page.now.instant - given->at).in_seconds() / 60))).close('}');
}

void write_hold_list(const Page& page, const std::array<std::optional<Instant>, hold_kinds>& holds) {
  Writer& out = page.out;
  out.key("holds").open('[');
  for (std::size_t kind = 0; kind < holds.size(); ++kind) {
    if (!holds[kind]) continue;
    out.open('{').key("what").text(words::hold_kinds[kind]).key("until").text(page.time(*holds[kind]));
    out.key("clock").text(page.hold_clock(*holds[kind])).close('}');
  }
  out.close(']');
}

void write_what(Writer& out, bool glucose, bool ketones) {
  out.key("what").open('[');
  if (glucose) out.text("glucose");
  if (ketones) out.text("ketones");
  out.close(']');
}

void write_looks(const Page& page, const std::vector<LookDue>& looks) {
  Writer& out = page.out;
  out.key("looks").open('[');
  for (const LookDue& look : looks) {
    out.open('{').key("due").text(page.time(look.due)).key("clock").text(page.look_clock(look.due));
    write_what(out, look.glucose, look.ketones);
    out.key("overdue").truth(look.overdue).key("minutesLate").raw(std::to_string(look.minutes_late)).close('}');
  }
  out.close(']');
}

void write_dose(const Page& page, const std::optional<Dose>& dose) {
  Writer& out = page.out;
  out.key("dose");
  if (!dose) {
    out.null();
    return;
  }
  const Working& working = dose->working;
  out.open('{').key("units").raw(page.json_number(dose->total()));
  out.key("text").text(dose_text(dose->total(), page.plan.decimal_mark)).key("number").text(page.number(dose->total()));
  out.key("insulin").text(of(words::insulins, InsulinType::rapid)).key("with").text(of(words::devices, dose->with));
  out.key("parts").open('{').key("rescue").raw(page.json_number(dose->rescue)).key("meal").raw(page.json_number(dose->meal));
  out.key("basal").raw("0").close('}');
  out.key("working").open('{').key("correction").text(page.number(working.correction)).key("onBoard").text(page.number(working.on_board));
  out.key("net").text(page.number(working.net)).key("extra").text(page.number(working.extra));
  out.key("chosen").text(of(words::chosen, working.chosen)).key("cap").text(page.number(working.cap)).key("cut");
  if (working.cut.is_zero()) out.null();
  else out.text(page.number(working.cut));
  out.key("beforeRounding").text(page.number(working.before_rounding)).close('}');
  out.key("otherBound").text(page.number(dose->other_bound)).key("timesUsual");
  if (dose->times_usual) out.text(decimal_text(*dose->times_usual, times_digits, page.plan.decimal_mark));
  else out.null();
  if (dose->cell) {
    out.key("cell").open('{').key("glucose").text(dose->cell->row ? level_text(dose->cell->row->in_grains(), page.plan) : "HI");
    out.key("ketones").text(number_text(dose->cell->column, page.plan.decimal_mark)).close('}');
  }
  write_device(out, page.plan, dose->with, dose->total());
  out.close('}');
}

void write_slots(const Page& page, const Advice& advice, Step step) {
  Writer& out = page.out;
  const auto hold_until = [&](HoldKind kind, Instant otherwise) {
    return page.hold_clock(advice.holds[static_cast<std::size_t>(kind)].value_or(otherwise));
  };
  switch (step) {
    case Step::emergencyCall: out.key("number").text(page.plan.emergency_number); break;
    case Step::sugar:
    case Step::eat: out.key("grams").text(page.grams(advice.carbohydrate)); break;
    case Step::glucagon: out.key("glucagon").text(page.plan.low.glucagon); break;
    case Step::confirmChild: out.key("name").text(page.plan.person.name).key("born").text(text_of(page.plan.person.born)); break;
    case Step::callHome: write_call_slots(page, Relation::home); break;
    case Step::callTeam: write_call_slots(page, Relation::team); break;
    case Step::inject:
      out.key("dose").text(dose_text(advice.dose->total(), page.plan.decimal_mark)).key("insulin").text(page.plan.rapid.name);
      out.key("device").text(of(words::devices, advice.dose->with));
      break;
    case Step::offBody: out.key("dose").text(dose_text(advice.dose ? advice.dose->rescue : Insulin{}, page.plan.decimal_mark)); break;
    case Step::automationOff:
      out.key("until").text(hold_until(HoldKind::automation, page.now.instant + page.plan.squaring.pause));
      break;
    case Step::wait: out.key("until").text(page.hold_clock(*advice.second_pump_correction)); break;
    case Step::setAlarm: out.key("at").text(page.look_clock(advice.looks.begin()->at)); break;
    case Step::bridge: out.key("hours").text(decimal_text(Fraction::of(page.plan.off_pump.bridge.in_seconds(), 3600), display_digits, '.')); break;
    default: break;
  }
}

void write_steps(const Page& page, const Advice& advice) {
  Writer& out = page.out;
  out.key("steps").open('[');
  for (int index = 0; index < step_count; ++index) {
    const auto step = static_cast<Step>(index);
    if (!advice.steps.has(step)) continue;
    const words::StepWords& word = words::steps[static_cast<std::size_t>(index)];
    out.open('{').key("id").text(word.id).key("key").text(word.key).key("slots").open('{');
    write_slots(page, advice, step);
    out.close('}').close('}');
  }
  out.close(']');
}

template <class Item, std::size_t count>
std::string joined(SetOf<Item> set, const std::array<std::string_view, count>& list) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) {
    if (!set.has(static_cast<Item>(i))) continue;
    if (!out.empty()) out += ',';
    out += list[i];
  }
  return out.empty() ? "none" : out;
}

std::string reading_text(const GlucoseReading& reading) {
  if (reading.word == MeterWord::HI) return "HI";
  if (reading.word == MeterWord::LO) return "LO";
  const bool mmol = reading.unit == GlucoseUnit::mmol;
  const std::int64_t grains = mmol ? grains_per_mmol_hundredth * 100 : grains_per_mg_tenth * 10;
  return decimal_text(Fraction::of(reading.value.in_grains(), grains), 1, '.');
}

std::string reading_text(const KetoneReading& reading) {
  switch (reading.kind) {
    case KetoneKind::blood: return decimal_text(Fraction::of(reading.blood.in_mmol_tenths(), 10), 1, '.');
    case KetoneKind::bloodHI: return "HI";
    case KetoneKind::urine: return std::string(of(words::strip_words, reading.strip));
    case KetoneKind::notYet: return "notYet";
    case KetoneKind::noStrips: return "noStrips";
    case KetoneKind::error: return "error";
  }
  return {};
}

std::string fact_value(const Page& page, const Because& reason, const Situation& situation) {
  const auto truth = [](bool value) { return std::string(value ? "true" : "false"); };
  const std::string none = "none";
  switch (reason.fact) {
    case Fact::glucose: return situation.glucose ? reading_text(situation.glucose->reading) : none;
    case Fact::ketones: return reading_text(situation.ketones.reading);
    case Fact::signs: return joined(situation.signs, words::signs);
    case Fact::seen: return joined(situation.seen, words::faults);
    case Fact::carbs: return situation.carbs ? page.grams(*situation.carbs) : none;
    case Fact::unwell: return truth(situation.unwell);
    case Fact::mistake: return situation.mistake ? std::string(of(words::mistakes, situation.mistake->what)) : none;
    case Fact::pumpOnBoard: return situation.pump_on_board ? page.json_number(*situation.pump_on_board) : none;
    case Fact::pumpOffersNothing: return truth(situation.pump_offers_nothing);
    case Fact::highSince: return situation.high_since ? page.time(*situation.high_since) : none;
    case Fact::with: return situation.with ? std::string(of(words::devices, *situation.with)) : none;
    case Fact::notBefore: return situation.not_before ? text_of(*situation.not_before) : none;
    case Fact::recordInDoubt: return truth(situation.record_in_doubt);
    case Fact::viewer: return std::string(of(words::viewers, situation.viewer));
    case Fact::agreement: return std::string(of(words::plan_statuses, page.plan.agreement.status));
    case Fact::pregnant: return truth(page.plan.person.pregnant);
    case Fact::sglt2Inhibitor: return truth(page.plan.person.sglt2_inhibitor);
    case Fact::event: return text_of(reason.latest.instant, reason.latest.offset);
  }
  return none;
}

void write_because(const Page& page, const std::vector<Because>& because, const Situation& situation) {
  Writer& out = page.out;
  out.key("because").open('[');
  for (const Because& reason : because) {
    const std::string_view fact = reason.fact == Fact::event ? of(words::event_kinds, reason.kind) : of(words::facts, reason.fact);
    out.open('{').key("fact").text(fact).key("value").text(fact_value(page, reason, situation));
    out.key("from").text(of(words::origins, reason.origin)).close('}');
  }
  out.close(']');
}

}  // namespace

std::string write_refusals(const Refusals& refusals) {
  Writer out;
  out.open('{').key("refused").open('[');
  for (const Refusal& refusal : refusals.list()) {
    out.open('{').key("path").text(refusal.path).key("reason").text(of(words::reasons, refusal.reason));
    if (!refusal.got.empty()) out.key("got").text(refusal.got);
    if (!refusal.accepted.empty()) out.key("accepted").text(refusal.accepted);
    out.close('}');
  }
  out.close(']').close('}');
  return out.take();
}

std::string write_advice(const Advice& advice, const std::vector<Because>& because, const std::vector<Finding>& refused, const Plan& plan,
                         const Situation& situation, std::string_view engine) {
  Writer out;
  const Page page{out, plan, situation.now};
  out.open('{').key("outcome").text(of(words::outcomes, advice.outcome)).key("decidedBy").text(of(words::rules, advice.decided_by));
  out.key("gate");
  if (advice.gate == Gate::open) out.null();
  else out.text(of(words::gates, advice.gate));
  out.key("call").text(of(words::calls, advice.call)).key("callFirst").truth(advice.call_first);
  write_dose(page, advice.dose);
  out.key("carbohydrateGrams").raw(page.grams(advice.carbohydrate));
  write_given(page, advice.given);
  write_steps(page, advice);
  write_hold_list(page, advice.holds);
  out.key("hold");
  if (advice.gate == Gate::HLD && advice.hold_until)
    out.open('{').key("until").text(page.time(*advice.hold_until)).key("clock").text(page.hold_clock(*advice.hold_until)).close('}');
  else out.null();
  out.key("looks").open('[');
  for (const Look& look : advice.looks) {
    out.open('{').key("at").text(page.time(look.at)).key("clock").text(page.look_clock(look.at));
    write_what(out, look.glucose, look.ketones);
    out.close('}');
  }
  out.close(']').key("cautions").open('[');
  for (std::size_t i = 0; i < caution_count; ++i)
    if (advice.cautions.has(static_cast<Caution>(i))) out.text(words::cautions[i]);
  out.close(']');
  write_because(page, because, situation);
  write_ring(page);
  write_plan_findings(out, refused, plan);
  out.key("incident");
  if (advice.incident == IncidentChange::none) out.null();
  else out.text(advice.incident == IncidentChange::open ? "open" : "close");
  out.key("planFingerprint").text(plan.fingerprint).key("engine").text(engine).close('}');
  return out.take();
}

std::string write_reminders(const HoldsAnswer& answer, const Plan& plan, const Moment& now, std::string_view words, std::string_view engine) {
  Writer out;
  out.open('{');
  write_looks({out, plan, now}, answer.looks);
  // What is overdue needs no alarm: it comes first on the screen.
  std::vector<Instant> ahead;
  for (const LookDue& look : answer.looks)
    if (look.due > now.instant && (ahead.empty() || ahead.back() != look.due)) ahead.push_back(look.due);
  out.key("ics");
  if (const auto calendar = calendar_text(ahead, plan.id, now.instant, words, engine)) out.text(*calendar);
  else out.null();
  out.close('}');
  return out.take();
}

namespace {

// Falls are texts to draw and to say; nobody works out a dose from them.
void write_taken(const Page& page, const TakenOff& taken) {
  Writer& out = page.out;
  const auto fall = [&](GlucoseFall amount) { return level_text(amount.in_grains(), page.plan); };
  out.key("taken").open('{').key("dose").text(dose_text(taken.again, page.plan.decimal_mark)).key("toLow");
  if (taken.to_low) out.text(fall(*taken.to_low));
  else out.null();
  out.key("rows").open('[');
  for (const TakenOff::Row& row : taken.rows)
    out.open('[').raw(std::to_string(row.minute)).text(fall(row.told)).text(fall(row.untold)).close(']');
  out.close(']').close('}');
}

}  // namespace

std::string write_holds(const HoldsAnswer& answer, const std::vector<Finding>& refused, const Plan& plan, const Moment& now) {
  Writer out;
  const Page page{out, plan, now};
  out.open('{');
  write_hold_list(page, answer.holds);
  write_looks(page, answer.looks);
  out.key("onBoard").open('{').key("counted").text(page.number(answer.counted));
  out.key("absorbed").text(page.number(answer.absorbed)).close('}').key("unanswered");
  if (answer.unanswered) {
    out.open('{').key("id").text(answer.unanswered->id).key("units").raw(page.json_number(answer.unanswered->units));
    out.key("text").text(dose_text(answer.unanswered->units, plan.decimal_mark)).key("at").text(page.time(answer.unanswered->at));
    out.key("clock").text(page.look_clock(answer.unanswered->at)).close('}');
  } else {
    out.null();
  }
  out.key("incident");
  if (answer.incident_since)
    out.open('{').key("since").text(page.time(*answer.incident_since)).key("clock").text(page.look_clock(*answer.incident_since))
        .key("recorded").truth(answer.incident_recorded).close('}');
  else out.null();
  write_given(page, answer.given);
  write_ring(page);
  write_plan_findings(out, refused, plan);
  out.key("clockInDoubt").truth(answer.clock_in_doubt);
  if (answer.curve) {
    out.key("curve").open('[');
    for (const CurveRow& row : *answer.curve)
      out.open('[').raw(std::to_string(row.minute)).text(page.number(row.counted)).text(page.number(row.absorbed)).close(']');
    out.close(']');
    if (answer.taken) write_taken(page, *answer.taken);
  }
  out.close('}');
  return out.take();
}

std::string write_version(const VersionAnswer& version) {
  Writer out;
  out.open('{').key("engine").text(version.engine).key("planFormat").raw(std::to_string(version.plan_format));
  out.key("commit").text(version.commit).key("oldestCheckedOn").text(version.oldest_checked_on);
  out.key("figures").raw(std::to_string(version.figures)).close('}');
  return out.take();
}

}  // namespace stopgap::json
