// The facts that are derived before any rule, read from the text of the rules a second time, by another hand than the core's.
import { exact, greater, lesser, none } from './fraction.mjs';
import {
  countingEvents, day, dayOf, incidentOf, instant, isPumpCorrection, offsetOf, rescueOf, stoppedSince,
} from './record.mjs';
import { boards } from './board.mjs';

const perMmol = exact('18.016');
const severeSigns = ['drowsy', 'confused', 'fastBreathing', 'cannotKeepFluid'];
// The parts a fault names; each of them must have been changed since.
export const partsOf = { outOfInsulin: ['reservoir'], heatedInsulin: ['insulin', 'reservoir'], pumpDead: [] };
export const partsNamedBy = what => partsOf[what] ?? ['set'];

export const readingIn = plan => reading => {
  if (!reading) return null;
  if (reading.reading) return reading.reading === 'HI' ? { hi: true } : { lo: true };
  if (reading.unit === plan.glucoseUnit) return { v: exact(reading.value), converted: false };
  return { v: plan.glucoseUnit === 'mg/dL' ? exact(reading.value).mul(perMmol) : exact(reading.value).div(perMmol), converted: true };
};

// A converted number within half a display step of a threshold takes the worse side; a missing reading is never anything.
const comparisons = half => {
  const atOrAbove = (x, edge) => !!x && !x.lo && (!!x.hi || x.v.ge(x.converted ? exact(edge).sub(half) : exact(edge)));
  return {
    atOrAbove,
    under: (x, edge) => !!x && !atOrAbove(x, edge),
    atOrBelow: (x, edge) => !!x && !x.hi && (!!x.lo || x.v.le(x.converted ? exact(edge).add(half) : exact(edge))),
    below: (x, edge) => !!x && !x.hi && (!!x.lo || (x.converted ? x.v.le(exact(edge).add(half)) : x.v.lt(edge))),
  };
};

const planFacts = (plan, localDay) => {
  const usableStatus = plan.agreement.status === 'agreed', review = dayOf(plan.agreement.reviewBy);
  const usable = usableStatus && localDay <= review + plan.agreement.graceDays;
  return { usable, inGrace: usable && localDay > review };
};

const glucoseFacts = (plan, situation, now, compare) => {
  const given = situation.glucose ?? null, at = given ? (given.at ? instant(given.at) : now) : null;
  const G = given && now - at <= 15 * 60 ? readingIn(plan)(given) : null;
  const number = G?.v ? G : null, HI = !!G?.hi, LO = !!G?.lo, sensor = !!G && given.from === 'sensor';
  const sensorOnly = !!number && sensor && !!given.noMeter;
  return {
    given, glucoseAt: at, G, number, HI, LO, sensor, sensorOnly, finger: !!G && (!sensor || sensorOnly), repeated: !!given?.repeated,
    high: HI || compare.atOrAbove(G, plan.high.trigger), isLow: LO || compare.atOrBelow(G, plan.low.below),
  };
};

const signFacts = situation => {
  const has = (...signs) => signs.some(sign => situation.signs.includes(sign));
  const severe = has(...severeSigns), danger = severe || has('vomitedAgain', 'bellyPain');
  return { has, severe, danger, unwell: !!situation.unwell || has('vomitedOnce') || danger, vomiting: has('vomitedOnce', 'vomitedAgain') };
};

const ketoneFacts = (plan, situation, events, now, danger) => {
  const { rows, actFrom } = plan.ketones;
  const rowOf = reading => {
    if (!reading || reading.unknown) return null;
    if (reading.blood === 'HI') return rows.at(-1);
    if (reading.blood !== undefined) return rows.filter(row => exact(row.from).le(reading.blood)).at(-1) ?? null;
    return rows.find(row => row.urine?.includes(reading.urine)) ?? null;
  };
  const isHelp = reading => (reading.blood !== undefined ? reading.blood === 'HI' || exact(reading.blood).ge(3) : reading.urine === 'large');
  const acts = row => !!row && exact(row.from).ge(actFrom);
  const asked = situation.ketones, at = asked.at ? instant(asked.at) : now;
  const stale = asked.unknown === undefined && now - at > 30 * 60;
  const k = stale ? { unknown: 'notYet' } : asked;
  const row = rowOf(k), blood = k.blood ?? null, untested = !!k.unknown;

  const isFaint = reading => reading.urine === 'negative' || reading.urine === 'trace';
  const faintStrip = isFaint(k);
  const noted = events.filter(event => event.kind === 'ketones').map(event => ({ t: event.t, reading: event }));
  for (const event of events) noted.push(...event.carried);
  if (stale) noted.push({ t: at, reading: asked });
  const known = noted.filter(({ reading }) => !reading.unknown).sort((a, b) => a.t - b.t);
  // A strip that shows nothing takes no blood value of 3.0 and more back.
  const lastAt = (moment, tolerance = 0) => {
    let last = null;
    for (const { t, reading } of known) {
      if (moment - t > 4 * 3600 || t - moment > tolerance) continue;
      const help = isHelp(reading), row = rowOf(reading) ?? (help ? rows.at(-1) : null);
      if (last?.help && last.byBlood && isFaint(reading)) continue;
      const found = { t, help, row, byBlood: reading.blood !== undefined, acting: help || acts(row) };
      const higher = last && (last.help !== help ? last.help : exact(last.row?.from ?? 0).gt(row?.from ?? 0));
      if (last && last.t === t && higher) continue;
      last = found;
    }
    return last;
  };
  const asksForLast = untested || faintStrip;
  const last = asksForLast ? lastAt(now, 120) : null;
  // Nothing from the future takes anything back.
  const later = asksForLast ? known.filter(({ t }) => t - now > 120).map(({ reading }) => reading) : [];
  return {
    lastKetonesAt: lastAt, notedKetones: known,
    k, ketonesAt: at, row, rowOf, acts, blood, acting: acts(row), unknown: untested || (danger && faintStrip), noStrips: k.unknown === 'noStrips',
    notTested: k.unknown === 'notYet' || k.unknown === 'error', help: isHelp(k) || !!last?.help || later.some(reading => isHelp(reading)),
    lastActing: untested && (!!last?.acting || later.some(reading => isHelp(reading) || acts(rowOf(reading)))),
  };
};

