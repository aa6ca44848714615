// What is kept: plans, the record, and the answers of the question in hand. What happened is added and never rewritten;
// ids are made when a screen is shown, so a second tap adds nothing. Every value is text.
import { openDB } from './vendor/idb.js';
import { readable, sealFrom } from './kept.js';

export class NotKept extends Error {}

let db;

export const open = async () => {
  db = await openDB('stopgap', 3, {
    // Each step adds; none rewrites what an earlier one laid down.
    upgrade(older, from, to, turn) {
      if (from < 1) {
        older.createObjectStore('plans', { autoIncrement: true });
        older.createObjectStore('events', { autoIncrement: true }).createIndex('id', 'id', { unique: true });
        older.createObjectStore('desk');   // the draft and the settings, one text a key
      }
      if (from < 2) {
        // An id is one person's own: two records may hold the same one.
        const events = turn.objectStore('events');
        events.deleteIndex('id');
        events.createIndex('own', ['plan', 'id'], { unique: true });
        older.createObjectStore('shelf');  // the people of an educator: one text a plan id, as it was typed
        older.createObjectStore('revisions', { autoIncrement: true }).createIndex('plan', 'plan');   // what was agreed, superseded, withdrawn
      }
      if (from < 3) {
        // A school's students: nothing of theirs lies in a store of the bedside or the desk.
        older.createObjectStore('students');        // the copies of the orders and the school's own fields, one text a student
        const log = older.createObjectStore('studentEvents', { autoIncrement: true });
        log.createIndex('own', ['student', 'id'], { unique: true });
        log.createIndex('student', 'student');
        older.createObjectStore('studentDrafts');   // the answers in hand, one text a student
      }
    },
    // Another tab wants a newer shape: let go at once, so that it is not blocked.
    blocking() { db.close(); },
  });
  return db;
};

// The core's running hash, handed in by whoever asks the core. It answers at once, inside a turn: waiting for anything else would end it.
let sealsOf;
export const sealWith = seals => { sealsOf = seals; };

// Whose record lies where: the own ones, and a school's students. The seal of a whole record, how many entries it has, and what was
// set aside of it stand under one key of the desk, so that an earlier release still opens this store.
const records = { own: { name: 'events', whose: 'plan' }, student: { name: 'studentEvents', whose: 'student' } };
const keyOf = (what, kind, owner) => `${what}/${kind}/${owner}`;
const under = what => IDBKeyRange.bound(`${what}/`, `${what}0`, false, true);   // "0" follows "/"
const copiesOf = (kind, owner) => IDBKeyRange.bound(`${keyOf('raw', kind, owner)}/`, `${keyOf('raw', kind, owner)}0`);
// Asked once something is here that must not be lost, and the answer is told to the person: true, false, or null where the browser
// does not say.
export const persist = async () => {
  try { return await navigator.storage.persist(); } catch { return null; }
};

// All of a turn is written, or nothing of it: whatever goes wrong in it takes the rest back.
const inOneTurn = async (stores, act) => {
  const turn = db.transaction(stores, 'readwrite', { durability: 'strict' });
  turn.done.catch(() => {});   // said by what went wrong; nobody waits for it then
  try { await act(turn); } catch (problem) {
    try { turn.abort(); } catch { /* it is over already */ }
    throw problem;
  }
  await turn.done;
};
const write = (store, act) => inOneTurn(store, turn => act(turn.store));

// Written, then read back in a turn of its own: only what comes back equal counts as saved.
const sure = async (deed) => {
  try { await deed(); } catch (problem) { throw problem instanceof NotKept ? problem : new NotKept(problem?.message ?? 'storage'); }
};

// Every row by itself: one that cannot be read hides no other. `value` is missing where it could not be read.
const eachRow = async name => {
  const keys = await db.getAllKeys(name);
  try {
    const values = await db.getAll(name);
    if (values.length === keys.length) return keys.map((key, at) => ({ key, value: values[at] }));
  } catch { /* one by one, below */ }
  return Promise.all(keys.map(key => db.get(name, key).then(value => ({ key, value }), () => ({ key }))));
};
const textAt = async (name, key) => { try { return await db.get(name, key); } catch { return undefined; } };

