// What happened, for the talk afterwards: one incident on one page. It tells; it does not judge. Fetched when somebody opens it.
import { html, nothing } from '../../vendor/lit-html.js';
import { save } from '../../save.js';
import { plain, sheet } from '../../views/parts.js';
import { csv } from './csv.js';
import { picture } from './picture.js';
import { happened, led } from './rows.js';

const clock = text => html`<bdi dir="ltr">${text}</bdi>`;

// How long it took: three answers, or that there is none.
const duration = (label, reached, words) => html`<div><dt>${label}</dt><dd>${reached ? html`<b>${words('story-minutes', { minutes: reached.minutes })}</b> <small>${words('story-at', { clock: reached.clock })}</small>`
  : html`<b>${words('story-never')}</b>`}</dd></div>`;
const durations = ({ durations: times }, words) => html`<h2>${times.from === 'high' ? words('story-from-high', { clock: times.clock }) : words('story-from-suspicion', { clock: times.clock })}</h2>
  <dl class="fields took">${duration(words('story-to-ketones'), times.ketoneTest, words)}${duration(words('story-to-needle'), times.needle, words)}${duration(words('story-to-set'), times.newSet, words)}</dl>`;

// The picture in a sentence or two, for whoever does not see it.
const described = (story, words) => {
  const count = kind => String(story.rows.filter(row => row.kind === kind && !(row.struck && !row.counts)).length);
  const highest = story.rows.filter(row => row.kind === 'glucose' && row.counts).reduce((best, row) => (!best || row.height > best.height ? row : best), null);
  return [words('story-picture', { from: story.from.clock, to: story.to.clock, readings: count('glucose'), tests: count('ketones'), needles: count('injection') }),
    ...(highest ? [words('story-picture-highest', { value: highest.what.reading ?? highest.what.value, clock: highest.clock })] : [])].join(' ');
};

// What the plan led to stands beside everything that was done until the next reading.
const groups = rows => rows.reduce((all, row) => {
  if (row.ledTo || !all.length) all.push([row]);
  else all.at(-1).push(row);
  return all;
}, []);
const plan = (row, size, words) => {
  const then = row.ledTo && led(row.ledTo, words);
  return html`<td class="led" rowspan=${size}>${then ? html`<b>${then.title}</b>${then.dose ? html`<b class="led-dose">${then.dose}</b>` : nothing}
    ${then.more.map(line => html`<span>${line}</span>`)}<small>${then.rule}</small>` : nothing}</td>`;
};
const event = (row, dayWords, words) => {
  const [first, ...more] = happened(row, dayWords, words);
  return html`<th scope="row">${clock(row.clock)}</th><td class=${row.struck ? 'struck' : ''}><span>${first}</span>${more.map(line => html`<small>${line}</small>`)}
    ${row.struck ? html`<b class="k">${row.counts ? words('story-struck-counts') : words('record-struck')}</b>` : nothing}</td>`;
};
const table = (rows, view, words) => {
  const days = new Set();
  const dayRow = row => (days.has(row.day) ? nothing : (days.add(row.day), html`<tr class="day"><td colspan="3">${view.dayWords(row.day)}</td></tr>`));
  return html`<table class="night-table"><thead><tr><th scope="col">${words('story-col-clock')}</th><th scope="col">${words('story-col-what')}</th><th scope="col">${words('story-col-led')}</th></tr></thead>
    ${groups(rows).map(group => html`<tbody>${group.map((row, at) => html`${at ? nothing : dayRow(row)}<tr>${event(row, view.dayWords, words)}${at ? nothing : plan(row, group.length, words)}</tr>`)}</tbody>`)}</table>`;
};

const others = ({ others: list, moreOthers }, view, words) => (list.length ? html`<p class="note no-print">${words('story-others', { days: list.map(other => view.dayWords(other.from.slice(0, 10))).join('; ') })} ${moreOthers ? words('story-more-others') : nothing}</p>` : nothing);

// The whole account, without head and foot: `view` holds {told, name, line, dayWords, said}, `act` {print, csv, fhir}.
export const account = (view, words, act) => {
  const { story } = view.told;
  if (!story) return html`<h1 tabindex="-1">${words('story-title')}</h1><p class="lede">${words('story-none')}</p>
    <div class="cells">${plain(words('story-fhir'), act.fhir, words('story-fhir-sub'))}</div>${view.said ? html`<p class="lede" role="status">${view.said}</p>` : nothing}`;
  return html`<article class="story">
    <h1 tabindex="-1">${words('story-title')}</h1>
    <p class="story-whose"><b>${view.name}</b> <span>${view.line}</span></p>
    <p>${words('story-when', { day: view.dayWords(story.from.day), from: story.from.clock })} ${story.closed ? words('story-closed', { clock: story.closed.clock, day: view.dayWords(story.closed.day) }) : words('story-open', { clock: story.to.clock, day: view.dayWords(story.to.day) })}</p>
    ${durations(story, words)}
    <h2>${words('story-picture-title')}</h2>${picture(story, words, described(story, words))}
    <p class="story-key">${words('story-picture-key')}</p>
    <h2>${words('story-table-title')}</h2>${table(story.rows, view, words)}
    ${story.rowsLeftOut ? html`<p class="warnbox">${words('story-left-out', { count: String(story.rowsLeftOut) })}</p>` : nothing}
    <p class="note">${words('story-now', { print: story.planFingerprint.slice(0, 16).match(/.{4}/g).join(' '), engine: story.engine })} ${words('story-no-judge')}</p>
    ${others(view.told, view, words)}
    <div class="cells no-print">${plain(words('story-print'), act.print, words('story-print-sub'))}${plain(words('story-csv'), act.csv, words('story-csv-sub'))}${plain(words('story-fhir'), act.fhir, words('story-fhir-sub'))}</div>
    ${view.said ? html`<p class="lede no-print" role="status">${view.said}</p>` : nothing}</article>`;
};

// `ask` asks the core about this plan and record; `today` gives the day for the names of the files.
export const outs = ({ ask, told, words, today, said }) => ({
  print() { print(); },
  csv() { save(`stopgap-story-${today()}.csv`, 'text/csv;charset=utf-8', csv(told().story, words)); said(words('story-file-made')); },
  fhir() {
    const answer = ask('exportFhir', {});
    if (answer.refused) throw new Error(`exportFhir: ${JSON.stringify(answer.refused)}`);
    save(`stopgap-clinic-${today()}.json`, 'application/fhir+json', answer.text);
    said(words('story-file-made'));
  },
});

// On the phone: a page of the bedside, with its head and foot.
export const story = (state, words, send) => sheet(state, words, html`${account({ told: state.told, name: state.plan.doc.person.name, line: state.planLine, dayWords: state.dayWords, said: state.said }, words,
  { print: () => send('storyPrint'), csv: () => send('storyCsv'), fhir: () => send('storyFhir') })}
  <div class="end no-print">${plain(words('back'), () => send('open', 'before'))}</div>`, { calm: true });

export const actions = ({ state, ask, words, clock: now }) => {
  const out = outs({ ask, told: () => state.told, words, today: () => now().text.slice(0, 10), said: text => { state.said = text; } });
  return { storyPrint: out.print, storyCsv: out.csv, storyFhir: out.fhir };
};
