// Start, which screen, draw. The only file that reads the clock, and the only one that asks the core, the store and the
// words. What is kept: the plan, the record and the answers in hand. Everything else is worked out afresh by `look`.
import { render } from './vendor/lit-html.js';
import * as core from './core.js';
import { script, styled, textOf } from './checked.js';
import * as store from './store.js';
import { reader } from './words.js';
import * as act from './actions.js';
import { typeOnPad } from './keyboard.js';
import { onTap, pageDrawn } from './taps.js';
import { fingerprintOf, missingCopies } from './copies.js';
import { clockLook, clockTurned, clockWatch, differ, fromKept } from './clockwatch.js';
import { draftFrom, openQuestion, screenOf, stepsOf } from './flow.js';
import { hoursSaid, record, situation, stillSaid } from './situation.js';
import { list, members, object, shown, string } from './text.js';
import { clockOf, dayOf, inHours, isNight, lastTimeAt, late, minutesUntil, order, signsLast, stamp } from './times.js';
import { onThisClock } from './wallclock.js';
import * as startViews from './views/start.js';
import * as joinViews from './views/join.js';
import * as questionViews from './views/questions.js';
import * as adviceViews from './views/advice.js';
import * as clockViews from './views/clock.js';
import * as doubtViews from './views/doubt.js';
import { asWritten, checked, ownersOf, rawCopy, readable } from './kept.js';
import { line, seenList, signList, urineWord } from './views/record.js';

const views = { ...startViews, ...joinViews, ...questionViews, ...adviceViews, ...clockViews, ...doubtViews, desk: () => desk.view(), handing: () => handover.view(),
  aside: () => handover.asidePage(state.asideShown, words, send),
  offered: (...page) => (state.candidate.weighed ? handover.offered(state.candidate, send) : startViews.offered(...page)) };
const root = document.getElementById('app');
let words, desk, handover, off;

const state = {
  plan: null, record: [], draft: null, panel: null, candidate: null, advice: null, holds: null, pad: { digits: '' }, ticks: [],
  unkept: [], aside: [], asideShown: [], findings: [], writer: true, offline: navigator.serviceWorker?.controller ? 'asked' : 'fetching',
  kept: true, persisted: null, copies: {}, nightChoice: 'auto', doseInHand: false, newer: false, changes: [], withdrawn: false, trouble: null,
  engine: '', release: '', built: '', offKnown: null, offSince: null, injectionsDue: [], injectionDue: false, longActingBridges: false, backWaits: [], order, desk: false, face: null, handing: false, school: null, viewer: undefined,
  timeSeen: false, wallClock: fromKept({}, []),
  doubt: null, damagedLongAgo: [], fresh: false, received: null, shut: null, unread: null, hours: null,
};

const clock = () => { const moment = new Date(); const text = stamp(moment); return { moment, text, clock: clockOf(text), ran: performance.now() }; };
// Was the clock set since it was last seen? Looked at before anything a tap writes, and at every look.
const watch = clockWatch();
const seeClock = () => {
  if (!state.plan || !state.writer) return;
  const by = watch.turned(clock(), document.hidden, differ(ask, state.plan.doc.id));
  if (!by) return;
  clockTurned(state, by);
  unwritten.draft = true;
};

// Days are written out; the month is a word of the language.
const day = text => words('day', { day: text.slice(8, 10).replace(/^0/, ''), month: `m${text.slice(5, 7)}`, year: text.slice(0, 4) });
// A day that is not today is named beside its clock time.
const otherDay = text => (dayOf(text) === dayOf(state.now.text) ? '' : day(dayOf(text)));
Object.assign(state, { dayWords: day, otherDay });
const planLines = plan => ({ born: day(plan.person.born), agreed: day(plan.agreement.on), review: day(plan.agreement.reviewBy) });
const planOf = text => {
  const doc = JSON.parse(text);
  return { text, doc, lines: planLines(doc), demo: doc.id.startsWith('p-demo-') };
};

// The record is damaged, or this phone is so new that it cannot know of a dose.
const nobodyKnows = () => Boolean(state.doubt || state.fresh);
const recordText = (planId = state.plan.doc.id, events = state.record) => record(planId, events);
// A clock that shows a day before this release was made is wrong: whatever could lead to a dose is asked with that day.
const ofRelease = { offPump: () => ({ notBefore: state.built ? string(state.built) : undefined, recordInDoubt: nobodyKnows() ? 'true' : undefined }) };
const ask = (call, rest) => onThisClock(core.ask(call, object({ plan: state.plan.text, record: recordText(), ...ofRelease[call]?.(), ...rest })));
const situationOf = (draft, now) => situation(draft, now, state.built, nobodyKnows());

// What the record says of a pump: since when none delivers, and since when nothing else gave basal insulin either; when the next injection
// in its place is due; or what still waits after it came back. The core is asked only where a pump was ever written about.
const speaksOfPump = event => event.kind === 'pump' || event.doc.what?.includes('pumpDead');
const ofPump = () => {
  const none = { offSince: null, injectionsDue: [], injectionDue: false, longActingBridges: false, backWaits: [] };
  if (state.school || !state.record.some(speaksOfPump)) return none;
  const asked = { now: string(state.now.text) };
  // What was said on its pages is asked with here, and as long as there: another answer would contradict them.
  const known = stillSaid(state.offKnown, state.record, state.now);
  const said = known && ask('offPump', { ...asked, ...hoursSaid(known, state.now) });
  // Hours that a clock set back made impossible are no reason to say nothing of the pump.
  const { off, recorded, since, missed, back, first, nextBridge, alarms, longActing } = !said || said.refused ? ask('offPump', asked) : said;
  const waits = [{ what: 'usual', ...back.usualFrom }, { what: 'automation', ...back.automationFrom }].filter(({ at }) => at && order(at, state.now.text) > 0);
  // While it is off only what a hold names is told: with the later of its two times.
  const alsoHeld = waits.filter(({ what }) => state.holds.holds?.some(hold => hold.what === what));
  if (off) return recorded ? { ...none, offSince: { ...since, bare: missed?.since }, injectionsDue: [...(nextBridge ? [nextBridge] : []), ...alarms].map(({ at }) => at), longActingBridges: longActing.bridges, backWaits: alsoHeld,
    // One that is due now has no time ahead of it; what waits for nobody is said alone.
    injectionDue: !nextBridge && !longActing.bridges && first?.waits !== 'everything' } : none;
  return { ...none, backWaits: waits };
};

