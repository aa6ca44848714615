// One function for each thing that can happen: what goes into the record, as text. Amounts come in as the digits typed.
import { list, number, object, string, truth } from './text.js';
import { glucoseReading, ketoneReading } from './situation.js';

const event = (kind, id, at, members) => {
  const text = object({ id: string(id), at: string(at), kind: string(kind), ...members });
  return { id, at, kind, text, doc: JSON.parse(text) };
};

export const fromText = text => {
  const doc = JSON.parse(text);
  return { id: doc.id, at: doc.at, kind: doc.kind, text, doc };
};

export const incident = (id, at, state) => event('incident', id, at, { state: string(state) });
export const glucose = (id, at, answer) => event('glucose', id, at, glucoseReading(answer));
export const ketones = (id, at, answer) => event('ketones', id, at, ketoneReading(answer));
export const sign = (id, at, what) => event('sign', id, at, { what: list(what.map(string)) });
export const seen = (id, at, what) => event('seen', id, at, { what: list(what.map(string)) });
export const doseShown = (id, at, { units, insulin, parts }) => event('doseShown', id, at, { units: number(units), insulin: string(insulin), parts });
export const doseRefused = (id, at, shown) => event('doseRefused', id, at, { shown: string(shown) });
export const injection = (id, at, { insulin, units, device, sure = true, parts, glucose: read, ketones: tested, shown, order, basalHours, zonesEast }) => event('injection', id, at, {
  insulin: string(insulin), units: number(units), with: string(device), sure: sure ? undefined : 'false', parts,
  glucose: read ? object(glucoseReading(read)) : undefined, ketones: tested ? object(ketoneReading(tested)) : undefined,
  shown: shown ? string(shown) : undefined, order: order ? string(order) : undefined,
  basalHours, zonesEast });
export const pumpDose = (id, at, { units, purpose, glucose: read }) => event('pumpDose', id, at, {
  units: number(units), purpose: string(purpose), glucose: read ? object(glucoseReading(read)) : undefined });
export const offBody = (id, at, units, tubingEnd) => event('offBody', id, at, { units: number(units), tubingEnd: string(tubingEnd) });
export const mistake = (id, at, what, insulin, units) => event('mistake', id, at, { what: string(what), insulin: string(insulin), units: units ? number(units) : undefined });
export const changed = (id, at, what) => event('changed', id, at, { what: list([string(what)]) });
export const automation = (id, at, state) => event('automation', id, at, { state: string(state) });
export const pump = (id, at, state) => event('pump', id, at, { state: string(state) });
export const carbs = (id, at, grams, injectionId) => event('carbs', id, at, { grams: number(grams), for: injectionId ? string(injectionId) : undefined });
export const look = (id, at, due, what) => event('look', id, at, { due: string(due), what: list(what.map(string)) });
export const call = (id, at, to, answered, about) => event('call', id, at, { to: string(to), answered: truth(answered), for: about ? string(about) : undefined });
export const order = (id, at, { by, units, insulin = 'rapid', text, readBack }) => event('order', id, at, { by: string(by), units: number(units), insulin: string(insulin), text: string(text), readBack: readBack ? truth(true) : undefined });
export const alarmSet = (id, at, due) => event('alarmSet', id, at, { due: string(due) });
export const note = (id, at, text) => event('note', id, at, { text: string(text) });
export const strike = (id, at, target, reason) => event('strike', id, at, { target: string(target), reason: string(reason) });
