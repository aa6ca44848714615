// Plans of every allowed shape: both units, adults and children, every kind of cell, both devices, every status.
import { dayText } from './draw.mjs';

const cellOf = (draw, kinds) => {
  switch (draw.pick(kinds)) {
    case 'none': return 'none';
    case 'share': return { shareOfDaily: draw.pick([0.03, 0.05, 0.075, 0.1, 0.15, 0.2, 0.25]) };
    case 'kg': return { perKg: draw.pick([0.05, 0.1, 0.15, 0.2]) };
    case 'times': return { timesCorrection: draw.pick([1, 1.25, 1.5, 2]), fallback: cellOf(draw, ['share', 'kg', 'add']) };
    default: return { addUnits: draw.pick([0.5, 1, 1.5, 2]) };
  }
};

const ketoneTable = (draw, { mmol, middle, trigger, carbohydrateOnlyBelow }) => {
  const kinds = draw.pick([['share'], ['share', 'kg'], ['times', 'share'], ['add', 'share'], ['none', 'share', 'kg', 'times', 'add']]);
  const cell = (more = []) => cellOf(draw, [...kinds, ...more]);
  const columns = draw.chance(0.6) ? [0, middle, trigger] : [0, middle, trigger, mmol ? 20 : 360];
  const last = columns.length - 1;
  const repeat = share => (draw.chance(share) ? { repeatHours: draw.pick([1, 2, 2, 2, 3, 1.5]) } : {});
  const rows = [
    { from: 0, urine: ['negative', 'trace'], cells: columns.map(() => 'none'), call: 'none' },
    { from: 0.6, urine: ['small'], cells: columns.map((_, at) => (at === 0 ? 'none' : cell(at < 2 ? ['none'] : []))), ...repeat(0.9), call: draw.pick(['none', 'none', 'team']) },
  ];
  if (draw.chance(0.8))
    rows.push({ from: 1.5, urine: ['moderate'], cells: columns.map((_, at) => cell(at === 0 ? ['none'] : [])), ...repeat(0.9), call: draw.pick(['team', 'team', 'emergency']) });
  else rows[1].urine.push('moderate');
  rows.push({ from: 3, urine: ['large'], cells: columns.map((_, at) => (at < last - 1 ? 'none' : cell())), ...repeat(0.8), call: 'emergency' });
  return {
    test: draw.pick(['blood', 'urine', 'none']), actFrom: rows.length === 4 && draw.chance(0.12) ? 1.5 : 0.6, expectedFall: draw.pick([0.2, 0.1, 0.5]),
    columns, combine: draw.pick(['greater', 'greater', 'replace']), rows, hi: cellOf(draw, ['share', 'share', 'kg', 'add', 'times']),
    carbohydrateOnlyBelow, carbohydrateGrams: draw.pick([20, 15, 30]),
  };
};

// Whom to call: always there, by the hour, by the day, over midnight, in words nobody can read, or only at home.
const contactsFor = draw => {
  const contact = (name, when, relation = 'team') => ({ name, relation, phone: `+44 0000 00000${name.length}`, when });
  const byDay = ['08:00-16:30', 'Mon-Fri 08:00-16:00', 'Wed 06:30-22:00'];
  const byNight = ['16:30-08:00', '22:00-06:00', 'Tue-Wed 20:00-07:00', 'Sat-Sun 00:00-23:59'];
  const night = contact('Night line, diabetes unit', 'any hour');
  const day = contact('Day ward', draw.pick(byDay));
  const late = contact('Late desk', draw.pick(byNight));
  const odd = contact('Ward clerk', draw.pick(['mornings', '8 to 4', 'Mon 25:00-26:00']));
  const home = contact('Ada at home', 'any hour', 'home');
  const lists = [[night], [night], [day, night], [day, late], [home, late, day], [day, home], [day, odd, night], [home]];
  return draw.pick(lists);
};

const longActingFor = draw => ({
  name: 'glargine', unitsPerMl: 100, actionHours: draw.pick([24, 24, 20, 36]), onsetHours: 2, inUseDays: 28,
});

