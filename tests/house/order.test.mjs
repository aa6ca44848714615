// The house as it stands on disk: what is at the top, what is tracked, what the documents name.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { files, found, none, read, top } from './read.mjs';

const git = (...words) => execFileSync('git', words, { cwd: top, encoding: 'utf8' }).split('\0').filter(Boolean);
const tracked = existsSync(join(top, '.git')) ? git('ls-files', '-z') : null;
const needsGit = { skip: !tracked && 'not a clone' };

test('the top level holds the house and nothing else', () => {
  const there = readdirSync(top).filter(name => !name.startsWith('.') && name !== 'build').sort();
  assert.deepEqual(there, ['CMakeLists.txt', 'DEVELOPERS.md', 'README.md', 'core', 'i18n', 'pwa', 'tests', 'wasm']);
});

const built = /(^|\/)(build|node_modules)\/|\.(o|a|wasm|map|woff2|pyc|log)$|(^|\/)(stopgap-core\.js|release\.js)$/;
test('nothing built or fetched is tracked', needsGit, () => {
  none(tracked.filter(path => built.test(path)));
});

test('no tracked file is large', needsGit, () => {
  const large = git('ls-tree', '-r', '-l', '-z', 'HEAD').map(line => line.match(/ +(\d+)\t(.*)$/)).filter(match => match && match[1].length > 6);
  none(large.map(match => match[2]));
});

// A registry address in a lock ties a build to one host.
const address = /"resolved"|https?:\/\/\S+/g;
test('a lock file names packages and checksums, and no address', () => {
  const locks = [...files('pwa', /package-lock\.json$/), ...files('tests', /package-lock\.json$/)];
  assert.equal(locks.length, 2);
  none(locks.flatMap(path => found(path, read(path), address)));
});

// A path in backquotes that begins with a folder of the house.
const named = text => [...text.matchAll(/`((?:core|wasm|pwa|tests|i18n|\.ci)\/[\w./-]*)`/g)].map(match => match[1]);
test('what the documents name is there', () => {
  for (const document of ['README.md', 'DEVELOPERS.md'])
    none(named(read(document)).filter(path => !existsSync(join(top, path))));
});

test('CMakeLists.txt is short', () => assert.ok(read('CMakeLists.txt').split('\n').length <= 60));

// Names of one machine or of somebody's workplace do not belong in a project.
test('no file names a folder of one machine', needsGit, () => {
  const path = /(?<![\w.])\/(?:work|home|root|tmp)\/[\w./-]+/g;
  const texts = tracked.filter(name => /\.(md|txt|hpp|cpp|mjs|js|json|html|css|ftl|sh)$|(^|\/)run$/.test(name) && existsSync(join(top, name)));
  none(texts.filter(name => !name.endsWith('order.test.mjs')).flatMap(name => found(name, read(name), path)));
});

test('what does not belong is seen', () => {
  assert.ok(built.test('build/native/stopgap') && built.test('pwa/node_modules/x') && built.test('pwa/stopgap-core.js') && !built.test('pwa/app.js'));
  assert.equal(found('x', '"resolved": "https://registry.example/a.tgz"', address).length, 2);
  assert.deepEqual(named('see `core/units/` and `core/nothing.cpp`, not `other/x`'), ['core/units/', 'core/nothing.cpp']);
});
