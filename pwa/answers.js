// What a tap does inside the questions. An answer that is changed strikes the one before it; nothing is rewritten.
import * as events from './events.js';
import { newDraft } from './flow.js';
import { trimmed, typed } from './text.js';
import { firstToRing } from './views/ring.js';
import { clockOf, lastTimeAt, stamp } from './times.js';

// What the core refuses is said at the field, and the digits stay.
export const fieldProblem = (reply, words) => {
  const [first] = JSON.parse(reply.text).refused;
  return first.accepted ? words('pad-refused', { accepted: String(first.accepted) }) : words('pad-unfinished');
};

// What somebody draws or dials with: what they said, where the plan has it; else the plan's usual device.
export const deviceFor = ({ doc }, said) => (doc[said] ? said : doc.syringe ? 'syringe' : 'pen');

// The units somebody reads off a syringe or a pen, if there could be an injection of them; else a sentence at the field.
export const unitsTyped = ({ state, words, clock, possible }, { insulin, device }) => {
  const units = trimmed(typed(state.pad.digits, state.mark) ?? '0');
  if (units === '0') { state.pad.problem = words('pad-unfinished'); return null; }
  return possible(events.injection('probe', clock().text, { insulin, units, device })) ? units : null;
};

export const answerActions = (tools, { open, emptyPad, literal, unitsText, marked, inject, offBodyGave, deviceNow }) => {
  const { state, add, keepDraft, clock, fresh, words, ask } = tools;

  // Would the core accept this answer? What it refuses is said at the field, and the digits stay.
  const accepted = answer => {
    const reply = ask('advise', { situation: tools.situationOf({ ...state.draft, ...answer }, clock().text) });
    if (!reply.refused) return true;
    state.pad.problem = fieldProblem(reply, words);
    return false;
  };

  const settleAnswer = async (name, answer, event) => {
    const { draft } = state;
    const old = draft[name];
    if (draft.redo === name && draft.strikes && old?.event) await add(events.strike(`${old.event}-s`, clock().text, old.event, words('strike-reason')));
    if (event) await add(event);
    draft[name] = { ...answer, event: event?.id };
    // Whoever went on past a low that was only feared has measured it now: what follows is said at once, and no further question is asked.
    if (name === 'glucose' && event) draft.passed = draft.passed.filter(outcome => outcome !== 'lowEmergency');
    draft.ids[name] = fresh();
    draft.redo = undefined; draft.strikes = false; draft.retest = false; draft.unsure = false;
    state.pad = emptyPad(); state.ticks = []; state.panel = null;
    await keepDraft();
  };

  const glucoseAnswer = async answer => {
    const { draft } = state;
    if (!accepted({ glucose: answer })) return;
    await settleAnswer('glucose', answer, answer.unknown ? null : events.glucose(draft.ids.glucose, answer.at, answer));
    draft.unit = undefined;
    draft.noMeter = false;
    await keepDraft();
  };
  const ketoneAnswer = async answer => {
    if (!accepted({ ketones: answer })) return;
    await settleAnswer('ketones', answer, answer.unknown ? null : events.ketones(state.draft.ids.ketones, answer.at, answer));
  };

  const signsAnswer = async unknown => {
    const { ids } = state.draft;
    const on = new Set(state.ticks);
    const what = ['drowsy', 'confused', 'fastBreathing', 'cannotKeepFluid', 'vomitedAgain', 'vomitedOnce', 'bellyPain'].filter(name => on.has(name));
    if (on.has('fitting')) what.push('fitting', 'cannotSwallow');
    const at = clock().text;
    await settleAnswer('signs', { what, unwell: on.has('unwell'), unknown, at }, what.length ? events.sign(ids.signs, at, what) : null);
    state.draft.unsure = unknown;
    await keepDraft();
  };
  const seenAnswer = async unknown => {
    const { ids } = state.draft;
    const on = new Set(state.ticks);
    const what = ['leak', 'blood', 'bentCannula', 'cameOut', 'occlusionAlarm', 'outOfInsulin', 'heatedInsulin', 'pumpDead'].filter(name => on.has(name));
    const at = clock().text;
    await settleAnswer('seen', { what, offersNothing: on.has('offersNothing'), unknown, at }, what.length ? events.seen(ids.seen, at, what) : null);
  };

  // A dose given before, a mistake, an order: units, then when, then what else is needed, then it is recorded.
  const backTo = () => { const from = state.panel.from; open(from ? { name: from, ids: {} } : null); };
  const finish = async (event, after) => {
    const step = state.panel.step;
    await add(event);
    if (step) marked(step);
    if (after) after(); else backTo();
    if (state.panel) state.said = words('saved', { clock: clockOf(event.at) });
    await keepDraft();
  };
  const entryNext = async () => {
    const { panel } = state;
    const { kind, units, at } = panel;
    const id = panel.ids.event;
    if (kind === 'needle' && panel.sure === undefined) { Object.assign(panel, { name: 'entrySure', text: unitsText(units), clock: clockOf(at) }); return; }
    if ((kind === 'needle' || kind === 'pump') && panel.glucose === undefined) { panel.name = 'entryGlucose'; return; }
    const glucose = panel.glucose || undefined;
    if (kind === 'pump') await finish(events.pumpDose(id, at, { units, purpose: 'correction', glucose }));
    else if (kind === 'meal') await finish(events.pumpDose(id, at, { units, purpose: 'meal' }));
    else if (kind === 'automatic') await finish(events.pumpDose(id, at, { units, purpose: 'automatic' }));
    else if (kind === 'needle') await finish(events.injection(id, at, { insulin: 'rapid', units, device: deviceNow(), sure: panel.sure, glucose }));
    else if (kind === 'long') await finish(events.injection(id, at, { insulin: 'long', units, device: deviceNow() }));
    else if (kind === 'maybe') await finish(events.injection(id, at, { insulin: 'rapid', units, device: deviceNow(), sure: false }), () => { state.draft.given = null; open(null); });
    else if (kind === 'mistake') await finish(events.mistake(id, at, panel.what, panel.insulin, units ?? undefined), () => {
      // Whatever page it was said on, what follows from it is asked at once.
      state.draft ??= newDraft(fresh, clock(), state.viewer);
      Object.assign(state.draft, { passed: [], run: null });
      open(null);
    });
    else if (kind === 'yes') await inject({ units, at, shownId: panel.shownId, sameDose: panel.same, device: deviceNow(), id });
  };

  return {
    async tick(name) { state.ticks = state.ticks.includes(name) ? state.ticks.filter(entry => entry !== name) : [...state.ticks, name]; await keepDraft(); },
    signsDone: () => signsAnswer(false),
    signsUnknown: async () => { state.ticks = []; await signsAnswer(true); },
    async signsUnsureOn() { state.draft.unsure = false; await keepDraft(); },

    async again(name) {
      const { draft } = state;
      if (draft.run?.shown && !draft.run.injected) { open({ name: 'refuse', ids: {} }); await keepDraft(); return; }
      // A school strikes nothing: both answers stay.
      draft.run = null; draft.redo = name; draft.strikes = !draft.viewer; draft.unsure = false; draft.passed = [];
      draft.ids[name] ??= fresh();
      state.ticks = name === 'signs' || name === 'seen' ? [...(draft[name]?.what ?? []), ...(draft[name]?.unwell ? ['unwell'] : []), ...(draft[name]?.offersNothing ? ['offersNothing'] : [])] : [];
      open(null);
      await keepDraft();
    },
    async keepAnswer() { state.draft.redo = undefined; state.draft.retest = false; state.ticks = []; open(null); await keepDraft(); },

    async switchUnit(unit) { state.draft.unit = unit; state.pad = emptyPad(); await keepDraft(); },
    async noMeter() { state.draft.noMeter = true; state.pad = emptyPad(); await keepDraft(); },
    async retest() { Object.assign(state.draft, { redo: 'glucose', strikes: false, retest: true, noMeter: false }); state.pad = emptyPad(); await keepDraft(); },
    async retestNoMeter() { Object.assign(state.draft, { redo: 'glucose', strikes: false, retest: true, noMeter: true }); state.pad = emptyPad(); await keepDraft(); },
    async glucoseTyped(from) {
      const value = literal();
      if (!value) { state.pad.problem = words('pad-unfinished'); return; }
      await glucoseAnswer({ literal: value, unit: state.unit, from, noMeter: from === 'sensor' && state.draft.noMeter ? true : undefined, at: clock().text });
    },
    meterWord(word) { open({ name: 'meterWord', word }); },
    async meterWordFrom(from) {
      const word = state.panel.word;
      const before = state.draft.glucose;
      const repeated = Boolean(state.draft.retest && before?.reading === word && before.from === 'finger' && from === 'finger');
      await glucoseAnswer({ reading: word, from, repeated, at: clock().text });
    },
    glucoseUnknown: () => glucoseAnswer({ unknown: true, at: clock().text }),

    async urine(on) { state.draft.urine = on; state.pad = emptyPad(); await keepDraft(); },
    async ketonesTyped() {
      const value = literal();
      if (!value) { state.pad.problem = words('pad-unfinished'); return; }
      await ketoneAnswer({ literal: value, at: clock().text });
    },
    ketonesHi: () => ketoneAnswer({ reading: 'HI', at: clock().text }),
    ketonesUrine: word => ketoneAnswer({ urine: word, at: clock().text }),
    ketonesUnknown: why => ketoneAnswer({ unknown: why, at: clock().text }),

    seenDone: () => seenAnswer(false),
    seenUnknown: async () => { state.ticks = []; await seenAnswer(true); },
    async givenDone() { state.draft.given = { at: clock().text }; await keepDraft(); },
    async givenUnsure() { state.draft.given = { unknown: true, at: clock().text }; await keepDraft(); },
    async givenKnown() { state.draft.given = null; await keepDraft(); },

    async entry(kind) {
      const from = state.panel?.name === 'doubtSay' ? 'doubtSay' : ['given', 'givenMore'].includes(state.panel?.name) && (!state.draft || state.fresh) ? 'given' : null;
      open({ name: kind === 'highSince' ? 'entryTime' : 'entryUnits', kind, from, ids: { event: fresh() } });
      await keepDraft();
    },
    async entryBack() { backTo(); await keepDraft(); },
    async entryUnits() {
      const { panel, draft } = state;
      const value = literal();
      if (!value || (panel.kind !== 'onBoard' && trimmed(value) === '0')) { state.pad.problem = words('pad-unfinished'); return; }
      const units = trimmed(value);
      if (panel.kind === 'carbs') { if (accepted({ carbs: units })) { draft.carbs = units; backTo(); } }
      else if (panel.kind === 'onBoard') { if (accepted({ onBoard: units })) { draft.onBoard = units; backTo(); } }
      else if (!tools.possible(events.injection('probe', clock().text, { insulin: 'rapid', units, device: deviceNow() }))) return;
      else if (panel.kind === 'offBody') await offBodyGave(units, panel.end);
      else if (panel.kind === 'order') open({ name: 'orderSaid', units, text: unitsText(units), ids: panel.ids });
      else { panel.units = units; panel.name = 'entryTime'; state.pad = emptyPad(); }
      await keepDraft();
    },
    // Only an amount that was said back to the team is an order to inject.
    async orderSaid() {
      const { panel } = state;
      await add(events.order(panel.ids.event, clock().text, { by: firstToRing(state).name, units: panel.units, text: words('order-text'), readBack: true }));
      open({ name: 'injectNow', units: panel.units, text: panel.text, same: false, order: panel.ids.event, ids: {} });
      await keepDraft();
    },
    async entryUnitsUnknown() { state.panel.units = null; state.panel.name = 'entryTime'; state.pad = emptyPad(); await keepDraft(); },
    async entryTime() {
      const moment = lastTimeAt(state.pad.digits, clock().moment);
      if (!moment) { state.pad = { digits: '', problem: words('pad-clock-wrong') }; return; }
      const at = stamp(moment);
      state.pad = emptyPad();
      if (state.panel.kind === 'highSince') { state.draft.highSince = at; backTo(); } else { state.panel.at = at; await entryNext(); }
      await keepDraft();
    },
    async entryNow() { state.panel.at = clock().text; state.pad = emptyPad(); await entryNext(); await keepDraft(); },
    async entryShownTime() { state.panel.at = state.panel.shownAt; state.pad = emptyPad(); await entryNext(); await keepDraft(); },
    async entrySure(sure) { state.panel.sure = sure; await entryNext(); await keepDraft(); },
    async entryGlucose() {
      const value = literal();
      const reading = value && { literal: value, unit: state.plan.doc.glucoseUnit, from: 'finger', at: clock().text };
      if (!reading) { state.pad.problem = words('pad-unfinished'); return; }
      if (!accepted({ glucose: reading })) return;
      state.panel.glucose = reading;
      state.pad = emptyPad();
      await entryNext();
      await keepDraft();
    },
    async entryGlucoseUnknown() { state.panel.glucose = null; state.pad = emptyPad(); await entryNext(); await keepDraft(); },

    async mistakeKind(what) { open({ name: 'mistakeInsulin', what, from: state.panel.from, ids: { event: fresh() } }); await keepDraft(); },
    async mistakeInsulin(insulin) { open({ ...state.panel, name: 'entryUnits', kind: 'mistake', insulin }); await keepDraft(); },
  };
};
