// A plan that came in, before anybody takes it into use: what is wrong with it said first, who sent it, every number beside the one
// now in use. Only the day of agreement, typed by hand, opens the button.
import { html, nothing } from '../vendor/lit-html.js';
import { field, main, numbers, plain, plainSheet } from '../views/parts.js';
import { visible } from '../views/visible.js';
import { groups, originWords } from './origin.js';


const origin = (signed, words, day) => html`<p class="lede">${originWords(signed, words, day)}</p>${signed ? html`<p class="note">${words('bring-signed-means')}</p>` : nothing}`;

const changeRows = (changes, words) => html`<dl class="fields values">${changes.map(({ place, before, after }) => html`<div class="moved"><dt>${place}</dt>
  <dd>${before === null ? html`<b>${words('bring-new')}</b>` : html`<span>${words('bring-now')} <s><bdi>${before}</bdi></s></span>`}
    ${after === null ? html`<b>${words('bring-gone')}</b>` : html`<span>${words('bring-then')} <b><bdi>${after}</bdi></b></span>`}</dd></div>`)}</dl>`;

// What changes is read first; what stays is behind a fold where there is something to compare with, and open where all is new.
const everyValue = ({ compared, same }, words) => {
  const lists = html`<div class="values-parts">${same.map(({ title, lines }) => html`<section><h3>${title}</h3><dl class="fields values">${lines.map(({ place, value }) => field(place, html`<bdi>${value}</bdi>`))}</dl></section>`)}</div>`;
  return compared ? html`<details class="stays"><summary>${words('bring-same-lines', { count: String(same.flatMap(part => part.lines).length) })}</summary>${lists}</details>` : html`<h2 class="part">${words('bring-every')}</h2>${lists}`;
};

export const offered = (candidate, words, send, { day, lines, take = words('take-plan') }) => {
  const { doc, weighed, signed, keptAside } = candidate;
  const agreedDay = doc.agreement.on.replaceAll('-', '');
  const typed = (candidate.typedDay ?? '').replace(/[^0-9]/g, '');
  return plainSheet(html`
  <h1 class="name" tabindex="-1">${visible(doc.person.name)}</h1>
  ${weighed.loud.map(sentence => html`<p class="warnbox" role="alert">${sentence}</p>`)}
  ${weighed.refused.length ? html`<div class="holdbox" role="alert"><p class="say">${words('bring-refused')}</p></div><p class="lede">${keptAside ? words('bring-refused-kept') : words('bring-refused-not-kept')} ${words('bring-refused-do')}</p>${numbers(weighed.refused)}`
    : html`<p class="lede">${words('offered-ask')}</p>`}
  ${weighed.unconfirmed.length ? html`<div class="warnbox"><p><b>${words('bring-unconfirmed')}</b></p></div>${numbers(weighed.unconfirmed)}` : nothing}
  <dl class="fields">${field(words('plan-label'), words('plan-revision', { revision: String(doc.revision), title: doc.title }))}
    ${field(words('plan-born'), lines.born)}${field(words('plan-by'), words('plan-by-value', { by: doc.agreement.by || '–', role: doc.agreement.role || '–' }))}
    ${field(words('plan-review'), words('plan-review-value', { day: lines.review }))}
    ${field(words('bring-fingerprint'), html`<bdi dir="ltr" class="print">${groups(weighed.fingerprint)}</bdi>`)}</dl>
  ${origin(signed, words, day)}
  ${candidate.events ? html`<p class="note">${words('offered-record', { count: String(candidate.events.length) })}</p>` : nothing}
  ${weighed.refused.length ? nothing : html`${weighed.compared ? html`<h2 class="part">${words('bring-changes')}</h2>${weighed.changes.length ? changeRows(weighed.changes, words) : html`<p class="lede">${words('bring-changes-none')}</p>`}` : nothing}
  ${everyValue(weighed, words)}`}
  ${weighed.refused.length ? nothing : html`<h2 class="part">${words('bring-accept')}</h2>
  ${weighed.isDraft ? html`<p class="lede">${words('bring-draft-not')}</p>` : html`<label class="typed-day"><span>${words('bring-day')}<span class="sub">${words('bring-day-sub')}</span></span>
    <input id="agreed-day" inputmode="numeric" autocomplete="off" maxlength="10" placeholder="2026-01-31" @input=${event => send('typedDay', event.target.value)}></label>
    <p class="note" role="status">${typed.length < 8 ? words('bring-inactive') : typed === agreedDay ? words('bring-day-fits') : words('bring-day-differs')}</p>`}`}
  <div class="end">${!weighed.refused.length && !weighed.isDraft && typed === agreedDay ? main(take, () => send('takePlan')) : nothing}${weighed.refused.length ? main(words('bring-refused-leave'), () => send('dropCandidate')) : plain(words('leave-plan'), () => send('dropCandidate'))}</div>`);
};
