// What is typed is kept with every key, whatever it is; what cannot be agreed is not; what is removed is gone.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close, phone } from './phone.mjs';
import { atDesk, exactly, sizes } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const draft = (id, name, change = text => text) => change(demo.replace('p-demo-adult', id).replace('Maren Oduya', name).replace('"status": "agreed"', '"status": "draft"'));
const bring = async (hand, text) => {
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(text) });
};

for (const size of Object.keys(sizes)) test(`a reload in the middle loses no key, ${size}`, async () => {
  const hand = await atDesk(size);
  await hand.tap('Write a new plan');
  await hand.heading('The plan’s sheet');
  await hand.text('Name', 'Iben Castellane');
  await hand.choose('Unit of glucose', 'mmol/L');
  // A comma and a point are the same key, written as the plan's mark; nothing is read as another number.
  await hand.number('Weight', '71,5');
  assert.equal(await hand.shown('Weight'), '71.5');
  await hand.choose('Decimal mark', '2,5 with a comma');
  assert.equal(await hand.shown('Weight'), '71,5');
  await hand.number('Daily total', '4.2', ',');
  assert.equal(await hand.shown('Daily total'), '4,2');
  // What cannot be read is kept as typed, and the core says what would be.
  await hand.number('Trigger', '140');
  await hand.sees('Possible: 8,0 to 25,0');
  if (hand.small) {
    await hand.page.getByRole('button', { name: /^Middle: / }).click();
    await hand.page.getByRole('button', { name: /^1$/ }).click();
  } else {
    await hand.page.getByLabel(exactly('Middle')).pressSequentially('1');
    await hand.page.getByLabel(exactly('Correction factor, 1')).pressSequentially('2.5.');
  }
  await hand.page.reload();
  await hand.heading('The plan’s sheet');
  assert.equal(await hand.page.getByLabel(exactly('Name')).inputValue(), 'Iben Castellane');
  assert.equal(await hand.shown('Weight'), '71,5');
  assert.equal(await hand.shown('Trigger'), '140');
  assert.equal(await hand.shown('Middle'), '1');
  if (!hand.small) {
    assert.equal(await hand.shown('Correction factor, 1'), '2,5,');
    await hand.sees('Possible: 0,10 to 30,00');
  }
  const [{ tree }] = await hand.shelf();
  assert.equal(tree.person.weightKg.n, '71.5');
  await hand.device.end();
});

test('a plan with a finding that refuses cannot be agreed, whatever else is filled in', async () => {
  const hand = await atDesk('laptop');
  // 46 units a day and a factor of 45: mg/dL in an mmol/L plan.
  await bring(hand, draft('p-slip', 'Osric Teale', text => text.replaceAll('"value": 2.5', '"value": 25').replaceAll('"value": 2.2', '"value": 25')));
  await hand.sees('The file is on the shelf');
  await hand.tap('Osric Teale');
  await hand.heading('The plan’s sheet');
  await hand.sees('Refused');
  await hand.shot('desk-laptop-slip');
  await hand.tap('Review and agree');
  await hand.heading('Review and agree');
  for (const box of await hand.page.locator('.house input').all()) if (!await box.isChecked()) await box.click();
  await hand.page.getByRole('checkbox', { name: /years old/ }).click();
  await hand.page.getByLabel('Agreed on').fill('2026-11-25');
  await hand.sees('things stop it');
  assert.equal(await hand.page.getByRole('button', { name: /^\s*Agree revision/ }).count(), 0);
  assert.deepEqual(await hand.revisions(), []);
  // From the finding to its field, and back to the mended plan.
  await hand.page.locator('.findings .again').first().click();
  await hand.heading('The plan’s sheet');
  assert.match(await hand.page.evaluate(() => document.activeElement.id), /^f-day-(correctionFactor|carbohydrateRatio)/);
  await hand.device.end();
});

test('one person is removed whole, a file is offered first, and nobody else is touched', async () => {
  const hand = await atDesk('phone');
  const event = (id, at) => `{"id":"${id}","at":"${at}","kind":"incident","state":"opened"}`;
  const copy = (id, name, day) => `{"format":"stopgap.copy","version":1,"plan":${demo.replace('p-demo-adult', id).replace('Maren Oduya', name)},"record":{"format":"stopgap.record","version":1,"planId":"${id}","events":[${event('same-id', `${day}T03:00:00+01:00`)}]}}`;
  // Two people whose records hold the same id: each keeps their own.
  await bring(hand, copy('p-one', 'Aino Berge', '2026-11-01'));
  await hand.sees('Aino Berge');
  await bring(hand, copy('p-two', 'Bao Lindqvist', '2026-11-09'));
  await hand.sees('Last incident 1 November 2026');
  await hand.sees('Last incident 9 November 2026');
  await hand.shot('desk-phone-two-people');
  await hand.page.getByLabel('Find a name').fill('bao');
  await hand.misses('Aino Berge');
  await hand.sees('Bao Lindqvist');
  await hand.page.getByLabel('Find a name').fill('');
  await hand.tap('Remove the data of Aino Berge');
  await hand.heading('Remove the data of Aino Berge?');
  await hand.shot('desk-phone-remove');
  const download = hand.page.waitForEvent('download');
  await hand.tap('Save a file first');
  const saved = JSON.parse(readFileSync(await (await download).path(), 'utf8'));
  assert.equal(saved.plan.person.name, 'Aino Berge');
  assert.equal(saved.record.events.length, 1);
  await hand.tap('Remove everything');
  await hand.sees('The data of Aino Berge is removed');
  await hand.page.reload();
  await hand.heading('Plans on this machine');
  await hand.misses('Aino Berge');
  await hand.sees('Last incident 9 November 2026');
  assert.deepEqual((await hand.record()).map(entry => entry.at), ['2026-11-09T03:00:00+01:00']);
  assert.deepEqual((await hand.revisions()).map(entry => entry.plan), ['p-two']);
  await hand.device.end();
});

