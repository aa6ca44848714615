// Two records of one plan made into one, event by event. An id names one event: one that says something else in the other record is
// told and changes nothing here.
// Blanks, the order of keys and a needless zero are no difference.
const sorted = value => (value && typeof value === 'object' && !Array.isArray(value)
  ? Object.fromEntries(Object.keys(value).sort().map(key => [key, sorted(value[key])])) : Array.isArray(value) ? value.map(sorted) : value);
const content = text => JSON.stringify(sorted(JSON.parse(text)));

// {added: what is new here, known: how many stand here already, differ: [{own, other}]}, all of them texts.
export const union = (own, brought) => {
  const here = new Map(own.map(text => [JSON.parse(text).id, text]));
  const found = { added: [], known: 0, differ: [] };
  for (const text of brought) {
    const mine = here.get(JSON.parse(text).id);
    if (mine === undefined) found.added.push(text);
    else if (content(mine) === content(text)) found.known += 1;
    else found.differ.push({ own: mine, other: text });
  }
  return found;
};
