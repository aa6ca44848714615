// How many taps, and how long without a pause between them, from a cold start with the network gone to the dose of "stubborn high at night", at a
// quarter of this machine's speed. Not a timed test: the machine that runs tests may be busy.   node tests/pwa/taps.mjs [RUNS]
import { answer, close, withDemo } from './journeys/phone.mjs';

const runs = Number.parseInt(process.argv[2] ?? '5', 10);
// A tap that the page refused was done again by the same finger: counted once.
const counted = () => { addEventListener('click', event => { if (event.isTrusted) globalThis.tapsMade = (globalThis.tapsMade ?? 0) + 1; }); };
const took = [];
let taps;
for (let run = 0; run < runs; run += 1) {
  const home = await withDemo({ keeper: true, flowing: true, prepare: counted });
  await home.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await home.device.stopServer();
  await home.device.context.setOffline(true);
  await home.page.close();
  // Another page of the app first: the new tab itself is not counted.
  const cold = await home.device.open('danger.html');
  await (await home.device.context.newCDPSession(cold.page)).send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const start = process.hrtime.bigint();
  await cold.page.goto(home.device.address, { waitUntil: 'commit' });
  await answer(cold);
  await cold.heading('Inject now');
  took.push(Number(process.hrtime.bigint() - start) / 1e9);
  taps = await cold.page.evaluate(() => globalThis.tapsMade);
  await home.device.end();
}
took.sort((a, b) => a - b);
console.log(`${taps} taps, ${took[runs >> 1].toFixed(1)} s from cold to the dose (median of ${runs}, ${took[0].toFixed(1)} to ${took.at(-1).toFixed(1)})`);
await close();