// A reading keeps the digits it was typed with; a dose never has a trailing zero.
const amount = (event, key) => {
  const literal = members(event.text)[key];
  const mark = state.plan?.doc.decimalMark ?? '.';
  return key === 'value' || key === 'blood' ? literal.replace('.', mark) : shown(literal, mark);
};
const answerText = (name, answer) => ({
  signs: () => (answer.what.length || answer.unwell ? [...(answer.what.length ? [signList(answer.what, words)] : []), ...(answer.unwell ? [words('sign-unwell')] : [])].join(', ')
    : answer.unknown ? words('not-known') : words('none')),
  glucose: () => (answer.unknown ? words('not-known') : answer.reading ? words('meter-says', { word: answer.reading })
    : words('reading', { value: answer.literal.replace('.', state.mark), unit: answer.unit })),
  ketones: () => (answer.reading ? words('meter-says', { word: answer.reading }) : answer.literal ? words('reading', { value: answer.literal.replace('.', state.mark), unit: 'mmol/L' })
    : answer.urine ? urineWord(answer.urine, words) : { notYet: () => words('ketones-not-yet'), noStrips: () => words('ketones-no-strips'), error: () => words('ketones-error') }[answer.unknown]()),
  seen: () => (answer.what.length || answer.offersNothing ? [...(answer.what.length ? [seenList(answer.what, words)] : []), ...(answer.offersNothing ? [words('seen-offers-nothing')] : [])].join(', ')
    : answer.unknown ? words('not-known') : words('none')),
}[name]());

Object.assign(state, { injectsAt: ({ due }) => state.injectionsDue.some(at => order(at, due) === 0) });
const nextLook = () => {
  const looks = [...(state.holds?.looks ?? [])].sort((a, b) => order(a.due, b.due));
  // Off the pump the next one is an injection too: one that only lacks its ketones stands in the list and does not hide that. Where
  // they were tested in this incident it is they that must be seen to fall, and they come in their turn.
  const { incident } = state.holds ?? {};
  const tested = incident?.recorded && state.record.some(event => event.kind === 'ketones' && order(event.at, incident.since) >= 0);
  const whole = looks.filter(entry => !state.offSince || tested || entry.what.includes('glucose'));
  const look = whole.find(entry => entry.overdue) ?? whole[0] ?? looks[0];
  // A clock that shows the same time before then does not tell which day is meant.
  const far = look && Math.abs(minutesUntil(look.due, state.now.moment)) >= 24 * 60;
  return look && { look, clock: look.clock, day: far ? day(dayOf(look.due)) : '', due: look.due, what: look.what, injects: state.injectionDue || state.injectsAt(look), overdue: look.overdue,
    late: late(look.minutesLate ?? 0), inMinutes: String(Math.max(0, minutesUntil(look.due, state.now.moment))), inHours: inHours(minutesUntil(look.due, state.now.moment)) };
};

// The parts of the shown dose as they stand in the answer's text, only where there is more than one.
const partsShown = answer => {
  if (!answer?.dose) return null;
  const parts = members(members(members(answer.text).dose).parts);
  return /^0(\.0+)?$/.test(parts.meal) ? null : { rescue: shown(parts.rescue, state.mark), meal: shown(parts.meal, state.mark) };
};

// Worked out once a plan and kept beside it: a cold phone would wait for it at every start.
const fingerprint = () => {
  const { text } = state.plan, value = fingerprintOf(core.ask, text);
  store.put('fingerprint', JSON.stringify({ text, value })).catch(() => {});
  return value;
};

const preparePlan = () => {
  const { doc } = state.plan;
  state.insulinName = doc.rapid.name;
  state.planLine = words('plan-line', { revision: String(doc.revision), day: day(doc.agreement.on) });
  // A student's plan is kept in the school's own stores and in no other.
  if (!state.school) {
    state.plan.fingerprint ??= fingerprint();
    state.missing = missingCopies(state.copies, state.plan.fingerprint);
  }
  state.actionHours = members(members(state.plan.text).rapid).actionHours.replace('.', state.mark);
};

