// Waking up for the next look: the page says it cannot, hands the looks to a calendar, and watches at the bedside. The phone's own
// parts (sound, screen lock) are replaced by ones that write down what was asked of them.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import ICAL from 'ical.js';
import { answer, close, inject, seen, withDemo } from './phone.mjs';

after(close);

const parts = () => {
  const heard = []; let locks = [], refuse = false;
  globalThis.parts = { heard, letGo: () => locks.at(-1).drop(), held: () => locks.filter(lock => !lock.released).length, refuse: () => { refuse = true; } };
  class Node_ { connect(next) { return next; } }
  globalThis.AudioContext = class { currentTime = 0; destination = new Node_(); async resume() { heard.push('ready'); } close() {} };
  globalThis.OscillatorNode = class extends Node_ { constructor(_, { type, frequency }) { super(); this.what = `${type} ${frequency}`; } start() { heard.push(`${this.what} on`); } stop(at) { if (at === undefined) heard.push('off'); } };
  globalThis.GainNode = class extends Node_ { gain = { setValueAtTime() {} }; };
  Object.defineProperty(navigator, 'wakeLock', { value: { request: async kind => {
    if (refuse) throw new Error('NotAllowed');
    const lock = new EventTarget();
    Object.assign(lock, { kind, released: false, drop: () => { lock.released = true; lock.dispatchEvent(new Event('release')); }, release: async () => lock.drop() });
    locks.push(lock);
    return lock;
  } } });
};
const heard = hand => hand.page.evaluate(() => globalThis.parts.heard);

// A dose is given and its steps are done: the next look is at 03:35 or later.
const waiting = async (options = {}) => {
  const hand = await withDemo({ prepare: parts, ...options });
  await answer(hand);
  await inject(hand, '4');
  await hand.steps();
  await hand.tap('All steps are seen');
  return hand;
};

test('between the looks the page says that it cannot wake anybody, and the calendar gets the looks', async () => {
  const hand = await waiting();
  await hand.heading('Look again at');
  await hand.sees('This page cannot wake you.');
  await hand.tap('Help to wake up');
  await hand.heading('Help to wake up');
  await hand.shot('wake');
  const coming = hand.page.waitForEvent('download');
  await hand.tap('Put the looks into my calendar');
  const file = await coming;
  assert.equal(file.suggestedFilename(), 'stopgap.ics');
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(await file.path(), 'utf8')));
  const events = calendar.getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
  const looks = (await hand.record()).filter(event => event.kind === 'look').map(event => new Date(event.due).toISOString().replace('.000', ''));
  assert.deepEqual(events.map(event => event.startDate.toString()), looks);
  assert.ok(looks.length);
  assert.deepEqual([...new Set(events.map(event => event.summary))], ['Look again: open Stopgap']);
  await hand.sees('The file is saved.');
  await hand.device.end();
});

test('the watch starts with its sound, keeps the screen on, sounds at the look, and leads to it', async () => {
  const hand = await waiting();
  await hand.tap('Help to wake up');
  await hand.tap('Watch at the bedside');
  await hand.heading('First, hear the alarm');
  assert.deepEqual(await heard(hand), []);
  await hand.tap('Play the alarm');
  await hand.heading('Did you hear it?');
  assert.deepEqual(await heard(hand), ['ready', 'square 520 on']);
  await hand.tap('I heard nothing');
  await hand.sees('Try again.');
  await hand.sees('This page cannot wake you.');
  await hand.tap('Play the alarm');
  await hand.shot('watch-heard');
  await hand.tap('I heard it');
  await hand.page.getByRole('heading', { level: 1, name: /The next look is at/ }).waitFor();
  await hand.sees('The screen stays on.');
  assert.equal(await hand.page.evaluate(() => globalThis.parts.held()), 1);
  await hand.shot('watch');
  const before = (await heard(hand)).length;
  await hand.device.later(4);
  assert.equal((await heard(hand)).length, before);
  // Three hours on every look of this dose is late.
  await hand.device.later(180);
  await hand.heading('Look now');
  await hand.shot('watch-now');
  assert.equal((await heard(hand)).slice(before)[0], 'square 520 on');
  await hand.tap('I am awake: test now');
  await hand.heading('Is any of these true now?');
  assert.equal((await heard(hand)).at(-1), 'off');
  assert.equal(await hand.page.evaluate(() => globalThis.parts.held()), 0);
  await hand.device.end();
});

test('a screen lock that is lost or refused is said at once, and can be asked for again', async () => {
  const hand = await waiting();
  await hand.tap('Help to wake up');
  await hand.tap('Watch at the bedside');
  await hand.tap('Play the alarm');
  await hand.tap('I heard it');
  await hand.sees('The screen stays on.');
  await hand.page.evaluate(() => globalThis.parts.letGo());
  await hand.sees('The screen may go dark. Then nothing will sound.');
  await hand.tap('Keep the screen on');
  await hand.sees('The screen stays on.');
  await hand.tap('Stop the watch');
  await hand.heading('Look again at');
  await hand.page.evaluate(() => globalThis.parts.refuse());
  await hand.tap('Help to wake up');
  await hand.tap('Watch at the bedside');
  await hand.tap('Play the alarm');
  await hand.tap('I heard it');
  await hand.sees('The screen may go dark. Then nothing will sound.');
  await hand.device.end();
});

test('after a reload in the watch the page between the looks is back, and the sound is tried again', async () => {
  const hand = await waiting();
  await hand.tap('Help to wake up');
  await hand.tap('Watch at the bedside');
  await hand.tap('Play the alarm');
  await hand.tap('I heard it');
  await hand.page.reload();
  await hand.heading('Look again at');
  await hand.tap('Help to wake up');
  await hand.tap('Watch at the bedside');
  await hand.heading('First, hear the alarm');
  await hand.device.end();
});

test('its pages can be read, dim as the watch is', async () => {
  const hand = await waiting({ flowing: true });
  // Every rule of axe, not only those of the guidelines.
  const clean = async page => assert.deepEqual(await axeFaults(hand.page, { rules: overTheFoot.rules }), [], page);
  await hand.tap('Help to wake up');
  await hand.heading('Help to wake up');
  await clean('help');
  await hand.tap('Watch at the bedside');
  await clean('sound');
  await hand.tap('Play the alarm');
  await hand.tap('I heard it');
  await hand.sees('The screen stays on.');
  await clean('watch');
  await hand.device.end();
});
