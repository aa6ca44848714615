// Before anything happens: the first start, a plan that is offered, the home page, and what happened before.
import { html, nothing } from '../vendor/lit-html.js';
import { begin, field, foot, main, numbers, offEntry, offFirst, plain, plainSheet, sheet } from './parts.js';
import { planFindings } from './advice.js';
import { callTeam, largeCall } from './ring.js';
import { visible } from './visible.js';

const deskEntry = words => html`<a class="press wide" href="#desk"><span>${words('desk')}<span class="sub">${words('desk-sub')}</span></span></a>`;
const schoolEntry = words => html`<a class="press wide" href="#school"><span>${words('school')}<span class="sub">${words('school-sub')}</span></span></a>`;
const fileInput = (text, sub, send) => html`<label class="press wide file"><span>${text}<span class="sub">${sub}</span></span>
  <input type="file" accept=".json,application/json" @change=${event => send('planFile', event.target.files[0])}></label>`;

// Both stand without a plan, a store or the core.
const helpPages = words => html`<p class="note"><a href="danger.html">${words('danger-page')}</a></p><p class="note"><a href="low.html">${words('low-page')}</a></p>`;

export const first = (state, words, send) => plainSheet(html`
  <h1 class="name" tabindex="-1">${words('first-title')}</h1>
  <p class="lede">${words('first-what')}</p>
  <p class="lede">${words('first-who')}</p>
  ${fileInput(words('bring-plan'), words('bring-plan-sub'), send)}
  <a class="press wide" href="#bring"><span>${words('bring-otherwise')}<span class="sub">${words('bring-otherwise-sub')}</span></span></a>
  ${state.plan ? nothing : asideEntry(state, words, send)}
  <h2 class="lbl part">${words('first-demo')}</h2>
  <div class="cells">
    ${plain(words('demo-adult'), () => send('demo', 'adult'), words('demo-adult-sub'))}
    ${plain(words('demo-child'), () => send('demo', 'child'), words('demo-child-sub'))}</div>
  ${state.plan ? html`<div class="answers">${plain(words('back'), () => send('close'))}</div>` : html`<div class="answers">${deskEntry(words)}${schoolEntry(words)}</div>`}
  <p class="note">${words('first-caution')}</p>
  ${offlineNote(state, words)}
  ${helpPages(words)}`);

const reason = (entry, words) => {
  const slots = { path: entry.path || '/', got: entry.got === undefined || entry.got === '' ? '–' : String(entry.got),
    accepted: entry.accepted === undefined || entry.accepted === '' ? '–' : String(entry.accepted) };
  const sentence = {
    notJson: () => words('refused-not-json'), tooLarge: () => words('refused-too-large'), tooDeep: () => words('refused-too-deep'),
    unknownKey: () => words('refused-unknown-key'), duplicateKey: () => words('refused-duplicate-key'), missing: () => words('refused-missing'),
    wrongType: () => words('refused-wrong-type'), wrongUnit: () => words('refused-wrong-unit'), outOfRange: () => words('refused-out-of-range'),
    tooPrecise: () => words('refused-too-precise'), notAscending: () => words('refused-not-ascending'), duplicateId: () => words('refused-duplicate-id'),
    contradiction: () => words('refused-contradiction'), newerFormat: () => words('refused-newer-format'), fingerprintMismatch: () => words('refused-changed'),
  }[entry.reason];
  return html`<li><p><b>${(sentence ?? (() => words('refused-other')))()}</b></p>
    <p class="path"><bdi dir="ltr">${slots.path}</bdi></p>
    <p>${words('refused-got', { got: slots.got })} ${words('refused-accepted', { accepted: slots.accepted })}</p></li>`;
};

