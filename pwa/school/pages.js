// The pages of the school around the questions: choosing, the student, the call when orders are over, removing. No page names a student
// whose name and date of birth were not typed.
import { html, nothing } from '../vendor/lit-html.js';
import { begin, field, figures, foot, main, plain, plainSheet, sheet } from '../views/parts.js';
import { callContact } from '../views/ring.js';
import { visible } from '../views/visible.js';
import { ends } from './students.js';

const value = id => document.getElementById(id).value;
const said = (school, words) => html`${school.said ? html`<p class="warnbox" role="alert">${school.said}</p>` : nothing}${school.kept ? nothing : html`<p class="warnbox" role="alert">${words('nothing-kept')}</p>`}`;
// Two pages that need no student and no plan.
const helpPages = words => html`<a class="press wide" href="low.html"><span>${words('low-page')}</span></a><a class="press wide" href="danger.html"><span>${words('danger-page')}</span></a>`;
// A new version is offered while nobody is open and nothing waits.
const newer = ({ newer: found, changes, school }, words, send) => (!found || school.student || school.notices.length ? nothing : html`<h2 class="part">${words('newer-title')}</h2>
  <ul class="lines">${changes.map(text => html`<li>${text}</li>`)}</ul>${plain(words('newer-take'), () => send('acceptRelease'), words('newer-version-sub'))}`);

// What is typed of a day, and the day it is in words.
const dayText = digits => [digits.slice(0, 4), digits.slice(4, 6), digits.slice(6)].filter(Boolean).join('-');

export const choose = (state, words, send) => {
  const { school } = state;
  return plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('school-choose')}</h1>
  ${said(school, words)}
  ${school.broken ? html`<p class="warnbox">${words('school-broken')}</p>` : nothing}
  ${school.notices.map(notice => html`<p class="warnbox">${notice}</p>`)}
  ${school.student ? html`<p class="lede">${words('school-open-now', { name: school.student.doc.person.name })}</p>${plain(words('school-back-to', { name: school.student.doc.person.name }), () => send('schoolPage', 'student'))}` : nothing}
  <label class="typed-day"><span>${words('school-name')}<span class="sub">${words('school-name-sub')}</span></span><input id="student-name" maxlength="60" autocomplete="off" autocapitalize="words" spellcheck="false"></label>
  <h2 class="part">${words('school-born-label')}</h2>
  <div class="birth">${figures(state, words, send, { label: words('school-born-label'), text: dayText(state.pad.digits), help: school.bornWords ?? words('school-born-help'), deed: 'schoolKey' })}</div>
  <label class="typed-day"><span>${words('school-initials')}<span class="sub">${words('school-initials-sub')}</span></span><input id="initials" maxlength="6" autocomplete="off" autocapitalize="characters" spellcheck="false"></label>
  <div class="end">${main(words('school-find'), () => send('schoolFind', { name: value('student-name'), initials: value('initials') }))}</div>
  <div class="cells">${helpPages(words)}${plain(words('school-take'), () => send('schoolPage', 'take'), words('school-take-sub'))}
    ${plain(words('school-leave'), () => send('schoolLeave'), words('school-leave-sub'))}</div>
  ${newer(state, words, send)}
  <p class="note">${words('school-alone')}</p>`);
};

const whole = ({ doc: { person } }, day, words) => html`<b>${visible(person.name)}</b><br>${words('school-born', { day: day(person.born) })}`;
export const switching = (state, words, send) => {
  const { student, other } = state.school;
  return plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('school-switch', { from: student.doc.person.name, to: other.doc.person.name })}</h1>
  <dl class="fields">${field(words('school-switch-from'), whole(student, state.dayWords, words))}${field(words('school-switch-to'), whole(other, state.dayWords, words))}</dl>
  <p class="lede">${words('school-switch-kept', { name: student.doc.person.name })}</p>
  <div class="end">${main(words('school-switch-yes', { name: other.doc.person.name }), () => send('schoolSwitch'))}
    ${plain(words('school-switch-no', { name: student.doc.person.name }), () => send('schoolPage', 'student'))}</div>`);
};

// Each with the name and the number: whoever is in a hurry does not look one up.
const calls = (state, words, first) => {
  const { home, team, emergency, emergencyDial } = state.ring;
  const all = [...home, ...team, { name: words('school-emergency'), phone: emergency, dial: emergencyDial }];
  return html`<div class="cells answers">${all.map((contact, at) => callContact(contact, words, first && !at))}</div>`;
};

