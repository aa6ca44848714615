// Which screen comes next. The order of the questions is the order of the core's rules; what they mean is the core's alone.
import { clockOpen } from './clockwatch.js';
import { order } from './times.js';

export const questions = ['signs', 'glucose', 'ketones', 'seen', 'given'];

// An id for each thing that a screen may write is made before the screen is shown.
// `viewer` is said where a school asks: then the signed orders stand over every answer.
export const newDraft = (fresh, now, viewer) => ({ viewer, id: fresh(), at: now.text, signs: null, glucose: null, ketones: null, seen: null, given: null,
  passed: [], ids: { signs: fresh(), glucose: fresh(), ketones: fresh(), seen: fresh(), incident: fresh() }, run: null });

// What was kept between two starts, if it has the shape of the answers of this version; else nothing, and the questions begin anew.
const isObject = value => value !== null && typeof value === 'object' && !Array.isArray(value);
const isAnswer = value => value === undefined || value === null || (isObject(value) && typeof value.at === 'string');
const isRun = run => isObject(run) && isObject(run.marks) && isObject(run.ids) && typeof run.answer === 'string';
export const draftFrom = kept => (isObject(kept) && isObject(kept.ids) && Array.isArray(kept.passed) && questions.every(name => isAnswer(kept[name])) && (!kept.run || isRun(kept.run)) ? kept : null);

// These answers are shown as soon as they are known: no further question may stand in their way.
const atOnce = new Set(['lowEmergency', 'emergency', 'tooMuch', 'treatLow', 'eatNow', 'noPlan', 'recordInDoubt', 'clockInDoubt', 'didYouInject']);
// These ask for something before anything can be done, and are asked again with every answer.
const asking = new Set(['testGlucose', 'testKetones', 'recordInDoubt', 'clockInDoubt', 'didYouInject']);

export const openQuestion = draft => draft.redo ?? questions.find(name => !draft[name]) ?? null;

// A meter word or a sensor number that the core does not accept is tested again before the next question.
const readingInDoubt = (draft, advice) => advice.outcome === 'testGlucose' && draft.signs && draft.glucose && !draft.glucose.unknown;

export const showsAdvice = (draft, advice) => {
  if (!draft || !advice || draft.redo || draft.unsure) return false;
  if (!openQuestion(draft)) return !draft.given.unknown || atOnce.has(advice.outcome);
  if (draft.passed.includes(advice.outcome)) return false;
  // Danger signs come before everything that a plan without standing could say.
  if (advice.outcome === 'noPlan' && !draft.signs) return false;
  return atOnce.has(advice.outcome) || Boolean(readingInDoubt(draft, advice));
};

export const startsRun = advice => !asking.has(advice.outcome);

// The pump is squared with what the plan says, or, where another number went in, with that number.
export const stepsOf = (answer, run) => {
  let found = false;
  return answer.steps.map(step => {
    const mark = run.marks[step.id];
    const current = !mark && !found;
    found ||= current;
    const slots = step.id === 'offBody' && run.injected && !run.injected.same ? { ...step.slots, dose: run.injected.text } : step.slots;
    return { ...step, slots, mark: mark?.mark, clock: mark?.clock, current };
  });
};

const runScreen = state => {
  const { run } = state.draft;
  const step = state.steps.find(entry => entry.current);
  if (['emergency', 'lowEmergency'].includes(state.advice.outcome) && !run.marks.emergencyCall) return 'help';
  if (step?.id === 'inject' && run.shown && !run.listed) return 'dosePage';
  return 'stepsPage';
};

