// From the questions of the bedside to the pages of somebody off the pump, and back to what comes first.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { asked, askedAgain, closePage, forgetPage, given, oneInsulin, toHours, toLongActing } from './off_pump.mjs';
import { answer, close, seen, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };

test('a dead pump leads from the questions to its own pages, and the amounts are worked out there', async () => {
  const hand = await withDemo({ ...night, flowing: true });
  await answer(hand, { glucose: '8.0', ketones: '0.2', sees: ['The pump is dead'] });
  await hand.heading('The pump is off');
  await oneInsulin(hand);
  await hand.shot('off-steps');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  // From the last step as from the top of the page.
  await hand.tap('The alarm is set');
  await hand.tap('Answered');
  await hand.page.getByRole('heading', { name: 'Long-acting insulin, if it takes long' }).waitFor();
  await oneInsulin(hand);
  await toHours(hand);
  await hand.keys('6');
  await hand.tap('About 6 hours');
  await hand.tap('I stay awake');
  // The glucose of a moment ago stands.
  await askedAgain(hand, { stands: true });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.device.end();
});

// Hazard: an answer that comes too late. "Do not inject" and "the pump's insulin" were said to somebody whose pump is dead.
test('ketones, a glucose that allows no dose for them, and a dead pump: the injection in its place is said, and is in the list', async () => {
  for (const dead of [true, false]) {
    const hand = await withDemo(night);
    await answer(hand, { glucose: '8.0', ketones: '0.6', sees: dead ? ['The pump is dead'] : [] });
    await hand.heading('Eat carbohydrate');
    await (dead ? hand.sees : hand.misses)('No insulin comes by itself now. Its injection is in the list.');
    await (dead ? hand.misses : hand.sees)('Do not inject now. Ketones fall with food and the pump’s insulin.');
    await (dead ? hand.sees : hand.misses)('Injections in place of the pump, every 4 hours');
    await hand.device.end();
  }
});

test('since when is not asked of somebody who saw at the bedside that the pump is dead', async () => {
  const hand = await withDemo(night);
  await answer(hand, { glucose: '8.0', ketones: '0.2', sees: ['The pump is dead'] });
  await hand.heading('The pump is off');
  await hand.tap('The pump stays off');
  await hand.heading('How many hours without a pump?');
  await hand.device.end();
});

// Danger signs and ketones come first, also where hours and sleep are known already.
test('whoever is ill finds the questions from every page on which the hours are known', async () => {
  const hand = await withDemo(night);
  await toHours(hand);
  await hand.keys('6');
  await hand.tap('About 6 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.sees('The correction waits for your answers.');
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await hand.heading('What do you eat now?');
  await hand.tap('Ill, or ketones? Start here');
  await hand.heading('Is any of these true now?');
  await hand.device.end();
});

// Another phone has the record and none of the answers: nobody said that it is not known how long.
test('after a dose that was asked about, how long is asked before long-acting insulin is shown', async () => {
  const hand = await withDemo(night);
  await toHours(hand);
  await hand.keys('6');
  await hand.tap('About 6 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await forgetPage(hand);
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('No');
  await hand.heading('How many hours without a pump?');
  await hand.device.end();
});

test('after a dead phone the hours that were said still count', async () => {
  const hand = await withDemo(night);
  await toHours(hand);
  await hand.keys('6');
  await hand.tap('About 6 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, 3 units');
  await hand.heading('The pump is off');
  await hand.sees('You expect a pump on 26 November 2026, about 04:05.');
  await hand.sees('02:05');
  await oneInsulin(hand);
  await hand.device.end();
});

test('asleep until seven and no long-acting insulin here: the injection of the night is said above everything, and somebody to wake them', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '10', wakes: '0700', glucose: '7.0' });
  await hand.misses('while you sleep');
  await toLongActing(hand);
  await hand.tap('I have none here');
  await hand.heading('The pump is off');
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await given(hand, '3');
  await hand.sees('The pump is off Off since 22:05.');
  await hand.sees('An injection is due while you sleep. Ask somebody to wake you.');
  await hand.shot('off-asleep');
  await oneInsulin(hand);
  await hand.device.end();
});

test('no long-acting insulin at hand: a bridge of four hours, where to get some, and its dose once it is there', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('I have none here');
  await hand.heading('The pump is off');
  await hand.sees('Rapid-acting, for 22:05 to 02:05');
  await oneInsulin(hand);
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await hand.sees('Basal 22:05 to 02:05 3.3');
  await given(hand, '3');
  await hand.sees('No long-acting insulin is here. Inject every few hours.');
  await hand.sees('Get long-acting insulin: pharmacy, hospital, your team.');
  await hand.sees('02:05');
  await hand.shot('off-none-here');
  await oneInsulin(hand);
  // Said once for the whole night; until somebody has found some.
  await hand.tap('Back');
  await hand.device.later(4 * 60);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.sees('Rapid-acting, for 02:05 to 06:05');
  await hand.tap('All times');
  await hand.tap('I have long-acting insulin now');
  await toLongActing(hand);
  await hand.device.end();
});

