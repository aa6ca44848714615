// From a key in the editor to the redrawn table, at a quarter of this machine's speed. Not a timed test: the machine that runs
// tests may be busy.   node tests/pwa/desk_speed.mjs
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../pwa/serve.mjs';

const path = name => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const host = await serve(path('build/site'));
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
for (const name of ['adult', 'child']) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(`${host.address}#desk`);
  await page.getByLabel('Bring a plan from a file').setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer: readFileSync(path(`pwa/demo/${name}.json`)) });
  await page.locator('.person .press').click();
  await page.getByRole('button', { name: /Write the next revision/ }).click();
  const box = page.locator('#f-dailyTotal');
  await box.waitFor();
  await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: 4 });
  // Asked of the page itself: from the event to the table laid out anew. Two kinds of key: from one number to another, and the key
  // after which a number can be read again ("46." and then "46.1").
  const took = await box.evaluate(async node => {
    const key = async text => {
      node.focus();
      node.value = text;
      const began = performance.now();
      node.dispatchEvent(new InputEvent('input', { bubbles: true }));
      document.querySelector('.doses')?.getBoundingClientRect();
      const span = performance.now() - began;
      await new Promise(done => { setTimeout(done, 60); });
      return span;
    };
    const whole = node.value.replace(/\..*$/, ''), other = [], back = [];
    for (let n = 0; n < 24; n += 1) other.push(await key(`${whole}.${(n % 9) + 1}`));
    for (let n = 0; n < 24; n += 1) { await key(`${whole}.`); back.push(await key(`${whole}.${(n % 9) + 1}`)); }
    return [other, back].map(all => all.slice(4).sort((a, b) => a - b));
  });
  for (const [at, kind] of ['one number to another', 'readable again'].entries()) {
    const all = took[at];
    console.log(`${name}, ${kind}: key to redrawn table, 4 times slower processor: median of ${all.length} ${all[all.length >> 1].toFixed(1)} ms, slowest ${all.at(-1).toFixed(1)} ms`);
  }
  await context.close();
}
await browser.close();
await host.close();
