// The school: one tablet, several students, none of them named before name and date of birth are typed; the signed orders and nothing
// else. Doses by hand from the child's orders: 270 mg/dL with ketones of 0.8 is the row from 250 and the column from 0.6 of the
// sheet: (250 - 110) / 80 = 1.75 against 0.06 x 28 = 1.68, down to 1.5 units. The sum would be (270 - 110) / 80 = 2.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { answer, close, inject, phone, withDemo } from './phone.mjs';
import { amina, atSchool, orders, schoolHand, tablet, tilo, withStudents } from './school.mjs';

after(close);
const kinds = (log, kind) => log.filter(event => event.kind === kind);

test('found by name and date of birth alone; a wrong one of either reveals nothing, and says so alike', async () => {
  const hand = await withStudents();
  const before = await hand.text();
  for (const name of ['Tilo', 'Brandvik', 'Amina', 'Lund']) assert.ok(!before.includes(name), name);
  // Somebody else's day, a day of nobody, a name nearly right, a first name alone.
  for (const [name, born] of [['Tilo Brandvik', '20160902'], ['Tilo Brandvik', '20170315'], ['Tilo Brandvig', '20170314'], ['Tilo', '20170314'], ['TiloBrandvik', '20170314']]) {
    await hand.type(name, born);
    await hand.sees('No student here has this name and this date of birth.');
    for (const secret of ['Amina', '14 March', 'Revision', 'Signe']) if (secret !== '14 March' || born !== '20170314') await hand.misses(secret);
    assert.equal(await hand.page.title(), 'Stopgap');
  }
  assert.ok(await hand.link('When to call for help').isVisible());
  await hand.shot('school-none');
  // Capitals and blanks are forgiven.
  await hand.find('  tilo   BRANDVIK ', '20170314');
  await hand.heading('Tilo Brandvik');
  await hand.sees('Seen by R. Maddox, nurse on 24 November 2026');
  await hand.sees('20 January 2027');
  await hand.sees('70 mg/dL or less, or shaky: 10 g of sugar now.');
  await hand.misses('Amina');
  await hand.device.end();
});

test('what is not typed whole is asked for, and a day of no calendar is refused at its keys', async () => {
  const hand = await withStudents();
  await hand.tap('Find the student');
  await hand.sees('Type the name.');
  await hand.type('Tilo Brandvik', '201703');
  await hand.sees('Type the whole date of birth.');
  await hand.born('20170231');
  await hand.sees('No calendar has that day.');
  await hand.type('Tilo Brandvik', '20170314', '');
  await hand.sees('Type your initials.');
  await hand.type('Tilo Brandvik', '20170314', '1234');
  await hand.sees('Type your initials.');
  await hand.device.end();
});

test('nobody is open after a reload, the face is; and another student only after both names were confirmed', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.page.reload();
  await hand.heading('Which student?');
  await hand.misses('Tilo');
  await hand.page.goto(hand.device.address);
  await hand.heading('Which student?');
  await hand.find();
  await hand.tap('Another student');
  await hand.type('Amina Lund', '20160902', 'ES');
  await hand.heading('Change from Tilo Brandvik to Amina Lund?');
  await hand.sees('born 2 September 2016');
  await hand.shot('school-switch');
  await hand.tap('No, stay with Tilo Brandvik');
  await hand.heading('Tilo Brandvik');
  await hand.tap('Another student');
  await hand.type('Amina Lund', '20160902', 'ES');
  await hand.tap('Yes, change to Amina Lund');
  await hand.heading('Amina Lund');
  await hand.sees('Initials: ES');
  await hand.misses('Tilo');
  await hand.device.end();
});

