// The school: several students on one device, none of them open until its name and date of birth are typed. One module is in charge here:
// it opens and closes a student, and says where a school's path differs from the questions at home. What may be given is the core's
// alone. Fetched when somebody opens it.
import { html, nothing } from '../vendor/lit-html.js';
import { signsAgainWhenOld } from '../actions.js';
import { textOf } from '../checked.js';
import * as events from '../events.js';
import { save } from '../save.js';
import { draftFrom } from '../flow.js';
import { readable } from '../kept.js';
import { record } from '../situation.js';
import { object, string } from '../text.js';
import { clockOf, minutesUntil, signsLast } from '../times.js';
import { plain } from '../views/parts.js';
import { log, logCsv } from './log.js';
import { choose, overPage, removal, student as studentPage, switching } from './pages.js';
import { dayTyped, inForce, matching, over, plainName, read, written } from './students.js';
import { taking } from './taking.js';

export const school = tools => {
  const { words, store, core, state, clock, day, fresh, send, planOf } = tools;
  const today = () => clock().text.slice(0, 10);
  // A line of the core's sheet; a day in it is written out.
  const say = line => words(line.key, Object.fromEntries(Object.entries(line.slots).map(([slot, text]) => [slot, slot === 'day' ? day(text) : text])));

  const afterNeedle = new Set(['correction', 'ketoneDose']);
  const view = {
    page: 'choose', students: [], student: null, other: null, initials: null, acting: null, said: null, kept: true, broken: 0, asked: false, low: [], bornWords: null, over: null,
    place: () => `${view.page} ${view.student?.id ?? ''} ${view.asked}`,
    // Everything recorded is this student's, and carries the initials of who did it.
    sign: event => { event.initials = view.acting ?? view.initials; },
    keep: what => (view.student ? store.keepOfStudent(view.student.id, what) : undefined),
    who: () => html`<span class="acting">${words('school-acting', { initials: view.initials })} <button type="button" class="again" @click=${() => send('schoolClose')}>${words('school-close')}</button></span>`,

    // What differs from the path at home.
    lines: step => (['changeSet', 'changeReservoir', 'changeInsulin'].includes(step.id) ? [words('school-change-who')] : step.id === 'confirmChild' ? [words('school-read-aloud')]
      : step.id === 'callHome' ? [...(state.advice.dose ? [words('school-ask-home'), words('school-ask-home-night')] : [words('school-ask-what')]),
        ...(state.advice.callFirst ? [words('school-call-first')] : []), ...(state.draft.unanswered ? [words('school-no-answer')] : [])] : []),
    nobody: () => (state.draft.unanswered ? plain(words('school-nobody'), () => send('schoolNobody'), words('school-nobody-sub')) : nothing),
    told: advice => (state.veiled && advice.outcome !== 'emergency' ? { title: words('school-before-dose'), line: null } : advice.outcome === 'comingDown' ? { title: words('step-call-home-any'), line: words('school-not-to-judge') } : null),
    // A clock time after which a needle is free again at home would read as leave for the second dose that the orders forbid.
    held: ({ what }) => (afterNeedle.has(what) ? words('school-no-second') : undefined),
    holdsShown: holds => holds.filter(({ what }) => !afterNeedle.has(what)),
    // Orders close for a needle today, for a home that does not answer, and where the signed table has no cell.
    whyHeld: advice => (advice.gate !== 'SCH' ? undefined : advice.given ? words('school-no-second') : words('school-not-to-judge')),
    cell: dose => (dose.cell ? html`<p class="times">${dose.cell.glucose === 'HI' ? words('school-cell-hi', { ketones: dose.cell.ketones })
      : words('school-cell', { glucose: dose.cell.glucose, unit: state.plan.doc.glucoseUnit, ketones: dose.cell.ketones })}</p>` : undefined),
    injector: () => html`<p class="note">${words('school-may-inject')}: ${state.plan.doc.school.mayInject.join('; ')}</p>
      <label class="typed-day"><span>${words('school-injector')}</span><input id="injector" maxlength="6" autocomplete="off" autocapitalize="characters" spellcheck="false"></label>
      ${view.said ? html`<p class="warnbox" role="alert">${view.said}</p>` : nothing}`,
    ways: () => html`${plain(words('change-something'), () => send('schoolOpen', 'change'), words('school-change-sub'))}${plain(words('school-to-student'), () => send('schoolPage', 'student'))}`,
    // What home said in this round stays said: the steps begin behind the call, unless the dose now needs a call of its own. It says
    // nothing about what was given after it: a round that was left is asked for again, as the danger signs are.
    alreadyDone({ home, run }, advice) {
      if (!home || minutesUntil(home.at, clock().moment) <= -signsLast) return;
      Object.assign(run.marks, home.outcome === advice.outcome ? home.marks : { confirmChild: home.marks.confirmChild });
      if (advice.dose && (!advice.callFirst || home.first)) run.marks.callHome = { mark: 'done', clock: clockOf(home.at) };
    },
  };

  const incoming = taking({ words, core, state, clock, day, planOf, draw: tools.draw, send, say, fresh });

  // Nobody is named here: only that something waits, and since when.
  let logs = new Map(), askedAt = null;
  const waiting = () => {
    const found = [];
    for (const student of view.students) {
      const holds = core.ask('holds', object({ plan: inForce(student, today()), record: record(student.doc.id, logs.get(student.id).events), now: string(clock().text) }));
      if (holds.refused) continue;
      if (logs.get(student.id).doubt) found.push(words('school-waits-doubt'));
      if (holds.unanswered) found.push(words('school-waits-dose', { clock: holds.unanswered.clock }));
      const late = holds.looks.find(look => look.overdue);
      if (late) found.push(words('school-waits-look', { clock: late.clock }));
    }
    return found;
  };
  // Asked anew with every minute: the page may lie open for hours.
  const notices = () => {
    const minute = clock().text.slice(0, 16);
    if (minute !== askedAt) { view.notices = waiting(); askedAt = minute; }
    return view.notices;
  };
  const reload = async () => {
    try {
      // One student whose copy cannot be read hides none of the others, and is told.
      const found = (await store.students()).map(row => { try { return row.whole ? read(row) : null; } catch { return null; } });
      view.students = found.filter(Boolean);
      view.broken = found.length - view.students.length;
      logs = new Map(await Promise.all(view.students.map(async ({ id, copy }) => [id, await tools.judged('student', [await store.recordOf('student', id)], copy.plan)])));
      askedAt = null;
    } catch (problem) { view.kept = false; console.warn('The students cannot be read.', problem.message); }
  };
  const page = async (name, sentence = null) => {
    Object.assign(view, { page: name, said: sentence, asked: false, bornWords: null });
    state.pad = { digits: '' };
    if (name === 'choose') await reload();
  };
  // What was added is written before the student it belongs to is closed.
  const close = async sentence => {
    await tools.written();
    tools.plain();
    Object.assign(view, { student: null, other: null, initials: null, acting: null, low: [] });
    await page('choose', sentence);
  };
  const open = async (student, initials) => {
    await tools.written();
    tools.plain();
    Object.assign(view, { student, initials, other: null });
    await page('path');
    state.plan = planOf(inForce(student, today()));
    const { events: entries, doubt } = await tools.judged('student', [await store.recordOf('student', student.id)], student.copy.plan);
    Object.assign(state, { record: entries, doubt });
    const kept = readable(await store.studentDraft(student.id), {});
    Object.assign(state, { draft: draftFrom(kept.draft), panel: tools.known(kept.panel?.name) ? kept.panel : null,
      pad: typeof kept.pad?.digits === 'string' ? kept.pad : { digits: '' }, ticks: Array.isArray(kept.ticks) ? kept.ticks : [] });
    // Answers of another release are dropped; what happened is not. A dose worked out before the damage was seen does not stand again.
    try { signsAgainWhenOld(tools); tools.look(); } catch { Object.assign(state, { draft: null, panel: null, pad: { digits: '' }, ticks: [] }); }
    if (doubt && state.draft) Object.assign(state, { draft: null, panel: null, pad: { digits: '' }, ticks: [] });
    const sheet = core.ask('schoolSheet', object({ plan: student.copy.plan, paper: string('a4') }));
    view.low = sheet.refused ? [words('danger-page')] : sheet.low.map(say);
    tools.look();
    // Past their time the orders open on the call; a dose nobody answered for is asked about even before that.
    if (overNow() && !state.holds?.unanswered) view.page = 'student';
  };

  // The orders are over, or the plan they stand in may not be used any more: the core says which plan that is.
  const usable = new Set(['agreed', 'reviewDue', 'inGrace']);
  const overNow = () => over(view.student, today())
    ?? (usable.has(core.ask('standing', object({ plan: view.student.copy.plan, today: string(today()) })).standing) ? null : { why: 'plan' });

  const initialsOf = text => { const plainText = text.normalize('NFC').trim(); return /^\p{L}[\p{L}. ]{0,5}$/u.test(plainText) ? plainText : null; };

  const actions = {
    schoolPage: name => page(name),
    schoolKey(sign) {
      if (state.pad.digits.length >= 8) { state.pad = { digits: state.pad.digits, problem: words('pad-full') }; return; }
      state.pad = { digits: state.pad.digits + sign };
      const born = dayTyped(state.pad.digits);
      view.bornWords = born ? words('school-born', { day: day(born) }) : state.pad.digits.length === 8 ? words('school-no-day') : null;
    },
    async schoolFind({ name, initials }) {
      const born = dayTyped(state.pad.digits), by = initialsOf(initials);
      view.said = !name.trim() ? words('school-need-name') : !born ? words('school-need-born') : !by ? words('school-need-initials') : null;
      if (view.said) return;
      const found = matching(view.students, name, born);
      if (found.length !== 1) { view.said = words('school-none'); return; }
      if (view.student && view.student.id !== found[0].id) { await page('switch'); Object.assign(view, { other: found[0], otherInitials: by }); return; }
      await open(found[0], by);
    },
    schoolSwitch: () => open(view.other, view.otherInitials),
    schoolClose: () => close(),
    schoolIdle: () => close(words('school-idle')),
    async schoolLeave() {
      try { await store.put('face', 'bedside'); } catch { view.kept = false; }
      history.replaceState(null, '', './');
      location.reload();
    },

    async schoolBegin() {
      await page('path');
      if (!state.draft && !state.next) await tools.deed('start');
    },
    async schoolOpen(name) { await page('path'); await tools.deed('open', name); },

    // Home's answer is asked for where the core says so; what home told is typed, and the core is asked anew with it.
    async schoolHome({ answered }) {
      const { draft, advice } = state;
      const at = clock().text;
      await tools.add(events.call(fresh(), at, 'home', answered));
      if (!answered) draft.unanswered = true;
      else if (!advice.dose) draft.run.marks.callHome = { mark: 'done', clock: clockOf(at) };
      else Object.assign(draft, { home: { at, first: advice.callFirst, outcome: advice.outcome, marks: draft.run.marks }, given: null, run: null, unanswered: false });
      await tools.keepDraft();
    },
    // Nobody knows what was given today: there is no dose without it, only the calls that are left.
    async schoolNobody() { Object.assign(state.draft, { given: { unknown: true, at: clock().text }, run: null, unanswered: false }); await tools.keepDraft(); },
    async schoolOtherChild() {
      const { draft } = state;
      const at = clock().text;
      await tools.add(events.note(fresh(), at, words('school-note-other-child')));
      // What these answers opened is closed again; what was open before them is this child's own.
      if (state.record.some(event => event.id === draft.ids.incident)) await tools.add(events.incident(fresh(), at, 'closed'));
      state.draft = null;
      await tools.keepDraft();
      await close(words('school-other-child-said'));
    },
    async schoolInjected() {
      const by = initialsOf(document.getElementById('injector').value);
      view.said = by ? null : words('school-need-initials');
      if (!by) return;
      view.acting = by;
      try { await tools.deed('injected'); } finally { view.acting = null; }
    },

    schoolCsv() {
      save(`stopgap-log-${today()}.csv`, 'text/csv;charset=utf-8', logCsv(state, words));
      view.said = words('file-made');
    },
    schoolPrint() { print(); },
    // The sheet is a page of its own. It is told once whose, and forgets it: the way back in the browser leads to nobody.
    schoolSheet() { sessionStorage.setItem('school-sheet', view.student.id); location.href = 'paper.html#school'; },

    schoolBring: came => incoming.bring(came, view.students),
    async schoolDemo() { await incoming.bring(await textOf('demo/child.json'), view.students); },
    schoolTyped: text => incoming.typed(text),
    schoolAccept: () => incoming.accept(),
    async schoolActivate(fields) {
      const made = incoming.signed(fields);
      if (!made) return;
      // Answers in hand were judged by the copy before: they are asked again by the new one. What happened is in the log.
      try { await store.putStudent(made.id, written(made), { forgetDraft: true }); } catch { view.kept = false; return; }
      tools.askToKeep();
      await close(words('school-active'));
    },

    async schoolRemove(name) {
      const { doc, id } = view.student;
      if (plainName(name) !== plainName(doc.person.name)) { view.said = words('school-remove-differs'); return; }
      view.said = null;
      if (!view.asked) { view.asked = true; return; }
      try { await store.removeStudent(id); } catch { view.kept = false; return; }
      await close(words('school-removed'));
    },
  };

  // Whoever takes up a tablet that was put down must say who they are: a student does not stay open longer than an answer stands.
  let touched = clock().moment;
  for (const touch of ['pointerdown', 'keydown']) addEventListener(touch, () => { touched = clock().moment; }, true);
  setInterval(() => { if (view.student && clock().moment - touched > signsLast * 60000) send('schoolIdle'); }, 20000);

  const studentOrOver = (...drawn) => { view.over = overNow(); return (view.over ? overPage : studentPage)(...drawn); };
  const pages = { choose: (...drawn) => { notices(); return choose(...drawn); }, switch: switching, log, remove: removal, take: () => incoming.ways.page(), offered: () => incoming.offered(), sign: () => incoming.sign() };
  return {
    state: view, actions,
    async enter() { await close(); },
    view: (...drawn) => (pages[view.page] ?? studentOrOver)(...drawn),
  };
};
