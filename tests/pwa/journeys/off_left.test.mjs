// Off the pump, and the phone was put down, died or was tapped twice: no dose stands there as if it were new, and none is given twice.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked, askedAgain, given, injected, longActingGiven, oneInsulin, toLongActing } from './off_pump.mjs';
import { axeFaults, overTheFoot } from './axe.mjs';
import { close, inUnits, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };

const typed = async (hand, units) => {
  await hand.tap('Type the units you see');
  await hand.keys(units);
  await hand.tap(`I see ${inUnits(units)}`);
  await hand.heading(`Inject ${units} units now`);
};

// Somebody fell asleep over it. Basal of 22:05 to 02:05, with a glucose of then, must not be drawn at 01:05.
for (const page of ['dose', 'typed']) {
  test(`a dose that was left for hours is asked about, left on the page "${page}"`, async () => {
    const hand = await withDemo(night);
    await asked(hand, { hours: '6', glucose: '7.0' });
    await hand.tap('Inject for the next hours');
    await hand.heading('Inject now');
    if (page === 'typed') await typed(hand, '3');
    await hand.device.later(1);
    await hand.page.waitForTimeout(500);
    await hand.heading(page === 'typed' ? 'Inject 3 units now' : 'Inject now');
    await hand.device.later(179);
    await hand.heading('Did you inject it?');
    await hand.sees('3 units were shown at 22:05.');
    await hand.tap('No');
    await hand.heading('Answer the questions first');
    await hand.misses('Inject for the next hours');
    assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 0);
    await hand.device.end();
  });
}

// 40 g at 11 g a unit are 3.64, with 3.3 of basal 6.94: down to 6 units.
test('the food of a dose is eaten after it and recorded with it: nobody is told to eat twice', async () => {
  const hand = await withDemo({ ...night, flowing: true });
  await asked(hand, { hours: '6', grams: '40', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.sees('For food 3.64');
  await typed(hand, '6');
  await hand.tap('I have injected 6 units');
  await injected(hand);
  await hand.heading('Eat 40 grams of carbohydrate');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.shot('off-eat');
  await hand.page.reload();
  await hand.heading('Eat 40 grams of carbohydrate');
  await hand.tap('It is eaten');
  await hand.heading('The pump is off');
  const events = await hand.record();
  const given = events.find(event => event.kind === 'injection');
  assert.deepEqual(events.filter(event => event.kind === 'carbs').map(event => [event.grams, event.for]), [[40, given.id]]);
  await hand.misses('Inject for the next hours');
  await hand.device.end();
});

test('food that was not eaten leaves its insulin to be eaten for', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', grams: '40', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await typed(hand, '6');
  await hand.tap('I have injected 6 units');
  await injected(hand);
  await hand.heading('Eat 40 grams of carbohydrate');
  await hand.tap('I have not eaten it');
  await hand.heading('Eat now');
  assert.equal((await hand.record()).filter(event => event.kind === 'carbs').length, 0);
  await hand.device.end();
});

// The phone died after the needle. At 13.0, below the trigger, the same food would be offered a second time.
for (const tapped of ['Yes,', 'I am not sure']) {
  test(`food of a dose that was asked about is not dosed a second time: "${tapped}"`, async () => {
    const hand = await withDemo(night);
    await asked(hand, { hours: '6', grams: '20', glucose: '13.0' });
    await hand.tap('Inject for the next hours');
    await hand.heading('Inject now');
    await hand.page.reload();
    await hand.heading('Did you inject it?');
    await hand.tap(tapped);
    await hand.heading('Eat 20 grams of carbohydrate');
    await hand.tap('It is eaten');
    await hand.heading('The pump is off');
    assert.equal(await hand.page.getByRole('button', { name: seen('Inject for the next hours') }).count(), 0);
    await hand.device.end();
  });
}

// 40 g at 10 g a unit are 4 units. Long-acting insulin is the basal of these hours, so that no hours are named.
test('food while long-acting insulin works is dosed as food, and not for hours', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await given(hand, '20');
  await hand.heading('The pump is off');
  await hand.device.later(9 * 60);
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await askedAgain(hand, { grams: '40', glucose: '9.0' });
  await hand.heading('The pump is off');
  await oneInsulin(hand);
  await hand.tap('Inject for what you eat');
  await hand.heading('Inject now');
  await hand.sees('For food 4 ');
  await hand.misses('Basal');
  await hand.device.end();
});

test('two quick taps on the question about a dose answer it once', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.page.getByRole('button', { name: seen('Yes, 3 units') }).evaluate(button => { button.click(); button.click(); });
  await hand.heading('The pump is off');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 1);
  await hand.device.end();
});

