// An educator's hands at the desk: opens it, types a sheet as somebody would who has it on paper, by keypad on a phone and by
// keyboard on a laptop, and looks into what is kept.
import assert from 'node:assert/strict';
import { phone, seen } from './phone.mjs';

// The words isolate what stands in their slots; a reader neither sees nor hears it.
export const exactly = (text, after = '$') => new RegExp(`${seen(text).source}${after}`);

export const sizes = { phone: { width: 390, height: 844 }, laptop: { width: 1280, height: 800, touch: false } };

export const atDesk = async (size, options = {}) => {
  const device = await phone({ at: '2026-11-25T10:00:00+01:00', ...sizes[size], ...options });
  const hand = await device.open(options.path ?? '');
  if (!options.path) await hand.page.getByRole('link', { name: /^\s*Desk/ }).click();
  await hand.heading('Plans on this machine');
  return deskHand(device, hand, size);
};

export const deskHand = (device, hand, size) => {
  const { page } = hand;
  const small = size === 'phone';
  const labelled = label => page.getByLabel(exactly(label));
  // Without waiting for more than the page itself: every key is drawn before the next.
  const number = async (label, text, mark = '.') => {
    if (!small) { await labelled(label).fill(''); await labelled(label).pressSequentially(text); return; }
    await hand.touch(page.getByRole('button', { name: exactly(label, '[\\u2066-\\u2069]*: ') }));
    for (const sign of text) await hand.touch(page.getByRole('button', { name: /[.,]/.test(sign) ? 'decimal point' : new RegExp(`^${sign}$`) }));
    await hand.tap(`Write ${text.replace(/[.,]/, mark)}`);
  };
  const kept = async store => page.evaluate(name => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => { const asked = opening.result.transaction(name).objectStore(name).getAll(); asked.onsuccess = () => { resolve(asked.result); opening.result.close(); }; };
  }), store);
  const deep = {
    device, ...hand, small, number,
    text: async (label, value) => { await labelled(label).fill(value); },
    choose: async (label, value) => { await labelled(label).selectOption({ label: value }); },
    press: async label => { await hand.touch(page.getByRole('button', { name: exactly(label) })); },
    addTime: async label => { await hand.touch(page.locator('.field').filter({ has: page.getByText(label, { exact: true }) }).getByRole('button', { name: 'Add a time of day' })); },
    share: (label, text) => number(`${label}, amount`, text),
    strip: async (row, word) => { await hand.touch(page.getByRole('group', { name: exactly(`Strip words, ketones from ${row}`) }).getByRole('checkbox', { name: word })); },
    tick: async label => { await hand.touch(page.getByRole('checkbox', { name: exactly(label) })); },
    shown: async label => (small && !(await labelled(label).count()) ? page.getByRole('button', { name: exactly(label, '[\\u2066-\\u2069]*: ') }).innerText() : labelled(label).inputValue()),
    shelf: async () => (await kept('shelf')).map(text => JSON.parse(text)),
    revisions: () => kept('revisions'),
    counts: async () => (await page.locator('.counts').innerText()).replace(/[\u2066-\u2069]/g, ''),
    cells: async () => page.locator('.doses tbody tr').evaluateAll(rows => rows.map(row => [...row.children].map(cell => cell.innerText.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim()))),
  };
  return deep;
};