test('a file that is no plan changes nothing and says why', async () => {
  const hand = await atDesk('laptop');
  await bring(hand, 'not a plan');
  await hand.sees('The file cannot be read. It may be damaged.');
  await bring(hand, demo.replace('"lockHours": 4', '"lockHours": 40'));
  await hand.sees('Possible: 1.00 to 8.00');
  // A draft of any shape is shown as what it is, and what is no plan is left behind.
  await bring(hand, '{"format":"stopgap.plan","version":1,"id":"p-odd","agreement":{"status":"draft"},"person":{"name":"Odd Shape"},"day":7,"ketones":{"rows":[3,{"cells":"x","urine":4}],"columns":"y"},"contacts":[null,1]}');
  await hand.tap('Odd Shape');
  await hand.heading('The plan’s sheet');
  assert.match(await hand.counts(), /missing/);
  await hand.device.end();
});

// The factor of mg/dL in an mmol/L plan, agreed somewhere else. On the shelf the plan in use stays; the other lies beside it.
test('an agreed plan that is refused is kept beside the one in use, as it came', async () => {
  const hand = await atDesk('laptop');
  const own = demo.replace('p-demo-adult', 'p-own').replace('Maren Oduya', 'Edda Varro');
  const slip = own.replace('"revision": 2', '"revision": 3').replaceAll('"value": 2.5', '"value": 25').replaceAll('"value": 2.2', '"value": 25');
  // Nobody is on the shelf yet: there is nothing it could lie beside.
  await bring(hand, slip);
  await hand.sees('The plan in the file is not taken in. Keep the file.');
  await hand.sees('looks like a number in the other glucose unit');
  assert.deepEqual(await hand.shelf(), []);
  await bring(hand, own);
  await hand.sees('The file is on the shelf');
  await bring(hand, slip);
  await hand.sees('It is kept as it came, and not used.');
  await hand.sees('Revision 3 is kept and not used.');
  const [{ held }] = await hand.shelf();
  assert.deepEqual(held, [slip]);
  assert.deepEqual((await hand.revisions()).map(({ text }) => text), [own]);
  await hand.device.end();
});

test('a number that nobody confirmed is shown before the plan is taken in', async () => {
  const hand = await atDesk('laptop');
  const own = demo.replace('p-demo-adult', 'p-own').replace('Maren Oduya', 'Edda Varro').replace(', "finding": "dose-could-go-low", "value": "0.2"', '');
  await bring(hand, own);
  await hand.sees('Nobody confirmed these numbers.');
  assert.deepEqual(await hand.shelf(), []);
  await hand.tap('Do not take it in');
  await hand.misses('Nobody confirmed these numbers.');
  await bring(hand, own);
  await hand.tap('Take it in all the same');
  await hand.sees('The file is on the shelf');
  assert.deepEqual((await hand.revisions()).map(({ text }) => text), [own]);
  await hand.device.end();
});

test('what an earlier release kept is still there', async () => {
  const text = demo;
  const device = await phone({ at: '2026-11-25T10:00:00+01:00', prepare: undefined });
  const page = await device.context.newPage();
  await page.goto(`${device.address}danger.html`);
  await page.evaluate(plan => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap', 1);
    opening.onupgradeneeded = () => {
      const db = opening.result;
      db.createObjectStore('plans', { autoIncrement: true }).add(plan);
      const events = db.createObjectStore('events', { autoIncrement: true });
      events.createIndex('id', 'id', { unique: true });
      events.add({ id: 'n1', plan: 'p-demo-adult', text: '{"id":"n1","at":"2026-11-20T10:00:00+01:00","kind":"note","text":"kept"}' });
      db.createObjectStore('desk').add('day', 'night');
    };
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => { opening.result.close(); resolve(); };
  }), text);
  await page.close();
  const hand = await device.open();
  await hand.heading('Maren Oduya');
  await hand.sees('1');
  assert.deepEqual((await hand.record()).map(entry => entry.text), ['kept']);
  await hand.tap('What happened before');
  await hand.sees('kept');
  await device.end();
});
