// Every screen, drawn without a browser: one heading, no gap, every button named, every message whole.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const top = fileURLToPath(new URL('../..', import.meta.url));
const site = process.env.STOPGAP_SITE ?? join(top, 'build/plain');
assert.ok(existsSync(join(site, 'views/advice.js')), 'The site is not built yet. Run: bash pwa/run --build-only');

// lit-html asks for a document as soon as it is loaded; a template's strings and values are enough for these tests.
globalThis.document ??= { createTreeWalker: () => ({}), createComment: () => ({}) };
const { reader } = await import(join(site, 'words.js'));
const ftl = readFileSync(join(top, 'i18n/en.ftl'), 'utf8');
const words = reader('en-GB', ftl);
const start = await import(join(site, 'views/start.js'));
const questions = await import(join(site, 'views/questions.js'));
const advice = await import(join(site, 'views/advice.js'));
const record = await import(join(site, 'views/record.js'));
const clock = await import(join(site, 'views/clock.js'));
const join_ = await import(join(site, 'views/join.js'));

const flat = value => {
  if (value?.strings && value?.values) return value.strings.reduce((text, part, index) => text + part + (index < value.values.length ? flat(value.values[index]) : ''), '');
  if (Array.isArray(value)) return value.map(flat).join('');
  if (typeof value === 'function' || typeof value === 'symbol') return '';
  return String(value);
};
const bare = html => html.replace(/<[^>]*>/g, ' ').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

const plan = name => JSON.parse(readFileSync(join(top, `pwa/demo/${name}.json`), 'utf8'));
const dose = { units: 4, text: '4\u00a0units', number: '4', insulin: 'rapid', with: 'syringe', parts: { rescue: 4, meal: 0, basal: 0 },
  working: { correction: '3.6', onBoard: '0', net: '3.6', extra: '4.6', chosen: 'extra', cap: '9.2', cut: null, beforeRounding: '4.6' }, otherBound: '4', timesUsual: '1.2',
  device: { kind: 'syringe', capacity: 50, step: '1', marks: 50, at: 4, figures: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50].map(at => ({ at, text: String(at) })) } };
const stepSlots = { emergencyCall: { number: '112' }, tellThem: {}, sugar: { grams: '15' }, glucagon: { glucagon: 'nasal 3 mg' }, retest: {}, testKetones: {}, stopPump: {},
  confirmChild: { name: 'Tilo', born: '2017-03-14' }, callHome: { name: 'Signe', phone: '+44 0000' }, inject: { dose: '4\u00a0units', insulin: 'lispro', device: 'syringe' },
  eat: { grams: '20' }, changeSet: {}, changeReservoir: {}, changeInsulin: {}, offBody: { dose: '4\u00a0units' }, joinTubing: {}, automationOff: { until: '07:10' }, drink: {}, pumpCorrection: {},
  wait: { until: '07:10' }, setAlarm: { at: '04:10' }, callTeam: { name: 'Night line', phone: '+44 0000' }, getStrips: {}, stopSglt2: {}, longActing: {}, bridge: { hours: '4' },
  restock: {}, closeIncident: {} };
const outcomes = ['lowEmergency', 'emergency', 'tooMuch', 'treatLow', 'noPlan', 'testGlucose', 'eatNow', 'testKetones', 'callTeam', 'injectAtAnyGlucose', 'comingDown', 'inject',
  'eatAndInject', 'eat', 'wait', 'correctByPump', 'offPump', 'changeSet', 'over', 'lookAgain', 'hold', 'recordInDoubt', 'clockInDoubt', 'didYouInject'];
const cautions = ['couldGoLow', 'inGrace', 'planFinding', 'staleWeight', 'cut', 'underStep', 'sensorOnly', 'noStrips', 'longActing', 'newLineUnproven'];
const facts = ['glucose', 'ketones', 'signs', 'seen', 'carbs', 'unwell', 'mistake', 'pumpOnBoard', 'pumpOffersNothing', 'highSince', 'with', 'viewer', 'notBefore', 'recordInDoubt', 'agreement', 'pregnant', 'sglt2Inhibitor'];
const kinds = ['incident', 'glucose', 'ketones', 'sign', 'seen', 'doseShown', 'doseRefused', 'injection', 'pumpDose', 'offBody', 'mistake', 'changed', 'automation', 'pump', 'carbs', 'look', 'call', 'order', 'alarmSet', 'note', 'expires', 'strike'];

