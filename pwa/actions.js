// What a tap does: it adds to the record, keeps the answers, or opens a page. No clinical rule stands here; whether a
// number is possible and what follows from it is asked of the core each time.
import * as events from './events.js';
import { fingerprintOf } from './copies.js';
import { textOf } from './checked.js';
import { clockActions, clockOpen } from './clockwatch.js';
import { dosesNext, newDraft, showsAdvice, startsRun, stepsOf } from './flow.js';
import { union } from './merge.js';
import { unitsText as amountText } from './views/units.js';
import { save } from './save.js';
import { elements, members, object, shown, string, trimmed, typed } from './text.js';
import { clockOf, dayOf, minutesUntil, notBefore, signsLast } from './times.js';
import { answerActions, deviceFor, unitsTyped } from './answers.js';

export const fromStore = events.fromText;

// The pump works again, or not: with its return goes the first look, at the time the core gives.
export const pumpIs = async ({ add, ask, clock }, id, on) => {
  await add(events.pump(id, clock().text, on));
  if (on !== 'on') return;
  const { look } = ask('offPump', { now: string(clock().text) }).back;
  if (look) await add(events.look(`${id}-l`, clock().text, look.at, ['glucose', 'ketones']));
};

// Injected insulin that still works while the pump is on: what is written down as running is told until when it waits.
const sayWhatWaits = async ({ ask, clock, deed }) => {
  const { off, back } = ask('offPump', { now: string(clock().text) });
  if (!off && back.usualFrom) await deed('openBack');
};

const emptyPad = () => ({ digits: '' });
// As many plans as somebody can still tell apart are kept beside the one in use.
const longestAside = 8;

// The dose is in the record, and read back, before anybody sees it: all of a tap is written before its screen is drawn. A phone that
// dies then still asks about it.
const showDose = async ({ state, add, keepDraft, clock }) => {
  const { run } = state.draft;
  const answer = { text: run.answer, ...JSON.parse(run.answer) };
  const step = stepsOf(answer, run).find(entry => entry.current);
  if (step?.id !== 'inject' || run.shown || !answer.dose || clockOpen(state)) return;
  const dose = members(members(run.answer).dose);
  run.units = dose.units;
  run.parts = dose.parts;
  await add(events.doseShown(run.ids.shown, clock().text, { units: dose.units, insulin: answer.dose.insulin, parts: dose.parts }));
  run.shown = run.ids.shown;
  state.doseInHand = true;
  await keepDraft();
};

const startRun = async tools => {
  const { state, add, keepDraft, clock, fresh } = tools;
  const { draft, advice } = state;
  const now = clock();
  draft.run = { answer: advice.text, marks: {}, lateSeen: now.text, ids: { shown: fresh(), injection: fresh(), ...Object.fromEntries(advice.steps.map(step => [step.id, fresh()])) } };
  state.school?.alreadyDone(draft, advice);
  await keepDraft();
  if (advice.incident === 'open' && !state.holds.incident?.recorded) await add(events.incident(draft.ids.incident, now.text, 'opened'));
  for (const [index, look] of advice.looks.entries()) {
    const due = look.at ?? look.due;
    // At a school the steps begin anew once home has answered: the same look is not planned twice. Nowhere else: a look asked for again
    // is not answered by a reading taken before that.
    if (draft.home && state.record.some(event => event.kind === 'look' && event.doc.due === due && event.doc.what.join() === look.what.join())) continue;
    await add(events.look(`${draft.run.ids.shown}-${index}`, now.text, due, look.what));
  }
  await showDose(tools);
};

// After every tap: is there an answer that has to be shown now? Then its steps begin.
export const settle = async tools => {
  const { state } = tools;
  const { draft, advice } = state;
  if (!draft || state.panel || !state.plan) return;
  if (draft.run) { await showDose(tools); return; }
  if (advice && showsAdvice(draft, advice) && startsRun(advice) && !(dosesNext(state) && clockOpen(state))) await startRun(tools);
};