// The sheet of an invented adult, field by field. The numbers are those of the demo plan, so that what they lead to is known.
export const adult = [
  ['text', 'Name', 'Runa Okafor-Lind'], ['text', 'Born', '19790621'], ['number', 'Weight', '78.5'], ['text', 'Measured on', '2026-10-05'], ['choose', 'Pregnant', 'No'], ['choose', 'Takes an SGLT2 inhibitor', 'No'],
  ['text', 'Title of the plan', 'Everyday'], ['text', 'Review by', '2027-05-20'], ['number', 'Days of grace', '30'],
  ['choose', 'Unit of glucose', 'mmol/L'], ['choose', 'Decimal mark', '2.5 with a point'],
  ['text', 'Rapid-acting insulin', 'lispro'], ['number', 'Strength, rapid-acting', '100'], ['number', 'Hours of action, rapid-acting', '4.5'], ['number', 'Days in use, rapid-acting', '28'], ['text', 'Long-acting insulin', 'glargine'], ['number', 'Strength, long-acting', '100'], ['number', 'Hours of action, long-acting', '24'], ['number', 'Hours until it begins', '2'], ['number', 'Days in use, long-acting', '28'],
  ['choose', 'Size of the syringe', '50'], ['choose', 'One mark of the syringe', '1'], ['number', 'Most in one pen dose', '60'], ['choose', 'One click of the pen', '1'], ['choose', 'Tubing', 'With tubing'], ['choose', 'Automation', 'Basal and corrections'], ['number', 'Smallest step of the pump', '0.05'], ['number', 'Daily total', '46.0'],
  ['number', 'Correction factor, 1', '2.5'], ['addTime', 'Correction factor', ''], ['text', 'Correction factor, 2, time', '0700'], ['number', 'Correction factor, 2', '2.2'], ['addTime', 'Correction factor', ''], ['text', 'Correction factor, 3, time', '2200'], ['number', 'Correction factor, 3', '2.5'],
  ['number', 'Carbohydrate ratio, 1', '12'], ['addTime', 'Carbohydrate ratio', ''], ['text', 'Carbohydrate ratio, 2, time', '0600'], ['number', 'Carbohydrate ratio, 2', '10'], ['addTime', 'Carbohydrate ratio', ''], ['text', 'Carbohydrate ratio, 3, time', '1100'], ['number', 'Carbohydrate ratio, 3', '11'],
  ['number', 'Target, 1', '7.0'], ['addTime', 'Target', ''], ['text', 'Target, 2, time', '0700'], ['number', 'Target, 2', '6.0'], ['addTime', 'Target', ''], ['text', 'Target, 3, time', '2200'], ['number', 'Target, 3', '7.0'],
  ['number', 'Basal, 1', '0.8'], ['addTime', 'Basal', ''], ['text', 'Basal, 2, time', '0400'], ['number', 'Basal, 2', '0.95'], ['addTime', 'Basal', ''], ['text', 'Basal, 3, time', '0800'], ['number', 'Basal, 3', '0.85'],
  ['number', 'Trigger', '14.0'], ['number', 'Middle', '10.0'], ['number', 'First look', '60'], ['number', 'Second look', '120'], ['number', 'Expected fall of glucose', '2.0'], ['number', 'High under automation', '90'], ['press', 'Add a look', ''], ['number', 'Looks after an injection, 1', '60'], ['press', 'Add a look', ''], ['number', 'Looks after an injection, 2', '120'],
  ['choose', 'Test at home', 'Blood meter'], ['number', 'Ketones act from', '0.6'], ['number', 'Expected fall of ketones', '0.2'], ['choose', 'Extra and correction', 'The greater of the two'], ['press', 'Add a glucose edge', ''], ['number', 'Glucose edge, 2', '10.0'], ['press', 'Add a glucose edge', ''], ['number', 'Glucose edge, 3', '14.0'],
  ['choose', 'Ketones from 0.0, glucose from 0', 'No extra'], ['choose', 'Ketones from 0.0, glucose from 10.0', 'No extra'], ['choose', 'Ketones from 0.0, glucose from 14.0', 'No extra'], ['choose', 'Call, ketones from 0.0', 'No call'], ['strip', '0.0', 'negative'], ['strip', '0.0', 'trace'],
  ['press', 'Add a ketone row', ''], ['number', 'Ketone edge, 2', '0.6'], ['choose', 'Ketones from 0.6, glucose from 0', 'No extra'], ['choose', 'Ketones from 0.6, glucose from 10.0', 'Daily share'], ['share', 'Ketones from 0.6, glucose from 10.0', '0.05'], ['choose', 'Ketones from 0.6, glucose from 14.0', 'Daily share'], ['share', 'Ketones from 0.6, glucose from 14.0', '0.10'], ['number', 'Repeat after, ketones from 0.6', '2'], ['choose', 'Call, ketones from 0.6', 'No call'], ['strip', '0.6', 'small'],
  ['press', 'Add a ketone row', ''], ['number', 'Ketone edge, 3', '1.5'], ['choose', 'Ketones from 1.5, glucose from 0', 'Daily share'], ['share', 'Ketones from 1.5, glucose from 0', '0.05'], ['choose', 'Ketones from 1.5, glucose from 10.0', 'Daily share'], ['share', 'Ketones from 1.5, glucose from 10.0', '0.10'], ['choose', 'Ketones from 1.5, glucose from 14.0', 'Daily share'], ['share', 'Ketones from 1.5, glucose from 14.0', '0.10'], ['number', 'Repeat after, ketones from 1.5', '2'], ['choose', 'Call, ketones from 1.5', 'Call the team'], ['strip', '1.5', 'moderate'],
  ['press', 'Add a ketone row', ''], ['number', 'Ketone edge, 4', '3.0'], ['choose', 'Ketones from 3.0, glucose from 0', 'Daily share'], ['share', 'Ketones from 3.0, glucose from 0', '0.05'], ['choose', 'Ketones from 3.0, glucose from 10.0', 'Daily share'], ['share', 'Ketones from 3.0, glucose from 10.0', '0.10'], ['choose', 'Ketones from 3.0, glucose from 14.0', 'Daily share'], ['share', 'Ketones from 3.0, glucose from 14.0', '0.20'], ['number', 'Repeat after, ketones from 3.0', '2'], ['choose', 'Call, ketones from 3.0', 'Call emergency'], ['strip', '3.0', 'large'],
  ['choose', 'When the meter shows HI', 'Daily share'], ['share', 'When the meter shows HI', '0.14'], ['number', 'Carbohydrate only below', '5.6'], ['number', 'That carbohydrate', '20'],
  ['number', 'Most in one dose', '10'], ['number', 'Most in one dose, by daily total', '0.20'], ['number', 'Most within the hours of action', '0.30'], ['number', 'Hours between corrections', '4'], ['number', 'Doses before a call', '2'], ['number', 'Count glucose up to', '20.0'], ['choose', 'Rounding', 'Down'],
  ['tick', 'Delivered off-body, over a sink', ''], ['tick', 'Automation paused', ''], ['choose', 'The usual way', 'Delivered off-body, over a sink'], ['number', 'Hours of pause', '4'],
  ['number', 'Long-acting against basal', '1.0'], ['number', 'Injections a day', '1'], ['number', 'Back on the pump after', '12'], ['number', 'Hours of one bridge dose', '4'], ['number', 'Low is', '3.9'], ['number', 'Very low is', '3.0'], ['number', 'Sugar', '15'], ['number', 'Test again after', '15'], ['text', 'Glucagon', 'nasal 3 mg'],
  ['press', 'Add a contact', ''], ['text', 'Contact, name, 1', 'Diabetes night line'], ['choose', 'Contact, who it is, 1', 'The team'], ['text', 'Contact, phone, 1', '+44 0000 000001'], ['text', 'Contact, when, 1', 'any hour'], ['press', 'Add a contact', ''], ['text', 'Contact, name, 2', 'Jonas, next door'], ['choose', 'Contact, who it is, 2', 'Home'], ['text', 'Contact, phone, 2', '+44 0000 000002'], ['text', 'Contact, when, 2', 'any hour'], ['text', 'Emergency number', '112'],
];
export const typeAll = async (hand, steps) => { for (const [how, label, value] of steps) await hand[how](label, value); };

export const noFaults = async (hand, what) => {
  const found = await hand.page.evaluate(() => ({ wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    small: [...document.querySelectorAll('button, a.press, a.face, input, select, summary')].filter(node => node.checkVisibility()).map(node => ({ name: (node.getAttribute('aria-label') ?? node.textContent).trim().slice(0, 40), box: (node.closest('label') ?? node).getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.5 || box.width < 43.5).map(({ name, box }) => `${name} ${Math.round(box.width)}x${Math.round(box.height)}`),
    cut: [...document.querySelectorAll('.desk *')].filter(node => !node.closest('svg, .scroller, .hidden, option') && node.checkVisibility() && node.getBoundingClientRect().right > document.documentElement.clientWidth + 1).map(node => node.textContent.trim().slice(0, 40)) }));
  assert.equal(found.wide, 0, `${what}: runs ${found.wide} px off the side`);
  assert.deepEqual(found.small, [], `${what}: too small to hit`);
  assert.deepEqual(found.cut, [], `${what}: cut off at the side`);
};
