// What a key or a tap changes in the draft. Each change is kept at once, the core is asked again, and the page is drawn.
import { asTyped, get, isBlank, number, set, take, textAt } from './tree.js';
import { idOf } from './fields.js';
import { inPlan } from './place.js';
import { before, load } from './published.js';
import { sheet } from './sheet.js';

const day = /^(person\/(born|measuredOn)|agreement\/(reviewBy|on)|school\/(ordersExpire|nurseReviewedOn))$/;
const clock = /^day\/\w+\/[0-9]+\/from$/;
// Eight figures of a day and four of a clock get their signs; anything else stays as typed.
const written = (path, text) => (day.test(path) && /^[0-9]{8}$/.test(text) ? `${text.slice(0, 4)}-${text.slice(4, 6)}-${text.slice(6)}`
  : clock.test(path) && /^[0-9]{4}$/.test(text) ? `${text.slice(0, 2)}:${text.slice(2)}` : text);
const longest = 8;

export const edits = ({ view, person, changed, draw, words }) => {
  const put = (path, value) => { person().tree = set(person().tree, path, value); changed(); };
  // What stands in the box is what is kept: a box that shows something else would lie.
  const asKept = (box, text) => { if (box.value !== text) box.value = text; };
  const rows = () => get(person().tree, 'ketones/rows') ?? [];
  const insertColumn = (at, edge) => {
    const tree = person().tree;
    const columns = get(tree, 'ketones/columns');
    const wider = list => [...(list ?? []).slice(0, at), null, ...(list ?? []).slice(at)];
    person().tree = set(set(tree, 'ketones/columns', [...columns.slice(0, at), number(edge), ...columns.slice(at)]), 'ketones/rows', rows().map(row => ({ ...row, cells: wider(row.cells) })));
    changed();
  };
  const showField = path => {
    for (let steps = path.split('/'); steps.length; steps = steps.slice(0, -1)) {
      const box = document.getElementById(idOf(steps.join('/'))) ?? document.getElementById(idOf(`${steps.join('/')}/0`));
      if (box) { box.scrollIntoView({ block: 'center' }); box.focus(); return; }
    }
    const part = sheet.find(entry => entry.fields.some(field => path.startsWith(field.path) || field.path.startsWith(path)));
    document.getElementById(`part-${part?.id ?? 'person'}`)?.scrollIntoView();
  };

  return {
    put,
    number(path, box) { put(path, asTyped(box.value)); asKept(box, textAt(person().tree, path, view.mark)); },
    text(path, box) { put(path, written(path, box.value)); asKept(box, textAt(person().tree, path, view.mark)); },
    choose(path, value) {
      const node = /^(syringe|pen)\//.test(path) ? number(value) : /^person\/(pregnant|sglt2Inhibitor)$/.test(path) && value !== '' ? value === 'true' : value;
      put(path, node);
    },
    toggle(path, key, order) {
      const list = get(person().tree, path) ?? [];
      const chosen = list.includes(key) ? list.filter(one => one !== key) : [...list, key];
      put(path, order ? order.filter(one => chosen.includes(one)) : chosen);
      // Strips are read by every row or by none: the format knows nothing between.
      if (path.endsWith('/urine')) {
        const any = rows().some(row => row.urine?.length);
        put('ketones/rows', rows().map(({ urine, ...row }) => (any ? { ...row, urine: urine ?? [] } : row)));
      }
    },
    add(path, item) { put(path, [...(get(person().tree, path) ?? []), item]); },
    drop(path) { person().tree = take(person().tree, path); changed(); },
    addColumn() { insertColumn((get(person().tree, 'ketones/columns') ?? []).length, ''); },
    dropColumn(at) {
      person().tree = set(take(person().tree, `ketones/columns/${at}`), 'ketones/rows', rows().map(row => ({ ...row, cells: (row.cells ?? []).filter((_, index) => index !== at) })));
      changed();
    },
    putColumn(edge) {
      const columns = (get(person().tree, 'ketones/columns') ?? []).map((_, at) => textAt(person().tree, `ketones/columns/${at}`, '.'));
      const at = columns.findIndex(there => before(edge, there));
      insertColumn(at < 0 ? columns.length : at, edge);
    },
    putRow(edge) {
      const list = rows();
      const found = list.findIndex((_, index) => before(edge, textAt(person().tree, `ketones/rows/${index}/from`, '.')));
      const at = found < 0 ? list.length : found;
      const fresh = { from: number(edge), cells: (get(person().tree, 'ketones/columns') ?? []).map(() => null), ...(list.some(row => row.urine) ? { urine: [] } : {}) };
      put('ketones/rows', [...list.slice(0, at), fresh, ...list.slice(at)]);
    },
    async lay(name) {
      person().laid = name || null;
      view.published = name ? { name, table: await load(name), memory: false } : null;
      changed();
    },
    showMemory() { view.published = { ...view.published, memory: true }; draw(); },

    focus(path) {
      if (view.focused === path) return;
      view.focused = path;
      view.focusedPart = sheet.find(entry => entry.fields.some(field => path === field.path || path.startsWith(`${field.path}/`)))?.id;
      view.before = view.table;
      draw();
    },
    goTo(pointer) { showField(inPlan(pointer)); },
    scrollTo(id) { document.getElementById(id)?.scrollIntoView(); document.querySelector('.jump:not(.yards)')?.removeAttribute('open'); },

    // The keypad begins empty, with the number of now beside it. Every key is kept as it is typed, so a phone that dies loses none;
    // leaving puts the old number back. `write` takes what is typed, `undo` what was there, `at` is the box it was opened from.
    openEntry(path, label) {
      this.focus(path);
      const was = get(person().tree, path);
      view.entry = { label, counts: path, now: textAt(person().tree, path, view.mark), pad: { digits: '' }, write: text => put(path, asTyped(text)), undo: () => put(path, isBlank(was) ? number('') : was), back: () => showField(path) };
      draw();
    },
    // The same keypad for a number that is typed again. What stands in the plan is not shown on it: it would be copied.
    openRetype(entry) {
      const { typed } = entry;
      view.entry = { label: words('agree-retype-again', { place: entry.place }), counts: entry.field.at, now: '', pad: { digits: '' }, write: text => this.retype(entry, 'typed', { value: text }), undo: () => this.retype(entry, 'typed', { value: typed }),
        back: () => { const box = document.getElementById(`retype-${entry.key}`); box?.scrollIntoView({ block: 'center' }); box?.focus(); } };
      draw();
    },
    pad: (name, sign) => {
      const { digits } = view.entry.pad;
      if (name === 'key' && digits.length >= longest) { view.entry.pad = { digits, problem: words('pad-full') }; draw(); return; }
      const next = name === 'erase' ? digits.slice(0, -1) : sign === view.mark ? (digits.includes(sign) ? digits : `${digits || '0'}${sign}`) : digits === '0' ? sign : digits + sign;
      view.entry.pad = { digits: next };
      view.entry.write(next);
    },
    clearEntry() { const { write, back } = view.entry; view.entry = null; write(''); back(); },
    closeEntry(keep) {
      const { undo, back } = view.entry;
      view.entry = null;
      if (keep) draw();
      else undo();
      back();
    },
  };
};
