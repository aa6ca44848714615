// Lays the modules that always start together into one file. A start without network asks the keeper of the release for every
// file, and each costs a slow phone about 15 ms: thirty of them were a third of the start. What is fetched later stays apart.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rollup } from '@rollup/wasm-node';
import { minify } from 'terser';

// `scripts` is a map from path to text; back comes the same in fewer and smaller files: `first` with all it needs, and one for
// each face that is fetched when it is opened, under that face's own path.
const make = async (scripts, first) => {
  const bundle = await rollup({
    input: first,
    preserveEntrySignatures: false,
    plugins: [{
      name: 'from-the-map',
      resolveId: (path, from) => (from ? posix.join(posix.dirname(from), path) : path),
      load(path) {
        if (!scripts.has(path)) throw new Error(`${path} is asked for and is not there`);
        return scripts.get(path);
      },
    }],
    onwarn: warning => { throw new Error(`${warning.code}: ${warning.message}`); },
  });
  const { output } = await bundle.generate({
    format: 'es', compact: true, entryFileNames: '[name].js',
    chunkFileNames: chunk => chunk.facadeModuleId ?? `shared/${chunk.name}.js`,
  });
  return Promise.all(output.map(async ({ fileName, code }) =>
    [fileName, (await minify(code, { module: true, compress: { passes: 2 }, mangle: true })).code]));
};

// Made once for the same scripts, tools and this file: what came of it is kept in `folder` under the digest of all of them.
// Each of `pages` starts with one file and nothing beside it: not every browser compares what a script imports with a digest, but each
// compares the script that a page names. What two of them need stands in both.
export const joined = async (scripts, pages, folder) => {
  const own = ['join.mjs', 'package-lock.json'].map(name => readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8'));
  const at = join(folder, `${createHash('sha256').update(JSON.stringify([...own, ...pages, ...scripts])).digest('hex')}.json`);
  if (!existsSync(at)) {
    const files = (await Promise.all(pages.map(page => make(scripts, page)))).flat();
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    writeFileSync(at, JSON.stringify(files));
  }
  return new Map(JSON.parse(readFileSync(at, 'utf8')));
};
