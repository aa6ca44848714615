// The table of the contract, worked by hand with the plan it prints, and its printed answer key by key.
#include <gtest/gtest.h>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::Json;
using asked::plan;

Json now_with(const Json& glucose, const Json& ketones) { return {{"glucose", glucose}, {"ketones", ketones}}; }

// Everything the printed answer holds stands in ours too; ours may hold more keys. "…" was left open in print.
void expect_printed(const Json& printed, const Json& answer, const std::string& place) {
  if (printed == "…") return;
  if (printed.is_object()) {
    for (const auto& [key, value] : printed.items()) {
      ASSERT_TRUE(answer.contains(key)) << place << "/" << key;
      expect_printed(value, answer[key], place + "/" + key);
    }
  } else if (printed.is_array() && place != "/because") {
    ASSERT_EQ(printed.size(), answer.size()) << place << ": " << answer;
    for (std::size_t i = 0; i < printed.size(); ++i) expect_printed(printed[i], answer[i], place + "/" + std::to_string(i));
  } else if (!printed.is_array()) {
    EXPECT_EQ(printed, answer) << place;
  }
}

TEST(WorkedTable, ThePrintedAnswerKeyByKey) {
  const Json printed = Json::parse(R"({
    "outcome": "inject", "decidedBy": "KET", "gate": null, "call": "none", "callFirst": false,
    "dose": { "units": 4, "text": "4\u00a0units", "insulin": "rapid", "with": "syringe", "parts": { "rescue": 4, "meal": 0, "basal": 0 },
              "working": { "correction": "3.8", "onBoard": "0", "net": "3.8", "extra": "4", "chosen": "extra", "cap": "8", "cut": null, "beforeRounding": "4" },
              "otherBound": "4", "timesUsual": "1.1" },
    "carbohydrateGrams": 0, "given": null,
    "steps": [ { "id": "inject", "key": "step-inject", "slots": { "dose": "4\u00a0units" } }, { "id": "changeSet", "key": "…" }, { "id": "changeReservoir", "key": "…" },
               { "id": "offBody", "key": "…" }, { "id": "joinTubing", "key": "…" }, { "id": "automationOff", "key": "…" }, { "id": "drink", "key": "…" }, { "id": "setAlarm", "key": "…" } ],
    "holds": [ { "what": "correction", "until": "2026-11-25T07:10:00+00:00" }, { "what": "ketoneDose", "until": "2026-11-25T05:10:00+00:00" },
               { "what": "automation", "until": "2026-11-25T07:10:00+00:00" } ],
    "looks": [ { "at": "2026-11-25T04:10:00+00:00", "what": ["glucose", "ketones"] }, { "at": "2026-11-25T05:10:00+00:00", "what": ["glucose", "ketones"] } ],
    "cautions": [], "because": [ { "fact": "ketones", "value": "0.8", "from": "entered" } ],
    "incident": "open", "planFingerprint": "…", "engine": "…" })");
  const Json answer = asked::advise(plan(), Json::array(), now_with(16.0, 0.8));
  expect_printed(printed, answer, "");
  bool named = false;
  for (const Json& reason : answer.at("because")) named = named || reason == printed["because"][0];
  EXPECT_TRUE(named) << "The ketones are not among the reasons.";
}

TEST(WorkedTable, HighForTwentyMinutesIsCorrectedByThePump) {
  const Json answer = asked::advise(plan(), Json::array(), {{"glucose", 16.0}, {"ketones", 0.2}, {"highSince", "2026-11-25T02:50:00+00:00"}});
  EXPECT_EQ(answer["outcome"], "correctByPump");
  EXPECT_EQ(answer["decidedBy"], "PMP");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(asked::looks(answer), "04:10");
}

