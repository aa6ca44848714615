// Ketones on the first look. Worked by hand with the adult demo plan at 03:05:
//   16.0 / 0.8: correction (16.0 - 7.0) / 2.5 = 3.60; row 0.6, last column: 10 % of 46 = 4.60; the greater, down: 4 units.
// With the child demo plan at 03:05 (target 120, factor 90, half-unit marks):
//   290 / 0.8: correction 170 / 90 = 1.89; row 0.6, last column: 0.06 x 28 = 1.68; the greater, down: 1.5 units.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, close, inject, withDemo } from './phone.mjs';

after(close);

test('ketones on first look: four units, both ways of squaring, no dose for ketones before two hours', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.sees('4 units lispro, by needle');
  await hand.sees('Draw 4 marks.');
  await hand.sees('1.1 times your usual correction');
  await hand.shot('dose-4');
  await hand.tap('Why?');
  await hand.sees('Rule KET decided.');
  await hand.shot('why');
  await hand.tap('Back');
  // A different number is asked about, and nothing is recorded by typing it.
  await hand.tap('Type the units you see');
  await hand.keys('40');
  await hand.tap('I see 40 units');
  await hand.heading('You typed 40 units. The plan says 4 units.');
  await hand.shot('different');
  assert.equal((await hand.record()).filter(event => event.kind === 'injection').length, 0);
  await hand.tap('Look again at the syringe');
  await hand.heading('How many units do you see?');
  await hand.keys('4');
  await hand.tap('I see 4 units');
  await hand.tap('I have injected 4 units');
  await hand.heading('Change the infusion set');
  const met = await hand.steps(name => hand.shot(`ketones-${name}`));
  assert.deepEqual(met, ['Change the infusion set', 'New reservoir', 'Pump: 4 units into a sink', 'Join the tubing to the new set again', 'Automation off until 07:05', 'Drink water', 'Set the alarm for 04:05']);
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  await hand.sees('Until then, do not inject for ketones.');
  await hand.sees('Until then, keep automation off.');
  const record = await hand.record();
  const given = record.filter(event => event.kind === 'injection');
  assert.equal(given.length, 1);
  assert.deepEqual([given[0].units, given[0].with, given[0].parts.rescue, given[0].glucose.value, given[0].ketones.blood], [4, 'syringe', 4, 16, 0.8]);
  assert.equal(record.find(event => event.kind === 'automation').state, 'paused');
  assert.deepEqual(record.filter(event => event.kind === 'changed').map(event => event.what[0]), ['set', 'reservoir']);

  // An hour later, the same readings: no second dose, and no way past it.
  await hand.device.later(60);
  await answer(hand);
  await hand.heading('Do not inject now');
  await hand.sees('4 units at 03:05');
  await hand.shot('hold');
  assert.equal(await hand.page.getByRole('button', { name: /inject|units/i }).count(), 0);
  await hand.device.end();
});

test('a child, mg/dL, half-unit marks: one and a half units, and the pump has no tubing to take off', async () => {
  const hand = await withDemo({ child: true });
  await answer(hand, { glucose: '290', unit: 'mg/dL' });
  await hand.heading('Inject now');
  await hand.sees('1.5 units aspart, by needle');
  await hand.sees('One mark: 0.5 units. Draw 3 marks.');
  await hand.shot('dose-child');
  await inject(hand, '1.5');
  const met = await hand.steps();
  assert.deepEqual(met, ['Change the infusion set', 'New reservoir', 'Automation off until 07:05', 'Drink water', 'Set the alarm for 04:05']);
  await hand.device.end();
});

test('the other unit cannot slip in: the core refuses it, and the change of unit is said in words', async () => {
  const hand = await withDemo({ child: true });
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('16');
  await hand.tap('Finger: 16 mg/dL');
  await hand.sees('That cannot be. Possible: 18 to 900.');
  await hand.shot('glucose-refused');
  await hand.tap('Erase');
  await hand.tap('Erase');
  await hand.tap('My meter says mmol/L');
  await hand.sees('You type in mmol/L now.');
  await hand.keys('16.1');
  await hand.tap('Finger: 16.1 mmol/L');
  await hand.heading('Blood ketones now');
  await hand.sees('16.1 mmol/L');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'glucose').map(event => [event.value, event.unit]), [[16.1, 'mmol/L']]);
  await hand.device.end();
});