const faultFacts = (situation, events, now) => {
  const changedSince = (part, t) =>
    events.some(event => event.kind === 'changed' && event.what.includes(part) && event.t >= t);
  const answered = (seen, what) => (what === 'pumpDead'
    ? events.some(event => event.kind === 'pump' && event.state === 'on' && event.t >= seen.t)
    : partsNamedBy(what).every(part => changedSince(part, seen.t)));
  const open = new Set(situation.seen);
  let lastFault = situation.seen.length ? now : null;
  for (const event of events) {
    if (event.kind !== 'seen') continue;
    lastFault = Math.max(lastFault ?? event.t, event.t);
    for (const what of event.what) if (!answered(event, what)) open.add(what);
  }
  const pump = events.filter(event => event.kind === 'pump'), lastPump = pump.filter(event => event.t === pump.at(-1).t);
  const offDead = lastPump.some(event => event.state === 'off') || open.has('pumpDead');
  return {
    faults: open, fault: open.size > 0, lastFault, offDead,
    stopped: offDead ? stoppedSince(events, situation, now) : null,
    automationPaused: events.filter(event => event.kind === 'automation').at(-1)?.state === 'paused',
  };
};

// Whether the latest pump correction has failed, and whether that was found at the second look from a recorded glucose.
const correctionFacts = (plan, events, now, f) => {
  const action = exact(plan.rapid.actionHours).mul(3600);
  const correction = events.filter(event => isPumpCorrection(event) && !event.strikes.length && exact(now - event.t).le(action) && event.t - now <= 120).at(-1) ?? null;
  const facts = { correction, minutesSinceCorrection: correction ? (now - correction.t) / 60 : null, failed: false, failedSecond: false };
  if (!correction || !f.high) return facts;
  const then = readingIn(plan)(correction.glucose ?? null), minutes = facts.minutesSinceCorrection;
  if (minutes >= plan.high.secondLook) {
    // HI was at least the dosing ceiling.
    const before = then?.hi ? exact(plan.limits.dosingCeiling) : then?.v;
    facts.failed = !then || f.HI || !!then.lo || before.sub(f.number.v).lt(plan.high.expectedFall);
    facts.failedSecond = facts.failed && !!then;
  } else if (minutes >= plan.high.firstLook && then) {
    facts.failed = f.HI || !!then.lo || (!then.hi && f.number.v.ge(then.v.sub(f.half)));
  }
  return facts;
};

// Against the blood ketones the last needle dose was decided on.
const ketonesFell = (plan, f) => {
  const then = f.ketonesThen?.blood;
  if (!f.acting || then === undefined || then === 'HI' || f.blood === null || f.blood === 'HI') return false;
  return exact(then).sub(f.blood).ge(plan.ketones.expectedFall);
};

const tooMuchFacts = (plan, situation, events, now, f) => {
  const action = plan.rapid.actionHours * 3600, lock = plan.limits.lockHours * 3600, step = (plan.syringe ?? plan.pen).step;
  const times = [];
  let unitsUnknown = false;
  if (situation.mistake?.insulin === 'rapid') { times.push(now); unitsUnknown = situation.mistake.units === undefined; }
  for (const event of events)
    if (now - event.t <= action && event.kind === 'mistake' && event.insulin === 'rapid') { times.push(event.t); unitsUnknown ||= event.units === undefined; }
  const unitsOf = doses => doses.reduce((sum, event) => sum.add(event.units), none);
  // Small deliveries add up.
  const offBody = (...ends) =>
    events.filter(event => event.kind === 'offBody' && ends.includes(event.tubingEnd) && now - event.t <= action);
  const body = offBody('body'), unsure = offBody('unsure');
  if (body.length && unitsOf(body).ge(step)) times.push(body.at(-1).t);
  if (f.goesLow(f.absorbed)) {
    if (unsure.length && unitsOf(offBody('unsure', 'body')).ge(step)) times.push(unsure.at(-1).t);
    const needle = f.needles.find(event => now - event.t < lock);
    const after = needle
      ? events.filter(event => event.kind === 'pumpDose' && event.purpose !== 'meal' && event.t > needle.t) : [];
    if (after.length && unitsOf(after).ge(step)) times.push(after.at(-1).t);
  }
  const standing = times.filter(t => now - t <= action);
  return { too: standing.length > 0, tooUntil: standing.length ? Math.max(...standing) + action : null, unitsUnknown };
};

