// Insulin on board: remaining action, summed, up to 0.01.
import { Fraction, exact, greater, none, remaining } from './fraction.mjs';
import { offsetOf, rescueOf } from './record.mjs';

const day = 24 * 3600;

// The basal of a stretch by the schedule at local time, hour by hour and at each change.
const basalOver = (plan, from, to, offset) => {
  let sum = none;
  for (let at = from; at < to;) {
    const second = (((at + offset) % day) + day) % day;
    const starts = plan.day.basal.map(entry => ({ ...entry, second: entry.from.split(':').reduce((all, part) => all * 60 + Number.parseInt(part, 10), 0) * 60 }));
    const rate = starts.findLast(entry => entry.second <= second).value;
    const change = starts.find(entry => entry.second > second)?.second ?? day;
    const end = Math.min(to, at + change - second);
    sum = sum.add(exact(rate).mul(end - at).div(3600));
    at = end;
  }
  return sum;
};

// Basal injected for hours that had theirs already acts like any other insulin. A bridge without `basalHours` lasts `bridgeHours`, or as
// long as its basal part does by the schedule where a whole step is missing; half an hour early it follows on the last one.
const basalGivenAgain = (plan, events) => {
  const again = new Map(), { step } = plan.syringe ?? plan.pen, bridge = plan.offPump.bridgeHours * 3600;
  let covered = null;
  for (const event of events) {
    const basal = event.kind === 'injection' && event.insulin === 'rapid' ? exact(event.parts?.basal ?? 0) : none;
    if (!basal.gt(0)) continue;
    const needed = basalOver(plan, event.t, event.t + bridge, offsetOf(event.at));
    if (event.basalHours === undefined && !needed.ge(step)) continue;
    if (covered !== null && covered - event.t > 30 * 60) again.set(event, basal);
    const short = needed.sub(basal).ge(step);
    const lasts = event.basalHours !== undefined ? Math.round(event.basalHours * 3600)
      : short ? Number(basal.div(needed).mul(bridge).floor()) : bridge;
    covered = (covered !== null && covered > event.t ? covered : event.t) + lasts;
  }
  return again;
};

export const boards = f => {
  const { plan, situation, events, now, incident } = f;
  const action = exact(plan.rapid.actionHours);
  const vomitedSince = time => f.vomiting || events.some(event => event.kind === 'sign' && event.t >= time && event.what.some(sign => sign === 'vomitedOnce' || sign === 'vomitedAgain'));
  // What carbohydrate covers, at the ratio of the time of the dose.
  const uncovered = (units, dose) => {
    const grams = events.filter(event => event.kind === 'carbs' && dose.ids.includes(event.for) && !vomitedSince(event.t)).reduce((sum, event) => sum.add(event.grams), none);
    return greater(0, exact(units).sub(grams.div(f.settingAt('carbohydrateRatio', dose.t + offsetOf(dose.at)))));
  };
  const again = basalGivenAgain(plan, events);
  const onBoard = suspectCounts => {
    const left = (units, event) => exact(units).mul(remaining(now - event.t, action));
    let fixed = none, pump = none, overSink = none;
    for (const event of events) {
      if (event.kind === 'injection' && event.insulin === 'rapid')
        fixed = fixed.add(left(rescueOf(event).add(event.parts?.meal ? uncovered(event.parts.meal, event) : none).add(again.get(event) ?? none), event));
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
