// A phone dies at every write of a whole incident, from the first tap to the look an hour later: right before the write is kept, and
// right after. It comes back to the screen that fits what was kept, nothing is lost or doubled, and one needle went in, once.
// The dose is that of stubborn_high.test.mjs, worked by hand there: 1 unit. The next look is at 04:05; four hours without another end
// at 07:05. What each write leaves, and the screen that belongs to it, is written here by hand, in the order of the incident.
import assert from 'node:assert/strict';
import { withDemo } from './phone.mjs';
import { armed, person } from './dying.mjs';

const night = { glucose: '16.0', ketones: '0.2', pump: { units: '3', at: '0205', glucose: '15.6' } };
const anHourLater = { glucose: '14.0', ketones: '0.2' };
const writes = [
  ['', 'signs', 'Is any of these true now?'],
  ['', 'glucose', 'Glucose now'],
  ['glucose', 'ketones', 'Blood ketones now'],
  ['ketones', 'seen', 'What do you see?'],
  ['', 'given', 'What insulin was already given?'],
  ['', 'entryUnits', 'Correction by the pump: how many units?'],
  ['', 'entryTime', 'When was that?'],
  ['', 'entryGlucose', 'What was the glucose then?'],
  ['pumpDose', 'given', 'What insulin was already given?'],
  // Before a dose is seen the time is asked, once after every start.
  ['', 'rightTime', 'Is this the time?'],
  // From here a dose may have been seen: whoever comes back is asked, and never shown it as if it were new.
  ['incident look look doseShown', 'didYouInject', 'Did you inject it?'],
  ['', 'didYouInject', 'Did you inject it?'],
  ['', 'didYouInject', 'Did you inject it?'],
  ['injection', 'stepsPage', 'Change the infusion set'],
  ['changed', 'stepsPage', 'Pump: 1 unit into a sink'],
  // The end of the tubing is seen before the pump gives anything, and joined again after it.
  ['', 'tubing', 'Where is the end of the tubing now?'],
  ['', 'stepsPage', 'Pump: 1 unit into a sink'],
  ['offBody', 'stepsPage', 'Join the tubing to the new set again'],
  ['', 'stepsPage', 'Set the alarm for 04:05'],
  ['alarmSet', 'stepsPage', 'Injected: 1 unit'],
  ['', 'waiting', 'Look again at'],
  // The look, an hour later: still high, and the hold runs.
  ['', 'signs', 'Is any of these true now?'],
  ['', 'glucose', 'Glucose now'],
  ['glucose', 'ketones', 'Blood ketones now'],
  ['ketones', 'seen', 'What do you see?'],
  ['', 'given', 'What insulin was already given?'],
  ['look', 'stepsPage', 'Do not inject now'],
  ['alarmSet', 'stepsPage', 'Do not inject now'],
  ['', 'waiting', 'Look again at'],
];
const firstOfTheLook = 22;
const waitingNow = '04:05 03:05 1 unit of lispro by needle 05:05 Another look Test glucose and ketones. 07:05 Until then, do not inject a correction.';
const waitingThen = '05:05 03:05 1 unit of lispro by needle 07:05 Until then, do not inject a correction.';
const home = ['', 'home', 'Maren Oduya'];
const recordOf = (rows, notInjected) => [...rows.map(([wrote]) => wrote), notInjected ? 'doseRefused look look doseShown' : ''].join(' ').split(' ').filter(Boolean).sort();

// From the home page to the end, or to where the phone dies.
const walk = async (hand, from = {}) => {
  const first = await hand.page.evaluate(person, { readings: night, units: '1', until: 'waiting', ...from });
  if (first.dead) return first;
  await hand.device.later(60);
  return hand.page.evaluate(person, { readings: anHourLater, units: '1', until: 'waiting', onward: true, injected: true });
};
const wrote = hand => hand.page.evaluate(() => window.dying.writes.map(entries => entries.filter(name => name !== 'draft').join(' ')));
const timetable = async hand => (await hand.page.locator('.lead-time .clock, .timetable').allInnerTexts()).join(' ').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();

// Without a kill: what each turn wrote.
export const unharmed = async () => {
  const hand = await withDemo();
  await hand.page.evaluate(armed, { at: 0, before: false });
  assert.equal((await walk(hand)).screen, 'waiting');
  assert.deepEqual(await wrote(hand), writes.map(([entries]) => entries));
  await hand.device.end();
};

// A phone for each of the writes, killed right `before` it or right after.
export const killedAtEach = async before => {
  for (let at = 1; at <= writes.length; at += 1) {
    const hand = await withDemo();
    await hand.page.evaluate(armed, { at, before });
    const died = await walk(hand);
    assert.equal(died.dead, true, `write ${at}`);
    await hand.page.close();

    const kept = writes.slice(0, before ? at - 1 : at);
    const [, screen, heading] = kept.at(-1) ?? home;
    const again = { device: hand.device, ...await hand.device.open() };
    // The browser may hold the lock of the page that died for a moment longer: until then this one says that it waits.
    await again.page.waitForFunction(() => !['', 'otherTab'].includes(document.documentElement.dataset.screen ?? '')
      && document.body.getAttribute('aria-busy') === 'false');
    assert.equal(await again.page.evaluate(() => document.documentElement.dataset.screen), screen, `write ${at}`);
    await again.heading(heading);
    assert.deepEqual((await again.record()).map(event => event.kind).sort(), recordOf(kept), `write ${at}`);

    // It goes on to the end from there.
    const looking = at >= firstOfTheLook;
    const notInjected = screen === 'didYouInject' && !died.injected;
    const done = await again.page.evaluate(person, { readings: looking ? anHourLater : night, units: '1', until: 'waiting', onward: looking && kept.length < writes.length, injected: died.injected });
    assert.equal(done.screen, 'waiting', `write ${at}: ${done.met}`);
    const record = await again.record();
    assert.deepEqual(record.map(event => event.kind).sort(), recordOf(looking ? writes : writes.slice(0, firstOfTheLook - 1), notInjected), `write ${at}`);
    assert.equal(new Set(record.map(event => event.id)).size, record.length, `write ${at}: an id twice`);
    assert.deepEqual(record.filter(event => event.kind === 'injection').map(event => [event.units, event.at]), [[1, '2026-11-25T03:05:00+01:00']], `write ${at}`);
    assert.equal(await timetable(again), looking ? waitingThen : waitingNow, `write ${at}`);
    await hand.device.end();
  }
};
