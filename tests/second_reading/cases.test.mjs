// Every case file says what the second reading works out from its request, key by key and nothing more.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { test } from 'node:test';
import { top } from '../house/read.mjs';
import { caseFiles, expectedAgain, isSchool } from './cases.mjs';

const cases = caseFiles().map(file => ({ name: relative(top, file), given: JSON.parse(readFileSync(file, 'utf8')) }));

for (const { name, given } of cases.filter(({ given }) => !isSchool(given)))
  test(name, () => {
    const { working, ...expect } = expectedAgain(given);
    const { working: stated, ...rest } = given.expect;
    assert.deepEqual(rest, expect);
    if (stated) assert.deepEqual(stated, working);
  });

test('school cases are the only ones the second reading leaves out', () => {
  const left = cases.filter(({ given }) => isSchool(given));
  assert.ok(left.every(({ name }) => name.includes('/SCH/')));
});
