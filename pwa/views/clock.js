// The questions about this phone's clock: is this the time, and when was it that something was written by a clock that was wrong.
import { html, nothing } from '../vendor/lit-html.js';
import { clockpad, clockText, half, main, plain, question, sheet } from './parts.js';
import { callTeam } from './ring.js';

const help = words => html`<p class="note"><a href="danger.html">${words('danger-page')}</a></p><p class="note"><a href="low.html">${words('low-page')}</a></p>`;
const thisTime = (state, words, why) => html`<div class="holdbox"><h1 tabindex="-1">${words('time-question')}</h1>
  <p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p><p>${state.dayWords(state.now.text.slice(0, 10))}</p>${why ? html`<p class="say">${why}</p>` : nothing}</div>`;
// Nobody is kept here: what was answered can be looked at, and so can what comes first off the pump.
const aside = (state, words, send) => (state.panel?.waitsForTime ? plain(words('back'), () => send('timeLater'))
  : state.draft && !state.draft.run ? plain(words('change-answers'), () => send('open', 'answersGiven')) : nothing);
const answers = (words, send) => html`${main(words('time-yes'), () => send('timeRight'))}${plain(words('time-no'), () => send('timeWrong'))}`;

// Once after every start, before the first dose is in sight.
export const rightTime = (state, words, send) => sheet(state, words, html`${thisTime(state, words)}
  <div class="end">${answers(words, send)}${aside(state, words, send)}</div>
  ${state.lastInjected && !state.school ? html`<p class="lede">${words('time-last', state.lastInjected)}</p>${plain(words('time-last-other'), () => send('timeOfLast'))}` : nothing}`);

// The clock was set while the page was open.
export const clockJumped = (state, words, send) => sheet(state, words, html`${thisTime(state, words, words('time-was-set'))}
  <div class="end">${answers(words, send)}${state.draft || state.panel ? aside(state, words, send) : plain(words('time-test-first'), () => send('start'))}</div>${help(words)}`);

export const clockWrong = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('time-wrong')}</h1><p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p></div>
  <ul class="lines"><li>${words('clock-look')}</li><li>${words('time-set')}</li><li>${words('clock-call')}</li></ul>
  <div class="end">${main(words('clock-again'), () => send('timeAgain'))}${callTeam(state, words)}${aside(state, words, send)}</div>${help(words)}`);

export const whenWasIt = (state, words, send) => {
  const { text, clock, ahead, meant } = state.wrongEntry;
  const ago = minutes => () => send('whenWasIt', minutes);
  return sheet(state, words, html`${question('', words('when-question', { text }), words('when-written', { clock }))}
  <div class="end cells">${meant ? main(words('at-shown', { clock: meant }), () => send('whenMeant'), words('when-meant')) : nothing}
  ${ahead ? nothing : plain(words('when-as-written', { clock }), () => send('whenAsWritten'))}</div>
  <div class="pair others">${half(words('just-now'), ago(0))}${half(words('when-half'), ago(30))}${half(words('when-one'), ago(60))}${half(words('when-two'), ago(120))}</div>
  ${plain(words('when-type'), () => send('whenType'))}`);
};

export const whenTyped = (state, words, send) => sheet(state, words, html`${question('', words('entry-when'), state.wrongEntry.text)}
  ${clockpad(state, words, send)}
  <div class="end">${state.pad.digits.length === 4 ? main(state.yesterday ? words('entry-yes-yesterday', { clock: clockText(state.pad.digits) }) : words('entry-yes-clock', { clock: clockText(state.pad.digits) }), () => send('whenTyped'))
    : plain(words('back'), () => send('timeAgain'))}</div>`);

// A wrong time that seems to lie ahead closes every dose until the team knows of it.
export const clockTell = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('tell-title')}</h1><p class="say">${words('tell-why')}</p></div>
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  ${callTeam(state, words, { now: true })}
  <div class="pair">${half(words('call-answered'), () => send('clockTold', true))}${half(words('call-no-answer'), () => send('clockTold', false))}</div>`);