// The rows of one record, with what says whether they are whole.
const stored = (kind, owner, rows, seal, doubt) => {
  const whole = sealFrom(seal), aside = new Set(whole?.aside), { whose } = records[kind];
  const own = rows.filter(({ value }) => value?.[whose] === owner), nobodys = rows.filter(({ value }) => typeof value?.[whose] !== 'string');
  // A row that names nobody may be anybody's. Where a seal counts the rows it is missing there, and is not looked for twice.
  const maybe = whole || (kind === 'student' && !own.length) ? [] : nobodys;
  return { kind, owner, seal, doubt, nobodys, rows: [...own, ...maybe].filter(({ key }) => !aside.has(key)).sort((a, b) => a.key - b.key) };
};
export const recordOf = async (kind, owner) => stored(kind, owner, await eachRow(records[kind].name), await textAt('desk', keyOf('seal', kind, owner)), await textAt('desk', keyOf('doubt', kind, owner)));

// Rows with their places and seals, from the first to the last; then the seal of the whole.
const sealAll = async (turn, kind, owner, rows, aside = []) => {
  const log = turn.objectStore(records[kind].name);
  const seals = sealsOf(owner, rows.map(({ value }) => value.text));
  let before = owner;
  for (const [at, { key, value }] of rows.entries()) {
    await log.put({ ...value, place: at + 1, before, seal: seals[at] }, key);
    before = seals[at];
  }
  await turn.objectStore('desk').put(JSON.stringify({ count: rows.length, seal: before, aside }), keyOf('seal', kind, owner));
};
// A record of a release that knew no seals.
export const sealFirst = (kind, owner, rows) => sure(() => inOneTurn([records[kind].name, 'desk'], turn => sealAll(turn, kind, owner, rows)));
// What was found damaged, as it lies here, and which entries were sound then: it stands until somebody has said what was injected.
export const noteDoubt = (kind, owner, text) => sure(() => write('desk', desk => desk.put(text, keyOf('doubt', kind, owner))));
// The way out of a doubt: sound rows are sealed anew, the others stay where they lie and are no part of the record any more, and the
// copy of all of them as they were is kept.
export const sealAnew = (kind, owner, { rows, aside, copy, at }) => sure(() => inOneTurn([records[kind].name, 'desk'], async turn => {
  const desk = turn.objectStore('desk');
  await sealAll(turn, kind, owner, rows, [...new Set([...(sealFrom(await desk.get(keyOf('seal', kind, owner)))?.aside ?? []), ...aside])]);
  if (copy !== undefined) await desk.put(copy, `${keyOf('raw', kind, owner)}/${at}`);
  await desk.delete(keyOf('doubt', kind, owner));
}));

