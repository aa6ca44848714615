// One number typed on our own keypad, on a phone. The field's range and its explanation stand below the figure.
import { html, nothing } from '../vendor/lit-html.js';
import { keypad } from '../views/parts.js';
import { desk, press } from './parts.js';
import { rangeWords, unitOf } from './fields.js';

export const entry = (view, words, act) => desk(view, words, html`
  <div class="ask"><h1 tabindex="-1">${view.entry.label}</h1></div>
  ${keypad({ pad: view.entry.pad, mark: view.mark }, words, act.pad, { unit: unitOf(view, words, view.entry.counts) })}
  <p class="help">${[view.entry.now ? words('entry-now', { text: view.entry.now }) : '', rangeWords(view, words, view.entry.counts)].filter(Boolean).join(' ')}</p>
  <div class="cells end">${view.entry.pad.digits ? press(words('entry-put', { text: view.entry.pad.digits }), () => act.closeEntry(true), { now: true }) : nothing}
    ${press(words('entry-leave'), () => act.closeEntry(false))}${view.entry.now ? press(words('entry-clear'), () => act.clearEntry()) : nothing}</div>`);