const contact = { name: 'Night line', phone: '+44 0000', when: 'any hour', dial: true, readable: true, open: true };
const ring = { team: [contact], emergency: '112', emergencyDial: true, home: [{ ...contact, name: 'Jonas' }] };

const base = (name = 'adult', extra = {}) => {
  const doc = plan(name);
  const lines = { born: '1 May 1980', agreed: '12 October 2026', review: '12 April 2027' };
  return { plan: { doc, lines, demo: true }, planLine: 'Plan 2', ring, findings: [{ place: 'Correction factor', value: '45', text: '45 looks like a number in the other unit.' }], aside: [], damagedLongAgo: [], insulinName: doc.rapid.name, actionHours: '4.5', mark: '.',
    now: { clock: '03:10', text: '2026-11-25T03:10:00+00:00' }, pad: { digits: '' }, ticks: [], record: [], story: [], givenLines: [], answers: [{ name: 'signs', text: 'none', clock: '03:05' }, { name: 'glucose', text: '16.0 mmol/L', clock: '03:06' }], unit: doc.glucoseUnit, readsStrips: true,
    kept: true, missing: [], nightChoice: 'auto', persisted: true, offline: 'yes', engine: '1', release: 'abc', backWaits: [], injectsAt: () => true, unkept: [{ clock: '03:10', text: 'Injected' }], draft: { redo: undefined, glucose: null }, panel: null,
    holds: { holds: [{ what: 'correction', until: '2026-11-25T07:10:00+00:00', clock: '07:10' }, { what: 'automation', until: '2026-11-25T07:10:00+00:00', clock: '07:10' }],
      looks: [{ due: '2026-11-25T04:10:00+00:00', clock: '04:10', what: ['glucose', 'ketones'], overdue: false, minutesLate: 0 }], unanswered: { id: 'a', units: 4, text: '4\u00a0units', clock: '03:10' },
      given: { text: '4\u00a0units', clock: '03:10' }, incident: { since: '', clock: '03:00', recorded: true }, onBoard: { counted: '4', absorbed: '4' } },
    next: { look: null, clock: '04:10', due: '2026-11-25T04:10:00+00:00', what: ['glucose'], overdue: false, late: { number: '0', unit: 'minutes' }, inMinutes: '38' }, order: () => 0, otherDay: () => '26 November 2026', dayWords: day => `day ${day}`,
    advice: { outcome: 'inject', decidedBy: 'KET', gate: null, dose, cautions, hold: { clock: '07:10' }, given: { text: '4\u00a0units', clock: '03:10' }, because: facts.map(fact => ({ fact, value: 'none', from: 'entered' })) },
    steps: Object.entries(stepSlots).map(([id, slots], index) => ({ id, slots, current: index === 0 })), canGoOn: true, ...extra };
};