// The record holds a reading of 22:05 and the clock says 20:00: no amount may come from a page drawn before.
test('a clock set back while the label is read shows no long-acting dose', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.heading('glargine is in your hand');
  await hand.device.context.clock.setSystemTime(new Date('2026-11-25T20:00:00+01:00'));
  await hand.tap('Show the dose');
  await hand.page.waitForFunction(() => !document.querySelector('h1').textContent.includes('glargine'));
  assert.equal((await hand.record()).filter(event => event.kind === 'doseShown').length, 0);
  assert.equal(await hand.page.locator('.dose').count(), 0);
  await hand.device.end();
});

test('a low reading is answered with sugar at once, before any further question', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '3.0' });
  await hand.heading('Glucose is low');
  await hand.sees('Do not inject insulin. Take sugar now.');
  await hand.device.end();
});

test('a pump that is on is not said to be off since a time', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await typed(hand, '3');
  await hand.tap('I have injected 3 units');
  await injected(hand);
  await hand.sees('Off since 22:05.');
  await hand.device.later(60);
  await hand.tap('A pump works again');
  await hand.heading('The pump is on');
  await hand.misses('Off since');
  await hand.device.end();
});

test('away from its page, the time of the next injection is still told, and late it is told first', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await typed(hand, '3');
  await hand.tap('I have injected 3 units');
  await injected(hand);
  await hand.heading('The pump is off');
  await hand.tap('Back');
  await hand.sees('Next look 02:05');
  await hand.device.later(5 * 60);
  await hand.sees('The look of 02:05 is 60 minutes late');
  await hand.device.end();
});

// The pump is back in half an hour: no injection, but the time by which there has to be one.
test('a pump that is back soon: nothing is injected, and two hours later it is asked about', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '0.5', glucose: '7.0' });
  await hand.sees('Back within two hours: no injection in its place.');
  await hand.misses('Inject');
  await hand.shot('off-soon');
  await hand.sees('Off since 22:05.');
  await hand.sees('00:05');
  await hand.sees('Set an alarm. Pump still off? Come back here.');
  const events = await hand.record();
  assert.deepEqual(events.filter(event => event.kind === 'look').map(event => event.due.slice(11, 16)), ['00:05']);
  await hand.tap('Back');
  await hand.sees('Next look 00:05');
  await hand.device.later(120);
  await hand.tap('The pump stays off');
  // The half hour is over: it is asked again how long.
  await hand.heading('How many hours without a pump?');
  await hand.keys('0.5');
  await hand.tap('About 0.5 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.device.end();
});

// Back in an hour and a half, its basal is missed on purpose; ten minutes after that time nobody knows any more that it is.
test('while a pump is expected soon the pages outside do not say that basal is missing, and afterwards they do', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '1.5', glucose: '7.0' });
  await hand.sees('Back within two hours: no injection in its place.');
  await hand.tap('Back');
  await hand.device.later(45);
  await hand.page.reload();
  await hand.sees('Next look 00:05');
  await hand.misses('No basal insulin is written down');
  await hand.device.later(55);
  await hand.page.reload();
  await hand.sees('Next look 00:05');
  await hand.sees('No basal insulin is written down since 22:05.');
  await hand.device.end();
});

// Expected at 00:35, it was back at 22:15 and stopped again at 23:05: nobody said how long that will be.
test('how long an outage would be that is over does not keep from saying that basal is missing in the next', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '2.5', glucose: '7.0' });
  await hand.tap('Back');
  await hand.device.later(10);
  await hand.tap('Write something down');
  await hand.tap('The pump is on again');
  await hand.tap('Back');
  await hand.device.later(50);
  await hand.tap('Write something down');
  await hand.tap('The pump is off');
  await hand.tap('Back');
  await hand.device.later(40);
  await hand.page.reload();
  await hand.sees('No basal insulin is written down since 23:05.');
  await hand.device.end();
});

// A pump at 03:05, awake at 07:00: the injection of 02:05 is due whoever sleeps, and its own pages say so.
test('whoever sleeps longer than anybody should be without insulin is told of the next injection and of missing basal outside, too', async () => {
  const hand = await withDemo({ ...night, change: plan => { delete plan.longActing; } });
  await asked(hand, { hours: '5', wakes: '0700', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.tap('Back');
  await hand.heading('Look again at');
  await hand.sees('02:05 Test glucose and ketones. Then the next injection');
  await hand.device.later(4 * 60 + 40);
  await hand.page.reload();
  await hand.sees('No basal insulin is written down since 02:05.');
  await hand.device.end();
});

// 02:05 of the same night. Hours and sleep were said at 22:05, and a reading of a moment ago stands.
test('the next bridge asks for what is new only, and says what it still goes by', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '9', glucose: '7.0' });
  await hand.sees('You expect a pump on 26 November 2026, about 07:05.');
  await hand.tap('Inject for the next hours');
  await typed(hand, '3');
  await hand.tap('I have injected 3 units');
  await injected(hand);
  await hand.tap('Back');
  await hand.device.later(4 * 60);
  await hand.page.reload();
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.heading('The pump is off');
  await hand.sees('You expect a pump at about 07:05.');
  await hand.shot('off-again');
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await askedAgain(hand, { stands: true });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  // Once a pump works, nothing of it is taken for granted.
  await hand.tap('I do not inject');
  await hand.tap('A pump works again');
  await hand.heading('The pump is on');
  await hand.sees('04:05');
  await hand.sees('Then test every 4 hours today.');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'look').map(event => event.due.slice(11, 16)), ['02:05', '04:05']);
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await hand.heading('Since when is the pump off?');
  await hand.device.end();
});

