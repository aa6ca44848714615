// The page on the screen: what to print, on which paper, in which languages, and the pages as they will come out.
import { html, nothing } from '../vendor/lit-html.js';
import { barePages, cardPages } from './card.js';
import { schoolPages } from './school.js';
import { fridgePages, recordPages, travelPages } from './sheets.js';

export const kinds = {
  card: { call: 'card', code: true, languages: true, pages: cardPages },
  bare: { call: 'card', code: true, languages: true, pages: barePages },
  fridge: { call: 'card', pages: fridgePages },
  record: { call: 'card', pages: recordPages },
  travel: { call: 'card', pages: travelPages },
  school: { call: 'schoolSheet', pages: schoolPages },
};

const choice = (on, text, sub, act) => html`<button type="button" class="press wide" aria-pressed=${on ? 'true' : 'false'} @click=${act}><span>${text}${sub ? html`<span class="sub">${sub}</span>` : nothing}</span></button>`;

const choices = (view, words) => [['card', words('paper-card'), words('paper-card-sub')], ['bare', words('paper-bare'), words('paper-bare-sub')], ['fridge', words('paper-fridge'), words('paper-fridge-sub')],
  ['record', words('paper-record'), words('paper-record-sub')], ['travel', words('paper-travel'), words('paper-travel-sub')], ...(view.hasSchool ? [['school', words('paper-school'), words('paper-school-sub')]] : [])];

export const page = (view, words, act) => html`<main class="ui">
    <p><a href=${view.back}>${words('paper-back')}</a></p><h1 tabindex="-1">${words('paper-title')}</h1><p class="lede">${words('paper-lede')}</p>
    <p class="note"><a href="danger.html">${words('danger-page')}</a></p>
    ${view.only ? nothing : html`<h2>${words('paper-what')}</h2><div class="cells">${choices(view, words).map(([kind, text, sub]) => choice(view.kind === kind, text, sub, () => act.kind(kind)))}</div>`}
    <h2>${words('paper-size')}</h2><div class="cells">${choice(view.paper === 'a4', words('paper-a4'), '', () => act.paper('a4'))}${choice(view.paper === 'letter', words('paper-letter'), '', () => act.paper('letter'))}</div>
    ${kinds[view.kind].languages && view.offered.length ? html`<h2>${words('paper-languages')}</h2><p>${words('paper-languages-sub')}</p><div class="cells languages">${view.offered.map(entry => html`<button type="button" class="press" lang=${entry.code} aria-pressed=${view.wanted.includes(entry.code) ? 'true' : 'false'} @click=${() => act.language(entry.code)}>${entry.name}</button>`)}</div>` : nothing}
    ${kinds[view.kind].languages && view.lackingNames ? html`<p class="note">${words('paper-languages-missing', { names: view.lackingNames })}</p>` : nothing}
    ${view.refused ? html`<div class="warnbox" role="alert"><p><b>${words('paper-refused')}</b></p>${view.refused.map(reason => html`<p>${reason}</p>`)}</div>`
      : html`<button type="button" class="press now wide" @click=${act.print}><span>${words('paper-print')}<span class="sub">${words('paper-print-sub')}</span></span></button><h2>${words('paper-preview')}</h2>`}
  </main>${view.pages ? html`<div class="pages" tabindex="0" role="region" aria-label=${words('paper-preview')}>${view.pages}</div>` : nothing}`;
