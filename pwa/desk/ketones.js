// The ketone table as it is written: edges, cells, strip words, repeats and calls. A cell is one way of working out the extra.
import { html, nothing } from '../vendor/lit-html.js';
import { against, choiceBox, idOf, numberBox, rangeWords } from './fields.js';
import { link } from './parts.js';
import { get, isBlank, number, textAt } from './tree.js';
import { inactive } from './published.js';

export const cellWays = words => ({ none: words('cell-none'), shareOfDaily: words('cell-share'), perKg: words('cell-per-kg'), timesCorrection: words('cell-times'), addUnits: words('cell-add') });
const kinds = words => Object.entries(cellWays(words));
export const kindOf = node => (node === 'none' ? 'none' : node && typeof node === 'object' ? Object.keys(node).find(key => key !== 'fallback') ?? '' : '');
// Another way of counting has another number: the old one would mean something else.
export const cellOf = kind => (kind === '' ? null : kind === 'none' ? 'none' : kind === 'timesCorrection' ? { timesCorrection: number(''), fallback: null } : { [kind]: number('') });

export const cellBox = (view, words, act, path, name, { asFallback = false } = {}) => {
  const node = get(view.tree, path);
  const kind = kindOf(node);
  return html`<span class="cell-box"><select class="in" id=${idOf(path)} aria-label=${name} @focus=${() => act.focus(path)} @change=${event => act.put(path, cellOf(event.target.value))}>
      <option value="" ?selected=${kind === ''}>${words('field-choose')}</option>
      ${kinds(words).filter(([key]) => !asFallback || key !== 'timesCorrection').map(([key, said]) => html`<option value=${key} ?selected=${kind === key}>${said}</option>`)}</select>
    ${kind && kind !== 'none' ? numberBox(view, words, act, `${path}/${kind}`, words('cell-amount', { name })) : nothing}
    ${kind && kind !== 'none' ? html`<span class="help">${rangeWords(view, words, `${path}/${kind}`)}</span>` : nothing}
    ${kind === 'timesCorrection' ? html`<span class="help">${words('cell-fallback')}</span>${cellBox(view, words, act, `${path}/fallback`, words('cell-fallback-named', { name }), { asFallback: true })}` : nothing}</span>`;
};

const strips = ['negative', 'trace', 'small', 'moderate', 'large'];
const stripWords = words => ({ negative: words('urine-negative'), trace: words('urine-trace'), small: words('urine-small'), moderate: words('urine-moderate'), large: words('urine-large') });

const row = (view, words, act, at) => {
  const path = `ketones/rows/${at}`;
  const from = textAt(view.tree, `${path}/from`, view.mark) || '–';
  const columns = get(view.tree, 'ketones/columns') ?? [];
  return html`<li class="krow"><div class="krow-head">
      <span class="fname">${words('place-row-from')}</span>${at === 0 ? html`<span class="fixed"><bdi dir="ltr">${from}</bdi> ${words('unit-ketones')}</span>` : numberBox(view, words, act, `${path}/from`, words('place-nth', { name: words('place-row-from'), nth: String(at + 1) }))}
      ${at === 0 ? nothing : html`<button type="button" class="again" aria-label=${words('list-remove-named', { name: words('place-in-row', { name: words('place-row'), ketones: from }) })} @click=${() => act.drop(path)}>${words('list-remove')}</button>`}</div>
    <div class="kcells">${columns.map((_, column) => {
      const glucose = textAt(view.tree, `ketones/columns/${column}`, view.mark) || '–';
      return html`<div class="kcell"><span class="fname">${words('kcell-from', { glucose })}</span>${cellBox(view, words, act, `${path}/cells/${column}`, words('place-cell', { ketones: from, glucose }))}
        ${inactive(view, words, act, at, column)}${against(view, words, `${path}/cells/${column}`)}</div>`; })}</div>
    <div class="kcells"><div class="kcell"><span class="fname">${words('place-repeat')}</span>${numberBox(view, words, act, `${path}/repeatHours`, words('place-in-row', { name: words('place-repeat'), ketones: from }))}</div>
      <div class="kcell"><span class="fname">${words('place-call')}</span>${choiceBox(view, words, act, `${path}/call`, words('place-in-row', { name: words('place-call'), ketones: from }), [['none', words('call-none')], ['team', words('call-team-word')], ['emergency', words('call-emergency-word')]])}</div></div>
    <span class="tick-row" role="group" aria-label=${words('place-in-row', { name: words('place-urine'), ketones: from })}>${strips.map(strip => html`<label class="tick"><input type="checkbox"
      .checked=${(get(view.tree, `${path}/urine`) ?? []).includes(strip)} @change=${() => act.toggle(`${path}/urine`, strip, strips)}><span>${stripWords(words)[strip]}</span></label>`)}</span>
    ${['from', 'urine', 'repeatHours', 'call'].map(key => against(view, words, `${path}/${key}`))}</li>`;
};

export const ketoneTable = (view, words, act) => {
  const columns = get(view.tree, 'ketones/columns') ?? [];
  const rows = get(view.tree, 'ketones/rows') ?? [];
  return html`<div class="ktable"><div class="fname">${words('place-columns')}</div><p class="help">${rangeWords(view, words, 'ketones/columns/1')} ${words('help-columns')}</p><ol class="list edges">${columns.map((_, at) => {
      const name = words('place-nth', { name: words('place-column'), nth: String(at + 1) });
      return html`<li>${at === 0 ? html`<span class="fixed"><bdi dir="ltr">0</bdi> ${view.unit}</span>` : html`${numberBox(view, words, act, `ketones/columns/${at}`, name)}
        <button type="button" class="again" aria-label=${words('list-remove-named', { name })} @click=${() => act.dropColumn(at)}>${words('list-remove')}</button>`}${against(view, words, `ketones/columns/${at}`)}</li>`; })}
      <li>${link(words('list-add-column'), () => act.addColumn())}</li></ol>
    <p class="help">${words('help-rows', { from: rangeWords(view, words, 'ketones/rows/1/from'), repeat: rangeWords(view, words, 'ketones/rows/1/repeatHours') })}</p>
    <ol class="krows">${rows.map((_, at) => row(view, words, act, at))}</ol>
    <p>${link(words('list-add-row'), () => act.add('ketones/rows', { from: number(''), cells: columns.map(() => null) }))}</p>
    ${view.refused.some(entry => entry.path === '/plan/ketones/rows' && !isBlank(rows)) ? against(view, words, 'ketones/rows') : nothing}</div>`;
};
