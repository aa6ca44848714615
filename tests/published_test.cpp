// Published doses, each with its source, place, mark and stated rounding: tests/published/<id>/. A plan is built for the numbers
// of the source from the plan the contract prints; the core must then lead to the printed dose.
#include <gtest/gtest.h>

#include <vector>

#include "asked.hpp"

namespace stopgap {
namespace {

using asked::advise;
using asked::at;
using asked::dose;
using asked::example_with;
using asked::Json;
using asked::nothing;

Json schedule(double value) { return Json::array({{{"from", "00:00"}, {"value", value}}}); }

// Rows of one cell each, the same in every column: `cells` of the example's four rows.
Json share(double s) { return {{"shareOfDaily", s}}; }
Json per_kg(double u) { return {{"perKg", u}}; }

// A plan that gives the extra alone, so that a source's own figure stands in the answer: replace, wide caps, two looks apart.
Json wide(Json more) {
  Json changes{{"/ketones/combine", "replace"}, {"/limits/shareOfDaily", 0.5}, {"/limits/rollingShare", 1.0}, {"/limits/singleDose", 50}};
  changes.update(more);
  return example_with(changes);
}

Json with_cells(int row, const Json& cell) {
  const std::string place = "/ketones/rows/" + std::to_string(row) + "/cells/";
  return {{place + "0", cell}, {place + "1", cell}, {place + "2", cell}};
}

Json changes(std::initializer_list<Json> parts) {
  Json all = Json::object();
  for (const Json& part : parts) all.update(part);
  return all;
}

std::string extra(const Json& answer) { return answer.at("dose").is_null() ? "no dose" : answer["dose"]["working"]["extra"].get<std::string>(); }
std::string line(const Json& answer, const char* name) { return answer.at("dose").at("working").at(name); }

const Json half_units{{"/syringe/capacity", 30}, {"/syringe/step", 0.5}};

TEST(Printed, CV01TenPercentOfThirtyEight) {
  // [know], worked examples, READ, nearest 1: 16, ketones 1.7, daily 38, share 0.10: 3.8, 4 units; look 2 h; call team.
  const Json plan = wide(changes({with_cells(2, share(0.10)), {{"/dailyTotal", 38}, {"/rounding", "nearest"}, {"/high/looksAfterInjection", {120}}}}));
  const Json answer = advise(plan, nothing, at(16.0, 1.7));
  EXPECT_EQ(extra(answer), "3.8");
  EXPECT_EQ(dose(answer), "4 units");
  EXPECT_EQ(asked::looks(answer), "05:10");
  EXPECT_EQ(answer["call"], "team");
}

TEST(Printed, CV02TwentyPercentOfThirtyEightAndHospital) {
  // [know], READ, nearest 1: 16, ketones 3.1, share 0.20: 7.6, 8 units.
  const Json plan = wide(changes({with_cells(3, share(0.20)), {{"/dailyTotal", 38}, {"/rounding", "nearest"}}}));
  const Json answer = advise(plan, nothing, at(16.0, 3.1));
  EXPECT_EQ(answer["call"], "emergency");
  EXPECT_EQ(extra(answer), "7.6");
  EXPECT_EQ(dose(answer), "8 units");
}

TEST(Printed, CV03TheSameRoundedDownToHalfUnits) {
  // DERIVED from CV-01 and CV-02, down 0.5: 3.5 and 7.5.
  const Json plan = wide(changes({with_cells(2, share(0.10)), with_cells(3, share(0.20)), {{"/dailyTotal", 38}}, half_units}));
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 1.7))), "3.5 units");
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 3.1))), "7.5 units");
}

TEST(Printed, CV04And05ACapByShareAndByUnits) {
  // [alder-hey], READ: at most 20 % of the daily dose and 20 units. Daily 50: 10. Daily 120 (DERIVED): 24, cut to 20, 4 cut off.
  const auto plan = [](double daily, double wanted) {
    return example_with(changes({with_cells(2, share(wanted)), {{"/dailyTotal", daily}, {"/limits/shareOfDaily", 0.20}, {"/limits/singleDose", 20},
                                                                {"/limits/rollingShare", 1.0}, {"/ketones/combine", "replace"}}}));
  };
  const Json fifty = advise(plan(50, 0.50), nothing, at(16.0, 1.7));
  EXPECT_EQ(line(fifty, "cap"), "10");
  EXPECT_EQ(dose(fifty), "10 units");
  const Json large = advise(plan(120, 0.20), nothing, at(16.0, 1.7));
  EXPECT_EQ(extra(large), "24");
  EXPECT_EQ(line(large, "cut"), "4");
  EXPECT_EQ(dose(large), "20 units");
  EXPECT_TRUE(asked::has_caution(large, "cut"));
  EXPECT_EQ(large["call"], "team");
}

