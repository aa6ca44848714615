// The questions of the bedside, one a screen, in the order of the rules. "I do not know" is an answer everywhere.
import { html, nothing } from '../vendor/lit-html.js';
import { clockpad, clockText, filled, half, keypad, main, plain, question, sheet, square, strip } from './parts.js';
import { callTeam } from './ring.js';
import { unitWord, unitsText } from './units.js';

// A way back for whoever opened an answered question by mistake.
const keep = (state, words, send) => (state.draft.redo ? plain(words('keep-answer'), () => send('keepAnswer')) : nothing);

const label = (name, words) => ({ signs: () => words('signs-label'), glucose: () => words('glucose-label'), ketones: () => words('ketones-label'), seen: () => words('seen-label') }[name]());

// The last answer stays in sight; all of them, each with its way back, have a page.
const answers = (state, words, send) => {
  const last = state.answers.at(-1);
  return last ? filled(label(last.name, words), last.text, last.clock, () => send('open', 'answersGiven'), words) : nothing;
};

export const answersGiven = (state, words, send) => sheet(state, words, html`${question('', words('answers-title'))}
  <div class="cells">${state.answers.map(answer => plain(html`${label(answer.name, words)}: <bdi>${answer.text}</bdi>`, () => send('again', answer.name), words('answers-at', { clock: answer.clock })))}</div>
  <p class="note">${state.school ? words('answers-note-both') : words('answers-note')}</p>
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);

const ticks = (entries, on, toggle) => html`<ul class="ticks cells">${entries.map(([name, text]) => html`<li>
  <button type="button" class="press" role="checkbox" aria-checked=${on.has(name) ? 'true' : 'false'} @click=${() => toggle(name)}>${square.tick(on.has(name))}<span>${text}</span></button></li>`)}</ul>`;

export const signs = (state, words, send) => {
  const on = new Set(state.ticks);
  return sheet(state, words, html`${question('1', words('signs-question'))}
  ${ticks([['fitting', words('sign-fitting')], ['drowsy', words('sign-drowsy')], ['confused', words('sign-confused')], ['fastBreathing', words('sign-breathing')],
    ['cannotKeepFluid', words('sign-fluid')], ['vomitedAgain', words('sign-vomited-again')], ['vomitedOnce', words('sign-vomited-once')], ['bellyPain', words('sign-belly')],
    ['unwell', words('sign-unwell')]], on, name => send('tick', name))}
  <div class="end">${on.size ? main(words('signs-done'), () => send('signsDone'))
    : html`<div class="pair">${half(words('none-of-these'), () => send('signsDone'))}${half(words('do-not-know'), () => send('signsUnknown'))}</div>`}${keep(state, words, send)}</div>`);
};

// Nobody could say whether a danger sign is there: no sign is assumed, and help is offered before the next question.
export const signsUnsure = (state, words, send) => sheet(state, words, html`${question('1', words('unsure-signs'))}
  <ul class="lines"><li>${words('unsure-signs-call')}</li><li>${words('unsure-signs-look')}</li></ul>
  <div class="end cells"><a class="press wide" href="danger.html"><span>${words('danger-page')}</span></a>
  ${plain(words('unsure-signs-back'), () => send('again', 'signs'))}</div>${main(words('unsure-signs-on'), () => send('signsUnsureOn'))}<p></p>`);

export const glucose = (state, words, send) => {
  const { pad, unit, noMeter, retest } = state;
  const other = unit === 'mmol/L' ? 'mg/dL' : 'mmol/L';
  const yes = from => () => send('glucoseTyped', from);
  return sheet(state, words, html`${answers(state, words, send)}
  ${question('2', noMeter ? words('glucose-sensor-question') : retest ? words('glucose-again-question') : words('glucose-question'),
    state.otherUnit ? words('glucose-other-unit', { unit }) : noMeter ? undefined : words('glucose-help'))}
  ${keypad(state, words, send, { unit, decimal: unit === 'mmol/L' })}
  ${pad.digits ? html`<div class="end">${noMeter ? main(words('glucose-yes-sensor', { value: pad.digits, unit }), yes('sensor'))
      : html`${main(words('glucose-yes-finger', { value: pad.digits, unit }), yes('finger'))}${plain(words('glucose-yes-sensor', { value: pad.digits, unit }), yes('sensor'))}`}</div>`
    : html`<div class="end"><div class="pair others">${half(words('meter-hi'), () => send('meterWord', 'HI'))}${half(words('meter-lo'), () => send('meterWord', 'LO'))}
      ${noMeter ? half(words('no-sensor'), () => send('glucoseUnknown')) : half(words('no-meter'), () => send('noMeter'))}${half(words('do-not-know'), () => send('glucoseUnknown'))}
      ${half(words('switch-unit', { unit: other }), () => send('switchUnit', other))}</div>${keep(state, words, send)}</div>`}`);
};

export const meterWord = (state, words, send) => sheet(state, words, html`
  ${question('2', state.panel.word === 'HI' ? words('hi-from') : words('lo-from'))}
  <div class="cells">${plain(words('from-finger'), () => send('meterWordFrom', 'finger'))}${plain(words('from-sensor'), () => send('meterWordFrom', 'sensor'))}
  ${plain(words('back'), () => send('close'))}</div>`);

const ketoneWay = (words, send) => html`<div class="pair others">
  ${half(words('ketones-not-yet'), () => send('ketonesUnknown', 'notYet'))}${half(words('ketones-no-strips'), () => send('ketonesUnknown', 'noStrips'))}
  ${half(words('ketones-error'), () => send('ketonesUnknown', 'error'))}`;

const bloodKetones = (state, words, send) => html`
  ${question('3', words('ketones-question'))}
  ${keypad(state, words, send, { unit: 'mmol/L', drawing: strip(words) })}
  ${state.pad.digits ? html`<div class="end">${main(words('ketones-yes', { value: state.pad.digits }), () => send('ketonesTyped'))}</div>`
    : html`<div class="end">${ketoneWay(words, send)}${half(words('meter-hi'), () => send('ketonesHi'))}${state.readsStrips ? half(words('urine-instead'), () => send('urine', true)) : nothing}</div>${keep(state, words, send)}</div>`}`;

const urineKetones = (state, words, send) => html`
  ${question('3', words('urine-question'), words('urine-help'))}
  <div class="cells">
    ${plain(words('urine-negative'), () => send('ketonesUrine', 'negative'))}${plain(words('urine-trace'), () => send('ketonesUrine', 'trace'))}
    ${plain(words('urine-small'), () => send('ketonesUrine', 'small'))}${plain(words('urine-moderate'), () => send('ketonesUrine', 'moderate'))}
    ${plain(words('urine-large'), () => send('ketonesUrine', 'large'))}</div>
  <div class="end">${ketoneWay(words, send)}${half(words('blood-instead'), () => send('urine', false))}</div>${keep(state, words, send)}</div>`;

export const ketones = (state, words, send) => sheet(state, words, html`${answers(state, words, send)}
  ${state.urine ? urineKetones(state, words, send) : bloodKetones(state, words, send)}`);

export const seen = (state, words, send) => {
  const on = new Set(state.ticks);
  const pump = state.plan.doc.pump;
  return sheet(state, words, html`${answers(state, words, send)}${question('4', words('seen-question'))}
  ${ticks([['leak', words('seen-leak')], ['blood', words('seen-blood')], ['bentCannula', words('seen-bent')], ['cameOut', words('seen-came-out')],
    ['occlusionAlarm', words('seen-occlusion')], ['outOfInsulin', words('seen-empty')], ['heatedInsulin', words('seen-heated')], ['pumpDead', words('seen-dead')],
    ...(pump.automation === 'none' ? [] : [['offersNothing', words('seen-offers-nothing')]])], on, name => send('tick', name))}
  <div class="end">${on.size ? main(words('seen-done'), () => send('seenDone'))
    : html`<div class="pair">${half(words('none-of-these'), () => send('seenDone'))}${half(words('do-not-know'), () => send('seenUnknown'))}</div>`}${keep(state, words, send)}</div>`);
};

export const given = (state, words, send) => sheet(state, words, html`${state.panel ? nothing : answers(state, words, send)}
  ${state.draft?.home ? question('', words('given-home'), words('given-home-help')) : question(state.panel ? '' : '5', words('given-question'), words('given-help', { hours: state.actionHours }))}
  ${state.givenLines.length ? html`<ul class="lines">${state.givenLines.map(line => html`<li><b><bdi dir="ltr">${line.clock}</bdi></b> ${line.text}</li>`)}</ul>` : nothing}
  <div class="cells">
    ${plain(words('given-pump'), () => send('entry', 'pump'))}
    ${plain(words('given-needle'), () => send('entry', 'needle'))}
    ${state.plan.doc.pump.automation === 'none' ? nothing : plain(words('given-automatic'), () => send('entry', 'automatic'))}
    ${plain(words('given-meal'), () => send('entry', 'meal'))}
    ${plain(words('given-mistake'), () => send('open', 'mistake'))}
    ${plain(words('given-more'), () => send('open', 'givenMore'), state.draft?.carbs ? words('given-carbs-is', { grams: state.draft.carbs }) : undefined)}</div>
  ${state.panel && state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  <div class="end">${state.panel ? plain(words('back'), () => send('close'))
    : html`<div class="pair">${half(state.givenLines.length ? words('given-done') : words('given-nothing'), () => send('givenDone'))}${half(words('given-unsure'), () => send('givenUnsure'))}</div>`}</div>`);

export const givenMore = (state, words, send) => sheet(state, words, html`${question('', words('given-more'))}
  <div class="cells">
    ${state.plan.doc.longActing ? plain(words('given-long'), () => send('entry', 'long')) : nothing}
    ${state.draft ? html`
      ${plain(words('given-carbs'), () => send('entry', 'carbs'), state.draft.carbs ? words('given-carbs-is', { grams: state.draft.carbs }) : words('given-carbs-sub'))}
      ${plain(words('given-on-board'), () => send('entry', 'onBoard'), state.draft.onBoard ? words('given-on-board-is', { dose: unitsText(state.draft.onBoard.replace('.', state.mark), words) }) : undefined)}
      ${state.plan.doc.pump.automation === 'basalAndCorrections' ? plain(words('given-high-since'), () => send('entry', 'highSince'), state.draft.highSince ? words('given-high-since-is', { clock: state.highSinceClock }) : undefined) : nothing}` : nothing}</div>
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);

// Nobody knows what went in: no number can be worked out, so nothing but a call is left.
export const givenUnsure = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('unsure-given')}</h1><p class="say">${words('unsure-given-do')}</p></div>
  <ul class="lines"><li>${words('unsure-given-look')}</li><li>${words('unsure-given-call')}</li></ul>
  <div class="end cells">
    ${callTeam(state, words)}
    ${plain(words('unsure-given-maybe'), () => send('entry', 'maybe'), words('unsure-given-maybe-sub'))}
    ${plain(words('unsure-given-back'), () => send('givenKnown'))}</div>`);

// What the team named on the telephone is said back to them before it is written down.
export const orderSaid = (state, words, send) => sheet(state, words, html`
  ${question('', words('order-said', { dose: state.panel.text, insulin: state.insulinName }), words('order-say'))}
  <div class="end">${main(words('order-right'), () => send('orderSaid'))}${plain(words('order-other'), () => send('entry', 'order'))}</div>`);

const entryTitle = (kind, words) => ({
  pump: () => words('entry-pump'), needle: () => words('entry-needle'), automatic: () => words('entry-automatic'), meal: () => words('entry-meal'),
  long: () => words('entry-long'), maybe: () => words('entry-maybe'), onBoard: () => words('entry-on-board'), carbs: () => words('entry-carbs'), order: () => words('entry-order'),
  mistake: () => words('entry-mistake'), yes: () => words('entry-yes'), offBody: () => words('entry-off-body'),
}[kind]());

export const entryUnits = (state, words, send) => {
  const grams = state.panel.kind === 'carbs';
  return sheet(state, words, html`${question('', entryTitle(state.panel.kind, words), state.panel.kind === 'order' ? words('entry-order-help') : undefined)}
  ${keypad(state, words, send, { unit: grams ? words('unit-grams') : unitWord(state.pad.digits, words), decimal: !grams })}
  <div class="end">${state.pad.digits ? main(grams ? words('entry-yes-grams', { grams: state.pad.digits }) : words('entry-yes-units', { dose: unitsText(state.pad.digits, words) }), () => send('entryUnits'))
    : html`<div class="pair others">${state.panel.kind === 'mistake' ? half(words('do-not-know'), () => send('entryUnitsUnknown')) : nothing}${half(words('back'), () => send('entryBack'))}</div>`}</div>`);
};

export const entryTime = (state, words, send) => sheet(state, words, html`
  ${question('', state.panel.kind === 'highSince' ? words('entry-high-since') : words('entry-when'))}
  ${clockpad(state, words, send)}
  <div class="end">${state.pad.digits.length === 4 ? main(state.yesterday ? words('entry-yes-yesterday', { clock: clockText(state.pad.digits) }) : words('entry-yes-clock', { clock: clockText(state.pad.digits) }), () => send('entryTime'))
    : html`<div class="pair others">${state.panel.kind === 'highSince' ? nothing : half(words('just-now'), () => send('entryNow'))}
      ${state.panel.shownClock ? half(words('at-shown', { clock: state.panel.shownClock }), () => send('entryShownTime')) : nothing}
      ${half(words('back'), () => send('entryBack'))}</div>`}</div>`);

export const entryGlucose = (state, words, send) => sheet(state, words, html`
  ${question('', words('entry-glucose'))}
  ${keypad(state, words, send, { unit: state.plan.doc.glucoseUnit, decimal: state.plan.doc.glucoseUnit === 'mmol/L' })}
  <div class="end">${state.pad.digits ? main(words('entry-yes-glucose', { value: state.pad.digits, unit: state.plan.doc.glucoseUnit }), () => send('entryGlucose'))
    : half(words('do-not-know'), () => send('entryGlucoseUnknown'))}</div>`);

export const entrySure = (state, words, send) => sheet(state, words, html`
  ${question('', words('entry-sure', { units: state.panel.text, clock: state.panel.clock }))}
  <div class="cells">${plain(words('entry-sure-yes'), () => send('entrySure', true))}${plain(words('entry-sure-no'), () => send('entrySure', false), words('entry-sure-no-sub'))}</div>`);

export const mistake = (state, words, send) => sheet(state, words, html`
  ${question('', words('mistake-question'))}
  <div class="cells">
    ${plain(words('mistake-wrong'), () => send('mistakeKind', 'wrongInsulin'))}
    ${plain(words('mistake-many'), () => send('mistakeKind', 'tooManyUnits'))}
    ${plain(words('mistake-twice'), () => send('mistakeKind', 'twice'))}
    ${state.plan.doc.pump.tubing === 'tubed' ? plain(words('mistake-off-body'), () => send('mistakeKind', 'offBodyIntoBody')) : nothing}</div>
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);

export const mistakeInsulin = (state, words, send) => sheet(state, words, html`
  ${question('', words('mistake-insulin'))}
  <div class="cells">${plain(words('insulin-rapid', { name: state.plan.doc.rapid.name }), () => send('mistakeInsulin', 'rapid'))}
  ${plain(state.plan.doc.longActing ? words('insulin-long', { name: state.plan.doc.longActing.name }) : words('insulin-long-any'), () => send('mistakeInsulin', 'long'))}</div>
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);
