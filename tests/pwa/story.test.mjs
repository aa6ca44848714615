// The story of an incident, drawn without a browser from what the core tells: every kind of entry has its words, what never
// came stays open, and no cell of the file for a spreadsheet is a formula.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { answers, childPlan, plan, record } from '../clinic/asking.mjs';

const top = fileURLToPath(new URL('../..', import.meta.url));
const site = process.env.STOPGAP_SITE ?? join(top, 'build/plain');
assert.ok(existsSync(join(site, 'desk/story/story.js')), 'The site is not built yet. Run: bash pwa/run --build-only');

globalThis.document ??= { createTreeWalker: () => ({}), createComment: () => ({}) };
const { reader } = await import(join(site, 'words.js'));
const words = reader('en-GB', readFileSync(join(top, 'i18n/en.ftl'), 'utf8'));
const { account } = await import(join(site, 'desk/story/story.js'));
const { cell, csv, table } = await import(join(site, 'desk/story/csv.js'));

const flat = value => {
  if (value?.strings && value?.values) return value.strings.reduce((text, part, index) => text + part + (index < value.values.length ? flat(value.values[index]) : ''), '');
  if (Array.isArray(value)) return value.map(flat).join('');
  if (typeof value === 'function' || typeof value === 'symbol') return '';
  return String(value);
};
const bare = html => html.replace(/<[^>]*>/g, ' ').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

const at = clock => `2026-11-25T${clock}:00+00:00`;
const finger = value => ({ value, unit: 'mmol/L', from: 'finger' });
// Every kind of entry, each in every form it has.
const everything = [
  { id: 'a', at: at('00:00'), kind: 'incident', state: 'opened' },
  { id: 'b', at: at('00:01'), kind: 'glucose', ...finger(16) }, { id: 'b2', at: at('00:02'), kind: 'glucose', reading: 'HI', from: 'finger' }, { id: 'b3', at: at('00:03'), kind: 'glucose', reading: 'LO', from: 'sensor' },
  { id: 'c', at: at('00:04'), kind: 'ketones', blood: 0.8 }, { id: 'c2', at: at('00:05'), kind: 'ketones', blood: 'HI' }, { id: 'c3', at: at('00:06'), kind: 'ketones', urine: 'small' },
  { id: 'd', at: at('00:07'), kind: 'sign', what: ['drowsy', 'bellyPain'] }, { id: 'e', at: at('00:08'), kind: 'seen', what: ['leak', 'pumpDead'] },
  { id: 'f', at: at('00:09'), kind: 'doseShown', units: 4, insulin: 'rapid' }, { id: 'g', at: at('00:10'), kind: 'doseRefused', shown: 'f' },
  { id: 'h', at: at('00:11'), kind: 'injection', insulin: 'rapid', units: 4.5, with: 'syringe', glucose: finger(12), ketones: { unknown: 'noStrips' } },
  { id: 'h2', at: at('00:12'), kind: 'injection', insulin: 'long', units: 18, with: 'pen', sure: false },
  { id: 'i', at: at('00:13'), kind: 'pumpDose', units: 2, purpose: 'correction', glucose: finger(15) }, { id: 'i2', at: at('00:14'), kind: 'pumpDose', units: 2, purpose: 'meal' }, { id: 'i3', at: at('00:15'), kind: 'pumpDose', units: 0.1, purpose: 'automatic' },
  { id: 'j', at: at('00:16'), kind: 'offBody', units: 4, tubingEnd: 'sink' }, { id: 'j2', at: at('00:17'), kind: 'offBody', units: 4, tubingEnd: 'body' }, { id: 'j3', at: at('00:18'), kind: 'offBody', units: 4, tubingEnd: 'unsure' },
  { id: 'k', at: at('00:19'), kind: 'mistake', what: 'twice', insulin: 'rapid' }, { id: 'k2', at: at('00:20'), kind: 'mistake', what: 'wrongInsulin', insulin: 'long', units: 8 },
  { id: 'l', at: at('00:21'), kind: 'changed', what: ['set', 'reservoir', 'insulin'] }, { id: 'm', at: at('00:22'), kind: 'automation', state: 'paused' }, { id: 'm2', at: at('00:23'), kind: 'automation', state: 'on' },
  { id: 'n', at: at('00:24'), kind: 'pump', state: 'off' }, { id: 'n2', at: at('00:25'), kind: 'pump', state: 'on' }, { id: 'o', at: at('00:26'), kind: 'carbs', grams: 20 },
  { id: 'p', at: at('00:27'), kind: 'look', due: at('01:27'), what: ['glucose', 'ketones'] },
  { id: 'q', at: at('00:28'), kind: 'call', to: 'team', answered: true }, { id: 'q2', at: at('00:29'), kind: 'call', to: 'emergency', answered: false }, { id: 'q3', at: at('00:30'), kind: 'call', to: 'home', answered: true },
  { id: 'r', at: at('00:31'), kind: 'order', by: 'Dr L. Okonjo', units: 2, insulin: 'rapid', text: 'two more, then call' }, { id: 'r2', at: at('00:32'), kind: 'order', by: 'Dr L. Okonjo', text: '' },
  { id: 's', at: at('00:33'), kind: 'alarmSet', due: at('01:27') }, { id: 't', at: at('00:34'), kind: 'note', text: '=HYPERLINK("x")' }, { id: 't2', at: at('00:35'), kind: 'note', text: '' },
  { id: 'x', at: at('00:38'), kind: 'expires', what: 'vial', on: '2026-12-24' }, { id: 'x2', at: at('00:39'), kind: 'expires', what: 'other', on: '2026-12-31', text: 'Sensors' },
  { id: 'u', at: at('00:36'), kind: 'strike', target: 'b3', reason: 'wet finger' }, { id: 'u2', at: at('00:37'), kind: 'strike', target: 'h', reason: '' },
];
const told = (events, of = plan) => JSON.parse(answers('incident', [{ plan: of, record: record(events, of) }])[0]);
const view = answer => ({ told: answer, name: 'Ode Varga', line: 'Plan 3', dayWords: day => day });
const drawn = answer => flat(account(view(answer), words, {}));