Json times(double m) { return {{"timesCorrection", m}, {"fallback", share(0.10)}}; }

TEST(Printed, CV06And07OneAndAHalfTimesTheCorrection) {
  // [wtd], READ, nearest 1. The pump proposes 6.4 (here (22.8 - 10.0) / 2): 9.6, 10 units. (22.8 - 7) / 3 x 1.5 = 7.9, 8 units.
  const auto plan = [](double target, double factor) {
    return wide(changes({with_cells(1, times(1.5)), {{"/rounding", "nearest"}, {"/day/target", schedule(target)}, {"/day/correctionFactor", schedule(factor)}}}));
  };
  const Json proposed = advise(plan(10.0, 2.0), nothing, at(22.8, 0.8));
  EXPECT_EQ(line(proposed, "correction"), "6.4");
  EXPECT_EQ(extra(proposed), "9.6");
  EXPECT_EQ(dose(proposed), "10 units");
  const Json worked = advise(plan(7.0, 3.0), nothing, at(22.8, 0.8));
  EXPECT_EQ(extra(worked), "7.9");
  EXPECT_EQ(dose(worked), "8 units");
}

TEST(Printed, CV08AUnitForEveryTenKilograms) {
  // [oxford-inj], READ, no rounding: 10 to 90 kg, ketones 1.0 to 2.9.
  for (int tens = 1; tens <= 9; ++tens)
    for (const double ketones : {1.0, 2.9}) {
      const Json plan = wide(changes({with_cells(1, per_kg(0.1)), with_cells(2, per_kg(0.1)),
                                      {{"/ketones/rows/1/from", 1.0}, {"/ketones/actFrom", 1.0}, {"/person/weightKg", tens * 10}}}));
      const Json answer = advise(plan, nothing, at(16.0, ketones));
      EXPECT_EQ(extra(answer), std::to_string(tens));
      EXPECT_EQ(dose(answer), tens == 1 ? "1 unit" : std::to_string(tens) + " units");
    }
}

// One sixth, as near as the three digits of a share allow.
constexpr double sixth = 0.167;

TEST(Printed, CV09And10ASixthFromFifteenAndPointSix) {
  // [rch-line], step 1, DERIVED: daily 36, 15.0 with 0.6: 6 units (6.012 by 0.167), full change, look 2 h. 14.9 or 0.5: does not apply.
  const Json plan = wide(changes({with_cells(1, share(sixth)),
                                  {{"/dailyTotal", 36}, {"/high/trigger", 15.0}, {"/high/middle", 15.0}, {"/ketones/columns", {0, 10.0, 15.0}},
                                   {"/ketones/rows/1/cells/0", "none"}, {"/ketones/rows/1/cells/1", "none"}, {"/high/looksAfterInjection", {120}}}}));
  const Json answer = advise(plan, nothing, at(15.0, 0.6));
  EXPECT_EQ(extra(answer), "6.01");
  EXPECT_EQ(dose(answer), "6 units");
  EXPECT_TRUE(asked::has_step(answer, "changeSet") && asked::has_step(answer, "changeReservoir"));
  EXPECT_TRUE(asked::has_look(answer, "05:10"));
  EXPECT_EQ(dose(advise(plan, nothing, at(14.9, 0.6))), "none");
  EXPECT_EQ(dose(advise(plan, nothing, at(15.0, 0.5))), "none");
}

TEST(Printed, CV11ASixthOfFortyTwo) {
  // [rch-malf], DERIVED: 7 units (7.014 by 0.167).
  const Json plan = wide(changes({with_cells(1, share(sixth)), {{"/dailyTotal", 42}}}));
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 0.8))), "7 units");
}

