// The picture of insulin at work: what the needle's dose takes off, and what it would be if the pump gave the same again.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, inject, seen, withDemo } from './phone.mjs';

after(close);

// 4 units at 16.0, factor 2.5, hours of action 4.5: worked by hand in tests/holds_test.cpp. From 16.0 to the low level it is 12.1: the
// dose alone does not come there, the same again does.
test('the step that tells the pump shows what happens if it is not told', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  for (const done of ['The set is changed', 'The reservoir is new']) await hand.tap(done);
  await hand.tap('See insulin at work');
  await hand.heading('Insulin at work');
  await hand.sees('After 1 h: 1.7 mmol/L lower. Not told: 3.3 lower.');
  await hand.sees('After 2 h: 5.3 mmol/L lower. Not told: 10.6 lower.');
  await hand.sees('The same dose again leads to a low.');
  await hand.sees('After 2 h: 1.88 units');
  await hand.shot('picture');
  // The broken line leaves the drawing's low line below it at the end, the whole one stays above it.
  const ends = await hand.page.locator('svg.d.wide').first().evaluate(drawing => {
    const last = path => +path.getAttribute('d').split(/[ L]/).at(-1);
    return { told: last(drawing.querySelector('.fat:not(.dash)')), untold: last(drawing.querySelector('.dash')), low: +drawing.querySelector('.solid').getAttribute('d').match(/^M[0-9.]+ ([0-9.]+)/)[1] };
  });
  assert.ok(ends.told < ends.low && ends.low < ends.untold, JSON.stringify(ends));
  await hand.tap('Back');
  await hand.heading('Pump: 4 units into a sink');
  await hand.device.end();
});

test('between the looks it is there while insulin acts, and a reload leads back to the looks', async () => {
  const hand = await betweenLooks();
  await hand.tap('See insulin at work');
  await hand.heading('Insulin at work');
  await hand.page.reload();
  await hand.heading('Look again at');
  // 5 h later nothing acts: there is nothing to draw.
  await hand.device.later(300);
  await hand.page.reload();
  await hand.page.locator('h1').waitFor();
  assert.equal(await hand.page.getByRole('button', { name: seen('See insulin at work') }).count(), 0);
  await hand.device.end();
});
