// A school's hands: orders taken in with the signed paper, a student found by name and date of birth, and what is kept of each.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { inUnits, phone } from './phone.mjs';

const demo = readFileSync(fileURLToPath(new URL('../../../pwa/demo/child.json', import.meta.url)), 'utf8');
export const orders = (changes = {}) => {
  const plan = JSON.parse(demo);
  Object.assign(plan, { id: 'p-tilo', title: 'School days' });
  for (const [path, value] of Object.entries(changes)) { const steps = path.split('/'); const last = steps.pop(); steps.reduce((node, step) => node[step], plan)[last] = value; }
  return JSON.stringify(plan);
};
export const tilo = orders();
export const amina = orders({ id: 'p-amina', 'person/name': 'Amina Lund', 'person/born': '2016-09-02', 'school/calculation': 'allowed' });

export const tablet = { at: '2026-11-25T12:10:00+01:00', width: 810, height: 1080 };
const noSlots = text => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

export const schoolHand = (device, hand) => {
  const { page } = hand;
  const field = id => page.locator(`#${id}`);
  const kept = store => page.evaluate(name => new Promise((resolve, reject) => {
    const opening = indexedDB.open('stopgap');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => { const asked = opening.result.transaction(name).objectStore(name).getAll(); asked.onsuccess = () => { resolve(asked.result); opening.result.close(); }; };
  }), store);
  const own = {
    device, ...hand, field, kept,
    text: async () => noSlots(await page.locator('body').innerText()),
    bring: async plan => {
      await hand.tap('Bring a student’s orders');
      await hand.heading('Bring a plan');
      await field('pasted').fill(plan);
      await hand.tap('Read the text');
    },
    sign: async ({ by = 'R. Maddox, nurse', on = '2026-11-24', ends = '2027-07-16', at = 'Office, blue box' } = {}) => {
      await hand.heading('Have you seen the signed copy?');
      for (const [id, text] of [['seen-by', by], ['seen-on', on], ['year-ends', ends], ['supplies', at]]) await field(id).fill(text);
      await hand.tap('I have seen it. Use this copy');
    },
    take: async (plan, signed) => {
      await own.bring(plan);
      await field('agreed-day').fill(JSON.parse(plan).agreement.on);
      await hand.tap('Yes, these are the orders');
      await own.sign(signed);
      await hand.heading('Which student?');
      await hand.sees('The copy is active. Choose the student.');
    },
    born: async digits => { for (let had = (await page.locator('.birth .fig').innerText()).replace(/[^0-9]/g, '').length; had > 0; had -= 1) await hand.tap('Erase'); await hand.keys(digits); },
    type: async (name, born, initials = 'RM') => {
      await hand.heading('Which student?');
      await field('student-name').fill(name);
      await own.born(born);
      await field('initials').fill(initials);
      await hand.tap('Find the student');
    },
    find: async (name = 'Tilo Brandvik', born = '20170314', initials = 'RM') => { await own.type(name, born, initials); await hand.page.waitForFunction(() => document.querySelector('.acting')); },
    log: async name => {
      const id = (await page.evaluate(() => new Promise(resolve => {
        const opening = indexedDB.open('stopgap');
        opening.onsuccess = () => {
          const store = opening.result.transaction('students').objectStore('students');
          const keys = store.getAllKeys(), texts = store.getAll();
          texts.onsuccess = () => { resolve(keys.result.map((key, at) => [key, texts.result[at]])); opening.result.close(); };
        };
      }))).find(([, text]) => JSON.parse(JSON.parse(text).copies.at(-1).plan).person.name === name)?.[0];
      return (await kept('studentEvents')).filter(row => row.student === id).map(row => ({ ...JSON.parse(row.text), initials: row.initials }));
    },
    // From the student's page to the end of the questions.
    asked: async ({ glucose = '270', ketones = '0.8' } = {}) => {
      await hand.touch(hand.page.getByRole('button', { name: /^\s*(Start|Go on|Test now)/ }).first());
      await hand.heading('Is any of these true now?');
      await hand.tap('None of these');
      await hand.heading('Glucose now');
      await hand.keys(glucose);
      await hand.tap(`Finger: ${glucose} mg/dL`);
      await hand.heading('Blood ketones now');
      await hand.keys(ketones);
      await hand.tap(`Yes, ketones are ${ketones}`);
      await hand.heading('What do you see?');
      await hand.tap('None of these');
      await hand.heading('What insulin was already given?');
      await hand.touch(hand.page.getByRole('button', { name: /^\s*(Nothing|That is all)/ }));
    },
    // Home answers and tells of nothing, or of what `told` types.
    home: async (told = async () => {}) => {
      await hand.sees('Call home');
      await hand.tap('Answered');
      await hand.heading('What did home give today?');
      await told();
      await hand.touch(hand.page.getByRole('button', { name: /^\s*(Nothing|That is all)/ }));
    },
    child: async () => { await hand.sees('Is this Tilo Brandvik, born 14 March 2017?'); await hand.tap('Yes, this is the child'); },
    inject: async (units, initials = 'ES') => {
      await hand.heading('Inject now');
      await hand.tap('Type the units you see');
      await hand.keys(units);
      await hand.tap(`I see ${inUnits(units)}`);
      await hand.heading(`Inject ${units} units now`);
      await field('injector').fill(initials);
      await hand.tap(`I have injected ${inUnits(units)}`);
      await page.waitForFunction(() => document.documentElement.dataset.screen !== 'injectNow');
    },
  };
  return own;
};

export const atSchool = async (options = {}) => {
  const device = await phone({ ...tablet, ...options });
  const own = schoolHand(device, await device.open('#school'));
  await own.heading('Which student?');
  return own;
};
// Two students taken in.
export const withStudents = async options => {
  const own = await atSchool(options);
  await own.take(tilo);
  await own.take(amina);
  return own;
};
