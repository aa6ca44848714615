// The pages of somebody off the pump, one question or one dose each. Rapid and long-acting insulin never stand on one page.
import { html, nothing } from '../vendor/lit-html.js';
import { clockpad, clockText, doseFigure, half, hasBothDevices, keypad, main, marksLine, notWritten, plain, question, sheet, syringe, wasInjected } from '../views/parts.js';
import { clockOf, stamp } from '../times.js';
import { callTeam as ringTeam, emergencyCall } from '../views/ring.js';
import { unitWord, unitsText } from '../views/units.js';
import { anotherAmount, outcome, outcomeLine, planCaution, planFindings, typeUnits } from '../views/advice.js';

const time = text => html`<bdi dir="ltr">${text}</bdi>`;
const by = (name, table) => table[name]();

const since = (state, words, send) => sheet(state, words, html`
  ${question('', words('off-when'), words('off-when-help'))}
  ${clockpad(state, words, send)}
  <div class="end">${state.pad.digits.length === 4 ? main(state.yesterday ? words('off-when-yesterday', { clock: clockText(state.pad.digits) }) : words('off-when-yes', { clock: clockText(state.pad.digits) }), () => send('offSince'))
    : html`<div class="pair">${half(words('just-now'), () => send('offSince', 'now'))}${half(words('off-when-runs'), () => send('offPage', 'hours'))}</div>`}
  ${plain(words('off-ill'), () => send('offQuestions'), words('off-ill-sub'))}${plain(words('back'), () => send('offClose'))}</div>`);

// A pump that works again and was not written down as on would be injected for: that is said before anything is asked.
const hours = (state, words, send) => sheet(state, words, html`
  ${question('1', words('off-hours'), words('off-hours-help'))}
  ${keypad(state, words, send, { unit: words('off-unit-hours') })}
  <div class="end">${state.pad.digits ? main(words('off-hours-yes', { hours: state.pad.digits }), () => send('offHours')) : plain(words('do-not-know'), () => send('offHoursUnknown'))}
  ${plain(words('off-ill'), () => send('offQuestions'), words('off-ill-sub'))}${state.off.answer.recorded ? plain(words('off-back-now'), () => send('offPumpIs', 'on'), words('off-back-now-sub')) : nothing}${plain(words('back'), () => send('offClose'))}</div>`);

const sleep = (state, words, send) => sheet(state, words, html`
  ${question('2', words('off-sleep'), words('off-sleep-help'))}
  ${clockpad(state, words, send)}
  <div class="end">${state.pad.digits.length === 4 ? main(words('off-sleep-yes', { clock: clockText(state.pad.digits) }), () => send('offAsleep')) : plain(words('off-awake'), () => send('offAwake'))}</div>`);

const carbs = (state, words, send) => sheet(state, words, html`
  ${question(state.panel.again ? '' : '3', words('off-carbs'))}
  ${keypad(state, words, send, { unit: words('off-unit-grams'), decimal: false })}
  <div class="end">${state.pad.digits ? main(words('off-carbs-yes', { grams: state.pad.digits }), () => send('offCarbs')) : plain(words('off-no-food'), () => send('offNothing'))}
  ${state.panel.again ? html`${plain(words('off-ill'), () => send('offQuestions'), words('off-ill-sub'))}${plain(words('back'), () => send('offClose'))}` : nothing}</div>`);

const glucose = (state, words, send) => sheet(state, words, html`
  ${question(state.panel.again ? '' : '4', words('off-glucose'), words('off-glucose-help'))}
  ${keypad(state, words, send, { unit: state.plan.doc.glucoseUnit, decimal: state.plan.doc.glucoseUnit === 'mmol/L' })}
  <div class="end">${state.pad.digits ? main(words('off-glucose-yes', { value: state.pad.digits, unit: state.plan.doc.glucoseUnit }), () => send('offGlucose'))
    : html`<div class="pair">${half(words('meter-says', { word: 'HI' }), () => send('offGlucoseSays', 'HI'))}${half(words('meter-says', { word: 'LO' }), () => send('offGlucoseSays', 'LO'))}</div>
      ${plain(words('off-not-measured'), () => send('offNotMeasured'))}`}</div>`);

