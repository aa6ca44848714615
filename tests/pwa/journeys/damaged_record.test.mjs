// A record that is damaged on the phone gives no dose: the page says so, shows what can still be read, and leads out by name.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { damage, kept, setKept } from './damage.mjs';
import { betweenLooks, close, phone } from './phone.mjs';

after(close);

// Half an hour after 4 units by needle: the hold runs until 07:05.
let storage, host;
const at = '2026-11-25T03:40:00+01:00';
before(async () => {
  const hand = await betweenLooks();
  storage = await hand.device.context.storageState({ indexedDB: true });
  host = hand.device.host;
  await hand.device.context.close();
});
const again = async (change, { prepare, ...options } = {}) => {
  const device = await phone({ at, storage, server: host, ...options });
  const hand = await device.open();
  await hand.page.locator('h1').first().waitFor();
  const rows = await kept(hand.page, 'events');
  await change(hand.page);
  if (prepare) await hand.page.addInitScript(prepare);
  await hand.page.goto(device.address);
  return { ...hand, device, rows, end: async () => { await device.context.close(); assert.deepEqual(device.faults, []); } };
};
const events = hand => kept(hand.page, 'events');
const seal = 'seal/own/p-demo-adult';

// The questions of a high with ketones, as far as they go: no page on the way may show a dose. Where a dose that was shown lost its
// injection, the worst answer is given.
const asked = async hand => {
  const shown = async () => (await events(hand)).filter(([, row]) => typeof row?.text === 'string' && row.text.includes('"doseShown"')).length;
  const before = await shown();
  await hand.tap('Answer the questions');
  await hand.page.waitForFunction(() => ['signs', 'didYouInject'].includes(document.documentElement.dataset.screen));
  if (await hand.page.evaluate(() => document.documentElement.dataset.screen) === 'didYouInject') await hand.tap('No, nothing was injected');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.heading('Part of the record is damaged');
  await hand.misses('Inject now');
  assert.equal(await shown(), before, 'a dose was shown');
};

for (const way of ['deleted', 'cut', 'changed', 'swapped', 'swappedTexts', 'duplicated', 'otherVersion', 'otherKey', 'noRow', 'noText', 'emptied']) {
  test(`an injection that was ${way}: no dose, what can be read is shown, nothing is lost`, async () => {
    const hand = await again(page => damage(page, 'events', way));
    await hand.heading('Part of the record is damaged');
    await hand.sees('Do not inject. Nobody knows here what is still working.');
    const left = await events(hand);
    await asked(hand);
    // What lay there lies there still, text for text; what was answered since is added.
    const texts = new Set((await events(hand)).map(([, value]) => JSON.stringify(value?.text ?? value)));
    for (const [, value] of left) assert.ok(texts.has(JSON.stringify(value?.text ?? value)), `${JSON.stringify(value)} is lost`);
    await hand.page.reload();
    await hand.heading('Part of the record is damaged');
    await hand.end();
  });
}

for (const [way, change] of Object.entries({
  'of a look that was cut': page => damage(page, 'events', 'cut', 'last'), 'of the first entry, gone': page => damage(page, 'events', 'deleted', 'first'),
  'of the last entry, gone': page => damage(page, 'events', 'deleted', 'last'), 'whose seal is gone': page => setKept(page, seal, null),
  'whose seal is cut': page => setKept(page, seal, '{"count":7,'), 'whose seal is of fewer entries': page => setKept(page, seal, '{"count":1,"seal":"0"}'),
})) {
  test(`a record ${way} is in doubt`, async () => {
    const hand = await again(change);
    await hand.heading('Part of the record is damaged');
    await asked(hand);
    await hand.end();
  });
}

test('caches that cannot be read are made again, and the record stays whole', async () => {
  for (const key of ['fingerprint', 'copies', 'draft', 'aside', 'received', 'night', 'face', 'seal-plan']) {
    const hand = await again(page => setKept(page, key, key === 'seal-plan' || key === 'face' || key === 'night' ? null : '{"cut'));
    await hand.heading('Look again at');
    await hand.sees('07:05');
    assert.deepEqual(await events(hand), hand.rows, key);
    await hand.end();
  }
});

