// Off the pump for days, and on a journey: what was said of it stands when the dose is due that it changes, and that dose is told.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked, askedAgain, given, longActingGiven, toLongActing } from './off_pump.mjs';
import { answer, close, phone, withDemo } from './phone.mjs';

after(close);
const night = { at: '2026-11-25T22:05:00+01:00' };

const travels = async (hand, zones, where) => {
  await hand.tap('I travel across time zones');
  await hand.keys(zones);
  await hand.tap(`${zones} hours ${where}`);
};
const dues = async hand => {
  const events = await hand.record();
  const struck = events.filter(event => event.kind === 'strike').map(event => event.target);
  return events.filter(event => event.kind === 'look' && !struck.includes(event.id)).map(event => event.due.slice(0, 16)).sort();
};

// It works 24 hours, from 22:05 to 22:05: its end forgotten, nobody has any basal. Meanwhile a look every hour.
test('away from its page, the time of the next long-acting dose is still told, and late it is told first', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await given(hand, '1');
  await hand.tap('Long-acting insulin');
  await longActingGiven(hand, '20');
  await hand.heading('The pump is off');
  assert.deepEqual(await dues(hand), ['2026-11-25T23:05', '2026-11-26T22:05']);
  await hand.tap('Back');
  // Hazard: an answer that comes too late. Off the pump the next look is in an hour, not in a day.
  await hand.sees('Next look 23:05');
  await hand.device.later(60);
  await answer(hand, { glucose: '7.0', ketones: '0.2' });
  await hand.heading('The pump is off');
  await hand.tap('The alarm is set');
  assert.deepEqual(await dues(hand), ['2026-11-25T23:05', '2026-11-26T00:05', '2026-11-26T22:05']);
  // Tested at 21:40, the next look is at 22:40; the dose is due before it.
  await hand.device.later(22 * 60 + 35);
  await answer(hand, { glucose: '7.0', ketones: '0.2' });
  await hand.heading('The pump is off');
  await hand.tap('The alarm is set');
  await hand.device.later(85);
  await hand.sees('The look of 22:05 is 60 minutes late');
  await hand.device.end();
});

// The team orders ten more at 19:05 the next day, when nothing of the last 20 hours stands against it. They hold the next one until 24 hours
// later: the look of before would be too soon.
test('more long-acting insulin moves the look for the next dose', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await toLongActing(hand);
  await longActingGiven(hand, '20');
  await hand.heading('The pump is off');
  await hand.tap('Back');
  await hand.device.later(21 * 60);
  await hand.tap('The pump stays off');
  await askedAgain(hand, { glucose: '7.0' });
  await hand.tap('The team named an amount');
  await hand.keys('10');
  await hand.tap('They said 10');
  await hand.tap('They said yes');
  await longActingGiven(hand, '10');
  await hand.heading('The pump is off');
  assert.deepEqual((await dues(hand)).filter(due => due > '2026-11-26T19:06'), ['2026-11-26T20:05', '2026-11-27T19:05']);
  await hand.device.end();
});

// Said at 08:05, six zones west; the dose it changes is due at 22:05 by the clock at home, a day after it was said how long.
test('a journey is remembered when its dose is due, by the phone of the other place', async () => {
  const home = await withDemo(night);
  await asked(home, { glucose: '7.0' });
  await toLongActing(home);
  await longActingGiven(home, '20');
  await home.heading('The pump is off');
  await home.device.later(10 * 60);
  await travels(home, '6', 'west');
  await home.heading('Going west, the day is longer: two parts.');
  await home.tap('Back');
  await home.tap('Back');
  const storage = await home.device.context.storageState({ indexedDB: true });
  await home.device.context.close();
  const device = await phone({ zone: 'America/New_York', storage, at: '2026-11-26T22:06:00+01:00', server: home.device.host });
  const hand = { device, ...await device.open() };
  await asked(hand, { glucose: '7.0' });
  await hand.heading('The pump is off');
  // A day and a minute, and not a minute.
  await hand.sees('Off since 25 November 2026, 16:05.');
  // Half of the 20.6 of a day stands instead of the whole; the other half follows six hours later.
  await hand.tap('Then the second injection');
  await hand.sees('Going west, the day is longer: two parts.');
  await hand.tap('Long-acting insulin');
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await hand.sees('10 units');
  await given(hand, '10');
  const [injection] = (await hand.record()).filter(event => event.kind === 'injection').slice(-1);
  assert.deepEqual([injection.units, injection.zonesEast], [10, -6]);
  await hand.device.end();
});

test('how long there was no basal is told with its day', async () => {
  const hand = await withDemo(night);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Back');
  await hand.device.later(24 * 60 + 5);
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.sees('No basal insulin is written down since 25 November 2026, 22:05. Do not inject double.');
  await hand.device.end();
});

test('asked again about hours and sleep, a journey stays said; that there is none stays said too', async () => {
  const hand = await withDemo(night);
  await asked(hand, { glucose: '7.0' });
  await travels(hand, '6', 'east');
  await hand.heading('Going east, the day is shorter: a smaller dose.');
  await hand.tap('Back');
  await hand.tap('Ask again');
  await hand.tap('I do not know');
  await hand.tap('I stay awake');
  await askedAgain(hand, { stands: true });
  await hand.tap('Then the second injection');
  await hand.sees('Going east, the day is shorter: a smaller dose.');
  await hand.tap('Back');
  await hand.tap('My journey across time zones');
  await hand.tap('Change the hours');
  await hand.tap('I do not travel');
  await hand.tap('Back');
  await hand.tap('The pump stays off');
  await askedAgain(hand, { stands: true });
  await hand.tap('Then the second injection');
  await hand.misses('Going east, the day is shorter: a smaller dose.');
  await hand.device.end();
});