const insulinOf = (kind, words) => by(kind, { rapid: () => words('off-rapid'), long: () => words('off-long') });

const did = (state, words, send, { id, insulin, text, clock }) => {
  const answer = what => () => send('offDid', { id, answer: what });
  return wasInjected({ text, clock }, insulinOf(insulin, words), state, words, { yes: answer('yes'), other: () => send('offPage', 'didOther'), no: answer('no'), unsure: answer('unsure') }, { calm: true });
};

const didOther = (state, words, send) => sheet(state, words, html`
  ${question('', words('entry-yes'), insulinOf(state.off.answer.first.shown.insulin, words))}
  ${keypad(state, words, send, { unit: unitWord(state.pad.digits, words) })}
  <div class="end">${state.pad.digits ? main(words('entry-yes-units', { dose: unitsText(state.pad.digits, words) }), () => send('offDid', { id: state.off.answer.first.shown.id, answer: 'other' })) : plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });

// The two hours of a pump that is back soon run from the end of the last injection's hours: until then no two hours are named.
const wayLine = ({ wayBecause, bridged }, { doc }, words) => by(wayBecause, { pumpOn: () => words('off-way-on'), soonBack: () => (bridged ? words('off-way-soon-after') : words('off-way-soon')), shorter: () => words('off-way-shorter'), longer: () => words('off-way-longer'),
  unknown: () => words('off-way-unknown'), asleep: () => words('off-way-asleep'), noLongActing: () => (doc.longActing ? words('off-way-no-long-here') : words('off-way-no-long')), atWork: () => words('off-way-at-work'), underStep: () => words('off-way-under-step') });

// What is good to know besides. Each note of the core has its sentence.
const noteLine = (name, words, { eat } = {}) => by(name, {
  getLongActing: () => words('off-note-get-long'), missedBridge: () => words('off-note-missed'), missedTooLong: () => words('off-note-missed-long'), longActingHeld: () => words('off-note-long-held'),
  longActingSplit: () => words('off-note-split'), longActingUnderStep: () => words('off-note-long-under'), bridgeUnderStep: () => words('off-note-hours-under'), bridgeCut: () => words('off-note-cut'),
  outlastsADay: () => words('off-note-a-day'), callAfterADay: () => words('off-note-call-day'), callAfterTwoDays: () => words('off-note-call-clinic'), neverFromPen: () => words('off-note-pen'),
  otherVial: () => words('off-note-vial'), boxWins: () => words('off-note-box'), heatedInsulin: () => words('off-note-heat-frost'), missedBasalTalk: () => words('off-note-talk'), automationOff: () => words('off-note-automation-until'),
  travelIgnore: () => words('off-note-travel-ignore'), travelSameBasal: () => words('off-note-travel-same'), travelEast: () => words('off-note-travel-east'), travelWest: () => words('off-note-travel-west'),
  travelClock: () => words('off-note-travel-clock'), suppliesTwice: () => words('off-note-supplies'), longActingOther: () => words('off-note-other'), bridgedTwice: () => words('off-note-twice'), travelAskFirst: () => words('off-note-travel-ask'),
  bridgeWhileAsleep: () => words('off-note-asleep'), longActingWhileAsleep: () => words('off-note-long-asleep'), longActingTooLittle: () => words('off-note-too-little'), longActingUnknown: () => words('off-note-unknown'),
  orderTooLarge: () => words('off-note-order-large'), orderNotReadBack: () => words('off-note-order-read-back'), basalWithoutReading: () => words('off-note-no-reading'), askForBasal: () => words('off-note-ask-basal'),
  eatFirst: () => words('off-note-eat-first', { grams: String(eat.grams) }), eatWith: () => words('off-note-eat-with', { grams: String(eat.grams) }),
  longActingForSmallBasal: () => words('off-note-long-small'), longActingSecondHalf: () => words('off-note-second-half') });
// These speak of long-acting insulin: they never stand beside an injection of the other one.
const ofLongActing = new Set(['getLongActing', 'longActingHeld', 'longActingSplit', 'longActingUnderStep', 'outlastsADay', 'travelAskFirst', 'travelSameBasal', 'travelEast', 'travelWest', 'longActingWhileAsleep', 'longActingForSmallBasal', 'longActingSecondHalf']);
const first = new Set(['heatedInsulin', 'longActingOther', 'travelAskFirst', 'bridgedTwice', 'bridgeWhileAsleep', 'bridgeUnderStep', 'longActingUnderStep', 'longActingWhileAsleep', 'longActingTooLittle', 'longActingUnknown', 'orderTooLarge',
  'orderNotReadBack', 'basalWithoutReading', 'askForBasal', 'eatFirst', 'eatWith', 'longActingForSmallBasal']);   // said above everything else
// A plan without long-acting insulin has no amount of it either: whoever only got some would have a dose of nobody's.
const noteLines = (names, { doc }, words) => html`<ul class="lines">${names.filter(name => !first.has(name)).map(name => html`<li>${name === 'getLongActing' && !doc.longActing ? words('off-note-ask-long') : noteLine(name, words)}</li>`)}</ul>`;

const alarmLine = (what, words) => by(what, { bridge: () => words('off-alarm-bridge'), longActing: () => words('off-alarm-long'), longActingPart: () => words('off-alarm-part') });

// Clock times in their order: what is due, and what must not be done before. Beside an injection of rapid-acting insulin the other one
// is not named. What comes first has a look of its own, and a sooner one after a low; and while it waits, no alarm is set for the end of
// an injection that is not in.
const timetable = (answer, state, words, { besideRapid = false, stops = false } = {}) => {
  const rows = [
    ...(answer.nextBridge ? [{ ...answer.nextBridge, text: answer.wayBecause === 'soonBack' ? words('off-alarm-if-off') : words('off-alarm-bridge') }] : []),
    ...answer.alarms.filter(alarm => alarm.at !== answer.nextBridge?.at && !(besideRapid && alarm.what !== 'bridge') && !(stops && !answer.nextBridge && alarm.what === 'bridge')).map(alarm => ({ ...alarm, text: alarmLine(alarm.what, words) })),
    ...(answer.longActing.until && !besideRapid ? [{ ...answer.longActing.until, text: words('off-long-until') }] : []),
    ...(answer.look && !stops ? [{ ...answer.look, text: words('off-look') }] : []),
    ...(answer.back.look ? [{ ...answer.back.look, text: words('off-back-look') }] : []),
    ...(answer.back.usualFrom ? [{ ...answer.back.usualFrom, text: words('until-usual') }] : []),
    ...(answer.back.automationFrom ? [{ ...answer.back.automationFrom, text: words('until-automation') }] : []),
    ...answer.calls.map(call => ({ ...call, text: words('off-call-then') }))].sort((a, b) => state.order(a.at, b.at));
  return rows.length ? html`<ol class="timetable">${rows.map(row => html`<li><b class="t">${time(row.clock)}<small>${state.otherDay(row.at)}</small></b><p>${row.text}</p></li>`)}</ol>` : nothing;
};

// How long what is in use still keeps: until a day, or until a time of the clock.
const kept = (answer, state, words) => {
  const line = (label, entry) => (entry.keeps === 'unknown' ? nothing : html`<div><dt>${label}</dt><dd>${by(entry.keeps, {
    good: () => (entry.lastUse ? words('off-keeps-until', { day: state.dayWords(entry.lastUse) }) : words('off-keeps-until', { day: [state.otherDay(entry.changeBy.at), entry.changeBy.clock].filter(Boolean).join(', ') })),
    lastDay: () => words('off-keeps-last'), due: () => words('off-keeps-due'), over: () => words('off-keeps-over') })}</dd></div>`);
  return html`<dl class="fields">${line(words('off-vial'), answer.insulin.vial)}${line(words('off-reservoir'), answer.insulin.reservoir)}${line(words('off-set'), answer.insulin.set)}</dl>
    <ul class="lines"><li>${words('off-frozen')}</li><li>${words('off-expiry')}</li></ul>`;
};

// What was said about how long and about sleep, which goes on being used until somebody asks again.
const assumed = ({ panel: { asked }, off, now, otherDay }, words) => {
  if (asked.hours === undefined || !off.answer.off) return nothing;
  // A phone that was carried to another zone tells its own clock.
  const here = text => stamp(new Date(text)), until = asked.until && here(asked.until);
  const clock = until && clockOf(until), day = until && otherDay(until);
  return html`<p class="note">${!asked.until ? words('off-assumed-unknown') : day ? words('off-assumed-day', { day, clock }) : words('off-assumed-hours', { clock })}
    ${asked.asleep && Date.parse(asked.asleep) > now.moment ? words('off-assumed-sleep', { clock: clockOf(here(asked.asleep)) }) : nothing}</p>`;
};

// Where the questions lead to a dose, that dose is shown by them alone: it must not be read as an order to inject something here.
const leadsToDose = new Set(['inject', 'injectAtAnyGlucose', 'comingDown', 'eatAndInject', 'didYouInject', 'testGlucose', 'testKetones']);

// A low does not wait for the questions: how much is said where it is first said.
const grams = ({ outcome: name, carbohydrateGrams }, words) => (name === 'treatLow' ? html`<p><b>${words('step-sugar', { grams: String(carbohydrateGrams) })}</b></p>`
  : name === 'eatNow' ? html`<p><b>${words('step-eat', { grams: String(carbohydrateGrams) })}</b></p>` : nothing);

// What an injection is for. Where no basal is due it is for food or for a high, and no hours are named.
const opening = ({ kind, order, singleStep, working: w }, words) => {
  if (kind !== 'bridge') return [words('off-long-open'), order ? words('off-ordered', { name: order.by, clock: order.clock }) : words('off-long-sub')];
  if (singleStep) return [words('off-step-open'), words('off-step-sub')];
  if (w.from.at !== w.to.at) return [words('off-bridge-open'), words('off-bridge-sub', { from: w.from.clock, to: w.to.clock })];
  return [w.meal === '0' ? words('off-correct-open') : words('off-meal-open'), words('off-rapid')];
};
const open = (screen, words, send, press = main) => {
  const [name, sub] = opening(screen, words);
  return press(name, () => (screen.kind === 'bridge' ? send('offShow', 'bridge') : send('offPage', 'vial')), sub);
};
const callTeam = (answer, state, words) => (answer.call === 'team'
  ? ringTeam(state, words, { soon: true }) : nothing);
const urgent = (answer, words, besideRapid) => answer.notes.filter(name => first.has(name) && !(besideRapid && ofLongActing.has(name))).map(name => html`<p class="warnbox">${noteLine(name, words, answer)}</p>`);
// A vial that is out of date is said where it would be drawn from, and not only where its days are listed.
const tooOld = ({ off: { answer } }, words) => (answer.insulin.vial.keeps === 'over' ? html`<p class="warnbox">${words('off-vial-over')}</p>` : nothing);
// Heat and frost spoil whatever lay there, of either kind.
const spoiled = ({ off: { answer } }, words) => (answer.insulin.heated ? html`<p class="warnbox">${words('off-note-heat-frost')}</p>` : nothing);
const haveLong = (state, words, send) => (state.panel.asked.noLong ? plain(words('off-have-long'), () => send('offHaveLong', true), words('off-have-long-sub')) : nothing);
const orderWay = (answer, state, words, send) => (answer.off && state.plan.doc.longActing ? plain(words('off-order'), () => send('offPage', 'order'), words('off-order-sub')) : nothing);

// What to do with the pump until injected basal insulin is over, and with food; not only what not to do.
const backLine = ({ do: what, food, reducedPercent }, words) => [by(what, { usual: () => '', reduced: () => words('off-back-now-reduced', { percent: reducedPercent }), afterBridge: () => words('off-back-after'), askTeam: () => words('off-back-ask') }),
  ...(food === 'byNeedle' ? [words('off-back-food-needle')] : [])].filter(Boolean).join(' ');

// The clock alone would read as today: a pump that is off for a day and a minute, as for a minute.
const sinceLine = ({ at, clock }, { otherDay }, words) => (otherDay(at) ? words('off-since-day', { day: otherDay(at), clock }) : words('off-since', { clock }));

// One thing to do now, then everything with its time. Two injections of two insulins are two pages.
const answerPage = (state, words, send) => {
  const { answer } = state.off;
  const { first: before } = answer;
  if (before?.shown) return did(state, words, send, before.shown);
  // A finger test comes first only where something would be injected now.
  const stops = before && (before.waits === 'everything' || (before.waits === 'rapid' && answer.off && !answer.nextBridge && !answer.longActing.bridges && !answer.screens.length));
  const [now, then] = answer.screens.filter(screen => screen.dose);
  const bridges = answer.wayBecause === 'shorter';
  const besideRapid = now ? now.kind === 'bridge' : bridges;
  const way = !besideRapid || bridges ? wayLine(answer, state.plan, words) : then ? words('off-two') : nothing;
  const waits = answer.wayBecause === 'soonBack' && !answer.recorded && !now;
  const help = stops && before.call === 'emergency';   // the foot calls the team alone
  return sheet(state, words, html`
    <div class="lead-in"><h1 tabindex="-1">${stops ? (leadsToDose.has(before.outcome) ? words('off-first-title') : outcome(before.outcome, words)) : !answer.off ? words('off-title-on') : answer.recorded ? words('off-title') : words('off-title-ahead')}</h1>
      ${stops ? html`${leadsToDose.has(before.outcome) ? nothing : html`<p><b>${outcomeLine(before.outcome, words)}</b></p>`}${grams(before, words)}<p>${words('off-first')}</p>` : answer.recorded && answer.since ? html`<p>${sinceLine(answer.since, state, words)}</p>` : nothing}</div>
    ${state.said ? html`<p class="lede" role="status">${state.said}</p>` : nothing}
    ${urgent(answer, words, besideRapid)}
    ${planCaution(state, words)}
    ${now?.kind === 'bridge' ? tooOld(state, words) : nothing}
    ${stops || way === nothing ? nothing : html`<p class="lede">${way}</p>`}
    ${answer.back.on && answer.back.usualFrom ? html`<p class="lede"><b>${words('off-way-on-waits')}</b> ${backLine(answer.back, words)}</p>` : nothing}
    ${before && !stops ? html`<p class="lede">${words('off-correction-first')}</p>` : nothing}
    ${answer.missed ? html`<p class="lede">${notWritten(answer.missed.since, state, words)}</p>` : nothing}
    ${answer.couldGoLow ? html`<p class="lede">${words('off-low')}</p>` : nothing}
    ${stops ? html`<div class="answers">${help ? html`${emergencyCall(state, words)}` : nothing}
      ${(help ? plain : main)(words('off-questions'), () => send('offQuestions'))}</div>` : nothing}
    <div class="answers">${now ? open(now, words, send, stops ? plain : main) : nothing}
      ${waits ? main(words('off-off-now'), () => send('offPumpIs', 'off'), words('off-off-now-sub')) : nothing}
      ${before && !stops ? plain(words('off-questions'), () => send('offQuestions'), words('off-ill-sub')) : nothing}
      ${then ? plain(words('off-second'), () => send('offPage', 'second'), words('off-second-sub')) : nothing}</div>
    ${timetable(answer, state, words, { besideRapid, stops })}
    ${besideRapid && !then ? plain(words('off-more'), () => send('offPage', 'second'), words('off-more-sub')) : nothing}
    ${assumed(state, words)}
    ${answer.back.on && answer.back.look ? html`<p class="note">${words('off-back-later', { hours: String(answer.back.laterLooksHours) })}</p>` : nothing}
    ${answer.back.reducedPercent ? html`<p class="note">${words('off-back-reduced', { percent: answer.back.reducedPercent })}</p>` : nothing}
    ${callTeam(answer, state, words)}
    ${noteLines(answer.notes.filter(name => !(besideRapid && ofLongActing.has(name))), state.plan, words)}
    ${kept(answer, state, words)}
    <div class="cells answers">${answer.recorded ? plain(words('off-back-now'), () => send('offPumpIs', 'on'), words('off-back-now-sub')) : plain(words('off-off-now'), () => send('offPumpIs', 'off'), words('off-off-now-sub'))}
      ${besideRapid ? nothing : html`${haveLong(state, words, send)}${orderWay(answer, state, words, send)}`}
      ${plain(words('off-again'), () => send('offAgain'), words('off-again-sub'))}${answer.travel ? plain(words('off-travel-open'), () => send('offPage', 'travel'), words('off-zones-open-sub')) : plain(words('off-zones-open'), () => send('offPage', 'zones'), words('off-zones-open-sub'))}
      ${plain(words('back'), () => send('offClose'))}</div>${planFindings(state, words)}`, { calm: true });
};

// What concerns long-acting insulin, while the page before holds an injection of the other one.
const second = (state, words, send) => {
  const { answer } = state.off;
  const long = answer.screens.find(screen => screen.dose && screen.kind === 'longActing');
  return sheet(state, words, html`
    <div class="lead-in"><h1 tabindex="-1">${long ? words('off-long') : words('off-more')}</h1></div>
    ${urgent(answer, words, false)}
    ${answer.way === 'longActing' ? html`<p class="lede">${wayLine(answer, state.plan, words)}</p>` : nothing}
    ${long ? html`<div class="answers">${open(long, words, send)}</div>` : nothing}
    ${timetable(answer, state, words)}
    ${callTeam(answer, state, words)}
    ${noteLines(answer.notes.filter(name => ofLongActing.has(name)), state.plan, words)}
    <div class="cells answers">${haveLong(state, words, send)}${orderWay(answer, state, words, send)}${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });
};

