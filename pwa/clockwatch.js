// Is the clock of this phone right? The page knows how long it has been running, and sees when the clock was set
// meanwhile: back, or forward while somebody looked at it. What was written since the clock was last known to be
// right then has times that may be wrong: a hold would end too soon, and a second dose be shown. No dose is shown
// until somebody has said which time is right. Nothing is rewritten: a wrong entry is struck, and one with the true
// time stands beside it.
import * as events from './events.js';
import { aDay, record as recordOf } from './situation.js';
import { members, object, string } from './text.js';
import { clockOf, lastTimeAt, minutesUntil, order, stamp } from './times.js';

// `good`: the last entry that was written while the clock was known to be right. `turns`: how far the clock was set
// since, and after which entry. `ask`: entries whose true time is still to be said. `tell`: strikes that the team has
// to hear of. All of it is kept with the answers.
const lastId = record => record.at(-1)?.id ?? null;
export const fromKept = (kept, record) => ({ good: lastId(record), turns: [], ask: [], tell: [], ...kept, page: null });

// What the page runs by may stand still while the phone sleeps, hidden: a clock that is ahead of it then says nothing.
// One that is behind it was set back.
export const clockWatch = () => {
  let last = null;
  let unseen = false;
  return {
    hidden() { unseen = true; },
    // By how many milliseconds the clock was set since it was last compared, or 0. `differ` says of two moments whether
    // they are too far apart.
    turned({ moment, ran }, isHidden, differ) {
      const slept = unseen;
      unseen = isHidden;
      const now = { wall: moment.getTime(), ran };
      last ??= now;
      const expected = last.wall + Math.round(ran - last.ran);
      const by = now.wall - expected;
      if (slept && by > 0) {
        last = now;
        return 0;
      }
      // What is less than a second apart is not worth a question to the core.
      if (Math.abs(by) < 1000 || !differ(expected, now.wall)) return 0;
      last = now;
      return by;
    },
  };
};

// The core alone knows how far two clocks may be apart: it is asked about a record with one entry, written at the
// later one.
export const differ = (ask, planId) => (one, other) => {
  const [early, late] = [one, other].sort((a, b) => a - b).map(moment => stamp(new Date(moment)));
  const probe = events.note('probe', late, 'probe');
  return ask('holds', { record: recordOf(planId, [probe]), now: string(early) }).clockInDoubt === true;
};

export const clockTurned = ({ wallClock, record }, by) => {
  wallClock.turns.push({ after: lastId(record), by });
  wallClock.page = null;
};
// No dose is shown before the clock is settled.
export const clockOpen = ({ wallClock, timeSeen }) => !timeSeen
  || wallClock.turns.length > 0 || wallClock.ask.length > 0;

// Insulin that went in, or may have: somebody says when. What ran into a sink did not.
const wentIn = ({ kind, doc }) => ['injection', 'pumpDose', 'mistake'].includes(kind)
  || (kind === 'offBody' && doc.tubingEnd !== 'sink');
// Everything else is written down again, moved by as much as the clock was set.
const written = new Set(['incident', 'glucose', 'ketones', 'sign', 'seen', 'changed', 'automation', 'pump', 'carbs',
  'look', 'call', 'note', 'doseRefused', 'offBody']);
// But an alarm was set for another time, and an order is good for an hour of its own: neither is written down again.
const goesAway = new Set(['alarmSet', 'order']);

const struckIn = record => new Set(record.filter(({ kind }) => kind === 'strike').map(({ doc }) => doc.target));
const lastInjection = record => {
  const struck = struckIn(record);
  return record.filter(({ kind, id }) => kind === 'injection' && !struck.has(id)).sort((a, b) => order(b.at, a.at))[0];
};

const later = (text, by) => stamp(new Date(Date.parse(text) + by));
// Nothing has happened later than now.
const moved = (text, by, now) => (Date.parse(text) + by > now.moment.getTime() ? now.text : later(text, by));

// The entries since the clock was last known to be right, each with how far the clock was set after it was written.
// What lies ahead was written by a clock that was wrong, whatever somebody half asleep said of it.
const since = ({ wallClock: { good, turns }, record }, isAhead) => {
  const place = new Map(record.map(({ id }, at) => [id, at]));
  const placeOf = id => place.get(id) ?? -1;
  const struck = struckIn(record);
  const setAfter = event => turns.filter(({ after }) => placeOf(after) >= placeOf(event.id))
    .reduce((sum, turn) => sum + turn.by, 0);
  return record.filter((event, at) => !struck.has(event.id) && (at > placeOf(good) || isAhead(event)))
    .map(event => ({ event, by: setAfter(event) }));
};

