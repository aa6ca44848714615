// The steps of an advice with their slots, in the order a person does them.
import { clockAt, upToMinute } from './clock.mjs';
import { teamToRing } from './contacts.mjs';
import { partsNamedBy } from './facts.mjs';

// Keys of the words are the ids with hyphens.
export const keyOf = id => `step-${id.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`)}`;

export const stepIds = ['emergencyCall', 'tellThem', 'stopPump', 'glucagon', 'sugar', 'retest', 'testKetones',
  'confirmChild', 'callHome', 'inject', 'eat', 'changeSet', 'changeReservoir', 'changeInsulin', 'offBody', 'joinTubing', 'automationOff', 'drink',
  'pumpCorrection', 'wait', 'setAlarm', 'callTeam', 'getStrips', 'stopSglt2', 'longActing', 'bridge', 'restock', 'closeIncident'];
const noBridgeUnder = ['LWE', 'EMR', 'LOW', 'FAL', 'PLN'], noBridgeBehind = ['REC', 'CLK', 'ASK'];

// Parts that a rule changes by itself, besides what a fault names.
const partsOfRule = (f, advice, rule) => {
  const { now, plan } = f;
  const counts = (event, after) => f.incident && event.t >= f.since && now - event.t < plan.limits.lockHours * 3600
    && (after === null || event.t > after);
  const changed = (part, after) =>
    f.events.some(event => event.kind === 'changed' && event.what.includes(part) && counts(event, after));
  if (rule === 'INJ') return advice.gate && changed('set', null) ? [] : ['set'];
  if (rule === 'KET' || (rule === 'ANY' && f.atOrAbove(f.G, plan.high.middle)))
    return ['set', 'reservoir'].filter(part => f.situation.seen.length > 0 || !changed(part, f.lastFault));
  return [];
};

const addChanges = (f, advice, rule, add) => {
  const parts = new Set(partsOfRule(f, advice, rule));
  for (const what of f.faults) for (const part of partsNamedBy(what)) parts.add(part);
  if (parts.has('insulin')) add('changeInsulin');
  if (!f.offDead) {
    if (parts.has('set')) add('changeSet');
    if (parts.has('reservoir')) add('changeReservoir');
  } else if (!noBridgeUnder.includes(rule) && !noBridgeBehind.includes(advice.gate)) {
    add('bridge', { hours: String(f.plan.offPump.bridgeHours).replace('.', f.plan.decimalMark) });
  }
};

// Off the body into a sink, and the automation off.
const addSquaring = (f, advice, rule, { add, text, automationOff }) => {
  const { plan } = f, { ways, preferred } = plan.squaring;
  if (f.offDead || !advice.rescue.gt(0)) return;
  let offBody = f.acting && plan.pump.tubing === 'tubed' && ways.includes('offBody'), off = f.acting;
  if (rule === 'INJ') [offBody, off] = [preferred === 'offBody', preferred === 'paused'];
  if (rule === 'EMR') [offBody, off] = [false, true];
  if (offBody) {
    add('offBody', { dose: text(advice.rescue) });
    add('joinTubing');
  }
  if (off) automationOff();
};

export const stepsOf = (f, advice, rule, { text, total, device }) => {
  const { plan, situation } = f, now = situation.now, found = new Map();
  const add = (id, slots = {}) => found.set(id, { id, key: keyOf(id), slots });
  const automationOff = () => {
    if (plan.pump.automation === 'none' || f.offDead) return;
    // At the last instant of its hold nothing is ahead: as long as after a dose.
    const until = advice.holds.get('automation') ?? f.now + plan.squaring.pauseHours * 3600;
    add('automationOff', { until: clockAt(upToMinute(until), now) });
  };
  const below = ['LWE', 'LOW', 'FAL', 'TOO'].includes(rule) || (rule === 'EMR' && f.wouldLow);

  if (advice.call === 'emergency') add('emergencyCall', { number: plan.emergencyNumber });
  if (advice.call === 'team') add('callTeam', teamToRing(plan, f.local));
  if (rule === 'LWE' || rule === 'EMR') add('tellThem');
  if (rule === 'LWE') add('stopPump');
  if (rule === 'LWE' && plan.low.glucagon && f.has('fitting', 'cannotSwallow', 'drowsy', 'confused'))
    add('glucagon', { glucagon: plan.low.glucagon });
  if (advice.grams.gt(0)) add(below ? 'sugar' : 'eat', { grams: advice.grams.text() });
  if (['FNG', 'LWE', 'LOW', 'FAL', 'TOO', 'SGN'].includes(rule)) add('retest');
  if (['TST', 'SGN'].includes(rule) || (['FNG', 'PLN'].includes(rule) && f.notTested)) add('testKetones');
  if (total.gt(0)) add('inject', { dose: text(total), insulin: plan.rapid.name, device });
  addChanges(f, advice, rule, add);
  addSquaring(f, advice, rule, { add, text, automationOff });
  if (rule === 'TOO') automationOff();
  if (['ANY', 'KET', 'EAT', 'DWN'].includes(rule) && !f.has('cannotSwallow')) add('drink');
  if (advice.outcome === 'correctByPump') add('pumpCorrection');
  if (rule === 'WAI')
    add('wait', { until: clockAt(upToMinute(f.correction.t + plan.limits.lockHours * 3600), now) });
  add('setAlarm', { at: clockAt(Math.min(...advice.looks), now) });
  if (f.noStrips && rule !== 'LWE' && rule !== 'EMR') add('getStrips');
  if (rule === 'ANY' && plan.person.sglt2Inhibitor) add('stopSglt2');
  if (rule === 'OFF' && plan.longActing) add('longActing');
  if (rule === 'END') {
    add('restock');
    add('closeIncident');
  }
  return stepIds.filter(id => found.has(id)).map(id => found.get(id));
};
