// Puts the site together: a copy, not a build. Everything lies in one folder, and release.js says what each file must be.
//   node pwa/site.mjs            -> build/site
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { load } from '../wasm/core.mjs';

const top = fileURLToPath(new URL('..', import.meta.url));
const site = join(top, 'build/site');
const kept = join(top, 'build/site-parts');   // the smaller glue, kept as long as the module is the same
const npm = join(top, 'pwa/node_modules');
const moduleFolder = join(top, 'build/wasm/wasm');

// What in pwa/ serves the build and is no part of the page.
const notShipped = /^(node_modules|package(-lock)?\.json|\.npmrc|run|install\.sh|headers\.txt|.*\.mjs)$/;

const under = folder => readdirSync(folder, { withFileTypes: true, recursive: true })
  .filter(entry => entry.isFile()).map(entry => relative(folder, join(entry.parentPath ?? entry.path, entry.name))).sort();
const digest = (kind, bytes) => createHash(kind).update(bytes).digest();
// The tools' maps are not shipped, so the line that asks for them goes too.
const script = path => readFileSync(path, 'utf8').replace(/\n\/\/# sourceMappingURL=.*\s*$/, '\n');

const smallerGlue = async () => {
  const glue = readFileSync(join(moduleFolder, 'stopgap-core.js'), 'utf8');
  const at = join(kept, `${digest('sha256', glue).toString('hex')}.js`);
  if (!existsSync(at)) {
    const { minify } = await import('terser');
    rmSync(kept, { recursive: true, force: true });
    mkdirSync(kept, { recursive: true });
    writeFileSync(at, (await minify(glue, { module: true, compress: { passes: 2 }, mangle: true })).code);
  }
  return readFileSync(at);
};

const licence = name => {
  const own = join(npm, name, 'LICENSE');
  if (existsSync(own)) return readFileSync(own);
  const { license } = JSON.parse(readFileSync(join(npm, name, 'package.json'), 'utf8'));
  return readFileSync(join('/usr/share/common-licenses', license));   // the package names its licence and leaves the text out
};

const parts = async () => {
  const files = new Map();
  for (const path of under(join(top, 'pwa')))
    if (!notShipped.test(path.split('/')[0])) files.set(path, readFileSync(join(top, 'pwa', path)));
  for (const path of under(join(top, 'i18n')))
    if (path.endsWith('.ftl')) files.set(`i18n/${path}`, readFileSync(join(top, 'i18n', path)));

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
  files.set('licences/font.txt', licence(font));
  files.set('licences/lit-html.txt', licence('lit-html'));
  files.set('licences/idb.txt', licence('idb'));
  files.set('licences/fluent.txt', licence('@fluent/bundle'));
  files.set('licences/qr.txt', Buffer.concat([licence('qr'), Buffer.from('\n'), readFileSync(join(npm, 'qr/LICENSE-MIT'))]));

  files.set('stopgap-core.js', await smallerGlue());
  files.set('stopgap-core.wasm', readFileSync(join(moduleFolder, 'stopgap-core.wasm')));
  return files;
};

// Equal bytes are not written again, and what no longer belongs here is taken away.
const lay = files => {
  for (const [path, bytes] of files) {
    const at = join(site, path);
    if (existsSync(at) && readFileSync(at).equals(Buffer.from(bytes))) continue;
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, bytes);
  }
  for (const path of under(site)) if (!files.has(path)) rmSync(join(site, path));
};

const files = await parts();
const core = await load();
const { engine } = JSON.parse(core.ask('version', '{}'));
if (!engine) throw new Error('The module does not say which engine it is.');
const checksums = Object.fromEntries([...files].sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([path, bytes]) => [path, `sha256-${digest('sha256', bytes).toString('base64')}`]));
// The same files are the same release, wherever and whenever they are put together.
const id = digest('sha256', JSON.stringify(checksums)).toString('hex').slice(0, 12);
files.set('release.js', `self.RELEASE = ${JSON.stringify({ id, engine, files: checksums }, null, 1)};\n`);
mkdirSync(site, { recursive: true });
lay(files);
console.log(`Site: build/site, release ${id}, ${files.size} files`);
