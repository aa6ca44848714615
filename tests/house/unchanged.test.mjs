// A suite is left out only while every byte it rests on is as it was when it passed.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { memory } from '../unchanged.mjs';

const inFolder = deed => () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  mkdirSync(join(folder, 'data/deep'), { recursive: true });
  for (const name of ['program', 'data/one', 'data/deep/two']) writeFileSync(join(folder, name), name);
  const rests = ['program', 'data'].map(name => join(folder, name));
  try { deed({ at: name => join(folder, name), rests, fresh: again => memory(join(folder, 'book/passed.json'), again) }); } finally { rmSync(folder, { recursive: true }); }
};

test('what passed on the same bytes is known with its count', inFolder(({ rests, fresh }) => {
  assert.equal(fresh().passed('a', rests), undefined);
  fresh().keep('a', rests, { passed: 7, failed: 0 });
  assert.equal(fresh().passed('a', rests), 7);
  assert.equal(fresh().passed('b', rests), undefined);
}));

test('one changed, added, removed or renamed byte runs it again', inFolder(({ at, rests, fresh }) => {
  const again = change => { fresh().keep('a', rests, { passed: 7, failed: 0 }); assert.equal(fresh().passed('a', rests), 7); change(); assert.equal(fresh().passed('a', rests), undefined); };
  again(() => writeFileSync(at('program'), 'progran'));
  again(() => writeFileSync(at('data/deep/two'), 'data/deep/tw0'));
  again(() => writeFileSync(at('data/deep/three'), ''));
  again(() => rmSync(at('data/deep/three')));
  again(() => { rmSync(at('data/one')); writeFileSync(at('data/other'), 'data/one'); });
  again(() => rmSync(at('program')));
}));

test('a failure is never remembered, and wipes out an older pass', inFolder(({ rests, fresh }) => {
  fresh().keep('a', rests, { passed: 7, failed: 0 });
  fresh().keep('a', rests, { passed: 6, failed: 1 });
  assert.equal(fresh().passed('a', rests), undefined);
  fresh().keep('a', rests, { passed: 0, failed: 0 });
  assert.equal(fresh().passed('a', rests), undefined);
}));

test('what rests on nothing, or is asked for again, always runs', inFolder(({ rests, fresh }) => {
  fresh().keep('a', [], { passed: 7, failed: 0 });
  assert.equal(fresh().passed('a', []), undefined);
  fresh().keep('a', rests, { passed: 7, failed: 0 });
  assert.equal(fresh(true).passed('a', rests), undefined);
}));

test('a book that cannot be read remembers nothing', inFolder(({ at, rests, fresh }) => {
  fresh().keep('a', rests, { passed: 7, failed: 0 });
  writeFileSync(at('book/passed.json'), '{"a":');
  assert.equal(fresh().passed('a', rests), undefined);
}));
