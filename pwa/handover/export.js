// The ways out: one code, a file, and the phone's own share sheet where it has one. Each is signed by the key of this device.
import { html, nothing } from '../vendor/lit-html.js';
import { field, plain, plainSheet } from '../views/parts.js';
import { saveFile } from '../save.js';
import { fingerprintOf } from '../copies.js';
import { object } from '../text.js';
import { fromText } from '../desk/tree.js';
import { placeWords } from '../desk/place.js';
import { codeRows, drawn, versionOf } from './code.js';
import { codeOf, fileOf } from './envelope.js';
import { groups } from './origin.js';
import { keyName, makeKey, publicBytes, sign } from './signature.js';

const longestCode = 970;   // what the core accepts: version 20, level M

// What leaves this device: {rows, text, signed, named} where it fits a code, {long} where it does not, and the file in any case.
const prepare = async ({ ask, store, plan, from, at }) => {
  const pair = await store.signingKey(makeKey);
  const key = await publicBytes(pair);
  const packed = ask('packPlan', object({ plan }));
  const fingerprint = packed.fingerprint ?? fingerprintOf(ask, plan);
  const envelope = async name => ({ fingerprint, at, from: name, key, value: await sign(pair, { fingerprint, at, from: name }) });
  const whole = await envelope(from);
  const made = { file: fileOf({ plan, ...whole }), fingerprint, key: await keyName(key) };
  if (packed.refused) return { ...made, long: JSON.parse(packed.text).refused };
  // The name goes first when there is little room, then the signature.
  for (const name of from ? [from, ''] : ['']) {
    const text = codeOf({ text: packed.text, ...(name === from ? whole : await envelope(name)) });
    if (text.length <= longestCode) return { ...made, text, rows: codeRows(text), signed: true };
  }
  return { ...made, text: packed.text, rows: codeRows(packed.text), signed: false };
};

export const exporting = ({ words, draw, ask, store, state, day, clock, copyMade }) => {
  const view = { plan: null, from: '', made: null, said: null };
  const again = async () => {
    const at = `${new Date(clock().moment).toISOString().slice(0, 19)}Z`;
    try { view.made = await prepare({ ask, store, plan: view.plan, from: view.from, at }); view.said = null; } catch (problem) { console.error(problem); Object.assign(view, { made: null, said: words('share-no-key') }); }
    draw();
  };
  const name = () => `stopgap-plan-${view.doc.id}-${view.doc.revision}.json`;
  const file = () => new File([view.made.file], name(), { type: 'application/json' });
  // Some phones share no file of this kind, but share the same text under a plain name.
  const plainFile = () => new File([view.made.file], name().replace(/json$/, 'txt'), { type: 'text/plain' });
  const shareable = () => [file, plainFile].map(make => make()).find(made => navigator.canShare?.({ files: [made] }));

  const act = {
    from(box) { view.from = [...box.value.normalize('NFC').replace(/\p{C}/gu, '')].slice(0, 40).join('').trim(); return again(); },
    async save() {
      saveFile(file());
      await copyMade(view.made.fingerprint, 'file');
      view.said = words('share-saved');
      draw();
    },
    async share() {
      try { await navigator.share({ files: [shareable()], title: words('share-title') }); await copyMade(view.made.fingerprint, 'file'); } catch (problem) { if (problem.name !== 'AbortError') { view.said = words('share-failed'); draw(); } }
    },
    async copy() {
      try { await navigator.clipboard.writeText(view.made.text); view.said = words('share-copied'); } catch { document.getElementById('code-text')?.select(); view.said = words('share-copy-yourself'); }
      draw();
    },
  };

  const code = () => {
    const { made } = view;
    if (made.long) return html`<p class="warnbox" role="alert">${words('share-too-long')}</p><ul class="lines">${made.long.map(entry => html`<li>${placeWords(fromText(view.plan), entry.path, words, view.doc.decimalMark)}</li>`)}</ul>`;
    return html`<div class="code-frame">${drawn(made.rows, words('share-code'))}</div>
      <p class="note">${words('share-size', { count: String(made.text.length), version: versionOf(made.rows) })} ${made.signed ? nothing : words('share-unsigned')}</p>
      <details class="as-text"><summary>${words('share-text')}</summary><textarea id="code-text" rows="6" readonly aria-label=${words('share-text')} .value=${made.text}></textarea>${plain(words('share-copy'), () => act.copy())}</details>`;
  };
  const page = () => plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('share-title')}</h1>
  ${view.plan ? html`<p class="lede">${words('share-lede')}</p>
    <dl class="fields">${field(words('share-person'), view.doc.person.name)}${field(words('plan-label'), words('plan-revision', { revision: String(view.doc.revision), title: view.doc.title }))}
      ${field(words('plan-agreed'), day(view.doc.agreement.on))}${view.made ? field(words('bring-fingerprint'), html`<bdi dir="ltr" class="print">${groups(view.made.fingerprint)}</bdi>`) : nothing}</dl>
    ${{ draft: () => html`<p class="warnbox">${words('bring-draft')}</p>`, withdrawn: () => html`<p class="warnbox">${words('bring-withdrawn')}</p>`, superseded: () => html`<p class="warnbox">${words('bring-superseded')}</p>` }[view.doc.agreement.status]?.() ?? nothing}
    ${view.said ? html`<p class="lede" role="status">${view.said}</p>` : nothing}
    ${view.made ? html`${code()}
      <label class="typed-day"><span>${words('share-from')}<span class="sub">${words('share-from-sub')}</span></span><input id="share-from" maxlength="40" autocomplete="off" @change=${event => act.from(event.target)}></label>
      <div class="cells">${plain(words('share-file'), () => act.save(), words('share-file-sub'))}${shareable() ? plain(words('share-sheet'), () => act.share(), words('share-sheet-sub')) : nothing}</div>
      <p class="note">${words('share-key', { key: groups(view.made.key) })}</p>` : nothing}
    <p class="note">${words('share-private')}</p>` : html`<p class="lede">${words('share-nothing')}</p>`}
  <p class="note"><a href="./">${words('back')}</a></p>`);

  return {
    page,
    async show(plan) { Object.assign(view, { plan, doc: plan ? JSON.parse(plan) : null, made: null, said: null }); if (plan) await again(); else draw(); },
    place: () => `share ${view.doc?.id ?? ''}`,
  };
};