// The team says an amount on the telephone: typed, said back to them, and only then written down as an order.
const orderPage = (state, words, send) => sheet(state, words, html`
  ${question('', words('off-order-ask'), words('off-order-help'))}
  ${keypad(state, words, send, { unit: unitWord(state.pad.digits, words) })}
  <div class="end">${state.pad.digits ? main(words('off-order-yes', { dose: unitsText(state.pad.digits, words) }), () => send('offOrderTyped')) : plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });
const orderSure = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('off-order-sure', { dose: state.panel.order.text, insulin: state.plan.doc.longActing.name })}</h1></div>
  <p class="lede">${words('off-order-say')}</p>
  <div class="end">${main(words('off-order-right'), () => send('offOrderSaid'))}${plain(words('off-order-other'), () => send('offOrderOther'))}</div>`, { calm: true });
const orderLarge = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('off-order-large', { dose: state.panel.order.text })}</h1><p class="say">${words('off-order-large-do')}</p></div>
  <div class="end">${callTeam({ call: 'team' }, state, words)}${plain(words('off-order-other'), () => send('offOrderOther'))}${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });

const zones = (state, words, send) => sheet(state, words, html`
  ${question('', words('off-zones'), words('off-zones-help'))}
  ${keypad(state, words, send, { unit: words('off-unit-zones'), decimal: false })}
  <div class="end">${state.pad.digits ? html`${plain(words('off-zones-east', { zones: state.pad.digits }), () => send('offZones', 'east'))}${plain(words('off-zones-west', { zones: state.pad.digits }), () => send('offZones', 'west'))}`
    : plain(words('off-zones-none'), () => send('offZones', 'none'))}${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });

// What the journey makes of the injected basal: amounts for that one day, for the talk with the team. Nothing here is injected now.
const travel = (state, words, send) => {
  const { rule, parts } = state.off.answer.travel;
  const title = by(rule, { ignore: () => words('off-note-travel-ignore'), sameBasal: () => words('off-note-travel-same'), east: () => words('off-note-travel-east'), west: () => words('off-note-travel-west') });
  const where = by(rule, { ignore: () => [], sameBasal: () => [], east: () => [words('off-travel-home')], west: () => [words('off-travel-home'), words('off-travel-there')] });
  return sheet(state, words, html`
    <div class="lead-in"><h1 tabindex="-1">${title}</h1>${parts.length ? html`<p>${words('off-travel-day')} ${words('off-travel-team')}</p>` : nothing}</div>
    ${parts.length ? html`<p class="lede"><b>${words('off-long')}</b></p><ol class="lines">${parts.map((part, at) => html`<li>
      <b>${part.text}</b><br>${where[at]}${part.due ? html`<br>${words('off-travel-due', { clock: part.due.clock, day: state.otherDay(part.due.at) || state.dayWords(part.due.at.slice(0, 10)) })}` : nothing}</li>`)}</ol>
      <p class="warnbox">${words('off-travel-ask')}</p><p class="note">${words('off-travel-rule')}</p>` : where.length ? html`<p class="warnbox">${words('off-travel-parts')}</p>` : nothing}
    <ul class="lines"><li>${words('off-note-travel-clock')}</li><li>${words('off-note-supplies')}</li></ul>
    <div class="end">${main(words('back'), () => send('offPage', 'answer'))}${plain(words('off-zones-other'), () => send('offPage', 'zones'))}</div>`, { calm: true });
};

// Before the long-acting dose is shown the label is read: the two insulins look alike at night.
const vial = (state, words, send) => sheet(state, words, html`
  ${question('', words('off-which'), words('off-which-help'))}
  <div class="cells">${[state.plan.doc.longActing.name, state.plan.doc.rapid.name].sort().map(name => plain(name, () => send('offVial', name)))}${plain(words('off-which-other'), () => send('offVial', ''))}${plain(words('off-which-none'), () => send('offHaveLong', false), words('off-which-none-sub'))}</div>
  <div class="end">${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });
