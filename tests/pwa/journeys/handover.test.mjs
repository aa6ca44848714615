// A plan goes from one phone to another by code, by file, by text and by camera; and what is damaged, too large, too new or somebody
// else's is told apart on arrival. The code on the screen is read by a reader that is none of ours.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { close, phone } from './phone.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8');
const ours = demo.replace('p-demo-adult', 'p-handed').replace('"title": "Demo plan: invented person, not for use"', '"title": "Everyday"');
const file = (text, name = 'plan.json') => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const sizes = { 'a phone': { width: 390, height: 844 }, 'a laptop': { width: 1280, height: 800, touch: false } };
const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));

const typedDay = hand => hand.page.getByLabel(/Type the day it was agreed/);
const bringFile = (hand, what) => hand.page.getByLabel(/Bring a plan file/).setInputFiles(what);
const accept = async (hand, day = '20261012') => {
  await typedDay(hand).fill(day);
  await hand.tap('Yes, this is my plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
};
// A device with the plan in use.
const withPlan = async (text, options) => {
  const device = await phone({ at: '2026-11-25T10:00:00+01:00', ...options });
  const hand = await device.open();
  await bringFile(hand, file(text));
  await accept(hand);
  return { device, ...hand };
};
const another = async (options, path = '') => {
  const device = await phone({ at: '2026-11-25T10:20:00+01:00', ...options });
  return { device, ...await device.open(path) };
};
const share = async hand => {
  await hand.tap('More');
  await hand.link('Hand this plan over').click();
  await hand.heading('Hand this plan over');
  await hand.page.locator('svg.code').waitFor();
};
const paste = async (hand, text) => { await hand.page.getByLabel(/Or paste the text here/).fill(text); await hand.tap('Read the text'); };
const picture = async (hand, name) => { const path = join(folder, name); await hand.page.locator('svg.code').screenshot({ path }); return path; };
const readBack = path => execFileSync('zbarimg', ['--quiet', '--raw', '-Sdisable', '-Sqr.enable', path], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).replace(/\n$/, '');

for (const [name, size] of Object.entries(sizes)) test(`${name}: a plan crosses to a second device by its code alone, and is in use only after its day was typed`, async () => {
  const giver = await withPlan(ours, size);
  await share(giver);
  await giver.page.getByLabel(/Name of this device or clinic/).fill('Ward 3');
  await giver.page.getByLabel(/Name of this device or clinic/).blur();
  await giver.page.waitForFunction(() => document.querySelector('#code-text').value.length > 0);
  await giver.shot(`handover-share-${size.width}`);
  const fingerprint = (await giver.page.locator('.print').innerText()).trim();
  const shown = await giver.page.locator('#code-text').inputValue();
  const text = readBack(await picture(giver, `${size.width}.png`));
  assert.equal(text, shown);
  assert.ok(text.length <= 970);
  await giver.device.end();

  const taker = await another(size);
  await taker.link('Bring a plan by code').click();
  await taker.heading('Bring a plan');
  await taker.shot(`handover-bring-${size.width}`);
  // Broken into lines on its way, as a message may do.
  await paste(taker, text.replace(/(.{60})/g, '$1\n'));
  await taker.heading('Maren Oduya');
  await taker.sees('Unchanged since exported from Ward 3, 25 November 2026, 10:00.');
  await taker.sees('This does not say that the plan is right');
  await taker.misses('approved');
  await taker.sees(fingerprint);
  await taker.sees('Every number of this plan');
  await taker.sees('Not in use. Nothing has changed yet.');
  await taker.misses('Yes, this is my plan');
  await taker.shot(`handover-offered-${size.width}`);
  await typedDay(taker).fill('2026-10-13');
  await taker.sees('This is not the day in the plan.');
  await taker.misses('Yes, this is my plan');
  await accept(taker, '2026-10-12');
  await taker.sees('Revision 2, Everyday');
  await taker.device.end();
});

test('the camera reads the code, and a photograph of it does as well', async () => {
  const giver = await withPlan(ours, {});
  await share(giver);
  const text = await giver.page.locator('#code-text').inputValue();
  const path = await picture(giver, 'shown.png');
  await giver.device.end();

  // A camera of our own: a canvas that shows the picture, small and a little turned at first, then well.
  const taker = await another({ flowing: true }, '#bring');
  await taker.page.evaluate(async data => {
    const image = new Image();
    image.src = data;
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width: 1280, height: 720 });
    const pen = canvas.getContext('2d');
    let frame = 0;
    const drawFrame = () => {
      frame += 1;
      pen.fillStyle = '#888';
      pen.fillRect(0, 0, 1280, 720);
      const side = Math.min(120 + frame * 12, 620);
      pen.setTransform(1, 0.03, -0.03, 1, 660 - side / 2, 345 - side / 2);
      pen.drawImage(image, 0, 0, side, side);
      pen.setTransform(1, 0, 0, 1, 0, 0);
    };
    setInterval(drawFrame, 50);
    window.stopped = 0;
    navigator.mediaDevices.getUserMedia = async () => {
      const stream = canvas.captureStream(20);
      for (const track of stream.getTracks()) { const stop = track.stop.bind(track); track.stop = () => { window.stopped += 1; stop(); }; }
      return stream;
    };
  }, `data:image/png;base64,${readFileSync(path).toString('base64')}`);
  await taker.tap('Read a code with the camera');
  await taker.page.getByRole('heading', { level: 1, name: /Maren Oduya/ }).waitFor({ timeout: 60000 });
  await taker.sees('Unchanged since exported, 25 November 2026');
  assert.equal(await taker.page.evaluate(() => window.stopped), 1, 'the camera stays on');
  await taker.tap('No, leave it');
  await taker.heading('Bring a plan');
  await taker.page.getByLabel(/Take a photo of the code/).setInputFiles(path);
  await taker.heading('Maren Oduya');
  await taker.tap('No, leave it');
  await taker.page.getByLabel(/Take a photo of the code/).setInputFiles(fileURLToPath(new URL('../../../pwa/icons/icon-512.png', import.meta.url)));
  await taker.sees('There is no readable code in it.');
  await taker.page.getByLabel(/Take a photo of the code/).setInputFiles(file(text, 'x.png'));
  await taker.sees('This is not a picture that can be read.');
  await taker.device.end();
});

