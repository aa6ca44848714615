// What must not wait: danger signs, a low, an amount nobody knows, a plan that may not be used.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, betweenLooks, close, inject, withDemo } from './phone.mjs';

after(close);

test('vomiting twice with ketones unknown: hospital at once, before any further question', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tick('Vomited twice or more');
  await hand.shot('signs-ticked');
  await hand.tap('Yes, this is true now');
  await hand.heading('Go to hospital now');
  assert.equal(await hand.page.getByRole('link', { name: /112/ }).getAttribute('href'), 'tel:112');
  await hand.sees('Ketoacidosis. Insulin pump failure.');
  await hand.shot('help');
  // The questions go on only after that, and the answer can then carry a dose for the way.
  await hand.tap('Test while you wait');
  await hand.heading('Glucose now');
  await hand.keys('22.0');
  await hand.tap('Finger: 22.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.keys('3.2');
  await hand.tap('Yes, ketones are 3.2');
  await hand.heading('What do you see?');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.heading('Go to hospital now');
  await hand.shot('help-dose');
  await hand.tap('The call is answered');
  for (let n = 0; n < 4 && !(await hand.page.getByRole('heading', { name: /Only for the way/ }).isVisible()); n += 1) {
    await hand.page.waitForTimeout(300);
    const say = hand.page.getByRole('button', { name: /I have said it/ });
    if (await say.isVisible()) await hand.touch(say);
  }
  await hand.heading('Only for the way');
  // 20 % of 46 = 9.20 against (20.0 - 7.0) / 2.5 = 5.20: down to 9 units.
  await hand.sees('9 units lispro, by needle');
  await hand.shot('dose-way');
  await hand.device.end();
});

test('drowsy and the glucose not read: call, never insulin', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tick('Drowsy, hard to wake');
  await hand.tap('Yes, this is true now');
  await hand.heading('Call for help now');
  await hand.sees('Do not give insulin.');
  await hand.shot('help-low');
  await hand.device.end();
});

const low = { 'a number': async hand => { await hand.keys('2.8'); await hand.tap('Finger: 2.8 mmol/L'); }, 'LO': async hand => { await hand.tap('Meter says LO'); await hand.tap('On the meter, from a finger'); } };
for (const [how, type] of Object.entries(low)) test(`drowsy, then a low typed as ${how}: the questions end at once, and whoever is there chooses between glucagon and sugar`, async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tick('Drowsy, hard to wake');
  await hand.tap('Yes, this is true now');
  await hand.heading('Call for help now');
  await hand.tap('Test while you wait');
  await hand.heading('Glucose now');
  await type(hand);
  // No question about ketones, and none after it.
  await hand.heading('Call for help now');
  await hand.misses('Test while you wait');
  await hand.sees('“Type 1 diabetes. A severe low. Insulin pump.”');
  await hand.misses('Ketoacidosis');
  await hand.sees('While somebody calls Stop the pump Not awake or not swallowing: glucagon, nasal 3 mg Awake and swallowing: 15 grams of sugar');
  await hand.shot(`help-low-${how.length}`);
  await hand.tap('The call is answered');
  await hand.sees('Not awake or not swallowing');
  const order = (await hand.page.locator('.steps .txt, .step.cur h1, .step.cur h2').allInnerTexts()).map(text => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' '));
  assert.deepEqual(order, ['The call is answered', '“Type 1 diabetes. A severe low. Insulin pump.”', 'Stop the pump', 'Not awake or not swallowing: glucagon, nasal 3 mg', 'Awake and swallowing: 15 grams of sugar',
    'Wash a finger and test again', 'Set the alarm for 03:20']);
  await hand.tap('I have said it');
  await hand.tap('The pump is stopped');
  await hand.sees('Lay the person on one side.');
  await hand.sees('Do not put anything in the mouth.');
  await hand.shot('low-glucagon');
  await hand.tap('Awake and swallowing: sugar instead');
  await hand.sees('Only if the person swallows well. Do not inject.');
  await hand.shot('low-sugar');
  await hand.tap('The sugar is taken');
  await hand.heading('Call for help now');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'carbs').map(event => event.grams), [15]);
  assert.equal((await hand.record()).filter(event => event.kind === 'ketones').length, 0);
  await hand.device.end();
});

test('vomiting again, then a low: help for a severe low at once, no ketone question', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tick('Vomited twice or more');
  await hand.tap('Yes, this is true now');
  await hand.heading('Go to hospital now');
  await hand.tap('Test while you wait');
  await hand.keys('3.0');
  await hand.tap('Finger: 3.0 mmol/L');
  await hand.heading('Call for help now');
  await hand.sees('A severe low.');
  await hand.misses('Test while you wait');
  await hand.device.end();
});

test('fitting, and low: nothing in the mouth, glucagon alone', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tick('Fitting, or cannot swallow');
  await hand.tap('Yes, this is true now');
  await hand.heading('Call for help now');
  await hand.sees('While somebody calls Stop the pump Give glucagon: nasal 3 mg');
  await hand.sees('Do not put anything in the mouth.');
  await hand.misses('grams of sugar');
  await hand.shot('help-fitting');
  await hand.device.end();
});

