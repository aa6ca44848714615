// Small parts that more than one screen uses. Everything comes in as an argument; nothing here counts or formats.
import { html, nothing, svg } from '../vendor/lit-html.js';
import { unitsText } from './units.js';
import { footCall } from './ring.js';
import { visible } from './visible.js';

export const arrow = html`<svg class="arrow" viewBox="0 0 40 24" aria-hidden="true"><path d="M0 12H36M26 2 36 12 26 22"/></svg>`;
const ticked = html`<svg viewBox="0 0 40 40" aria-hidden="true"><path d="M5 21 16 32 35 8"/></svg>`;

export const square = { now: text => html`<span class="sq now">${text}</span>`, later: text => html`<span class="sq">${text}</span>`,
  done: html`<span class="sq done">${ticked}</span>`, tick: on => html`<span class="sq tick ${on ? 'done' : ''}">${on ? ticked : nothing}</span>` };

// The one thing to do now. At most one a page.
export const main = (text, act, sub) => html`<button type="button" class="press now wide" @click=${act}>
  <span>${text}${sub ? html`<span class="sub">${sub}</span>` : nothing}</span>${arrow}</button>`;
export const plain = (text, act, sub) => html`<button type="button" class="press wide" @click=${act}>
  <span>${text}${sub ? html`<span class="sub">${sub}</span>` : nothing}</span></button>`;
export const half = (text, act) => html`<button type="button" class="press mid" @click=${act}>${text}</button>`;

// The way into the questions, the largest thing on its page.
export const begin = (text, sub, act) => html`<button type="button" class="press now start wide" @click=${act}><span><span class="big">${text}</span>
    <span class="sub">${sub}</span></span><svg class="arrow" viewBox="0 0 40 24" aria-hidden="true"><path d="M0 12H37M27 2 37 12 27 22"/></svg></button>`;
