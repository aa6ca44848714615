// The record as it counts: strikes settled, in the order of time, with the incident that is open.
import { exact, none } from './fraction.mjs';

export const instant = text => {
  const time = Date.parse(text);
  if (Number.isNaN(time)) throw new Error(`not a time: ${text}`);
  return Math.round(time / 1000);
};
export const offsetOf = text => {
  const match = /([+-])(\d\d):(\d\d)$/.exec(text);
  return match ? (match[1] === '-' ? -1 : 1) * (Number.parseInt(match[2], 10) * 3600 + Number.parseInt(match[3], 10) * 60) : 0;
};
export const dayOf = text => { const [y, m, d] = text.split('-').map(part => Number.parseInt(part, 10)); return Date.UTC(y, m - 1, d) / 86400000; };
export const day = 24 * 3600;

const lasting = new Set(['injection', 'pumpDose', 'offBody', 'mistake', 'doseShown']);   // count until the team knows of the strike

// What lies more than two minutes in the future warns, and does not reassure.
const reassuring = event => ['changed', 'doseRefused', 'carbs'].includes(event.kind) || (event.kind === 'incident' && event.state === 'closed')
  || (['pump', 'automation'].includes(event.kind) && event.state === 'on') || (event.kind === 'call' && event.answered);

const longestMisTap = 60;   // seconds

// A tap that was no injection: struck within a minute, its shown dose known, and nothing but looks between the two.
// What lies at the same instant as either of them counts as between: the dose then keeps counting.
const misTaps = (all, strikes, now) => {
  const used = new Set();
  const taken = new Set();
  for (const strike of strikes) {
    if (strike.reason !== 'misTap' || strike.strikes.length || strike.t - now > 120) continue;
    const target = all.find(event => event.id === strike.target);
    if (target?.kind !== 'injection' || !target.shown) continue;
    const shown = all.find(event => event.kind === 'doseShown' && event.id === target.shown);
    if (!shown || shown.t > target.t || used.has(shown.id)) continue;
    if (strike.t < target.t || strike.t - target.t > longestMisTap) continue;
    const between = event => event.t >= target.t && event.t <= strike.t && event.kind !== 'look';
    if (all.some(event => ![strike, target, shown].includes(event) && between(event))) continue;
    used.add(shown.id);
    taken.add(target.id);
  }
  return taken;
};

const inOrder = (a, b) => a.t - b.t || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
export const rescueOf = event => {
  if (event.kind !== 'injection' || event.insulin !== 'rapid') return none;
  return exact(event.parts ? event.parts.rescue ?? 0 : event.units);
};

// One needle said twice: the larger units, the later time, the readings of the later entry where it has them.
const oneNeedle = (before, said) => {
  const byUnits = exact(said.units).cmp(before.units);
  const larger = byUnits > 0 || (byUnits === 0 && rescueOf(said).ge(rescueOf(before))) ? said : before;
  const later = before.t > said.t ? before : said;
  return {
    ...before, ...said, units: larger.units, parts: larger.parts, t: later.t, at: later.at,
    ids: [...before.ids, ...said.ids], answers: [...before.answers, ...said.answers],
    carried: [...before.carried, ...said.carried.map(({ reading }) => ({ t: later.t, reading }))],
  };
};

// `insteadOf`: both entries are one needle. Once an answered call names the strike of the first, it counts no longer.
const joinedNeedles = events => {
  const left = new Map();
  for (const event of events)
    left.set(event.id, {
      ...event, ids: [event.id], answers: event.shown ? [event.shown] : [],
      carried: event.kind === 'injection' && event.ketones ? [{ t: event.t, reading: event.ketones }] : [],
    });
  const visited = new Set();
  const holder = id => [...left.values()].find(event => event.ids.includes(id));
  const join = event => {
    if (visited.has(event.id) || event.kind !== 'injection' || !event.insteadOf) return;
    visited.add(event.id);
    const target = events.find(other => other.id === event.insteadOf);
    if (target?.kind !== 'injection' || target.insulin !== event.insulin) return;
    join(target);
    const before = holder(target.id), said = holder(event.id);
    if (!before || !said || before === said) return;
    left.delete(before.id);
    left.delete(said.id);
    left.set(event.id, oneNeedle(before, said));
  };
  events.forEach(join);
  return [...left.values()].sort(inOrder);
};

export const countingEvents = (record, now) => {
  const all = record.events.map(event => ({ ...event, t: instant(event.at) }));
  all.sort(inOrder);
  const strikes = all.filter(event => event.kind === 'strike');
  const strikesOn = (id, passed = new Set()) => strikes.filter(strike =>
    strike.target === id && !passed.has(strike.id) && !strikesOn(strike.id, new Set([...passed, strike.id])).length);
  for (const event of all) event.strikes = strikesOn(event.id);
  const calls = all.filter(event => event.kind === 'call' && event.to === 'team' && event.answered && event.for
    && !event.strikes.length && event.t - now <= 120);
  const agreed = strike => calls.some(call => call.for === strike.id && call.t >= strike.t);   // not on a call before it
  const neverGiven = misTaps(all, strikes, now);
  const counts = event => (lasting.has(event.kind)
    ? !event.strikes.some(agreed) && !neverGiven.has(event.id) : !event.strikes.length);
  const counting = all.filter(counts);
  const later = counting.filter(event => event.t - now > 120);
  const events = joinedNeedles(counting.filter(event => !(later.includes(event) && reassuring(event))));
  events.forEach((event, i) => { event.i = i; });
  return { events, fromTheFuture: later.length > 0 };
};

export const isPumpCorrection = event => event.kind === 'pumpDose' && event.purpose === 'correction';

// {open, since}: `since` is null without an incident. A silence of over a day closes one.
export const incidentOf = (events, now, isNeedle) => {
  let open = null, before = null, closed = -1;
  for (const event of events) {
    if (open && event.t - before > day) open = null;
    if (event.kind === 'incident') {
      if (event.state === 'opened') open ??= event;
      else if (open?.t !== event.t) { open = null; closed = event.t; }
    }
    before = event.t;
  }
  if (open && now - before > day) open = null;
  const suspicious = event => event.kind === 'seen' || isPumpCorrection(event) || isNeedle(event);
  const implied = events.find(event => event.t > closed && now - event.t <= day && suspicious(event))?.t ?? null;
  if (!open) return { open, since: implied };
  if (open.suspectedSince && instant(open.suspectedSince) <= open.t) return { open, since: instant(open.suspectedSince) };
  return { open, since: implied === null ? open.t : Math.min(open.t, implied) };
};

// Since when the pump has been off or dead; null while it runs. A run of half an hour or less ends no outage.
export const stoppedSince = (events, situation, now) => {
  let stopped = null, before = null, runSince = null;
  const stop = t => {
    if (stopped !== null) return;
    stopped = before !== null && t - runSince <= 1800 ? before : t;
  };
  const saysDead = event => event.kind === 'seen' && event.what.includes('pumpDead');
  const ofPump = events.filter(event => event.kind === 'pump' || saysDead(event));
  // At one instant `on` answers what was seen dead, and `off` is said last.
  const turn = event => (event.kind === 'seen' ? 0 : event.state === 'on' ? 1 : 2);
  for (const event of ofPump.toSorted((a, b) => a.t - b.t || turn(a) - turn(b))) {
    if (event.state === 'on') {
      if (stopped !== null) [before, stopped, runSince] = [stopped, null, event.t];
    } else stop(event.t);
  }
  if (situation.seen.includes('pumpDead')) stop(now);
  return stopped;
};
