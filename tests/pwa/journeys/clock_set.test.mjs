// A clock that is wrong at the needle and right later must not free the hold. 4 units go in at 03:05 in Berlin; four
// hours hold the next dose. The page knows how long it has been running (the browser's performance.now, which
// setSystemTime leaves alone): it sees a clock that was set, asks whether it is right, and when it was that something
// was written by the wrong one. Times are worked out by hand.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { asked } from './off_pump.mjs';
import { answer, betweenLooks, close, withDemo } from './phone.mjs';

after(close);

const comeBack = hand => hand.page.evaluate(() => { document.dispatchEvent(new Event('visibilitychange')); });
const set = async (hand, at) => { await hand.device.setClock(at); await comeBack(hand); };
// The phone lies face down: the page is hidden, and what it runs by stands still.
const hidden = (hand, on) => hand.page.evaluate(is => {
  Object.defineProperty(document, 'hidden', { configurable: true, get: () => is });
  document.dispatchEvent(new Event('visibilitychange'));
}, on);
const needles = async hand => (await hand.record()).filter(event => event.kind === 'injection');
const doses = async hand => (await hand.record()).filter(event => event.kind === 'doseShown').length;
const asksNothing = async hand => {
  await hand.misses('Is this the time?');
  await hand.misses('When was that?');
};
const highAgain = async hand => {
  await hand.touch(hand.page.getByRole('button', { name: /^\s*(Start|Test now)/ }));
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('20.0');
  await hand.tap('Finger: 20.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
};

test('after a start the time is asked before the first dose, once, and again after the next start', async () => {
  const hand = await withDemo({ saysTime: false });
  await answer(hand);
  await hand.heading('Is this the time?');
  await hand.sees('03:05');
  await hand.misses('4 units');
  await hand.shot('right-time');
  // Nothing is written of a dose that nobody has seen.
  assert.equal(await doses(hand), 0);
  await hand.tap('Yes, it is');
  await hand.heading('Inject now');
  assert.equal(await doses(hand), 1);
  await hand.tap('I do not inject');
  await hand.tap('No, I typed something wrong');
  await hand.keys('17.0');
  await hand.tap('Finger: 17.0 mmol/L');
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('No, nothing was injected');
  await hand.heading('Is this the time?');
  await hand.tap('Yes, it is');
  await hand.heading('Inject now');
  await hand.device.end();
});

test('the time is not right: how to set it, another clock and the call, and no dose', async () => {
  const hand = await withDemo({ saysTime: false });
  await answer(hand);
  await hand.heading('Is this the time?');
  await hand.tap('No, it is not');
  await hand.heading('This is not the time');
  await hand.sees('Look at another clock.');
  await hand.sees('Set the time in the settings of this phone.');
  assert.match(await hand.link('Call').getAttribute('href'), /^tel:/);
  await hand.shot('clock-wrong');
  await hand.tap('The clock is right now');
  await hand.heading('Is this the time?');
  assert.equal(await doses(hand), 0);
  await hand.device.end();
});

// A clock that was wrong before this start was seen by nobody: somebody may see it by the time of the last injection.
test('after a start the last injection stands beside the time; said to be later, it holds longer', async () => {
  const hand = await betweenLooks();
  await hand.device.later(5 * 60);
  await hand.page.reload();
  hand.device.says.time = false;
  await highAgain(hand);
  await hand.tap('None of these');
  await hand.tap('That is all');
  await hand.heading('Is this the time?');
  await hand.sees('You wrote at 03:05: Injected: 4 units, rapid-acting.');
  await hand.tap('It was at another time');
  await hand.heading('When was that?');
  await hand.tap('1 hour ago');
  await hand.heading('Do not inject now');
  await hand.sees('Do not inject a correction before 11:05.');
  assert.equal(await doses(hand), 1);
  await hand.device.end();
});

test('off the pump likewise: the time before the first amount, and no amount once the clock was set', async () => {
  const hand = await withDemo({ at: '2026-11-25T22:05:00+01:00', saysTime: false });
  await asked(hand, { hours: '6', glucose: '7.0' });
  await hand.tap('Inject for the next hours');
  await hand.heading('Is this the time?');
  await hand.misses('units');
  assert.equal(await doses(hand), 0);
  await hand.tap('Back');
  await hand.tap('Inject for the next hours');
  await hand.tap('Yes, it is');
  await hand.page.locator('.dose').waitFor();
  assert.equal(await doses(hand), 1);
  await set(hand, '2026-11-25T23:05:00+01:00');
  await hand.heading('Is this the time?');
  await hand.misses('units');
  await hand.device.end();
});

test('set back three hours after an injection, and right later: the hold is not freed', async () => {
  const hand = await betweenLooks();
  await set(hand, '2026-11-25T00:05:00+01:00');
  await hand.heading('Is this the time?');
  await hand.sees('00:05');
  await hand.sees('The clock of this phone was set.');
  await hand.shot('clock-jumped');
  // Not answered, no dose: whatever is measured.
  await hand.tap('Test first');
  await highAgainFrom(hand);
  await hand.heading('Is this the time?');
  await hand.page.reload();
  await hand.heading('Is this the time?');
  await hand.tap('No, it is not');
  await hand.heading('This is not the time');
  // Five minutes of it pass before it is set right.
  await hand.device.later(5);
  await set(hand, '2026-11-25T03:10:00+01:00');
  // Signs that were answered hours ago, by this clock, are asked first; the clock before anything of a dose.
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Test glucose from a finger');
  await hand.tap('Type the finger reading');
  await hand.keys('20.0');
  await hand.tap('Finger: 20.0 mmol/L');
  await hand.tap('None of these');
  await hand.tap('That is all');
  await hand.heading('Test ketones now');
  await hand.tap('Type the ketones');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.heading('Do not inject now');
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.heading('Is this the time?');
  await hand.tap('Yes, it is');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.equal((await needles(hand)).length, 1);
  assert.equal(await doses(hand), 1);
  await hand.device.end();
});
const highAgainFrom = async hand => {
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('20.0');
  await hand.tap('Finger: 20.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
};

// What is the true time is said by one tap, or typed: 03:05 by the clock was 06:05, since the clock was three hours
// behind.
const said = {
  'as the page worked it out': { tap: 'At 06:05', at: '2026-11-25T06:05:00+01:00', ends: '10:05' },
  'half an hour ago': { tap: 'Half an hour ago', at: '2026-11-25T05:45:00+01:00', ends: '09:45' },
};
for (const [how, { tap, at, ends }] of Object.entries(said))
  test(`three hours behind at the needle and set right ten minutes later, ${how}: the hold runs on`, async () => {
    const hand = await betweenLooks();
    await hand.device.later(10);
    await set(hand, '2026-11-25T06:15:00+01:00');
    await hand.heading('Is this the time?');
    await hand.sees('06:15');
    await hand.tap('Yes, it is');
    await hand.heading('When was that?');
    await hand.sees('Written down at 03:05: Injected: 4 units, rapid-acting.');
    await hand.shot('when-was-it');
    await hand.tap(tap);
    await hand.sees(`Do not inject a correction before ${ends}.`);
    const [wrong, right] = await needles(hand);
    assert.equal(right.insteadOf, wrong.id);
    assert.equal(right.units, 4);
    assert.equal(right.at, at);
    assert.ok((await hand.record()).some(event => event.kind === 'strike' && event.target === wrong.id));
    // 07:30 is after the hold that the wrong time would have had.
    await hand.device.later(75);
    await comeBack(hand);
    await highAgain(hand);
    await hand.tap('None of these');
    await hand.tap('That is all');
    await hand.heading('Do not inject now');
    assert.equal(await doses(hand), 1);
    await hand.device.end();
  });

test('five hours ahead at the needle and set right ten minutes later: no dose until the team knows', async () => {
  const hand = await betweenLooks();
  await hand.device.later(10);
  // 03:15 by the clock; it is 22:15 of the day before.
  await set(hand, '2026-11-24T22:15:00+01:00');
  await hand.heading('Is this the time?');
  await hand.tap('Yes, it is');
  await hand.heading('When was that?');
  // A time that has not come yet is no answer.
  assert.equal(await hand.page.getByRole('button', { name: /as written/ }).count(), 0);
  await hand.tap('At 22:05');
  await hand.heading('Call your team about the times');
  await hand.shot('clock-tell');
  await hand.tap('No answer');
  await highAgain(hand);
  await hand.heading('Call your team about the times');
  assert.equal(await doses(hand), 1);
  await hand.tap('Answered');
  await hand.sees('Do not inject a correction before 02:05.');
  await hand.misses('Look at another clock.');
  const [wrong, right] = await needles(hand);
  assert.deepEqual([right.at, right.insteadOf, right.units], ['2026-11-24T22:05:00+01:00', wrong.id, 4]);
  assert.equal(await doses(hand), 1);
  await hand.device.end();
});

test('set forward while somebody looks at it, with a dose on the page: the dose goes, and is asked about', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await set(hand, '2026-11-25T05:05:00+01:00');
  await hand.heading('Is this the time?');
  await hand.misses('Inject now');
  await hand.tap('Yes, it is');
  await hand.heading('Did you inject it?');
  await hand.device.end();
});

test('two minutes are no jump, two minutes and a second are', async () => {
  const hand = await betweenLooks();
  await set(hand, '2026-11-25T03:07:00+01:00');
  await hand.sees('Now 03:07');
  await asksNothing(hand);
  await set(hand, '2026-11-25T03:03:00+01:00');
  await hand.sees('Now 03:03');
  await asksNothing(hand);
  await set(hand, '2026-11-25T03:02:58+01:00');
  await hand.heading('Is this the time?');
  await hand.device.end();
});

test('a phone that slept two hours, hidden, raises nothing; one that was set back meanwhile does', async () => {
  const hand = await betweenLooks();
  await hidden(hand, true);
  await hand.device.setClock('2026-11-25T05:05:00+01:00');
  await hidden(hand, false);
  await hand.heading('The look of 04:05 is');
  await asksNothing(hand);
  await hidden(hand, true);
  await hand.device.setClock('2026-11-25T04:05:00+01:00');
  await hidden(hand, false);
  await hand.heading('Is this the time?');
  await hand.device.end();
});

// On 25 October 2026 three o'clock becomes two; on 28 March 2027 two becomes three (the last Sundays of these months).
const nights = [['back', '2026-10-25T02:50:00+02:00', '02:10'], ['forward', '2027-03-28T01:50:00+01:00', '03:10']];
for (const [which, at, then] of nights)
  test(`clocks are set ${which} in the night: nothing is asked`, async () => {
    const hand = await withDemo({ at });
    await hand.device.later(20);
    await comeBack(hand);
    await hand.sees(`Now ${then}`);
    await asksNothing(hand);
    await hand.device.end();
  });