// Everything that follows from plan, record, answers and the time, worked out again.
const look = () => {
  state.now = clock();
  state.mark = state.plan?.doc.decimalMark ?? '.';
  document.documentElement.classList.toggle('night', state.nightChoice === 'auto' ? isNight(state.now.clock) : state.nightChoice === 'night');
  if (!state.plan || !state.writer) return undefined;
  preparePlan();
  seeClock();
  const holds = ask('holds', { now: string(state.now.text) });
  // What the core refuses as a whole is shown as it is written: nothing is worked out from it.
  state.unread = holds.refused ? JSON.parse(holds.text).refused : null;
  if (state.unread) { Object.assign(state, { holds: null, advice: null, next: null, draft: null, steps: [] }); tellDoses(); return; }
  state.holds = holds;
  state.fresh = isFresh();
  state.ring = holds.ring;
  Object.assign(state, ofPump());
  state.next = nextLook();
  const { draft } = state;
  const run = draft?.run;
  state.advice = run ? onThisClock({ text: run.answer, ...JSON.parse(run.answer) }) : draft ? ask('advise', { situation: situationOf(draft, state.now.text) }) : null;
  // Answers that no longer fit are dropped, not the record: they are asked again.
  if (state.advice?.refused) { Object.assign(state, { candidate: { refused: state.advice.refused }, draft: null, advice: null, panel: null }); return look(); }
  if (state.panel?.name === 'off') off.look(tools);
  state.steps = run ? stepsOf(state.advice, run) : state.advice?.steps.map(step => ({ ...step })) ?? [];
  // With long-acting insulin at work nothing is injected every few hours.
  for (const step of state.steps) if (step.id === 'bridge' && state.longActingBridges) step.slots = { ...step.slots, longActingBridges: true };
  // In a severe low whoever is there chooses between glucagon and sugar, by what they see.
  if (state.advice?.outcome === 'lowEmergency') {
    const choose = ['glucagon', 'sugar'].every(id => state.steps.some(step => step.id === id));
    for (const step of state.steps) if (['glucagon', 'sugar'].includes(step.id)) step.slots = { ...step.slots, severe: true, choose };
  }
  for (const step of state.steps) if (step.id === 'confirmChild') step.slots = { ...step.slots, born: day(step.slots.born) };
  // An hour may have passed since the steps began: whom they ring goes by the hour of now.
  const { team: [team], home: [home], emergency } = state.ring;
  for (const step of state.steps) {
    if (step.id === 'callTeam') step.slots = team ? { name: team.name, phone: team.phone } : { name: '', phone: emergency };
    if (step.id === 'callHome') step.slots = home ? { name: home.name, phone: home.phone } : {};
  }
  // At a school no amount is in sight before the steps that come before it are done.
  state.veiled = Boolean(state.school && state.advice?.dose && !run?.shown);
  state.injected = run?.injected?.text;
  state.parts = partsShown(state.advice);
  // A low that was measured ends the questions: nothing more is asked of somebody who has to act.
  const measuredLow = state.advice?.outcome === 'lowEmergency' && draft?.glucose && !draft.glucose.unknown;
  state.canGoOn = Boolean(draft && !measuredLow && openQuestion({ ...draft, redo: undefined }));
  // The pump may give once the end was seen over a sink, as long as an answer stands.
  state.tubingSeen = Boolean(run?.tubing && minutesUntil(run.tubing.at, state.now.moment) > -signsLast);
  state.answers = draft ? ['signs', 'glucose', 'ketones', 'seen'].filter(name => draft[name] && draft.redo !== name)
    .map(name => ({ name, text: answerText(name, draft[name]), clock: clockOf(draft[name].at) })) : [];
  state.noMeter = Boolean(draft?.noMeter);
  state.retest = Boolean(draft?.retest);
  state.unit = draft?.unit ?? state.plan.doc.glucoseUnit;
  state.otherUnit = state.unit !== state.plan.doc.glucoseUnit;
  state.urine = draft?.urine ?? state.plan.doc.ketones.test === 'urine';
  state.readsStrips = state.plan.doc.ketones.rows.some(row => row.urine?.length);
  state.highSinceClock = draft?.highSince ? clockOf(draft.highSince) : '';
  const typedTime = lastTimeAt(state.pad.digits, state.now.moment);
  state.yesterday = Boolean(typedTime && dayOf(stamp(typedTime)) !== dayOf(state.now.text));
  state.alarmSet = Boolean(state.next && state.record.some(event => event.kind === 'alarmSet' && event.doc.due === state.next.due));
  const dosed = new Set(['injection', 'pumpDose', 'offBody', 'mistake']);
  const strikes = new Map(state.record.filter(event => event.kind === 'strike').map(event => [event.doc.target, event.doc.reason]));
  const story = state.record.map(event => ({ at: event.at, kind: event.kind, clock: clockOf(event.at), day: day(dayOf(event.at)), text: line(event, words, amount, day), struck: strikes.has(event.id), misTap: strikes.get(event.id) === 'misTap', initials: event.initials }));
  state.story = story.filter(entry => entry.kind !== 'strike').sort((a, b) => order(b.at, a.at));
  clockLook(state, event => line(event, words, amount, day));
  tellDoses();
  // What was already given is shown where it is asked for: the last day of it, oldest first.
  state.givenLines = story.filter(entry => dosed.has(entry.kind) && order(state.now.text, entry.at) < 86400000).sort((a, b) => order(a.at, b.at));
};

// Every dose that can be read, the last one first, and as it is written where no words fit it any more.
const asLine = event => { try { return line(event, words, amount, day); } catch { return event.text; } };
const tellDoses = () => {
  const since = state.doubt && state.record.filter(event => !state.doubt.known.has(event.id));
  state.doubtSaid = Boolean(since?.some(event => event.kind === 'injection'));
  state.doubtCalled = Boolean(since?.some(event => event.kind === 'call' && event.doc.to === 'team' && event.doc.answered));
  const told = event => ({ clock: clockOf(event.at), day: dayOf(event.at) === dayOf(state.now.text) ? '' : day(dayOf(event.at)), at: event.at, id: event.id, text: asLine(event) });
  state.dosesWritten = state.record.filter(event => doses.has(event.kind)).map(told).sort((a, b) => order(b.at, a.at));
};
const doses = new Set(['injection', 'pumpDose', 'offBody', 'mistake']);
// A phone that got its plan within a day and knows of no dose cannot tell whether one was given before.
const isFresh = () => {
  if (!state.plan || state.school || state.plan.demo || state.record.some(event => doses.has(event.kind))) return false;
  const { id, at, asked } = state.received ?? {};
  return id !== state.plan.doc.id || !(asked || minutesUntil(at, state.now.moment) < -24 * 60);
};