TEST(Printed, CV12AUnitForTenKilogramsAgainAtTwoHours) {
  // [clinidiabet], DERIVED: 60 kg, 6 units, again at 2 h.
  const Json plan = wide(changes({with_cells(1, per_kg(0.1)), {{"/person/weightKg", 60}}}));
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 1.0))), "6 units");
  const auto given = [](int ago) {
    return Json::array({{{"ago", ago + 10}, {"kind", "changed"}, {"what", {"set", "reservoir"}}},
                        {{"ago", ago}, {"kind", "injection"}, {"units", 6}, {"glucose", 16.0}, {"ketones", 1.0}}});
  };
  EXPECT_EQ(dose(advise(plan, given(119), at(16.0, 1.0))), "none");
  EXPECT_EQ(dose(advise(plan, given(120), at(16.0, 1.0))), "6 units");
}

TEST(Printed, CV13TenPercentOfFortyFive) {
  // [chop-path], DERIVED: glargine 20 x 2.25 = 45 a day; ketone dose 4.5.
  const Json plan = wide(changes({with_cells(1, share(0.10)), {{"/dailyTotal", 45}}, half_units}));
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 1.0))), "4.5 units");
}

TEST(Printed, CV14TheGreaterNeverTheSum) {
  // [chop-path], DERIVED: ketone dose 4 with correction 5 gives 5, with correction 3 gives 4; never 9 or 7.
  const Json plan = example_with(changes({with_cells(1, share(0.10))}));
  const Json five = advise(plan, nothing, at(19.0, 1.0));  // (19.0 - 6.5) / 2.5
  EXPECT_EQ(line(five, "correction"), "5");
  EXPECT_EQ(extra(five), "4");
  EXPECT_EQ(dose(five), "5 units");
  const Json three = advise(plan, nothing, at(14.0, 1.0));  // (14.0 - 6.5) / 2.5
  EXPECT_EQ(line(three, "correction"), "3");
  EXPECT_EQ(dose(three), "4 units");
}

TEST(Printed, CV15ByWeightWhereTheDailyDoseIsNotKnown) {
  // [chop-path], DERIVED: 30 kg, 0.1 units/kg: 3 units.
  const Json plan = wide(changes({with_cells(1, per_kg(0.1)), {{"/person/weightKg", 30}}}));
  EXPECT_EQ(dose(advise(plan, nothing, at(16.0, 1.0))), "3 units");
}

Json child_with(const Json& more) {
  Json plan = asked::plan_of("child");
  asked::change(plan, more);
  return plan;
}

TEST(Printed, CV16LowWithKetones) {
  // [chop-path], READ: 60 mg/dL, ketones 1.5: 15 g, look at 20 min, insulin only above 70.
  const Json plan = child_with({{"/low/grams", 15}, {"/low/recheckMinutes", 20}});
  const Json low = advise(plan, nothing, at(60, 1.5));
  EXPECT_EQ(dose(low), "none");
  EXPECT_EQ(low["carbohydrateGrams"], 15);
  EXPECT_EQ(low["looks"][0]["clock"], "03:30");
  EXPECT_EQ(dose(advise(plan, nothing, at(70, 1.5))), "none");
}

TEST(Printed, CV18DoubleCorrectionAndTheHospital) {
  // [forth], READ: above target, ketones over 1.5, vomiting: twice the correction and the emergency department.
  const Json plan = wide(changes({with_cells(2, times(2.0)), half_units}));
  const Json answer = advise(plan, nothing, {{"glucose", 16.0}, {"ketones", 1.6}, {"signs", {"vomitedOnce"}}});
  EXPECT_EQ(answer["call"], "emergency");
  EXPECT_EQ(line(answer, "correction"), "3.8");
  EXPECT_EQ(extra(answer), "7.6");
  EXPECT_EQ(dose(answer), "7.5 units");
}

TEST(Printed, CV19ACorrectionToATenth) {
  // [montreal], READ, printed to 0.1: (14.8 - 6.0) / 4.0 = 2.2.
  const Json plan = example_with({{"/day/target", schedule(6.0)}, {"/day/correctionFactor", schedule(4.0)}});
  EXPECT_EQ(line(advise(plan, nothing, {{"glucose", 14.8}, {"ketones", 0.2}, {"pumpOffersNothing", true}}), "correction"), "2.2");
}

