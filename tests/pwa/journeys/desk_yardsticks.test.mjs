// Rules of thumb beside the sheet: in sight in a column on a laptop, in a fold on a phone, redrawn with each key, and never in a field.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { atDesk, noFaults, sizes } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8').replace('p-demo-adult', 'p-thumb').replace('"status": "agreed"', '"status": "draft"').replace('"dailyTotal": 46.0', '"dailyTotal": 40.0');
const beside = async hand => (await hand.page.locator('.yards').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

for (const size of Object.keys(sizes)) test(`rules of thumb beside the sheet, ${size}`, async () => {
  const hand = await atDesk(size);
  await hand.tap('Write a new plan');
  await hand.heading('The plan’s sheet');
  if (hand.small) await hand.page.locator('.yards summary').click();
  assert.match(await beside(hand), /They set no number\. They come when nothing is missing\./);
  await hand.page.getByRole('link', { name: 'Desk' }).click();
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(demo) });
  await hand.tap('Maren Oduya');
  await hand.heading('The plan’s sheet');
  const before = (await hand.shelf()).find(entry => entry.tree?.id === 'p-thumb').tree;
  // The fold stays as it was left.
  // By hand: 100 / 40.0 is 2.5 mmol/L, 40 % either way 1.5 and 3.5; 500 / 40.0 is 12.5 g.
  const said = await beside(hand);
  for (const line of ['By the rule: 2.5 mmol/L', 'Not asked about: 1.5 mmol/L to 3.5 mmol/L', 'Correction factor from 07:00: 2.2 mmol/L', 'RULE, ratio-rules', 'By the rule: 12.5 g per unit', 'Not asked about: 7.5 to 17.5 g per unit', 'Carbohydrate ratio from 11:00: 11 g per unit', 'Not asked about: 25 to 65 %', 'MEMORY'])
    assert.ok(said.includes(line), `${line} is missing in: ${said}`);
  assert.equal(await hand.page.locator('.yards').locator('button, input, select, a').count(), 0, 'nothing of it can be put into the plan');
  assert.deepEqual((await hand.shelf()).find(entry => entry.tree?.id === 'p-thumb').tree, before);
  await noFaults(hand, `yardsticks ${size}`);
  // Beside what is typed, not after it: 100 / 50 is 2 mmol/L.
  if (!hand.small) {
    await hand.page.locator('#f-dailyTotal').scrollIntoViewIfNeeded();
    assert.ok(await hand.page.locator('.yards').evaluate(node => { const box = node.getBoundingClientRect(); return box.top >= 0 && box.top < 400 && box.right <= innerWidth; }), 'in sight beside the field');
  }
  await hand.number('Daily total', '50');
  await hand.sees('By the rule: 2 mmol/L');
  await hand.number('Daily total', '50.');
  await hand.misses('By the rule');
  assert.equal(await hand.page.locator('.doses').first().isVisible(), false, 'no old table beside a new number');
  await hand.number('Daily total', '50.0');
  await hand.sees('By the rule: 2 mmol/L');
  assert.equal(await hand.page.locator('.doses').first().isVisible(), true);
  await hand.number('Correction factor, 2', '3.1');
  await hand.page.locator('.yards .off').filter({ hasText: '3.1' }).waitFor();
  await hand.device.end();
});
