// Two phones, one plan: each writes down what it sees, and the story of one comes to the other as its saved copy. Nothing is lost or
// doubled, whichever way it goes; what cannot be is refused whole; and a hold of the other phone runs here at once.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, inject, withDemo } from './phone.mjs';
import { axeFaults, overTheFoot } from './axe.mjs';

after(close);
const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
let saved = 0;
const file = text => ({ name: 'copy.json', mimeType: 'application/json', buffer: Buffer.from(text) });

// "More" on either page, and back to it.
const copyOf = async hand => {
  await hand.tap('More');
  // Home has a "Save a copy" of its own as long as one is missing.
  await hand.heading('More');
  const coming = hand.page.waitForEvent('download');
  await hand.tap('Save a copy');
  const path = join(folder, `${saved += 1}.json`);
  await (await coming).saveAs(path);
  await hand.tap('Back');
  return readFileSync(path, 'utf8');
};
const bring = async (hand, text) => {
  await hand.tap('More');
  await hand.page.getByLabel(/Add another phone’s record/).setInputFiles(file(text));
};
const back = async hand => { await hand.tap('Back'); await hand.heading('More'); await hand.tap('Back'); };
const add = async hand => { await hand.tap('Add the new entries'); await hand.heading('The entries are added'); await hand.sees('They are saved.'); await hand.tap('Go on'); };
const byId = record => [...record].sort((a, b) => (a.id < b.id ? -1 : 1));
const same = async (one, other) => assert.deepEqual(byId(await one.record()), byId(await other.record()));

// The mother's phone: 4 units at 03:05, with all its steps. The father's: he changed the set at 03:20.
const mother = async () => {
  const hand = await betweenLooks();
  return hand;
};
const father = async (options = {}) => {
  const hand = await withDemo({ at: '2026-11-25T03:20:00+01:00', ...options });
  await hand.tap('Write something down');
  await hand.tap('The set is changed');
  await hand.sees('Saved: 03:');
  await hand.tap('Back');
  return hand;
};

test('both ways round the two phones end with the same record; a hold of the one runs on the other at once, and after a reload', async () => {
  const hers = await mother(), his = await father();
  const hersAlone = await hers.record(), hisAlone = await his.record();
  const [fromHer, fromHim] = [await copyOf(hers), await copyOf(his)];

  await bring(his, fromHer);
  await his.heading('Another phone’s record');
  await his.sees('This file has a record of Maren Oduya.');
  await his.sees(`New here: ${hersAlone.length}. Known here: 0.`);
  await his.shot('join-new');
  assert.deepEqual(await his.record(), hisAlone, 'nothing is written before the tap');
  await add(his);
  await his.heading('Look again at');
  await his.sees('Do not inject a correction before 07:05.');
  await his.page.reload();
  await his.heading('Look again at');
  await his.sees('Do not inject a correction before 07:05.');

  await bring(hers, fromHim);
  await hers.sees('New here: 1. Known here: 0.');
  await add(hers);
  await same(hers, his);
  assert.equal((await his.record()).length, hersAlone.length + hisAlone.length);

  // The same file once more, and the whole of the other phone: nothing is new.
  for (const [hand, text] of [[his, fromHer], [hers, await copyOf(his)]]) {
    const before = await hand.record();
    await bring(hand, text);
    await hand.sees(`New here: 0. Known here: ${JSON.parse(text).record.events.length}.`);
    await hand.misses('Add the new entries');
    await back(hand);
    assert.deepEqual(await hand.record(), before);
  }
  await hers.device.end();
  await his.device.end();
});

