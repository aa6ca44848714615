// Why a request was not answered: every reason at once, at most twenty, each with the JSON pointer of its place.
#pragma once
#include <algorithm>
#include <cstdint>
#include <iterator>
#include <string>
#include <vector>

namespace stopgap {

enum class Reason : std::uint8_t {
  notJson, tooLarge, tooDeep, unknownKey, duplicateKey, missing, wrongType, wrongUnit, outOfRange, tooPrecise,
  notAscending, duplicateId, contradiction, newerFormat, fingerprintMismatch
};

struct Refusal {
  std::string path;
  Reason reason = Reason::notJson;
  std::string got;       // as typed, shortened; empty when nothing was there
  std::string accepted;  // what would be accepted, as data ("5.0 to 25.0", "finger, sensor"); may be empty
};

inline constexpr std::size_t most_refusals = 20;

class Refusals {
 public:
  void add(std::string path, Reason reason, std::string got = {}, std::string accepted = {}) {
    // What was written wrongly is never hidden by what is not written yet: the last missing one gives way.
    if (list_.size() == most_refusals && reason != Reason::missing) {
      const auto last = std::find_if(list_.rbegin(), list_.rend(), [](const Refusal& refusal) { return refusal.reason == Reason::missing; });
      if (last != list_.rend()) list_.erase(std::prev(last.base()));
    }
    if (list_.size() < most_refusals) list_.push_back({std::move(path), reason, std::move(got), std::move(accepted)});
  }
  bool empty() const { return list_.empty(); }
  std::size_t count() const { return list_.size(); }
  const std::vector<Refusal>& list() const { return list_; }

 private:
  std::vector<Refusal> list_;
};

}  // namespace stopgap
