// What came in, by file, code or hand: first what it is, then the signature, then beside the plan in use. Whether the plan is one is
// the core's to say. Nothing is taken in here.
import { elements, members, object, string } from '../text.js';
import { fromText } from '../desk/tree.js';
import { placeWords } from '../desk/place.js';
import { readCode, readEnvelope } from './envelope.js';
import { reviewed } from './findings.js';
import { keyName, verify } from './signature.js';
import { stays } from './values.js';
import { mixed, textsOf, visible } from '../views/visible.js';

const refuse = (path, reason, accepted) => ({ refused: [{ path, reason, ...(accepted ? { accepted } : {}) }] });

// A pasted text may have been broken into lines on its way. A code never begins or ends with a blank.
const unbroken = text => text.replace(/[\r\n\t\u200b\u2060\ufeff]/g, '').trim();

const parsed = text => { try { return JSON.parse(text); } catch { return undefined; } };

// A file is looked at only when it can be one of ours: what is larger is not even opened.
const largestFile = 6000000;

const signedBy = async ({ key, value, at, from }, fingerprint) => (await verify(key, value, { fingerprint, at, from }) ? { at, from, key: await keyName(key) } : null);

export const reader = ask => async text => {
  if (/^\s*(STOPGAP|SIGNED)/.test(text)) {
    const code = readCode(unbroken(text));
    if (code.refused) return code;
    const answer = ask('unpackPlan', object({ text: string(code.text) }));
    if (answer.refused) return { refused: JSON.parse(answer.text).refused };
    const signed = code.signed && await signedBy(code.signed, answer.fingerprint);
    return code.signed && !signed ? refuse('/signature', 'fingerprintMismatch') : { plan: members(answer.text).plan, events: [], signed };
  }
  const doc = parsed(text);
  if (!doc || typeof doc !== 'object' || Array.isArray(doc)) return refuse('', 'notJson');
  if (doc.format === 'stopgap.copy' && doc.plan && Array.isArray(doc.record?.events)) {
    if (doc.version !== 1) return refuse('/version', 'newerFormat', '1');
    const parts = members(text);
    // The record stays whole as well: whose it is, and in which format, is the core's to read.
    return { plan: parts.plan, record: parts.record, events: elements(members(parts.record).events), draft: parts.draft, signed: null };
  }
  if (doc.format !== 'stopgap.handover') return { plan: text, events: [], signed: null };
  const envelope = readEnvelope(text, doc);
  if (envelope.refused) return envelope;
  // The core gives the fingerprint of what it read; the one in the file is only what the file says of itself.
  const judged = ask('comparePlans', object({ before: envelope.plan, after: envelope.plan }));
  if (judged.refused) return { refused: JSON.parse(judged.text).refused.filter(entry => entry.path.startsWith('/before')).map(entry => ({ ...entry, path: entry.path.replace(/^\/before/, '/plan') })) };
  const { after } = judged.fingerprints;
  if (after !== envelope.signed.fingerprint) return refuse('/fingerprint', 'fingerprintMismatch');
  const signed = await signedBy(envelope.signed, after);
  return signed ? { plan: envelope.plan, events: [], signed } : refuse('/signature', 'fingerprintMismatch');
};

export const fileReader = (ask, words) => async file => {
  if (file.size > largestFile) return { refused: [{ path: '', reason: 'tooLarge', got: words('megabytes', { count: String(Math.ceil(file.size / 1000000)) }), accepted: words('megabytes', { count: String(largestFile / 1000000) }) }] };
  // Moved since it was chosen, or on a drive that is not reached: that is no reason to stop everything else.
  const text = await file.text().catch(() => null);
  return text === null ? refuse('', 'notJson') : reader(ask)(text);
};

// The day of agreement is left out as well: whoever takes the plan types it from a paper of their own.
const unsaid = new Set(['format', 'version', 'id', 'agreement/on']);

// What must be said loudly, what changes, and every other value. `present` is the text of the plan in use, or null.
export const weighing = ({ ask, words, day }) => (plan, present, { incident, today }) => {
  const doc = JSON.parse(plan), tree = fromText(plan), mark = doc.decimalMark;
  const standing = ask('standing', object({ plan, today: string(today) })).standing;
  const compared = ask('comparePlans', object({ before: present ?? plan, after: plan }));
  const own = present ? JSON.parse(present) : null;
  const older = present ? fromText(present) : null;
  const other = own && (own.person.name !== doc.person.name || own.person.born !== doc.person.born);
  const loud = [
    ...(other ? [words('bring-other-person', { name: own.person.name, born: day(own.person.born) })] : []),
    ...(own && !other && own.id !== doc.id ? [words('bring-other-plan')] : []),
    ...(own && !other && own.id === doc.id && doc.revision < own.revision ? [words('bring-older', { revision: String(own.revision) })] : []),
    ...(own && !other && own.id === doc.id && doc.revision === own.revision && compared.changes.length ? [words('bring-same-revision')] : []),
    ...({ draft: () => [words('bring-draft')], withdrawn: () => [words('bring-withdrawn')], superseded: () => [words('bring-superseded')], expired: () => [words('bring-expired')],
      inGrace: () => [words('bring-in-grace')], reviewDue: () => [words('bring-in-grace')] }[standing]?.() ?? []),
    ...textsOf(doc).filter(text => visible(text) !== text).map(text => words('bring-unseen', { text: visible(text) })),
    ...textsOf(doc).flatMap(mixed).map(({ word, letters }) => words('bring-mixed', { word, letters })),
    ...(incident ? [words('bring-in-incident')] : []),
  ];
  const inside = change => change.path.replace(/^\/(plan|before|after)?\/?/, '');
  const changes = present ? compared.changes.filter(change => !unsaid.has(inside(change))).map(change => ({ place: placeWords(change.kind === 'removed' ? older : tree, change.path, words, mark), before: change.before && visible(change.before), after: change.after && visible(change.after) })) : [];
  const moved = new Set(present ? compared.changes.map(inside) : []);
  const isMoved = path => path.split('/').some((_, at, steps) => moved.has(steps.slice(0, at + 1).join('/')));
  const same = stays(tree, path => unsaid.has(path) || isMoved(path), mark, words);
  return { loud, changes, same, ...reviewed(ask, plan, words), compared: Boolean(present), other, isDraft: standing === 'draft', fingerprint: compared.fingerprints.after };
};
