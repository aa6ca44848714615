// Plans that come as a file, plans that are wrong, and a phone that keeps nothing.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, inject, phone, withDemo } from './phone.mjs';

after(close);
const adult = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const file = (text, name = 'plan.json') => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

test('a wrong plan file is refused with its place and what is possible, and nothing stored is lost', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  const before = (await hand.record()).length;
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.tap('More');
  await hand.shot('more');
  await hand.tap('Another plan');
  await hand.page.getByLabel(/Bring a plan file/).setInputFiles(file(adult.replace('"trigger": 14.0', '"trigger": 140')));
  await hand.heading('This cannot be used');
  await hand.sees('/plan/high/trigger');
  await hand.sees('This is outside the limits.');
  await hand.sees('8.0 to 25.0');
  await hand.sees('Nothing was changed.');
  await hand.shot('refused');
  await hand.tap('Back');
  for (const [text, sentence] of [['{"plan', 'The file cannot be read.'], ['', 'The file cannot be read.'], ['[]', ''], [adult.replace('"version": 1', '"version": 2'), 'This plan needs a newer version of the app.'],
    [adult.replace('"rounding": "down"', '"rounding": "down", "rounding": "nearest"'), 'One entry stands there twice.']]) {
    await hand.page.getByLabel(/Bring a plan file/).setInputFiles(file(text));
    await hand.heading('This cannot be used');
    if (sentence) await hand.sees(sentence);
    await hand.tap('Back');
  }
  await hand.tap('Back');
  await hand.heading('Look again at');
  assert.ok((await hand.record()).length >= before);
  await hand.device.end();
});

test('a copy saved on one phone is whole on another, record and holds included', async () => {
  const hand = await betweenLooks();
  await hand.tap('More');
  await hand.heading('More');
  const coming = hand.page.waitForEvent('download');
  await hand.tap('Save a copy');
  const saved = join(mkdtempSync(join(tmpdir(), 'stopgap-')), 'copy.json');
  await (await coming).saveAs(saved);
  const sent = await hand.record();
  await hand.device.end();

  const device = await phone({ at: '2026-11-25T03:30:00+01:00' });
  const other = await device.open();
  await other.heading('Stopgap');
  await other.shot('first');
  await other.page.getByLabel(/Bring a plan file/).setInputFiles(saved);
  await other.heading('Maren Oduya');
  await other.shot('offered');
  await other.tap('Look round with this plan');
  await other.heading('Look again at');
  await other.sees('Do not inject a correction before 07:05.');
  assert.deepEqual(await other.record(), sent);
  await device.end();
});

test('storage refused: the dose is written down by hand before it is drawn, and still counts', async () => {
  const hand = await withDemo();
  await hand.page.evaluate(() => { for (const name of ['add', 'put']) IDBObjectStore.prototype[name] = () => { throw new DOMException('refused', 'QuotaExceededError'); }; });
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Write this down');
  await hand.sees('Glucose 16.0 mmol/L, finger');
  await hand.tap('I have written it down');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.tap('I have written it down');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.heading('Write this down');
  await hand.sees('Shown: 4 units');
  await hand.shot('write-down');
  await hand.tap('I have written it down');
  await inject(hand, '4');
  await hand.heading('Write this down');
  await hand.sees('Injected: 4 units, rapid-acting');
  await hand.sees('03:05');
  await hand.tap('I have written it down');
  await hand.heading('Change the infusion set');
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.device.end();
});

test('writing that fails in the middle is noticed, and said', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.page.evaluate(() => { IDBObjectStore.prototype.add = () => { throw new DOMException('full', 'QuotaExceededError'); }; });
  await inject(hand, '4');
  await hand.heading('Write this down');
  await hand.sees('Injected: 4 units');
  await hand.device.end();
});

test('the demo can begin again: nothing of it stays', async () => {
  const hand = await withDemo();
  await hand.tap('More');
  await hand.tap('Begin the demo again');
  await hand.heading('Remove everything from this phone?');
  await hand.shot('remove');
  await hand.tap('Yes, remove everything');
  await hand.heading('Stopgap');
  assert.equal((await hand.record()).length, 0);
  await hand.device.end();
});

test('a plan past its time gives no dose: who to call, and no number', async () => {
  const hand = await withDemo({ at: '2027-06-01T03:05:00+02:00' });
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.heading('This plan may not be used');
  await hand.shot('no-plan');
  await hand.misses('Inject now');
  await hand.device.end();
});
