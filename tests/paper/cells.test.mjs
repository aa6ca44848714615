// Cards of plans that were made up: every cell of every table against what `advise` answers a person who types the lower edge of
// its row, with nothing recorded, at each time of the day at which a setting changes. Dose, outcome and call are the same; the
// food is never less.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answers } from '../clinic/asking.mjs';
import { requests } from '../generate.mjs';

const number = text => JSON.parse(text.replace(',', '.'));
const typed = (plan, span, row, column, clock) => ({ now: `${plan.agreement.on}T${clock}:00+00:00`, signs: [], seen: [],
  glucose: row.kind === 'HI' ? { reading: 'HI', from: 'finger', repeated: true } : { value: number(row.glucose), unit: plan.glucoseUnit, from: 'finger' },
  ketones: column.key === 'notTested' ? { unknown: 'notYet' } : { blood: number(column.from) } });

test('every cell of made-up cards is what advise answers', () => {
  const plans = [...requests(60, 20261125)].map(({ plan }) => plan).filter(plan => plan.agreement.status === 'agreed');
  let cells = 0;
  const met = new Set();
  for (const plan of plans) {
    const card = JSON.parse(answers('card', [{ plan, paper: 'a4', languages: [] }])[0]);
    // The hours of the tables follow one another round the day.
    card.spans.forEach((span, at) => assert.equal(span.to, card.spans[(at + 1) % card.spans.length].from));
    assert.equal(card.columns.findLast(column => column.key === 'blood').from.replace(',', '.') >= '3.0', true);
    const places = card.spans.flatMap(span => span.settings.flatMap(clock => span.rows.flatMap(row => card.columns.map((column, at) => ({ cell: row.cells[at], asks: typed(plan, span, row, column, clock) })))));
    answers('advise', places.map(({ asks }) => ({ plan, record: { format: 'stopgap.record', version: 1, planId: plan.id, events: [] }, situation: asks }))).forEach((line, at) => {
      const { dose, outcome, call: said, planFindings, carbohydrateGrams } = JSON.parse(line), { cell, asks } = places[at];
      // A number that could not be agreed today calls the team on a screen besides; paper was printed before anybody knew.
      const call = planFindings.length && said === 'team' && cell.call === 'none' ? 'none' : said;
      cells += 1;
      met.add(outcome);
      assert.deepEqual([cell.dose, cell.outcome, cell.call], [dose && dose.units !== 0 ? dose.text : null, outcome, call], JSON.stringify(asks));
      assert.ok(number(cell.grams ?? '0') >= carbohydrateGrams, JSON.stringify(asks));
    });
  }
  assert.ok(cells > 5000, `${cells} cells`);
  for (const outcome of ['inject', 'eatAndInject', 'injectAtAnyGlucose', 'emergency', 'correctByPump', 'testKetones', 'eat', 'treatLow']) assert.ok(met.has(outcome), outcome);
});
