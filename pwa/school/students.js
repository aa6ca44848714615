// A student as this device keeps one: the signed copies as they came, the last one in force, and apart from them what the school
// itself adds. Days are compared as they are written, year first.
import { set, fromText, toText } from '../desk/tree.js';

export const read = ({ id, text }) => {
  const kept = JSON.parse(text);
  const copy = kept.copies.at(-1);
  return { id, ...kept, copy, doc: JSON.parse(copy.plan) };
};
export const written = ({ copies, yearEnds, supplies }) => JSON.stringify({ copies, yearEnds, supplies });

// Capitals and the number of blanks are forgiven, and nothing else: a nearly right name is another name.
export const plainName = name => name.normalize('NFC').trim().replace(/\s+/gu, ' ').toLowerCase();
export const matching = (students, name, born) => students.filter(({ doc: { person } }) => plainName(person.name) === plainName(name) && person.born === born);
// Whose orders a plan takes the place of: the same child's, or those of the same plan where the name or the day was put right. Left
// beside the new ones they would still be found, and given by, under the old name.
export const replacedBy = (students, { id, person: { name, born } }) => matching(students, name, born)[0]
  ?? students.find(({ doc }) => doc.id === id && (plainName(doc.person.name) === plainName(name) || doc.person.born === born));

// Eight figures, year first, as a day of the calendar; null where no calendar has it.
export const dayTyped = typed => {
  const [, year, month, date] = typed.replace(/[^0-9]/g, '').match(/^([0-9]{4})([0-9]{2})([0-9]{2})$/) ?? [];
  if (!year) return null;
  const text = `${year}-${month}-${date}`;
  const moment = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(text) ? text : null;
};

// Which day the copy ends with, and why: what comes first of the orders and the school year.
export const ends = ({ doc, yearEnds }) => (yearEnds < doc.school.ordersExpire ? { why: 'year', day: yearEnds } : { why: 'orders', day: doc.school.ordersExpire });
// A clock that stands before the day on which the copy came is wrong, and would bring orders back that are over.
const beforeItCame = ({ copy }, today) => today < copy.taken.slice(0, 10);
export const over = (student, today) => {
  const end = ends(student);
  return end.day < today ? end : beforeItCame(student, today) ? { why: 'clock', day: student.copy.taken.slice(0, 10) } : null;
};

// What the core is asked with: orders that end with the school year where that is sooner, so that it gives no dose after either; with
// a clock that is wrong they are over.
const longOver = '2000-01-01';
export const inForce = (student, today) => {
  const until = beforeItCame(student, today) ? longOver : ends(student).why === 'year' ? student.yearEnds : null;
  return until ? toText(set(fromText(student.copy.plan), 'school/ordersExpire', until)) : student.copy.plan;
};
