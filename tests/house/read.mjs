// What the house tests share: the files of a folder, and code without its comments.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const top = join(dirname(fileURLToPath(import.meta.url)), '../..');
export const read = path => readFileSync(join(top, path), 'utf8');

export const files = (folder, ending) => readdirSync(join(top, folder), { withFileTypes: true })
  .filter(entry => entry.name !== 'node_modules')
  .flatMap(entry => entry.isDirectory() ? files(join(folder, entry.name), ending) : [relative(top, join(top, folder, entry.name))])
  .filter(path => ending.test(path)).sort();

// Comments become blanks, so that a line keeps its number; with `strings: false` the inside of strings goes too.
export const code = (text, { strings = true } = {}) =>
  text.replace(/R"(\w*)\([^]*?\)\1"|"(?:\\.|[^"\\\n])*"|(?<![\w])'(?:\\.|[^'\\\n])*'|\/\/[^\n]*|\/\*[^]*?\*\//g, part =>
    part.startsWith('/') ? part.replace(/[^\n]/g, ' ') : strings ? part : part.replace(/[^\n"']/g, '_'));

// Every match of `pattern` as "path:line: what stands there".
export const found = (path, text, pattern) => text.split('\n').flatMap((line, at) =>
  [...line.matchAll(pattern)].map(match => `${path}:${at + 1}: ${match[0].trim()}`));

// Fails with the whole list, where a comparison would show a part of it.
export const none = list => { if (list.length) assert.fail(`\n${list.join('\n')}`); };