// The last seal of a record. Where that of the whole is lost, the last row that has one says it: the record is in doubt then, and that
// is noted apart from here.
const lastSeal = async (turn, kind, owner) => {
  const kept = sealFrom(await turn.objectStore('desk').get(keyOf('seal', kind, owner)));
  if (kept) return kept;
  const log = turn.objectStore(records[kind].name);
  const range = IDBKeyRange.bound([owner], [owner, []]);
  const [keys, values] = [await log.index('own').getAllKeys(range), await log.index('own').getAll(range)];
  const rows = keys.map((key, at) => ({ key, value: values[at] })).sort((a, b) => a.key - b.key);
  const sealed = rows.filter(({ value }) => Number.isSafeInteger(value.place) && typeof value.seal === 'string').sort((a, b) => a.value.place - b.value.place);
  if (sealed.length) return { count: sealed.at(-1).value.place, seal: sealed.at(-1).value.seal, aside: [] };
  if (!rows.length || !rows.every(({ value }) => typeof value.text === 'string')) return { count: 0, seal: owner, aside: [] };
  await sealAll(turn, kind, owner, rows);
  return sealFrom(await turn.objectStore('desk').get(keyOf('seal', kind, owner)));
};
// An entry whose id is here already is not written over. Its place and its seal are written with it.
const addNew = async (turn, kind, owner, entries, kept) => {
  const log = turn.objectStore(records[kind].name);
  const added = [];
  for (const entry of entries) if (await log.index('own').getKey([owner, entry.id]) === undefined) added.push(entry);
  if (!added.length) return;
  const last = await lastSeal(turn, kind, owner);
  const seals = sealsOf(last.seal, added.map(({ text }) => text));
  for (const [at, entry] of added.entries()) await log.add({ ...kept(entry), place: last.count + at + 1, before: at ? seals[at - 1] : last.seal, seal: seals[at] });
  await turn.objectStore('desk').put(JSON.stringify({ count: last.count + added.length, seal: seals.at(-1), aside: last.aside }), keyOf('seal', kind, owner));
};
const allThere = async (log, owner, entries) => {
  for (const { id, text } of entries) if ((await log.index('own').get([owner, id]))?.text !== text) throw new NotKept('event');
};
const addEvents = (turn, plan, entries) => addNew(turn, 'own', plan, entries, ({ id, text }) => ({ id, plan, text }));
const sameEvents = (turn, plan, entries) => allThere(turn.objectStore('events'), plan, entries);

// The plan in use is sealed as well: one changed figure of it changes every dose.
export const planSeal = text => sealsOf('plan', [text])[0];

// What belongs together is written in one turn: all that a tap added to the record and the answers it left, or a plan and the record
// that came with it. A phone that dies has all of it, or nothing. `received`: when this phone got the plan.
export const keep = (planId, { entries = [], planText, draft, received }) => sure(async () => {
  await inOneTurn(['plans', 'events', 'desk'], async turn => {
    await addEvents(turn, planId, entries);
    if (planText !== undefined) {
      await turn.objectStore('plans').add(planText);
      await turn.objectStore('desk').put(planSeal(planText), 'seal-plan');
      await turn.objectStore('desk').put(JSON.stringify({ id: planId, at: received }), 'received');
    }
    if (draft !== undefined) await turn.objectStore('desk').put(draft, 'draft');
  });
  const turn = db.transaction(['plans', 'events', 'desk']);
  await sameEvents(turn, planId, entries);
  if (planText !== undefined && (await turn.objectStore('plans').getAll()).at(-1) !== planText) throw new NotKept('plan');
  if (draft !== undefined && await turn.objectStore('desk').get('draft') !== draft) throw new NotKept('draft');
});

// Which copies were made that last longer than this phone: {fingerprint of a plan: {card: when, file: when}}.
const copiesFrom = text => readable(text, {});
export const copies = async () => copiesFrom(await db.get('desk', 'copies'));
export const copyMade = (fingerprint, what, at) => sure(async () => {
  await write('desk', async desk => {
    const known = copiesFrom(await desk.get('copies'));
    await desk.put(JSON.stringify({ ...known, [fingerprint]: { ...known[fingerprint], [what]: at } }), 'copies');
  });
  if (!(await copies())[fingerprint]?.[what]) throw new NotKept('copies');
});

