#include "json/plan_reader.hpp"
#include "json/read.hpp"
#include "json/sha256.hpp"

namespace stopgap::json {
namespace {

std::optional<std::string> some_name(const Item& item, bool may_be_empty) {
  return text(item, may_be_empty ? 0 : 1, figures::title_length);
}

void names(const Item& item, std::vector<std::string>& target) {
  const Elements list{item, 1, figures::most_school_names};
  for (std::size_t i = 0; i < list.size(); ++i)
    if (auto one = name(list[i])) target.push_back(std::move(*one));
}

}  // namespace

Plan PlanReader::read() {
  Fields fields{root_item(node_, path_, refusals_)};
  if (!format(fields, "stopgap.plan")) return {};
  head(fields);
  person(fields.need("person"));
  agreement(fields.need("agreement"));
  insulins(fields);
  devices(fields);
  pump(fields.need("pump"));
  fill(plan_.daily_total, number(fields.need("dailyTotal"), figures::daily_total_range), tenths);
  day_values(fields.need("day"));
  high(fields.need("high"));
  ketones(fields.need("ketones"));
  limits(fields.need("limits"));
  fill(plan_.rounding, word<Rounding>(fields.need("rounding"), words::roundings));
  squaring(fields.need("squaring"));
  off_pump(fields.need("offPump"));
  low(fields.need("low"));
  contacts(fields.need("contacts"));
  // A draft may still lack what an agreed plan must have: the page marks it, and nobody is treated by a draft.
  const bool draft = plan_.agreement.status == PlanStatus::draft;
  fill(plan_.emergency_number, text(fields.need("emergencyNumber"), draft ? 0 : 1, figures::phone_length));
  school(fields.may("school"));
  travel(fields.may("travel"));
  fill(plan_.notes, sentence(fields.may("notes")));
  fields.finish();
  check_levels();
  check_edges();
  check_rest();
  if (refusals_.count() == refused_before_) plan_.fingerprint = sha256_hex(canonical(node_));
  return std::move(plan_);
}

void PlanReader::head(Fields& fields) {
  fill(plan_.id, id(fields.need("id")));
  fill(plan_.revision, number(fields.need("revision"), figures::revision_range), [](std::int64_t count) { return count; });
  fill(plan_.title, name(fields.need("title")));
  const auto unit = word<GlucoseUnit>(fields.need("glucoseUnit"), words::glucose_units, Reason::wrongUnit);
  unit_known_ = unit.has_value();
  if (unit) plan_.unit = *unit;
  if (const auto mark = word_index(fields.need("decimalMark"), words::decimal_marks.data(), words::decimal_marks.size(), Reason::outOfRange))
    plan_.decimal_mark = words::decimal_marks[*mark].front();
}

void PlanReader::person(const Item& item) {
  if (!item) return;
  Fields fields{item};
  Plan::Person& person = plan_.person;
  fill(person.name, name(fields.need("name")));
  const auto born = day(fields.need("born"));
  if (born) person.born = *born;
  fill(person.weight, number(fields.need("weightKg"), figures::weight_range), Weight::kg_tenths);
  fill(person.pregnant, flag(fields.need("pregnant")));
  fill(person.sglt2_inhibitor, flag(fields.need("sglt2Inhibitor")));
  const Item measured_item = fields.need("measuredOn");
  const auto measured = day(measured_item);
  if (measured) person.measured_on = *measured;
  if (born && measured && !(*born < *measured)) measured_item.refuse(Reason::contradiction, text_of(born->plus_days(1)));
  fields.finish();
}

void PlanReader::agreement(const Item& item) {
  if (!item) return;
  Fields fields{item};
  Plan::Agreement& agreement = plan_.agreement;
  const auto status = word<PlanStatus>(fields.need("status"), words::plan_statuses);
  agreement.status = status.value_or(PlanStatus::agreed);  // not known: as strict as an agreed plan
  const bool draft = agreement.status == PlanStatus::draft;
  fill(agreement.by, some_name(fields.need("by"), draft));
  fill(agreement.role, some_name(fields.need("role"), draft));
  const auto on = day(fields.need("on"));
  if (on) agreement.on = *on;
  const Item review_item = fields.need("reviewBy");
  const auto review_by = day(review_item);
  if (review_by) agreement.review_by = *review_by;
  if (on && review_by && *review_by < *on) review_item.refuse(Reason::contradiction, text_of(*on));
  fill(agreement.grace_days, number(fields.need("graceDays"), figures::grace_days_range), [](std::int64_t count) { return count; });

  const Elements rules{fields.need("houseRules"), 0, words::house_rules.size()};
  for (std::size_t i = 0; i < rules.size(); ++i) {
    const auto rule = word_index(rules[i], words::house_rules.data(), words::house_rules.size(), Reason::outOfRange);
    if (!rule) continue;
    std::string known{words::house_rules[*rule]};
    if (given_before(agreement.house_rules, known)) rules[i].refuse(Reason::contradiction, {});
    else agreement.house_rules.push_back(std::move(known));
  }
  if (const Item retyped = fields.may("retyped")) {
    const Elements list{retyped, 0, figures::most_retyped};
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Item element = list[i];
      Fields one{element};
      Plan::Agreement::Retyped made;
      fill(made.path, text(one.need("path"), 1, figures::path_length));
      fill(made.reason, text(one.need("reason"), 1, figures::sentence_length));
      fill(made.finding, id(one.may("finding")));
      fill(made.value, text(one.may("value"), 1, figures::retyped_value_length));
      one.finish();
      agreement.retyped.push_back(std::move(made));
    }
  }
  fields.finish();
}

