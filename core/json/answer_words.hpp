// The words of answers, each list in the order of the enum it stands for.
#pragma once
#include "json/words.hpp"

namespace stopgap::json::words {

inline constexpr std::array<std::string_view, 22> rules{"LWE", "EMR", "TOO", "LOW", "FAL", "PLN", "FNG", "TST", "NOS", "CAL", "ANY",
                                "DWN", "KET", "EAT", "INJ", "WAI", "PMP", "SGN", "OFF", "CHG", "END", "NON"};
inline constexpr std::array<std::string_view, 6> gates{"", "REC", "CLK", "ASK", "HLD", "SCH"};
inline constexpr std::array<std::string_view, 24> outcomes{"lowEmergency", "emergency", "tooMuch", "treatLow", "noPlan", "testGlucose", "eatNow", "testKetones",
                                   "callTeam", "injectAtAnyGlucose", "comingDown", "inject", "eatAndInject", "eat", "wait", "correctByPump",
                                   "offPump", "changeSet", "over", "lookAgain", "hold", "recordInDoubt", "clockInDoubt", "didYouInject"};
struct StepWords {
  std::string_view id, key;
};
inline constexpr std::array<StepWords, 28> steps{{
    {"emergencyCall", "step-emergency-call"}, {"tellThem", "step-tell-them"},           {"stopPump", "step-stop-pump"},
    {"glucagon", "step-glucagon"},            {"sugar", "step-sugar"},                  {"retest", "step-retest"},
    {"testKetones", "step-test-ketones"},     {"confirmChild", "step-confirm-child"},   {"callHome", "step-call-home"},
    {"inject", "step-inject"},                {"eat", "step-eat"},                      {"changeSet", "step-change-set"},
    {"changeReservoir", "step-change-reservoir"}, {"changeInsulin", "step-change-insulin"}, {"offBody", "step-off-body"},
    {"joinTubing", "step-join-tubing"},
    {"automationOff", "step-automation-off"}, {"drink", "step-drink"},                  {"pumpCorrection", "step-pump-correction"},
    {"wait", "step-wait"},                    {"setAlarm", "step-set-alarm"},           {"callTeam", "step-call-team"},
    {"getStrips", "step-get-strips"},         {"stopSglt2", "step-stop-sglt2"},         {"longActing", "step-long-acting"},
    {"bridge", "step-bridge"},                {"restock", "step-restock"},              {"closeIncident", "step-close-incident"},
}};
inline constexpr std::array<std::string_view, 5> hold_kinds{"correction", "ketoneDose", "automation", "longActing", "allRapid"};
inline constexpr std::array<std::string_view, 10> cautions{"couldGoLow", "inGrace",  "planFinding", "staleWeight", "cut",
                                    "underStep",  "sensorOnly", "noStrips",  "longActing",  "newLineUnproven"};
inline constexpr std::array<std::string_view, 3> chosen{"none", "net", "extra"};
inline constexpr std::array<std::string_view, 18> facts{"glucose", "ketones", "signs", "seen", "carbs", "unwell", "mistake", "pumpOnBoard", "pumpOffersNothing",
                                "highSince", "with", "viewer", "notBefore", "recordInDoubt", "agreement", "pregnant", "sglt2Inhibitor", ""};
inline constexpr std::array<std::string_view, 3> origins{"entered", "recorded", "plan"};
inline constexpr std::array<std::string_view, 15> reasons{"notJson", "tooLarge", "tooDeep", "unknownKey", "duplicateKey", "missing", "wrongType", "wrongUnit", "outOfRange",
                                  "tooPrecise", "notAscending", "duplicateId", "contradiction", "newerFormat", "fingerprintMismatch"};

template <class Enum, std::size_t count>
constexpr std::string_view of(const std::array<std::string_view, count>& list, Enum value) { return list[static_cast<std::size_t>(value)]; }

}  // namespace stopgap::json::words
