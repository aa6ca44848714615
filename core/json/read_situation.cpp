#include "json/read_situation.hpp"

#include "json/read.hpp"
#include "json/readings.hpp"
#include "json/words.hpp"

namespace stopgap::json {
namespace {

Situation::Ketone read_ketones(const Item& item) {
  Situation::Ketone ketones;
  if (!item) return ketones;
  Fields fields{item};
  fill(ketones.reading, ketone_reading(fields, Unknown::allowed));
  // A test not done has no time.
  if (!fields.has("unknown"))
    if (const auto at = moment(fields.may("at"))) ketones.at = at->instant;
  fields.finish();
  return ketones;
}

std::optional<Situation::Mistake> read_mistake(const Item& item) {
  if (!item) return std::nullopt;
  Fields fields{item};
  Situation::Mistake mistake;
  fill(mistake.what, word<MistakeKind>(fields.need("what"), words::mistakes));
  fill(mistake.insulin, word<InsulinType>(fields.need("insulin"), words::insulins));
  if (const auto units = number(fields.may("units"), figures::injection_range)) mistake.units = Insulin::hundredths(units->count);
  fields.finish();
  return mistake;
}

// What only the plan can contradict: a strip it does not read, a device it does not have, orders it does not hold.
void check_against(const Plan& plan, const Situation& situation, Fields& fields) {
  if (situation.ketones.reading.kind == KetoneKind::urine) {
    bool reads_strips = false;
    for (const KetoneRow& row : plan.ketones.rows) reads_strips = reads_strips || !row.urine.empty();
    if (!reads_strips) {
      Fields ketones{fields.need("ketones")};
      ketones.refuse("urine", Reason::contradiction, words::strip_words[static_cast<std::size_t>(situation.ketones.reading.strip)], "blood");
    }
  }
  if (situation.with) check_device(plan, *situation.with, "with", fields);
  if (situation.viewer == Viewer::school && !plan.school)
    fields.refuse("viewer", Reason::contradiction, words::viewers[1], words::viewers[0]);
}

}  // namespace

void check_device(const Plan& plan, DeviceKind with, std::string_view key, Fields& fields) {
  const bool pen = with == DeviceKind::pen;
  if (!(pen ? plan.pen : plan.syringe)) fields.refuse(key, Reason::contradiction, words::devices[pen ? 1 : 0], words::devices[pen ? 0 : 1]);
}

std::optional<Situation::Glucose> situation_glucose(const Item& item) {
  if (!item) return std::nullopt;
  Fields fields{item};
  if (!fields.usable()) return std::nullopt;
  Situation::Glucose glucose;
  fill(glucose.reading, glucose_reading(fields));
  if (const auto at = moment(fields.may("at"))) glucose.at = at->instant;
  fill(glucose.repeated, flag(fields.may("repeated")));
  fill(glucose.no_meter, flag(fields.may("noMeter")));
  fields.finish();
  return glucose;
}

Situation read_situation(const Node& node, std::string_view path, const Plan& plan, Refusals& refusals) {
  const std::size_t refused_before = refusals.count();
  Situation situation;
  Fields fields{root_item(node, path, refusals)};
  fill(situation.now, moment(fields.need("now")));
  situation.glucose = situation_glucose(fields.may("glucose"));
  situation.ketones = read_ketones(fields.need("ketones"));
  word_set<Sign>(fields.need("signs"), words::signs, 0, situation.signs);
  word_set<Fault>(fields.need("seen"), words::faults, 0, situation.seen);
  if (const auto carbs = number(fields.may("carbs"), figures::carbs_range)) situation.carbs = Carbohydrate::grams(carbs->count);
  fill(situation.unwell, flag(fields.may("unwell")));
  situation.mistake = read_mistake(fields.may("mistake"));
  if (const auto units = number(fields.may("pumpOnBoard"), figures::pump_on_board_range))
    situation.pump_on_board = Insulin::hundredths(units->count);
  fill(situation.pump_offers_nothing, flag(fields.may("pumpOffersNothing")));
  if (const auto since = moment(fields.may("highSince"))) situation.high_since = since->instant;
  if (const auto with = word<DeviceKind>(fields.may("with"), words::devices)) situation.with = *with;
  fill(situation.viewer, word<Viewer>(fields.may("viewer"), words::viewers));
  situation.not_before = day(fields.may("notBefore"));
  fill(situation.record_in_doubt, flag(fields.may("recordInDoubt")));
  // A plan that was refused says nothing about what it holds.
  if (refused_before == 0 && fields.usable()) check_against(plan, situation, fields);
  fields.finish();
  return situation;
}

Moment read_now(const Node& node, std::string_view path, Refusals& refusals) {
  Moment now;
  fill(now, moment(root_item(node, path, refusals)));
  return now;
}

std::optional<std::string> read_title(const Node& node, std::string_view path, Refusals& refusals) {
  return text(root_item(node, path, refusals), 1, figures::title_length);
}

std::optional<Day> read_day(const Node& node, std::string_view path, Refusals& refusals) { return day(root_item(node, path, refusals)); }

std::optional<GlucoseUnit> read_glucose_unit(const Node& node, std::string_view path, Refusals& refusals) {
  return word<GlucoseUnit>(root_item(node, path, refusals), words::glucose_units, Reason::wrongUnit);
}

}  // namespace stopgap::json
