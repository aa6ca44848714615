// After one visit the network may go for good; and what is kept, is kept as the person accepted it.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { answer, close, inject, phone, seen, site, withDemo } from './phone.mjs';

after(close);

// The keeper takes the page over only after the whole release is kept.
const keptWhole = hand => hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 20000 });

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
  // The later release: one sentence differs, and release.js says so.
  const words = readFileSync(join(folder, 'i18n/en.ftl'), 'utf8').replace('start = Start', 'start = Begin');
  writeFileSync(join(folder, 'i18n/en.ftl'), words);
  const checksum = `sha256-${createHash('sha256').update(words).digest('base64')}`;
  const release = readFileSync(join(folder, 'release.js'), 'utf8').replace(/"i18n\/en.ftl": "[^"]*"/, `"i18n/en.ftl": "${checksum}"`).replace(/"id": "[^"]*"/, '"id": "0123456789ab"');
  writeFileSync(join(folder, 'release.js'), release);
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
  const words = readFileSync(join(folder, 'i18n/en.ftl'), 'utf8').replace('start = Start', 'start = Begin');
  writeFileSync(join(folder, 'i18n/en.ftl'), words);
  const checksum = `sha256-${createHash('sha256').update(words).digest('base64')}`;
  writeFileSync(join(folder, 'release.js'), readFileSync(join(folder, 'release.js'), 'utf8').replace(/"i18n\/en.ftl": "[^"]*"/, `"i18n/en.ftl": "${checksum}"`).replace(/"id": "[^"]*"/, '"id": "0123456789ab"'));
  await hand.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await hand.tap('A new version is ready');
  await hand.page.getByRole('button', { name: seen('Begin') }).waitFor({ timeout: 10000 });
  await hand.device.end();
  rmSync(folder, { recursive: true });
});
