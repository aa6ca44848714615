// The table of doses on paper: small for the card, whole for the sheets. Every text in it is the core's; nothing is counted.
import { html, nothing } from '../vendor/lit-html.js';
import { stripWord } from './parts.js';

const rank = ['none', 'team', 'emergency'];
const atLeast = (call, other) => rank.indexOf(call) >= rank.indexOf(other);

// Words of a cell without a dose. What is none of these is for the team to say.
const plainWords = (cell, words) => ({ emergency: () => words('card-go'), lowEmergency: () => words('card-go'), lookAgain: () => words('card-look-again'), correctByPump: () => words('card-by-pump'), testKetones: () => words('card-test') }[cell.outcome]?.());
const foodWords = (cell, words) => (cell.outcome === 'eat' || cell.outcome === 'eatAndInject' || cell.outcome === 'eatNow' ? words('card-eat', { grams: cell.grams }) : words('card-sugar', { grams: cell.grams }));

// `asks` is the call that the head of the column names already. Going is said in every cell that goes.
export const cellWords = (cell, asks, words) => {
  const calls = cell.callFirst && cell.call !== 'emergency' ? words('card-and-call-first') : cell.call === 'emergency' ? words('card-and-go') : cell.call === 'team' && !atLeast(asks, 'team') ? words('card-and-call') : '';
  if (cell.dose) return html`<b>${cell.dose}</b>${cell.grams ? html` ${words('card-and-grams', { grams: cell.grams })}` : nothing}${calls}`;
  if (cell.grams) return `${foodWords(cell, words)}${calls}`;
  const plain = plainWords(cell, words);
  if (!plain) return words('card-call');
  return cell.call === 'team' ? `${plain}${calls}` : plain;
};

const rowWords = (row, words) => ({ low: () => words('card-row-low', { glucose: row.glucose }), number: () => words('card-row-from', { glucose: row.glucose }), HI: () => words('card-row-hi') }[row.kind]());
// Who tests with strips finds the strip's words over the columns; a column without a word is for a blood meter.
const strips = (column, words) => column.urine.map(word => stripWord(word, words)).join(', ');
const byStrip = (answer, column) => answer.test === 'urine' && column.urine.length > 0;
const reached = (answer, column, words) => (byStrip(answer, column) ? words('card-strip', { strip: strips(column, words) }) : words('card-ketones', { ketones: column.from }));
const columnHead = (answer, column, asks, words) => html`${column.key === 'notTested' ? words('card-untested') : reached(answer, column, words)}${column.key !== 'notTested' && asks !== 'none' ? html`: ${asks === 'team' ? words('card-column-call') : words('card-column-go')}` : nothing}`;

const glucoseHead = (answer, words) => html`<th scope="col">${words('card-glucose', { unit: answer.unit })}</th>`;
const grid = (answer, span, columns, rows, words) => html`<table class="grid"><thead><tr>${glucoseHead(answer, words)}${columns.map(at => html`<th scope="col">${columnHead(answer, answer.columns[at], span.calls[at], words)}</th>`)}</tr></thead>
  <tbody>${rows.map(row => html`<tr><th scope="row">${rowWords(row, words)}</th>${columns.map(at => html`<td>${cellWords(row.cells[at], span.calls[at], words)}</td>`)}</tr>`)}</tbody></table>`;

// While ketones cannot be tested: a column for the hours of each table, and a row wherever one of them says something new.
export const withoutStrips = (answer, words) => {
  const { spans } = answer;
  const rows = spans[0].rows.map((row, at) => ({ row, cells: spans.map(span => span.rows[at].noStrips) })).filter(({ cells }) => cells.some(cell => !cell.like));
  const hours = span => (span.allDay ? words('card-no-strips') : words('card-hours-column', { from: span.from, to: span.to }));
  return html`<table class="grid"><thead><tr>${glucoseHead(answer, words)}${spans.map(span => html`<th scope="col">${hours(span)}</th>`)}</tr></thead>
    <tbody>${rows.map(({ row, cells }) => html`<tr><th scope="row">${rowWords(row, words)}</th>${cells.map(cell => html`<td>${cellWords(cell, 'none', words)}</td>`)}</tr>`)}</tbody></table>`;
};

// While ketones do not act one line says it all: what the pump does, and what is done where the meter says HI.
const quiet = (answer, span, words) => {
  const said = span.rows.filter(row => row.kind !== 'low' && !row.cells[0].like && row.cells[0].outcome !== 'lookAgain');
  const [column, next] = answer.columns;
  const title = byStrip(answer, column) ? words('card-quiet-strip', { strip: strips(column, words) }) : words('card-quiet', { ketones: next.from });
  return html`<p class="under"><b>${title}</b> ${said.map(row => {
    const what = cellWords(row.cells[0], 'none', words);
    return row.kind === 'HI' ? html`${words('card-row-hi')}: ${what}. ` : html`${words('card-row-from', { glucose: row.glucose })} ${what}. `;
  })}</p>`;
};

export const smallTable = (answer, span, without, words) => {
  const columns = answer.columns.flatMap((column, at) => (column.key === 'blood' && at > 0 ? [at] : []));
  const first = answer.columns[0].acts ? [0, ...columns] : columns;
  const rows = span.rows.filter(row => !row.like && !row[without]);
  return html`${grid(answer, span, first, rows, words)}${answer.columns[0].acts || answer.columns.length < 3 ? nothing : quiet(answer, span, words)}<p class="under">${words('card-not-tested')} ${words('card-no-strips-where')}</p>`;
};
export const wholeTable = (answer, span, words) => grid(answer, span, answer.columns.map((_, at) => at), span.rows, words);
