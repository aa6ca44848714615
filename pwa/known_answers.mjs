// Requests whose answers are written into each release, so that the page can compare them at every start (pwa/core.js). One leads to a
// dose: table, correction, what still acts, cap and rounding; the other to the gate that closes on the dose before. A person that was
// made up, and the plan as it is shipped with the app.
import { readFileSync } from 'node:fs';

const planText = readFileSync(new URL('demo/adult.json', import.meta.url), 'utf8');
const { id } = JSON.parse(planText);

const pumpDose = '{"id":"p1","at":"2026-11-25T01:05:00+00:00","kind":"pumpDose","units":1.5,"purpose":"correction"}';
const needle = '{"id":"i1","at":"2026-11-25T02:12:00+00:00","kind":"injection","insulin":"rapid","units":4,"with":"syringe","parts":{"rescue":4,"meal":0,"basal":0}}';

const request = events => `{"plan":${planText},"record":{"format":"stopgap.record","version":1,"planId":"${id}","events":[${events}]},
"situation":{"now":"2026-11-25T03:10:00+00:00","glucose":{"value":16.0,"unit":"mmol/L","from":"finger"},
"ketones":{"blood":0.8},"signs":[],"seen":[]}}`;

const requests = [{ call: 'advise', request: request(pumpDose) }, { call: 'advise', request: request(`${pumpDose},${needle}`) }];

// [{call, request, answer}], answered by `ask`. What they were chosen for must still be in them.
export const answered = ask => {
  const known = requests.map(asked => ({ ...asked, answer: ask(asked.call, asked.request) }));
  const [open, closed] = known.map(({ answer }) => JSON.parse(answer));
  if (!open.dose || open.gate) throw new Error(`The first known answer gives no dose: ${known[0].answer}`);
  if (closed.dose || closed.gate !== 'HLD') throw new Error(`The second known answer is not held: ${known[1].answer}`);
  return known;
};
