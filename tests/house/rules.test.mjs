// A rule is found by its id: in the list of rules, in its file, in the index of DEVELOPERS.md, and in a test.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { code, files, none, read, top } from './read.mjs';

const list = 'core/rules/rules.hpp';
const gate = ['CLK', 'ASK', 'HLD'];   // what can close, after a rule has chosen

// "// KET  One sentence.   rules/ketones.cpp"
const listed = text => [...text.matchAll(/^\/\/ ([A-Z]{3})  (.*?\.)\s+(rules\/[\w.]+)$/gm)]
  .map(([, id, sentence, file]) => ({ id, sentence, file: `core/${file}` }));
const inOrder = text => [...code(text).matchAll(/\{\s*Rule::([A-Z]{3}),/g)].map(match => match[1]);
// "| KET | One sentence. | `core/rules/ketones.cpp` |"
const indexed = text => [...text.matchAll(/^\| ([A-Z]{3}) \| (.*?) \| `([\w./]+)` \|$/gm)]
  .map(([, id, sentence, file]) => ({ id, sentence, file }));
const absent = (wanted, text) => wanted.filter(id => !new RegExp(`(?<![A-Z])${id}(?![A-Z])`).test(text));

const rules = listed(read(list));
const ids = rules.map(({ id }) => id);

test('the list tells each rule once, in the order in which they are asked', () => {
  assert.equal(rules.length, 22);
  assert.deepEqual(inOrder(read(list)), ids);
});

test('the index of DEVELOPERS.md says the same', () => {
  assert.deepEqual(indexed(read('DEVELOPERS.md')).filter(({ id }) => !gate.includes(id)), rules);
  none(absent(gate, read('DEVELOPERS.md')));
});

test('each rule is in the file the list names, which says so at its head', () => {
  none(rules.filter(({ file }) => !existsSync(join(top, file))));
  for (const { id, file } of rules) {
    const text = read(file);
    none(absent([id], text.slice(0, text.search(/^#include/m))));
    assert.match(code(text), new RegExp(`\\bholds_${id}\\(`), file);
  }
});

test('every rule, and every way the gate closes, has a case in a test', () => {
  const cases = files('tests', /_test\.cpp$|\/cases\/.*\.jsonl?$/).map(read).map(text => code(text)).join('\n');
  none(absent([...ids, ...gate], cases));
});

test('a rule without an entry is seen', () => {
  assert.deepEqual(absent(['LOW', 'KET'], 'decidedBy == "LOW"'), ['KET']);
  assert.deepEqual(listed('// LOW  Glucose is low.   rules/low.cpp\n// not a rule'), [{ id: 'LOW', sentence: 'Glucose is low.', file: 'core/rules/low.cpp' }]);
  assert.deepEqual(indexed('| LOW | Glucose is low. | `core/rules/low.cpp` |').length, 1);
  assert.deepEqual(inOrder('{Rule::LWE, holds_LWE, say_LWE}, // {Rule::EMR,'), ['LWE']);
});
