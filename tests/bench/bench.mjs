// The twin of bench.cpp in node: node tests/bench/bench.mjs REQUEST.json ANSWER.json
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

const build = new URL('../../build/', import.meta.url);
const [request, answer] = process.argv.slice(2).map(path => readFileSync(path, 'utf8'));
const folder = new URL('wasm/bench/', build);
const { default: createCore } = await import(new URL('stopgap-bench.js', folder).href);
const core = await createCore({ wasmBinary: readFileSync(new URL('stopgap-bench.wasm', folder)) });

const batches = 100, calls = 20;
const medianMicroseconds = work => {
  const times = Array.from({ length: batches }, () => {
    const start = process.hrtime.bigint();
    for (let call = 0; call < calls; ++call) work();
    return Number(process.hrtime.bigint() - start) / 1000 / calls;
  });
  return times.sort((a, b) => a - b)[batches / 2];
};
if (core.ask('advise', request) !== answer) throw new Error('The two sides answer differently.');
const advise = medianMicroseconds(() => core.ask('advise', request));
const alone = medianMicroseconds(() => { core.parseAndPrint(request); core.parseAndPrint(answer); });
console.log(`node: advise ${advise.toFixed(1)} us, JSON alone ${alone.toFixed(1)} us, ratio ${(advise / alone).toFixed(2)}`);

const brotli = bytes => (brotliCompressSync(bytes).length / 1000).toFixed(1);
const shipped = path => readFileSync(new URL(path, build));
const release = readdirSync(new URL('site/', build), { recursive: true, withFileTypes: true }).filter(entry => entry.isFile());
console.log(`module: wasm ${brotli(shipped('site/stopgap-core.wasm'))} kB brotli, its glue ${brotli(shipped('plain/stopgap-core.js'))} kB brotli`);
const sizes = release.map(entry => { const path = join(entry.parentPath ?? entry.path, entry.name); return [path.slice(path.indexOf('build/site/') + 11), brotliCompressSync(readFileSync(path)).length]; }).sort((a, b) => b[1] - a[1]);
console.log(`release: ${(sizes.reduce((sum, [, size]) => sum + size, 0) / 1000).toFixed(1)} kB brotli in ${sizes.length} files, the largest ${sizes.slice(0, 12).map(([path, size]) => `${path} ${(size / 1000).toFixed(1)}`).join(', ')}`);
console.log(`request ${(Buffer.byteLength(request) / 1000).toFixed(1)} kB, answer ${(Buffer.byteLength(answer) / 1000).toFixed(1)} kB`);
