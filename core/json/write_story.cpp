#include "json/write_story.hpp"

#include <algorithm>
#include "json/answer_words.hpp"
#include "json/reading_text.hpp"
#include "json/write.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr int units_digits = 2;

struct StoryPage {
  Writer& out;
  const Plan& plan;

  void key_text(std::string_view key, std::string_view text) const { out.key(key).text(text); }
  void dose(std::string_view key, const std::optional<Insulin>& units) const {
    out.key(key);
    if (units) out.text(dose_text(*units, plan.decimal_mark));
    else out.null();
  }
  std::string number(Insulin units) const { return decimal_text(units.in_units(), units_digits, plan.decimal_mark); }
  void moment(const Moment& at) const {
    key_text("at", text_of(at.instant, at.offset));
    key_text("clock", clock_rounded_down(at.instant, at.offset));
    key_text("day", text_of(local_day(at)));
  }

  template <class Item, std::size_t count>
  void set(std::string_view key, SetOf<Item> items, const std::array<std::string_view, count>& names) const {
    out.key(key).open('[');
    for (std::size_t i = 0; i < count; ++i)
      if (items.has(static_cast<Item>(i))) out.text(names[i]);
    out.close(']');
  }

  void glucose(const GlucoseReading& reading) const {
    if (reading.word == MeterWord::number) {
      key_text("value", number_text(reading, plan.decimal_mark));
      key_text("unit", of(words::glucose_units, reading.unit));
    } else {
      key_text("reading", words::meter_words[reading.word == MeterWord::HI ? 0 : 1]);
    }
    key_text("from", of(words::read_from, reading.from));
  }
  void ketones(const KetoneReading& reading) const {
    switch (reading.kind) {
      case KetoneKind::blood: key_text("blood", number_text(reading.blood, plan.decimal_mark)); break;
      case KetoneKind::bloodHI: key_text("blood", words::meter_words[0]); break;
      case KetoneKind::urine: key_text("urine", of(words::strip_words, reading.strip)); break;
      case KetoneKind::notYet: key_text("unknown", words::ketones_unknown[0]); break;
      case KetoneKind::noStrips: key_text("unknown", words::ketones_unknown[1]); break;
      case KetoneKind::error: key_text("unknown", words::ketones_unknown[2]); break;
    }
  }
  void readings(const Event& event) const {
    if (event.glucose) {
      out.key("glucose").open('{');
      glucose(*event.glucose);
      out.close('}');
    }
    if (event.ketones) {
      out.key("ketones").open('{');
      ketones(*event.ketones);
      out.close('}');
    }
  }
  void parts(const std::optional<Parts>& parts) const {
    if (!parts) return;
    out.key("parts").open('{');
    key_text("rescue", number(parts->rescue));
    key_text("meal", number(parts->meal));
    key_text("basal", number(parts->basal));
    out.close('}');
  }
  void insulin(const Event& event) const { key_text("insulin", of(words::insulins, event.insulin)); }
  void due(const Event& event) const {
    key_text("due", text_of(*event.due, event.at.offset));
    key_text("dueClock", clock_rounded_down(*event.due, event.at.offset));
  }
};

void write_injection(const StoryPage& page, const Event& event) {
  page.dose("dose", event.units);
  page.insulin(event);
  page.key_text("with", of(words::devices, event.with));
  page.out.key("sure").truth(event.sure);
  page.parts(event.parts);
  page.readings(event);
}

// What the event says, by its kind.
void write_what(const StoryPage& page, const Event& event) {
  Writer& out = page.out;
  switch (event.kind) {
    case EventKind::incident: page.key_text("state", words::incident_states[event.opened ? 0 : 1]); break;
    case EventKind::glucose: page.glucose(*event.glucose); break;
    case EventKind::ketones: page.ketones(*event.ketones); break;
    case EventKind::sign: page.set("what", event.signs, words::signs); break;
    case EventKind::seen: page.set("what", event.faults, words::faults); break;
    case EventKind::changed: page.set("what", event.changed, words::changed); break;
    case EventKind::doseShown:
      page.dose("dose", event.units);
      page.insulin(event);
      page.parts(event.parts);
      break;
    case EventKind::doseRefused: page.key_text("shown", event.refers_to); break;
    case EventKind::injection: write_injection(page, event); break;
    case EventKind::pumpDose:
      page.dose("dose", event.units);
      page.key_text("purpose", of(words::pump_purposes, event.purpose));
      page.readings(event);
      break;
    case EventKind::offBody:
      page.dose("dose", event.units);
      page.key_text("tubingEnd", of(words::tubing_ends, event.tubing_end));
      break;
    case EventKind::mistake:
      page.key_text("what", of(words::mistakes, event.mistake));
      page.insulin(event);
      page.dose("dose", event.units);
      break;
    case EventKind::automation: page.key_text("state", words::automation_states[event.on ? 1 : 0]); break;
    case EventKind::pump: page.key_text("state", words::pump_states[event.on ? 1 : 0]); break;
    case EventKind::carbs: page.key_text("grams", decimal_text(event.carbs.in_grams(), 0, '.')); break;
    case EventKind::look:
      page.due(event);
      out.key("what").open('[');
      if (event.look_glucose) out.text(words::look_at[0]);
      if (event.look_ketones) out.text(words::look_at[1]);
      out.close(']');
      break;
    case EventKind::call:
      page.key_text("to", of(words::call_to, event.call_to));
      out.key("answered").truth(event.answered);
      break;
    case EventKind::order:
      page.key_text("by", event.by);
      page.dose("dose", event.units);
      page.key_text("text", event.text);
      break;
    case EventKind::alarmSet: page.due(event); break;
    case EventKind::note: page.key_text("text", event.text); break;
    case EventKind::expires:
      page.key_text("what", of(words::expires, event.expires));
      if (event.expires_on) page.key_text("on", text_of(*event.expires_on));
      page.key_text("text", event.text);
      break;
    case EventKind::strike:
      page.key_text("target", event.refers_to);
      page.key_text("text", event.text);
      break;
  }
}

