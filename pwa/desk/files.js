// A person's data as one file, out and in. What comes in passes the strict reading of the core before anything is kept.
import { elements, list, members, object, string } from '../text.js';
import { record } from '../situation.js';

const largest = 6000000;

export const fileOf = ({ id, draft, revisions, events }) => object({ format: string('stopgap.copy'), version: '1', plan: revisions.at(-1)?.text ?? draft,
  record: record(id, events.map(text => ({ text }))), draft: draft && revisions.length ? draft : undefined, revisions: revisions.length > 1 ? list(revisions.map(entry => entry.text)) : undefined });

export const download = (text, name) => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
};

const parsed = text => { try { return JSON.parse(text); } catch { return undefined; } };

// {plan, draft?, events[]} or {refused}. A draft may be unreadable yet; what was agreed may not.
export const readFile = async (file, ask, now) => {
  if (file.size > largest) return { refused: [{ path: '', reason: 'tooLarge' }] };
  const text = await file.text();
  const doc = parsed(text);
  if (doc === null || typeof doc !== 'object' || Array.isArray(doc)) return { refused: [{ path: '', reason: 'notJson' }] };
  const parts = members(text);
  const whole = doc.format === 'stopgap.copy' || doc.record?.events;
  const plan = whole ? parts.plan ?? '{}' : text.trim();
  const planDoc = parsed(plan);
  const id = planDoc?.id;
  if (typeof id !== 'string' || !/^[A-Za-z0-9_-]{1,40}$/.test(id)) return { refused: [{ path: '/plan/id', reason: 'missing' }] };
  const isDraft = planDoc.agreement?.status === 'draft';
  const events = whole && parts.record && Array.isArray(doc.record?.events) ? elements(members(parts.record).events) : [];
  const judged = isDraft && !events.length ? {} : ask('holds', object({ plan, record: record(id, events.map(text => ({ text }))), now: string(now) }));
  if (judged.refused) return { refused: JSON.parse(judged.text).refused };
  return { id, plan, isDraft, draft: whole && !isDraft && doc.draft?.id === id ? parts.draft : undefined, events };
};
