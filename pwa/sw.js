// Keeps a release whole and serves only the one the person has accepted. The first is accepted at once; a later one is
// kept beside it until somebody taps for it, so that nothing changes under a running incident.
const policy = self.trustedTypes?.createPolicy('app', { createScriptURL: address => {
  if (address !== 'release.js') throw new TypeError(address);
  return address;
} });
importScripts(policy ? policy.createScriptURL('release.js') : 'release.js');

const { id, files } = self.RELEASE;
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
      const answer = await fetch(here(path), { integrity, cache: 'no-cache' });
      if (!answer.ok) throw new Error(path);
      await cache.put(here(path), answer);
    }));
  } catch (problem) {
    if (await accepted() !== id) await caches.delete(prefix + id);
    throw problem;
  }
};

self.addEventListener('install', event => event.waitUntil((async () => {
  await keep();
  if (!await accepted()) await accept(id);
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

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET' || !event.request.url.startsWith(self.registration.scope)) return;
  event.respondWith((async () => await kept(event.request) ?? fetch(event.request))());
});

self.addEventListener('message', event => event.waitUntil((async () => {
  if (event.data.ask === 'newer') event.ports[0].postMessage({ newer: await accepted() === id ? null : id });
  if (event.data.forget) { served = undefined; event.ports[0].postMessage({ forgotten: true }); }
  if (event.data.accept === id && await caches.has(prefix + id)) {
    await accept(id);
    event.ports[0].postMessage({ accepted: id });
  }
})()));
