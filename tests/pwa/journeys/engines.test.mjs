// The main job in two more engines: a stubborn high at night, read again in the middle, and once more with the server gone for good.
// Their clocks cannot be set, so the expected dose is what the module answers in node for the same minute.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { load } from '../../../wasm/core.mjs';
import { serve } from '../../../pwa/serve.mjs';
import { firefox, webkit } from './other_browsers.mjs';
import { inUnits, site } from './phone.mjs';

const core = await load();
const plan = readFileSync(new URL('../../../pwa/demo/adult.json', import.meta.url), 'utf8');
const open = new Set();
after(async () => { for (const end of open) await end().catch(() => {}); });

// The module's answer at this minute in Berlin, where both browsers are.
const doseNow = () => {
  const local = new Date().toLocaleString('sv-SE', { timeZone: 'Europe/Berlin' }).replace(' ', 'T');
  const ahead = Math.round((Date.parse(`${local}Z`) - Date.now()) / 3600000);
  const now = `${local}+${String(ahead).padStart(2, '0')}:00`;
  const request = `{"plan":${plan},"record":{"format":"stopgap.record","version":1,"planId":"p-demo-adult","events":[]},
    "situation":{"now":"${now}","glucose":{"value":16.0,"unit":"mmol/L","from":"finger"},"ketones":{"blood":0.8},"signs":[],"seen":[]}}`;
  return JSON.parse(core.ask('advise', request)).dose.text;
};

// What a finger finds: the first thing in sight that can be pressed and begins with these words.
const find = text => {
  const plain = node => (node.getAttribute('aria-label') ?? node.textContent).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();
  const found = [...document.querySelectorAll('button, a.press, [role=checkbox]')].find(node => node.getClientRects().length && plain(node).startsWith(text));
  if (!found || document.body.getAttribute('aria-busy') === 'true') return null;
  found.click();
  return plain(found);
};
const heading = () => document.body.getAttribute('aria-busy') === 'true' ? null : (document.querySelector('h1')?.textContent ?? '').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();
const told = () => document.body.innerText.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');
const record = () => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction('events').objectStore('events').getAll();
    asked.onsuccess = () => { resolve(asked.result.map(entry => JSON.parse(entry.text))); opening.result.close(); };
  };
});

const hand = browser => {
  const until = async (what, deed, most = 200) => {
    for (let tries = 0; tries < most; tries += 1) {
      const found = await deed().catch(() => null);
      if (found) return found;
      await new Promise(resolve => { setTimeout(resolve, 100); });
    }
    return assert.fail(`${what} does not come; the page says: ${await browser.ask(told).catch(String)}`);
  };
  const at = text => until(`"${text}"`, async () => (await browser.ask(heading))?.startsWith(text));
  const tap = text => until(`A button "${text}"`, () => browser.ask(find, text));
  return { at, tap, until, keys: async digits => { for (const digit of digits) await tap(digit === '.' ? 'decimal point' : digit); } };
};

for (const [name, start] of Object.entries({ firefox, webkit })) {
  test(`a stubborn high at night in ${name}`, { timeout: 240000 }, async () => {
    const host = await serve(site);
    open.add(host.close);
    const browser = await start();
    open.add(browser.end);
    const { at, tap, keys, until } = hand(browser);
    await browser.open(host.address);
    await at('Stopgap');
    await tap('Demo plan: an adult');
    await at('Maren Oduya');
    await tap('Look round with this plan');
    await tap('Start');
    await at('Is any of these true now?');
    await tap('None of these');
    await at('Glucose now');
    await keys('16.0');
    await browser.shot('glucose');
    await tap('Finger: 16.0 mmol/L');
    await at('Blood ketones now');
    // In the middle the page is gone and comes back to the same question.
    await browser.again();
    await at('Blood ketones now');
    await keys('0.8');
    await tap('Yes, ketones are 0.8');
    await at('What do you see?');
    await tap('None of these');
    await at('What insulin was already given?');
    const doses = [doseNow()];
    await tap('Nothing');
    await at('Is this the time?');
    await tap('Yes, it is');
    await at('Inject now');
    doses.push(doseNow());
    await browser.shot('dose');
    const page = await browser.ask(told);
    const dose = doses.find(text => page.includes(`Inject now ${text.replace('\u00a0', ' ')} lispro, by needle`));
    assert.ok(dose, `the page shows another dose than ${doses.join(' or ')}: ${page}`);
    const units = dose.split('\u00a0')[0];
    await tap('Type the units you see');
    await at('How many units do you see?');
    await keys(units);
    await tap(`I see ${inUnits(units)}`);
    await at(`Inject ${inUnits(units)} now`);
    await tap(`I have injected ${inUnits(units)}`);
    await at('Change the infusion set');
    // The whole release is kept; then the server is gone for good.
    // Beside other suites the whole release takes its time to be kept.
    await until('The keeper', () => browser.ask(() => Boolean(navigator.serviceWorker?.controller)), 600);
    open.delete(host.close);
    await host.close();
    await browser.again();
    await at('Change the infusion set');
    await tap('The set is changed');
    await at('New reservoir');
    await browser.shot('steps');
    const events = await browser.ask(record);
    assert.equal(events.filter(event => event.kind === 'injection' && event.units === Number(units)).length, 1);
    assert.equal(events.filter(event => event.kind === 'changed').length, 1);
    assert.equal(new Set(events.map(event => event.id)).size, events.length);
    open.delete(browser.end);
    await browser.end();
  });
}
