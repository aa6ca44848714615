#include "json/check_record.hpp"

#include <algorithm>
#include <array>
#include <set>
#include "json/answer_words.hpp"
#include "json/fields.hpp"
#include "json/plain_text.hpp"
#include "json/read.hpp"
#include "json/read_event.hpp"
#include "json/seal.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

constexpr std::array<std::string_view, 5> damages{"unreadable", "changed", "outOfPlace", "unknown", "missing"};
constexpr std::size_t most_rows = figures::most_events;
constexpr figures::Range count_range{"count", 0, static_cast<std::int64_t>(most_rows), 0};
constexpr std::string_view demo_plans = "p-demo-";

std::optional<std::string> any_text(const Item& item) {
  if (!item) return std::nullopt;
  if (item.node->kind != Node::Kind::string) {
    item.refuse(Reason::wrongType, "text");
    return std::nullopt;
  }
  return item.node->text;
}

// The time of these is typed and may lie long before the entry was written: they say nothing about when a row beside them was.
bool is_timed_by_hand(EventKind kind) {
  return kind == EventKind::injection || kind == EventKind::pumpDose || kind == EventKind::offBody || kind == EventKind::mistake ||
         kind == EventKind::carbs;
}

struct Sound {
  bool sound = false;
  Event event;
};

class Checker {
 public:
  Checker(const StoredRecord& stored, RecordCheck& check) : stored_(stored), check_(check), rows_(stored.rows.size()) {}

  void run() {
    before_ = stored_.owner;
    for (std::size_t i = 0; i < rows_.size(); ++i) look_at(i);
    if (check_.sealed) look_at_end();
  }

  // How far a damaged row can be from now: both neighbours must be older than the horizon.
  bool is_old(std::size_t gap_after, std::size_t gap_before, Instant horizon) const {
    const auto old = [&](const Sound& row) { return row.event.at.instant < horizon; };
    bool earlier = false, later = false;
    for (std::size_t i = gap_after; i-- > 0;) {
      if (!rows_[i].sound) continue;
      earlier = old(rows_[i]);
      break;
    }
    for (std::size_t i = gap_before; i < rows_.size(); ++i) {
      if (!rows_[i].sound || is_timed_by_hand(rows_[i].event.kind)) continue;
      later = old(rows_[i]);
      break;
    }
    return earlier && later;
  }

  struct Gap { std::size_t after, before; };
  const std::vector<Gap>& gaps() const { return gaps_; }

 private:
  void add(Damage damage, std::optional<std::size_t> row, std::size_t at, bool reads = false, Refusals why = {}) {
    check_.damaged.push_back({row, damage, reads, std::move(why)});
    gaps_.push_back({at, row ? *row + 1 : at});
  }

  void look_at(std::size_t i) {
    const StoredRow& row = stored_.rows[i];
    if (!row.text) { add(Damage::unreadable, i, i); ++skipped_; return; }
    const bool fits = row.before && row.seal && row.place > 0 && seal_of(*row.before, *row.text) == *row.seal;
    if (check_.sealed && !fits) {
      // Whole, but never sealed: written by a release that knows no seals, or it stood somewhere else before.
      const bool bare = !row.before && !row.seal && row.place == 0;
      add(bare ? Damage::outOfPlace : Damage::changed, i, i);
      ++skipped_;
      return;
    }
    Refusals why;
    const Event event = read(row, why);
    if (!why.empty()) {
      add(Damage::unknown, i, i, false, std::move(why));
      if (!check_.sealed) { ++skipped_; return; }
    } else if (!ids_.insert(event.id).second) {
      add(Damage::outOfPlace, i, i);
      ++skipped_;
      return;
    } else {
      rows_[i] = {true, event};
    }
    if (check_.sealed) look_at_place(row, i);
  }

  void look_at_place(const StoredRow& row, std::size_t i) {
    const bool follows = row.place == place_ + 1 && *row.before == before_;
    if (!follows && row.place > place_) {
      // Rows that lie here damaged stand for as many places; the rest is gone.
      const std::int64_t absent = row.place - place_ - 1 - skipped_;
      if (absent > 0 || skipped_ == 0) add(Damage::missing, std::nullopt, i);
    }
    if (row.place <= place_) {
      if (rows_[i].sound) add(Damage::outOfPlace, i, i, true);
      return;
    }
    skipped_ = 0;
    place_ = row.place;
    before_ = *row.seal;
  }

  void look_at_end() {
    if (!stored_.seal) { add(Damage::missing, std::nullopt, rows_.size()); return; }
    if (stored_.seal->count == place_ && stored_.seal->seal == before_) return;
    if (stored_.seal->count - place_ != skipped_ || skipped_ == 0) add(Damage::missing, std::nullopt, rows_.size());
  }

  static Event read(const StoredRow& row, Refusals& why) {
    const Node node = parse(*row.text, why);
    if (!why.empty()) return {};
    Event event = read_event(node, "", why);
    if (why.empty() && row.id && *row.id != event.id) why.add("/id", Reason::contradiction, event.id, *row.id);
    return event;
  }

