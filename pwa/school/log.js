// One student's log: when, what, and whose initials. On the screen, on paper, and as a table for a spreadsheet.
import { html, nothing } from '../vendor/lit-html.js';
import { table } from '../desk/story/csv.js';
import { plain, sheet } from '../views/parts.js';

const inOrder = state => [...state.story].reverse();
const by = (entry, words) => entry.initials ?? words('school-log-nobody');

export const logCsv = (state, words) => {
  const { name, born } = state.plan.doc.person;
  return table([[words('csv-day'), words('csv-clock'), words('csv-event'), words('school-log-initials'), words('school-log-student'), words('school-log-born'), words('csv-at'), words('csv-kind')],
    ...inOrder(state).map(entry => [entry.at.slice(0, 10), entry.clock, entry.text, by(entry, words), name, born, entry.at, entry.kind])]);
};

export const log = (state, words, send) => {
  const rows = inOrder(state);
  return sheet(state, words, html`<article class="school-log">
    <h1 class="name small" tabindex="-1">${words('school-log')}</h1>
    <p class="log-whose"><b>${state.plan.doc.person.name}</b>, ${words('school-born', { day: state.plan.lines.born })}</p>
    ${rows.length ? html`<table class="log"><thead><tr><th scope="col">${words('csv-clock')}</th><th scope="col">${words('csv-event')}</th><th scope="col">${words('school-log-initials')}</th></tr></thead>
      <tbody>${rows.map((entry, at) => html`${at && rows[at - 1].day === entry.day ? nothing : html`<tr class="day"><th scope="rowgroup" colspan="3">${entry.day}</th></tr>`}
        <tr><th scope="row"><bdi dir="ltr">${entry.clock}</bdi></th><td>${entry.text}</td><td>${by(entry, words)}</td></tr>`)}</tbody></table>`
      : html`<p class="lede">${words('before-none')}</p>`}
    <p class="note">${words('school-log-printed', { day: state.dayWords(state.now.text.slice(0, 10)), clock: state.now.clock })}</p></article>
  ${state.school.said ? html`<p class="lede no-print" role="status">${state.school.said}</p>` : nothing}
  <div class="end cells no-print">${rows.length ? html`${plain(words('school-log-csv'), () => send('schoolCsv'), words('school-log-csv-sub'))}${plain(words('school-log-print'), () => send('schoolPrint'))}` : nothing}
    ${plain(words('back'), () => send('schoolPage', 'student'))}</div>`, { calm: true });
};
