// Insulin at work, and the glucose it takes off: as it is, and with the same dose once more by a pump that was not told. Fetched when
// somebody opens it. Only places on paper are worked out here; every amount in the words is the core's text.
import { html, nothing, svg } from '../vendor/lit-html.js';
import { plain, sheet } from './parts.js';
import { unitsText } from './units.js';

const wide = 330, high = 170, left = 6, top = 22;
const minutesAnHour = 60;

const frame = rows => {
  const last = rows.at(-1)[0];
  const across = minute => Math.round(left + (minute / last) * wide);
  const hours = rows.filter(([minute]) => minute % minutesAnHour === 0).map(([minute]) => minute);
  return { across, hours, axis: html`${hours.map(minute => svg`<path class="thin" d="M${across(minute)} ${top + high}v8"/>
    <text x=${across(minute)} y=${top + high + 26} text-anchor=${minute ? 'middle' : 'start'}>${minute / minutesAnHour}</text>`)}` };
};
const path = (rows, at, across, down) => `M${rows.map(row => `${across(row[0])} ${Math.round(down(+row[at]) * 10) / 10}`).join('L')}`;
const drawing = (id, body) => html`<svg class="d wide" viewBox="0 0 342 ${top + high + 44}" role="img" aria-labelledby="${id} ${id}-said">${body}</svg>`;
const valueOf = (text, mark) => +text.replace(mark, '.');

// What still acts: it falls to nothing.
const acting = (state, words) => {
  const rows = state.picture.curve.map(([minute, , absorbed]) => [minute, valueOf(absorbed, state.mark), absorbed]);
  const most = rows[0][1];
  const few = rows.filter(([minute], at) => minute % 5 === 0 || at === rows.length - 1);
  const { across, hours, axis } = frame(few);
  const down = value => top + (1 - value / most) * high;
  const said = hours.map(minute => [minute, unitsText(rows[minute][2], words)])
    .map(([minute, units]) => (minute ? words('picture-hour', { hours: String(minute / minutesAnHour), units }) : words('picture-now', { units })));
  return html`<section aria-labelledby="acting"><h2 class="lbl part" id="acting">${words('picture-acting')}</h2>
    ${drawing('acting', svg`<path class="thin" d="M${left} ${top}V${top + high}H${left + wide}"/><path class="fat" d=${path(few, 1, across, down)}/>${axis}`)}
    <p class="note">${words('picture-hours')}</p><ul class="lines small" id="acting-said">${said.map(text => html`<li>${text}</li>`)}</ul></section>`;
};

// What it takes off: the pump told, a whole line; the pump not told, a broken one. Below the thick line glucose is low.
const taking = (state, words) => {
  const { taken } = state.picture;
  const rows = taken.rows.map(([minute, told, untold]) => [minute, valueOf(told, state.mark), valueOf(untold, state.mark), told, untold]);
  const low = taken.toLow === null ? null : valueOf(taken.toLow, state.mark);
  const most = Math.max(rows.at(-1)[2], low ?? 0);
  const { across, hours, axis } = frame(rows);
  const down = value => top + (value / most) * (high - 8);
  const unit = state.plan.doc.glucoseUnit;
  const said = hours.filter(minute => minute).map(minute => rows.find(row => row[0] === minute)).map(([minute, , , told, untold]) =>
    words('picture-falls', { hours: String(minute / minutesAnHour), told, untold, unit }));
  const crosses = low !== null && rows.some(row => row[2] >= low) && !rows.some(row => row[1] >= low);
  return html`<section aria-labelledby="taking"><h2 class="lbl part" id="taking">${words('picture-taking', { unit })}</h2>
    ${drawing('taking', svg`<path class="thin" d="M${left} ${top}V${top + high}M${left} ${top}H${left + wide}"/>
      ${low === null ? nothing : svg`<path class="solid" d="M${left} ${down(low)}h${wide}v5h-${wide}z"/><text x=${left + 6} y=${Math.round(down(low)) - 6}>${words('picture-low')}</text>`}
      <path class="fat" d=${path(rows, 1, across, down)}/><path class="fat dash" d=${path(rows, 2, across, down)}/>${axis}`)}
    <p class="note">${words('picture-hours')}</p>
    <dl class="key"><div><dt><svg class="d" viewBox="0 0 60 12" aria-hidden="true"><path class="fat" d="M0 6H60"/></svg></dt><dd>${words('picture-told')}</dd></div>
      <div><dt><svg class="d" viewBox="0 0 60 12" aria-hidden="true"><path class="fat dash" d="M0 6H60"/></svg></dt><dd>${words('picture-untold', { dose: taken.dose })}</dd></div></dl>
    ${crosses ? html`<p class="warnbox">${words('picture-crosses')}</p>` : nothing}
    <ul class="lines small" id="taking-said">${said.map(text => html`<li>${text}</li>`)}</ul>
    <p class="note">${words('picture-alone')}</p></section>`;
};

export const picture = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('picture-title')}</h1></div>
  ${state.picture.taken ? html`<p class="lede">${words('picture-why')}</p>${taking(state, words)}` : html`<p class="lede">${words('picture-none')}</p>`}
  ${valueOf(state.picture.onBoard.absorbed, state.mark) > 0 ? acting(state, words) : nothing}
  <div class="end">${plain(words('back'), () => send('close'))}</div>`);