let drawn = '', drawnFirst;
const firstDrawn = new Promise(done => { drawnFirst = done; });
let failed = false, begun = false;
const dropAnswers = () => Object.assign(state, { draft: null, panel: null, candidate: null, pad: { digits: '' }, ticks: [], offKnown: null, said: null, doseInHand: false });
const draw = () => {
  const name = screenOf(state);
  document.documentElement.dataset.screen = name;
  render(startViews.framed(state, words, views[name](state, words, send), name), root);
  const place = name === 'desk' ? `desk ${desk.place()}` : name === 'school' ? `school ${state.school.place()}` : name === 'handing' ? `handing ${handover.place()}` : name === 'off' ? `off ${off.place(state)}` : `${name} ${state.panel?.kind ?? state.panel?.page ?? ''} ${state.steps?.find(step => step.current)?.id ?? ''}`;
  if (place === drawn) return;
  drawn = place;
  pageDrawn();
  // The title stays as it is: lists of tabs, of visited pages and of prints show it, and no name or dose may stand there.
  root.querySelector('h1')?.focus({ preventScroll: true });
  // Steps that are done stand above the one in hand: on a small phone they would push it under the foot.
  const inHand = name === 'stepsPage' && !state.said && root.querySelector('.step.done') && root.querySelector('.step.cur');
  if (inHand) inHand.scrollIntoView(); else scrollTo(0, 0);
  drawnFirst();
  // What must be kept for the time without network is looked through where nothing is in hand.
  if (name === 'home') askWhole();
};

// The keeper compares its whole release, and fetches again what is not as it should be.
const mend = () => navigator.serviceWorker?.controller?.postMessage({ ask: 'whole', full: true });

// What cannot be shown whole is not shown at all: the words are missing or the core refused. Help stays in reach.
const fail = problem => {
  if (failed) { location.href = 'danger.html'; return; }
  // Answers of another shape, left by another release, stand in the way of everything: they are dropped. What happened never is.
  if (!begun && state.plan && words) {
    begun = true;
    console.warn('The answers in hand cannot be read.', problem?.message);
    dropAnswers();
    try { unwritten.draft = true; look(); draw(); inTurn(written); return; } catch (again) { problem = again; }
  }
  failed = true;
  mend();
  try { state.now ??= clock(); tellDoses(); } catch { state.dosesWritten = []; }
  state.trouble = String(problem?.message ?? problem);
  console.error(problem);
  try { draw(); } catch { location.href = 'danger.html'; }
};

// One deed after another: a tap that comes while another is being written waits its turn.
let turn = Promise.resolve(), waiting = 0;
// While something is being written the page says so to whoever listens instead of looking.
const busy = change => { waiting += change; document.body.setAttribute('aria-busy', String(waiting > 0)); };
const inTurn = deed => {
  busy(1);
  turn = turn.then(deed).catch(fail).finally(() => busy(-1));
  return turn;
};
// A tap belongs to the page it was made on: if another tap has led on meanwhile, it is nobody's wish any more.
const ofThisPage = deed => {
  const place = drawn;
  return inTurn(() => (place === drawn ? deed() : undefined));
};
// What the review of this version finds in the plan in use stands beside every advice. Its words are fetched only where there is something.
let findingsOf = '';
const tellFindings = async () => {
  const found = state.holds?.planFindings ?? [], of = found.length ? `${state.plan.text}${JSON.stringify(found)}` : '';
  if (of === findingsOf) return;
  try { state.findings = found.length ? (await openHandover()).told(state.plan.text, found) : []; findingsOf = of; } catch (problem) { state.findings = []; console.warn('What is wrong in the plan cannot be told.', problem.message); }
};
const send = (name, detail) => ofThisPage(() => perform(name, detail));
const perform = async (name, detail) => {
  try {
    seeClock();
    await actions[name](detail);
    look();
    await tellFindings();
    await act.settle(tools);
    look();
  } finally { await written(); }
  draw();
};
const refresh = () => inTurn(async () => {
  if (state.trouble) return;
  try { look(); await tellFindings(); await act.settle(tools); look(); } finally { await written(); }
  draw();
});

