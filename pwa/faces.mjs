// The words of one language, by the face that says them: the bedside starts without reading what is opened seldom. Notes for translators
// stay with the source.
const sections = name => new RegExp(`\\n## ${name}[^]*?(?=\\n## (?!${name})|$)`, 'g');
const later = { '-desk': sections('The desk'), '-off': sections('Off the pump'), '-picture': sections('The picture'), '-school': sections('The school') };
export const bare = source => source.replace(/^#.*\n/gm, '').replace(/\n{2,}/g, '\n').trimStart();

export const faces = source => ({
  '': bare(Object.values(later).reduce((text, part) => text.replace(part, ''), source)),
  ...Object.fromEntries(Object.entries(later).map(([name, part]) => [name, bare((source.match(part) ?? []).join(''))])),
});
