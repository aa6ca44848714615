// After an incident: the night is lived through on the phone, and then told on one page, on a phone and on a laptop; printed on
// one sheet, saved as a table and as a file for a clinic.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { close, inject, phone, withDemo } from './phone.mjs';
import { plan, record } from '../../clinic/asking.mjs';
import { bundleFaults } from '../../clinic/bundle_checks.mjs';

after(close);
const plainText = async hand => (await hand.page.locator('main').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');
const saved = async (hand, button) => {
  const [file] = await Promise.all([hand.page.waitForEvent('download'), hand.tap(button)]);
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
};

const live = async options => {
  const hand = await withDemo(options);
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.device.later(1);
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.tap('None of these');
  await hand.device.later(1);
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  await hand.device.later(3);
  await inject(hand, '4');
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.tap('What happened before');
  await hand.tap('The last incident on one page');
  await hand.heading('The last incident');
  return hand;
};

const whole = async hand => {
  // Nothing runs off the side, what is pressed can be hit, and axe finds nothing.
  assert.equal(await hand.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), 0);
  const low = await hand.page.evaluate(() => [...document.querySelectorAll('button, a.press')].filter(node => node.checkVisibility() && node.getBoundingClientRect().height < 43.5).map(node => node.textContent));
  assert.deepEqual(low, []);
  await hand.device.context.clock.resume();   // axe waits for its own timers
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
};

