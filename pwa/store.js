// What is kept: plans, the record, and the answers of the question in hand. What happened is added and never rewritten;
// ids are made when a screen is shown, so a second tap adds nothing. Every value is text.
import { openDB } from './vendor/idb.js';

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

export const eventsOf = async plan => (await db.getAll('events')).filter(event => event.plan === plan);

// An entry whose id is here already is not written over.
const addNew = async (log, owner, entries, kept) => {
  for (const entry of entries) if (await log.index('own').getKey([owner, entry.id]) === undefined) await log.add(kept(entry));
};
const allThere = async (log, owner, entries) => {
  for (const { id, text } of entries) if ((await log.index('own').get([owner, id]))?.text !== text) throw new NotKept('event');
};
const addEvents = (turn, plan, entries) => addNew(turn.objectStore('events'), plan, entries, ({ id, text }) => ({ id, plan, text }));
const sameEvents = (turn, plan, entries) => allThere(turn.objectStore('events'), plan, entries);

// What belongs together is written in one turn: all that a tap added to the record and the answers it left, or a plan and the record
// that came with it. A phone that dies has all of it, or nothing.
export const keep = (planId, { entries = [], planText, draft }) => sure(async () => {
  await inOneTurn(['plans', 'events', 'desk'], async turn => {
    await addEvents(turn, planId, entries);
    if (planText !== undefined) await turn.objectStore('plans').add(planText);
    if (draft !== undefined) await turn.objectStore('desk').put(draft, 'draft');
  });
  const turn = db.transaction(['plans', 'events', 'desk']);
  await sameEvents(turn, planId, entries);
  if (planText !== undefined && (await turn.objectStore('plans').getAll()).at(-1) !== planText) throw new NotKept('plan');
  if (draft !== undefined && await turn.objectStore('desk').get('draft') !== draft) throw new NotKept('draft');
});

// Which copies were made that last longer than this phone: {fingerprint of a plan: {card: when, file: when}}.
const copiesFrom = text => JSON.parse(text ?? '{}');
export const copies = async () => copiesFrom(await db.get('desk', 'copies'));
export const copyMade = (fingerprint, what, at) => sure(async () => {
  await write('desk', async desk => {
    const known = copiesFrom(await desk.get('copies'));
    await desk.put(JSON.stringify({ ...known, [fingerprint]: { ...known[fingerprint], [what]: at } }), 'copies');
  });
  if (!(await copies())[fingerprint]?.[what]) throw new NotKept('copies');
});

// What a start needs, in one turn: five of them, one after the other, kept a slow phone waiting.
export const atStart = async () => {
  const turn = db.transaction(['plans', 'events', 'desk', 'shelf', 'students']);
  const [plans, events, desk, shelf, students] = ['plans', 'events', 'desk', 'shelf', 'students'].map(name => turn.objectStore(name));
  const [all, record, draft, night, face, fingerprint, copies, aside, ...people] = await Promise.all([plans.getAll(), events.getAll(), ...['draft', 'night', 'face', 'fingerprint', 'copies', 'aside'].map(key => desk.get(key)), shelf.count(), students.count()]);
  return { plan: all.at(-1) ?? null, recordOf: plan => record.filter(event => event.plan === plan), draft, night, face, fingerprint, copies: copiesFrom(copies), aside: JSON.parse(aside ?? '[]'), people: people.some(count => count > 0) };
};

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
  const all = ['plans', 'events', 'desk', 'shelf', 'revisions'];
  return inOneTurn(all, turn => Promise.all(all.map(name => turn.objectStore(name).clear())));
});