InsulinKind PlanReader::insulin(const Item& item, const figures::Range& action, int action_digits, bool long_acting) const {
  InsulinKind kind;
  Fields fields{item};
  fill(kind.name, name(fields.need("name")));
  number(fields.need("unitsPerMl"), figures::concentration_range);  // one concentration only: any other is ten mistakes in one
  fill(kind.action, number(fields.need("actionHours"), action),
       [action_digits](std::int64_t count) { return action_digits == 0 ? Duration::hours(count) : Duration::hour_hundredths(count); });
  if (long_acting) fill(kind.onset, number(fields.need("onsetHours"), figures::onset_hours_range), Duration::hour_hundredths);
  fill(kind.in_use_days, number(fields.need("inUseDays"), figures::in_use_days_range), [](std::int64_t count) { return count; });
  fields.finish();
  return kind;
}

void PlanReader::insulins(Fields& fields) {
  if (const Item rapid = fields.need("rapid"))
    plan_.rapid = insulin(rapid, figures::action_hours_range, figures::action_hours_range.digits, false);
  if (const Item long_acting = fields.may("longActing"))
    plan_.long_acting = insulin(long_acting, figures::long_action_hours_range, figures::long_action_hours_range.digits, true);
}

void PlanReader::devices(Fields& fields) {
  const Item syringe = fields.may("syringe"), pen = fields.may("pen");
  if (!syringe && !pen) fields.refuse_missing("syringe");
  const auto step_of = [](const Item& item) {
    return one_of(item, figures::device_step_tenths.data(), figures::device_step_tenths.size(), 1);
  };
  if (syringe) {
    Fields device{syringe};
    Device made;
    const auto capacity =
        one_of(device.need("capacity"), figures::syringe_capacities.data(), figures::syringe_capacities.size(), 0);
    if (capacity) made.capacity = Insulin::units(*capacity);
    if (const auto step = step_of(device.need("step"))) made.step = tenths(*step);
    device.finish();
    plan_.syringe = made;
  }
  if (pen) {
    Fields device{pen};
    Device made;
    fill(made.capacity, number(device.need("capacity"), figures::pen_capacity_range), tenths);
    if (const auto step = step_of(device.need("step"))) made.step = tenths(*step);
    device.finish();
    plan_.pen = made;
  }
}

void PlanReader::pump(const Item& item) {
  if (!item) return;
  Fields fields{item};
  fill(plan_.tubing, word<Tubing>(fields.need("tubing"), words::tubings));
  fill(plan_.automation, word<Automation>(fields.need("automation"), words::automations));
  number(fields.need("step"), figures::pump_step_range);
  fields.finish();
}

// `read` makes one value from its item, if it is good.
template <class Value, class Read>
void PlanReader::schedule(const Item& item, Scheduled<Value>& target, Read read) const {
  if (!item) return;
  const Elements list{item, 1, figures::most_schedule_entries};
  std::optional<TimeOfDay> before;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Item element = list[i];
    Fields entry{element};
    if (!entry.usable()) continue;
    const Item from_item = entry.need("from");
    const auto from = time_of_day(from_item);
    if (i == 0 && from && from->in_minutes() != 0) from_item.refuse(Reason::contradiction, text_of(TimeOfDay{}));
    if (from && before && !(*before < *from)) from_item.refuse(Reason::notAscending, {});
    if (from) before = from;
    const auto value = read(entry.need("value"));
    entry.finish();
    if (from && value) target.entries.push_back({*from, *value});
  }
}

