// Who may include whom: each part sees what stands left of it, so that a change on the right never reaches the left.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { code, files, none, read } from './read.mjs';

const flow = ['units', 'figures', 'model', 'action', 'rules', 'advise', 'documents'];
const upTo = part => flow.slice(0, flow.indexOf(part) + 1);
// One evaluation of the rules, and what stands around it: the reasons, the school's orders, the table of doses.
const ways = { because: 'advise', plan_findings: 'advise', review_kept: 'review', school: 'advise', table: 'advise',
  // What the record says of a moment, and the story told from it afterwards.
  known: 'advise', replay: 'documents', incident_spans: 'documents', incident: 'documents' };
const everything = [...flow, 'holds', 'off_pump', 'review', 'compare', 'standing', 'json', 'version', 'ask'];
const sees = {
  ...Object.fromEntries(flow.map(part => [part, upTo(part)])),
  holds: [...upTo('advise'), 'holds'],
  off_pump: [...upTo('advise'), 'off_pump'],
  review: [...upTo('advise'), 'review'],
  compare: ['model', 'json', 'compare'],
  json: ['units', 'figures', 'model', 'documents', 'json'],
  version: [...upTo('model'), 'version'],
  standing: [...upTo('model'), 'standing'],
  ask: everything,
};

// core/rules/low.cpp and "rules/rules.hpp" both belong to rules; core/advise.cpp and "advise.hpp" to advise.
const part = path => {
  const name = path.replace(/^core\//, '').split('/')[0].replace(/\.[hc]pp$/, '');
  return ways[name] ?? name;
};
const includes = text => [...code(text).matchAll(/^\s*#\s*include\s*"([^"]+)"/gm)].map(match => match[1]);

const backward = (path, text) => includes(text).filter(include => !sees[part(path)]?.includes(part(include)))
  .map(include => `${path} includes ${include}`);

test('a part of the core includes only what stands left of it', () => {
  const sources = files('core', /\.[hc]pp$/);
  assert.ok(sources.length > 0);
  none(sources.flatMap(path => backward(path, read(path))));
});

test('every part of the core has its place in the flow', () => {
  const unknown = files('core', /\.[hc]pp$/).filter(path => !sees[part(path)]);
  none(unknown);
});

test('the edges see the one door of the core and nothing behind it', () => {
  const wrong = files('wasm', /\.[hc]pp$/).flatMap(path => includes(read(path))
    .filter(include => include !== 'core/ask.hpp' && include !== 'help.hpp').map(include => `${path} includes ${include}`));
  none(wrong);
});

// The views draw; what they need comes in as arguments. app.js holds the threads, and paper.js those of its own page.
const imports = text => [...code(text).matchAll(/(?:^|\n)\s*(?:import|export)[^'"\n;]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g)]
  .map(match => match[1] ?? match[2]);
const strayImports = (path, text) => imports(text).filter(from =>
  !from.startsWith('.')
  || (path.startsWith('pwa/views/') && !/lit-html(\.js)?$|^\.\/[^/]+\.js$/.test(from))
  || (!['pwa/app.js', 'pwa/paper.js'].includes(path) && /\/(core|store|words)\.js$/.test(from) && !from.startsWith('./vendor/')))
  .map(from => `${path} imports ${from}`);

test('a view imports templates and shared parts only; app.js and paper.js alone import core, store and words', () => {
  none(files('pwa', /\.js$/).flatMap(path => strayImports(path, read(path))));
});

test('an arrow that points back is seen', () => {
  assert.equal(backward('core/units/glucose.hpp', '#include "model/plan.hpp"').length, 1);
  assert.equal(backward('core/rules/low.cpp', '#include "advise.hpp"').length, 1);
  assert.equal(backward('core/json/read.cpp', '#include "rules/rules.hpp"').length, 1);
  assert.equal(backward('core/rules/low.cpp', '// #include "advise.hpp"\n#include "rules/rules.hpp"').length, 0);
  assert.equal(strayImports('pwa/views/bedside.js', "import { add } from '../store.js';").length, 1);
  assert.equal(strayImports('pwa/watch.js', "import { add } from './store.js';").length, 1);
  assert.equal(strayImports('pwa/app.js', "import { html } from 'https://elsewhere.example/lit.js';").length, 1);
  assert.equal(strayImports('pwa/views/bedside.js', "import { html } from '../vendor/lit-html.js';").length, 0);
});
