// The pump stays off: the bridge, long-acting insulin, the way back. Doses are worked by hand from the demo plan (an adult):
// basal 0.85 until midnight, 0.8 until 04:00, 0.95 until 08:00, 0.85 from then on; 20.6 units a day, times 1.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { asked, forgetPage, injected, oneInsulin, toHours, toLongActing } from './off_pump.mjs';
import { answer, close, inject, inUnits, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };
const text = async hand => (await hand.page.locator('body').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');
// Every check of axe, contrast of 7 to 1 included, and nothing off the side of the page.
const clean = async (hand, page) => {
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), [], page);
  assert.ok(await hand.page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), `${page} is too wide`);
};

test('a bridge at night: basal of four hours across midnight, typed, injected, in the record, and the next one has its time', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.heading('The pump is off');
  await hand.shot('off-answer');
  await hand.sees('For these hours: rapid-acting insulin.');
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  // 22:05 to 02:05: 115 min at 0.85 and 125 min at 0.8 an hour are 1.63 and 1.67, together 3.30; 7.0 is the target. Down to 3 units.
  await hand.sees('Basal 22:05 to 02:05 3.3');
  await hand.sees('Rapid-acting insulin');
  assert.doesNotMatch(await text(hand), /glargine|[Ll]ong-acting/);
  await hand.shot('off-bridge');
  const shown = (await hand.record()).find(event => event.kind === 'doseShown');
  assert.deepEqual([shown.units, shown.insulin, shown.parts], [3, 'rapid', { rescue: 0, meal: 0, basal: 3 }]);
  await hand.tap('Type the units you see');
  await hand.keys('3');
  await hand.tap('I see 3 units');
  await hand.heading('Inject 3 units now');
  await hand.tap('I have injected 3 units');
  await injected(hand);
  await hand.heading('The pump is off');
  const given = (await hand.record()).find(event => event.kind === 'injection');
  assert.deepEqual([given.units, given.insulin, given.parts, given.shown], [3, 'rapid', { rescue: 0, meal: 0, basal: 3 }, shown.id]);
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'pump').map(event => event.state), ['off']);
  await oneInsulin(hand);
  // Nothing more now; the next one when these hours are over.
  await hand.misses('Inject for the next hours');
  await hand.sees('02:05');
  await hand.sees('Set an alarm: next injection.');
  await hand.shot('off-after-bridge');
  await hand.device.end();
});

// 2 units are 115 min at 0.85, 1.63, and 0.37 at 0.8 an hour: 27 min more, to 00:27.
test('another amount than the plan says is recorded as given, and stands for as long as it lasts', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.tap('Type the units you see');
  // No injection of these: said at the field, and the dose stays in hand.
  for (const digits of ['0', '999']) {
    await hand.keys(digits);
    await hand.tap(`I see ${inUnits(digits)}`);
    await hand.heading('How many units do you see?');
    for (const digit of digits) await hand.tap('Erase');
  }
  await hand.keys('2.0');
  await hand.tap('I see 2.0 units');
  await hand.heading('You typed 2 units. The plan says 3 units.');
  await hand.tap('I have already injected 2 units');
  await hand.heading('The pump is off');
  const given = (await hand.record()).find(event => event.kind === 'injection');
  assert.deepEqual([given.units, given.parts], [2, { rescue: 0, meal: 0, basal: 2 }]);
  await hand.misses('Inject for the next hours');
  await hand.sees('00:27');
  await hand.misses('02:05');
  await hand.device.end();
});

// 35 for 3.5: what is over is seen as what it is, and food comes before anything else.
test('more than the plan says counts as insulin that takes glucose down', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.tap('Type the units you see');
  await hand.keys('30');
  await hand.tap('I see 30 units');
  await hand.heading('You typed 30 units. The plan says 3 units.');
  await hand.tap('I have already injected 30 units');
  await hand.heading('Eat now');
  const given = (await hand.record()).find(event => event.kind === 'injection');
  assert.deepEqual([given.units, given.parts], [30, { rescue: 27, meal: 0, basal: 3 }]);
  await hand.device.end();
});