TEST(Printed, CV20And21TheMealPartOfABridge) {
  // [montreal]: 40 g at 1/15 = 2.6667 (printed 2.7). A part is rounded down to a step: 2.5, or 2. Basal belongs to the off-pump plan.
  const auto meal = [](const Json& device) {
    const Json plan = example_with(changes({{{"/day/carbohydrateRatio", schedule(15)}, {"/day/target", schedule(6.0)}, {"/day/correctionFactor", schedule(4.0)}}, device}));
    return advise(plan, nothing, {{"glucose", 14.8}, {"ketones", 0.2}, {"pumpOffersNothing", true}, {"carbs", 40}}).at("dose").at("parts");
  };
  EXPECT_EQ(meal(half_units).at("meal"), 2.5);
  EXPECT_EQ(meal(half_units).at("rescue"), 2);  // 2.2 down
  EXPECT_EQ(meal(Json::object()).at("meal"), 2);
}

TEST(Printed, CV38AMealAndACorrection) {
  // Textbook form, MEMORY: 60 g at 1/10; (220 - 120) / 50: 6 + 2 = 8 units.
  const Json plan = child_with({{"/day/carbohydrateRatio", schedule(10)}, {"/day/target", schedule(120)}, {"/day/correctionFactor", schedule(50)},
                                {"/high/trigger", 200}, {"/ketones/columns", {0, 180, 200}}});
  const Json answer = advise(plan, nothing, {{"glucose", 220}, {"ketones", 0.2}, {"pumpOffersNothing", true}, {"carbs", 60}});
  EXPECT_EQ(answer["dose"]["parts"]["meal"], 6);
  EXPECT_EQ(answer["dose"]["parts"]["rescue"], 2);
  EXPECT_EQ(dose(answer), "8 units");
}

// The grid of one source, read from its file: rows of ketones, columns of glucose.
std::vector<std::vector<std::string>> grid(const std::string& path) {
  std::istringstream lines(asked::file_text(std::string{STOPGAP_TESTS_DIR} + "/published/" + path));
  std::vector<std::vector<std::string>> rows;
  std::string text;
  std::getline(lines, text);
  while (std::getline(lines, text)) {
    std::istringstream cells(text);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(cell);
  }
  return rows;
}

Json ketone_rows(const std::vector<double>& from, const Json& cells_of_rows) {
  const std::vector<std::vector<std::string>> strips{{"negative", "trace"}, {"small"}, {"moderate"}, {}, {"large"}};
  Json rows = Json::array();
  for (std::size_t i = 0; i < from.size(); ++i) {
    Json row{{"from", from[i]}, {"urine", strips[i]}, {"cells", cells_of_rows[i]}, {"call", from[i] >= 3 ? "emergency" : from[i] >= 1.5 ? "team" : "none"}};
    row["repeatHours"] = 2;
    rows.push_back(row);
  }
  return rows;
}

TEST(Printed, CV43TheCellsOfTheMemoryTableAsTheyStand) {
  // [ispad-sick], MEMORY: not a recommendation; the table must be carried as it stands. Low share of each cell, at its edge, with
  // a daily total of 40 and no correction in the way (replace). Below 14 there is no dose at 3.0: go.
  const std::vector<double> edges{0, 0.6, 1.0, 1.5, 3.0}, columns{0, 5.5, 10, 14, 22};
  std::vector<std::vector<double>> shares(edges.size(), std::vector<double>(columns.size(), 0));
  for (const auto& row : grid("ispad-sick/table.csv"))
    for (std::size_t r = 0; r < edges.size(); ++r)
      for (std::size_t c = 0; c < columns.size(); ++c)
        if (std::stod(row[0]) == edges[r] && (row[2].empty() ? 0 : std::stod(row[2])) <= columns[c] && (row[3].empty() || columns[c] < std::stod(row[3])))
          shares[r][c] = std::stod(row[4]);
  Json cells = Json::array();
  for (const auto& row : shares) {
    cells.push_back(Json::array());
    for (const double s : row) cells.back().push_back(s == 0 ? Json("none") : share(s));
  }
  const Json plan = wide({{"/ketones/rows", ketone_rows(edges, cells)}, {"/ketones/columns", columns}, {"/ketones/carbohydrateOnlyBelow", 5.5},
                          {"/day/target", schedule(13.9)}, {"/day/correctionFactor", schedule(30)}});
  for (std::size_t r = 1; r < edges.size(); ++r)
    for (std::size_t c = 1; c < columns.size(); ++c) {
      SCOPED_TRACE("ketones " + std::to_string(edges[r]) + ", glucose " + std::to_string(columns[c]));
      const Json answer = advise(plan, nothing, at(columns[c], edges[r]));
      const bool goes = edges[r] >= 3.0;
      EXPECT_EQ(answer["call"] == "emergency", goes);
      if (shares[r][c] == 0 || (goes && columns[c] < 14)) {
        EXPECT_EQ(dose(answer), "none");
        continue;
      }
      const double units = shares[r][c] * 40;
      ASSERT_FALSE(answer["dose"].is_null());
      EXPECT_DOUBLE_EQ(std::stod(extra(answer)), units);
      EXPECT_EQ(answer["dose"]["units"], units);
    }
}

