// Whom a call rings at this hour, as the core says it. A number that no telephone could dial is shown as text and is no link.
import { html, nothing } from '../vendor/lit-html.js';

const address = phone => `tel:${phone.replace(/[^+0-9]/g, '')}`;
const figures = phone => html`<bdi dir="ltr">${phone}</bdi>`;

// Something to press that telephones, or the same text where nothing can be dialled.
export const dialled = ({ phone, dial }, look, body) => (dial ? html`<a class="press ${look}" href=${address(phone)}>${body}</a>` : html`<div class="press still ${look}">${body}</div>`);

const hours = ({ when, readable, open }, words) => (when && !(readable && open) ? html` ${words('ring-hours', { when })}` : nothing);
const named = (contact, look, words) => dialled(contact, look, html`<span>${words('call-name', { name: contact.name })}<span class="sub">${figures(contact.phone)}${hours(contact, words)}</span></span>`);
const emergency = ({ ring }) => ({ name: ring.emergency, phone: ring.emergency, dial: ring.emergencyDial });

export const callContact = (contact, words, now = false) => named(contact, now ? 'now wide' : 'wide', words);
export const callEmergency = (state, words) => dialled(emergency(state), 'now wide', html`<span>${words('call-name', { name: state.ring.emergency })}</span>`);
export const callHome = (state, words) => (state.ring.home.length ? state.ring.home.map((contact, at) => callContact(contact, words, !at)) : callEmergency(state, words));

// Who answers a call to the team now: the first of the team, or the emergency number where nobody of the team does.
export const firstToRing = state => state.ring.team[0] ?? emergency(state);

// Everybody of the team who answers now, in the order to ring. Where the hours of the first cannot be read, or where nobody answers, the
// emergency number stands beside. Contacts at home are offered after these, never instead.
export const callTeam = (state, words, { now = false, soon = false, home = false } = {}) => {
  const { ring } = state;
  const number = look => dialled(emergency(state), look, html`<span>${words('call-name', { name: ring.emergency })}</span>`);
  const look = at => `wide${now && !at ? ' now' : ''}${soon ? ' soon' : ''}`;
  return html`${ring.team.length ? ring.team.map((contact, at) => named(contact, look(at), words)) : html`<p class="note">${words('ring-nobody')}</p>`}
    ${ring.team.length && ring.team[0].readable ? nothing : number(look(ring.team.length))}
    ${home ? ring.home.map(contact => named(contact, 'wide', words)) : nothing}`;
};

// The large button of a page that is about a call for help.
export const emergencyCall = (state, words) => dialled(emergency(state), 'now wide ring', html`<span><span>${words('call')}</span><b>${figures(state.ring.emergency)}</b></span>`);
// The same for the team, where the page itself fails.
export const largeCall = (state, words) => { const first = firstToRing(state); return dialled(first, 'now wide ring', html`<span><span>${words('call')}</span><b class="name small">${first.name}</b>${first.dial ? nothing : figures(first.phone)}</span>`); };

// At the foot of every page, on one line.
export const footCall = (state, words) => {
  const first = firstToRing(state);
  const beside = state.ring.team.length && !first.readable ? dialled(emergency(state), 'mid', figures(state.ring.emergency)) : nothing;
  return html`${dialled(first, 'mid', html`<span>${words('call')}<span class="sub">${first.dial ? first.name : figures(first.phone)}</span></span>`)}${beside}`;
};
