// The conditions of the rules in their order.
import { exact } from './fraction.mjs';
import { readingIn } from './facts.mjs';

export const repeatSpan = f => (f.row?.repeatHours ?? f.plan.limits.lockHours) * 3600;
export const fallsAbsorbed = f => f.under(f.G, f.plan.high.middle) && !f.acting && f.goesLow(f.absorbed);

const isOver = f => {
  const { plan, events } = f, { middle } = plan.high, { actFrom } = plan.ketones;
  if (f.situation.recordInDoubt) return false;
  if (!f.incident || f.unwell || f.offDead || !f.under(f.G, middle)) return false;
  if (f.blood === null || f.blood === 'HI' || !exact(f.blood).lt(actFrom)) return false;
  // The reading before this one; the same reading recorded is this one.
  const glucoses = events.filter(event => (event.kind === 'glucose' || event.glucose) && event.t <= f.glucoseAt).map(event => ({ t: event.t, reading: event.glucose ?? event }))
    .filter(({ t, reading }) => !(t === f.glucoseAt && reading.value === f.given.value && reading.unit === f.given.unit && reading.reading === f.given.reading));
  if (!glucoses.length || !f.under(readingIn(plan)(glucoses.at(-1).reading), middle)) return false;
  if (!f.lastNeedle) return true;
  if (f.sinceNeedle <= plan.rapid.actionHours * 3600) return false;
  if (!f.needlesIn.includes(f.lastNeedle)) return true;
  const bloods = events.map(event => ({ t: event.t, blood: event.kind === 'ketones' ? event.blood : event.ketones?.blood }))
    .filter(({ t, blood }) => blood !== undefined && t <= f.ketonesAt && !(t === f.ketonesAt && blood === f.blood));
  return bloods.length > 0 && bloods.at(-1).blood !== 'HI' && exact(bloods.at(-1).blood).lt(actFrom);
};

const conditions = {
  LWE: f => ((f.severe || f.has('vomitedAgain', 'fitting', 'cannotSwallow')) && (f.isLow || (f.under(f.G, f.plan.high.middle) && f.wouldLow)))
    || (f.has('fitting', 'cannotSwallow') && f.atOrBelow(f.G, f.plan.ketones.carbohydrateOnlyBelow))
    || (f.has('fitting', 'cannotSwallow', 'drowsy', 'confused') && !f.G && !f.help),
  EMR: f => f.help || f.severe || f.has('fitting', 'cannotSwallow')
    || (f.has('vomitedAgain', 'bellyPain') && (f.acting || f.unknown || f.high)) || (f.has('vomitedOnce') && f.acting),
  TOO: f => f.too,
  LOW: f => f.isLow,
  FAL: f => !!f.number && f.below(f.G, f.plan.high.trigger) && (f.wouldLow || fallsAbsorbed(f)),
  PLN: f => !f.usable,
  FNG: f => !f.G || (f.HI && (!f.repeated || f.sensor)) || (f.sensor && !f.given.noMeter && (f.atOrAbove(f.G, f.plan.high.middle) || f.acting)),
  TST: f => f.notTested && (f.high || f.unwell || f.risk || f.fault || f.offDead || f.incident || f.lastActing),
  NOS: f => f.noStrips && !f.high && (f.unwell || f.risk),
  CAL: f => f.manyDoses && f.sinceNeedle >= repeatSpan(f) && (f.high || (f.acting && !f.fell)),
  ANY: f => f.risk && f.acting,
  DWN: f => f.needlesIn.length > 0 && f.acting && f.fell && !f.high,
  KET: f => f.acting && f.atOrAbove(f.G, f.plan.high.middle),
  EAT: f => f.acting && f.under(f.G, f.plan.high.middle),
  INJ: f => f.high && (f.HI || f.failed || f.pumpFailed || f.fault || (f.noStrips && !(f.correction && f.minutesSinceCorrection <= f.plan.high.firstLook))),
  WAI: f => f.high && !!f.correction && f.minutesSinceCorrection < f.plan.limits.lockHours * 60 && !f.failed,
  PMP: f => f.high,
  SGN: f => f.danger,
  OFF: f => f.offDead,
  CHG: f => f.fault,
  END: isOver,
  NON: () => true,
};
export const decidingRule = f => Object.keys(conditions).find(rule => conditions[rule](f));
