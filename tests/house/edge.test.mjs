// Both programs at the edge answer byte for byte alike, whatever they are handed, with the exit code a script can rely on.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { none, read, top } from './read.mjs';

const native = (words, input) => spawnSync(join(top, 'build/native/stopgap'), words, { input, maxBuffer: 1 << 26 });
const wasm = (words, input) => spawnSync(process.execPath, [join(top, 'wasm/ask.mjs'), ...words], { input, maxBuffer: 1 << 26 });

const both = (words, input) => {
  const [one, two] = [native(words, input), wasm(words, input)];
  assert.equal(one.status, two.status, `exit codes differ for ${words.join(' ')}`);
  assert.equal(one.stdout.toString('latin1'), two.stdout.toString('latin1'));
  return { status: one.status, out: one.stdout.toString(), err: one.stderr.toString() };
};
const refused = (input, call = 'advise') => {
  const { status, out } = both([call], input);
  assert.equal(status, 1, out.slice(0, 200));
  assert.ok(out.startsWith('{"refused":['), out.slice(0, 200));
  return JSON.parse(out).refused;
};

const plan = read('pwa/demo/adult.json');
const { id } = JSON.parse(plan);
const request = JSON.stringify({
  plan: '@', record: { format: 'stopgap.record', version: 1, planId: id, events: [] },
  situation: { now: '2026-11-25T03:10:00+00:00', glucose: { value: 16, unit: 'mmol/L', from: 'finger' }, ketones: { blood: 0.8 }, signs: [], seen: [] },
}).replace('"@"', plan);
const oneLine = request.replaceAll('\n', ' ');

test('the demo plan is answered, alike on both sides', () => {
  const { status, out } = both(['advise'], request);
  assert.equal(status, 0, out);
  assert.equal(JSON.parse(out).outcome, 'inject');
});

test('version says what this is, and is the same build on both sides', () => {
  const { status, out } = both(['version'], '{}');
  assert.equal(status, 0);
  assert.ok(JSON.parse(out).engine);
});

test('what is no request is refused, never guessed', () => {
  const cases = {
    nothing: '', blanks: ' \t', word: 'glucose', half: oneLine.slice(0, 200), list: '[]', number: '5', two: `${oneLine}${oneLine}`,
    twice: `{"plan":1,${oneLine.slice(1)}`, zero: Buffer.from([0]), notText: Buffer.from([0x7b, 0x22, 0xff, 0x22, 0x7d]),
    surrogate: '{"plan":"\\ud800"}', cut: Buffer.concat([Buffer.from('{"'), Buffer.from([0xe2, 0x82])]),
    deep: '['.repeat(100000), deepObject: '{"a":'.repeat(100000), wide: `{"plan":[${'0,'.repeat(100000)}0]}`, long: `{"plan":${'9'.repeat(100000)}}`,
    infinite: oneLine.replace('"value":16', '"value":1e999'), notNumber: oneLine.replace('"value":16', '"value":NaN'),
    comma: oneLine.replace('"value":16', '"value":16,0'), text: oneLine.replace('"value":16', '"value":"16"'),
  };
  const input = Buffer.concat(Object.values(cases).flatMap(each => [Buffer.from(each), Buffer.from('\n')]));
  const { status, out } = both(['advise', '--lines'], input);
  assert.equal(status, 1);
  const answers = out.trimEnd().split('\n').map(line => JSON.parse(line));
  assert.equal(answers.length, Object.keys(cases).length);
  none(Object.keys(cases).filter((name, at) => !answers[at].refused?.length));
  for (const name of ['nothing', 'notText', 'deep']) assert.ok(refused(cases[name]).length >= 1, name);
});

test('a mark some editors put before a text changes nothing between the two sides', () => both(['advise'], `\ufeff${request}`));

test('each reason says its place', () => {
  const [first] = refused(request.replace('"mmol/L","from"', '"mmol","from"'));
  assert.equal(first.path, '/situation/glucose/unit');
});

test('a request of any size ends in an answer', () => {
  assert.equal(refused(Buffer.alloc(6 * 1024 * 1024, 0x20))[0].reason, 'tooLarge');
  const { out } = both(['advise', '--lines'], `${' '.repeat(6 * 1024 * 1024)}\n{}\n`);
  assert.equal(out.trimEnd().split('\n').length, 2);
});

test('with --lines each line has its answer, in order', () => {
  const { status, out } = both(['advise', '--lines'], `${oneLine}\n\nno\n${oneLine}\r\n${oneLine}`);
  assert.equal(status, 1);
  const answers = out.split('\n');
  assert.equal(answers.length, 6);
  assert.deepEqual(answers.slice(0, 5).map(line => Object.hasOwn(JSON.parse(line), 'refused')), [false, true, true, false, false]);
  assert.equal(both(['advise', '--lines'], '').status, 0);
  assert.equal(both(['advise', '--lines'], `${oneLine}\n`).out.split('\n').length, 2);
});

test('wrong usage asks nothing, says how, and exits 2', () => {
  for (const words of [[], ['nonsense'], ['advise', '--line'], ['advise', '--lines', 'x'], ['--lines'], ['advise  '], [''], ['Exit:']]) {
    const { status, out, err } = both(words, '{}');
    assert.equal(status, 2, words.join(' '));
    assert.equal(out, '');
    assert.ok(err.includes('Usage'), err);
  }
});

test('the help is the same for both', () => {
  const { status, out } = both(['--help'], '');
  assert.equal(status, 0);
  assert.equal(out, read('wasm/help.txt'));
});
