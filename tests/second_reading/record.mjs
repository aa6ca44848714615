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

export const countingEvents = (record, now) => {
  const all = record.events.map(event => ({ ...event, t: instant(event.at) }));
  all.sort((a, b) => a.t - b.t || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  all.forEach((event, i) => { event.i = i; });
  const strikes = all.filter(event => event.kind === 'strike');
  const strikesOn = (id, passed = new Set()) => strikes.filter(strike =>
    strike.target === id && !passed.has(strike.id) && !strikesOn(strike.id, new Set([...passed, strike.id])).length);
  for (const event of all) event.strikes = strikesOn(event.id);
  const calls = all.filter(event => event.kind === 'call' && event.to === 'team' && event.answered && event.for && !event.strikes.length && event.t - now <= 120);
  const agreed = strike => calls.some(call => call.for === strike.id && call.t >= strike.t);   // not on a call before it
  const counting = all.filter(event => (lasting.has(event.kind) ? !event.strikes.some(agreed) : !event.strikes.length));
  const later = counting.filter(event => event.t - now > 120);
  return { events: counting.filter(event => !(later.includes(event) && reassuring(event))), fromTheFuture: later.length > 0 };
};

export const rescueOf = event => (event.kind === 'injection' && event.insulin === 'rapid' ? exact(event.parts ? event.parts.rescue ?? 0 : event.units) : none);
export const isPumpCorrection = event => event.kind === 'pumpDose' && event.purpose === 'correction';

// {open, since}: `since` is null without an incident. A silence of over a day closes one.
export const incidentOf = (events, now) => {
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
  const implied = events.find(event => event.t > closed && now - event.t <= day && (event.kind === 'seen' || isPumpCorrection(event) || rescueOf(event).gt(0)))?.t ?? null;
  if (!open) return { open, since: implied };
  if (open.suspectedSince && instant(open.suspectedSince) <= open.t) return { open, since: instant(open.suspectedSince) };
  return { open, since: implied === null ? open.t : Math.min(open.t, implied) };
};