// While the dose is on the screen time goes on. What would be advised now, had it not been shown? If that is another
// answer, the old one must not stand there as if it were new: the page asks whether it was injected.
export const stillRight = ({ state, ask, clock, recordText, situationOf }) => {
  const run = state.draft?.run;
  if (!run?.shown || run.injected || !state.doseInHand) return;
  const record = recordText(state.plan.doc.id, state.record.filter(event => event.id !== run.shown));
  const answer = ask('advise', { record, situation: situationOf(state.draft, clock().text) });
  const shownThen = JSON.parse(run.answer);
  if (answer.refused || answer.outcome !== shownThen.outcome || answer.dose?.text !== shownThen.dose.text) state.doseInHand = false;
};

// Signs that were answered some time ago say nothing about now: a page that was left in the middle asks them again.
export const signsAgainWhenOld = ({ state, clock }) => {
  const { draft } = state;
  if (!draft?.signs || draft.run || minutesUntil(draft.signs.at, clock().moment) > -signsLast) return;
  draft.signs = null;
  draft.passed = [];
  state.ticks = [];
  if (!state.panel) state.pad = { digits: '' };
};

export const actions = tools => {
  const { state, add, keepDraft, clock, fresh, words, store, core, planOf, recordText } = tools;
  const mark = () => state.plan?.doc.decimalMark ?? '.';
  const open = panel => { state.panel = panel; state.pad = emptyPad(); state.said = null; };
  const literal = () => typed(state.pad.digits, mark());
  const unitsText = digits => amountText(shown(digits, mark()), words);
  const marked = (id, kind = 'done') => { state.draft.run.marks[id] = { mark: kind, clock: clock().clock }; };
  const padFull = () => { state.pad = { digits: state.pad.digits, problem: words('pad-full') }; };
  const stepNow = id => state.steps.find(step => step.id === id);
  const endDraft = () => { state.draft = null; state.panel = null; state.pad = emptyPad(); state.ticks = []; state.said = null; };

  // What lies here of a plan's person: with the plan in use what is on this page, with any other what is kept under any of their plans.
  const recordHere = async doc => {
    if (state.plan?.doc.id === doc.id) return state.record;
    try { return await tools.recordOfPerson(doc); } catch { state.kept = false; return []; }
  };

  // The record that came is judged as it came, and then together with what lies here: what the core would refuse is not written.
  const offer = async (planText, { record, events: brought = [] }, extra) => {
    const planId = JSON.parse(planText)?.id;
    const judged = (plan, both) => core.ask('holds', object({ plan, record: both, now: string(clock().text) }));
    const alone = judged(planText, record ?? recordText(typeof planId === 'string' ? planId : '', []));
    if (alone.refused) { state.candidate = { ...extra, refused: JSON.parse(alone.text).refused }; return; }
    const here = await recordHere(JSON.parse(planText));
    const found = union(here.map(event => event.text), brought);
    const both = [...here, ...found.added.map(fromStore)];
    const joining = Boolean(record) && state.plan?.doc.id === planId;
    const together = judged(joining ? state.plan.text : planText, recordText(planId, both));
    if (together.refused) { state.candidate = { ...extra, refused: JSON.parse(together.text).refused }; return; }
    state.candidate = { ...extra, ...planOf(planText), ...found, both, joining, events: brought.length ? brought : null,
      differing: found.differ.map(({ own, other }) => ({ own: tools.eventLine(own), other: tools.eventLine(other), clock: clockOf(fromStore(own).at), day: tools.day(dayOf(fromStore(own).at)) })),
      otherPlan: joining && fingerprintOf(core.ask, planText) !== state.plan.fingerprint };
  };
  const entriesOf = texts => texts.map(text => ({ id: fromStore(text).id, text }));

  // Whatever came, by file, code or text: read, judged by the core, and laid beside the plan in use. An invented person's plan says
  // itself that it is one, and replaces nothing but another invented one without more ado.
  const bring = async came => {
    const handover = await tools.handover();
    const found = await (typeof came === 'string' ? handover.read(came) : handover.readFile(came));
    if (found.refused) { state.candidate = { isFile: true, refused: found.refused }; return; }
    await offer(found.plan, found, { isFile: true, signed: found.signed });
    if (!state.candidate.refused && !state.candidate.joining) await weigh();
  };
  // What the review refuses does not come into use: it is kept beside the plan that is, with its bytes as they came.
  const keepAside = async texts => {
    state.aside = texts;
    try { await store.put('aside', JSON.stringify(texts)); return true; } catch { state.kept = false; return false; }
  };
  const weigh = async () => {
    const { candidate } = state;
    const weighed = (await tools.handover()).weigh(candidate.text);
    if (!candidate.demo || (state.plan && !state.plan.demo) || weighed.refused.length) candidate.weighed = weighed;
    candidate.unconfirmed = weighed.unconfirmed;
    if (weighed.refused.length) candidate.keptAside = await keepAside([candidate.text, ...state.aside.filter(text => text !== candidate.text)].slice(0, longestAside));
  };

  // The needle is in: what went in is recorded as it was typed, with the readings it was decided on.
  const inject = async ({ units, at, sure = true, shownId, sameDose, device, id, order }) => {
    const { draft } = state;
    const run = draft?.run;
    const shownEvent = state.record.find(event => event.id === shownId);
    await add(events.injection(id, at, { insulin: 'rapid', units, device, sure, order, shown: shownId,
      parts: sameDose && shownEvent ? members(shownEvent.text).parts : undefined,
      glucose: draft?.glucose && !draft.glucose.unknown ? draft.glucose : undefined,
      ketones: draft?.ketones && !draft.ketones.unknown ? draft.ketones : undefined }));
    if (run && (run.shown === shownId || order)) {
      run.injected = { text: unitsText(units), units, at, id, same: Boolean(sameDose) };
      run.marks.inject = { mark: 'done', clock: clockOf(at) };
    }
    state.doseInHand = false;
    // In a doubt a dose that was shown is the first one asked about; then the others are.
    state.panel = state.doubt && !draft ? { name: 'doubtSay', ids: {} } : null;
    await keepDraft();
  };

  const deviceNow = () => deviceFor(state.plan, state.draft?.with);

  const unitsOf = ({ slots: { dose } }) => typed(dose.split('\u00a0')[0].replace(/[\u2066-\u2069]/g, ''), mark());
  const offBodyGave = async (units, end) => {
    await add(events.offBody(state.draft.run.ids.offBody, clock().text, units, end));
    marked('offBody');
    open(null);
    // Insulin that may have gone into the body changes everything: the core is asked again at once.
    tools.look();
    const { draft } = state;
    const answer = tools.ask('advise', { situation: tools.situationOf(draft, clock().text) });
    if (!answer.refused && ['tooMuch', 'emergency', 'lowEmergency'].includes(answer.outcome) && answer.outcome !== state.advice.outcome) draft.run = null;
    await keepDraft();
  };

  const stepEvents = {
    changeSet: (id, at) => events.changed(id, at, 'set'), changeReservoir: (id, at) => events.changed(id, at, 'reservoir'), changeInsulin: (id, at) => events.changed(id, at, 'insulin'),
    automationOff: (id, at) => events.automation(id, at, 'paused'), stopPump: (id, at) => events.pump(id, at, 'off'),
    sugar: (id, at, step) => events.carbs(id, at, step.slots.grams), glucagon: (id, at) => events.note(id, at, words('note-glucagon')),
    eat: (id, at, step) => events.carbs(id, at, step.slots.grams, state.parts && state.draft.run.injected ? state.draft.run.injected.id : undefined),
    setAlarm: (id, at) => { const look = state.advice.looks[0]; return events.alarmSet(id, at, look?.at ?? look?.due ?? at); },
    closeIncident: (id, at) => events.incident(id, at, 'closed'),
  };

  const recordings = {
    set: (id, at) => events.changed(id, at, 'set'), reservoir: (id, at) => events.changed(id, at, 'reservoir'), insulin: (id, at) => events.changed(id, at, 'insulin'),
    paused: (id, at) => events.automation(id, at, 'paused'), automationOn: (id, at) => events.automation(id, at, 'on'),
  };

  return {
    ...clockActions(tools),
    ...answerActions(tools, { open, emptyPad, literal, unitsText, marked, inject, offBodyGave, deviceNow }),

    refresh() {},
    async open(name) { open({ name, ids: {} }); if (name === 'typed') state.panel.ids.injection = state.draft.run.ids.injection; await keepDraft(); },
    async close() { open(null); await keepDraft(); },
    key(sign) {
      const { digits } = state.pad;
      if (digits.length >= 5) { padFull(); return; }
      if (sign === mark()) { if (!digits.includes(sign)) state.pad = { digits: `${digits || '0'}${sign}` }; return; }
      // A leading zero is kept only before the mark, or on a clock: "05" would be read two ways.
      state.pad = { digits: digits === '0' ? sign : digits + sign };
    },
    clockKey(sign) { if (state.pad.digits.length >= 4) padFull(); else state.pad = { digits: state.pad.digits + sign }; },
    erase() { state.pad = { digits: state.pad.digits.slice(0, -1) }; },

    async demo(name) { await offer(await textOf({ adult: 'demo/adult.json', child: 'demo/child.json' }[name]), {}, { isFile: true }); },
    planFile: file => (file ? bring(file) : undefined),
    planText: text => bring(text),
    offerPlan: text => bring(text),
    typedDay(text) { state.candidate.typedDay = text; },
    dropCandidate() { state.candidate = null; },
    async takePlan() {
      const { text, added, both, weighed, typedDay, doc } = state.candidate;
      // Only the day of agreement, typed by hand, makes a plan the one in use.
      if (weighed && (weighed.refused.length || weighed.isDraft || (typedDay ?? '').replace(/[^0-9]/g, '') !== doc.agreement.on.replaceAll('-', ''))) return;
      state.plan = planOf(text);
      state.record = both;
      state.candidate = null;
      state.offKnown = null;
      endDraft();
      await tools.keepAtOnce({ entries: entriesOf(added), planText: text });
      // Whatever lies here of the same person under another plan goes on counting, and so does a doubt about it.
      await tools.readRecord();
      tools.home();
      tools.askToKeep();
    },

    // Another phone's record of this plan: its entries come in, the plan in use stays. Its holds run here from now on.
    async join() {
      const { added, both, differing } = state.candidate;
      state.record = both;
      // A dose that is on the screen was worked out without them.
      if (state.draft?.run && !state.draft.run.injected) state.draft.run = null;
      state.doseInHand = false;
      open(null);
      const kept = await tools.keepAtOnce({ entries: entriesOf(added) });
      state.candidate = { joined: { count: String(added.length), kept }, differing };
      tools.home();
    },
    async openAside() { state.asideShown = (await tools.handover()).aside(state.aside); open({ name: 'aside', ids: {} }); },
    asideSave(at) { save('stopgap-plan-not-in-use.json', 'application/json', state.aside[at]); },
    async asideRemove(at) {
      await keepAside(state.aside.filter((text, which) => which !== at));
      if (state.aside.length) await tools.deed('openAside'); else open(null);
    },
    async seePlan() { state.candidate.joining = false; await weigh(); },

    async start() { endDraft(); state.draft = newDraft(fresh, clock(), state.viewer); await keepDraft(); },
    async pass() { state.draft.passed.push(state.advice.outcome); state.draft.run = null; await keepDraft(); },
    // Nothing more can be tested: the steps of what was answered begin, with their call.
    async run() { await startRun(tools); },

    async seeDose() { state.draft.run.listed = false; await keepDraft(); },
    async with(device) {
      const { draft } = state;
      await add(events.doseRefused(`${draft.run.shown}-r`, clock().text, draft.run.shown));
      draft.with = device; draft.run = null;
      await keepDraft();
    },
    async typedUnits() {
      const units = unitsTyped(tools, { insulin: 'rapid', device: deviceNow() });
      if (!units) return;
      const same = units === trimmed(state.draft.run.units);
      state.panel = { name: same ? 'injectNow' : 'different', units, text: unitsText(units), same };
      state.pad = emptyPad();
      await keepDraft();
    },
    async injected() {
      const { units, same, order } = state.panel;
      const { run } = state.draft;
      const shownId = order ? undefined : run.shown;
      await inject({ units, at: notBefore(state.record.find(event => event.id === shownId)?.at, clock().text), shownId, sameDose: same, device: deviceNow(), id: order ? `${order}-i` : run.ids.injection, order });
    },
    async refused(wrongAnswer) {
      await add(events.doseRefused(`${state.draft.run.shown}-r`, clock().text, state.draft.run.shown));
      state.draft.run = null;
      if (wrongAnswer) { state.panel = null; state.draft.redo = 'glucose'; } else { endDraft(); state.said = words('refused-recorded'); }
      await keepDraft();
    },
    async didInject(answer) {
      const { id, clock: shownClock, at } = state.holds.unanswered;
      const shownEvent = state.record.find(event => event.id === id);
      const units = members(shownEvent.text).units;
      if (answer === 'no') {
        await add(events.doseRefused(`${id}-r`, clock().text, id));
        // A page that was left with its units typed belongs to the dose that is refused.
        if (state.draft?.run?.shown === id) { state.draft.run = null; open(null); }
        await keepDraft();
      } else if (answer === 'unsure') {
        await inject({ units, at: shownEvent.at ?? at, sure: false, shownId: id, sameDose: true, device: deviceNow(), id: `${id}-i` });
        if (state.draft && !state.draft.run?.injected) { state.draft = null; await keepDraft(); }
      } else {
        open(answer === 'same' ? { name: 'entryTime', kind: 'yes', units, same: true, shownId: id, shownClock, shownAt: shownEvent.at, answersShown: true, ids: { event: `${id}-i` } }
          : { name: 'entryUnits', kind: 'yes', shownId: id, shownClock, shownAt: shownEvent.at, answersShown: true, ids: { event: `${id}-i` } });
        await keepDraft();
      }
    },

    async stepDone(id) {
      const { run } = state.draft;
      const step = stepNow(id);
      const now = clock();
      if (id === 'pumpCorrection') { open({ name: 'entryUnits', kind: 'pump', step: id, ids: { event: run.ids[id] } }); await keepDraft(); return; }
      if (id === 'offBody') { await offBodyGave(unitsOf(step), run.tubing.end); return; }
      const event = stepEvents[id]?.(run.ids[id], now.text, step);
      if (event) await add(event);
      marked(id);
      await keepDraft();
    },
    // What replaces the pump has pages of its own.
    async stepOff(id) { marked(id); await tools.deed('openOff'); },
    async stepSkipped(id) { marked(id, 'skipped'); await keepDraft(); },
    // Where the tubing ends is seen before the pump gives anything; only over a sink may it give.
    async tubingLook() { open({ name: 'tubing', text: stepNow('offBody').slots.dose, ids: {} }); await keepDraft(); },
    async tubing(end) {
      if (end === 'sink') { state.draft.run.tubing = { end, at: clock().text }; open(null); } else open({ name: 'tubingNot', end, text: stepNow('offBody').slots.dose, ids: {} });
      await keepDraft();
    },
    tubingGiven: () => offBodyGave(unitsOf(stepNow('offBody')), state.panel.end),
    async offBodyOther() { open({ name: 'entryUnits', kind: 'offBody', end: state.panel?.end ?? state.draft.run.tubing.end, ids: {} }); await keepDraft(); },
    async called({ step, answered }) {
      const { run } = state.draft;
      const to = { emergencyCall: 'emergency', callTeam: 'team', callHome: 'home' }[step];
      run.ids[step] ??= fresh();
      await add(events.call(answered ? run.ids[step] : `${run.ids[step]}-n`, clock().text, to, answered));
      marked(step, answered ? 'done' : 'skipped');
      state.said = answered ? null : words('no-answer-do');
      await keepDraft();
    },
    async backToSteps() { state.draft.run.lateSeen = clock().text; await keepDraft(); },
    async stepsOver() { endDraft(); await keepDraft(); },
    async alarmSet() { const { due } = state.next; await add(events.alarmSet(`alarm-${due.replace(/[^0-9]/g, '-')}`, clock().text, due)); },
    async record(what) {
      state.panel.ids[what] ??= fresh();
      if (what === 'pumpOff' || what === 'pumpOn') await pumpIs(tools, state.panel.ids[what], what === 'pumpOn' ? 'on' : 'off');
      else await add(recordings[what](state.panel.ids[what], clock().text));
      state.said = words('saved', { clock: clock().clock });
      if (['pumpOn', 'automationOn'].includes(what) && !state.school) await sayWhatWaits(tools);
    },
    // The record in doubt. What was said is in the record by then; only the core's own check, after all was sealed anew, ends it.
    doubtSave() { save(`stopgap-raw-${clock().text.slice(0, 10)}.json`, 'application/json', tools.rawText()); state.said = words('doubt-saved'); },
    async doubtSay() { open({ name: 'doubtSay', ids: {} }); await keepDraft(); },
    async doubtCall(answered) {
      state.panel.ids.call ??= fresh();
      await add(events.call(answered ? state.panel.ids.call : `${state.panel.ids.call}-n`, clock().text, 'team', answered));
      const said = answered ? null : words('no-answer-do');
      if (answered) open({ name: 'doubtSay', ids: {} });
      state.said = said;
      await keepDraft();
    },
    async doubtOver() {
      if (!state.doubtSaid && !state.doubtCalled) { open({ name: 'doubtCall', ids: {} }); await keepDraft(); return; }
      try { await tools.sealAnew(); } catch { state.kept = false; state.said = words('doubt-not-kept'); return; }
      open(null);
      await keepDraft();
    },
    // A phone that is new: what was given before is said by name, or that nothing was.
    async freshYes() { open({ name: 'given', ids: {} }); await keepDraft(); },
    async freshNo() {
      state.received = { id: state.plan.doc.id, at: clock().text, asked: clock().text };
      try { await store.put('received', JSON.stringify(state.received)); } catch { state.kept = false; }
    },
    writtenDown() { state.unkept.shift(); },

    async night() {
      state.nightChoice = { auto: 'night', night: 'day', day: 'auto' }[state.nightChoice];
      try { await store.put('night', state.nightChoice); } catch { state.kept = false; }
    },
    async export() {
      const text = object({ format: string('stopgap.copy'), version: '1', plan: state.plan.text, record: recordText() });
      save(`stopgap-${clock().text.slice(0, 10)}.json`, 'application/json', text);
      await tools.copyMade(state.plan.fingerprint, 'file');
    },
    async removeAll() {
      try { await store.removeEverything(); } catch { state.kept = false; }
      Object.assign(state, { plan: null, record: [], holds: null, advice: null, next: null, candidate: null, offKnown: null, aside: [], doubt: null, damagedLongAgo: [], received: null, unread: null, fresh: false });
      endDraft();
    },
    readAgain() { location.reload(); },
    // The page is read again only once the one keeper has written the choice down and the other has forgotten the old one.
    async acceptRelease() {
      const tell = (worker, message) => new Promise(done => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = done;
        worker.postMessage(message, [port2]);
      });
      open(null);
      await tools.keepAtOnce({});
      await tell(tools.keeper(), { accept: state.newer });
      await tell(navigator.serviceWorker.controller, { forget: true });
      location.reload();
    },
  };
};
