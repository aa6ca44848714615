// A dose went in at 03:05 in Berlin; four hours hold the next one, until 07:05 there. The phone's clock is set back or forward, its
// zone changes, it is read again, a second tab opens: the hold ends at the same instant, and an entry from the future closes the way to
// a dose. Worked by hand: 03:05 and 07:05 at +01:00 are 21:05 and 01:05 at -05:00, and 11:05 and 15:05 at +09:00.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, inject, phone } from './phone.mjs';

after(close);

const injected = async () => {
  const hand = await betweenLooks();
  await hand.sees('Do not inject a correction before 07:05.');
  return hand;
};
const setClock = (hand, at) => hand.device.context.clock.setSystemTime(new Date(at));
// Somebody comes back to the page, or the phone was started anew.
const ways = { 'the page is come back to': hand => hand.page.evaluate(() => { document.dispatchEvent(new Event('visibilitychange')); }), 'the page is read again': hand => hand.page.reload() };
const untouched = async (hand, before) => assert.deepEqual(await hand.record(), before);
const doses = async hand => (await hand.record()).filter(event => ['doseShown', 'injection'].includes(event.kind)).length;

for (const [how, comeBack] of Object.entries(ways)) test(`set back by two hours, and ${how}: the hold ends when it did, the clock is in doubt, nothing is offered`, async () => {
  const hand = await injected();
  const before = await hand.record();
  // A page that went on running has seen it, and asks. One that was read again knows only what is written down.
  const ran = how === 'the page is come back to';
  await setClock(hand, '2026-11-25T01:05:00+01:00');
  await comeBack(hand);
  await hand.sees('Now 01:05');
  if (ran) {
    await hand.heading('Is this the time?');
    await hand.tap('No, it is not');
  } else await hand.sees('Do not inject a correction before 07:05.');
  await hand.sees('Look at another clock.');
  await hand.shot('clock-back');
  await untouched(hand, before);
  // Whatever is measured now, no dose comes out of it.
  if (ran) await hand.tap('The clock is right now');
  await hand.tap(ran ? 'Test first' : 'Test now, before the look');
  await hand.heading('Is any of these true now?');
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('20.0');
  await hand.tap('Finger: 20.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  const asked = ran ? 'Is this the time?' : 'Is this the right time?';
  await hand.heading(asked);
  await hand.shot('clock-in-doubt');
  await hand.misses('Inject now');
  await hand.page.reload();
  await hand.heading(asked);
  assert.equal(await doses(hand), 2);
  // Set right again, the hold is where it was.
  await hand.device.later(5);
  await setClock(hand, '2026-11-25T03:10:00+01:00');
  if (ran) {
    await hand.tap('No, it is not');
    await hand.sees('Now 03:10');
    await hand.device.end();
    return;
  }
  await hand.tap('The clock is right now');
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.device.end();
});

for (const [how, comeBack] of Object.entries(ways)) test(`set forward by two hours, and ${how}: the hold ends when it did, and the look is late`, async () => {
  const hand = await injected();
  const before = await hand.record();
  await setClock(hand, '2026-11-25T05:05:00+01:00');
  await comeBack(hand);
  if (how === 'the page is come back to') {
    await hand.heading('Is this the time?');
    await untouched(hand, before);
    await hand.tap('Test first');
    await hand.sees('Do not inject a correction before 07:05.');
    await hand.device.end();
    return;
  }
  await hand.heading('The look of 04:05 is');
  await hand.sees('60 minutes late');
  await hand.sees('Do not inject a correction before 07:05.');
  await untouched(hand, before);
  await answer(hand, { glucose: '18.0', ketones: '0.2' });
  await hand.heading('Do not inject now');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.equal(await doses(hand), 2);
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  // Set right again, what was written under the wrong clock lies in the future.
  await setClock(hand, '2026-11-25T03:10:00+01:00');
  await hand.page.reload();
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.sees('Look at another clock.');
  assert.equal(await doses(hand), 2);
  await hand.device.end();
});

for (const [zone, now, look, hold] of [['America/New_York', '21:05', '22:05', '01:05'], ['Asia/Tokyo', '11:05', '12:05', '15:05']]) test(`carried to ${zone}: the hold ends at the same instant, on the clock of that place`, async () => {
  const home = await injected();
  const before = await home.record();
  // The same phone with the same storage, in another zone.
  const storage = await home.device.context.storageState({ indexedDB: true });
  await home.device.context.close();
  const device = await phone({ zone, storage, server: home.device.host });
  const hand = { device, ...await device.open() };
  for (const again of [false, true]) {
    if (again) await hand.page.reload();
    await hand.sees(`Now ${now}`);
    await hand.sees(`Next look ${look}`);
    await hand.sees(`Do not inject a correction before ${hold}.`);
    await hand.misses('Look at another clock.');
  }
  await untouched(hand, before);
  await hand.tap('Test now, before the look');
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.tap('None of these');
  await hand.tap('That is all');
  await hand.heading('Do not inject now');
  await hand.sees(hold);
  await hand.shot(`zone-${zone.replace('/', '-')}`);
  assert.equal(await doses(hand), 2);
  await hand.device.end();
});

test('a second tab waits while the hold runs, and takes it over as it is', async () => {
  const hand = await injected();
  const before = await hand.record();
  const other = await hand.device.open();
  await other.heading('This tab waits');
  await other.misses('Inject now');
  await other.misses('Start');
  await hand.device.later(30);
  await hand.page.close();
  await other.heading('Look again at');
  await other.sees('Do not inject a correction before 07:05.');
  assert.deepEqual(await other.record(), before);
  await hand.device.end();
});
