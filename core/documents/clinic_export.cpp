#include "documents/clinic_export.hpp"

#include <algorithm>
#include <unordered_map>
#include "figures/timing.hpp"
#include "model/history.hpp"

namespace stopgap {
namespace {

// An id of ours may hold an underscore, one of theirs a full stop instead. Ours holds no full stop, so no two become one; the
// letter before says whether it is the event itself or a reading that the event carries.
std::string export_id(char role, std::string_view event_id) {
  std::string id{role, '.'};
  for (const char c : event_id) id += c == '_' ? '.' : c;
  return id;
}

struct Strikes {
  std::unordered_map<const Event*, bool> counting;  // every event that counts, and whether it is struck all the same
  std::unordered_map<std::string_view, std::string_view> reasons;

  explicit Strikes(const Record& record) {
    if (record.events.empty()) return;
    const History history = History::of(record, record.events.back().at.instant);
    for (const auto& [event, struck] : history.entries()) {
      counting.emplace(event, struck);
      if (event->kind == EventKind::strike) reasons[event->refers_to] = event->text;
    }
  }
  bool struck(const Event& event) const {
    const auto found = counting.find(&event);
    return found == counting.end() || found->second;
  }
  std::string_view reason(const Event& event) const {
    const auto found = reasons.find(event.id);
    return struck(event) && found != reasons.end() ? found->second : std::string_view{};
  }
};

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
  explicit Export(const Record& record) : record_(record), strikes_(record) {}

  ClinicExport made() {
    for (const Event& event : record_.events)
      if (event.kind == EventKind::glucose || event.kind == EventKind::ketones) add_reading('e', event);
    events_own_ = out_.readings.size();
    for (const Event& event : record_.events)
      if (goes_in(event)) add_dose(event);
    std::stable_sort(out_.readings.begin(), out_.readings.end(), [](const ExportedReading& a, const ExportedReading& b) {
      return a.event->at.instant < b.event->at.instant;
    });
    return std::move(out_);
  }

 private:
  ExportedReading& add_reading(char role, const Event& event) {
    ExportedReading& reading = out_.readings.emplace_back();
    reading.id = export_id(role, event.id);
    reading.event = &event;
    reading.struck = strikes_.struck(event);
    reading.reason = strikes_.reason(event);
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
      if (!place->struck && same(*place)) return &*place;
    }
    return nullptr;
  }

  void add_dose(const Event& event) {
    ExportedDose dose;
    dose.id = export_id('e', event.id);
    dose.event = &event;
    dose.struck = strikes_.struck(event);
    dose.reason = strikes_.reason(event);
    dose.in_doubt = (event.kind == EventKind::injection && !event.sure) ||
                    (event.kind == EventKind::offBody && event.tubing_end == TubingEnd::unsure);
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
  Strikes strikes_;
  ClinicExport out_;
  std::size_t events_own_ = 0;
};

}  // namespace

ClinicExport clinic_export(const Record& record) { return Export{record}.made(); }

}  // namespace stopgap