// 20.6 a day, down to 20. Three hours before the next is due it comes only on the team's word, and never more than a day's with what went in
// within 20 hours.
test('within its hold long-acting insulin comes only as the team named it, said back, once', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await given(hand, '20');
  await hand.device.later(21 * 60);
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.heading('The pump is off');
  assert.equal(await hand.page.getByRole('button', { name: seen('Long-acting insulin') }).count(), 0);
  await hand.tap('The team named an amount');
  await hand.keys('100');
  await hand.tap('They said 100');
  await hand.heading('100 units of glargine');
  await hand.tap('Another amount');
  await hand.keys('10');
  await hand.tap('They said 10');
  await hand.heading('10 units of glargine');
  await hand.sees('Say it back to them. Wait for their yes.');
  await hand.shot('off-order-sure');
  assert.equal((await hand.record()).filter(event => event.kind === 'order').length, 0);
  await hand.tap('They said yes');
  await hand.heading('Which insulin is in your hand?');
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.heading('Inject now');
  await hand.sees('Ordered by Diabetes night line at 19:05.');
  await hand.misses('Basal of a day');
  await hand.shot('off-ordered');
  await given(hand, '10');
  await hand.heading('The pump is off');
  assert.equal(await hand.page.getByRole('button', { name: seen('Long-acting insulin') }).count(), 0);
  const events = await hand.record();
  const order = events.find(event => event.kind === 'order');
  assert.deepEqual([order.units, order.insulin], [10, 'long']);
  assert.deepEqual(events.filter(event => event.kind === 'injection').map(event => [event.units, event.order]), [[20, undefined], [10, order.id]]);
  assert.deepEqual(events.filter(event => event.kind === 'call').map(event => [event.to, event.answered]), [['team', true]]);
  await hand.device.end();
});

test('another amount of long-acting insulin than was shown leads to a call', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.tap('Type the units you see');
  await hand.keys('12');
  await hand.tap('I see 12 units');
  await hand.heading('You typed 12 units. The plan says 20 units.');
  await hand.tap('I have already injected 12 units');
  await hand.sees('Another amount than the plan’s went in. Call your team.');
  await oneInsulin(hand);
  await hand.device.end();
});

// 22:05 to 00:05 is 1.67 of basal, down to 1 unit. Then long-acting insulin, which works from 00:05.
for (const [what, injects] of [['is injected', true], ['is not', false]]) {
  test(`the bridge before long-acting insulin has an end of its own, in case it ${what}`, async () => {
    const hand = await withDemo(night);
    await asked(hand, { glucose: '7.0' });
    await hand.tap('Inject for the next hours');
    await given(hand, '1');
    await hand.sees('Nobody knows how long: long-acting insulin.');
    await hand.sees('Set an alarm: next injection.');
    await hand.tap('Long-acting insulin');
    await hand.tap('glargine');
    await hand.tap('Show the dose');
    if (injects) await given(hand, '20'); else await hand.tap('I do not inject');
    await hand.heading('The pump is off');
    await hand.tap('Back');
    if (injects) await hand.misses('00:05'); else await hand.sees('Next look 00:05');
    await hand.device.end();
  });
}

// 20 units at 22:05, a look at 23:05; glucose alone is typed at 23:35 on the pages off the pump. Hazard: it answered the look, and the
// next one stood there as 22:05, nearly a day later, while these pages said 00:35 (R-23: hourly).
test('glucose typed beside long-acting insulin is followed by the look its page tells', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.tap('Back');
  await hand.device.later(90);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '9.0' });
  await hand.heading('The pump is off');
  await hand.sees('Next look 00:35');
  // What is measured again soon adds no second look.
  await hand.tap('Back');
  await hand.device.later(20);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '9.2' });
  await hand.heading('The pump is off');
  const looks = (await hand.record()).filter(event => event.kind === 'look').map(event => event.due.slice(11, 16));
  assert.deepEqual(looks.sort(), ['00:35', '22:05', '23:05']);
  await hand.device.end();
});
