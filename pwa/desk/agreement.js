// What stands between a draft and its agreement, worked out afresh with each change: what the core refuses, what is not retyped,
// what changed and was not looked at, which house rules are not agreed, who and when. Only when nothing is left is it agreed.
import { trimmed } from '../text.js';
import { kindOf } from './ketones.js';
import { inPlan, placeWords } from './place.js';
import { reasonWords } from './refusals.js';
import { fromText, get, set, textAt, toText } from './tree.js';

// The field a finding is about. A finding about several things has none: there a reason is enough. What its confirmation is known by
// is the core's own `value`.
const valueAt = (tree, pointer, mark) => {
  const path = inPlan(pointer);
  const node = get(tree, path);
  if (node && typeof node === 'object' && typeof node.n !== 'string' && !Array.isArray(node)) { const kind = kindOf(node); return kind && kind !== 'none' && typeof node[kind]?.n === 'string' ? { text: textAt(tree, `${path}/${kind}`, mark), isNumber: true, at: `${path}/${kind}` } : null; }
  const text = textAt(tree, path, mark);
  return text ? { text, isNumber: typeof node === 'object', at: path } : null;
};
// What the act of agreeing itself writes has its own part of the page.
const act = /^agreement\/(status|on|houseRules|retyped)/;
const own = /^\/plan\/agreement\/(by|role|on|houseRules)/;

export const agreement = ({ view, person, latest, ask, draw, keep, review, words, keepPerson, go }) => {
  // As it would stand, still a draft: who agrees is the last thing known, and what was found must not wait for it.
  const datedTree = () => set(person().tree, 'agreement/on', person().agreedOn || person().tree.agreement.on);
  const agreedTree = () => set(datedTree(), 'agreement/status', 'agreed');
  const olderTree = () => { const last = latest(); return last ? fromText(last.text) : {}; };
  const retyped = findings => {
    const mark = textAt(person().tree, 'decimalMark', '.') || '.';
    const plain = text => trimmed(text.replaceAll(mark, '.'));
    return findings.filter(entry => entry.level === 'confirm').map(entry => {
      // Each finding is settled by itself: what was typed again for one silences no other of the same field.
      const key = `${entry.id}${entry.path}`;
      const { typed = '', why = '' } = person().retype?.[key] ?? {};
      const field = valueAt(person().tree, entry.path, mark);
      const matches = !field || (field.isNumber ? plain(typed) === plain(field.text) : typed.trim() === field.text);
      const earlier = (get(olderTree(), 'agreement/retyped') ?? []).find(one => one.path === entry.path && (!one.finding || one.finding === entry.id));
      return { ...entry, key, before: earlier?.reason, isNamed: Boolean(earlier?.finding), place: placeWords(person().tree, entry.path, words, mark), field,
        isNumber: field?.isNumber, typed, why, matches, settled: matches && Boolean(why.trim()) };
    });
  };

  // The reasons stay in the plan: each settled finding is written there, and one whose number changed since is not.
  const sync = () => {
    if (!Object.keys(person().retype ?? {}).length) return;
    const settled = retyped(review(toText(person().tree)).findings).filter(entry => entry.settled);
    person().tree = set(person().tree, 'agreement/retyped', settled.map(({ path, why, id, value }) => ({ path, reason: why.trim(), finding: id, ...(value ? { value } : {}) })));
  };

  const work = () => {
    const last = latest();
    const older = last && JSON.parse(last.text).agreement.status !== 'draft' ? last.text : null;
    const judged = review(toText(datedTree()));
    // The age as it is said: another birth date, or another age on the day of agreement, is confirmed anew.
    const ageFor = judged.ageYears === null ? null : `${textAt(person().tree, 'person/born', '.')} ${judged.ageYears}`;
    const compared = older ? ask('comparePlans', { before: older, after: toText(datedTree()) }) : null;
    const refusedNow = [...judged.refused, ...judged.findings.filter(entry => entry.level === 'refuse')];
    Object.assign(view, {
      findings: judged.findings, table: judged.table, older, olderTree: older ? fromText(older) : null, olderRevision: older ? textAt(fromText(older), 'revision', '.') : null,
      blocked: refusedNow.filter(entry => !own.test(entry.path)), toRetype: retyped(judged.findings),
      changes: !compared || compared.refused ? null : compared.changes.filter(change => !act.test(inPlan(change.path))), seenChanges: Boolean(person().seenChanges), agreedOn: person().agreedOn ?? '',
      ageYears: judged.ageYears, ageFor, ageSeen: ageFor !== null && person().ageFor === ageFor,
    });
    const rules = view.houseRules.filter(name => !(get(person().tree, 'agreement/houseRules') ?? []).includes(name));
    const named = ['by', 'role'].every(key => textAt(person().tree, `agreement/${key}`, '.').trim());
    const own_ = refusedNow.filter(entry => own.test(entry.path) && !/houseRules/.test(entry.path));
    view.open = [
      ...(view.blocked.length ? [words('open-refused', { count: String(view.blocked.length) })] : []),
      ...(view.toRetype.some(entry => !entry.settled) ? [words('open-retype', { count: String(view.toRetype.filter(entry => !entry.settled).length) })] : []),
      ...(older && !view.seenChanges ? [words('open-changes')] : []),
      ...(rules.length ? [words('open-house', { count: String(rules.length) })] : []),
      ...(view.ageSeen ? [] : [words('open-age')]),
      ...(named ? [] : [words('open-who')]),
      ...(view.agreedOn && !own_.length ? [] : [words('open-on')]),
    ];
    // The last word is the core's, on the very text that would be agreed.
    if (!view.open.length) view.open = review(toText(agreedTree())).refused.map(entry => `${placeWords(person().tree, entry.path, words, view.mark)}: ${reasonWords(entry, words, view)}`);
  };

  return {
    work, sync,
    acts: {
      retype(entry, key, box) {
        const mark = textAt(person().tree, 'decimalMark', '.') || '.';
        const text = key === 'typed' && entry.isNumber ? box.value.replaceAll(/[.,]/g, mark) : box.value;
        if (box.value !== text) box.value = text;
        person().retype = { ...person().retype, [entry.key]: { ...person().retype?.[entry.key], [key]: text } };
        sync();
        keep();
        draw();
      },
      ageSeen() { person().ageFor = view.ageSeen ? null : view.ageFor; keep(); draw(); },
      seenChanges() { person().seenChanges = !person().seenChanges; keep(); draw(); },
      agreedOn(box) {
        person().agreedOn = /^[0-9]{8}$/.test(box.value) ? `${box.value.slice(0, 4)}-${box.value.slice(4, 6)}-${box.value.slice(6)}` : box.value;
        if (box.value !== person().agreedOn) box.value = person().agreedOn;
        keep();
        draw();
      },
      async fix(pointer) { await go('edit'); this.goTo(pointer); },
      async agree() {
        work();
        if (view.open.length) { draw(); return; }
        const text = toText(agreedTree());
        const last = latest();
        const replaced = last && JSON.parse(last.text).agreement.status === 'agreed' ? [toText(set(fromText(last.text), 'agreement/status', 'superseded'))] : [];
        await keepPerson(view.id, { ...person(), tree: null, retype: {}, agreedOn: '', seenChanges: false, ageFor: null, laid: null, looked: undefined }, { texts: [...replaced, text] });
        view.said = words('agree-done');
        await go('plan');
      },
    },
  };
};
