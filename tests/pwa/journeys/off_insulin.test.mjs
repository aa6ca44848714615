// The insulin itself is the trouble: what must not be drawn is said where it is drawn, and not only at the foot of a page before.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked } from './off_pump.mjs';
import { close, withDemo } from './phone.mjs';

after(close);

test('a vial that is out of date is named above the injection and on its page, and so is the vial of the pump', async () => {
  const hand = await withDemo({ at: '2026-10-16T21:00:00+02:00' });
  await hand.tap('Write something down');
  await hand.tap('New insulin from a new vial');
  await hand.sees('Saved: 21:00.');
  await hand.tap('Back');
  // 28 days from 16 October are over on 13 November.
  await hand.device.later(40 * 24 * 60);
  await asked(hand, { hours: '6', glucose: '7.0' });
  const above = (await hand.page.locator('.warnbox').allInnerTexts()).join(' ');
  assert.match(above.replace(/[\u2066-\u2069]/g, ''), /The insulin in use is out of date. Open a new one./);
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.sees('The insulin in use is out of date. Open a new one.');
  await hand.sees('Do not use the vial that filled the pump.');
  await hand.shot('off-out-of-date');
  await hand.device.end();
});
