// Off the pump, and back: the bridge, long-acting insulin, the return. The core says what comes first, how much and when; here it is
// asked, shown one thing a screen, and what was done is recorded. Fetched when somebody opens it.
import { elements, members, number, object, shown, string, trimmed, typed } from '../text.js';
import { lastTimeAt, minutesUntil, nextTimeAt, notBefore, order, stamp } from '../times.js';
import { deviceFor, fieldProblem, unitsTyped } from '../answers.js';
import { clockOpen } from '../clockwatch.js';
import { pumpIs } from '../actions.js';
import * as events from '../events.js';
import { firstToRing } from '../views/ring.js';
import { unitsText } from '../views/units.js';
import { aDay, glucoseReading, hoursSaid, stillSaid } from '../situation.js';

export { view } from './views.js';

// A page with a dose in hand does not outlive a reload: the record knows that it was shown, and it is asked about.
const inHand = new Set(['dose', 'typed', 'different', 'given']);

// Where a pump is off or on again it is another page, which begins at its top: no other button comes under the same finger.
export const place = ({ panel, off }) => `${panel.page} ${off?.answer.off && off.answer.recorded}`;

export const panel = kept => ({ ...kept, waitsForTime: null, ...(inHand.has(kept.page) ? { page: 'answer', dose: null } : {}) });

// In minutes; ours, no text was found for it. What was just said is not asked again at once.
const justSaid = 15;
// A dose that was shown and never answered for is asked about with what was said when it was shown.
export const unanswered = ({ offKnown, record }, now) => ({ name: 'off', page: 'answer', asked: stillSaid(offKnown, record, now) ?? {}, ids: {} });
// A pump that is on while injected insulin still works: the page that says what waits until when.
export const back = () => ({ name: 'off', page: 'answer', asked: {}, ids: {} });
export const opened = ({ offKnown, record }, now, ask) => {
  const known = stillSaid(offKnown, record, now);
  if (known) return { name: 'off', page: 'carbs', again: true, asked: { ...known }, ids: {} };
  // Two hours without insulin are counted from when it stopped: that is asked, unless the record knows.
  return { name: 'off', page: ask('offPump', { now: string(now.text) }).recorded ? 'hours' : 'since', asked: {}, ids: {} };
};

// A journey is remembered by itself: how long it will be is over when the dose is due that the journey changes. Two days are ours.
const journeyLasts = 2 * aDay;
const zonesOf = (known, now) => (known?.journey && minutesUntil(known.journey.at, now.moment) > -journeyLasts ? known.journey.zones : undefined);

// A call lasts minutes, fifteen are ours: an amount that was typed before it is nothing anybody says yes to now.
const callLasts = 15;

// A key of the core's text that says something.
const whereSaid = text => (text === undefined || text === 'null' ? undefined : text);

const question = (asked, now, known, plan) => ({ now: string(now.text), ...hoursSaid(asked, now),
  carbs: asked.carbs ? number(asked.carbs) : undefined,
  noLongActing: asked.noLong ? 'true' : undefined,
  // A plan that came since may have no such device.
  with: asked.with && plan.doc[asked.with] ? string(asked.with) : undefined,
  longActingWith: asked.longWith && plan.doc[asked.longWith] ? string(asked.longWith) : undefined,
  zonesEast: zonesOf(known, now),
  glucose: asked.glucose ? object({ ...glucoseReading(asked.glucose), at: string(asked.glucose.at) }) : undefined });

// What is at hand does not change with the hours.
const atHand = ({ noLong, with: device, longWith }) => ({ noLong, with: device, longWith });

