// The sides of the wallet card, each 85.60 × 107.96 mm open, and how they lie on a sheet: two sides make one card, folded back to
// back along their common edge and then at the marks.
import { html, nothing } from '../vendor/lit-html.js';
import { blanks, contact, frontLines, headLines, lines, numbered, part, team, teamLines } from './parts.js';
import { smallTable, withoutStrips } from './table.js';

const feelWorse = (answer, words) => html`<p><b>${words('card-feel-worse', { number: answer.emergencyNumber })}</b></p>`;
const short = ({ answer, words }, number) => html`<span>${words('front-short', { name: answer.front.name, revision: answer.front.revision })}</span> <span>${number}</span>`;

const tableSide = (material, span) => number => html`<section class="side table-side" data-box>
  ${part('head', 13.5, headLines(material, span), { tag: 'band' })}
  ${part('table', 64, smallTable(material.answer, span, material.without, material.words))}
  ${part('steps', 26, numbered(material.answer.steps, material.say))}
  ${part('contacts', 8, html`${feelWorse(material.answer, material.words)}${teamLines(material)}`)}
  ${part('front', 4, short(material, number), { tag: 'short' })}</section>`;

// Each of the team with its hours: a stranger rings whoever answers now.
const strangerPart = (answer, list, say, extra = nothing) => {
  const calls = list.filter(line => line.key === 'stranger-call').map((line, which) => html`${say(line)}${team(answer)[which].when ? html` <small>${team(answer)[which].when}</small>` : nothing} `);
  const at = key => list.find(line => line.key === key);
  const sentence = key => (at(key) ? say(at(key)) : '');
  const unwell = at('stranger-unwell') ? 'stranger-unwell' : 'stranger-unwell-number';
  return html`<div class="band stranger-band"><p>${sentence('stranger-type')}</p><p>${sentence('stranger-failed')}</p></div>
    <p>${sentence('stranger-low')}</p><p>${sentence(unwell)} ${sentence('stranger-say')}</p>
    <p><b>${sentence('stranger-no-inject')}</b> ${calls}</p>
    <p>${sentence('stranger-basal')} ${sentence('stranger-normal')} ${sentence('stranger-test')}</p>${extra}`;
};

// The code itself is 40 mm wide, and has its four squares of quiet around it.
const codeWidth = 40, quiet = 4;
const drawn = (rows, label) => html`<svg class="code" width="${codeWidth * rows.length / (rows.length - 2 * quiet)}mm" viewBox="0 0 ${rows.length} ${rows.length}" role="img" aria-label=${label} shape-rendering="crispEdges">
  <path d=${rows.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')}/></svg>`;

const frontSide = material => number => html`<section class="side front-side"><div class="panel code-panel" data-box>
    ${part('code', 50, html`${drawn(material.code, material.words('card-code-label'))}<p>${material.words('card-code')}</p>`)}
    ${part('front', 49, html`<p class="whose"><b>${material.answer.front.name}</b></p>${frontLines(material, { short: true }).map(line => html`<p>${line}</p>`)}<p>${number}</p><p><b>${material.words('front-replaces')}</b></p>`)}</div>
  <div class="panel stranger-panel" data-box>${part('stranger', 53, strangerPart(material.answer, material.answer.stranger, material.say))}</div></section>`;

const storage = ({ answer, say }) => answer.storage.map(line => html`<p class="write-on"><span>${say(line)}</span><i></i></p>`);
const afterSide = material => number => {
  const { answer, words, say } = material;
  return html`<section class="side after-side" data-box>
    ${part('after', 20, html`<h3>${words('card-after-title')}</h3><p>${answer.after.map(say).join(' ')}</p>`)}
    ${part('calls', 20, html`<h3>${words('card-calls-title')}</h3>${lines(answer.calls, say)}`)}
    ${part('contacts', 8, html`<ul class="said">${answer.contacts.map(entry => html`<li><b>${contact(entry, words)}</b></li>`)}</ul>`)}
    ${part('off-pump', 20, html`<h3>${words('card-off-pump-title')}</h3><p>${answer.offPump.map(say).join(' ')}</p>`)}
    ${part('storage', 12, storage(material))}
    ${answer.contacts.length > 2 ? nothing : part('blanks', 10, blanks(answer.blanks, 1, words))}
    ${part('front', 4, short(material, number), { tag: 'short' })}</section>`;
};

// What is done while ketones cannot be tested: the doses of every hour on one side.
const noStripsSide = material => number => {
  const { answer, words, say } = material;
  return html`<section class="side no-strips-side" data-box>
    ${part('head', 10, html`<p><b>${words('card-no-strips-title')}</b></p><p><b>${say(answer.head[0])}</b></p>`, { tag: 'band' })}
    ${part('table', 34, withoutStrips(answer, words))}
    ${part('no-strips', 20, lines(answer.noStrips, say))}
    ${part('contacts', 8, html`${feelWorse(answer, words)}${teamLines(material)}`)}
    ${part('blanks', 20, blanks(answer.blanks, 2, words))}
    ${part('front', 4, short(material, number), { tag: 'short' })}</section>`;
};

const blankSide = material => number => html`<section class="side blank-side" data-box>
  ${part('blanks', 100, blanks(material.answer.blanks, 11, material.words))}${part('front', 4, short(material, number), { tag: 'short' })}</section>`;

const abroadSide = (material, language) => number => html`<section class="side abroad-side" lang=${language.code} dir=${language.rtl ? 'rtl' : 'ltr'} data-box data-language=${language.name}>
  ${part('stranger', 85, strangerPart(material.answer, material.answer.abroad.lines, language.say, html`<p class="unchecked"><b>${language.speak('unchecked')}</b></p>`))}
  <div class="part for-front short" data-part="front" data-room="4" lang="en-GB" dir="ltr">${short(material, number)}</div></section>`;

// One line to write on stands after the needle, unless many are to call; the side for no strips has more. The first card has a table and what a stranger reads; the next the other hours, and what comes after the needle.
export const sides = material => {
  const [first, ...others] = material.answer.spans.map(span => tableSide(material, span));
  const out = [first, frontSide(material), ...others, afterSide(material), noStripsSide(material)];
  if (out.length % 2) out.push(blankSide(material));
  out.push(...material.strangers.map(language => abroadSide(material, language)));
  if (out.length % 2) out.push(blankSide(material));
  const count = String(out.length / 2);
  return out.map((side, at) => side(material.words('front-card', { number: String(Math.floor(at / 2) + 1), count })));
};

export const barePages = material => sides(material).map(side => html`<div class="page bare">${side}</div>`);

const ticks = html`<i class="fold-mark"></i><i class="fold-mark far"></i>`;
export const cardPages = material => {
  const { words, answer, paper } = material;
  const all = sides(material);
  const cards = Array.from({ length: all.length / 2 }, (_, at) => html`<div class="pair-of-sides">${ticks}${all[2 * at]}${all[2 * at + 1]}</div>`);
  const pages = Array.from({ length: Math.ceil(cards.length / 2) }, (_, at) => cards.slice(2 * at, 2 * at + 2));
  return pages.map((pair, at) => html`<section class="page card-sheet ${paper}"><header><p>${words('sheet-cut')} ${words('front-page', { number: String(at + 1), count: String(pages.length) })}</p>
    <p class="check"><i></i><span>${words('sheet-check', { length: answer.paper.checkLine })}</span></p></header>${pair}</section>`);
};
