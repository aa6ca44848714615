// Off the pump, where it went otherwise than shown or said: another amount went in, the pump is late, the clock is that of another
// place, the pump that came back does not run.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { asked, askedAgain, forgetPage, given, toLongActing } from './off_pump.mjs';
import { close, phone, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };
const injections = async hand => (await hand.record()).filter(event => event.kind === 'injection').map(({ units, insulin, parts, at }) => [units, insulin, parts, at.slice(11, 16)]);

// The phone died after the needle, and 12 units went in where 20 were shown: "yes, 20" and "no" are both untrue.
test('a long-acting dose that was asked about is written down in the amount that went in, and leads to a call', async () => {
  const hand = await withDemo({ ...night, flowing: true });
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.heading('Inject now');
  await hand.device.later(3);
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, another number');
  await hand.heading('How many units did you inject?');
  await hand.sees('Long-acting insulin');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.shot('off-did-other');
  // Left once more, it is asked again from its beginning or goes on: nothing is written down by itself.
  await hand.page.reload();
  await hand.heading('How many units did you inject?');
  await hand.keys('999');
  await hand.tap('Yes, 999 units');
  await hand.heading('How many units did you inject?');
  assert.deepEqual(await injections(hand), []);
  for (const digit of '999') await hand.tap('Erase');
  await hand.tap('Back');
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, another number');
  await hand.keys('12');
  await hand.tap('Yes, 12 units');
  await hand.heading('The pump is off');
  assert.deepEqual(await injections(hand), [[12, 'long', undefined, '22:05']]);
  await hand.sees('Another amount than the plan’s went in. Call your team.');
  await hand.device.end();
});

// 3.3 units were due from 22:05 to 02:05. 2 are 115 min at 0.85 and 27 min at 0.8 an hour: to 00:27.
test('a bridge that was asked about stands for as long as what went in lasts', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, another number');
  await hand.keys('2');
  await hand.tap('Yes, 2 units');
  await hand.heading('The pump is off');
  assert.deepEqual(await injections(hand), [[2, 'rapid', { rescue: 0, meal: 0, basal: 2 }, '22:05']]);
  await hand.sees('00:27');
  await hand.misses('02:05');
  await hand.device.end();
});

// Of 6 units 3 are for 40 g. With 3 drawn there is basal alone, and nothing in for the food.
test('where less was drawn than food and basal need, nobody is told that the insulin for the food is in', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', grams: '40', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.tap('Type the units you see');
  await hand.keys('2');
  await hand.tap('I see 2 units');
  await hand.tap('I have already injected 2 units');
  await hand.heading('The pump is off');
  await hand.misses('The insulin for it is in.');
  assert.deepEqual((await injections(hand)).map(([, , parts]) => parts.meal), [0]);
  await hand.device.end();
});

// A pump was expected at 01:50, and the bridge ends at 02:05. At 02:20 the page still lies open: whether it comes is asked, for
// "no injection in its place" would stand there until 03:50.
test('a page left open until the pump is late asks again how long', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '3.75', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.device.later(215);
  await hand.sees('You expect a pump at about 01:50.');
  await hand.device.later(40);
  await hand.heading('How many hours without a pump?');
  await hand.page.reload();
  await hand.heading('How many hours without a pump?');
  await hand.tap('I do not know');
  await hand.heading('Will you sleep in this time?');
  await hand.device.end();
});

// Expected at 09:05 and awake at 01:00, by the clock at home; in New York that is 03:05 and 19:00.
test('carried to another zone, the hours that were said are told by the clock of that place', async () => {
  const home = await withDemo(night);
  await asked(home, { hours: '11', wakes: '0100', glucose: '7.0' });
  await home.sees('You expect a pump on 26 November 2026, about 09:05. You wake at 01:00.');
  const storage = await home.device.context.storageState({ indexedDB: true });
  await home.device.context.close();
  const device = await phone({ zone: 'America/New_York', storage, at: '2026-11-25T23:05:00+01:00', server: home.device.host });
  const hand = { device, ...await device.open() };
  await hand.sees('You expect a pump on 26 November 2026, about 03:05. You wake at 19:00.');
  await hand.device.end();
});

// The pump of 23:05 did not run, says the person: the outage of 22:05 goes on.
test('a pump that was written down as back and did not run is off', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.device.later(60);
  await hand.tap('A pump works again');
  await hand.heading('The pump is on');
  await hand.tap('Back');
  await hand.device.later(45);
  await hand.tap('The pump stays off');
  await hand.heading('Since when is the pump off?');
  await hand.keys('2230');
  await hand.tap('Since 22:30');
  await hand.keys('6');
  await hand.tap('About 6 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.heading('The pump is off');
  await hand.sees('Off since 22:05.');
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.device.end();
});