test('confirm the child, phone home, then the cell of the table; initials beside every entry; no second dose that day', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.heading('Before any dose');
  await hand.sees('Is this Tilo Brandvik, born 14 March 2017?');
  // No amount before home has answered: not as a later step, not under the reasons, not in the log.
  for (const page of ['', 'Why?']) {
    if (page) await hand.tap(page);
    assert.doesNotMatch(await hand.text(), /1\.5|1\.75|1\.68/);
  }
  await hand.tap('Back');
  assert.equal(await hand.page.getByRole('button', { name: /cannot do this/ }).count(), 0);
  await hand.child();
  await hand.sees('Call home: Signe Brandvik, mother, +44 0000 000004');
  await hand.sees('Ask: which insulin was given today, and when?');
  assert.doesNotMatch(await hand.text(), /1\.5|1\.75|1\.68/);
  assert.equal(kinds(await hand.log('Tilo Brandvik'), 'doseShown').length, 0);
  await hand.home();
  await hand.heading('Inject now');
  await hand.sees('From the signed table: 250 mg/dL and up, ketones 0.6 and up.');
  await hand.shot('school-dose');
  await hand.inject('1.5', 'es');
  const log = await hand.log('Tilo Brandvik');
  assert.deepEqual(kinds(log, 'injection').map(event => [event.units, event.initials]), [[1.5, 'es']]);
  assert.deepEqual(kinds(log, 'call').map(event => [event.to, event.answered, event.initials]), [['home', true, 'RM']]);
  assert.ok(log.every(event => event.initials === 'RM' || event.kind === 'injection'));
  assert.deepEqual(await hand.record(), [], 'nothing of a student lies in the record of the bedside');
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.heading('Look again at');
  // No clock time that would read as leave for another dose.
  await hand.sees('These orders allow no second dose today.');
  for (const leave of ['Until then, do not inject', 'Do not inject a correction before']) await hand.misses(leave);
  for (const absent of ['The pump stays off', 'More', 'What happened before']) assert.equal(await hand.page.getByRole('button', { name: absent }).count(), 0, absent);
  // The same readings later that day: whoever would be dosed again at home is not dosed again here.
  await hand.device.later(245);
  await hand.heading('Which student?');
  await hand.sees('Nobody touched this device. The student is closed. Nothing is lost.');
  await hand.misses('Tilo Brandvik');
  await hand.find();
  await hand.asked({ glucose: '300' });
  await hand.heading('Do not inject now');
  await hand.sees('These orders allow no second dose today.');
  await hand.child();
  await hand.sees('There is no dose from these orders now. Ask what to do.');
  await hand.shot('school-no-second');
  assert.equal(kinds(await hand.log('Tilo Brandvik'), 'doseShown').length, 1);
  await hand.device.end();
});

test('what home tells is typed before the cell is read: a needle dose this morning means none here', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.child();
  await hand.home(async () => {
    await hand.tap('An injection by needle');
    await hand.keys('2');
    await hand.tap('Yes, 2 units');
    await hand.keys('0730');
    await hand.tap('Yes, at 07:30');
    await hand.tap('Yes');
    await hand.tap('I do not know');
    await hand.heading('What did home give today?');
    await hand.sees('07:30');
  });
  await hand.heading('Do not inject now');
  const log = await hand.log('Tilo Brandvik');
  assert.deepEqual(kinds(log, 'injection').map(event => event.units), [2]);
  assert.equal(kinds(log, 'doseShown').length, 0);
  await hand.device.end();
});

test('nobody at home answers: each try is in the log, and there is no dose', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.child();
  for (const times of [1, 2]) {
    await hand.tap('No answer');
    await hand.sees('No answer is written down. Try again, or another number.');
    await hand.page.waitForFunction(() => document.body.getAttribute('aria-busy') === 'false');
    assert.equal(kinds(await hand.log('Tilo Brandvik'), 'call').length, times);
  }
  assert.doesNotMatch(await hand.text(), /1\.5/);
  await hand.tap('Nobody at home answers');
  await hand.heading('Do not inject now');
  await hand.shot('school-nobody');
  assert.equal(kinds(await hand.log('Tilo Brandvik'), 'doseShown').length, 0);
  await hand.device.end();
});

test('above the limit in the orders the call comes first, and says so; at the limit it is the usual one', async () => {
  // 310 mg/dL by the sum is (310 - 110) / 80 = 2.5 units, over the 2 of the orders; 270 is 2 units.
  const hand = await withStudents();
  const confirm = async () => { await hand.sees('Is this Amina Lund, born 2 September 2016?'); await hand.tap('Yes, this is the child'); };
  await hand.find('Amina Lund', '20160902');
  await hand.asked({ glucose: '310' });
  await confirm();
  await hand.sees('Say: the orders want this call before the dose.');
  assert.doesNotMatch(await hand.text(), /2\.5/);
  await hand.shot('school-call-first');
  await hand.home();
  await hand.heading('Inject now');
  await hand.sees('2.5 units');
  await hand.misses('From the signed table');
  await hand.device.end();
  const other = await withStudents();
  await other.find('Amina Lund', '20160902');
  await other.asked({ glucose: '270' });
  await other.sees('Is this Amina Lund');
  await other.tap('Yes, this is the child');
  await other.sees('Ask: which insulin was given today');
  await other.misses('the orders want this call');
  await other.device.end();
});

