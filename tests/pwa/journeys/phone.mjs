// A phone for the journeys: the built site with its real headers, a real browser at phone size, and a clock that is set.
// Every request to another host and every breach of the policy fails the journey that made it.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../../pwa/serve.mjs';

const top = fileURLToPath(new URL('../../..', import.meta.url));
export const site = join(top, 'build/site');
// The journeys about the look leave a picture of every screen in build/screens; with STOPGAP_SCREENS=1 all do, and larger ones. Only the journeys about being offline need the keeper
// of releases; the others are quicker without it.
const screens = join(top, 'build/screens');
const pictures = Boolean(process.env.STOPGAP_SCREENS);
// STOPGAP_SLOW=6 makes the page's processor so many times slower: what only holds while the machine is quick shows then.
const slowness = Number(process.env.STOPGAP_SLOW ?? 1);
mkdirSync(screens, { recursive: true });
assert.ok(existsSync(join(site, 'index.html')), 'The site is not built yet. Run: bash pwa/run --build-only');

// The shell is the same browser without its windows, and asks for less than half of the processor's time. Letters are as wide as
// on a phone, not fitted to this machine's coarse screen.
const program = process.env.CHROMIUM ?? ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find(path => existsSync(path));
const launch = { executablePath: program, args: ['--no-sandbox', '--font-render-hinting=none'] };
let browser;
const hosts = new Set(), others = new Set();
export const close = async () => { await browser?.close(); browser = undefined; for (const other of others) await other.close(); others.clear(); for (const host of hosts) await host.close(); hosts.clear(); };

const escaped = sign => sign.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
// The words of the page isolate what stands in their slots, and a dose has a no-break space: a reader sees neither.
export const seen = text => new RegExp(`^\\s*${[...text].map(sign => (sign === ' ' ? '[\\s\\u2066-\\u2069]+' : `[\\u2066-\\u2069]*${escaped(sign)}[\\u2066-\\u2069]*`)).join('')}\\s*`);

