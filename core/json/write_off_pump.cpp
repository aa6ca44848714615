#include "json/write_off_pump.hpp"

#include <array>
#include "json/answer_words.hpp"
#include "json/page.hpp"
#include "json/write_contacts.hpp"
#include "json/write_device.hpp"
#include "json/write_review.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

using words::of;
constexpr int share_digits = 4;

constexpr std::array<std::string_view, 3> ways{"none", "bridge", "longActing"};
constexpr std::array<std::string_view, 9> way_reasons{
    "pumpOn", "soonBack", "shorter", "longer", "unknown", "asleep", "noLongActing", "atWork", "underStep"};
constexpr std::array<std::string_view, 4> waits{"nothing", "correction", "rapid", "everything"};
constexpr std::array<std::string_view, 6> blocks{"none", "first", "hold", "underStep", "alone", "twice"};
constexpr std::array<std::string_view, 4> order_blocks{"none", "overADay", "overWithLast", "notReadBack"};
constexpr std::array<std::string_view, 4> back_dos{"usual", "reduced", "afterBridge", "askTeam"};
constexpr std::array<std::string_view, 2> back_foods{"byPump", "byNeedle"};
constexpr std::array<std::string_view, 3> long_states{"notNow", "due", "hold"};
constexpr std::array<std::string_view, 2> shares{"whole", "half"};
constexpr std::array<std::string_view, 3> part_names{"only", "morning", "evening"};
constexpr std::array<std::string_view, 3> alarms{"bridge", "longActing", "longActingPart"};
constexpr std::array<std::string_view, 5> keeps{"unknown", "good", "lastDay", "due", "over"};
constexpr std::array<std::string_view, 4> travel_rules{"ignore", "sameBasal", "east", "west"};
constexpr std::array<std::string_view, note_count> notes{
    "getLongActing", "missedBridge", "missedTooLong", "longActingHeld", "longActingSplit", "longActingUnderStep", "bridgeUnderStep", "bridgeCut",
    "outlastsADay", "callAfterADay", "callAfterTwoDays", "neverFromPen", "otherVial", "boxWins", "heatedInsulin", "missedBasalTalk", "automationOff",
    "travelIgnore", "travelSameBasal", "travelEast", "travelWest", "travelClock", "suppliesTwice", "longActingOther", "travelAskFirst", "bridgedTwice",
    "bridgeWhileAsleep", "longActingWhileAsleep", "longActingTooLittle", "longActingUnknown", "orderTooLarge", "orderNotReadBack",
    "basalWithoutReading", "askForBasal", "eatFirst", "eatWith", "longActingForSmallBasal", "longActingSecondHalf"};

struct OffPage : Page {
  const OffPage& shown(std::string_view key, Insulin amount) const {
    out.key(key).text(number(amount));
    return *this;
  }
  // What ends or opens is rounded up to the minute; what is due is rounded down.
  void opens(std::string_view key, const std::optional<Instant>& at) const { place(key, at, &Page::hold_clock); }
  void due(std::string_view key, const std::optional<Instant>& at) const { place(key, at, &Page::look_clock); }
  void place(std::string_view key, const std::optional<Instant>& at, std::string (Page::*clock)(Instant) const) const {
    out.key(key);
    if (!at) {
      out.null();
      return;
    }
    out.open('{').key("at").text(time(*at)).key("clock").text((this->*clock)(*at)).close('}');
  }
  void amount(Insulin units) const {
    out.key("units").raw(json_number(units)).key("text").text(dose_text(units, plan.decimal_mark)).key("number").text(number(units));
  }
};

void write_parts(Writer& out, const Parts& parts) {
  const auto exact = [](Insulin part) { return decimal_text(part.in_units(), display_digits, '.'); };
  out.key("parts").open('{').key("rescue").raw(exact(parts.rescue)).key("meal").raw(exact(parts.meal)).key("basal").raw(exact(parts.basal)).close('}');
}

void write_first(const OffPage& page, const std::optional<ComesFirst>& first) {
  Writer& out = page.out;
  out.key("first");
  if (!first) {
    out.null();
    return;
  }
  out.open('{').key("outcome").text(of(words::outcomes, first->outcome)).key("decidedBy");
  if (first->decided_by) out.text(of(words::rules, *first->decided_by));
  else out.null();
  out.key("call").text(of(words::calls, first->call)).key("waits").text(of(waits, first->waits));
  out.key("dose");
  if (first->dose) out.text(dose_text(*first->dose, page.plan.decimal_mark));
  else out.null();
  out.key("carbohydrateGrams").raw(page.grams(first->carbohydrate)).key("shown");
  if (first->shown) {
    out.open('{').key("id").text(first->shown->id).key("insulin").text(of(words::insulins, first->shown->insulin));
    page.amount(first->shown->units);
    out.key("at").text(page.time(first->shown->at)).key("clock").text(page.look_clock(first->shown->at)).key("order");
    if (first->shown->order.empty()) out.null();
    else out.text(first->shown->order);
    out.close('}');
  } else {
    out.null();
  }
  out.close('}');
}

