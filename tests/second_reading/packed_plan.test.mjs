// The text of a printed code read a second time, by other tools: Base45 written again from RFC 9285, node's own inflater with the
// text both sides know as its dictionary, node's own SHA-256, and node's own deflater for texts the core has to read.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { constants, deflateRawSync, inflateRawSync } from 'node:zlib';

const top = join(dirname(fileURLToPath(import.meta.url)), '../..');
const read = path => readFileSync(join(top, path), 'utf8');
const ask = (call, request) => JSON.parse(spawnSync(join(top, 'build/native/stopgap'), [call], { input: JSON.stringify(request), maxBuffer: 1 << 26 }).stdout);

const letters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';
const encode = bytes => {
  let text = '';
  for (let at = 0; at < bytes.length; at += 2) {
    let value = at + 1 < bytes.length ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
    for (let digit = at + 1 < bytes.length ? 3 : 2; digit > 0; digit -= 1) { text += letters[value % 45]; value = Math.floor(value / 45); }
  }
  return text;
};
const decode = text => Buffer.from([...text.matchAll(/.{1,3}/gs)].flatMap(([group]) => {
  const value = [...group].reduceRight((sum, letter) => sum * 45 + letters.indexOf(letter), 0);
  return group.length === 3 ? [value >> 8, value & 255] : [value];
}));
const dictionary = Buffer.from([...read('core/json/known_plan.hpp').matchAll(/R"\(([^]*?)\)"/g)].map(match => match[1]).join(''));
const sha = text => createHash('sha256').update(text).digest();

// Keys in order, no blanks: what a fingerprint is taken from. A plan's numbers have so few digits that JSON.stringify keeps them.
const canonical = value => Array.isArray(value) ? `[${value.map(canonical).join(',')}]`
  : value && typeof value === 'object' ? `{${Object.keys(value).sort().map(key => `${JSON.stringify(key)}:${canonical(value[key])}`).join(',')}}` : JSON.stringify(value);

const plans = ['pwa/demo/adult.json', 'pwa/demo/child.json', 'tests/cases/example_plan.json'];
const head = 'STOPGAP1:';
const packedBy = (deflated, content) => head + encode(Buffer.concat([sha(content).subarray(0, 16), deflated]));

test('the examples of RFC 9285', () => {
  for (const [bytes, text] of [['AB', 'BB8'], ['Hello!!', '%69 VD92EX0'], ['base-45', 'UJCLQE7W581'], ['ietf!', 'QED8WEX0']]) {
    assert.equal(encode(Buffer.from(bytes)), text);
    assert.equal(decode(text).toString(), bytes);
  }
});

for (const path of plans) {
  const plan = JSON.parse(read(path)), whole = canonical(plan);
  test(`${path}: node reads what the core packed`, () => {
    const { text, bytes, fingerprint } = ask('packPlan', { plan });
    assert.ok(text.startsWith(head));
    const carried = decode(text.slice(head.length));
    assert.equal(carried.length, bytes);
    assert.equal(encode(carried), text.slice(head.length));
    const inflated = inflateRawSync(carried.subarray(16), { dictionary }).toString();
    assert.equal(inflated, whole);
    assert.equal(sha(whole).toString('hex'), fingerprint);
    assert.equal(carried.subarray(0, 16).toString('hex'), fingerprint.slice(0, 32));
  });

  test(`${path}: the core reads what node packed, at every level and strategy`, () => {
    for (const options of [{ level: 9 }, { level: 6 }, { level: 1 }, { level: 9, strategy: constants.Z_FIXED }, { level: 9, strategy: constants.Z_HUFFMAN_ONLY }]) {
      const text = packedBy(deflateRawSync(whole, { ...options, dictionary }), whole);
      if (text.length > 970) continue;
      assert.equal(canonical(ask('unpackPlan', { text }).plan), whole, JSON.stringify(options));
    }
    // Without the dictionary the same plan is too long for one code.
    assert.equal(ask('unpackPlan', { text: packedBy(deflateRawSync(whole), whole) }).refused[0].reason, 'tooLarge');
  });
}

test('what node deflated from other content, or damaged afterwards, is refused', () => {
  const refused = text => ask('unpackPlan', { text }).refused?.map(({ path, reason }) => `${reason} ${path}`)[0];
  const plan = JSON.parse(read(plans[0])), whole = canonical(plan), deflated = deflateRawSync(whole, { level: 9, dictionary });
  assert.equal(refused(packedBy(deflated, whole)), undefined);
  assert.equal(refused(packedBy(deflated, `${whole} `)), 'fingerprintMismatch /text');
  assert.equal(refused(packedBy(Buffer.concat([deflated, Buffer.from([0])]), whole)), 'fingerprintMismatch /text');
  assert.equal(refused(packedBy(deflateRawSync(`${whole} `, { dictionary }), `${whole} `)), 'fingerprintMismatch /text');
  const later = canonical({ ...plan, version: 2 });
  assert.equal(refused(packedBy(deflateRawSync(later, { dictionary }), later)), 'newerFormat /plan/version');
  const started = Date.now(), zeros = Buffer.alloc(600000, 0x30);
  assert.equal(refused(packedBy(deflateRawSync(zeros, { level: 9, dictionary }), zeros)), 'tooLarge /text');
  assert.ok(Date.now() - started < 5000);
});
