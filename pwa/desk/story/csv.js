// The story as a table for a spreadsheet. RFC 4180: every cell in quotes, quotes doubled, lines end with CR LF. A cell that a
// spreadsheet would take for a formula (it begins with = + - @, their wide forms, a tab or a line break, with or without blanks and
// characters that nobody sees before it) gets an apostrophe in front: spreadsheets then show it as the text it is. The mark at the start says it is UTF-8.
import { happened, led } from './rows.js';

const formula = /^[\s\p{Default_Ignorable_Code_Point}]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^\p{Default_Ignorable_Code_Point}*[\t\r\n]/u;
const bare = text => text.replace(/[\u2066-\u2069]/g, '');
export const cell = text => { const plain = bare(text); return `"${(formula.test(plain) ? `'${plain}` : plain).replaceAll('"', '""')}"`; };
export const table = rows => `\ufeff${rows.map(row => `${row.map(cell).join(',')}\r\n`).join('')}`;

export const csv = (story, words) => table([
  [words('csv-day'), words('csv-clock'), words('csv-minute'), words('csv-event'), words('csv-struck'), words('csv-led'), words('csv-dose'), words('csv-more'), words('csv-rule'), words('csv-at'), words('csv-kind')],
  ...story.rows.map(row => {
    const then = row.ledTo && led(row.ledTo, words);
    return [row.day, row.clock, String(row.minute), happened(row, iso => iso, words).join('. '), row.struck ? words('record-struck') : '', then?.title ?? '', then?.dose ?? '', then?.more.join('. ') ?? '',
      row.ledTo ? [row.ledTo.decidedBy, ...(row.ledTo.gate ? [row.ledTo.gate] : [])].join(' ') : '', row.at, row.kind];
  }),
]);