export const phone = async ({ at = '2026-11-25T03:05:00+01:00', folder = site, width = 390, height = 844, prepare, server, flowing = false, machineTime = false, keeper = false, touch = true, zone = 'Europe/Berlin', storage, profile, script = true, forced = false, pictured = pictures, fonts, saysTime = true } = {}) => {
  // `fonts`: a configuration of fonts, for a browser of its own that knows no others.
  const other = fonts && await chromium.launch({ ...launch, env: { ...process.env, FONTCONFIG_FILE: fonts } });
  if (other) others.add(other);
  else if (!profile) browser ??= await chromium.launch(launch);
  const host = server ?? await serve(folder);
  hosts.add(host);
  const looks = { viewport: { width, height }, deviceScaleFactor: pictures ? 2 : 1, serviceWorkers: keeper ? 'allow' : 'block', javaScriptEnabled: script, forcedColors: forced ? 'active' : 'none', locale: 'en-GB', timezoneId: zone, storageState: storage, hasTouch: touch, isMobile: touch, acceptDownloads: true };
  // A profile is a browser of its own, which can be ended and started again with what it kept.
  const context = profile ? await chromium.launchPersistentContext(profile, { ...launch, ...looks }) : await (other ?? browser).newContext(looks);
  // The clock stands still unless a journey moves it: a slow machine must not turn 07:05 into 07:06. Only how fast somebody taps is
  // measured by the machine's own.
  if (!machineTime) await context.clock.install({ time: new Date(Date.parse(at) - 1000) });
  if (!machineTime && !flowing) await context.clock.pauseAt(new Date(at));
  const faults = [];
  context.on('request', request => { if (!request.url().startsWith(host.address) && !/^(blob|data):/.test(request.url())) faults.push(`asked another host: ${request.url()}`); });
  await context.addInitScript(() => addEventListener('securitypolicyviolation', event => console.error(`policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`)));
  // What the page does not let through never gets back up to the window.
  await context.addInitScript(() => {
    addEventListener('click', () => { window.tapRefused = true; }, true);
    addEventListener('click', () => { window.tapRefused = false; });
  });
  if (prepare) await context.addInitScript(prepare);
  // A journey about the time answers itself: device.says.time = false.
  const says = { time: saysTime };
  const open = async (path = '') => {
    const page = await context.newPage();
    if (slowness > 1) await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: slowness });
    page.on('console', message => { if (message.type() === 'error' && /policy|Content Security|TrustedScript/.test(message.text())) faults.push(message.text()); });
    page.on('pageerror', error => faults.push(`error: ${error.message}`));
    await page.goto(host.address + path);
    return hand(page);
  };
  const hand = page => {
  // The page says itself when a tap is written and drawn. Who taps again before that may meet a button of the same name on the page
  // that is being left, and the app rightly takes such a tap for nobody's wish. A tap on the spot of the last one, sooner than anybody
  // reads, is refused by the page (pwa/taps.js): done again, as a person would. Journeys about hurry press without either.
  const gone = problem => { if (!/closed|navigat|destroyed/i.test(problem.message)) throw problem; };
  const settled = async () => {
    if (!await page.evaluate(() => document.body.getAttribute('aria-busy') === 'true')) return;
    await page.waitForFunction(() => document.body.getAttribute('aria-busy') !== 'true', undefined, { timeout: 8000 });
  };
  const touch = async (button, { written = true } = {}) => {
    await button.click({ timeout: 8000 });
    try {
      if (await page.evaluate(() => window.tapRefused)) {
        await (machineTime ? page.waitForTimeout(400) : context.clock.runFor(400));
        await button.click({ timeout: 8000 });
      }
      if (written) await settled();
      if (says.time) await sayTime();
    } catch (problem) { gone(problem); }
  };
  // Once after every start the page asks whether its clock is right, before the first dose: answered here as most people would.
  const sayTime = async () => {
    if (await page.evaluate(() => document.documentElement.dataset.screen !== 'rightTime')) return;
    const yes = page.getByRole('button', { name: seen('Yes, it is') });
    await yes.click({ timeout: 8000 });
    if (await page.evaluate(() => window.tapRefused)) {
      await (machineTime ? page.waitForTimeout(400) : context.clock.runFor(400));
      await yes.click({ timeout: 8000 });
    }
    await settled();
  };
  const press = text => touch(page.getByRole('button', { name: seen(text) }).first());
  return {
    page,
    heading: async text => page.getByRole('heading', { level: 1, name: seen(text) }).waitFor({ timeout: 8000 }).catch(async () => {
      assert.fail(`The heading is not "${text}" but "${await page.locator('h1').first().innerText().catch(() => 'none')}"`);
    }),
    tap: press,
    touch,
    tick: text => touch(page.getByRole('checkbox', { name: seen(text) })),
    link: text => page.getByRole('link', { name: seen(text) }).first(),
    keys: async digits => { for (const digit of digits) await touch(page.getByRole('button', { name: digit === '.' ? 'decimal point' : new RegExp(`^${digit}$`) }), { written: false }); },
    sees: async text => {
      const plain = async () => (await page.locator('body').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');
      for (let tries = 0; tries < 80; tries += 1) { if ((await plain()).includes(text)) return; await page.waitForTimeout(100); }
      assert.fail(`"${text}" is not on the page:\n${await plain()}`);
    },
    misses: async text => assert.ok(!(await page.locator('body').innerText()).replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').includes(text), `"${text}" is on the page`),
    shot: async name => { if (pictured) await page.screenshot({ path: join(screens, `${name}.png`), fullPage: true }); },
    // Goes through the steps as somebody would who does each of them; says which were met, in their order.
    steps: async (shot = () => {}) => {
      const met = [];
      const own = [[/into a sink/, async () => { await press('Look at the end of the tubing'); await page.getByText('Over a sink').waitFor(); await shot('tubing'); await press('Over a sink'); await page.waitForFunction(() => document.documentElement.dataset.screen === 'stepsPage'); await press('The pump gave it'); }],
        [/Join the tubing/, () => press('It is joined, and dry')],
        [/new vial/i, () => press('The insulin is in order')], [/New reservoir/, () => press('The reservoir is new')], [/infusion set/, () => press('The set is changed')],
        [/Automation off/, () => press('Automation is off')], [/Drink/, () => press('I drink')], [/Set the alarm/, () => press('The alarm is set')],
        [/Get ketone/, () => press('I will get strips')], [/^Call/, () => press('Answered')], [/Eat/, () => press('It is eaten')], [/sugar now/, () => press('The sugar is taken')],
        [/test again/, () => press('I will test again')], [/Restock/, () => press('It is restocked')], [/Close this/, () => press('Close it')], [/“/, () => press('I have said it')],
        [/Stop the pump/, () => press('The pump is stopped')], [/glucagon/, () => press('Glucagon is given')], [/^Awake and swallowing/, () => press('The sugar is taken')], [/Wait until/, () => press('I wait')]];
      for (let before = '';;) {
        await page.waitForFunction(last => (document.querySelector('.step.cur .top')?.textContent ?? 'over') !== last, before);
        before = await page.evaluate(() => document.querySelector('.step.cur .top')?.textContent ?? 'over');
        if (before === 'over') break;
        const title = (await page.locator('.step.cur h1, .step.cur h2').innerText()).replace(/[\u2066-\u2069]/g, '');
        met.push(title.replace(/\s+/g, ' '));
        await shot(`step-${met.length}`);
        const found = own.find(([pattern]) => pattern.test(title));
        assert.ok(found, `no way past the step "${title}"`);
        await found[1]();
      }
      return met;
    },
    // The record as it lies in the phone.
    record: () => page.evaluate(() => new Promise((resolve, reject) => {
      const opening = indexedDB.open('stopgap');
      opening.onerror = () => reject(opening.error);
      opening.onsuccess = () => {
        const asked = opening.result.transaction('events').objectStore('events').getAll();
        asked.onsuccess = () => { resolve(asked.result.map(entry => JSON.parse(entry.text))); opening.result.close(); };
      };
    })),
  };
  };
  return {
    context, open, faults, host, says, address: host.address, stopServer: async () => { hosts.delete(host); await host.close(); },
    later: async minutes => context.clock.fastForward(minutes * 60000),
    // The clock is set; what the page runs by is not. `comeBack`: somebody looks at the page again, which they had not left.
    setClock: async at => context.clock.setSystemTime(new Date(at)),
    end: async () => { await context.close(); if (others.delete(other)) await other.close(); if (hosts.delete(host)) await host.close(); assert.deepEqual(faults, []); },
  };
};

export const digestOf = bytes => `sha256-${createHash('sha256').update(bytes).digest('base64')}`;
// One file of the release is another, and the page names that one.
const alter = async (device, path, change) => {
  const text = readFileSync(join(site, path), 'utf8'), altered = change(text);
  await device.context.route(`${device.address}${path}`, route => route.fulfill({ contentType: 'application/json', body: altered }));
  await device.context.route(device.address, async route => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: (await answer.text()).replaceAll(digestOf(text), digestOf(altered)) });
  });
};

