// An educator opens the story of somebody's last incident from the shelf: that person's and nobody else's, printed as one sheet.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { axeFaults, strict } from './axe.mjs';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { atDesk, noFaults, sizes } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const finger = value => ({ kind: 'glucose', value, unit: 'mmol/L', from: 'finger' });
// Nobody opened this incident by a tap: the needle and the new set are the incident.
const night = [['01:10', finger(16.4)], ['01:12', { kind: 'ketones', blood: 0.8 }], ['01:20', { kind: 'injection', insulin: 'rapid', with: 'syringe', units: 4 }], ['01:30', { kind: 'changed', what: ['set'] }], ['03:10', finger(9.1)]];
const copy = (id, name, day, events, plan = demo.replace('p-demo-adult', id).replace('Maren Oduya', name)) => `{"format":"stopgap.copy","version":1,"plan":${plan},"record":${JSON.stringify({ format: 'stopgap.record', version: 1, planId: id,
  events: events.map(([clock, event], at) => ({ id: `n${at}`, at: `${day}T${clock}:00+01:00`, ...event })) })}}`;
const bring = async (hand, text) => {
  await hand.page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'copy.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await hand.sees('The file is on the shelf');
};
const told = async hand => (await hand.page.locator('.story').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

for (const size of Object.keys(sizes)) test(`the last incident of the person chosen, ${size}`, async () => {
  const hand = await atDesk(size, size === 'phone' ? { at: '2026-11-25T22:00:00+01:00' } : {});
  await bring(hand, copy('p-one', 'Aino Berge', '2026-11-03', night));
  await bring(hand, copy('p-two', 'Bao Lindqvist', '2026-11-09', [['05:00', finger(21.2)], ['05:05', { kind: 'incident', state: 'opened' }]]));
  await bring(hand, copy('p-three', 'Cleo Amsel', '2026-11-11', [['05:00', { kind: 'note', text: 'nothing happened' }]]));
  await hand.sees('Last incident 3 November 2026');
  await hand.sees('No incident recorded here');
  assert.equal(await hand.page.getByRole('button', { name: /^\s*The last incident of/ }).count(), 2);
  assert.equal(await hand.page.evaluate(() => performance.getEntriesByType('resource').filter(entry => entry.name.includes('/story/')).length), 0, 'fetched only when one is told');
  await hand.tap('The last incident of Aino Berge');
  await hand.heading('The last incident');
  const text = await told(hand);
  // By hand: read at 01:10, ketones at 01:12, the needle at 01:20, the new set at 01:30.
  for (const line of ['It begins on 3 November 2026 at 01:10', 'To the ketone test 2 min at 01:12', 'To the injection by needle 10 min at 01:20', 'To the new infusion set 20 min at 01:30', 'Injected: 4 units, rapid-acting']) assert.ok(text.includes(line), `${line} is missing in: ${text}`);
  await hand.sees('Aino Berge');
  await hand.misses('Bao');
  await hand.misses('21.2');
  await hand.shot(`desk-${size}-story`);
  await noFaults(hand, `story ${size}`);
  const coming = hand.page.waitForEvent('download');
  await hand.tap('Save as a table');
  assert.match(readFileSync(await (await coming).path(), 'utf8'), /"Injected: 4\u00a0units, rapid-acting"/);
  await hand.sees('The file is made');

  // On paper: one sheet of A4 with the name on it, and nothing of the desk around it.
  const pdf = await hand.page.pdf({ preferCSSPageSize: true, printBackground: true });
  assert.equal((pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g) ?? []).length, 1);
  assert.match(pdf.toString('latin1'), /\/MediaBox \[0 0 59[45][\d.]* 84[12][\d.]*\]/);
  await hand.page.emulateMedia({ media: 'print' });
  const paper = await hand.page.evaluate(() => ({ ink: getComputedStyle(document.querySelector('.story')).color, around: [...document.querySelectorAll('.desk-head, .desk-foot, button')].filter(node => node.checkVisibility()).length,
    whose: document.querySelector('.story-whose').checkVisibility(), heading: getComputedStyle(document.querySelector('.story h2')).fontSize }));
  assert.deepEqual(paper, { ink: 'rgb(0, 0, 0)', around: 0, whose: true, heading: '12.6667px' });   // 9.5 pt
  await hand.page.emulateMedia({ media: 'screen' });

  await hand.device.context.clock.resume();   // axe waits for its own timers
  assert.deepEqual(await axeFaults(hand.page, strict), []);

  // The address alone opens the same page, and the way back is the shelf; what the shelf prints is the shelf.
  await hand.page.reload();
  await hand.heading('The last incident');
  await hand.tap('Back to the plans');
  await hand.heading('Plans on this machine');
  assert.equal(await hand.page.evaluate(() => document.documentElement.dataset.screen), 'desk');
  await hand.tap('Bao Lindqvist');
  await hand.tap('The last incident on one page');
  await hand.heading('The last incident');
  await hand.misses('Aino Berge');
  await hand.sees('21.2');
  await hand.device.end();
});

test('a plan that cannot be read whole yet tells no story, and says why', async () => {
  const hand = await atDesk('laptop');
  const draft = demo.replace('p-demo-adult', 'p-draft').replace('"status": "agreed"', '"status": "draft"');
  await bring(hand, copy('p-draft', '', '2026-11-03', [['05:00', { kind: 'incident', state: 'opened' }]], draft));
  await hand.tap('Maren Oduya');
  await hand.heading('The plan’s sheet');
  await hand.text('Emergency number', '');
  await hand.number('Weight', '7850');
  await hand.page.getByRole('link', { name: 'Desk' }).click();
  await hand.sees('Last incident 3 November 2026');
  await hand.tap('The last incident of Maren Oduya');
  await hand.sees('Finish this draft first');
  await hand.tap('Back to the plans');
  await hand.heading('Plans on this machine');
  await hand.device.end();
});
