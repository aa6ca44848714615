#!/usr/bin/env node
// The native program and the WebAssembly module answer the same bytes: generated requests of every call that reads a record or a
// plan, and the same requests damaged in every way a text can be.
//   node tests/same_answers.mjs [COUNT] [SEED]
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawing } from './generated/draw.mjs';
import { requests } from './generate.mjs';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const [count = 10000, seed = 20261125] = process.argv.slice(2).map(word => Number.parseInt(word, 10));
const newline = 10;

const answers = (command, words, input) => new Promise((resolve, reject) => {
  const child = spawn(command, words, { cwd: top, stdio: ['pipe', 'pipe', 'inherit'] });
  const parts = [];
  child.stdout.on('data', part => parts.push(part));
  child.stdin.on('error', () => {});   // a program that ended early is seen by its missing answers
  child.on('error', reject);
  child.on('close', code => {
    const text = Buffer.concat(parts), lines = [];
    for (let from = 0, at; (at = text.indexOf(newline, from)) >= 0; from = at + 1) lines.push(text.subarray(from, at));
    resolve({ code, lines });
  });
  child.stdin.end(input);
});
const joined = lines => Buffer.concat(lines.flatMap(line => [Buffer.from(line), Buffer.from([newline])]));

let passed = 0, failed = 0;
const fail = (...words) => {
  failed += 1;
  if (failed <= 5) console.log(...words);
};
const shown = line => (line === undefined ? 'no answer' : line.toString('latin1').slice(0, 400));
const firstDifference = (one, two) => {
  let at = 0;
  while (at < one.length && one[at] === two[at]) at += 1;
  return `byte ${at}: ...${one.subarray(Math.max(0, at - 40), at + 40).toString('latin1')} | ...${two.subarray(Math.max(0, at - 40), at + 40).toString('latin1')}`;
};

// `refuses`: whether every answer must be a refusal (true), none may be (false), or either (undefined).
const compare = async (call, lines, refuses) => {
  const input = joined(lines);
  const [native, wasm] = await Promise.all([
    answers(join(top, 'build/native/stopgap'), [call, '--lines'], input),
    answers(process.execPath, [join(top, 'wasm/ask.mjs'), call, '--lines'], input)]);
  if (native.code !== wasm.code) fail(`${call}: native left with ${native.code}, wasm with ${wasm.code}`);
  lines.forEach((line, at) => {
    const one = native.lines[at], two = wasm.lines[at];
    if (!one || !two || !one.equals(two))
      return fail(`${call} ${at + 1}: ${one && two ? firstDifference(one, two) : `native ${shown(one)}, wasm ${shown(two)}`}\n  ${shown(Buffer.from(line))}`);
    const isRefusal = one.toString('latin1').startsWith('{"refused":');
    if (refuses !== undefined && refuses !== isRefusal) return fail(`${call} ${at + 1}: ${shown(one)}\n  ${shown(Buffer.from(line))}`);
    passed += 1;
  });
};

