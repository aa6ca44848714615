#!/usr/bin/env node
// Writes the whole `expect` of case files from the second reading, never from the core: node fill_cases.mjs [FILE...]
// `why`, `base`, `plan`, `record` and `situation` stay as they are written. Without files: every case.
import { readFileSync, writeFileSync } from 'node:fs';
import { caseFiles, expectedAgain, isSchool } from './cases.mjs';

// On one line, a blank after every comma and colon.
const inline = value => {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (!value || typeof value !== 'object') return JSON.stringify(value);
  return `{${Object.entries(value).map(([name, each]) => `${JSON.stringify(name)}: ${inline(each)}`).join(', ')}}`;
};
const pairs = (expect, names) => names.filter(name => expect[name] !== undefined)
  .map(name => `${JSON.stringify(name)}: ${inline(expect[name])}`).join(', ');
const list = (name, items) => {
  const lines = items.map(item => `\n      ${JSON.stringify(item)}`);
  return `    ${JSON.stringify(name)}: [${lines.join(',')}]`;
};

export const printed = expect => [
  '  "expect": {',
  [
    `    ${pairs(expect, ['outcome', 'decidedBy', 'gate', 'call', 'callFirst'])}`,
    `    ${pairs(expect, ['dose', 'parts', 'grams', 'given'])}`,
    ...(expect.working ? [`    ${pairs(expect, ['working'])}`] : []),
    list('steps', expect.steps),
    `    ${pairs(expect, ['holds'])}`,
    list('looks', expect.looks),
    `    ${pairs(expect, ['cautions', 'incident'])}`,
  ].join(',\n'),
  '  }',
  '}',
  '',
].join('\n');

const wanted = process.argv.slice(2);
for (const file of wanted.length ? wanted : caseFiles()) {
  const text = readFileSync(file, 'utf8'), given = JSON.parse(text);
  if (isSchool(given)) continue;
  const { working, ...expect } = expectedAgain(given);
  const head = text.slice(0, text.indexOf('  "expect": '));
  writeFileSync(file, head + printed(given.expect.working ? { ...expect, working } : expect));
}