// Numbers that a desk would agree: factor and ratio by the daily total, extras that rise with ketones and reach a step.
const agreeable = (draw, plan, mmol) => {
  const total = plan.dailyTotal;
  const capped = device => ({ ...device, capacity: 50, step: total < 30 ? 0.5 : 1 });
  const rising = [[0.1, 0.1], [0.1, 0.15], [0.15, 0.2]], acting = plan.ketones.rows.slice(1);
  acting.forEach((row, at) => {
    const [middle, top] = rising[at + rising.length - acting.length].map(share => ({ shareOfDaily: share }));
    row.cells = plan.ketones.columns.map((_, column) => ['none', middle][column] ?? top);
  });
  const factor = mmol ? Math.round(10000 / total) / 100 : Math.round(18000 / total) / 10;
  plan.day.correctionFactor = [{ from: '00:00', value: factor }];
  plan.day.carbohydrateRatio = [{ from: '00:00', value: Math.round(5000 / total) / 10 }];
  plan.ketones.hi = { shareOfDaily: 0.2 };
  if (plan.ketones.anyGlucose) plan.ketones.anyGlucose = { shareOfDaily: draw.pick([0.1, 0.15]) };
  plan.high.expectedFall = mmol ? 1.5 : 30;
  if (plan.syringe) plan.syringe = capped(plan.syringe);
  if (plan.pen) plan.pen = capped(plan.pen);
  plan.limits.singleDose = Math.max(plan.limits.singleDose, 5);
  plan.limits.shareOfDaily = 0.2;
  plan.limits.rollingShare = Math.max(plan.limits.rollingShare, 0.2);
  if (!plan.contacts.some(({ relation, when }) => relation === 'team' && when === 'any hour'))
    plan.contacts.push({ name: 'Night line', relation: 'team', phone: '+44 0000 000000', when: 'any hour' });
  return plan;
};

