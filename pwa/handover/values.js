// Every value of a plan in words, by the parts of the sheet, so that somebody can read it beside their paper. None is left out.
import { cellWays } from '../desk/ketones.js';
import { partFor, placeWords } from '../desk/place.js';
import { sheet } from '../desk/sheet.js';
import { get } from '../desk/tree.js';
import { visible } from '../views/visible.js';

const isValue = node => typeof node !== 'object' || node === null || typeof node.n === 'string';
const leaves = (node, path = '') => (isValue(node) ? [{ path, node }] : Object.entries(node).flatMap(([key, part]) => leaves(part, path ? `${path}/${key}` : key)));

const options = new Map(sheet.flatMap(part => part.fields.flatMap(field => (field.options ?? []).map(([key, said]) => [`${field.path} ${key}`, said]))));
const relations = words => ({ team: words('relation-team'), home: words('relation-home'), other: words('relation-other') });
const calls = words => ({ none: words('call-none'), team: words('call-team-word'), emergency: words('call-emergency-word') });

// The value of one number or word, or nothing where a path leads to more than one.
export const valueAt = (tree, path, mark, words) => { const node = path && get(tree, path); return node !== undefined && node !== '' && isValue(node) && node !== null ? valueText(tree, path, mark, words) : null; };

const valueText = (tree, path, mark, words) => {
  const node = get(tree, path);
  const said = options.get(`${path} ${node}`) ?? options.get(`${path.replace(/\/[0-9]+$/, '')} ${node}`);
  if (said) return words(said);
  if (typeof node?.n === 'string') {
    const way = cellWays(words)[/^ketones\/(?:rows\/[0-9]+\/cells\/[0-9]+|hi|anyGlucose)\/(?:fallback\/)?(\w+)$/.exec(path)?.[1]];
    const number = node.n.replaceAll('.', mark);
    return way ? `${way} ${number}` : number;
  }
  if (/^ketones\/rows\/[0-9]+\/call$/.test(path)) return calls(words)[node];
  if (/^ketones\/.*(cells\/[0-9]+|hi|anyGlucose|fallback)$/.test(path) && node === 'none') return words('cell-none');
  if (/^contacts\/[0-9]+\/relation$/.test(path)) return relations(words)[node];
  return typeof node === 'boolean' ? (node ? words('desk-yes') : words('desk-no')) : visible(String(node));
};

// The time of a setting stands in the name of its line.
const inItsName = /^day\/\w+\/[0-9]+\/from$/;

// [{title, lines: [{place, value}]}], in the order of the sheet. What has one name is one line: the words of a list, a cell's parts.
export const stays = (tree, leftOut, mark, words) => {
  const parts = new Map(sheet.map(part => [part.id, { title: words(part.title), lines: [] }]));
  for (const { path } of leaves(tree)) {
    if (leftOut(path) || inItsName.test(path)) continue;
    const { lines } = parts.get(partFor(path).id);
    const place = placeWords(tree, `/plan/${path}`, words, mark), value = valueText(tree, path, mark, words);
    if (lines.at(-1)?.place === place) lines.at(-1).value += `, ${value}`;
    else lines.push({ place, value });
  }
  return [...parts.values()].filter(part => part.lines.length);
};
