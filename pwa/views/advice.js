// What the core answered, on pages: the outcome, the dose with its syringe, the steps, the holds and the looks. Every
// amount and clock time here is text from the core.
import { html, nothing } from '../vendor/lit-html.js';
import { cannula, doseFigure, edge, half, hasBothDevices, joinedTubing, keypad, main, marksLine, numbers, offEntry, offFirst, plain, question, sheet, square, syringe, tubingPictures, wasInjected } from './parts.js';
import { callEmergency, callHome, callTeam, emergencyCall } from './ring.js';
import { unitWord, unitsText } from './units.js';
import { seenList, signList, urineWord } from './record.js';

export const outcome = (name, words) => ({
  lowEmergency: () => words('outcome-low-emergency'), emergency: () => words('outcome-emergency'), tooMuch: () => words('outcome-too-much'),
  treatLow: () => words('outcome-treat-low'), eatNow: () => words('outcome-eat-now'), noPlan: () => words('outcome-no-plan'),
  testGlucose: () => words('outcome-test-glucose'), testKetones: () => words('outcome-test-ketones'), callTeam: () => words('outcome-call-team'),
  injectAtAnyGlucose: () => words('outcome-inject'), comingDown: () => words('outcome-coming-down'), inject: () => words('outcome-inject'),
  eatAndInject: () => words('outcome-eat-and-inject'), eat: () => words('outcome-eat'), wait: () => words('outcome-wait'),
  correctByPump: () => words('outcome-correct-by-pump'), offPump: () => words('outcome-off-pump'), changeSet: () => words('outcome-change-set'),
  over: () => words('outcome-over'), lookAgain: () => words('outcome-look-again'), hold: () => words('outcome-hold'),
  recordInDoubt: () => words('outcome-record'), clockInDoubt: () => words('outcome-clock'), didYouInject: () => words('outcome-did-you-inject'),
}[name]());

export const outcomeLine = (name, words) => ({
  tooMuch: () => words('line-too-much'), treatLow: () => words('line-treat-low'), eatNow: () => words('line-eat-now'), noPlan: () => words('line-no-plan'),
  callTeam: () => words('line-call-team'), comingDown: () => words('line-coming-down'), eatAndInject: () => words('line-eat-and-inject'), eat: () => words('line-eat'),
  wait: () => words('line-wait'), correctByPump: () => words('line-correct-by-pump'), offPump: () => words('line-off-pump'), changeSet: () => words('line-change-set'),
  over: () => words('line-over'), lookAgain: () => words('line-look-again'), recordInDoubt: () => words('line-record'), lowEmergency: () => words('line-low-emergency'), emergency: () => words('line-emergency'),
}[name]?.());

const caution = (name, words) => ({
  couldGoLow: () => words('caution-could-go-low'), inGrace: () => words('caution-in-grace'), planFinding: () => words('caution-plan-finding'), staleWeight: () => words('caution-stale-weight'),
  cut: () => words('caution-cut'), underStep: () => words('caution-under-step'), sensorOnly: () => words('caution-sensor-only'),
  noStrips: () => words('caution-no-strips'), longActing: () => words('caution-long-acting'), newLineUnproven: () => words('caution-new-line'),
}[name]());
// Beside an injection in place of the pump, whose answer names no cautions.
export const planCaution = ({ findings }, words) => (findings.length ? html`<ul class="lines cautions"><li>${caution('planFinding', words)}</li></ul>` : nothing);
// Which number of the plan it is, and what stands against it: at the end of the page, so that it pushes no step out of sight.
export const planFindings = ({ findings }, words) => (findings.length ? html`<h2 class="lbl part">${words('home-findings')}</h2>${numbers(findings)}` : nothing);
const allCautions = ({ advice }, words) => advice.cautions.map(name => caution(name, words));
export const cautions = (state, words) => (state.advice.cautions.length
  ? html`<ul class="lines cautions">${allCautions(state, words).map(line => html`<li>${line}</li>`)}</ul>` : nothing);

const device = (name, words) => ({ syringe: () => words('device-syringe'), pen: () => words('device-pen') }[name]());

