// A hand that reaches into the phone's own storage, as a failing flash chip, another program or another release would.

// Does `what` to rows of a store. `of` chooses the rows by their place in it: 'first', 'needle' (the last injection), 'last'.
export const damage = (page, store, what, of = 'needle') => page.evaluate(([name, deed, which]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result, turn = db.transaction(name, 'readwrite'), rows = turn.objectStore(name);
    turn.oncomplete = () => { db.close(); resolve(); };
    turn.onabort = () => reject(turn.error);
    const keysAsked = rows.getAllKeys(), valuesAsked = rows.getAll();
    valuesAsked.onsuccess = () => {
      const keys = keysAsked.result, values = valuesAsked.result;
      const inText = value => (typeof value === 'string' ? value : value.text);
      const textOf = (value, text) => (typeof value === 'string' ? text : { ...value, text });
      const at = which === 'first' ? 0 : which === 'last' ? keys.length - 1 : values.findLastIndex(value => inText(value).includes('"kind":"injection"'));
      const put = value => rows.put(value, keys[at]);
      const text = inText(values[at]);
      ({
        deleted: () => rows.delete(keys[at]),
        cut: () => put(textOf(values[at], text.slice(0, text.length / 2))),
        changed: () => put(textOf(values[at], text.includes('"units":4') ? text.replace('"units":4', '"units":1') : text.replace(/[0-9]/, digit => String((Number(digit) + 1) % 10)))),
        swapped: () => { const other = at ? at - 1 : 1; rows.delete(keys[at]); rows.delete(keys[other]); rows.put(values[at], keys[other]); rows.put(values[other], keys[at]); },
        swappedTexts: () => { const other = at ? at - 1 : 1; rows.put(textOf(values[at], inText(values[other])), keys[at]); rows.put(textOf(values[other], text), keys[other]); },
        duplicated: () => rows.add({ ...values[at], id: `${values[at].id}-2` }),
        otherVersion: () => put(textOf(values[at], text.replace('"kind":"injection"', '"kind":"infusion"'))),
        otherKey: () => put(textOf(values[at], text.replace('{', '{"depth":3,'))),
        noRow: () => put(7),
        noText: () => put({ plan: values[at].plan, student: values[at].student, id: values[at].id }),
        emptied: () => rows.clear(),
      })[deed]();
    };
  };
}), [store, what, of]);

// A text of the desk's store, by its key; `null` takes it away.
export const setKept = (page, key, value, store = 'desk') => page.evaluate(([name, at, text]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result, turn = db.transaction(name, 'readwrite');
    turn.oncomplete = () => { db.close(); resolve(); };
    turn.onabort = () => reject(turn.error);
    if (text === null) turn.objectStore(name).delete(at); else turn.objectStore(name).put(text, at);
  };
}), [store, key, value]);
export const kept = (page, store) => page.evaluate(name => new Promise(resolve => {
  const opening = indexedDB.open('stopgap');
  opening.onsuccess = () => {
    const db = opening.result, rows = db.transaction(name).objectStore(name);
    const keys = rows.getAllKeys(), values = rows.getAll();
    values.onsuccess = () => { db.close(); resolve(keys.result.map((key, at) => [key, values.result[at]])); };
  };
}), store);