test('a call that home answered is asked for again where what home told makes the dose one to call for', async () => {
  // 350 is the row from 320: 210 / 80 = 2.625, down to 2.5 units, over the limit. Told of 2 units by the pump 40 minutes
  // ago, of which 1.83 still act, 240 / 80 - 1.83 = 1.17 is less than the ketones' 1.68: less than the cell, and only after a call.
  const hand = await atSchool();
  await hand.take(orders({ 'school/callFirstAbove': 3 }));
  await hand.find();
  await hand.asked({ glucose: '350' });
  await hand.child();
  await hand.misses('the orders want this call');
  await hand.home(async () => {
    await hand.tap('Food insulin by the pump');
    await hand.keys('2');
    await hand.tap('Yes, 2 units');
    await hand.keys('1130');
    await hand.tap('Yes, at 11:30');
    await hand.heading('What did home give today?');
  });
  await hand.sees('Say: the orders want this call before the dose.');
  await hand.misses('Is this Tilo Brandvik');
  await hand.home();
  await hand.heading('Inject now');
  await hand.sees('1.5 units');
  await hand.misses('From the signed table');
  await hand.device.end();
});

test('a reload in the middle loses nothing, and a dose nobody answered for is asked about first', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.keys('270');
  await hand.tap('Finger: 270 mg/dL');
  await hand.heading('Blood ketones now');
  await hand.page.reload();
  await hand.find();
  await hand.heading('Blood ketones now');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.child();
  await hand.tap('Answered');
  await hand.heading('What did home give today?');
  await hand.page.reload();
  await hand.find();
  await hand.heading('What did home give today?');
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  await hand.device.later(2);
  await hand.page.reload();
  await hand.heading('Which student?');
  await hand.sees('A dose was shown at 12:10. Nobody said if it was given.');
  await hand.misses('Tilo');
  await hand.find('Tilo Brandvik', '20170314', 'ES');
  await hand.heading('Did you inject it?');
  await hand.tap('Yes, 1.5 units');
  await hand.tap('Just now');
  await hand.page.waitForFunction(() => document.documentElement.dataset.screen !== 'entryTime');
  assert.deepEqual(kinds(await hand.log('Tilo Brandvik'), 'injection').map(event => [event.units, event.initials]), [[1.5, 'ES']]);
  await hand.device.end();
});

test('what home told is as old as it is: a round that was left is phoned for again before any dose', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.child();
  await hand.tap('Answered');
  await hand.heading('What did home give today?');
  await hand.tap('Close this student');
  await hand.device.later(120);
  await hand.find('Tilo Brandvik', '20170314', 'ES');
  await hand.tap('None of these');
  await hand.heading('Test glucose from a finger');
  await hand.tap('Type the finger reading');
  await hand.keys('270');
  await hand.tap('Finger: 270 mg/dL');
  await hand.heading('What did home give today?');
  await hand.tap('Nothing');
  await hand.heading('Test ketones now');
  await hand.tap('Type the ketones');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await hand.heading('Before any dose');
  assert.equal(kinds(await hand.log('Tilo Brandvik'), 'doseShown').length, 0);
  await hand.child();
  await hand.home();
  await hand.heading('Inject now');
  await hand.device.end();
});

