// Hazard: dose twice by hand, and an answer nobody gave. A shaking finger taps twice; the second tap must not answer the next page.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { close, seen, withDemo } from './phone.mjs';

after(close);
// The middle of a button of the page that is there, and what lies under that spot later.
const spotOf = async (hand, text) => {
  const button = hand.page.getByRole('button', { name: seen(text) }).first();
  await button.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await button.boundingBox();
  return [x + width / 2, y + height / 2];
};
const under = (hand, [x, y]) => hand.page.evaluate(([left, top]) => document.elementFromPoint(left, top)?.closest('button')?.innerText.trim() ?? '', [x, y]);
const atTheSigns = async () => {
  const hand = await withDemo({ machineTime: true });
  await hand.tap('Start');
  await hand.heading('Is any of these true now?');
  await hand.page.waitForTimeout(500);
  return hand;
};

// So many taps as a hurried finger makes them, by the clock that the browser puts on each. A busy machine may take longer between them
// than any finger, which then was something else: tried anew.
const atOnce = async (press, count, begin = async () => {}) => {
  for (let tries = 0; tries < 8; tries += 1) {
    const hand = await atTheSigns();
    const spot = await spotOf(hand, 'None of these');
    await hand.page.evaluate(() => { window.taps = []; addEventListener('click', tap => window.taps.push(tap.timeStamp), { capture: true }); });
    await begin(hand);
    await Promise.all(Array.from({ length: count }, async (_, which) => { await hand.page.waitForTimeout(which * 110); await press(hand, spot); }));
    await hand.page.waitForFunction(all => window.taps.length === all, count);
    await hand.page.waitForTimeout(500);
    const taps = await hand.page.evaluate(() => window.taps);
    if (taps.at(-1) - taps[0] < 340) return { hand, spot };
    await hand.device.end();
  }
  return assert.fail('this machine is too slow for a double tap');
};
const finger = (hand, spot) => hand.page.touchscreen.tap(...spot);
const mouse = (hand, spot) => hand.page.mouse.click(...spot);

for (const [how, press] of [['finger', finger], ['mouse', mouse]])
  test(`a second tap on the same spot of the next page is nobody’s answer; one that comes later is (${how})`, async () => {
    const { hand, spot } = await atOnce(press, 2);
    await hand.heading('Glucose now');
    assert.equal(await under(hand, spot), 'I do not know');
    await press(hand, spot);
    await hand.heading('Blood ketones now');
    await hand.device.end();
  });

test('three taps of somebody who thinks that a slow phone did not hear are one answer', async () => {
  const slow = async hand => (await hand.page.context().newCDPSession(hand.page)).send('Emulation.setCPUThrottlingRate', { rate: 8 });
  const { hand } = await atOnce(mouse, 3, slow);
  await hand.heading('Glucose now');
  await hand.device.end();
});

test('a tap elsewhere counts at once, and two equal keys of one number both count', async () => {
  const hand = await atTheSigns();
  await mouse(hand, await spotOf(hand, 'None of these'));
  await hand.heading('Glucose now');
  for (const key of ['1', '1', 'decimal point', '0']) await hand.page.getByRole('button', { name: key, exact: true }).click();
  await hand.sees('Finger: 11.0 mmol/L');
  await hand.device.end();
});
