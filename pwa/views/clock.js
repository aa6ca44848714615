// The questions about this phone's clock: is this the time, and when was it that something was written by a clock
// that was wrong.
import { html, nothing } from '../vendor/lit-html.js';
import { clockpad, clockText, half, main, plain, question, sheet } from './parts.js';
import { callTeam } from './ring.js';

const help = words => html`<p class="note"><a href="danger.html">${words('danger-page')}</a></p>
  <p class="note"><a href="low.html">${words('low-page')}</a></p>`;
// The hold at the foot was worked out by the clock that is in doubt: it is left out here.
const calm = { calm: true };
const largeTime = (state, title, line = nothing) => html`<div class="holdbox"><h1 tabindex="-1">${title}</h1>
  <p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p>
  <p>${state.dayWords(state.now.text.slice(0, 10))}${line}</p></div>`;
// Nobody is kept here: what was answered can be looked at, and so can what comes first off the pump.
const aside = (state, words, send) => {
  if (state.panel?.waitsForTime) return plain(words('back'), () => send('timeLater'));
  if (state.draft && !state.draft.run) return plain(words('change-answers'), () => send('open', 'answersGiven'));
  return nothing;
};
// Neither is the one to press half asleep.
const answers = (words, send) => html`<div class="pair">${half(words('time-yes'), () => send('timeRight'))}
  ${half(words('time-no'), () => send('timeWrong'))}</div>`;

// Once after every start, before the first dose is in sight.
export const rightTime = (state, words, send) => sheet(state, words, html`
  ${largeTime(state, words('time-question'))}
  <div class="end">${answers(words, send)}${aside(state, words, send)}</div>
  ${state.lastInjected && !state.school ? html`<p class="lede">${words('time-last', state.lastInjected)}</p>
    ${plain(words('time-last-other'), () => send('timeOfLast'))}` : nothing}`, calm);

// The clock was set while the page was open.
export const clockJumped = (state, words, send) => sheet(state, words, html`
  ${largeTime(state, words('time-question'), html`<br>${words('time-was-set')}`)}
  <div class="end">${answers(words, send)}
  ${state.draft || state.panel ? aside(state, words, send) : plain(words('time-test-first'), () => send('start'))}</div>
  ${help(words)}`, calm);

export const clockWrong = (state, words, send) => sheet(state, words, html`
  ${largeTime(state, words('time-wrong'))}
  <ul class="lines"><li>${words('clock-look')}</li><li>${words('time-set')}</li><li>${words('clock-call')}</li></ul>
  <div class="end">${main(words('clock-again'), () => send('timeAgain'))}${callTeam(state, words)}
    ${aside(state, words, send)}</div>
  ${help(words)}`, calm);

export const whenWasIt = (state, words, send) => {
  const { text, clock, ahead, meant } = state.wrongEntry;
  const ago = minutes => () => send('whenWasIt', minutes);
  return sheet(state, words, html`${question('', words('entry-when'), words('when-written', { clock, text }))}
  <div class="end cells">
    ${meant ? main(words('at-shown', { clock: meant }), () => send('whenMeant'), words('when-meant')) : nothing}
    ${ahead ? nothing : plain(words('when-as-written', { clock }), () => send('whenAsWritten'))}</div>
  <div class="pair">${half(words('just-now'), ago(0))}${half(words('when-half'), ago(30))}</div>
  <div class="pair">${half(words('when-one'), ago(60))}${half(words('when-two'), ago(120))}</div>
  ${plain(words('when-type'), () => send('whenType'))}`, calm);
};

export const whenTyped = (state, words, send) => {
  const { digits } = state.pad;
  const yes = typed => (state.yesterday ? words('entry-yes-yesterday', typed) : words('entry-yes-clock', typed));
  return sheet(state, words, html`${question('', words('entry-when'), state.wrongEntry.text)}
  ${clockpad(state, words, send)}
  <div class="end">${digits.length < 4 ? plain(words('back'), () => send('timeAgain'))
    : main(yes({ clock: clockText(digits) }), () => send('whenTyped'))}</div>`, calm);
};

// Of two times the later one counts until the team knows; one that lies ahead closes every dose.
export const clockTell = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('tell-title')}</h1><p>${words('tell-why')}</p></div>
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  ${callTeam(state, words, { now: true })}
  <div class="pair">${half(words('call-answered'), () => send('clockTold', true))}
    ${half(words('call-no-answer'), () => send('clockTold', false))}</div>`, calm);
