// A phone without room, and one that keeps nothing at all: each thing that matters is written down by hand, with its time and dose, the
// incident goes on, and nothing says that it is saved. With room again, what stands on paper is entered where the page asks for it.
// The incident is that of killing.mjs; which write holds what stands in its list.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, close, inject, phone, seen, withDemo } from './phone.mjs';
import { armed, person } from './dying.mjs';

after(close);
const night = { glucose: '16.0', ketones: '0.2', pump: { units: '3', at: '0205', glucose: '15.6' } };

// What stands on paper in the end, by the write that would have kept it.
const paper = [[3, '03:05 Glucose 16.0 mmol/L, finger'], [4, '03:05 Ketones 0.2 mmol/L'], [9, '02:05 Pump correction: 3 units'], [11, '03:05 Shown: 1 unit'],
  [14, '03:05 Injected: 1 unit, rapid-acting'], [15, '03:05 The set is changed'], [18, '03:05 Pump, over a sink: 1 unit']];
const kinds = [[3, 'glucose'], [4, 'ketones'], [9, 'pumpDose'], [11, 'incident'], [11, 'look'], [11, 'look'], [11, 'doseShown'], [14, 'injection'], [15, 'changed'], [18, 'offBody'], [20, 'alarmSet']];
const walk = (hand, more = {}) => hand.page.evaluate(person, { readings: night, units: '1', until: 'waiting', ...more });

test('no room from any write on: what matters goes on paper, all else is kept, and the hold runs', async () => {
  for (let at = 1; at <= 21; at += 1) {
    const hand = await withDemo();
    await hand.page.evaluate(armed, { at, full: true });
    const done = await walk(hand);
    assert.equal(done.screen, 'waiting', `from write ${at} on: ${done.met}`);
    assert.deepEqual(done.noted, paper.filter(([write]) => write >= at).map(([, line]) => line), `from write ${at} on`);
    await hand.sees('Do not inject a correction before 07:05.');
    assert.deepEqual((await hand.record()).map(event => event.kind), kinds.filter(([write]) => write < at).map(([, kind]) => kind), `from write ${at} on`);
    await hand.device.end();
  }
});

test('refused at the last moment, after every entry of the turn was taken: the dose goes on paper', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  // A full disk is often noticed only when the turn is to be kept: the browser takes all of it back.
  await hand.page.evaluate(() => {
    for (const name of ['add', 'put']) {
      const write = IDBObjectStore.prototype[name];
      IDBObjectStore.prototype[name] = function (...what) { const request = write.apply(this, what); request.addEventListener('success', () => request.transaction.abort()); return request; };
    }
  });
  await hand.tap('Type the units you see');
  await hand.keys('4');
  await hand.tap('I see 4 units');
  await hand.tap('I have injected 4 units');
  await hand.heading('Write this down');
  await hand.sees('03:05');
  await hand.sees('Injected: 4 units, rapid-acting');
  await hand.misses('Saved');
  await hand.tap('I have written it down');
  await hand.heading('Change the infusion set');
  await hand.tap('The set is changed');
  await hand.heading('Write this down');
  await hand.tap('I have written it down');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 0);
  // Room again, and the phone started anew: the dose that was shown is asked about.
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, 4 units');
  await hand.tap('At 03:05');
  await hand.heading('Change the infusion set');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'injection').map(event => [event.units, event.at]), [[4, '2026-11-25T03:05:00+01:00']]);
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.device.end();
});

test('with room again, what stands on paper is entered where the page asks what was given', async () => {
  const hand = await withDemo();
  // No room from the first answer on: not even the dose that was shown is kept.
  await hand.page.evaluate(armed, { at: 2, full: true });
  assert.equal((await walk(hand)).screen, 'waiting');
  assert.deepEqual(await hand.record(), []);
  await hand.device.later(20);
  await hand.page.reload();
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('15.0');
  await hand.tap('Finger: 15.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('0.2');
  await hand.tap('Yes, ketones are 0.2');
  await hand.heading('What do you see?');
  await hand.tap('None of these');
  await hand.heading('What insulin was already given?');
  await hand.tap('An injection by needle');
  await hand.keys('1');
  await hand.tap('Yes, 1 unit');
  await hand.heading('When was that?');
  await hand.keys('0305');
  await hand.tap('Yes, at 03:05');
  await hand.tap('Yes, it was given');
  await hand.heading('What was the glucose then?');
  await hand.keys('16.0');
  await hand.tap('Yes, 16.0 mmol/L');
  await hand.heading('What insulin was already given?');
  await hand.sees('03:05 Injected: 1 unit, rapid-acting');
  await hand.tap('That is all');
  await hand.heading('Do not inject now');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 1);
  await hand.device.end();
});

test('no room from the start: the whole incident goes on paper, and "Write something down" does not say "Saved"', async () => {
  const hand = await withDemo();
  await hand.page.evaluate(armed, { at: 1, full: true });
  await hand.tap('Write something down');
  await hand.tap('The set is changed');
  await hand.heading('Write this down');
  await hand.tap('I have written it down');
  await hand.heading('What happened?');
  await hand.misses('Saved');
  await hand.tap('Back');
  await hand.page.getByRole('button', { name: seen('Start') }).waitFor();
  const done = await walk(hand);
  assert.deepEqual(done.noted, paper.map(([, line]) => line));
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.device.end();
});

test('storage refused from the start is no new phone: nobody knows what was given', async () => {
  const device = await phone({ prepare: () => { IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); }; } });
  const hand = await device.open();
  await hand.heading('The record cannot be opened');
  await hand.sees('Doses may have been given. Do not inject.');
  await hand.misses('Demo plan');
  await device.end();
});

test('there is room for an entry but not for the answers beside it: the entry is kept, and nobody is sent for paper', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (value, key) { if (key === 'draft') throw new DOMException('full', 'QuotaExceededError'); return put.call(this, value, key); };
  });
  await inject(hand, '4');
  await hand.heading('Change the infusion set');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 1);
  await hand.device.end();
});
