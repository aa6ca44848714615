// After one visit the network may go for good; and what is kept, is kept as the person accepted it.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { person } from './dying.mjs';
import { answer, close, inject, phone, seen, site, withDemo } from './phone.mjs';

after(close);

// The keeper takes the page over only after the whole release is kept.
const keptWhole = hand => hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 20000 });

// A later release as the server holds it: one sentence differs, and release.js says so.
const later = '0123456789ab';
const laterRelease = folder => {
  const read = path => readFileSync(join(folder, path), 'utf8');
  const changed = { 'i18n/en.ftl': read('i18n/en.ftl').replace('start = Start', 'start = Begin'),
    'index.html': read('index.html').replace(/name="release" content="[^"]+"/, `name="release" content="${later}"`) };
  let release = read('release.js').replace(/"id": "[^"]*"/, `"id": "${later}"`);
  for (const [path, text] of Object.entries(changed)) {
    writeFileSync(join(folder, path), text);
    release = release.replace(new RegExp(`"${path}": "[^"]*"`), `"${path}": "sha256-${createHash('sha256').update(text).digest('base64')}"`);
  }
  writeFileSync(join(folder, 'release.js'), release);
};
// Where the browser finds the page and what it loads when it is read again: in what is kept, or through the keeper, which must be
// started for it.
const foundIn = async (hand, button) => {
  const inspector = await hand.page.context().newCDPSession(hand.page);
  const places = new Set();
  inspector.on('Network.responseReceived', ({ response }) => places.add(response.serviceWorkerRouterInfo?.actualSourceType ?? 'keeper'));
  await inspector.send('Network.enable');
  await hand.page.reload();
  await hand.page.getByRole('button', { name: seen(button) }).waitFor();
  return [...places];
};

test('a cold phone finds the release without waking its keeper', async () => {
  const hand = await withDemo({ keeper: true });
  await keptWhole(hand);
  await hand.page.close();
  const cold = await hand.device.open();
  await cold.heading('Maren Oduya');
  assert.deepEqual(await foundIn(cold, 'Start'), ['cache']);
  await hand.device.end();
});

test('offline from cold: the server gone, a new page opens and leads to a dose', async () => {
  const hand = await withDemo({ keeper: true });
  await keptWhole(hand);
  await hand.device.stopServer();
  await hand.device.context.setOffline(true);
  await hand.page.close();
  const cold = await hand.device.open();
  await cold.heading('Maren Oduya');
  await answer(cold);
  await cold.heading('Inject now');
  await cold.sees('4 units lispro, by needle');
  await inject(cold, '4');
  await cold.heading('Change the infusion set');
  await cold.page.goto(`${hand.device.address}danger.html`);
  await cold.heading('When to call for help');
  await hand.device.end();
});

test('the server is ended for good and the browser started anew: a whole incident, and it is still there after the next start', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'stopgap-profile-'));
  // A server of its own, as `pwa/run` starts it.
  const process_ = spawn(process.execPath, [fileURLToPath(new URL('../../../pwa/serve.mjs', import.meta.url)), site, '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(process_, 'exit');
  const [said] = await once(process_.stdout, 'data');
  const server = { address: /http:\/\/\S+/.exec(said)[0], close: async () => { process_.kill(); await ended; } };
  const first = await withDemo({ keeper: true, profile, server });
  await keptWhole(first);
  await first.device.end();
  assert.notEqual(process_.exitCode ?? process_.signalCode, null, 'the server still runs');

  const gone = { address: server.address, close: async () => {} };
  const device = await phone({ keeper: true, profile, server: gone });
  const cold = await device.open();
  await cold.heading('Maren Oduya');
  const done = await cold.page.evaluate(person, { readings: { glucose: '16.0', ketones: '0.2', pump: { units: '3', at: '0205', glucose: '15.6' } }, units: '1', until: 'waiting' });
  assert.equal(done.screen, 'waiting');
  await cold.sees('Do not inject a correction before 07:05.');
  const written = await cold.record();
  assert.equal(written.filter(event => event.kind === 'injection').length, 1);
  await device.end();

  const again = await phone({ keeper: true, profile, server: gone, at: '2026-11-25T03:30:00+01:00' });
  const hand = await again.open();
  await hand.heading('Look again at');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.deepEqual(await hand.record(), written);
  await again.end();
  rmSync(profile, { recursive: true, force: true });
});

test('the danger page needs no script', async () => {
  const hand = await withDemo();
  await hand.page.goto(`${hand.device.address}danger.html`);
  await hand.heading('When to call for help');
  await hand.sees('Do not give insulin.');
  await hand.shot('danger');
  assert.equal(await hand.page.locator('script').count(), 0);
  await hand.device.end();
});

test('without the core the page still says when to call for help', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  rmSync(join(folder, 'stopgap-core.wasm'));
  const device = await phone({ folder });
  const hand = await device.open();
  await hand.heading('When to call for help');
  await device.end();
  rmSync(folder, { recursive: true });
});

test('page and core of two releases never answer together', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  writeFileSync(join(folder, 'index.html'), page.replace(/name="engine" content="[^"]+"/, 'name="engine" content="another"'));
  const device = await phone({ folder });
  const hand = await device.open();
  await hand.heading('Stopgap cannot help now');
  await hand.sees('Page and core are not of one version.');
  await device.end();
  rmSync(folder, { recursive: true });
});

test('a later release is kept, but serves only after a tap, and never in an incident', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const hand = await withDemo({ folder, keeper: true });
  await keptWhole(hand);
  laterRelease(folder);
  await hand.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await hand.page.getByRole('button', { name: seen('A new version is ready') }).waitFor({ timeout: 20000 });
  await hand.shot('newer-version');
  // A reload serves what was accepted, whole.
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  // In an incident nothing is offered.
  await hand.tap('Start');
  await hand.heading('Is any of these true now?');
  await hand.misses('A new version is ready');
  await hand.page.reload();
  await hand.heading('Is any of these true now?');
  await hand.device.end();
  rmSync(folder, { recursive: true });
});

test('after the tap the later release serves', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const hand = await withDemo({ folder, keeper: true });
  await keptWhole(hand);
  laterRelease(folder);
  await hand.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await hand.tap('A new version is ready');
  await hand.page.getByRole('button', { name: seen('Begin') }).waitFor({ timeout: 10000 });
  // Its page gets a keeper of its own, which lets the browser find its files as quickly as those of the first release.
  await hand.page.waitForFunction(async later => (await navigator.serviceWorker.getRegistration()).waiting?.scriptURL.endsWith(later)
    || navigator.serviceWorker.controller?.scriptURL.endsWith(later), later, { timeout: 20000 });
  await hand.page.close();
  const cold = await hand.device.open();
  await cold.page.getByRole('button', { name: seen('Begin') }).waitFor();
  assert.deepEqual(await foundIn(cold, 'Begin'), ['cache']);
  await hand.device.end();
  rmSync(folder, { recursive: true });
});
