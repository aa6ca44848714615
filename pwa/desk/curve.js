// How long a dose acts by the plan's hours of action: one row a minute from the core, drawn and said in words.
import { html, nothing, svg } from '../vendor/lit-html.js';

const wide = 480, high = 150, left = 8, top = 10;

// Only places on paper are worked out here; the amounts in the words are the core's texts.
export const curve = (view, words) => {
  if (!view.curve?.length) return nothing;
  const last = view.curve.at(-1)[0];
  const point = ([minute, counted]) => `${Math.round((left + (minute / last) * wide) * 10) / 10} ${Math.round((top + (1 - +counted) * high) * 10) / 10}`;
  const hours = view.curve.filter(([minute]) => minute > 0 && minute % 60 === 0);
  const said = hours.map(([minute, counted]) => words('curve-hour', { hours: String(minute / 60), units: counted.replace('.', view.mark) }));
  return html`<section class="curve" aria-labelledby="curve"><h2 id="curve">${words('curve-title')}</h2>
    <svg class="d" viewBox="0 0 496 190" role="img" aria-labelledby="curve"><path class="thin" d="M${left} ${top}V${top + high}H${left + wide}"/>
      <path class="fat" d="M${view.curve.filter((_, at) => at % 5 === 0 || at === view.curve.length - 1).map(point).join('L')}"/>
      ${hours.map(([minute]) => svg`<path class="thin" d="M${Math.round(left + (minute / last) * wide)} ${top + high}v8"/><text x=${Math.round(left + (minute / last) * wide)} y=${top + high + 26} text-anchor="middle">${minute / 60}</text>`)}</svg>
    <p class="help">${words('curve-help')} ${said.join(', ')}.</p></section>`;
};
