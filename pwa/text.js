// JSON text by hand. The core reads amounts from their digits, so no amount may pass through a float on its way there:
// a number stays the text that was typed, and a request is put together from texts.

export class NotANumber extends Error {}

export const string = value => JSON.stringify(value.toWellFormed().normalize('NFC'));
export const truth = value => (value ? 'true' : 'false');
export const list = texts => `[${texts.join(',')}]`;

// A number in JSON's own writing, or nothing at all: what does not look like one is refused here, never mended.
export const number = digits => {
  if (!/^(0|[1-9][0-9]{0,4})(\.[0-9]{1,4})?$/.test(digits)) throw new NotANumber(digits);
  return digits;
};

// Members whose text is undefined are left out.
export const object = members => `{${Object.entries(members)
  .filter(([, text]) => text !== undefined)
  .map(([key, text]) => `${JSON.stringify(key)}:${text}`).join(',')}}`;

// The typed digits of our keypad ("16,0", "05") as a JSON number, or null while they are unfinished.
export const typed = (digits, mark) => {
  const plain = digits.replace(mark, '.').replace(/^0+(?=[0-9])/, '');
  return /^(0|[1-9][0-9]{0,4})(\.[0-9]{1,4})?$/.test(plain) ? plain : null;
};

// Two writings of one amount compare as one: 4 and 4.0 are the same dose.
export const trimmed = literal => (literal.includes('.') ? literal.replace(/\.?0+$/, '') : literal);

// How an amount is written for people: the plan's decimal mark, no trailing zero.
export const shown = (literal, mark) => trimmed(literal).replace('.', mark);

const skipString = (text, from) => {
  let at = from + 1;
  while (text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at + 1;
};

// The members of the outermost object, each as the text it stands in the file. The text has parsed as JSON before.
export const members = text => {
  const found = {};
  let at = text.indexOf('{') + 1;
  for (;;) {
    while (/[\s,]/.test(text[at])) at += 1;
    if (text[at] === '}') return found;
    const keyEnd = skipString(text, at);
    const key = JSON.parse(text.slice(at, keyEnd));
    at = text.indexOf(':', keyEnd) + 1;
    const start = at;
    for (let depth = 0; depth > 0 || !/[,}]/.test(text[at]); at += 1) {
      if (text[at] === '"') { at = skipString(text, at) - 1; continue; }
      if (/[[{]/.test(text[at])) depth += 1;
      if (/[\]}]/.test(text[at])) depth -= 1;
    }
    found[key] = text.slice(start, at).trim();
  }
};

// The items of an array, each as the text it stands in the file.
export const elements = text => {
  const wrapped = members(`{"0":${text}}`)[0].slice(1, -1);
  const found = [];
  let start = 0;
  for (let at = 0, depth = 0; at <= wrapped.length; at += 1) {
    if (wrapped[at] === '"') { at = skipString(wrapped, at) - 1; continue; }
    if (/[[{]/.test(wrapped[at])) depth += 1;
    if (/[\]}]/.test(wrapped[at])) depth -= 1;
    if (at === wrapped.length || (depth === 0 && wrapped[at] === ',')) {
      if (wrapped.slice(start, at).trim()) found.push(wrapped.slice(start, at).trim());
      start = at + 1;
    }
  }
  return found;
};
