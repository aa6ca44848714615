// The desk: where an educator makes a person's settings into an agreed plan. One module is in charge here: it knows the page, asks
// the core through what it is handed, keeps each change, and hands the views what they draw. Fetched only when somebody opens it.
import * as events from '../events.js';
import { script, styled } from '../checked.js';
import { record } from '../situation.js';
import { originWords } from '../handover/origin.js';
import { union } from '../merge.js';
import { object, string } from '../text.js';
import { agree } from './agree.js';
import { agreed } from './agreed.js';
import { agreement } from './agreement.js';
import { edits } from './edit.js';
import { counts, editor, redrawAll } from './editor.js';
import { entry } from './entry.js';
import { fileOf, readFile } from './files.js';
import { save } from '../save.js';
import { stateWords } from './parts.js';
import { placeWords } from './place.js';
import { load } from './published.js';
import { reasonWords } from './refusals.js';
import { removal, shelf } from './shelf.js';
import { told } from './told.js';
import { readable } from '../kept.js';
import { empty, fromText, get, isBlank, revised, set, shaped, textAt, toText } from './tree.js';

const pages = { shelf, edit: editor, agree, plan: agreed, remove: removal, story: told };

export const desk = tools => {
  const { words, store, state: app } = tools;
  const ask = (call, members) => tools.core.ask(call, object(members));
  const today = () => tools.clock().text.slice(0, 10);

  let people = {}, revisions = {}, record_ = {}, loaded = false;
  const view = { page: 'shelf', id: null, kept: true, broken: 0, find: '', rows: [], shown: [], entry: null, before: null, cell: null, tableAt: 'day', dayWords: tools.day, published: null };

  const person = () => people[view.id];
  const revisionsOf = id => revisions[id] ?? [];
  const latest = id => revisionsOf(id).at(-1);
  const keep = id => store.putOnShelf(id, JSON.stringify(people[id])).catch(() => { view.kept = false; tools.draw(); });
  const small = matchMedia('(pointer: coarse) and (max-width: 47.99em)');
  // Room for a third column beside sheet and table.
  const roomy = matchMedia('(min-width: 78em)');
  for (const change of [small, roomy]) change.addEventListener('change', () => { redrawAll(); draw(); });

  const reload = async () => {
    try {
      const shelved = await store.shelf();
      const byPlan = {};
      for (const entryOf of await store.revisions()) (byPlan[entryOf.plan] ??= []).push(entryOf);
      const texts = await store.eventTexts();
      // One sheet that cannot be read hides none of the others, and is told.
      const read = Object.entries(shelved).map(([id, text]) => [id, readable(text)]).filter(([, kept]) => kept);
      // Taken over in one step: nobody draws half of it.
      people = Object.fromEntries([...Object.keys(byPlan).map(id => [id, { tree: null }]), ...read]);
      view.broken = Object.keys(shelved).length - read.length;
      [revisions, record_] = [byPlan, texts];
    } catch { view.kept = false; }
    loaded = true;
  };

  const review = text => {
    const answer = ask('reviewPlan', { plan: text });
    return answer.refused ? { refused: JSON.parse(answer.text).refused, findings: [], yardsticks: [], table: null, fingerprint: null, ageYears: null } : { refused: [], findings: answer.findings, yardsticks: answer.yardsticks, table: answer.table, fingerprint: answer.fingerprint, ageYears: answer.ageYears };
  };
  const standing = text => { const answer = ask('standing', { plan: text, today: string(today()) }); return answer.refused ? 'draft' : answer.standing; };
  const engineChanged = id => { const last = latest(id); return last && last.engine !== app.engine && people[id].looked !== app.engine && standing(last.text) !== 'withdrawn' ? last.engine : null; };

  // An incident is what the core finds in the record, opened by a tap or by what happened.
  const incidentOf = (id, rest = {}, call = 'incident') => tools.core.ask(call, object({ plan: latest(id)?.text ?? toText(people[id].tree), record: record(id, (record_[id] ?? []).map(text => ({ text }))), ...rest }));
  const lastIncident = id => {
    if (!record_[id]?.length) return null;
    const answer = incidentOf(id);
    if (!answer.refused) return answer.story && tools.day(answer.story.from.day);
    // A draft that cannot be read yet tells no story, but what was written down as an incident is one.
    const days = record_[id].map(text => JSON.parse(text)).filter(event => event.kind === 'incident' && event.state === 'opened').map(event => event.at.slice(0, 10)).sort();
    return days.length ? tools.day(days.at(-1)) : null;
  };
  const rowOf = id => {
    const { tree } = people[id];
    const last = latest(id);
    const doc = last ? JSON.parse(last.text) : null;
    const draft = tree ? review(toText(tree)) : null;
    const mark = tree ? textAt(tree, 'decimalMark', '.') || '.' : '.';
    return { id, name: doc?.person.name ?? textAt(tree, 'person/name', mark), revision: String(doc?.revision ?? textAt(tree, 'revision', mark)), standing: last ? standing(last.text) : 'draft', demo: id.startsWith('p-demo-'),
      reviewBy: doc ? tools.day(doc.agreement.reviewBy) : null, draft: tree ? textAt(tree, 'revision', mark) : null, missing: draft ? counts({ ...draft, tree, mark }, words) : null, engineChanged: engineChanged(id), incident: lastIncident(id),
      held: (people[id].held ?? []).map(text => ({ revision: String(JSON.parse(text).revision), line: weighed(text).refused[0]?.line ?? '' })) };
  };
  const filter = () => { const wanted = view.find.trim().toLocaleLowerCase(); view.shown = view.rows.filter(row => row.name.toLocaleLowerCase().includes(wanted)); };

  const rangesFor = unit => { const answer = ask('ranges', { unit: string(unit || 'mmol/L') }); return { ranges: answer.ranges, houseRules: answer.houseRules }; };
  let curveFor = '', curveRows = null, shownAt = '';
  // One unit injected now and nothing else: what of it still works, minute by minute.
  const curveOf = (text, tree) => {
    const hours = textAt(tree, 'rapid/actionHours', '.');
    if (hours === curveFor) return curveRows;
    const now = tools.clock().text;
    const one = events.injection('one-unit', now, { insulin: 'rapid', units: '1', device: isBlank(get(tree, 'syringe')) ? 'pen' : 'syringe' });
    const answer = ask('holds', { plan: text, record: record(view.id, [one]), now: string(now), curve: 'true' });
    if (!answer.refused) { curveFor = hours; curveRows = answer.curve; }
    return answer.refused ? null : curveRows;
  };

  const work = () => {
    Object.assign(view, { late: app.next?.overdue || app.holds?.incident ? app.next?.clock ?? null : null, phone: small.matches, roomy: roomy.matches });
    if (view.page === 'shelf') { view.person = null; filter(); return; }
    const { tree } = person();
    const last = latest(view.id);
    const asAgreed = last && (!tree || view.page === 'plan' || view.page === 'story');
    const source = asAgreed ? last.text : toText(tree);
    Object.assign(view, { tree: asAgreed ? fromText(source) : tree, engine: app.engine, inUse: app.plan?.doc.id === view.id, hasDraft: Boolean(tree) });
    view.mark = textAt(view.tree, 'decimalMark', '.') || '.';
    if (view.unit !== textAt(view.tree, 'glucoseUnit', '.') || !view.ranges) { view.unit = textAt(view.tree, 'glucoseUnit', '.'); Object.assign(view, rangesFor(view.unit)); }
    Object.assign(view, review(source), { insulin: textAt(view.tree, 'rapid/name', '.'), revision: textAt(view.tree, 'revision', '.') });
    view.standing = asAgreed ? standing(source) : 'draft';
    view.person = { name: textAt(view.tree, 'person/name', '.'), fingerprint: view.fingerprint, line: words('desk-line', { revision: view.revision, state: stateWords(words)[view.standing]() }) };
    if (view.page === 'edit') view.curve = view.table ? curveOf(source, view.tree) : null;
    if (view.page === 'agree') agreeing.work();
    if (view.page === 'story') { const answer = incidentOf(view.id); view.told = answer.refused ? null : answer; }
    if (view.page === 'plan') Object.assign(view, { incident: lastIncident(view.id), doc: JSON.parse(source), engineChanged: engineChanged(view.id), inIncident: Boolean(app.holds?.incident) });
  };

  // An old table beside a new number would be a lie: what cannot be drawn whole is not drawn.
  const draw = () => { try { work(); tools.draw(); } catch (problem) { tools.fail(problem); } };
  // Drawn first, then written: both belong to the same key, and only the eye is waiting.
  const changed = () => { person().seenChanges = false; agreeing.sync(); try { draw(); } finally { keep(view.id); } };

  // The story's page is fetched when the first one is told, with its own look and the rules for paper.
  const openTelling = async () => {
    const [{ account, outs }] = await Promise.all([script('desk/story/story.js', () => import('./story/story.js')), styled('desk/story/story.css')]);
    return { account, out: outs({ ask: (call, rest) => incidentOf(view.id, rest, call), told: () => view.told, words, today, said: text => { view.said = text; draw(); } }) };
  };

  const addressOf = (page, id) => (page === 'shelf' ? '#desk' : `#desk/${id}/${page}`);
  const show = async (page, id) => {
    // Fetched before anything changes: a page that is drawn meanwhile is still the one that was left.
    if (page === 'story') view.telling ??= await openTelling();
    shownAt = '';
    const other = id !== view.id;
    Object.assign(view, { page, id, entry: null, cell: null, asksWithdraw: false, before: null, focused: null, focusedPart: null, saved: false, brought: null, ...(other ? { published: null } : {}) });
    if (page === 'shelf') view.rows = Object.keys(people).map(rowOf).sort((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1));
    if (page === 'edit' && person().laid && !view.published) { try { view.published = { name: person().laid, table: await load(person().laid), memory: false }; } catch { view.published = null; } }
    draw();
  };
  const go = (page, id = view.id) => { history.pushState(null, '', addressOf(page, id)); return show(page, id); };

  const saveFile = () => {
    const { tree } = person();
    save(`stopgap-${view.id}-${today()}.json`, 'application/json', fileOf({ id: view.id, draft: tree ? toText(tree) : undefined, revisions: revisionsOf(view.id), events: record_[view.id] ?? [] }));
    view.saved = true;
  };
  // Written whole and only then held here, with nothing between: no page ever finds half a person.
  const keepPerson = async (id, next, { texts = [], added = [] } = {}) => {
    try { await store.keepPerson(id, { person: JSON.stringify(next), revisions: texts, engine: app.engine, entries: added.map(text => ({ id: JSON.parse(text).id, text })) }); } catch { view.kept = false; }
    people[id] = next;
    if (texts.length) (revisions[id] ??= []).push(...texts.map(text => ({ plan: id, text, engine: app.engine })));
    if (added.length) (record_[id] ??= []).push(...added);
  };
  const forget = () => { Object.assign(view, { said: null, brought: null, offered: null }); };

  // What an agreed plan brought in must answer before it is taken: what cannot be agreed, and what nobody confirmed. A plan that was
  // withdrawn or replaced gives no dose and is taken as it is.
  const weighed = text => {
    if (JSON.parse(text).agreement?.status !== 'agreed') return { refused: [], open: [] };
    const { findings, mark } = { ...review(text), mark: JSON.parse(text).decimalMark };
    const told = entry => ({ place: placeWords(fromText(text), entry.path, words, mark), line: words(`finding-${entry.id}`, entry.slots) });
    return { refused: findings.filter(entry => entry.level === 'refuse').map(told), open: findings.filter(entry => entry.level === 'confirm' && !entry.settled).map(told) };
  };
  // Such a plan does not replace the one in use. It is kept beside it as it came, byte for byte; whoever is not on the shelf has
  // nothing it could lie beside, so there the file itself is all that is kept.
  const mostHeld = 3;
  const holdBack = async ({ id, plan }, refused) => {
    const known = Boolean(people[id]);
    if (known) await keepPerson(id, { ...people[id], held: [...(people[id].held ?? []).filter(text => text !== plan), plan].slice(-mostHeld) });
    await show('shelf', null);
    Object.assign(view, { brought: [words(known ? 'bring-held' : 'bring-not-taken'), ...refused.map(({ place, line }) => `${place}: ${line}`)] });
    draw();
  };

  const agreeing = agreement({ view, person, latest: () => latest(view.id), ask, draw: () => draw(), keep: () => keep(view.id), review, words, keepPerson, go });
  const deeds = {
    ...edits({ view, person, changed, draw, words }),
    ...agreeing.acts,
    page: name => { forget(); return go(name); },
    find(text) { view.find = text; draw(); },
    cell(at) { view.cell = view.cell && view.cell.row === at.row && view.cell.column === at.column ? null : at; draw(); },
    tableAt(key) { Object.assign(view, { tableAt: key, cell: null }); draw(); },
    open(id) { forget(); return go(latest(id) ? 'plan' : 'edit', id); },
    remove(id) { forget(); return go('remove', id); },
    story(id) { forget(); return go('story', id); },
    fresh() {
      forget();
      const id = `p-${tools.fresh().replaceAll('-', '').slice(0, 12)}`;
      people[id] = { tree: empty(id, today()) };
      keep(id);
      return go('edit', id);
    },
    async revise() {
      forget();
      Object.assign(person(), { tree: revised(latest(view.id).text, today()), retype: {}, agreedOn: '', seenChanges: false, ageFor: null });
      keep(view.id);
      return go('edit');
    },
    save() { saveFile(); view.said = words('file-made'); draw(); },
    async removeNow() {
      const { id } = view;
      const name = view.person.name || words('desk-no-name');
      try { await store.removePerson(id, view.inUse); } catch { view.kept = false; draw(); return; }
      delete people[id];
      delete revisions[id];
      if (!view.inUse) delete record_[id];
      view.said = words('removal-done', { name });
      await go('shelf', null);
    },
    useHere() { tools.offerPlan(latest(view.id).text); },
    looked() { person().looked = app.engine; keep(view.id); draw(); },
    askWithdraw(on) { view.asksWithdraw = on; draw(); },
    async withdraw() {
      if (!view.asksWithdraw) return;
      await keepPerson(view.id, person(), { texts: [toText(set(fromText(latest(view.id).text), 'agreement/status', 'withdrawn'))] });
      Object.assign(view, { said: words('withdraw-done'), asksWithdraw: false });
      draw();
    },
    async takeOffered() { await bringNow(view.offered.file, { asked: true }); },
    leaveOffered() { forget(); draw(); },
    async bring(file, { asked = false } = {}) {
      forget();
      draw();   // what was said of the file before this one must not be read as said of this one
      const refuse = refused => { view.brought = refused.map(entryOf => `${entryOf.path} ${reasonWords(entryOf, words, { mark: '.' })}`); draw(); };
      const found = await readFile(file, tools.core.ask, words, tools.clock().text);
      if (found.refused) { refuse(found.refused); return; }
      const { id } = found;
      // The record that came and the one that lies here must be possible together, before anything is kept.
      const here = record_[id] ?? [];
      const { added, differ } = union(here, found.events);
      const both = added.length ? ask('holds', { plan: found.plan, record: record(id, [...here, ...added].map(text => ({ text }))), now: string(tools.clock().text) }) : {};
      if (both.refused) { refuse(JSON.parse(both.text).refused); return; }
      const draftText = found.isDraft ? found.plan : found.draft;
      // A draft on the shelf is somebody's work: a file never lies down over it.
      if (draftText && people[id]?.tree) { view.brought = [words('bring-draft-there')]; draw(); return; }
      const { refused, open } = weighed(found.plan);
      if (refused.length) { await holdBack(found, refused); return; }
      if (open.length && !asked) { view.offered = { file, open }; draw(); return; }
      await keepPerson(id, { tree: null, ...people[id], ...(draftText ? { tree: shaped(fromText(draftText), id, today()) } : {}) },
        { texts: !found.isDraft && latest(id)?.text !== found.plan ? [found.plan] : [], added });
      // The bedside may be using this very plan: what came holds there at once.
      tools.recordCame(id, added);
      view.said = `${words('bring-done')} ${differ.length ? words('bring-differ', { count: String(differ.length) }) : ''} ${originWords(found.signed, words, tools.day)}`;
      await show('shelf', null);
    },
  };
  // What takes its time is done one after the other, and a tap belongs to the page it was made on: while a file is read or a revision
  // written, no other page finds half of it, and nothing is done twice. A key in the editor never waits.
  const slow = ['page', 'takeOffered', 'open', 'remove', 'story', 'fresh', 'revise', 'removeNow', 'withdraw', 'agree', 'fix', 'bring'];
  const bringNow = deeds.bring.bind(deeds);   // for a deed that waits its turn already
  for (const name of slow) {
    const deed = deeds[name].bind(deeds);
    deeds[name] = (...given) => tools.ofThisPage(() => deed(...given));
  }
  const act = { ...deeds, bring: box => { const [file] = box.files; box.value = ''; return file && deeds.bring(file); } };

  return {
    // Which page an address names; one that names nobody here is the shelf.
    async enter(address) {
      if (!loaded || view.page === 'shelf') await reload();
      const [, id, page] = address.replace(/^#/, '').split('/');
      const known = id && people[id];
      const wanted = known && pages[page] && !((page === 'edit' || page === 'agree') && !people[id].tree) && !(page === 'plan' && !latest(id)) ? page : 'shelf';
      await show(wanted, wanted === 'shelf' ? null : id);
    },
    // Another page takes the place of the editor: what stood there is drawn anew afterwards.
    view: () => {
      const place = `${view.page} ${view.id} ${Boolean(view.entry)}`;
      if (place !== shownAt) redrawAll();
      shownAt = place;
      // What is printed is the story alone: its rules for paper hang on the name of the screen.
      if (view.page === 'story') document.documentElement.dataset.screen = 'story';
      return view.entry ? entry(view, words, act) : pages[view.page](view, words, act);
    },
    place: () => `${view.page} ${view.id} ${view.entry ? 'entry' : ''}`,
  };
};