test('one id with two contents: both are told, what stands here stays, and the rest comes in', async () => {
  const hand = await mother();
  const before = await hand.record();
  const copy = JSON.parse(await copyOf(hand));
  const injection = copy.record.events.find(event => event.kind === 'injection');
  // Blanks and the order of keys are no difference; six units instead of four are.
  Object.assign(injection, { units: 6 });
  delete injection.parts;
  copy.record.events.push({ id: 'another-look', at: '2026-11-25T03:04:00+01:00', kind: 'glucose', value: 15.8, unit: 'mmol/L', from: 'finger' });
  await bring(hand, JSON.stringify({ ...copy, record: { ...copy.record, events: copy.record.events.map(event => Object.fromEntries(Object.entries(event).reverse())) } }, null, 2));
  await hand.heading('Another phone’s record');
  await hand.sees(`New here: 1. Known here: ${before.length - 1}.`);
  await hand.sees('These entries differ. What stands here stays.');
  await hand.sees('Here: Injected: 4 units, rapid-acting');
  await hand.sees('In the file: Injected: 6 units, rapid-acting');
  await hand.shot('join-differs');
  await add(hand);
  const after_ = await hand.record();
  assert.deepEqual(after_.filter(event => event.id !== 'another-look'), before);
  assert.equal(after_.length, before.length + 1);
  await hand.device.end();
});

test('a record that is not of this plan, or holds one impossible entry, is refused whole', async () => {
  const her = await mother();
  const copy = await copyOf(her);
  await her.device.end();
  const hand = await father();
  const before = await hand.record();
  const { plan, record } = JSON.parse(copy);
  const text = changed => JSON.stringify({ format: 'stopgap.copy', version: 1, plan, record: { ...record, ...changed } });
  const impossible = record.events.map((event, at) => (at === record.events.length - 1 ? { ...event, at: 'yesterday' } : event));
  for (const [bad, path] of [[text({ events: impossible }), `/record/events/${impossible.length - 1}/at`], [text({ planId: 'p-somebody-else' }), '/record/planId'],
    [text({ version: 2 }), '/record/version'], [text({ events: [...record.events, record.events[0]] }), `/record/events/${record.events.length}/id`],
    [copy.replace('"version":1', '"version":2'), '/version']]) {
    await bring(hand, bad);
    await hand.heading('This cannot be used');
    await hand.sees(path);
    await hand.sees('Nothing was changed.');
    await back(hand);
    assert.deepEqual(await hand.record(), before);
  }
  await hand.device.end();
});

// 4 MiB is the most a record may have (core/figures/ranges.hpp): 2.2 MB may stand here, 2.2 MB may come, and not both.
test('two records that are too large together are refused, though each could be, and nothing is written', async () => {
  const notes = name => Array.from({ length: 8000 }, (_, at) => ({ id: `${name}-${at}`, at: '2026-11-20T12:00:00+01:00', kind: 'note', text: 'n'.repeat(190) }));
  const hand = await father();
  await hand.page.evaluate(([plan, all]) => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap');
    opening.onsuccess = () => {
      const turn = opening.result.transaction(['events', 'desk'], 'readwrite');
      // As a release left it that knew no seals.
      turn.objectStore('desk').delete(`seal/own/${plan}`);
      turn.objectStore('events').openCursor().onsuccess = ({ target: { result: row } }) => { if (row?.value.seal) { const { id, text } = row.value; row.update({ id, plan, text }); row.continue(); } };
      for (const event of all) turn.objectStore('events').add({ id: event.id, plan, text: JSON.stringify(event) });
      turn.oncomplete = () => { opening.result.close(); resolve(); };
      turn.onabort = () => reject(turn.error);
    };
  }), ['p-demo-adult', notes('here')]);
  await hand.page.reload();
  await hand.heading('Maren Oduya');
  const copy = JSON.parse(await copyOf(hand));
  assert.equal(copy.record.events.length, 8001);
  await bring(hand, JSON.stringify({ ...copy, record: { ...copy.record, events: notes('there') } }));
  await hand.heading('This cannot be used');
  await hand.sees('/record');
  await hand.sees('Possible: 4194304.');
  await back(hand);
  assert.equal((await hand.record()).length, 8001);
  await hand.device.end();
});

test('another revision of the plan: the record joins and the plan in use stays, or the other plan is looked at first', async () => {
  const her = await mother();
  const copy = (await copyOf(her)).replace('"revision": 2', '"revision": 3').replace('"lockHours": 4', '"lockHours": 5');
  await her.device.end();
  const hand = await father();
  await bring(hand, copy);
  await hand.sees('The file holds another plan. Yours stays in use.');
  await hand.tap('Add the new entries');
  await hand.tap('Go on');
  await hand.sees('Plan 2, 12 October 2026');
  await hand.sees('Do not inject a correction before 07:05.');
  await bring(hand, copy);
  await hand.sees('New here: 0.');
  await hand.tap('Look at the plan in the file');
  await hand.heading('Maren Oduya');
  await hand.sees('Revision 3');
  await hand.tap('Look round with this plan');
  await hand.sees('Plan 3, 12 October 2026');
  await hand.sees('Do not inject a correction before 08:05.');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 1);
  await hand.device.end();
});