test('no camera: it is said, with what else to do', async () => {
  const taker = await another({}, '#bring');
  await taker.page.evaluate(() => { navigator.mediaDevices.getUserMedia = async () => { throw new DOMException('denied', 'NotAllowedError'); }; });
  await taker.tap('Read a code with the camera');
  await taker.sees('The camera did not start. Take a photo of the code, or use a file.');
  await taker.device.end();
});

// The file as it was exported, from a giver of the given plan.
const exported = async (text = ours, name = '') => {
  const giver = await withPlan(text, {});
  await share(giver);
  if (name) { await giver.page.getByLabel(/Name of this device or clinic/).fill(name); await giver.page.getByLabel(/Name of this device or clinic/).blur(); await giver.page.waitForTimeout(300); }
  const coming = giver.page.waitForEvent('download');
  await giver.tap('Save it as a file');
  const path = join(folder, 'exported.json');
  await (await coming).saveAs(path);
  await giver.device.end();
  return readFileSync(path, 'utf8');
};

test('a tampered file or code is refused, and nothing stored is lost', async () => {
  const saved = await exported(ours, 'Ward 3');
  assert.equal(JSON.parse(saved).format, 'stopgap.handover');
  const taker = await withPlan(ours, {});
  await taker.tap('More');
  await taker.tap('Another plan');
  const refusedAs = async (text, sentence, place) => {
    await bringFile(taker, file(text));
    await taker.heading('This cannot be used');
    await taker.sees(sentence);
    await taker.sees(place);
    await taker.sees('Nothing was changed.');
    await taker.tap('Back');
  };
  const changed = 'It was changed or damaged on its way.';
  assert.ok(saved.includes('"dailyTotal": 46.0'));
  await refusedAs(saved.replace('"dailyTotal": 46.0', '"dailyTotal": 64.0'), changed, '/fingerprint');
  await refusedAs(saved.replace('Ward 3', 'Ward 4'), changed, '/signature');
  const { fingerprint } = JSON.parse(saved);
  await refusedAs(saved.replace(fingerprint, `0${fingerprint.slice(1)}`.replace(fingerprint, `1${fingerprint.slice(1)}`)), changed, '/fingerprint');
  await refusedAs(saved.replace('"version":1', '"version":2'), 'This plan needs a newer version of the app.', '/version');
  await refusedAs(saved.replace('"exported"', '"more":1,"exported"'), 'There is an entry this version does not know.', '/more');
  await refusedAs(saved.replace('"dailyTotal": 46.0', '"dailyTotal": 4600'), 'This is outside the limits.', '/plan/dailyTotal');
  await bringFile(taker, file(saved));
  await taker.heading('Maren Oduya');
  await taker.sees('Unchanged since exported from Ward 3');
  await taker.sees('Nothing. It is the plan in use.');
  await taker.tap('No, leave it');
  await taker.tap('Back');
  await share(taker);
  const text = await taker.page.locator('#code-text').inputValue();
  await taker.page.goto(`${taker.device.address}#bring`);
  for (const [bad, place] of [[text.slice(0, -3), '/text'], [text.replace(/(.{30})$/, 'AAA'), '/text'], [`${text.slice(0, 30)}${text[30] === 'A' ? 'B' : 'A'}${text.slice(31)}`, '/signature'], [text.replace('SIGNED1', 'SIGNED2'), '/text']]) {
    await paste(taker, bad);
    await taker.heading('This cannot be used');
    await taker.sees(place);
    await taker.tap('Back');
    await taker.heading('Bring a plan');
  }
  await taker.device.end();
});

