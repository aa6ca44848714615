// From the home screen to paper: each sheet as a PDF, read by outside tools. What stands there is what the core says, the size is
// the size, nothing is grey that should be black, and the code is read by a reader that knows nothing of the app.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { after, test } from 'node:test';
import { answers } from '../../clinic/asking.mjs';
import { onlyLetters } from '../../paper/letters.mjs';
import { longestLine, pages, pdf, picture, readCode, seenByHand, share, text, wordsOf } from '../../paper/pdf.mjs';
import { close, phone, seen, withDemo } from './phone.mjs';

after(close);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const planOf = base => JSON.parse(readFileSync(new URL(`../../../pwa/demo/${base}.json`, import.meta.url), 'utf8'));
const adult = planOf('adult'), child = planOf('child');
const cardOf = (plan, languages = []) => JSON.parse(answers('card', [{ plan, paper: 'a4', languages }])[0]);

// Laid into the store as the page's own writer would.
const lay = (page, store, values) => page.evaluate(([name, all]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('stopgap');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const turn = opening.result.transaction(name, 'readwrite');
    for (const value of all) turn.objectStore(name).add(value);
    turn.oncomplete = () => { opening.result.close(); resolve(); };
    turn.onerror = () => reject(turn.error);
  };
}), [store, values]);

// The page that prints, with one of the demo plans or with a plan that was changed.
const open = async ({ plan, child: isChild = false, ...options } = {}) => {
  const hand = await withDemo({ child: isChild, width: 1000, height: 900, touch: false, ...options });
  const { page, device } = hand;
  if (plan) await lay(page, 'plans', [JSON.stringify(plan)]);
  await page.goto(`${device.address}paper.html`);
  await page.locator('#paper[data-laid]').waitFor();
  return { ...hand,
    choose: async what => { await page.getByRole('button', { name: seen(what) }).click(); },
    laid: () => page.locator('#paper').getAttribute('data-laid'),
    refused: async () => (await page.locator('.warnbox').allInnerTexts()).join(' ').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' '),
    // What the page shows, page by page, without spaces.
    shown: () => page.evaluate(() => [...document.querySelectorAll('.page')].map(one => one.textContent)),
    print: async () => pdf(await page.pdf({ preferCSSPageSize: true, printBackground: true })) };
};
const bare = value => value.normalize('NFKC').replace(/[\s\u2066-\u2069\u200e\u200f]/g, '');
const signs = value => [...bare(value)].sort().join('');

const near = (got, wanted, within, what) => assert.ok(Math.abs(got - wanted) <= within, `${what}: ${got}, not ${wanted}`);
const sized = (path, [width, height], what) => pages(path).forEach(([w, h], at) => { near(w, width, 0.2, `${what}, page ${at + 1}, width`); near(h, height, 0.2, `${what}, page ${at + 1}, height`); });

// Nothing is lost between the page and the paper, nothing is under 9 pt, and the paper is not scaled.
const whole = async (sheet, path) => {
  const shown = await sheet.shown();
  assert.equal(pages(path).length, shown.length, 'pages on the screen and on paper');
  shown.forEach((one, at) => { if (!/[\u0600-\u06ff]/.test(one)) assert.equal(signs(text(path, at + 1)), signs(one), `page ${at + 1}`); });
  await sheet.page.emulateMedia({ media: 'print' });
  const measured = await sheet.page.evaluate(() => {
    const walker = document.createTreeWalker(document.querySelector('.pages'), NodeFilter.SHOW_TEXT);
    let smallest = Infinity;
    const words = [];
    while (walker.nextNode()) {
      const node = walker.currentNode;
      if (!node.data.trim()) continue;
      smallest = Math.min(smallest, parseFloat(getComputedStyle(node.parentElement).fontSize));
      for (const match of node.data.matchAll(/[A-Za-z]{6,}/g)) {
        const range = document.createRange();
        range.setStart(node, match.index);
        range.setEnd(node, match.index + match[0].length);
        words.push({ word: match[0], width: range.getBoundingClientRect().width * 0.75 });
      }
    }
    return { smallest, words };
  });
  await sheet.page.emulateMedia({ media: null });
  assert.ok(measured.smallest >= 12, `${measured.smallest} px is under 9 pt`);
  // Each word on paper is as wide as one on the screen: 3/4 of a point to the pixel, and no other scale.
  const onScreen = new Map();
  for (const { word, width } of measured.words) onScreen.set(word, [...(onScreen.get(word) ?? []), width]);
  let compared = 0;
  pages(path).forEach((_, at) => wordsOf(path, at + 1).filter(({ word }) => onScreen.has(word)).forEach(({ word, width }) => {
    compared += 1;
    assert.ok(onScreen.get(word).some(known => Math.abs(known - width) < 0.03 * known), `"${word}" is ${width} pt wide on paper, not ${onScreen.get(word)}`);
  }));
  assert.ok(compared > 5, `${compared} words were compared`);
  for (let at = 1; at <= shown.length; at += 1) {
    const { colour, ...rest } = picture(path, at, 60);
    assert.equal(colour, false, `colour on page ${at}`);
    assert.ok(share(rest, value => value > 200) > 0.5, `page ${at} is not white`);
  }
};

