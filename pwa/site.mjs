// Puts the site together. Everything lies in one folder, and release.js says what each file must be.
//   node pwa/site.mjs            -> build/site          build/plain has the same scripts as they were written
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { joined } from './join.mjs';
import { bare, faces } from './faces.mjs';
import { answered } from './known_answers.mjs';
import { load } from '../wasm/core.mjs';

const top = fileURLToPath(new URL('..', import.meta.url));
const site = join(top, 'build/site');
const plain = join(top, 'build/plain');
const kept = join(top, 'build/site-parts');   // scripts made smaller, kept as long as they are the same
const npm = join(top, 'pwa/node_modules');
const moduleFolder = join(top, 'build/wasm/wasm');

// What in pwa/ serves the build and is no part of the page.
const notShipped = /^(node_modules|package(-lock)?\.json|\.npmrc|run|install\.sh|(headers|withdrawn)\.txt|.*\.mjs)$/;

const under = folder => readdirSync(folder, { withFileTypes: true, recursive: true })
  .filter(entry => entry.isFile()).map(entry => relative(folder, join(entry.parentPath ?? entry.path, entry.name))).sort();
const digest = (kind, bytes) => createHash(kind).update(bytes).digest();
// The tools' maps are not shipped, so the line that asks for them goes too.
const script = path => readFileSync(path, 'utf8').replace(/\n\/\/# sourceMappingURL=.*\s*$/, '\n');

const licence = name => {
  const own = join(npm, name, 'LICENSE');
  if (existsSync(own)) return readFileSync(own);
  const { license } = JSON.parse(readFileSync(join(npm, name, 'package.json'), 'utf8'));
  return readFileSync(join('/usr/share/common-licenses', license));   // the package names its licence and leaves the text out
};

const core = await load();
const { engine } = JSON.parse(core.ask('version', '{}'));
if (!engine) throw new Error('The module does not say which engine it is.');

const parts = async () => {
  const files = new Map();
  files.set('known_answers.js', `export const known = ${JSON.stringify(answered((call, request) => core.ask(call, request)))};\n`);
  for (const path of under(join(top, 'pwa')))
    if (!notShipped.test(path.split('/')[0])) files.set(path, readFileSync(join(top, 'pwa', path)));
  // What a stranger reads is short and printed by one page: it has no faces.
  for (const path of under(join(top, 'i18n')).filter(path => path.startsWith('stranger/'))) files.set(`i18n/${path}`, bare(readFileSync(join(top, 'i18n', path), 'utf8')));
  for (const path of under(join(top, 'i18n')))
    if (/^[^/]+\.ftl$/.test(path))
      for (const [name, text] of Object.entries(faces(readFileSync(join(top, 'i18n', path), 'utf8')))) files.set(`i18n/${path.replace('.ftl', name)}.ftl`, text);

  files.set('vendor/lit-html.js', script(join(npm, 'lit-html/lit-html.js')));
  files.set('vendor/idb.js', script(join(npm, 'idb/build/index.js')));
  const fluent = join(npm, '@fluent/bundle/esm');
  for (const path of under(fluent)) if (path.endsWith('.js')) files.set(`vendor/fluent/${path}`, script(join(fluent, path)));

  for (const name of ['index.js', 'decode.js']) files.set(`vendor/qr/${name}`, script(join(npm, 'qr', name)));

  const font = '@fontsource-variable/atkinson-hyperlegible-next';
  for (const set of ['latin', 'latin-ext']) {
    const name = `atkinson-hyperlegible-next-${set}-wght-normal.woff2`;
    files.set(`fonts/${name}`, readFileSync(join(npm, font, 'files', name)));
  }
  // In one file: two of them are nearly the same long text, and together they are half as large.
  const held = [['Atkinson Hyperlegible Next', licence(font)], ['lit-html', licence('lit-html')], ['idb', licence('idb')], ['fluent', licence('@fluent/bundle')],
    ['qr', licence('qr')], ['qr, instead of the one before', readFileSync(join(npm, 'qr/LICENSE-MIT'))]];
  files.set('licences/modules.txt', held.map(([name, text]) => `${name}\n\n${String(text).trim()}\n`).join('\n\n'));

  files.set('stopgap-core.js', readFileSync(join(moduleFolder, 'stopgap-core.js')));
  files.set('stopgap-core.wasm', readFileSync(join(moduleFolder, 'stopgap-core.wasm')));
  return files;
};

// Equal bytes are not written again, and what no longer belongs here is taken away.
const lay = (folder, files) => {
  mkdirSync(folder, { recursive: true });
  for (const [path, bytes] of files) {
    const at = join(folder, path);
    if (existsSync(at) && readFileSync(at).equals(Buffer.from(bytes))) continue;
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, bytes);
  }
  for (const path of under(folder)) if (!files.has(path)) rmSync(join(folder, path));
};

