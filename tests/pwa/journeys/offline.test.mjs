// After one visit the network may go for good; and what is kept, is kept as the person accepted it.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { person } from './dying.mjs';
import { answer, close, digestOf, inject, phone, seen, site, withDemo } from './phone.mjs';

after(close);

// The keeper takes the page over only after the whole release is kept.
const keptWhole = hand => hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 20000 });

// A later release as the server holds it: one sentence differs, and release.js says so.
const later = '0123456789ab';
const laterRelease = (folder, { changes = ['The word on the first button is another.'], withdrawn = [] } = {}) => {
  const read = path => readFileSync(join(folder, path), 'utf8');
  const words = read('i18n/en.ftl'), other = words.replace('start = Start', 'start = Begin');
  const changed = { 'i18n/en.ftl': other,
    'index.html': read('index.html').replace(/name="release" content="[^"]+"/, `name="release" content="${later}"`).replaceAll(digestOf(words), digestOf(other)) };
  let release = read('release.js').replace(/"id": "[^"]*"/, `"id": "${later}"`)
    .replace(/"changes": \[[^\]]*\]/, `"changes": ${JSON.stringify(changes)}`).replace(/"withdrawn": \[[^\]]*\]/, `"withdrawn": ${JSON.stringify(withdrawn)}`);
  for (const [path, text] of Object.entries(changed)) {
    writeFileSync(join(folder, path), text);
    release = release.replace(new RegExp(`"${path}": "[^"]*"`), `"${path}": "${digestOf(text)}"`);
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

// Each without script; with a script that finds no store; and with a store that holds no plan.
const helpPages = [['danger.html', 'When to call for help', 'Do not give insulin.'], ['low.html', 'Glucose is low', 'Give fast sugar now']];
const refusesStorage = () => { IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); }; };
for (const [path, title, line] of helpPages) {
  for (const [how, options] of [['without script', { script: false }], ['with storage refused', { prepare: refusesStorage }], ['before the first start', {}]]) {
    test(`${path} stands ${how}`, async () => {
      const device = await phone(options);
      const hand = await device.open(path);
      await hand.heading(title);
      await hand.sees(line);
      await hand.shot(path.replace('.html', ''));
      assert.equal(await hand.link('Call your emergency number').getAttribute('href'), 'tel:112');
      assert.equal(await hand.page.getByRole('link', { name: 'Call your own team' }).count(), 0);
      // It leaves nothing behind that the first start would stumble over.
      if (how === 'before the first start') {
        assert.deepEqual(await hand.page.evaluate(async () => (await indexedDB.databases()).map(found => found.name)), []);
        await hand.page.goto(device.address);
        await hand.tap('Demo plan: an adult');
        await hand.tap('Look round with this plan');
        await hand.page.getByRole('button', { name: seen('Start') }).waitFor();
      }
      if (options.prepare) device.faults.splice(0, device.faults.length, ...device.faults.filter(fault => !/SecurityError|refused/.test(fault)));
      await device.end();
    });
  }
}

test('the pages of help name the plan\'s own number and team', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const own = readFileSync(join(folder, 'demo/child.json'), 'utf8'), abroad = own.replace('"emergencyNumber": "112"', '"emergencyNumber": "911"');
  writeFileSync(join(folder, 'demo/child.json'), abroad);
  writeFileSync(join(folder, 'index.html'), readFileSync(join(folder, 'index.html'), 'utf8').replaceAll(digestOf(own), digestOf(abroad)));
  const hand = await withDemo({ child: true, folder });
  for (const [path] of helpPages) {
    await hand.page.goto(`${hand.device.address}${path}`);
    await hand.page.getByRole('link', { name: seen('Call your own team') }).waitFor();
    assert.equal(await hand.link('Call your emergency number').getAttribute('href'), 'tel:911');
    await hand.sees('911');
  }
  await hand.device.end();
  rmSync(folder, { recursive: true });
});

