// A person's data as one file, out and in. What comes in passes the strict reading of the core before anything is kept.
import { list, object, string } from '../text.js';
import { record } from '../situation.js';
import { fileReader } from '../handover/received.js';

export const fileOf = ({ id, draft, revisions, events }) => object({ format: string('stopgap.copy'), version: '1', plan: revisions.at(-1)?.text ?? draft,
  record: record(id, events.map(text => ({ text }))), draft: draft && revisions.length ? draft : undefined, revisions: revisions.length > 1 ? list(revisions.map(entry => entry.text)) : undefined });

// {plan, isDraft, draft?, events[], signed} or {refused}. A draft may be unreadable yet; what was agreed may not. What kind of file
// it is, who signed it and how large it may be is told by the one reader of what is handed over.
export const readFile = async (file, ask, words, now) => {
  const found = await fileReader(ask, words)(file);
  if (found.refused) return found;
  const { plan, events, draft, signed } = found;
  const { id, agreement } = JSON.parse(plan);
  if (typeof id !== 'string' || !/^[A-Za-z0-9_-]{1,40}$/.test(id)) return { refused: [{ path: '/plan/id', reason: 'missing' }] };
  const isDraft = agreement?.status === 'draft';
  const judged = isDraft && !events.length ? {} : ask('holds', object({ plan, record: found.record ?? record(id, []), now: string(now) }));
  if (judged.refused) return { refused: JSON.parse(judged.text).refused };
  return { id, plan, isDraft, signed, draft: draft && !isDraft && JSON.parse(draft)?.id === id ? draft : undefined, events };
};