TEST(WorkedTable, KetonesWithNothingTried) {
  // (16.0 - 6.5) / 2.5 = 3.80; 10 % of 40 = 4.00; the greater.
  const Json answer = asked::advise(plan(), Json::array(), now_with(16.0, 0.8));
  EXPECT_EQ(answer["decidedBy"], "KET");
  EXPECT_EQ(answer["dose"]["working"]["correction"], "3.8");
  EXPECT_EQ(answer["dose"]["working"]["extra"], "4");
  EXPECT_EQ(asked::dose(answer), "4 units");
}

TEST(WorkedTable, AnEdgeFallsInTheUpperRow) {
  // 4.80 against 4.00: 4.80, down.
  const Json answer = asked::advise(plan(), Json::array(), now_with(18.5, 1.5));
  EXPECT_EQ(answer["outcome"], "inject");
  EXPECT_EQ(answer["decidedBy"], "KET");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(answer["dose"]["working"]["extra"], "4");
  EXPECT_EQ(answer["dose"]["working"]["beforeRounding"], "4.8");
  EXPECT_EQ(asked::dose(answer), "4 units");
}

// 4 units so many minutes ago at 16.4 with 1.0; set and reservoir changed with it.
Json four_units(int minutes_ago) {
  return {{{"ago", minutes_ago + 5}, {"kind", "changed"}, {"what", {"set", "reservoir"}}},
          {{"ago", minutes_ago}, {"kind", "injection"}, {"units", 4}, {"glucose", 16.4}, {"ketones", 1.0}}};
}

TEST(WorkedTable, TheKetoneClockOpensInAMinute) {
  const Json answer = asked::advise(plan(), four_units(119), now_with(16.0, 1.0));
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(answer["decidedBy"], "KET");
  EXPECT_EQ(answer["gate"], "HLD");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(answer["hold"]["clock"], "03:11");
  EXPECT_EQ(answer["given"]["minutesAgo"], 119);
}

TEST(WorkedTable, TheKetoneClockGivesTheExtraAlone) {
  // 8 of 12 in the rolling cap; acting 4 + 4 x 0.4699 = 5.88; 16.0 - 14.7 = 1.3.
  const Json answer = asked::advise(plan(), four_units(120), now_with(16.0, 1.0));
  EXPECT_EQ(answer["outcome"], "inject");
  EXPECT_TRUE(answer["gate"].is_null());
  EXPECT_EQ(answer["dose"]["working"]["chosen"], "extra");
  EXPECT_EQ(answer["dose"]["working"]["onBoard"], "1.88");
  EXPECT_EQ(asked::dose(answer), "4 units");
  EXPECT_TRUE(asked::has_caution(answer, "couldGoLow"));
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(asked::looks(answer), "03:40 04:10 05:10");
}

TEST(WorkedTable, KetonesThatFellWaitForTheLock) {
  const Json answer = asked::advise(plan(), four_units(120), now_with(16.0, 0.8));
  EXPECT_EQ(answer["outcome"], "hold");
  EXPECT_EQ(answer["decidedBy"], "KET");
  EXPECT_EQ(answer["gate"], "HLD");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(answer["hold"]["clock"], "05:10");  // 240 min after the injection
}

TEST(WorkedTable, ThePumpCorrectionFailedAtTheFirstLook) {
  // F3(1.39907) = 0.83372: 3 x 0.83372 = 2.501, up 2.51; 3.80 - 2.51 = 1.29, down.
  const Json pump{{{"ago", 60}, {"kind", "pumpDose"}, {"units", 3.0}, {"purpose", "correction"}, {"glucose", 15.6}}};
  const Json answer = asked::advise(plan(), pump, now_with(16.0, 0.3));
  EXPECT_EQ(answer["outcome"], "inject");
  EXPECT_EQ(answer["decidedBy"], "INJ");
  EXPECT_EQ(answer["dose"]["working"]["onBoard"], "2.51");
  EXPECT_EQ(answer["dose"]["working"]["net"], "1.29");
  EXPECT_EQ(asked::dose(answer), "1 unit");
}

