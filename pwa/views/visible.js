// Texts of a plan as they are, where they could be taken for others: characters that nobody sees are shown by their number in Unicode, and
// a word that mixes alphabets is found. Nothing is refused here: the plan may be the only one somebody has at night. Such a plan is never
// agreed at a desk (core/review/text.cpp).
const unseen = /\p{Default_Ignorable_Code_Point}/gu;
// The joiners of scripts that are written with them stay as they are.
const joins = /^[\p{Script=Arabic}\p{Script=Syriac}\p{Script=Nko}\p{Script=Devanagari}\p{Script=Bengali}\p{Script=Gurmukhi}\p{Script=Gujarati}\p{Script=Oriya}\p{Script=Tamil}\p{Script=Telugu}\p{Script=Kannada}\p{Script=Malayalam}\p{Script=Sinhala}\p{Script=Myanmar}\p{Script=Khmer}\p{Script=Mongolian}]$/u;
const code = sign => `U+${sign.codePointAt(0).toString(16).toUpperCase().padStart(4, '0')}`;

export const visible = text => text.replace(unseen, (sign, at) => {
  const before = [...text.slice(0, at)].at(-1) ?? '', after = [...text.slice(at + sign.length)][0] ?? '';
  return /[\u200c\u200d]/.test(sign) && joins.test(before) && (joins.test(after) || sign === '\u200d') ? sign : `[${code(sign)}]`;
});

// Latin letters in one word with letters of Greek or Cyrillic, many of which look the same: [{word, letters}].
const words = /[\p{L}\p{M}]+/gu;
const elsewhere = /[\p{Script=Cyrillic}\p{Script=Greek}]/gu;
export const mixed = text => (text.match(words) ?? []).filter(word => /\p{Script=Latin}/u.test(word) && word.search(elsewhere) >= 0)
  .map(word => ({ word, letters: word.match(elsewhere).map(sign => `${sign} ${code(sign)}`).join(', ') }));

// Every text of a plan, once.
export const textsOf = node => (typeof node === 'string' ? [node] : node && typeof node === 'object' ? [...new Set(Object.values(node).flatMap(textsOf))] : []);
