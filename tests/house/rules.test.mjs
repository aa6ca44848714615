// A rule is found by its id: in the list of rules, in its file, in the index of DEVELOPERS.md, and in a test.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { code, files, none, read, top } from './read.mjs';

const list = 'core/rules/rules.hpp';
const gate = ['REC', 'CLK', 'ASK', 'HLD'];   // what can close, after a rule has chosen

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

test('every rule, and every way the gate closes, has cases in a folder of its id', () => {
  none([...ids, ...gate].filter(id => !existsSync(join(top, 'tests/cases', id)) || files(`tests/cases/${id}`, /\.json$/).length === 0));
});

// The last column of the hazards names what holds each control down: a test of the core, a file, or a folder.
const hazards = text => text.split('\n## ').find(part => part.startsWith('Hazards')).split('\n')
  .filter(line => line.startsWith('| ') && !line.startsWith('| cause')).map(line => [...line.split('|').at(-2).matchAll(/`([^`]+)`/g)].map(match => match[1]));
const isTest = (name, tests) => name.includes('/') ? existsSync(join(top, name)) : new RegExp(`\\(${name.replace('.', ', ')}\\)`).test(tests);

test('every hazard names a test that is there', () => {
  const tests = files('tests', /_test\.cpp$/).map(read).join('\n');
  const rows = hazards(read('DEVELOPERS.md'));
  assert.ok(rows.length > 20);
  none(rows.flatMap((names, at) => names.length ? names.filter(name => !isTest(name, tests)) : [`row ${at + 1} names none`]));
  assert.ok(!isTest('Dose.ThereIsNoSuchTest', tests) && !isTest('tests/nothing.cpp', tests));
});

test('a rule without an entry is seen', () => {
  assert.deepEqual(absent(['LOW', 'KET'], 'decidedBy == "LOW"'), ['KET']);
  assert.deepEqual(listed('// LOW  Glucose is low.   rules/low.cpp\n// not a rule'), [{ id: 'LOW', sentence: 'Glucose is low.', file: 'core/rules/low.cpp' }]);
  assert.deepEqual(indexed('| LOW | Glucose is low. | `core/rules/low.cpp` |').length, 1);
  assert.deepEqual(inOrder('{Rule::LWE, holds_LWE, say_LWE}, // {Rule::EMR,'), ['LWE']);
});
