// Requests whose answers are written into each release, so that the page can compare them at every start (pwa/core.js). One leads to a
// dose: table, correction, what still acts, cap, rounding, and the gate that lets it through; the other to what holds after a dose. Both
// are asked on the way of a start: a second advice would cost a slow phone 30 ms, and what holds is asked there anyway. A person that was
// made up, and the plan as it is shipped with the app.
import { readFileSync } from 'node:fs';

const planText = readFileSync(new URL('demo/adult.json', import.meta.url), 'utf8');
const { id } = JSON.parse(planText);

const earlier = '{"id":"i0","at":"2026-11-24T23:05:00+00:00","kind":"injection","insulin":"rapid","units":4,"with":"syringe","parts":{"rescue":4,"meal":0,"basal":0}}';
const pumpDose = '{"id":"p1","at":"2026-11-25T01:05:00+00:00","kind":"pumpDose","units":1.5,"purpose":"correction"}';
const needle = '{"id":"i1","at":"2026-11-25T02:12:00+00:00","kind":"injection","insulin":"rapid","units":4,"with":"syringe","parts":{"rescue":4,"meal":0,"basal":0}}';

const record = events => `{"format":"stopgap.record","version":1,"planId":"${id}","events":[${events}]}`;
const now = '"now":"2026-11-25T03:10:00+00:00"';

const requests = [
  { call: 'advise', request: `{"plan":${planText},"record":${record(`${earlier},${pumpDose}`)},
"situation":{${now},"glucose":{"value":16.0,"unit":"mmol/L","from":"finger"},"ketones":{"blood":0.8},"signs":[],"seen":[]}}` },
  { call: 'holds', request: `{"plan":${planText},"record":${record(`${pumpDose},${needle}`)},${now}}` },
];

// [{call, request, answer}], answered by `ask`. What they were chosen for must still be in them.
export const answered = ask => {
  const known = requests.map(asked => ({ ...asked, answer: ask(asked.call, asked.request) }));
  const [open, held] = known.map(({ answer }) => JSON.parse(answer));
  if (!open.dose || open.gate || open.dose.working.onBoard === '0') throw new Error(`The first known answer gives no dose: ${known[0].answer}`);
  if (!held.holds?.length) throw new Error(`Nothing holds in the second known answer: ${known[1].answer}`);
  return known;
};
