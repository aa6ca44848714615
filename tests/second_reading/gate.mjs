// The gate: {closed, end, dose, alone}. `end` is when a hold opens.
import { exact, none } from './fraction.mjs';
import { day, dayOf, isPumpCorrection, rescueOf } from './record.mjs';

const startOfDay = text => dayOf(text) * day;

const clockInDoubt = f => {
  const { plan, situation, now } = f;
  if (f.fromTheFuture) return true;
  if (situation.glucose?.at && f.glucoseAt - now > 120) return true;
  if (situation.ketones.at && f.ketonesAt - now > 120) return true;
  return [plan.agreement.on, situation.notBefore].some(text => text && startOfDay(text) - now > day);
};

const shownWithoutAnswer = f => f.events.some(event => {
  if (event.kind !== 'doseShown' || event.insulin !== 'rapid' || f.now - event.t > f.plan.rapid.actionHours * 3600) return false;
  if (!exact(event.parts ? event.parts.rescue ?? 0 : event.units).gt(0)) return false;
  if (f.events.some(other => other.kind === 'doseRefused' && other.shown === event.id)) return false;
  return !f.rapid.some(other => (other.t > event.t && rescueOf(other).gt(0)) || other.answers.includes(event.id));
});

export const gateFor = (f, rule, doses) => {
  const { plan, now } = f, lock = plan.limits.lockHours * 3600;
  if (f.situation.recordInDoubt) return { closed: 'REC' };
  if (clockInDoubt(f)) return { closed: 'CLK' };
  if (shownWithoutAnswer(f)) return { closed: 'ASK' };
  if (rule === 'DWN') return { closed: null };
  if (rule === 'PMP') {
    // A correction by the pump that was struck or has worn off still bars a second one until its lock is over.
    const withMeal = f.rapid.filter(event => (event.parts?.meal ?? 0) > 0);
    const times = [...f.needles, ...withMeal, ...f.events.filter(isPumpCorrection)].map(event => event.t);
    const end = Math.max(...times) + lock;
    return times.length && now < end ? { closed: 'HLD', end } : { closed: null };
  }
  let alone = false;
  // A row that repeats later than the lock holds its dose until then.
  const forKetones = ['ANY', 'KET', 'EAT'].includes(rule), repeat = (f.row?.repeatHours ?? plan.limits.lockHours) * 3600;
  const shut = forKetones ? Math.max(lock, repeat) : lock;
  if (f.lastNeedle && f.sinceNeedle < shut) {
    let end = f.lastNeedle.t + shut;
    if (forKetones && ketoneClockMayOpen(f, rule)) {
      alone = f.sinceNeedle >= repeat;
      end = Math.min(end, f.lastNeedle.t + repeat);
    }
    if (!alone) return { closed: 'HLD', end };
  }
  const dose = doses.rescueFor(rule, f.counted, alone), cap = exact(plan.limits.rollingShare).mul(plan.dailyTotal), action = plan.rapid.actionHours * 3600;
  const given = f.rescues.filter(event => now - event.t <= action);
  let used = given.reduce((sum, event) => sum.add(rescueOf(event)), none);
  if (used.add(dose.rounded).le(cap)) return { closed: null, dose, alone };
  let end = now;
  for (const event of given) {
    used = used.sub(rescueOf(event));
    end = event.t + action + 1;   // the last moment still counts
    if (used.add(dose.rounded).le(cap)) break;
  }
  return { closed: 'HLD', end, byCap: true, alone };
};

const ketoneClockMayOpen = (f, rule) => {
  const changed = what => f.events.some(event => event.kind === 'changed' && event.what.includes(what)
    && ((f.incident && event.t >= f.since) || (event.t <= f.lastNeedle.t && f.lastNeedle.t - event.t <= 3600)));
  const newLine = f.offDead || (changed('set') && changed('reservoir'));
  const highEnough = rule === 'ANY' ? !f.below(f.G, f.plan.ketones.carbohydrateOnlyBelow) : f.high;
  return f.blood !== null && f.acting && !f.fell && f.finger && !!f.number && highEnough && newLine && !f.manyDoses;
};