// Every step with its words. `slots` come from the core; a slot that is missing stops the page.
export const stepTitle = (step, words, outcomeName) => {
  const s = step.slots ?? {};
  return {
    emergencyCall: () => words('step-emergency-call', { number: s.number }),
    tellThem: () => (outcomeName === 'lowEmergency' ? words('step-tell-them-severe-low') : words('step-tell-them')),
    sugar: () => (s.choose ? words('step-sugar-choose', { grams: s.grams }) : words('step-sugar', { grams: s.grams })),
    glucagon: () => (s.choose ? words('step-glucagon-choose', { glucagon: s.glucagon }) : words('step-glucagon', { glucagon: s.glucagon })), retest: () => words('step-retest'),
    testKetones: () => words('step-test-ketones'), stopPump: () => words('step-stop-pump'), confirmChild: () => words('step-confirm-child', { name: s.name, born: s.born }),
    callHome: () => (s.phone ? words('step-call-home', { name: s.name, phone: s.phone }) : words('step-call-home-any')),
    inject: () => words('step-inject', { dose: s.dose, insulin: s.insulin, device: device(s.device, words) }), eat: () => words('step-eat', { grams: s.grams }),
    changeSet: () => words('step-change-set'), changeReservoir: () => words('step-change-reservoir'), changeInsulin: () => words('step-change-insulin'),
    offBody: () => words('step-off-body', { dose: s.dose }), joinTubing: () => words('step-join-tubing'), automationOff: () => words('step-automation-off', { until: s.until }), drink: () => words('step-drink'),
    pumpCorrection: () => words('step-pump-correction'), wait: () => words('step-wait', { until: s.until }), setAlarm: () => words('step-set-alarm', { at: s.at }),
    callTeam: () => (s.name ? words('step-call-team', { name: s.name, phone: s.phone }) : s.phone ? words('step-call-team-nobody', { number: s.phone }) : words('step-call-team-any')), getStrips: () => words('step-get-strips'), stopSglt2: () => words('step-stop-sglt2'),
    longActing: () => words('step-long-acting'), bridge: () => (s.longActingBridges ? words('step-bridge-long') : words('step-bridge', { hours: s.hours })), restock: () => words('step-restock'), closeIncident: () => words('step-close-incident'),
  }[step.id]();
};

const stepLines = ({ id, slots }, words, atSchool) => ({
  changeSet: () => [words('lines-change-set-1'), words('lines-change-set-2'), words('lines-change-set-3')],
  changeReservoir: () => [words('lines-change-reservoir-1'), words('lines-change-reservoir-2')],
  changeInsulin: () => [words('lines-change-insulin-1')],
  offBody: () => [words('lines-off-body-1'), words('lines-off-body-2'), words('lines-off-body-3')],
  joinTubing: () => [words('lines-join-tubing-1'), words('lines-join-tubing-2')],
  automationOff: () => [words('lines-automation-off-1')],
  drink: () => [words('lines-drink-1')],
  pumpCorrection: () => [words('lines-pump-correction-1')],
  setAlarm: () => [words('lines-set-alarm-1'), words('lines-set-alarm-2')],
  retest: () => [words('lines-retest-1')],
  sugar: () => [slots?.severe ? words('lines-sugar-swallow') : words('lines-sugar-1')],
  glucagon: () => [words('lines-glucagon-1'), words('lines-glucagon-2')],
  eat: () => [words('lines-eat-1')],
  getStrips: () => [words('lines-get-strips-1')],
  restock: () => [words('lines-restock-1')],
  closeIncident: () => [words('lines-close-incident-1')],
  longActing: () => [atSchool ? words('lines-team-units') : words('lines-long-acting-page')],
  bridge: () => [atSchool ? words('lines-team-units') : words('lines-bridge-page')],
}[id]?.() ?? []);

// What will be true after the tap.
const stepDone = (id, words) => ({
  emergencyCall: () => words('done-emergency-call'), tellThem: () => words('done-tell-them'), sugar: () => words('done-sugar'), glucagon: () => words('done-glucagon'),
  retest: () => words('done-retest'), testKetones: () => words('done-test-ketones'), stopPump: () => words('done-stop-pump'), confirmChild: () => words('done-confirm-child'),
  callHome: () => words('done-call'), eat: () => words('done-eat'), changeSet: () => words('done-change-set'), changeReservoir: () => words('done-change-reservoir'),
  changeInsulin: () => words('done-change-insulin'), offBody: () => words('done-off-body'), joinTubing: () => words('done-join-tubing'), automationOff: () => words('done-automation-off'), drink: () => words('done-drink'),
  pumpCorrection: () => words('done-pump-correction'), wait: () => words('done-wait'), setAlarm: () => words('done-set-alarm'), callTeam: () => words('done-call'),
  getStrips: () => words('done-get-strips'), stopSglt2: () => words('done-stop-sglt2'), longActing: () => words('done-long-acting-read'), bridge: () => words('done-bridge-read'),
  restock: () => words('done-restock'), closeIncident: () => words('done-close-incident'),
}[id]());