// The cells as the core gives them, in the few words of this test.
const cell = ({ dose, grams, outcome, call }, asks) => {
  const calls = call === 'emergency' ? ', go' : call === 'team' && asks === 'none' ? ', call' : '';
  if (dose) return `${dose}${grams ? ` +${grams} g` : ''}${calls}`;
  if (grams) return `${outcome === 'eat' ? 'eat' : 'sugar'} ${grams} g${calls}`;
  return { emergency: 'go', eat: 'eat', lookAgain: 'look again', correctByPump: 'by pump', testKetones: `test ketones${calls}`, callTeam: 'call' }[outcome];
};
const rowName = row => ({ low: `to ${row.glucose}`, number: `${row.glucose} up`, HI: 'HI twice' }[row.kind]);
const rowText = (row, span, columns) => bare(`${rowName(row)}${columns.map(at => cell(row.cells[at], span.calls[at])).join('')}`);

for (const [base, plan] of [['adult', adult], ['child', child]]) {
  test(`the cards of the ${base}: their size, every row of the core, nothing clipped`, async () => {
    const sheet = await open({ child: base === 'child' });
    await sheet.choose('Cards without a sheet');
    assert.match(await sheet.laid(), /^bare .* whole$/);
    const path = await sheet.print();
    assert.equal(pages(path).length, 6);
    sized(path, [85.6, 107.96], 'a side of the card');
    await whole(sheet, path);
    const card = cardOf(plan), shown = (await sheet.shown()).map(bare);
    // Sides 1 and 3 are the tables by day and by night. A row may be missing only where the core says it is spare.
    card.spans.forEach((span, at) => {
      const side = shown[2 * at];
      assert.ok(side.includes(bare(`From ${span.from} to ${span.to} only.`)), side);
      assert.ok(side.includes(bare(`Only if no insulin by needle in the last ${card.head[0].slots.hours} hours.`)));
      for (const row of span.rows) {
        const there = side.includes(rowText(row, span, [1, 2, 3]));
        assert.ok(there || row.spare || row.like, `${rowName(row)} is missing: ${rowText(row, span, [1, 2, 3])} in ${side}`);
      }
      assert.ok(side.includes('Nottested:testbothfirst.Nodosebefore.'));
    });
    for (const line of [card.front.name, 'Replaces earlier copies', 'Card 1 of 3', 'Do not inject me.', 'never stop basal insulin', `Call ${card.emergencyNumber}`]) assert.ok(shown[1].includes(bare(line)), line);
    // What is done without strips, by the hours of both tables.
    assert.ok(shown[0].includes(bare('No strips: turn to “No ketone strips”.')));
    const said = card.spans[0].rows.map((row, at) => [row, card.spans.map(span => span.rows[at].noStrips)]).filter(([, cells]) => cells.some(one => !one.like));
    for (const [row, cells] of said) assert.ok(shown[4].includes(bare(`${rowName(row)}${cells.map(one => cell(one, 'none')).join('')}`)), `${rowName(row)} without strips in ${shown[4]}`);
    for (const line of ['No ketone strips', 'Get strips: a pharmacy', 'Test glucose again after 60 minutes.', 'Unwell: call the team.']) assert.ok(shown[4].includes(bare(line)), line);
    for (const { slots } of card.offPump) for (const value of Object.values(slots)) assert.ok(shown[3].includes(bare(value)), value);
    for (const entry of card.contacts) assert.ok(shown[3].includes(bare(`${entry.name} ${entry.phone}`)), entry.name);
    await sheet.device.end();
  });

  test(`the code of the ${base}'s card, held by hand`, async () => {
    const sheet = await open({ child: base === 'child' });
    await sheet.choose('Cards without a sheet');
    const page = picture(await sheet.print(), 2, 300);
    // 40 mm are 472 px at 300 dpi; half a millimetre of white stays round it.
    const packed = JSON.parse(answers('packPlan', [{ plan }])[0]);
    for (const degrees of [0, 4, -3]) {
      const read = readCode(seenByHand(page, { left: 0, top: 0, size: 545, degrees, blur: 1 }));
      assert.equal(read, packed.text);
    }
    assert.equal(JSON.parse(answers('unpackPlan', [{ text: packed.text }])[0]).fingerprint, cardOf(plan).front.fingerprint);
    // From the left edge of the code to the right one.
    const dark = Array.from({ length: page.width }, (_, x) => Array.from({ length: 500 }, (__, y) => page.grey[y * page.width + x] < 128).some(Boolean));
    const left = dark.indexOf(true), gap = dark.findIndex((one, x) => x > left + 300 && !one && !dark[x + 1] && !dark[x + 2] && !dark[x + 3]);
    near((gap - left) / 300 * 25.4, 40, 0.4, 'the code');
    await sheet.device.end();
  });
}

