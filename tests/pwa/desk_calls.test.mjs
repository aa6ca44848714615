// What the desk asks the core before and beside the review: what a number may be, and how a plan stands on a day. Both sides.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { load } from '../../wasm/core.mjs';

const top = path => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const core = await load();
// Every request is asked of both builds; they must answer alike.
const ask = (call, request) => {
  const text = JSON.stringify(request);
  const native = spawnSync(top('build/native/stopgap'), [call], { input: text }).stdout.toString().trimEnd();
  const wasm = core.ask(call, text);
  assert.equal(wasm.trimEnd(), native, call);
  return JSON.parse(wasm);
};
const plan = name => JSON.parse(readFileSync(top(`pwa/demo/${name}.json`), 'utf8'));

// A pattern as a place in the demo plan: the first of each list.
const place = pattern => pattern.split('/').slice(2).map(step => (step === '*' ? '0' : step));
const withNumber = (doc, steps, literal) => {
  const marked = structuredClone(doc);
  let at = marked;
  for (const step of steps.slice(0, -1)) at = at[step] ??= {};
  at[steps.at(-1)] = '@here@';
  return JSON.stringify(marked).replace('"@here@"', literal);
};
const refusedAt = (text, path) => JSON.parse(core.ask('reviewPlan', `{"plan":${text}}`)).refused?.find(entry => entry.path === path);
// One step of the last decimal above a decimal text, as a text: "25.0" and 1 make "25.1".
const above = literal => {
  const digits = literal.includes('.') ? literal.split('.')[1].length : 0;
  const count = String(BigInt(literal.replace('.', '')) + 1n).padStart(digits + 1, '0');
  return digits ? `${count.slice(0, -digits)}.${count.slice(-digits)}` : count;
};

// The first page of a list may be bound further: its first entry stands at 0.
const bound = new Set(['/plan/ketones/columns/*', '/plan/ketones/rows/*/from']);

for (const [name, unit] of [['adult', 'mmol/L'], ['child', 'mg/dL']]) {
  test(`the ranges told are the ranges judged by, ${unit}`, () => {
    const { ranges } = ask('ranges', { unit });
    let asked = 0;
    for (const [pattern, range] of Object.entries(ranges)) {
      if (!pattern.startsWith('/plan/')) continue;
      const steps = place(pattern);
      const path = `/plan/${steps.join('/')}`;
      const told = range.choices ? range.choices.join(', ') : `${range.from} to ${range.to}`;
      const beyond = refusedAt(withNumber(plan(name), steps, range.choices ? '999' : above(range.to)), path);
      assert.equal(beyond?.reason, 'outOfRange', `${path} ${above(range.to ?? '999')}`);
      assert.equal(beyond.accepted, told, path);
      if (!range.choices && !bound.has(pattern)) {
        const within = refusedAt(withNumber(plan(name), steps, range.to), path);
        assert.ok(!within || within.reason === 'contradiction', `${path} ${range.to}: ${JSON.stringify(within)}`);
      }
      asked += 1;
    }
    assert.ok(asked > 45, `${asked} ranges`);
  });
}

// From the contract's table of numbers, by hand.
test('the ranges are those of the contract', () => {
  const at = (unit, pattern) => { const { from, to, step } = ask('ranges', { unit }).ranges[pattern]; return [from, to, step]; };
  assert.deepEqual(at('mmol/L', '/plan/high/trigger'), ['8.0', '25.0', '0.1']);
  assert.deepEqual(at('mg/dL', '/plan/high/trigger'), ['144', '450', '1']);
  assert.deepEqual(at('mmol/L', '/plan/day/correctionFactor/*/value'), ['0.10', '30.00', '0.01']);
  assert.deepEqual(at('mg/dL', '/plan/day/correctionFactor/*/value'), ['2.0', '540.0', '0.1']);
  assert.deepEqual(at('mmol/L', '/plan/limits/rollingShare'), ['0.010', '1.000', '0.001']);
  assert.deepEqual(at('mmol/L', '/plan/limits/lockHours'), ['1.00', '8.00', '0.25']);
  assert.deepEqual(at('mmol/L', 'cell/addUnits'), ['0.5', '2.0', '0.5']);
  assert.deepEqual(ask('ranges', { unit: 'mmol/L' }).ranges['/plan/syringe/capacity'].choices, ['30', '50', '100']);
  assert.deepEqual(ask('ranges', { unit: 'mmol/L' }).houseRules, ['rollingShare', 'matchedCarbohydrate', 'extraNotReduced']);
  assert.equal(ask('ranges', { unit: 'mmol' }).refused[0].reason, 'wrongUnit');
});

// The adult's demo plan: review by 2027-04-12, 30 days of grace. 30 days before it is 13 March, the last day of grace 12 May.
test('a plan stands agreed, due for review, in grace and expired on the right days', () => {
  const doc = plan('adult');
  const on = today => ask('standing', { plan: doc, today });
  assert.deepEqual(on('2027-03-12'), { standing: 'agreed', lastDay: '2027-05-12' });
  assert.equal(on('2027-03-13').standing, 'reviewDue');
  assert.equal(on('2027-04-12').standing, 'reviewDue');
  assert.equal(on('2027-04-13').standing, 'inGrace');
  assert.equal(on('2027-05-12').standing, 'inGrace');
  assert.equal(on('2027-05-13').standing, 'expired');
  for (const status of ['draft', 'superseded', 'withdrawn'])
    assert.equal(ask('standing', { plan: { ...doc, agreement: { ...doc.agreement, status } }, today: '2030-01-01' }).standing, status);
  assert.equal(ask('standing', { plan: doc, today: '2027-02-30' }).refused[0].path, '/today');
});

test('what is typed wrongly is told even where twenty things are still missing', () => {
  const empty = { format: 'stopgap.plan', version: 1, id: 'p-1', revision: 1, person: {}, agreement: { status: 'draft' }, pump: {}, day: {}, high: {}, ketones: {}, limits: {}, squaring: {}, offPump: {}, low: { grams: 'x' } };
  const { refused } = ask('reviewPlan', { plan: empty });
  assert.equal(refused.length, 20);
  assert.deepEqual(refused.filter(entry => entry.reason !== 'missing').map(entry => [entry.path, entry.reason]), [['/plan/low/grams', 'wrongType']]);
});
