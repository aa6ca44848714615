// Published ketone tables as a starting point. Nothing of them is in the plan until each edge and each cell is put in by itself;
// every cell shows its source and its mark. What is only remembered stays off until somebody asks to see it.
import { html, nothing } from '../vendor/lit-html.js';
import { press } from './parts.js';
import { get, isBlank, number, textAt } from './tree.js';
import { fetched } from '../checked.js';
import { trimmed } from '../text.js';

export const tables = ['se-ketones', 'landspitali', 'know', 'rch-sick-inj', 'chop-path', 'forth', 'wtd', 'oxford-inj', 'fi-ketones', 'ispad-sick'];

export const load = async name => (await fetched(`desk/tables/${name}.json`)).json();

// Two decimal texts in order, without reading either as a float.
export const before = (a, b) => {
  const [[wholeA, partA = ''], [wholeB, partB = '']] = [a, b].map(text => text.split('.'));
  if (wholeA.length !== wholeB.length) return wholeA.length < wholeB.length;
  return wholeA === wholeB ? partA < partB.replace(/0+$/, '') && trimmed(a) !== trimmed(b) : wholeA < wholeB;
};
const same = (a, b) => a !== '' && trimmed(a) === trimmed(b);
const edges = (view, path) => (get(view.tree, path) ?? []).map((_, at) => textAt(view.tree, `${path}/${at}${path.endsWith('rows') ? '/from' : ''}`, '.'));

const amountWords = (amount, words, mark) => {
  if (amount === 'none') return words('cell-none');
  const [[kind, text]] = Object.entries(amount);
  return { shareOfDaily: slot => words('printed-share', slot), perKg: slot => words('printed-per-kg', slot), timesCorrection: slot => words('printed-times', slot), addUnits: slot => words('printed-add', slot) }[kind]({ number: text.replace('.', mark) });
};
const alsoWords = words => ({ recheck: () => words('printed-recheck'), perhaps: () => words('printed-perhaps'), eat: () => words('printed-eat'), eatInsulin: () => words('printed-eat-insulin'), repeat: () => words('printed-repeat'),
  meal: () => words('printed-meal'), call: () => words('printed-call'), emergency: () => words('printed-emergency'), ordinary: () => words('printed-ordinary'), high: () => words('printed-high') });

const usable = view => view.published && view.published.table && (view.published.table.mark !== 'MEMORY' || view.published.memory) && (!view.published.table.unit || view.published.table.unit === view.unit);

export const asCell = amount => {
  if (amount === 'none') return 'none';
  const [[kind, text]] = Object.entries(amount);
  return kind === 'timesCorrection' ? { timesCorrection: number(text), fallback: null } : { [kind]: number(text) };
};

// Beside a cell of the plan: what the laid table prints there.
export const inactive = (view, words, act, row, column) => {
  if (!usable(view)) return nothing;
  const { table } = view.published;
  const r = table.rows.findIndex(edge => same(edges(view, 'ketones/rows')[row] ?? '', edge));
  const c = table.columns.length === 1 ? 0 : table.columns.findIndex(edge => same(edges(view, 'ketones/columns')[column] ?? '', edge));
  const printed = table.cells[r]?.[c];
  if (!printed) return nothing;
  const path = `ketones/rows/${row}/cells/${column}`;
  const there = JSON.stringify(get(view.tree, path));
  const open = (printed.amounts ?? []).filter(amount => JSON.stringify(asCell(amount)) !== there);
  const also = (printed.also ?? []).map(key => alsoWords(words)[key]()).join(' ');
  return html`<div class="inactive"><p>${open.length < (printed.amounts ?? []).length ? words('printed-same') : words('printed-inactive')} ${also} <span class="mark">${table.source}, ${table.mark}</span></p>
    ${open.map(amount => html`<button type="button" class="press small" @click=${() => act.put(path, asCell(amount))}>${words('printed-put', { amount: amountWords(amount, words, view.mark) })}</button>`)}</div>`;
};

const missingEdges = (view, words, act) => {
  const { table } = view.published;
  const wanted = (list, path) => list.filter(edge => !edges(view, path).some(there => same(there, edge)));
  return html`${wanted(table.rows, 'ketones/rows').map(edge => html`<button type="button" class="press small" @click=${() => act.putRow(edge)}>${words('printed-row', { edge: edge.replace('.', view.mark) })}</button>`)}
    ${table.columns.length === 1 ? nothing : wanted(table.columns, 'ketones/columns').map(edge => html`<button type="button" class="press small" @click=${() => act.putColumn(edge)}>${words('printed-column', { edge: edge.replace('.', view.mark) })}</button>`)}`;
};

export const publishedChoice = (view, words, act) => {
  const { table, memory, name } = view.published ?? {};
  const off = table && table.mark === 'MEMORY' && !memory;
  const otherUnit = table?.unit && table.unit !== view.unit;
  return html`<div class="published"><label class="fname" for="published">${words('published')}</label>
    <select class="in" id="published" @change=${event => act.lay(event.target.value)}><option value="" ?selected=${!name}>${words('published-none')}</option>
      ${tables.map(one => html`<option value=${one} ?selected=${name === one}>${one}</option>`)}</select>
    <p class="help">${words('published-help')}</p>
    ${table ? html`<p class="help">${words('published-source', { source: table.source, place: table.place, mark: table.mark })}</p>` : nothing}
    ${otherUnit ? html`<p class="note">${words('published-other-unit', { unit: table.unit })}</p>` : off ? html`<p class="note">${words('published-memory')}</p>${press(words('published-memory-show'), () => act.showMemory())}` : nothing}
    ${usable(view) ? html`<div class="edges-put">${missingEdges(view, words, act)}</div>` : nothing}</div>`;
};
export const isLaid = view => Boolean(usable(view)) && !isBlank(view.published.table.cells);