test('a phone that dies in the middle of joining has all of it or nothing, and a full one says that it is not kept', async () => {
  const her = await mother();
  const copy = await copyOf(her);
  await her.device.end();
  const hand = await father();
  const before = await hand.record();
  await bring(hand, copy);
  await hand.heading('Another phone’s record');
  // No room from the third entry on.
  await hand.page.evaluate(() => {
    const write = IDBObjectStore.prototype.add;
    let room = 2;
    IDBObjectStore.prototype.add = function (...what) { if (!(room -= 1, room >= 0)) throw new DOMException('full', 'QuotaExceededError'); return write.apply(this, what); };
  });
  await hand.tap('Add the new entries');
  await hand.heading('The entries are added');
  await hand.sees('This phone could not save them. Keep the file.');
  await hand.misses('They are saved.');
  await hand.shot('join-not-kept');
  await hand.tap('Go on');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.deepEqual(await hand.record(), before);
  await hand.device.end();
});

test('a dose on the screen was worked out without the other record: it is asked about, and then the hold decides', async () => {
  const her = await mother();
  const copy = await copyOf(her);
  await her.device.end();
  const hand = await withDemo({ at: '2026-11-25T03:20:00+01:00' });
  await answer(hand);
  await hand.heading('Inject now');
  await hand.page.evaluate(() => { location.hash = '#bring'; });
  await hand.heading('Bring a plan');
  await hand.page.getByLabel(/Bring a plan file/).setInputFiles(file(copy));
  await hand.tap('Add the new entries');
  await hand.tap('Go on');
  await hand.heading('Did you inject it?');
  await hand.sees('4 units were shown at 03:20.');
  await hand.tap('No, nothing was injected');
  await hand.heading('Do not inject now');
  await hand.sees('07:05');
  await hand.device.end();
});

test('the desk of the same device takes the file: the bedside holds at once, and what differs is said', async () => {
  const her = await mother();
  const copy = await copyOf(her);
  const hers = await her.record();
  await her.device.end();
  const hand = await father();
  const shelf = async text => {
    await hand.page.evaluate(() => { location.hash = '#desk'; });
    await hand.heading('Plans on this machine');
    await hand.page.getByLabel('Bring a plan from a file').setInputFiles(file(text));
    await hand.sees('The file is on the shelf.');
  };
  await shelf(copy);
  await hand.misses('Entries that differ');
  await hand.page.evaluate(() => { location.hash = ''; });
  await hand.heading('Look again at');
  await hand.sees('Do not inject a correction before 07:05.');
  assert.equal((await hand.record()).length, hers.length + 1);
  const other = JSON.parse(copy);
  const injection = other.record.events.find(event => event.kind === 'injection');
  Object.assign(injection, { units: 6 });
  delete injection.parts;
  await shelf(JSON.stringify(other));
  await hand.sees('Entries that differ stay as they are here: 1.');
  assert.equal((await hand.record()).length, hers.length + 1);
  assert.equal((await hand.record()).find(event => event.kind === 'injection').units, 4);
  await hand.device.end();
});

for (const size of [{ width: 390 }, { width: 320 }]) test(`the pages of joining hold at ${size.width}, and axe finds nothing`, async () => {
  const her = await mother();
  const copy = (await copyOf(her)).replace('"revision": 2', '"revision": 3');
  await her.device.end();
  const hand = await father({ flowing: true, ...size });
  await bring(hand, copy);
  await hand.heading('Another phone’s record');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  assert.ok(await hand.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  await hand.tap('Add the new entries');
  await hand.heading('The entries are added');
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  await hand.shot(`joined-${size.width}`);
  await hand.tap('Go on');
  await hand.heading('Look again at');
  await hand.device.end();
});
