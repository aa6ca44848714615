// A pump comes back while injected insulin still works: what must not run until when is said wherever that is written down, and with
// its day.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked, forgetPage, given, longActingGiven, toLongActing } from './off_pump.mjs';
import { answer, close, inject, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };
const usual = 'A pump that works again runs as usual from then on.', automation = 'Until then, keep automation off.';
const rowOf = async (hand, text) => (await hand.page.locator('.timetable li', { hasText: text }).innerText()).replace(/[\u2066-\u2069]/g, '');

// 20 units at 22:05 work until 22:05 of the next day.
const onLongActing = async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.heading('The pump is off');
  return hand;
};

// Hazard: at 22:05 "22:05, until then" reads as over.
test('a time of another day has its day beside it between the looks', async () => {
  const hand = await onLongActing();
  await hand.tap('Back');
  await hand.heading('Look again at');
  assert.match(await rowOf(hand, 'do not inject long-acting insulin again'), /22:05\s+26 November 2026/);
  await hand.shot('off-look-days');
  await hand.device.later(120);
  assert.doesNotMatch(await rowOf(hand, 'do not inject long-acting insulin again'), /2026/);
  await hand.device.end();
});

// Hazard: the pump runs its whole basal beside long-acting insulin, and nobody said not to.
test('a pump and its automation written down as on again are told until when they wait', async () => {
  const hand = await onLongActing();
  await hand.tap('Back');
  await hand.device.later(60);
  await hand.tap('Write something down');
  await hand.tap('The pump is on again');
  await hand.heading('The pump is on');
  await hand.sees('Saved: 23:05.');
  assert.match(await rowOf(hand, usual), /22:05\s+26 November 2026/);
  await hand.page.reload();
  await hand.heading('The pump is on');
  await hand.tap('Back');
  await hand.tap('Write something down');
  await hand.tap('Automation is on again');
  await hand.heading('The pump is on');
  assert.match(await rowOf(hand, automation), /22:05\s+26 November 2026/);
  await hand.tap('Back');
  // Over, it is nothing to be told any more.
  await hand.device.later(24 * 60);
  await hand.tap('Write something down');
  await hand.tap('Automation is on again');
  await hand.sees('Saved: 23:05.');
  await hand.heading('What happened?');
  await hand.device.end();
});

// A bridge of 22:05 is basal until 02:05. Hazard: a second phone, which has the record and not the page, told nothing of it.
test('what waits after a pump came back stands in the list between the looks until it is over', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.tap('Back');
  await hand.heading('Look again at');
  await hand.misses(usual);
  await hand.device.later(15);
  await hand.tap('Write something down');
  await hand.tap('The pump is on again');
  await hand.heading('The pump is on');
  await forgetPage(hand);
  await hand.page.reload();
  await hand.heading('Look again at');
  assert.match(await rowOf(hand, usual), /^02:05\s+26 November 2026\s+A pump/);
  assert.match(await rowOf(hand, automation), /^02:05\s+26 November 2026\s+Until/);
  assert.equal(await hand.page.locator('.timetable li', { hasText: automation }).count(), 1, 'automation has one time');
  await hand.shot('off-back-list');
  // The look two hours after it came back is answered, and the times still stand until they are over.
  await hand.device.later(125);
  await answer(hand, { glucose: '8.0', ketones: '0.0' });
  await hand.tap('The alarm is set');
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  assert.match(await rowOf(hand, usual), /^02:05\s+A pump/);
  await hand.device.later(101);
  await hand.page.reload();
  await hand.heading('The look of 02:05 is');
  await hand.misses(usual);
  await hand.misses(automation);
  await hand.device.end();
});

// A bridge of 22:05 was for until 02:05; long-acting insulin of 23:25 works from 01:25. The reading of 22:05 is old: nothing waits for another.
test('where long-acting insulin has taken over, no injection is said to wait', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.device.later(80);
  await hand.tap('Ask again');
  await hand.tap('I do not know');
  await hand.tap('I stay awake');
  await hand.tap('Nothing now');
  await hand.tap('I have not measured');
  await hand.tap('Long-acting insulin');
  await longActingGiven(hand, '20');
  await hand.heading('The pump is off');
  await hand.sees('Long-acting insulin is in.');
  await hand.misses('Injections for the pump wait.');
  await hand.device.end();
});

// 20 units of 22:05 work until 22:05; 4 units at 23:05 keep automation off until 03:05. Hazard: two times for one thing, and the sooner one
// believed by somebody whose pump comes back at four.
test('off the pump the list between the looks and the pages off the pump name one time for automation', async () => {
  const hand = await onLongActing();
  await hand.tap('Back');
  await hand.device.later(60);
  await answer(hand, { glucose: '17.0', ketones: '1.6' });
  await inject(hand, '4');
  await forgetPage(hand);
  await hand.page.reload();
  await hand.heading('Look again at');
  assert.equal(await hand.page.locator('.timetable li', { hasText: automation }).count(), 1);
  assert.match(await rowOf(hand, automation), /^22:05\s+26 November 2026/);
  // Off, nothing of the pump itself is due.
  await hand.misses(usual);
  await hand.device.end();
});

// Hazard: "nothing to inject" alone, and the whole basal runs beside the injected one for a day.
test('a pump that is back beside long-acting insulin is told first that it does not run as usual yet', async () => {
  const hand = await onLongActing();
  await hand.device.later(1);
  await hand.tap('A pump works again');
  await hand.heading('The pump is on');
  const waits = 'Do not run the pump as usual before its time below.';
  await hand.sees(waits);
  await hand.device.later(24 * 60 + 1);
  await hand.page.reload();
  await hand.misses(waits);
  await hand.device.end();
});