for (const [paper, button, size] of [['a4', 'A4, 210 by 297 mm', [210, 297]], ['letter', 'US Letter', [215.9, 279.4]]]) {
  test(`cards on a sheet of ${paper}, with lines to cut, to fold and to measure`, async () => {
    const sheet = await open();
    await sheet.choose(button);
    assert.equal(await sheet.laid(), `card ${paper}  whole`);
    const path = await sheet.print();
    assert.equal(pages(path).length, 2);
    sized(path, size, paper);
    await whole(sheet, path);
    const tenths = picture(path, 1, 254);   // ten pixels a millimetre
    near(longestLine(tenths, 130, 205), 500, 3, 'the line to measure, in tenths of a millimetre');
    near(longestLine(tenths, 205, 400), 1717, 4, 'the frame of a card with its own lines, in tenths of a millimetre');
    await sheet.device.end();
  });
}

test('by night, from a dark screen, the paper is black on white', async () => {
  const sheet = await open({ at: '2026-11-25T03:05:00+01:00', prepare: () => { matchMedia('(prefers-color-scheme: dark)'); } });
  await sheet.page.emulateMedia({ colorScheme: 'dark' });
  await sheet.page.evaluate(() => document.documentElement.classList.add('night'));
  await sheet.choose('Cards without a sheet');
  const path = await sheet.print();
  await whole(sheet, path);
  const side = picture(path, 4, 100);
  assert.equal(side.grey[2 * side.width + 2], 255);
  // Copied in one bit, what is dark and what is light stay as they were: hardly anything lies between.
  assert.ok(share(side, value => value > 60 && value < 195) < 0.12);
  await sheet.device.end();
});

