// The record belongs to the person: a plan of another id does not forget tonight's injection. A phone that is too new to know of a dose
// asks for it by name before it shows one.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { damage } from './damage.mjs';
import { close, inject, phone, seen } from './phone.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const plan = (id, name = 'Maren Oduya', born = '1979-06-21') => demo.replace('p-demo-adult', id).replace('Maren Oduya', name).replace('1979-06-21', born);
const file = text => ({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(text) });
const take = async hand => {
  await hand.page.getByLabel(/Type the day it was agreed/).fill('20261012');
  await hand.tap('Yes, this is my plan');
};
const withPlan = async (text, options) => {
  const device = await phone(options);
  const hand = await device.open();
  await hand.page.getByLabel(/Bring a plan file/).setInputFiles(file(text));
  await take(hand);
  await hand.page.getByRole('button', { name: seen('Start') }).waitFor();
  return { device, ...hand };
};
// Brings another plan while this one is in use.
const bring = async (hand, text) => {
  await hand.page.evaluate(() => { location.hash = '#bring'; });
  await hand.page.getByLabel(/Or paste the text here/).fill(text);
  await hand.tap('Read the text');
  await take(hand);
};
const asked = async hand => {
  await hand.touch(hand.page.getByRole('button', { name: /^\s*(Start|Test now)/ }));
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
};
const onward = async hand => {
  await hand.heading('What do you see?');
  await hand.tap('None of these');
  await hand.heading('What insulin was already given?');
  await hand.touch(hand.page.getByRole('button', { name: /^\s*(Nothing|That is all)/ }));
};

for (const size of [{ width: 390, height: 664 }, { width: 320, height: 568 }]) test(`a phone that is new asks before any dose, at ${size.width} px: no, not sure, yes`, async () => {
  const hand = await withPlan(plan('p-one'), size);
  await asked(hand);
  await hand.heading('Was insulin injected in the last 8.5 hours?');
  await hand.tap('I am not sure');
  await hand.heading('Do not inject now');
  await hand.sees('Call Diabetes night line');
  await hand.page.reload();
  await hand.misses('Inject now');
  await hand.touch(hand.page.locator('.end button').last());
  await hand.heading('Was insulin injected in the last 8.5 hours?');
  await hand.tap('Yes');
  await hand.heading('What insulin was already given?');
  await hand.tap('An injection by needle');
  await hand.keys('3');
  await hand.tap('Yes, 3 units');
  await hand.keys('0130');
  await hand.tap('Yes, at 01:30');
  await hand.tap('Yes');
  await hand.keys('16.0');
  await hand.touch(hand.page.locator('.end button').first());
  await hand.heading('What insulin was already given?');
  await hand.sees('01:30');
  await hand.tap('Back');
  await onward(hand);
  await hand.misses('Inject now');
  await hand.device.end();
});

test('tonight’s injection counts under another plan of the same person, and not under somebody else’s', async () => {
  const hand = await withPlan(plan('p-one'));
  await asked(hand);
  await hand.heading('Was insulin injected in the last 8.5 hours?');
  await hand.tap('No');
  await onward(hand);
  await inject(hand, '4');
  await hand.page.reload();
  const before = await hand.record();
  await bring(hand, plan('p-two', 'MAREN ODUYA'));
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.page.reload();
  await hand.sees('Do not inject a correction before 07:05.');
  await asked(hand);
  await onward(hand);
  await hand.misses('Inject now');
  await hand.misses('Was insulin injected');
  // Rows stay as they were written, under their plan ids.
  assert.deepEqual((await hand.record()).slice(0, before.length), before);
  // A record of the other plan that is damaged puts this one in doubt.
  await damage(hand.page, 'events', 'cut');
  await hand.page.reload();
  await hand.heading('Part of the record is damaged');
  await hand.device.end();

  const other = await withPlan(plan('p-one'));
  await asked(other);
  await other.tap('No');
  await onward(other);
  await inject(other, '4');
  await bring(other, plan('p-three', 'Ode Varga'));
  await other.page.getByRole('button', { name: seen('Start') }).waitFor();
  await asked(other);
  await other.heading('Was insulin injected in the last 8.5 hours?');
  await other.device.end();
});

test('after a day a phone is not new any more, and a demo plan is nobody’s', async () => {
  const hand = await withPlan(plan('p-one'));
  await hand.device.later(24 * 60 + 1);
  await hand.page.reload();
  await asked(hand);
  await onward(hand);
  await hand.heading('Inject now');
  await hand.device.end();
});
