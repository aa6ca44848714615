// Every screen of a night, by day and by night, at 320 px and with the text twice as large: nothing runs off the side, every
// target can be hit with a thumb, and the checks of axe find nothing (contrast 7:1 included).
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { axeFaults, overTheFoot } from './axe.mjs';
import { answer, close, withDemo as demo } from './phone.mjs';

after(close);
const withDemo = options => demo({ ...options, pictured: true });

const inspect = async (hand, name, { contrast = true } = {}) => {
  await hand.page.waitForFunction(wanted => document.documentElement.dataset.screen === wanted.split(' ')[0], name);
  const found = await hand.page.evaluate(() => {
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    const small = [...document.querySelectorAll('button, a.press, input')].filter(node => node.checkVisibility()).map(node => ({ name: node.textContent.trim().slice(0, 30), box: node.getBoundingClientRect(), press: node.matches('.press') }))
      .filter(({ box, press }) => box.height < (press ? 55.5 : 43.5) || box.width < 43.5).map(({ name: said, box }) => `${said} ${Math.round(box.width)}x${Math.round(box.height)}`);
    const cut = [...document.querySelectorAll('.sheet *')].filter(node => !node.closest('svg') && node.checkVisibility() && node.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !node.closest('.hidden')).map(node => node.textContent.trim().slice(0, 40));
    return { wide, small, cut };
  });
  assert.equal(found.wide, 0, `${name}: runs ${found.wide} px off the side`);
  assert.deepEqual(found.small, [], `${name}: too small to hit`);
  assert.deepEqual(found.cut, [], `${name}: cut off at the side`);
  if (!contrast) return;
  assert.deepEqual(await axeFaults(hand.page, overTheFoot), [], name);
};

const night = async (hand, label, options) => {
  const look = async (screen, name) => { await inspect(hand, screen, options); await hand.shot(`${label}-${name ?? screen}`); };
  await look('home');
  await hand.tap('Start');
  await look('signs');
  await hand.tap('None of these');
  await look('glucose');
  await hand.keys('16.0');
  await look('glucose', 'glucose-typed');
  await hand.tap('Finger: 16.0 mmol/L');
  await look('ketones');
  await hand.keys('0.8');
  await hand.tap('Yes, ketones are 0.8');
  await look('seen');
  await hand.tap('None of these');
  await look('given');
  await hand.tap('A correction by the pump');
  await look('entryUnits');
  await hand.tap('Back');
  await hand.tap('Nothing');
  await look('dosePage');
  await hand.tap('Type the units you see');
  await look('typed');
  await hand.keys('4');
  await hand.tap('I see 4 units');
  await look('injectNow');
  await hand.tap('I have injected 4 units');
  await look('stepsPage');
  await hand.tap('The set is changed');
  await hand.tap('The reservoir is new');
  await hand.tap('See insulin at work');
  await look('picture');
  await hand.tap('Back');
  await hand.tap('Look at the end of the tubing');
  await look('tubing');
  await hand.tap('At the body');
  await look('tubingNot');
  await hand.tap('Look at its end again');
  await hand.tap('Over a sink');
  await hand.tap('The pump gave it');
  await look('stepsPage', 'join-tubing');
  await hand.tap('It is joined, and dry');
  await hand.tap('Automation is off');
  await hand.tap('I drink');
  await hand.tap('The alarm is set');
  await look('stepsPage', 'steps-over');
  await hand.tap('All steps are seen');
  await look('waiting');
  await hand.tap('What happened before');
  await look('before');
  await hand.tap('Back');
  await hand.device.later(85);
  await look('waiting', 'late');
};

test('at night, phone size', async () => { const hand = await withDemo({ flowing: true }); await night(hand, 'night'); await hand.device.end(); });
test('by day, phone size', async () => { const hand = await withDemo({ at: '2026-11-25T12:05:00+01:00', flowing: true }); await night(hand, 'day'); await hand.device.end(); });
test('320 px wide', async () => { const hand = await withDemo({ width: 320, height: 640 }); await night(hand, 'narrow', { contrast: false }); await hand.device.end(); });
test('with the colours of the system', async () => { const hand = await withDemo({ forced: true, flowing: true }); await night(hand, 'forced'); await hand.device.end(); });
test('text twice as large', async () => {
  const hand = await withDemo({ prepare: () => addEventListener('DOMContentLoaded', () => { document.documentElement.style.fontSize = '200%'; }) });
  await night(hand, 'large', { contrast: false });
  await hand.device.end();
});

test('the last row of keys stays in reach of a thumb: the main action needs no scrolling at phone size', async () => {
  const hand = await withDemo();
  await answer(hand);
  await hand.heading('Inject now');
  const { bottom, foot } = await hand.page.evaluate(() => ({ bottom: document.querySelector('.press.now').getBoundingClientRect().bottom, foot: document.querySelector('.foot').getBoundingClientRect().top }));
  assert.ok(bottom <= foot + 1, `the action ends at ${bottom}, the foot begins at ${foot}`);
  await hand.device.end();
});

test('the screens before and beside an incident, and the help page', async () => {
  const hand = await withDemo({ flowing: true });
  for (const [button, screen] of [['More', 'more'], ['Write something down', 'change']]) { await hand.tap(button); await inspect(hand, screen); await hand.shot(`night-${screen}`); await hand.tap('Back'); }
  await hand.tap('Start');
  await hand.tick('Confused');
  await hand.tap('Yes, this is true now');
  await inspect(hand, 'help');
  for (const path of ['danger.html', 'low.html']) {
    await hand.page.goto(`${hand.device.address}${path}`);
    assert.deepEqual(await axeFaults(hand.page, overTheFoot), [], path);
    for (const width of [320, 390]) {
      await hand.page.setViewportSize({ width, height: 700 });
      assert.ok(await hand.page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth), `${path} runs off the side at ${width} px`);
    }
  }
  await hand.device.end();
});
