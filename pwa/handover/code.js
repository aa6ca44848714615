// A code drawn: every dark square of one row in one stroke, on white by day and by night, with the four squares of quiet around it
// that the standard asks for.
import { html } from '../vendor/lit-html.js';
import encodeQR from '../vendor/qr/index.js';

export const codeRows = text => encodeQR(text, 'raw', { ecc: 'medium', encoding: 'alphanumeric', border: 4 });
export const versionOf = rows => String((rows.length - 8 - 17) / 4);

export const drawn = (rows, label) => html`<svg class="code" viewBox="0 0 ${rows.length} ${rows.length}" role="img" aria-label=${label} shape-rendering="crispEdges">
  <path class="code-paper" d="M0 0h${rows.length}v${rows.length}H0z"/><path class="code-ink" d=${rows.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')}/></svg>`;