// Long-acting insulin given at 22:05 works from 00:05. At 23:05 that leaves 55 min at 0.45 and 5 at 0.4 an hour, 0.45: no half unit.
test('basal too small to draw leads to a call: it is not made up later, and nobody says so', async () => {
  const hand = await withDemo({ ...night, child: true });
  await asked(hand, { glucose: '120', unit: 'mg/dL' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await given(hand, '9');
  await hand.device.later(60);
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '120', unit: 'mg/dL' });
  await hand.sees('What these hours need is less than one step. Call your team.');
  assert.equal(await hand.page.getByRole('button', { name: seen('Inject for the next hours') }).count(), 0);
  await hand.shot('off-under-step');
  await hand.device.end();
});

// Hazard: drawn from a pen. Whoever has no syringe here dials the pen, and is not asked for a syringe at the next injection.
test('with the pen alone: the same hours once, recorded by the pen, and the pen again for the next', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '10', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.sees('50-unit syringe.');
  await hand.tap('Use the pen');
  await hand.heading('Inject now');
  await hand.sees('Dial 3 units on the pen.');
  await hand.shot('off-pen');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('No');
  await hand.tap('Inject for the next hours');
  await hand.sees('Dial 3 units on the pen.');
  await given(hand, '3');
  const record = await hand.record();
  assert.deepEqual(record.filter(event => event.kind === 'injection').map(event => [event.with, event.units]), [['pen', 3]]);
  assert.deepEqual(record.filter(event => event.kind === 'doseRefused').length, 2);
  await hand.tap('Back');
  await hand.device.later(4 * 60);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.sees('on the pen.');
  await hand.tap('Use the syringe');
  await hand.sees('50-unit syringe.');
  await hand.device.end();
});

test('long-acting insulin in a pen: seen in the hand with its label, dialled, and recorded so; nothing is taken back for it', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('It is a pen');
  await hand.heading('Inject now');
  await hand.sees('Dial 20 units on the pen.');
  await hand.misses('syringe');
  await hand.shot('off-long-pen');
  await given(hand, '20');
  const record = await hand.record();
  assert.deepEqual(record.filter(event => event.kind === 'injection').map(event => [event.insulin, event.with, event.units]), [['long', 'pen', 20]]);
  assert.equal(record.filter(event => event.kind === 'doseRefused').length, 0);
  // The bridge beside it is drawn as before.
  await hand.tap('Inject for the next hours');
  await hand.sees('50-unit syringe.');
  await hand.device.end();
});

// 10 were meant and 100 typed. The page that asks is lost with the phone; the order is in the record.
test('an order of more than a whole day is never shown as an injection, also where its page was lost', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await hand.tap('Then the second injection');
  await hand.tap('The team named an amount');
  await hand.keys('100');
  await hand.tap('They said 100');
  await hand.tap('They said yes');
  await hand.heading('100 units is too much to be injected');
  await hand.sees('Call back.');
  // Said back to the team: that stands in the record.
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'order').map(event => [event.units, event.readBack]), [[100, true]]);
  await forgetPage(hand);
  await hand.page.reload();
  await asked(hand, { stands: true });
  await hand.sees('The amount named is over a day’s dose. Call back and say it again.');
  await hand.misses('100 units');
  assert.equal((await hand.record()).filter(event => event.kind === 'doseShown').length, 0);
  await hand.device.end();
});

test('three figures are the widest dose there is: they end before the syringe begins', async () => {
  // 4.2 units an hour are 100.8 a day, down to 100.
  const hand = await withDemo({ ...night, change: plan => { plan.day.basal = [{ from: '00:00', value: 4.2 }]; plan.syringe = { capacity: 100, step: 1 }; } });
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.heading('Inject now');
  await hand.sees('100 units');
  for (const width of [390, 320]) {
    await hand.page.setViewportSize({ width, height: 844 });
    const [units, syringe] = await hand.page.evaluate(() => ['.dose .units', '.syr'].map(name => document.querySelector(name).getBoundingClientRect()));
    assert.ok(units.right <= syringe.left, `${width}: ${units.right} of ${syringe.left}`);
  }
  await hand.device.end();
});

// "I am not sure" counts as given. Nobody is told that it is in.
test('food for a dose nobody is sure of is eaten, and its insulin is not said to be in', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', grams: '40', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.tap('I am not sure');
  await hand.heading('Eat 40 grams of carbohydrate');
  await hand.sees('Its insulin counts as given.');
  await hand.misses('The insulin for it is in.');
  await hand.page.reload();
  await hand.sees('Its insulin counts as given.');
  await hand.device.end();
});
