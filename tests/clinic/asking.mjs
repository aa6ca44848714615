// Asks the native program many requests at once, and gives the answers as they were written.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = join(dirname(fileURLToPath(import.meta.url)), '../..');
export const plan = JSON.parse(readFileSync(join(top, 'tests/cases/example_plan.json'), 'utf8'));
export const childPlan = JSON.parse(readFileSync(join(top, 'pwa/demo/child.json'), 'utf8'));

export const answers = (call, requests) => {
  const { stdout, status } = spawnSync(join(top, 'build/native/stopgap'), [call, '--lines'],
    { input: requests.map(request => `${JSON.stringify(request)}\n`).join(''), maxBuffer: 1 << 28 });
  const lines = stdout.toString().trimEnd().split('\n');
  if (status !== 0 || lines.length !== requests.length) throw new Error(`${call} ended with ${status}: ${lines.find(line => line.startsWith('{"refused"')) ?? ''}`);
  return lines;
};
export const record = (events, of = plan) => ({ format: 'stopgap.record', version: 1, planId: of.id, events });
export const bundleOf = (events, of = plan) => JSON.parse(answers('exportFhir', [{ plan: of, record: record(events, of) }])[0]);
