// Paper: a page of its own, so that nothing of the bedside is fetched or kept running to print a card. Like app.js it holds the
// threads of its page: it reads the clock, asks the core, the store and the words, and hands the drawings what they draw.
//   paper.html            the plan in use            paper.html#ID   the latest revision of somebody on the shelf
//   paper.html#school     the sheet of a school's student, named once by the page before
import { render } from './vendor/lit-html.js';
import * as core from './core.js';
import { textOf } from './checked.js';
import * as store from './store.js';
import { reader } from './words.js';
import { list, object, string } from './text.js';
import { stamp } from './times.js';
import { fingerprintOf } from './copies.js';
import { groups } from './desk/parts.js';
import { codeRows } from './handover/code.js';
import { faults } from './paper/fits.js';
import { missing } from './paper/glyphs.js';
import { kinds, page } from './paper/page.js';
import { stripWord } from './paper/parts.js';

const root = document.getElementById('paper');
const languages = ['es', 'fr', 'de', 'it', 'pt', 'nl', 'pl', 'tr', 'ar', 'zh-Hans', 'ja', 'hi'];
const view = { kind: 'card', paper: 'a4', wanted: [], offered: [], lacking: [], refused: null, pages: null };
let words, plan;

const day = text => words('day', { day: text.slice(8, 10).replace(/^0/, ''), month: `m${text.slice(5, 7)}`, year: text.slice(0, 4) });
// A sentence of the core in words; a day in it is written out, and a telephone number is never split over two lines.
const inSlot = { day, strip: word => stripWord(word, words), phone: text => text.replaceAll(' ', '\u00a0') };
const sayIn = speak => line => speak(line.key, Object.fromEntries(Object.entries(line.slots).map(([slot, text]) => [slot, inSlot[slot]?.(text) ?? text])));

const planText = async () => {
  const id = location.hash.slice(1);
  if (!id) return store.currentPlan();
  // A student's sheet is told once whose it is: whoever comes back to this address finds nobody.
  if (id === 'school') {
    const whose = sessionStorage.getItem('school-sheet');
    sessionStorage.removeItem('school-sheet');
    const student = whose && (await store.students()).find(entry => entry.id === whose);
    return student ? JSON.parse(student.text).copies.at(-1).plan : null;
  }
  return (await store.revisions()).filter(entry => entry.plan === id).at(-1)?.text ?? null;
};

// A language whose letters this device does not have would be printed as boxes: it is not offered.
const openLanguages = async () => {
  for (const code of languages) {
    const source = await textOf(`i18n/stranger/${code}.ftl`);
    const speak = reader(code, source);
    const entry = { code, speak, name: speak('language'), rtl: speak('direction') === 'rtl' };
    (missing(source, code) ? view.lacking : view.offered).push(entry);
  }
  view.lackingNames = view.lacking.map(entry => entry.code).join(', ');
};

const refusal = answer => {
  const [first] = JSON.parse(answer.text).refused;
  if (first.path === '/plan/school') return words('paper-refused-school');
  if (first.path === '/plan/agreement/status') return words('paper-refused-state', { state: standingWords(first.got) });
  return words('paper-refused-path', { path: first.path || '/' });
};
const standingWords = standing => ({ draft: () => words('standing-draft'), inGrace: () => words('standing-in-grace'), expired: () => words('standing-expired'), superseded: () => words('standing-superseded'), withdrawn: () => words('standing-withdrawn') }[standing]());

