import { inUnits } from './phone.mjs';

// From the home page to the first question: since when is asked where the record does not know.
export const toHours = async (hand, since) => {
  await hand.tap('The pump stays off');
  await hand.page.waitForFunction(() => /^(Since when|How many)/.test(document.querySelector('h1')?.textContent ?? ''));
  if (/^Since/.test(await hand.page.locator('h1').innerText())) {
    if (since) { await hand.keys(since); await hand.tap('Since'); } else await hand.tap('Just now');
  }
  await hand.heading('How many hours without a pump?');
};

// From the home page to what the core says. A glucose that still stands is not asked for again.
export const asked = async (hand, { hours, wakes, grams, glucose, unit = 'mmol/L', stands = false } = {}) => {
  await toHours(hand);
  if (hours) { await hand.keys(hours); await hand.tap(`About ${hours} hours`); } else await hand.tap('I do not know');
  await hand.heading('Will you sleep in this time?');
  if (wakes) { await hand.keys(wakes); await hand.tap(`I am awake again at ${wakes.slice(0, 2)}:${wakes.slice(2)}`); } else await hand.tap('I stay awake');
  await askedAgain(hand, { grams, glucose, unit, stands });
};

// The same for the next injection: how long, and about sleep, was said before.
export const askedAgain = async (hand, { grams, glucose, unit = 'mmol/L', stands = false } = {}) => {
  await hand.heading('What do you eat now?');
  if (grams) { await hand.keys(grams); await hand.tap(`${grams} g now`); } else await hand.tap('Nothing now');
  if (stands) return;
  await hand.heading('Glucose now');
  if (glucose) { await hand.keys(glucose); await hand.tap(`Glucose is ${glucose} ${unit}`); } else await hand.tap('I have not measured');
};

// Rapid-acting and long-acting insulin never stand on one page, whatever the page is.
export const oneInsulin = async hand => {
  const text = (await hand.page.locator('body').innerText()).toLowerCase();
  if (/rapid-acting/.test(text) && /long-acting/.test(text)) throw new Error(`Two insulins on one page: ${text}`);
};

// Long-acting insulin has a page of its own beside the bridge that comes first; its label is read before its dose is shown.
export const toLongActing = async hand => {
  await hand.heading('The pump is off');
  await oneInsulin(hand);
  await hand.tap('Then the second injection');
  await hand.heading('Long-acting insulin');
  await oneInsulin(hand);
  await hand.tap('Long-acting insulin');
  await hand.heading('Which insulin is in your hand?');
};

// What is kept of the page, changed as `change` says; nothing: all of it is gone.
const keptPage = (hand, change) => hand.page.evaluate(changes => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const turn = opening.result.transaction('desk', 'readwrite'), desk = turn.objectStore('desk');
    if (!changes) desk.delete('draft');
    else desk.get('draft').onsuccess = ({ target }) => desk.put(JSON.stringify({ ...JSON.parse(target.result), ...changes }), 'draft');
    turn.oncomplete = () => { opening.result.close(); resolve(); };
  };
}), change);
// Another phone brings no page with it: only the record is left.
export const forgetPage = hand => keptPage(hand, null);
export const closePage = hand => keptPage(hand, { panel: null });

// Written down before anything else is done: a page left earlier has the dose still in hand.
export const injected = hand => hand.page.waitForFunction(() => !/^Inject /.test((document.querySelector('h1')?.textContent ?? 'Inject ').replace(/[\u2066-\u2069]/g, '').trim() + ' '));

// The dose on the screen is drawn, typed as it is seen, and injected.
export const given = async (hand, units) => {
  await hand.tap('Type the units you see');
  await hand.keys(units);
  await hand.tap(`I see ${inUnits(units)}`);
  await hand.tap(`I have injected ${inUnits(units)}`);
  await injected(hand);
};

// From the page that asks which insulin is in the hand: the right one, its dose, and in.
export const longActingGiven = async (hand, units) => {
  await hand.tap('glargine');
  await hand.tap('Show the dose');
  await given(hand, units);
};
