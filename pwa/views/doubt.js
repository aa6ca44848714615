// Pages for when it cannot be told what was injected: a damaged record, a plan that came to a new phone, storage that does not open, a
// record the core refuses. None of them shows a dose to inject; what can still be read is shown as it is written, the last dose first.
import { html, nothing } from '../vendor/lit-html.js';
import { half, main, plain, plainSheet, question, sheet } from './parts.js';
import { outcomeLine } from './advice.js';
import { callTeam } from './ring.js';

const row = ({ clock, day, text }) => html`<li><b class="t"><bdi dir="ltr">${clock}</bdi>${day ? html`<small>${day}</small>` : nothing}</b><p>${text}</p></li>`;
const timetable = lines => html`<ol class="timetable">${lines.map(row)}</ol>`;
const written = ({ dosesWritten: doses = [] }, words) => html`<h2 class="lbl part">${words('doubt-written')}</h2>
  ${doses.length ? timetable(doses) : html`<p class="note">${words('doubt-none')}</p>`}`;
const damaged = ({ doubt }, words) => (doubt?.damaged.length ? html`<h2 class="lbl part">${words('doubt-damaged')}</h2>${timetable(doubt.damaged)}` : nothing);
const save = (words, send) => plain(words('doubt-save'), () => send('doubtSave'), words('doubt-save-sub'));
const said = state => (state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing);
const notKept = (state, words) => (state.kept ? nothing : html`<p class="warnbox">${words('nothing-kept')}</p>`);

// The last dose stands above the fold, because whoever is asked on the telephone asks for it first.
export const doubt = (state, words, send) => sheet(state, words, html`
  <div class="lead-in"><h1 tabindex="-1">${state.doubt.plan ? words('doubt-plan-title') : words('doubt-title')}</h1><p>${outcomeLine('recordInDoubt', words)}</p></div>
  ${said(state)}
  ${state.dosesWritten.length ? timetable(state.dosesWritten.slice(0, 1)) : html`<p class="note">${words('doubt-none')}</p>`}
  <div class="cells">
    ${state.doubt.plan ? html`<a class="press wide" href="#bring"><span>${words('doubt-plan-bring')}<span class="sub">${words('doubt-plan-bring-sub')}</span></span></a>`
      : main(words('doubt-say'), () => send('doubtSay'))}
    ${callTeam(state, words)}
    ${state.draft ? plain(words('change-answers'), () => send('open', 'answersGiven')) : plain(words('doubt-questions'), () => send('start'), words('doubt-questions-sub'))}
    ${save(words, send)}</div>
  ${notKept(state, words)}
  <ul class="lines"><li>${words('doubt-look')}</li><li>${words('doubt-call')}</li></ul>
  ${written(state, words)}${damaged(state, words)}
  <div class="end cells">${state.draft ? plain(words('step-cannot'), () => send('stepsOver')) : nothing}
    ${state.school ? state.school.ways() : html`${plain(words('change-something'), () => send('open', 'change'))}${plain(words('more'), () => send('open', 'more'))}`}</div>`);

// By name: each injection that still counts and is not in the record already.
export const doubtSay = (state, words, send) => {
  const known = state.dosesWritten;
  return sheet(state, words, html`
  ${question('', state.doubt.hours ? words('doubt-ask', { hours: state.doubt.hours }) : words('doubt-ask-any'), state.doubt.longHours ? words('doubt-ask-long', { hours: state.doubt.longHours }) : undefined)}
  ${said(state)}
  <div class="cells">${plain(words('given-needle'), () => send('entry', 'needle'))}
    ${state.plan.doc.longActing ? plain(words('given-long'), () => send('entry', 'long')) : nothing}</div>
  <div class="end">${state.doubtSaid ? main(words('doubt-all'), () => send('doubtOver')) : plain(words('doubt-nothing'), () => send('doubtOver'), state.doubtCalled ? words('doubt-nothing-called') : words('doubt-nothing-sub'))}
    <div class="pair">${half(words('given-unsure'), () => send('open', 'doubtCall'))}${half(words('back'), () => send('close'))}</div></div>
  ${known.length ? html`<h2 class="lbl part">${words('doubt-known')}</h2>${timetable(known)}` : nothing}
  ${state.doubt.damaged.length ? html`<h2 class="lbl part">${words('doubt-again')}</h2>${timetable(state.doubt.damaged)}` : nothing}`);
};

