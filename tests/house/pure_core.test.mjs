// The core knows no clock, stream, thread, chance or float text, and speaks no sentence: those are the edge's and the page's.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { code, files, found, none, read } from './read.mjs';

const banned = new RegExp([
  String.raw`#\s*include\s*<(?:iostream|fstream|sstream|ostream|istream|iomanip|syncstream|cstdio|stdio\.h|print|format|thread|mutex|shared_mutex|atomic|future|condition_variable|random|ctime|time\.h|filesystem|locale)>`,
  String.raw`\b(?:system|steady|high_resolution|utc|tai|gps|file)_clock\b`, String.raw`\b(?:std::)?(?:clock|rand|srand|getenv|setlocale|localtime|gmtime|gettimeofday|clock_gettime)\s*\(`,
  String.raw`\bstd::time\s*\(|(?<![\w.>:])time\s*\(\s*(?:nullptr|NULL|0|&)`, String.raw`\b(?:std::)?(?:stod|stof|stold|strtod|strtof|strtold|atof|printf|fprintf|snprintf|puts)\s*\(`,
  String.raw`\bstd::(?:cout|cerr|clog|cin|thread|async|random_device|mt19937)\b`,
].join('|'), 'g');

// std::exp and its kin may differ in the last bit between two C libraries.
const unequalMaths = /\bstd::(?:exp2?|expm1|pow|log\w*|sin|cos|tan|cbrt)\s*\(/g;

// Chrono holds clocks; one file uses its calendar.
const calendar = 'core/units/time.cpp';

// Three words in a row are a sentence or a part of one. Figures cite their sources in words, and a failed static_assert speaks
// to whoever builds.
// A list such as "finger, sensor" is data.
const sentence = /"[^"\n]*[A-Za-z]{2,} [A-Za-z]+(?:[^"\n]*[A-Za-z])? [A-Za-z][^"\n]*"/g;
const spoken = (path, text) => path.startsWith('core/figures/') ? []
  : found(path, code(text).replace(/static_assert\s*\([^;]*;/g, ''), sentence);

const sources = files('core', /\.[hc]pp$/);

test('no clock, stream, thread, chance or float text in the core', () => {
  assert.ok(sources.length > 0);
  none(sources.flatMap(path => found(path, code(read(path)), banned)));
  none(sources.filter(path => path !== calendar).flatMap(path => found(path, code(read(path)), /<chrono>/g)));
});

test('no function whose last bit depends on the C library', () => {
  none(sources.flatMap(path => found(path, code(read(path)), unequalMaths)));
});

test('no sentence in the core: answers carry a key and slots', () => {
  none(sources.flatMap(path => spoken(path, read(path))));
});

test('what is banned is seen', () => {
  const seen = text => found('core/x.cpp', code(text), banned).length;
  for (const bad of ['#include <iostream>', 'std::chrono::system_clock::now()', 'double x = std::stod(text);', 'time(nullptr)', '#include <thread>', 'rand()'])
    assert.equal(seen(bad), 1, bad);
  for (const good of ['// reads no clock()', 'local_time(moment)', 'lifetime(2)', 'number.text()']) assert.equal(seen(good), 0, good);
  assert.equal(spoken('core/rules/low.cpp', 'return "Do not inject now"; return "Wait, then look again";').length, 2);
  assert.equal(spoken('core/rules/low.cpp', '"treatLow", "finger, sensor", "5.0 to 25.0", "version, advise, holds" // not a sentence at all').length, 0);
  assert.equal(found('core/x.cpp', 'std::exp(-z)', unequalMaths).length, 1);
});
