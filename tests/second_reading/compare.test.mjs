// The core against a second reading of its rules, written from their text alone and in another language: 5,000 made-up
// requests must be answered alike, as whole answers: the steps with their slots, holds, looks and what they are at.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { requests } from '../generate.mjs';
import { none as noneOf, top } from '../house/read.mjs';
import { answerAgain } from './answer.mjs';
import { withPlanFindings } from './plan_findings.mjs';
import { instant } from './record.mjs';
import { stepIds } from './steps.mjs';

const [count = 5000, seed = 20261125] = process.argv.slice(2).map(word => Number.parseInt(word, 10)).filter(Number.isInteger);
const least = count / 1000;   // how often each rule, gate, outcome, step, hold and caution must be reached at least

const withInstant = (name, value) => value && { ...value, [name]: instant(value[name]) };
const doseOf = ({ units, text, insulin, with: device, parts, working, otherBound, timesUsual }) => ({
  units, text, insulin, with: device, parts, ...(parts.rescue > 0 ? { working, otherBound } : {}), timesUsual });

// The answer of the core in the shape of the second reading's. What a page draws a syringe from, whom it offers to call
// besides, and the reasons are left out.
const ofTheCore = answer => ({
  outcome: answer.outcome, decidedBy: answer.decidedBy, gate: answer.gate, call: answer.call,
  callFirst: answer.callFirst, dose: answer.dose && doseOf(answer.dose), carbohydrateGrams: answer.carbohydrateGrams,
  given: withInstant('at', answer.given), steps: answer.steps,
  holds: answer.holds.map(hold => withInstant('until', hold)), hold: withInstant('until', answer.hold),
  looks: answer.looks.map(look => withInstant('at', look)), cautions: [...answer.cautions].sort(),
  incident: answer.incident,
});

// Keys in one order, so that texts can be compared.
const sorted = value => {
  if (Array.isArray(value)) return value.map(sorted);
  if (!value || typeof value !== 'object') return value;
  return Object.fromEntries(Object.keys(value).sort().map(name => [name, sorted(value[name])]));
};
const textOf = value => JSON.stringify(sorted(value));
// Instants as minutes from now.
const told = (value, now) =>
  JSON.stringify(value, (_, each) => (typeof each === 'number' && each > 1e9 ? `${(each - now) / 60} min` : each));
const differences = (core, second, now) => [...new Set([...Object.keys(core), ...Object.keys(second)])]
  .filter(name => textOf(core[name]) !== textOf(second[name]))
  .map(name => `${name}: core ${told(core[name], now)}, second ${told(second[name], now)}`);

const asked = [...requests(count, seed)];
const again = asked.map(request => answerAgain(request));

test(`${count} requests are answered as the second reading answers them`, () => {
  const input = `${asked.map(request => JSON.stringify(request)).join('\n')}\n`;
  const run = spawnSync(join(top, 'build/native/stopgap'), ['advise', '--lines'], { input, maxBuffer: 1 << 28 });
  const answers = run.stdout.toString().trimEnd().split('\n');
  assert.equal(answers.length, count);
  const found = [];
  let agreed = 0;
  asked.forEach((request, at) => {
    const answer = JSON.parse(answers[at]), now = instant(request.situation.now);
    const second = withPlanFindings(again[at], request, answer.planFindings ?? []);
    const here = answer.refused
      ? [`refused ${answers[at].slice(0, 200)}`] : differences(ofTheCore(answer), second, now);
    if (!answer.planFindings?.length) agreed += 1;
    const rule = `${second.decidedBy}${second.gate ? ` ${second.gate}` : ''}`;
    if (here.length) found.push(`request ${at + 1} of seed ${seed}, ${rule}: ${here.join('; ')}`);
  });
  assert.ok(agreed > count / 3, 'enough plans have no number that could not be agreed');
  noneOf(found.length > 20 ? [...found.slice(0, 20), `and ${found.length - 20} more`] : found);
});

