// A plan block by block, in the order of the contract; what contradicts across blocks is checked at the end, from the numbers
// that were themselves good, so that one slip does not hide another. Errors: refusals, as in json/read.hpp.
#pragma once
#include "json/fields.hpp"
#include "json/words.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

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

inline Insulin tenths(std::int64_t count) { return Insulin::hundredths(count * 10); }

// What is given twice in a list of orders is a slip of the pen, and nobody can say which one was meant.
template <class Value>
bool given_before(const std::vector<Value>& values, const Value& value) {
  for (const Value& one : values)
    if (one == value) return true;
  return false;
}

}  // namespace stopgap::json