const wrongVial = (state, words, send) => sheet(state, words, html`
  <div class="holdbox"><h1 tabindex="-1">${words('off-wrong')}</h1><p class="say">${words('off-wrong-do', { insulin: state.plan.doc.longActing.name })}</p></div>
  <div class="end">${main(words('look-again'), () => send('offPage', 'vial'))}${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });
const rightVial = (state, words, send) => {
  const long = state.off.answer.screens.find(screen => screen.kind === 'longActing');
  return sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('off-right', { insulin: state.plan.doc.longActing.name })}</h1></div>
  ${state.off.answer.notes.includes('travelAskFirst') ? html`<p class="warnbox">${words('off-note-travel-ask')}</p>` : nothing}
  ${long?.callFirst ? html`<p class="warnbox">${words('off-long-call')}</p>${callTeam({ call: 'team' }, state, words)}` : nothing}
  <p class="lede">${state.plan.doc.offPump.parts > 1 ? words('off-long-part') : words('off-long-once')}</p>
  ${long ? html`<p class="lede">${words('off-long-pump', { day: state.dayWords(long.pumpAsUsualFrom.at.slice(0, 10)), clock: long.pumpAsUsualFrom.clock })} ${long.reducedPercent ? words('off-long-pump-reduced', { percent: long.reducedPercent }) : words('off-long-pump-ask')}</p>` : nothing}
  <div class="end">${main(words('off-right-show'), () => send('offShowLong'))}${hasBothDevices(state.plan) ? plain(words('off-right-pen'), () => send('offShowLong', 'pen'), words('off-right-pen-sub')) : nothing}${plain(words('back'), () => send('offPage', 'answer'))}</div>`, { calm: true });
};