test('an answer that is changed adds one and strikes none; another child is closed, and written down', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.heading('Before any dose');
  await hand.tap('Change an answer');
  await hand.sees('The old answer stays in the log, beside the new one.');
  await hand.tap('Glucose: 270 mg/dL');
  await hand.keys('280');
  await hand.tap('Finger: 280 mg/dL');
  await hand.heading('Before any dose');
  const log = await hand.log('Tilo Brandvik');
  assert.deepEqual(kinds(log, 'glucose').map(event => event.value), [270, 280]);
  assert.equal(kinds(log, 'strike').length, 0);
  await hand.tap('This is another child');
  await hand.heading('Which student?');
  await hand.sees('It is written down. Choose the right student.');
  await hand.misses('Tilo');
  const after = await hand.log('Tilo Brandvik');
  assert.equal(kinds(after, 'note').at(-1).text, 'The answers before this were about another child.');
  assert.deepEqual(kinds(after, 'incident').map(event => event.state), ['opened', 'closed']);
  assert.equal(kinds(after, 'strike').length, 0);
  await hand.device.end();
});

test('two students are never mixed: one’s dose, hold and answers are not the other’s, nor the bedside’s', async () => {
  const device = await phone(tablet);
  const first = await device.open();
  await first.tap('Demo plan: a child');
  await first.tap('Look round with this plan');
  await first.page.getByRole('link', { name: /^\s*School/ }).click();
  const hand = schoolHand(device, first);
  await hand.heading('Which student?');
  await hand.take(tilo);
  await hand.take(amina);
  await hand.find();
  await hand.asked();
  await hand.child();
  await hand.home();
  await hand.inject('1.5');
  await hand.page.waitForFunction(() => document.querySelector('.step.done'));
  await hand.tap('Close this student');
  await hand.find('Amina Lund', '20160902');
  await hand.heading('Amina Lund');
  await hand.sees('Nothing is written down yet.');
  await hand.tap('Start');
  await hand.tap('None of these');
  await hand.heading('Glucose now');
  await hand.keys('2');
  await hand.tap('Close this student');
  await hand.find();
  // Tilo's steps stand where they stood.
  await hand.page.locator('.step.done').first().waitFor();
  await hand.sees('Injected: 1.5 units');
  assert.equal((await hand.log('Amina Lund')).length, 0);
  assert.deepEqual(await hand.record(), []);
  await hand.tap('Close this student');
  await hand.tap('Leave the school');
  await hand.heading('Tilo Brandvik');
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  await hand.sees('Nothing is written down yet.');
  await hand.page.reload();
  await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
  assert.equal((await hand.kept('students')).length, 2);
  assert.equal((await hand.kept('plans')).length, 1);
  await device.end();
});

