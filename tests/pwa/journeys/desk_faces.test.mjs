// From the desk to the bedside and back, and what a published table may and may not do.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { answer, close, inject, withDemo } from './phone.mjs';
import { atDesk, exactly } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8').replace('p-demo-adult', 'p-faces');
const bring = async hand => {
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(demo) });
  await hand.sees('The file is on the shelf');
};

test('an agreed plan goes to the bedside of this device, and the face last used opens again', async () => {
  const hand = await atDesk('phone');
  await bring(hand);
  await hand.tap('Maren Oduya');
  await hand.tap('Use this plan on this device');
  await hand.sees('Is this the right person');
  await hand.page.getByLabel(/Type the day it was agreed/).fill('20261012');
  await hand.tap('Yes, this is my plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.page.getByRole('link', { name: /^\s*Desk/ }).click();
  await hand.heading('Plans on this machine');
  await hand.page.goto(hand.device.address);
  await hand.heading('Plans on this machine');
  // The plan in use stays with the device when the desk forgets the person, and the page says so before.
  await hand.tap('Remove the data of');
  await hand.sees('This device uses this plan. That copy and its record stay.');
  await hand.tap('Remove without a file');
  await hand.sees('is removed');
  await hand.page.getByRole('link', { name: 'Bedside' }).click();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.device.end();
});

test('an incident comes before the desk, whatever the address says', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  await hand.page.goto(`${hand.device.address}#desk`);
  await hand.page.reload();
  await hand.page.locator('.step.cur').waitFor();
  await hand.misses('Plans on this machine');
  await hand.device.end();
});

test('a printed cell is in the plan only once it is put in, one by one', async () => {
  const hand = await atDesk('laptop');
  await hand.tap('Write a new plan');
  await hand.choose('Unit of glucose', 'mmol/L');
  await hand.page.getByLabel('A published table as a starting point').selectOption('se-ketones');
  const table = async () => (await hand.shelf())[0].tree.ketones;
  assert.deepEqual((await table()).rows, [{ from: { n: '0.0' }, cells: [null] }], 'laid beside the plan, nothing in it');
  await hand.tap('Put in the ketone row from 1.5');
  await hand.tap('Put in the ketone row from 1.0');
  await hand.tap('Put in the glucose edge 14.0');
  await hand.tap('Put in the glucose edge 10.0');
  assert.deepEqual((await table()).columns.map(edge => edge.n), ['0', '10.0', '14.0']);
  assert.deepEqual((await table()).rows.map(row => [row.from.n, row.cells]), [['0.0', [null, null, null]], ['1.0', [null, null, null]], ['1.5', [null, null, null]]]);
  // The page prints 0.1 units/kg for ketones of 1.0 to 1.4 with glucose of 14 to 22.
  const cell = hand.page.locator('.kcell').filter({ has: hand.page.getByLabel(exactly('Ketones from 1.0, glucose from 14.0')) });
  assert.match((await cell.innerText()).replace(/\s+/g, ' '), /Printed, not in the plan\. se-ketones, READ/);
  await cell.getByRole('button').click();
  assert.deepEqual((await table()).rows.map(row => row.cells), [[null, null, null], [null, null, { perKg: { n: '0.1' } }], [null, null, null]]);
  await hand.sees('In the plan as printed');
  // What is only remembered is off, and a table in the other unit is not converted.
  await hand.page.getByLabel('A published table as a starting point').selectOption('ispad-sick');
  await hand.sees('These rows are from memory only. They are off.');
  assert.equal(await hand.page.locator('.inactive').count(), 0);
  await hand.page.getByLabel('A published table as a starting point').selectOption('chop-path');
  await hand.sees('This table is printed in mg/dL. It is not converted.');
  assert.equal(await hand.page.locator('.inactive').count(), 0);
  await hand.device.end();
});

test('every published table names its source and its mark, and is as wide and as long as its edges', () => {
  const names = [...readFileSync(fileURLToPath(new URL('../../../pwa/desk/published.js', import.meta.url)), 'utf8').match(/tables = \[([^\]]+)\]/)[1].matchAll(/'([\w-]+)'/g)].map(match => match[1]);
  assert.ok(names.length >= 10);
  for (const name of names) {
    const table = JSON.parse(readFileSync(fileURLToPath(new URL(`../../../pwa/desk/tables/${name}.json`, import.meta.url)), 'utf8'));
    assert.equal(table.source, name);
    assert.match(table.mark, /^(READ|MEMORY)$/);
    assert.ok(table.place && /^\d{4}-\d\d-\d\d$/.test(table.checkedOn), name);
    assert.equal(table.cells.length, table.rows.length, name);
    for (const row of table.cells) assert.equal(row.length, table.columns.length, name);
  }
});
