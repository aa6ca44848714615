// What the review finds in a plan that came in, or in the one in use, in words: which number, what stands there, what is wrong with it.
import { html } from '../vendor/lit-html.js';
import { main, numbers, plain, plainSheet } from '../views/parts.js';
import { fromText } from '../desk/tree.js';
import { placeWords } from '../desk/place.js';
import { object } from '../text.js';
import { valueAt } from './values.js';

// One line a finding: {place, value, text}. A finding about several numbers at once has no single value.
export const told = (plan, findings, words) => {
  const tree = fromText(plan), mark = JSON.parse(plan).decimalMark;
  return findings.map(({ id, path, slots, earlier }) => ({ place: placeWords(tree, path, words, mark), value: valueAt(tree, path.replace(/^\/plan\/?/, ''), mark, words), text: [words(`finding-${id}`, slots), ...(earlier ? [words('bring-earlier')] : [])].join(' ') }));
};

// A character that nobody sees changes no dose, so it stops no plan that comes in: it may be the only plan there is at night. Where the
// plan is offered, the text is shown with the character's number (received.js). At a desk such a plan is not agreed.
const toldAsText = new Set(['hidden-character']);
// What stops a plan from being taken, and what its clinic was asked and did not answer.
export const reviewed = (ask, plan, words) => {
  const answer = ask('reviewPlan', object({ plan }));
  if (answer.refused) throw new Error(`reviewPlan: ${JSON.stringify(answer.refused)}`);
  const found = answer.findings.filter(finding => !toldAsText.has(finding.id));
  const of = level => told(plan, found.filter(finding => finding.level === level && !finding.retyped), words);
  return { refused: of('refuse'), unconfirmed: of('confirm') };   // what the plan's own list settles carries its reason
};

// Plans that came in and were not taken: they lie here as they came, and give no dose.
export const asidePage = (entries, words, send) => plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('aside-title')}</h1>
  <p class="lede">${words('aside-what')}</p>
  ${entries.map(({ name, line, refused }, at) => html`<section><h2 class="part">${name}</h2><p>${line}</p>${numbers(refused)}
    <div class="cells">${plain(words('aside-save'), () => send('asideSave', at), words('aside-save-sub'))}${plain(words('aside-remove'), () => send('asideRemove', at))}</div></section>`)}
  <div class="end">${main(words('back'), () => send('close'))}</div>`);
