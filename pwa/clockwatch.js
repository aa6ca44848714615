// Is the clock of this phone right? The page knows how long it has been running, and sees when the clock was set meanwhile: back, or
// forward while somebody looked at it. What was written since the clock was last known to be right then has times that may be wrong: a
// hold would end too soon, and a second dose be shown. No dose is shown until somebody has said which time is right.
import * as events from './events.js';
import { aDay, record as recordOf } from './situation.js';
import { members, object, string } from './text.js';
import { clockOf, lastTimeAt, minutesUntil, order, stamp } from './times.js';

// `good`: the last entry that was written when the clock was known to be right. `turns`: how far the clock was set since, and after which
// entry. `ask`: entries whose true time is still to be said. `tell`: strikes that the team has to hear of. All of it is kept with the answers.
export const fromKept = (kept, record) => ({ good: record.at(-1)?.id ?? null, turns: [], ask: [], tell: [], ...kept, page: null });

// What the page runs by may stand still while the phone sleeps, hidden: a clock that is ahead of it then says nothing. One that is behind
// it was set back.
export const clockWatch = () => {
  let last = null, unseen = false;
  return {
    hidden() { unseen = true; },
    // By how many milliseconds the clock was set since it was last right, or 0. `differ` says of two moments whether they are too far apart.
    turned({ moment, ran }, isHidden, differ) {
      const slept = unseen;
      unseen = isHidden;
      const now = { wall: moment.getTime(), ran };
      if (!last) { last = now; return 0; }
      const expected = last.wall + Math.round(ran - last.ran), by = now.wall - expected;
      if (slept && by > 0) { last = now; return 0; }
      // Less than a second apart nobody needs to be asked.
      if (Math.abs(by) < 1000 || !differ(expected, now.wall)) return 0;
      last = now;
      return by;
    },
  };
};

// The core alone knows how far two clocks may be apart: it is asked about a record that holds nothing but an entry of the later one.
export const differ = (ask, planId) => (one, other) => {
  const [early, late] = [one, other].sort((a, b) => a - b).map(moment => stamp(new Date(moment)));
  return ask('holds', { record: recordOf(planId, [events.note('probe', late, 'probe')]), now: string(early) }).clockInDoubt === true;
};

export const clockTurned = ({ wallClock, record }, by) => { wallClock.turns.push({ after: record.at(-1)?.id ?? null, by }); wallClock.page = null; };
// No dose is shown before the clock is settled.
export const clockOpen = ({ wallClock, timeSeen }) => !timeSeen || wallClock.turns.length > 0 || wallClock.ask.length > 0;

// Insulin that went in, or may have: somebody says when. What ran into a sink did not.
const wentIn = ({ kind, doc }) => ['injection', 'pumpDose', 'mistake'].includes(kind) || (kind === 'offBody' && doc.tubingEnd !== 'sink');
const written = new Set(['incident', 'glucose', 'ketones', 'sign', 'seen', 'changed', 'automation', 'pump', 'carbs', 'look', 'call', 'note', 'doseRefused', 'offBody']);
// An alarm was set for another time, and an order is good for an hour of its own: neither is written down again.
const goesAway = new Set(['alarmSet', 'order']);

const struckIn = record => new Set(record.filter(({ kind }) => kind === 'strike').map(({ doc }) => doc.target));
const lastInjection = record => {
  const struck = struckIn(record);
  return record.filter(({ kind, id }) => kind === 'injection' && !struck.has(id)).sort((a, b) => order(b.at, a.at))[0];
};

// The entries since the clock was last known to be right, each with how far the clock was set after it was written. What lies ahead was
// written by a clock that was wrong, whatever somebody half asleep said of it.
const since = ({ wallClock: { good, turns }, record }, isAhead) => {
  const place = new Map(record.map(({ id }, at) => [id, at]));
  const of = id => (id === null ? -1 : place.get(id) ?? -1);
  const struck = struckIn(record);
  return record.filter((event, at) => !struck.has(event.id) && (at > of(good) || isAhead(event)))
    .map(event => ({ event, by: turns.filter(({ after }) => of(after) >= place.get(event.id)).reduce((sum, turn) => sum + turn.by, 0) }));
};
const moved = (text, by, now) => stamp(new Date(Math.min(Date.parse(text) + by, now.moment)));

