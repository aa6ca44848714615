// Another phone's record of the plan in use: what is new in it, what stands here already, what differs. Nothing here is replaced.
import { html, nothing } from '../vendor/lit-html.js';
import { main, plain, sheet } from './parts.js';

const differences = (differing, words) => (differing.length ? html`<p class="warnbox">${words('join-differs')}</p>
  <ul class="lines">${differing.map(entry => html`<li><p><b><bdi dir="ltr">${entry.clock}</bdi></b> ${entry.day}</p>
    <p>${words('join-here')} <b>${entry.own}</b></p><p>${words('join-there')} <b>${entry.other}</b></p></li>`)}</ul>
  <p class="lede">${words('join-differs-do')}</p>` : nothing);

export const joining = (state, words, send) => {
  const { doc, added, known, differing, otherPlan } = state.candidate;
  return sheet(state, words, html`
  <h1 class="name small" tabindex="-1">${words('join-title')}</h1>
  <p class="lede">${words('join-what', { name: doc.person.name })}</p>
  <p class="lede"><b>${words('join-count', { new: String(added.length), known: String(known) })}</b></p>
  ${differences(differing, words)}
  ${otherPlan ? html`<p class="lede">${words('join-other-plan')}</p>` : nothing}
  <div class="end">${added.length ? main(words('join-yes'), () => send('join'), words('join-yes-sub')) : nothing}
    ${otherPlan ? plain(words('join-see-plan'), () => send('seePlan')) : nothing}
    ${plain(added.length ? words('join-no') : words('back'), () => send('dropCandidate'))}</div>`);
};

export const joined = (state, words, send) => sheet(state, words, html`
  <h1 class="name small" tabindex="-1">${words('joined-title')}</h1>
  <p class="lede">${words('joined-count', { count: state.candidate.joined.count })}</p>
  <p class="lede">${state.candidate.joined.kept ? words('joined-kept') : words('joined-not-kept')}</p>
  ${differences(state.candidate.differing, words)}
  <div class="end">${main(words('joined-on'), () => send('dropCandidate'))}</div>`);