// One tap, one turn: what it adds to the record and the answers it leaves are written together, after it and before anything is drawn.
// A phone that dies has all of a tap or nothing of it, so that no screen can ask again for what is in the record already.
const unwritten = { entries: [], draft: false };
const keepDraft = async () => { unwritten.draft = true; };
const draftText = () => JSON.stringify({ draft: state.draft, panel: state.panel, pad: state.pad, ticks: state.ticks, offKnown: state.offKnown, wallClock: state.wallClock });
// Where things are written: with the own plan, or at a school with the student who was chosen.
const keep = async what => {
  try { await (state.school ? state.school.keep(what) : store.keep(state.plan?.doc.id ?? '', { ...what, received: clock().text })); return true; } catch { state.kept = false; return false; }
};
const written = async () => {
  const { entries, draft } = unwritten;
  Object.assign(unwritten, { entries: [], draft: false });
  if (!entries.length && !draft) return;
  if (await keep({ entries, draft: draft ? draftText() : undefined })) return;
  // What could not be written together is tried alone: a full phone may still have room for a dose. What it has no room for is said.
  for (const event of entries)
    if (!await keep({ entries: [event] }) && !quiet.has(event.kind)) state.unkept.push({ clock: clockOf(event.at), text: line(event, words, amount, day) });
  if (state.unkept.length) state.said = null;
};
const quiet = new Set(['incident', 'look', 'alarmSet', 'call', 'note', 'sign', 'seen', 'strike', 'doseRefused']);
// What the core would refuse must never get into the record: it would refuse everything after it.
const refusals = event => ask('holds', { record: recordText(state.plan.doc.id, [...state.record, event]), now: string(clock().text) }).refused;
const possible = event => {
  const refused = refusals(event);
  if (refused) state.pad.problem = words('pad-refused', { accepted: String(refused[0].accepted ?? '–') });
  return !refused;
};
const add = async event => {
  if (state.record.some(known => known.id === event.id)) return;
  const refused = refusals(event);
  if (refused) { state.candidate = { refused }; return; }
  state.school?.sign(event);
  state.record.push(event);
  unwritten.entries.push(event);
};
const copyMade = async (fingerprint, what) => {
  // What could not be noted is asked for again: one copy too many harms nobody.
  try { await store.copyMade(fingerprint, what, clock().text); state.copies = await store.copies(); } catch { state.kept = false; }
};
const askToKeep = () => store.persist().then(answer => { state.persisted = answer; });
const tools = { state, add, keepDraft, day, written: () => written(), keepAtOnce: what => keep({ ...what, draft: draftText() }), copyMade, askToKeep, eventLine: text => line(act.fromStore(text), words, amount, day), ask, clock, look, fresh: () => crypto.randomUUID(), words: (...asked) => words(...asked), store, core, planOf, recordText, situationOf, keeper: () => keeper(), possible, refresh: () => refresh(), judged: (...asked) => judged(...asked), recordOfPerson: doc => recordOfPerson(doc), readRecord: () => readRecord(), sealAnew: () => sealAnew(), rawText: () => rawText(), deed: (name, detail) => actions[name](detail), handover: () => openHandover(), home: () => { history.replaceState(null, '', './'); state.handing = false; } };
const actions = act.actions(tools);

// What is opened seldom is fetched when it is opened, and its words are read then: the bedside starts without them.
const moreWords = {};
const wordsOf = name => (moreWords[name] ??= textOf(`i18n/en-${name}.ftl`).then(words.add, problem => { delete moreWords[name]; throw problem; }));
const fetched = async (styles, load, names = ['desk']) => (await Promise.all([load(), ...[styles].flat().map(styled), ...names.map(wordsOf)]))[0];
const openStory = async () => {
  if (!views.story) {
    const page = await fetched('desk/story/story.css', () => script('desk/story/story.js', () => import('./desk/story/story.js')));
    Object.assign(actions, page.actions(tools));
    views.story = page.story;
  }
  const told = ask('incident', {});
  if (told.refused) throw new Error(`incident: ${JSON.stringify(told.refused)}`);
  // Not kept as a draft: after a reload the record is told afresh, or not at all.
  Object.assign(state, { told, said: null, panel: { name: 'story', ids: {} } });
};
// Help to wake up for a look.
const openWake = async () => {
  if (!views.wake) {
    const page = await script('wake/wake.js', () => import('./wake/wake.js'));
    Object.assign(actions, page.actions(tools));
    Object.assign(views, { wake: page.wake, watch: page.watchView });
  }
  Object.assign(state, { said: null, panel: { name: 'wake', ids: {} } });
};
// The pump stays off: fetched when it is opened, or when a page of it was open last.
const loadOff = async () => {
  if (off) return;
  [off] = await Promise.all([script('off/off.js', () => import('./off/off.js')), wordsOf('off')]);
  Object.assign(actions, off.actions(tools));
  views.off = off.view;
};
// Basal by needle that was shown and never answered for is asked about first, wherever somebody comes back to; the core says whether.
const basalShown = event => event.kind === 'doseShown' && (event.doc.insulin === 'long' || event.doc.parts?.basal > 0);
const askFirst = async () => {
  if (state.panel || state.draft || !state.plan || !state.record.some(basalShown)) return;
  if (!ask('offPump', { now: string(clock().text) }).first?.shown) return;
  await loadOff();
  state.panel = off.unanswered(state, clock());
};
const openOff = async () => { await loadOff(); Object.assign(state, { said: null, panel: off.opened(state, clock(), ask), pad: { digits: '' } }); await keepDraft(); };
const openBack = async () => { await loadOff(); Object.assign(state, { panel: off.back(), pad: { digits: '' } }); await keepDraft(); };
const openPicture = async () => {
  if (!views.picture) [{ picture: views.picture }] = await Promise.all([script('views/picture.js', () => import('./views/picture.js')), wordsOf('picture')]);
  const drawnFrom = ask('holds', { now: string(clock().text), curve: 'true' });
  if (drawnFrom.refused) throw new Error(`holds: ${JSON.stringify(drawnFrom.refused)}`);
  Object.assign(state, { picture: drawnFrom, said: null, panel: { name: 'picture', ids: {} } });
};
Object.assign(actions, { openStory, openWake, openOff, openBack, openPicture });

