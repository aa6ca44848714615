// A plan while it is being written: the shape of the plan with every number as the text that was typed, never a float. What
// cannot be read yet is kept as typed. A number is {n: '2.5'}; its one decimal mark is kept as a point and shown as the plan's.
import { elements, list, members, object, string, truth } from '../text.js';

export const number = text => ({ n: text });
const isNumber = node => typeof node?.n === 'string';

// Steps of a path: "day/basal/0/value".
const stepsOf = path => path.split('/').filter(Boolean);
export const get = (tree, path) => stepsOf(path).reduce((node, step) => node?.[step], tree);

// A new tree that shares what did not change, so that nothing typed earlier is touched.
export const set = (tree, path, value) => {
  const [step, ...rest] = stepsOf(path);
  if (step === undefined) return value;
  const copy = Array.isArray(tree) ? [...tree] : { ...tree };
  copy[step] = set(copy[step] ?? {}, rest.join('/'), value);
  return copy;
};
export const take = (tree, path) => {
  const steps = stepsOf(path);
  const last = steps.pop();
  const parent = get(tree, steps.join('/'));
  return set(tree, steps.join('/'), Array.isArray(parent) ? parent.filter((_, at) => String(at) !== last)
    : Object.fromEntries(Object.entries(parent ?? {}).filter(([key]) => key !== last)));
};

export const isBlank = node => node === undefined || node === null || node === ''
  || (isNumber(node) ? node.n.trim() === '' : typeof node === 'object' && Object.values(node).every(isBlank));

// What was typed, as a person reads it in its field.
export const textAt = (tree, path, mark) => {
  const node = get(tree, path);
  if (isNumber(node)) return node.n.replaceAll('.', mark);
  return typeof node === 'string' ? node : '';
};

// The one decimal key: comma and point are the same key, and both are written as the plan's mark.
export const asTyped = text => number(text.replaceAll(',', '.').replaceAll(/\s/g, ''));

// Parts that may be left out whole; half written they are the core's to refuse.
const optional = new Set(['longActing', 'syringe', 'pen', 'school', 'travel', 'retyped', 'anyGlucose']);
// A draft says these even while they are empty.
const saidEmpty = new Set(['by', 'role', 'emergencyNumber']);
const plainNumber = /^-?(0|[1-9][0-9]*)(\.[0-9]+)?$/;

export const toText = (node, key = '') => {
  if (isNumber(node)) return node.n === '' ? undefined : plainNumber.test(node.n) ? node.n : string(node.n);
  if (node === null) return 'null';
  if (typeof node === 'string') return node === '' && !saidEmpty.has(key) ? undefined : string(node);
  if (typeof node === 'boolean') return truth(node);
  if (node === undefined || (optional.has(key) && isBlank(node))) return undefined;
  // A place in a list is never left out: what follows would move up into it.
  if (Array.isArray(node)) return list(node.map(item => toText(item) ?? 'null'));
  return object(Object.fromEntries(Object.entries(node).map(([name, item]) => [name, toText(item, name)])));
};

export const fromText = text => {
  if (text.startsWith('{')) return Object.fromEntries(Object.entries(members(text)).map(([key, part]) => [key, fromText(part)]));
  if (text.startsWith('[')) return elements(text).map(fromText);
  return /^[-0-9]/.test(text) ? number(text) : JSON.parse(text);
};

// A new plan: its parts and nothing in them. The day of writing is a day of the calendar; a schedule begins at midnight and the
// edges of the ketone table at nought, because the format knows no other beginning.
export const empty = (id, today) => ({
  format: 'stopgap.plan', version: number('1'), id, revision: number('1'), title: '',
  person: {}, agreement: { status: 'draft', by: '', role: '', on: today, houseRules: [] },
  rapid: {}, longActing: {}, syringe: {}, pen: {}, pump: {},
  day: Object.fromEntries(['correctionFactor', 'carbohydrateRatio', 'target', 'basal'].map(name => [name, [{ from: '00:00' }]])),
  high: { looksAfterInjection: [] }, ketones: { columns: [number('0')], rows: [{ from: number('0.0'), cells: [null] }], hi: null },
  limits: {}, squaring: { ways: [] }, offPump: {}, low: {}, contacts: [], emergencyNumber: '', school: {}, travel: {},
});

// A draft from a file may be anything. Parts and lists of another shape are left behind; what stands in them is the core's to judge.
const listPaths = ['agreement/houseRules', 'day/correctionFactor', 'day/carbohydrateRatio', 'day/target', 'day/basal', 'high/looksAfterInjection', 'ketones/columns', 'ketones/rows', 'squaring/ways', 'contacts'];
const isPart = node => typeof node === 'object' && node !== null && !Array.isArray(node) && !isNumber(node);
export const shaped = (given, id, today) => {
  const blank = empty(id, today);
  let tree = { ...blank, ...given };
  for (const [key, part] of Object.entries(blank)) if (isPart(part) && !isPart(tree[key])) tree = set(tree, key, part);
  for (const path of listPaths) if (!Array.isArray(get(tree, path))) tree = set(tree, path, get(blank, path));
  for (const path of ['school/mayInject', 'school/staff', 'travel/languages']) if (get(tree, path) !== undefined && !Array.isArray(get(tree, path))) tree = take(tree, path);
  for (const path of ['day/correctionFactor', 'day/carbohydrateRatio', 'day/target', 'day/basal', 'contacts']) tree = set(tree, path, get(tree, path).filter(isPart));
  const columns = get(tree, 'ketones/columns').length;
  const cells = list => Array.from({ length: columns }, (_, at) => (Array.isArray(list) ? list[at] ?? null : null));
  const rows = get(tree, 'ketones/rows').filter(isPart).map(row => ({ ...row, cells: cells(row.cells), ...(row.urine !== undefined && !Array.isArray(row.urine) ? { urine: [] } : {}) }));
  return set(set(tree, 'ketones/rows', rows), 'id', id);
};

// The next revision begins as a copy of the agreed one: nobody has agreed to it, and every reason is given anew.
export const revised = (text, today) => {
  const tree = fromText(text);
  const { retyped, ...agreement } = tree.agreement;
  // The number of a revision counts papers; it is no amount.
  return { ...tree, revision: number(String(BigInt(tree.revision.n) + 1n)), agreement: { ...agreement, status: 'draft', on: today, houseRules: [] } };
};
