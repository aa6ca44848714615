// A refusal of the core as a sentence that says what would be accepted. What was typed stays in its field.
const wordsOf = words => ({ notJson: () => words('refused-not-json'), tooLarge: () => words('refused-too-large'), tooDeep: () => words('refused-too-deep'), unknownKey: () => words('refused-unknown-key'),
  duplicateKey: () => words('refused-duplicate-key'), missing: () => words('refused-missing'), wrongType: () => words('refused-wrong-type'), wrongUnit: () => words('refused-wrong-unit'), outOfRange: () => words('refused-out-of-range'),
  tooPrecise: () => words('refused-too-precise'), notAscending: () => words('refused-not-ascending'), duplicateId: () => words('refused-duplicate-id'), contradiction: () => words('refused-contradiction'),
  newerFormat: () => words('refused-newer-format'), fingerprintMismatch: () => words('refused-changed') });

export const reasonWords = (entry, words, view) => {
  const sentence = (wordsOf(words)[entry.reason] ?? (() => words('refused-other')))();
  const accepted = entry.accepted ? ` ${words('refused-accepted', { accepted: /[0-9]\.[0-9]/.test(entry.accepted) ? entry.accepted.replaceAll('.', view.mark) : entry.accepted })}` : '';
  return `${sentence}${accepted}`;
};
