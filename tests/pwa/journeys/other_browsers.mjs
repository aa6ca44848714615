// Two browsers of other makers, driven alike: a page that is opened, read again, asked and photographed. Firefox is driven by a kept library,
// WebKit by the W3C WebDriver protocol that its own driver speaks.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import puppeteer from 'puppeteer-core';

const screens = join(fileURLToPath(new URL('../../..', import.meta.url)), 'build/screens');
const size = { width: 390, height: 844 };
const keep = (name, bytes) => { if (!process.env.STOPGAP_SCREENS) return; mkdirSync(screens, { recursive: true }); writeFileSync(join(screens, `${name}.png`), bytes); };
const environment = { ...process.env, TZ: 'Europe/Berlin', LANG: 'en_US.UTF-8' };

export const firefox = async () => {
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath: '/usr/bin/firefox-esr', headless: true, env: environment, timeout: 120000 });
  const page = await browser.newPage();
  await page.setViewport(size);
  return {
    open: address => page.goto(address),
    again: () => page.reload(),
    ask: (task, ...words) => page.evaluate(task, ...words),
    shot: async name => keep(`firefox-${name}`, await page.screenshot()),
    end: () => browser.close(),
  };
};

const freePort = () => new Promise((resolve, reject) => {
  const probe = createServer().once('error', reject).listen(0, '127.0.0.1', () => { const { port } = probe.address(); probe.close(() => resolve(port)); });
});
const until = async (what, deed) => {
  for (let tries = 0; tries < 300; tries += 1) {
    const done = await deed().catch(() => undefined);
    if (done !== undefined) return done;
    await new Promise(resolve => { setTimeout(resolve, 100); });
  }
  throw new Error(`${what} does not come.`);
};

export const webkit = async () => {
  const port = await freePort();
  const home = mkdtempSync(join(tmpdir(), 'stopgap-webkit-'));
  // A group of its own: the driver, the browser and the screen they draw on all end with it.
  const program = spawn('xvfb-run', ['-a', 'WebKitWebDriver', `--port=${port}`, '--host=127.0.0.1'],
    { env: { ...environment, HOME: home, XDG_RUNTIME_DIR: home, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' }, stdio: 'ignore', detached: true });
  const command = async (path, body, method = 'POST') => {
    const reply = await fetch(`http://127.0.0.1:${port}${path}`, { method, headers: { 'Content-Type': 'application/json' }, body: method === 'POST' ? JSON.stringify(body ?? {}) : undefined });
    const { value } = await reply.json();
    if (!reply.ok) throw new Error(`${path}: ${value.error} ${value.message}`);
    return value;
  };
  await until('The driver of WebKit', () => command('/status', null, 'GET'));
  const browser = ['4.1', '4.0'].map(version => `/usr/lib/${process.arch === 'arm64' ? 'aarch64' : 'x86_64'}-linux-gnu/webkit2gtk-${version}/MiniBrowser`).find(path => existsSync(path));
  const { sessionId } = await command('/session', { capabilities: { alwaysMatch: { browserName: 'MiniBrowser', 'webkitgtk:browserOptions': { binary: browser, args: ['--automation'] } } } });
  const session = `/session/${sessionId}`;
  await command(`${session}/timeouts`, { script: 30000, pageLoad: 60000 });
  await command(`${session}/window/rect`, size);
  return {
    open: address => command(`${session}/url`, { url: address }),
    again: () => command(`${session}/refresh`),
    ask: (task, ...words) => command(`${session}/execute/async`, {
      script: `const done = arguments[arguments.length - 1]; Promise.resolve((${task})(...[...arguments].slice(0, -1))).then(done, problem => done({ problem: String(problem) }));`, args: words }),
    shot: async name => keep(`webkit-${name}`, Buffer.from(await command(`${session}/screenshot`, null, 'GET'), 'base64')),
    end: async () => {
      await command(session, null, 'DELETE').catch(() => {});
      try { process.kill(-program.pid); } catch { /* it has ended by itself */ }
      rmSync(home, { recursive: true, force: true });
    },
  };
};
