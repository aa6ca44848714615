// How long the app takes from a cold start with the network gone, at a quarter of this machine's speed, until "Start" can be
// pressed. Not a timed test: the machine that runs tests may be busy.   node tests/pwa/cold_start.mjs
import { chromium } from 'playwright-core';
import { fileURLToPath } from 'node:url';
import { serve } from '../../pwa/serve.mjs';

const host = await serve(fileURLToPath(new URL('../../build/site', import.meta.url)));
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
const first = await context.newPage();
await first.goto(host.address);
await first.getByRole('button', { name: /Demo plan: an adult/ }).click();
await first.getByRole('button', { name: /Look round with this plan/ }).click();
await first.getByRole('button', { name: /^\s*Start/ }).waitFor();
await first.waitForFunction(() => navigator.serviceWorker.controller !== null);
await host.close();
await context.setOffline(true);
await first.close();
const took = [];
for (let n = 0; n < 7; n += 1) {
  const page = await context.newPage();
  await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.goto(host.address, { waitUntil: 'commit' });
  // Asked of the page itself, so that the way to the browser and back is not counted.
  took.push(await page.evaluate(() => new Promise(done => {
    const seen = () => { if (document.querySelector('.press.start')) done(Math.round(performance.now())); else requestAnimationFrame(seen); };
    seen();
  })));
  await page.close();
}
await browser.close();
console.log(`Cold start without network, 4 times slower processor: ${took.join(', ')} ms`);
