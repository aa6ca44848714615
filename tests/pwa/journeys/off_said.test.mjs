// Off the pump, what is said is true of this plan and of this hour: how much sugar, whom to call, which part, which insulin, until when.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { asked, askedAgain, given, longActingGiven, oneInsulin, toLongActing } from './off_pump.mjs';
import { answer, close, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };
const rowOf = async (hand, text) => (await hand.page.locator('.timetable li', { hasText: text }).innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

// 60 mg/dL, and nothing injected yet. The plan's 10 g; the questions come after the sugar, and their look is in 15 minutes.
test('a low off the pump says at once how much sugar, and no look or injection of hours later', async () => {
  const hand = await withDemo({ ...night, child: true, flowing: true });
  await asked(hand, { hours: '6', glucose: '60', unit: 'mg/dL' });
  await hand.heading('Glucose is low');
  await hand.sees('Take 10 grams of sugar now');
  await hand.misses('23:05');
  // Nothing is in for the hours from 22:05: an alarm for the end of them would leave them without any.
  await hand.misses('02:05');
  await hand.shot('off-low-grams');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.device.end();
});

// The foot of these pages calls the team alone.
test('an emergency off the pump has the emergency number on its page', async () => {
  const hand = await withDemo({ ...night, flowing: true });
  await asked(hand, { glucose: '9.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.heading('The pump is off');
  await hand.tap('Back');
  await hand.tap('Test now, before the look');
  await hand.tick('Vomited twice or more');
  await hand.tap('Yes, this is true now');
  await hand.heading('Go to hospital now');
  await hand.tap('The call is answered');
  await hand.device.later(180);
  await hand.tap('The pump stays off');
  await hand.tap('Nothing now');
  await hand.heading('Go to hospital now');
  assert.equal(await hand.page.getByRole('link', { name: /112/ }).getAttribute('href'), 'tel:112');
  await hand.misses('Long-acting insulin is in.');
  await hand.shot('off-emergency');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.device.end();
});

// 20.6 a day in two parts are 10.3; begun at 13:05 half of one, 5.15, and the evening's six hours later.
test('of two parts a day each is said as a part, and the evening’s is not held back for a day', async () => {
  const hand = await withDemo({ at: '2026-11-25T13:05:00+01:00', change: plan => { plan.offPump.parts = 2; } });
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.sees('Given once, it works for hours. Nobody can take it back.');
  await hand.misses('all day');
  await hand.tap('Show the dose');
  await hand.sees('This part 5.15');
  await hand.shot('off-part');
  await given(hand, '5');
  await hand.heading('The pump is off');
  await hand.tap('Back');
  await hand.heading('Look again at');
  // Held until the evening's part is due, and no longer.
  assert.match(await rowOf(hand, 'do not inject long-acting'), /19:05 Until then, do not inject long-acting insulin again/);
  await hand.device.later(6 * 60);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('Long-acting insulin');
  await longActingGiven(hand, '10');
  // The third part of this outage, the next morning.
  assert.match(await rowOf(hand, 'next part'), /07:05 26 November 2026 Set an alarm: next part of the long-acting\./);
  await hand.device.end();
});

test('a plan without long-acting insulin says so, and sends nobody for it without an amount', async () => {
  const hand = await withDemo({ ...night, change: plan => { delete plan.longActing; } });
  await asked(hand, { hours: '30', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.sees('Your plan has no long-acting insulin. Inject every few hours.');
  await hand.sees('Ask your team for long-acting insulin, and how much.');
  await hand.misses('pharmacy');
  await hand.shot('off-no-long');
  await hand.device.end();
});

// The bridge ends at 02:05, and the pump is expected at 03:05: five hours away are not two.
test('a pump expected soon after the hours of the last injection is not said to be back within two hours', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '5', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.sees('The last injection lasts for now. A pump is expected soon after.');
  await hand.misses('Back within two hours');
  await hand.shot('off-lasts');
  // At 02:20 it is true.
  await hand.device.later(255);
  await hand.sees('Back within two hours: no injection in its place.');
  await hand.device.end();
});

// The half of 13:05 worked until 19:05; that it holds the usual basal of a pump back until 13:05 does not make it last.
test('long-acting insulin whose next part is overdue is not said to last until a pump comes', async () => {
  const hand = await withDemo({ at: '2026-11-25T13:05:00+01:00', change: plan => { plan.offPump.parts = 2; } });
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '5');
  await hand.device.later(6 * 60 + 15);
  await hand.tap('Ask again');
  await hand.keys('1');
  await hand.tap('About 1 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.sees('Back within two hours: no injection in its place.');
  await hand.misses('The last injection lasts for now');
  await hand.device.end();
});

// "A smaller dose" beside a rapid-acting injection would be drawn smaller.
test('what a journey makes of long-acting insulin is not said beside a rapid-acting injection', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('I travel across time zones');
  await hand.keys('6');
  await hand.tap('6 hours east');
  await hand.heading('Going east, the day is shorter: a smaller dose.');
  await hand.tap('Back');
  await hand.page.getByRole('button', { name: seen('Inject for the next hours') }).waitFor();
  await hand.misses('a smaller dose');
  await oneInsulin(hand);
  await hand.tap('All times');
  await hand.sees('Going east, the day is shorter: a smaller dose.');
  await hand.device.end();
});

// 20 units of 22:05 work from 00:05 on. Hazard: a list of steps that asks for injections every four hours beside them.
test('with long-acting insulin at work the steps ask for no injections every few hours', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.tap('Back');
  const steps = async () => {
    await answer(hand, { glucose: '8.0', ketones: '0.2' });
    return (await hand.page.locator('.steps').innerText()).replace(/[\u2066-\u2069]/g, '');
  };
  await hand.device.later(185);
  const text = await steps();
  assert.match(text, /Insulin in place of the pump is in: see until when/);
  assert.doesNotMatch(text, /every 4 hours/);
  await hand.device.end();
});

// A bridge of 22:05 is for until 02:05, and one may be half an hour early. Hazard: from 01:35 to 02:35 nothing told that an injection is
// due: no time stood ahead any more, and "no basal is written down" is said half an hour later.
test('an injection that is due now is told between the looks, before its time and when it is late', async () => {
  const hand = await withDemo(night);
  const due = 'Then the next injection: “The pump stays off”.';
  await asked(hand, { hours: '9', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.tap('Back');
  for (const minutes of [180, 40]) {
    await hand.device.later(minutes);
    await hand.page.reload();
    await hand.heading('Look again at');
    await hand.sees(due);
  }
  await hand.device.later(30);
  await hand.page.reload();
  await hand.heading('The look of 02:05 is');
  await hand.misses('No basal insulin is written down');
  await hand.sees(due);
  await hand.shot('off-injection-late');
  assert.equal(await hand.page.getByRole('button', { name: seen('The pump stays off') }).count(), 1);
  await hand.device.end();
});

// 20 units of 22:05 work until 22:05. Hazard: at 22:10 the look of the day before stood there alone, and nothing of an injection.
test('a long-acting injection that is due now is told behind a look of the day before', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.tap('Back');
  await hand.device.later(24 * 60 + 5);
  await hand.page.reload();
  await hand.heading('The look of 23:05 is');
  await hand.sees('Then the next injection: “The pump stays off”.');
  // It is in: nothing is due.
  await asked(hand, { glucose: '7.0' });
  // Five minutes late leave more than two hours bare before it works: they are bridged first.
  await hand.tap('Inject for the next hours');
  await given(hand, '1');
  await hand.tap('Long-acting insulin');
  await longActingGiven(hand, '20');
  await hand.tap('Back');
  await hand.page.reload();
  await hand.heading('Look again at');
  assert.equal(await hand.page.locator('.lead-time', { hasText: 'next injection' }).count(), 0);
  await hand.device.end();
});