TEST(Printed, CV43ItsFiveExamples) {
  // MEMORY: 18, 1.2: 4 / 18, 1.8: 4 (to 8), again at 2 h / 8, 1.8: 2 and carbohydrate / 5.0, 0.8: none, carbohydrate / 24, 0.3, 40 kg: 4.
  const Json rows = ketone_rows({0, 0.6, 1.0, 1.5, 3.0}, {{"none", "none", "none", per_kg(0.05), per_kg(0.10)},
                                                         {"none", "none", share(0.05), share(0.05), share(0.10)},
                                                         {"none", "none", share(0.05), share(0.10), share(0.10)},
                                                         {"none", share(0.05), share(0.10), share(0.10), share(0.10)},
                                                         {"none", share(0.05), share(0.10), share(0.10), share(0.10)}});
  const Json plan = wide({{"/ketones/rows", rows}, {"/ketones/columns", {0, 5.5, 10, 14, 22}}, {"/ketones/carbohydrateOnlyBelow", 5.5}, {"/person/weightKg", 40}});
  EXPECT_EQ(dose(advise(plan, nothing, at(18.0, 1.2))), "4 units");
  const Json again = advise(plan, nothing, at(18.0, 1.8));
  EXPECT_EQ(dose(again), "4 units");
  EXPECT_EQ(asked::hold_clock(again, "ketoneDose"), "05:10");
  const Json ate = advise(plan, nothing, at(8.0, 1.8));
  EXPECT_EQ(dose(ate), "2 units");
  EXPECT_GT(ate["carbohydrateGrams"], 0);
  const Json food = advise(plan, nothing, at(5.0, 0.8));
  EXPECT_EQ(dose(food), "none");
  EXPECT_GT(food["carbohydrateGrams"], 0);
  Json from_zero = plan;  // this table doses below 0.6, so it acts from 0.0
  from_zero["ketones"]["actFrom"] = 0.0;
  EXPECT_EQ(dose(advise(from_zero, nothing, at(24.0, 0.3))), "4 units");
}

TEST(Printed, CV44TheGridByWeight) {
  // [se-ketones], DERIVED from a READ grid, 40 kg: 18 with 0.7: 2 / 12 with 1.2: eat and 2 / 18 with 2.0: 4, again if not falling.
  const Json rows = ketone_rows({0, 0.5, 1.0, 1.5, 3.0}, {{"none", "none", "none", "none"},
                                                         {"none", "none", per_kg(0.05), per_kg(0.1)},
                                                         {"none", per_kg(0.05), per_kg(0.1), per_kg(0.1)},
                                                         {"none", per_kg(0.1), per_kg(0.1), per_kg(0.1)},
                                                         {"none", "none", per_kg(0.1), per_kg(0.1)}});
  const Json plan = wide({{"/ketones/rows", rows}, {"/ketones/columns", {0, 10, 14, 22}}, {"/ketones/actFrom", 0.5}, {"/person/weightKg", 40},
                          {"/day/target", schedule(11.5)}});
  EXPECT_EQ(dose(advise(plan, nothing, at(18.0, 0.7))), "2 units");
  const Json ate = advise(plan, nothing, at(12.0, 1.2));
  EXPECT_EQ(dose(ate), "2 units");
  EXPECT_GT(ate["carbohydrateGrams"], 0);
  EXPECT_EQ(dose(advise(plan, nothing, at(18.0, 2.0))), "4 units");
}

TEST(Printed, CV45TheSameTenPercentAndCallAtOnce) {
  // [landspitali], DERIVED: daily 40, ketones 2.0: 4, look 2 h; 3.2: 4 and call at once.
  const Json plan = wide(changes({with_cells(2, share(0.10)), with_cells(3, share(0.10)), {{"/high/looksAfterInjection", {120}}}}));
  const Json two = advise(plan, nothing, at(16.0, 2.0));
  EXPECT_EQ(dose(two), "4 units");
  EXPECT_EQ(asked::looks(two), "05:10");
  const Json three = advise(plan, nothing, at(16.0, 3.2));
  EXPECT_EQ(dose(three), "4 units");
  EXPECT_EQ(three["call"], "emergency");
}