export const clockActions = tools => {
  const { state, add, keepDraft, clock, fresh, words, ask } = tools;
  const isApart = (one, other) => differ(ask, state.plan.doc.id)(Date.parse(one), Date.parse(other));
  // The wrong entry is struck and stays; one with the true time is added beside it.
  const again = async (event, more) => {
    const strike = `${event.id}-c`;
    await add(events.strike(strike, clock().text, event.id, words('strike-clock')));
    if (more) await add(events.fromText(object({ ...members(event.text), id: string(`${event.id}-w`), ...more })));
    return strike;
  };
  const settled = async () => {
    const own = state.wallClock;
    Object.assign(own, { good: state.record.at(-1)?.id ?? null, turns: [], page: own.tell.length ? 'tell' : null });
    state.pad = { digits: '' };
    await keepDraft();
  };
  // What was answered by a clock that was wrong is asked again.
  const answersAgain = wrong => {
    const { draft } = state;
    state.doseInHand = false;
    if (!draft || draft.run?.injected) return;
    if (draft.run?.shown) { state.draft = null; return; }
    if (draft.run) return;
    for (const name of ['glucose', 'ketones']) if (wrong.some(({ event }) => event.id === draft[name]?.event)) Object.assign(draft, { [name]: null, passed: [] });
  };
  const corrected = async at => {
    const own = state.wallClock;
    const [{ id }] = own.ask;
    const event = state.record.find(entry => entry.id === id);
    own.ask = own.ask.slice(1);
    if (event && isApart(event.at, at)) {
      const strike = await again(event, { at: string(at), insteadOf: event.kind === 'injection' ? string(id) : undefined });
      // One that seems to lie ahead counts until the team knows of it, and closes every dose until then.
      if (order(event.at, at) > 0) own.tell.push(strike);
    }
    state.pad = { digits: '' };
    own.page = null;
    if (!own.ask.length) await settled(); else await keepDraft();
  };

  return {
    async timeRight() {
      const own = state.wallClock;
      const now = clock();
      state.timeSeen = true;
      own.page = null;
      const waits = state.panel?.waitsForTime;
      if (waits) state.panel.waitsForTime = null;
      if (!own.turns.length) {
        await settled();
        if (waits) await tools.deed('offShow', waits);
        return;
      }
      const found = since(state, event => order(event.at, now.text) > 0).filter(({ event, by }) => by && isApart(event.at, stamp(new Date(Date.parse(event.at) + by))));
      answersAgain(found);
      // At a school nothing is struck: the orders give one needle a day, whenever it was.
      const wrong = state.school ? [] : found.filter(({ event, by }) => minutesUntil(moved(event.at, by, now), now.moment) > -2 * aDay);
      for (const { event, by } of wrong.filter(entry => !wentIn(entry.event))) {
        const at = moved(event.at, by, now);
        if (written.has(event.kind)) {
          const strike = await again(event, { at: string(at), due: event.doc.due && string(stamp(new Date(Date.parse(event.doc.due) + by))) });
          if (event.kind === 'offBody' && by < 0) own.tell.push(strike);
        } else if (goesAway.has(event.kind)) await again(event);
        // A dose that seems to be shown later than now closes every other one, until the team knows of it.
        else if (event.kind === 'doseShown' && by < 0) own.tell.push(await again(event));
      }
      own.ask = wrong.filter(({ event }) => wentIn(event)).map(({ event, by }) => ({ id: event.id, meant: moved(event.at, by, now) }));
      if (own.ask.length) { own.turns = []; await keepDraft(); } else await settled();
    },
    async timeWrong() { state.wallClock.page = 'wrong'; await keepDraft(); },
    async timeAgain() { state.wallClock.page = null; await keepDraft(); },
    // Back to what comes first off the pump: its dose waits for the time.
    async timeLater() { state.panel.waitsForTime = null; state.wallClock.page = null; await keepDraft(); },
    // Somebody sees that the last injection was not at the time that is written down.
    async timeOfLast() {
      state.wallClock.ask = [{ id: lastInjection(state.record).id, meant: null }];
      await keepDraft();
    },
    whenWasIt: minutes => corrected(stamp(new Date(clock().moment - minutes * 60000))),
    whenMeant: () => corrected(state.wallClock.ask[0].meant),
    whenAsWritten: () => corrected(state.record.find(({ id }) => id === state.wallClock.ask[0].id).at),
    async whenType() { state.wallClock.page = 'type'; state.pad = { digits: '' }; await keepDraft(); },
    async whenTyped() {
      const moment = lastTimeAt(state.pad.digits, clock().moment);
      if (!moment) { state.pad = { digits: '', problem: words('pad-clock-wrong') }; return; }
      await corrected(stamp(moment));
    },
    // The team hears of each time that was wrong: from then on only the right one counts.
    async clockTold(answered) {
      const own = state.wallClock;
      const now = clock().text;
      if (!answered) await add(events.call(fresh(), now, 'team', false));
      else for (const strike of own.tell) await add(events.call(`${strike}-k`, now, 'team', true, strike));
      if (answered) own.tell = [];
      own.page = null;
      state.said = answered ? null : words('no-answer-do');
      await keepDraft();
    },
    async clockTell() { state.wallClock.page = 'tell'; await keepDraft(); },
  };
};

// What the questions about the time need to show: the entry that is asked about, and the last injection of the last day.
export const clockLook = (state, eventLine) => {
  const last = lastInjection(state.record), recent = last && minutesUntil(last.at, state.now.moment) > -aDay;
  state.wallClock.ask = state.wallClock.ask.filter(asked => state.record.some(({ id }) => id === asked.id));
  state.lastInjected = recent ? { text: eventLine(last), clock: clockOf(last.at) } : null;
  const [asked] = state.wallClock.ask;
  const event = asked && state.record.find(({ id }) => id === asked.id);
  state.wrongEntry = event ? { text: eventLine(event), clock: clockOf(event.at), at: event.at, ahead: order(event.at, state.now.text) > 0, meant: asked.meant && clockOf(asked.meant) } : null;
};