// A school reads no cell before home has answered.
const deedOf = (state, step) => (state.school && step.id === 'callHome' ? 'schoolHome' : 'called');
// Whom each call rings, at this hour. A plan without a contact at home still has the emergency number.
const callees = { emergencyCall: (state, words) => callEmergency(state, words), callTeam: (state, words) => callTeam(state, words, { now: true, home: !state.school }), callHome: (state, words) => callHome(state, words) };
const call = (step, state, words, send) => html`
  ${callees[step.id](state, words)}
  <div class="pair">${half(words('call-answered'), () => send(deedOf(state, step), { step: step.id, answered: true }))}${half(words('call-no-answer'), () => send(deedOf(state, step), { step: step.id, answered: false }))}</div>`;

const current = (step, state, words, send, number, heading) => html`<li class="step cur"><div class="top">${square.now(String(number))}
    ${heading === 1 ? html`<h1 tabindex="-1">${stepTitle(step, words, state.advice.outcome)}</h1>` : html`<h2>${stepTitle(step, words, state.advice.outcome)}</h2>`}</div>
  <div class="body"><div>${[...stepLines(step, words, Boolean(state.school)), ...(state.school?.lines(step) ?? [])].map(line => html`<p>${line}</p>`)}</div>${step.id === 'changeSet' && state.plan.doc.pump.tubing === 'tubed' ? cannula(words) : step.id === 'joinTubing' ? joinedTubing(words) : nothing}</div>
  ${['callTeam', 'callHome', 'emergencyCall'].includes(step.id) ? call(step, state, words, send)
    : step.id === 'inject' ? main(words('see-dose'), () => send('seeDose'))
    : ['bridge', 'longActing'].includes(step.id) && !state.school ? main(words('off-entry'), () => send('stepOff', step.id), words('off-entry-sub'))
    : step.id === 'offBody' && !state.tubingSeen ? main(words('tubing-look'), () => send('tubingLook'))
    : main(stepDone(step.id, words), () => send('stepDone', step.id))}
  ${step.id === 'offBody' && state.tubingSeen ? plain(words('off-body-other'), () => send('offBodyOther')) : nothing}
  ${['offBody', 'automationOff'].includes(step.id) && state.injected && !state.school ? plain(words('picture-entry'), () => send('openPicture'), words('picture-entry-sub')) : nothing}
  ${step.id === 'changeInsulin' ? plain(words('insulin-not-doubted'), () => send('stepSkipped', step.id)) : nothing}
  ${step.id === 'callHome' ? state.school?.nobody() ?? nothing : nothing}${step.id === 'confirmChild' ? plain(words('not-this-child'), () => send('schoolOtherChild'), words('not-this-child-sub')) : nothing}
  ${['callTeam', 'callHome', 'inject', 'confirmChild'].includes(step.id) ? nothing : step.slots?.choose ? plain(step.id === 'sugar' ? words('sugar-not-possible') : words('glucagon-not-needed'), () => send('stepSkipped', step.id))
    : plain(words('step-cannot'), () => send('stepSkipped', step.id), words('step-cannot-sub'))}
  ${step.id === 'callTeam' && !state.school ? plain(words('call-order'), () => send('entry', 'order'), words('call-order-sub')) : nothing}</li>`;

const steps = (state, words, send, heading) => html`<ol class="steps">${state.steps.map((step, index) => {
  if (step.mark === 'done') return html`<li class="step done">${square.done}<p class="txt">${step.id === 'inject' ? words('injected', { dose: state.injected }) : stepDone(step.id, words)}</p>
    <b class="t"><bdi dir="ltr">${step.clock}</bdi></b></li>`;
  if (step.mark === 'skipped') return html`<li class="step done">${square.later('–')}<p class="txt">${words('step-skipped', { step: stepTitle(step, words, state.advice.outcome) })}</p>
    <b class="t"><bdi dir="ltr">${step.clock}</bdi></b></li>`;
  if (state.veiled && !step.current) return nothing;
  return step.current ? current(step, state, words, send, index + 1, heading)
    : html`<li class="step">${square.later(String(index + 1))}<p class="txt">${stepTitle(step, words, state.advice.outcome)}</p></li>`;
})}</ol>`;

