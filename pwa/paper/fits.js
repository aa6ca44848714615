// Whether what is laid out has room, measured where it will be printed. A part is named, never shrunk.

const perMillimetre = 96 / 25.4;
const slack = 0.6;   // a rounding of the browser, under a fifth of a millimetre

const partWords = words => ({ table: () => words('part-table'), head: () => words('part-head'), steps: () => words('part-steps'), calls: () => words('part-calls'), contacts: () => words('part-contacts'), front: () => words('part-front'), code: () => words('part-code'),
  stranger: () => words('part-stranger'), after: () => words('part-after'), 'off-pump': () => words('part-off-pump'), storage: () => words('part-storage'), blanks: () => words('part-blanks'), orders: () => words('part-orders'), school: () => words('part-school'), 'no-strips': () => words('part-no-strips'),
  signatures: () => words('part-signatures'), low: () => words('part-low'), danger: () => words('part-danger'), kit: () => words('part-kit'), letter: () => words('part-letter'), zones: () => words('part-zones'), record: () => words('part-record') });
const shorten = (part, box, words) => (box.dataset.language ? words('paper-full-translation') : part === 'table' ? words('paper-full-table') : part === 'contacts' || part === 'front' ? words('paper-full-names') : words('paper-full-texts'));

// The part that takes most beyond the room it was given.
const fullest = box => [...box.querySelectorAll('[data-part]')].map(part => ({ part: part.dataset.part, over: part.getBoundingClientRect().height / perMillimetre - part.dataset.room }))
  .sort((a, b) => b.over - a.over)[0].part;

const runsOver = box => {
  const frame = box.getBoundingClientRect();
  if (box.scrollHeight > box.clientHeight + slack) return fullest(box);
  const wide = [...box.querySelectorAll('[data-part]')].find(part => part.scrollWidth > part.clientWidth + slack
    || [...part.querySelectorAll('*')].some(node => { const at = node.getBoundingClientRect(); return at.width && (at.right > frame.right + slack || at.left < frame.left - slack); })
    || [...part.querySelectorAll('td, th')].some(cell => cell.scrollWidth > cell.clientWidth + slack));
  return wide?.dataset.part;
};

export const faults = (root, words) => {
  const out = [...root.querySelectorAll('[data-box]')].map(box => ({ box, part: runsOver(box) })).filter(entry => entry.part)
    .map(({ box, part }) => `${words('paper-full', { part: box.dataset.language ?? partWords(words)[part]() })} ${shorten(part, box, words)}`);
  return [...new Set(out)];
};
