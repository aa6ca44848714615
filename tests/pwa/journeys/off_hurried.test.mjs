// Off the pump, tapped twice in a hurry, left lying on a call, or under a clock that was set: none of it changes what is meant.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked } from './off_pump.mjs';
import { answer, close, inUnits, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };
const setClock = (hand, text) => hand.device.context.clock.setSystemTime(new Date(text));
const orders = async hand => (await hand.record()).filter(event => event.kind === 'order').length;
const injectedAt = async hand => (await hand.record()).filter(event => event.kind === 'injection').map(event => event.at);
const toOrder = async (hand, units) => {
  await asked(hand, { glucose: '7.0' });
  await hand.tap('Then the second injection');
  await hand.tap('The team named an amount');
  await hand.keys(units);
  await hand.tap(`They said ${units}`);
  await hand.heading(`${units} units of glargine`);
};

// Where one button stood another must not come under the finger: a pump that works would be off again, and basal given twice.
test('two taps in one place on "A pump works again" leave the pump on', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.device.later(5);
  const button = hand.page.getByRole('button', { name: seen('A pump works again') });
  await button.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await button.boundingBox();
  await hand.page.mouse.click(x + width / 2, y + height / 2);
  await hand.heading('The pump is on');
  await hand.device.later(1);
  // Later than a double tap, which the page refuses.
  await hand.page.waitForTimeout(500);
  await hand.page.mouse.click(x + width / 2, y + height / 2);
  await hand.page.waitForTimeout(400);
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'pump').map(event => event.state), ['off', 'on']);
  await hand.device.end();
});

// The call is long over: nobody says yes to anything now.
test('an amount that was typed on a call a while ago is asked for again', async () => {
  const hand = await withDemo(night);
  await toOrder(hand, '10');
  await hand.device.later(60);
  await hand.page.reload();
  await hand.heading('10 units of glargine');
  await hand.tap('They said yes');
  await hand.heading('How many units did they say?');
  assert.equal(await orders(hand), 0);
  await hand.device.end();
});

// The team said 10 in place of the 20 of the plan. An hour later the order is over, and the 20 are not what anybody wants here.
test('an order that runs out while the label is read does not turn into the dose of the plan', async () => {
  const hand = await withDemo(night);
  await toOrder(hand, '10');
  await hand.tap('They said yes');
  await hand.tap('glargine');
  await hand.heading('glargine is in your hand');
  await hand.device.later(61);
  await hand.tap('Show the dose');
  await hand.heading('How many units did they say?');
  assert.equal((await hand.record()).filter(event => event.kind === 'doseShown').length, 0);
  // Nobody reaches the team: what the plan says is there as before.
  await hand.tap('Back');
  await hand.heading('The pump is off');
  await hand.device.end();
});

// Shown at 22:05. Written down as of 10:00, its hold would be over twelve hours too soon once the clock is right again.
test('a clock set back at the needle shortens the hold of no long-acting insulin', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await hand.tap('Then the second injection');
  await hand.tap('Long-acting insulin');
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.tap('Type the units you see');
  await hand.keys('20');
  await hand.tap('I see 20 units');
  await setClock(hand, '2026-11-25T10:00:00+01:00');
  await hand.tap('I have injected 20 units');
  await hand.heading('Is this the time?');
  assert.deepEqual(await injectedAt(hand), ['2026-11-25T22:05:00+01:00']);
  await hand.device.end();
});

// The same at the bedside: four hours from 22:05, and not from 20:05.
test('a clock set back at the needle shortens the hold of no correction', async () => {
  const hand = await withDemo(night);
  await answer(hand);
  await hand.heading('Inject now');
  const units = (await hand.record()).find(event => event.kind === 'doseShown').units;
  await hand.tap('Type the units you see');
  await hand.keys(String(units));
  await hand.tap(`I see ${inUnits(units)}`);
  await setClock(hand, '2026-11-25T20:05:00+01:00');
  await hand.tap(`I have injected ${inUnits(units)}`);
  await hand.page.waitForFunction(() => document.documentElement.dataset.screen !== 'injectNow');
  await hand.page.waitForTimeout(300);
  assert.deepEqual(await injectedAt(hand), ['2026-11-25T22:05:00+01:00']);
  await hand.device.end();
});