// No dose for ketones or a high is not no dose at all: with a dead pump the injection in its place is one of the steps.
const leadLine = ({ advice: { outcome: name }, steps }, words) => (['eat', 'changeSet'].includes(name) && steps.some(step => step.id === 'bridge') ? words('line-bridge-in-steps') : outcomeLine(name, words));

// An order to inject that was followed would read as another one.
const ordersDose = new Set(['inject', 'injectAtAnyGlucose', 'eatAndInject']);

// The outcome and its steps. After the needle the steps stand alone; before it, the outcome is the heading.
export const stepsPage = (state, words, send) => {
  const { advice } = state;
  // At a school the heading promises no dose before home has answered, and nobody there judges what a fall means.
  const told = state.school?.told(advice);
  const lead = told ? told.line : leadLine(state, words);
  const over = state.steps.every(step => step.mark);
  const isIn = state.injected && ordersDose.has(advice.outcome);
  return sheet(state, words, html`
  ${state.injected && !over ? nothing : isIn ? html`<div class="lead-in"><h1 tabindex="-1">${words('injected', { dose: state.injected })}</h1></div>` : html`<div class="lead-in"><h1 tabindex="-1">${told?.title ?? outcome(advice.outcome, words)}</h1>${lead ? html`<p>${lead}</p>` : nothing}</div>`}
  ${advice.outcome === 'hold' ? holdBody(state, words) : nothing}
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  ${cautions(state, words)}
  ${state.steps.some(step => step.id === 'callTeam' && !step.mark && !step.current) && !state.injected ? html`${callTeam(state, words, { soon: true })}` : nothing}
  ${advice.outcome === 'offPump' && !state.school ? plain(words('off-entry'), () => send('openOff'), words('off-entry-sub')) : nothing}
  ${steps(state, words, send, state.injected && !over ? 1 : 2)}
  ${over ? html`<div class="end">${main(words('steps-over'), () => send('stepsOver'))}</div>` : nothing}
  ${advice.outcome === 'noPlan' && state.canGoOn ? html`<div class="answers">${plain(words('go-on-tests'), () => send('pass'), words('go-on-tests-sub'))}</div>` : nothing}
  <div class="answers">${plain(words('why'), () => send('open', 'why'))}
  ${state.injected ? plain(words('given-mistake'), () => send('open', 'mistake')) : plain(words('change-answers'), () => send('open', 'answersGiven'))}</div>
  ${planFindings(state, words)}`);
};

const holdBody = (state, words) => html`${state.advice.hold ? html`<div class="holdbox"><p class="lbl">${words('hold-until')}</p>
  <p class="clock"><bdi dir="ltr">${state.advice.hold.clock}</bdi></p></div>` : nothing}
  <dl class="fields plain">${state.advice.given ? html`<div><dt>${words('hold-given')}</dt><dd>${words('hold-given-value', { dose: state.advice.given.text, clock: state.advice.given.clock })}</dd></div>` : nothing}
  <div><dt>${words('hold-why')}</dt><dd>${state.school?.whyHeld(state.advice) ?? words('hold-why-value')}</dd></div></dl>`;

// The working, line by line. A line that says nothing (no insulin on board, no share for ketones, no limit reached) is left out.
const ledger = (dose, words) => {
  const w = dose.working;
  const row = (label, value) => (!value || value === '0' ? nothing : html`<tr><td>${label}</td><td><bdi dir="ltr">${value}</bdi></td></tr>`);
  return html`<table class="sum"><caption class="hidden">${words('working')}</caption><tbody>
    ${row(words('working-correction'), w.correction)}${row(words('working-on-board'), w.onBoard)}${w.onBoard === '0' ? nothing : row(words('working-net'), w.net)}
    ${row(words('working-extra'), w.extra)}
    ${w.chosen === 'none' ? nothing : row({ extra: () => words('chosen-extra'), net: () => words('chosen-net') }[w.chosen](), w.beforeRounding)}${w.cut ? row(words('working-cap'), w.cap) : nothing}
    <tr class="total"><td>${words('working-total')}</td><td><bdi dir="ltr">${dose.number}</bdi></td></tr></tbody></table>
  ${dose.timesUsual ? html`<p class="times">${dose.timesUsual === '1' ? words('usual') : words('times-usual', { times: dose.timesUsual })}</p>` : nothing}`;
};

