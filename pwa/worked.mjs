// One worked answer for the demo plan, so that a first build shows what the job is. The words are those of the page.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FluentBundle, FluentResource } from '@fluent/bundle';

const file = path => fileURLToPath(new URL(`../${path}`, import.meta.url));
const planText = readFileSync(file('pwa/demo/adult.json'), 'utf8');
const plan = JSON.parse(planText);

// Joined as text: a number of the plan reaches the core as it was typed.
const request = `{"plan":${planText},
  "record":{"format":"stopgap.record","version":1,"planId":"${plan.id}","events":[]},
  "situation":{"now":"2026-11-25T03:10:00+00:00","glucose":{"value":16.0,"unit":"mmol/L","from":"finger"},
    "ketones":{"blood":0.8},"signs":[],"seen":[]}}`;

const ask = () => {
  try { return execFileSync(file('build/native/stopgap'), ['advise'], { input: request, encoding: 'utf8', stdio: ['pipe', 'pipe', 'inherit'] }); }
  catch (problem) { return problem.stdout || (() => { throw problem; })(); }   // exit 1 is a refusal, and still an answer
};

const bundle = new FluentBundle('en', { useIsolating: false });
bundle.addResource(new FluentResource(readFileSync(file('i18n/en.ftl'), 'utf8')));
const words = ({ key, slots }) => {
  const message = bundle.getMessage(key);
  if (!message?.value) throw new Error(`i18n/en.ftl has no words for ${key}`);
  return bundle.formatPattern(message.value, slots);
};

const text = ask();
const answer = JSON.parse(text);
const say = (...lines) => console.log(lines.join('\n'));
say('', 'A worked answer, with the demo plan of an invented person. Not for use.',
  '  Asked at 03:10: glucose 16.0 mmol/L from a finger, blood ketones 0.8 mmol/L, nothing given yet.', '');
if (answer.refused) say('The core refused:', JSON.stringify(answer.refused, null, 2));
else {
  const { dose, steps, holds, looks } = answer;
  if (dose) {
    const { working } = dose;
    say(`  Dose: ${dose.text} of ${plan.rapid.name}, by ${dose.with}, and no more.`,
      `  Why: correction ${working.correction}, still acting ${working.onBoard}, leaves ${working.net}; extra for ketones ${working.extra}.`,
      `       Chosen: ${working.chosen}. Before rounding: ${working.beforeRounding}. Cap: ${working.cap}.`);
  } else say(`  No dose (${answer.outcome}).`);
  say('  Then, in this order:', ...steps.map((step, at) => `   ${at + 1}. ${words(step)}`),
    ...holds.map(hold => `  Hold: ${hold.what} until ${hold.clock}`),
    ...looks.map(look => `  Look: ${look.clock}, ${look.what.join(' and ')}`));
}
say('', '  The same as JSON:', text.trimEnd(), '');