// What a start needs, in one turn: five of them, one after the other, kept a slow phone waiting. Where something in it cannot be read,
// each piece is read by itself.
const keptKeys = ['draft', 'night', 'face', 'fingerprint', 'copies', 'aside', 'seal-plan', 'received'];
const atOnce = async () => {
  const turn = db.transaction(['plans', 'events', 'desk', 'shelf', 'students']);
  turn.done.catch(() => {});
  const [plans, events, desk, shelf, students] = ['plans', 'events', 'desk', 'shelf', 'students'].map(name => turn.objectStore(name));
  const [all, keys, values, sealKeys, seals, doubtKeys, doubts, people, apart, ...texts] = await Promise.all([plans.getAll(), events.getAllKeys(), events.getAll(),
    desk.getAllKeys(under('seal')), desk.getAll(under('seal')), desk.getAllKeys(under('doubt')), desk.getAll(under('doubt')), shelf.count(), students.count(), ...keptKeys.map(key => desk.get(key))]);
  return { plans: all, rows: keys.map((key, at) => ({ key, value: values[at] })), seals: new Map(sealKeys.map((key, at) => [key, seals[at]])),
    doubts: new Map(doubtKeys.map((key, at) => [key, doubts[at]])), people: people + apart > 0, texts };
};
const oneByOne = async () => {
  const keysUnder = async range => { try { return await db.getAllKeys('desk', range); } catch { return []; } };
  const these = async range => new Map(await Promise.all((await keysUnder(range)).map(async key => [key, await textAt('desk', key)])));
  return { plans: (await eachRow('plans')).map(({ value }) => value), rows: await eachRow('events'), seals: await these(under('seal')), doubts: await these(under('doubt')),
    people: true, texts: await Promise.all(keptKeys.map(key => textAt('desk', key))) };
};
export const atStart = async () => {
  let found;
  try { found = await atOnce(); } catch (problem) { if (problem.name === 'NotFoundError' || problem.name === 'InvalidStateError') throw problem; found = await oneByOne(); }
  const kept = Object.fromEntries(keptKeys.map((key, at) => [key, found.texts[at]]));
  return { ...kept, plans: found.plans, people: found.people, copies: copiesFrom(kept.copies), aside: readable(kept.aside, []), received: readable(kept.received),
    owners: [...new Set(found.rows.map(({ value }) => value?.plan).filter(owner => typeof owner === 'string'))],
    recordOf: owner => stored('own', owner, found.rows, found.seals.get(keyOf('seal', 'own', owner)), found.doubts.get(keyOf('doubt', 'own', owner))) };
};
export const revisionOf = async plan => { try { return (await db.getAllFromIndex('revisions', 'plan', plan)).at(-1)?.text ?? null; } catch { return null; } };

// Earlier plans stay where they are; the last one taken in is the one in use.
export const currentPlan = async () => (await db.getAll('plans')).at(-1) ?? null;

export const put = (key, text) => sure(async () => {
  await write('desk', desk => desk.put(text, key));
  if (await db.get('desk', key) !== text) throw new NotKept(key);
});
export const get = async key => (await db.get('desk', key)) ?? null;

// The key that signs what leaves this device. Its private half cannot be read, not even by this page; it is made once.
export const signingKey = async make => {
  const known = await db.get('desk', 'signing-key');
  if (known) return known;
  const pair = await make();
  await write('desk', desk => desk.put(pair, 'signing-key'));
  return pair;
};

