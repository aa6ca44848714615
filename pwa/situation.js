// The answers of the questions, written as the core reads them. What was not answered is left out, or said to be unknown.
import { list, number, object, string, truth } from './text.js';

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

export const situation = (draft, now) => object({
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
});

export const record = (planId, events) => object({
  format: string('stopgap.record'), version: '1', planId: string(planId), events: list(events.map(event => event.text)),
});