test('asleep at the next bridge: long-acting, its label read first, never beside the rapid one, and not a second time', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '10', wakes: '0700', glucose: '7.0' });
  await hand.sees('Two injections, one after the other. This is the first.');
  await hand.shot('off-two');
  await hand.misses('asleep');
  await toLongActing(hand);
  await hand.shot('off-vial');
  await hand.tap('lispro');
  await hand.heading('Do not inject this');
  assert.equal((await hand.record()).filter(event => event.kind === 'doseShown').length, 0);
  await hand.tap('Look again');
  await hand.tap('glargine');
  await hand.heading('glargine is in your hand');
  await hand.tap('Show the dose');
  await hand.heading('Inject now');
  // 4 h × 0.8 + 4 h × 0.95 + 16 h × 0.85 = 20.6 a day, times 1, down to 20 units.
  await hand.sees('Basal of a day 20.6');
  assert.doesNotMatch(await text(hand), /lispro|[Rr]apid/);
  await hand.shot('off-long');
  await hand.tap('Type the units you see');
  await hand.keys('18');
  await hand.tap('I see 18 units');
  await hand.heading('You typed 18 units. The plan says 20 units.');
  await hand.tap('Look again');
  await hand.keys('20');
  await hand.tap('I see 20 units');
  await hand.tap('I have injected 20 units');
  await injected(hand);
  await hand.heading('The pump is off');
  const given = (await hand.record()).find(event => event.kind === 'injection');
  assert.deepEqual([given.units, given.insulin], [20, 'long']);
  await oneInsulin(hand);
  await hand.tap('All times');
  await hand.sees('Until then, do not inject long-acting again.');
  assert.equal(await hand.page.getByRole('button', { name: seen('Long-acting insulin') }).count(), 0);
  await hand.page.reload();
  await hand.heading('All times');
  assert.equal(await hand.page.getByRole('button', { name: seen('Long-acting insulin') }).count(), 0);
  await hand.device.end();
});

test('a phone that dies with the dose on its screen asks what became of it before anything else', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.sees('3 units were shown at 22:05.');
  await hand.shot('off-did');
  await hand.tap('Yes, 3 units');
  await hand.heading('The pump is off');
  await hand.misses('Inject for the next hours');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 1);
  await hand.device.end();
});

test('ketones come first: nothing to inject for the pump until the questions are answered', async () => {
  const hand = await withDemo(night);
  await answer(hand, { glucose: '16.0', ketones: '1.6' });
  await hand.heading('Inject now');
  await hand.tap('I do not inject');
  await hand.tap('No, I do not inject it');
  await asked(hand, { hours: '6', stands: true });
  await hand.heading('Answer the questions first');
  await hand.sees('This comes first. Injections for the pump wait.');
  await hand.misses('Inject for the next hours');
  await hand.shot('off-first');
  await hand.tap('Answer the questions');
  await hand.heading('Is any of these true now?');
  await hand.device.end();
});

test('what cannot be is refused at the field, and six zones east are worked out by the published rule', async () => {
  const hand = await withDemo(night);
  await toHours(hand);
  await hand.keys('999');
  await hand.tap('About 999 hours');
  await hand.sees('504');
  await hand.heading('How many hours without a pump?');
  await hand.tap('Back');
  await asked(hand, { glucose: '7.0' });
  await hand.tap('I travel across time zones');
  await hand.keys('6');
  await hand.shot('off-zones');
  await hand.tap('6 hours east');
  // East six zones: 0.9 less 6/24 is 0.65; of 20.6 units that is 13.39, down to 13. West: half of it twice, 10.3, down to 10.
  await hand.heading('Going east, the day is shorter: a smaller dose.');
  await hand.sees('13 units At your usual hour, by the clock at home.');
  assert.doesNotMatch(await text(hand), /[Rr]apid/);
  await hand.sees('Call your team before each one. Then type the amount they name.');
  await hand.shot('off-travel-east');
  await hand.tap('Change the hours');
  await hand.keys('6');
  await hand.tap('6 hours west');
  await hand.heading('Going west, the day is longer: two parts.');
  await hand.sees('10 units At your usual hour, by the clock at home. 10 units At your usual hour, by the clock there.');
  await hand.shot('off-travel-west');
  await hand.tap('Back');
  // It is about long-acting insulin, and stands with it; never beside the injection of the other one.
  await hand.misses('Going west, the day is longer: two parts.');
  await hand.tap('Then the second injection');
  await hand.sees('Going west, the day is longer: two parts.');
  await hand.device.end();
});