export const planFor = (draw, now, minutesEast) => {
  const mmol = draw.chance(0.55), isChild = draw.chance(0.4);
  const either = (inMmol, inMg) => (mmol ? inMmol : inMg);
  const pregnant = !isChild && draw.chance(0.1), sglt2Inhibitor = !pregnant && !isChild && draw.chance(0.1);
  const trigger = draw.pick(either([14, 13.9, 12, 15], [250, 252, 300, 216])), middle = draw.pick(either([10, 8, 11.1], [180, 144, 200]));
  const carbohydrateOnlyBelow = draw.pick(either([5.6, 5, 4.5], [100, 90, 81]));
  const pieces = () => draw.pick([['00:00'], ['00:00', '06:00'], ['00:00', '07:30', '21:00']]);
  const schedule = values => pieces().map((from, at) => ({ from, value: values[at % values.length] }));
  const tubed = draw.chance(0.7), ways = tubed ? draw.pick([['offBody', 'paused'], ['paused'], ['offBody']]) : ['paused'];
  const devices = draw.pick([['syringe'], ['pen'], ['syringe', 'pen']]);
  const step = () => (isChild ? draw.pick([0.5, 0.5, 1]) : draw.pick([1, 1, 0.5, 2]));
  const today = now + minutesEast * 60, day = 86400;
  const share = draw.pick([0.2, 0.2, 0.15, 0.1, 0.25]);
  const agreedIn = draw.chance(0.9) ? -200 : draw.pick([-1, 0, 1, 1, 2, 3]);
  const reviewIn = draw.chance(0.85) || agreedIn > -200 ? 128 : draw.pick([0, -1, -10, -30, -31, 5]);
  const plan = {
    format: 'stopgap.plan', version: 1, id: `p-${draw.whole(1000, 9999)}`, revision: draw.whole(1, 9), title: 'Made up',
    person: {
      name: 'Made Up', born: isChild ? `201${draw.whole(2, 9)}-0${draw.whole(1, 9)}-1${draw.whole(0, 9)}` : `198${draw.whole(0, 9)}-0${draw.whole(1, 9)}-1${draw.whole(0, 9)}`,
      weightKg: isChild ? draw.pick([14, 22.5, 31]) : draw.pick([55, 72, 90.5]), pregnant, sglt2Inhibitor,
      measuredOn: dayText(today - day * draw.pick([20, 20, 60, 90, 91, 200, 365, 366])),
    },
    agreement: {
      status: draw.chance(0.96) ? 'agreed' : draw.pick(['draft', 'withdrawn', 'superseded']), by: 'Dr Made Up', role: 'diabetes consultant',
      on: dayText(now + day * agreedIn),
      reviewBy: dayText(today + day * reviewIn), graceDays: draw.pick([30, 30, 0, 10]), 
      houseRules: ['rollingShare', 'matchedCarbohydrate', 'extraNotReduced'],
      retyped: draw.chance(0.1)
        ? [{ path: '/plan/dailyTotal', reason: 'as in the letter', finding: 'carbohydrateRatioRule', value: '40' }] : [],
    },
    glucoseUnit: either('mmol/L', 'mg/dL'), decimalMark: draw.pick(['.', '.', ',']),
    rapid: { name: draw.pick(['aspart', 'lispro']), unitsPerMl: 100, actionHours: draw.pick([4.5, 4, 5, 3.5, 6, 3]), inUseDays: 28 },
    ...(draw.chance(0.7) ? { longActing: longActingFor(draw) } : {}),
    ...(devices.includes('syringe') ? { syringe: { capacity: draw.pick([30, 50, 100]), step: step() } } : {}),
    ...(devices.includes('pen') ? { pen: { capacity: draw.pick([60, 30, 5]), step: step() } } : {}),
    pump: { tubing: tubed ? 'tubed' : 'tubeless', automation: draw.pick(['none', 'basal', 'basalAndCorrections', 'basalAndCorrections']), step: 0.05 },
    dailyTotal: isChild ? draw.pick([8, 12.5, 18, 24]) : draw.pick([40, 30, 52.5, 65]),
    day: {
      correctionFactor: schedule(draw.shuffled(isChild ? either([8, 6, 5.55], [144, 108.5, 100]) : either([2.5, 3, 1.75], [45, 54, 32.5]))),
      carbohydrateRatio: schedule(draw.shuffled(isChild ? [25, 30, 18.5] : [12, 10, 8.5])),
      target: schedule(either([6.5, 7, 6], [120, 110, 125])), basal: schedule(isChild ? [0.2, 0.25] : [0.75, 0.85]),
    },
    high: {
      trigger, middle, firstLook: draw.pick([60, 60, 90]), secondLook: draw.pick([120, 180, 120]), expectedFall: draw.pick(either([2, 1.5, 3], [36, 50, 30])),
      automationMinutes: draw.pick([90, 60, 120]), looksAfterInjection: draw.pick([[60, 120], [60, 120], [120], [60, 120, 180]]),
    },
    ketones: ketoneTable(draw, { mmol, middle, trigger, carbohydrateOnlyBelow }),
    limits: {
      singleDose: isChild ? draw.pick([3, 5, 2.5]) : draw.pick([10, 8, 6, 15]), shareOfDaily: share, rollingShare: Math.max(share, draw.pick([share, 0.3, 0.5, 0.4])),
      lockHours: draw.pick([4, 3, 4, 2.5, 5]), dosesBeforeCall: draw.pick([2, 2, 3, 1]), dosingCeiling: draw.pick(either([25, 22.2, 30], [450, 400, 540])),
    },
    rounding: draw.pick(['down', 'nearest']), squaring: { ways, preferred: draw.pick(ways), pauseHours: draw.pick([4, 3, 4.5]) },
    offPump: { longActingFactor: 1, parts: draw.pick([1, 2]), cutoverHours: 12, bridgeHours: draw.pick([3, 4]), reducedBasalShare: 0.5 },
    low: {
      below: draw.pick(either([3.9, 4], [70, 72])), veryLow: draw.pick(either([3, 2.8], [54, 50])), grams: draw.pick([15, 15, 10]), recheckMinutes: draw.pick([15, 10]),
      ...(draw.chance(0.5) ? { glucagon: 'nasal 3 mg' } : {}),
    },
    contacts: contactsFor(draw), emergencyNumber: '112',
  };
  if (pregnant || sglt2Inhibitor || draw.chance(0.1))
    plan.ketones.anyGlucose = cellOf(draw, ['share', 'kg', 'times', 'add', ...(draw.chance(0.3) ? ['none'] : [])]);
  return draw.chance(0.5) ? agreeable(draw, plan, mmol) : plan;
};
