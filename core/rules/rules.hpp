// The index of rules: the way down in its order. The first rule whose condition holds decides; exactly one decides for every
// input. Each rule is two functions: `holds_<ID>` (its condition, facts only) and `say_<ID>` (what the advice then holds).
// Facts are derived in rules/facts.hpp before any rule; the gate and the dose are rules/gate.hpp and rules/dose.hpp.
#pragma once
#include "rules/facts.hpp"
#include "rules/proposal.hpp"

namespace stopgap::rules {

// LWE  A grave sign with a glucose that is, or is going, low: call emergency, never insulin.            rules/low.cpp
// EMR  Ketones of 3.0 and above, or a grave sign: go to hospital, with the plan's dose on the way.       rules/emergency.cpp
// TOO  Too much insulin is in, or the pump corrected on top of a needle: call, eat, look often.           rules/too_much.cpp
// LOW  Glucose is low: sugar, no insulin.                                                                rules/low.cpp
// FAL  Glucose is not high and would go low: eat now.                                                    rules/low.cpp
// PLN  The plan is a draft, withdrawn or past its time: no dose.                                         rules/plan_usable.cpp
// FNG  No reading to act on: test glucose from a finger.                                                 rules/tests_needed.cpp
// TST  Ketones matter and are not tested: test before any dose.                                          rules/tests_needed.cpp
// NOS  No strips, not high, but at risk: call the team.                                                  rules/tests_needed.cpp
// CAL  The doses the plan allows are given and it is still high: call, no further number.                 rules/call_for_help.cpp
// ANY  Pregnant or on an SGLT2 inhibitor with ketones: insulin at any glucose.                           rules/any_glucose.cpp
// DWN  After a dose ketones fall and glucose is not high: go on with carbohydrate and its insulin.        rules/ketones.cpp
// KET  Ketones with glucose in the middle or above: inject, never by the pump.                           rules/ketones.cpp
// EAT  Ketones with glucose below the middle: carbohydrate, with insulin by needle where the table says.  rules/ketones.cpp
// INJ  High, and delivery has failed or cannot be trusted: inject, change the set.                       rules/failed_delivery.cpp
// WAI  High, and a pump correction is still at work: wait.                                               rules/pump_correction.cpp
// PMP  High and nothing else: one correction by the pump.                                                rules/pump_correction.cpp
// SGN  A danger sign is left: call the team.                                                             rules/call_for_help.cpp
// OFF  The pump is off or dead: the off-pump plan.                                                       rules/failed_delivery.cpp
// CHG  A fault was seen: change what failed.                                                             rules/failed_delivery.cpp
// END  The incident is over: say when automation returns.                                                rules/over.cpp
// NON  Nothing found: look again.                                                                        rules/over.cpp
bool holds_LWE(const Facts&);  void say_LWE(const Facts&, Proposal&);
bool holds_EMR(const Facts&);  void say_EMR(const Facts&, Proposal&);
bool holds_TOO(const Facts&);  void say_TOO(const Facts&, Proposal&);
bool holds_LOW(const Facts&);  void say_LOW(const Facts&, Proposal&);
bool holds_FAL(const Facts&);  void say_FAL(const Facts&, Proposal&);
bool holds_PLN(const Facts&);  void say_PLN(const Facts&, Proposal&);
bool holds_FNG(const Facts&);  void say_FNG(const Facts&, Proposal&);
bool holds_TST(const Facts&);  void say_TST(const Facts&, Proposal&);
bool holds_NOS(const Facts&);  void say_NOS(const Facts&, Proposal&);
bool holds_CAL(const Facts&);  void say_CAL(const Facts&, Proposal&);
bool holds_ANY(const Facts&);  void say_ANY(const Facts&, Proposal&);
bool holds_DWN(const Facts&);  void say_DWN(const Facts&, Proposal&);
bool holds_KET(const Facts&);  void say_KET(const Facts&, Proposal&);
bool holds_EAT(const Facts&);  void say_EAT(const Facts&, Proposal&);
bool holds_INJ(const Facts&);  void say_INJ(const Facts&, Proposal&);
bool holds_WAI(const Facts&);  void say_WAI(const Facts&, Proposal&);
bool holds_PMP(const Facts&);  void say_PMP(const Facts&, Proposal&);
bool holds_SGN(const Facts&);  void say_SGN(const Facts&, Proposal&);
bool holds_OFF(const Facts&);  void say_OFF(const Facts&, Proposal&);
bool holds_CHG(const Facts&);  void say_CHG(const Facts&, Proposal&);
bool holds_END(const Facts&);  void say_END(const Facts&, Proposal&);
bool holds_NON(const Facts&);  void say_NON(const Facts&, Proposal&);

struct RuleEntry {
  Rule id;
  bool (*holds)(const Facts&);
  void (*say)(const Facts&, Proposal&);
};

inline constexpr RuleEntry in_order[rule_count] = {
    {Rule::LWE, holds_LWE, say_LWE}, {Rule::EMR, holds_EMR, say_EMR}, {Rule::TOO, holds_TOO, say_TOO}, {Rule::LOW, holds_LOW, say_LOW},
    {Rule::FAL, holds_FAL, say_FAL}, {Rule::PLN, holds_PLN, say_PLN}, {Rule::FNG, holds_FNG, say_FNG}, {Rule::TST, holds_TST, say_TST},
    {Rule::NOS, holds_NOS, say_NOS}, {Rule::CAL, holds_CAL, say_CAL}, {Rule::ANY, holds_ANY, say_ANY}, {Rule::DWN, holds_DWN, say_DWN},
    {Rule::KET, holds_KET, say_KET}, {Rule::EAT, holds_EAT, say_EAT}, {Rule::INJ, holds_INJ, say_INJ}, {Rule::WAI, holds_WAI, say_WAI},
    {Rule::PMP, holds_PMP, say_PMP}, {Rule::SGN, holds_SGN, say_SGN}, {Rule::OFF, holds_OFF, say_OFF}, {Rule::CHG, holds_CHG, say_CHG},
    {Rule::END, holds_END, say_END}, {Rule::NON, holds_NON, say_NON},
};

}  // namespace stopgap::rules
