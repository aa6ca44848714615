// The rows of a store against their seals: which of them are the record, which are damaged, which are missing. Pure reading; what
// follows for a dose is gate REC.
// Source: the rules of the record in doubt (ours). Edge: a damaged row is of no concern for a dose only where a sound row on
// either side of it is older than every dose that could still count; at either end of the store it always is.
// Errors: a request of another shape is refused. A row is never a reason to refuse: it is told as damaged.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>
#include "json/text.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

// As a row was found, whatever of it could be read. `place` counts from 1.
struct StoredRow {
  std::optional<std::string> id, text, before, seal;
  std::int64_t place = 0;
};
struct RecordSeal {
  std::int64_t count = 0;
  std::string seal;
};
struct StoredRecord {
  std::string owner;  // the first seal is taken with it
  std::vector<StoredRow> rows;
  std::optional<RecordSeal> seal;  // of the whole record
  bool seal_lost = false;          // one stood there and cannot be read
};

enum class Damage : std::uint8_t { unreadable, changed, outOfPlace, unknown, missing };
struct DamagedRow {
  std::optional<std::size_t> row;  // none where it is missing
  Damage damage = Damage::missing;
  bool reads = false;              // its text is what was written, only its place is wrong
  Refusals why;                    // of an entry that this version cannot read
};
struct RecordCheck {
  bool sealed = false;
  bool in_doubt = false;
  std::vector<DamagedRow> damaged;
  Duration rapid;                       // how far back an injection still counts
  std::optional<Duration> long_acting;  // likewise, where the plan has it
};

StoredRecord read_stored_record(const Node& request, Refusals& refusals);
// Without a plan every damaged row counts, however old.
RecordCheck check_record(const StoredRecord& stored, const Plan* plan, Instant now);
std::string write_record_check(const RecordCheck& check);

// The seals of entries that come after `before`.
std::string write_seals(const Node& request, Refusals& refusals);

// Whether others are the same person as one: the name, blanks and capitals forgiven, and the day of birth. Demo plans belong to nobody.
std::string write_same_person(const Node& request, Refusals& refusals);

}  // namespace stopgap::json