export const refused = (state, words, send) => plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('refused-title')}</h1>
  <p class="lede">${state.candidate.isFile ? words('refused-kept') : words('refused-call')}</p>
  <ul class="lines">${state.candidate.refused.map(entry => reason(entry, words))}</ul>
  <div class="end">${main(words('back'), () => send('dropCandidate'))}</div>`);


const planFields = (plan, lines, words) => html`<dl class="fields">
  ${field(words('plan-label'), words('plan-revision', { revision: String(plan.revision), title: plan.title }))}
  ${field(words('plan-born'), lines.born)}
  ${field(words('plan-agreed'), lines.agreed)}
  ${field(words('plan-by'), words('plan-by-value', { by: plan.agreement.by, role: plan.agreement.role }))}
  ${field(words('plan-review'), words('plan-review-value', { day: lines.review }))}</dl>`;

export const offered = (state, words, send) => plainSheet(html`
  <h1 class="name" tabindex="-1">${visible(state.candidate.doc.person.name)}</h1>
  ${state.candidate.demo ? html`<p class="warnbox">${words('demo-warning')}</p>` : html`<p class="lede">${words('offered-ask')}</p>`}
  ${planFields(state.candidate.doc, state.candidate.lines, words)}
  ${state.candidate.events ? html`<p class="note">${words('offered-record', { count: String(state.candidate.events.length) })}</p>` : nothing}
  ${state.candidate.unconfirmed?.length ? html`<p class="warnbox">${words('bring-unconfirmed')}</p>${numbers(state.candidate.unconfirmed)}` : nothing}
  <div class="end">${main(state.candidate.demo ? words('take-demo') : words('take-plan'), () => send('takePlan'))}
  ${plain(words('leave-plan'), () => send('dropCandidate'))}</div>`);

const printEntry = (words, sub) => html`<a class="press wide" href="paper.html"><span>${words('print-entry')}<span class="sub">${sub}</span></span></a>`;

// What is still missing of what lasts longer than the phone. Each is asked for until it was made of this very plan.
const copies = (state, words, send) => (state.missing.length ? html`<h2 class="lbl part">${words('copies-title')}</h2><p class="note">${words('copies-why')}</p>
  <div class="cells">${state.missing.map(what => ({ card: () => printEntry(words, words('copies-no-card')), file: () => plain(words('export'), () => send('export'), words('copies-no-file')) }[what]()))}</div>` : nothing);

// Whether the app works with no network, and if not yet, why. "asked": the keeper of the release has not answered yet.
const offlineLine = (state, words) => ({ yes: () => words('offline-yes'), asked: () => words('offline-asked'), fetching: () => words('offline-fetching'), notWhole: () => words('offline-not-whole'),
  noKeeper: () => words('offline-no-keeper'), other: () => words('offline-other') }[state.offline]());
const worksOffline = state => ['yes', 'asked'].includes(state.offline);
const offlineNote = (state, words) => html`<p class="note" id="offline" role="status">${offlineLine(state, words)}${worksOffline(state) ? nothing : html` ${words('offline-do')}`}</p>`;

// The faces whose first page is not drawn here say it above their page, as long as it does not work.
const entered = new Set(['desk', 'school', 'handing']);
export const framed = (state, words, page, name) => html`${entered.has(name) && !worksOffline(state) ? offlineNote(state, words) : nothing}${page}`;

// A number of the plan in use that this version would not accept any more. The plan goes on dosing; the clinic has to look at it.
const planToLookAt = (state, words) => (state.findings.length ? html`${planFindings(state, words)}<p class="note">${words('home-findings-do')}</p>` : nothing);
const asideEntry = ({ aside }, words, send) => (aside.length ? plain(words('aside-entry'), () => send('openAside'), words('aside-entry-sub')) : nothing);

export const home = (state, words, send) => {
  const fields = planFields(state.plan.doc, state.plan.lines, words);
  // Whoever has no basal insulin sees the ways to insulin first, without scrolling.
  const bare = Boolean(state.offSince?.bare);
  return html`<div class="sheet"><main id="main">
  <h1 class="name" tabindex="-1">${visible(state.plan.doc.person.name)}</h1>
  ${state.plan.demo ? html`<p class="warnbox">${words('demo-warning')}</p>` : nothing}
  ${bare ? nothing : fields}
  ${begin(words('start'), words('start-sub'), () => send('start'))}
  ${offFirst(state, words, send)}${bare ? fields : nothing}
  ${state.newer ? html`<div class="answers">${plain(words('newer-version'), () => send('open', 'newer'), words('newer-version-sub'))}</div>` : nothing}
  ${state.damagedLongAgo.length ? html`<p class="note">${words('doubt-long-ago')}</p>` : nothing}
  ${planToLookAt(state, words)}
  ${offlineNote(state, words)}
  ${copies(state, words, send)}
  <div class="cells">
    ${plain(words('before'), () => send('open', 'before'), state.record.length ? words('before-count', { count: String(state.record.length) }) : words('before-none'))}
    ${plain(words('change-something'), () => send('open', 'change'), words('change-something-sub'))}
    ${offEntry(state, words, send)}
    ${state.missing.includes('card') ? nothing : printEntry(words, words('print-entry-sub'))}
    ${plain(words('more'), () => send('open', 'more'), words('more-sub'))}
    ${deskEntry(words)}${schoolEntry(words)}</div>
  ${state.kept ? nothing : html`<p class="warnbox">${words('nothing-kept')}</p>`}
  </main>${foot(state, words, { calm: true })}</div>`;
};

// What a later release changes, in its own words; it waits until somebody wants it.
export const newer = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('newer-title')}</h1></div>
  <ul class="lines">${state.changes.map(text => html`<li>${text}</li>`)}</ul>
  <p class="note">${words('newer-version-sub')} ${words('newer-later')}</p>
  <div class="end">${main(words('newer-take'), () => send('acceptRelease'))}${plain(words('newer-not-now'), () => send('close'))}</div>`, { calm: true });