const rows = (entries, total, words) => html`<table class="sum"><caption class="hidden">${words('working')}</caption><tbody>
  ${entries.filter(([, value]) => value && value !== '0').map(([label, value]) => html`<tr><td>${label}</td><td>${time(value)}</td></tr>`)}
  <tr class="total"><td>${words('working-total')}</td><td>${time(total)}</td></tr></tbody></table>`;
const working = (screen, words) => {
  const w = screen.working;
  return screen.kind === 'bridge' ? rows([[screen.singleStep ? words('off-step-open') : words('off-work-basal', { from: w.from.clock, to: w.to.clock }), w.basal], [words('off-work-carried'), w.carried], [words('off-work-meal'), w.meal], [words('off-work-net'), w.net]], screen.dose.number, words)
    : screen.order ? rows([[words('off-work-ordered'), w.exact]], screen.dose.number, words)
    : rows([[words('off-work-day'), w.basal], [words('off-work-factor'), w.factor], [words('off-work-a-day'), w.aDay], [words('off-work-part'), w.parts > 1 ? w.exact : '']], screen.dose.number, words);
};

const dose = (state, words, send) => {
  const screen = state.panel.dose;
  const long = screen.kind === 'longActing';
  const { device, number, text } = screen.dose;
  const pen = device.kind === 'pen';
  return sheet(state, words, html`<div class="dosepage ${pen ? 'pen' : ''}">
    <h1 class="kicker" tabindex="-1">${words('inject-now')}</h1>
    <p class="dose">${doseFigure(number)}<span class="units">&nbsp;${unitWord(number, words)}</span></p>
    <div class="what">${long ? html`<b class="solidword">${words('off-long')}</b>` : html`<b>${words('off-rapid')}</b>`}<b>${words('by-needle', { insulin: screen.name })}</b>
      ${screen.order ? html`<p>${words('off-ordered', { name: screen.order.by, clock: screen.order.clock })}</p>` : nothing}
      ${long && screen.injections.length > 1 ? html`<p>${words('off-injections')}</p><ol class="lines">${screen.injections.map(each => html`<li>${each.text}</li>`)}</ol>` : nothing}
      ${pen ? html`<p>${words('pen-dial', { dose: long ? screen.injections[0].text : text })}</p>` : html`<p>${words('syringe-size', { capacity: String(device.capacity) })}</p><p>${marksLine(device, words)}</p>`}
      ${long || pen ? nothing : html`<p>${words('off-note-vial')}</p>${tooOld(state, words)}`}${spoiled(state, words)}
      ${screen.correctionWaits ? html`<p class="warn">${screen.correctionWaits.until ? words('off-waits-until', { clock: screen.correctionWaits.until.clock }) : words('off-waits')}</p>` : nothing}${planCaution(state, words)}</div>
    <div class="work">${working(screen, words)}</div>
    ${pen ? nothing : syringe(device, words('picture-syringe', { capacity: String(device.capacity), dose: long ? screen.injections[0].text : text }), long ? screen.injections[0].number : number)}</div>
  <div class="end">${main(words('type-units'), () => send('offPage', 'typed'))}${plain(words('not-injecting'), () => send('offRefused'))}
    ${!long && hasBothDevices(state.plan) ? plain(pen ? words('use-syringe') : words('use-pen'), () => send('offWith', pen ? 'syringe' : 'pen')) : nothing}</div>`, { calm: true });
};

