// The main job without a finger: Tab, Enter and the figures of a keyboard. What cannot be is refused in a sentence, whatever typed it.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { close, withDemo } from './phone.mjs';

after(close);

const focused = hand => hand.page.evaluate(() => (document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim());
// On with Tab from the heading, where every page begins, to the button; then Enter.
const enter = async (hand, text) => {
  for (let tries = 0; tries < 60; tries += 1) {
    if ((await focused(hand)).startsWith(text)) { await hand.page.keyboard.press('Enter'); await hand.page.waitForSelector('body[aria-busy=false]', { state: 'attached' }); return; }
    await hand.page.keyboard.press('Tab');
  }
  assert.fail(`Tab does not come to "${text}", but to "${await focused(hand)}"`);
};
const type = async (hand, signs) => { for (const sign of signs) { await hand.page.keyboard.press(sign); await hand.page.waitForSelector('body[aria-busy=false]', { state: 'attached' }); } };
const figure = hand => hand.page.locator('.entry .fig').innerText();
const readBack = async hand => (await hand.page.getByRole('status').first().innerText()).replace(/[\u2066-\u2069]/g, '');

test('from the home page to the injection by keyboard alone, each page beginning at its heading', async () => {
  const hand = await withDemo({ touch: false });
  await enter(hand, 'Start');
  await hand.heading('Is any of these true now?');
  assert.equal(await focused(hand), 'Is any of these true now?');
  await enter(hand, 'None of these');
  await hand.heading('Glucose now');
  await type(hand, ['1', '6', ',', '5', 'Backspace', '0']);
  assert.equal(await figure(hand), '16.0');
  assert.equal(await readBack(hand), 'One six point zero');
  await enter(hand, 'Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await type(hand, ['0', '.', '8']);
  await enter(hand, 'Yes, ketones are 0.8');
  await enter(hand, 'None of these');
  await enter(hand, 'Nothing');
  await hand.heading('Is this the time?');
  assert.equal(await focused(hand), 'Is this the time?');
  await enter(hand, 'Yes, it is');
  await hand.heading('Inject now');
  await enter(hand, 'Type the units you see');
  await type(hand, ['4']);
  await enter(hand, 'I see 4 units');
  await hand.heading('Inject 4 units now');
  await enter(hand, 'I have injected 4 units');
  await hand.heading('Change the infusion set');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection' && event.units === 4).length, 1);
  await hand.device.end();
});

// 35 for 3.5; glucose and ketones in each other's place; figures where no keypad is.
test('35 for 3.5 and exchanged numbers are refused in a sentence, and a figure typed elsewhere does nothing', async () => {
  const hand = await withDemo({ touch: false });
  await type(hand, ['7']);
  await hand.heading('Maren Oduya');
  await enter(hand, 'Start');
  await enter(hand, 'None of these');
  await hand.heading('Glucose now');
  await type(hand, ['0', '.', '8']);
  await enter(hand, 'Finger: 0.8 mmol/L');
  await hand.heading('Glucose now');
  assert.match(await readBack(hand), /1\.0/);
  assert.equal(await figure(hand), '0.8');
  for (let n = 0; n < 3; n += 1) await type(hand, ['Backspace']);
  await type(hand, ['1', '6', '.', '0']);
  await enter(hand, 'Finger: 16.0 mmol/L');
  for (const typed of ['35', '16.0']) {
    await hand.heading('Blood ketones now');
    await type(hand, [...typed]);
    await enter(hand, `Yes, ketones are ${typed}`);
    await hand.heading('Blood ketones now');
    assert.match(await readBack(hand), /15\.0/);
    for (let n = 0; n < typed.length; n += 1) await type(hand, ['Backspace']);
  }
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'ketones'), []);
  await hand.device.end();
});
