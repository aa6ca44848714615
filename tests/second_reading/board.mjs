// Insulin on board: remaining action, summed, up to 0.01.
import { Fraction, exact, greater, none, remaining } from './fraction.mjs';
import { offsetOf, rescueOf } from './record.mjs';

export const boards = f => {
  const { plan, situation, events, now, incident } = f;
  const action = exact(plan.rapid.actionHours);
  const vomitedSince = time => f.vomiting || events.some(event => event.kind === 'sign' && event.t >= time && event.what.some(sign => sign === 'vomitedOnce' || sign === 'vomitedAgain'));
  // What carbohydrate covers, at the ratio of the time of the dose.
  const uncovered = (units, dose) => {
    const grams = events.filter(event => event.kind === 'carbs' && dose.ids.includes(event.for) && !vomitedSince(event.t)).reduce((sum, event) => sum.add(event.grams), none);
    return greater(0, exact(units).sub(grams.div(f.settingAt('carbohydrateRatio', dose.t + offsetOf(dose.at)))));
  };
  const onBoard = suspectCounts => {
    const left = (units, event) => exact(units).mul(remaining(now - event.t, action));
    let fixed = none, pump = none, overSink = none;
    for (const event of events) {
      if (event.kind === 'injection' && event.insulin === 'rapid')
        fixed = fixed.add(left(rescueOf(event).add(event.parts?.meal ? uncovered(event.parts.meal, event) : none), event));
      else if (event.kind === 'mistake' && event.insulin === 'rapid' && event.units !== undefined) fixed = fixed.add(left(event.units, event));
      else if (event.kind === 'offBody' && event.tubingEnd === 'sink') overSink = overSink.add(left(event.units, event));
      else if (event.kind === 'offBody') pump = pump.add(left(event.units, event));
      else if (event.kind === 'pumpDose') {
        const certain = !incident || event.t < f.since || (f.setChanged && event.t > f.setChanged.t);
        if (certain || suspectCounts) pump = pump.add(left(event.purpose === 'meal' ? uncovered(event.units, event) : event.units, event));
      }
    }
    const { mistake, pumpOnBoard } = situation;
    if (mistake?.insulin === 'rapid' && mistake.units !== undefined) fixed = fixed.add(mistake.units);
    if (pumpOnBoard !== undefined && suspectCounts) pump = greater(pump, exact(pumpOnBoard).sub(overSink));
    return new Fraction(fixed.add(pump).mul(100).ceil(), 100n);
  };
  const suspectCounts = !incident || !(f.fault || f.faultInIncident || f.acting || f.failedSecond);
  const counted = onBoard(suspectCounts);
  return { counted, absorbed: onBoard(true), otherWay: incident ? onBoard(!suspectCounts) : counted };
};