test('the plan for the fridge holds every row and every column, in 12 pt', async () => {
  const sheet = await open();
  await sheet.choose('The whole plan for the fridge');
  const path = await sheet.print();
  sized(path, [210, 297], 'A4');
  await whole(sheet, path);
  const card = cardOf(adult), shown = (await sheet.shown()).map(bare);
  card.spans.forEach((span, at) => { for (const row of span.rows) assert.ok(shown[at].includes(rowText(row, span, [0, 1, 2, 3, 4])), rowText(row, span, [0, 1, 2, 3, 4])); });
  assert.ok(shown.at(-1).includes(bare('14.0 up 3 units 2 units 16.0 up 4 units 3 units')), shown.at(-1));   // no strips: by day and by night
  assert.ok(await sheet.page.evaluate(() => [...document.querySelectorAll('.page *')].every(node => !node.textContent.trim() || parseFloat(getComputedStyle(node).fontSize) >= 16)));
  assert.ok(shown.at(-1).includes(bare('20 units of glargine, once a day')));   // 3.2 + 3.8 + 13.6 = 20.6, down
  await sheet.device.end();
});

test('the record is one page; the travel sheet counts twice the supplies', async () => {
  const sheet = await open();
  await sheet.choose('Record of an incident');
  const record = await sheet.print();
  assert.equal(pages(record).length, 1);
  await whole(sheet, record);
  await sheet.choose('Travel sheet');
  const travel = await sheet.print();
  await whole(sheet, travel);
  const [kit, letter] = (await sheet.shown()).map(bare);
  // 14 days: 2 x 14 x 46.0 = 1288 units: 2 vials or 5 pens; 2 x 14 x 20.6 = 576.8: 2 pens; 5 sets, twice.
  assert.ok(kit.includes('1425210'), kit);
  assert.ok(kit.includes(bare('A shift of 5 hours or more, on glargine?')));
  assert.ok(letter.includes(bare('Maren Oduya, born 21 June 1979, has type 1 diabetes.')), letter);
  await sheet.device.end();
});

test('the school sheet: table first, a call first above the limit, signatures, not valid unless signed', async () => {
  const sheet = await open({ child: true });
  await sheet.choose('Sheet for the school');
  const path = await sheet.print();
  sized(path, [210, 297], 'A4');
  await whole(sheet, path);
  const answer = JSON.parse(answers('schoolSheet', [{ plan: child, paper: 'a4' }])[0]);
  const shown = (await sheet.shown()).map(bare);
  // The orders say: call first above 2 units. 280 mg/dL asks for 2 units, 320 for 2.5.
  assert.ok(shown[0].includes(bare('280 up by pump 2 units 2.5 units, call first 4 units, go')), shown[0]);
  assert.ok(shown[0].includes(bare('320 up by pump 2.5 units, call first 2.5 units, call first 4 units, go')), shown[0]);
  for (const one of shown) assert.ok(one.includes(bare('Not valid unless signed.')));
  assert.ok(shown[0].indexOf(bare('High glucose')) < shown[0].indexOf(bare('Low glucose: first')));
  const rest = shown.slice(answer.spans.length).join(' ');
  for (const line of ['More than 2 units: first call Signe Brandvik, mother, +44 0000 000004.', 'Call Signe Brandvik, mother, +44 0000 000004. Which insulin was given today?', 'May inject: School nurse; Trained staff named here', 'Orders end on 20 January 2027',
    'Ask your school nurse which tasks staff may do here.', 'High, and no strips: no dose. Call home, then the team.', 'Children\'s night line +44 0000 000003 any hour', 'Prescriber', 'Parent', 'School nurse', 'Student', 'Initials']) assert.ok(rest.includes(bare(line)), line);
  await sheet.device.end();
});

test('orders for a school that are over are not printed; on their last day they are', async () => {
  for (const [last, whole] of [['2026-11-25', true], ['2026-11-24', false]]) {
    const sheet = await open({ child: true, plan: { ...child, id: 'p-tilo', school: { ...child.school, ordersExpire: last } }, at: '2026-11-25T12:10:00+01:00' });
    await sheet.choose('Sheet for the school');
    assert.match(await sheet.laid(), whole ? /^school .*whole$/ : /^school .*refused$/);
    if (!whole) assert.match(await sheet.refused(), /The orders for the school ended on 24 November 2026\./);
    await sheet.device.end();
  }
});