test('the way out by name: what was injected is said, doses count it, and the raw copy stays', async () => {
  for (const size of [{ width: 390, height: 664 }, { width: 320, height: 568 }]) {
    const hand = await again(page => damage(page, 'events', 'cut'), size);
    await hand.heading('Part of the record is damaged');
    const [download] = await Promise.all([hand.page.waitForEvent('download'), hand.tap('Save a raw copy')]);
    assert.match(readFileSync(await download.path(), 'utf8'), /\\"kind\\":\\"inje/);
    await hand.tap('Say what was injected');
    // The dose that was shown and lost its injection comes first; then any other.
    await hand.heading('Did you inject it?');
    await hand.tap('Yes, 4 units');
    await hand.tap('At 03:05');
    await hand.heading('Which injections in the last 8.5 hours?');
    await hand.sees('Long-acting insulin: in the last 24 hours.');
    await hand.sees('Damaged. Say these again if they are true.');
    await hand.tap('An injection by needle');
    await hand.keys('2');
    await hand.tap('Yes, 2 units');
    await hand.keys('0010');
    await hand.tap('Yes, at 00:10');
    await hand.tap('Yes');
    await hand.keys('9.0');
    await hand.page.locator('.end button').first().click();
    await hand.heading('Which injections in the last 8.5 hours?');
    await hand.page.reload();
    await hand.heading('Which injections in the last 8.5 hours?');
    await hand.sees('00:10');
    await hand.tap('That is all of them');
    await hand.heading('Look again at');
    await hand.sees('07:05');
    assert.equal((await kept(hand.page, 'desk')).filter(([key]) => String(key).startsWith('raw/own/p-demo-adult/')).length, 1);
    await hand.end();
  }
});

test('nothing was injected: it counts only after a call that was answered', async () => {
  const hand = await again(page => damage(page, 'events', 'deleted', 'last'));
  await hand.tap('Say what was injected');
  await hand.tap('Nothing was injected');
  await hand.heading('First call your team');
  await hand.tap('No answer');
  await hand.heading('First call your team');
  await hand.page.reload();
  await hand.tap('Back');
  await hand.tap('Nothing was injected');
  await hand.heading('First call your team');
  await hand.tap('Answered');
  await hand.heading('Which injections');
  await hand.tap('Nothing was injected');
  await hand.heading('Look again at');
  // The needle that can still be read goes on counting.
  await hand.sees('07:05');
  const raw = (await kept(hand.page, 'desk')).filter(([key]) => String(key).startsWith('raw/own/p-demo-adult/'));
  assert.equal(raw.length, 1);
  await hand.page.reload();
  await hand.heading('Look again at');
  await hand.end();
});

test('an old entry that is damaged is told and closes nothing; at the end of the store it always counts', async () => {
  const later = { at: '2026-11-27T12:00:00+01:00' };
  const hand = await again(page => damage(page, 'events', 'cut'), later);
  await hand.heading('Maren Oduya');
  await hand.sees('An old entry is damaged. It changes no dose now.');
  await hand.end();
  const last = await again(page => damage(page, 'events', 'deleted', 'last'), later);
  await last.heading('Part of the record is damaged');
  await last.end();
});

test('a record of the release before is sealed at the first start, and stays as it was written', async () => {
  const hand = await again(async page => {
    await setKept(page, seal, null);
    await page.evaluate(() => new Promise(resolve => {
      indexedDB.open('stopgap').onsuccess = ({ target: { result: db } }) => {
        const turn = db.transaction('events', 'readwrite');
        turn.oncomplete = () => { db.close(); resolve(); };
        turn.objectStore('events').openCursor().onsuccess = ({ target: { result: row } }) => { if (!row) return; const { plan, id, text } = row.value; row.update({ plan, id, text }); row.continue(); };
      };
    }));
  });
  await hand.heading('Look again at');
  assert.deepEqual(await events(hand), hand.rows);
  assert.ok((await kept(hand.page, 'desk')).some(([key]) => key === seal));
  await damage(hand.page, 'events', 'deleted');
  await hand.page.reload();
  await hand.heading('Part of the record is damaged');
  await hand.end();
});

test('a plan that was changed by one figure gives no dose until it is taken in again', async () => {
  const hand = await again(async page => {
    const [[key, text]] = await kept(page, 'plans');
    assert.match(text, /"dailyTotal": ?46.0/);
    await setKept(page, key, text.replace(/"dailyTotal": ?46.0/, '"dailyTotal": 64.0'), 'plans');
  });
  await hand.heading('The plan here is damaged');
  await hand.misses('Say what was injected');
  await hand.tap('Answer the questions');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.heading('The plan here is damaged');
  await hand.misses('Inject now');
  await hand.end();
});

test('storage that does not open is no new phone', async () => {
  const hand = await again(() => {}, { prepare: () => {
    indexedDB.open = () => { throw new DOMException('broken', 'UnknownError'); };
  } });
  await hand.heading('The record cannot be opened');
  await hand.sees('Doses may have been given. Do not inject.');
  await hand.sees('Whom to call');
  await hand.sees('Try again');
  await hand.misses('Demo plan');
  await hand.end();
});

test('a plan that is gone is no new phone', async () => {
  for (const way of ['deleted', 'cut', 'emptied']) {
    const hand = await again(page => damage(page, 'plans', way, 'last'));
    await hand.heading('The record cannot be opened');
    await hand.misses('Demo plan');
    assert.deepEqual(await events(hand), hand.rows);
    await hand.end();
  }
});

test('answers of another shape are dropped, entries never', async () => {
  for (const draft of ['7', '{"draft":7}', '{"draft":{"run":{}}}', '{"draft":{"signs":{"what":"x"},"run":{"answer":"{}","marks":null}}}', '{"panel":{"name":"entryUnits"}}', '{"draft":{"passed":null,"signs":{"at":5}}}', '{"ticks":5,"pad":5}']) {
    const hand = await again(page => setKept(page, 'draft', draft));
    await hand.heading('Look again at');
    assert.deepEqual(await events(hand), hand.rows, draft);
    await hand.end();
  }
});