const typedPage = (state, words, send) => typeUnits(state, words, send, { device: state.panel.dose.dose.device, done: () => send('offTyped'), back: () => send('offPage', 'dose'), calm: true });

const amount = (state, words) => (state.panel.same ? state.panel.dose.dose.text : unitsText(state.panel.units.replace('.', state.mark), words));
const different = (state, words, send) => anotherAmount(state, words, { given: amount(state, words), dose: state.panel.dose.dose.text, again: () => send('offPage', 'typed'), done: () => send('offGiven'), calm: true });
const given = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('inject-this', { dose: amount(state, words) })}</h1></div>
  <p class="lede">${insulinOf(state.panel.dose.insulin, words)}</p>
  <ul class="lines"><li>${words('inject-place')}</li></ul>
  <div class="end">${main(words('have-injected', { dose: amount(state, words) }), () => send('offGiven'))}${plain(words('back'), () => send('offPage', 'dose'))}</div>`, { calm: true });

// The insulin for it is in, or may be: until the food is too, that insulin counts as nothing but a fall.
const eat = (state, words, send) => sheet(state, words, html`
  <div class="ask"><h1 tabindex="-1">${words('step-eat', { grams: state.panel.meal.grams })}</h1></div>
  <p class="lede">${state.panel.meal.sure === false ? words('off-eat-counts') : words('off-eat-why')}</p>
  <div class="end">${main(words('done-eat'), () => send('offEaten'))}${plain(words('off-not-eaten'), () => send('offNotEaten'))}</div>`, { calm: true });

const pages = { eat, didOther, since, hours, sleep, carbs, glucose, answer: answerPage, second, order: orderPage, orderSure, orderLarge, zones, travel, vial, wrongVial, rightVial, dose, typed: typedPage, different, given };
export const view = (state, words, send) => pages[state.panel.page](state, words, send);