void write_led_to(const StoryPage& page, const std::optional<LedTo>& led_to) {
  Writer& out = page.out;
  out.key("ledTo");
  if (!led_to) {
    out.null();
    return;
  }
  out.open('{').key("outcome").text(of(words::outcomes, led_to->outcome)).key("decidedBy").text(of(words::rules, led_to->decided_by));
  out.key("gate");
  if (led_to->gate == Gate::open) out.null();
  else out.text(of(words::gates, led_to->gate));
  out.key("call").text(of(words::calls, led_to->call));
  page.dose("dose", led_to->dose);
  out.key("grams");
  if (led_to->carbohydrate > Carbohydrate{}) out.text(decimal_text(led_to->carbohydrate.in_grams(), 0, '.'));
  else out.null();
  out.close('}');
}

void write_row(const StoryPage& page, const StoryRow& row) {
  Writer& out = page.out;
  out.open('{').key("id").text(row.event->id);
  page.moment(row.event->at);
  out.key("minute").raw(std::to_string(row.minute));
  out.key("kind").text(of(words::event_kinds, row.event->kind));
  out.key("struck").truth(row.struck).key("counts").truth(row.counts);
  out.key("what").open('{');
  write_what(page, *row.event);
  out.close('}').key("height");
  if (row.height) out.raw(std::to_string(*row.height));
  else out.null();
  write_led_to(page, row.led_to);
  out.close('}');
}

void write_durations(const StoryPage& page, const Story& story) {
  Writer& out = page.out;
  out.key("durations").open('{').key("from").text(story.from_high ? "high" : "suspicion");
  page.moment(story.start);
  const auto until = [&](std::string_view key, const std::optional<Moment>& reached) {
    out.key(key);
    if (!reached) {
      out.null();
      return;
    }
    const std::int64_t seconds = std::max<std::int64_t>(0, (reached->instant - story.start.instant).in_seconds());
    out.open('{').key("minutes").text(std::to_string(seconds / 60));
    page.moment(*reached);
    out.close('}');
  };
  until("ketoneTest", story.ketone_test);
  until("needle", story.needle);
  until("newSet", story.new_set);
  out.close('}');
}

void write_level(const StoryPage& page, std::string_view key, Glucose level, std::int64_t height) {
  page.out.key(key).open('{').key("height").raw(std::to_string(height));
  page.key_text("text", number_text(level, page.plan.unit, page.plan.decimal_mark));
  page.out.close('}');
}

void write_story(const StoryPage& page, const Story& story, std::string_view engine) {
  Writer& out = page.out;
  out.open('{').key("since").text(text_of(story.since, story.from.offset)).key("recorded").truth(story.recorded);
  out.key("from").open('{');
  page.moment(story.from);
  out.close('}').key("to").open('{');
  page.moment(story.to);
  out.close('}').key("closed");
  if (story.closed) {
    out.open('{');
    page.moment(*story.closed);
    out.close('}');
  } else {
    out.null();
  }
  out.key("planFingerprint").text(page.plan.fingerprint).key("engine").text(engine);
  write_durations(page, story);
  out.key("picture").open('{').key("minutes").raw(std::to_string((story.to.instant - story.from.instant).in_seconds() / 60));
  write_level(page, "trigger", page.plan.high.trigger, story.trigger_height);
  write_level(page, "low", page.plan.low.below, story.low_height);
  out.close('}').key("rows").open('[');
  for (const StoryRow& row : story.rows) write_row(page, row);
  out.close(']').key("rowsLeftOut").raw(std::to_string(story.rows_left_out)).close('}');
}

}  // namespace

std::string write_incident(const IncidentAnswer& answer, const Plan& plan, std::string_view engine) {
  Writer out;
  const StoryPage page{out, plan};
  out.open('{').key("story");
  if (answer.story) write_story(page, *answer.story, engine);
  else out.null();
  out.key("others").open('[');
  for (const IncidentSpan& other : answer.others) {
    out.open('{').key("from").text(text_of(other.from.instant, other.from.offset));
    out.key("to").text(text_of(other.to.instant, other.to.offset)).close('}');
  }
  out.close(']').key("moreOthers").truth(answer.more_others).close('}');
  return out.take();
}

}  // namespace stopgap::json
