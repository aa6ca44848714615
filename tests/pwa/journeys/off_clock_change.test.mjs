// The night on which the clocks are set, in Berlin: what comes after it is told as the phone shows it then. Worked by hand by instants:
// on 25 October 2026, 03:00 at +02:00 is 02:00 at +01:00; on 28 March 2027, 02:00 at +01:00 is 03:00 at +02:00.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked, given, longActingGiven, toHours } from './off_pump.mjs';
import { answer, close, inject, withDemo } from './phone.mjs';

after(close);
const autumn = '2026-10-25T01:15:00+02:00', spring = '2027-03-28T01:15:00+01:00';
const dues = async hand => (await hand.record()).filter(event => event.kind === 'look').map(event => Date.parse(event.due));

// Two hours from 01:15 are over at 02:15 and at 04:15. An alarm at 03:15 would ring an hour late: an hour with no basal at all.
for (const [name, at, ends, day] of [['back', autumn, '02:15', '00:15'], ['forward', spring, '04:15', '02:15']])
  test(`set ${name} in the bridge, the next injection is told by the clock of then`, async () => {
    const hand = await withDemo({ at });
    await asked(hand, { glucose: '7.0' });
    await hand.sees(`Rapid-acting, for 01:15 to ${ends}`);
    // A day off the pump is 24 hours of it.
    await hand.sees(`${day} ${name === 'back' ? '26 October 2026' : '29 March 2027'} Call your team if the pump is still off.`);
    await hand.tap('Inject for the next hours');
    await hand.sees(`Basal 01:15 to ${ends} 1.6`);
    await given(hand, '1');
    await hand.sees(`${ends} Set an alarm: next injection.`);
    assert.deepEqual(await dues(hand), [Date.parse(at) + 2 * 3600000]);
    await hand.tap('Back');
    await hand.sees(`Next look ${ends}`);
    // What is told beforehand is what is told then.
    await hand.device.later(100);
    await hand.sees(`Next look ${ends}`);
    await hand.device.later(40);
    await hand.sees(`The look of ${ends} is 20 minutes late`);
    await hand.device.end();
  });

test('long-acting insulin over the night of the change: its hold ends 24 hours later, and it is told so before the change', async () => {
  const hand = await withDemo({ at: spring });
  await asked(hand, { glucose: '7.0' });
  await hand.tap('Then the second injection');
  await hand.tap('Long-acting insulin');
  await longActingGiven(hand, '20');
  await hand.tap('All times');
  // At 01:15 the day after it would be 23 hours.
  await hand.sees('02:15 29 March 2027 Until then, do not inject long-acting again.');
  await hand.misses('01:15 29 March 2027');
  await hand.device.end();
});

// At the bedside the alarm is a step of its own; four hours from 01:15 are over at 06:15 on the clock of then, not at 05:15.
test('the alarm of the bedside and its hold are told by the clock of then', async () => {
  const hand = await withDemo({ at: spring });
  await answer(hand);
  await inject(hand, '4');
  const met = await hand.steps();
  assert.ok(met.some(step => step.includes('Set the alarm for 03:15')), met.join('; '));
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  await hand.sees('Do not inject a correction before 06:15.');
  await hand.sees('Next look 03:15');
  await hand.device.end();
});

// It is 02:30 for the second time. A pump that stopped at 02:15 stopped a quarter of an hour ago; 02:45 was there once, before.
for (const [typed, minutes] of [['0215', 15], ['0245', 45]])
  test(`a clock time of the hour that is shown twice is the latest that has been: ${typed}`, async () => {
    const hand = await withDemo({ at: '2026-10-25T02:30:00+01:00' });
    await toHours(hand, typed);
    const [off] = (await hand.record()).filter(event => event.kind === 'pump');
    assert.equal(Date.parse('2026-10-25T02:30:00+01:00') - Date.parse(off.at), minutes * 60000);
    await hand.device.end();
  });
