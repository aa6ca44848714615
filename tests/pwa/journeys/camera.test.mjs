// The browser's own camera, fed from a film: the code as another phone shows it, through the whole way that a picture takes.
import assert from 'node:assert/strict';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../../pwa/serve.mjs';
import { close, phone, site } from './phone.mjs';

after(close);
const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/adult.json', import.meta.url)), 'utf8').replace('p-demo-adult', 'p-filmed');
const width = 1280, height = 720;

// The code of the giver's screen, drawn into a picture of grey values as a camera would see it.
const seenByACamera = async () => {
  const giver = await phone({ at: '2026-11-25T10:00:00+01:00' });
  const hand = await giver.open();
  await hand.page.getByLabel(/Bring a plan file/).setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(demo) });
  await hand.page.getByLabel(/Type the day it was agreed/).fill('20261012');
  await hand.tap('Yes, this is my plan');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.tap('More');
  await hand.link('Hand this plan over').click();
  await hand.page.locator('svg.code').waitFor();
  const image = (await hand.page.locator('svg.code').screenshot()).toString('base64');
  const grey = await hand.page.evaluate(async ([png, wide, high]) => {
    const bytes = Uint8Array.from(atob(png), sign => sign.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const pen = Object.assign(document.createElement('canvas'), { width: wide, height: high }).getContext('2d');
    pen.fillStyle = '#888';
    pen.fillRect(0, 0, wide, high);
    pen.setTransform(1, 0.02, -0.02, 1, 320, 40);
    pen.drawImage(picture, 0, 0, 640, 640);
    const { data } = pen.getImageData(0, 0, wide, high);
    let text = '';
    for (let at = 0; at < data.length; at += 4) text += String.fromCharCode(data[at]);
    return btoa(text);
  }, [image, width, height]);
  await giver.end();
  return Buffer.from(grey, 'base64');
};

test('the camera of the device reads the code from another screen, and is off afterwards', async () => {
  const film = join(mkdtempSync(join(tmpdir(), 'stopgap-')), 'code.y4m');
  const frame = Buffer.concat([Buffer.from('FRAME\n'), await seenByACamera(), Buffer.alloc(width * height / 2, 128)]);
  writeFileSync(film, Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F5:1 Ip C420jpeg\n`), frame, frame]));
  const program = process.env.CHROMIUM ?? ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find(path => existsSync(path));
  const browser = await chromium.launch({ executablePath: program, args: ['--no-sandbox', '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-video-capture=${film}`] });
  const host = await serve(site);
  try {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block', locale: 'en-GB', timezoneId: 'Europe/Berlin', permissions: ['camera'] });
    const page = await context.newPage();
    await page.goto(`${host.address}#bring`);
    await page.evaluate(() => {
      const own = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = async asked => { window.stream = await own(asked); return window.stream; };
    });
    await page.getByRole('button', { name: /Read a code with the camera/ }).click();
    await page.getByRole('heading', { level: 1, name: /Maren Oduya/ }).waitFor({ timeout: 60000 });
    assert.match((await page.locator('main').innerText()).replace(/[\u2066-\u2069]/g, ''), /Unchanged since exported/);
    assert.deepEqual(await page.evaluate(() => window.stream.getTracks().map(track => track.readyState)), ['ended']);
  } finally {
    await browser.close();
    await host.close();
  }
});
