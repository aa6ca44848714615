// What comes in is reviewed before it can be taken. A plan with a slip that nobody can have meant does not come into use, however it came
// and whoever agreed it: it lies beside the one that is, as it came, and the finding is said in words. What the clinic was asked about and
// did not confirm is said beside its number, before the plan is taken.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { load } from '../../../wasm/core.mjs';
import { answer, close, inject, phone } from './phone.mjs';

after(close);
const demo = name => readFileSync(fileURLToPath(new URL(`../../../pwa/demo/${name}.json`, import.meta.url)), 'utf8');
const renamed = (text, id) => text.replace(/"id": "p-demo-\w+"/, `"id": "${id}"`).replace(/"title": "[^"]*"/, '"title": "Everyday"');
const good = renamed(demo('adult'), 'p-good');
// The child's factors, 90 and 80 mg/dL, written in mmol/L: 5 and 4.4. Each correction would be eighteen times too large.
const slipped = renamed(demo('child'), 'p-slipped').replaceAll('"value": 90 }', '"value": 5 }').replaceAll('"value": 80 }', '"value": 4.4 }');
const file = (text, name = 'plan.json') => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const bringFile = (hand, text) => hand.page.getByLabel(/Bring a plan file/).setInputFiles(file(text));
const typedDay = hand => hand.page.getByLabel(/Type the day it was agreed/);
const withPlan = async (text, day) => {
  const device = await phone({ at: '2026-11-25T10:00:00+01:00' });
  const hand = { device, ...await device.open() };
  await bringFile(hand, text);
  await typedDay(hand).fill(day);
  await hand.tap('Yes, this is my plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  return hand;
};
const otherUnit = async hand => {
  await hand.sees('This plan is not taken into use.');
  await hand.sees('Correction factor from 00:00: 5');
  await hand.sees('5 mg/dL looks like a number in the other glucose unit. Check the unit.');
  await hand.sees('Call your clinic about what stands below.');
  assert.equal(await typedDay(hand).count(), 0);
  await hand.misses('Yes, this is my plan');
};
const kept = hand => hand.page.evaluate(() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const turn = opening.result.transaction(['plans', 'desk']);
    const plans = turn.objectStore('plans').getAll(), aside = turn.objectStore('desk').get('aside');
    turn.oncomplete = () => { resolve({ plans: plans.result, aside: JSON.parse(aside.result ?? '[]') }); opening.result.close(); };
  };
}));

test('an agreed file with its factor in the other unit is refused with the finding in words, kept as it came, and the plan in use stays', async () => {
  const hand = await withPlan(good, '20261012');
  await hand.tap('More');
  await hand.tap('Another plan');
  await bringFile(hand, slipped);
  await hand.heading('Tilo Brandvik');
  await otherUnit(hand);
  await hand.shot('reviewed-refused');
  await hand.tap('I will ask the clinic');
  assert.deepEqual(await kept(hand), { plans: [good], aside: [slipped] });
  // The plan in use goes on, after a reload as well, and leads to its own dose.
  await hand.page.reload();
  await hand.tap('Back');
  await hand.heading('Maren Oduya');
  await hand.tap('More');
  await hand.tap('Plans not in use');
  await hand.heading('Plans not in use');
  await hand.sees('Tilo Brandvik');
  await hand.sees('5 mg/dL looks like a number in the other glucose unit. Check the unit.');
  await hand.shot('reviewed-aside');
  const coming = hand.page.waitForEvent('download');
  await hand.tap('Save this plan as a file');
  assert.equal(readFileSync(await (await coming).path(), 'utf8'), slipped);
  await hand.tap('Remove it from here');
  await hand.page.waitForFunction(() => document.documentElement.dataset.screen === 'home');
  assert.deepEqual(await kept(hand), { plans: [good], aside: [] });
  await answer(hand);
  await hand.heading('Inject now');
  await hand.sees('4 units lispro, by needle');
  await hand.device.end();
});