export const clockActions = tools => {
  const { state, add, keepDraft, clock, fresh, words, ask } = tools;
  const isApart = (one, other) => differ(ask, state.plan.doc.id)(Date.parse(one), Date.parse(other));

  // Strikes the entry; with `changes` it is written down again with them.
  const strike = async (event, changes) => {
    const id = `${event.id}-c`;
    await add(events.strike(id, clock().text, event.id, words('strike-clock')));
    const again = { ...members(event.text), id: string(`${event.id}-w`), ...changes };
    if (changes) await add(events.fromText(object(again)));
    return id;
  };
  const settled = async () => {
    const { wallClock } = state;
    Object.assign(wallClock, { good: lastId(state.record), turns: [], page: wallClock.tell.length ? 'tell' : null });
    state.pad = { digits: '' };
    await keepDraft();
  };
  const goTo = async page => {
    state.wallClock.page = page;
    state.pad = { digits: '' };
    await keepDraft();
  };

  // A dose on the screen was worked out by a clock that was wrong: it is asked about. So is a reading typed by that
  // clock.
  const answersAgain = found => {
    const { draft } = state;
    state.doseInHand = false;
    if (!draft || draft.run?.injected) return;
    if (draft.run?.shown) {
      state.draft = null;
      return;
    }
    // What was advised is worked out anew.
    draft.run = null;
    const isWrong = name => found.some(({ event }) => event.id === draft[name]?.event);
    for (const name of ['glucose', 'ketones'].filter(isWrong)) Object.assign(draft, { [name]: null, passed: [] });
  };

  // What nobody needs to be asked about is moved by as much as the clock was set.
  const move = async ({ event, by }, now) => {
    if (goesAway.has(event.kind)) await strike(event);
    if (written.has(event.kind)) {
      const due = event.doc.due && string(later(event.doc.due, by));
      const id = await strike(event, { at: string(moved(event.at, by, now)), due });
      if (event.kind === 'offBody' && by < 0) state.wallClock.tell.push(id);
    }
    // A dose that seems to be shown later than now closes every other one, until the team knows of it.
    if (event.kind === 'doseShown' && by < 0) state.wallClock.tell.push(await strike(event));
  };

  // The true time of the first entry that is asked about is said.
  const corrected = async at => {
    const { wallClock, record } = state;
    const [{ id }] = wallClock.ask;
    const event = record.find(entry => entry.id === id);
    wallClock.ask = wallClock.ask.slice(1);
    if (event && isApart(event.at, at)) {
      const insteadOf = event.kind === 'injection' ? string(id) : undefined;
      const struck = await strike(event, { at: string(at), insteadOf });
      // Of two times the later one counts until the team knows.
      if (order(event.at, at) > 0) wallClock.tell.push(struck);
    }
    if (wallClock.ask.length) await goTo(null);
    else await settled();
  };

  return {
    async timeRight() {
      const { wallClock, panel } = state;
      const now = clock();
      state.timeSeen = true;
      wallClock.page = null;
      const waits = panel?.waitsForTime;
      if (waits) panel.waitsForTime = null;
      if (!wallClock.turns.length) {
        await settled();
        if (waits) await tools.deed('offShow', waits);
        return;
      }
      const found = since(state, event => order(event.at, now.text) > 0)
        .filter(({ event, by }) => by && isApart(event.at, later(event.at, by)));
      answersAgain(found);
      // At a school nothing is struck: the orders give one needle a day, whenever it was. What is two days old holds
      // nothing any more.
      const wrong = state.school ? []
        : found.filter(({ event, by }) => minutesUntil(moved(event.at, by, now), now.moment) > -2 * aDay);
      for (const entry of wrong.filter(({ event }) => !wentIn(event))) await move(entry, now);
      wallClock.ask = wrong.filter(({ event }) => wentIn(event))
        .map(({ event, by }) => ({ id: event.id, meant: moved(event.at, by, now) }));
      wallClock.turns = [];
      if (wallClock.ask.length) await keepDraft();
      else await settled();
    },
    timeWrong: () => goTo('wrong'),
    timeAgain: () => goTo(null),
    // Back to what comes first off the pump: its dose waits for the time.
    async timeLater() {
      state.panel.waitsForTime = null;
      await goTo(null);
    },
    // Somebody sees that the last injection was not at the time that is written down.
    async timeOfLast() {
      state.wallClock.ask = [{ id: lastInjection(state.record).id, meant: null }];
      await keepDraft();
    },
    whenWasIt: minutes => corrected(later(clock().text, -minutes * 60000)),
    whenMeant: () => corrected(state.wallClock.ask[0].meant),
    whenAsWritten: () => corrected(state.wrongEntry.at),
    whenType: () => goTo('type'),
    async whenTyped() {
      const moment = lastTimeAt(state.pad.digits, clock().moment);
      if (moment) await corrected(stamp(moment));
      else state.pad = { digits: '', problem: words('pad-clock-wrong') };
    },
    // The team hears of each time that was wrong: from then on only the right one counts.
    async clockTold(answered) {
      const { wallClock } = state;
      const now = clock().text;
      if (!answered) await add(events.call(fresh(), now, 'team', false));
      for (const id of answered ? wallClock.tell : []) await add(events.call(`${id}-k`, now, 'team', true, id));
      if (answered) wallClock.tell = [];
      state.said = answered ? null : words('no-answer-do');
      await goTo(null);
    },
  };
};

// What the questions about the time need to show: the entry that is asked about, and the last injection of the last
// day.
export const clockLook = (state, lineOf) => {
  const { wallClock, record, now } = state;
  const last = lastInjection(record);
  const isRecent = last && minutesUntil(last.at, now.moment) > -aDay;
  state.lastInjected = isRecent ? { text: lineOf(last), clock: clockOf(last.at) } : null;
  wallClock.ask = wallClock.ask.filter(asked => record.some(({ id }) => id === asked.id));
  const [asked] = wallClock.ask;
  const event = asked && record.find(({ id }) => id === asked.id);
  const ahead = event && order(event.at, now.text) > 0;
  state.wrongEntry = event ? { text: lineOf(event), at: event.at, clock: clockOf(event.at), ahead,
    meant: asked.meant && clockOf(asked.meant) } : null;
};
