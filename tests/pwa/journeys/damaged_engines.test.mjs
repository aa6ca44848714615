// A file that is not what the page names, at the first visit, in two more engines: each compares for itself, and no dose may be shown.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { serve } from '../../../pwa/serve.mjs';
import { firefox, webkit } from './other_browsers.mjs';
import { site } from './phone.mjs';

const open = new Set();
after(async () => { for (const end of open) await end().catch(() => {}); });

const altered = bytes => Buffer.concat([bytes, Buffer.from('\nglobalThis.wasAltered = true;\n')]);
const flipped = bytes => { const other = Buffer.from(bytes); other[other.length >> 1] ^= 1; return other; };
// In the page: the screen that is drawn, and whether it is the page of help for a damaged copy.
const place = () => ({ damaged: location.hash === '#damaged', screen: document.documentElement.dataset.screen ?? null, ran: globalThis.wasAltered ?? null, text: document.body.innerText });
const waits = ms => new Promise(resolve => { setTimeout(resolve, ms); });

for (const [name, start] of Object.entries({ firefox, webkit })) {
  test(`a first visit in ${name} gets a file that was altered`, { timeout: 240000 }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
    cpSync(site, folder, { recursive: true });
    const host = await serve(folder);
    const browser = await start();
    open.add(browser.end).add(host.close);
    const visit = async (most = 100) => {
      await browser.open(`${host.address}danger.html`);
      await browser.open(host.address);
      let seen;
      for (let tries = 0; tries < most; tries += 1) {
        seen = await browser.ask(place).catch(() => null);
        if (seen?.damaged || seen?.screen) return seen;
        await waits(100);
      }
      return seen;
    };
    // Before the right files were ever kept: a keeper would rightly go on with those.
    for (const [path, change] of [['stopgap-core.wasm', flipped], ['i18n/en.ftl', altered], ['app.js', altered]]) {
      const right = readFileSync(join(folder, path));
      writeFileSync(join(folder, path), change(right));
      const seen = await visit();
      assert.equal(seen.ran, null, path);
      // WebKit still has the right script of the visit before, and may go on with it.
      if (path !== 'app.js' || name !== 'webkit') assert.deepEqual([seen.screen, seen.damaged], [null, path !== 'app.js'], `${path}: ${seen.text}`);
      writeFileSync(join(folder, path), right);
    }
    // A start takes longer where the machine is busy.
    assert.equal((await visit(400)).screen, 'first');
    await browser.end();
    await host.close();
    rmSync(folder, { recursive: true });
  });
}
