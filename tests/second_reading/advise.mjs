// The advice as the text of the rules gives it, for comparison with the core. Exact fractions throughout; a different
// language, a different shape. What a person or a program reads of it stands in answer.mjs.
import { exact, greater, none } from './fraction.mjs';
import { dosing } from './dose.mjs';
import { factsOf } from './facts.mjs';
import { gateFor } from './gate.mjs';
import { upToMinute } from './clock.mjs';
import { runHolds } from './holds.mjs';
import { day, dayOf } from './record.mjs';
import { decidingRule, fallsAbsorbed, repeatSpan } from './rules.mjs';


const urgency = ['none', 'team', 'emergency'];
const longestLongActing = 48 * 3600;   // the most a plan may say

class Advice {
  outcome = null;
  gate = null;
  call = 'none';
  rescue = none;
  meal = none;
  grams = none;
  dose = null;
  holdEnd = null;
  holdsKetones = false;
  cautions = new Set();
  looks = new Map();   // instant → whether ketones are tested as well
  holds = new Map();
  raise(call) { if (urgency.indexOf(call) > urgency.indexOf(this.call)) this.call = call; }
  eat(grams) { this.grams = greater(this.grams, grams); }
  look(at, ketonesToo = true) { this.looks.set(at, ketonesToo || !!this.looks.get(at)); }
  hold(what, until, now) { if (until > now && !(this.holds.get(what) >= until)) this.holds.set(what, until); }
}

const quarters = [15, 30, 45, 60];