  const StoredRecord& stored_;
  RecordCheck& check_;
  std::vector<Sound> rows_;
  std::vector<Gap> gaps_;
  std::set<std::string> ids_;
  std::string before_;
  std::int64_t place_ = 0, skipped_ = 0;
};

std::string hours_text(Duration duration) { return without_zeros(decimal_text(duration.in_seconds() * 100 / 3600, 2)); }

}  // namespace

StoredRecord read_stored_record(const Node& request, Refusals& refusals) {
  StoredRecord stored;
  Fields fields{root_item(request, "", refusals)};
  fields.may("plan");
  fields.need("now");
  fill(stored.owner, any_text(fields.need("owner")));
  if (const Item item = fields.may("seal")) {
    Fields seal{item};
    const auto count = number(seal.need("count"), count_range);
    const auto text = any_text(seal.need("seal"));
    if (count && text) stored.seal = RecordSeal{count->count, *text};
    seal.finish();
  }
  if (const auto lost = flag(fields.may("sealLost"))) stored.seal_lost = *lost;
  const Elements rows{fields.need("rows"), 0, most_rows};
  stored.rows.resize(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    Fields row{rows[i]};
    StoredRow& read = stored.rows[i];
    read.id = any_text(row.may("id"));
    read.text = any_text(row.may("text"));
    read.before = any_text(row.may("before"));
    read.seal = any_text(row.may("seal"));
    if (const auto place = number(row.may("place"), count_range)) read.place = place->count;
    row.finish();
  }
  fields.finish();
  return stored;
}

RecordCheck check_record(const StoredRecord& stored, const Plan* plan, Instant now) {
  RecordCheck check;
  check.sealed = stored.seal || stored.seal_lost ||
                 std::any_of(stored.rows.begin(), stored.rows.end(), [](const StoredRow& row) { return row.seal || row.before || row.place > 0; });
  Checker checker{stored, check};
  checker.run();
  if (plan != nullptr) {
    check.rapid = plan->rapid.action + plan->limits.lock;
    if (plan->long_acting) check.long_acting = plan->long_acting->action;
  }
  const Instant horizon = now - std::max(check.rapid, check.long_acting.value_or(Duration{}));
  for (const auto& [after, before] : checker.gaps()) check.in_doubt |= plan == nullptr || !checker.is_old(after, before, horizon);
  // Without the seal of the whole record nobody knows whether later entries stood there.
  check.in_doubt |= check.sealed && !stored.seal;
  return check;
}

std::string write_record_check(const RecordCheck& check) {
  Writer out;
  out.open('{').key("sealed").truth(check.sealed).key("recordInDoubt").truth(check.in_doubt);
  out.key("hours").text(hours_text(check.rapid)).key("longHours");
  if (check.long_acting) out.text(hours_text(*check.long_acting));
  else out.null();
  out.key("damaged").open('[');
  for (const DamagedRow& damaged : check.damaged) {
    out.open('{').key("row");
    if (damaged.row) out.raw(std::to_string(*damaged.row));
    else out.null();
    out.key("damage").text(damages[static_cast<std::size_t>(damaged.damage)]).key("reads").truth(damaged.reads).key("why").open('[');
    for (const Refusal& refusal : damaged.why.list())
      out.open('{').key("path").text(refusal.path).key("reason").text(words::reasons[static_cast<std::size_t>(refusal.reason)]).close('}');
    out.close(']').close('}');
  }
  return out.close(']').close('}').take();
}

std::string write_seals(const Node& request, Refusals& refusals) {
  Fields fields{root_item(request, "", refusals)};
  std::string seal = any_text(fields.may("seal")).value_or(std::string{});
  const Elements entries{fields.need("entries"), 0, most_rows};
  Writer out;
  out.open('{').key("seals").open('[');
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const auto entry = any_text(entries[i]);
    if (entry) out.text(seal = seal_of(seal, *entry));
  }
  fields.finish();
  return out.close(']').close('}').take();
}

std::string write_same_person(const Node& request, Refusals& refusals) {
  struct Person { std::string id, name, born; };
  const auto read = [](const Item& item) {
    Person person;
    Fields fields{item};
    fill(person.id, any_text(fields.need("id")));
    fill(person.name, any_text(fields.need("name")));
    fill(person.born, any_text(fields.need("born")));
    fields.finish();
    return person;
  };
  const auto is_invented = [](const Person& person) { return person.id.starts_with(demo_plans); };
  Fields fields{root_item(request, "", refusals)};
  const Person one = read(fields.need("person"));
  const std::string name = folded_name(one.name);
  const Elements others{fields.need("others"), 0, most_rows};
  Writer out;
  out.open('{').key("same").open('[');
  for (std::size_t i = 0; i < others.size(); ++i) {
    const Person other = read(others[i]);
    out.truth(other.id == one.id || (!is_invented(one) && !is_invented(other) && other.born == one.born && folded_name(other.name) == name));
  }
  fields.finish();
  return out.close(']').close('}').take();
}

}  // namespace stopgap::json
