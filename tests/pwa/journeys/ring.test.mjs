// Whom the call button rings goes by the hour: the team that is there now, in the plan's order; where nobody of it is, the emergency
// number. A contact at home is offered beside, never instead. What is no telephone number is text and no link.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { answer, close, inject, withDemo } from './phone.mjs';

after(close);
const team = (name, phone, when) => ({ name, relation: 'team', phone, when });
const home = { name: 'Jonas, next door', relation: 'home', phone: '+44 0000 000002', when: 'any hour' };
const clinic = team('Clinic by day', '+44 0000 000011', 'Mon-Fri 08:00-16:30');
const evening = team('Evening line', '+44 0000 000012', '16:30-23:00');
const withContacts = (contacts, options = {}) => withDemo({ ...options, change: plan => { plan.contacts = contacts; } });
const footCall = hand => hand.page.locator('.foot .row a[href^="tel:"]').evaluateAll(links => links.map(link => link.getAttribute('href')));
const plain = text => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();
const foot = async hand => plain(await hand.page.locator('.foot .row').innerText());

test('by day the clinic, in the evening its line, at night nobody: the emergency number', async () => {
  // Home stands first in the plan and is never rung by the foot's button.
  const hand = await withContacts([home, clinic, evening], { at: '2026-11-25T10:00:00+01:00' });
  assert.deepEqual(await footCall(hand), ['tel:+440000000011']);
  // 17:00, and 03:05 of the next day.
  await hand.device.later(7 * 60);
  await hand.sees('Evening line');
  assert.deepEqual(await footCall(hand), ['tel:+440000000012']);
  await hand.device.later(10 * 60 + 5);
  await hand.sees('Call 112');
  assert.deepEqual(await footCall(hand), ['tel:112']);
  await hand.shot('ring-nobody-home');
  // A call to the team is a call all the same, and says that nobody of it is there.
  await hand.tap('Start');
  await hand.tap('I do not know');
  await hand.tap('Go on to the glucose');
  await hand.keys('16.0');
  await hand.tap('Finger: 16.0 mmol/L');
  await hand.keys('1.6');
  await hand.tap('Yes, ketones are 1.6');
  await hand.tap('None of these');
  await hand.tap('Nothing');
  await hand.heading('Inject now');
  await hand.tap('Type the units you see');
  await hand.keys('4');
  await hand.tap('I see 4 units');
  await hand.tap('I have injected 4 units');
  await hand.sees('Nobody of your team answers now. Call 112');
  await hand.device.end();
});

test('the step rings everybody of the team who is there, in order, and offers home beside', async () => {
  const second = team('Second line', '+44 0000 000013', 'any hour');
  const hand = await withContacts([clinic, second, home, team('Night line', '+44 0000 000014', '22:00-08:00')], { at: '2026-11-25T03:05:00+01:00' });
  await answer(hand, { ketones: '1.6' });
  await inject(hand, '4');
  for (const done of ['The set is changed', 'The reservoir is new']) await hand.tap(done);
  await hand.tap('Look at the end of the tubing');
  await hand.tap('Over a sink');
  await hand.tap('The pump gave it');
  for (const done of ['It is joined, and dry', 'Automation is off', 'I drink', 'The alarm is set']) await hand.tap(done);
  await hand.heading('Call Second line, +44 0000 000013');
  const rung = await hand.page.locator('.step.cur a.press').allInnerTexts();
  assert.deepEqual(rung.map(plain), ['Call Second line +44 0000 000013', 'Call Night line +44 0000 000014', 'Call Jonas, next door +44 0000 000002']);
  await hand.shot('ring-step');
  // What they order is said back to them before it stands anywhere.
  await hand.tap('They ordered a dose');
  await hand.keys('3');
  await hand.tap('Yes, 3 units');
  await hand.heading('3 units of lispro');
  assert.equal((await hand.record()).filter(event => event.kind === 'order').length, 0);
  await hand.tap('They said yes');
  await hand.heading('Inject 3 units now');
  assert.deepEqual((await hand.record()).filter(event => event.kind === 'order').map(({ by, units, readBack }) => [by, units, readBack]), [['Second line', 3, true]]);
  await hand.device.end();
});

test('hours that cannot be read stand as they are written, are rung first, with the emergency number beside', async () => {
  const hand = await withContacts([team('Night line', '+44 0000 000014', 'any hour'), team('The ward', '+44 0000 000015', 'most evenings')], { at: '2026-11-25T03:05:00+01:00' });
  assert.deepEqual(await footCall(hand), ['tel:+440000000015', 'tel:112']);
  await hand.shot('ring-unreadable');
  await hand.tap('Start');
  await hand.tick('Drowsy, hard to wake');
  await hand.tap('Yes, this is true now');
  await hand.heading('Call for help now');
  await hand.sees('Call The ward +44 0000 000015 Hours: most evenings');
  await hand.device.end();
});

test('a number that no telephone could dial is text', async () => {
  const hand = await withContacts([team('Night line', '+44 (0)20 0000', 'any hour'), home], { at: '2026-11-25T03:05:00+01:00' });
  assert.deepEqual(await footCall(hand), []);
  assert.match(await foot(hand), /Call \+44 \(0\)20 0000/);
  await hand.shot('ring-text');
  // The page that stands without the core lists the whole team with its hours as written, and makes no link of it either.
  await hand.page.getByRole('link', { name: /Feel worse/ }).click();
  await hand.sees('Call your own team Night line +44 (0)20 0000, any hour');
  assert.deepEqual(await hand.page.locator('#main a[href^="tel:"]:visible').evaluateAll(links => links.map(link => link.getAttribute('href'))), ['tel:112']);
  await hand.device.end();
});

test('the page of danger lists every contact of the team with its hours, and nobody from home', async () => {
  const hand = await withContacts([home, clinic, evening], { at: '2026-11-25T03:05:00+01:00' });
  await hand.page.getByRole('link', { name: /Feel worse/ }).click();
  await hand.sees('Call your own team Clinic by day +44 0000 000011, Mon-Fri 08:00-16:30');
  await hand.sees('Call your own team Evening line +44 0000 000012, 16:30-23:00');
  await hand.misses('Jonas');
  assert.deepEqual(await hand.page.locator('#main a[href^="tel:"]:visible').evaluateAll(links => links.map(link => link.getAttribute('href'))), ['tel:112', 'tel:+440000000011', 'tel:+440000000012']);
  await hand.shot('danger-team');
  await hand.device.end();
});
