// A plan is revised: every changed value is shown, old and new, before the new revision can be agreed; the old one is superseded.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { atDesk, exactly, noFaults, sizes } from './desk.mjs';

after(close);
const demo = fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url));
const own = text => text.replace('p-demo-adult', 'p-0a1b2c').replace('Demo plan: invented person, not for use', 'Everyday');
export const bring = async (hand, text, name = 'plan.json') => {
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
};

for (const size of Object.keys(sizes)) test(`revise and compare, ${size}`, async () => {
  const hand = await atDesk(size);
  await bring(hand, own(readFileSync(demo, 'utf8')));
  await hand.sees('The file is on the shelf');
  await hand.tap('Maren Oduya');
  await hand.tap('Write the next revision');
  await hand.heading('The plan’s sheet');
  const before = await hand.cells();
  await hand.number('Daily total', '50.0');
  // 10 % of 50.0 is 5 units where 10 % of 46.0 gave 4; the old dose is struck through beside it.
  const at14 = cells => cells.find(row => row[0] === '14.0');
  assert.equal(at14(before)[3], '4 units KET');
  // 5 units would take 14.0 down to 14.0 - 5 x 2.2 = 3.0, which is low: the team is called as well.
  assert.equal(at14(await hand.cells())[3], '4 units 5 units and call KET');
  await hand.shot(`desk-${size}-changed`);
  await hand.number('Correction factor, 2', '2,4');
  assert.equal(await hand.shown('Correction factor, 2'), '2.4');
  await hand.tap('Review and agree');
  await hand.sees('Changes since revision 2');
  await hand.sees('Daily total 46 50');
  await hand.sees('Correction factor from 07:00 2.2 2.4');
  await hand.sees('Revision 2 3');
  await hand.shot(`desk-${size}-changes`);
  for (const label of await hand.page.locator('label.row .fname').allInnerTexts()) {
    const field = label.replace(/[\u2066-\u2069]/g, '');
    const again = { '0.6': '0.1', '1.5': '0,10', '3.0': '0.20' }[/Ketones from (\S+),/.exec(field)[1]];
    if (/^Type/.test(field)) await hand.number(field, again);
    else await hand.page.getByLabel(exactly(field)).fill('Ketones need this much; sugar lies ready.');
  }
  for (const box of await hand.page.locator('.house input').all()) await box.click();
  await hand.page.getByRole('checkbox', { name: /years old/ }).click();
  await hand.page.getByLabel('Agreed on').fill('2026-11-25');
  await hand.sees('The changes are not looked at');
  assert.equal(await hand.page.getByRole('button', { name: /^\s*Agree revision/ }).count(), 0);
  await hand.tick('I have looked at every change');
  // A value changed after looking is a change nobody has looked at.
  await hand.tap('Back to the sheet');
  await hand.number('Days of grace', '28');
  await hand.tap('Review and agree');
  await hand.sees('The changes are not looked at');
  await hand.tick('I have looked at every change');
  await noFaults(hand, `changes ${size}`);
  await hand.misses('Still open');
  await hand.tap('Agree revision 3');
  await hand.heading('Maren Oduya');
  const kept = (await hand.revisions()).map(entry => JSON.parse(entry.text));
  assert.deepEqual(kept.map(plan => [plan.revision, plan.agreement.status]), [[2, 'agreed'], [2, 'superseded'], [3, 'agreed']]);
  // Withdrawing asks once more.
  await hand.tap('Withdraw this plan');
  await hand.tap('Withdraw it');
  await hand.sees('The plan is withdrawn');
  assert.equal((await hand.revisions()).at(-1).text.includes('"status":"withdrawn"'), true);
  await hand.device.end();
});

test('a changed engine asks for the table to be looked at again', async () => {
  const hand = await atDesk('laptop');
  await bring(hand, own(readFileSync(demo, 'utf8')));
  await hand.sees('The file is on the shelf');
  // As if an earlier release had been in charge when it was agreed.
  await hand.page.evaluate(() => new Promise(done => {
    const opening = indexedDB.open('stopgap');
    opening.onsuccess = () => { const store = opening.result.transaction('revisions', 'readwrite').objectStore('revisions'); const cursor = store.openCursor();
      cursor.onsuccess = () => { cursor.result.update({ ...cursor.result.value, engine: '0.0.9' }).onsuccess = () => { opening.result.close(); done(); }; }; };
  }));
  await hand.page.reload();
  await hand.sees('Look at the table again');
  await hand.tap('Maren Oduya');
  await hand.sees('The rules changed from 0.0.9 to');
  await hand.tap('I have looked at the table');
  await hand.misses('The rules changed');
  await hand.page.reload();
  await hand.heading('Maren Oduya');
  await hand.misses('The rules changed');
  await hand.device.end();
});
