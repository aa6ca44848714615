// A phone that dies at a chosen write, and a person who does what each screen asks, from whatever screen the phone comes back with.
// Both live in the page, so that a whole incident takes a second: it is walked through once for every write.

// The k-th write dies: `before` takes back the turn with its first entry in it, else all of it is kept and nothing after it is. From
// then on the page can neither write nor read, until it is closed. What a turn wrote is told by the kinds of its entries. With `full`
// nothing dies: from the k-th write on there is no room for any.
export const armed = ({ at, before, full }) => {
  const begin = IDBDatabase.prototype.transaction;
  const dying = { dead: false, writes: [] };
  window.dying = dying;
  IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
    if (dying.dead) throw new DOMException('dead', 'InvalidStateError');
    const turn = begin.call(this, stores, mode, ...rest);
    if (mode !== 'readwrite') return turn;
    dying.writes.push([]);
    turn.number = dying.writes.length;
    if (turn.number === at && !before && !full) turn.addEventListener('complete', () => { dying.dead = true; });
    return turn;
  };
  for (const name of ['add', 'put']) {
    const write = IDBObjectStore.prototype[name];
    IDBObjectStore.prototype[name] = function (value, ...key) {
      const { number } = this.transaction;
      if (full && number >= at) throw new DOMException('full', 'QuotaExceededError');
      const request = write.call(this, value, ...key);
      // The seal of a record is written with every entry of it, and is none.
      if (!String(key[0]).startsWith('seal')) dying.writes[number - 1].push(this.name === 'events' ? JSON.parse(value.text).kind : key[0] ?? this.name);
      if (number === at && before) request.addEventListener('success', () => { dying.dead = true; request.transaction.abort(); });
      return request;
    };
  }
};

// One who is awake enough to do what is asked, and who remembers whether the needle went in. Ends at the screen `until`, when the
// phone is dead, or where nothing can be done; `onward` goes on from there first.
export const person = async ({ readings, units, until, injected = false, onward = false }) => {
  const root = document.documentElement;
  // The clock of the page stands still, and its timers with it.
  const wait = () => new Promise(done => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); });
  const plain = text => text.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();
  const button = text => [...document.querySelectorAll('button')].find(one => plain(one.innerText).startsWith(text));
  const settled = async () => {
    do await wait(); while (document.body.getAttribute('aria-busy') === 'true' && !window.dying?.dead);
  };
  const amount = number => `${number} ${number === '1' ? 'unit' : 'units'}`;
  const met = [], noted = [];
  const tap = async (...texts) => {
    const found = texts.map(button).find(Boolean);
    if (!found) throw new Error(`no "${texts.join('" or "')}" on ${root.dataset.screen}: ${plain(document.body.innerText)}`);
    found.click();
    await settled();
  };
  const type = async (digits, then) => {
    for (const digit of button(then) ? '' : digits) { (digit === '.' ? document.querySelector('[aria-label="decimal point"]') : button(digit)).click(); await settled(); }
    await tap(then);
  };
  const step = async () => {
    const title = plain(document.querySelector('.step.cur h1, .step.cur h2')?.innerText ?? '');
    if (!title) return tap('All steps are seen');
    if (/infusion set/.test(title)) return tap('The set is changed');
    if (/New reservoir/.test(title)) return tap('The reservoir is new');
    if (/into a sink/.test(title)) return tap('The pump gave it', 'Look at the end of the tubing');
    if (/Join the tubing/.test(title)) return tap('It is joined, and dry');
    if (/Automation off/.test(title)) return tap('Automation is off');
    if (/Drink/.test(title)) return tap('I drink');
    if (/Set the alarm/.test(title)) return tap('The alarm is set');
    throw new Error(`no way past the step "${title}"`);
  };
  const ways = {
    home: () => tap('Start'), waiting: () => tap('Test now'),
    signs: () => tap('None of these'), seen: () => tap('None of these'),
    glucose: () => type(readings.glucose, `Finger: ${readings.glucose} mmol/L`),
    ketones: () => type(readings.ketones, `Yes, ketones are ${readings.ketones}`),
    // What is in the record is not said again.
    given: () => (button('That is all') || !readings.pump ? tap('That is all', 'Nothing') : tap('A correction by the pump')),
    entryUnits: () => type(readings.pump.units, `Yes, ${amount(readings.pump.units)}`),
    entryTime: () => (button('At 03:05') ? tap('At 03:05') : type(readings.pump.at, `Yes, at ${readings.pump.at.slice(0, 2)}:${readings.pump.at.slice(2)}`)),
    entryGlucose: () => type(readings.pump.glucose, `Yes, ${readings.pump.glucose} mmol/L`),
    rightTime: () => tap('Yes, it is'),
    dosePage: () => tap('Type the units you see'),
    typed: () => type(units, `I see ${amount(units)}`),
    injectNow: () => { injected = true; return tap(`I have injected ${amount(units)}`); },
    didYouInject: () => tap(injected ? `Yes, ${amount(units)}` : 'No, nothing was injected'),
    stepsPage: step,
    tubing: () => tap('Over a sink'),
    writeDown: () => { noted.push(`${plain(document.querySelector('.holdbox .clock').innerText)} ${plain(document.querySelector('.holdbox .say').innerText)}`); return tap('I have written it down'); },
  };
  await settled();
  for (let taps = 0; taps < 200; taps += 1) {
    if (window.dying?.dead) return { dead: true, injected, met };
    const { screen } = root.dataset;
    if (met.at(-1) !== screen) met.push(screen);
    if (noted.length && /\bSaved\b|\bare saved\b/.test(document.body.innerText)) throw new Error(`says that it is saved: ${plain(document.body.innerText)}`);
    if ((until === screen && (taps > 0 || !onward)) || !ways[screen]) return { screen, injected, met, noted };
    await ways[screen]();
  }
  throw new Error(`no end: ${met.join(', ')}`);
};
