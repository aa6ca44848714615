// Waking up for a look. No page can wake a sleeper by itself, so this one says so, hands the looks to the phone's calendar, and as a
// watch keeps the screen on, dimmed, and sounds at the look. Fetched when somebody opens it; nothing here decides anything.
import { html, nothing } from '../vendor/lit-html.js';
import { foot, main, plain, sheet } from '../views/parts.js';
import { save } from '../save.js';
import { string } from '../text.js';
import { sound } from './sound.js';

// What the watch is doing. It is not kept: after a reload the sound has to be tried again before anybody relies on it.
const watch = { on: false, tried: false, unheard: false, lock: null, lost: false };
const tone = sound();
const testSeconds = 3, alarmSeconds = 3600;

export const wake = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('wake-title')}</h1></div>
  <p class="lede">${words('cannot-wake')}</p>
  ${state.next ? html`<p class="lede">${words('wake-alarm', { clock: state.next.clock })}</p>` : nothing}
  <p class="lede">${words('lines-set-alarm-2')}</p>
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  <div class="cells answers">
    ${state.next ? plain(words('wake-watch'), () => send('watchOpen'), words('wake-watch-sub')) : nothing}
    ${state.next ? plain(words('wake-calendar'), () => send('calendar'), words('wake-calendar-sub')) : nothing}
    ${plain(words('back'), () => send('close'))}</div>`);

// First the sound: somebody who never heard it would sleep on.
const trial = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${watch.tried ? words('watch-heard') : words('watch-try')}</h1></div>
  <p class="lede">${watch.unheard ? words('watch-unheard') : words('watch-mute')}</p>
  ${watch.unheard ? html`<p class="lede">${words('cannot-wake')}</p>` : nothing}
  <div class="end">${watch.tried ? html`${main(words('watch-yes'), () => send('watchOn'))}${plain(words('watch-no'), () => send('watchUnheard'))}`
    : main(words('watch-play'), () => send('watchTry'))}${plain(words('back'), () => send('watchOff'))}</div>`);

const face = (state, words, send) => html`<div class="sheet watching"><main id="main">
  ${state.next?.overdue ? html`<div class="lead-time"><h1 tabindex="-1">${words('watch-now')}</h1><p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p></div>
    <div class="end">${main(words('watch-awake'), () => send('watchAwake'), words('test-now-sub'))}</div>`
    : html`<div class="lead-time"><h1 tabindex="-1">${state.next ? words('watch-until', { clock: state.next.clock }) : words('no-look')}</h1><p class="clock"><bdi dir="ltr">${state.now.clock}</bdi></p></div>
    <p class="lede" role="status">${watch.lost ? words('watch-lost') : words('watch-kept')}</p>
    <div class="end">${watch.lost ? main(words('watch-again'), () => send('watchHold')) : nothing}${plain(words('watch-stop'), () => send('watchOff'))}</div>`}
  </main>${foot(state, words)}</div>`;

export const watchView = (state, words, send) => (watch.on ? face(state, words, send) : trial(state, words, send));

export const actions = tools => {
  const { state, words, clock } = tools;
  let beat;
  // The screen stays on while the phone allows it. When it lets go, that is said at once.
  const hold = async () => {
    watch.lost = false;
    try {
      watch.lock = await navigator.wakeLock.request('screen');
      watch.lock.addEventListener('release', () => { watch.lost = watch.on; tools.refresh(); });
    } catch { watch.lost = true; }
  };
  // At the look it sounds until somebody taps. The core says when a look is due.
  const listen = () => {
    if (!watch.on) return;
    if (state.next?.overdue && !tone.sounding()) {
      tone.start(alarmSeconds);
      // Where the page is not in sight, what the phone shows may still be.
      if (document.hidden) navigator.serviceWorker?.ready.then(keeper => keeper.showNotification(words('watch-now'), { tag: 'look', requireInteraction: true })).catch(() => {});
    }
    if (!state.next?.overdue && tone.sounding()) tone.stop();
  };
  const off = async () => {
    Object.assign(watch, { on: false, tried: false, unheard: false, lost: false });
    clearInterval(beat);
    tone.end();
    await watch.lock?.release().catch(() => {});
    watch.lock = null;
  };
  document.addEventListener('visibilitychange', () => { if (watch.on && !document.hidden) hold().then(tools.refresh); });

  return {
    watchOpen() { state.panel = { name: 'watch', ids: {} }; },
    async watchTry() { await tone.ready(); tone.stop(); tone.start(testSeconds); Object.assign(watch, { tried: true, unheard: false }); },
    watchUnheard() { tone.stop(); Object.assign(watch, { tried: false, unheard: true }); },
    async watchOn() {
      tone.stop();
      watch.on = true;
      await hold();
      // Asked within the tap; whatever the answer, the watch goes on.
      globalThis.Notification?.requestPermission?.().catch(() => {});
      beat = setInterval(() => { tools.refresh().then(listen); }, 5000);
    },
    async watchHold() { await hold(); },
    async watchOff() { await off(); state.panel = null; },
    async watchAwake() { await off(); state.panel = null; await tools.deed('start'); },
    calendar() {
      const answer = tools.ask('reminders', { now: string(clock().text), words: string(words('calendar-words')) });
      if (answer.refused) throw new Error(`reminders: ${JSON.stringify(answer.refused)}`);
      if (!answer.ics) { state.said = words('no-look'); return; }
      save('stopgap.ics', 'text/calendar', answer.ics);
      state.said = words('calendar-said');
    },
  };
};
