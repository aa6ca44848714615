// Handing a plan over: out at #share (the plan in use) or #share/ID (the latest revision of somebody on the shelf), in at #bring. One
// module is in charge here; it is fetched when somebody opens one of the two, or when a plan came in that has to be weighed.
import { dayOf } from '../times.js';
import { exporting } from './export.js';
import { asidePage, reviewed, told } from './findings.js';
import { offered } from './offered.js';
import { receive } from './receive.js';
import { fileReader, reader, weighing } from './received.js';
import { visible } from '../views/visible.js';

export const handover = ({ words, store, core, state, clock, day, draw, copyMade, bring, bringFile, lines }) => {
  const { ask } = core;
  const out = exporting({ words, draw, ask, store, state, day, clock, copyMade });
  const into = receive({ words, draw, bring, bringFile });
  const weigh = weighing({ ask, words, day });
  let page = 'bring';

  return {
    read: reader(ask),
    readFile: fileReader(ask, words),
    weigh: plan => weigh(plan, state.plan?.text ?? null, { incident: Boolean(state.holds?.incident), today: dayOf(clock().text) }),
    // What the review finds in the plan in use, and the page of those that were not taken.
    told: (plan, findings) => told(plan, findings, words),
    aside: texts => texts.map(text => { const { person, revision, title } = JSON.parse(text); return { name: visible(person.name), line: words('plan-revision', { revision: String(revision), title }), ...reviewed(ask, text, words) }; }),
    asidePage,
    offered: (candidate, send) => offered(candidate, words, send, { day, lines: lines(candidate.doc) }),
    async enter(address) {
      const [name, id] = address.replace(/^#/, '').split('/');
      into.leave();
      page = name;
      if (page !== 'share') return;
      await out.show(id ? (await store.revisions().catch(() => [])).filter(entry => entry.plan === id).at(-1)?.text ?? null : state.plan?.text ?? null);
    },
    leave: () => into.leave(),
    view: () => (page === 'share' ? out.page() : into.page()),
    place: () => (page === 'share' ? out.place() : into.place()),
  };
};