for (const [name, options] of [['phone', { width: 390, height: 844 }], ['laptop', { width: 1280, height: 800, touch: false }]]) {
  test(`the night told on one page: ${name}`, async () => {
    const hand = await live(options);
    const text = await plainText(hand);
    // The demo plan by hand: extra 10 % of 46.0 is 4.6 against (16.0 - 7.0)/2.5 = 3.6; down to 4 units.
    for (const line of ['Time from the first high glucose, 03:05', 'To the ketone test 1 min at 03:06', 'To the injection by needle 5 min at 03:10', 'To the new infusion set 5 min at 03:10', 'Glucose 16.0 mmol/L, finger', 'Test ketones now',
      'Inject by needle 4 units', 'Rule KET', 'Injected: 4 units, rapid-acting']) assert.ok(text.includes(line), `${line} is missing in: ${text}`);
    assert.match(await hand.page.getByRole('img', { name: /Picture from/ }).getAttribute('aria-label'), /Glucose readings: .*1.*The highest glucose is .*16\.0/);
    await whole(hand);
    await hand.shot(`story-${name}`);

    const csv = await saved(hand, 'Save as a table');
    assert.equal(csv.name, 'stopgap-story-2026-11-25.csv');
    assert.match(csv.text, /"Injected: 4\u00a0units, rapid-acting\. Glucose 16\.0 mmol\/L, finger/);
    await hand.sees('The file is made');
    const clinic = await saved(hand, 'Save for the clinic');
    assert.equal(clinic.name, 'stopgap-clinic-2026-11-25.json');
    assert.deepEqual(bundleFaults(JSON.parse(clinic.text)), []);
    assert.match(clinic.text, /"value":16\.0,/);   // as it was measured: the page takes the core's text

    await hand.tap('Back');
    await hand.heading('What happened before');
    await hand.device.end();
  });
}

// A whole night of an invented person, brought as the file another phone saved.
const finger = value => ({ kind: 'glucose', value, unit: 'mmol/L', from: 'finger' });
const blood = value => ({ kind: 'ketones', blood: value });
const wholeNight = [['24T23:30', finger(15.6)], ['24T23:31', blood(0.2)], ['24T23:35', { kind: 'pumpDose', units: 3, purpose: 'correction' }], ['25T00:33', { id: 'slip', ...finger(11) }], ['25T00:34', { kind: 'strike', target: 'slip', reason: 'read upside down' }],
  ['25T00:35', finger(16)], ['25T00:36', blood(0.3)], ['25T00:40', { id: 'shown', kind: 'doseShown', units: 1, insulin: 'rapid' }], ['25T00:44', { kind: 'injection', insulin: 'rapid', with: 'syringe', units: 1, shown: 'shown' }],
  ['25T00:50', { kind: 'changed', what: ['set', 'reservoir'] }], ['25T00:52', { kind: 'automation', state: 'paused' }], ['25T01:45', finger(15)], ['25T01:46', blood(0.9)], ['25T02:50', finger(13.1)], ['25T02:51', blood(0.7)], ['25T02:55', { kind: 'call', to: 'team', answered: true }],
  ['25T04:10', finger(9.4)], ['25T04:11', blood(0.4)], ['25T04:20', { kind: 'carbs', grams: 20 }], ['25T06:30', finger(7)], ['25T06:31', blood(0.2)], ['25T07:10', finger(6.8)], ['25T07:11', blood(0.1)], ['25T07:15', { kind: 'incident', state: 'closed' }]]
  .map(([at, event], number) => ({ id: `n${number}`, at: `2026-11-${at}:00+00:00`, ...event }));
const brought = async options => {
  const device = await phone(options);
  const hand = await device.open();
  const copy = JSON.stringify({ format: 'stopgap.copy', version: 1, plan, record: record(wholeNight) });
  await hand.page.setInputFiles('input[type=file]', { name: 'copy.json', mimeType: 'application/json', buffer: Buffer.from(copy) });
  const typed = hand.page.getByLabel(/Type the day it was agreed/);
  if (!plan.id.startsWith('p-demo-')) await typed.fill(plan.agreement.on.replaceAll('-', ''));
  await hand.tap('Yes, this is my plan');
  await hand.tap('What happened before');
  await hand.tap('The last incident on one page');
  await hand.heading('The last incident');
  return { device, ...hand };
};

test('on paper a whole night is one sheet of A4, black on white, also from the night look', async () => {
  const hand = await brought({ at: '2026-11-25T22:00:00+01:00', width: 390, height: 844 });
  assert.ok(await hand.page.evaluate(() => document.documentElement.classList.contains('night')));
  const pdf = await hand.page.pdf({ preferCSSPageSize: true, printBackground: true });
  assert.equal((pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g) ?? []).length, 1);
  const [, width, height] = pdf.toString('latin1').match(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/);
  assert.deepEqual([Math.round(width), Math.round(height)], [595, 842]);
  await hand.page.emulateMedia({ media: 'print' });
  const look = await hand.page.evaluate(() => ({ ink: getComputedStyle(document.querySelector('.story')).color, foot: document.querySelector('.foot').checkVisibility(), buttons: [...document.querySelectorAll('button')].filter(node => node.checkVisibility()).length,
    smallest: Math.min(...[...document.querySelectorAll('.story *')].filter(node => node.checkVisibility() && node.textContent.trim()).map(node => Number.parseFloat(getComputedStyle(node).fontSize))) }));
  assert.deepEqual({ ...look, smallest: undefined }, { ink: 'rgb(0, 0, 0)', foot: false, buttons: 0, smallest: undefined });
  assert.ok(look.smallest >= 11.99, `${look.smallest} px is under 9 pt`);
  await hand.device.end();
});

test('the bedside starts without the story, and a reload in the middle of it leads back to the record', async () => {
  const hand = await withDemo({});
  assert.equal(await hand.page.evaluate(() => performance.getEntriesByType('resource').filter(entry => entry.name.includes('/story/')).length), 0);
  await hand.device.end();
  const again = await live({});
  await again.page.reload();
  await again.heading('What happened before');
  await again.device.end();
});

test('a record without an incident says so', async () => {
  const hand = await withDemo({});
  await hand.tap('Write something down');
  await hand.tap('Automation is off');
  await hand.tap('Back');
  await hand.tap('What happened before');
  await hand.tap('The last incident on one page');
  await hand.sees('This record holds no incident');
  await hand.device.end();
});
