// The words of one language, by the face that says them: the bedside starts without reading the desk's. Notes for translators
// stay with the source.
const deskSections = /\n## The desk[^]*?(?=\n## (?!The desk)|$)/g;
export const bare = source => source.replace(/^#.*\n/gm, '').replace(/\n{2,}/g, '\n').trimStart();

export const faces = source => ({ '': bare(source.replace(deskSections, '')), '-desk': bare((source.match(deskSections) ?? []).join('')) });