test('without the core the page still says when to call for help', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  rmSync(join(folder, 'stopgap-core.wasm'));
  const device = await phone({ folder });
  const hand = await device.open();
  await hand.heading('When to call for help');
  await hand.sees('This copy is damaged');
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
  await hand.heading('What is new');
  await hand.sees('The word on the first button is another.');
  await hand.shot('what-is-new');
  await hand.tap('Use the new version');
  await hand.page.getByRole('button', { name: seen('Begin') }).waitFor({ timeout: 10000 });
  // Its page gets a keeper of its own, which lets the browser find its files as quickly as those of the first release.
  await hand.page.waitForFunction(async later => (await navigator.serviceWorker.getRegistration()).waiting?.scriptURL.endsWith(later)
    || navigator.serviceWorker.controller?.scriptURL.endsWith(later), later, { timeout: 20000 });
  await hand.page.close();
  // It takes over once no page is open any more, which the browser does in its own time: a page opened at once still has the one before.
  let found;
  for (let tries = 0; tries < 6 && found?.join() !== 'cache'; tries += 1) {
    await new Promise(done => setTimeout(done, tries * 500));
    const cold = await hand.device.open();
    await cold.page.getByRole('button', { name: seen('Begin') }).waitFor();
    found = await foundIn(cold, 'Begin');
    await cold.page.close();
  }
  assert.deepEqual(found, ['cache']);
  await hand.device.end();
  rmSync(folder, { recursive: true });
});

// A version found wrong: its name is in the release that takes its place.
const releaseOf = folder => readFileSync(join(folder, 'release.js'), 'utf8').match(/"id": "([^"]*)"/)[1];

test('a withdrawn release says so, even in an incident, and what was recorded stays', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const hand = await withDemo({ folder, keeper: true });
  await keptWhole(hand);
  await answer(hand);
  await inject(hand, '4');
  const before = await hand.record();
  laterRelease(folder, { withdrawn: [releaseOf(folder)] });
  await hand.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await hand.heading('This version was withdrawn');
  await hand.sees('Do not use a dose from it.');
  await hand.shot('withdrawn');
  await hand.tap('Open the right version');
  await hand.page.waitForFunction(later => document.querySelector('meta[name="release"]').content === later, later, { timeout: 20000 });
  await hand.heading('Change the infusion set');
  assert.deepEqual((await hand.record()).filter(event => before.some(known => known.id === event.id)), before);
  await hand.device.end();
  rmSync(folder, { recursive: true });
});

test('a release that does not start is replaced without a tap, and plan and danger page stay', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  const good = readFileSync(join(folder, 'app.js'), 'utf8');
  const hand = await withDemo({ folder, keeper: true });
  await keptWhole(hand);
  // The broken release is accepted, then opened: its script stops at once.
  const broken = 'throw new Error("broken");';
  laterRelease(folder);
  writeFileSync(join(folder, 'app.js'), broken);
  const retold = change => writeFileSync(join(folder, 'release.js'), change(readFileSync(join(folder, 'release.js'), 'utf8')));
  const index = change => writeFileSync(join(folder, 'index.html'), change(readFileSync(join(folder, 'index.html'), 'utf8')));
  index(text => text.replaceAll(digestOf(good), digestOf(broken)));
  retold(text => text.replace(/"app.js": "[^"]*"/, `"app.js": "${digestOf(broken)}"`).replace(/"index.html": "[^"]*"/, `"index.html": "${digestOf(readFileSync(join(folder, 'index.html')))}"`));
  await hand.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await hand.tap('A new version is ready');
  await hand.tap('Use the new version');
  await hand.page.getByText('Stopgap opens').waitFor({ timeout: 20000 });
  hand.device.faults.splice(0);
  await hand.page.goto(`${hand.device.address}danger.html`);
  await hand.heading('When to call for help');
  // The host serves the release before it again, under a name of its own, and names the broken one.
  writeFileSync(join(folder, 'app.js'), good);
  index(text => text.replace(later, 'fedcba987654').replaceAll(digestOf(broken), digestOf(good)));
  retold(text => text.replace(`"id": "${later}"`, '"id": "fedcba987654"').replace(/"withdrawn": \[[^\]]*\]/, `"withdrawn": ["${later}"]`)
    .replace(/"app.js": "[^"]*"/, `"app.js": "${digestOf(good)}"`).replace(/"index.html": "[^"]*"/, `"index.html": "${digestOf(readFileSync(join(folder, 'index.html'), 'utf8'))}"`));
  // The browser looks for a later keeper whenever somebody comes; no script of the page has to ask.
  for (let visit = 0; visit < 20; visit += 1) {
    await hand.page.goto(hand.device.address);
    if (await hand.page.getByRole('button', { name: seen('Begin') }).waitFor({ timeout: 1500 }).then(() => true, () => false)) break;
    hand.device.faults.splice(0);
  }
  await hand.heading('Maren Oduya');
  await hand.device.end();
  rmSync(folder, { recursive: true });
});