void PlanReader::day_values(const Item& item) {
  if (!item) return;
  Fields fields{item};
  schedule(fields.need("correctionFactor"), plan_.correction_factor, [this](const Item& value) -> std::optional<CorrectionFactor> {
    const auto read = in_unit(value, figures::correction_factor_range);
    if (!read) return std::nullopt;
    return plan_.unit == GlucoseUnit::mmol ? CorrectionFactor::mmol_hundredths(read->count) : CorrectionFactor::mg_tenths(read->count);
  });
  schedule(fields.need("carbohydrateRatio"), plan_.carbohydrate_ratio, [](const Item& value) -> std::optional<CarbohydrateRatio> {
    const auto read = number(value, figures::carbohydrate_ratio_range);
    if (!read) return std::nullopt;
    return CarbohydrateRatio::gram_tenths_per_unit(read->count);
  });
  schedule(fields.need("target"), plan_.target, [this](const Item& value) -> std::optional<Glucose> {
    const auto read = in_unit(value, figures::level_range);
    if (!read) return std::nullopt;
    return level(*read);
  });
  schedule(fields.need("basal"), plan_.basal, [](const Item& value) -> std::optional<BasalRate> {
    const auto read = number(value, figures::basal_range);
    if (!read) return std::nullopt;
    return BasalRate::hundredths_per_hour(read->count);
  });
  fields.finish();
}

void PlanReader::high(const Item& item) {
  if (!item) return;
  Fields fields{item};
  compared_.trigger = in_unit(fields.need("trigger"), figures::trigger_range);
  compared_.middle = in_unit(fields.need("middle"), figures::level_range);
  compared_.first_look = number(fields.need("firstLook"), figures::look_minutes_range);
  compared_.second_look = number(fields.need("secondLook"), figures::look_minutes_range);
  fill_level(plan_.high.trigger, compared_.trigger);
  fill_level(plan_.high.middle, compared_.middle);
  fill(plan_.high.first_look, compared_.first_look, Duration::minutes);
  fill(plan_.high.second_look, compared_.second_look, Duration::minutes);
  plan_.high.expected_fall = fall(in_unit(fields.need("expectedFall"), figures::glucose_fall_range));
  fill(plan_.high.automation_minutes, number(fields.need("automationMinutes"), figures::look_minutes_range), Duration::minutes);
  if (const Item looks = fields.need("looksAfterInjection")) {
    const Elements list{looks, 1, figures::most_looks};
    std::optional<std::int64_t> before;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto minutes = number(list[i], figures::look_minutes_range);
      if (!minutes) continue;
      if (before && minutes->count <= *before) list[i].refuse(Reason::notAscending, {});
      before = minutes->count;
      plan_.high.looks_after_injection.push_back(Duration::minutes(minutes->count));
    }
  }
  fields.finish();
}

void PlanReader::limits(const Item& item) {
  if (!item) return;
  Fields fields{item};
  Plan::Limits& limits = plan_.limits;
  fill(limits.single_dose, number(fields.need("singleDose"), figures::single_dose_range), tenths);
  compared_.share_of_daily = number(fields.need("shareOfDaily"), figures::share_range);
  compared_.rolling_share = number(fields.need("rollingShare"), figures::rolling_share_range);
  fill(limits.share_of_daily, compared_.share_of_daily, Share::thousandths);
  fill(limits.rolling_share, compared_.rolling_share, Share::thousandths);
  fill(limits.lock, number(fields.need("lockHours"), figures::lock_hours_range), Duration::hour_hundredths);
  fill(limits.doses_before_call, number(fields.need("dosesBeforeCall"), figures::doses_before_call_range),
       [](std::int64_t count) { return count; });
  compared_.ceiling = in_unit(fields.need("dosingCeiling"), figures::ceiling_range);
  fill_level(limits.dosing_ceiling, compared_.ceiling);
  fields.finish();
}

void PlanReader::squaring(const Item& item) {
  if (!item) return;
  Fields fields{item};
  Plan::Squaring& squaring = plan_.squaring;
  bool ways_good = false;
  std::array<std::string_view, words::squaring_ways.size()> given{};
  if (const Item ways = fields.need("ways")) {
    const Elements list{ways, 1, words::squaring_ways.size()};
    ways_good = list.usable();
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto way = word<SquaringWay>(list[i], words::squaring_ways);
      if (!way) { ways_good = false; continue; }
      const std::string_view spelled = words::squaring_ways[static_cast<std::size_t>(*way)];
      if (given_before(squaring.ways, *way)) {
        list[i].refuse(Reason::contradiction, {});
      } else {
        given[squaring.ways.size()] = spelled;
        squaring.ways.push_back(*way);
      }
      // A pump worn on the skin has no tubing that could be held over a sink.
      if (*way == SquaringWay::offBody && plan_.tubing == Tubing::tubeless)
        list[i].refuse(Reason::contradiction, words::squaring_ways[1]);
    }
  }
  const Item preferred_item = fields.need("preferred");
  const auto preferred = word<SquaringWay>(preferred_item, words::squaring_ways);
  if (preferred) squaring.preferred = *preferred;
  if (preferred && ways_good && !given_before(squaring.ways, *preferred))
    preferred_item.refuse(Reason::contradiction, joined(given.data(), squaring.ways.size()));
  fill(squaring.pause, number(fields.need("pauseHours"), figures::pause_hours_range), Duration::hour_hundredths);
  fields.finish();
}

