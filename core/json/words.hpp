// The words of the JSON contract, each list in the order of the enum it stands for: reading and writing share them.
#pragma once
#include <array>
#include <string_view>

namespace stopgap::json::words {

template <std::size_t count>
using List = std::array<std::string_view, count>;

inline constexpr List<2> glucose_units{"mmol/L", "mg/dL"};
inline constexpr List<2> decimal_marks{".", ","};

// Plan.
inline constexpr List<4> plan_statuses{"draft", "agreed", "superseded", "withdrawn"};
inline constexpr List<3> house_rules{"rollingShare", "matchedCarbohydrate", "extraNotReduced"};
inline constexpr List<2> tubings{"tubed", "tubeless"};
inline constexpr List<3> automations{"none", "basal", "basalAndCorrections"};
inline constexpr List<3> ketone_tests{"blood", "urine", "none"};
inline constexpr List<2> combines{"greater", "replace"};
inline constexpr List<3> calls{"none", "team", "emergency"};
inline constexpr List<2> roundings{"down", "nearest"};
inline constexpr List<2> squaring_ways{"offBody", "paused"};
inline constexpr List<5> cells{"none", "shareOfDaily", "perKg", "timesCorrection", "addUnits"};
inline constexpr List<2> relations{"team", "home"};
inline constexpr List<2> school_calculations{"tableOnly", "allowed"};

// Readings. MeterWord and KetoneKind begin with "number" and "blood", so their words stand one place later.
inline constexpr List<2> meter_words{"HI", "LO"};
inline constexpr List<2> read_from{"finger", "sensor"};
inline constexpr List<5> strip_words{"negative", "trace", "small", "moderate", "large"};
inline constexpr List<3> ketones_unknown{"notYet", "noStrips", "error"};

// Record and situation.
inline constexpr List<21> event_kinds{"incident", "glucose",   "ketones",    "sign", "seen",  "doseShown", "doseRefused",
                                      "injection", "pumpDose", "offBody",    "mistake", "changed", "automation", "pump",
                                      "carbs",    "look",      "call",       "order", "alarmSet", "note",     "strike"};
inline constexpr List<9> signs{"drowsy",     "confused",  "fastBreathing", "cannotKeepFluid", "vomitedAgain",
                               "vomitedOnce", "bellyPain", "fitting",       "cannotSwallow"};
inline constexpr List<8> faults{"leak",           "blood",        "bentCannula",   "cameOut",
                                "occlusionAlarm", "outOfInsulin", "heatedInsulin", "pumpDead"};
inline constexpr List<3> changed{"set", "reservoir", "insulin"};
inline constexpr List<2> insulins{"rapid", "long"};
inline constexpr List<2> devices{"syringe", "pen"};
inline constexpr List<3> pump_purposes{"correction", "meal", "automatic"};
inline constexpr List<3> tubing_ends{"sink", "body", "unsure"};
inline constexpr List<4> mistakes{"wrongInsulin", "tooManyUnits", "twice", "offBodyIntoBody"};
inline constexpr List<2> incident_states{"opened", "closed"};
inline constexpr List<2> automation_states{"paused", "on"};
inline constexpr List<2> pump_states{"off", "on"};
inline constexpr List<2> look_at{"glucose", "ketones"};
inline constexpr List<3> call_to{"team", "emergency", "home"};
inline constexpr List<2> viewers{"person", "school"};

}  // namespace stopgap::json::words
