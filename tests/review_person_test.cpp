// What the review finds about the person, the agreement and the people who can be called: each finding with a plan that has it
// and a neighbour, one step away, that has not.
#include "review.hpp"

namespace stopgap::desk {
namespace {

// The example's person is 39 on the day of measuring: 35 to 200 kg.
TEST(ReviewPerson, AnAdultsWeightHasWideBounds) {
  EXPECT_EQ(found("weight-for-age", with({{"/person/weightKg", 34.9}})), "confirm /plan/person/weightKg least=35 most=200 weight=34.9 years=39");
  EXPECT_EQ(level("weight-for-age", with({{"/person/weightKg", 35}})), none);
  EXPECT_EQ(level("weight-for-age", with({{"/person/weightKg", 200}})), none);
  EXPECT_EQ(level("weight-for-age", with({{"/person/weightKg", 200.1}})), "confirm");
}

// The demo child is 9: 2 kg × (9 + 4) = 26 kg by the formula; half is 13, twice is 52.
TEST(ReviewPerson, AChildsWeightIsMeasuredByTheFormula) {
  EXPECT_EQ(level("weight-for-age", child({{"/person/weightKg", 13}})), none);
  EXPECT_EQ(found("weight-for-age", child({{"/person/weightKg", 12.9}})), "confirm /plan/person/weightKg least=13 most=52 weight=12.9 years=9");
  EXPECT_EQ(level("weight-for-age", child({{"/person/weightKg", 52}})), none);
  EXPECT_EQ(level("weight-for-age", child({{"/person/weightKg", 52.1}})), "confirm");
}

// Measured on 2026-10-19. At 10 the formula gives 28 kg, twice is 56; from 11 to 17 there is none.
TEST(ReviewPerson, TheFormulaEndsWithTheTenthYear) {
  EXPECT_EQ(level("weight-for-age", child({{"/person/weightKg", 100}, {"/person/born", "2015-10-20"}})), "confirm");
  EXPECT_EQ(level("weight-for-age", child({{"/person/weightKg", 100}, {"/person/born", "2015-10-19"}})), none);
}

TEST(ReviewPerson, MeasuredBeforeItIsAgreed) {
  EXPECT_EQ(found("measured-after-agreement", with({{"/person/measuredOn", "2026-10-03"}})),
            "confirm /plan/person/measuredOn agreed=2026-10-02 measured=2026-10-03");
  EXPECT_EQ(level("measured-after-agreement", with({{"/person/measuredOn", "2026-10-02"}})), none);
}

// Agreed on 2026-10-20: 20 days of October, 30 of September, 31 of August and 9 of July are 90.
TEST(ReviewPerson, AChildIsMeasuredEvery90Days) {
  EXPECT_EQ(level("measured-long-ago", child({{"/person/measuredOn", "2026-07-22"}})), none);
  EXPECT_EQ(found("measured-long-ago", child({{"/person/measuredOn", "2026-07-21"}})),
            "note /plan/person/measuredOn days=91 limit=90 measured=2026-07-21");
}

// Agreed on 2026-10-02; no leap day in the year before.
TEST(ReviewPerson, AnAdultIsMeasuredEveryYear) {
  EXPECT_EQ(level("measured-long-ago", with({{"/person/measuredOn", "2025-10-02"}})), none);
  EXPECT_EQ(found("measured-long-ago", with({{"/person/measuredOn", "2025-10-01"}})),
            "note /plan/person/measuredOn days=366 limit=365 measured=2025-10-01");
}

TEST(ReviewPerson, AChildIsOneUntilTheDayOf18) {
  const Json measured{{"/person/measuredOn", "2026-06-01"}, {"/person/weightKg", 60}};
  Json grown = with(measured), nearly = with(measured);
  grown["person"]["born"] = "2008-10-02";
  nearly["person"]["born"] = "2008-10-03";
  EXPECT_EQ(level("measured-long-ago", grown), none);
  EXPECT_EQ(level("measured-long-ago", nearly), "note");
}

TEST(ReviewAgreement, TheReviewIsWithin12Months) {
  EXPECT_EQ(level("review-far-ahead", with({{"/agreement/reviewBy", "2027-10-02"}})), none);
  EXPECT_EQ(found("review-far-ahead", with({{"/agreement/reviewBy", "2027-10-03"}})),
            "confirm /plan/agreement/reviewBy agreed=2026-10-02 review=2027-10-03");
}

TEST(ReviewAgreement, EveryHouseRuleIsAgreedByName) {
  EXPECT_EQ(level("house-rule-not-agreed", with({})), none);
  EXPECT_EQ(found("house-rule-not-agreed", with({{"/agreement/houseRules", {"rollingShare", "extraNotReduced"}}})),
            "refuse /plan/agreement/houseRules rule=matchedCarbohydrate");
  EXPECT_EQ(found("house-rule-not-agreed", with({{"/agreement/houseRules", {"matchedCarbohydrate"}}})),
            "refuse /plan/agreement/houseRules rule=rollingShare; refuse /plan/agreement/houseRules rule=extraNotReduced");
  EXPECT_EQ(level("house-rule-not-agreed", with({{"/agreement/houseRules", Json::array()}})), "refuse; refuse; refuse");
}

// Unicode's Default_Ignorable_Code_Point, a member of each span, in names that look the same without it.
TEST(ReviewText, ACharacterThatNobodyCanSeeIsNotAgreed) {
  for (const auto& [typed, code] : std::vector<std::pair<std::string, std::string>>{
           {"Ma\u00ADren", "U+00AD"}, {"Ma\u034Fren", "U+034F"}, {"\u3164Maren", "U+3164"}, {"Ma\u180Bren", "U+180B"}, {"Maren\u200B", "U+200B"},
           {"Ma\u200Cren", "U+200C"}, {"Ma\u200Dren", "U+200D"}, {"\u2060Maren", "U+2060"}, {"Ma\uFE0Fren", "U+FE0F"}, {"\uFEFFMaren", "U+FEFF"},
           {"Ma\U000E0061ren", "U+E0061"}, {"Ma\U000E0100ren", "U+E0100"}})
    EXPECT_EQ(found("hidden-character", with({{"/person/name", typed}})), "refuse /plan/person/name code=" + code) << code;
  EXPECT_EQ(level("hidden-character", with({{"/person/name", "Maren Oduya"}})), none);
  EXPECT_EQ(found("hidden-character", with({{"/contacts/0/name", "Night\u200B line"}})), "refuse /plan/contacts/0/name code=U+200B");
}

// A joiner between letters of a script that is written with it: Persian, Sinhala, Malayalam at the end of a word.
TEST(ReviewText, JoinersStayWhereTheScriptNeedsThem) {
  for (const char* typed : {"\u0646\u06CC\u200C\u0631\u0627", "\u0DC1\u0DCA\u200D\u0DBB\u0DD3", "\u0D05\u0D28\u0D4D\u200D"})
    EXPECT_EQ(level("hidden-character", with({{"/person/name", typed}})), none) << typed;
  EXPECT_EQ(level("hidden-character", with({{"/person/name", "\u0646\u200C Maren"}})), "refuse");
}

// Taking a plan away at night is worse than a name with such a character in it.
TEST(ReviewText, APlanInUseGoesOnGivingItsDose) {
  const auto answer = [](const Json& plan) {
    Json out = asked::advise(plan, asked::nothing, asked::at(16.0, 0.8));
    out.erase("planFingerprint");  // the name is part of it
    return out;
  };
  const Json plain_name = answer(with({})), hidden = answer(with({{"/person/name", "Ma\u200Bren"}}));
  ASSERT_TRUE(plain_name.contains("dose")) << plain_name.dump();
  EXPECT_EQ(hidden, plain_name);
}

std::string night_call(const Json& when) { return level("no-contact-at-night", with({{"/contacts/0/when", when}})); }

TEST(ReviewContacts, SomebodyAnswersAllNight) {
  for (const char* when : {"any hour", "Any hour", " any hour ", "22:00-06:00", "20:00 - 08:00", "20:00\u201308:00", "00:00-00:00", "06:00-06:00"})
    EXPECT_EQ(night_call(when), none) << when;
  for (const char* when : {"22:01-06:00", "22:00-05:59", "08:00-22:00", "06:00-22:00", "23:00-23:30", "at night", "any hours", "any", "22:00", "", "22-06"})
    EXPECT_EQ(night_call(when), "refuse") << when;
  EXPECT_EQ(found("no-contact-at-night", with({{"/contacts/0/when", nullptr}})), "refuse /plan/contacts from=22:00 until=06:00");
}

TEST(ReviewContacts, OneContactAtNightIsEnough) {
  Json plan = with({{"/contacts/0/when", "08:00-16:00"}});
  EXPECT_EQ(level("no-contact-at-night", plan), "refuse");
  plan["contacts"].push_back({{"name", "Ana, sister"}, {"relation", "home"}, {"phone", "+44 0000 000009"}, {"when", "any hour"}});
  EXPECT_EQ(level("no-contact-at-night", plan), none);
}

TEST(ReviewContacts, ThereIsATeamToCall) {
  EXPECT_EQ(level("no-team-contact", with({})), none);
  EXPECT_EQ(found("no-team-contact", with({{"/contacts/0/relation", "neighbour"}})), "refuse /plan/contacts");
}

TEST(ReviewContacts, ASchoolNeedsSomebodyAtHome) {
  EXPECT_EQ(level("no-home-contact", child({})), none);
  EXPECT_EQ(found("no-home-contact", child({{"/contacts/1/relation", "aunt"}})), "refuse /plan/contacts");
  EXPECT_EQ(level("no-home-contact", child({{"/contacts/1/relation", "aunt"}, {"/school", nullptr}})), none);
}

// Only a draft can be read without the number.
TEST(ReviewContacts, ThereIsAnEmergencyNumber) {
  EXPECT_EQ(found("no-emergency-number", with({{"/agreement/status", "draft"}, {"/emergencyNumber", ""}})), "refuse /plan/emergencyNumber");
  EXPECT_EQ(level("no-emergency-number", with({{"/agreement/status", "draft"}})), none);
}

TEST(ReviewContacts, NumbersThatCanBeDialled) {
  const auto of = [](const char* phone) { return with({{"/contacts/0/phone", phone}}); };
  for (const char* good : {"112", "+44 0000 000000", "00-00", "123456789012345"}) EXPECT_EQ(level("phone-unclear", of(good)), none) << good;
  EXPECT_EQ(found("phone-unclear", of("+44 (0) 0000 000000")),
            "refuse /plan/contacts/0/phone name=Night line, diabetes unit phone=+44 (0) 0000 000000");
  for (const char* bad : {"11", "1234567890123456", "0000 000000 x4", "0000, 0001", "++44 000"}) EXPECT_EQ(level("phone-unclear", of(bad)), "refuse") << bad;
  EXPECT_EQ(found("phone-unclear", with({{"/emergencyNumber", "112 / 999"}})), "refuse /plan/emergencyNumber name=112 / 999 phone=112 / 999");
  EXPECT_EQ(level("phone-unclear", with({{"/agreement/status", "draft"}, {"/emergencyNumber", ""}})), none);
}

Json one_contact(const char* relation, const Json& when) {
  Json plan = with({});
  plan["contacts"].push_back({{"name", "Ward"}, {"relation", relation}, {"phone", "0000 000001"}, {"when", when}});
  return plan;
}

TEST(ReviewContacts, HoursThatCanBeRead) {
  EXPECT_EQ(level("hours-unreadable", one_contact("team", "Mon-Fri 08:00-16:30")), none);
  EXPECT_EQ(found("hours-unreadable", one_contact("team", "Mon-Fri 8:00-16:30")), "confirm /plan/contacts/1/when name=Ward number=112 relation=team");
  EXPECT_EQ(level("hours-unreadable", one_contact("home", "evenings")), "confirm");
  EXPECT_EQ(level("hours-unreadable", one_contact("neighbour", "evenings")), none);  // no call rings them by the hour
  EXPECT_EQ(level("hours-unreadable", with({{"/contacts/0/when", nullptr}})), "confirm");
}

Json team(std::initializer_list<const char*> hours) {
  Json contacts = Json::array();
  for (const char* when : hours) contacts.push_back({{"name", std::string{"Line "} + std::to_string(contacts.size() + 1)}, {"relation", "team"}, {"phone", "0000 000001"}, {"when", when}});
  return with({{"/contacts", contacts}});
}

TEST(ReviewContacts, AtEveryHourSomebodyOfTheTeam) {
  for (const auto& hours : {std::initializer_list<const char*>{"any hour"}, {"08:00-20:00", "20:00-08:00"}, {"06:00-06:00"}, {"Mon-Fri 08:00-16:30", "any hour"},
                            {"Mon-Fri 00:00-00:00", "Sat-Sun 00:00-00:00"}})
    EXPECT_EQ(level("no-team-at-some-hour", team(hours)), none);
  EXPECT_EQ(found("no-team-at-some-hour", team({"08:00-20:00", "20:01-08:00"})),
            "confirm /plan/contacts dayFrom=Mon dayUntil=Mon days=every from=20:00 instead=112 until=20:01");
  // From Friday's end to Monday's beginning is the longest.
  EXPECT_EQ(found("no-team-at-some-hour", team({"Mon-Fri 08:00-16:30"})),
            "confirm /plan/contacts dayFrom=Fri dayUntil=Mon days=some from=16:30 instead=112 until=08:00");
  EXPECT_EQ(found("no-team-at-some-hour", team({"08:00-16:30", "evenings"})),
            "confirm /plan/contacts dayFrom=Mon dayUntil=Tue days=every from=16:30 instead=Line 2 until=08:00");
  EXPECT_EQ(found("no-team-at-some-hour", team({"evenings"})), "confirm /plan/contacts dayFrom=Mon dayUntil=Mon days=every from=00:00 instead=Line 1 until=00:00");
  // A draft may have no emergency number yet.
  Json draft = team({"08:00-16:30"});
  draft["agreement"]["status"] = "draft";
  draft["emergencyNumber"] = "";
  EXPECT_EQ(found("no-team-at-some-hour", draft), "confirm /plan/contacts dayFrom=Mon dayUntil=Tue days=every from=16:30 instead=\u2013 until=08:00");
  // Without any contact of the team that alone is found.
  EXPECT_EQ(level("no-team-at-some-hour", with({{"/contacts/0/relation", "neighbour"}})), none);
}

}  // namespace
}  // namespace stopgap::desk
