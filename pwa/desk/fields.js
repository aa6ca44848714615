// One field of the sheet: label, entry, unit, range, one line of explanation, and what the review found there. A number is typed
// on our own keypad on a phone and as plain text on a laptop; what it may be was told by the core.
import { html, nothing } from '../vendor/lit-html.js';
import { level } from './parts.js';
import { isBlank, get, textAt } from './tree.js';
import { touches } from './place.js';
import { reasonWords } from './refusals.js';

export const idOf = path => `f-${path.replaceAll('/', '-')}`;
const pattern = path => `/plan/${path.replace(/\/[0-9]+(?=\/|$)/g, '/*')}`;

const counted = (view, words) => ({ glucose: () => view.unit || words('unit-of-plan'), glucosePerUnit: () => words('unit-per-unit', { unit: view.unit || words('unit-of-plan') }), gramsPerUnit: () => words('unit-grams-per-unit'),
  unitsPerHour: () => words('unit-per-hour'), units: () => words('unit-units'), hours: () => words('unit-hours'), minutes: () => words('unit-minutes'), grams: () => words('unit-grams'), kg: () => words('unit-kg'), days: () => words('unit-days'),
  ketones: () => words('unit-ketones'), share: () => words('unit-share'), unitsPerKg: () => words('unit-per-kg'), times: () => words('unit-times'), count: () => '', unitsPerMl: () => words('unit-per-ml') });
const dependsOnUnit = new Set(['glucose', 'glucosePerUnit']);

export const rangeOf = (view, path) => {
  const cell = /\/(shareOfDaily|perKg|timesCorrection|addUnits)$/.exec(path);
  return view.ranges[cell && path.startsWith('ketones/') ? `cell/${cell[1]}` : pattern(path)];
};
export const unitOf = (view, words, path) => { const range = rangeOf(view, path); return range ? counted(view, words)[range.counts]() : ''; };
const plainEnd = text => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
export const rangeWords = (view, words, path) => {
  const range = rangeOf(view, path);
  if (!range || range.choices) return '';
  if (dependsOnUnit.has(range.counts) && !view.unit) return words('range-unit-first');
  const [from, to] = [range.from, range.to].map(text => plainEnd(text).replace('.', view.mark));
  return from === to ? words('range-only', { only: from }) : words('range', { from, to });
};

// What stands against a field: a refusal of the core, which says what would be accepted, or a finding of the review.
export const against = (view, words, path) => {
  const refusals = view.refused.filter(entry => touches(path, entry.path) && !(entry.reason === 'missing' || isBlank(get(view.tree, path))));
  const findings = view.findings.filter(entry => touches(path, entry.path));
  if (!refusals.length && !findings.length) return nothing;
  return html`<ul class="against" id=${`${idOf(path)}-found`}>${refusals.map(entry => html`<li>${level('refuse', words)} <span>${reasonWords(entry, words, view)}</span></li>`)}
    ${findings.map(entry => html`<li>${level(entry.retyped ? 'settled' : entry.level, words)} <span>${words(`finding-${entry.id}`, entry.slots)}</span></li>`)}</ul>`;
};

export const numberBox = (view, words, act, path, label, { bare = false } = {}) => {
  const text = textAt(view.tree, path, view.mark);
  const unit = bare ? '' : unitOf(view, words, path);
  return html`<span class="box">${view.phone
    ? html`<button type="button" class="in" id=${idOf(path)} aria-label=${`${label}: ${text || words('field-type')}`} @click=${() => act.openEntry(path, label)}>${text || words('field-type')}</button>`
    : html`<input class="in num" id=${idOf(path)} inputmode="decimal" autocomplete="off" spellcheck="false" aria-label=${label} .value=${text}
      @focus=${() => act.focus(path)} @input=${event => act.number(path, event.target)}>`}${unit ? html`<span class="unit">${unit}</span>` : nothing}</span>`;
};
export const textBox = (view, act, path, label, { size = '', mode } = {}) => html`<input class="in ${size}" id=${idOf(path)} autocomplete="off" spellcheck="false" aria-label=${label} inputmode=${mode ?? 'text'}
  .value=${textAt(view.tree, path, view.mark)} @focus=${() => act.focus(path)} @input=${event => act.text(path, event.target)}>`;
export const choiceBox = (view, words, act, path, label, options) => {
  const node = get(view.tree, path);
  const value = node === undefined || node === null ? '' : typeof node === 'object' ? node.n : String(node);
  return html`<select class="in" id=${idOf(path)} aria-label=${label} @focus=${() => act.focus(path)} @change=${event => act.choose(path, event.target.value)}>
    <option value="" ?selected=${value === ''}>${words('field-choose')}</option>
    ${options.map(([key, said]) => html`<option value=${key} ?selected=${value === key}>${said}</option>`)}</select>`;
};

const readBack = (view, words, field) => {
  const text = textAt(view.tree, field.path, view.mark);
  return field.kind === 'day' && /^[0-9]{4}-(0[1-9]|1[0-2])-[0-9]{2}$/.test(text) ? html`<span class="said">${view.dayWords(text)}</span>` : nothing;
};

const simple = {
  number: (view, words, act, field) => numberBox(view, words, act, field.path, words(field.label)),
  text: (view, words, act, field) => textBox(view, act, field.path, words(field.label)),
  day: (view, words, act, field) => textBox(view, act, field.path, words(field.label), { size: 'short', mode: 'numeric' }),
  choice: (view, words, act, field) => choiceBox(view, words, act, field.path, words(field.label), field.options.map(([key, said]) => [key, words(said)])),
  pick: (view, words, act, field) => html`<span class="box">${choiceBox(view, words, act, field.path, words(field.label), (rangeOf(view, field.path)?.choices ?? []).map(text => [text, text.replace('.', view.mark)]))}<span class="unit">${words('unit-units')}</span></span>`,
  ticks: (view, words, act, field) => html`<span class="tick-row" role="group" aria-label=${words(field.label)}>${field.options.map(([key, said]) => {
    const on = (get(view.tree, field.path) ?? []).includes(key);
    return html`<label class="tick"><input type="checkbox" .checked=${on} @change=${() => act.toggle(field.path, key)}><span>${words(said)}</span></label>`; })}</span>`,
};

// A list says unit and range once, for all its entries.
const oneOf = { schedule: path => `${path}/0/value`, minutes: path => `${path}/0` };
export const wrapped = (view, words, field, entry) => {
  const one = oneOf[field.kind]?.(field.path);
  const unit = one ? unitOf(view, words, one) : '';
  const said = [unit ? words('help-unit', { unit }) : '', rangeWords(view, words, one ?? field.path), words(field.help)].filter(Boolean).join(' ');
  const missing = !field.optional && isBlank(get(view.tree, field.path)) && field.kind !== 'table';
  return html`<div class="field ${view.focused === field.path ? 'in-hand' : ''}"><div class="fname"><span>${words(field.label)}</span>${field.optional ? html` <i>${words('field-optional')}</i>` : nothing}${missing ? html` ${level('missing', words)}` : nothing}</div>
    ${entry}${readBack(view, words, field)}<p class="help">${said}</p>${against(view, words, field.path)}</div>`;
};

export const simpleField = (view, words, act, field) => wrapped(view, words, field, simple[field.kind](view, words, act, field));
export const isSimple = field => Boolean(simple[field.kind]);
