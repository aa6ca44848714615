// A plan from its text. The blocks are read in the order of the contract; what contradicts across blocks is checked at the
// end, from the numbers that were themselves good, so that one slip does not hide another.
#include "json/fields.hpp"
#include "json/read.hpp"
#include "json/sha256.hpp"
#include "json/words.hpp"

namespace stopgap::json {
namespace {

// Numbers of several blocks that have to agree with each other, with the places they stand at.
struct Compared {
  std::optional<Number> very_low, below, carbohydrate_only_below, middle, trigger, ceiling;
  std::optional<Number> first_look, second_look;
  std::optional<Number> share_of_daily, rolling_share;
  std::optional<Number> act_from;
  std::vector<Number> columns, row_edges;
  bool columns_good = false, rows_good = false;
};

class PlanReader {
 public:
  PlanReader(const Node& node, std::string_view path, Refusals& refusals)
      : node_(node), path_(path), refusals_(refusals), refused_before_(refusals.count()) {}
  Plan read();

 private:
  void head(Fields& fields);
  void person(const Item& item);
  void agreement(const Item& item);
  void insulins(Fields& fields);
  void devices(Fields& fields);
  void pump(const Item& item);
  void day_values(const Item& item);
  void high(const Item& item);
  void ketones(const Item& item);
  void columns(const Item& item);
  void rows(const Item& item);
  void row(const Item& item, KetoneRow& row, std::optional<Number>& from);
  void strip_words(const Item& rows_item);
  void limits(const Item& item);
  void squaring(const Item& item);
  void off_pump(const Item& item);
  void low(const Item& item);
  void contacts(const Item& item);
  void school(const Item& item);
  void travel(const Item& item);

  void check_levels();
  void check_edges();
  void check_rest();
  void contradict(std::string_view place, std::string_view got, std::string accepted) {
    refusals_.add(std::string{path_} + std::string{place}, Reason::contradiction, std::string{got}, std::move(accepted));
  }

  // A number whose range depends on the plan's unit; while that is not known, only its kind can be judged.
  std::optional<Number> in_unit(const Item& item, const figures::GlucoseRange& range) const {
    if (unit_known_) return number(item, range.in(plan_.unit));
    if (item && item.node->kind != Node::Kind::number) item.refuse(Reason::wrongType, range_text(range.mmol));
    return std::nullopt;
  }
  Glucose level(const Number& read) const {
    return plan_.unit == GlucoseUnit::mmol ? Glucose::mmol_tenths(read.count) : Glucose::mg(read.count);
  }
  void fill_level(Glucose& target, const std::optional<Number>& read) const {
    if (read) target = level(*read);
  }
  GlucoseFall fall(const std::optional<Number>& read) const {
    if (!read) return {};
    return plan_.unit == GlucoseUnit::mmol ? GlucoseFall::mmol_tenths(read->count) : GlucoseFall::mg(read->count);
  }
  int level_digits() const { return figures::level_range.in(plan_.unit).digits; }

  Cell cell(const Item& item, bool as_fallback) const;
  InsulinKind insulin(const Item& item, const figures::Range& action, int action_digits, bool long_acting) const;
  template <class Value, class Read>
  void schedule(const Item& item, Scheduled<Value>& target, Read read) const;