export const dosePage = (state, words, send) => {
  const { dose } = state.advice;
  const pen = dose.device.kind === 'pen';
  const both = hasBothDevices(state.plan);
  return sheet(state, words, html`<div class="dosepage ${pen ? 'pen' : ''}">
    <h1 class="kicker" tabindex="-1">${state.advice.outcome === 'emergency' ? words('inject-on-the-way') : words('inject-now')}</h1>
    <p class="dose">${doseFigure(dose.number)}<span class="units">&nbsp;${unitWord(dose.number, words)}</span></p>
    <div class="what"><b>${words('by-needle', { insulin: state.insulinName })}</b><p>${words('rapid-new-vial')}</p>
      ${pen ? html`<p>${words('pen-dial', { dose: dose.text })}</p>` : html`<p>${words('syringe-size', { capacity: String(dose.device.capacity) })}</p>
        <p>${marksLine(dose.device, words)}</p>`}
      ${state.parts ? html`<p>${words('parts', { rescue: unitsText(state.parts.rescue, words), meal: unitsText(state.parts.meal, words) })}</p>` : nothing}
      ${state.advice.outcome === 'emergency' ? html`<p class="warn">${words('way-line')}</p>` : nothing}
      ${allCautions(state, words).map(line => html`<p class="warn">${line}</p>`)}</div>
    <div class="work">${state.school?.cell(dose) ?? ledger(dose, words)}</div>
    ${pen ? nothing : syringe(dose.device, words('picture-syringe', { capacity: String(dose.device.capacity), dose: dose.text }), dose.number)}</div>
  <div class="end">${main(words('type-units'), () => send('open', 'typed'))}</div>
  <div class="pair others">${half(words('not-injecting'), () => send('open', 'refuse'))}${half(words('why'), () => send('open', 'why'))}
    ${both ? half(pen ? words('use-syringe') : words('use-pen'), () => send('with', pen ? 'syringe' : 'pen')) : nothing}</div>
  ${planFindings(state, words)}`);
};

// What the syringe or the pen shows is typed, never the dose tapped away; another number is asked about.
export const typeUnits = (state, words, send, { device, done, back, calm }) => sheet(state, words, html`
  ${question('', words('typed-question'))}${device.kind === 'pen' ? nothing : edge(words)}
  ${keypad(state, words, send, { unit: unitWord(state.pad.digits, words) })}
  <div class="end">${state.pad.digits ? main(words('typed-yes', { dose: unitsText(state.pad.digits, words) }), done) : plain(words('back'), back)}</div>`, { calm });
export const anotherAmount = (state, words, { given, dose, again, done, calm }) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('different', { typed: given, dose })}</h1><p class="say">${words('different-look')}</p></div>
  <p class="lede">${words('different-do')}</p>
  <div class="end">${main(words('look-again'), again)}
  ${plain(words('different-given', { typed: given }), done, words('different-given-sub'))}</div>`, { calm });

export const typed = (state, words, send) => typeUnits(state, words, send, { device: state.advice.dose.device, done: () => send('typedUnits'), back: () => send('close') });
export const different = (state, words, send) => anotherAmount(state, words, { given: state.panel.text, dose: state.advice.dose.text, again: () => send('open', 'typed'), done: () => send('injected') });

export const injectNow = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('inject-this', { dose: state.panel.text })}</h1></div>
  <ul class="lines"><li>${words('inject-place')}</li><li>${words('inject-pump')}</li></ul>
  ${state.school?.injector() ?? nothing}
  <div class="end">${main(words('have-injected', { dose: state.panel.text }), () => send(state.school ? 'schoolInjected' : 'injected'))}${plain(words('back'), () => send('close'))}</div>`);

