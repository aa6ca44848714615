#include "compare.hpp"

#include <algorithm>
#include <string_view>

namespace stopgap {
namespace {

using json::Node;

// The keys of a plan as its format prints them, outer and inner ones in one row: within each object they stand in order.
constexpr std::string_view format_order[] = {
    "format", "version", "id", "revision", "title",
    "person", "name", "born", "weightKg", "pregnant", "sglt2Inhibitor", "measuredOn",
    "agreement", "status", "by", "role", "on", "reviewBy", "graceDays", "houseRules", "retyped", "path", "reason", "finding",
    "glucoseUnit", "decimalMark",
    "rapid", "longActing", "unitsPerMl", "actionHours", "onsetHours", "inUseDays",
    "syringe", "pen", "capacity", "pump", "tubing", "automation", "step",
    "dailyTotal", "day", "correctionFactor", "carbohydrateRatio", "target", "basal",
    "high", "trigger", "middle", "firstLook", "secondLook",
    "ketones", "test", "actFrom", "expectedFall", "automationMinutes", "looksAfterInjection",
    "columns", "combine", "rows", "from", "value", "urine", "cells", "repeatHours", "call",
    "hi", "anyGlucose", "shareOfDaily", "perKg", "timesCorrection", "addUnits", "fallback", "carbohydrateOnlyBelow", "carbohydrateGrams",
    "limits", "singleDose", "rollingShare", "lockHours", "dosesBeforeCall", "dosingCeiling", "rounding",
    "squaring", "ways", "preferred", "pauseHours",
    "offPump", "longActingFactor", "parts", "cutoverHours", "bridgeHours", "reducedBasalShare",
    "low", "below", "veryLow", "grams", "recheckMinutes", "glucagon",
    "contacts", "relation", "phone", "when", "emergencyNumber",
    "school", "prescriber", "ordersExpire", "mayInject", "calculation", "callFirstAbove", "staff", "storage", "nurseReviewedOn",
    "travel", "homeOffset", "languages", "notes"};

std::size_t place_of(std::string_view key) {
  const auto* found = std::find(std::begin(format_order), std::end(format_order), key);
  return static_cast<std::size_t>(found - std::begin(format_order));
}

std::vector<std::string_view> keys_of(const Node* before, const Node* after) {
  std::vector<std::string_view> keys;
  for (const Node* node : {before, after}) {
    if (!node) continue;
    for (const auto& [key, value] : node->members)
      if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  }
  std::stable_sort(keys.begin(), keys.end(), [](std::string_view a, std::string_view b) { return place_of(a) < place_of(b); });
  return keys;
}

bool holds_others(const Node* node) { return node && (!node->items.empty() || !node->members.empty()); }

// A text without its quotes; a number, true or false, and an empty list as the fingerprint writes them.
std::string text_of(const Node& node) { return node.kind == Node::Kind::string ? node.text : json::canonical(node); }

class Comparison {
 public:
  std::vector<PlanChange> changes;

  // Either may be missing; what holds other values is told value by value.
  void compare(const std::string& path, const Node* before, const Node* after) {
    if (before && after && before->kind == after->kind && (holds_others(before) || holds_others(after))) return go_into(path, before, after);
    if (holds_others(before) || holds_others(after)) {
      // One of the two is of another kind: all of the old goes, all of the new comes.
      tell_all(path, before, nullptr);
      tell_all(path, nullptr, after);
      return;
    }
    tell(path, before, after);
  }

 private:
  void tell_all(const std::string& path, const Node* before, const Node* after) {
    if (holds_others(before ? before : after)) go_into(path, before, after);
    else tell(path, before, after);
  }

  void tell(const std::string& path, const Node* before, const Node* after) {
    if (!before && !after) return;
    std::string old = before ? text_of(*before) : std::string{}, now = after ? text_of(*after) : std::string{};
    if (before && after && before->kind == after->kind && old == now) return;
    const auto kind = !before ? PlanChange::Kind::added : !after ? PlanChange::Kind::removed : PlanChange::Kind::changed;
    changes.push_back({path, kind, std::move(old), std::move(now)});
  }

  void go_into(const std::string& path, const Node* before, const Node* after) {
    for (const std::string_view key : keys_of(before, after))
      compare(path + "/" + std::string{key}, before ? before->find(key) : nullptr, after ? after->find(key) : nullptr);
    const std::size_t length = std::max(before ? before->items.size() : 0, after ? after->items.size() : 0);
    for (std::size_t i = 0; i < length; ++i)
      compare(path + "/" + std::to_string(i), before && i < before->items.size() ? &before->items[i] : nullptr,
              after && i < after->items.size() ? &after->items[i] : nullptr);
  }
};

}  // namespace

std::vector<PlanChange> compare_plans(const Node& before, const Node& after) {
  Comparison comparison;
  comparison.compare("/plan", &before, &after);
  return std::move(comparison.changes);
}

}  // namespace stopgap