  const Node& node_;
  std::string_view path_;
  Refusals& refusals_;
  std::size_t refused_before_;
  bool unit_known_ = false;
  Plan plan_;
  Compared compared_;
};

Insulin tenths(std::int64_t count) { return Insulin::hundredths(count * 10); }

std::optional<std::string> some_name(const Item& item, bool may_be_empty) {
  return text(item, may_be_empty ? 0 : 1, figures::title_length);
}

void names(const Item& item, std::vector<std::string>& target) {
  const Elements list{item, 1, figures::most_school_names};
  for (std::size_t i = 0; i < list.size(); ++i)
    if (auto one = name(list[i])) target.push_back(std::move(*one));
}

// What is given twice in a list of orders is a slip of the pen, and nobody can say which one was meant.
template <class Value>
bool given_before(const std::vector<Value>& values, const Value& value) {
  for (const Value& one : values)
    if (one == value) return true;
  return false;
}

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
      text(one.need("path"), 1, figures::path_length);
      text(one.need("reason"), 1, figures::sentence_length);
      one.finish();
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

// One cell: the word "none", or an object with the one key that says how the dose is worked out.
Cell PlanReader::cell(const Item& item, bool as_fallback) const {
  Cell made;
  const auto refuse = [&] { item.refuse(Reason::wrongType, joined(words::cells.data(), words::cells.size())); };
  const Node& node = *item.node;
  if (node.kind == Node::Kind::string && node.text == words::cells[0]) return made;
  if (node.kind != Node::Kind::object || node.members.empty()) { refuse(); return made; }
  std::size_t kind = 0;
  for (std::size_t i = 1; i < words::cells.size(); ++i)
    if (node.find(words::cells[i]) != nullptr) { kind = i; break; }
  made.kind = static_cast<Cell::Kind>(kind);
  const bool has_fallback = node.find("fallback") != nullptr;
  const bool times = made.kind == Cell::Kind::timesCorrection;
  // A fallback stands in where the correction is nothing, so it cannot itself be a multiple of the correction.
  const bool other_shape = kind == 0 || (has_fallback && !times) || node.members.size() > (times ? 2u : 1u) ||
                           (times && !has_fallback && node.members.size() > 1) || (times && as_fallback);
  if (other_shape) { refuse(); return made; }
  Fields fields{item};
  switch (made.kind) {
    case Cell::Kind::none: break;
    case Cell::Kind::shareOfDaily:
      fill(made.share, number(fields.need(words::cells[kind]), figures::share_range), Share::thousandths);
      break;
    case Cell::Kind::perKg:
      fill(made.per_kg, number(fields.need(words::cells[kind]), figures::per_kg_range), InsulinPerKg::unit_thousandths);
      break;
    case Cell::Kind::timesCorrection:
      fill(made.times, number(fields.need(words::cells[kind]), figures::times_correction_range),
           [](std::int64_t hundredths) { return Share::thousandths(hundredths * 10); });
      if (const Item fallback = fields.need("fallback")) made.fallback.push_back(cell(fallback, true));
      break;
    case Cell::Kind::addUnits: fill(made.add, number(fields.need(words::cells[kind]), figures::add_units_range), tenths); break;
  }
  return made;
}

void PlanReader::columns(const Item& item) {
  if (!item) return;
  const Elements list{item, 1, figures::most_columns};
  compared_.columns_good = list.usable();
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto edge = in_unit(list[i], figures::ceiling_range);
    if (!edge) { compared_.columns_good = false; continue; }
    if (i == 0 && edge->count != 0) list[i].refuse(Reason::contradiction, "0");
    if (!compared_.columns.empty() && edge->count <= compared_.columns.back().count) list[i].refuse(Reason::notAscending, {});
    compared_.columns.push_back(*edge);
    plan_.ketones.columns.push_back(level(*edge));
  }
}

void PlanReader::row(const Item& item, KetoneRow& row, std::optional<Number>& from) {
  Fields fields{item};
  from = number(fields.need("from"), figures::ketone_edge_range);
  fill(row.from, from, Ketones::mmol_tenths);
  if (const Item urine = fields.may("urine")) {
    const Elements list{urine, 0, words::strip_words.size()};
    for (std::size_t i = 0; i < list.size(); ++i)
      if (const auto strip = word<StripWord>(list[i], words::strip_words)) row.urine.push_back(*strip);
  }
  if (const Item cells = fields.need("cells")) {
    const Elements list{cells, 0, figures::most_columns};
    for (std::size_t i = 0; i < list.size(); ++i) row.cells.push_back(cell(list[i], false));
    if (list.usable() && compared_.columns_good && list.size() != compared_.columns.size())
      fields.refuse("cells", Reason::contradiction, std::to_string(list.size()), std::to_string(compared_.columns.size()));
  }
  if (const auto repeat = number(fields.may("repeatHours"), figures::repeat_hours_range))
    row.repeat = Duration::hour_hundredths(repeat->count);
  fill(row.call, word<Call>(fields.need("call"), words::calls));
  fields.finish();
}

void PlanReader::rows(const Item& item) {
  if (!item) return;
  const Elements list{item, 1, figures::most_rows};
  compared_.rows_good = list.usable();
  for (std::size_t i = 0; i < list.size(); ++i) {
    KetoneRow made;
    std::optional<Number> from;
    row(list[i], made, from);
    plan_.ketones.rows.push_back(std::move(made));
    if (!from) { compared_.rows_good = false; continue; }
    Item from_item = list[i];
    const Place row_place = from_item.place;
    from_item = {from_item.node->find("from"), {&row_place, "from", 0, false}, &refusals_};
    if (i == 0 && from->count != 0) from_item.refuse(Reason::contradiction, "0.0");
    if (!compared_.row_edges.empty() && from->count <= compared_.row_edges.back().count) from_item.refuse(Reason::notAscending, {});
    compared_.row_edges.push_back(*from);
  }
  if (list.usable()) strip_words(item);
}

// Strips are read by word, so either no row names one or each of the five words leads to exactly one row, worse words to
// rows no better. A word left out would leave somebody with a wet strip and no answer.
void PlanReader::strip_words(const Item& rows_item) {
  const auto& rows = plan_.ketones.rows;
  bool any = false;
  for (const Node& node : rows_item.node->items) any = any || node.find("urine") != nullptr;
  if (!any) return;
  const std::string path = pointer_of(rows_item.place);
  SetOf<StripWord> found;
  std::optional<StripWord> worst;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string place = path + "/" + std::to_string(i) + "/urine";
    if (rows_item.node->items[i].kind == Node::Kind::object && rows_item.node->items[i].find("urine") == nullptr)
      refusals_.add(place, Reason::missing);
    std::optional<StripWord> worst_here;
    for (std::size_t j = 0; j < rows[i].urine.size(); ++j) {
      const StripWord strip = rows[i].urine[j];
      const std::string word_place = place + "/" + std::to_string(j);
      const std::string typed{words::strip_words[static_cast<std::size_t>(strip)]};
      if (found.has(strip)) refusals_.add(word_place, Reason::contradiction, typed);
      else if (worst && strip < *worst) refusals_.add(word_place, Reason::notAscending, typed);
      found.add(strip);
      if (!worst_here || *worst_here < strip) worst_here = strip;
    }
    if (worst_here && (!worst || *worst < *worst_here)) worst = worst_here;
  }
  for (std::size_t i = 0; i < words::strip_words.size(); ++i)
    if (!found.has(static_cast<StripWord>(i))) refusals_.add(path, Reason::contradiction, {}, std::string{words::strip_words[i]});
}

