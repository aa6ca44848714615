// Clinical numbers live in core/figures, each with its unit, source, place, mark and day of the last check. Anywhere else in
// the core a number must be one of the plain ones, or stand in the short list below with its reason.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { code, files, found, none, read } from './read.mjs';

// Counting, decimal places, and the parts of an hour and a day: no clinical meaning. Nor has a number in hexadecimal.
const plain = new Set(['0', '1', '2', '10', '60', '100', '1000', '3600', '86400']);

const reasons = {
  'core/units/time.cpp': { why: 'positions in an RFC 3339 text, and the years the calendar covers', numbers: null },
  'core/units/time.hpp': { why: 'an hour in hundredths is 36 seconds', numbers: ['36'] },
  'core/model/advice.hpp': { why: 'how many outcomes, steps, holds and cautions there are', numbers: ['22', '28', '5', '10'] },
  'core/json/write_off_pump.cpp': { why: 'decimal places of a share', numbers: ['4'] },
  'core/model/record.hpp': { why: 'how many kinds of events there are', numbers: ['22'] },
  'core/json/text.cpp': {
    why: 'digits of an escape, the room made at once, and how long a number may be',
    numbers: ['4', '6', '16', '18', '24', '40', '406', '1000000000'] },
  'core/json/hidden_characters.cpp': { why: 'how many digits Unicode writes at least', numbers: ['4'] },
  'core/json/plain_text.cpp': { why: 'how many bytes and bits a character of UTF-8 has', numbers: ['3', '6', '12', '18'] },
  'core/json/calendar.cpp': { why: 'the length of a line of RFC 5545, and of the id of an event', numbers: ['75', '32'] },
  'core/json/base45.cpp': { why: 'its base, the values of a byte, and how many characters hold two of them', numbers: ['45', '256', '3'] },
  'core/json/deflate.cpp': { why: 'the settings of the library for the shortest output, the bits of a byte, and how the library counts bits', numbers: ['9', '15', '256', '8', '64'] },
  'core/json/pack_plan.cpp': { why: 'bytes of a fingerprint, and the values of its digits', numbers: ['16'] },
  'core/json/sha256.cpp': { why: 'the constants of the checksum, as its standard prints them', numbers: null },
  'core/json/write_fhir.cpp': { why: 'the places of a UUID in its hexadecimal text', numbers: ['3', '4', '8', '12', '13', '17', '20'] },
  'core/json/writer.hpp': { why: 'the room made at once for an answer', numbers: ['4096'] },
  'core/holds.cpp': { why: 'minutes from point to point of a drawn line', numbers: ['15'] },
  'core/because.cpp': { why: 'events of one kind tried one by one for the reasons', numbers: ['24'] },
  'core/model/refusal.hpp': { why: 'at most twenty reasons in one refusal', numbers: ['20'] },
  'core/action/curve.hpp': { why: 'parts of a whole dose, counted in millionths of a millionth', numbers: ['1000000000000'] },
  'core/action/curve.cpp': {
    why: 'the exponential: ln 2 in two pieces, one half, the length of the series and the scale of its result',
    numbers: ['1000000000', '6.93147180369123816490e-01', '1.90821492927058770002e-10', '14', '0.5'] },
  'core/units/body.hpp': { why: 'a ten-thousandth, so that grams and ratios multiply exactly', numbers: ['10000'] },
  'core/units/ketones.hpp': { why: 'half a tenth', numbers: ['5'] },
  'core/units/glucose.hpp': { why: 'grains: the smallest steps of both units, checked against the factor in figures/conversion.hpp', numbers: ['2252', '1250', '5'] },
};

const literal = /(?<![\w.])(?:0[xX][\da-fA-F']+|\d[\d']*\.?\d*(?:[eE][+-]?\d+)?)[uUlLzZfF]*(?![\w.])/g;
const bare = match => match.replaceAll("'", '').replace(/[uUlLzZ]+$/, '');
// How many entries a list has is no clinical number.
const counted = text => code(text, { strings: false }).replace(/\bstd::array<[\w:]+(?:<\w+>)?, \d+>/g, 'std::array');
const stray = (path, text, { numbers } = { numbers: [] }) => numbers === null ? []
  : found(path, counted(text), literal)
    .filter(line => { const number = bare(line.split(': ').at(-1)); return !plain.has(number) && !/^0x/i.test(number) && !numbers.includes(number); });

