// Misuse of a unit must not compile. Each file holds the forbidden line and its legal twin: the twin must compile, and the
// forbidden one must fail with the message the file names, so that a typing error does not pass for success.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { files, read, top } from './read.mjs';

const compile = (path, ...more) => spawnSync('g++',
  ['-std=c++20', '-Wall', '-Wextra', '-fsyntax-only', '-fdiagnostics-color=never', `-I${join(top, 'core')}`, `-I${top}`, ...more, join(top, path)],
  { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });

const cases = files('tests/must_not_compile', /\.cpp$/);

test('there are cases', () => assert.ok(cases.length > 0));

for (const path of cases) {
  test(path, () => {
    const says = read(path).match(/^\/\/ Says: (.+)$/m)?.[1];
    assert.ok(says && read(path).includes('#ifdef FORBIDDEN'), 'the file names no message, or holds no twin');
    const legal = compile(path);
    assert.equal(legal.status, 0, legal.stderr);
    const forbidden = compile(path, '-DFORBIDDEN');
    assert.notEqual(forbidden.status, 0, 'the forbidden line compiles');
    const errors = forbidden.stderr.split('\n').filter(line => /\berror:/.test(line));
    assert.ok(errors.length > 0 && errors.every(line => new RegExp(says).test(line)), forbidden.stderr);
  });
}