void write_bridge(const OffPage& page, const Bridge& bridge) {
  Writer& out = page.out;
  out.open('{').key("kind").text("bridge").key("insulin").text(of(words::insulins, InsulinType::rapid)).key("name").text(page.plan.rapid.name);
  out.key("dose");
  if (bridge.units.is_zero()) {
    out.null();
  } else {
    out.open('{');
    page.amount(bridge.units);
    out.key("with").text(of(words::devices, bridge.with));
    write_parts(out, bridge.parts);
    write_device(out, page.plan, bridge.with, bridge.units);
    out.close('}');
  }
  out.key("basalHours");
  if (bridge.basal_hours) out.raw(decimal_text(Fraction::of(bridge.basal_hours->in_seconds(), 3600), 1, '.'));
  else out.null();
  out.key("singleStep").truth(bridge.single_step).key("working").open('{');
  page.shown("basal", bridge.basal).shown("carried", bridge.carried).shown("meal", bridge.meal).shown("correction", bridge.correction);
  page.shown("onBoard", bridge.on_board).shown("net", bridge.net).shown("sum", bridge.sum).shown("cut", bridge.cut);
  page.due("from", bridge.from);
  page.due("to", bridge.to);
  out.close('}').key("correctionWaits");
  if (bridge.block == CorrectionBlock::none) {
    out.null();
  } else {
    out.open('{').key("why").text(of(blocks, bridge.block));
    page.opens("until", bridge.correction_opens);
    out.close('}');
  }
  out.close('}');
}

void write_long(const OffPage& page, const LongDose& dose) {
  Writer& out = page.out;
  out.open('{').key("kind").text("longActing").key("insulin").text(of(words::insulins, InsulinType::long_acting));
  out.key("name").text(page.plan.long_acting->name).key("dose");
  if (dose.units.is_zero()) {
    out.null();
  } else {
    out.open('{');
    page.amount(dose.units);
    out.key("with").text(of(words::devices, dose.with));
    write_device(out, page.plan, dose.with, dose.injections.front());
    out.close('}');
  }
  out.key("injections").open('[');
  for (const Insulin& each : dose.injections) {
    out.open('{');
    page.amount(each);
    out.close('}');
  }
  out.close(']').key("part").text(of(part_names, dose.part)).key("share").text(of(shares, dose.share));
  out.key("working").open('{');
  page.shown("basal", dose.basal_a_day).shown("aDay", dose.a_day).shown("exact", dose.exact);
  out.key("factor").text(decimal_text(page.plan.off_pump.long_acting_factor.value(), share_digits, page.plan.decimal_mark));
  out.key("parts").raw(std::to_string(page.plan.off_pump.parts)).close('}');
  page.opens("worksFrom", dose.works_from);
  page.opens("nextDue", dose.next_due);
  page.opens("pumpAsUsualFrom", dose.pump_as_usual_from);
  out.key("reducedPercent");
  if (page.plan.off_pump.reduced_basal) out.text(decimal_text(page.plan.off_pump.reduced_basal->value() * Fraction{100}, 1, page.plan.decimal_mark));
  else out.null();
  out.key("callFirst").truth(dose.call_first).key("zonesEast");
  if (dose.zones_east) out.raw(std::to_string(*dose.zones_east));
  else out.null();
  out.key("secondHalf").truth(dose.second_half);
  out.key("order");
  if (dose.order) {
    out.open('{').key("id").text(dose.order->id).key("by").text(dose.order->by).key("at").text(page.time(dose.order->at));
    out.key("clock").text(page.look_clock(dose.order->at)).close('}');
  } else {
    out.null();
  }
  out.close('}');
}

void write_stored(const OffPage& page, std::string_view key, const Stored& stored) {
  Writer& out = page.out;
  out.key(key).open('{').key("keeps").text(of(keeps, stored.keeps)).key("lastUse");
  if (stored.last_use) out.text(text_of(*stored.last_use));
  else out.null();
  page.due("changeBy", stored.change_by);
  out.close('}');
}

void write_eats(const OffPage& page, const std::optional<EatsBefore>& eats) {
  Writer& out = page.out;
  out.key("eat");
  if (!eats) {
    out.null();
    return;
  }
  out.open('{').key("grams").raw(page.grams(eats->grams)).key("when").text(eats->together ? "with" : "before").close('}');
}

void write_order(const OffPage& page, const std::optional<OrderSaid>& order) {
  Writer& out = page.out;
  out.key("order");
  if (!order) {
    out.null();
    return;
  }
  out.open('{').key("id").text(order->id).key("by").text(order->by).key("insulin").text(of(words::insulins, order->insulin));
  page.amount(order->units);
  out.key("at").text(page.time(order->at)).key("clock").text(page.look_clock(order->at));
  page.opens("until", order->until);
  out.key("mayInject").truth(order->block == OrderBlock::none).key("why");
  if (order->block == OrderBlock::none) out.null();
  else out.text(of(order_blocks, order->block));
  out.close('}');
}

