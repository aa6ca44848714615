// What the plan leads to: every dose by glucose and ketones, as the core worked it out. Nothing is counted here. A cell that
// changed since the field in hand was begun is framed, with its old dose struck through.
import { html, nothing } from '../vendor/lit-html.js';

const outcomeWords = words => ({ lowEmergency: () => words('cell-emergency'), emergency: () => words('cell-emergency'), tooMuch: () => words('cell-call'), treatLow: () => words('cell-sugar'), noPlan: () => words('cell-no-plan'), testGlucose: () => words('cell-finger'),
  eatNow: () => words('cell-eat'), testKetones: () => words('cell-test'), callTeam: () => words('cell-call'), comingDown: () => words('cell-eat'), eat: () => words('cell-eat'), wait: () => words('cell-wait'), correctByPump: () => words('cell-pump'),
  offPump: () => words('cell-off-pump'), changeSet: () => words('cell-change'), over: () => words('cell-look'), lookAgain: () => words('cell-look'), hold: () => words('cell-wait'), recordInDoubt: () => words('cell-call'), clockInDoubt: () => words('cell-look'), didYouInject: () => words('cell-look'),
  injectAtAnyGlucose: () => words('cell-inject'), inject: () => words('cell-inject'), eatAndInject: () => words('cell-inject') });

export const ruleWords = words => ({ LWE: () => words('rule-LWE'), EMR: () => words('rule-EMR'), TOO: () => words('rule-TOO'), LOW: () => words('rule-LOW'), FAL: () => words('rule-FAL'), PLN: () => words('rule-PLN'), FNG: () => words('rule-FNG'), TST: () => words('rule-TST'),
  NOS: () => words('rule-NOS'), CAL: () => words('rule-CAL'), ANY: () => words('rule-ANY'), DWN: () => words('rule-DWN'), KET: () => words('rule-KET'), EAT: () => words('rule-EAT'), INJ: () => words('rule-INJ'), WAI: () => words('rule-WAI'), PMP: () => words('rule-PMP'),
  SGN: () => words('rule-SGN'), OFF: () => words('rule-OFF'), CHG: () => words('rule-CHG'), END: () => words('rule-END'), NON: () => words('rule-NON') });

const gramsSaid = new Set(['treatLow', 'eatNow', 'eat', 'comingDown']);
const inCell = (cell, words) => {
  const grams = cell.grams ? words('cell-grams', { grams: cell.grams }) : '';
  if (!cell.dose) return html`${gramsSaid.has(cell.outcome) && grams ? `${outcomeWords(words)[cell.outcome]()} ${grams}` : outcomeWords(words)[cell.outcome]()}`;
  return html`<b>${cell.dose}</b>${cell.outcome === 'emergency' ? html` ${words('cell-and-go')}` : nothing}${grams && !cell.dose.startsWith('0 ') ? html` ${words('cell-eat')} ${grams}` : nothing}${cell.call === 'team' ? html` ${words('cell-and-call')}` : nothing}`;
};
const glucoseOf = (row, words) => ({ low: () => words('row-low', { glucose: row.glucose }), number: () => row.glucose, HI: () => words('row-hi') }[row.kind]());
const columnOf = (column, words) => (column.key === 'notTested' ? words('column-not-tested') : column.to ? words('column-range', { from: column.from, to: column.to }) : words('column-up', { from: column.from }));
const same = (a, b) => a && b && a.dose === b.dose && a.outcome === b.outcome && a.grams === b.grams && a.call === b.call;

const working = (table, at, words) => {
  const row = table.rows[at.row];
  const cell = row?.cells[at.column];
  if (!cell) return nothing;
  const lines = [words('working-place', { glucose: glucoseOf(row, words), ketones: columnOf(table.columns[at.column], words) }), words('working-rule', { rule: cell.decidedBy }), ruleWords(words)[cell.decidedBy]()];
  if (cell.dose && cell.chosen === 'extra') lines.push(words('working-by-extra'));
  if (cell.dose && cell.chosen === 'net') lines.push(words('working-by-net'));
  if (cell.dose) lines.push(words('working-dose', { dose: cell.dose }));
  if (cell.timesUsual) lines.push(words('working-times', { times: cell.timesUsual }));
  if (cell.cut) lines.push(words('working-cut'));
  return html`<p class="why" role="status">${lines.join(' ')}</p>`;
};

const oneTable = (view, words, act, table, older) => html`<div class="scroller" tabindex="0" role="region" aria-label=${words('doses-title')}><table class="doses"><thead><tr><th scope="col">${words('doses-glucose', { unit: view.unit })}</th><th scope="col">${words('doses-usual')}</th>
    ${table.columns.map(column => html`<th scope="col">${column.key === 'notTested' ? nothing : html`<span class="lbl">${words('doses-ketones')}</span>`}<span>${columnOf(column, words)}</span></th>`)}</tr></thead>
  <tbody>${table.rows.map((row, r) => html`<tr><th scope="row">${glucoseOf(row, words)}</th><td class="usual">${row.usual ?? ''}</td>${row.cells.map((cell, c) => {
    const old = older?.rows.length === table.rows.length && older.rows[r].cells.length === row.cells.length ? older.rows[r].cells[c] : null;
    const changed = old && !same(old, cell);
    const chosen = view.cell && view.cell.row === r && view.cell.column === c;
    return html`<td class="${changed ? 'changed' : ''} ${chosen ? 'chosen' : ''}"><button type="button" aria-pressed=${chosen ? 'true' : 'false'} @click=${() => act.cell({ row: r, column: c })}>${changed && old.dose ? html`<s>${old.dose}</s> ` : nothing}${inCell(cell, words)} <i>${cell.decidedBy}</i></button></td>`; })}</tr>`)}</tbody></table></div>
  ${view.cell ? working(table, view.cell, words) : html`<p class="why">${words('working-none')}</p>`}`;

export const timesOf = answer => [{ key: 'day', table: answer.day }, ...(answer.night ? [{ key: 'night', table: answer.night }] : []), ...answer.others.map((table, at) => ({ key: `other-${at}`, table }))];

export const doseTable = (view, words, act) => {
  const all = timesOf(view.table);
  const shown = all.find(entry => entry.key === view.tableAt) ?? all[0];
  const older = view.before && timesOf(view.before).find(entry => entry.key === shown.key)?.table;
  return html`<section class="leads" aria-labelledby="leads"><h2 id="leads">${words('doses-title')}</h2>
    <p class="help">${words('doses-help', { insulin: view.insulin || '–' })}</p>
    ${all.length > 1 ? html`<div class="pair">${all.map(entry => html`<button type="button" class="press small" aria-pressed=${entry === shown ? 'true' : 'false'} @click=${() => act.tableAt(entry.key)}>${words('doses-at', { clock: entry.table.at })}</button>`)}</div>` : html`<p class="help">${words('doses-alike')}</p>`}
    ${oneTable(view, words, act, shown.table, older)}</section>`;
};
