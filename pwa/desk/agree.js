// Review and agreement on one page, from top to bottom: what stops it, what is retyped with a reason, what changed, which house
// rules, who and when. The button at the end agrees only when nothing is left open; what is open is named there.
import { html, nothing } from '../vendor/lit-html.js';
import { doseTable } from './dosetable.js';
import { idOf, textBox } from './fields.js';
import { isMissing } from './editor.js';
import { desk, level, link, press } from './parts.js';
import { placeWords } from './place.js';
import { reasonWords } from './refusals.js';
import { get, textAt } from './tree.js';

const houseNames = words => ({ rollingShare: () => words('house-rollingShare'), matchedCarbohydrate: () => words('house-matchedCarbohydrate'), extraNotReduced: () => words('house-extraNotReduced') });

const blocking = (view, words, act) => html`<section class="part"><h2><span class="sq">1</span>${words('agree-refused-title')}</h2>
  ${view.blocked.length ? html`<ul class="findings">${view.blocked.map(entry => html`<li>${level(entry.reason && isMissing(view, entry) ? 'missing' : 'refuse', words)}<div>
    <p>${link(placeWords(view.tree, entry.path, words, view.mark), () => act.fix(entry.path))}</p>${entry.id ? html`<p>${words(`finding-${entry.id}`, entry.slots)}</p>` : isMissing(view, entry) ? nothing : html`<p>${reasonWords(entry, words, view)}</p>`}</div></li>`)}</ul>`
    : html`<p class="help">${words('agree-refused-none')}</p>`}</section>`;

// On a phone a number is typed again on our own keypad, as everywhere on the sheet.
const again = (view, words, act, entry) => (view.phone && entry.isNumber
  ? html`<button type="button" class="in num" id=${`retype-${entry.key}`} aria-label=${`${words('agree-retype-again', { place: entry.place })}: ${entry.typed || words('field-type')}`} @click=${() => act.openRetype(entry)}>${entry.typed || words('field-type')}</button>`
  : html`<input class="in num" id=${`retype-${entry.key}`} inputmode=${entry.isNumber ? 'decimal' : 'text'} autocomplete="off" .value=${entry.typed} @input=${event => act.retype(entry, 'typed', event.target)}>`);

const retyping = (view, words, act) => html`<section class="part"><h2><span class="sq">2</span>${words('agree-retype-title')}</h2>
  ${view.toRetype.length ? html`<p class="help">${words('agree-retype-help')}</p><ul class="findings">${view.toRetype.map(entry => html`<li>${level(entry.settled ? 'settled' : 'confirm', words)}<div>
      <p>${words(`finding-${entry.id}`, entry.slots)}</p><p class="help">${link(entry.place, () => act.fix(entry.path))} ${entry.source ? words('ground-source', { mark: entry.mark, source: entry.source }) : words('ground-mark', { mark: entry.mark })}</p>
      ${entry.before ? html`<p class="help">${entry.isNamed ? words('agree-reason-before', { reason: entry.before }) : words('agree-reason-earlier', { reason: entry.before })}</p>` : nothing}
      ${entry.field ? html`<label class="row"><span class="fname">${words('agree-retype-again', { place: entry.place })}</span>${again(view, words, act, entry)}</label>
        ${entry.typed && !entry.matches ? html`<p role="status">${words('agree-retype-differs', { typed: entry.typed })}</p>` : nothing}` : nothing}
      <label class="row"><span class="fname">${words('agree-reason', { place: entry.place })}</span><input class="in" id=${`reason-${entry.key}`} maxlength="240" autocomplete="off" .value=${entry.why} @input=${event => act.retype(entry, 'why', event.target)}></label></div></li>`)}</ul>`
    : html`<p class="help">${words('agree-retype-none')}</p>`}</section>`;

export const changeList = (view, words, changes) => html`<dl class="changes">${changes.map(change => html`<div><dt>${placeWords(change.kind === 'removed' ? view.olderTree : view.tree, change.path, words, view.mark)}</dt>
  <dd>${change.before === null ? html`<b>${words('change-new')}</b>` : html`<s><bdi>${change.before}</bdi></s>`} <span>${change.after === null ? html`<b>${words('change-gone')}</b>` : html`<b><bdi>${change.after}</bdi></b>`}</span></dd></div>`)}</dl>`;

const changed = (view, words, act) => (view.older ? html`<section class="part"><h2><span class="sq">3</span>${words('agree-changes-title', { revision: view.olderRevision })}</h2>
  ${view.changes === null ? html`<p class="help">${words('agree-changes-not-yet')}</p>` : view.changes.length ? html`${changeList(view, words, view.changes)}
    <label class="tick"><input type="checkbox" id="seen-changes" .checked=${view.seenChanges} @change=${() => act.seenChanges()}><span>${words('agree-changes-seen')}</span></label>` : html`<p class="help">${words('agree-changes-none')}</p>`}</section>` : nothing);

const rules = (view, words, act) => html`<section class="part"><h2><span class="sq">${view.older ? 4 : 3}</span>${words('agree-house-title')}</h2><p class="help">${words('agree-house-help')}</p>
  <ul class="house">${view.houseRules.map(name => html`<li><label class="tick"><input type="checkbox" id=${`house-${name}`} .checked=${(get(view.tree, 'agreement/houseRules') ?? []).includes(name)} @change=${() => act.toggle('agreement/houseRules', name, view.houseRules)}>
    <span>${(houseNames(words)[name] ?? (() => name))()}</span></label></li>`)}</ul></section>`;

const who = (view, words, act) => html`<section class="part"><h2><span class="sq">${view.older ? 5 : 4}</span>${words('agree-who-title')}</h2>
  ${view.ageFor ? html`<label class="tick"><input type="checkbox" id="age-seen" .checked=${view.ageSeen} @change=${() => act.ageSeen()}>
    <span>${words('agree-age', { name: view.person.name, day: view.dayWords(textAt(view.tree, 'person/born', view.mark)), years: String(view.ageYears) })}</span></label>` : nothing}
  ${['by', 'role'].map(key => html`<div class="field"><label class="fname" for=${idOf(`agreement/${key}`)}>${key === 'by' ? words('place-by') : words('place-role')}</label>${textBox(view, act, `agreement/${key}`, key === 'by' ? words('place-by') : words('place-role'))}</div>`)}
  <div class="field"><label class="fname" for="agreed-on">${words('place-on')}</label><input class="in short" id="agreed-on" inputmode="numeric" autocomplete="off" .value=${view.agreedOn} @input=${event => act.agreedOn(event.target)}><p class="help">${words('agree-on-help')}</p></div>
  <dl class="fields"><div><dt>${words('field-review-by')}</dt><dd>${textAt(view.tree, 'agreement/reviewBy', view.mark) || '–'}</dd></div></dl></section>`;

export const agree = (view, words, act) => desk(view, words, html`
  <h1 tabindex="-1">${words('agree-title')}</h1><p class="lede">${words('agree-lede')}</p>
  ${blocking(view, words, act)}${retyping(view, words, act)}${changed(view, words, act)}${rules(view, words, act)}${who(view, words, act)}
  ${view.table ? doseTable(view, words, act) : nothing}
  ${view.open.length ? html`<section class="part"><h2>${words('agree-open-title')}</h2><ul class="lines">${view.open.map(said => html`<li>${said}</li>`)}</ul></section>` : nothing}
  <div class="cells end">${view.open.length ? nothing : press(words('agree-do', { revision: view.revision }), () => act.agree(), { now: true, sub: words('agree-do-sub') })}
    ${press(words('agree-back'), () => act.page('edit'))}</div>`);
