// One number typed on our own keypad, on a phone. The field's range and its explanation stand below the figure.
import { html, nothing } from '../vendor/lit-html.js';
import { keypad } from '../views/parts.js';
import { desk, press } from './parts.js';
import { rangeWords, unitOf } from './fields.js';

export const entry = (view, words, act) => desk(view, words, html`
  <div class="ask"><h1 tabindex="-1">${view.entry.label}</h1></div>
  ${keypad({ pad: view.entry.pad, mark: view.mark }, words, act.pad, { unit: unitOf(view, words, view.entry.path) })}
  <p class="help">${rangeWords(view, words, view.entry.path) || nothing}</p>
  <div class="cells end">${press(view.entry.pad.digits ? words('entry-put', { text: view.entry.pad.digits }) : words('entry-clear'), () => act.closeEntry(true), { now: true })}${press(words('entry-leave'), () => act.closeEntry(false))}</div>`);
