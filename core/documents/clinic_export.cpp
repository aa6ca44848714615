#include "documents/clinic_export.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/timing.hpp"

namespace stopgap {
namespace {

// An id of ours may hold an underscore, one of theirs a full stop instead. Ours holds no full stop, so no two become one; the
// letter before says whether it is the event itself or a reading that the event carries.
std::string export_id(char role, std::string_view event_id) {
  std::string id{role, '.'};
  for (const char c : event_id) id += c == '_' ? '.' : c;
  return id;
}

// What counts of the record by its last entry, by the ids of the entries.
class Counting {
 public:
  explicit Counting(const History& history) {
    for (const History::Entry& entry : history.entries()) {
      entries_.emplace(entry.event->id, entry);
      if (entry.event->kind == EventKind::strike && !entry.event->mis_tap) reasons_[entry.event->refers_to] = entry.event->text;
    }
  }
  // The entry as it counts: two entries of one needle are one, under the id of one of them.
  const Event* event(const Event& written) const {
    const auto found = entries_.find(written.id);
    return found == entries_.end() ? nullptr : found->second.event;
  }
  ExportStatus status(const Event& written) const {
    const auto found = entries_.find(written.id);
    if (found == entries_.end()) return ExportStatus::in_error;
    return found->second.struck ? ExportStatus::in_doubt : ExportStatus::counts;
  }
  // Why it was struck; nothing for what counts without a doubt.
  std::string_view reason(const Event& written, ExportStatus status) const {
    const auto found = reasons_.find(written.id);
    return status != ExportStatus::counts && found != reasons_.end() ? found->second : std::string_view{};
  }

 private:
  std::unordered_map<std::string_view, History::Entry> entries_;
  std::unordered_map<std::string_view, std::string_view> reasons_;
};

History history_of(const Record& record) {
  return record.events.empty() ? History{} : History::of(record, record.events.back().at.instant);
}

bool is_tested(const KetoneReading& reading) {
  return reading.kind == KetoneKind::blood || reading.kind == KetoneKind::bloodHI || reading.kind == KetoneKind::urine;
}

// Insulin that went in, or may have.
bool goes_in(const Event& event) {
  return event.kind == EventKind::injection || event.kind == EventKind::pumpDose || event.kind == EventKind::mistake ||
         (event.kind == EventKind::offBody && event.tubing_end != TubingEnd::sink);
}

class Export {
 public:
  explicit Export(const Record& record) : record_(record), history_(history_of(record)), counting_(history_) {}

  ClinicExport made() {
    for (const Event& event : record_.events)
      if (event.kind == EventKind::glucose || event.kind == EventKind::ketones) add_reading('e', event);
    events_own_ = out_.readings.size();
    for (const Event& event : record_.events)
      if (goes_in(event)) add_dose(event, counting_.event(event));
    std::stable_sort(out_.readings.begin(), out_.readings.end(), [](const ExportedReading& a, const ExportedReading& b) {
      return a.event->at.instant < b.event->at.instant;
    });
    std::stable_sort(out_.doses.begin(), out_.doses.end(), [](const ExportedDose& a, const ExportedDose& b) {
      return a.event->at.instant < b.event->at.instant;
    });
    out_.history = std::move(history_);
    return std::move(out_);
  }

 private:
  ExportedReading& add_reading(char role, const Event& event) {
    ExportedReading& reading = out_.readings.emplace_back();
    reading.id = export_id(role, event.id);
    reading.event = &event;
    reading.status = counting_.status(event);
    reading.reason = counting_.reason(event, reading.status);
    if (role == 'e') {
      reading.glucose = event.glucose;
      reading.ketones = event.ketones;
    }
    return reading;
  }

  // The latest reading of the record at or shortly before this moment that is the same.
  template <class Same>
  const ExportedReading* known(Instant at, Duration span, Same same) const {
    const auto begin = out_.readings.begin(), end = begin + static_cast<std::ptrdiff_t>(events_own_);
    auto place = std::partition_point(begin, end, [&](const ExportedReading& reading) { return reading.event->at.instant <= at; });
    while (place != begin && at - (place - 1)->event->at.instant <= span) {
      --place;
      if (place->status == ExportStatus::counts && same(*place)) return &*place;
    }
    return nullptr;
  }

  // `counted`: the entry as it counts, with the units and the time of the needle where two entries are one; nothing where it does not.
  void add_dose(const Event& written, const Event* counted) {
    const Event& event = counted ? *counted : written;
    ExportedDose dose;
    dose.id = export_id('e', event.id);
    dose.event = &event;
    dose.status = counting_.status(event);
    const bool in_doubt = (event.kind == EventKind::injection && !event.sure) ||
                          (event.kind == EventKind::offBody && event.tubing_end == TubingEnd::unsure);
    const bool joined = counted && counted != &written;
    if (dose.status == ExportStatus::counts && (in_doubt || joined)) dose.status = ExportStatus::in_doubt;
    dose.reason = counting_.reason(event, dose.status);
    if (event.glucose) {
      const auto* there = known(event.at.instant, figures::glucose_reading_lasts.value, [&](const auto& one) { return one.glucose == event.glucose; });
      if (there) {
        dose.decided_on.push_back(there->id);
      } else {
        ExportedReading& carried = add_reading('g', event);
        carried.glucose = event.glucose;
        dose.decided_on.push_back(carried.id);
      }
    }
    if (event.ketones && is_tested(*event.ketones)) {
      const auto* there = known(event.at.instant, figures::ketone_reading_lasts.value, [&](const auto& one) { return one.ketones == event.ketones; });
      if (there) {
        dose.decided_on.push_back(there->id);
      } else {
        ExportedReading& carried = add_reading('k', event);
        carried.ketones = event.ketones;
        dose.decided_on.push_back(carried.id);
      }
    }
    out_.doses.push_back(std::move(dose));
  }

  const Record& record_;
  History history_;
  Counting counting_;
  ClinicExport out_;
  std::size_t events_own_ = 0;
};

}  // namespace

ClinicExport clinic_export(const Record& record) { return Export{record}.made(); }

}  // namespace stopgap
