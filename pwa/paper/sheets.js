// Whole sheets: the plan for the fridge in large print, the record of an incident, and what a journey needs.
import { html, nothing } from '../vendor/lit-html.js';
import { blankLine, blanks, contact, headLines, lines, numbered, part, sheetPage, teamLines } from './parts.js';
import { wholeTable, withoutStrips } from './table.js';

const numberedPages = (material, list) => list.map((entry, at) => sheetPage(material, { number: at + 1, count: list.length, ...entry }));

export const fridgePages = material => {
  const { answer, words, say } = material;
  const tables = answer.spans.map(span => ({ kind: 'fridge', title: words('fridge-title'), body: html`
    ${part('head', 16, headLines(material, span), { tag: 'band' })}
    ${part('table', 120, wholeTable(answer, span, words))}
    ${part('steps', 45, html`<h3>${words('fridge-steps')}</h3>${numbered(answer.steps, say)}`)}
    ${part('contacts', 25, html`<p><b>${words('card-feel-worse', { number: answer.emergencyNumber })}</b></p>${teamLines(material)}`)}` }));
  const later = html`${part('after', 60, html`<h3>${words('card-after-title')}</h3>${lines(answer.after, say)}`)}
    ${part('calls', 50, html`<h3>${words('card-calls-title')}</h3>${lines(answer.calls, say)}`)}
    ${part('contacts', 30, html`${answer.contacts.map(entry => html`<p><b>${contact(entry, words)}</b></p>`)}`)}`;
  const off = html`${part('no-strips', 90, html`<h3>${words('card-no-strips-title')}</h3>${withoutStrips(answer, words)}${lines(answer.noStrips, say)}`)}
    ${part('off-pump', 45, html`<h3>${words('card-off-pump-title')}</h3>${lines(answer.offPump, say)}`)}
    ${part('storage', 25, html`<h3>${words('card-storage-title')}</h3>${answer.storage.map(line => blankLine(say(line)))}`)}`;
  return numberedPages(material, [...tables, ...[later, off].map(body => ({ kind: 'fridge', title: words('fridge-title'), body }))]);
};

export const recordPages = material => {
  const { answer, words } = material;
  return numberedPages(material, [{ title: words('record-title'), body: html`<p>${words('record-help')}</p>
    ${part('blanks', 40, html`${blankLine(words('record-began'))}${blankLine(words('record-first'))}${blankLine(words('record-set-changed'))}${blankLine(words('record-called'))}${blankLine(words('record-automation-back'))}`)}
    ${part('record', 160, blanks(answer.record, 16, words))}
    ${part('contacts', 10, html`<p><b>${words('card-feel-worse', { number: answer.emergencyNumber })}</b></p>`)}` }]);
};

const kitTable = ({ answer, words }) => html`<table class="grid kit-table"><thead><tr><th scope="col">${words('travel-days')}</th><th scope="col">${words('travel-vials', { insulin: answer.rapid, ml: answer.packs.vialMl })}</th><th scope="col">${words('travel-pens', { insulin: answer.rapid, ml: answer.packs.penMl })}</th>
    ${answer.longActing ? html`<th scope="col">${words('travel-pens', { insulin: answer.longActing, ml: answer.packs.penMl })}</th>` : nothing}<th scope="col">${words('travel-sets')}</th></tr></thead>
  <tbody>${answer.kits.map(kit => html`<tr><th scope="row">${kit.days}</th><td>${kit.rapidVials}</td><td>${kit.rapidPens}</td>${answer.longActing ? html`<td>${kit.longPens}</td>` : nothing}<td>${kit.sets}</td></tr>`)}</tbody></table>`;

export const travelPages = material => {
  const { answer, words, say } = material;
  return numberedPages(material, [
    { title: words('travel-title'), body: html`${part('kit', 90, html`<h3>${words('travel-kit')}</h3>${kitTable(material)}${lines(answer.carry, say)}`)}
      ${part('zones', 80, html`<h3>${words('travel-zones')}</h3>${lines(answer.zones, say)}`)}` },
    { title: words('travel-letter'), body: html`${part('letter', 120, lines(answer.security, say))}
      ${part('signatures', 50, html`${blankLine(words('letter-flight'))}${blankLine(words('letter-clinic'))}${blankLine(words('front-signed'))}${blankLine(words('sign-date'))}`)}` },
  ]);
};
