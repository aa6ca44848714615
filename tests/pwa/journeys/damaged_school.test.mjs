// A student's record that is damaged gives no dose at a school, and hides no other student; a damaged copy of orders is not used.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { damage, kept, setKept } from './damage.mjs';
import { close, seen } from './phone.mjs';
import { atSchool, withStudents } from './school.mjs';

after(close);

const amina = ['Amina Lund', '20160902'];
test('whatever is damaged of a student’s log: no dose, the entries stay, the other student opens', async () => {
  const own = await withStudents();
  await own.find();
  await own.tap('Start');
  await own.tap('None of these');
  await own.keys('270');
  await own.tap('Finger: 270 mg/dL');
  await own.heading('Blood ketones now');
  const storage = await own.device.context.storageState({ indexedDB: true });
  const { host } = own.device;
  await own.device.context.close();
  for (const way of ['deleted', 'cut', 'changed', 'duplicated', 'otherKey', 'noRow', 'emptied']) {
    const again = await atSchool({ storage, server: host });
    await damage(again.page, 'studentEvents', way, 'last');
    const left = await kept(again.page, 'studentEvents');
    await again.page.reload();
    await again.sees('The record of one student is damaged.');
    await again.find();
    await again.heading('Part of the record is damaged');
    await again.tap('Answer the questions');
    await again.tap('None of these');
    await again.keys('270');
    await again.tap('Finger: 270 mg/dL');
    await again.keys('0.8');
    await again.tap('Yes, ketones are 0.8');
    await again.heading('Part of the record is damaged');
    await again.misses('Inject now');
    const after_ = new Set((await kept(again.page, 'studentEvents')).map(([, row]) => JSON.stringify(row?.text ?? row)));
    for (const [, row] of left) assert.ok(after_.has(JSON.stringify(row?.text ?? row)), `${way}: ${JSON.stringify(row)} is lost`);
    // Nobody else is in doubt.
    await again.touch(again.page.locator('.acting button'));
    await again.find(...amina);
    await again.page.getByRole('button', { name: seen('Start') }).first().waitFor();
    await again.misses('damaged');
    await again.device.context.close();
  }
});

test('orders that are damaged are not used, and the other student opens; answers that cannot be read are dropped', async () => {
  const own = await withStudents();
  const [[key, text]] = (await kept(own.page, 'students')).filter(([, copy]) => copy.includes('Tilo'));
  for (const draft of ['{"cut', '{"draft":{"run":{}}}', '7']) {
    await setKept(own.page, key, draft, 'studentDrafts');
    await own.page.reload();
    await own.find();
    await own.page.getByRole('button', { name: seen('Start') }).first().waitFor();
    await own.touch(own.page.locator('.acting button'));
  }
  for (const damaged of [text.slice(0, 200), text.replace('\\"dailyTotal\\":', '\\"dailyTotal\\":1'), '7']) {
    assert.notEqual(damaged, text);
    await setKept(own.page, key, damaged, 'students');
    await own.page.reload();
    await own.sees('The orders of one student cannot be read.');
    await own.type('Tilo Brandvik', '20170314');
    await own.sees('No student');
    await own.find(...amina);
    await own.touch(own.page.locator('.acting button'));
  }
  await own.device.end();
});

test('a sheet of the shelf that is damaged hides no other, and stays where it lies', async () => {
  const own = await atSchool();
  await setKept(own.page, 'p-cut', '{"tree":{"id', 'shelf');
  // From another page: a change of the address alone lets the page load itself anew, which a reload would cut off.
  await own.page.goto('about:blank');
  await own.page.goto(`${own.device.address}#desk`);
  await own.sees('The sheet of one person cannot be read. It is still kept.');
  assert.deepEqual(await kept(own.page, 'shelf'), [['p-cut', '{"tree":{"id']]);
  await own.device.end();
});
