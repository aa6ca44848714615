// The whole answer of the review: plans that may be agreed, reasons that settle a number, and the table of doses.
#include "review.hpp"

namespace stopgap::desk {
namespace {

std::string levels_of(const Json& plan) {
  std::vector<std::string> out;
  const Json answer = review(plan);
  for (const Json& finding : answer.at("findings")) out.push_back(finding.at("level").get<std::string>() + " " + finding.at("id").get<std::string>());
  return joined(out);
}

TEST(ReviewAnswer, ThePrintedPlansCanBeAgreed) {
  EXPECT_EQ(levels_of(asked::plan_of("adult")), "note cell-never-used; note cell-never-used; confirm dose-could-go-low");
  EXPECT_EQ(levels_of(asked::plan_of("child")), "note cell-never-used; note cell-never-used; confirm dose-could-go-low; confirm dose-could-go-low");
  EXPECT_EQ(levels_of(asked::plan_of("example")), "confirm dose-could-go-low; confirm hi-gives-less");
}

TEST(ReviewAnswer, EveryNumberToConfirmInTheDemoPlansHasItsReason) {
  for (const char* base : {"adult", "child"}) {
    const Json answer = review(asked::plan_of(base));
    for (const Json& finding : answer.at("findings")) EXPECT_EQ(finding.contains("retyped"), finding.at("level") == "confirm") << finding.dump();
  }
}

// {"path", "reason", "finding", "value"}; an empty finding or value is left out, as an earlier version left both.
Json typed_again(const std::string& path, const std::string& finding, const std::string& value) {
  Json one{{"path", path}, {"reason", "Two nurses agreed it."}};
  if (!finding.empty()) one["finding"] = finding;
  if (!value.empty()) one["value"] = value;
  return Json::array({one});
}
// What a finding says of its confirmation: "settled 2.75", "open 2.75", with the reason of an earlier version behind it.
std::string confirmed(const std::string& id, const Json& plan) {
  std::vector<std::string> lines;
  for (const Json& finding : all(id, plan)) {
    const std::string value = finding.at("value").is_null() ? "-" : finding.at("value").get<std::string>();
    if (finding.at("level") == "confirm") EXPECT_EQ(finding.at("settled"), finding.contains("retyped"));
    else EXPECT_FALSE(finding.contains("settled"));
    lines.push_back((finding.contains("retyped") ? "settled " : "open ") + value + (finding.contains("earlier") ? " earlier" : ""));
  }
  return joined(lines);
}
Json lock(const Json& hours, const Json& retyped) { return with({{"/limits/lockHours", hours}, {"/agreement/retyped", retyped}}); }

TEST(ReviewAnswer, AReasonSettlesItsFindingWhileTheNumberIsTheSame) {
  const std::string path = "/plan/limits/lockHours";
  EXPECT_EQ(all("lock-short", lock(2.75, typed_again(path, "lock-short", "2.75"))).at(0).at("retyped"), "Two nurses agreed it.");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again(path, "lock-short", "2.75"))), "settled 2.75");
  EXPECT_EQ(confirmed("lock-short", lock(2.5, typed_again(path, "lock-short", "2.75"))), "open 2.5");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again(path, "lock-short", ""))), "open 2.75");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again(path, "low-late", "2.75"))), "open 2.75");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again("/plan/low/below", "lock-short", "2.75"))), "open 2.75");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, Json::array())), "open 2.75");
}

// Entries of an earlier version name no finding: they are shown, and settle nothing.
TEST(ReviewAnswer, AnEarlierVersionSettlesNothing) {
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again("/plan/limits/lockHours", "", ""))), "open 2.75 earlier");
  EXPECT_EQ(all("lock-short", lock(2.75, typed_again("/plan/limits/lockHours", "", ""))).at(0).at("earlier"), "Two nurses agreed it.");
  EXPECT_EQ(confirmed("lock-short", lock(2.75, typed_again("/plan/limits/lockHours", "", "2.75"))), "open 2.75 earlier");
}

// Two findings of one field: HI gives 4 units, 7 at the ceiling of 25.0; by its share it is drawn from 4.4 as 4.
TEST(ReviewAnswer, AReasonSilencesNoOtherFindingOfTheField) {
  const Json plan = with({{"/ketones/hi", share(0.031)}, {"/agreement/retyped", typed_again("/plan/ketones/hi", "hi-gives-less", "0.031")}});
  EXPECT_EQ(confirmed("hi-gives-less", plan), "settled 0.031");
  EXPECT_EQ(confirmed("rounding-loss", with({{"/ketones/hi", share(0.032)}, {"/agreement/retyped", typed_again("/plan/ketones/hi", "hi-gives-less", "0.032")}})),
            "open 0.032");
}