// The next thing in sight would be a dose, or is one.
const dosePages = new Set(['dosePage', 'typed', 'different', 'injectNow']);
export const dosesNext = ({ draft, advice, steps }) => {
  if (!draft || !advice?.dose) return false;
  if (!draft.run) return startsRun(advice) && advice.outcome !== 'emergency';
  return !draft.run.shown && steps.find(step => step.current)?.id === 'inject';
};
// Where nothing more urgent is on the screen a clock that was set is asked about at once.
const calm = new Set(['home', 'waiting', 'didYouInject', 'clockInDoubt']);
const offDoses = new Set(['dose', 'typed', 'different', 'given']);
// Off the pump sugar and an emergency come before any clock.
const offUrgent = ({ first }) => first?.waits === 'everything' && !first.shown && first.outcome !== 'clockInDoubt';
const offCalm = ({ panel, off }) => ['answer', 'second'].includes(panel.page) && !offUrgent(off.answer);
const withClock = (state, screen) => {
  const { panel, wallClock: { turns, ask, tell, page } } = state;
  const isDose = dosePages.has(screen) || (screen === 'stepsPage' && dosesNext(state))
    || (screen === 'off' && (Boolean(panel.waitsForTime) || offDoses.has(panel.page)));
  // A correction by the pump is insulin too.
  const isByPump = screen === 'stepsPage' && state.steps.find(step => step.current)?.id === 'pumpCorrection';
  if (!isDose && !isByPump && !calm.has(screen) && !(screen === 'off' && offCalm(state))) return screen;
  if (page === 'wrong' && (isDose || turns.length)) return 'clockWrong';
  if (turns.length) return 'clockJumped';
  if (ask.length) return page === 'type' ? 'whenTyped' : 'whenWasIt';
  if (tell.length && (page === 'tell' || screen === 'clockInDoubt')) return 'clockTell';
  return isDose && clockOpen(state) ? 'rightTime' : screen;
};

export const screenOf = state => withClock(state, screenUnder(state));
const screenUnder = state => {
  if (state.withdrawn) return 'withdrawn';
  if (state.trouble) return 'trouble';
  if (!state.writer) return 'otherTab';
  if (state.unkept.length) return 'writeDown';
  if (state.shut) return 'shut';
  if (state.candidate) return state.candidate.refused ? 'refused' : state.candidate.joining ? 'joining' : state.candidate.joined ? 'joined' : 'offered';
  if (state.handing) return 'handing';
  if (state.desk) return 'desk';
  if (state.school && state.school.page !== 'path') return 'school';
  if (!state.plan) return state.panel?.name === 'aside' ? 'aside' : 'first';
  if (state.unread) return state.panel?.name === 'first' ? 'first' : 'unread';
  const shown = state.holds?.unanswered?.id;
  // That the record is damaged is said before anything is asked about it.
  if (state.doubt && !state.panel && !state.draft) return 'doubt';
  const doseInHand = shown && ((state.draft?.run?.shown === shown && state.doseInHand) || state.panel?.dose?.shown === shown);
  if (state.holds?.unanswered && !doseInHand && !state.panel?.answersShown) return 'didYouInject';
  // Where nobody knows what was injected, that is said and asked before any way to a dose.
  const unknown = state.doubt ? 'doubt' : state.fresh ? 'freshAsk' : null;
  if (unknown && state.panel?.name === 'off') return unknown;
  if (state.panel) return state.panel.name;
  const { draft, advice } = state;
  // An overdue look comes before the steps that are still open, until the person has seen it. One that was late already when they began
  // does not: what was answered since may be an emergency, and a sign alone answers no look. The call for help waits for no look at all.
  if (draft?.run) {
    const screen = runScreen(state);
    // Steps that an earlier release began do not say when.
    const isLate = look => look.overdue && !(order(look.due, draft.run.lateSeen) <= 0);
    return !doseInHand && screen !== 'help' && state.holds?.looks?.some(isLate) ? 'waiting' : screen;
  }
  if (draft?.unsure) return 'signsUnsure';
  if (draft && showsAdvice(draft, advice))
    return { testGlucose: 'testGlucose', testKetones: 'testKetones', recordInDoubt: unknown ?? 'recordInDoubt', clockInDoubt: 'clockInDoubt' }[advice.outcome] ?? 'stepsPage';
  if (draft?.given?.unknown) return 'givenUnsure';
  if (draft) return openQuestion(draft);
  return state.holds?.incident || state.holds?.looks?.length || state.holds?.holds?.length ? 'waiting' : state.school ? 'school' : 'home';
};