const draw = drawing(seed);
const oddNumbers = ['-0', '0.0', '1e0', '160e-1', '16.000', '1E+2', '1e999', '1e-999', '9007199254740993', '0.1e1', '00', '1.', '.5', '+1', 'NaN', '-1', '3.05', `1${'0'.repeat(400)}`];
const otherValues = ['null', 'true', 'false', '[]', '{}', '""', '"HI"', '0', '-1', '"2026-11-25T03:10:00"', '"2026-13-45T99:99:99+00:00"', '[[[[1]]]]', '{"a":{"b":1}}'];
const value = /(?<=:)(?:"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|true|false|null)/g;
const someMatch = (text, pattern) => draw.pick([...text.matchAll(pattern)]);
// A text that has nothing of the kind is cut short instead.
const replaced = (text, match, other) => !match ? text.slice(0, -1) : text.slice(0, match.index) + other + text.slice(match.index + match[0].length);

// Each takes a valid text and gives a damaged one, as text or bytes.
const damages = [
  text => text.slice(0, draw.whole(0, text.length - 1)),
  text => text.slice(draw.whole(1, text.length - 1)),
  text => replaced(text, someMatch(text, value), draw.pick(otherValues)),
  text => replaced(text, someMatch(text, /(?<=:)-?\d[\d.]*/g), draw.pick(oddNumbers)),
  text => replaced(text, someMatch(text, /"\w+"(?=:)/g), draw.pick(['"value"', '"from"', '"unknownKey"', '"\\u0061t"', '""'])),
  text => replaced(text, someMatch(text, /[,:{}[\]"]/g), draw.pick(['', ',', ':', '"', '}', ']', ' ', '\t'])),
  text => { const pair = someMatch(text, /"\w+":(?:"[^"\\]*"|\d+)/g); return replaced(text, pair, `${pair?.[0]},${pair?.[0]}`); },
  text => replaced(text, someMatch(text, /(?<=:")[^"\\]+(?=")/g), draw.pick(['\\ud800', '\\ud83d\\ude00', '\\u0000', 'e\u0301', '\u202e', '\u00e9', 'a\\/b', 'x'.repeat(300)])),
  text => { const bytes = Buffer.from(text); bytes[draw.whole(0, bytes.length - 1)] = draw.pick([0, 1, 0x80, 0xbf, 0xc0, 0xe2, 0xf5, 0xff]); return bytes; },
  text => { const bytes = Buffer.from(text), at = draw.whole(0, bytes.length); return Buffer.concat([bytes.subarray(0, at), Buffer.from(draw.pick([[0xe2, 0x82], [0xed, 0xa0, 0x80], [0xf4, 0x90, 0x80, 0x80], [0xc3, 0xa9]])), bytes.subarray(at)]); },
];

const holdsOf = ({ plan, record, situation }) => JSON.stringify({ plan, record, now: situation.now, ...(draw.chance(0.2) ? { curve: true } : {}) });

const storyOf = ({ plan, record }) => JSON.stringify({ plan, record });

const made = [...requests(count, seed)];
const asked = made.map(request => JSON.stringify(request));
await compare('advise', asked, false);
const offPumpOf = ({ plan, record, situation: { now, glucose, carbs } }) => JSON.stringify({ plan, record, now, ...(glucose && { glucose }), ...(carbs && { carbs }),
  ...(draw.chance(0.6) && { expectedHours: draw.whole(0, 96) / 4 }), ...(draw.chance(0.2) && { noLongActing: draw.chance(0.7) }), ...(draw.chance(0.4) && { zonesEast: draw.whole(-14, 14) }) });

await compare('holds', made.slice(0, Math.ceil(count / 2)).map(holdsOf), false);
await compare('offPump', made.slice(0, Math.ceil(count / 2)).map(offPumpOf), false);
const hundredths = () => draw.whole(0, 900);
const partsOf = () => {
  const [rescue, meal, basal] = [hundredths(), hundredths(), hundredths() + 5];
  return JSON.stringify({ shown: { units: (rescue + meal + basal) / 100, parts: { rescue: rescue / 100, meal: meal / 100, basal: basal / 100 } }, units: (hundredths() + 5) / 100 });
};
const amounts = made.slice(0, Math.ceil(count / 10)).map(partsOf);
await compare('partsGiven', amounts, false);
const damaged = list => list.map(text => draw.pick(damages)(text));
await compare('advise', damaged(asked.slice(0, Math.ceil(count / 2))));
await compare('holds', damaged(made.slice(0, Math.ceil(count / 4)).map(holdsOf)));
await compare('partsGiven', damaged(amounts));
for (const call of ['incident', 'exportFhir']) {
  const told = made.slice(0, Math.ceil(count / 5)).map(storyOf);
  await compare(call, told, false);
  await compare(call, damaged(told));
}
const plans = made.slice(0, Math.ceil(count / 10)).map(({ plan }) => plan);
const reviews = plans.map(plan => JSON.stringify({ plan }));
const pairs = plans.map((before, at) => JSON.stringify({ before, after: plans[(at + 1) % plans.length] }));
await compare('reviewPlan', reviews, false);
await compare('comparePlans', pairs, false);
await compare('reviewPlan', damaged(reviews));
await compare('comparePlans', damaged(pairs));
// A plan packed for a printed code, and the texts so made read back, whole and damaged. A plan too long for a code is refused.
const packs = made.slice(0, Math.ceil(count / 10)).map(({ plan }) => JSON.stringify({ plan }));
await compare('packPlan', packs);
await compare('packPlan', damaged(packs));
const packed = (await answers(join(top, 'build/native/stopgap'), ['packPlan', '--lines'], joined(packs))).lines
  .map(line => JSON.parse(line).text).filter(Boolean).map(text => JSON.stringify({ text }));
await compare('unpackPlan', packed, false);
await compare('unpackPlan', damaged(packed));
// What goes on paper: a draft is refused, and so is a school's sheet without orders.
const papers = plans.map((plan, at) => JSON.stringify({ plan, paper: at % 2 ? 'a4' : 'letter', languages: at % 3 ? ['es', 'ar'] : [] }));
const sheets = plans.map(plan => JSON.stringify({ plan, paper: 'a4' }));
await compare('card', papers);
await compare('card', damaged(papers));
await compare('schoolSheet', sheets);
const reminded = made.slice(0, Math.ceil(count / 5)).map(({ plan, record, situation }, at) => JSON.stringify({ plan, record, now: situation.now, ...(at % 2 ? { words: 'prüfen, 再; ok' } : {}) }));
await compare('reminders', reminded, false);
await compare('reminders', damaged(reminded));
await compare('version', ['{}', '{ }', '{"a":1}', '', '[]'], undefined);

console.log(`seed ${seed}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed || !passed ? 1 : 0;
