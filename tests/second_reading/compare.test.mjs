// The core against a second reading of its rules, written from their text alone and in another language: 5,000 made-up
// requests must be answered alike in outcome, rule, gate, call, dose and its working, carbohydrate, cautions, holds and looks.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { requests } from '../generate.mjs';
import { none as noneOf, top } from '../house/read.mjs';
import { adviseAgain } from './advise.mjs';
import { exact } from './fraction.mjs';
import { instant } from './record.mjs';

const [count = 5000, seed = 20261125] = process.argv.slice(2).map(word => Number.parseInt(word, 10)).filter(Number.isInteger);

const point = text => (typeof text === 'string' ? text.replace(',', '.') : text);
const amount = value => (value === null || value === undefined ? null : exact(point(value)).text());
const working = ({ correction, onBoard, net, extra, cap, cut, beforeRounding }) => ({ correction, onBoard, net, extra, cap, cut, beforeRounding });

// Both sides in one shape, amounts as texts rounded to 0.01.
const ofTheCore = answer => ({
  outcome: answer.outcome, decidedBy: answer.decidedBy, gate: answer.gate, call: answer.call, grams: amount(answer.carbohydrateGrams),
  dose: answer.dose && {
    units: amount(answer.dose.units), rescue: amount(answer.dose.parts.rescue), meal: amount(answer.dose.parts.meal),
    ...(answer.dose.parts.rescue > 0 ? {
      working: Object.fromEntries(Object.entries(working(answer.dose.working)).map(([name, value]) => [name, amount(value)])),
      takesExtra: answer.dose.working.chosen === 'extra', otherBound: amount(answer.dose.otherBound) } : {}),
  },
  cautions: [...answer.cautions].sort(), given: answer.given ? instant(answer.given.at) : null,
  holds: Object.fromEntries(answer.holds.map(({ what, until }) => [what, instant(until)]).sort()), looks: answer.looks.map(({ at }) => instant(at)),
});
const ofTheSecond = advice => ({
  outcome: advice.outcome, decidedBy: advice.decidedBy, gate: advice.gate, call: advice.call, grams: advice.grams.text(),
  dose: advice.total && {
    units: advice.total.text(), rescue: advice.rescue.text(), meal: advice.meal.text(),
    ...(advice.rescue.gt(0) ? {
      working: {
        correction: advice.correction.text(), onBoard: advice.counted.text(), net: advice.dose.working.net.text(), extra: advice.dose.working.extra.text(),
        cap: advice.cap.text(), cut: advice.dose.working.cut && advice.dose.working.cut.text(), beforeRounding: advice.dose.working.before.text() },
      takesExtra: advice.dose.working.takesExtra, otherBound: advice.dose.otherBound.text() } : {}),
  },
  cautions: [...advice.cautions].sort(), given: advice.given?.t ?? null,
  holds: Object.fromEntries([...advice.holds].sort()), looks: advice.looks,
});

const differences = (core, second, now) => Object.keys(core).filter(name => JSON.stringify(core[name]) !== JSON.stringify(second[name]))
  .map(name => `${name}: core ${told(core[name], now)}, second ${told(second[name], now)}`);
// Instants as minutes from now.
const told = (value, now) => JSON.stringify(value, (_, each) => (typeof each === 'number' && each > 1e9 ? `${(each - now) / 60} min` : each));

test(`${count} requests are answered as the second reading answers them`, () => {
  const asked = [...requests(count, seed)];
  const run = spawnSync(join(top, 'build/native/stopgap'), ['advise', '--lines'], { input: `${asked.map(request => JSON.stringify(request)).join('\n')}\n`, maxBuffer: 1 << 28 });
  const answers = run.stdout.toString().trimEnd().split('\n');
  assert.equal(answers.length, count);
  const rules = new Set(), found = [];
  asked.forEach((request, at) => {
    const answer = JSON.parse(answers[at]);
    if (answer.refused) { found.push(`request ${at + 1} of seed ${seed} is refused: ${answers[at].slice(0, 200)}`); return; }
    const second = ofTheSecond(adviseAgain(request)), now = instant(request.situation.now);
    rules.add(second.decidedBy);
    const here = differences(ofTheCore(answer), second, now);
    if (here.length) found.push(`request ${at + 1} of seed ${seed}, ${second.decidedBy}${second.gate ? ` ${second.gate}` : ''}: ${here.join('; ')}`);
  });
  assert.equal(rules.size, 22, 'every rule decides one of them');
  noneOf(found.length > 20 ? [...found.slice(0, 20), `and ${found.length - 20} more`] : found);
});