test('every kind of entry has its words, and none leaves a gap', () => {
  const html = drawn(told(everything));
  assert.equal((html.match(/<h1/g) ?? []).length, 1);
  const text = bare(html);
  assert.doesNotMatch(text, /undefined|null|\[object|NaN|\{ ?\$/);
  for (const line of ['Glucose 16.0 mmol/L, finger', 'Glucose HI on the meter, finger', 'Ketones HI mmol/L', 'Urine strip: Small', 'Injected: 4.5 units, rapid-acting', 'Perhaps injected: 18 units, long-acting',
    'Ketones not tested', 'The number of units is not known', '8 units, long-acting', 'Ordered: 2 units', '“two more, then call”', 'A note without words', '“wet finger”', 'Struck, still counted', 'Next look planned for 01:27', 'Insulin vial: use by 2026-12-24', 'Sensors: use by 2026-12-31'])
    assert.ok(text.includes(line), `${line} is missing in: ${text}`);
  assert.equal((html.match(/<th scope="row">/g) ?? []).length, everything.length);
});

test('what the plan led to stands beside what was done until the next reading', () => {
  const html = drawn(told([{ id: 'b', at: at('03:10'), kind: 'glucose', ...finger(16) }, { id: 'c', at: at('03:11'), kind: 'ketones', blood: 0.8 },
    { id: 'h', at: at('03:15'), kind: 'injection', insulin: 'rapid', units: 4, with: 'syringe', glucose: finger(16), ketones: { blood: 0.8 } }, { id: 'l', at: at('03:20'), kind: 'changed', what: ['set'] }]));
  // The contract: 16.0 and 0.8 with nothing tried lead to 4 units; beside it the ketones, the injection and the new set.
  assert.match(html, /rowspan=3[^]*Inject by needle[^]*4\u00a0units/);
  assert.match(bare(html), /To the injection by needle 5 min at 03:15/);
  assert.match(bare(html), /To the new infusion set 10 min at 03:20/);
});

test('what never came says so, and is no number', () => {
  const text = bare(drawn(told([{ id: 'e', at: at('02:00'), kind: 'seen', what: ['leak'] }])));
  assert.equal((text.match(/Not written down/g) ?? []).length, 3);
  assert.match(text, /Time from the first suspicion, 02:00/);
  assert.match(bare(drawn(told([]))), /This record holds no incident/);
});

test('a plan in mg/dL and with a comma is told in its own writing', () => {
  const comma = structuredClone(childPlan);
  comma.decimalMark = ',';
  const text = bare(drawn(told([{ id: 'h', at: at('03:15'), kind: 'injection', insulin: 'rapid', units: 1.5, with: 'syringe', glucose: { value: 301, unit: 'mg/dL', from: 'finger' }, ketones: { blood: 0.8 } }], comma)));
  assert.match(text, /Injected: 1,5 units/);
  assert.match(text, /Glucose 301 mg\/dL/);
  assert.match(text, /Ketones 0,8 mmol\/L/);
});

test('a cell that a spreadsheet would run begins with an apostrophe', () => {
  for (const text of ['=1+1', '+1', '-1', '@x', '\tx', '\rx', '\nx', ' =1', '\u00a0=1', '\uff1d1', '\uff0b1', '\uff0d1', '\uff201',
    '\u200b=1', '\ufeff=1', '\u2060+1', '\u00ad-1', '\u200d@x', '\ufe0f=1', '\u{e0061}=1', ' \u200b =1', '\u200b\tx']) assert.equal(cell(text), `"'${text}"`);
  for (const text of ['1', 'x=1', '\u200bx=1', '4\u00a0units', '', '16.0', "'=1"]) assert.equal(cell(text), `"${text}"`);
  assert.equal(cell('\u2068=1\u2069'), '"\'=1"');   // the marks the words put round a slot hide nothing
  assert.equal(cell('say "no"'), '"say ""no"""');
});

// Read back by the grammar of RFC 4180, written here anew.
const readBack = text => {
  const rows = [[]];
  let rest = text.replace(/^\ufeff/, '');
  while (rest) {
    const [whole, inside, end] = rest.match(/^"((?:[^"]|"")*)"(,|\r\n)/) ?? assert.fail(`no cell at ${rest.slice(0, 40)}`);
    rows.at(-1).push(inside.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
    rest = rest.slice(whole.length);
  }
  return rows.slice(0, -1);
};

test('the table has a line for every entry, equally wide, and nothing in it is a formula', () => {
  const rows = readBack(csv(told(everything).story, words));
  assert.equal(rows.length, everything.length + 1);
  assert.ok(rows.every(row => row.length === rows[0].length));
  assert.deepEqual(rows.flat().filter(text => /^[=+\-@\t\r\n]/.test(text)), []);
  assert.ok(rows.some(row => row[3] === '\'=HYPERLINK("x")'));
  assert.deepEqual(rows[2].slice(0, 4), ['2026-11-25', '00:01', '1', 'Glucose 16.0 mmol/L, finger']);
  assert.deepEqual(readBack(table([['a\r\nb', 'c,d'], ['"', '']])), [['a\r\nb', 'c,d'], ['"', '']]);
});
