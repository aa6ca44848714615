// The facts that are derived before any rule, read from the text of the rules a second time, by another hand than the core's.
import { exact, greater, lesser, none } from './fraction.mjs';
import { countingEvents, day, dayOf, incidentOf, instant, isPumpCorrection, offsetOf, rescueOf } from './record.mjs';
import { boards } from './board.mjs';

const perMmol = exact('18.016');
const severeSigns = ['drowsy', 'confused', 'fastBreathing', 'cannotKeepFluid'];
const answeredBy = { outOfInsulin: 'reservoir', heatedInsulin: 'insulin' };

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

  // A strip that shows nothing takes no 3.0 of the last hours back, and nothing from the future takes anything back.
  const faintStrip = k.urine === 'negative' || k.urine === 'trace';
  let last = null;
  const later = [];
  if (untested || faintStrip) {
    const candidates = events.filter(event => event.kind === 'ketones').map(event => ({ t: event.t, reading: event }));
    candidates.push(...events.filter(event => event.kind === 'injection' && event.ketones).map(event => ({ t: event.t, reading: event.ketones })));
    if (stale) candidates.push({ t: at, reading: asked });
    for (const { t, reading } of candidates) {
      if (reading.unknown || now - t > 4 * 3600) continue;
      if (t - now > 120) { later.push(reading); continue; }
      if (last && t < last.t) continue;
      const help = isHelp(reading), acting = help || acts(rowOf(reading));
      last = last && last.t === t ? { t, help: last.help || help, acting: last.acting || acting } : { t, help, acting };
    }
  }
  return {
    k, ketonesAt: at, row, rowOf, acts, blood, acting: acts(row), unknown: untested || (danger && faintStrip), noStrips: k.unknown === 'noStrips',
    notTested: k.unknown === 'notYet' || k.unknown === 'error', help: isHelp(k) || !!last?.help || later.some(reading => isHelp(reading)),
    lastActing: untested && (!!last?.acting || later.some(reading => isHelp(reading) || acts(rowOf(reading)))),
  };
};

const faultFacts = (situation, events) => {
  const answered = (seen, what) => (what === 'pumpDead'
    ? events.some(event => event.kind === 'pump' && event.state === 'on' && event.t >= seen.t)
    : events.some(event => event.kind === 'changed' && event.what.includes(answeredBy[what] ?? 'set') && event.t >= seen.t));
  const open = new Set(situation.seen);
  for (const event of events) if (event.kind === 'seen') for (const what of event.what) if (!answered(event, what)) open.add(what);
  const pump = events.filter(event => event.kind === 'pump'), lastPump = pump.filter(event => event.t === pump.at(-1).t);
  return {
    fault: open.size > 0, offDead: lastPump.some(event => event.state === 'off') || open.has('pumpDead'),
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
  // Small deliveries add up. At a moment of the past only what had happened counts; now, everything recorded.
  const offBody = (moment, ...ends) => events.filter(event => event.kind === 'offBody' && ends.includes(event.tubingEnd) && moment - event.t <= action && (moment === now || event.t <= moment));
  const body = offBody(now, 'body');
  if (body.length && unitsOf(body).ge(step)) times.push(body.at(-1).t);
  const suspicions = moment => {
    const unsure = offBody(moment, 'unsure');
    if (unsure.length && unitsOf(offBody(moment, 'unsure', 'body')).ge(step)) times.push(unsure.at(-1).t);
    const first = f.needles.find(event => (moment === now || event.t <= moment) && moment - event.t < lock);
    if (!first) return;
    const after = events.filter(event => event.kind === 'pumpDose' && event.purpose !== 'meal' && event.i > first.i);
    const there = after.filter(event => moment === now || event.t <= moment);
    if (!there.length || !unitsOf(there).ge(step)) return;
    times.push(...there.map(event => event.t), ...after.filter(event => event.t - first.t < lock).map(event => event.t));
  };
  if (f.goesLow(f.absorbed)) suspicions(now);
  // It could have gone low at a reading since: from then on it stands.
  for (const event of events) {
    const reading = event.kind === 'glucose' ? readingIn(plan)(event) : readingIn(plan)(event.glucose ?? null);
    if (!reading || reading.hi || event.t > now) continue;
    const low = reading.converted ? exact(plan.low.below).add(f.half) : exact(plan.low.below), factor = f.settingAt('correctionFactor', event.t + offsetOf(event.at));
    if (reading.lo || reading.v.sub(f.absorbedAt(event.t).mul(factor)).le(low)) suspicions(event.t);
  }
  const standing = times.filter(t => now - t <= action);
  times.splice(0, times.length, ...standing);
  return { too: times.length > 0, tooUntil: times.length ? Math.max(...times) + action : null, unitsUnknown };
};

export const factsOf = ({ plan, record, situation }) => {
  const now = instant(situation.now), local = now + offsetOf(situation.now), localDay = Math.floor(local / day);
  const half = exact(plan.glucoseUnit === 'mmol/L' ? '0.05' : '0.5'), compare = comparisons(half);
  const settingAt = (name, seconds) => exact(plan.day[name].filter(({ from }) => {
    const [hours, minutes] = from.split(':').map(part => Number.parseInt(part, 10));
    return hours * 60 + minutes <= Math.floor((((seconds % day) + day) % day) / 60);
  }).at(-1).value);
  const setting = name => settingAt(name, local);
  const { events, fromTheFuture } = countingEvents(record, now), needles = events.filter(event => rescueOf(event).gt(0));
  const signs = signFacts(situation);
  const f = {
    plan, situation, events, fromTheFuture, now, localDay, half, ...compare, settingAt, factor: setting('correctionFactor'), ratio: setting('carbohydrateRatio'), target: setting('target'),
    ...planFacts(plan, localDay), ...glucoseFacts(plan, situation, now, compare), ...signs, ...ketoneFacts(plan, situation, events, now, signs.danger),
    ...faultFacts(situation, events), needles, lastNeedle: needles.at(-1) ?? null, rapid: events.filter(event => event.kind === 'injection' && event.insulin === 'rapid'),
    risk: plan.person.pregnant || plan.person.sglt2Inhibitor,
  };
  f.sinceNeedle = f.lastNeedle ? now - f.lastNeedle.t : null;
  Object.assign(f, incidentOf(events, now));
  f.incident = f.since !== null;
  const within = event => f.incident && event.t >= f.since;
  f.needlesIn = needles.filter(within);
  // What still acts counts toward the call, whether its incident was closed or not.
  f.manyDoses = needles.filter(event => within(event) || now - event.t <= plan.rapid.actionHours * 3600).length >= plan.limits.dosesBeforeCall;
  f.setChanged = events.filter(event => event.kind === 'changed' && event.what.includes('set') && within(event)).at(-1) ?? null;
  f.faultInIncident = events.some(event => event.kind === 'seen' && within(event));
  // What an injection does not carry stands beside it, if it was fresh.
  const dose = f.lastNeedle;
  f.ketonesThen = dose && (dose.ketones ?? events.filter(event => event.kind === 'ketones' && event.t <= dose.t && dose.t - event.t <= 30 * 60).at(-1) ?? null);
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