export const more = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('more')}</h1></div>
  <div class="cells">
    ${plain(words('export'), () => send('export'), words('export-sub'))}
    <a class="press wide" href="#share"><span>${words('share-plan')}<span class="sub">${words('share-plan-sub')}</span></span></a>
    ${fileInput(words('join-entry'), words('join-entry-sub'), send)}
    ${plain(words('other-plan'), () => send('open', 'first'), words('other-plan-sub'))}
    ${asideEntry(state, words, send)}
    ${plain(words('night-look'), () => send('night'), { auto: () => words('night-auto'), night: () => words('night-on'), day: () => words('night-off') }[state.nightChoice]())}
    ${state.holds?.incident && !state.plan.demo ? nothing : plain(state.plan.demo ? words('reset-demo') : words('remove-all'), () => send('open', 'remove'), words('remove-sub'))}</div>
  <p class="note">${state.persisted === true ? words('storage-firm') : state.persisted === false ? words('storage-loose') : words('storage-unsaid')}</p>
  ${helpPages(words)}
  <p class="note">${words('about', { engine: state.engine, release: state.release })}</p>
  <div class="end">${plain(words('back'), () => send('close'))}</div>`, { calm: true });

export const remove = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('remove-ask')}</h1></div>
  <p class="lede">${words('remove-what')}</p><p class="note">${words('remove-not-school')}</p>
  <div class="end"><div class="cells">${plain(words('remove-yes'), () => send('removeAll'))}${plain(words('remove-no'), () => send('close'))}</div></div>`, { calm: true });

export const before = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('before')}</h1></div>
  ${state.story.length ? html`<div class="cells answers">${plain(words('story-entry'), () => send('openStory'), words('story-entry-sub'))}</div>` : nothing}
  ${state.story.length ? html`<ol class="timetable">${state.story.map(entry => html`<li class=${entry.struck ? 'past struck' : ''}>
    <b class="t"><bdi dir="ltr">${entry.clock}</bdi><small>${entry.day}</small></b><p>${entry.text}${entry.struck ? html`<br><b class="k">${entry.misTap ? words('record-mis-tap') : words('record-struck')}</b>` : nothing}</p></li>`)}</ol>`
    : html`<p class="lede">${words('before-none')}</p>`}
  <div class="end">${plain(words('back'), () => send('close'))}</div>`, { calm: true });

export const change = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('change-title')}</h1></div>
  <div class="cells">
    ${plain(words('change-set'), () => send('record', 'set'))}
    ${plain(words('change-reservoir'), () => send('record', 'reservoir'))}
    ${plain(words('change-insulin'), () => send('record', 'insulin'))}
    ${plain(words('change-pump-off'), () => send('record', 'pumpOff'))}
    ${plain(words('change-pump-on'), () => send('record', 'pumpOn'))}
    ${state.plan.doc.pump.automation === 'none' ? nothing : html`
      ${plain(words('change-automation-paused'), () => send('record', 'paused'))}
      ${plain(words('change-automation-on'), () => send('record', 'automationOn'))}`}
    ${plain(words('change-dose'), () => send('open', 'given'), words('change-dose-sub'))}
    ${plain(words('change-mistake'), () => send('open', 'mistake'))}</div>
  ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
  <div class="end">${plain(words('back'), () => send('close'))}</div>`, { calm: true });

export const otherTab = (state, words) => plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('other-tab')}</h1><p class="lede">${words('other-tab-why')}</p><p class="lede">${words('other-tab-do')}</p>
  ${helpPages(words)}`);

// Storage refused it: the person is the only store left.
export const writeDown = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('write-down')}</h1>
    <p class="clock"><bdi dir="ltr">${state.unkept[0].clock}</bdi></p><p class="say">${state.unkept[0].text}</p></div>
  <p class="lede">${words('write-down-why')}</p>
  <div class="end">${main(words('written-down'), () => send('writtenDown'))}</div>`);

export const withdrawn = (state, words, send) => html`<div class="sheet"><div class="block"><h1 tabindex="-1">${words('withdrawn-title')}</h1><p>${words('withdrawn-what')}</p></div><main id="main">
  <ul class="lines"><li>${words('withdrawn-call')}</li><li>${words('withdrawn-kept')}</li></ul>
  ${state.ring ? callTeam(state, words) : nothing}
  <a class="press wide" href="danger.html"><span>${words('danger-page')}</span></a>
  <div class="end">${main(words('withdrawn-again'), () => send('readAgain'))}</div></main></div>`;

export const trouble = (state, words, send) => html`<div class="sheet"><div class="block"><h1 tabindex="-1">${words('trouble')}</h1><p>${words('trouble-what')}</p></div><main id="main">
  ${state.ring ? largeCall(state, words) : nothing}
  <a class="press wide" href="danger.html"><span>${words('danger-page')}</span></a>
  ${state.plan ? html`${state.dosesWritten?.length ? html`<h2 class="lbl part">${words('doubt-written')}</h2><ol class="timetable">${state.dosesWritten.slice(0, 3).map(dose => html`<li>
    <b class="t"><bdi dir="ltr">${dose.clock}</bdi>${dose.day ? html`<small>${dose.day}</small>` : nothing}</b><p>${dose.text}</p></li>`)}</ol>` : nothing}
    ${plain(words('doubt-save'), () => send('doubtSave'), words('doubt-save-sub'))}` : nothing}
  <div class="end"><a class="press wide" href="./">${words('trouble-again')}</a></div>
  <p class="note">${state.trouble}</p></main></div>`;
