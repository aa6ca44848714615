// Every finding of the review has words, and a test on both sides of its edge. So has no word a finding that is gone.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { code, files, none, read, top } from './read.mjs';

// An id stands before the level of a finding, or before the place in a list where it is found.
const given = text => [...code(text).matchAll(/"([a-z][a-z0-9-]+)",\s*(?:FindingLevel::|item_path\()/g)].map(match => match[1]);
const worded = text => [...text.matchAll(/^finding-([a-z0-9-]+) =/gm)].map(match => match[1]);
// EXPECT_EQ(found("id", plan), "confirm …") and EXPECT_EQ(level("id", plan), none): one statement each.
const statements = text => code(text).split(';');
const sides = (id, texts) => {
  const about = texts.flatMap(statements).filter(statement => new RegExp(String.raw`\b(?:found|level)\(\s*"${id}",`).test(statement));
  const silent = about.filter(statement => /,\s*none\)/.test(statement));
  return { found: about.length - silent.length, silent: silent.length };
};

const ids = [...new Set(files('core/review', /\.cpp$/).flatMap(path => given(read(path))))].sort();
const tests = readdirSync(join(top, 'tests')).filter(name => /^review_\w+_test\.cpp$/.test(name)).map(name => read(`tests/${name}`));

test('every finding has words, and every word has its finding', () => {
  assert.ok(ids.length > 0);
  const words = worded(read('i18n/en.ftl'));
  none(ids.filter(id => !words.includes(id)));
  none(words.filter(id => !ids.includes(id)));
});

test('every finding is tested on both sides of its edge', () => {
  none(ids.filter(id => { const { found, silent } = sides(id, tests); return !found || !silent; }));
});

test('a finding without words or with one side only is seen', () => {
  assert.deepEqual(given('review.find(x, "lock-short", FindingLevel::confirm, "/plan/limits/lockHours", {});'), ['lock-short']);
  assert.deepEqual(given('against_rule(review, rule, share, "far-off", item_path(list, i, "value"), fall);'), ['far-off']);
  assert.deepEqual(worded('# note\nfinding-lock-short = Too short.\nother = x'), ['lock-short']);
  const one = 'EXPECT_EQ(found("lock-short", with({{"/x", 1}})), "confirm /plan/x");';
  assert.deepEqual(sides('lock-short', [one]), { found: 1, silent: 0 });
  assert.deepEqual(sides('lock-short', [`${one}\nEXPECT_EQ(level("lock-short", with({})), none) << x;`]), { found: 1, silent: 1 });
  assert.deepEqual(sides('lock', [one]), { found: 0, silent: 0 });
});
