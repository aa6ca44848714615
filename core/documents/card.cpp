#include "documents/card.hpp"

#include "figures/ketones.hpp"
#include "figures/off_pump.hpp"
#include "figures/paper.hpp"
#include "figures/timing.hpp"
#include "model/basal.hpp"

namespace stopgap {
namespace {

bool squares_off_body(const Plan& plan) {
  for (const SquaringWay way : plan.squaring.ways)
    if (way == SquaringWay::offBody) return true;
  return false;
}

std::string device_word(const Plan& plan) { return plan.syringe ? "syringe" : "pen"; }

// Ketones act in every column of the card, so automation goes off, and what was injected leaves the pump off the body as well.
std::vector<Line> steps_of(const Plan& plan) {
  std::vector<Line> out{{"card-step-inject", {{"insulin", plan.rapid.name}, {"device", device_word(plan)}}}};
  out.push_back({plan.tubing == Tubing::tubed ? "card-step-change" : "card-step-change-tubeless", {}});
  if (squares_off_body(plan)) {
    out.push_back({"card-step-off-body", {}});
    out.push_back({"card-step-join", {}});
  }
  if (plan.automation != Automation::none) out.push_back({"card-step-automation", {{"hours", in_hours(plan.squaring.pause)}}});
  return out;
}

std::vector<Line> after_of(const Plan& plan) {
  std::vector<Line> out;
  for (const Duration look : plan.high.looks_after_injection) out.push_back({"card-look", {{"minutes", in_minutes(look)}}});
  out.push_back({"card-hold", {{"hours", in_hours(plan.limits.lock)}}});
  out.push_back({"card-no-second", {}});
  out.push_back({"card-drink", {}});
  if (plan.person.sglt2_inhibitor) out.push_back({"card-sglt2", {}});
  out.push_back({"card-pump-counts", {}});
  return out;
}

std::vector<Line> calls_of(const Plan& plan) {
  std::vector<Line> out;
  Call said = Call::none;
  const bool at_once = plan.person.pregnant || plan.person.sglt2_inhibitor;
  for (const KetoneRow& row : plan.ketones.rows) {
    Call call = row.from >= figures::ketones_help_now.value ? Call::emergency : row.call;
    if (at_once && row.from >= plan.ketones.act_from && call == Call::none) call = Call::team;
    if (call <= said) continue;
    said = call;
    const auto strip = strip_of(plan, row);
    std::vector<Slot> slots{strip ? *strip : Slot{"ketones", row.from}};
    if (call == Call::team) {
      out.push_back({strip ? "card-call-team-strip" : "card-call-team-from", std::move(slots)});
    } else {
      slots.push_back({"number", plan.emergency_number});
      out.push_back({strip ? "card-call-emergency-strip" : "card-call-emergency-from", std::move(slots)});
    }
  }
  out.push_back({"card-call-signs", {{"number", plan.emergency_number}}});
  out.push_back({"card-call-hi", {}});
  if (!plan.low.glucagon.empty()) out.push_back({"card-glucagon", {{"glucagon", plan.low.glucagon}, {"number", plan.emergency_number}}});
  return out;
}

// What goes with a dose that no strip stands behind, and who is told (rules, INJ without strips).
std::vector<Line> no_strips_of(const Plan& plan) {
  std::vector<Line> out{{"card-no-strips-get", {}}};
  out.push_back({plan.tubing == Tubing::tubed ? "card-no-strips-change" : "card-no-strips-change-tubeless", {}});
  out.push_back({"card-no-strips-look", {{"minutes", in_minutes(figures::look_usual.value)}}});
  out.push_back({"card-no-strips-unwell", {}});
  return out;
}

std::vector<Line> off_pump_of(const Plan& plan) {
  const PlainNumber hours = in_hours(plan.off_pump.cutover);
  std::vector<Line> out;
  const auto part = long_acting_part(plan);
  if (part) {
    const std::vector<Slot> slots{{"hours", hours}, {"dose", *part}, {"insulin", plan.long_acting->name}};
    out.push_back({plan.off_pump.parts == 1 ? "card-long-acting" : "card-long-acting-parts", slots});
    out.push_back({"card-long-acting-not-for-high", {{"insulin", plan.long_acting->name}}});
  } else {
    out.push_back({"card-long-acting-ask", {{"hours", hours}}});
  }
  out.push_back({"card-off-pump-bridge", {{"hours", in_hours(plan.off_pump.bridge)}, {"insulin", plan.rapid.name}}});
  // Whoever has only the card would let the pump run its basal on top of it.
  if (part) out.push_back({"card-off-pump-back", {{"hours", in_hours(plan.long_acting->action)}, {"insulin", plan.long_acting->name}}});
  out.push_back({"card-off-pump-call", {}});
  return out;
}

std::vector<Line> storage_of(const Plan& plan) {
  std::vector<Line> out{{"card-storage", {{"insulin", plan.rapid.name}, {"days", counted(plan.rapid.in_use_days)}}}};
  if (plan.long_acting)
    out.push_back({"card-storage", {{"insulin", plan.long_acting->name}, {"days", counted(plan.long_acting->in_use_days)}}});
  return out;
}

// Abroad the number of home may ring nowhere, so that side says what to call, and the person's own team.
std::vector<Line> stranger_of(const Plan& plan, bool abroad) {
  std::vector<Line> out{{"stranger-type", {}}, {"stranger-failed", {}}, {"stranger-low", {}}};
  if (abroad) out.push_back({"stranger-unwell", {}});
  else out.push_back({"stranger-unwell-number", {{"number", plan.emergency_number}}});
  out.push_back({"stranger-say", {}});
  out.push_back({"stranger-no-inject", {}});
  for (const Contact* team : team_of(plan)) out.push_back({"stranger-call", {{"name", team->name}, {"phone", team->phone}}});
  for (const std::string_view key : {"stranger-basal", "stranger-normal", "stranger-test"}) out.push_back({key, {}});
  return out;
}

std::vector<Line> security_of(const Plan& plan) {
  std::vector<Line> out{{"security-who", {{"name", plan.person.name}, {"day", plan.person.born}}}, {"security-needs", {}},
                        {"security-rapid", {{"insulin", plan.rapid.name}}}};
  if (plan.long_acting) out.push_back({"security-long", {{"insulin", plan.long_acting->name}}});
  for (const std::string_view key : {"security-needles", "security-hand", "security-scan", "security-fluid"}) out.push_back({key, {}});
  return out;
}

std::vector<Line> carry_of() {
  return {{"travel-or", {}}, {"travel-also", {}},
          {"travel-cool", {{"least", counted(figures::carry_coolest.value)}, {"most", counted(figures::carry_warmest.value)}}}, {"travel-hold", {}}};
}

// The published rule in words: how much a dose changes is worked out where the hours of the journey are known.
std::vector<Line> zones_of(const Plan& plan) {
  std::vector<Line> out{{"zones-under", {{"hours", counted(figures::zones_that_matter.value)}}}, {"zones-home", {}}, {"zones-pump", {}}, {"zones-week", {}}};
  if (!plan.long_acting) return out;
  out.push_back({"zones-injected", {{"insulin", plan.long_acting->name}, {"hours", counted(figures::zones_that_change_basal.value)}}});
  for (const std::string_view key : {"zones-east", "zones-west"}) out.push_back({key, {}});
  out.push_back({"zones-source", {{"source", std::string{sources::zones_2013.body_title_year}}}});
  return out;
}

std::int64_t packs(Insulin amount, Insulin each) { return (amount.in_units() / each.in_units()).ceiling(); }

Kit kit_for(const Plan& plan, std::int64_t days) {
  const auto twice = [days](Insulin a_day) { return Insulin::exactly(a_day.in_units() * Fraction{days * figures::kit_times.value}); };
  Kit kit;
  kit.days = days;
  kit.rapid_vials = packs(twice(plan.daily_total), figures::vial_holds.value);
  kit.rapid_pens = packs(twice(plan.daily_total), figures::pen_holds.value);
  if (plan.long_acting) {
    kit.long_pens = packs(twice(long_acting_a_day(plan)), figures::pen_holds.value);
  }
  kit.sets = figures::kit_times.value * Fraction::of(days * 86400, figures::set_lasts.value.in_seconds()).ceiling();
  return kit;
}

}  // namespace

std::optional<Insulin> long_acting_part(const Plan& plan) {
  if (!plan.long_acting) return std::nullopt;
  const Device& device = plan.usual_device();
  const Insulin exact = Insulin::exactly(long_acting_a_day(plan).in_units() / Fraction{plan.off_pump.parts});
  const Insulin part = plan.to_step(exact, device.step);
  if (part.is_zero() || part > device.capacity) return std::nullopt;
  return part;
}

Card card(const Plan& plan) {
  Card out;
  out.spans = dose_spans(plan, Viewer::person);
  out.head = {{"card-only-if", {{"hours", in_hours(quiet_before_table(plan))}}}, {"card-not-sure", {}}};
  out.steps = steps_of(plan);
  out.after = after_of(plan);
  out.calls = calls_of(plan);
  out.no_strips = no_strips_of(plan);
  out.off_pump = off_pump_of(plan);
  out.storage = storage_of(plan);
  out.stranger = stranger_of(plan, false);
  out.stranger_abroad = stranger_of(plan, true);
  out.security = security_of(plan);
  out.carry = carry_of();
  out.zones = zones_of(plan);
  for (const std::int64_t days : figures::kit_days.value) out.kits.push_back(kit_for(plan, days));
  return out;
}

}  // namespace stopgap