const asked = () => {
  const today = stamp(new Date()).slice(0, 10);
  const { standing } = core.ask('standing', object({ plan, today: string(today) }));
  // An expired plan is as little in force as a draft: what is printed now would be used later still.
  if (standing === 'expired') return { refused: words('paper-refused-state', { state: standingWords(standing) }) };
  // Neither are orders that are over: a signature under them would be taken for this year's.
  const { school } = JSON.parse(plan);
  if (kinds[view.kind].call === 'schoolSheet' && school?.ordersExpire < today) return { refused: words('paper-refused-orders', { day: day(school.ordersExpire) }) };
  const members = { plan, paper: string(view.paper) };
  const answer = kinds[view.kind].call === 'schoolSheet' ? core.ask('schoolSheet', object(members)) : core.ask('card', object({ ...members, languages: list(view.wanted.map(string)) }));
  if (answer.refused) return { refused: refusal(answer) };
  const packed = core.ask('packPlan', object({ plan }));
  if (packed.refused && kinds[view.kind].code) return { refused: words('paper-refused-code') };
  return { answer, code: packed.refused ? null : codeRows(packed.text) };
};

const draw = () => render(page(view, words, act), root);

// What does not fit is not shrunk and not hidden. Only rows of the small table that say nothing new may be left out first.
const lay = () => {
  if (!plan) { Object.assign(view, { refused: [words('paper-refused-none')], pages: null }); draw(); return; }
  const { refused, answer, code } = asked();
  Object.assign(view, { refused: refused ? [refused] : null, pages: null });
  for (const without of refused ? [] : ['like', 'spare']) {
    const material = { answer, code, words, day, say: sayIn(words), paper: view.paper, without, print: groups(answer.front.fingerprint),
      strangers: view.offered.filter(entry => view.wanted.includes(entry.code)).map(entry => ({ ...entry, say: sayIn(entry.speak) })) };
    Object.assign(view, { pages: kinds[view.kind].pages(material), refused: null });
    draw();
    const found = faults(root, words);
    if (!found.length) break;
    view.refused = found;
  }
  if (view.refused) view.pages = null;
  draw();
};

// What cannot be laid out whole is not printed at all.
const laid = () => {
  try { lay(); } catch (problem) {
    console.error(problem);
    Object.assign(view, { pages: null, refused: [words('paper-refused-trouble', { what: problem.message })] });
    draw();
  }
  root.dataset.laid = `${view.kind} ${view.paper} ${view.wanted.join(' ')} ${view.refused ? 'refused' : 'whole'}`;
};

const act = {
  kind(kind) { view.kind = kind; laid(); },
  paper(paper) { view.paper = paper; laid(); },
  language(code) { view.wanted = languages.filter(one => (one === code) !== view.wanted.includes(one)); laid(); },
  print() { noted(); print(); },
};

// Only the card is the copy that lasts. Not every browser says when the paper came out, so the tap counts as well.
const noted = () => {
  if (!view.pages || !['card', 'bare'].includes(view.kind)) return;
  store.copyMade(fingerprintOf(core.ask, plan), 'card', stamp(new Date())).catch(problem => console.warn('The print could not be noted.', problem.message));
};
addEventListener('afterprint', noted);

const start = async () => {
  const [source, more] = await Promise.all([textOf('i18n/en.ftl'), textOf('i18n/en-desk.ftl'), core.load(), store.open(), document.fonts.load('9pt "Hyperlegible Next"'), document.fonts.load('700 9pt "Hyperlegible Next"', 'ąęğışż')]);
  words = reader('en-GB', source);
  words.add(more);
  plan = await planText();
  view.only = location.hash === '#school';
  if (view.only) view.kind = 'school';
  view.back = view.only ? './#school' : location.hash ? `./#desk/${location.hash.slice(1)}/plan` : './';
  view.hasSchool = Boolean(plan && JSON.parse(plan).school);
  await openLanguages();
  // The languages of the plan's journeys are ticked already.
  const travel = plan ? JSON.parse(plan).travel?.languages ?? [] : [];
  view.wanted = view.offered.map(entry => entry.code).filter(code => travel.includes(code));
  await document.fonts.ready;
  root.replaceChildren();
  laid();
};

// Another plan in the address is another page.
addEventListener('hashchange', () => location.reload());
start().catch(problem => { console.error(problem); location.href = problem instanceof core.Damaged || !words ? 'danger.html#damaged' : 'danger.html'; });