// Found dead at 22:05, it stopped at 21:00: the two hours are over at 23:00, and somebody who sleeps at 23:00 is not told to wait.
test('a pump that stopped before is counted from then', async () => {
  const hand = await withDemo(night);
  await hand.tap('The pump stays off');
  await hand.heading('Since when is the pump off?');
  await hand.shot('off-since');
  await hand.keys('2500');
  await hand.tap('Since');
  await hand.heading('Since when is the pump off?');
  for (const digit of '2500') await hand.tap('Erase');
  await hand.keys('2100');
  await hand.tap('Since 21:00');
  await hand.keys('0.5');
  await hand.tap('About 0.5 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.sees('Back within two hours: no injection in its place.');
  await hand.sees('Off since 21:00.');
  await hand.sees('23:00');
  const events = await hand.record();
  assert.deepEqual(events.filter(event => event.kind === 'look').map(event => event.due.slice(11, 16)), ['23:00']);
  assert.deepEqual(events.filter(event => event.kind === 'pump').map(event => [event.at.slice(11, 16), event.state]), [['21:00', 'off']]);
  await hand.device.end();
});

test('whoever looks ahead writes nothing down', async () => {
  const hand = await withDemo(night);
  await hand.tap('The pump stays off');
  await hand.tap('It still runs');
  await hand.keys('48');
  await hand.tap('About 48 hours');
  await hand.tap('I stay awake');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.heading('If the pump stops now');
  await hand.misses('Off since');
  assert.equal((await hand.record()).filter(event => event.kind === 'pump').length, 0);
  await hand.tap('The pump is off now');
  await hand.heading('The pump is off');
  assert.equal((await hand.record()).filter(event => event.kind === 'pump').length, 1);
  await hand.device.end();
});

// 20.6 a day: 35 units are heard wrong, or were said wrong. Within the hold of a dose nothing of it may stay.
test('an order that was mistyped leaves no dose behind', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await given(hand, '20');
  await hand.device.later(10);
  await hand.tap('All times');
  await hand.tap('The team named an amount');
  await hand.keys('35');
  await hand.tap('They said 35');
  await hand.tap('They said yes');
  await hand.heading('35 units is too much to be injected');
  await hand.page.reload();
  await hand.heading('35 units is too much to be injected');
  await hand.tap('Another amount');
  await hand.heading('How many units did they say?');
  await hand.tap('Back');
  await hand.heading('The pump is off');
  await hand.misses('Then the second injection');
  await hand.tap('All times');
  assert.equal(await hand.page.getByRole('button', { name: seen('Long-acting insulin') }).count(), 0);
  const events = await hand.record();
  const order = events.find(event => event.kind === 'order');
  assert.deepEqual(events.filter(event => event.kind === 'strike').map(event => event.target), [order.id]);
  await hand.device.end();
});

// The page of a dose is gone, what was said is not: somebody closed it in another way than by a reload.
test('asked about at the home page, a dose brings back the hours that were said', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Inject now');
  await closePage(hand);
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('No');
  await hand.heading('The pump is off');
  await hand.sees('You expect a pump on 26 November 2026, about 04:05.');
  await hand.device.end();
});

// Hazard: after a day without an entry nothing waits any more, and the first page says nothing of a pump that still gives nothing.
test('as long as the pump is written down as off, the way to its pages says since when', async () => {
  const hand = await withDemo(night);
  const way = async () => (await hand.page.getByRole('button', { name: seen('The pump stays off') }).innerText()).replace(/[\u2066-\u2069]/g, '');
  assert.match(await way(), /Injections until a pump works again/);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '3');
  await hand.tap('Back');
  await hand.heading('Look again at');
  assert.match(await way(), /Written down as off since 22:05/);
  await hand.misses('No basal insulin is written down');
  // The next injection was due at 02:05. It is late, and so is the look: both are said.
  await hand.device.later(5 * 60);
  await hand.page.reload();
  await hand.heading('The look of 02:05 is');
  await hand.sees('No basal insulin is written down since 02:05. Do not inject double.');
  await hand.shot('off-late-bare');
  await hand.device.later(2 * 24 * 60 - 5 * 60);
  await hand.page.reload();
  await hand.heading('Maren Oduya');
  assert.match(await way(), /Written down as off since 25 November 2026, 22:05/);
  // Four hours of basal went in at 22:05 (bridgeHours of this plan). The warning and its button stand right below the questions.
  await hand.sees('No basal insulin is written down since 26 November 2026, 02:05. Do not inject double.');
  await hand.shot('off-home-bare');
  assert.equal(await hand.page.getByRole('button', { name: seen('The pump stays off') }).count(), 1);
  assert.ok(await hand.page.getByRole('button', { name: seen('The pump stays off') }).evaluate(way => way.getBoundingClientRect().bottom <= document.querySelector('footer, .foot').getBoundingClientRect().top), 'the way is in sight without scrolling');
  await hand.tap('Write something down');
  await hand.tap('The pump is on again');
  await hand.sees('Saved: 22:05.');
  await hand.tap('Back');
  assert.match(await way(), /Injections until a pump works again/);
  await hand.device.end();
});

// Hazard: a pump that has run for days and was never written down as on. Whoever follows the warning would be shown basal to inject.
test('before anything is asked, a pump that works again is written down, and the first page says nothing more of missing basal', async () => {
  const hand = await withDemo({ ...night, width: 320, height: 640, flowing: true });
  await toHours(hand);
  await hand.tap('Back');
  await hand.device.later(2 * 24 * 60);
  await hand.page.reload();
  await hand.sees('No basal insulin is written down since 25 November 2026');
  await hand.tap('The pump stays off');
  await hand.heading('How many hours without a pump?');
  await hand.shot('off-hours-works-again');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.tap('A pump works again');
  await hand.heading('The pump is on');
  await hand.tap('Back');
  await hand.heading('Look again at');
  await hand.misses('No basal insulin is written down');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'pump').map(event => event.state), ['off', 'on']);
  await hand.device.end();
});