// The desk is a face of its own. It is fetched when somebody opens it, so that the bedside starts without it.
const atDesk = () => /^#desk(\/|$)/.test(location.hash);
const openDesk = async () => {
  if (!desk) {
    const module = await fetched('desk/desk.css', () => script('desk/desk.js', () => import('./desk/desk.js')));
    desk = module.desk({ words: tools.words, store, core, state, clock, day, fresh: tools.fresh, draw, fail, ofThisPage,
      recordCame: (id, texts) => { if (id === state.plan?.doc.id) state.record.push(...texts.map(act.fromStore)); },
      offerPlan: text => inTurn(async () => { history.replaceState(null, '', './'); await face(); await perform('offerPlan', text); }) });
  }
  await desk.enter(location.hash);
};
// Handing over is fetched likewise: when somebody opens it, or when a plan came in.
const atHandover = () => /^#(share|bring)(\/|$)/.test(location.hash);
const openHandover = async () => {
  if (!handover) {
    const module = await fetched('handover/handover.css', () => script('handover/handover.js', () => import('./handover/handover.js')));
    const bring = (deed, what) => inTurn(() => perform(deed, what));
    handover = module.handover({ words: tools.words, store, core, state, clock, day, draw, copyMade, lines: planLines, bring: text => bring('planText', text), bringFile: file => bring('planFile', file) });
  }
  return handover;
};
// The school is a face of its own, for students of its own: page and memory begin anew on the way in and out, so that nothing of the
// bedside's plan and record is ever held beside a student's.
const atSchool = () => /^#school(\/|$)/.test(location.hash);
const openSchool = async () => {
  const module = await fetched(['handover/handover.css', 'school/school.css'], () => script('school/school.js', () => import('./school/school.js')), ['desk', 'school']);
  const school = module.school({ ...tools, draw, day, send, plain: () => Object.assign(state, { plan: null, record: [], draft: null, panel: null, candidate: null, advice: null, holds: null, next: null, steps: [],
    story: [], givenLines: [], answers: [], said: null, doubt: null, unread: null, fresh: false, hours: null, doseInHand: false, ring: undefined, pad: { digits: '' }, ticks: [] }), known: name => Boolean(views[name]) });
  Object.assign(actions, school.actions);
  views.school = school.view;
  Object.assign(state, { school: school.state, viewer: 'school' });
  await school.enter();
  try { await store.put('face', 'school'); } catch { state.kept = false; }
};
const face = async () => {
  if (atSchool() !== Boolean(state.school)) { location.reload(); return; }
  const wanted = atDesk();
  if (wanted) await openDesk();
  if (atHandover()) await (await openHandover()).enter(location.hash);
  else handover?.leave();
  state.handing = atHandover();
  if (wanted !== state.desk) { state.desk = wanted; try { await store.put('face', wanted ? 'desk' : 'bedside'); } catch { state.kept = false; } }
};
// Whatever was open last opens again, but an incident comes before the desk.
const firstFace = async () => {
  const incident = state.holds?.incident || state.holds?.unanswered || state.holds?.looks?.length;
  if (incident && (atDesk() || atHandover())) history.replaceState(null, '', './');
  if (!incident && !location.hash && state.face === 'desk') history.replaceState(null, '', '#desk');
  if (!incident && !location.hash && state.face === 'school') { history.replaceState(null, '', '#school'); location.reload(); return; }
  if (atDesk() || atHandover()) { await inTurn(face); await refresh(); }
  addEventListener('hashchange', () => { inTurn(face); refresh(); });
};

// The keeper of a later release waits beside the one in use, and is the one that knows of it.
let registration;
const keeper = () => registration?.waiting ?? navigator.serviceWorker?.controller;
const askKeeper = () => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => {
    Object.assign(state, { newer: data.newer, changes: data.changes ?? [], withdrawn: data.withdrawn?.includes(state.release) ?? false });
    // A version found wrong is left even where it cannot work anything out any more.
    if (state.withdrawn) draw(); else refresh();
  };
  keeper()?.postMessage({ ask: 'newer' }, [port2]);
};
const announceNewer = () => {
  const tell = worker => worker?.addEventListener('statechange', askKeeper);
  registration.addEventListener('updatefound', () => tell(registration.installing));
  tell(registration.installing);
  askKeeper();
};
// Whether this page works without network, and why not yet. The keeper that serves this page says whether its release is whole, after it
// has fetched again what is missing or wrong. A page of another release than the one it serves is not the one that is kept.
const aDay = 24 * 60 * 60 * 1000;
let wholeAsked;
const nowOffline = works => { if (state.offline !== works) { state.offline = works; refresh(); } };
const askWhole = () => {
  wholeAsked = clock().moment;
  const worker = navigator.serviceWorker?.controller;
  if (!worker) { keepOffline(); return; }
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => nowOffline(data.accepted !== state.release ? 'other' : data.whole ? 'yes' : 'notWhole');
  worker.postMessage({ ask: 'whole' }, [port2]);
};
// Scripts may come only from this one address, so only this one passes the policy. It names the release the page is of, so that
// a release just accepted gets a keeper of its own, whose files the browser finds without waking it.
const policy = self.trustedTypes?.createPolicy('app', { createScriptURL: asked => { if (asked !== keeperAddress()) throw new TypeError(asked); return asked; } });
const keeperAddress = () => `sw.js?release=${state.release}`;
let followed = false;
const followKeeper = () => {
  if (followed) return;
  followed = true;
  announceNewer();
  navigator.serviceWorker.addEventListener('controllerchange', () => { askKeeper(); askWhole(); });
};
const register = async () => {
  if (!navigator.serviceWorker) { nowOffline('noKeeper'); return; }
  try {
    registration = await navigator.serviceWorker.register(policy ? policy.createScriptURL(keeperAddress()) : keeperAddress(), { updateViaCache: 'none' });
    if (!registration) { nowOffline('noKeeper'); return; }
    const coming = registration.installing;
    // The first keeper gives up when one file did not arrive as the release names it.
    coming?.addEventListener('statechange', () => { if (coming.state === 'redundant' && !navigator.serviceWorker.controller) nowOffline('notWhole'); });
    followKeeper();
    if (navigator.serviceWorker.controller) askWhole();
  } catch (problem) {
    nowOffline(problem.name === 'SecurityError' ? 'noKeeper' : 'notWhole');
    console.warn('The page cannot be kept for use offline.', problem.message);
  }
};
let registering;
const keepOffline = () => (registering ??= register().finally(() => { registering = undefined; }));