// What the core says now, worked out afresh each time, with the texts of its screens as they stand in its answer.
export const look = ({ state, ask }) => {
  const { panel } = state;
  const answer = ask('offPump', question(panel.asked, state.now, state.offKnown, state.plan));
  if (answer.refused) throw new Error(`offPump: ${JSON.stringify(answer.refused)}`);
  state.off = { answer, screens: elements(members(answer.text).screens) };
  // What was asked about is no longer asked.
  if (panel.page === 'didOther' && !answer.first?.shown) panel.page = 'answer';
  // A page that lay open until a pump is late would go on waiting for it: how long is asked again, unless something waits for nobody.
  if (['answer', 'second'].includes(panel.page) && panel.asked.hours !== undefined && answer.off && answer.first?.waits !== 'everything'
    && minutesUntil(panel.asked.at, state.now.moment) <= -justSaid && !stillSaid(panel.asked, state.record, state.now))
    Object.assign(panel, { page: 'hours', asked: atHand(panel.asked) });
};

// While a dose is on the screen time goes on. If the core would no longer say the same, it must not stand there as if it were new:
// the page asks what became of it.
export const stillRight = ({ state, ask, clock, recordText }) => {
  const dose = state.panel?.name === 'off' && state.panel.dose;
  if (!dose) return;
  const record = recordText(state.plan.doc.id, state.record.filter(event => event.id !== dose.shown));
  const answer = ask('offPump', { record, ...question(state.panel.asked, clock(), state.offKnown, state.plan) });
  if (!answer.refused && answer.screens.some(screen => screen.kind === dose.kind && screen.dose?.text === dose.dose.text)) return;
  Object.assign(state.panel, { page: 'answer', dose: null });
  state.pad = { digits: '' };
};

// What a dose drawn in another amount is made of, as the core says it.
const partsOf = ({ core }, { literal, partsText }, units) => {
  const answer = core.ask('partsGiven', object({ shown: object({ units: literal, parts: partsText }), units }));
  if (answer.refused) throw new Error(`partsGiven: ${JSON.stringify(answer.refused)}`);
  return members(answer.text).parts;
};