test('the log of one student with initials: on the page, and as a table that an outside reader takes apart', async () => {
  const hand = await withStudents();
  await hand.find();
  await hand.asked();
  await hand.child();
  await hand.home();
  await hand.inject('1.5', 'ES');
  await hand.steps();
  await hand.tap('All steps are seen');
  await hand.tap('To the student’s page');
  await hand.tap('Log');
  await hand.heading('Log');
  await hand.sees('Injected: 1.5 units, rapid-acting ES');
  await hand.shot('school-log');
  const [file] = await Promise.all([hand.page.waitForEvent('download'), hand.tap('Save as a table')]);
  assert.equal(file.suggestedFilename(), 'stopgap-log-2026-11-25.csv');
  const path = await file.path();
  assert.match(readFileSync(path, 'utf8'), /"\r\n/);
  const rows = JSON.parse(execFileSync('python3', ['-c', 'import csv, json, sys\nprint(json.dumps(list(csv.DictReader(open(sys.argv[1], encoding="utf-8-sig", newline=""), strict=True))))', path], { encoding: 'utf8' }));
  assert.equal(rows.length, (await hand.log('Tilo Brandvik')).length);
  const needle = rows.filter(row => row['Kind of entry'] === 'injection');
  assert.deepEqual(needle.map(row => [row.Day, row.Time, row['What happened'].replace(/\u00a0/g, ' '), row.Initials, row.Student, row.Born]), [['2026-11-25', '12:10', 'Injected: 1.5 units, rapid-acting', 'ES', 'Tilo Brandvik', '2017-03-14']]);
  assert.ok(rows.every(row => row.Initials));
  // On paper stand the log and whose it is, and nothing to press.
  await hand.page.emulateMedia({ media: 'print' });
  assert.equal(await hand.page.locator('button:visible, a:visible').count(), 0);
  await hand.sees('Tilo Brandvik, born 14 March 2017');
  await hand.device.end();
});

test('orders that are over open on the call: no dose, but danger signs and sugar still; the last day still counts', async () => {
  for (const [why, signed, last, sentence] of [['orders', {}, '2027-01-20', 'These orders ended on 20 January 2027. Call now.'], ['the school year', { ends: '2026-12-18' }, '2026-12-18', 'The school year ended on 18 December 2026. Call now.']]) {
    const hand = await atSchool();
    await hand.take(tilo, signed);
    const on = async day => { await hand.device.context.clock.setFixedTime(new Date(`${day}T12:00:00+01:00`)); await hand.page.reload(); await hand.find(); };
    await on(last);
    await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor();
    await hand.misses('Call now.');
    const next = new Date(Date.parse(`${last}T00:00:00Z`) + 86400000).toISOString().slice(0, 10);
    await on(next);
    await hand.heading('Tilo Brandvik');
    await hand.sees(sentence);
    await hand.sees('Do not give a dose by this copy.');
    await hand.sees('70 mg/dL or less, or shaky: 10 g of sugar now.');
    for (const [name, number] of [['Call Signe Brandvik, mother', '+440000000004'], ['Call Children\'s night line', '+440000000003'], ['Call the emergency number', '112']]) assert.equal(await hand.link(name).getAttribute('href'), `tel:${number}`);
    await hand.shot(`school-over-${why.slice(-4)}`);
    assert.equal(await hand.page.getByRole('button', { name: /Print the sheet/ }).count(), 0);
    await hand.tap('Look for danger signs');
    await hand.tap('None of these');
    await hand.heading('This plan may not be used');
    await hand.tap('Test glucose and ketones');
    await hand.keys('300');
    await hand.tap('Finger: 300 mg/dL');
    await hand.keys('0.8');
    await hand.tap('Yes, ketones are 0.8');
    await hand.tap('None of these');
    await hand.tap('Nothing');
    await hand.heading('This plan may not be used');
    assert.equal(kinds(await hand.log('Tilo Brandvik'), 'doseShown').length, 0);
    // A low needs no orders, and neither does an ambulance.
    await hand.tap('Change an answer');
    await hand.tap('Glucose: 300 mg/dL');
    await hand.keys('60');
    await hand.tap('Finger: 60 mg/dL');
    await hand.heading('Glucose is low');
    await hand.tap('Change an answer');
    await hand.tap('Signs:');
    await hand.tick('Fast or deep breathing');
    await hand.touch(hand.page.getByRole('button', { name: /^\s*Yes, this is true/ }));
    await hand.heading('Call for help now');
    await hand.device.end();
  }
});

test('a plan that is past its review opens on the call too, while its orders still run', async () => {
  // Reviewed by 20 January with 14 days of grace: usable on 3 February, not on the 4th.
  const hand = await atSchool();
  await hand.take(orders({ 'school/ordersExpire': '2027-06-30' }));
  for (const [day, open] of [['2027-02-03', true], ['2027-02-04', false]]) {
    await hand.device.context.clock.setFixedTime(new Date(`${day}T12:00:00+01:00`));
    await hand.page.reload();
    await hand.find();
    if (open) { await hand.page.getByRole('button', { name: /^\s*Start/ }).waitFor(); await hand.misses('may not be used'); } else await hand.sees('The plan of these orders may not be used any more. Call now.');
  }
  await hand.device.end();
});

test('one student’s data goes, after the name was typed twice, and nobody else’s', async () => {
  const hand = await withStudents();
  for (const [name, born] of [['Amina Lund', '20160902'], ['Tilo Brandvik', '20170314']]) {
    await hand.find(name, born);
    await hand.asked();
    await hand.tap('Close this student');
  }
  await hand.find();
  await hand.tap('Close this student');
  await hand.find();
  await hand.sees('Before any dose');
  await hand.page.getByRole('button', { name: /Yes, this is the child/ }).waitFor();
  await hand.tap('This is another child');
  await hand.find();
  await hand.tap('To the student’s page');
  await hand.tap('Remove this student’s data');
  await hand.heading('Remove this student’s data?');
  const typed = async (name, button) => { await hand.field('remove-name').fill(name); await hand.tap(button); };
  await typed('Amina Lund', 'Go on');
  await hand.sees('That is not this student’s name. Nothing is removed.');
  await typed('Tilo Brandvik', 'Go on');
  await hand.heading('Type the name a second time');
  await typed('', 'Remove it all now');
  await hand.sees('That is not this student’s name. Nothing is removed.');
  assert.equal((await hand.kept('students')).length, 2);
  const before = (await hand.log('Amina Lund')).length;
  assert.ok(before > 0);
  await typed('tilo brandvik', 'Remove it all now');
  await hand.heading('Which student?');
  await hand.sees('It is removed. All other students are still here.');
  assert.deepEqual((await hand.kept('students')).map(text => JSON.parse(JSON.parse(text).copies[0].plan).person.name), ['Amina Lund']);
  assert.equal((await hand.kept('studentEvents')).length, before);
  assert.equal((await hand.kept('studentDrafts')).length, 1);
  // Nor does anything of the orders lie where the bedside keeps its own.
  for (const store of ['plans', 'events', 'desk', 'shelf', 'revisions']) assert.doesNotMatch(JSON.stringify(await hand.kept(store)), /Tilo|Amina/, store);
  await hand.type('Tilo Brandvik', '20170314');
  await hand.sees('No student here has this name');
  await hand.device.end();
});

test('only orders for a school come in, only while they last, and only after somebody has seen the signed copy', async () => {
  const hand = await atSchool();
  const refused = async (plan, ...sentences) => {
    await hand.bring(plan);
    await hand.heading('This cannot be used');
    for (const sentence of sentences) await hand.sees(sentence);
    await hand.tap('Back');
    await hand.heading('Bring a plan');
    await hand.tap('Back');
  };
  const without = JSON.parse(tilo);
  delete without.school;
  await refused(JSON.stringify(without), '/plan/school', 'Possible: orders for a school');
  await refused(orders({ 'school/ordersExpire': '2026-11-24' }), '/plan/school/ordersExpire', '2026-11-25 or later');
  await refused(orders({ 'school/calculation': 'guess' }), '/plan/school/calculation');
  await refused('{"plan', 'The file cannot be read.');
  await hand.bring(tilo);
  await hand.field('agreed-day').fill('2026-10-21');
  await hand.sees('This is not the day in the plan.');
  assert.equal(await hand.page.getByRole('button', { name: /these are the orders/ }).count(), 0);
  await hand.field('agreed-day').fill('2026-10-20');
  await hand.tap('Yes, these are the orders');
  await hand.sees('Doses: from the table only. Do not calculate.');
  await hand.tap('I have seen it. Use this copy');
  for (const sentence of ['Type who has seen the signed copy.', 'Type the day it was seen.', 'Type the last day of the school year.', 'Type where the supplies are.']) await hand.sees(sentence);
  await hand.sign({ on: '2026-11-26', ends: '2026-11-24' });
  for (const sentence of ['It cannot be after today.', 'It cannot be over.']) await hand.sees(sentence);
  await hand.shot('school-sign');
  assert.equal((await hand.kept('students')).length, 0);
  await hand.sign();
  await hand.heading('Which student?');
  // A newer revision takes the place of the older one, and the log goes on.
  await hand.find();
  await hand.asked();
  await hand.heading('Before any dose');
  await hand.page.reload();
  await hand.bring(orders({ revision: 5, 'agreement/on': '2026-11-20' }));
  await hand.sees('What changes');
  await hand.field('agreed-day').fill('2026-11-20');
  await hand.tap('Yes, these are the orders');
  await hand.sees('This copy takes the place of revision 4.');
  await hand.sign();
  await hand.sees('The copy is active.');
  const [student] = (await hand.kept('students')).map(text => JSON.parse(text));
  assert.deepEqual(student.copies.map(copy => JSON.parse(copy.plan).revision), [4, 5]);
  assert.ok((await hand.log('Tilo Brandvik')).length > 0);
  // The answers in hand were judged by the older copy: a round begins anew.
  await hand.find();
  await hand.tap('Test now, before the look');
  await hand.heading('Is any of these true now?');
  await hand.device.end();
});

test('a copy whose name was put right takes the place of the one it corrects; the old name finds nobody', async () => {
  const hand = await atSchool();
  await hand.take(tilo);
  await hand.bring(orders({ revision: 5, 'person/name': 'Thilo Brandvik' }));
  await hand.sees('Another person. The plan in use is for Tilo Brandvik');
  await hand.field('agreed-day').fill('2026-10-20');
  await hand.tap('Yes, these are the orders');
  await hand.sees('This copy takes the place of revision 4.');
  await hand.sign();
  await hand.sees('The copy is active.');
  await hand.type('Tilo Brandvik', '20170314');
  await hand.sees('No student here has this name');
  await hand.find('Thilo Brandvik');
  assert.equal((await hand.kept('students')).length, 1);
  await hand.device.end();
});

test('an invented child’s plan takes no real student’s place unseen', async () => {
  const hand = await atSchool();
  await hand.take(tilo);
  await hand.bring(orders({ id: 'p-demo-child' }));
  await hand.sees('What changes');
  await hand.device.end();
});

test('the sheet prints for the student who is open, once; the same address later is nobody’s', async () => {
  const hand = await withStudents();
  await hand.find('Amina Lund', '20160902');
  await hand.tap('Print the sheet');
  await hand.page.waitForFunction(() => document.getElementById('paper')?.dataset.laid?.startsWith('school'));
  await hand.sees('Amina Lund');
  await hand.sees('Not valid unless signed.');
  assert.equal(await hand.page.getByRole('button', { name: /Sheet for the fridge|Wallet card/ }).count(), 0);
  await hand.page.reload();
  await hand.page.waitForFunction(() => document.getElementById('paper')?.dataset.laid || document.querySelector('.warnbox'));
  await hand.misses('Amina Lund');
  await hand.page.getByRole('link', { name: /^\s*Back/ }).click();
  await hand.heading('Which student?');
  await hand.device.end();
});

test('a store of the version before opens with everything in it', async () => {
  const device = await phone(tablet);
  const hand = await device.open('danger.html');
  await hand.page.evaluate(() => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap', 2);
    opening.onerror = () => reject(opening.error);
    opening.onupgradeneeded = () => {
      const db = opening.result;
      db.createObjectStore('plans', { autoIncrement: true });
      db.createObjectStore('events', { autoIncrement: true }).createIndex('own', ['plan', 'id'], { unique: true });
      db.createObjectStore('desk');
      db.createObjectStore('shelf');
      db.createObjectStore('revisions', { autoIncrement: true }).createIndex('plan', 'plan');
    };
    opening.onsuccess = async () => {
      const plan = await (await fetch('demo/adult.json')).text();
      const turn = opening.result.transaction(['plans', 'events', 'shelf'], 'readwrite');
      turn.objectStore('plans').add(plan);
      turn.objectStore('events').add({ plan: 'p-demo-adult', id: 'a', text: '{"id":"a","at":"2026-11-25T10:00:00+01:00","kind":"note","text":"older than the school"}' });
      turn.objectStore('shelf').put('{"tree":null}', 'p-kept');
      turn.oncomplete = () => { opening.result.close(); resolve(); };
    };
  }));
  await hand.page.goto(device.address);
  await hand.heading('Maren Oduya');
  await hand.tap('What happened before');
  await hand.sees('older than the school');
  const own = schoolHand(device, hand);
  assert.deepEqual(await own.kept('shelf'), ['{"tree":null}']);
  await hand.page.goto(`${device.address}#school`);
  await hand.heading('Which student?');
  await own.take(tilo);
  await own.find();
  await hand.heading('Tilo Brandvik');
  await device.end();
});

