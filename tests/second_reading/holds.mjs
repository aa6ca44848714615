// What must not be done yet, and until when.
import { offsetOf } from './record.mjs';

const hours = count => count * 3600;

// When the next long-acting dose is due: a day after the last however long that acts; with two parts half a day, six hours after a half
// first part (begun from 12:00 to before 18:00); going west by five zones or more its second half; going east so much sooner.
// A mistake with it holds it for a day.
const longActingDue = ({ plan, events }) => {
  if (!plan.longActing) {
    const mistakes = events.filter(event => event.kind === 'mistake' && event.insulin === 'long').map(event => event.t + hours(24));
    return mistakes.length ? Math.max(...mistakes) : null;
  }
  const { actionHours, onsetHours } = plan.longActing, { parts } = plan.offPump;
  let due = null, covers = null, firstHalf = null;
  for (const event of events.filter(({ insulin, kind }) => insulin === 'long' && (kind === 'injection' || kind === 'mistake'))) {
    const { t, zonesEast = 0 } = event;
    if (event.kind === 'mistake') {
      due = Math.max(due ?? t, t + hours(24));
      if (event.units !== undefined) covers = Math.max(covers ?? 0, t + hours(actionHours));
      continue;
    }
    const shown = events.find(({ kind, id }) => kind === 'doseShown' && id === event.shown && event.shown !== undefined);
    const decided = shown ?? event, clock = (((decided.t + offsetOf(decided.at)) % 86400) + 86400) % 86400;
    const follows = covers !== null && onsetHours <= 2 && decided.t + hours(onsetHours) - covers <= hours(2);
    const half = parts > 1 && !follows && !event.order && clock >= hours(12) && clock < hours(18);
    const journey = parts === 1 && Math.abs(zonesEast) >= 5, second = firstHalf !== null && t - firstHalf < hours(24);
    let next = hours(parts === 1 ? 24 : half ? 6 : 12);
    firstHalf = null;
    if (journey && zonesEast > 0) next -= hours(zonesEast);
    if (journey && zonesEast < 0 && !second) {
      next = hours(-zonesEast);
      firstHalf = t;
    }
    due = t + next;
    covers = Math.max(covers ?? 0, t + (parts > 1 ? next : hours(actionHours)));
  }
  return due;
};

export const runHolds = (f, advice) => {
  const { plan, now } = f, { lockHours } = plan.limits, { pauseHours, preferred } = plan.squaring;
  const automated = plan.pump.automation !== 'none';
  const waitsAnyway = f.acting || f.automationPaused || preferred === 'paused';
  // While ketones are not known, by the row of the dose if it acted; a known row that does not act holds nothing.
  const repeatAfter = row => {
    if (!f.unknown) return f.acting ? f.row.repeatHours : undefined;
    return f.acts(row) ? row.repeatHours : undefined;
  };
  const afterNeedle = (time, row) => {
    advice.hold('correction', time + hours(lockHours), now);
    const repeat = repeatAfter(row);
    if (repeat !== undefined) advice.hold('ketoneDose', time + hours(repeat), now);
    if (automated && (waitsAnyway || f.acts(row))) advice.hold('automation', time + hours(pauseHours), now);
  };
  if (f.lastNeedle) afterNeedle(f.lastNeedle.t, f.rowThen);
  if (advice.rescue.gt(0)) afterNeedle(now, (f.unknown ? null : f.row) ?? f.lastKetonesAt(now)?.row ?? null);
  if (f.too) {
    advice.hold('allRapid', f.tooUntil, now);
    if (automated) advice.hold('automation', f.tooUntil, now);
  }
  const due = longActingDue(f);
  if (due !== null) advice.hold('longActing', due, now);
  if (f.situation.mistake?.insulin === 'long') advice.hold('longActing', now + hours(24), now);
  if (advice.holdEnd === null) return;
  advice.hold('correction', advice.holdEnd, now);
  if (advice.holdsKetones) advice.hold('ketoneDose', advice.holdEnd, now);
};