// Where a finding has no single number, its name and its place are all there is to know it by.
TEST(ReviewAnswer, AFindingAboutSeveralNumbersHasNoValue) {
  const Json basal = day({{"00:00", 0.3}});
  EXPECT_EQ(confirmed("basal-share", with({{"/day/basal", basal}})), "open -");
  EXPECT_EQ(confirmed("basal-share", with({{"/day/basal", basal}, {"/agreement/retyped", typed_again("/plan/day/basal", "basal-share", "")}})), "settled -");
  EXPECT_EQ(confirmed("basal-share", with({{"/day/basal", basal}, {"/agreement/retyped", typed_again("/plan/day/basal", "basal-share", "0.3")}})), "open -");
}

// A cell has one number, a name is a text, and a day is one too.
TEST(ReviewAnswer, TheValueIsWhatStandsThere) {
  EXPECT_EQ(confirmed("rounding-loss", with({{"/ketones/rows/1/cells/1", share(0.049)}})), "open 0.049");
  EXPECT_EQ(confirmed("dose-could-go-low", with({{"/ketones/rows/1/cells/2", {{"timesCorrection", 1.0}, {"fallback", share(0.125)}}}, {"/ketones/rows/3/cells/2", share(0.1)}})),
            "open 0.125");
  EXPECT_EQ(confirmed("insulin-name-unknown", with({{"/rapid/name", "aspar"}})), "open aspar");
  EXPECT_EQ(confirmed("review-far-ahead", with({{"/agreement/reviewBy", "2027-10-03"}})), "open 2027-10-03");
  EXPECT_EQ(confirmed("hours-unreadable", with({{"/contacts/0/when", nullptr}})), "open -");
}

TEST(ReviewAnswer, ADraftShowsWhatIsSettledToo) {
  Json draft = lock(2.75, typed_again("/plan/limits/lockHours", "lock-short", "2.75"));
  draft["agreement"]["status"] = "draft";
  EXPECT_EQ(confirmed("lock-short", draft), "settled 2.75");
}

TEST(ReviewAnswer, NoReasonSettlesWhatCannotBeAgreed) {
  const std::string path = "/plan/day/target/0/value";
  Json retyped = typed_again(path, "target-at-low", "3.9");
  retyped.push_back(typed_again(path, "target-unusual", "3.9").at(0));
  const Json refused{{"/day/target/0/value", 3.9}, {"/agreement/retyped", retyped}};
  EXPECT_EQ(confirmed("target-at-low", with(refused)), "open 3.9");
  EXPECT_EQ(confirmed("target-unusual", with(refused)), "settled 3.9");
}

// What a page asks before it takes a plan in.
TEST(ReviewAnswer, SaysWhetherThePlanMayBeTaken) {
  const auto taken = [](const Json& plan) {
    const Json answer = review(plan);
    return (answer.at("mayBeTaken") == true ? "yes, " : "no, ") + answer.at("toConfirm").dump() + " open";
  };
  EXPECT_EQ(taken(asked::plan_of("adult")), "yes, 0 open");
  EXPECT_EQ(taken(with({})), "yes, 2 open");
  EXPECT_EQ(taken(with({{"/agreement/retyped", typed_again("/plan/ketones/hi", "hi-gives-less", "0.1")}})), "yes, 1 open");
  EXPECT_EQ(taken(with({{"/agreement/houseRules", {"rollingShare", "extraNotReduced"}}})), "no, 2 open");
}

