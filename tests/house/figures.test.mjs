// What `version` says of the age of the figures is said of all of them: it knows as many as are defined, wherever that is, and names the
// oldest day of a check. The figures are counted here from their text, in another way than the build counts them.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answers } from '../clinic/asking.mjs';
import { code, files, read } from './read.mjs';

// A definition: a figure of some type and its name, with its values or without.
const defined = text => [...code(text, { strings: false }).matchAll(/\bFigure\s*<[^;&(){}]*>\s*(\w+)\s*[{=;]/g)].map(match => match[1]);
const dates = text => [...code(text).matchAll(/Mark::\w+,\s*\{(\d{4}),\s*(\d{1,2}),\s*(\d{1,2})\}\s*\}/g)]
  .map(([, year, month, day]) => `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);

const sources = files('core', /\.[hc]pp$/).map(read);
const version = JSON.parse(answers('version', [{}])[0]);

test('version knows every figure there is', () => {
  const names = sources.flatMap(defined);
  assert.equal(new Set(names).size, names.length);
  assert.ok(names.length > 100, `${names.length} figures`);
  assert.equal(version.figures, names.length);
});

test('version names the oldest day of a check of all figures', () => {
  const days = sources.flatMap(dates);
  assert.equal(days.length, version.figures);
  assert.equal(version.oldestCheckedOn, days.sort()[0]);
});

test('a figure is seen in each way of writing it, and what only names one is not', () => {
  for (const text of ['inline constexpr Figure<int> a{"a", 1};', 'constexpr Figure<std::array<int, 2>> a = {};', 'static const figures::Figure<\n  int> a\n{};'])
    assert.deepEqual(defined(text), ['a'], text);
  for (const text of ['const Figure<Value>& figure', 'struct Figure {', '// Figure<int> a{}', 'return "Figure<int> a{}";']) assert.deepEqual(defined(text), [], text);
});
