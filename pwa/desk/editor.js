// The sheet on one side, what it leads to on the other; on a phone one below the other.
import { html, noChange, nothing } from '../vendor/lit-html.js';
import { curve } from './curve.js';
import { doseTable } from './dosetable.js';
import { isSimple, simpleField, wrapped } from './fields.js';
import { cellBox, ketoneTable } from './ketones.js';
import { lists } from './lists.js';
import { desk, level, link, press } from './parts.js';
import { isThere, placeWords, touches } from './place.js';
import { publishedChoice } from './published.js';
import { reasonWords } from './refusals.js';
import { sheet } from './sheet.js';
import { get, isBlank } from './tree.js';
import { yardsticks } from './yardsticks.js';

const fieldOf = (view, words, act, field) => {
  if (isSimple(field)) return simpleField(view, words, act, field);
  if (field.kind === 'table') return html`<div class="field whole">${publishedChoice(view, words, act)}${ketoneTable(view, words, act)}</div>`;
  if (field.kind === 'cell') return wrapped(view, words, field, cellBox(view, words, act, field.path, words(field.label)));
  return wrapped(view, words, field, lists[field.kind](view, words, act, field));
};

const part = (view, words, act, entry, at) => html`<section class="part" id=${`part-${entry.id}`} aria-labelledby=${`head-${entry.id}`}>
  <h2 id=${`head-${entry.id}`}><span class="sq ${view.focusedPart === entry.id ? 'now' : ''}">${at + 1}</span>${words(entry.title)}</h2><p class="help">${words(entry.help)}</p>
  ${entry.fields.map(field => fieldOf(view, words, act, field))}</section>`;

// A part that would be drawn as it stands is not drawn again: a key must be followed by its table at once, on a slow phone too.
// Equal subtrees of the draft are the same object, so comparing costs next to nothing.
const drawn = new Map();
const sameAs = (key, values) => {
  const last = drawn.get(key);
  drawn.set(key, values);
  return last?.length === values.length && values.every((value, at) => value === last[at]);
};
export const redrawAll = () => drawn.clear();
const partOnce = (view, words, act, entry, at, said) => {
  const inHand = view.focusedPart === entry.id ? view.focused : null;
  return sameAs(entry.id, [...entry.fields.map(field => get(view.tree, field.path)), said.filter(([field]) => entry.fields.includes(field)).map(([, text]) => text).join(), view.unit, view.mark, view.phone, view.ranges, inHand, ...(entry.id === 'ketones' ? [view.published, view.tree.high] : [])])
    ? noChange : part(view, words, act, entry, at);
};

// A place that is empty is missing, whatever the core calls it; a place with something in it is wrong.
export const isMissing = (view, entry) => entry.reason === 'missing' || (isThere(view.tree, entry.path) && isBlank(get(view.tree, entry.path.replace(/^\/plan\/?/, ''))));

// House rules are agreed on the page of the agreement, not on the sheet.
const onSheet = view => view.findings.filter(entry => !entry.path.startsWith('/plan/agreement/houseRules'));

const found = (view, words, act) => html`<section class="found" aria-labelledby="found"><h2 id="found">${words('findings-title')}</h2>
  ${view.refused.length || onSheet(view).length ? nothing : html`<p class="help">${words('findings-none')}</p>`}
  <ul class="findings">${[...view.refused].sort((a, b) => isMissing(view, a) - isMissing(view, b)).map(entry => html`<li>${level(isMissing(view, entry) ? 'missing' : 'refuse', words)}
      <div><p>${link(placeWords(view.tree, entry.path, words, view.mark), () => act.goTo(entry.path))}</p>${isMissing(view, entry) ? nothing : html`<p>${reasonWords(entry, words, view)}</p>`}</div></li>`)}
    ${onSheet(view).map(entry => html`<li>${level(entry.retyped ? 'settled' : entry.level, words)}<div><p>${words(`finding-${entry.id}`, entry.slots)}</p>
      <p class="help">${link(placeWords(view.tree, entry.path, words, view.mark), () => act.goTo(entry.path))} <span>${entry.source ? words('ground-source', { mark: entry.mark, source: entry.source }) : words('ground-mark', { mark: entry.mark })}</span></p></div></li>`)}</ul>
  ${view.refused.length === 20 ? html`<p class="help">${words('findings-more')}</p>` : nothing}</section>`;

