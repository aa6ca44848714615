// The record as sentences, newest first.
import { unitsText } from './units.js';

const source = (from, words) => ({ finger: () => words('finger'), sensor: () => words('sensor') }[from]());
const insulin = (name, words) => ({ rapid: () => words('rapid-word'), long: () => words('long-word') }[name]());
const list = (what, names) => what.map(name => names[name]()).join(', ');

const signNames = words => ({ drowsy: () => words('sign-drowsy'), confused: () => words('sign-confused'), fastBreathing: () => words('sign-breathing'),
  cannotKeepFluid: () => words('sign-fluid'), vomitedAgain: () => words('sign-vomited-again'), vomitedOnce: () => words('sign-vomited-once'),
  bellyPain: () => words('sign-belly'), fitting: () => words('sign-fitting-alone'), cannotSwallow: () => words('sign-swallow-alone') });
const seenNames = words => ({ leak: () => words('seen-leak'), blood: () => words('seen-blood'), bentCannula: () => words('seen-bent'), cameOut: () => words('seen-came-out'),
  occlusionAlarm: () => words('seen-occlusion'), outOfInsulin: () => words('seen-empty'), heatedInsulin: () => words('seen-heated'), pumpDead: () => words('seen-dead') });
const urine = (word, words) => ({ negative: () => words('urine-negative'), trace: () => words('urine-trace'), small: () => words('urine-small'),
  moderate: () => words('urine-moderate'), large: () => words('urine-large') }[word]());

export const signList = (what, words) => list(what, signNames(words));
export const seenList = (what, words) => list(what, seenNames(words));
export const urineWord = urine;

// Until which day something keeps.
export const expiryLine = ({ what, text }, day, words) => ({ vial: () => words('record-expires-vial', { day }), strips: () => words('record-expires-strips', { day }), glucagon: () => words('record-expires-glucagon', { day }),
  other: () => words('record-expires-other', { text: text?.trim() ? text : words('record-expires-something'), day }) }[what]());

// What an injection says besides its amount: the hours of its basal part, a journey, the wrong entry that it stands for.
export const injectionExtras = ({ hours, zones, instead }, words) => [
  ...(hours ? [words('record-basal-hours', { hours })] : []),
  ...(!zones || zones === '0' ? [] : [zones.startsWith('-') ? words('record-zones-west', { zones: zones.slice(1) }) : words('record-zones-east', { zones })]),
  ...(instead ? [words('record-instead')] : [])];

// `amount` writes a number of the event's text as people read it; no float is ever shown.
export const line = (event, words, amount, day) => {
  const { doc } = event;
  const units = () => unitsText(amount(event, 'units'), words);
  return {
    incident: () => (doc.state === 'opened' ? words('record-opened') : words('record-closed')),
    glucose: () => words('record-glucose', { value: doc.reading ?? amount(event, 'value'), unit: doc.unit ?? words('meter-word'), source: source(doc.from, words) }),
    ketones: () => (doc.urine ? words('record-urine', { word: urine(doc.urine, words) }) : words('record-ketones', { value: doc.blood === 'HI' ? doc.blood : amount(event, 'blood') })),
    sign: () => signList(doc.what, words),
    seen: () => seenList(doc.what, words),
    doseShown: () => words('record-shown', { dose: units() }),
    doseRefused: () => words('record-refused'),
    injection: () => [doc.sure === false ? words('record-injection-unsure', { dose: units(), insulin: insulin(doc.insulin, words) }) : words('record-injection', { dose: units(), insulin: insulin(doc.insulin, words) }),
      ...injectionExtras({ hours: doc.basalHours && amount(event, 'basalHours'), zones: doc.zonesEast && amount(event, 'zonesEast'), instead: doc.insteadOf }, words)].join(', '),
    pumpDose: () => ({ correction: () => words('record-pump-correction', { dose: units() }), meal: () => words('record-pump-meal', { dose: units() }),
      automatic: () => words('record-pump-automatic', { dose: units() }) }[doc.purpose]()),
    offBody: () => ({ sink: () => words('record-off-body-sink', { dose: units() }), body: () => words('record-off-body-body', { dose: units() }),
      unsure: () => words('record-off-body-unsure', { dose: units() }) }[doc.tubingEnd]()),
    mistake: () => ({ wrongInsulin: () => words('mistake-wrong'), tooManyUnits: () => words('mistake-many'), twice: () => words('mistake-twice'), offBodyIntoBody: () => words('mistake-off-body') }[doc.what]()),
    changed: () => list(doc.what, { set: () => words('change-set'), reservoir: () => words('change-reservoir'), insulin: () => words('change-insulin') }),
    automation: () => (doc.state === 'paused' ? words('change-automation-paused') : words('change-automation-on')),
    pump: () => (doc.state === 'off' ? words('change-pump-off') : words('change-pump-on')),
    carbs: () => words('record-carbs', { grams: amount(event, 'grams') }),
    look: () => words('record-look', { clock: doc.due.slice(11, 16) }),
    call: () => { const to = { team: () => words('call-to-team'), emergency: () => words('call-to-emergency'), home: () => words('call-to-home') }[doc.to]();
      return doc.answered ? words('record-call', { to }) : words('record-call-unanswered', { to }); },
    order: () => (doc.readBack ? words('record-order-read-back', { by: doc.by }) : words('record-order', { by: doc.by })),
    alarmSet: () => words('record-alarm', { clock: doc.due.slice(11, 16) }),
    note: () => doc.text,
    expires: () => expiryLine(doc, day(doc.on), words),
    strike: () => (doc.reason === 'misTap' ? words('record-mis-tap') : words('record-strike')),
  }[event.kind]();
};
