// Somebody in a hurry at the desk: several files at once, a person opened while a file is being read, a button pressed again. Each
// person keeps what is theirs, and nothing is done twice.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close } from './phone.mjs';
import { atDesk, sizes } from './desk.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const copy = (id, name, entry) => `{"format":"stopgap.copy","version":1,"plan":${demo.replace('p-demo-adult', id).replace('Maren Oduya', name)},"record":{"format":"stopgap.record","version":1,"planId":"${id}","events":[{"id":"same-id","at":"2026-11-09T03:00:00+01:00","kind":"note","text":"${entry}"}]}}`;
const files = [copy('p-one', 'Aino Berge', 'hers'), copy('p-two', 'Bao Lindqvist', 'his'), copy('p-three', 'Cleo Amsel', 'theirs')];
// Chosen in one moment, as by somebody who does not wait for the first; then, still in it, what `then` says.
const atOnce = (hand, texts, then = '') => hand.page.evaluate(([all, rest]) => {
  const box = document.querySelector('input[type=file]');
  for (const text of all) {
    const chosen = new DataTransfer();
    chosen.items.add(new File([text], 'copy.json', { type: 'application/json' }));
    box.files = chosen.files;
    box.dispatchEvent(new Event('change', { bubbles: true }));
  }
  for (const button of document.querySelectorAll('button')) if (rest && button.textContent.replace(/[\u2066-\u2069]/g, '').includes(rest)) button.click();
}, [texts, then]);
const namesOf = async hand => Object.fromEntries((await hand.revisions()).map(({ plan, text }) => [plan, JSON.parse(text).person.name]));
const idle = hand => hand.page.waitForFunction(() => document.body.getAttribute('aria-busy') !== 'true');

for (const size of Object.keys(sizes)) test(`three files in one moment: three people, each with their own plan and record, ${size}`, async () => {
  const hand = await atDesk(size);
  await atOnce(hand, files);
  for (const name of ['Aino Berge', 'Bao Lindqvist', 'Cleo Amsel']) await hand.sees(name);
  await idle(hand);
  await hand.sees('The file is on the shelf');
  assert.deepEqual(await namesOf(hand), { 'p-one': 'Aino Berge', 'p-two': 'Bao Lindqvist', 'p-three': 'Cleo Amsel' });
  assert.equal((await hand.revisions()).length, 3);
  assert.deepEqual((await hand.record()).map(entry => entry.text).sort(), ['hers', 'his', 'theirs']);
  // What the page holds is what lies in the store: each opens as whose it is, before and after the app is opened anew.
  for (const again of [false, true]) {
    if (again) { await hand.page.reload(); await hand.heading('Plans on this machine'); }
    for (const name of ['Bao Lindqvist', 'Aino Berge']) {
      await hand.tap(name);
      await hand.sees('Withdraw this plan');
      await hand.sees(name);
      await hand.page.getByRole('link', { name: 'Desk' }).click();
      await hand.heading('Plans on this machine');
    }
  }
  await hand.device.end();
});

test('twelve files, each before the last one is on the shelf: twelve people', async () => {
  const hand = await atDesk('phone');
  const people = Array.from({ length: 12 }, (_, at) => [`p-${at}`, `Person ${String.fromCharCode(65 + at)}`]);
  for (const [id, name] of people) await atOnce(hand, [copy(id, name, `of ${id}`)]);
  for (const [, name] of people) await hand.sees(name);
  await idle(hand);
  assert.deepEqual(await namesOf(hand), Object.fromEntries(people));
  assert.deepEqual((await hand.record()).map(entry => entry.text).sort(), people.map(([id]) => `of ${id}`).sort());
  assert.equal((await hand.page.locator('.person').allInnerTexts()).filter(text => text.replace(/[\u2066-\u2069]/g, '').includes('Revision 2')).length, 12);
  await hand.device.end();
});

test('a person opened while a file is being read opens afterwards, as themselves', async () => {
  const hand = await atDesk('phone');
  await atOnce(hand, [files[0]]);
  await hand.sees('Aino Berge');
  await idle(hand);
  await atOnce(hand, [files[1]], 'Aino Berge');
  await idle(hand);
  await hand.sees('Withdraw this plan');
  await hand.sees('Aino Berge');
  await hand.misses('Bao');
  await hand.page.getByRole('link', { name: 'Desk' }).click();
  await hand.heading('Plans on this machine');
  await hand.sees('Bao Lindqvist');
  assert.deepEqual(await namesOf(hand), { 'p-one': 'Aino Berge', 'p-two': 'Bao Lindqvist' });
  await hand.device.end();
});

test('what was said of the file before is not said of the one being read', async () => {
  const hand = await atDesk('phone');
  await atOnce(hand, [files[0]]);
  await hand.sees('The file is on the shelf');
  await idle(hand);
  await atOnce(hand, ['not a plan']);
  await hand.sees('The file cannot be read. It may be damaged.');
  await hand.misses('The file is on the shelf');
  await hand.device.end();
});

// Moved since it was chosen, or on a drive that is not reached: the browser gives no text of it.
test('a file that the machine cannot read is said to be so, and the desk goes on', async () => {
  const hand = await atDesk('laptop');
  await hand.page.evaluate(() => { const { text } = File.prototype; File.prototype.text = function gone() { File.prototype.text = text; return Promise.reject(new DOMException('gone', 'NotReadableError')); }; });
  await atOnce(hand, files.slice(0, 2));
  await hand.sees('Bao Lindqvist');
  await idle(hand);
  await hand.heading('Plans on this machine');
  assert.deepEqual(await namesOf(hand), { 'p-two': 'Bao Lindqvist' });
  await hand.page.evaluate(() => { File.prototype.text = () => Promise.reject(new DOMException('gone', 'NotReadableError')); });
  await atOnce(hand, [files[2]]);
  await hand.sees('The file cannot be read. It may be damaged.');
  await hand.heading('Plans on this machine');
  await hand.device.end();
});

test('withdrawn by two presses in one moment: one revision says so', async () => {
  const hand = await atDesk('laptop');
  await atOnce(hand, [files[0]]);
  await hand.sees('Aino Berge');
  await idle(hand);
  await hand.tap('Aino Berge');
  await hand.tap('Withdraw this plan');
  await hand.page.evaluate(() => { const yes = [...document.querySelectorAll('button')].find(button => /^\s*Withdraw it/.test(button.textContent)); yes.click(); yes.click(); });
  await hand.sees('withdrawn');
  await idle(hand);
  assert.deepEqual((await hand.revisions()).map(entry => JSON.parse(entry.text).agreement.status), ['agreed', 'withdrawn']);
  await hand.device.end();
});