// The demo plan taken in: where most journeys begin. `change` alters that plan as somebody's else would be.
export const withDemo = async (options = {}) => {
  const device = await phone(options);
  if (options.change) await alter(device, `demo/${options.child ? 'child' : 'adult'}.json`, text => {
    const plan = JSON.parse(text);
    options.change(plan);
    return JSON.stringify(plan);
  });
  const hand = await device.open();
  await hand.heading('Stopgap');
  await hand.tap(options.child ? 'Demo plan: a child' : 'Demo plan: an adult');
  await hand.heading(options.child ? 'Tilo Brandvik' : 'Maren Oduya');
  await hand.tap('Look round with this plan');
  await hand.page.getByRole('button', { name: seen('Start') }).waitFor();
  return { device, ...hand };
};

// From the home page to the advice, with nothing else the matter.
export const answer = async (hand, { glucose = '16.0', unit = 'mmol/L', ketones = '0.8', sees = [] } = {}) => {
  // On the home page it is "Start"; in an incident "Test now".
  await hand.touch(hand.page.getByRole('button', { name: /^\s*(Start|Test now)/ }));
  await hand.heading('Is any of these true now?');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys(glucose);
  await hand.tap(`Finger: ${glucose} ${unit}`);
  await hand.heading('Blood ketones now');
  await hand.keys(ketones);
  await hand.tap(`Yes, ketones are ${ketones}`);
  // A phone that just got a plan of a real person asks first what was given before.
  await hand.page.waitForFunction(() => document.documentElement.dataset.screen !== 'ketones');
  if (await hand.page.evaluate(() => document.documentElement.dataset.screen === 'freshAsk')) await hand.tap('No');
  await hand.heading('What do you see?');
  for (const fault of sees) await hand.tick(fault);
  await hand.tap(sees.length ? 'I see this' : 'None of these');
  await hand.heading('What insulin was already given?');
  // What is in the record of the last hours is listed already.
  await hand.touch(hand.page.getByRole('button', { name: /^\s*(Nothing|That is all)/ }));
};

// An amount as the page writes it.
export const inUnits = units => `${units} ${units === '1' ? 'unit' : 'units'}`;
export const inject = async (hand, units) => {
  await hand.heading('Inject now');
  await hand.tap('Type the units you see');
  await hand.heading('How many units do you see?');
  await hand.keys(units);
  await hand.tap(`I see ${inUnits(units)}`);
  await hand.heading(`Inject ${inUnits(units)} now`);
  await hand.tap(`I have injected ${inUnits(units)}`);
  // Written down before anything else is done: a page left earlier rightly asks whether it was injected.
  await hand.page.waitForFunction(() => document.documentElement.dataset.screen !== 'injectNow');
};

// 4 units by needle, every step done: between the looks.
export const betweenLooks = async options => {
  const hand = await withDemo(options);
  await answer(hand);
  await inject(hand, '4');
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  return hand;
};