TEST(WorkedTable, BelowTheMiddleKetonesGetInsulinAndFood) {
  // 5 % of 40 = 2.00; net 1.00; (2 - 1.00) x 12 = 12, up 15 g.
  const Json answer = asked::advise(plan(), Json::array(), now_with(9.0, 1.6));
  EXPECT_EQ(answer["outcome"], "eatAndInject");
  EXPECT_EQ(answer["decidedBy"], "EAT");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(answer["dose"]["working"]["net"], "1");
  EXPECT_EQ(asked::dose(answer), "2 units");
  EXPECT_EQ(answer["carbohydrateGrams"], 15);
}

TEST(WorkedTable, ACellOfNoneMeansFoodAlone) {
  const Json answer = asked::advise(plan(), Json::array(), now_with(9.0, 0.8));
  EXPECT_EQ(answer["outcome"], "eat");
  EXPECT_EQ(answer["decidedBy"], "EAT");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(answer["carbohydrateGrams"], 20);
}

TEST(WorkedTable, GoingLowEatsNow) {
  // 3.34 (up) x 2.5 = 8.35 over 6.0; (0 + 3.34 + 0.2) x 12 = 42.5, up 45 g.
  const Json four{{{"ago", 60}, {"kind", "injection"}, {"units", 4}}};
  const Json answer = asked::advise(plan(), four, now_with(6.0, 0.8));
  EXPECT_EQ(answer["outcome"], "eatNow");
  EXPECT_EQ(answer["decidedBy"], "FAL");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(answer["carbohydrateGrams"], 45);
  EXPECT_TRUE(asked::has_look(answer, "03:25"));
}

TEST(WorkedTable, AwakeAndClearAndLow) {
  const Json answer = asked::advise(plan(), Json::array(), now_with(2.8, 0.1));
  EXPECT_EQ(answer["outcome"], "treatLow");
  EXPECT_EQ(answer["decidedBy"], "LOW");
  EXPECT_EQ(asked::dose(answer), "none");
  EXPECT_EQ(answer["carbohydrateGrams"], 15);
  EXPECT_TRUE(asked::has_look(answer, "03:25"));
}

TEST(WorkedTable, KetonesOfThreeGoWithADoseOnTheWay) {
  // max(8.00, 6.20), cap 20 % of 40 = 8.
  const Json answer = asked::advise(plan(), Json::array(), now_with(22.0, 3.0));
  EXPECT_EQ(answer["outcome"], "emergency");
  EXPECT_EQ(answer["decidedBy"], "EMR");
  EXPECT_EQ(answer["call"], "emergency");
  EXPECT_EQ(answer["dose"]["working"]["extra"], "8");
  EXPECT_EQ(answer["dose"]["working"]["net"], "6.2");
  EXPECT_EQ(answer["dose"]["working"]["cap"], "8");
  EXPECT_EQ(asked::dose(answer), "8 units");
}

TEST(WorkedTable, TheWordHIHasNoCorrection) {
  const Json answer = asked::advise(plan(), Json::array(), now_with({{"reading", "HI"}, {"from", "finger"}, {"repeated", true}}, 1.0));
  EXPECT_EQ(answer["outcome"], "inject");
  EXPECT_EQ(answer["decidedBy"], "KET");
  EXPECT_EQ(answer["call"], "team");
  EXPECT_EQ(answer["dose"]["working"]["correction"], "0");
  EXPECT_EQ(asked::dose(answer), "4 units");
}

TEST(WorkedTable, DrowsyWithoutActingKetonesGoesWithoutADose) {
  const Json answer = asked::advise(plan(), Json::array(), {{"glucose", 16.0}, {"ketones", 0.2}, {"signs", {"drowsy"}}});
  EXPECT_EQ(answer["outcome"], "emergency");
  EXPECT_EQ(answer["decidedBy"], "EMR");
  EXPECT_EQ(asked::dose(answer), "none");
}

}  // namespace
}  // namespace stopgap
