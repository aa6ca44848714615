// What lies in the store, as the core judges it: which rows are the record, which are damaged, and whether what was injected can still
// be told from it. Nothing is decided here.
import { list, object, string } from './text.js';

// A text of ours that may be damaged: what cannot be read counts as absent.
export const readable = (text, otherwise = null) => {
  try { const found = JSON.parse(text); return found !== null && typeof found === 'object' ? found : otherwise; } catch { return otherwise; }
};
// The seal of a whole record: how many entries it has, and what was set aside of it.
export const sealFrom = text => {
  const { count, seal, aside } = readable(text, {});
  return Number.isSafeInteger(count) && count >= 0 && count < 1e5 && typeof seal === 'string' ? { count, seal, aside: Array.isArray(aside) ? aside : [] } : null;
};

const textOr = value => (typeof value === 'string' ? string(value) : undefined);
const rowText = ({ value }) => object(value === null || typeof value !== 'object' ? {} : { id: textOr(value.id), text: typeof value.text === 'string' ? JSON.stringify(value.text.toWellFormed()) : undefined,
  place: Number.isSafeInteger(value.place) && value.place > 0 && value.place < 1e5 ? String(value.place) : undefined, before: textOr(value.before), seal: textOr(value.seal) });

// {events: rows that are the record, damaged: the others as they lie here, missing: rows that are gone, inDoubt, sealed, hours, longHours}
export const checked = (ask, { owner, rows, seal }, { plan, now }) => {
  const whole = sealFrom(seal);
  const answer = ask('checkRecord', object({ plan, now: string(now), owner: string(owner), rows: list(rows.map(rowText)),
    seal: whole ? object({ count: String(whole.count), seal: string(whole.seal) }) : undefined, sealLost: seal !== undefined && !whole ? 'true' : undefined }));
  // What the core does not even take is damaged as a whole.
  if (answer.refused) return { events: [], damaged: rows, missing: true, inDoubt: true, sealed: true, hours: null, longHours: null };
  const told = new Map(answer.damaged.filter(({ row }) => row !== null).map(entry => [entry.row, entry]));
  return { events: rows.filter((row, at) => !told.has(at) || told.get(at).reads), damaged: rows.filter((row, at) => told.has(at) && !told.get(at).reads),
    missing: answer.damaged.some(({ row }) => row === null), any: answer.damaged.length > 0, inDoubt: answer.recordInDoubt, sealed: answer.sealed, hours: answer.hours, longHours: answer.longHours };
};

// Every record of a person: that of the plan in use, and those of other plans of the same person. Which these are is the core's answer.
export const ownersOf = (ask, doc, others) => {
  const asked = others.filter(other => other && other.id !== doc.id);
  if (!asked.length) return [doc.id];
  const one = ({ id, person }) => object({ id: string(String(id)), name: string(String(person?.name ?? '')), born: string(String(person?.born ?? '')) });
  const { same } = ask('samePerson', object({ person: one(doc), others: list(asked.map(one)) }));
  return [doc.id, ...new Set(asked.filter((other, at) => same[at]).map(({ id }) => id))];
};

// The texts of a row as somebody can still read them, for a page that shows what cannot be trusted.
export const asWritten = ({ value }) => (typeof value?.text === 'string' ? value.text : null);
// All of it as it lies here, for a file: nothing is left out, nothing is put right.
export const rawCopy = (plan, records) => JSON.stringify({ format: 'stopgap.raw', version: 1, plan, records }, null, 1);