TEST(ReviewAnswer, AFindingSaysHowFarItCanBeTrusted) {
  const auto trust = [](const char* id, const Json& plan) {
    const Json finding = all(id, plan).at(0);
    return finding.at("mark").get<std::string>() + " " + (finding.at("source").is_null() ? none : finding.at("source").get<std::string>());
  };
  EXPECT_EQ(trust("correction-factor-far-off", with({{"/day/correctionFactor/0/value", 4}})), "RULE ratio-rules");
  EXPECT_EQ(trust("basal-share", with({{"/day/basal", day({{"00:00", 2}})}})), "MEMORY none");
  EXPECT_EQ(trust("schedule-jump", with({{"/day/basal", day({{"00:00", 2}, {"06:00", 0}})}})), "PRACTICE none");
  EXPECT_EQ(trust("extra-under-step", with({{"/ketones/hi", share(0.02)}})), "HOUSE none");
  EXPECT_EQ(trust("lock-short", with({{"/limits/lockHours", 2}})), "READ uva");
  EXPECT_EQ(trust("expected-fall-too-large", with({{"/high/expectedFall", 15}})), "DERIVED clamp-2005");
  EXPECT_EQ(trust("hi-gives-less", with({})), "READ tayside");
}

TEST(ReviewAnswer, TextsFollowTheDecimalMarkOfThePlan) {
  EXPECT_EQ(found("lock-short", with({{"/limits/lockHours", 2.75}, {"/decimalMark", ","}})), "confirm /plan/limits/lockHours hours=2,75 least=3");
  EXPECT_EQ(found("target-unusual", with({{"/day/target/0/value", 4}, {"/decimalMark", ","}})),
            "confirm /plan/day/target/0/value least=4,4 mmol/L most=8,3 mmol/L target=4,0 mmol/L");
}

TEST(ReviewAnswer, ADraftGivesTheSameFindingsAndDoses) {
  Json agreed = review(asked::plan_of("adult")), draft = review(with({{"/agreement/status", "draft"}}, "adult"));
  EXPECT_NE(agreed["fingerprint"], draft["fingerprint"]);
  agreed.erase("fingerprint");
  draft.erase("fingerprint");
  EXPECT_EQ(agreed, draft);
}

TEST(ReviewAnswer, ItsFingerprintIsThatOfTheAdvice) {
  const Json plan = asked::plan_of("adult");
  EXPECT_EQ(review(plan)["fingerprint"], asked::advise(plan, Json::array(), {{"glucose", 16}, {"ketones", 0.8}})["planFingerprint"]);
}

TEST(ReviewAnswer, APlanThatCannotBeReadIsRefusedWithItsPlaces) {
  const Json other = review(with({{"/rapid/unitsPerMl", 200}}));
  EXPECT_EQ(other["refused"][0]["path"], "/plan/rapid/unitsPerMl");
  EXPECT_EQ(Json::parse(ask("reviewPlan", "{}"))["refused"][0]["path"], "/plan");
  EXPECT_EQ(Json::parse(ask("reviewPlan", Json{{"plan", with({})}, {"record", Json::object()}}.dump()))["refused"][0]["reason"], "unknownKey");
}

// "low 3.9", "16.0-17.9", "20.0-", "HI" down the side.
std::string row_name(const Json& row) {
  const std::string kind = row.at("kind");
  if (kind == "HI") return "HI";
  const std::string from = row.at("glucose"), to = row.at("to").is_null() ? "" : row.at("to").get<std::string>();
  return kind == "low" ? "low " + from : from + "-" + to;
}

const Json& row_of(const Json& table, const std::string& name) {
  for (const Json& row : table.at("rows"))
    if (row_name(row) == name) return row;
  ADD_FAILURE() << "no row " << name;
  return table.at("rows").at(0);
}

// "inject KET 4 units extra x1.6, 15 g, team": what stands there, and nothing that does not.
std::string cell(const Json& table, const std::string& row, std::size_t column) {
  const Json& one = row_of(table, row).at("cells").at(column);
  std::string out = one.at("outcome").get<std::string>() + " " + one.at("decidedBy").get<std::string>();
  if (!one.at("dose").is_null()) out += " " + plain(one["dose"]) + " " + one.at("chosen").get<std::string>();
  if (!one.at("timesUsual").is_null()) out += " x" + one["timesUsual"].get<std::string>();
  if (one.at("cut") == true) out += " cut";
  if (!one.at("grams").is_null()) out += ", " + one["grams"].get<std::string>() + " g";
  if (one.at("call") != "none") out += ", " + one["call"].get<std::string>();
  return out;
}

std::string usual(const Json& table, const std::string& row) {
  const Json& text = row_of(table, row).at("usual");
  return text.is_null() ? none : plain(text);
}

