// The page places texts the core wrote. It neither counts nor formats an amount, and it asks no other host for anything.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { code, files, found, none, read, top } from './read.mjs';

const banned = /\.toFixed\b|\.toPrecision\b|\bparseFloat\b|(?<![\w.])Number\s*\(|\bIntl\.NumberFormat\b|\.toLocaleString\b|\b(?:inner|outer)HTML\b|insertAdjacentHTML|document\.write|(?<![\w.])eval\s*\(|\bnew Function\b|setAttribute\(\s*['"]style/g;
// The name of a drawing's format is not a request.
const otherHost = /\b(?:https?|wss?):\/\/(?!www\.w3\.org\/)[^\s'"`)]*|['"(]\/\/[a-z][\w.-]*\.[a-z]/g;

const scripts = files('pwa', /\.js$/);
const shipped = files('pwa', /\.(js|html|css|webmanifest|svg)$/);

test('no arithmetic shortcut, number format or markup from text in the page', () => {
  none(scripts.flatMap(path => found(path, code(read(path)), banned)));
});

test('nothing the page ships names another host', () => {
  none(shipped.flatMap(path => found(path, path.endsWith('.js') ? code(read(path)) : read(path), otherHost)));
});

test('no script or style inside a page: the policy would stop it', () => {
  const inline = /<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=/g;
  none(files('pwa', /\.html$/).flatMap(path => found(path, read(path), inline)));
});

// Message ids. Each is spelled out in the code, so a search for it finds its place.
const language = 'i18n/en.ftl';
const messages = text => [...text.matchAll(/^([a-z][\w-]*) *=/gm)].map(match => match[1]);
const asked = text => [...code(text).matchAll(/\bwords\(\s*'([\w-]+)'/g)].map(match => match[1]);
const quoted = text => [...code(text).matchAll(/['"`]([a-z][\w-]*)['"`]/g)].map(match => match[1]);

test('every message the code asks for has words, and every message is asked for', { skip: !existsSync(join(top, language)) }, () => {
  const ids = messages(read(language));
  assert.ok(ids.length > 0);
  none(ids.filter((id, at) => ids.indexOf(id) !== at));
  const missing = scripts.flatMap(path => asked(read(path)).filter(id => !ids.includes(id)).map(id => `${path}: ${id}`));
  none(missing);
  // Keys of the core reach the page as they are.
  const named = new Set([...scripts, ...files('core', /\.[hc]pp$/)].flatMap(path => quoted(read(path))));
  // A finding reaches it by its id alone.
  none(ids.filter(id => !named.has(id.replace(/^finding-/, ''))));
});

test('every key the core gives has words', { skip: !existsSync(join(top, language)) }, () => {
  const ids = messages(read(language));
  const keys = files('core', /\.[hc]pp$/).flatMap(path => quoted(read(path))).filter(text => /^step-[a-z0-9-]+$/.test(text));
  none(keys.filter(key => !ids.includes(key)));
});

test('what is banned is seen', () => {
  const seen = text => found('pwa/x.js', code(text), banned).length;
  for (const bad of ['dose.toFixed(1)', 'Number(text)', 'node.innerHTML = text', 'eval(text)', 'new Intl.NumberFormat()', 'parseFloat(x)']) assert.equal(seen(bad), 1, bad);
  for (const good of ['// Number(text) is not used', 'medieval(x)', 'Number.isInteger(x)']) assert.equal(seen(good), 0, good);
  assert.equal(found('x', "fetch('https://elsewhere.example/a')", otherHost).length, 1);
  assert.equal(found('x', '<svg xmlns="http://www.w3.org/2000/svg">', otherHost).length, 0);
  assert.deepEqual(asked("words('home-title', { name })"), ['home-title']);
});
