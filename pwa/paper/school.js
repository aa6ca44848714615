// The school's sheet: the treatment of a low and the danger signs first, then the table and the steps; the orders and what the
// school fills in stand apart, with the lines to sign; then the record.
import { html, nothing } from '../vendor/lit-html.js';
import { blanks, headLines, lines, numbered, part, sheetPage, teamLines } from './parts.js';
import { wholeTable, withoutStrips } from './table.js';

const signWords = words => ({ prescriber: () => words('sign-prescriber'), parent: () => words('sign-parent'), nurse: () => words('sign-nurse'), student: () => words('sign-student') });
const signatures = ({ answer, words }) => html`<div class="signatures">${answer.signatures.map(who => html`<p class="write-on"><span>${signWords(words)[who]()}</span><i></i><span>${words('sign-date')}</span><i class="narrow"></i></p>`)}</div>`;

// Orders that allow the table alone give no dose without a reading of ketones, and then there is nothing to list. Others need a table,
// and with it a page of its own.
const hasDoseWithoutStrips = answer => answer.spans.some(span => span.rows.some(row => row.noStrips.dose));
const noStrips = ({ answer, words }) => html`<h3>${words('card-no-strips-title')}</h3>${hasDoseWithoutStrips(answer)
  ? withoutStrips(answer, words) : html`<p>${words('school-no-strips')}</p>`}`;

export const schoolPages = material => {
  const { answer, words, say } = material;
  const tables = answer.spans.map(span => ({ title: words('school-title'), kind: 'school', body: html`
    ${part('head', 18, headLines(material, span), { tag: 'band' })}
    ${part('table', 120, html`<h3>${words('school-table-title')}</h3>${wholeTable(answer, span, words)}`)}
    ${part('low', 50, html`<h3>${words('school-low-title')}</h3>${lines(answer.low, say)}`)}` }));
  const pages = [...tables,
    { title: words('school-title'), kind: 'school', body: html`${part('steps', 130, html`<h3>${words('school-steps-title')}</h3>${numbered(answer.steps, say)}`)}
      ${hasDoseWithoutStrips(answer) ? nothing : part('no-strips', 15, noStrips(material))}
      ${part('contacts', 20, html`<h3>${words('school-team-title')}</h3>${teamLines(material)}`)}
      ${part('danger', 40, html`<h3>${words('school-danger-title')}</h3>${lines(answer.danger, say)}`, { tag: 'framed' })}` },
    ...(hasDoseWithoutStrips(answer) ? [{ title: words('school-title'), kind: 'school', body: part('no-strips', 200, noStrips(material)) }] : []),
    { title: words('school-title'), kind: 'school', body: html`${part('orders', 70, html`<h3>${words('school-orders-title')}</h3>${lines(answer.orders, say)}`)}
      ${part('school', 50, html`<h3>${words('school-fields-title')}</h3>${lines(answer.school, say)}`, { tag: 'framed' })}
      ${part('signatures', 70, signatures(material))}` },
    { title: words('school-record-title'), kind: 'school', body: part('record', 200, blanks(answer.record, 16, words)) }];
  return pages.map((entry, at) => sheetPage(material, { number: at + 1, count: pages.length, unsigned: true, ...entry }));
};
