// An agreed plan: how it stands, what it leads to, its whole fingerprint, and what can be done with it.
import { html, nothing } from '../vendor/lit-html.js';
import { doseTable } from './dosetable.js';
import { allGroups, desk, press, stateWords } from './parts.js';
import { field } from '../views/parts.js';

export const agreed = (view, words, act) => desk(view, words, html`
  <h1 tabindex="-1">${view.person.name}</h1>
  ${view.said ? html`<p class="lede" role="status">${view.said}</p>` : nothing}
  ${view.engineChanged ? html`<div class="warnbox" role="alert"><p>${words('engine-changed', { before: view.engineChanged, now: view.engine })}</p>${press(words('engine-looked'), () => act.looked())}</div>` : nothing}
  <dl class="fields wider">${field(words('plan-label'), words('plan-revision', { revision: view.revision, title: view.doc.title }))}
    ${field(words('place-status'), stateWords(words)[view.standing]())}
    ${field(words('plan-agreed'), view.dayWords(view.doc.agreement.on))}${field(words('plan-by'), words('plan-by-value', { by: view.doc.agreement.by || '–', role: view.doc.agreement.role || '–' }))}
    ${field(words('plan-review'), words('plan-review-value', { day: view.dayWords(view.doc.agreement.reviewBy) }))}
    ${field(words('fingerprint'), html`<bdi dir="ltr" class="whole-print">${allGroups(view.person.fingerprint)}</bdi>`)}</dl>
  <div class="cells">${view.hasDraft ? press(words('agreed-go-on'), () => act.page('edit'), { now: true, sub: words('agreed-go-on-sub') }) : press(words('agreed-revise'), () => act.revise(), { sub: words('agreed-revise-sub') })}
    ${view.standing === 'withdrawn' || view.standing === 'superseded' ? nothing : press(words('agreed-use-here'), () => act.useHere(), { sub: words('agreed-use-here-sub') })}
    <a class="press" href="#share/${view.id}"><span>${words('share-plan')}<span class="sub">${words('share-plan-sub')}</span></span></a>
    ${view.standing === 'withdrawn' || view.standing === 'superseded' ? nothing : html`<a class="press" href="paper.html#${view.id}"><span>${words('print-entry')}<span class="sub">${words('print-entry-sub')}</span></span></a>`}
    ${view.incident ? press(words('story-entry'), () => act.story(view.id), { sub: words('shelf-incident', { day: view.incident }) }) : nothing}
    ${press(words('agreed-file'), () => act.save(), { sub: words('removal-file-sub') })}
    ${view.standing === 'withdrawn' ? nothing : view.asksWithdraw ? html`<p class="warnbox">${words('withdraw-ask')}</p>${press(words('withdraw-yes'), () => act.withdraw())}${press(words('withdraw-no'), () => act.askWithdraw(false))}` : press(words('agreed-withdraw'), () => act.askWithdraw(true), { sub: words('agreed-withdraw-sub') })}</div>
  ${view.table ? doseTable(view, words, act) : nothing}`, { wide: true });
