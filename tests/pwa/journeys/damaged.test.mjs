// A file that is not what the release names: altered on its way at the first visit, or later where it is kept. No dose may be shown, help
// stays in reach, and what is wrong is fetched again.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { close, digestOf, phone, seen, site, withDemo } from './phone.mjs';

after(close);

const copied = () => {
  const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
  cpSync(site, folder, { recursive: true });
  return { folder, read: path => readFileSync(join(folder, path)), write: (path, bytes) => writeFileSync(join(folder, path), bytes), end: () => rmSync(folder, { recursive: true }) };
};
// The same places at every run: a generator of small numbers from a fixed seed.
const seed = 20261125;
const drawn = (from = seed) => { let state = from; return below => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return state % below; }; };
const flipped = (bytes, at) => { const other = Buffer.from(bytes); other[at >> 3] ^= 1 << (at & 7); return other; };
const keptWhole = hand => hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 20000 });

// What somebody sees who opens the app there: "open" where something can be begun; "damaged", the page of help that says so; "stays", the
// first page, because its own script is not what it names.
const opened = async (page, address) => {
  let refused = false;
  const listen = message => { refused ||= /'integrity' attribute for resource '[^']*\.js'/.test(message.text()); };
  page.on('console', listen);
  await page.goto(address);
  let found;
  for (let tries = 0; tries < 200 && !found; tries += 1) {
    if (page.url().endsWith('danger.html#damaged')) found = 'damaged';
    else if (await page.getByRole('button', { name: /^\s*(Demo plan|Start)/ }).first().isVisible().catch(() => false)) found = 'open';
    else if (refused && await page.getByText('Does this page stay?').isVisible().catch(() => false)) found = 'stays';
    else await page.waitForTimeout(100);
  }
  page.off('console', listen);
  const text = await page.locator('body').innerText();
  assert.doesNotMatch(text, /\d\s*units?\b/, `${found}: ${text}`);
  return found;
};
const helps = async page => assert.equal(await page.getByRole('link', { name: seen('Call your emergency number') }).getAttribute('href'), 'tel:112');

const draw = drawn();
const wasm = readFileSync(join(site, 'stopgap-core.wasm'));
const hostile = [
  ...Array.from({ length: 8 }, () => draw(wasm.length * 8)).map(at => [`bit ${at} of the module flipped`, 'stopgap-core.wasm', bytes => flipped(bytes, at), 'damaged']),
  ['half of the module', 'stopgap-core.wasm', bytes => bytes.subarray(0, bytes.length >> 1), 'damaged'],
  ['an empty module', 'stopgap-core.wasm', () => Buffer.alloc(0), 'damaged'],
  ['a page in place of the module', 'stopgap-core.wasm', () => Buffer.from('<!doctype html><title>Sign in</title>'), 'damaged'],
  // The engine says the same number: only the release tells the two apart.
  ['the module of another release with the same engine', 'stopgap-core.wasm', bytes => Buffer.concat([bytes, Buffer.from([0, 2, 1, 120])]), 'damaged'],
  ['other words', 'i18n/en.ftl', bytes => Buffer.from(String(bytes).replace('Start', 'Begin')), 'damaged'],
  ['another script', 'app.js', bytes => Buffer.concat([bytes, Buffer.from(';\n')]), 'stays'],
];
for (const [what, path, change, expected] of hostile) {
  test(`the first visit gets ${what}: no dose, and help`, async () => {
    const { folder, read, write, end } = copied();
    const device = await phone({ folder });
    const page = (await device.open('danger.html')).page;
    write(path, change(read(path)));
    assert.equal(await opened(page, device.address), expected);
    if (expected === 'stays') await page.getByRole('link', { name: seen('Then this copy may be damaged.') }).click();
    await page.getByRole('heading', { name: 'This copy is damaged' }).waitFor();
    await helps(page);
    // The right file again: nothing of the wrong one was kept.
    write(path, readFileSync(join(site, path)));
    assert.equal(await opened(page, device.address), 'open');
    await device.end();
    end();
  });
}

test('a part of the app that is fetched later is compared as well', async () => {
  const { folder, read, write, end } = copied();
  const hand = await withDemo({ folder });
  write('off/off.js', Buffer.concat([read('off/off.js'), Buffer.from(';\n')]));
  await hand.tap('The pump stays off');
  await hand.heading('Stopgap cannot help now');
  await hand.device.end();
  end();
});

// The page names a module that gives a wrong dose: whoever serves the site could do so, and a fault of memory comes to the same. The
// answers that were written down when the release was built tell.
test('a module that answers otherwise than it was built gives no dose', async () => {
  const { folder, read, write, end } = copied();
  const [known] = JSON.parse(String(readFileSync(join(site, '../plain/known_answers.js'))).replace(/^export const known = /, '').replace(/;\s*$/, ''));
  const { default: createCore } = await import(pathToFileURL(join(site, '../wasm/wasm/stopgap-core.js')).href);
  const answerOf = async bytes => { try { return (await createCore({ wasmBinary: bytes })).ask(known.call, known.request); } catch { return null; } };
  assert.equal(await answerOf(wasm), known.answer);
  // Numbers of the core lie as doubles and integers in its data: a flip there changes an answer and stops nothing.
  const place = drawn(7);
  let wrong, said;
  for (let tries = 0; tries < 400 && !wrong; tries += 1) {
    const bytes = flipped(wasm, place(wasm.length * 8));
    if (!WebAssembly.validate(bytes)) continue;
    said = await answerOf(bytes);
    if (said && said !== known.answer) wrong = bytes;
  }
  assert.ok(wrong, 'no flip of 400 changes the answer');
  write('stopgap-core.wasm', wrong);
  write('index.html', String(read('index.html')).replaceAll(digestOf(wasm), digestOf(wrong)));
  const device = await phone({ folder });
  const { page } = await device.open('danger.html');
  assert.equal(await opened(page, device.address), 'damaged', said.slice(0, 400));
  await helps(page);
  await device.end();
  end();
});