export const doubtCall = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('doubt-call-first')}</h1><p class="say">${words('doubt-call-ask')}</p></div>
  ${said(state)}
  ${callTeam(state, words, { now: true })}
  <div class="pair">${half(words('call-answered'), () => send('doubtCall', true))}${half(words('call-no-answer'), () => send('doubtCall', false))}</div>
  <div class="end">${plain(words('back'), () => send('doubtSay'))}</div>`);

// Before any dose on a phone that cannot know.
export const freshAsk = (state, words, send) => sheet(state, words, html`
  ${question('', words('fresh-ask', { hours: state.hours ?? state.actionHours }), words('fresh-why'))}
  <div class="cells">${plain(words('fresh-yes'), () => send('freshYes'), words('fresh-yes-sub'))}
    ${plain(words('fresh-no'), () => send('freshNo'), words('fresh-no-sub'))}
    ${plain(words('given-unsure'), () => send('open', 'freshUnsure'))}</div>
  <ul class="lines"><li>${words('doubt-look')}</li></ul>`);
export const freshUnsure = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('unsure-given')}</h1><p class="say">${words('unsure-given-do')}</p></div>
  <ul class="lines"><li>${words('unsure-given-look')}</li><li>${words('unsure-given-call')}</li></ul>
  <div class="end cells">${callTeam(state, words, { now: true })}${plain(words('unsure-given-back'), () => send('close'))}</div>`);

// Nothing is known here but that something was kept.
export const shut = (state, words) => html`<div class="sheet"><div class="block"><h1 tabindex="-1">${words('shut-title')}</h1><p>${words('shut-do')}</p></div><main id="main">
  <ul class="lines"><li>${state.shut === 'plan' ? words('shut-plan') : words('shut-what')}</li><li>${words('shut-call')}</li></ul>
  <a class="press now wide" href="danger.html"><span>${words('shut-who')}<span class="sub">${words('shut-who-sub')}</span></span></a>
  <a class="press wide" href="./"><span>${words('shut-again')}<span class="sub">${words('shut-again-sub')}</span></span></a>
  ${state.shut === 'plan' ? html`<a class="press wide" href="#bring"><span>${words('doubt-plan-bring')}</span></a>` : nothing}
  <a class="press wide" href="low.html"><span>${words('low-page')}</span></a></main></div>`;

// The core refuses the record or the plan as a whole: the words that are left are those that were written down.
export const unread = (state, words, send) => html`<div class="sheet"><div class="block"><h1 tabindex="-1">${words('unread-title')}</h1><p>${words('trouble-what')}</p></div><main id="main">
  ${said(state)}
  ${state.dosesWritten.length ? timetable(state.dosesWritten.slice(0, 1)) : html`<p class="note">${words('doubt-none')}</p>`}
  <a class="press now wide" href="danger.html"><span>${words('shut-who')}<span class="sub">${words('shut-who-sub')}</span></span></a>
  <div class="cells answers">${save(words, send)}
    ${state.school ? state.school.ways() : plain(words('other-plan'), () => send('open', 'first'), words('other-plan-sub'))}
    <a class="press wide" href="./"><span>${words('trouble-again')}</span></a></div>
  ${written(state, words)}
  <ul class="lines">${state.unread.slice(0, 3).map(({ path, reason }) => html`<li><bdi dir="ltr">${path} ${reason}</bdi></li>`)}</ul></main></div>`;
