// Units against a UCUM library that knows nothing of this project: what the core makes of a reading in the other unit, and
// that insulin's unit is the one of medicines.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answers, childPlan, plan, record } from './asking.mjs';
import { converter } from './bundle_checks.mjs';

// 18.016 mg/dL for 1 mmol/L is a molar mass of 180.16 g/mol.
const molarMass = 180.16;
const converted = (value, from, to, molecularWeight = molarMass) => {
  const { status, toVal, msg } = converter.convertUnitTo(from, value, to, { molecularWeight });
  assert.equal(status, 'succeeded', msg?.join(' '));
  return toVal;
};
const night = '2026-11-25T03:10:00+00:00';
const ask = (of, value, unit) => ({ plan: of, record: record([], of),
  situation: { now: night, glucose: { value, unit, from: 'finger' }, ketones: { blood: 1.0 }, signs: [], seen: [] } });
const schedule = entries => entries[0].value;   // at 03:10 the entry from midnight

// The working shows (glucose - target) / factor to two decimals; the rest is the library's arithmetic.
const compare = (of, readings, unit) => {
  const lines = answers('advise', readings.map(value => ask(of, value, unit)));
  const target = schedule(of.day.target), factor = schedule(of.day.correctionFactor), ceiling = of.limits.dosingCeiling;
  let compared = 0;
  lines.forEach((line, at) => {
    const { dose } = JSON.parse(line);
    if (!dose) return;
    const glucose = Math.min(converted(readings[at], unit, of.glucoseUnit), ceiling);
    const expected = (glucose - target) / factor;
    assert.ok(Math.abs(Number(dose.working.correction) - expected) <= 0.005 + 1e-9, `${readings[at]} ${unit}: ${dose.working.correction}, not ${expected}`);
    compared += 1;
  });
  return compared;
};
const range = (from, to, step) => Array.from({ length: Math.round((to - from) / step) + 1 }, (_, at) => Math.round((from + at * step) * 10) / 10);

test('mg/dL read by a plan in mmol/L', () => assert.ok(compare(plan, range(181, 600, 1), 'mg/dL') > 400));
test('mmol/L read by a plan in mg/dL', () => assert.ok(compare(childPlan, range(14.0, 33.3, 0.1), 'mmol/L') > 150));

test('the published molar mass of glucose gives the same at one decimal but for two readings of 581', () => {
  const tenth = (value, mass) => Math.round(converted(value, 'mg/dL', 'mmol/L', mass) * 10);
  const differing = range(20, 600, 1).filter(value => tenth(value, molarMass) !== tenth(value, 180.156));
  assert.deepEqual(differing, [345, 572]);
});

test('[iU] is a unit, is not the enzyme unit, and no other case of it is one', () => {
  assert.equal(converter.validateUnitString('[iU]').status, 'valid');
  assert.equal(converter.convertUnitTo('[iU]', 1, 'U').status, 'failed');
  for (const wrong of ['IU', 'iU', 'units', 'MMOL/L']) assert.notEqual(converter.validateUnitString(wrong).status, 'valid', wrong);
});
