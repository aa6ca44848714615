// One event of a story, and what the plan led to then, in words. Every amount and every clock time is a text of the core.
import { outcome } from '../../views/advice.js';
import { expiryLine, injectionExtras, seenList, signList, urineWord } from '../../views/record.js';

const source = (from, words) => ({ finger: () => words('finger'), sensor: () => words('sensor') }[from]());
const glucose = (what, words) => words('record-glucose', { value: what.reading ?? what.value, unit: what.unit ?? words('meter-word'), source: source(what.from, words) });
const ketones = (what, words) => (what.urine ? words('record-urine', { word: urineWord(what.urine, words) })
  : what.blood ? words('record-ketones', { value: what.blood }) : words('story-ketones-unknown'));
const carried = (what, words) => [...(what.glucose ? [glucose(what.glucose, words)] : []), ...(what.ketones ? [ketones(what.ketones, words)] : [])];
const insulin = (name, words) => ({ rapid: () => words('rapid-word'), long: () => words('long-word') }[name]());
const changes = (what, words) => what.map(name => ({ set: () => words('change-set'), reservoir: () => words('change-reservoir'), insulin: () => words('change-insulin') }[name]()));
const typed = (text, words) => (text.trim() ? [words('story-typed', { text })] : []);

// Sentences, the main one first.
export const happened = ({ kind, what }, dayWords, words) => ({
  incident: () => [what.state === 'opened' ? words('record-opened') : words('record-closed')],
  glucose: () => [glucose(what, words)],
  ketones: () => [ketones(what, words)],
  sign: () => [signList(what.what, words)],
  seen: () => [seenList(what.what, words)],
  doseShown: () => [words('record-shown', { dose: what.dose })],
  doseRefused: () => [words('record-refused')],
  injection: () => [what.sure ? words('record-injection', { dose: what.dose, insulin: insulin(what.insulin, words) })
    : words('record-injection-unsure', { dose: what.dose, insulin: insulin(what.insulin, words) }),
    ...injectionExtras({ hours: what.basalHours, zones: what.zonesEast, instead: what.insteadOf }, words), ...carried(what, words)],
  pumpDose: () => [{ correction: () => words('record-pump-correction', { dose: what.dose }), meal: () => words('record-pump-meal', { dose: what.dose }),
    automatic: () => words('record-pump-automatic', { dose: what.dose }) }[what.purpose](), ...carried(what, words)],
  offBody: () => [{ sink: () => words('record-off-body-sink', { dose: what.dose }), body: () => words('record-off-body-body', { dose: what.dose }),
    unsure: () => words('record-off-body-unsure', { dose: what.dose }) }[what.tubingEnd]()],
  mistake: () => [{ wrongInsulin: () => words('mistake-wrong'), tooManyUnits: () => words('mistake-many'), twice: () => words('mistake-twice'), offBodyIntoBody: () => words('mistake-off-body') }[what.what](),
    what.dose ? words('story-mistake-dose', { dose: what.dose, insulin: insulin(what.insulin, words) }) : words('story-mistake-unknown')],
  changed: () => changes(what.what, words),
  automation: () => [what.state === 'paused' ? words('change-automation-paused') : words('change-automation-on')],
  pump: () => [what.state === 'off' ? words('change-pump-off') : words('change-pump-on')],
  carbs: () => [words('record-carbs', { grams: what.grams })],
  look: () => [words('record-look', { clock: what.dueClock })],
  call: () => { const to = { team: () => words('call-to-team'), emergency: () => words('call-to-emergency'), home: () => words('call-to-home') }[what.to]();
    return [what.answered ? words('record-call', { to }) : words('record-call-unanswered', { to })]; },
  order: () => [what.readBack ? words('record-order-read-back', { by: what.by }) : words('record-order', { by: what.by }), ...(what.dose ? [words('story-order-dose', { dose: what.dose })] : []), ...typed(what.text, words)],
  alarmSet: () => [words('record-alarm', { clock: what.dueClock })],
  note: () => [what.text.trim() ? what.text : words('story-note-empty')],
  expires: () => [expiryLine(what, dayWords(what.on), words)],
  strike: () => (what.text === 'misTap' ? [words('record-mis-tap')] : [words('record-strike'), ...typed(what.text, words)]),
}[kind]());

export const led = ({ outcome: name, dose, grams, call, decidedBy, gate }, words) => ({
  title: outcome(name, words), dose,
  more: [...(grams ? [words('story-led-grams', { grams })] : []), ...(call === 'team' ? [words('story-led-team')] : call === 'emergency' ? [words('story-led-emergency')] : [])],
  rule: gate ? words('story-rule-gate', { rule: decidedBy, gate }) : words('story-rule', { rule: decidedBy }),
});