export const factsOf = ({ plan, record, situation }) => {
  const now = instant(situation.now), local = now + offsetOf(situation.now), localDay = Math.floor(local / day);
  const half = exact(plan.glucoseUnit === 'mmol/L' ? '0.05' : '0.5'), compare = comparisons(half);
  const settingAt = (name, seconds) => exact(plan.day[name].filter(({ from }) => {
    const [hours, minutes] = from.split(':').map(part => Number.parseInt(part, 10));
    return hours * 60 + minutes <= Math.floor((((seconds % day) + day) % day) / 60);
  }).at(-1).value);
  const setting = name => settingAt(name, local);
  const { events, fromTheFuture } = countingEvents(record, now);
  // A correction beside basal, decided on a reading below the trigger, starts no clock and no count.
  const besideBasal = event =>
    exact(event.parts?.basal ?? 0).gt(0) && compare.under(readingIn(plan)(event.glucose), plan.high.trigger);
  const isNeedle = event => rescueOf(event).gt(0) && !besideBasal(event);
  const needles = events.filter(isNeedle);
  const signs = signFacts(situation);
  const f = {
    plan, situation, events, fromTheFuture, now, localDay, half, ...compare, settingAt, local, factor: setting('correctionFactor'), ratio: setting('carbohydrateRatio'), target: setting('target'),
    ...planFacts(plan, localDay), ...glucoseFacts(plan, situation, now, compare), ...signs, ...ketoneFacts(plan, situation, events, now, signs.danger),
    ...faultFacts(situation, events, now), needles, rescues: events.filter(event => rescueOf(event).gt(0)),
    lastNeedle: needles.at(-1) ?? null, rapid: events.filter(event => event.kind === 'injection' && event.insulin === 'rapid'),
    risk: plan.person.pregnant || plan.person.sglt2Inhibitor,
  };
  f.sinceNeedle = f.lastNeedle ? now - f.lastNeedle.t : null;
  Object.assign(f, incidentOf(events, now, isNeedle));
  f.incident = f.since !== null;
  const within = event => f.incident && event.t >= f.since;
  f.needlesIn = needles.filter(within);
  // What still acts counts toward the call, whether its incident was closed or not.
  f.manyDoses = needles.filter(event => within(event) || now - event.t <= plan.rapid.actionHours * 3600).length >= plan.limits.dosesBeforeCall;
  f.setChanged = events.filter(event => event.kind === 'changed' && event.what.includes('set') && within(event)).at(-1) ?? null;
  f.faultInIncident = events.some(event => event.kind === 'seen' && within(event));
  const dose = f.lastNeedle;
  // What rows a hold runs by: the ketones the dose carries, or else the last ketones then.
  f.rowThen = dose ? (f.rowOf(dose.ketones) ?? f.lastKetonesAt(dose.t)?.row ?? null) : null;
  // Only what was fresh beside a dose is compared with ketones now.
  const fresh = ({ t, reading }) => t <= dose.t && dose.t - t <= 30 * 60 && !reading.unknown;
  f.ketonesThen = dose && (dose.ketones ?? f.notedKetones.filter(fresh).at(-1)?.reading ?? null);
  f.fell = ketonesFell(plan, f);
  Object.assign(f, correctionFacts(plan, events, now, f));
  const highMinutes = situation.highSince ? (now - instant(situation.highSince)) / 60 : -1;
  f.pumpFailed = (plan.pump.automation === 'basalAndCorrections' && !f.automationPaused && f.high && highMinutes >= plan.high.automationMinutes) ||
    !!situation.pumpOffersNothing || f.offDead;
  Object.assign(f, boards(f));
  f.goesLow = units => f.LO || (!!f.number && f.number.v.sub(units.mul(f.factor)).le(f.number.converted ? exact(plan.low.below).add(half) : exact(plan.low.below)));
  f.wouldLow = f.goesLow(f.counted);
  Object.assign(f, tooMuchFacts(plan, situation, events, now, f));
  const ceiling = plan.limits.dosingCeiling;
  f.correctionOf = value => lesser(value, ceiling).sub(f.target).div(f.factor);
  f.noCorrection = !f.number || f.sensorOnly;
  f.correctionNow = f.noCorrection ? none : f.correctionOf(f.number.v);
  f.correctionToMatch = f.LO ? f.correctionOf(plan.low.veryLow) : f.number ? f.correctionOf(f.number.v) : none;
  f.netOf = onBoard => (f.noCorrection ? none : greater(0, f.correctionNow.sub(onBoard)));
  return f;
};
