// The looks as a calendar text: read by a kept calendar library (ical.js) and held to the letter of RFC 5545 where a lenient reader
// would let it pass. A phone's calendar that misreads it lets somebody sleep through the look.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import ICAL from 'ical.js';
import { answers, plan, record } from './asking.mjs';

const at = '2026-11-25T';
const dose = { id: 'e1', at: `${at}03:10:00+01:00`, kind: 'injection', units: 4, insulin: 'rapid', parts: { rescue: 4, meal: 0, basal: 0 }, with: 'syringe' };
const look = (id, clock, what = ['glucose', 'ketones']) => ({ id, at: `${at}03:10:30+01:00`, kind: 'look', due: `${at}${clock}:00+01:00`, what });
const events = [dose, look('e2', '03:40', ['ketones']), look('e3', '04:10'), look('e4', '05:10')];
const ask = (rest = {}, list = events) => JSON.parse(answers('reminders', [{ plan, record: record(list), now: `${at}03:15:00+01:00`, ...rest }])[0]);
const parsed = ics => new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent').map(event => new ICAL.Event(event));

test('each look ahead is an event at its instant, with one alarm at the same instant', () => {
  const { looks, ics } = ask();
  assert.deepEqual(looks.map(entry => entry.clock), ['03:40', '04:10', '05:10']);
  const calendar = new ICAL.Component(ICAL.parse(ics));
  assert.deepEqual([calendar.name, calendar.getFirstPropertyValue('version')], ['vcalendar', '2.0']);
  // 03:40 in +01:00 is 02:40 in UTC.
  assert.deepEqual(parsed(ics).map(event => event.startDate.toString()), ['2026-11-25T02:40:00Z', '2026-11-25T03:10:00Z', '2026-11-25T04:10:00Z']);
  for (const event of parsed(ics)) {
    assert.equal(event.startDate.zone, ICAL.Timezone.utcTimezone);
    const [alarm, ...more] = event.component.getAllSubcomponents('valarm');
    assert.deepEqual(more, []);
    assert.equal(alarm.getFirstPropertyValue('action'), 'DISPLAY');
    assert.equal(alarm.getFirstPropertyValue('trigger').toSeconds(), 0);
    assert.ok(alarm.getFirstPropertyValue('description'));
  }
});

test('to the letter: CRLF after every line and nowhere else, 75 octets at most, the alarm last, one id each, UTC', () => {
  // Letters of two and of three bytes, so that a line one octet too long shows wherever the fold falls.
  for (const words of ['ü', 'xü', '€', 'x€', 'xx€'].map(start => start + start.at(-1).repeat(60 - start.length))) {
    const { ics } = ask({ words });
    assert.ok(ics.endsWith('END:VCALENDAR\r\n'));
    assert.doesNotMatch(ics.replaceAll('\r\n', ''), /[\r\n]/);
    for (const line of ics.split('\r\n')) assert.ok(Buffer.byteLength(line) <= 75, line);
  }
  const { ics } = ask({ words: 'Ketone, Zucker; jetzt \\ gleich' });
  // RFC 5545, 3.3.11: a comma, a semicolon and a backslash are written with a backslash before them.
  assert.ok(ics.includes('\r\nSUMMARY:Ketone\\, Zucker\\; jetzt \\\\ gleich\r\n'));
  const unfolded = ics.replaceAll('\r\n ', '');
  for (const event of unfolded.match(/BEGIN:VEVENT[^]*?END:VEVENT/g)) {
    assert.match(event, /\r\nEND:VALARM\r\nEND:VEVENT$/);
    for (const once of ['UID', 'DTSTAMP', 'DTSTART', 'SUMMARY', 'BEGIN:VALARM', 'ACTION', 'TRIGGER', 'DESCRIPTION']) {
      assert.equal(event.match(new RegExp(`^${once}`, 'gm'))?.length, 1, once);
    }
    assert.match(event, /\r\nDTSTAMP:20261125T021500Z\r\n/);
    assert.match(event, /\r\nDTSTART:20261125T0[234][14]000Z\r\n/);
  }
  assert.match(unfolded, /\r\nPRODID:[^\r]+\r\n/);
});

test('words with signs of the format, or letters of several bytes at every place of a fold, come back as they were said', () => {
  for (const words of ['a,b;c\\d', '\\n', ...Array.from({ length: 8 }, (_, at) => `${'x'.repeat(at)}${'ü€𝄞'.repeat(17)}`.slice(0, 60 - at).toWellFormed().replace(/\ufffd/g, ''))]) {
    const [event] = parsed(ask({ words }).ics);
    assert.equal(event.summary, words);
  }
});

test('the same look has the same id whenever it is asked for, and another look or another person has another', () => {
  const ids = ics => parsed(ics).map(event => event.uid);
  const first = ids(ask().ics), later = ids(ask({ now: `${at}03:50:00+01:00` }).ics);
  assert.deepEqual(later, first.slice(1));
  assert.equal(new Set(first).size, 3);
  const other = { ...plan, id: 'p-another' };
  const theirs = ids(JSON.parse(answers('reminders', [{ plan: other, record: record(events, other), now: `${at}03:15:00+01:00` }])[0]).ics);
  assert.deepEqual(theirs.filter(id => first.includes(id)), []);
});

test('nothing of the person is in it: no name, no dose, no number', () => {
  const { ics } = ask();
  for (const known of [plan.person.name, ...plan.contacts.flatMap(contact => [contact.name, contact.phone]), plan.rapid.name, 'units', plan.id]) assert.ok(!ics.includes(known), known);
  assert.deepEqual([...new Set(ics.match(/^(?:SUMMARY|DESCRIPTION):.*(?=\r)/gm))], ['SUMMARY:Stopgap', 'DESCRIPTION:Stopgap']);
});

test('what is overdue is told and not put into a calendar; with nothing ahead there is none', () => {
  const late = ask({ now: `${at}04:30:00+01:00` });
  assert.ok(late.looks.some(entry => entry.overdue));
  assert.deepEqual(parsed(late.ics).map(event => event.startDate.toString()), ['2026-11-25T04:10:00Z']);
  assert.equal(ask({}, []).ics, null);
  assert.deepEqual(ask({}, []).looks, []);
});