test('a plan without orders offers no sheet for a school', async () => {
  const sheet = await open();
  assert.equal(await sheet.page.getByRole('button', { name: /Sheet for the school/ }).count(), 0);
  await sheet.device.end();
});

test('the stranger\'s side in other languages says that nobody has checked it; Arabic runs from right to left', async () => {
  const sheet = await open();
  for (const language of ['es', 'pl', 'ar']) await sheet.page.locator(`.languages [lang="${language}"]`).click();
  await sheet.choose('Cards without a sheet');
  const path = await sheet.print();
  await whole(sheet, path);
  const shown = await sheet.shown();
  assert.equal(shown.length, 10);   // five sides, three languages, and two sides to write on
  assert.match(shown[6], /Traducción aún no revisada/);
  assert.match(shown[7], /Tłumaczenie jeszcze niesprawdzone/);
  assert.match(shown[8], /لم يراجع طبيب هذه الترجمة بعد/);
  assert.equal(await sheet.page.evaluate(() => getComputedStyle(document.querySelector('[lang="ar"].side')).direction), 'rtl');
  // The number of home may ring nowhere abroad.
  for (const side of shown.slice(6, 9)) assert.doesNotMatch(side, /112/);
  for (const side of shown.slice(6, 9)) assert.match(bare(side), /\+440000000001/);
  await sheet.device.end();
});

test('a plan tested with strips prints their words, and every one of the team with its hours; nobody stands in for the team', async () => {
  const team = [{ name: 'Day clinic', relation: 'team', phone: '+44 0000 000009', when: 'Mon-Fri 08:00-16:30' }, adult.contacts[0]];
  const sheet = await open({ plan: { ...adult, id: 'p-strips', ketones: { ...adult.ketones, test: 'urine' } } });
  await sheet.choose('Cards without a sheet');
  assert.match(await sheet.laid(), /whole$/);
  const [table, , , after] = (await sheet.shown()).map(bare);
  for (const head of ['Strip: Small', 'Strip: Moderate: call', 'Strip: Large: go', 'Strip Negative, Trace:']) assert.ok(table.includes(bare(head)), head);
  assert.doesNotMatch(table, /Ketones0\.6/);
  const two = await open({ plan: { ...adult, id: 'p-two', contacts: [adult.contacts[1], ...team] } });
  await two.choose('Cards without a sheet');
  const [day, front] = (await two.shown()).map(bare);
  for (const { name, phone, when } of team) for (const side of [day, front]) assert.ok([`${name} ${phone} ${when}`, `${name}: ${phone} ${when}`].some(one => side.includes(bare(one))), name);
  for (const line of ['Strip Moderate and up: call the team.', 'Strip Large: call 112 and go.']) assert.ok(after.includes(bare(line)), line);
  await sheet.device.end();
  await two.device.end();
  const alone = await open({ plan: { ...adult, id: 'p-alone', contacts: [adult.contacts[1]] } });
  await alone.choose('Cards without a sheet');
  const [first, back] = (await alone.shown()).map(bare);
  assert.ok(first.includes(bare('No team number here: call 112.')), first);
  for (const side of [first, back]) assert.ok(!side.includes(bare(adult.contacts[1].name)), side);
  await alone.device.end();
});

test('off the body: where the end is comes before the pump gives, and the tubing is joined after it', async () => {
  const sheet = await open();
  for (const what of ['Cards without a sheet', 'The whole plan for the fridge']) {
    await sheet.choose(what);
    const [page] = (await sheet.shown()).map(bare);
    const places = ['Is the end over the sink?', 'Pump the same there.', 'Join the tubing to the new set again. Look: no drops, no wet.'].map(line => page.indexOf(bare(line)));
    assert.ok(places.every((place, at) => place > 0 && (!at || place > places[at - 1])), `${what}: ${places}`);
  }
  await sheet.device.end();
});

test('the languages of the plan\'s journeys are ticked already', async () => {
  const sheet = await open({ plan: { ...adult, id: 'p-travel', travel: { homeOffset: '+01:00', languages: ['fr', 'en', 'nl'] } } });
  assert.equal(await sheet.laid(), 'card a4 fr nl whole');
  await sheet.device.end();
});

