// The answers of the questions, written as the core reads them. What was not answered is left out, or said to be unknown.
import { list, number, object, string, truth } from './text.js';
import { hoursUntil, minutesUntil, order, quartersUntil } from './times.js';

export const glucoseReading = answer => (answer.reading
  ? { reading: string(answer.reading), from: string(answer.from) }
  : { value: number(answer.literal), unit: string(answer.unit), from: string(answer.from) });

export const ketoneReading = answer => {
  if (answer.reading) return { blood: string(answer.reading) };
  if (answer.literal) return { blood: number(answer.literal) };
  if (answer.urine) return { urine: string(answer.urine) };
  return { unknown: string(answer.unknown) };
};

const glucose = answer => (!answer || answer.unknown ? undefined : object({
  ...glucoseReading(answer),
  at: string(answer.at),
  repeated: answer.repeated ? 'true' : undefined,
  noMeter: answer.noMeter ? 'true' : undefined,
}));

const ketones = answer => object(!answer || answer.unknown ? { unknown: string(answer?.unknown ?? 'notYet') }
  : { ...ketoneReading(answer), at: string(answer.at) });

// `notBefore`: the day this release was built from; no clock that is right shows an earlier one.
// `inDoubt`: nobody can tell from the record what was injected.
export const situation = (draft, now, notBefore, inDoubt) => object({
  now: string(now),
  glucose: glucose(draft.glucose),
  ketones: ketones(draft.ketones),
  signs: list((draft.signs?.what ?? []).map(string)),
  seen: list((draft.seen?.what ?? []).map(string)),
  carbs: draft.carbs ? number(draft.carbs) : undefined,
  unwell: draft.signs?.unwell ? truth(true) : undefined,
  pumpOnBoard: draft.onBoard ? number(draft.onBoard) : undefined,
  pumpOffersNothing: draft.seen?.offersNothing ? truth(true) : undefined,
  highSince: draft.highSince ? string(draft.highSince) : undefined,
  with: draft.with ? string(draft.with) : undefined,
  viewer: draft.viewer ? string(draft.viewer) : undefined,
  notBefore: notBefore ? string(notBefore) : undefined,
  recordInDoubt: inDoubt ? truth(true) : undefined,
});

export const record = (planId, events) => object({
  format: string('stopgap.record'), version: '1', planId: string(planId), events: list(events.map(event => event.text)),
});

// How long a pump stays off and until when somebody sleeps was said once, and is not asked again at every injection of a night. Once it is
// over, or a pump worked meanwhile, or after a day of not knowing, it says nothing any more. In minutes; ours, no text was found for it.
export const aDay = 24 * 60;
export const stillSaid = (known, events, now) => {
  if (!known?.at || (known.until ? quartersUntil(known.until, now.moment) <= 0 : minutesUntil(known.at, now.moment) <= -aDay)) return null;
  return events.some(event => event.kind === 'pump' && event.doc.state === 'on' && order(event.at, known.at) >= 0) ? null : known;
};
// As they were typed while nothing was worked out from them; a waking time that has passed meanwhile says nothing any more.
export const hoursSaid = ({ hours, until, asleep }, now) => ({
  expectedHours: hours ? (until ? hoursUntil(until, now.moment) : number(hours)) : undefined,
  asleepUntil: asleep && Date.parse(asleep) > now.moment ? string(asleep) : undefined,
});
