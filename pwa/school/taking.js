// A student's copy comes in as any plan does, through the same checks. Before it is active somebody here has seen the signed paper, and
// the school says what is its own to say.
import { html, nothing } from '../vendor/lit-html.js';
import { fileReader, reader, weighing } from '../handover/received.js';
import { offered } from '../handover/offered.js';
import { receive } from '../handover/receive.js';
import { object, string } from '../text.js';
import { record } from '../situation.js';
import { main, plain, plainSheet } from '../views/parts.js';
import { dayTyped, replacedBy } from './students.js';

const clean = (text, longest) => [...text.normalize('NFC').replace(/\p{C}/gu, '').trim().replace(/\s+/gu, ' ')].slice(0, longest).join('');

export const taking = ({ words, core, state, clock, day, planOf, draw, send, say, fresh }) => {
  const ways = receive({ words, draw, bring: text => send('schoolBring', text), bringFile: file => send('schoolBring', file),
    away: () => html`<div class="cells answers">${plain(words('demo-child'), () => send('schoolDemo'), words('demo-child-sub'))}${plain(words('back'), () => send('schoolPage', 'choose'))}</div>` });
  const weigh = weighing({ ask: core.ask, words, day });
  const today = () => clock().text.slice(0, 10);
  const refuse = refused => { state.candidate = { isFile: true, refused }; };
  let offer = null;

  // Only orders for a school, and only while they last.
  const consider = (found, students) => {
    if (found.refused) { refuse(found.refused); return; }
    const id = JSON.parse(found.plan)?.id;
    const judged = core.ask('holds', object({ plan: found.plan, record: record(typeof id === 'string' ? id : '', []), now: string(clock().text) }));
    if (judged.refused) { refuse(JSON.parse(judged.text).refused); return; }
    const plan = planOf(found.plan);
    if (!plan.doc.school) { refuse([{ path: '/plan/school', reason: 'missing', accepted: words('school-orders-wanted') }]); return; }
    if (plan.doc.school.ordersExpire < today()) { refuse([{ path: '/plan/school/ordersExpire', reason: 'outOfRange', got: plan.doc.school.ordersExpire, accepted: words('school-orders-from', { day: today() }) }]); return; }
    const present = replacedBy(students, plan.doc);
    // Only an invented person's plan that takes no real student's place is not weighed.
    const light = plan.demo && (!present || planOf(present.copy.plan).demo);
    offer = { ...plan, signed: found.signed, record: found.events.length > 0, present, typedDay: '', problems: [],
      weighed: light ? null : weigh(found.plan, present?.copy.plan ?? null, { incident: false, today: today() }) };
    state.school.page = light ? 'sign' : 'offered';
  };

  const agreed = () => !offer.weighed.refused.length && !offer.weighed.isDraft && offer.typedDay.replace(/[^0-9]/g, '') === offer.doc.agreement.on.replaceAll('-', '');
  const wanted = { typedDay: text => send('schoolTyped', text), takePlan: () => send('schoolAccept'), dropCandidate: () => send('schoolPage', 'take') };

  const sign = () => {
    const { doc, present, problems } = offer;
    const sheet = core.ask('schoolSheet', object({ plan: offer.text, paper: string('a4') }));
    return plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('school-sign-title')}</h1>
  ${offer.demo ? html`<p class="warnbox">${words('demo-warning')}</p>` : nothing}
  <p class="lede"><b>${doc.person.name}</b>, ${words('school-born', { day: day(doc.person.born) })}</p>
  ${present ? html`<p class="warnbox">${words('school-replaces', { revision: String(present.doc.revision) })}</p>` : nothing}
  ${offer.record ? html`<p class="note">${words('school-no-record')}</p>` : nothing}
  <h2 class="part">${words('school-orders-title')}</h2>
  <ul class="lines">${(sheet.refused ? [] : sheet.orders).map(line => html`<li>${say(line)}</li>`)}</ul>
  <h2 class="part">${words('school-fields-title')}</h2>
  ${state.school.kept ? nothing : html`<p class="warnbox" role="alert">${words('nothing-kept')}</p>`}
  ${problems.length ? html`<div class="warnbox" role="alert">${problems.map(problem => html`<p>${problem}</p>`)}</div>` : nothing}
  <label class="typed-day"><span>${words('school-seen-by')}<span class="sub">${words('school-seen-by-sub')}</span></span><input id="seen-by" maxlength="60" autocomplete="off"></label>
  <label class="typed-day"><span>${words('school-seen-on')}<span class="sub">${words('school-day-sub')}</span></span><input id="seen-on" inputmode="numeric" maxlength="10" autocomplete="off"></label>
  <label class="typed-day"><span>${words('school-year-ends')}<span class="sub">${words('school-day-sub')}</span></span><input id="year-ends" inputmode="numeric" maxlength="10" autocomplete="off"></label>
  <label class="typed-day"><span>${words('school-supplies')}<span class="sub">${words('school-supplies-sub')}</span></span><input id="supplies" maxlength="120" autocomplete="off"></label>
  <div class="end">${main(words('school-activate'), () => send('schoolActivate', Object.fromEntries(['seen-by', 'seen-on', 'year-ends', 'supplies'].map(id => [id, document.getElementById(id).value]))))}
    ${plain(words('leave-plan'), () => send('schoolPage', 'take'))}</div>`);
  };

  return {
    ways, sign,
    offered: () => offered(offer, words, (name, detail) => wanted[name](detail), { day, lines: offer.lines, take: words('school-take-on') }),
    async bring(came, students) { consider(await (typeof came === 'string' ? reader(core.ask)(came) : fileReader(core.ask, words)(came)), students); },
    typed(text) { offer.typedDay = text; },
    accept() { if (agreed()) state.school.page = 'sign'; },
    // {id, copies, yearEnds, supplies} once everything is said; until then null, with what is missing on the page.
    signed(fields) {
      const seenBy = clean(fields['seen-by'], 60), supplies = clean(fields.supplies, 120);
      const seenOn = dayTyped(fields['seen-on']), yearEnds = dayTyped(fields['year-ends']);
      offer.problems = [...(seenBy ? [] : [words('school-need-by')]), ...(seenOn && seenOn <= today() ? [] : [words('school-need-on')]),
        ...(yearEnds && yearEnds >= today() ? [] : [words('school-need-year')]), ...(supplies ? [] : [words('school-need-supplies')])];
      if (offer.problems.length) return null;
      const copy = { plan: offer.text, seenBy, seenOn, taken: clock().text };
      return { id: offer.present?.id ?? fresh(), copies: [...(offer.present?.copies ?? []), copy], yearEnds, supplies };
    },
  };
};
