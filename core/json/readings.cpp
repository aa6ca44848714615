#include "json/readings.hpp"

#include "json/words.hpp"

namespace stopgap::json {
namespace {

std::optional<GlucoseReading> number_reading(Fields& fields) {
  GlucoseReading reading;
  const Item value = fields.need("value");
  const auto unit = word<GlucoseUnit>(fields.need("unit"), words::glucose_units, Reason::wrongUnit);
  const auto from = word<ReadFrom>(fields.need("from"), words::read_from);
  if (!unit) {
    // Without the unit no range is known; what is no number at all can still be said.
    if (value && value.node->kind != Node::Kind::number) value.refuse(Reason::wrongType, "1, 2, 3");
    return std::nullopt;
  }
  const auto read = number(value, figures::glucose_reading_range.in(*unit));
  if (!read || !from) return std::nullopt;
  reading.unit = *unit;
  reading.from = *from;
  reading.value = *unit == GlucoseUnit::mmol ? Glucose::mmol_tenths(read->count) : Glucose::mg(read->count);
  return reading;
}

std::optional<KetoneReading> blood_reading(const Item& item) {
  const std::string accepted = range_text(figures::ketone_reading_range) + ", " + std::string{words::meter_words[0]};
  if (item.node->kind == Node::Kind::string && item.node->text == words::meter_words[0])
    return KetoneReading{KetoneKind::bloodHI, {}, {}};
  if (item.node->kind != Node::Kind::number) {
    item.refuse(item.node->kind == Node::Kind::string ? Reason::outOfRange : Reason::wrongType, accepted);
    return std::nullopt;
  }
  const auto read = number(item, figures::ketone_reading_range);
  if (!read) return std::nullopt;
  return KetoneReading{KetoneKind::blood, Ketones::mmol_tenths(read->count), {}};
}

}  // namespace

std::optional<GlucoseReading> glucose_reading(Fields& fields) {
  if (!fields.has("reading")) return number_reading(fields);
  const Item reading = fields.may("reading");
  if (fields.has("value")) {
    fields.may("value");
    fields.may("unit");
    fields.may("from");
    reading.refuse(Reason::contradiction, {});
    return std::nullopt;
  }
  const auto found = word_index(reading, words::meter_words.data(), words::meter_words.size(), Reason::outOfRange);
  const auto from = word<ReadFrom>(fields.need("from"), words::read_from);
  if (!found || !from) return std::nullopt;
  GlucoseReading made;
  made.word = *found == 0 ? MeterWord::HI : MeterWord::LO;
  made.from = *from;
  return made;
}

std::optional<KetoneReading> ketone_reading(Fields& fields, Unknown unknown) {
  if (!fields.usable()) return std::nullopt;
  const Item blood = fields.may("blood"), urine = fields.may("urine");
  const Item not_known = unknown == Unknown::allowed ? fields.may("unknown") : Item{};
  if (!blood && !urine && !not_known) {
    fields.refuse_missing("blood");
    return std::nullopt;
  }
  if (blood && (urine || not_known)) {
    (urine ? urine : not_known).refuse(Reason::contradiction, {});
    return std::nullopt;
  }
  if (urine && not_known) {
    not_known.refuse(Reason::contradiction, {});
    return std::nullopt;
  }
  if (blood) return blood_reading(blood);
  if (urine) {
    const auto strip = word<StripWord>(urine, words::strip_words);
    if (!strip) return std::nullopt;
    return KetoneReading{KetoneKind::urine, {}, *strip};
  }
  const auto why = word_index(not_known, words::ketones_unknown.data(), words::ketones_unknown.size(), Reason::outOfRange);
  if (!why) return std::nullopt;
  constexpr std::array<KetoneKind, 3> kinds{KetoneKind::notYet, KetoneKind::noStrips, KetoneKind::error};
  return KetoneReading{kinds[*why], {}, {}};
}

std::optional<GlucoseReading> glucose_reading(const Item& item) {
  if (!item) return std::nullopt;
  Fields fields{item};
  if (!fields.usable()) return std::nullopt;
  auto made = glucose_reading(fields);
  fields.finish();
  return made;
}

std::optional<KetoneReading> ketone_reading(const Item& item) {
  if (!item) return std::nullopt;
  Fields fields{item};
  if (!fields.usable()) return std::nullopt;
  auto made = ketone_reading(fields, Unknown::allowed);
  fields.finish();
  return made;
}

std::optional<Insulin> units_of(const Item& item) {
  if (const auto units = number(item, figures::injection_range)) return Insulin::hundredths(units->count);
  return std::nullopt;
}

std::optional<Parts> parts_of(Fields& event, const std::optional<Insulin>& units) {
  const Item item = event.may("parts");
  if (!item) return std::nullopt;
  Fields fields{item};
  const auto rescue = number(fields.need("rescue"), figures::part_range);
  const auto meal = number(fields.need("meal"), figures::part_range);
  const auto basal = number(fields.need("basal"), figures::part_range);
  fields.finish();
  if (!rescue || !meal || !basal) return std::nullopt;
  const Parts parts{Insulin::hundredths(rescue->count), Insulin::hundredths(meal->count), Insulin::hundredths(basal->count)};
  if (units && !(parts.rescue + parts.meal + parts.basal == *units)) {
    const std::int64_t sum = rescue->count + meal->count + basal->count;
    const Fraction wanted = units->in_units() * Fraction{100};
    event.refuse("parts", Reason::contradiction, without_zeros(decimal_text(sum, 2)), without_zeros(decimal_text(wanted.floor(), 2)));
  }
  return parts;
}

}  // namespace stopgap::json