export const adviseAgain = (request, calledAtLeast) => {
  const f = factsOf(request), doses = dosing(f), advice = new Advice(), { plan, now, situation } = f, { high } = plan;
  const rule = decidingRule(f);
  const look = minutes => advice.look(now + minutes * 60);
  // A rule's own look, which may be at glucose alone.
  const glucoseLook = (minutes, ketonesToo = false) => advice.look(now + minutes * 60, ketonesToo);
  const byRow = () => { if (f.row) advice.raise(f.row.call); };
  const offer = ({ dose, alone }) => {
    advice.rescue = dose.rounded;
    advice.meal = rule === 'EMR' ? none : doses.mealPart(situation.carbs, dose.rounded);
    if (dose.cut) { advice.cautions.add('cut'); advice.raise('team'); }
    const other = doses.rescueFor(rule, f.otherWay, alone).rounded, apart = other.sub(dose.rounded);
    if (apart.gt(doses.step) || none.sub(apart).gt(doses.step)) look(60);
    advice.dose = { working: dose, otherBound: other.add(advice.meal) };
    for (const minutes of high.looksAfterInjection) look(minutes);
  };
  const outcomeOf = { REC: 'recordInDoubt', CLK: 'clockInDoubt', ASK: 'didYouInject' };
  const close = ({ closed, end, byCap, alone }) => {
    advice.gate = closed;
    advice.grams = none;
    if (closed !== 'HLD') {
      advice.outcome = outcomeOf[closed];
      return;
    }
    advice.outcome = 'hold';
    advice.holdEnd = end;
    advice.holdsKetones = !!byCap && alone;
    byRow();
    advice.look(Math.min(upToMinute(end), now + 3600));
    if (f.under(f.G, high.trigger) && f.wouldLow) advice.eat(doses.matched(none, f.counted));
    if (rule !== 'PMP') advice.meal = doses.mealPart(situation.carbs, none);
  };
  const eatOnly = onBoard => { advice.outcome = 'eat'; advice.eat(greater(plan.ketones.carbohydrateGrams, doses.matched(none, onBoard))); };
  const byNeedle = ({ outcome, underStep, matchWith }) => {
    const gate = gateFor(f, rule, doses);
    if (gate.closed) return close(gate);
    if (gate.dose.under) { advice.cautions.add('underStep'); return underStep(); }
    advice.outcome = outcome;
    offer(gate);
    if (matchWith && f.under(f.G, high.trigger)) advice.eat(doses.matched(advice.rescue, matchWith));
  };
  const onlyEatBelow = () => f.below(f.G, plan.ketones.carbohydrateOnlyBelow);

  const say = {
    LWE: () => {
      advice.outcome = 'lowEmergency'; advice.raise('emergency'); glucoseLook(15);
      if (!f.has('fitting', 'cannotSwallow')) advice.eat(doses.gramsForALow());
    },
    EMR: () => {
      advice.outcome = 'emergency'; advice.raise('emergency');
      const swallows = !f.has('fitting', 'cannotSwallow'), keepsDown = swallows && !f.has('cannotKeepFluid', 'vomitedAgain');
      if (!f.isLow && f.usable && f.finger && f.high && (!f.HI || f.repeated) && f.row && f.acting && !f.too) {
        const gate = gateFor(f, 'EMR', doses);
        if (gate.closed) {
          advice.gate = gate.closed;
          if (gate.closed === 'HLD') advice.holdEnd = gate.end;
        }
        else if (gate.dose.under) advice.cautions.add('underStep');
        else offer(gate);
      }
      if (f.wouldLow || f.too) {
        if (keepsDown) advice.eat(doses.matched(advice.rescue, f.too ? f.absorbed : f.counted));
        quarters.forEach(look);
      }
      if (f.isLow && swallows) advice.eat(doses.gramsForALow());
    },
    TOO: () => {
      advice.outcome = 'tooMuch'; advice.raise('team'); byRow();
      const inFull = doses.matchedInFull(none, f.absorbed);
      if (f.unitsUnknown || f.severe || inFull.gt(100)) advice.raise('emergency');
      advice.eat(doses.matched(none, f.absorbed));
      if (!f.high) advice.eat(plan.low.grams);
      if (f.isLow) advice.eat(doses.gramsForALow());
      quarters.forEach(look);
      for (let minutes = 120; minutes <= plan.rapid.actionHours * 60; minutes += 60) look(minutes);
    },
    LOW: () => {
      advice.outcome = 'treatLow';
      byRow();
      advice.eat(doses.gramsForALow());
      glucoseLook(plan.low.recheckMinutes, f.acting);
    },
    FAL: () => {
      advice.outcome = 'eatNow'; byRow();
      if (f.acting) advice.raise('team');
      advice.eat(greater(plan.low.grams, doses.matched(none, fallsAbsorbed(f) ? f.absorbed : f.counted)));
      glucoseLook(f.atOrAbove(f.G, high.middle) ? 30 : 15, f.acting);
    },
    PLN: () => { advice.outcome = 'noPlan'; byRow(); if (f.high || f.acting) advice.raise('team'); },
    FNG: () => { advice.outcome = 'testGlucose'; byRow(); },
    TST: () => { advice.outcome = 'testKetones'; if (f.lastActing) advice.raise('team'); },
    NOS: () => { advice.outcome = 'callTeam'; advice.raise('team'); },
    CAL: () => {
      advice.outcome = 'callTeam'; advice.raise('team'); byRow();
      const calls = f.events.filter(event => event.kind === 'call' && event.to === 'team');
      const waiting = calls.slice(calls.findLastIndex(call => call.answered) + 1);
      if (waiting.length && now - waiting[0].t >= 1800) advice.raise('emergency');
    },
    ANY: () => {
      advice.raise('team'); byRow();
      if (onlyEatBelow()) return eatOnly(f.absorbed);
      const underStep = () => {
        if (f.high) advice.outcome = 'callTeam';
        else eatOnly(f.absorbed);
      };
      byNeedle({ outcome: 'injectAtAnyGlucose', matchWith: f.counted, underStep });
    },
    DWN: () => {
      byRow(); advice.outcome = 'comingDown';
      advice.eat(exact(plan.ketones.carbohydrateGrams).add(doses.matched(none, f.counted)));
      const gate = gateFor(f, 'DWN', doses);
      if (gate.closed) return close(gate);
      if (f.sinceNeedle >= repeatSpan(f) && !onlyEatBelow()) advice.meal = doses.mealPart(plan.ketones.carbohydrateGrams, none);
    },
    KET: () => { byRow(); byNeedle({ outcome: 'inject', matchWith: f.counted, underStep: () => { advice.outcome = 'callTeam'; advice.raise('team'); } }); },
    EAT: () => {
      byRow();
      if (onlyEatBelow() || doses.cellNow() === 'none') return eatOnly(f.absorbed);
      byNeedle({ outcome: 'eatAndInject', matchWith: f.absorbed, underStep: () => { advice.raise('team'); eatOnly(f.absorbed); } });
    },
    INJ: () => {
      if (f.noStrips) { look(60); if (f.unwell) advice.raise('team'); }
      byNeedle({ outcome: 'inject', underStep: () => { advice.outcome = 'changeSet'; } });
    },
    WAI: () => {
      advice.outcome = 'wait';
      const at = minutes => f.correction.t + minutes * 60, end = f.correction.t + plan.limits.lockHours * 3600;
      const times = [at(high.firstLook)];
      for (let minutes = high.secondLook; at(minutes) < end; minutes += 60) times.push(at(minutes));
      for (const time of times) if (time > now && time < end) advice.look(time);
      advice.look(upToMinute(end));
    },
    PMP: () => {
      const gate = gateFor(f, 'PMP', doses);
      if (gate.closed) return close(gate);
      advice.outcome = 'correctByPump'; look(high.firstLook);
    },
    SGN: () => { advice.outcome = 'callTeam'; advice.raise('team'); },
    OFF: () => { advice.outcome = 'offPump'; },
    CHG: () => { advice.outcome = 'changeSet'; },
    END: () => { advice.outcome = 'over'; },
    NON: () => { advice.outcome = 'lookAgain'; glucoseLook(f.incident ? 60 : 120, f.incident); },
  };
  say[rule]();
  underEveryRule(f, advice, rule, look);
  advice.raise(calledAtLeast);
  runHolds(f, advice);
  const looks = [...advice.looks.keys()].sort((a, b) => a - b);
  const whats = looks.map(at => (advice.looks.get(at) ? ['glucose', 'ketones'] : ['glucose']));
  return { ...advice, f, rule, doses, cap: doses.cap, looks, whats };
};

