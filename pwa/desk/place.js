// A place in the plan, in words: the label of its field, and in a list which one of the list.
import { get, textAt } from './tree.js';
import { inside, sheet } from './sheet.js';

const labels = new Map([...sheet.flatMap(part => part.fields.map(field => [field.path, field.label])), ...Object.entries(inside)]);
const partOf = new Map(sheet.flatMap(part => part.fields.map(field => [field.path, part.id])));

// "/plan/day/basal/1/value" -> "day/basal/1/value"; comparing and packing give the same pointers under other roots.
export const inPlan = pointer => pointer.replace(/^\/(plan|before|after)?\/?/, '');
const pattern = path => path.replace(/\/[0-9]+(?=\/|$)/g, '/*');

const labelOf = path => {
  for (let steps = path.split('/'); steps.length; steps = steps.slice(0, -1)) {
    const label = labels.get(steps.join('/')) ?? labels.get(pattern(steps.join('/')));
    if (label) return label;
  }
  return null;
};

const cellWords = (tree, path, words, mark) => {
  const [, row, column] = /^ketones\/rows\/([0-9]+)\/cells\/([0-9]+)/.exec(path);
  const ketones = textAt(tree, `ketones/rows/${row}/from`, mark), glucose = textAt(tree, `ketones/columns/${column}`, mark);
  return words('place-cell', { ketones: ketones || '–', glucose: glucose || '–' });
};

export const placeWords = (tree, pointer, words, mark) => {
  const path = inPlan(pointer);
  if (/^ketones\/rows\/[0-9]+\/cells\/[0-9]+/.test(path)) return cellWords(tree, path, words, mark);
  const label = labelOf(path);
  if (!label) return path || words('place-whole');
  const name = words(label);
  const [, list] = /^(day\/\w+\/[0-9]+)/.exec(path) ?? [];
  if (list) return words('place-from', { name, clock: textAt(tree, `${list}/from`, mark) || '–' });
  const [, row] = /^(ketones\/rows\/[0-9]+)/.exec(path) ?? [];
  if (row) return words('place-in-row', { name, ketones: textAt(tree, `${row}/from`, mark) || '–' });
  const [, number] = /^(?:contacts|high\/looksAfterInjection|ketones\/columns|school\/\w+|travel\/\w+)\/([0-9]+)/.exec(path) ?? [];
  // Which of the list: people count from one.
  return number === undefined ? name : words('place-nth', { name, nth: String(+number + 1) });
};

// The field that a finding or a refusal belongs to: itself, or the field of the sheet that holds it.
export const fieldOf = pointer => {
  const path = inPlan(pointer);
  for (let steps = path.split('/'); steps.length; steps = steps.slice(0, -1)) if (partOf.has(steps.join('/'))) return steps.join('/');
  return path;
};
// The part of the sheet a place belongs to; what is written by the act of agreeing belongs to the agreement.
export const partFor = pointer => {
  const path = inPlan(pointer);
  const near = step => sheet.find(part => part.fields.some(field => field.path === path || path.startsWith(`${field.path}/`) || (step && field.path.startsWith(`${step}/`))));
  return near() ?? near(path.split('/')[0]) ?? sheet.find(part => part.id === 'agreement');
};
export const touches = (path, pointer) => { const at = inPlan(pointer); return at === path || at.startsWith(`${path}/`); };
export const isThere = (tree, pointer) => get(tree, inPlan(pointer)) !== undefined;