export const refuse = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('refuse-question')}</h1></div><ul class="lines"><li>${words('refuse-line')}</li><li>${words('refuse-call')}</li></ul>
  <div class="end cells">${plain(words('refuse-wrong'), () => send('refused', true))}${plain(words('refuse-yes'), () => send('refused', false))}${plain(words('back-to-dose'), () => send('close'))}</div>`);

export const didYouInject = (state, words, send) => {
  const answer = what => () => send('didInject', what);
  return wasInjected(state.holds.unanswered, words('insulin-rapid', { name: state.insulinName }), state, words, { yes: answer('same'), other: answer('other'), no: answer('no'), unsure: answer('unsure') });
};

export const help = (state, words, send) => {
  const low = state.advice.outcome === 'lowEmergency';
  const dose = state.advice.dose;
  // At once, while somebody calls: what helps in a severe low.
  const meanwhile = low ? state.steps.filter(step => ['stopPump', 'glucagon', 'sugar'].includes(step.id)) : [];
  return html`<div class="sheet"><div class="block"><h1 tabindex="-1">${outcome(state.advice.outcome, words)}</h1><p>${outcomeLine(state.advice.outcome, words)}</p></div>
  <main id="main">${emergencyCall(state, words)}
  ${meanwhile.length ? html`<h2 class="danger-h">${words('help-low-meanwhile')}</h2><ul class="lines">${meanwhile.map(step => html`<li><b>${stepTitle(step, words)}</b></li>`)}</ul>` : nothing}
  <div class="say"><h2>${words('say-these')}</h2><p>${low ? words('step-tell-them-severe-low') : words('step-tell-them')}</p></div>
  <ul class="lines">${low ? html`<li>${words('help-low-insulin')}</li><li>${state.steps.some(step => step.id === 'sugar') ? words('help-low-mouth') : words('help-low-nothing')}</li>` : html`<li>${words('help-wait')}</li><li>${words('help-mouth')}</li>`}</ul>
  ${cautions(state, words)}
  <div class="cells low">
    ${plain(words('help-answered'), () => send('called', { step: 'emergencyCall', answered: true }), dose ? words('help-dose-sub') : words('help-steps-sub'))}
    ${plain(words('help-no-answer'), () => send('called', { step: 'emergencyCall', answered: false }))}
    ${callTeam(state, words, { home: true })}
    ${state.canGoOn ? plain(words('help-test'), () => send('pass'), words('help-test-sub')) : nothing}</div>${planFindings(state, words)}
  </main><footer class="foot"><div class="row"><div class="cell"><span>${words('foot-now')}</span><b><bdi dir="ltr">${state.now.clock}</bdi></b></div>
  <button type="button" class="press mid" @click=${() => send('again', 'signs')}>${words('back')}</button></div></footer></div>`;
};

export const testGlucose = (state, words, send) => sheet(state, words, html`
  <div class="lead-in"><h1 tabindex="-1">${outcome('testGlucose', words)}</h1><p>${words('line-test-glucose')}</p></div>
  <ul class="lines"><li>${words('wash')}</li><li>${words('dry')}</li></ul>${cautions(state, words)}
  <div class="end">${main(words('type-finger'), () => send('retest'))}${plain(words('no-meter'), () => send('retestNoMeter'))}
  ${state.canGoOn ? plain(words('go-on-without'), () => send('pass')) : plain(words('cannot-test-call'), () => send('run'))}</div>${planFindings(state, words)}`);

export const testKetones = (state, words, send) => sheet(state, words, html`
  <div class="lead-in"><h1 tabindex="-1">${outcome('testKetones', words)}</h1><p>${words('line-test-ketones')}</p></div>${cautions(state, words)}
  <div class="end">${main(words('type-ketones'), () => send('again', 'ketones'))}${plain(words('ketones-no-strips'), () => send('ketonesUnknown', 'noStrips'))}
  ${plain(words('cannot-test-call'), () => send('run'))}</div>${planFindings(state, words)}`);

export const clockInDoubt = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${outcome('clockInDoubt', words)}</h1><p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p></div>
  <ul class="lines"><li>${words('clock-look')}</li><li>${words('clock-set')}</li><li>${words('clock-call')}</li></ul>
  <div class="end">${main(words('clock-again'), () => send('refresh'))}${plain(words('change-answers'), () => send('open', 'answersGiven'))}</div>${planFindings(state, words)}`);

// What was injected cannot be told from the record: nothing is worked out from it.
export const recordInDoubt = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${outcome('recordInDoubt', words)}</h1><p class="say">${outcomeLine('recordInDoubt', words)}</p></div>
  <ul class="lines"><li>${words('doubt-look')}</li><li>${words('doubt-call')}</li></ul>${cautions(state, words)}
  <div class="end">${callTeam(state, words, { now: true })}${plain(words('change-answers'), () => send('open', 'answersGiven'))}</div>${planFindings(state, words)}`);

export const tubing = (state, words, send) => sheet(state, words, html`
  ${question('', words('tubing-now'), words('tubing-before', { dose: state.panel.text }))}
  <div class="pics cells">
    <button type="button" class="press wide" @click=${() => send('tubing', 'sink')}>${tubingPictures.sink}<span>${words('tubing-sink')}<small>${words('tubing-sink-sub')}</small></span></button>
    <button type="button" class="press wide" @click=${() => send('tubing', 'body')}>${tubingPictures.body}<span>${words('tubing-body')}<small>${words('tubing-body-sub')}</small></span></button>
    <button type="button" class="press wide" @click=${() => send('tubing', 'unsure')}>${tubingPictures.unsure}<span>${words('tubing-unsure')}</span></button></div>`);
// Not over a sink: the pump gives nothing yet. Where it has given already, that is written down as it was.
export const tubingNot = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('tubing-not-body')}</h1><p class="say">${state.panel.end === 'body' ? words('tubing-take-off') : words('tubing-find')}</p></div>
  <div class="end">${main(words('tubing-again'), () => send('tubingLook'))}
    ${plain(words('tubing-given', { dose: state.panel.text }), () => send('tubingGiven'), words('tubing-given-sub'))}${plain(words('off-body-other'), () => send('offBodyOther'))}</div>`);