const whole = (name, template) => {
  const html = flat(template);
  assert.equal((html.match(/<h1/g) ?? []).length, 1, `${name}: one heading`);
  assert.doesNotMatch(bare(html), /undefined|null|\[object|NaN|\{ ?\$/, `${name}: a gap`);
  for (const [, inside] of html.matchAll(/<button[^>]*>(.*?)<\/button>/gs))
    assert.ok(bare(inside).trim() || /<svg/.test(inside), `${name}: a button without a name`);
  return bare(html);
};
const nothing = () => {};

test('every page of a record in doubt stands whole', async () => {
  const pages = await import(join(site, 'views/doubt.js'));
  const doses = [{ clock: '03:05', day: '', text: 'Injected: 4 units' }], cut = [{ clock: '', day: '', text: '{"id":"e1","at":' }];
  for (const child of [false, true]) for (const written of [doses, []]) for (const change of [{}, { plan: true }, { longHours: '24', damaged: cut }]) {
    const state = { ...base(child ? 'child' : 'adult'), kept: true, hours: '8.5', dosesWritten: written, shut: change.plan ? 'plan' : 'store', panel: { name: 'doubtSay', ids: {} },
      unread: [{ path: '/record', reason: 'tooLarge' }], doubt: { hours: '8.5', longHours: null, damaged: [], ...change } };
    for (const [name, page] of Object.entries(pages)) whole(name, page(state, words, nothing));
  }
});

test('every page before an incident stands whole, for both demo plans', () => {
  for (const name of ['adult', 'child']) {
    const state = base(name);
    for (const page of ['first', 'home', 'more', 'remove', 'before', 'change', 'otherTab', 'writeDown']) whole(page, start[page](state, words, nothing));
    for (const missing of [['card'], ['file'], ['card', 'file']]) whole('home', start.home({ ...state, missing }, words, nothing));
    for (const persisted of [true, false, null]) whole('more', start.more({ ...state, persisted }, words, nothing));
    for (const differing of [[], [{ clock: '03:05', day: '', own: 'Injected: 4 units', other: 'Injected: 6 units' }]]) {
      whole('joining', join_.joining({ ...state, candidate: { doc: state.plan.doc, added: ['{}'], known: 5, differing, otherPlan: true } }, words, nothing));
      for (const kept of [true, false]) whole('joined', join_.joined({ ...state, candidate: { joined: { count: '1', kept }, differing } }, words, nothing));
    }
    whole('trouble', start.trouble({ ...state, trouble: 'words' }, words));
    whole('offered', start.offered({ ...state, candidate: { doc: state.plan.doc, lines: state.plan.lines, demo: true } }, words, nothing));
    const reasons = ['notJson', 'tooLarge', 'tooDeep', 'unknownKey', 'duplicateKey', 'missing', 'wrongType', 'wrongUnit', 'outOfRange', 'tooPrecise', 'notAscending', 'duplicateId', 'contradiction', 'newerFormat', 'fingerprintMismatch', 'somethingNew'];
    const text = whole('refused', start.refused({ ...state, candidate: { isFile: true, refused: reasons.map(reason => ({ path: '/plan/high/trigger', reason, got: '140', accepted: '5.0 to 25.0' })) } }, words, nothing));
    assert.match(text, /\/plan\/high\/trigger/);
    assert.match(text, /Possible: 5.0 to 25.0/);
  }
});

test('every question stands whole, empty and typed', () => {
  for (const name of ['adult', 'child']) for (const digits of ['', '16', '0210']) for (const flags of [{}, { noMeter: true }, { retest: true }, { otherUnit: true }, { urine: true }, { ticks: ['leak', 'fitting'] }]) {
    const state = base(name, { pad: { digits }, draft: { redo: 'glucose', carbs: '20', onBoard: '1.5', highSince: 'x' }, highSinceClock: '02:00', ...flags });
    for (const page of ['signs', 'signsUnsure', 'glucose', 'ketones', 'seen', 'given', 'givenMore', 'answersGiven', 'givenUnsure', 'mistake', 'mistakeInsulin']) whole(page, questions[page](state, words, nothing));
    for (const kind of ['pump', 'needle', 'automatic', 'meal', 'long', 'maybe', 'onBoard', 'carbs', 'order', 'mistake', 'yes', 'offBody'])
      whole(`units ${kind}`, questions.entryUnits({ ...state, panel: { kind } }, words, nothing));
    for (const kind of ['pump', 'highSince', 'yes']) whole(`time ${kind}`, questions.entryTime({ ...state, panel: { kind, shownClock: '03:10' } }, words, nothing));
    for (const word of ['HI', 'LO']) whole('meterWord', questions.meterWord({ ...state, panel: { word } }, words, nothing));
    whole('entryGlucose', questions.entryGlucose(state, words, nothing));
    whole('orderSaid', questions.orderSaid({ ...state, panel: { text: '4\u00a0units' } }, words, nothing));
    whole('entrySure', questions.entrySure({ ...state, panel: { text: '4\u00a0units', clock: '03:10' } }, words, nothing));
  }
});

test('every outcome, every step as the current one, every caution and every fact has its words', () => {
  for (const outcome of outcomes) {
    const state = base('adult');
    state.advice = { ...state.advice, outcome };
    for (const [index] of state.steps.entries()) {
      const steps = state.steps.map((step, at) => ({ ...step, current: at === index, mark: at < index ? (at % 2 ? 'done' : 'skipped') : undefined, clock: '03:12' }));
      whole(`${outcome} ${steps[index].id}`, advice.stepsPage({ ...state, steps, injected: index > steps.findIndex(step => step.id === 'inject') ? '4\u00a0units' : undefined }, words, nothing));
    }
    whole(`${outcome} over`, advice.stepsPage({ ...state, injected: '4\u00a0units', steps: state.steps.map(step => ({ ...step, mark: 'done', clock: '03:12' })) }, words, nothing));
  }
  for (const fact of [...facts, ...kinds]) for (const [value, from] of [['none', 'entered'], ['true', 'entered'], ['2026-11-25T03:10:00+00:00', 'recorded']]) {
    const state = base();
    state.advice = { ...state.advice, because: [{ fact, value, from }] };
    whole(`why ${fact}`, advice.why(state, words, nothing));
  }
});

test('every page about the time stands whole', () => {
  const state = base('adult', { lastInjected: { text: 'Injected: 4 units', clock: '03:05' }, wrongEntry: { text: 'Injected: 4 units', clock: '03:05', ahead: false, meant: '06:05' } });
  for (const page of ['rightTime', 'clockJumped', 'clockWrong', 'whenWasIt', 'whenTyped', 'clockTell']) whole(page, clock[page](state, words, nothing));
  for (const lastInjected of [null, state.lastInjected]) for (const school of [null, { who: () => '', held: () => '' }]) whole('rightTime', clock.rightTime({ ...state, lastInjected, school }, words, nothing));
  whole('clockJumped', clock.clockJumped({ ...state, draft: null }, words, nothing));
  whole('clockTell', clock.clockTell({ ...state, said: 'Nobody answered.' }, words, nothing));
  for (const pad of [{ digits: '0605' }, { digits: '06', problem: 'No' }]) whole('whenTyped', clock.whenTyped({ ...state, pad }, words, nothing));
  // A time that has not come yet is offered by nothing.
  assert.doesNotMatch(whole('ahead', clock.whenWasIt({ ...state, wrongEntry: { ...state.wrongEntry, ahead: true, meant: null } }, words, nothing)), /as written|06:05/);
});

test('every page of the dose and after it stands whole', () => {
  const state = base('adult', { panel: { text: '4\u00a0units', clock: '03:21' }, injected: '4\u00a0units' });
  for (const page of ['dosePage', 'typed', 'different', 'injectNow', 'refuse', 'didYouInject', 'testGlucose', 'testKetones', 'recordInDoubt', 'clockInDoubt', 'tubing', 'tubingNot', 'why', 'waiting'])
    whole(page, advice[page](state, words, nothing));
  for (const outcome of ['emergency', 'lowEmergency']) for (const shown of [dose, null])
    whole(`help ${outcome}`, advice.help({ ...state, advice: { ...state.advice, outcome, dose: shown } }, words, nothing));
  whole('late', advice.waiting({ ...state, next: { ...state.next, overdue: true, late: { number: '25', unit: 'minutes' } } }, words, nothing));
  whole('no look', advice.waiting({ ...state, next: null }, words, nothing));
  const pen = { ...dose, device: { kind: 'pen', capacity: 60, step: '1' } };
  whole('pen', advice.dosePage({ ...state, advice: { ...state.advice, dose: pen } }, words, nothing));
});

test('the syringe has as many marks as the core says, and its plunger stands at the mark the core says', () => {
  const state = base();
  for (const [marks, at, step] of [[50, 4, '1'], [60, 5, '0.5'], [50, 30, '1'], [100, 1, '1']]) {
    const device = { ...dose.device, marks, at, step };
    const html = flat(advice.dosePage({ ...state, advice: { ...state.advice, dose: { ...dose, device } } }, words, nothing));
    const drawn = [...html.matchAll(/d="M60\.75 ([\d.]+)h-/g)].map(match => +match[1]);
    assert.equal(drawn.length, marks);
    const edge = +/class="solid" d="M17 ([\d.]+)h42v14/.exec(html)[1];
    // The plunger's edge nearest the needle lies on its mark: the at-th of those drawn.
    assert.ok(Math.abs(drawn[at - 1] - edge) < 0.01, `${marks} marks, at ${at}: ${drawn[at - 1]} against ${edge}`);
  }
});

test('every kind of entry in the record has a sentence', () => {
  const text = kind => ({ incident: { state: 'opened' }, glucose: { value: 16, unit: 'mmol/L', from: 'finger' }, ketones: { blood: 0.8 }, sign: { what: ['drowsy', 'fitting', 'cannotSwallow'] }, seen: { what: ['leak'] },
    doseShown: { units: 4, insulin: 'rapid' }, doseRefused: { shown: 'a' }, injection: { units: 4, insulin: 'rapid', with: 'syringe' }, pumpDose: { units: 3, purpose: 'correction' }, offBody: { units: 4, tubingEnd: 'sink' },
    mistake: { what: 'twice', insulin: 'rapid' }, changed: { what: ['set'] }, automation: { state: 'paused' }, pump: { state: 'off' }, carbs: { grams: 20 }, look: { due: '2026-11-25T04:10:00Z' },
    call: { to: 'team', answered: false }, order: { by: 'x', text: 'y' }, alarmSet: { due: '2026-11-25T04:10:00Z' }, note: { text: 'n' }, expires: { what: 'vial', on: '2026-12-24' }, strike: { target: 'a', reason: 'b' } }[kind]);
  const line = (kind, doc) => record.line({ kind, doc }, words, (event, key) => String(event.doc[key]), day => `day ${day}`).replace(/[\u2066-\u2069]/g, '').replaceAll('\u00a0', ' ');
  for (const kind of kinds) assert.ok(line(kind, text(kind)), kind);
  // What a newer entry says besides is told too, in words.
  const injection = { units: 1, insulin: 'rapid', with: 'syringe' };
  assert.equal(line('injection', injection), 'Injected: 1 unit, rapid-acting');
  assert.equal(line('injection', { ...injection, basalHours: 4 }), 'Injected: 1 unit, rapid-acting, Basal for 4 h');
  assert.equal(line('injection', { ...injection, insulin: 'long', units: 12, zonesEast: 6 }), 'Injected: 12 units, long-acting, journey, 6 zones east');
  assert.equal(line('injection', { ...injection, insulin: 'long', units: 12, zonesEast: -7 }), 'Injected: 12 units, long-acting, journey, 7 zones west');
  assert.equal(line('injection', { ...injection, insteadOf: 'a' }), 'Injected: 1 unit, rapid-acting, in place of an entry that was wrong');
  assert.equal(line('order', { by: 'x', text: 'y', readBack: true }), 'A dose was ordered by x, and said back');
  assert.equal(line('strike', { target: 'a', reason: 'misTap' }), 'A tap was taken back: nothing was injected');
  assert.equal(line('expires', { what: 'vial', on: '2026-12-24' }), 'Insulin vial: use by day 2026-12-24');
  assert.equal(line('expires', { what: 'strips', on: '2026-12-24' }), 'Strips: use by day 2026-12-24');
  assert.equal(line('expires', { what: 'glucagon', on: '2026-12-24' }), 'Glucagon: use by day 2026-12-24');
  assert.equal(line('expires', { what: 'other', on: '2026-12-24', text: 'Sensors' }), 'Sensors: use by day 2026-12-24');
  assert.equal(line('expires', { what: 'other', on: '2026-12-24' }), 'Supplies: use by day 2026-12-24');
});

test('a missing message and a missing slot refuse, they never leave a gap', () => {
  assert.throws(() => words('no-such-message'));
  assert.throws(() => words('held-correction', {}));
  assert.throws(() => words('held-correction', { clock: '' }));
  assert.throws(() => words('held-correction', { clock: undefined }));
});

test('a sentence people read has at most 15 words, and never promises', () => {
  for (const [, id, text] of ftl.matchAll(/^([a-z][\w-]*) = (.*)$/gm)) {
    for (const sentence of text.replace(/\{ \$\w+ \}/g, 'slot').split(/[.?!:]\s/))
      assert.ok(sentence.trim().split(/\s+/).length <= 15, `${id}: ${sentence}`);
    assert.doesNotMatch(text, /\b(safe|fixed|all clear|stop insulin|go back to sleep|don.t|won.t|can.t)\b/i, id);
  }
});

test('every message has a note for translators', () => {
  const lines = ftl.split('\n');
  const bareOnes = lines.filter((line, index) => /^[a-z][\w-]* =/.test(line) && !/^# /.test(lines[index - 1]));
  assert.deepEqual(bareOnes, []);
});

test('the bedside starts from two scripts, both asked for at once, that ask for no other, and what is opened seldom is not in them', () => {
  const built = join(top, 'build/site');
  const page = readFileSync(join(built, 'index.html'), 'utf8');
  assert.deepEqual([...page.matchAll(/(?:src|rel="modulepreload" href)="([^"]+\.js)"/g)].map(match => match[1]), ['app.js', 'app.js']);
  const script = readFileSync(join(built, 'app.js'), 'utf8');
  const asks = text => [...text.matchAll(/(?:^|[\n;}])\s*(?:import|export)\b[^'"();]*?['"](\.[^'"]+)['"]/g)].map(match => match[1]);
  assert.deepEqual(asks(script), []);
  for (const later of ['desk/desk.js', 'desk/story/story.js', 'handover/handover.js']) assert.ok(script.includes(`import("./${later}")`) && existsSync(join(built, later)), later);
  // A key and a file name that only the desk has.
  for (const own of ['published-help', 'desk/tables']) assert.ok(!script.includes(own), own);
});

test('the page says which release it belongs to, and what each of its files must be', () => {
  const built = join(top, 'build/site');
  const page = readFileSync(join(built, 'index.html'), 'utf8');
  const release = readFileSync(join(built, 'release.js'), 'utf8');
  const { id, files } = JSON.parse(release.slice(release.indexOf('{'), release.lastIndexOf(';')));
  assert.ok(page.includes(`<meta name="release" content="${id}">`));
  const parts = page.match(/name="parts" content="([^"]+)"/)[1].split('\n').map(line => line.split(' '));
  // All but the pages themselves and the keeper, which the browser asks for by itself.
  assert.deepEqual(parts.map(([path]) => path), Object.keys(files).filter(path => !path.endsWith('.html') && path !== 'sw.js').sort());
  for (const [path, checksum, ...needs] of parts) {
    assert.equal(checksum, files[path], path);
    assert.ok(needs.every(need => files[need]), path);
  }
  // What every page names itself: nothing of it is loaded without being compared, but icons, the manifest, and what is fetched ahead.
  for (const path of Object.keys(files).filter(name => name.endsWith('.html'))) {
    const named = readFileSync(join(built, path), 'utf8').match(/<(?:script|link)[^>]*>/g);
    assert.ok(named.length > 1, path);
    for (const tag of named.filter(text => !/rel="(icon|apple-touch-icon|manifest|preload)"/.test(text)))
      assert.equal(tag.match(/integrity="([^"]+)"/)?.[1], files[tag.match(/(?:src|href)="([^"]+)"/)[1]], `${path}: ${tag}`);
  }
  for (const [path, checksum] of Object.entries(files)) assert.equal(`sha256-${createHash('sha256').update(readFileSync(join(built, path))).digest('base64')}`, checksum, path);
});

test('the words of the faces are all the words, and no note is shipped', () => {
  const built = name => readFileSync(join(top, 'build/site/i18n', name), 'utf8');
  const ids = text => [...text.matchAll(/^([a-z][\w-]*) *=/gm)].map(match => match[1]);
  const least = { 'en.ftl': 80, 'en-desk.ftl': 80, 'en-off.ftl': 80, 'en-school.ftl': 80, 'en-picture.ftl': 10 };
  const faces = Object.keys(least).map(built);
  assert.deepEqual(faces.flatMap(ids).sort(), ids(ftl).sort());
  assert.ok(faces.every((face, at) => ids(face).length > Object.values(least)[at]));
  assert.doesNotMatch(faces.join('\n'), /^#/m);
});
