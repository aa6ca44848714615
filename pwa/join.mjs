// Lays the modules that always start together into one file. A start without network asks the keeper of the release for every
// file, and each costs a slow phone about 15 ms: thirty of them were a third of the start. What is fetched later stays apart.
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { posix } from 'node:path';
import { rollup } from '@rollup/wasm-node';
import { minify } from 'terser';

// Smaller, and kept in `folder` under the digest of what it was made from, so that an unchanged script is not made smaller again.
const shorter = async (folder, code, used) => {
  const name = `${createHash('sha256').update(code).digest('hex')}.js`;
  const at = join(folder, name);
  used.add(name);
  if (!existsSync(at)) writeFileSync(at, (await minify(code, { module: true, compress: { passes: 2 }, mangle: true })).code);
  return readFileSync(at, 'utf8');
};

// `scripts` is a map from path to text; back comes the same in fewer files: `first` with all it needs, and one for each page that
// is fetched when it is opened, under that page's own path.
export const joined = async (scripts, first, folder) => {
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
    format: 'es', compact: true, entryFileNames: first,
    chunkFileNames: chunk => chunk.facadeModuleId ?? `shared/${chunk.name}.js`,
  });
  mkdirSync(folder, { recursive: true });
  const used = new Set(), files = new Map();
  for (const { fileName, code } of output) files.set(fileName, await shorter(folder, code, used));
  for (const name of readdirSync(folder)) if (!used.has(name)) rmSync(join(folder, name), { recursive: true });
  return files;
};
