// The same bytes give the same result. A suite that says what it rests on is not run again while all of that is as it was when it
// passed; the tally says so beside it, and `bash tests/run --again` runs it all the same.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const filesOf = path => {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path).filter(name => name !== 'node_modules').sort().flatMap(name => filesOf(join(path, name)));
};

// `book` is the file that remembers; `again` forgets it. Paths are read once a run.
export const memory = (book, again = false) => {
  const read = new Map();
  const digestOf = path => {
    if (!read.has(path)) {
      const sum = createHash('sha256');
      for (const file of filesOf(path)) sum.update(file).update('\0').update(createHash('sha256').update(readFileSync(file)).digest());
      read.set(path, sum.digest('hex'));
    }
    return read.get(path);
  };
  const stamp = paths => createHash('sha256').update([process.version, process.arch, ...paths.map(path => `${path} ${digestOf(path)}`)].join('\n')).digest('hex');
  let known = {};
  try { if (!again) known = JSON.parse(readFileSync(book, 'utf8')); } catch { known = {}; }

  return {
    // How many passed when it last ran on the same bytes, or nothing.
    passed: (name, rests) => (rests.length && rests.every(path => existsSync(path)) && known[name]?.stamp === stamp(rests) ? known[name].passed : undefined),
    // Only a suite that passed whole is remembered; any other is forgotten.
    keep: (name, rests, { passed, failed }) => {
      delete known[name];
      if (rests.length && passed > 0 && failed === 0) known[name] = { stamp: stamp(rests), passed };
      mkdirSync(dirname(book), { recursive: true });
      writeFileSync(book, JSON.stringify(known, null, 1));
    },
  };
};