// What is kept is read while the words and the core still come.
const openStore = async () => {
  try {
    await store.open();
    return await store.atStart();
  } catch (problem) {
    // Whether a dose was given lies in there: this is not a phone on which nothing ever happened.
    Object.assign(state, { kept: false, shut: 'store' });
    console.warn('What is kept cannot be opened.', problem.message);
    return null;
  }
};

// Records as they were found, judged by the core: what of them is the record, and whether nobody can tell from it what was injected. One
// of a release that knew no seals is sealed; what is damaged is noted, so that no later start takes it for whole.
const judged = async (kind, records, planText) => {
  const now = clock().text, told = [];
  for (const record of records) {
    const found = checked(core.ask, record, { plan: planText, now });
    const noted = record.doubt !== undefined;
    try {
      if (!found.sealed && !found.inDoubt && !noted && found.events.length) await store.sealFirst(kind, record.owner, found.events);
      if (found.inDoubt && !noted) await store.noteDoubt(kind, record.owner, JSON.stringify({ at: now, known: found.events.map(({ value }) => value.id), rows: record.rows.map(({ value }) => value ?? null) }));
    } catch { state.kept = false; }
    const note = readable(record.doubt, {});
    told.push({ kind, owner: record.owner, raw: record, ...found, inDoubt: found.inDoubt || noted, since: typeof note.at === 'string' ? note.at : now,
      known: Array.isArray(note.known) ? note.known : found.events.map(({ value }) => value.id) });
  }
  const events = [], ids = new Set();
  for (const { events: rows } of told) for (const { value } of rows) {
    if (ids.has(value.id)) continue;
    ids.add(value.id);
    events.push(Object.assign(act.fromStore(value.text), kind === 'student' ? { initials: value.initials } : {}));
  }
  const doubtful = told.filter(({ inDoubt }) => inDoubt);
  const damagedLines = ({ damaged }) => damaged.map(asWritten).filter(Boolean).map(text => { try { const event = act.fromStore(text); return { clock: clockOf(event.at), day: day(dayOf(event.at)), text: asLine(event) }; } catch { return { clock: '', day: '', text: text.slice(0, 200) }; } });
  return { events, hours: told[0]?.hours ?? null, longAgo: told.filter(({ inDoubt, any }) => any && !inDoubt).flatMap(({ damaged }) => damaged),
    doubt: doubtful.length ? { records: doubtful, since: doubtful.map(({ since }) => since).sort(order)[0], known: new Set(doubtful.flatMap(({ known }) => known)),
      hours: told[0].hours, longHours: told[0].longHours, damaged: doubtful.flatMap(damagedLines) } : null };
};
// All that lies here of one person, whichever plan it was written under.
const recordsOfPerson = async (found, doc) => {
  const known = new Map(found.plans.map(text => readable(text)).filter(other => other && typeof other.id === 'string').map(other => [other.id, other]));
  for (const owner of found.owners) if (!known.has(owner)) { const other = readable(await store.revisionOf(owner)); if (other) known.set(owner, other); }
  return ownersOf(core.ask, doc, [...known.values()].filter(other => found.owners.includes(other.id) || found.recordOf(other.id).seal !== undefined)).map(found.recordOf);
};
const recordOfPerson = async doc => {
  const found = await store.atStart();
  return (await judged('own', await recordsOfPerson(found, doc), state.plan?.doc.id === doc.id ? state.plan.text : undefined)).events;
};
const takeRecord = async found => {
  const { events, doubt, hours, longAgo } = await judged('own', await recordsOfPerson(found, state.plan.doc), state.plan.text);
  const [seal, last] = [found['seal-plan'], found.plans.at(-1)];
  const planDamaged = last !== state.plan.text || (typeof seal === 'string' && store.planSeal(last) !== seal);
  if (seal === undefined && !planDamaged) store.put('seal-plan', store.planSeal(last)).catch(() => {});
  Object.assign(state, { record: events, doubt: doubt || planDamaged ? { records: [], known: new Set(), since: clock().text, damaged: [], ...doubt, hours, plan: planDamaged } : null, damagedLongAgo: longAgo, hours, received: found.received });
  // The record of everybody else on this phone is sealed as well.
  for (const owner of found.owners) {
    const record = found.recordOf(owner);
    const bare = record.seal === undefined && record.rows.every(({ value }) => value?.plan === owner && typeof value.text === 'string' && value.place === undefined);
    if (bare && !state.record.some(event => record.rows[0]?.value.id === event.id)) await store.sealFirst('own', owner, record.rows).catch(() => {});
  }
};
// After something came in: what is kept is read again, and what could not be kept stays on this page.
const readRecord = async () => {
  const mine = state.record;
  try { await takeRecord(await store.atStart()); } catch { state.kept = false; return; }
  const here = new Set(state.record.map(({ id }) => id));
  state.record.push(...mine.filter(({ id }) => !here.has(id)));
};
// Somebody has said by name what was injected: what is sound is sealed anew, the rest lies aside, and all of it is judged once more.
const sealAnew = async () => {
  await written();
  const at = clock().text;
  for (const { kind, owner } of state.doubt.records) {
    const now = await store.recordOf(kind, owner);
    const { events, damaged } = checked(core.ask, now, { plan: state.plan.text, now: at });
    await store.sealAnew(kind, owner, { rows: events, aside: damaged.map(({ key }) => key), copy: rawText(), at });
  }
  if (!state.school) { await readRecord(); return; }
  const { events, doubt } = await judged('student', [await store.recordOf('student', state.school.student.id)], state.plan.text);
  Object.assign(state, { record: events, doubt });
};
// Everything as it lies here, with what was noted when it was found damaged.
const rawText = () => rawCopy(state.plan?.text ?? null, state.doubt?.records?.length ? state.doubt.records.map(({ raw }) => ({ owner: raw.owner, seal: raw.seal ?? null, noted: raw.doubt ?? null, rows: [...raw.rows, ...raw.nobodys].map(({ key, value }) => ({ key, value: value ?? null })) }))
  : [{ rows: state.record.map(({ text }) => ({ value: { text } })) }]);
