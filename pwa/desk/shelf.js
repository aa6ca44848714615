// The shelf: whose plans lie on this machine and how each stands. Nothing of one person is shown on the page of another.
import { html, nothing } from '../vendor/lit-html.js';
import { desk, level, link, press, stateWords } from './parts.js';

const line = (row, words, act) => html`<li class="person"><button type="button" class="press" @click=${() => act.open(row.id)}><span class="who"><b>${row.name || words('desk-no-name')}</b>
    ${row.demo ? html`<span class="sub">${words('shelf-demo')}</span>` : nothing}<span class="sub">${words('shelf-revision', { revision: row.revision })}</span></span>
  <span class="how"><b>${stateWords(words)[row.standing]()}</b>${row.reviewBy ? html`<span class="sub">${words('shelf-review', { day: row.reviewBy })}</span>` : nothing}
    ${row.held.map(({ revision, line }) => html`<span class="sub">${words('shelf-held', { revision })} ${line}</span>`)}
    ${row.draft && row.standing !== 'draft' ? html`<span class="sub">${words('shelf-draft-too', { revision: row.draft })}</span>` : nothing}</span>
  <span class="what"><span class="sub">${row.missing ?? nothing}</span>${row.engineChanged ? html`<span class="sub">${words('shelf-engine')}</span>` : nothing}
    <span class="sub">${row.incident ? words('shelf-incident', { day: row.incident }) : words('shelf-no-incident')}</span></span></button>
  ${row.incident ? link(words('shelf-story', { name: row.name || words('desk-no-name') }), () => act.story(row.id)) : nothing}
  ${link(words('shelf-remove', { name: row.name || words('desk-no-name') }), () => act.remove(row.id))}</li>`;

export const shelf = (view, words, act) => desk(view, words, html`
  <h1 tabindex="-1">${words('shelf-title')}</h1>
  <div class="shelf-tools">${press(words('shelf-new'), () => act.fresh(), { now: !view.rows.length, sub: words('shelf-new-sub') })}
    <label class="press file"><span>${words('shelf-bring')}<span class="sub">${words('shelf-bring-sub')}</span></span><input type="file" accept=".json,application/json" @change=${event => act.bring(event.target)}></label></div>
  ${view.said ? html`<p class="lede" role="status">${view.said}</p>` : nothing}
  ${view.brought ? html`<div class="warnbox" role="alert"><p>${words('refused-title')}. ${words('refused-kept')}</p><ul>${view.brought.map(entry => html`<li>${level('refuse', words)} ${entry}</li>`)}</ul></div>` : nothing}
  ${view.offered ? html`<div class="warnbox" role="alert"><p>${words('bring-open')}</p><ul>${view.offered.open.map(({ place, line }) => html`<li>${level('confirm', words)} ${place}: ${line}</li>`)}</ul>
    <div class="cells">${press(words('bring-leave'), () => act.leaveOffered(), { now: true })}${press(words('bring-take'), () => act.takeOffered())}</div></div>` : nothing}
  ${view.broken ? html`<p class="warnbox" role="alert">${words('shelf-broken')}</p>` : nothing}
  ${view.rows.length || view.find ? html`<label class="find"><span class="fname">${words('shelf-find')}</span><input class="in" type="search" id="find" autocomplete="off" .value=${view.find} @input=${event => act.find(event.target.value)}></label>` : nothing}
  <ul class="people">${view.shown.map(row => line(row, words, act))}</ul>
  ${view.rows.length && !view.shown.length ? html`<p class="lede">${words('shelf-none-found', { text: view.find })}</p>` : nothing}
  ${view.rows.length ? nothing : html`<p class="lede">${words('shelf-empty')}</p>`}
  <p class="note">${words('shelf-alone')}</p>`);

export const removal = (view, words, act) => desk(view, words, html`
  <h1 tabindex="-1">${words('removal-title', { name: view.person.name || words('desk-no-name') })}</h1>
  <p class="lede">${words('removal-what')}</p>
  ${view.inUse ? html`<p class="warnbox">${words('removal-in-use')}</p>` : nothing}
  <div class="cells">${press(words('removal-file'), () => act.save(), { now: !view.saved, sub: words('removal-file-sub') })}
    ${press(view.saved ? words('removal-yes') : words('removal-yes-no-file'), () => act.removeNow(), { sub: view.saved ? words('removal-yes-sub') : words('removal-no-file-sub') })}
    ${press(words('removal-no'), () => act.page('shelf'))}</div>
  ${view.said ? html`<p class="lede" role="status">${view.said}</p>` : nothing}`);