// Latin letters come with the page. For the others a browser is given one font that was made here, so that nothing hangs on what this
// machine has: with every letter, with those of one language, and with none of them.
test('a language whose letters the device lacks is not offered', async () => {
  const source = code => readFileSync(new URL(`../../../i18n/stranger/${code}.ftl`, import.meta.url), 'utf8');
  const latin = ['es', 'fr', 'de', 'it', 'pt', 'nl', 'pl', 'tr'], others = ['ar', 'zh-Hans', 'ja', 'hi'];
  for (const had of [others, ['ar'], ['hi'], []]) {
    const sheet = await open({ fonts: onlyLetters(`A${had.map(source).join('')}`) });
    const offered = await sheet.page.evaluate(() => [...document.querySelectorAll('.languages [lang]')].map(one => one.lang));
    assert.deepEqual(offered, [...latin, ...others.filter(code => had.includes(code))], `with the letters of ${had.join(', ') || 'none of them'}`);
    const told = (await sheet.page.locator('main .note').allInnerTexts()).join(' ');
    for (const code of others) assert.equal(new RegExp(`\\b${code}\\b`).test(told.split('Danger')[0]), !had.includes(code), `${code} in "${told}"`);
    await sheet.device.end();
  }
});

const long = (text, length) => text.repeat(length).slice(0, length);
test('the longest names are refused by name on the card, and whole on the sheets', async () => {
  const plan = structuredClone(adult);
  plan.id = 'p-long';
  plan.person.name = long('Wilhelmina Alexandrowna ', 59).trim();
  plan.contacts = Array.from({ length: 8 }, (_, at) => ({ name: long(`Contact ${at} with a very long name `, 58).trim(), relation: at ? 'home' : 'team', phone: '+44 0000 000000 000000 000000', when: 'any hour of the day or the night' }));
  const sheet = await open({ plan });
  assert.match(await sheet.laid(), /refused$/);
  assert.match(await sheet.refused(), /There is no room for the contacts\. Shorten the names, or leave out a contact\./);
  assert.equal(await sheet.page.locator('.page').count(), 0);
  assert.equal(await sheet.page.getByRole('button', { name: /^Print/ }).count(), 0);
  await sheet.choose('The whole plan for the fridge');
  assert.equal(await sheet.refused(), '');
  assert.match(await sheet.laid(), /whole$/);
  await whole(sheet, await sheet.print());
  await sheet.device.end();
});

test('six rows of ketones do not fit the card, and the table is named', async () => {
  const plan = structuredClone(adult);
  plan.id = 'p-six';
  const [, act, , last] = plan.ketones.rows;
  plan.ketones.rows = [plan.ketones.rows[0], act, { ...act, from: 1.0, urine: [] }, { ...act, from: 1.5, urine: ['moderate'], call: 'team' }, { ...act, from: 2.0, urine: [], call: 'team' }, last];
  const sheet = await open({ plan });
  assert.match(await sheet.refused(), /no room for the table of doses\. Use fewer ketone rows/);
  await sheet.device.end();
});

test('an expired plan prints nothing', async () => {
  const sheet = await open({ at: '2027-05-13T12:00:00+02:00' });   // the last day of grace is the 12th
  assert.match(await sheet.refused(), /The plan is not in force/);
  assert.equal(await sheet.page.locator('.page').count(), 0);
  await sheet.device.end();
});

test('on the last day of grace it still prints', async () => {
  const sheet = await open({ at: '2027-05-12T12:00:00+02:00' });
  assert.match(await sheet.laid(), /whole$/);
  await sheet.device.end();
});

