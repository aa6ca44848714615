// What the sheets and the card share: the front matter, lists of sentences, lines to write on, and the boxes that are measured.
import { html, nothing } from '../vendor/lit-html.js';

// A part of a box: its name, and the millimetres it is meant to take. Whoever takes more is named when the box is full.
export const part = (name, room, body, { tag = '' } = {}) => html`<div class="part for-${name} ${tag}" data-part=${name} data-room=${room}>${body}</div>`;
export const lines = (list, say) => html`<ul class="said">${list.map(line => html`<li>${say(line)}</li>`)}</ul>`;
export const numbered = (list, say) => html`<ol class="numbered">${list.map((line, at) => html`<li><span class="no">${String(at + 1)}</span><span>${say(line)}</span></li>`)}</ol>`;
export const contact = (entry, words) => html`${words('card-contact', { name: entry.name, phone: entry.phone })}${entry.when ? html` <small>${entry.when}</small>` : nothing}`;
// Whom a call to the team rings: each of them with its hours, in the order of the plan. Nobody else stands in for them: without a
// team it is the emergency number.
export const team = answer => answer.contacts.filter(entry => entry.relation === 'team');
export const teamLines = ({ answer, words }) => (team(answer).length ? team(answer).map(entry => html`<p><b>${contact(entry, words)}</b></p>`)
  : html`<p><b>${words('card-no-team', { number: answer.emergencyNumber })}</b></p>`);

// The words of a strip, as the questions of the app have them.
const stripWords = words => ({ negative: () => words('urine-negative'), trace: () => words('urine-trace'), small: () => words('urine-small'),
  moderate: () => words('urine-moderate'), large: () => words('urine-large') });
export const stripWord = (word, words) => stripWords(words)[word]();

// `short`: as the card has room for it, without the role, and with as much of the fingerprint as is read out.
export const frontLines = ({ answer, words, day, print }, { short = false } = {}) => {
  const { front } = answer;
  return [words('front-born', { day: day(front.born) }), words('front-revision', { revision: front.revision }), words('front-agreed', { day: day(front.agreedOn) }), short ? front.agreedBy : words('front-by', { by: front.agreedBy, role: front.role }),
    words('front-review', { day: day(front.reviewBy) }), words('front-print', { print: short ? print.split(' ').slice(0, 3).join(' ') : print }), words('front-engine', { engine: front.engine })];
};

// Above every table: when it may be used at all, and at which hours.
export const headLines = ({ answer, words, say }, span) => html`<p><b>${say(answer.head[0])}</b></p><p><b>${span.allDay ? nothing : html`${words('card-hours', { from: span.from, to: span.to })} `}${answer.head.slice(1).map(say).join(' ')}</b></p>`;

export const blankWords = words => ({ time: () => words('blank-time'), day: () => words('blank-day'), glucose: () => words('blank-glucose'), ketones: () => words('blank-ketones'), units: () => words('blank-units'), insulin: () => words('blank-insulin'), done: () => words('blank-done'), initials: () => words('blank-initials') });
export const blanks = (names, rows, words) => html`<table class="blanks"><thead><tr>${names.map(name => html`<th scope="col" class=${name}>${blankWords(words)[name]()}</th>`)}</tr></thead>
  <tbody>${Array.from({ length: rows }, () => html`<tr>${names.map(() => html`<td></td>`)}</tr>`)}</tbody></table>`;
export const blankLine = label => html`<p class="write-on"><span>${label}</span><i></i></p>`;

// One sheet of paper with its front matter, its number among the others, and what must stand on every one of them.
export const sheetPage = (material, { number, count, title, body, unsigned = false, kind = '' }) => {
  const { answer, words, paper } = material;
  return html`<section class="page ${paper} ${kind}" data-box><header class="sheet-head"><h2>${title}</h2><p class="who"><b>${answer.front.name}</b> <span>${words('front-page', { number: String(number), count: String(count) })}</span></p></header>
    ${part('front', 16, html`<p class="front-line">${frontLines(material).map((line, at) => html`${at ? ' · ' : ''}<span>${line}</span>`)} · <b>${words('front-replaces')}</b>${unsigned ? html` · <b>${words('school-unsigned')}</b>` : nothing}</p>`)}
    ${body}<footer class="sheet-foot">${unsigned ? html`<b>${words('school-unsigned')}</b> ` : nothing}${words('front-caution')}</footer></section>`;
};