const outside = files('core', /\.[hc]pp$/).filter(path => !path.startsWith('core/figures/'));

test('no clinical number is typed outside core/figures', () => {
  none(outside.flatMap(path => stray(path, read(path), reasons[path])));
});

test('the list of reasons names only files and numbers that are there', () => {
  const idle = Object.entries(reasons).flatMap(([path, { numbers }]) => {
    if (!outside.includes(path)) return [path];
    const there = found(path, counted(read(path)), literal).map(line => bare(line.split(': ').at(-1)));
    return (numbers ?? []).filter(number => !there.includes(number)).map(number => `${path}: ${number}`);
  });
  none(idle);
});

const sources = text => [...text.matchAll(/Source (\w+)\{\s*"([^"]+)"/g)].map(match => match[1]);
const origins = ['"house"', '"common practice"', '"from memory"'];
// A figure as it must be written: id, value, unit, source, place, mark, day.
const whole = /Figure<([^;]*?)>\s+(\w+)\{\s*"([^"]+)",\s*([^]*?),\s*"([^"]*)",\s*("[^"]+"|sources::\w+\.id),\s*((?:"[^"]+"\s*)+),\s*Mark::(\w+),\s*\{(\d{4}), (\d{1,2}), (\d{1,2})\}\s*\};/g;
const incomplete = (path, text, known) => {
  const plainText = code(text);
  const started = [...plainText.matchAll(/constexpr\s+Figure<.*?>\s+(\w+)\{/gs)].map(match => match[1]);
  const complete = new Map([...plainText.matchAll(whole)].map(match => [match[2], match]));
  return started.flatMap(name => {
    const figure = complete.get(name);
    if (!figure) return [`${path}: ${name} lacks a unit, source, place, mark or day`];
    const source = figure[6];
    return origins.includes(source) || known.includes(source.replace(/^sources::|\.id$/g, '')) ? [] : [`${path}: ${name} names no known source`];
  });
};

test('every figure has its id, unit, source, place, mark and day of the last check', () => {
  const known = sources(read('core/figures/sources.hpp'));
  assert.ok(known.length > 0);
  const paths = files('core/figures', /\.hpp$/).filter(path => !/\/(figure|sources)\.hpp$/.test(path));
  none(paths.flatMap(path => incomplete(path, read(path), known)));
});

test('no figure id is given twice', () => {
  const ids = files('core/figures', /\.hpp$/).flatMap(path => [...code(read(path)).matchAll(whole)].map(match => match[3]));
  assert.ok(ids.length > 0);
  none(ids.filter((id, at) => ids.indexOf(id) !== at));
});

test('a stray number and a half-told figure are seen', () => {
  assert.equal(stray('core/rules/low.cpp', 'if (glucose < Glucose::mmol_tenths(39)) return;').length, 1);
  assert.equal(stray('core/rules/low.cpp', "double x = 6.295794; auto y = 1'250;").length, 2);
  assert.equal(stray('core/rules/low.cpp', 'size * 100 + 0; // 39 in a comment\n"39 in a text"; std::uint64_t h2o;').length, 0);
  assert.equal(incomplete('x', 'inline constexpr Figure<int> a{"a", 3, "min", sources::b.id, "row 2", Mark::read, {2026, 1, 2}};', ['b']).length, 0);
  assert.equal(incomplete('x', 'inline constexpr Figure<int> a{"a", 3, "min", sources::b.id, "row 2", Mark::read, {2026, 1, 2}};', []).length, 1);
  assert.equal(incomplete('x', 'inline constexpr Figure<int> a{"a", 3, "min", "house"};', []).length, 1);
});