// A call to the team that nobody answered is due again a day and two days after the pump stopped.
const callAboutThePump = f => {
  if (!f.offDead) return false;
  const gone = f.now - f.stopped;
  const from = f.stopped + (gone >= 2 * day ? 2 * day : gone >= day ? day : 0);
  return !f.events.some(event => event.kind === 'call' && event.to === 'team' && event.answered && event.t >= from);
};

const underEveryRule = (f, advice, rule, look) => {
  const { plan, now, situation } = f;
  const callsTeam = [
    f.HI, f.danger, f.noStrips && f.unwell, f.offDead && (f.acting || f.high), f.noStrips && f.lastActing,
    f.manyDoses && (f.acting || f.high || rule === 'FAL'), callAboutThePump(f), f.risk && f.noStrips && f.high,
    f.sensorOnly && ['ANY', 'KET', 'EAT', 'INJ'].includes(rule),
  ];
  if (callsTeam.some(Boolean)) advice.raise('team');
  if (advice.gate === 'CLK' || advice.gate === 'REC') advice.raise('team');
  const longSpan = plan.longActing ? plan.longActing.actionHours * 3600 : longestLongActing;
  if (situation.mistake?.insulin === 'long' || f.events.some(event => event.kind === 'mistake' && event.insulin === 'long' && now - event.t <= longSpan)) {
    advice.cautions.add('longActing');
    advice.raise('team');
  }
  if (f.goesLow(f.absorbed.add(advice.rescue))) {
    advice.cautions.add('couldGoLow');
    look(60);
    if (f.atOrAbove(f.G, plan.high.trigger)) { look(30); advice.raise('team'); }
  }
  if (!advice.looks.size) look(60);
  if (f.inGrace) advice.cautions.add('inGrace');
  if (f.sensorOnly) advice.cautions.add('sensorOnly');
  if (f.noStrips) advice.cautions.add('noStrips');
  if (f.setChanged && f.lastNeedle && f.sinceNeedle <= plan.rapid.actionHours * 3600) advice.cautions.add('newLineUnproven');
  const [bornYear, bornMonth, bornDay] = plan.person.born.split('-').map(part => Number.parseInt(part, 10)), today = new Date(f.localDay * day * 1000);
  const hadBirthday = today.getUTCMonth() + 1 > bornMonth || (today.getUTCMonth() + 1 === bornMonth && today.getUTCDate() >= bornDay);
  const age = today.getUTCFullYear() - bornYear - (hadBirthday ? 0 : 1);
  if (f.localDay - dayOf(plan.person.measuredOn) > (age < 18 ? 90 : 365)) advice.cautions.add('staleWeight');
};