const planFrom = text => { try { return planOf(text); } catch { return null; } };
const takeUp = async found => {
  const kept = readable(found.draft, {});
  const panel = kept.panel && typeof kept.panel === 'object' ? kept.panel : null;
  Object.assign(state, { draft: draftFrom(kept.draft), panel: (views[panel?.name] && panel.name !== 'aside') || panel?.name === 'off' ? panel : null,
    pad: typeof kept.pad?.digits === 'string' ? kept.pad : { digits: '' }, ticks: Array.isArray(kept.ticks) ? kept.ticks : [], offKnown: kept.offKnown ?? null });
  [state.nightChoice, state.face, state.copies] = [found.night ?? 'auto', found.face ?? null, found.copies];
  state.aside = Array.isArray(found.aside) ? found.aside.filter(text => typeof text === 'string') : [];
  // Some browsers ask the person first: the page does not wait for that, and does not ask before something is here to keep.
  if (found.plans.length || found.people) askToKeep();
  state.plan = found.plans.map(planFrom).findLast(Boolean) ?? null;
  // A plan was here, and is not any more.
  if (!state.plan) { if (found.plans.length || found.received || found['seal-plan'] !== undefined) state.shut = 'plan'; return; }
  const known = readable(found.fingerprint, {});
  if (known.text === state.plan.text && typeof known.value === 'string') state.plan.fingerprint = known.value;
  await takeRecord(found);
  state.wallClock = fromKept(kept.wallClock, state.record);
  // That the record is damaged is said first; nothing that was worked out before it was seen may stand there again.
  if (state.doubt && state.draft) dropAnswers();
};

let loaded;
const begin = async () => {
  const found = await openStore();
  if (!await loaded) return;
  // A device without a plan of its own opens again where the school left it.
  if (!location.hash && found?.face === 'school' && !found.plans.length) history.replaceState(null, '', '#school');
  const apart = atSchool();
  store.sealWith((seal, texts) => core.ask('seal', object({ seal: string(seal), entries: list(texts.map(text => JSON.stringify(text.toWellFormed()))) })).seals);
  if (found) await takeUp(apart ? { ...found, plans: [], received: null, 'seal-plan': undefined, draft: null } : found);
  if (state.shut) { state.now = clock(); draw(); return; }
  if (apart) await openSchool();
  if (state.panel?.name === 'off') { await loadOff(); state.panel = off.panel(state.panel); }
  state.doseInHand = false;
  act.signsAgainWhenOld(tools);
  await askFirst();
  await refresh();
  begun = true;
  await firstFace();
  // The minute, the way back to this page: each time all is worked out again, and what is overdue comes first.
  const back = () => { if (Math.abs(new Date() - wholeAsked) >= aDay) askWhole(); act.stillRight(tools); off?.stillRight(tools); act.signsAgainWhenOld(tools); refresh(); };
  setInterval(back, 20000);
  // A card may have been printed in another tab meanwhile.
  const returned = () => { store.copies().then(copies => { state.copies = copies; }, () => {}).then(back); };
  document.addEventListener('visibilitychange', () => { if (document.hidden) watch.hidden(); else returned(); });
};

// One writer among the tabs: the next one waits here until this one is closed, or could not start.
const asLongAsItRuns = () => loaded.then(well => (well ? new Promise(() => {}) : undefined));
const asWriter = async () => {
  if (!navigator.locks) return begin();
  const mine = await navigator.locks.request('stopgap-writer', { ifAvailable: true }, lock => {
    if (!lock) return false;
    begin().catch(fail);
    return asLongAsItRuns();
  }).catch(() => begin());
  if (mine !== false || !await loaded) return undefined;
  state.writer = false;
  look();
  draw();
  return navigator.locks.request('stopgap-writer', () => { state.writer = true; drawn = ''; begin().catch(fail); return asLongAsItRuns(); });
};

// The core, the words, or what the core answers are not those of this release. The page of help needs none of them. The keeper compares
// the release meanwhile, and fetches again what is not whole.
const damaged = problem => {
  console.error(problem);
  mend();
  location.replace('danger.html#damaged');
  return false;
};

const ofPage = name => document.querySelector(`meta[name="${name}"]`).content;
const load = async () => {
  const [source] = await Promise.all([textOf('i18n/en.ftl'), core.load()]);
  words = reader('en-GB', source);
  const version = core.ask('version', '{}');
  state.engine = String(version.engine);
  state.release = ofPage('release');
  state.built = ofPage('built');
  root.replaceChildren();
  root.addEventListener('click', onTap, true);
  addEventListener('keydown', typeOnPad);
  return true;
};

loaded = load().catch(damaged);
asWriter().catch(fail);
// Nothing of this stands in the way of a start: the first page is drawn before.
firstDrawn.then(keepOffline);
