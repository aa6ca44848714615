// The case files of tests/cases for the second reading: the whole request of a case, and the answer in the words of
// its `expect`.
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answerAgain } from './answer.mjs';
import { instant, offsetOf } from './record.mjs';

const tests = join(dirname(fileURLToPath(import.meta.url)), '..');
const night = '2026-11-25T03:10:00+00:00';

export const caseFiles = () => readdirSync(join(tests, 'cases'), { withFileTypes: true })
  .filter(entry => entry.isDirectory())
  .flatMap(({ name }) => readdirSync(join(tests, 'cases', name)).sort().map(file => join(tests, 'cases', name, file)));

const planOf = base => {
  const path = base === 'example' ? 'cases/example_plan.json' : `../pwa/demo/${base}.json`;
  return JSON.parse(readFileSync(join(tests, path), 'utf8'));
};

// Sets what a JSON pointer names; null takes it away.
const change = (document, changes) => {
  for (const [pointer, value] of Object.entries(changes)) {
    const names = pointer.split('/').slice(1), last = names.pop();
    const holder = names.reduce((node, name) => node[name], document);
    if (value === null) delete holder[last];
    else holder[last] = value;
  }
};

const minutesBefore = (now, minutes) => {
  const offset = /(Z|[+-]\d\d:\d\d)$/.exec(now)[0];
  const local = new Date((instant(now) + offsetOf(now) - Math.trunc(minutes * 60)) * 1000);
  return local.toISOString().slice(0, 19) + offset;
};

const glucoseOf = (plan, reading) => {
  if (typeof reading === 'object') return reading;
  if (typeof reading === 'string') return { reading, from: 'finger' };
  return { value: reading, unit: plan.glucoseUnit, from: 'finger' };
};

const ketonesOf = reading => {
  if (typeof reading === 'object') return reading;
  if (typeof reading === 'number' || reading === 'HI') return { blood: reading };
  return ['notYet', 'noStrips', 'error'].includes(reading) ? { unknown: reading } : { urine: reading };
};

const eventOf = (plan, now, { ago, ...given }, number) => {
  const event = { id: `e${number}`, ...given };
  if (ago !== undefined) event.at = minutesBefore(now, ago);
  if (event.kind === 'glucose') {
    if (event.value !== undefined) event.unit ??= plan.glucoseUnit;
    event.from ??= 'finger';
  }
  if (event.kind === 'injection') event.with ??= 'syringe';
  if (event.kind === 'injection' || event.kind === 'doseShown') event.insulin ??= 'rapid';
  if (event.glucose !== undefined) event.glucose = glucoseOf(plan, event.glucose);
  if (event.kind === 'injection' && event.ketones !== undefined) event.ketones = ketonesOf(event.ketones);
  return event;
};

export const requestOf = given => {
  const plan = planOf(given.base);
  change(plan, given.plan ?? {});
  const situation = { now: night, signs: [], seen: [], ...given.situation };
  if (situation.glucose !== undefined) situation.glucose = glucoseOf(plan, situation.glucose);
  if (situation.ketones !== undefined) situation.ketones = ketonesOf(situation.ketones);
  const events = (given.record ?? []).map((event, number) => eventOf(plan, situation.now, event, number));
  return { plan, record: { format: 'stopgap.record', version: 1, planId: plan.id, events }, situation };
};

const plain = text => text.replaceAll('\u00a0', ' ');
const stepText = ({ id, slots }) => {
  const told = Object.keys(slots).sort().map(name => `${name} ${slots[name]}`).join(', ');
  return plain(told ? `${id}: ${told}` : id);
};

// The whole answer in the words of a case.
export const expectOf = answer => ({
  outcome: answer.outcome, decidedBy: answer.decidedBy, gate: answer.gate, call: answer.call,
  callFirst: answer.callFirst,
  dose: answer.dose && plain(answer.dose.text), parts: answer.dose && answer.dose.parts,
  grams: answer.carbohydrateGrams,
  given: answer.given && { units: answer.given.units, minutesAgo: answer.given.minutesAgo },
  steps: answer.steps.map(stepText), holds: Object.fromEntries(answer.holds.map(({ what, clock }) => [what, clock])),
  looks: answer.looks.map(({ clock, what }) => `${clock} ${what.join(' ')}`), cautions: answer.cautions,
  incident: answer.incident,
});

// `finding`: a number of this plan could not be agreed today. That is said under every advice, and where it bears
// on what is shown (`team`) the team is called at least.
export const expectedAgain = given => {
  const answer = answerAgain(requestOf(given), given.finding === 'team' ? 'team' : 'none');
  const expect = expectOf(answer);
  if (given.finding) expect.cautions = [...expect.cautions, 'planFinding'].sort();
  return { ...expect, working: answer.dose?.working };
};

// What a school may do is not part of the second reading.
export const isSchool = given => given.situation.viewer === 'school';