test('the desk reads a signed file by the same reader: it says who signed it, and refuses what was changed or is too large', async () => {
  const saved = await exported(ours, 'Ward 3');
  const desk = await another({ width: 1280, height: 800, touch: false }, '#desk');
  await desk.heading('Plans on this machine');
  const brought = what => desk.page.getByLabel('Bring a plan from a file').setInputFiles(what);
  await brought(file(saved.replace('"dailyTotal": 46.0', '"dailyTotal": 64.0')));
  await desk.sees('/fingerprint It was changed or damaged on its way.');
  await desk.misses('Maren Oduya');
  await brought(file(saved.replace('Ward 3', 'Ward 4')));
  await desk.sees('/signature It was changed or damaged on its way.');
  await brought(file(saved.replace('"version":1', '"version":2')));
  await desk.sees('This plan needs a newer version of the app.');
  const large = join(folder, 'large-desk.json');
  writeFileSync(large, Buffer.alloc(100 * 1024 * 1024, 0x20));
  await brought(large);
  await desk.sees('The file is too large. Possible: 6 MB.');
  await desk.misses('Maren Oduya');
  await brought(file(saved));
  await desk.sees('The file is on the shelf. Unchanged since exported from Ward 3, 25 November 2026, 10:00.');
  await desk.shot('desk-laptop-signed-file');
  await desk.tap('Maren Oduya');
  await desk.heading('Maren Oduya');
  await desk.sees(JSON.parse(saved).fingerprint.match(/.{4}/g).join(' '));
  await desk.page.getByRole('link', { name: 'Desk' }).click();
  await brought(file(ours.replace('p-handed', 'p-plain').replace('Maren Oduya', 'Edda Kolawole')));
  await desk.sees('The file is on the shelf. Not signed.');
  await desk.device.end();
});

test('a file of 100 MB is told to be too large at once', async () => {
  const path = join(folder, 'large.json');
  writeFileSync(path, Buffer.alloc(100 * 1024 * 1024, 0x20));
  const taker = await another({});
  await bringFile(taker, path);
  const before = Date.now();
  await taker.heading('This cannot be used');
  await taker.sees('The file is too large.');
  await taker.sees('Possible: 6 MB.');
  assert.ok(Date.now() - before < 3000);
  await taker.tap('Back');
  await taker.heading('Stopgap');
  await taker.device.end();
});

test('a plan from a newer format is refused, not guessed', async () => {
  const taker = await another({});
  for (const text of [ours.replace('"version": 1', '"version": 2'), 'STOPGAP2:0123456789']) {
    await taker.page.goto(`${taker.device.address}#bring`);
    await paste(taker, text);
    await taker.heading('This cannot be used');
    await taker.sees('This plan needs a newer version of the app.');
    await taker.tap('Back');
  }
  await taker.device.end();
});

test('another person, another revision, a draft, a withdrawn plan: each is said loudly, and a draft stays out', async () => {
  const taker = await withPlan(ours, {});
  await taker.page.goto(`${taker.device.address}#bring`);
  const offered = async (text, ...sentences) => {
    await paste(taker, text);
    await taker.page.getByRole('button', { name: /No, leave it/ }).waitFor();
    for (const sentence of sentences) await taker.sees(sentence);
    await taker.shot(`handover-loud-${sentences[0].slice(0, 12)}`);
    await taker.tap('No, leave it');
    await taker.heading('Bring a plan');
  };
  await offered(ours.replace('Maren Oduya', 'Edda Kolawole').replace('p-handed', 'p-other'), 'Another person. The plan in use is for Maren Oduya, born 21 June 1979.');
  await offered(ours.replace('p-handed', 'p-other'), 'Another plan of this person.');
  await offered(ours.replace('"revision": 2', '"revision": 1'), 'This is older. Revision 2 is in use.', 'Not signed.');
  await offered(ours.replace('"dailyTotal": 46.0', '"dailyTotal": 48.0'), 'Same revision as the one in use, but other numbers.', 'Daily total Now 46 Then 48');
  await offered(ours.replace('"status": "agreed"', '"status": "withdrawn"'), 'This plan is withdrawn. It gives no dose.');
  await offered(ours.replace('"reviewBy": "2027-04-12"', '"reviewBy": "2026-10-13"'), 'This plan is past its time. It gives no dose.');
  await paste(taker, ours.replace('"status": "agreed"', '"status": "draft"').replace('"revision": 2', '"revision": 3'));
  await taker.sees('This is a draft. Nobody has agreed it.');
  await taker.sees('A draft is not taken into use.');
  assert.equal(await typedDay(taker).count(), 0);
  await taker.tap('No, leave it');
  await paste(taker, ours.replace('"revision": 2', '"revision": 3').replace('"dailyTotal": 46.0', '"dailyTotal": 48.0'));
  await taker.sees('What changes');
  await taker.sees('What stays');
  await accept(taker);
  await taker.sees('Revision 3, Everyday');
  await taker.device.end();
});