TEST(ReviewTable, ItsSidesAreReadable) {
  const Json table = review(asked::plan_of("adult")).at("table").at("day");
  std::vector<std::string> rows, columns;
  for (const Json& row : table.at("rows")) rows.push_back(row_name(row));
  for (const Json& column : table.at("columns"))
    columns.push_back(column.at("key").get<std::string>() + (column.at("from").is_null() ? "" : " " + column["from"].get<std::string>()));
  EXPECT_EQ(joined(rows), "low 3.9; 4.0-5.5; 5.6-5.9; 6.0-7.9; 8.0-9.9; 10.0-11.9; 12.0-13.9; 14.0-15.9; 16.0-17.9; 18.0-19.9; 20.0-; HI");
  EXPECT_EQ(joined(columns), "blood 0.0; blood 0.6; blood 1.5; blood 3.0; notTested");
}

std::string columns_of(const Json& table) {
  std::vector<std::string> columns;
  for (const Json& column : table.at("columns"))
    columns.push_back(column.at("key") == "notTested" ? "not tested" : column.at("from").get<std::string>() + "-" + (column.at("to").is_null() ? "" : column["to"].get<std::string>()));
  return joined(columns);
}

// From ketones of 3.0 everybody goes for help, whatever row of the plan they fall in: no table may hide it inside a row.
TEST(ReviewTable, ShowsWhoGoesForHelpWhereNoRowOfThePlanBeginsThere) {
  Json plan = asked::plan_of("adult");
  EXPECT_EQ(columns_of(review(plan)["table"]["day"]), "0.0-0.5; 0.6-1.4; 1.5-2.9; 3.0-; not tested");
  Json& rows = plan["ketones"]["rows"];
  rows.erase(3);
  rows[2]["urine"].push_back("large");
  const Json answer = review(plan);
  const Json& table = answer.at("table").at("day");
  EXPECT_EQ(columns_of(table), "0.0-0.5; 0.6-1.4; 1.5-2.9; 3.0-; not tested");
  for (const Json& row : table.at("rows")) {
    EXPECT_EQ(row.at("cells").size(), 5u);
    EXPECT_EQ(row.at("cells")[3].at("call"), "emergency") << row_name(row);
  }
  EXPECT_EQ(table["rows"][7]["cells"][2]["outcome"], "inject");     // 14.0 and 1.5: the dose, at home
  EXPECT_EQ(table["rows"][7]["cells"][3]["outcome"], "emergency");  // 14.0 and 3.0: the same dose, on the way
  EXPECT_EQ(table["columns"][3]["urine"], Json::array({"large"}));
  EXPECT_EQ(table["columns"][3]["acts"], true);
}

TEST(ReviewTable, RowsInMgPerDl) {
  const Json table = review(asked::plan_of("child")).at("table").at("day");
  std::vector<std::string> rows;
  for (const Json& row : table.at("rows")) rows.push_back(row_name(row));
  EXPECT_EQ(joined(rows), "low 70; 71-99; 100-119; 120-159; 160-179; 180-199; 200-239; 240-249; 250-279; 280-319; 320-359; 360-399; 400-; HI");
}

// The settings of noon: 00:00, 06:00, 07:00, 11:00 and 22:00 begin five sets; 00:00 is the night's.
TEST(ReviewTable, OneForEachSetOfSettings) {
  const Json table = review(asked::plan_of("adult")).at("table");
  EXPECT_EQ(table["day"]["at"], "12:00");
  EXPECT_EQ(table["night"]["at"], "03:00");
  std::vector<std::string> others;
  for (const Json& other : table.at("others")) others.push_back(other.at("at"));
  EXPECT_EQ(joined(others), "06:00; 07:00; 22:00");
}

TEST(ReviewTable, NoNightWhereItHasTheSettingsOfTheDay) {
  const Json table = review(with({})).at("table");  // one value each; basal is no part of a table
  EXPECT_TRUE(table["night"].is_null());
  EXPECT_TRUE(table["others"].empty());
  EXPECT_EQ(review(with({{"/day/target", day({{"00:00", 6.6}, {"06:00", 6.5}})}}))["table"]["night"]["at"], "03:00");
}

