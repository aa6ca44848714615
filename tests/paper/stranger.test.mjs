// The stranger's side in the languages of a journey: each file says every sentence the core asks for, with its slots, and says
// that nobody has checked it. What is missing in one language would be a gap on a card abroad.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { answers } from '../clinic/asking.mjs';
import { top } from '../house/read.mjs';

const folder = join(top, 'i18n/stranger');
const codes = readdirSync(folder).map(name => name.replace(/\.ftl$/, ''));
const plan = JSON.parse(readFileSync(join(top, 'pwa/demo/adult.json'), 'utf8'));
const card = languages => JSON.parse(answers('card', [{ plan, paper: 'a4', languages }])[0]);
const messages = text => new Map([...text.matchAll(/^([a-z][\w-]*) = (.+)$/gm)].map(match => [match[1], match[2]]));
const slots = text => [...text.matchAll(/\{ \$(\w+) \}/g)].map(match => match[1]).sort();

test('the core takes every language there is a file for, and no other', () => {
  assert.deepEqual([...card(codes).abroad.languages].sort(), [...codes].sort());
  assert.equal(codes.length, 12);
});

test('every language says every sentence, with its slots, and that nobody has checked it', () => {
  const { lines } = card([]).abroad;
  for (const code of codes) {
    const found = messages(readFileSync(join(folder, `${code}.ftl`), 'utf8'));
    assert.deepEqual([...found.keys()].sort(), [...lines.map(line => line.key), 'language', 'direction', 'unchecked'].sort(), code);
    for (const line of lines) assert.deepEqual(slots(found.get(line.key)), Object.keys(line.slots).sort(), `${code} ${line.key}`);
    assert.equal(found.get('direction'), code === 'ar' ? 'rtl' : 'ltr', code);
  }
});

test('sentences are short, and none holds a dose or a number to call', () => {
  for (const code of codes)
    for (const [key, value] of messages(readFileSync(join(folder, `${code}.ftl`), 'utf8'))) {
      for (const sentence of value.split(/(?<=[.?!।。？])\s*/)) assert.ok(sentence.split(/\s+/).length <= 15 && [...sentence].length <= 75, `${code} ${key}: ${sentence}`);
      if (key !== 'stranger-type') assert.doesNotMatch(value, /\d/, `${code} ${key}`);
    }
});
