// Rules of thumb beside the sheet: the number of the plan, the rule's, and the ends within which the review asks nothing. All of it
// is the core's text. Nothing here is a button, and nothing of it ever gets into a field.
import { html, nothing } from '../vendor/lit-html.js';
import { placeWords } from './place.js';

const kinds = words => ({
  'correction-factor': { title: () => words('field-factor'), whole: text => text, rule: () => words('yardstick-correction-factor') },
  'carbohydrate-ratio': { title: () => words('field-ratio'), whole: text => words('yardstick-grams', { text }), rule: () => words('yardstick-carbohydrate-ratio') },
  'basal-share': { title: () => words('field-basal'), whole: text => words('yardstick-percent', { text }), rule: () => words('yardstick-basal-share') },
  'daily-total-per-kg': { title: () => words('yardstick-title-per-kg'), whole: text => words('yardstick-per-kg', { text }), rule: () => words('yardstick-daily-total-per-kg') },
  'daily-total': { title: () => words('field-daily-total'), whole: text => text, rule: () => words('yardstick-daily-total') },
});

// One rule with all the numbers it is about: what it gives, where nothing is asked, and each number of the plan.
const one = (view, words, entries) => {
  const [{ id, expected, from, to, mark, source }] = entries;
  const kind = kinds(words)[id];
  const asked = ({ path }) => view.findings.some(finding => finding.path === path && finding.id.startsWith(id));
  return html`<li><b>${kind.title()}</b><span class="help">${kind.rule()} ${source ? words('ground-source', { mark, source }) : words('ground-mark', { mark })}</span>
    ${expected ? html`<span>${words('yardstick-expected', { text: kind.whole(expected) })}</span>` : nothing}<span>${words('yardstick-ends', { from, to: kind.whole(to) })}</span>
    ${entries.map(entry => html`<span class=${asked(entry) ? 'have off' : 'have'}>${entries.length > 1 ? words('yardstick-have-at', { place: placeWords(view.tree, entry.path, words, view.mark), text: kind.whole(entry.have) }) : words('yardstick-have', { text: kind.whole(entry.have) })}</span>`)}</li>`;
};
const byRule = yardsticks => [...yardsticks.reduce((rules, entry) => rules.set(entry.id, [...(rules.get(entry.id) ?? []), entry]), new Map()).values()];

export const yardsticks = (view, words) => html`<ul>${byRule(view.yardsticks).map(entries => one(view, words, entries))}</ul>`;