const low = (state, words) => html`<section class="low-first"><h2>${words('school-low-title')}</h2><ul class="lines">${state.school.low.map(line => html`<li>${line}</li>`)}</ul></section>`;

const orders = (state, words) => {
  const { student } = state.school;
  const { school } = student.doc;
  const end = ends(student);
  return html`<dl class="fields wider">${field(words('school-prescriber'), school.prescriber)}
    ${field(words('school-orders-end'), state.dayWords(school.ordersExpire))}${field(words('school-year-end'), state.dayWords(student.yearEnds))}
    ${field(words('school-copy-ends'), html`<b>${state.dayWords(end.day)}</b>`)}
    ${field(words('school-copy-seen'), words('school-copy-seen-value', { by: student.copy.seenBy, day: state.dayWords(student.copy.seenOn) }))}
    ${field(words('school-supplies-at'), student.supplies)}${school.storage ? field(words('school-storage'), school.storage) : nothing}
    ${field(words('school-may-inject'), school.mayInject.join('; '))}</dl>`;
};

const others = (state, words, send) => html`<div class="cells answers">
  ${plain(words('school-log'), () => send('schoolPage', 'log'), state.record.length ? words('before-count', { count: String(state.record.length) }) : words('before-none'))}
  ${plain(words('school-another'), () => send('schoolPage', 'choose'))}${plain(words('school-close'), () => send('schoolClose'), words('school-close-sub'))}
  ${plain(words('school-remove'), () => send('schoolPage', 'remove'))}</div>`;

const named = (state, words) => html`<h1 class="name" tabindex="-1">${visible(state.plan.doc.person.name)}</h1><p class="born">${words('school-born', { day: state.plan.lines.born })}</p>`;

// The low comes first: it is what most often happens, and the one thing that cannot wait for a question.
export const student = (state, words, send) => html`<div class="sheet"><header class="head"><b>${words('school')}</b>${state.school.who()}</header><main id="main">
  ${named(state, words)}
  ${state.plan.demo ? html`<p class="warnbox">${words('demo-warning')}</p>` : nothing}${said(state.school, words)}
  ${low(state, words)}
  ${begin(state.draft || state.next ? words('school-go-on') : words('start'), words('school-start-sub'), () => send('schoolBegin'))}
  ${calls(state, words, false)}
  ${orders(state, words)}
  <div class="cells answers">${plain(words('change-something'), () => send('schoolOpen', 'change'), words('school-change-sub'))}${plain(words('school-sheet'), () => send('schoolSheet'), words('school-sheet-sub'))}</div>
  ${others(state, words, send)}
  </main>${foot(state, words, { calm: true })}</div>`;

// Nothing of an order that is over is shown but whom to call, and what never needs an order.
export const overPage = (state, words, send) => {
  const sentence = { year: day => words('school-over-year', { day }), orders: day => words('school-over-orders', { day }), plan: () => words('school-over-plan'), clock: day => words('school-over-clock', { day }) };
  const { why, day } = state.school.over;
  return html`<div class="sheet"><header class="head"><b>${words('school')}</b>${state.school.who()}</header><main id="main">
  ${named(state, words)}
  <div class="holdbox"><p class="say">${sentence[why](day && state.dayWords(day))}</p></div>
  <ul class="lines"><li>${words('school-over-no-dose')}</li><li>${words('school-over-call')}</li></ul>
  ${calls(state, words, true)}
  ${low(state, words)}
  <div class="cells answers">${plain(words('school-over-signs'), () => send('schoolBegin'), words('school-over-signs-sub'))}</div>
  ${orders(state, words)}
  ${others(state, words, send)}
  </main>${foot(state, words, { calm: true })}</div>`;
};

export const removal = (state, words, send) => {
  const { school } = state;
  return sheet(state, words, html`<div class="ask"><h1 tabindex="-1">${school.asked ? words('school-remove-again') : words('school-remove-ask')}</h1></div>
  ${said(school, words)}
  <p class="lede">${words('school-remove-what')}</p>
  <label class="typed-day"><span>${words('school-remove-name')}</span><input id="remove-name" maxlength="60" autocomplete="off" spellcheck="false" .value=${''}></label>
  <div class="end cells">${plain(school.asked ? words('school-remove-now') : words('school-remove-on'), () => { const name = value('remove-name'); document.getElementById('remove-name').value = ''; send('schoolRemove', name); })}
    ${plain(words('remove-no'), () => send('schoolPage', 'student'))}</div>`, { calm: true });
};
