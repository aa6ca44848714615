// Every page of the desk, by day and by night, at 320 px and with the text twice as large: nothing runs off the side, everything
// can be hit, and the checks of axe find nothing.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { axeFaults, strict } from './axe.mjs';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { atDesk, exactly, noFaults } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8').replace('p-demo-adult', 'p-look');

const inspect = async (hand, name, contrast) => {
  await noFaults(hand, name);
  await hand.shot(`desk-${name}`);
  if (!contrast) return;
  assert.deepEqual(await axeFaults(hand.page, strict), [], name);
};

const walk = async (size, label, options = {}, contrast = true) => {
  // axe waits for the clock of the page.
  const hand = await atDesk(size, { flowing: contrast, ...options });
  await inspect(hand, `${label} empty shelf`, contrast);
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(demo) });
  await hand.sees('The file is on the shelf');
  await inspect(hand, `${label} shelf`, contrast);
  await hand.tap('Maren Oduya');
  await hand.heading('Maren Oduya');
  await inspect(hand, `${label} plan`, contrast);
  await hand.tap('Write the next revision');
  await hand.heading('The plan’s sheet');
  await hand.page.getByLabel('A published table as a starting point').selectOption('ispad-sick');
  await hand.sees('These rows are from memory only. They are off.');
  await hand.page.getByLabel('A published table as a starting point').selectOption('se-ketones');
  await hand.sees('Printed, not in the plan.');
  await hand.number('Correction factor, 1', '25');
  await hand.sees('Refused');
  await inspect(hand, `${label} sheet`, contrast);
  if (hand.small) {
    await hand.page.getByRole('button', { name: exactly('Weight', '[\\u2066-\\u2069]*: ') }).click();
    await hand.page.getByRole('button', { name: /^7$/ }).click();
    await inspect(hand, `${label} keypad`, contrast);
    await hand.tap('Leave it as it was');
  }
  await hand.page.evaluate(() => scrollTo(0, 0));
  await hand.tap('Review and agree');
  await hand.heading('Review and agree');
  await inspect(hand, `${label} agree`, contrast);
  await hand.page.getByRole('link', { name: 'Desk' }).click();
  await hand.heading('Plans on this machine');
  await hand.tap('Remove the data of');
  await hand.heading('Remove the data of Maren Oduya?');
  await inspect(hand, `${label} removal`, contrast);
  await hand.device.end();
};

test('a laptop by day', () => walk('laptop', 'laptop-day'));
test('a phone at night', () => walk('phone', 'phone-night', { at: '2026-11-25T23:00:00+01:00' }));
test('320 px wide', () => walk('phone', 'narrow', { width: 320, height: 640 }, false));
test('text twice as large', () => walk('phone', 'large', { prepare: () => addEventListener('DOMContentLoaded', () => { document.documentElement.style.fontSize = '200%'; }) }, false));
