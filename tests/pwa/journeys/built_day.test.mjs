// No clock that is right shows a day before this release was built. One that does closes every dose, until another clock was looked at.
// The day stands in the page: the site's own, which the tests set to 2026-10-15 (pwa/run). The demo plan was agreed before it, on
// 2026-10-12, so that it is this day alone that closes.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { toHours } from './off_pump.mjs';
import { answer, close, site, withDemo } from './phone.mjs';

after(close);
const built = /<meta name="built" content="([^"]*)">/.exec(readFileSync(join(site, 'index.html'), 'utf8'))[1];
const doses = async hand => (await hand.record()).filter(event => event.kind === 'doseShown').length;
// The gate closes at more than 24 h before the first minute of that day, in UTC.
const before = minutes => new Date(Date.parse(`${built}T00:00:00Z`) - minutes * 60000).toISOString().replace('.000Z', '+00:00');

test('the site of the tests was built on the day they are written for', () => assert.equal(built, '2026-10-15'));

test('two days before the day it was built: no dose, another clock is asked for', async () => {
  const hand = await withDemo({ at: before(2 * 24 * 60), zone: 'UTC' });
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  // As soon as a dose would follow, and not after two more questions.
  await hand.heading('Is this the right time?');
  await hand.sees('Look at another clock.');
  await hand.misses('Inject now');
  await hand.page.reload();
  await hand.heading('Is this the right time?');
  await hand.shot('built-day');
  assert.equal(await doses(hand), 0);
  await hand.device.end();
});

test('twenty-four hours before it, to the minute: still a clock somewhere, and the dose stands', async () => {
  const hand = await withDemo({ at: before(24 * 60), zone: 'UTC' });
  await answer(hand);
  await hand.heading('Inject now');
  await hand.device.end();
});

test('off the pump likewise: nothing is shown while the clock is in doubt', async () => {
  const hand = await withDemo({ at: before(2 * 24 * 60), zone: 'UTC' });
  await toHours(hand);
  await hand.tap('I do not know');
  await hand.tap('I stay awake');
  await hand.heading('What do you eat now?');
  await hand.tap('Nothing now');
  await hand.heading('Is this the right time?');
  await hand.misses('Inject for');
  assert.equal(await doses(hand), 0);
  await hand.device.end();
});