// The desk. What is typed is written with every key; only an agreed revision is worth waiting for the disk.
export const shelf = async () => Object.fromEntries(await Promise.all((await db.getAllKeys('shelf')).map(async id => [id, await db.get('shelf', id)])));
export const putOnShelf = async (id, text) => {
  const turn = db.transaction('shelf', 'readwrite', { durability: 'relaxed' });
  turn.store.put(text, id);
  turn.commit();   // at once: the page may be gone before the browser would do it by itself
  await turn.done;
};
// What goes together is written in one turn: the old revision is superseded, the new one agreed and its draft gone; or a person from
// a file is here with plan and record. All of it, or nothing.
export const keepPerson = (plan, { person, revisions = [], engine, entries = [] }) => sure(async () => {
  await inOneTurn(['shelf', 'revisions', 'events'], async turn => {
    if (person !== undefined) await turn.objectStore('shelf').put(person, plan);
    for (const text of revisions) await turn.objectStore('revisions').add({ plan, text, engine });
    await addEvents(turn, plan, entries);
  });
  const turn = db.transaction(['shelf', 'revisions', 'events']);
  if (person !== undefined && await turn.objectStore('shelf').get(plan) !== person) throw new NotKept('person');
  if (revisions.length && (await turn.objectStore('revisions').index('plan').getAll(plan)).at(-1)?.text !== revisions.at(-1)) throw new NotKept('revision');
  await sameEvents(turn, plan, entries);
});
export const revisions = async () => db.getAll('revisions');
export const eventTexts = async () => {
  const byPlan = {};
  for (const event of await db.getAll('events')) (byPlan[event.plan] ??= []).push(event.text);
  return byPlan;
};

// Everything of one person, in one turn: all of it goes, or nothing does. The record of the plan this device uses stays with it.
export const removePerson = (plan, keepRecord) => sure(async () => {
  const turn = db.transaction(['shelf', 'revisions', 'events'], 'readwrite', { durability: 'strict' });
  turn.objectStore('shelf').delete(plan);
  const revisions = turn.objectStore('revisions');
  for (const key of await revisions.index('plan').getAllKeys(plan)) revisions.delete(key);
  if (!keepRecord) {
    for (let entry = await turn.objectStore('events').openCursor(); entry; entry = await entry.continue()) if (entry.value.plan === plan) entry.delete();
  }
  await turn.done;
});

// The school. Each student has an id of this device; copy, log and answers lie under it. Who wrote an entry stands beside its text.
export const students = async () => {
  const turn = db.transaction('students');
  const [ids, texts] = await Promise.all([turn.store.getAllKeys(), turn.store.getAll()]);
  return ids.map((id, at) => ({ id, text: texts[at] }));
};
export const putStudent = (id, text, { forgetDraft = false } = {}) => sure(async () => {
  await inOneTurn(['students', 'studentDrafts'], async turn => {
    await turn.objectStore('students').put(text, id);
    if (forgetDraft) await turn.objectStore('studentDrafts').delete(id);
  });
  if (await db.get('students', id) !== text) throw new NotKept('student');
});
export const studentEvents = async id => db.getAllFromIndex('studentEvents', 'student', id);
export const studentDraft = async id => (await db.get('studentDrafts', id)) ?? null;
// All of a tap, in one turn, as with the own plan.
export const keepOfStudent = (student, { entries = [], draft }) => sure(async () => {
  await inOneTurn(['studentEvents', 'studentDrafts'], async turn => {
    await addNew(turn.objectStore('studentEvents'), student, entries, ({ id, text, initials }) => ({ student, id, text, initials }));
    if (draft !== undefined) await turn.objectStore('studentDrafts').put(draft, student);
  });
  const turn = db.transaction(['studentEvents', 'studentDrafts']);
  await allThere(turn.objectStore('studentEvents'), student, entries);
  if (draft !== undefined && await turn.objectStore('studentDrafts').get(student) !== draft) throw new NotKept('draft');
});
// Everything of one student, in one turn, and of nobody else.
export const removeStudent = id => sure(() => inOneTurn(['students', 'studentEvents', 'studentDrafts'], async turn => {
  turn.objectStore('students').delete(id);
  turn.objectStore('studentDrafts').delete(id);
  const log = turn.objectStore('studentEvents');
  for (const key of await log.index('student').getAllKeys(id)) log.delete(key);
}));