// Numbers of a plan that something stands against, each with its place.
export const numbers = lines => html`<ul class="lines">${lines.map(({ place, value, text }) => html`<li><b>${place}${value ? html`: <bdi>${value}</bdi>` : nothing}</b><br>${text}</li>`)}</ul>`;
// One line of a list of names and values.
export const field = (label, value) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`;

export const head = state => html`<header class="head"><b>${visible(state.plan.doc.person.name)}</b><span>${state.planLine}</span>${state.school?.who() ?? nothing}</header>`;

// What runs is said in a full sentence, on every screen of an incident.
const running = (state, words) => {
  const hold = state.holds?.holds?.find(entry => entry.what !== 'automation' && entry.what !== 'longActing');
  const sentence = {
    correction: clock => words('held-correction', { clock }),
    ketoneDose: clock => words('held-ketone', { clock }),
    allRapid: clock => words('held-rapid', { clock }),
  };
  return hold ? html`<p class="held">${state.school?.held(hold) ?? sentence[hold.what](hold.clock)}</p>` : nothing;
};

export const foot = (state, words, { calm = false } = {}) => {
  const due = state.next;
  return html`<footer class="foot">
    <p class="go"><a href="danger.html"><b>${words('feel-worse')}</b></a></p>
    ${calm ? nothing : running(state, words)}
    <div class="row"><div class="cell"><span>${words('foot-now')}</span><b><bdi dir="ltr">${state.now.clock}</bdi></b></div>
    ${due ? html`<div class="cell"><span>${due.overdue ? words('foot-late') : words('foot-next')}</span><b><bdi dir="ltr">${due.clock}</bdi></b>${due.day ? html`<small>${due.day}</small>` : nothing}</div>` : nothing}
    ${footCall(state, words)}</div>
  </footer>`;
};

export const sheet = (state, words, body, options) => html`<div class="sheet">${head(state)}<main id="main">${body}</main>${foot(state, words, options)}</div>`;
export const plainSheet = body => html`<div class="sheet"><main id="main">${body}</main></div>`;

export const question = (number, title, help) => html`<div class="ask">${number ? square.now(number) : nothing}
  <div><h1 tabindex="-1">${title}</h1>${help ? html`<p>${help}</p>` : nothing}</div></div>`;

// Answers already given to earlier questions, each a way back to its question.
export const filled = (label, value, clock, back, words) => html`<p class="filled"><span>${label}</span> <b><bdi>${value}</bdi></b>
  <i><bdi dir="ltr">${clock}</bdi></i> <button type="button" class="again" @click=${back}>${words('change-answer')}</button></p>`;

// Digits read out one by one: 35 and 3.5 sound different even half asleep.
const spoken = (digits, mark, words) => {
  const word = { 0: () => words('digit-0'), 1: () => words('digit-1'), 2: () => words('digit-2'), 3: () => words('digit-3'),
    4: () => words('digit-4'), 5: () => words('digit-5'), 6: () => words('digit-6'), 7: () => words('digit-7'),
    8: () => words('digit-8'), 9: () => words('digit-9'), [mark]: () => words('digit-mark') };
  const text = [...digits].map(sign => word[sign]()).join(' ');
  return text.charAt(0).toUpperCase() + text.slice(1);
};

export const keypad = (state, words, send, { unit = '', drawing = nothing, decimal = true } = {}) => {
  const { digits, problem } = state.pad;
  const key = sign => html`<button type="button" class="press" data-key=${sign} @click=${() => send('key', sign)}>${sign}</button>`;
  return html`<div class="entry" role="group" aria-label=${words('pad-entry')}>
      <span class="fig ${digits.length > 3 ? 'long' : ''}"><bdi dir="ltr">${digits}</bdi></span><span class="caret"></span><span class="unit">${unit}</span>${drawing}</div>
    <p class="readback" role="status">${problem ?? (digits ? spoken(digits, state.mark, words) : words('pad-empty'))}</p>
    <div class="pad" dir="ltr">
      ${['1', '2', '3', '4', '5', '6', '7', '8', '9'].map(key)}
      ${decimal ? html`<button type="button" class="press" data-key="mark" aria-label=${words('pad-mark')} @click=${() => send('key', state.mark)}>
        <svg width="14" height="14" aria-hidden="true"><path d="M1 1h12v12H1z" fill="currentColor"/></svg></button>`
        : html`<span class="press blankkey"></span>`}
      ${key('0')}
      <button type="button" class="press wordy" data-key="erase" @click=${() => send('erase')}>${words('pad-erase')}</button></div>`;
};

// An unclear moment on a clock: four figures, read back as a time.
export const clockText = digits => (digits.length < 3 ? digits : `${digits.slice(0, 2)}:${digits.slice(2)}`);
export const clockpad = (state, words, send) => figures(state, words, send, { label: words('pad-clock'), text: clockText(state.pad.digits), help: words('pad-clock-help'), deed: 'clockKey' });
// Figures that are no amount: a time, a day.
export const figures = (state, words, send, { label, text, help, deed }) => {
  const key = sign => html`<button type="button" class="press" data-key=${sign} @click=${() => send(deed, sign)}>${sign}</button>`;
  return html`<div class="entry" role="group" aria-label=${label}>
      <span class="fig long"><bdi dir="ltr">${text}</bdi></span><span class="caret"></span></div>
    <p class="readback" role="status">${state.pad.problem ?? help}</p>
    <div class="pad" dir="ltr">${['1', '2', '3', '4', '5', '6', '7', '8', '9'].map(key)}<span class="press blankkey"></span>${key('0')}
      <button type="button" class="press wordy" data-key="erase" @click=${() => send('erase')}>${words('pad-erase')}</button></div>`;
};

export const strip = words => html`<svg class="d" viewBox="0 0 112 62" width="92" height="51" role="img" aria-label=${words('picture-strip')}>
  <path class="solid" d="M10 16c6 9 9 13 9 18a9 9 0 0 1-18 0c0-5 3-9 9-18z"/>
  <path d="M26 20H110V46H26V39h-7V27h7z"/><path class="thin" d="M40 20V46M94 27h16M94 33h16M94 39h16M50 28h30M50 38h20"/></svg>`;

export const cannula = words => html`<svg class="d" viewBox="0 0 168 116" width="168" height="116" role="img" aria-label=${words('picture-cannula')}>
  <path class="fat" d="M0 54H168"/>
  <path class="thin" d="M6 68l9-9M26 68l9-9M46 68l9-9M106 68l9-9M126 68l9-9M146 68l9-9M16 86l9-9M36 86l9-9M116 86l9-9M136 86l9-9M26 104l9-9M126 104l9-9"/>
  <path class="blank" d="M34 52V44H130V52z"/><path class="blank" d="M56 44V22H108V44"/>
  <path d="M108 33H128C146 33 142 8 168 8"/><path class="blank" d="M78 54V108h8V54"/><path class="thin" d="M82 34v74"/></svg>`;

// The end of the tubing, joined to the set on the skin; the place where drops would be seen is framed.
export const joinedTubing = words => html`<svg class="d" viewBox="0 0 168 116" width="168" height="116" role="img" aria-label=${words('picture-join')}>
  <path class="fat" d="M0 84H168"/><path class="thin" d="M10 98l9-9M34 98l9-9M58 98l9-9M82 98l9-9M106 98l9-9M130 98l9-9M154 98l9-9"/>
  <path class="blank" d="M22 82V72H98V82z"/><path class="blank" d="M38 72V50H82V72"/><path class="solid" d="M82 54h14v14H82z"/><path class="blank" d="M96 57h16v8H96z"/>
  <path d="M112 61H132C150 61 146 22 168 22"/><path class="dash" d="M74 42H122V80H74z"/></svg>`;

export const edge = words => html`<svg class="d edge" viewBox="0 0 350 84" role="img" aria-label=${words('picture-edge')}>
  <path class="thin" d="M0 28H44M0 31H44"/><path class="blank" d="M44 22H62V37H44z"/><path class="solid" d="M62 18h9v23h-9z"/>
  <path d="M330 6H71V53H330"/><path class="thin" d="M330 0l-5 15 10 14-10 14 6 16"/>
  <path d="M84 53v-20M164 53v-20M244 53v-20"/>
  <path class="thin" d="M100 53v-11M116 53v-11M132 53v-11M148 53v-11M180 53v-11M196 53v-11M212 53v-11M228 53v-11M260 53v-11M276 53v-11M292 53v-11M308 53v-11"/>
  <path class="solid" d="M190 9h20v41h-20z"/><path class="gap" d="M200 9v41"/><path class="blank" d="M210 22H326V37H210"/>
  <path class="fat" d="M190 82V58M181 68l9-11 9 11"/><text x="208" y="79" class="edge-t">${words('picture-edge-label')}</text></svg>`;

export const tubingPictures = {
  sink: html`<svg class="d" viewBox="0 0 152 142" aria-hidden="true"><path d="M152 16H112C96 16 92 20 92 34"/>
    <g transform="translate(92 34)"><path class="blank" d="M-6 0h12v14h-4v9h-4v-9h-4z"/></g>
    <path d="M92 63c4 6 5 8 5 11a5 5 0 0 1-10 0c0-3 1-5 5-11zM92 84c4 6 5 8 5 11a5 5 0 0 1-10 0c0-3 1-5 5-11z"/>
    <path class="fat" d="M10 72H30V102C30 113 36 120 48 120H112C124 120 130 113 130 102V72H152"/><path d="M72 120V142M88 120V142"/></svg>`,
  body: html`<svg class="d" viewBox="0 0 152 142" aria-hidden="true"><path d="M62 0V10C62 18 42 20 32 26C22 32 18 46 16 62L8 108M90 0V10C90 18 110 20 120 26C130 32 134 46 136 62L144 108"/>
    <path d="M36 58L28 110M36 58C38 76 44 82 42 96C41 110 36 122 35 142M116 58L124 110M116 58C114 76 108 82 110 96C111 110 116 122 117 142"/>
    <path class="solid" d="M48 82h20v20H48z"/><path class="hole" d="M54 88h8v8h-8z"/><path class="fat" d="M58 102V112C58 132 84 126 104 126C126 126 130 122 152 122"/></svg>`,
  unsure: html`<svg class="d" viewBox="0 0 152 142" aria-hidden="true"><path d="M152 30H122C104 30 100 38 98 50"/><path class="dash" d="M98 50C94 70 78 66 70 78"/>
    <path class="fat" d="M40 92C40 82 46 76 55 76S70 82 70 90C70 102 55 100 55 114"/><path class="solid" d="M52 122h6v7h-6z"/></svg>`,
};

// Only where the plan has both is there a choice between them.
export const hasBothDevices = ({ doc }) => Boolean(doc.syringe && doc.pen);

// A dose as large as the page has room for beside the syringe; three figures in a row need more of it than two and a point.
export const doseFigure = number => html`<span class="fig ${/\d{3}/.test(number) ? 'c4' : `c${number.length}`}"><bdi dir="ltr">${number}</bdi></span>`;

// The syringe is drawn from what the core says about it: so many marks, the plunger at one of them, figures at some.
// Only places on paper are worked out here. The line from the dose stays where it is and the barrel slides; where the
// barrel would leave the page, the line bends down instead.
export const syringe = (device, label, number) => {
  const line = 200;
  const gap = 335 / device.marks;
  const pushed = device.at * gap;
  const bent = pushed > 134;
  const top = bent ? 64 : line - 2 - pushed;
  const edgeAt = top + pushed;
  const bottom = top + 335 + 17;
  const figureAt = new Map(device.figures.map(figure => [figure.at, figure.text]));
  const halves = device.step === '0.5';
  const marks = Array.from({ length: device.marks }, (_, index) => {
    const mark = index + 1;
    const length = figureAt.has(mark) ? 17 : halves && mark % 2 ? 5 : 9;
    return svg`<path class="${figureAt.has(mark) ? '' : 'thin'} ${mark < device.at ? 'in' : ''}" d="M60.75 ${top + 3 + mark * gap - 3}h-${length}"/>`;
  });
  const figures = device.figures.map(figure => svg`<text x="69" y="${top + figure.at * gap + 6}">${figure.text}</text>`);
  return html`<svg class="d syr" viewBox="0 0 100 ${bent ? 600 : 572}" width="100" height=${bent ? 600 : 572} role="img" aria-label=${label}>
    <path class="thin" d="M36.5 ${top - 30}V${bent ? 12 : top - 119}l3-7V${top - 30}"/>
    <path class="blank" d="M33 ${top}V${top - 30}h10V${top}z"/><path class="solid" d="M29 ${top - 8}h18v8h-18z"/>
    <path class="nowfill" d="M14 ${top}H62V${edgeAt}H14z"/>
    <path class="blank" d="M32 ${edgeAt + 12}V${bottom + 43}h12V${edgeAt + 12}"/><path class="thin" d="M38 ${edgeAt + 12}V${bottom + 43}"/>
    <path d="M14 ${bottom}V${top}H62V${bottom}"/>${marks}
    <path class="solid" d="M17 ${edgeAt}h42v14h-42z"/><path class="gap" d="M17 ${edgeAt + 7.5}h42"/>${figures}
    <path class="blank" d="M3 ${bottom}h70v6h-70z"/><path class="blank" d="M18 ${bottom + 43}h40v7h-40z"/>
    <g class="tag"><path d="M0 ${edgeAt}H14"/><text x="-6" y="${edgeAt + 6}" text-anchor="end">${number}</text></g>
    <path class="lead" d="${bent ? `M-500 ${line}H4V${edgeAt + 2}H62` : `M-500 ${line}H62`}"/></svg>`;
};

// The clock alone would read as today where it is another day's.
export const notWritten = ({ at, clock }, { otherDay }, words) => (otherDay(at) ? words('off-not-written-day', { day: otherDay(at), clock }) : words('off-not-written', { clock }));
export const marksLine = ({ step, at }, words) => (at === 1 ? words('syringe-mark', { step: unitsText(step, words) }) : words('syringe-marks', { step: unitsText(step, words), marks: String(at) }));

// A dose was shown and nobody said what became of it: that is asked before anything else, and of which insulin.
export const wasInjected = ({ text, clock }, insulin, state, words, act, look) => sheet(state, words, html`
  <div class="ask"><div><h1 tabindex="-1">${words('did-question')}</h1><p>${words('did-shown', { dose: text, clock })}</p></div></div>
  <p class="lede">${insulin}</p>
  <div class="cells">${plain(words('did-yes', { dose: text }), act.yes)}${plain(words('did-other'), act.other)}
    ${plain(words('did-no'), act.no)}${plain(words('did-unsure'), act.unsure, words('did-unsure-sub'))}</div>
  <ul class="lines"><li>${words('did-look')}</li></ul>`, look);

// The way to the pages of somebody off the pump. Where the record says that it is off, so does the way, and since when.
const offWay = ({ offSince, otherDay }, words, send) => plain(words('off-entry'), () => send('openOff'), !offSince ? words('off-entry-sub')
  : otherDay(offSince.at) ? words('off-entry-since-day', { day: otherDay(offSince.at), clock: offSince.clock }) : words('off-entry-since', { clock: offSince.clock }));
// Without any basal insulin, or when a look is late and an injection may be, it stands first; anywhere else it is one way of several.
const comesFirst = ({ offSince, next }) => offSince && (offSince.bare || next?.overdue);
export const offFirst = (state, words, send) => (comesFirst(state) ? html`<div class="answers">${state.offSince.bare ? html`<p class="warnbox">${notWritten(state.offSince.bare, state, words)}</p>` : state.next?.injects ? html`<p class="lede">${words('look-injects')}</p>` : nothing}${offWay(state, words, send)}</div>` : nothing);
export const offEntry = (state, words, send) => (comesFirst(state) ? nothing : offWay(state, words, send));
