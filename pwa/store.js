// What is kept: plans, the record, and the answers of the question in hand. What happened is added and never rewritten;
// ids are made when a screen is shown, so a second tap adds nothing. Every value is text.
import { openDB } from './vendor/idb.js';

export class NotKept extends Error {}

let db;

export const open = async () => {
  db = await openDB('stopgap', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('plans', { autoIncrement: true });
      fresh.createObjectStore('events', { autoIncrement: true }).createIndex('id', 'id', { unique: true });
      fresh.createObjectStore('desk');   // the draft and the settings, one text a key
    },
    // Another tab wants a newer shape: let go at once, so that it is not blocked.
    blocking() { db.close(); },
  });
  return db;
};

// Asked once, and the answer is told to the person: true, false, or null where the browser does not say.
export const persist = async () => {
  try { return await navigator.storage.persist(); } catch { return null; }
};

const write = async (store, act) => {
  const turn = db.transaction(store, 'readwrite', { durability: 'strict' });
  await act(turn.store);
  await turn.done;
};

// Written, then read back in a turn of its own: only what comes back equal counts as saved.
const sure = async (deed) => {
  try { await deed(); } catch (problem) { throw problem instanceof NotKept ? problem : new NotKept(problem?.message ?? 'storage'); }
};

export const addEvent = (plan, id, text) => sure(async () => {
  await write('events', async events => {
    if (await events.index('id').getKey(id) === undefined) await events.add({ id, plan, text });
  });
  const back = await db.getFromIndex('events', 'id', id);
  if (back === undefined) throw new NotKept('event');
});

export const eventsOf = async plan => (await db.getAll('events')).filter(event => event.plan === plan);

export const takePlan = text => sure(async () => {
  await write('plans', plans => plans.add(text));
  if (await currentPlan() !== text) throw new NotKept('plan');
});

// Earlier plans stay where they are; the last one taken in is the one in use.
export const currentPlan = async () => (await db.getAll('plans')).at(-1) ?? null;

export const put = (key, text) => sure(async () => {
  await write('desk', desk => desk.put(text, key));
  if (await db.get('desk', key) !== text) throw new NotKept(key);
});
export const get = async key => (await db.get('desk', key)) ?? null;

export const removeEverything = () => sure(async () => {
  const turn = db.transaction(['plans', 'events', 'desk'], 'readwrite', { durability: 'strict' });
  await Promise.all(['plans', 'events', 'desk'].map(name => turn.objectStore(name).clear()));
  await turn.done;
});