test('the doors: from the home page and from an agreed plan on the desk', async () => {
  const hand = await withDemo();
  await hand.link('Print the card').click();
  await hand.page.locator('#paper[data-laid]').waitFor();
  // On a phone nothing of the choices runs off the side, and all of it can be hit.
  assert.equal(await hand.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), 0);
  assert.deepEqual(await hand.page.evaluate(() => [...document.querySelectorAll('button')].filter(node => node.getBoundingClientRect().height < 43.5).map(node => node.textContent)), []);
  await hand.device.context.clock.resume();   // axe waits for its own timers
  await hand.page.evaluate(axe);
  const found = await hand.page.evaluate(async () => (await window.axe.run(document, { runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'] } })).violations.map(entry => `${entry.id}: ${entry.nodes.map(node => node.target.join(' ')).join(', ')}`));
  assert.deepEqual(found, []);
  await hand.page.getByRole('link', { name: 'Back' }).click();
  await hand.heading('Maren Oduya');
  await hand.device.end();
});

test('the latest revision on the shelf is what its own address prints', async () => {
  const hand = await withDemo({ width: 1000, height: 900, touch: false });
  const later = { ...child, id: 'p-shelf', revision: 9 };
  await lay(hand.page, 'revisions', [{ ...later, revision: 8 }, later].map(plan => ({ plan: 'p-shelf', text: JSON.stringify(plan), engine: '0.1.0' })));
  await hand.page.goto(`${hand.device.address}paper.html#p-shelf`);
  await hand.page.locator('#paper[data-laid]').waitFor();
  assert.match(bare(await hand.page.locator('.page').first().textContent()), /TiloBrandvik,revision9/);
  await hand.page.goto(`${hand.device.address}#desk/p-shelf/plan`);
  await hand.heading('Tilo Brandvik');
  assert.equal(await hand.link('Print the card').getAttribute('href'), 'paper.html#p-shelf');
  await hand.device.end();
});

test('no plan, nothing to print', async () => {
  const device = await phone({ width: 1000, height: 900, touch: false });
  const { page } = await device.open('paper.html');
  await page.locator('#paper[data-laid]').waitFor();
  assert.match(await page.locator('.warnbox').innerText(), /There is no plan on this device/);
  await device.end();
});

test('the school sheet is in 12 pt throughout, and stays readable copied in one bit', async () => {
  const sheet = await open({ child: true });
  await sheet.choose('Sheet for the school');
  const small = await sheet.page.evaluate(() => [...document.querySelectorAll('.page *')].filter(node => [...node.childNodes].some(one => one.nodeType === 3 && one.data.trim()) && parseFloat(getComputedStyle(node).fontSize) < 16)
    .map(node => `${getComputedStyle(node).fontSize} ${node.textContent.slice(0, 40)}`));
  assert.deepEqual(small, []);
  const path = await sheet.print();
  pages(path).forEach((_, at) => assert.ok(share(picture(path, at + 1, 100), value => value > 60 && value < 195) < 0.12, `page ${at + 1}`));
  await sheet.device.end();
});

test('the longest school orders are whole on the sheet; with more people than it holds, the part without room is named', async () => {
  for (const count of [6, 12]) {
    const plan = structuredClone(child);
    plan.id = 'p-long-school';
    plan.person.name = long('Wilhelmina Alexandrowna ', 59).trim();
    Object.assign(plan.school, { prescriber: long('Dr Wilhelmina Prescriber ', 60).trim(), mayInject: Array.from({ length: count }, (_, at) => long(`Staff ${at} with a very long name `, 58).trim()),
      staff: Array.from({ length: count }, (_, at) => long(`Trained ${at} with a very long name `, 58).trim()), storage: long('Second drawer on the left of the office ', 239).trim() });
    const sheet = await open({ child: true, plan });
    await sheet.choose('Sheet for the school');
    if (count === 12) { assert.match(await sheet.refused(), /There is no room for what the school fills in\./); assert.equal(await sheet.page.locator('.page').count(), 0); await sheet.device.end(); continue; }
    assert.match(await sheet.laid(), /whole$/);
    await whole(sheet, await sheet.print());
    const shown = bare((await sheet.shown()).join(' '));
    for (const text of [plan.person.name, plan.school.prescriber, plan.school.storage, ...plan.school.mayInject, ...plan.school.staff]) assert.ok(shown.includes(bare(text)), text);
    await sheet.device.end();
  }
});