// Where a file is kept on the phone.
const damage = (page, path) => page.evaluate(async name => {
  const kept = (await caches.keys()).find(key => key.startsWith('stopgap-release-'));
  const cache = await caches.open(kept);
  const answer = await cache.match(new URL(name, location.href).href);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  bytes[bytes.length >> 1] ^= 1;
  await cache.put(new URL(name, location.href).href, new Response(bytes, { headers: answer.headers }));
}, path);
const keptDigest = (page, path) => page.evaluate(async name => {
  const kept = (await caches.keys()).find(key => key.startsWith('stopgap-release-'));
  const answer = await (await caches.open(kept)).match(new URL(name, location.href).href);
  return answer ? `sha256-${btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', await answer.arrayBuffer()))))}` : null;
}, path);
const isMended = async (page, path) => {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await keptDigest(page, path) === digestOf(readFileSync(join(site, path)))) return;
    await page.waitForTimeout(100);
  }
  assert.fail(`${path} was not fetched again`);
};

for (const path of ['stopgap-core.wasm', 'i18n/en.ftl', 'app.js']) {
  test(`${path} is damaged on the phone: no dose; without network help, with it the file again`, async () => {
    const hand = await withDemo({ keeper: true });
    await keptWhole(hand);
    const { page, device } = hand;
    await damage(page, path);
    await device.context.setOffline(true);
    assert.notEqual(await opened(page, device.address), 'open');
    await page.goto(`${device.address}danger.html#damaged`);
    await page.getByRole('heading', { name: 'This copy is damaged' }).waitFor();
    await page.getByRole('link', { name: seen('Call your own team') }).waitFor();
    await device.context.setOffline(false);
    await page.reload();
    await page.getByText('The copy is whole again.').waitFor({ timeout: 20000 });
    await page.getByRole('link', { name: 'Open Stopgap' }).click();
    await hand.heading('Maren Oduya');
    await isMended(page, path);
    await device.end();
  });
}

test('what is missing is fetched again when home is drawn, and what is altered once a day', async () => {
  const hand = await withDemo({ keeper: true });
  await keptWhole(hand);
  const { page, device } = hand;
  await hand.sees('Works with no network: yes.');
  const lost = 'desk/desk.js', altered = 'paper.js';
  await page.evaluate(async name => { for (const key of await caches.keys()) await (await caches.open(key)).delete(new URL(name, location.href).href); }, lost);
  await damage(page, altered);
  await hand.tap('More');
  await hand.tap('Back');
  await isMended(page, lost);
  // The bytes were compared within a day: the clock of the phone moves on.
  assert.notEqual(await keptDigest(page, altered), digestOf(readFileSync(join(site, altered))));
  await page.evaluate(async () => { const choice = await caches.open('stopgap-choice'); await choice.put(new URL('compared', location.href).href, new Response('0')); });
  await hand.tap('More');
  await hand.tap('Back');
  await isMended(page, altered);
  await hand.sees('Works with no network: yes.');
  await device.end();
});

test('home says why it does not work with no network, and does once the files arrive whole', async () => {
  const { folder, read, write, end } = copied();
  const font = 'fonts/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2';
  write(font, flipped(read(font), 4000));
  const hand = await withDemo({ keeper: true, folder });
  await hand.sees('Works with no network: not yet, because some files did not arrive whole.');
  await hand.sees('Stay connected and open Stopgap again. Until then rely on your card.');
  write(font, readFileSync(join(site, font)));
  await hand.tap('More');
  await hand.tap('Back');
  await hand.sees('Works with no network: yes.');
  await hand.device.end();
  end();
});

test('where the browser keeps no pages home says so, and the desk above its shelf', async () => {
  const hand = await withDemo();
  await hand.sees('Works with no network: not yet, because this browser does not keep it.');
  await hand.page.goto(`${hand.device.address}#desk`);
  await hand.sees('Works with no network: not yet, because this browser does not keep it.');
  await hand.device.end();
});

for (const path of ['stopgap-core.wasm', 'sw.js', 'release.js', 'app.js']) {
  test(`a later release comes with ${path} altered: the one in use goes on`, async () => {
    const { folder, read, write, end } = copied();
    const hand = await withDemo({ keeper: true, folder });
    await keptWhole(hand);
    const { page, device } = hand;
    const release = String(read('release.js'));
    // Another id, so that the browser takes it for a later one; and one file is not what it names, or is no script at all.
    write('release.js', release.replace(/"id": "[^"]*"/, '"id": "0123456789ab"'));
    write(path, path === 'sw.js' || path === 'release.js' ? Buffer.from('<!doctype html><title>Sign in</title>') : flipped(read(path), 4001));
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update().catch(() => {}));
    await page.waitForTimeout(1500);
    await hand.misses('A new version is ready');
    assert.equal(await opened(page, device.address), 'open');
    await device.stopServer();
    await device.context.setOffline(true);
    assert.equal(await opened(page, device.address), 'open');
    await device.context.close();
    end();
  });
}