const files = await parts();
lay(plain, files);
const ours = path => path.endsWith('.js') && path !== 'sw.js';
const scripts = new Map([...files].filter(([path]) => ours(path)).map(([path, text]) => [path, String(text)]));
for (const path of scripts.keys()) files.delete(path);
for (const [path, text] of await joined(scripts, ['app.js', 'paper.js', 'danger.js'], kept)) files.set(path, text);

// The day of the commit this is built from: a clock that shows an earlier one is wrong. The same commit gives the same day, wherever and
// whenever it is built; STOPGAP_DAY gives another, for tests whose clock stands. Outside a git tree there is none.
const day = () => {
  if (process.env.STOPGAP_DAY !== undefined) return process.env.STOPGAP_DAY;
  try {
    return execFileSync('git', ['-C', top, 'log', '-1', '--format=%cd', '--date=format-local:%Y-%m-%d'], { env: { ...process.env, TZ: 'UTC' }, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  } catch { return ''; }
};
const built = day();
if (!/^(\d{4}-\d\d-\d\d)?$/.test(built)) throw new Error(`This is no day: ${built}`);
const dated = String(files.get('index.html')).replace('name="built" content=""', `name="built" content="${built}"`);
if (built && dated === String(files.get('index.html'))) throw new Error('index.html has no place for the day it was built from.');
files.set('index.html', dated);

const checksum = bytes => `sha256-${digest('sha256', bytes).toString('base64')}`;
const checksums = () => Object.fromEntries([...files].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, bytes]) => [path, checksum(bytes)]));
const pages = [...files.keys()].filter(path => path.endsWith('.html'));
// What a page fetches later is compared by pwa/checked.js with this list. A script stands there with those that it cannot do without.
const needs = path => (ours(path) ? [...String(files.get(path)).matchAll(/\bfrom"([^"]+)"|\bimport"([^"]+)"/g)].map(([, from, whole]) => posix.join(posix.dirname(path), from ?? whole)).filter(need => files.has(need)) : []);
const neededBy = path => [...new Set(needs(path).flatMap(need => [need, ...neededBy(need)]))];
const listed = [...files.keys()].filter(path => !pages.includes(path) && path !== 'sw.js').sort()
  .map(path => [path, checksum(files.get(path)), ...neededBy(path)].join(' ')).join('\n');
// What a page names itself, it names with a digest. What such a script imported would be compared by some browsers only.
for (const path of pages)
  for (const [, first] of String(files.get(path)).matchAll(/<script type="module" src="([^"]+)"/g))
    if (needs(first).length) throw new Error(`${first} needs ${needs(first)} beside it.`);
// What a page names itself is compared by the browser. It cannot do so for icons and letters, nor for what is only fetched ahead: the
// keeper compares those before it keeps them, and pwa/checked.js what it asks for.
const compared = /<(?:script type="module" src|link rel="(?:stylesheet|modulepreload)" href)="([^"]+)"/g;
for (const path of pages) {
  const named = String(files.get(path)).replace('name="parts" content=""', `name="parts" content="${listed}"`).replace(compared, (tag, part) => `${tag} integrity="${checksum(files.get(part))}"`);
  files.set(path, named);
}
// The same files are the same release, wherever and whenever they are put together. The pages carry the name of their release,
// so the name is made while that place is still empty.
const id = digest('sha256', JSON.stringify(checksums())).toString('hex').slice(0, 12);
for (const path of ['index.html', 'paper.html']) {
  const named = files.get(path).replace('name="release" content=""', `name="release" content="${id}"`);
  if (named === files.get(path) || named.match(/name="(release|parts)" content=""/)) throw new Error(`${path} does not say its release.`);
  files.set(path, named);
}
// What a release changes is said in plain words, one sentence a line, and which releases were withdrawn: both may change after a release
// is out, so they are no part of its name.
const lines = path => readFileSync(join(top, path), 'utf8').split('\n').filter(text => text && !text.startsWith('#'));
const changes = lines('i18n/changes.en.txt');
const withdrawn = lines('pwa/withdrawn.txt').map(text => text.split(' ')[0]);
if (withdrawn.includes(id)) throw new Error(`Release ${id} is withdrawn.`);
files.set('release.js', `self.RELEASE = ${JSON.stringify({ id, engine, changes, withdrawn, files: checksums() }, null, 1)};\n`);
lay(site, files);
console.log(`Site: build/site, release ${id}, ${files.size} files`);
