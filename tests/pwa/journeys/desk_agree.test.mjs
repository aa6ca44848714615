// From an empty shelf to an agreed plan, every field typed as a person would who has the clinic's sheet on paper.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { adult, atDesk, exactly, noFaults, sizes, typeAll } from './desk.mjs';

after(close);
const demo = JSON.parse(readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8'));

for (const size of Object.keys(sizes)) test(`new person to agreed plan, ${size}`, async () => {
  const hand = await atDesk(size);
  await hand.shot(`desk-${size}-empty-shelf`);
  await hand.tap('Write a new plan');
  await hand.heading('The plan’s sheet');
  assert.match(await hand.counts(), /^\d+ or more missing$/);
  await hand.sees('The table comes when nothing is missing');
  // Nothing clinical is filled in: of all that can be typed nothing holds anything but midnight.
  assert.deepEqual(await hand.page.locator('input.in, select.in').evaluateAll(boxes => boxes.map(box => box.value).filter(Boolean)), []);
  await hand.shot(`desk-${size}-empty-sheet`);
  await typeAll(hand, adult);
  await hand.page.locator('.doses').first().waitFor();
  await hand.shot(`desk-${size}-full-sheet`);
  // Every number of the sheet: a keypad of our own on a phone, a plain field on a laptop.
  assert.equal(await hand.page.locator('input[inputmode=decimal]').count() > 30, !hand.small);
  assert.equal(await hand.page.locator('button.in').count() > 30, hand.small);
  if (hand.small) assert.equal(await hand.page.locator('input[inputmode=decimal]').count(), 0);
  await noFaults(hand, `sheet ${size}`);
  // By hand: ketones 0.6 give 10 % of 46.0, 4.6 units, down to 4 by the syringe; the correction at 14.0 by day is (14.0 - 6.0) / 2.2 = 3.6.
  const row = (await hand.cells()).find(cells => cells[0] === '14.0');
  assert.equal(row[3], '4 units KET');

  await hand.tap('Review and agree');
  await hand.heading('Review and agree');
  await hand.sees('Nothing stops it');
  await hand.shot(`desk-${size}-review`);
  // 20 % of 46.0 is 9.2 units; it would take 14.0 far below low, so the share is typed again with a reason.
  await hand.sees('1 numbers are not retyped with a reason');
  // On a phone our own keypad, which shows nothing to copy; on a laptop a plain field.
  const keyboards = await hand.page.locator('input[inputmode=decimal]').count();
  assert.equal(keyboards, hand.small ? 0 : 1);
  assert.equal(await hand.page.locator('button.in').count(), hand.small ? 1 : 0);
  if (hand.small) {
    await hand.page.getByRole('button', { name: /^Type it again/ }).click();
    await hand.heading('Type it again');
    await hand.misses('Now it says');
    await hand.page.getByRole('button', { name: /^9$/ }).click();
    await hand.shot('desk-phone-retype');
    await hand.tap('Leave it as it was');
    await hand.heading('Review and agree');
    assert.match(await hand.page.evaluate(() => document.activeElement.id), /^retype-/);
    assert.match(await hand.page.getByRole('button', { name: /^Type it again/ }).innerText(), /Type/);
  }
  await hand.number('Type it again: Ketones from 3.0, glucose from 14.0', '0.2');
  await hand.page.getByLabel(exactly('Why is it right: Ketones from 3.0, glucose from 14.0')).fill('Given only on the way to hospital.');
  await hand.misses('numbers are not retyped');
  for (const rule of ['All doses within', 'Insulin beyond', 'Insulin on board']) await hand.page.getByRole('checkbox', { name: new RegExp(`^${rule}`) }).click();
  assert.equal(await hand.page.getByRole('button', { name: /^\s*Agree revision/ }).count(), 0, 'nobody has agreed yet');
  await hand.page.getByLabel('Agreed by').fill('Dr I. Solberg-Nakata');
  await hand.page.getByLabel('Role').fill('diabetes consultant');
  await hand.page.getByRole('checkbox', { name: /years old/ }).click();
  await hand.page.getByLabel('Agreed on').fill('20261125');
  await noFaults(hand, `agree ${size}`);
  await hand.shot(`desk-${size}-agree`);
  await hand.tap('Agree revision 1');
  await hand.heading('Runa Okafor-Lind');
  await hand.sees('The plan is agreed');
  await hand.shot(`desk-${size}-agreed`);
  await noFaults(hand, `agreed ${size}`);

  // What is kept is the sheet as typed, digit for digit, and nothing else.
  const [kept] = await hand.revisions();
  const plan = JSON.parse(kept.text);
  const { id, title, person, agreement, ...rest } = plan;
  const { id: _, title: __, person: demoPerson, agreement: ___, revision: ____, ...demoRest } = demo;
  assert.match(id, /^p-[0-9a-f]{12}$/);
  assert.deepEqual({ ...rest, revision: undefined }, { ...demoRest, revision: undefined });
  assert.deepEqual(person, { ...demoPerson, name: 'Runa Okafor-Lind' });
  assert.deepEqual(agreement, { status: 'agreed', by: 'Dr I. Solberg-Nakata', role: 'diabetes consultant', on: '2026-11-25', reviewBy: '2027-05-20', graceDays: 30,
    houseRules: ['rollingShare', 'matchedCarbohydrate', 'extraNotReduced'], retyped: [{ path: '/plan/ketones/rows/3/cells/2', reason: 'Given only on the way to hospital.', finding: 'dose-could-go-low', value: '0.2' }] });
  assert.match(kept.text, /"dailyTotal":46\.0,/);
  // The shelf shows how it stands, and the head its fingerprint in groups.
  await hand.page.getByRole('link', { name: 'Desk' }).click();
  await hand.heading('Plans on this machine');
  await hand.sees('Runa Okafor-Lind Revision 1 Agreed Review by 20 May 2027');
  await hand.shot(`desk-${size}-shelf`);
  await noFaults(hand, `shelf ${size}`);
  await hand.device.end();
});