test('the same plan by code, by paste, and on a phone without a plan: refused each time', async () => {
  const core = await load();
  const packed = JSON.parse(core.ask('packPlan', `{"plan":${slipped}}`));
  assert.ok(packed.text, JSON.stringify(packed));
  const device = await phone({ at: '2026-11-25T10:00:00+01:00' });
  const hand = { device, ...await device.open() };
  for (const text of [packed.text, slipped]) {
    await hand.page.goto(`${device.address}#bring`);
    await hand.page.getByLabel(/Or paste the text here/).fill(text);
    await hand.tap('Read the text');
    await hand.heading('Tilo Brandvik');
    await otherUnit(hand);
    await hand.tap('I will ask the clinic');
    await hand.heading('Bring a plan');
  }
  // An invented person's file is looked at as any other.
  await hand.page.goto(device.address);
  await hand.heading('Stopgap');
  await bringFile(hand, slipped.replace('p-slipped', 'p-demo-child'));
  await hand.heading('Tilo Brandvik');
  await otherUnit(hand);
  await hand.tap('I will ask the clinic');
  await hand.heading('Stopgap');
  await hand.tap('Plans not in use');
  await hand.heading('Plans not in use');
  assert.deepEqual((await kept(hand)).plans, []);
  await hand.device.end();
});

test('what the clinic was asked and did not confirm stands beside its number, and the plan can be taken', async () => {
  const device = await phone({ at: '2026-11-25T10:00:00+01:00' });
  const hand = { device, ...await device.open() };
  // A target of 9.0 mmol/L is over 8.3: asked about, and nothing in the plan says that somebody typed it again.
  await bringFile(hand, good.replace(/("target": \[\{ "from": "00:00", "value": )[0-9.]+/, '$19.0'));
  await hand.heading('Maren Oduya');
  await hand.sees('Your clinic did not confirm this: ask.');
  await hand.sees('Target from 00:00: 9.0');
  await hand.sees('A target of 9.0 mmol/L is unusual.');
  await hand.misses('This plan is not taken into use.');
  await hand.shot('reviewed-unconfirmed');
  await typedDay(hand).fill('20261012');
  await hand.tap('Yes, this is my plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  assert.deepEqual((await kept(hand)).aside, []);
  await hand.device.end();
});

// Whoever has such a plan in use already got it from an earlier version, or from a phone that did not look: what is kept is set so.
test('a plan in use that could not be agreed any more goes on dosing, says so under every advice, and home names the number', async () => {
  const hand = await withPlan(good, '20261012');
  const inUse = good.replace(/("correctionFactor": \[\{ "from": "00:00", "value": )[0-9.]+/, '$130');
  assert.notEqual(inUse, good);
  await hand.page.evaluate(text => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const turn = opening.result.transaction(['plans', 'desk'], 'readwrite');
      // Taken in by a release that knew no seals.
      turn.objectStore('plans').add(text);
      turn.objectStore('desk').delete('seal-plan');
      turn.oncomplete = () => { opening.result.close(); resolve(); };
    };
  }), inUse);
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.sees('Show this to your clinic');
  await hand.sees('Correction factor from 00:00: 30');
  await hand.sees('30 mmol/L looks like a number in the other glucose unit. Check the unit.');
  await hand.sees('The plan stays in use.');
  await hand.shot('finding-home');
  await hand.device.later(24 * 60);
  await answer(hand);
  await hand.heading('Inject now');
  await hand.sees('A number in the plan looks wrong. Ask your clinic.');
  await hand.sees('Correction factor from 00:00: 30');
  await hand.sees('30 mmol/L looks like a number in the other glucose unit.');
  await hand.shot('finding-dose');
  await inject(hand, '4');
  await hand.sees('A number in the plan looks wrong. Ask your clinic.');
  await hand.shot('finding-steps');
  await hand.device.end();
});