void write_travel(const OffPage& page, const std::optional<Travel>& travel) {
  Writer& out = page.out;
  out.key("travel");
  if (!travel) {
    out.null();
    return;
  }
  out.open('{').key("zonesEast").raw(std::to_string(travel->zones_east)).key("rule").text(of(travel_rules, travel->rule));
  out.key("share").text(decimal_text(travel->share, share_digits, page.plan.decimal_mark)).key("parts").open('[');
  for (const Travel::Part& part : travel->parts) {
    out.open('{').key("exact").text(decimal_text(part.exact.in_units(), share_digits, page.plan.decimal_mark));
    page.amount(part.units);
    page.opens("due", part.at);
    out.key("given").truth(part.given).close('}');
  }
  out.close(']');
  page.opens("nextWhole", travel->next_whole);
  out.close('}');
}

void write_back(const OffPage& page, const Back& back) {
  Writer& out = page.out;
  out.key("back").open('{').key("on").truth(back.on).key("do").text(of(back_dos, back.now)).key("food").text(of(back_foods, back.food));
  page.opens("bridgeUntil", back.bridge_until);
  page.opens("usualFrom", back.usual_from);
  out.key("reducedPercent");
  if (back.reduced) out.text(decimal_text(back.reduced->value() * Fraction{100}, 1, page.plan.decimal_mark));
  else out.null();
  page.opens("automationFrom", back.automation_from);
  out.key("lookAfterMinutes").raw(std::to_string(back.look_after.in_seconds() / 60));
  out.key("laterLooksHours").raw(std::to_string(back.looks_later.in_seconds() / 3600));
  page.due("look", back.look);
  page.shown("missedBasal", back.missed_basal);
  out.close('}');
}

}  // namespace

std::string write_parts_given(const Parts& parts) {
  Writer out;
  out.open('{');
  write_parts(out, parts);
  out.close('}');
  return out.take();
}

std::string write_off_pump(const OffPumpAnswer& answer, const std::vector<Finding>& refused, const Plan& plan, const Moment& now, std::string_view engine) {
  Writer out;
  const OffPage page{{out, plan, now}};
  out.open('{').key("off").truth(answer.off).key("recorded").truth(answer.recorded);
  page.due("since", answer.since);
  page.due("expectedUntil", answer.expected_until);
  write_first(page, answer.first);
  write_eats(page, answer.eats);
  write_order(page, answer.order);
  out.key("way").text(of(ways, answer.way)).key("wayBecause").text(of(way_reasons, answer.because));
  out.key("screens").open('[');
  if (answer.bridge) write_bridge(page, *answer.bridge);
  if (answer.long_dose) write_long(page, *answer.long_dose);
  out.close(']');
  page.due("nextBridge", answer.next_bridge);
  out.key("smallBasal").truth(answer.small_basal).key("bridged").truth(answer.bridged).key("longActing").open('{').key("state").text(of(long_states, answer.long_state));
  page.opens("until", answer.long_due);
  out.key("bridges").truth(answer.long_acting_bridges).close('}').key("alarms").open('[');
  for (const OffAlarm& alarm : answer.alarms)
    out.open('{').key("at").text(page.time(alarm.at)).key("clock").text(page.look_clock(alarm.at))
        .key("what").text(of(alarms, alarm.what)).close('}');
  out.close(']').key("missed");
  if (answer.missed) {
    out.open('{');
    page.due("since", answer.missed->since);
    out.key("minutes").raw(std::to_string((now.instant - answer.missed->since).in_seconds() / 60)).key("tooLong").truth(answer.missed->too_long).close('}');
  } else {
    out.null();
  }
  write_back(page, answer.back);
  out.key("insulin").open('{');
  write_stored(page, "vial", answer.insulin.vial);
  write_stored(page, "reservoir", answer.insulin.reservoir);
  write_stored(page, "set", answer.insulin.set);
  out.key("heated").truth(answer.insulin.heated).close('}');
  write_travel(page, answer.travel);
  out.key("call").text(of(words::calls, answer.call)).key("calls").open('[');
  for (const Instant call : answer.calls)
    out.open('{').key("at").text(page.time(call)).key("clock").text(page.look_clock(call)).close('}');
  out.close(']').key("holds").open('[');
  for (std::size_t kind = 0; kind < answer.holds.size(); ++kind)
    if (answer.holds[kind])
      out.open('{').key("what").text(words::hold_kinds[kind]).key("until").text(page.time(*answer.holds[kind]))
          .key("clock").text(page.hold_clock(*answer.holds[kind])).close('}');
  out.close(']');
  page.due("look", answer.off ? std::optional<Instant>{answer.look} : std::nullopt);
  out.key("couldGoLow").truth(answer.could_go_low).key("notes").open('[');
  for (std::size_t at = 0; at < note_count; ++at)
    if (answer.notes.has(static_cast<Note>(at))) out.text(notes[at]);
  out.close(']');
  write_ring(page);
  write_plan_findings(out, refused, plan);
  out.key("planFingerprint").text(plan.fingerprint).key("engine").text(engine).close('}');
  return out.take();
}

}  // namespace stopgap::json
