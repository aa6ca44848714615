// What the pages of the desk share: the head with whose plan this is, its state and its fingerprint, and the buttons.
import { html, nothing } from '../vendor/lit-html.js';

// 64 signs nobody compares; the first sixteen in groups of four can be read out on the telephone.
export const groups = fingerprint => fingerprint.slice(0, 16).match(/.{4}/g).join(' ');
export const allGroups = fingerprint => fingerprint.match(/.{4}/g).join(' ');

export const stateWords = words => ({ draft: () => words('standing-draft'), agreed: () => words('standing-agreed'), reviewDue: () => words('standing-review-due'), inGrace: () => words('standing-in-grace'),
  expired: () => words('standing-expired'), superseded: () => words('standing-superseded'), withdrawn: () => words('standing-withdrawn') });

export const desk = (view, words, body, { wide = false } = {}) => html`<div class="desk ${wide ? 'wide-desk' : ''}">
  <header class="desk-head"><nav aria-label=${words('desk-faces')}><a class="face" href="./">${words('desk-bedside')}</a><a class="face here" href="#desk" aria-current=${view.person ? nothing : 'page'}>${words('desk')}</a></nav>
    ${view.person ? html`<p><b>${view.person.name || words('desk-no-name')}</b> <span>${view.person.line}</span></p>` : nothing}
    ${view.person?.fingerprint ? html`<p class="print"><span>${words('fingerprint')}</span> <bdi dir="ltr">${groups(view.person.fingerprint)}</bdi></p>` : nothing}
    ${view.late ? html`<a class="press late-link" href="./">${words('late-title', { clock: view.late })}</a>` : nothing}</header>
  ${view.kept ? nothing : html`<p class="warnbox" role="alert">${words('desk-not-kept')}</p>`}
  <main id="main">${body}</main>
  <p class="desk-foot">${words('desk-caution')}</p></div>`;

export const press = (text, act, { now = false, sub, id } = {}) => html`<button type="button" id=${id ?? nothing} class="press ${now ? 'now' : ''}" @click=${act}><span>${text}${sub ? html`<span class="sub">${sub}</span>` : nothing}</span></button>`;
export const link = (text, act) => html`<button type="button" class="again" @click=${act}>${text}</button>`;

// The level of a finding is told by words, weight and frame, not by colour.
export const level = (kind, words) => html`<b class="level ${kind}">${{ refuse: () => words('level-refuse'), confirm: () => words('level-confirm'), note: () => words('level-note'), settled: () => words('level-settled'), missing: () => words('level-missing') }[kind]()}</b>`;
