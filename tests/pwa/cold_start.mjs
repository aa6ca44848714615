// How long the app takes from a cold start with the network gone, at a quarter of this machine's speed, until "Start" can be
// pressed. Not a timed test: the machine that runs tests may be busy.   node tests/pwa/cold_start.mjs [RUNS]
// Beside it what the browser alone needs to paint a page of three lines and no script: the least any page can take.
import { chromium } from 'playwright-core';
import { fileURLToPath } from 'node:url';
import { serve } from '../../pwa/serve.mjs';

const runs = Number.parseInt(process.argv[2] ?? '15', 10);
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

// Asked of the page itself, so that the way to the browser and back is not counted.
const usable = () => new Promise(done => {
  const seen = () => { if (document.querySelector('.press.start')) done(Math.round(performance.now())); else requestAnimationFrame(seen); };
  seen();
});
const painted = () => new Promise(done => {
  const seen = () => { const [paint] = performance.getEntriesByName('first-contentful-paint'); if (paint) done(Math.round(paint.startTime)); else requestAnimationFrame(seen); };
  seen();
});
// The keeper of the release may still run from the last visit, or must be started first.
const start = async (path, until, stopped) => {
  const page = await context.newPage();
  const inspector = await context.newCDPSession(page);
  if (stopped) {
    await inspector.send('ServiceWorker.enable');
    await inspector.send('ServiceWorker.stopAllWorkers');
    await page.waitForTimeout(200);
  }
  await inspector.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.goto(host.address + path, { waitUntil: 'commit' });
  const took = await page.evaluate(until);
  await page.close();
  return took;
};
for (const [what, path, until, stopped] of [
  ['usable, keeper awake', '', usable, false], ['first paint, keeper awake', '', painted, false], ['least, keeper awake', 'danger.html', painted, false],
  ['usable, keeper asleep', '', usable, true], ['least, keeper asleep', 'danger.html', painted, true],
]) {
  const took = [];
  for (let n = 0; n < runs; n += 1) took.push(await start(path, until, stopped));
  took.sort((a, b) => a - b);
  console.log(`${what}: median ${took[runs >> 1]} ms, ${took[0]} to ${took.at(-1)}`);
}
await browser.close();