export const removeEverything = () => sure(() => {
  const all = ['plans', 'events', 'shelf', 'revisions'];
  return inOneTurn([...all, 'desk'], async turn => {
    for (const name of all) turn.objectStore(name).clear();
    const desk = turn.objectStore('desk');
    // A school's students stay, and with them what says that their records are whole.
    for (const key of await desk.getAllKeys()) if (!/^(seal|doubt|raw|copy)\/student\//.test(key)) desk.delete(key);
  });
});

// The desk. What is typed is written with every key; only an agreed revision is worth waiting for the disk.
export const shelf = async () => Object.fromEntries((await eachRow('shelf')).map(({ key, value }) => [key, value]));
export const putOnShelf = async (id, text) => {
  const turn = db.transaction('shelf', 'readwrite', { durability: 'relaxed' });
  turn.store.put(text, id);
  turn.commit();   // at once: the page may be gone before the browser would do it by itself
  await turn.done;
};
// What goes together is written in one turn: the old revision is superseded, the new one agreed and its draft gone; or a person from
// a file is here with plan and record. All of it, or nothing.
export const keepPerson = (plan, { person, revisions = [], engine, entries = [] }) => sure(async () => {
  await inOneTurn(['shelf', 'revisions', 'events', 'desk'], async turn => {
    if (person !== undefined) await turn.objectStore('shelf').put(person, plan);
    for (const text of revisions) await turn.objectStore('revisions').add({ plan, text, engine });
    await addEvents(turn, plan, entries);
  });
  const turn = db.transaction(['shelf', 'revisions', 'events']);
  if (person !== undefined && await turn.objectStore('shelf').get(plan) !== person) throw new NotKept('person');
  if (revisions.length && (await turn.objectStore('revisions').index('plan').getAll(plan)).at(-1)?.text !== revisions.at(-1)) throw new NotKept('revision');
  await sameEvents(turn, plan, entries);
});
export const revisions = async () => (await eachRow('revisions')).map(({ value }) => value).filter(value => typeof value?.plan === 'string' && readable(value.text));
export const eventTexts = async () => {
  const byPlan = {};
  for (const { value } of await eachRow('events')) if (typeof value?.text === 'string' && readable(value.text)) (byPlan[value.plan] ??= []).push(value.text);
  return byPlan;
};

// Everything of one person, in one turn: all of it goes, or nothing does. The record of the plan this device uses stays with it.
export const removePerson = (plan, keepRecord) => sure(async () => {
  const turn = db.transaction(['shelf', 'revisions', 'events', 'desk'], 'readwrite', { durability: 'strict' });
  turn.objectStore('shelf').delete(plan);
  const revisions = turn.objectStore('revisions');
  for (const key of await revisions.index('plan').getAllKeys(plan)) revisions.delete(key);
  if (!keepRecord) {
    for (let entry = await turn.objectStore('events').openCursor(); entry; entry = await entry.continue()) if (entry.value?.plan === plan) entry.delete();
    for (const what of ['seal', 'doubt']) turn.objectStore('desk').delete(keyOf(what, 'own', plan));
    turn.objectStore('desk').delete(copiesOf('own', plan));
  }
  await turn.done;
});

// The school. Each student has an id of this device; copy, log and answers lie under it. Who wrote an entry stands beside its text.
export const students = async () => {
  return Promise.all((await eachRow('students')).map(async ({ key, value }) => {
    const seal = await textAt('desk', keyOf('copy', 'student', key));
    return { id: key, text: value, whole: typeof value === 'string' && (seal === undefined || !sealsOf || seal === planSeal(value)) };
  }));
};
export const putStudent = (id, text, { forgetDraft = false } = {}) => sure(async () => {
  await inOneTurn(['students', 'studentDrafts', 'desk'], async turn => {
    await turn.objectStore('students').put(text, id);
    await turn.objectStore('desk').put(planSeal(text), keyOf('copy', 'student', id));
    if (forgetDraft) await turn.objectStore('studentDrafts').delete(id);
  });
  if (await db.get('students', id) !== text) throw new NotKept('student');
});
export const studentDraft = async id => (await textAt('studentDrafts', id)) ?? null;
// All of a tap, in one turn, as with the own plan.
export const keepOfStudent = (student, { entries = [], draft }) => sure(async () => {
  await inOneTurn(['studentEvents', 'studentDrafts', 'desk'], async turn => {
    await addNew(turn, 'student', student, entries, ({ id, text, initials }) => ({ student, id, text, initials }));
    if (draft !== undefined) await turn.objectStore('studentDrafts').put(draft, student);
  });
  const turn = db.transaction(['studentEvents', 'studentDrafts']);
  await allThere(turn.objectStore('studentEvents'), student, entries);
  if (draft !== undefined && await turn.objectStore('studentDrafts').get(student) !== draft) throw new NotKept('draft');
});
// Everything of one student, in one turn, and of nobody else.
export const removeStudent = id => sure(() => inOneTurn(['students', 'studentEvents', 'studentDrafts', 'desk'], async turn => {
  turn.objectStore('students').delete(id);
  for (const what of ['seal', 'doubt', 'copy']) turn.objectStore('desk').delete(keyOf(what, 'student', id));
  turn.objectStore('desk').delete(copiesOf('student', id));
  turn.objectStore('studentDrafts').delete(id);
  const log = turn.objectStore('studentEvents');
  for (const key of await log.index('student').getAllKeys(id)) log.delete(key);
}));