const origin = (entry, words) => ({ entered: () => words('from-entered'), recorded: () => words('from-recorded'), plan: () => words('from-plan') }[entry.from]());

const factName = (name, words) => ({
  glucose: () => words('glucose-label'), ketones: () => words('ketones-label'), signs: () => words('signs-label'), seen: () => words('seen-label'),
  carbs: () => words('fact-carbs'), unwell: () => words('fact-unwell'), mistake: () => words('fact-mistake'), pumpOnBoard: () => words('fact-on-board'),
  pumpOffersNothing: () => words('fact-offers-nothing'), highSince: () => words('fact-high-since'), with: () => words('fact-with'), viewer: () => words('fact-viewer'), notBefore: () => words('fact-not-before'), recordInDoubt: () => words('outcome-record'),
  agreement: () => words('fact-agreement'), pregnant: () => words('fact-pregnant'), sglt2Inhibitor: () => words('fact-sglt2'),
  incident: () => words('fact-incident'), sign: () => words('signs-label'), doseShown: () => words('fact-dose-shown'), doseRefused: () => words('fact-dose-refused'),
  injection: () => words('fact-injection'), pumpDose: () => words('fact-pump-dose'), offBody: () => words('fact-off-body'), changed: () => words('fact-changed'),
  automation: () => words('fact-automation'), pump: () => words('fact-pump'), look: () => words('fact-look'), call: () => words('fact-call'), order: () => words('fact-order'), expires: () => words('fact-expires'),
  alarmSet: () => words('fact-alarm'), note: () => words('fact-note'), strike: () => words('fact-strike'),
}[name]());

const unknownKetones = words => ({ notYet: () => words('ketones-not-yet'), noStrips: () => words('ketones-no-strips'), error: () => words('ketones-error') });
// A fact's value is the core's own text; what stands for a word is said in words.
const factValue = ({ fact: name, value, from }, state, words) => {
  if (from === 'recorded') return words('fact-last', { clock: value.slice(11, 16) });
  if (value === 'none') return words('none');
  if (value === 'true') return words('yes');
  if (value === 'false') return words('no');
  return ({
    signs: () => signList(value.split(','), words), seen: () => seenList(value.split(','), words), highSince: () => value.slice(11, 16), with: () => device(value, words),
    ketones: () => unknownKetones(words)[value]?.() ?? (/[0-9]|HI/.test(value) ? words('reading', { value: value.replace('.', state.mark), unit: 'mmol/L' }) : urineWord(value, words)),
    glucose: () => words('reading', { value: value.replace('.', state.mark), unit: state.draft?.glucose?.unit ?? state.plan.doc.glucoseUnit }),
    notBefore: () => state.dayWords(value),
    agreement: () => ({ draft: () => words('status-draft'), agreed: () => words('status-agreed'), superseded: () => words('status-superseded'), withdrawn: () => words('status-withdrawn') }[value]()),
    viewer: () => ({ person: () => words('viewer-person'), school: () => words('viewer-school') }[value]()),
  }[name] ?? (() => value))();
};

export const why = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('why')}</h1></div>
  <p class="lede">${state.advice.gate ? words('why-rule-gate', { rule: state.advice.decidedBy, gate: state.advice.gate }) : words('why-rule', { rule: state.advice.decidedBy })}</p>
  <dl class="fields wider">${state.advice.because.map(entry => html`<div><dt>${factName(entry.fact, words)}</dt><dd><bdi>${factValue(entry, state, words)}</bdi> <small>${origin(entry, words)}</small></dd></div>`)}</dl>
  ${state.advice.dose && !state.veiled ? html`<div class="answers">${state.school?.cell(state.advice.dose) ?? ledger(state.advice.dose, words)}</div>
    ${state.advice.dose.otherBound !== state.advice.dose.number ? html`<p class="note">${words('other-bound', { dose: unitsText(state.advice.dose.otherBound, words) })}</p>` : nothing}` : nothing}
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);