void PlanReader::off_pump(const Item& item) {
  if (!item) return;
  Fields fields{item};
  Plan::OffPump& off_pump = plan_.off_pump;
  fill(off_pump.long_acting_factor, number(fields.need("longActingFactor"), figures::long_acting_factor_range), Share::thousandths);
  fill(off_pump.parts, number(fields.need("parts"), figures::parts_range), [](std::int64_t count) { return count; });
  fill(off_pump.cutover, number(fields.need("cutoverHours"), figures::cutover_hours_range), Duration::hours);
  fill(off_pump.bridge, number(fields.need("bridgeHours"), figures::bridge_hours_range), Duration::hours);
  if (const auto reduced = number(fields.may("reducedBasalShare"), figures::reduced_basal_range))
    off_pump.reduced_basal = Share::thousandths(reduced->count);
  fields.finish();
}

void PlanReader::low(const Item& item) {
  if (!item) return;
  Fields fields{item};
  compared_.below = in_unit(fields.need("below"), figures::level_range);
  compared_.very_low = in_unit(fields.need("veryLow"), figures::level_range);
  fill_level(plan_.low.below, compared_.below);
  fill_level(plan_.low.very_low, compared_.very_low);
  fill(plan_.low.grams, number(fields.need("grams"), figures::low_grams_range), Carbohydrate::grams);
  fill(plan_.low.recheck, number(fields.need("recheckMinutes"), figures::look_minutes_range), Duration::minutes);
  fill(plan_.low.glucagon, name(fields.may("glucagon")));
  fields.finish();
}

void PlanReader::contacts(const Item& item) {
  if (!item) return;
  const Elements list{item, 0, figures::most_contacts};
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Item element = list[i];
    Fields fields{element};
    Contact contact;
    fill(contact.name, name(fields.need("name")));
    fill(contact.relation_text, name(fields.need("relation")));
    if (contact.relation_text == words::relations[0]) contact.relation = Relation::team;
    if (contact.relation_text == words::relations[1]) contact.relation = Relation::home;
    fill(contact.phone, text(fields.need("phone"), 1, figures::phone_length));
    fill(contact.when, some_name(fields.may("when"), true));
    fields.finish();
    plan_.contacts.push_back(std::move(contact));
  }
}

void PlanReader::school(const Item& item) {
  if (!item) return;
  Fields fields{item};
  SchoolOrders orders;
  fill(orders.prescriber, name(fields.need("prescriber")));
  fill(orders.orders_expire, day(fields.need("ordersExpire")));
  names(fields.need("mayInject"), orders.may_inject);
  fill(orders.calculation, word<SchoolCalculation>(fields.need("calculation"), words::school_calculations));
  if (const auto above = number(fields.may("callFirstAbove"), figures::school_limit_range)) orders.call_first_above = tenths(above->count);
  names(fields.need("staff"), orders.staff);
  fill(orders.storage, sentence(fields.may("storage")));
  if (const auto reviewed = day(fields.may("nurseReviewedOn"))) orders.nurse_reviewed_on = *reviewed;
  fields.finish();
  plan_.school = std::move(orders);
}

namespace {

bool is_language(std::string_view tag) {
  if (tag.size() < 2 || tag.size() > figures::language_length) return false;
  for (const char c : tag)
    if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-')) return false;
  return tag.front() != '-' && tag.back() != '-';
}

constexpr std::string_view an_offset = "+01:00";

bool is_offset(std::string_view text) {
  return text.size() == an_offset.size() && parse_moment("2026-01-01T00:00" + std::string{text}).has_value();
}

}  // namespace

void PlanReader::travel(const Item& item) {
  if (!item) return;
  Fields fields{item};
  const Item offset = fields.need("homeOffset");
  if (offset && (offset.node->kind != Node::Kind::string || !is_offset(offset.node->text))) offset.refuse(Reason::wrongType, an_offset);
  if (const Item languages = fields.need("languages")) {
    const Elements list{languages, 1, figures::most_languages};
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Item language = list[i];
      if (language.node->kind != Node::Kind::string || !is_language(language.node->text)) language.refuse(Reason::wrongType, "en, pt-BR");
    }
  }
  fields.finish();
}

Plan read_plan(const Node& node, std::string_view path, Refusals& refusals) { return PlanReader{node, path, refusals}.read(); }

}  // namespace stopgap::json