// The phone dies with the long-acting dose on the screen. Whoever comes back to the home page is asked first.
test('a long-acting dose that was shown is asked about at the next start, wherever the page was left', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '20', glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.heading('Inject now');
  await forgetPage(hand);
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.sees('Long-acting insulin');
  await hand.tap('Yes,');
  await hand.tap('All times');
  await hand.sees('Until then, do not inject long-acting again.');
  const events = await hand.record();
  assert.equal(events.filter(event => event.kind === 'injection' && event.insulin === 'long').length, 1);
  await hand.page.reload();
  await hand.page.locator('h1').waitFor();
  assert.notEqual(await hand.page.locator('h1').innerText(), 'Did you inject it?');
  await hand.device.end();
});

test('with the network gone, off the pump, the watch and the picture open as they do with it', async () => {
  const hand = await withDemo({ ...night, keeper: true });
  await hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 20000 });
  await hand.device.stopServer();
  await hand.device.context.setOffline(true);
  await hand.page.close();
  const cold = await hand.device.open();
  await answer(cold);
  await inject(cold, '4');
  await cold.tap('The set is changed');
  await cold.tap('The reservoir is new');
  await cold.tap('See insulin at work');
  await cold.heading('Insulin at work');
  await cold.tap('Back');
  await cold.heading('Pump: 4 units into a sink');
  await cold.steps();
  await cold.tap('All steps are seen');
  await cold.tap('Help to wake up');
  await cold.heading('Help to wake up');
  await cold.tap('Back');
  // The glucose of a moment ago stands. The dose for ketones holds the correction; the basal goes on.
  await asked(cold, { hours: '6', stands: true });
  await cold.heading('The pump is off');
  await cold.tap('Inject for the next hours');
  await cold.sees('Basal 22:05 to 02:05');
  await hand.device.end();
});

for (const [look, options] of [['by day', { at: '2026-11-25T12:05:00+01:00' }], ['by night, 320 px', { ...night, width: 320, height: 640 }]]) {
  test(`${look}: every page of it can be read`, async () => {
    const hand = await withDemo({ ...options, flowing: true });
    await hand.tap('The pump stays off');
    for (const [heading, next] of [['Since when is the pump off?', 'Just now'], ['How many hours without a pump?', 'I do not know'], ['Will you sleep in this time?', 'I stay awake'], ['What do you eat now?', 'Nothing now'], ['Glucose now', 'I have not measured']]) {
      await hand.heading(heading);
      await clean(hand, heading);
      await hand.shot(`off-${look.slice(3, 6).trim()}-${heading.slice(0, 8)}`);
      await hand.tap(next);
    }
    await hand.page.waitForFunction(() => document.querySelector('.timetable'));
    await clean(hand, 'answer');
    await hand.tap('Ask again');
    await hand.heading('How many hours without a pump?');
    await hand.keys('20');
    await hand.tap('About 20 hours');
    await hand.tap('I stay awake');
    await hand.tap('Nothing now');
    await hand.heading('Glucose now');
    await hand.keys('7.0');
    await hand.tap('Glucose is 7.0 mmol/L');
    await clean(hand, 'answer with doses');
    await hand.tap('Then the second injection');
    await clean(hand, 'second');
    await hand.shot(`off-${look.slice(3, 6).trim()}-second`);
    await hand.tap('The team named an amount');
    await clean(hand, 'order');
    await hand.keys('35');
    await hand.tap('They said 35');
    await clean(hand, 'order read back');
    await hand.tap('They said yes');
    await hand.heading('35 units is too much to be injected');
    await clean(hand, 'order too large');
    await hand.shot(`off-${look.slice(3, 6).trim()}-order-large`);
    await hand.tap('Another amount');
    await hand.tap('Back');
    await toLongActing(hand);
    await clean(hand, 'label');
    await hand.tap('glargine');
    await clean(hand, 'right');
    await hand.tap('Show the dose');
    await hand.heading('Inject now');
    await clean(hand, 'dose');
    await hand.tap('Type the units you see');
    await clean(hand, 'typed');
    await hand.device.end();
  });
}
