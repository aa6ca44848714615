// The record as the rules see it: which events still count after strikes.
// A struck injection, pump dose, off-body delivery, mistake or shown dose goes on counting until an answered call to the team
// names the strike: a tap must not make insulin disappear. Any other struck event is ignored at once. A strike can be struck.
// A mis-tap is the exception: an injection that answers a shown dose, taken back within a minute, is ignored at once.
// An injection entered instead of one that was wrong is the same needle: until an answered call to the team names the strike of the
// wrong one, the two count once, with the larger units and the later time.
// What lies in the future, by a clock that was wrong then or is wrong now, may warn but not reassure: a change, a pump or
// automation back on, a refused dose, food, the end of an incident, an answered call do not count until their time has come.
#pragma once
#include <cstdint>
#include <deque>
#include <memory>
#include <vector>
#include "model/record.hpp"

namespace stopgap {

class History {
 public:
  struct Entry {
    const Event* event;
    bool struck;  // struck but still counting
  };
  // Leaves out whole kinds of events (a bit a kind), or one event: how the reasons of an advice are found.
  static History of(const Record& record, Instant now, std::uint32_t without_kinds = 0, const Event* without = nullptr);
  // The same, as far as this moment.
  History up_to(Instant last) const;
  const std::vector<Entry>& entries() const { return entries_; }  // ascending by (instant, id)
  // Entries of the record that are one needle with another: one event made of both stands for them among the entries.
  const std::vector<Entry>& said_twice() const { return said_twice_; }
  bool from_the_future() const { return from_the_future_; }       // an event lies later than the clock's tolerance

 private:
  std::vector<Entry> entries_;
  bool from_the_future_ = false;
  std::vector<Entry> said_twice_;
  std::shared_ptr<const std::deque<Event>> joined_;  // events made of two entries of one needle
};

}  // namespace stopgap
