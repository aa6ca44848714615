// The whole answer as the contract prints it, from the second reading: instants as seconds, the rest as it is told.
import { exact } from './fraction.mjs';
import { adviseAgain } from './advise.mjs';
import { clockAt, upToMinute } from './clock.mjs';
import { instant } from './record.mjs';
import { stepsOf } from './steps.mjs';

const holdOrder = ['correction', 'ketoneDose', 'automation', 'longActing', 'allRapid'];
const numberOf = value => Number.parseFloat(value.text());

// `calledAtLeast`: what a number of the plan that could not be agreed raises the call to.
export const answerAgain = (request, calledAtLeast = 'none') => {
  const advice = adviseAgain(request, calledAtLeast);
  const { f, rule, doses } = advice, { plan, situation } = f, { now } = situation;
  const decimal = (value, places) => value.text(places).replace('.', plan.decimalMark);
  const text = units => `${decimal(units)}\u00a0${exact(units).eq(1) ? 'unit' : 'units'}`;
  const total = advice.rescue.add(advice.meal);
  const until = (seconds, name) => ({ [name]: seconds, clock: clockAt(upToMinute(seconds), now) });

  const doseGiven = () => {
    const hasRescue = advice.rescue.gt(0), from = advice.dose?.working;
    const working = hasRescue && {
      correction: decimal(f.correctionNow), onBoard: decimal(f.counted), net: decimal(from.net),
      extra: decimal(from.extra),
      chosen: from.takesExtra ? 'extra' : 'net', cap: decimal(advice.cap), cut: from.cut && decimal(from.cut),
      beforeRounding: decimal(from.before),
    };
    return {
      units: numberOf(total), text: text(total), insulin: 'rapid', with: doses.device,
      parts: { rescue: numberOf(advice.rescue), meal: numberOf(advice.meal), basal: 0 },
      ...(hasRescue ? { working, otherBound: decimal(advice.dose.otherBound) } : {}),
      timesUsual: hasRescue && f.correctionNow.gt(0) ? decimal(advice.rescue.div(f.correctionNow), 1) : null,
    };
  };
  const lastNeedle = f.lastNeedle && {
    units: f.lastNeedle.units, text: text(exact(f.lastNeedle.units)), at: f.lastNeedle.t,
    clock: clockAt(f.lastNeedle.t, now),
    minutesAgo: Math.floor((f.now - f.lastNeedle.t) / 60),
  };
  const opens = !f.open && (f.high || f.acting || f.fault || f.offDead || rule === 'EMR');
  return {
    outcome: advice.outcome, decidedBy: rule, gate: advice.gate, call: advice.call, callFirst: false,
    dose: total.gt(0) ? doseGiven() : null, carbohydrateGrams: numberOf(advice.grams), given: lastNeedle,
    steps: stepsOf(f, advice, rule, { text, total, device: doses.device, looks: advice.looks }),
    holds: holdOrder.filter(what => advice.holds.has(what))
      .map(what => ({ what, ...until(advice.holds.get(what), 'until') })),
    hold: advice.holdEnd === null ? null : until(advice.holdEnd, 'until'),
    looks: advice.looks.map((at, i) => ({ at, clock: clockAt(at, now), what: advice.whats[i] })),
    cautions: [...advice.cautions].sort(), incident: rule === 'END' ? 'close' : opens ? 'open' : null,
  };
};