test('a low glucose is answered at once with sugar, not with the next question', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('3.2');
  await hand.tap('Finger: 3.2 mmol/L');
  await hand.heading('Glucose is low');
  await hand.sees('Take 15 grams of sugar now');
  await hand.misses('Inject');
  await hand.shot('low');
  await hand.steps(name => hand.shot(`low-${name}`));
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  await hand.sees('03:20');
  await hand.shot('low-waiting');
  await hand.device.end();
});

test('HI is tested again from a washed finger before it counts, and then leads to the dose for HI', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.tap('Meter says HI');
  await hand.tap('On the meter, from a finger');
  await hand.heading('Test glucose from a finger');
  await hand.shot('test-glucose');
  await hand.tap('Type the finger reading');
  await hand.heading('Glucose, second test');
  await hand.tap('Meter says HI');
  await hand.tap('On the meter, from a finger');
  await hand.heading('Blood ketones now');
  await hand.keys('1.0');
  await hand.tap('Yes, ketones are 1.0');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  // ketones.hi: 14 % of 46 = 6.44, more than the 10 % of its row: down to 6 units.
  await hand.sees('6 units lispro, by needle');
  await hand.shot('dose-hi');
  await hand.device.end();
});

test('ketones not tested while high: no dose, the test comes first', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.tap('Not tested yet');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.heading('Test ketones now');
  await hand.sees('Do not inject before ketones are tested.');
  await hand.shot('test-ketones');
  await hand.device.end();
});

test('nobody knows what was given: no number, a call', async () => {
  const hand = await withDemo();
  await hand.tap('Start');
  await hand.tap('I do not know');
  await hand.heading('Not sure? Call someone now.');
  await hand.shot('unsure-signs');
  await hand.tap('Go on to the glucose');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.tap('None of these');
  await hand.heading('What insulin was already given?');
  await hand.tap('I am not sure');
  await hand.heading('Do not inject now');
  await hand.sees('Nobody knows what is still working. Call first.');
  await hand.misses('Type the units');
  await hand.shot('unsure-given');
  await hand.device.end();
});

test('insulin given off-body while still joined to the body: too much, said at once', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  await hand.tap('The set is changed');
  await hand.sees('New reservoir');
  await hand.tap('The reservoir is new');
  // Where it ends is asked before the pump gives anything: nothing is written down while nothing was given.
  await hand.heading('Pump: 4 units into a sink');
  await hand.misses('The pump gave it');
  await hand.tap('Look at the end of the tubing');
  await hand.heading('Where is the end of the tubing now?');
  await hand.sees('Look before the pump gives 4 units.');
  await hand.shot('tubing-before');
  await hand.tap('At the body');
  await hand.heading('Do not let the pump give it');
  await hand.sees('Take the tubing off the body first.');
  await hand.shot('tubing-not');
  assert.equal((await hand.record()).filter(event => event.kind === 'offBody').length, 0);
  // Too late: it has given it already.
  await hand.tap('The pump has already given 4 units');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'offBody').map(({ units, tubingEnd }) => [units, tubingEnd]), [[4, 'body']]);
  await hand.heading('Too much insulin may be working');
  await hand.sees('Do not inject rapid insulin.');
  await hand.shot('too-much-tubing');
  await hand.device.end();
});

test('off-body: the end over a sink first, then the pump gives, and the tubing is joined again as a step of its own', async () => {
  const hand = await withDemo();
  await answer(hand);
  await inject(hand, '4');
  await hand.tap('The set is changed');
  await hand.tap('The reservoir is new');
  await hand.tap('Look at the end of the tubing');
  await hand.tap('I am not sure');
  await hand.heading('Do not let the pump give it');
  await hand.sees('Follow the tubing with your fingers to its end.');
  await hand.tap('Look at its end again');
  await hand.tap('Over a sink');
  await hand.heading('Pump: 4 units into a sink');
  // A look that is some time ago says nothing about now: a tubing may have been joined meanwhile.
  await hand.device.later(16);
  await hand.page.reload();
  await hand.heading('Pump: 4 units into a sink');
  await hand.misses('The pump gave it');
  await hand.tap('Look at the end of the tubing');
  await hand.tap('Over a sink');
  await hand.tap('It gave another number');
  await hand.keys('3');
  await hand.tap('Yes, 3 units');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'offBody').map(({ units, tubingEnd }) => [units, tubingEnd]), [[3, 'sink']]);
  await hand.heading('Join the tubing to the new set again');
  await hand.sees('Look: no drops, no wet.');
  await hand.shot('join-tubing');
  await hand.tap('It is joined, and dry');
  await hand.heading('Automation off until 07:05');
  await hand.device.end();
});

test('the dose given twice: too much insulin, said at once, with food and no more insulin', async () => {
  const hand = await betweenLooks();
  await hand.tap('Write something down');
  await hand.shot('change');
  await hand.tap('Something went wrong with a dose');
  await hand.heading('What went wrong?');
  await hand.shot('mistake');
  await hand.tap('Given twice');
  await hand.tap('Rapid-acting: lispro');
  await hand.heading('How many units went in that are not written here?');
  await hand.keys('4');
  await hand.tap('Yes, 4 units');
  await hand.tap('Just now');
  await hand.heading('Too much insulin may be working');
  await hand.shot('too-much');
  await hand.device.end();
});
