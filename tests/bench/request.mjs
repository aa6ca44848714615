// One request as a phone would make it: a demo plan of about 3 KB and a record of 20 events.
import { readFileSync, writeFileSync } from 'node:fs';

const plan = readFileSync(new URL('../../pwa/demo/adult.json', import.meta.url), 'utf8');
const { id } = JSON.parse(plan);
const at = time => `2026-11-25T${time}:00+00:00`;
const glucose = (time, value) => ({ at: at(time), kind: 'glucose', value, unit: 'mmol/L', from: 'finger' });
const ketones = (time, blood) => ({ at: at(time), kind: 'ketones', blood });
const events = [
  { at: '2026-11-24T18:30:00+00:00', kind: 'pumpDose', units: 4.5, purpose: 'meal' },
  { at: '2026-11-24T18:30:00+00:00', kind: 'carbs', grams: 50 },
  { at: '2026-11-24T19:30:00+00:00', kind: 'glucose', value: 9.2, unit: 'mmol/L', from: 'sensor' },
  { at: '2026-11-24T22:30:00+00:00', kind: 'glucose', value: 11.4, unit: 'mmol/L', from: 'sensor' },
  { at: at('00:05'), kind: 'incident', state: 'opened' },
  glucose('00:06', 15.1), ketones('00:08', 0.4),
  { at: at('00:10'), kind: 'pumpDose', units: 3.2, purpose: 'correction', glucose: { value: 15.1, unit: 'mmol/L', from: 'finger' } },
  { at: at('01:10'), kind: 'look', due: at('01:10'), what: ['glucose'] },
  glucose('01:11', 15.4), ketones('01:13', 0.9),
  { at: at('01:15'), kind: 'doseShown', units: 4, insulin: 'rapid' },
  { at: at('01:18'), kind: 'injection', insulin: 'rapid', units: 4, with: 'syringe', shown: 'e-12',
    glucose: { value: 15.4, unit: 'mmol/L', from: 'finger' }, ketones: { blood: 0.9 } },
  { at: at('01:25'), kind: 'changed', what: ['set', 'reservoir'] },
  { at: at('01:28'), kind: 'offBody', units: 4, tubingEnd: 'sink' },
  { at: at('01:30'), kind: 'automation', state: 'paused' },
  { at: at('01:31'), kind: 'alarmSet', due: at('02:18') },
  { at: at('01:32'), kind: 'note', text: 'The old cannula was bent.' },
  glucose('02:18', 15.9), ketones('02:20', 1.1),
].map((event, number) => ({ id: `e-${number + 1}`, ...event }));

export const request = JSON.stringify({
  plan: '@', record: { format: 'stopgap.record', version: 1, planId: id, events },
  situation: { now: at('03:20'), glucose: { value: 16.2, unit: 'mmol/L', from: 'finger' }, ketones: { blood: 1.2 }, signs: [], seen: [] },
}).replace('"@"', plan);

if (process.argv[2]) writeFileSync(process.argv[2], request);
