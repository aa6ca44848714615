#include "json/read_off_pump.hpp"

#include "json/fields.hpp"
#include "json/read_situation.hpp"
#include "json/readings.hpp"
#include "json/words.hpp"

namespace stopgap::json {

OffPumpQuestion read_off_pump(const Node& request, const Plan& plan, Refusals& refusals) {
  const std::size_t refused_before = refusals.count();
  OffPumpQuestion question;
  Fields fields{root_item(request, "", refusals)};
  fields.need("plan");
  fields.need("record");
  const auto now = moment(fields.need("now"));
  if (now) question.now = *now;
  if (const auto hours = number(fields.may("expectedHours"), figures::expected_hours_range))
    question.expected = Duration::hour_hundredths(hours->count);
  if (const Item item = fields.may("asleepUntil")) {
    const auto until = moment(item);
    if (until && now && until->instant <= now->instant) item.refuse(Reason::contradiction, text_of(now->instant, now->offset));
    if (until) question.asleep_until = until->instant;
  }
  if (const auto carbs = number(fields.may("carbs"), figures::carbs_range)) question.carbs = Carbohydrate::grams(carbs->count);
  question.glucose = situation_glucose(fields.may("glucose"));
  if (const auto none = flag(fields.may("noLongActing"))) question.no_long_acting = *none;
  const auto device = [&](std::string_view key) {
    const auto with = word<DeviceKind>(fields.may(key), words::devices);
    if (with && refused_before == 0) check_device(plan, *with, key, fields);
    return with;
  };
  fill(question.no_meter, flag(fields.may("noMeter")));
  fill(question.wakes, flag(fields.may("wakes")));
  question.not_before = day(fields.may("notBefore"));
  fill(question.record_in_doubt, flag(fields.may("recordInDoubt")));
  question.with = device("with");
  question.long_with = device("longActingWith");
  if (const auto zones = number(fields.may("zonesEast"), figures::zones_east_range)) question.zones_east = zones->count;
  fields.finish();
  return question;
}

PartsAsked read_parts_given(const Node& request, Refusals& refusals) {
  PartsAsked asked;
  Fields fields{root_item(request, "", refusals)};
  if (const auto units = units_of(fields.need("units"))) asked.units = *units;
  if (const Item item = fields.need("shown")) {
    Fields shown{item};
    if (!shown.has("parts")) shown.refuse_missing("parts");
    if (const auto parts = parts_of(shown, units_of(shown.need("units")))) asked.shown = *parts;
    shown.finish();
  }
  fields.finish();
  return asked;
}

}  // namespace stopgap::json