// The example as the contract works it: correction (16.0 - 6.5) / 2.5 = 3.80; extra 4.00 of 40 units; 4 / 3.8 = 1.05.
TEST(ReviewTable, TheExampleAsWorkedByHand) {
  const Json table = review(with({})).at("table").at("day");
  EXPECT_EQ(usual(table, "16.0-17.9"), "3.8 units");
  EXPECT_EQ(cell(table, "16.0-17.9", 0), "correctByPump PMP");
  EXPECT_EQ(cell(table, "16.0-17.9", 1), "inject KET 4 units extra x1.1");
  EXPECT_EQ(cell(table, "16.0-17.9", 2), "inject KET 4 units extra x1.1, team");
  EXPECT_EQ(cell(table, "16.0-17.9", 4), "testKetones TST");
  // 22.0: (22.0 - 6.5) / 2.5 = 6.2; on the way 20 % = 8, the cap; 8 / 6.2 = 1.29.
  EXPECT_EQ(usual(table, "22.0-23.9"), "6.2 units");
  EXPECT_EQ(cell(table, "22.0-23.9", 1), "inject KET 6 units net x1");
  EXPECT_EQ(cell(table, "22.0-23.9", 3), "emergency EMR 8 units extra x1.3, emergency");
  // 8.0: row of 1.5, first column 5 % = 2; net 0.6; (2 - 0.6) × 12 = 16.8, up to 20 g; 2 / 0.6 = 3.3.
  EXPECT_EQ(usual(table, "8.0-9.9"), "0.6 units");
  EXPECT_EQ(cell(table, "8.0-9.9", 2), "eatAndInject EAT 2 units extra x3.3, 20 g, team");
  EXPECT_EQ(cell(table, "8.0-9.9", 1), "eat EAT, 20 g");
}

TEST(ReviewTable, LowWordsAndWhatLiesBetween) {
  const Json table = review(with({})).at("table").at("day");
  EXPECT_EQ(usual(table, "low 3.9"), none);
  EXPECT_EQ(cell(table, "low 3.9", 1), "treatLow LOW, 15 g");
  EXPECT_EQ(cell(table, "low 3.9", 3), "emergency EMR, 15 g, emergency");
  EXPECT_EQ(cell(table, "4.0-5.5", 1), "eat EAT, 20 g");
  EXPECT_EQ(cell(table, "4.0-5.5", 0), "lookAgain NON");
  EXPECT_EQ(cell(table, "4.0-5.5", 4), "lookAgain NON");
  EXPECT_EQ(usual(table, "HI"), none);
  EXPECT_EQ(cell(table, "HI", 1), "inject KET 4 units extra, team");
  EXPECT_EQ(cell(table, "HI", 4), "testKetones TST, team");
}

// Below the target there is no correction to show: 5.6 is under 6.5.
TEST(ReviewTable, NoUsualCorrectionUnderTheTarget) { EXPECT_EQ(usual(review(with({}))["table"]["day"], "5.6-5.9"), none); }

// The adult at noon: factor 2.2, target 6.0. By night: 2.5 and 7.0. 20.0: 14.0 / 2.2 = 6.36, and 13.0 / 2.5 = 5.2.
TEST(ReviewTable, DayAndNightDiffer) {
  const Json table = review(asked::plan_of("adult")).at("table");
  EXPECT_EQ(usual(table["day"], "20.0-"), "6.36 units");
  EXPECT_EQ(cell(table["day"], "20.0-", 1), "inject KET 6 units net x0.9");
  EXPECT_EQ(usual(table["night"], "20.0-"), "5.2 units");
  EXPECT_EQ(cell(table["night"], "20.0-", 1), "inject KET 5 units net x1");
}

// The child by night: 0.1 unit for each of 28 kg = 2.8, down to 2.5; (280 - 120) / 90 = 1.78; 2.5 / 1.78 = 1.4.
// On the way 4.2, down to 4; the cap is 4.48.
TEST(ReviewTable, TheChildAtNight) {
  const Json table = review(asked::plan_of("child")).at("table").at("night");
  EXPECT_EQ(usual(table, "280-319"), "1.78 units");
  EXPECT_EQ(cell(table, "280-319", 2), "inject KET 2.5 units extra x1.4, team");
  EXPECT_EQ(cell(table, "280-319", 3), "emergency EMR 4 units extra x2.3, emergency");
}

// 21 % of 40 = 8.4 over the cap of 8.
TEST(ReviewTable, ACutIsSaid) {
  const Json table = review(with({{"/ketones/rows/3/cells/2", share(0.21)}})).at("table").at("day");
  EXPECT_EQ(cell(table, "14.0-15.9", 3), "emergency EMR 8 units extra x2.7 cut, emergency");
}

}  // namespace
}  // namespace stopgap::desk