export const actions = tools => {
  const { state, add, keepDraft, clock, words, ask, fresh } = tools;
  const literal = () => typed(state.pad.digits, state.mark);
  const page = async (name, more = {}) => { Object.assign(state.panel, more, { page: name }); state.pad = { digits: '' }; await keepDraft(); };
  const unfinished = () => { state.pad.problem = words('pad-unfinished'); };
  const remember = ({ hours, until, at, asleep, ...more }) => { state.offKnown = { hours, until, at, asleep, ...atHand(more), journey: state.offKnown?.journey }; };
  // What is at hand is asked of the core from now on, and remembered for the next injection.
  const haveAtHand = more => {
    const asked = { ...state.panel.asked, ...more };
    remember(asked);
    state.panel.asked = asked;
  };
  const settle = async answer => {
    const now = clock();
    const asked = { ...state.panel.asked, ...answer, ...('hours' in answer ? { at: now.text, until: null } : {}) };
    const reply = ask('offPump', question(asked, now, state.offKnown, state.plan));
    if (reply.refused) { state.pad.problem = fieldProblem(reply, words); return; }
    if ('hours' in answer) asked.until = reply.expectedUntil?.at ?? null;
    // A reading is in the record like any other.
    if (answer.glucose) await add(events.glucose(fresh(), answer.glucose.at, answer.glucose));
    remember(asked);
    // A reading that still stands is not asked for again.
    const next = { hours: 'sleep', sleep: 'carbs', carbs: reply.first?.outcome === 'testGlucose' ? 'glucose' : 'answer' };
    await page(next[state.panel.page] ?? 'answer', { asked });
    if (state.panel.page === 'answer') await lookIfStillOff();
    if (answer.glucose) await lookAfterGlucose();
  };
  // What was measured answers the look that was due. With long-acting insulin the next one would be a day away.
  const lookAfterGlucose = async () => {
    tools.look();
    const { recorded, wayBecause, nextBridge, screens, look } = state.off.answer;
    // A dose that is in brings a look of its own.
    if (!recorded || wayBecause !== 'atWork' || nextBridge || screens.some(({ dose }) => dose)) return;
    if (state.holds.looks.some(({ due, what }) => what.includes('glucose') && order(due, look.at) <= 0)) return;
    await add(events.look(fresh(), clock().text, look.at, ['glucose', 'ketones']));
  };
  // No injection yet, but the time by which there has to be one: a look like any other.
  const lookIfStillOff = async () => {
    tools.look();
    const { wayBecause, recorded, nextBridge } = state.off.answer;
    if (wayBecause !== 'soonBack' || !recorded || !nextBridge) return;
    if (!state.holds.looks.some(look => order(look.due, nextBridge.at) === 0)) await add(events.look(fresh(), clock().text, nextBridge.at, ['glucose', 'ketones']));
  };
  const settleTyped = name => { const value = literal(); return value ? settle({ [name]: value }) : unfinished(); };
  const looksAt = due => state.record.filter(event => event.kind === 'look' && order(event.doc.due, due) === 0);
  const strikeLooks = async (due, reason) => {
    if (order(due, clock().text) > 0) for (const event of looksAt(due)) await add(events.strike(`${event.id}-s`, clock().text, event.id, reason));
  };
  // What was eaten and measured belonged to this dose: the next answer is not about it. The food of a meal part is still to be eaten.
  // When the next injection is due is a look like any other: it is told on every page, by the calendar and by the watch.
  const afterDose = async (id, grams, sure = true) => {
    // So is the end of long-acting insulin: from then on there is no basal but the next dose, or the pump's.
    const { nextBridge: before, longActing: { until: held } } = state.off.answer;
    tools.look();
    const { nextBridge: next, longActing: { until }, look } = state.off.answer;
    // With long-acting insulin nothing is due for a day: that is no day without a look.
    if (look && !next && !looksAt(look.at).length) await add(events.look(`${id}-h`, clock().text, look.at, ['glucose', 'ketones']));
    if (next) await add(events.look(`${id}-l`, clock().text, next.at, ['glucose', 'ketones']));
    // Where long-acting insulin takes over there is no next one to be woken for.
    else if (before) await strikeLooks(before.at, words('off-strike-reason'));
    if (until && held && order(until.at, held.at)) await strikeLooks(held.at, words('off-moved-reason'));
    if (until && !looksAt(until.at).length) await add(events.look(`${id}-n`, clock().text, until.at, ['glucose', 'ketones']));
    await page(grams ? 'eat' : goesOn(), { dose: null, meal: grams ? { id, grams, sure } : null, asked: { ...state.panel.asked, carbs: null, glucose: null } });
  };
  // Nobody was asked yet how long it will be: "not known" is an answer, and no guess of the page's.
  const goesOn = () => (state.panel.asked.hours === undefined && state.off.answer.wayBecause === 'unknown' ? 'hours' : 'answer');
  const hasMeal = partsText => Boolean(partsText) && trimmed(members(partsText).meal) !== '0';
  const finger = reading => settle({ glucose: { ...reading, from: 'finger', at: clock().text } });

  return {
    async offSince(when) {
      const said = when === 'now' ? clock().moment : lastTimeAt(state.pad.digits, clock().moment);
      if (!said) return unfinished();
      // Off since before the record says that one came back: that one does not run, and the record must not go on saying so.
      const back = Math.max(...state.record.filter(event => event.kind === 'pump' && event.doc.state === 'on').map(event => Date.parse(event.at)), -Infinity);
      await add(events.pump(fresh(), stamp(back < said ? said : new Date(back + 1000)), 'off'));
      return page('hours');
    },
    offHours: () => settleTyped('hours'),
    offHoursUnknown: () => settle({ hours: null }),
    offAsleep: () => { const until = nextTimeAt(state.pad.digits, clock().moment); return until ? settle({ asleep: stamp(until) }) : unfinished(); },
    offAwake: () => settle({ asleep: null }),
    offCarbs: () => settleTyped('carbs'),
    offNothing: () => settle({ carbs: null }),
    offGlucose: () => { const value = literal(); return value ? finger({ literal: value, unit: state.plan.doc.glucoseUnit }) : unfinished(); },
    offGlucoseSays: reading => finger({ reading }),
    offNotMeasured: () => settle({ glucose: null }),
    async offZones(direction) {
      const zones = literal(), now = clock();
      if (direction !== 'none' && !zones) return unfinished();
      const journey = direction === 'none' ? null : { zones: direction === 'west' ? `-${zones}` : zones, at: now.text };
      const reply = ask('offPump', question(state.panel.asked, now, { journey }, state.plan));
      if (reply.refused) { state.pad.problem = fieldProblem(reply, words); return undefined; }
      state.offKnown = { ...state.offKnown, journey };
      return page(journey ? 'travel' : 'answer');
    },
    offAgain: () => page('hours', { asked: atHand(state.panel.asked) }),
    // A tap on a page whose dose was answered for meanwhile is about nothing any more.
    offPage: name => (inHand.has(name) && !state.panel.dose ? undefined : page(name)),
    // None at hand: rapid-acting insulin goes on, until somebody has found some.
    async offHaveLong(have) {
      haveAtHand({ noLong: !have });
      await page('answer');
    },
    offVial: name => page(name === state.plan.doc.longActing.name ? 'rightVial' : 'wrongVial'),

    // Whether it is a pen is seen in the hand, with its label; before anything is shown, so that no dose is taken back for it.
    async offShowLong(device) {
      haveAtHand({ longWith: device });
      return tools.deed('offShow', 'longActing');
    },

    // The dose is in the record, and read back, before anybody sees it.
    async offShow(kind) {
      // The page may have been drawn a while ago, or the clock been set: the core is asked at the tap.
      tools.look();
      if (state.panel.page === 'hours') return keepDraft();
      // Whether the clock is right is asked before any amount is in sight.
      if (clockOpen(state)) { state.panel.waitsForTime = kind; return keepDraft(); }
      const at = state.off.answer.screens.findIndex(screen => screen.kind === kind);
      // Something else comes first by now.
      if (at < 0) return page('answer');
      const { order: ordered } = state.off.answer.screens[at], { order: named } = state.panel;
      // What the team named is over: the plan's own amount is not what was meant here.
      if (kind === 'longActing' && named?.id && ordered?.id !== named.id) return page('order', { order: null });
      const { units, parts } = members(members(state.off.screens[at]).dose);
      const { basalHours, zonesEast } = members(state.off.screens[at]);
      // From here on the record knows that no pump delivers; whatever it knew before stays.
      if (!state.off.answer.recorded) await add(events.pump(fresh(), clock().text, 'off'));
      const dose = { ...state.off.answer.screens[at], literal: units, ordered: state.off.answer.screens[at].order?.id, partsText: parts, hoursText: whereSaid(basalHours), zonesText: whereSaid(zonesEast), shown: fresh(), id: fresh() };
      await add(events.doseShown(dose.shown, clock().text, { units, insulin: dose.insulin, parts }));
      return page('dose', { dose, ...(kind === 'longActing' ? { order: null } : {}) });
    },
    offTyped() {
      const { dose } = state.panel;
      const units = unitsTyped(tools, { insulin: dose.insulin, device: dose.dose.with });
      if (!units) return undefined;
      return units === trimmed(dose.literal) ? page('given', { same: true, units }) : page('different', { same: false, units });
    },
    async offGiven() {
      const { dose, units, same, asked } = state.panel;
      const parts = same || !dose.partsText ? dose.partsText : partsOf(tools, dose, units);
      const shownAt = state.record.find(event => event.id === dose.shown)?.at;
      await add(events.injection(dose.id, notBefore(shownAt, clock().text), { insulin: dose.insulin, units, device: dose.dose.with, shown: dose.shown,
        order: dose.ordered, parts,
        // Drawn in another amount it is not for the hours that were shown: those then follow from its parts.
        basalHours: same ? dose.hoursText : undefined, zonesEast: dose.zonesText, glucose: dose.insulin === 'rapid' && asked.glucose ? asked.glucose : undefined }));
      await afterDose(dose.id, hasMeal(parts) ? asked.carbs : null);
    },
    // The same injection by the other device, whose steps may be others: the one that was shown is not given.
    async offWith(device) {
      const { shown } = state.panel.dose;
      await add(events.doseRefused(`${shown}-r`, clock().text, shown));
      haveAtHand({ with: device });
      state.panel.dose = null;
      return tools.deed('offShow', 'bridge');
    },
    async offRefused() {
      const { shown } = state.panel.dose;
      await add(events.doseRefused(`${shown}-r`, clock().text, shown));
      await page('answer', { dose: null });
    },
    // "Did you inject it?", for a dose that was shown and never answered for.
    async offDid({ id, answer }) {
      // A second tap on a page that is still being answered is about nothing any more.
      const shown = state.off.answer.first?.shown;
      if (shown?.id !== id) return;
      const { insulin } = shown;
      const event = state.record.find(entry => entry.id === id);
      const device = deviceFor(state.plan, insulin === 'rapid' ? state.panel.asked.with : state.panel.asked.longWith);
      if (answer === 'no') {
        await add(events.doseRefused(`${id}-r`, clock().text, id));
        tools.look();
        await page(goesOn());
        return;
      }
      const { units, parts } = members(event.text);
      const went = answer === 'other' ? unitsTyped(tools, { insulin, device }) : units;
      if (!went) return;
      const partsIn = parts && went !== trimmed(units) ? partsOf(tools, { literal: units, partsText: parts }, went) : parts;
      await add(events.injection(`${id}-i`, event.at, { insulin, units: went, device, sure: answer !== 'unsure', shown: id, order: shown.order ?? undefined, parts: partsIn }));
      await afterDose(`${id}-i`, hasMeal(partsIn) ? state.panel.asked.carbs : null, answer !== 'unsure');
    },
    async offEaten() {
      const { id, grams } = state.panel.meal;
      await add(events.carbs(`${id}-c`, clock().text, grams, id));
      await page(goesOn(), { meal: null });
    },
    offNotEaten: () => page(goesOn(), { meal: null }),
    async offPumpIs(on) {
      await pumpIs(tools, fresh(), on);
      if (on === 'off') await lookIfStillOff();
      else await page('answer');
    },

    // What the team says on the telephone: typed, said back, and only then an order.
    async offOrderTyped() {
      const units = unitsTyped(tools, { insulin: 'long', device: deviceFor(state.plan) });
      if (units) await page('orderSure', { order: { at: clock().text, units, text: unitsText(shown(units, state.mark), words) } });
    },
    async offOrderSaid() {
      if (minutesUntil(state.panel.order.at, clock().moment) <= -callLasts) { await page('order', { order: null }); return; }
      const id = fresh();
      await add(events.call(`${id}-c`, clock().text, 'team', true));
      await add(events.order(id, clock().text, { by: firstToRing(state).name, units: state.panel.order.units, insulin: 'long', text: words('order-text'), readBack: true }));
      tools.look();
      const { order, screens } = state.off.answer;
      await page(order?.id === id && !order.mayInject ? 'orderLarge' : screens.some(screen => screen.order) ? 'vial' : 'answer', { order: { ...state.panel.order, id } });
    },
    async offOrderOther() {
      const { id } = state.panel.order;
      if (id) await add(events.strike(`${id}-s`, clock().text, id, words('strike-reason')));
      await page('order', { order: null });
    },
    async offQuestions() { state.panel = null; await tools.deed('start'); },
    async offClose() { state.panel = null; state.pad = { digits: '' }; await keepDraft(); },
  };
};