TEST(Printed, CV46BetweenOnePointThreeAndOnePointFiveTimes) {
  // [fi-ketones], DERIVED: correction 4 (here (16.5 - 6.5) / 2.5), ketones 2.0: 5.2 to 6.0.
  EXPECT_EQ(extra(advise(wide(with_cells(2, times(1.3))), nothing, at(16.5, 2.0))), "5.2");
  EXPECT_EQ(extra(advise(wide(with_cells(2, times(1.5))), nothing, at(16.5, 2.0))), "6");
}

TEST(Printed, CV52WhatStillActsComesOff) {
  // Sources section 7, DERIVED: (300 - 120) / 50 = 3.6; 4 units 2 h ago with 5 h of action leave 2.1565, counted up to 2.16; down 0.5.
  const Json plan = child_with({{"/rapid/actionHours", 5}, {"/day/target", schedule(120)}, {"/day/correctionFactor", schedule(50)}});
  const Json by_the_pump = Json::array({{{"ago", 120}, {"kind", "pumpDose"}, {"units", 4}, {"purpose", "automatic"}}});
  const Json answer = advise(plan, by_the_pump, {{"glucose", 300}, {"ketones", 0.2}, {"pumpOffersNothing", true}});
  EXPECT_EQ(line(answer, "correction"), "3.6");
  EXPECT_EQ(line(answer, "onBoard"), "2.16");
  EXPECT_NEAR(std::stod(line(answer, "net")), 1.4435, 0.01);
  EXPECT_EQ(dose(answer), "1 unit");
}

TEST(Printed, CV79HowADoseIsWritten) {
  // [ismp-2021], READ rule: leading zero, no trailing zero, the word in full after a no-break space.
  const auto written = [](double daily, const char* mark) {
    const Json plan = wide(changes({with_cells(1, share(0.10)), half_units, {{"/dailyTotal", daily}, {"/decimalMark", mark}, {"/day/target", schedule(14.0)}}}));
    return advise(plan, nothing, at(16.0, 0.8)).at("dose");
  };
  EXPECT_EQ(written(10, ".")["text"], "1\u00A0unit");
  EXPECT_EQ(written(5, ".")["text"], "0.5\u00A0units");
  EXPECT_EQ(written(120, ".")["text"], "12\u00A0units");
  EXPECT_EQ(written(5, ",")["text"], "0,5\u00A0units");
  EXPECT_EQ(written(10, ".")["number"], "1");
  EXPECT_EQ(written(5, ",")["number"], "0,5");
}

TEST(Printed, OneAndTwoUnitsAreAddedToTheCorrection) {
  // [uva], READ: correction + 1 with a moderate strip, + 2 with a large one; under replace as well. (16.0 - 6.5) / 2.5 = 3.8.
  const Json plan = wide(changes({with_cells(2, {{"addUnits", 1}}), with_cells(3, {{"addUnits", 2}})}));
  EXPECT_EQ(extra(advise(plan, nothing, at(16.0, "moderate"))), "4.8");
  EXPECT_EQ(extra(advise(plan, nothing, at(16.0, "large"))), "5.8");
}

TEST(Printed, TwiceTheCorrectionOrAFifthOfTheDay) {
  // [umass], READ: urine moderate to large: twice the correction, or 20 % of the daily dose.
  EXPECT_EQ(extra(advise(wide(with_cells(2, times(2.0))), nothing, at(16.0, "moderate"))), "7.6");
  EXPECT_EQ(extra(advise(wide(with_cells(2, share(0.20))), nothing, at(16.0, "moderate"))), "8");
}

TEST(Printed, TheShareReplacesThePumpsFigure) {
  // [sickkids], READ: 10 % of the daily dose instead of the pump's figure, here 3.2 under a correction of 3.8.
  const Json answer = advise(wide(changes({with_cells(1, share(0.10)), {{"/dailyTotal", 32}}})), nothing, at(16.0, 0.8));
  EXPECT_EQ(line(answer, "chosen"), "extra");
  EXPECT_EQ(dose(answer), "3 units");
}

}  // namespace
}  // namespace stopgap