const tooSeldom = (wanted, listsOf) => {
  const times = new Map(wanted.map(word => [word, 0]));
  for (const words of listsOf) for (const word of new Set(words)) times.set(word, (times.get(word) ?? 0) + 1);
  const tooFew = ([word, reached]) => reached < least || !wanted.includes(word);
  noneOf([...times].filter(tooFew).map(([word, reached]) => `${word}: ${reached}`));
};

const rules = ['LWE', 'EMR', 'TOO', 'LOW', 'FAL', 'PLN', 'FNG', 'TST', 'NOS', 'CAL', 'ANY', 'DWN', 'KET', 'EAT', 'INJ', 'WAI',
  'PMP', 'SGN', 'OFF', 'CHG', 'END', 'NON'];
const outcomes = ['lowEmergency', 'emergency', 'tooMuch', 'treatLow', 'noPlan', 'testGlucose', 'eatNow', 'testKetones', 'callTeam',
  'injectAtAnyGlucose', 'comingDown', 'inject', 'eatAndInject', 'eat', 'wait', 'correctByPump', 'offPump', 'changeSet', 'over',
  'lookAgain', 'hold', 'recordInDoubt', 'clockInDoubt', 'didYouInject'];
const holds = ['correction', 'ketoneDose', 'automation', 'longActing', 'allRapid'];
const cautions = ['couldGoLow', 'inGrace', 'staleWeight', 'cut', 'underStep', 'sensorOnly', 'noStrips', 'longActing',
  'newLineUnproven'];
const schoolSteps = ['confirmChild', 'callHome'];   // no request here is a school's

test('every rule decides, every gate closes and every outcome is reached', () => {
  tooSeldom(rules, again.map(answer => [answer.decidedBy]));
  tooSeldom(['REC', 'CLK', 'ASK', 'HLD'], again.map(answer => (answer.gate ? [answer.gate] : [])));
  tooSeldom(outcomes, again.map(answer => [answer.outcome]));
});

test('every step, hold and caution is reached', () => {
  tooSeldom(stepIds.filter(id => !schoolSteps.includes(id)), again.map(answer => answer.steps.map(({ id }) => id)));
  tooSeldom(holds, again.map(answer => answer.holds.map(({ what }) => what)));
  tooSeldom(cautions, again.map(answer => answer.cautions));
});

test('every gate closes after each rule that may meet it', () => {
  const closing = ['KET', 'INJ', 'PMP', 'EMR'].flatMap(rule => ['CLK', 'ASK', 'HLD'].map(gate => `${rule} ${gate}`));
  const met = new Set(again.map(({ decidedBy, gate }) => `${decidedBy} ${gate}`));
  noneOf(closing.filter(pair => !met.has(pair)));
});

// What a request may say, and whether some say it.
const all = asked.flatMap(({ record }) => record.events);
const some = (list, holds) => assert.ok(list.filter(holds).length >= least, String(holds));
test('every key that a rule reads occurs', () => {
  const situations = asked.map(({ situation }) => situation);
  some(situations, situation => situation.notBefore);
  some(situations, situation => situation.recordInDoubt === true);
  some(situations, situation => situation.recordInDoubt === false);
  some(situations, situation => situation.glucose?.noMeter);
  some(situations, situation => situation.mistake);
  some(all, event => event.insteadOf);
  some(all, event => event.basalHours);
  some(all, event => event.zonesEast !== undefined);
  some(all, event => event.readBack !== undefined);
  some(all, event => event.sure === false);
  some(all, event => event.kind === 'expires');
  some(all, event => event.kind === 'strike' && event.reason === 'misTap');
  some(all, event => event.kind === 'call' && event.for);
  some(all, event => event.kind === 'incident' && event.state === 'closed');
  some(asked, ({ plan }) => plan.pen && plan.syringe);
  some(asked, ({ plan }) => plan.agreement.retyped.some(({ finding }) => finding));
  assert.ok(new Set(asked.flatMap(({ plan }) => plan.contacts.map(({ when }) => when))).size > 8);
});