void PlanReader::ketones(const Item& item) {
  if (!item) return;
  Fields fields{item};
  if (!fields.usable()) return;
  Plan::KetoneTable& table = plan_.ketones;
  fill(table.test, word<KetoneTest>(fields.need("test"), words::ketone_tests));
  compared_.act_from = number(fields.need("actFrom"), figures::ketone_edge_range);
  fill(table.act_from, compared_.act_from, Ketones::mmol_tenths);
  fill(table.expected_fall, number(fields.need("expectedFall"), figures::ketone_fall_range), KetoneFall::mmol_tenths);
  columns(fields.need("columns"));
  fill(table.combine, word<Combine>(fields.need("combine"), words::combines));
  rows(fields.need("rows"));
  if (const Item hi = fields.need("hi")) table.hi = cell(hi, false);
  if (const Item any_glucose = fields.may("anyGlucose")) table.any_glucose = cell(any_glucose, false);
  else if (plan_.person.pregnant || plan_.person.sglt2_inhibitor) fields.refuse_missing("anyGlucose");
  compared_.carbohydrate_only_below = in_unit(fields.need("carbohydrateOnlyBelow"), figures::level_range);
  fill_level(table.carbohydrate_only_below, compared_.carbohydrate_only_below);
  fill(table.carbohydrate, number(fields.need("carbohydrateGrams"), figures::ketone_grams_range), Carbohydrate::grams);
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

bool is_language(std::string_view tag) {
  if (tag.size() < 2 || tag.size() > figures::language_length) return false;
  for (const char c : tag)
    if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-')) return false;
  return tag.front() != '-' && tag.back() != '-';
}

bool is_offset(std::string_view text) {
  return text.size() == 6 && parse_moment("2026-01-01T00:00" + std::string{text}).has_value();
}

void PlanReader::travel(const Item& item) {
  if (!item) return;
  Fields fields{item};
  const Item offset = fields.need("homeOffset");
  if (offset && (offset.node->kind != Node::Kind::string || !is_offset(offset.node->text))) offset.refuse(Reason::wrongType, "+01:00");
  if (const Item languages = fields.need("languages")) {
    const Elements list{languages, 1, figures::most_languages};
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Item language = list[i];
      if (language.node->kind != Node::Kind::string || !is_language(language.node->text)) language.refuse(Reason::wrongType, "en, de, pt-BR");
    }
  }
  fields.finish();
}