export const counts = (view, words) => {
  const missing = view.refused.filter(entry => isMissing(view, entry)).length;
  const wrong = view.refused.length - missing + onSheet(view).filter(entry => entry.level === 'refuse').length;
  const retype = view.findings.filter(entry => entry.level === 'confirm' && !entry.retyped).length;
  const said = [];
  if (missing) said.push(view.refused.length === 20 ? words('count-missing-more', { count: String(missing) }) : words('count-missing', { count: String(missing) }));
  if (wrong) said.push(words('count-refused', { count: String(wrong) }));
  if (retype) said.push(words('count-retype', { count: String(retype) }));
  return said.length ? said.join(', ') : words('count-none');
};

// What was found, each with the field it stands at.
const allFields = sheet.flatMap(entry => entry.fields);
const saidAt = view => [...view.refused, ...view.findings].map(one => [allFields.find(field => touches(field.path, one.path)), JSON.stringify(one)]);

// While a number is being typed the plan cannot be read for a key or two. The table is not shown then, nor read out, but it keeps
// its place: to build it anew and lay it out with the next key took a slow machine longer than everything else.
const placeOf = view => (view.table ? 'keeps-place' : 'keeps-place unreadable');

// A column where there is room for one, a fold where there is not.
const yards = (view, words) => html`<p class="help">${words('yardsticks-help')}</p>${view.table ? nothing : html`<p class="help">${words('yardsticks-not-yet')}</p>`}
  <div class=${placeOf(view)}>${!view.table || sameAs('yardsticks', [JSON.stringify([view.yardsticks, view.findings.map(entry => entry.path)]), view.mark, view.roomy]) ? noChange : yardsticks(view, words)}</div>`;

export const editor = (view, words, act) => desk(view, words, html`
  <div class="editor-head"><h1 tabindex="-1">${words('editor-title')}</h1><p class="counts" role="status">${counts(view, words)}</p>
    ${press(words('editor-review'), () => act.page('agree'), { sub: words('editor-review-sub') })}</div>
  <div class="two ${view.roomy ? 'three' : ''}"><div class="left">${view.roomy ? nothing : html`<details class="jump yards" ?open=${view.yardsOpen} @toggle=${event => { view.yardsOpen = event.target.open; }}><summary>${words('yardsticks-title')}</summary>${yards(view, words)}</details>`}<details class="jump"><summary>${words('editor-parts')}</summary><ol>${sheet.map(entry => html`<li>${link(words(entry.title), () => act.scrollTo(`part-${entry.id}`))}</li>`)}</ol></details>
      ${(said => sheet.map((entry, at) => partOnce(view, words, act, entry, at, said)))(saidAt(view))}</div>
    <div class="right"><div class="led-to">${view.table ? nothing : html`<section class="leads"><h2>${words('doses-title')}</h2><p class="help">${words('doses-not-yet')}</p></section>`}
        <div class=${placeOf(view)}>${view.table ? doseTable(view, words, act) : noChange}</div></div>
      ${found(view, words, act)}<div class=${placeOf(view)}>${!view.table || sameAs('curve', [view.curve, view.mark]) ? noChange : curve(view, words)}</div></div>
    ${view.roomy ? html`<aside class="yards" tabindex="0" aria-labelledby="yardsticks"><h2 id="yardsticks">${words('yardsticks-title')}</h2>${yards(view, words)}</aside>` : nothing}</div>`, { wide: true });
