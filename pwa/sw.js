// Keeps a release whole and serves only the one the person has accepted. The first is accepted at once; a later one is
// kept beside it until somebody taps for it, so that nothing changes under a running incident.
const policy = self.trustedTypes?.createPolicy('app', { createScriptURL: address => {
  if (address !== 'release.js') throw new TypeError(address);
  return address;
} });
importScripts(policy ? policy.createScriptURL('release.js') : 'release.js');

const { id, files, changes = [], withdrawn = [] } = self.RELEASE;
const prefix = 'stopgap-release-';
const choice = 'stopgap-choice';
const here = path => new URL(path, self.registration.scope).href;

const accepted = async () => (await (await caches.open(choice)).match(here('accepted')))?.text();
const accept = async release => (await caches.open(choice)).put(here('accepted'), new Response(release));
// Asked for with every file, so it is remembered; forgotten when another release is accepted.
let served;
const serving = () => (served ??= accepted().then(release => caches.open(prefix + release)));

// All of its files, each with the checksum it must have, or the release is not kept at all.
const keep = async () => {
  const cache = await caches.open(prefix + id);
  try {
    await Promise.all([...Object.entries(files), ['release.js', undefined]].map(async ([path, integrity]) => {
      // Kept and compared once already, when this release was kept beside the one in use.
      if (integrity && await cache.match(here(path))) return;
      const answer = await fetch(here(path), { integrity, cache: 'no-cache' });
      if (!answer.ok) throw new Error(path);
      await cache.put(here(path), answer);
    }));
  } catch (problem) {
    if (await accepted() !== id) await caches.delete(prefix + id);
    throw problem;
  }
};

// A phone that starts cold need not wake this keeper first: the browser itself takes the files of the accepted release from where
// they are kept. That holds as long as the keeper lives, so only a keeper of the accepted release says so; after another is
// accepted, its page registers a keeper anew. A browser that cannot do this asks the keeper for every file.
const route = async event => {
  if (!event.addRoutes || await accepted() !== id) return;
  const { pathname, origin } = new URL(self.registration.scope);
  const cache = await caches.open(prefix + id);
  await cache.put(here('./'), await cache.match(here('index.html')));
  await event.addRoutes(['', ...Object.keys(files)].map(path => ({
    condition: { urlPattern: new URLPattern({ protocol: origin.split(':')[0], hostname: self.location.hostname, port: self.location.port, pathname: pathname + path, search: '' }), requestMethod: 'GET' },
    source: { cacheName: prefix + id },
  })));
};

// A release that was found to do harm, or that does not even start, is named by the one that takes its place. Nobody could accept that one
// on a page that does not start, so it takes over by itself: the only time one does. Plan and record lie elsewhere and stay.
const takesOver = async () => withdrawn.includes(await accepted());

self.addEventListener('install', event => event.waitUntil((async () => {
  await keep();
  if (!await accepted()) await accept(id);
  if (await takesOver()) { await accept(id); await self.skipWaiting(); }
  await route(event).catch(problem => console.warn('Files are asked of the keeper one by one.', problem.message));
})()));

self.addEventListener('activate', event => event.waitUntil((async () => {
  const inUse = await accepted();
  for (const name of await caches.keys()) if (name.startsWith(prefix) && name !== prefix + id && name !== prefix + inUse) await caches.delete(name);
  await self.clients.claim();
})()));

const kept = async request => {
  const cache = await serving();
  const address = new URL(request.url);
  if (address.href === here('./')) address.pathname += 'index.html';
  return cache.match(address.origin + address.pathname);
};

// What the release in use must hold. One before this keeper's own says it in its own release.js, which was kept with it.
const wanted = async (release, cache) => {
  if (release === id) return files;
  const text = await (await cache.match(here('release.js'))).text();
  return JSON.parse(text.slice(text.indexOf('{'), text.lastIndexOf('}') + 1)).files;
};
const digestOf = async answer => `sha256-${btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', await answer.arrayBuffer()))))}`;
// Each file is looked for; once a day, or when a page did not start, its bytes are compared as well.
const aDay = 24 * 60 * 60 * 1000;
const isWhole = async (cache, path, digest, bytes) => {
  const answer = await cache.match(here(path));
  if (!answer || !bytes) return Boolean(answer);
  return await digestOf(answer).catch(() => undefined) === digest;
};
// What is missing or wrong is fetched again, and kept only if it is what the release names. Says whether all of it is here then.
// A wrong file stays until a right one came: the page compares for itself, and uses none that is wrong.
const madeWhole = async (release, bytes) => {
  const cache = await caches.open(prefix + release);
  const mended = async ([path, integrity]) => {
    if (await isWhole(cache, path, integrity, bytes)) return true;
    const answer = await fetch(here(path), { integrity, cache: 'reload' });
    await cache.put(here(path), answer);
    return true;
  };
  const found = await Promise.all(Object.entries(await wanted(release, cache)).map(entry => mended(entry).catch(() => false)));
  if (release === id && !await cache.match(here('release.js'))) await cache.put(here('release.js'), await fetch(here('release.js'), { cache: 'reload' }));
  // The browser itself takes the first page from a place of its own (route).
  const first = await cache.match(here('index.html'));
  if (first) await cache.put(here('./'), first);
  return found.every(Boolean);
};
const lastCompared = async () => Number.parseInt(await (await (await caches.open(choice)).match(here('compared')))?.text() ?? '0', 10);
const lookThrough = async all => {
  // A browser that cleared everything took the choice too: then there is only this release.
  if (!await accepted()) await accept(id);
  const release = await accepted();
  const now = Date.now(), bytes = all || Math.abs(now - await lastCompared()) >= aDay;
  served = undefined;
  const whole = await madeWhole(release, bytes).catch(() => false);
  if (whole && bytes) await (await caches.open(choice)).put(here('compared'), new Response(String(now)));
  return { accepted: release, whole };
};
// One after another: two pages that ask at once must not both fetch.
let looking = Promise.resolve();
const lookedThrough = all => (looking = looking.catch(() => {}).then(() => lookThrough(all)));

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET' || !event.request.url.startsWith(self.registration.scope)) return;
  event.respondWith((async () => await kept(event.request) ?? fetch(event.request))());
});

self.addEventListener('message', event => event.waitUntil((async () => {
  if (event.data.ask === 'newer') event.ports[0].postMessage({ newer: await accepted() === id ? null : id, changes, withdrawn });
  if (event.data.ask === 'whole') { const said = await lookedThrough(Boolean(event.data.full)); event.ports[0]?.postMessage(said); }
  if (event.data.forget) { served = undefined; event.ports[0].postMessage({ forgotten: true }); }
  if (event.data.accept === id && await caches.has(prefix + id)) {
    await accept(id);
    // The keeper in use may have told the browser where the release before lies.
    await self.skipWaiting();
    event.ports[0].postMessage({ accepted: id });
  }
})()));
