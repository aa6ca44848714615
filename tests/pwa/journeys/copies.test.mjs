// The phone is not the copy that lasts: the home page asks for a card and a file until both were made of this very plan, and the
// browser is asked to keep what is written once there is something to keep.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, phone, withDemo } from './phone.mjs';
import { axeFaults, overTheFoot } from './axe.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const noCard = 'No card of this plan was printed here yet.', noFile = 'No file of this plan was saved here yet.';

const print = async (hand, kind, how) => {
  const paper = await hand.device.open('paper.html');
  await paper.page.waitForFunction(() => document.getElementById('paper').dataset.laid?.startsWith('card'));
  if (kind) {
    await paper.tap(kind);
    await paper.page.waitForFunction(() => !document.getElementById('paper').dataset.laid.startsWith('card'));
  }
  if (how === 'menu') await paper.page.evaluate(() => { dispatchEvent(new Event('afterprint')); });
  else { await paper.page.evaluate(() => { window.print = () => {}; }); await paper.tap('Print'); }
  await paper.page.evaluate(() => new Promise(done => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); }));
  await paper.page.waitForTimeout(300);
  await paper.page.close();
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
};

test('both copies are asked for until they are made, each by itself, and again with the next revision', async () => {
  const hand = await withDemo();
  await hand.sees('Copies that last');
  await hand.sees('A phone can break or get lost. Make these copies now.');
  await hand.sees(noCard);
  await hand.sees(noFile);
  await hand.shot('copies-missing');

  // A sheet for the fridge is not the card.
  await print(hand, 'The whole plan for the fridge');
  await hand.sees(noCard);
  await print(hand);
  await hand.misses(noCard);
  await hand.sees(noFile);
  await hand.sees('And sheets for the fridge, a journey, a school');

  const coming = hand.page.waitForEvent('download');
  await hand.tap('Save a copy');
  await coming;
  await hand.page.getByText('Copies that last').waitFor({ state: 'detached' });
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.misses('Copies that last');
  await hand.shot('copies-made');

  // The next revision is another plan: nothing was made of it yet.
  await hand.tap('More');
  await hand.tap('Another plan');
  await hand.page.getByLabel(/Bring a plan file/).setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(demo.replace('"revision": 2', '"revision": 3')) });
  await hand.tap('Look round with this plan');
  await hand.sees(noCard);
  await hand.sees(noFile);
  // Printed from the browser's own menu; handed over as a file.
  await print(hand, null, 'menu');
  await hand.misses(noCard);
  await hand.tap('More');
  await hand.link('Hand this plan over').click();
  const handed = hand.page.waitForEvent('download');
  await hand.heading('Hand this plan over');
  await hand.tap('Save it as a file');
  await handed;
  await hand.link('Back').click();
  await hand.heading('More');
  await hand.tap('Back');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.misses('Copies that last');
  await hand.device.end();
});

test('in an incident nobody is asked for copies', async () => {
  const hand = await withDemo();
  await hand.sees(noCard);
  await hand.tap('Start');
  await hand.heading('Is any of these true now?');
  await hand.misses('Copies that last');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.page.reload();
  await hand.heading('Glucose now');
  await hand.misses('Copies that last');
  await hand.device.end();
  const later = await betweenLooks();
  await later.misses('Copies that last');
  await later.device.end();
});

for (const width of [390, 320]) test(`the home page that asks for copies holds at ${width}, and axe finds nothing`, async () => {
  const hand = await withDemo({ flowing: true, width });
  await hand.sees(noFile);
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), []);
  assert.ok(await hand.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  await hand.device.end();
});

// What the browser answers, and what "More" says of it.
const answers = [[() => true, 'This phone has agreed to keep what you write.'], [() => false, 'This phone may clear what you write. Save a copy.'],
  [() => { throw new TypeError('no answer'); }, 'This browser does not say what it keeps. Save a copy.']];
for (const [reply, sentence] of answers) test(`the browser is asked to keep what is written once a plan is in, and its answer is shown: ${sentence}`, async () => {
  const prepare = `window.asked = 0; StorageManager.prototype.persist = async () => { window.asked += 1; return (${reply})(); };`;
  const device = await phone({ prepare });
  const hand = await device.open();
  await hand.heading('Stopgap');
  assert.equal(await hand.page.evaluate(() => window.asked), 0, 'asked before there is a plan');
  await hand.tap('Demo plan: an adult');
  await hand.heading('Maren Oduya');
  assert.equal(await hand.page.evaluate(() => window.asked), 0, 'asked before the plan is taken in');
  await hand.tap('Look round with this plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  assert.equal(await hand.page.evaluate(() => window.asked), 1);
  for (const again of [false, true]) {
    if (again) { await hand.page.reload(); await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor(); }
    await hand.tap('More');
    await hand.sees(sentence);
    await hand.tap('Back');
    await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  }
  await device.end();
});
