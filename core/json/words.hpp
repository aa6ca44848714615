// The words of the JSON contract, each list in the order of the enum it stands for: reading and writing share them.
#pragma once
#include <array>
#include <string_view>

namespace stopgap::json::words {

inline constexpr std::array<std::string_view, 2> glucose_units{"mmol/L", "mg/dL"};
inline constexpr std::array<std::string_view, 2> decimal_marks{".", ","};

// Plan.
inline constexpr std::array<std::string_view, 4> plan_statuses{"draft", "agreed", "superseded", "withdrawn"};
inline constexpr std::array<std::string_view, 3> house_rules{"rollingShare", "matchedCarbohydrate", "extraNotReduced"};
inline constexpr std::array<std::string_view, 2> tubings{"tubed", "tubeless"};
inline constexpr std::array<std::string_view, 3> automations{"none", "basal", "basalAndCorrections"};
inline constexpr std::array<std::string_view, 3> ketone_tests{"blood", "urine", "none"};
inline constexpr std::array<std::string_view, 2> combines{"greater", "replace"};
inline constexpr std::array<std::string_view, 3> calls{"none", "team", "emergency"};
inline constexpr std::array<std::string_view, 2> roundings{"down", "nearest"};
inline constexpr std::array<std::string_view, 2> squaring_ways{"offBody", "paused"};
inline constexpr std::array<std::string_view, 5> cells{"none", "shareOfDaily", "perKg", "timesCorrection", "addUnits"};
inline constexpr std::array<std::string_view, 2> relations{"team", "home"};
inline constexpr std::array<std::string_view, 2> school_calculations{"tableOnly", "allowed"};

// Paper. The languages a stranger's side is written in.
inline constexpr std::array<std::string_view, 2> papers{"a4", "letter"};
inline constexpr std::array<std::string_view, 12> travel_languages{"es", "fr", "de", "it", "pt", "nl", "pl", "tr", "ar", "zh-Hans", "ja", "hi"};

// Readings. MeterWord and KetoneKind begin with "number" and "blood", so their words stand one place later.
inline constexpr std::array<std::string_view, 2> meter_words{"HI", "LO"};
inline constexpr std::array<std::string_view, 2> read_from{"finger", "sensor"};
inline constexpr std::array<std::string_view, 5> strip_words{"negative", "trace", "small", "moderate", "large"};
inline constexpr std::array<std::string_view, 3> ketones_unknown{"notYet", "noStrips", "error"};

// Record and situation.
inline constexpr std::array<std::string_view, 22> event_kinds{"incident", "glucose",   "ketones",    "sign", "seen",  "doseShown", "doseRefused",
                                      "injection", "pumpDose", "offBody",    "mistake", "changed", "automation", "pump",
                                      "carbs",    "look",      "call",       "order", "alarmSet", "note",     "expires",    "strike"};
inline constexpr std::array<std::string_view, 9> signs{"drowsy",     "confused",  "fastBreathing", "cannotKeepFluid", "vomitedAgain",
                               "vomitedOnce", "bellyPain", "fitting",       "cannotSwallow"};
inline constexpr std::array<std::string_view, 8> faults{"leak",           "blood",        "bentCannula",   "cameOut",
                                "occlusionAlarm", "outOfInsulin", "heatedInsulin", "pumpDead"};
inline constexpr std::array<std::string_view, 3> changed{"set", "reservoir", "insulin"};
inline constexpr std::array<std::string_view, 2> insulins{"rapid", "long"};
inline constexpr std::array<std::string_view, 2> devices{"syringe", "pen"};
inline constexpr std::array<std::string_view, 3> pump_purposes{"correction", "meal", "automatic"};
inline constexpr std::array<std::string_view, 3> tubing_ends{"sink", "body", "unsure"};
inline constexpr std::array<std::string_view, 4> mistakes{"wrongInsulin", "tooManyUnits", "twice", "offBodyIntoBody"};
inline constexpr std::array<std::string_view, 2> incident_states{"opened", "closed"};
inline constexpr std::array<std::string_view, 2> automation_states{"paused", "on"};
inline constexpr std::array<std::string_view, 2> pump_states{"off", "on"};
inline constexpr std::array<std::string_view, 2> look_at{"glucose", "ketones"};
inline constexpr std::array<std::string_view, 3> call_to{"team", "emergency", "home"};
inline constexpr std::array<std::string_view, 4> expires{"vial", "strips", "glucagon", "other"};
inline constexpr std::string_view mis_tap = "misTap";  // the one reason of a strike that a rule reads
inline constexpr std::array<std::string_view, 2> viewers{"person", "school"};

}  // namespace stopgap::json::words
