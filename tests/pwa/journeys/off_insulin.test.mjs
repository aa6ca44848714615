// The insulin itself is the trouble: what must not be drawn is said where it is drawn, and not only at the foot of a page before.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked, toLongActing } from './off_pump.mjs';
import { answer, close, withDemo } from './phone.mjs';

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

// Hazard: spoiled insulin is injected in place of the pump. The list of steps that asks for a new vial can be left for these pages.
const hotOrFrozen = 'Do not use insulin that was hot or frozen.';
for (const hours of ['6', undefined])
  test(`insulin that was hot or frozen is named above every injection, ${hours ? 'rapid-acting' : 'then long-acting'}`, async () => {
    const hand = await withDemo({ at: '2026-11-25T22:05:00+01:00' });
    const above = async () => (await hand.page.locator('.warnbox').allInnerTexts()).join(' ');
    await answer(hand, { glucose: '8.0', ketones: '0.2', sees: ['The insulin got hot or froze', 'The pump is dead'] });
    await asked(hand, { hours, stands: true });
    await hand.heading('The pump is off');
    assert.ok((await above()).includes(hotOrFrozen), await above());
    await hand.tap('Inject for the next hours');
    await hand.heading('Inject now');
    assert.ok((await above()).includes(hotOrFrozen), await above());
    if (!hours) {
      await hand.tap('I do not inject');
      await toLongActing(hand);
      await hand.tap('glargine');
      await hand.tap('Show the dose');
      await hand.heading('Inject now');
      assert.ok((await above()).includes(hotOrFrozen), await above());
      await hand.device.end();
      return;
    }
    await hand.shot('off-hot');
    await hand.device.end();
  });