// veryLow < below < carbohydrateOnlyBelow <= middle <= trigger <= dosingCeiling, each broken one at the later field.
void PlanReader::check_levels() {
  if (!unit_known_) return;
  struct Step {
    const std::optional<Number>& before;
    const std::optional<Number>& after;
    std::string_view place;
    std::int64_t least_above;  // 1 where the two may not be equal
    const figures::GlucoseRange& range;
  };
  const Step steps[] = {
      {compared_.very_low, compared_.below, "/low/below", 1, figures::level_range},
      {compared_.below, compared_.carbohydrate_only_below, "/ketones/carbohydrateOnlyBelow", 1, figures::level_range},
      {compared_.carbohydrate_only_below, compared_.middle, "/high/middle", 0, figures::level_range},
      {compared_.middle, compared_.trigger, "/high/trigger", 0, figures::trigger_range},
      {compared_.trigger, compared_.ceiling, "/limits/dosingCeiling", 0, figures::ceiling_range}};
  for (const Step& step : steps) {
    if (!step.before || !step.after || step.after->count >= step.before->count + step.least_above) continue;
    figures::Range accepted = step.range.in(plan_.unit);
    accepted.lowest = step.before->count + step.least_above;
    contradict(step.place, step.after->typed, range_text(accepted));
  }
}

void PlanReader::check_edges() {
  const auto is_among = [](const std::vector<Number>& edges, std::int64_t count) {
    for (const Number& edge : edges)
      if (edge.count == count) return true;
    return false;
  };
  const auto listed = [](const std::vector<Number>& edges, int digits) {
    std::string out;
    for (const Number& edge : edges) out += (out.empty() ? "" : ", ") + decimal_text(edge.count, digits);
    return out;
  };
  // Both are counted in the same steps: middle, trigger and column edges share their last decimal.
  if (compared_.columns_good && compared_.middle && !is_among(compared_.columns, compared_.middle->count))
    contradict("/high/middle", compared_.middle->typed, listed(compared_.columns, level_digits()));
  if (compared_.columns_good && compared_.trigger && !is_among(compared_.columns, compared_.trigger->count))
    contradict("/high/trigger", compared_.trigger->typed, listed(compared_.columns, level_digits()));
  if (compared_.rows_good && compared_.act_from && !is_among(compared_.row_edges, compared_.act_from->count))
    contradict("/ketones/actFrom", compared_.act_from->typed, listed(compared_.row_edges, figures::ketone_edge_range.digits));
}

void PlanReader::check_rest() {
  const auto at_least = [this](std::string_view place, const std::optional<Number>& after, const std::optional<Number>& before,
                               std::int64_t least_above, figures::Range range) {
    if (!before || !after || after->count >= before->count + least_above) return;
    range.lowest = before->count + least_above;
    contradict(place, after->typed, range_text(range));
  };
  at_least("/high/secondLook", compared_.second_look, compared_.first_look, 1, figures::look_minutes_range);
  at_least("/limits/rollingShare", compared_.rolling_share, compared_.share_of_daily, 0, figures::rolling_share_range);
}

}  // namespace

Plan read_plan(const Node& node, std::string_view path, Refusals& refusals) { return PlanReader{node, path, refusals}.read(); }

}  // namespace stopgap::json
