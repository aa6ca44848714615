// FNG  No reading; HI not repeated, or from a sensor; a sensor's number with a meter at hand, from the middle up or with
//      ketones acting. Then: wash and dry a finger, test again; call by row.
// TST  Ketones not tested (or the strip failed) and it matters: high, unwell, pregnant, SGLT2 inhibitor, a fault seen, the pump
//      off or dead, an incident, or the last ketones act. Then: no dose before the test; call the team if the last ones act.
// NOS  No strips, not high, and unwell, pregnant or on an SGLT2 inhibitor. Then: call the team, get strips.
// Source: fingerstick before injecting and when ill R-21 [rch-sick-pump] [uclh-hcl]; HI is a category [tayside]; test when ill,
// pregnant or on an SGLT2 inhibitor R-07, R-08 [fi-ketones] [tg]. Edges: the middle exactly needs a finger.
#include "rules/rules.hpp"

namespace stopgap::rules {

bool holds_FNG(const Facts& facts) {
  if (facts.level == Level::missing) return true;
  if (facts.level == Level::HI) return facts.from_sensor || !facts.repeated;
  return facts.from_sensor && !facts.sensor_only && (facts.at_or_above(facts.plan.high.middle) || facts.acting);
}

void say_FNG(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::testGlucose;
  proposal.call_by_row(facts);
  proposal.step(Step::retest);
  if (facts.not_tested) proposal.step(Step::testKetones);
}

bool holds_TST(const Facts& facts) {
  if (!facts.not_tested) return false;
  return facts.high || facts.unwell || facts.pregnant || facts.sglt2_inhibitor || facts.fault_seen() || facts.off_or_dead ||
         facts.incident() || facts.last_acting;
}

void say_TST(const Facts& facts, Proposal& proposal) {
  proposal.advice.outcome = Outcome::testKetones;
  proposal.step(Step::testKetones);
  if (facts.last_acting) proposal.advice.raise_call(Call::team);
}

bool holds_NOS(const Facts& facts) {
  return facts.no_strips && !facts.high && (facts.unwell || facts.pregnant || facts.sglt2_inhibitor);
}

void say_NOS(const Facts&, Proposal& proposal) {
  proposal.advice.outcome = Outcome::callTeam;
  proposal.advice.raise_call(Call::team);
}

}  // namespace stopgap::rules
