// A phone that dies in the middle: whatever was written stands, nothing is doubled, and a dose that was shown is asked about.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, close, inject, seen, withDemo } from './phone.mjs';

after(close);

const count = async (hand, kind) => (await hand.record()).filter(event => event.kind === kind).length;

test('a reload after every answer comes back to the same question, with the answers and without a second entry', async () => {
  const hand = await withDemo();
  const again = async () => { await hand.page.reload(); };
  await hand.tap('Start');
  await again();
  await hand.heading('Is any of these true now?');
  await hand.tick('Vomited once');
  await again();
  assert.equal(await hand.page.getByRole('checkbox', { name: seen('Vomited once') }).getAttribute('aria-checked'), 'true');
  await hand.tick('Vomited once');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await again();
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await again();
  await hand.heading('Blood ketones now');
  await hand.sees('16.0 mmol/L');
  assert.equal(await count(hand, 'glucose'), 1);
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.heading('What do you see?');
  await again();
  await hand.heading('What do you see?');
  assert.equal(await count(hand, 'ketones'), 1);
  await hand.tap('None of these');
  await hand.heading('What insulin was already given?');
  await again();
  await hand.heading('What insulin was already given?');
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  assert.equal(await count(hand, 'doseShown'), 1);

  // The dose was on the screen: nobody but the person knows whether it went in.
  await again();
  await hand.heading('Did you inject it?');
  await hand.sees('4 units were shown at 03:05.');
  await hand.sees('Rapid-acting: lispro');
  await hand.shot('did-you-inject');
  await again();
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, 4 units');
  await hand.heading('When was that?');
  await again();
  await hand.heading('When was that?');
  await hand.tap('At 03:05');
  await hand.heading('Change the infusion set');
  assert.equal(await count(hand, 'injection'), 1);
  await again();
  await hand.heading('Change the infusion set');
  await hand.tap('The set is changed');
  await hand.heading('New reservoir');
  await again();
  await hand.heading('New reservoir');
  await hand.sees('The set is changed');
  assert.equal(await count(hand, 'changed'), 1);
  assert.equal(await count(hand, 'injection'), 1);
  assert.equal(await count(hand, 'incident'), 1);
  await hand.device.end();
});

test('not injected after all: it is written down as refused, and the dose is worked out again', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('No, nothing was injected');
  await hand.heading('Inject now');
  assert.equal(await count(hand, 'doseRefused'), 1);
  assert.equal(await count(hand, 'injection'), 0);
  await hand.device.end();
});

test('not sure whether it went in: it counts as given', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.tap('I am not sure');
  await hand.heading('Change the infusion set');
  const [given] = (await hand.record()).filter(event => event.kind === 'injection');
  assert.deepEqual([given.units, given.sure], [4, false]);
  await hand.sees('Do not inject a correction before 07:05.');
  await hand.device.end();
});

test('a dose that stands too long on the screen is asked about, not shown as if it were new', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.device.later(40);
  await hand.heading('Did you inject it?');
  await hand.device.end();
});

test('a second tap adds nothing', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.page.getByRole('button', { name: seen('Finger: 16.0 mmol/L') }).dblclick();
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.page.getByRole('button', { name: seen('Yes, ketones are 0.8') }).dblclick();
  await hand.heading('What do you see?');
  await hand.tap('None of these');
  await hand.heading('What insulin was already given?');
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  await hand.tap('Type the units you see');
  await hand.keys('4');
  await hand.tap('I see 4 units');
  await hand.page.getByRole('button', { name: seen('I have injected 4 units') }).dblclick();
  await hand.heading('Change the infusion set');
  await hand.page.getByRole('button', { name: seen('The set is changed') }).dblclick();
  await hand.heading('New reservoir');
  for (const kind of ['glucose', 'ketones', 'injection', 'changed']) assert.equal(await count(hand, kind), 1, kind);
  await hand.device.end();
});

test('an answer that is changed strikes the one before it, and both stay in the record', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('18.0');
  await hand.tap('Finger: 18.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.tap('Change');
  await hand.heading('Your answers');
  await hand.shot('answers');
  await hand.tap('Glucose: 18.0 mmol/L');
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  const record = await hand.record();
  assert.deepEqual(record.filter(event => event.kind === 'glucose').map(event => event.value), [18, 16]);
  assert.equal(record.find(event => event.kind === 'strike').target, record.find(event => event.kind === 'glucose').id);
  await hand.device.end();
});

test('a second tab waits and says why; when the first is closed it goes on where that was', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.heading('Is any of these true now?');
  const other = await hand.device.open();
  await other.heading('This tab waits');
  await other.shot('other-tab');
  await hand.page.close();
  await other.heading('Is any of these true now?');
  await hand.device.end();
});

test('danger signs answered long ago are asked again, the record keeps the readings', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.device.later(16);
  await hand.heading('Is any of these true now?');
  assert.equal(await count(hand, 'glucose'), 1);
  await hand.device.end();
});

test('an amount that cannot be is refused at the keys, and never gets into the record', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.tap('Type the units you see');
  await hand.keys('0.02');
  await hand.tap('I see 0.02 units');
  await hand.sees('That cannot be.');
  await hand.shot('typed-refused');
  assert.equal(await count(hand, 'injection'), 0);
  await hand.page.reload();
  await hand.heading('Did you inject it?');
  await hand.device.end();
});

test('a look that is late comes before the steps that are still open', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  await hand.heading('Change the infusion set');
  await hand.device.later(70);
  await hand.heading('The look of 04:05 is');
  await hand.tap('Back to the open steps');
  await hand.heading('Change the infusion set');
  await hand.device.end();
});
