// A static server for this machine alone, with the headers the site ships. For trying the app and for its tests.
//   node pwa/serve.mjs [FOLDER] [PORT]
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const types = {
  '.html': 'text/html; charset=utf-8', '.css': 'text/css; charset=utf-8', '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8', '.json': 'application/json; charset=utf-8', '.ftl': 'text/plain; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8', '.webmanifest': 'application/manifest+json', '.svg': 'image/svg+xml',
  '.png': 'image/png', '.woff2': 'font/woff2', '.wasm': 'application/wasm',
};

export const readHeaders = text => {
  const rules = [];
  for (const line of text.split('\n')) {
    if (!line.trim() || line.startsWith('#')) continue;
    if (!/^\s/.test(line)) { rules.push({ path: line.trim(), headers: {} }); continue; }
    const colon = line.indexOf(':');
    rules.at(-1).headers[line.slice(0, colon).trim()] = line.slice(colon + 1).trim();
  }
  return path => Object.assign({}, ...rules
    .filter(rule => rule.path === path || (rule.path.endsWith('*') && path.startsWith(rule.path.slice(0, -1))))
    .map(rule => rule.headers));
};

const headersFor = readHeaders(readFileSync(new URL('headers.txt', import.meta.url), 'utf8'));

const answer = async (folder, request) => {
  if (request.method !== 'GET' && request.method !== 'HEAD') return { status: 405, body: 'Only reading is possible.' };
  let path;
  try { path = normalize(decodeURIComponent(request.url.split(/[?#]/)[0])); } catch { return { status: 400, body: 'Not an address.' }; }
  if (path.endsWith('/')) path += 'index.html';
  try {
    // normalize() has taken out every "..", so the file lies inside the folder.
    return { status: 200, path, type: types[extname(path)] ?? 'application/octet-stream', body: await readFile(join(folder, path)) };
  } catch { return { status: 404, path, body: 'There is no such file.' }; }
};

// Resolves once it listens: {address, close}. Port 0 takes any free one; a taken port is passed over for the next.
export const serve = (folder, port = 0) => new Promise((resolve, reject) => {
  const server = createServer(async (request, response) => {
    const { status, path = '/', type = 'text/plain; charset=utf-8', body } = await answer(folder, request);
    response.writeHead(status, { ...headersFor(path), 'Content-Type': type, 'Content-Length': Buffer.byteLength(body) });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  let tries = 0;
  server.on('error', problem => {
    if (problem.code !== 'EADDRINUSE' || ++tries > 50) return reject(problem);
    server.listen(port + tries, '127.0.0.1');
  });
  server.on('listening', () => resolve({
    address: `http://127.0.0.1:${server.address().port}/`,
    close: () => new Promise(done => { server.close(done); server.closeAllConnections(); }),
  }));
  server.listen(port, '127.0.0.1');
});

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const site = process.argv[2] ?? fileURLToPath(new URL('../build/site', import.meta.url));
  const { address } = await serve(site, Number.parseInt(process.argv[3] ?? '8087', 10));
  console.log(`The app is at ${address}  (Ctrl-C stops it)`);
}