test('the device’s own incident comes before the school at a plain start; asked for by its address the school opens all the same', async () => {
  const hand = await withDemo(tablet);
  await answer(hand);
  await inject(hand, '4');
  await hand.page.goto(`${hand.device.address}#school`);
  await hand.heading('Which student?');
  await hand.misses('Maren');
  await hand.page.goto(`${hand.device.address}danger.html`);
  await hand.page.goto(hand.device.address);
  await hand.page.locator('.step.cur').waitFor();
  await hand.device.end();
});

test('the pages of help name the device’s own team only where the school is not the face in use', async () => {
  const hand = await withDemo(tablet);
  const team = JSON.parse(readFileSync(new URL('../../../pwa/demo/adult.json', import.meta.url), 'utf8')).contacts.find(contact => contact.relation === 'team').name;
  const shown = async () => { await hand.page.goto(`${hand.device.address}danger.html`); await hand.page.waitForTimeout(500); return (await hand.page.locator('body').innerText()).includes(team); };
  assert.equal(await shown(), true);
  await hand.page.goto(`${hand.device.address}#school`);
  await hand.heading('Which student?');
  assert.equal(await shown(), false);
  await hand.device.end();
});

for (const [look, options] of [['by day', { flowing: true }], ['by night, 320 px', { at: '2026-11-25T22:10:00+01:00', width: 320, height: 640, flowing: true }],
  ['at 200 % text', { width: 390, height: 844, flowing: true, prepare: () => addEventListener('DOMContentLoaded', () => { document.documentElement.style.fontSize = '200%'; }) }]]) {
  test(`${look}: every page of the school can be read`, async () => {
    const hand = await atSchool(options);
    const clean = async page => {
      await hand.page.waitForTimeout(100);
      assert.deepEqual(await axeFaults(hand.page, overTheFoot), [], page);
      assert.ok(await hand.page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), `${page} is too wide`);
      assert.deepEqual(await hand.page.evaluate(() => [...document.querySelectorAll('button, a.press, input')].filter(node => node.checkVisibility() && node.type !== 'file' && node.getBoundingClientRect().height < 43.5).map(node => node.outerHTML.slice(0, 80))), [], page);
      await hand.shot(`school-${look.replace(/[^a-z0-9]/g, '')}-${page}`);
    };
    await clean('choose');
    await hand.bring(tilo);
    await hand.field('agreed-day').fill('2026-10-20');
    await hand.sees('The day fits.');
    await clean('offered');
    await hand.tap('Yes, these are the orders');
    await hand.tap('I have seen it. Use this copy');
    await hand.sees('Type where the supplies are.');
    await clean('sign');
    await hand.sign();
    await hand.heading('Which student?');
    await hand.take(amina);
    await hand.type('Nobody', '20170314');
    await hand.sees('No student here');
    await clean('none');
    await hand.find();
    await clean('student');
    await hand.tap('Another student');
    await hand.type('Amina Lund', '20160902');
    await hand.sees('Change from');
    await clean('switch');
    await hand.tap('No, stay with');
    await hand.asked();
    await hand.heading('Before any dose');
    await clean('confirm');
    await hand.child();
    await hand.sees('Call home');
    await hand.tap('No answer');
    await hand.sees('Nobody at home answers');
    await clean('home');
    // They ring back: a later call is the last one.
    await hand.device.later(1);
    await hand.tap('Answered');
    await hand.sees('What did home give today?');
    await clean('told');
    await hand.tap('Nothing');
    await hand.heading('Inject now');
    await clean('dose');
    await hand.tap('Type the units you see');
    await hand.keys('1.5');
    await hand.tap('I see 1.5 units');
    await hand.heading('Inject 1.5 units now');
    await hand.tap('I have injected 1.5 units');
    await hand.sees('Type your initials.');
    await clean('injector');
    await hand.field('injector').fill('ES');
    await hand.tap('I have injected 1.5 units');
    await hand.page.waitForFunction(() => document.documentElement.dataset.screen === 'stepsPage');
    await hand.steps();
    await hand.tap('All steps are seen');
    await hand.sees('Look again at');
    await clean('waiting');
    await hand.tap('To the student’s page');
    await hand.tap('Log');
    await hand.heading('Log');
    await clean('log');
    await hand.tap('Back');
    await hand.tap('Remove this student’s data');
    await hand.sees('Remove this student');
    await clean('remove');
    await hand.device.end();
  });
}

// The orders came on 25 November; then somebody sets the clock back by a year.
test('a clock that stands before the day the orders came gives no dose', async () => {
  const hand = await withStudents();
  await hand.device.context.clock.setSystemTime(new Date('2025-11-25T12:10:00+01:00'));
  await hand.page.reload();
  await hand.find();
  await hand.sees('This device’s clock is wrong: these orders came on 25 November 2026. Set it.');
  await hand.tap('Look for danger signs');
  for (const absent of ['Inject now', '1.5 units']) await hand.misses(absent);
  await hand.device.end();
});