const lookWhat = (what, words) => (what.includes('ketones') ? what.includes('glucose') ? words('look-both') : words('look-ketones') : words('look-glucose'));
const until = (what, words) => ({ correction: () => words('until-correction'), ketoneDose: () => words('until-ketone'), automation: () => words('until-automation'), usual: () => words('until-usual'),
  longActing: () => words('until-long'), allRapid: () => words('until-rapid') }[what]());

// With what a pump that is back waits for. Beside injected basal insulin automation waits longer: two times for the same thing would leave
// the choice to somebody half asleep.
const heldUntil = ({ school, holds: { holds }, backWaits }) => [...backWaits.map(({ what, at, clock }) => ({ what, clock, until: at })),
  ...(school?.holdsShown(holds) ?? holds).filter(hold => !backWaits.some(({ what }) => what === hold.what))];

// Between the looks: what is due, what must not be done until when. What is overdue comes before anything else, and what to do then
// before what may wait: a long list would push it out of sight.
export const waiting = (state, words, send) => {
  const { next, holds } = state;
  const later = [...holds.looks.filter(look => look !== next?.look).map(look => ({ clock: look.clock, due: look.due, title: words('look-later'), text: [lookWhat(look.what, words), ...(state.injectsAt(look) ? [words('look-injects')] : [])].join(' ') })),
    ...heldUntil(state).map(hold => ({ clock: hold.clock, due: hold.until, text: until(hold.what, words) }))].sort((a, b) => state.order(a.due, b.due));
  const late = Boolean(next?.overdue);
  const steps = state.draft?.run ? plain(words('back-to-steps'), () => send('backToSteps')) : nothing;
  const list = html`<ol class="timetable">
    ${holds.given ? html`<li class="past"><b class="t"><bdi dir="ltr">${holds.given.clock}</bdi></b><p>${words('given-by-needle', { dose: holds.given.text, insulin: state.insulinName })}</p></li>` : nothing}
    ${later.map(entry => html`<li><b class="t"><bdi dir="ltr">${entry.clock}</bdi><small>${state.otherDay(entry.due)}</small></b><p>${entry.title ? html`<b class="k">${entry.title}</b>` : nothing}${entry.text}</p></li>`)}</ol>`;
  const act = html`<div class="end">${late || !next ? main(words('test-now'), () => send('start'), words('test-now-sub')) : state.alarmSet ? html`<p class="lede">${words('alarm-is-set', { clock: next.clock })}</p>${plain(words('test-early'), () => send('start'))}`
    : html`${main(words('done-set-alarm'), () => send('alarmSet'), words('alarm-sub', { clock: next.clock }))}${plain(words('test-early'), () => send('start'))}`}${late ? steps : nothing}${offFirst(state, words, send)}</div>`;
  return sheet(state, words, html`<div class="lead-time">
    ${!next ? html`<h1 tabindex="-1">${words('no-look')}</h1>` : late ? html`<h1 tabindex="-1">${words('late-title', { clock: next.clock })}</h1>
      <p class="late"><bdi dir="ltr">${next.late.number}</bdi> <small>${{ minutes: () => words('late-minutes'), hours: () => words('late-hours') }[next.late.unit]()}</small></p>`
      : html`<h1 tabindex="-1">${words('look-again-at')}</h1><p class="clock"><bdi dir="ltr">${next.clock}</bdi></p><p>${lookWhat(next.what, words)}${next.injects ? html` ${words('look-injects')}` : nothing}<br><small>${next.inHours ? words('in-hours', next.inHours) : words('in-minutes', { minutes: next.inMinutes })}</small></p>`}</div>
  ${holds.clockInDoubt ? html`<p class="lede">${words('clock-look')}</p>` : nothing}
  ${late ? nothing : list}
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  ${next && !late ? html`<p class="note">${words('cannot-wake')}</p>` : nothing}
  ${act}${late ? list : nothing}
  <div class="cells answers">${late ? nothing : steps}${state.school?.ways(send) ?? html`${next && !late ? plain(words('wake-title'), () => send('openWake'), words('wake-sub')) : nothing}${holds.given && holds.onBoard.absorbed !== '0' ? plain(words('picture-entry'), () => send('openPicture'), words('picture-entry-sub')) : nothing}${plain(words('before'), () => send('open', 'before'))}${plain(words('change-something'), () => send('open', 'change'), words('change-something-sub'))}
    ${offEntry(state, words, send)}${plain(words('more'), () => send('open', 'more'), words('more-sub'))}`}</div>`);
};
