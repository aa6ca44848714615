// What must not be done yet, and until when.
const hours = count => count * 3600;

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
  for (const event of f.events) {
    if (event.insulin !== 'long') continue;
    if (event.kind === 'mistake') advice.hold('longActing', event.t + hours(24), now);
    if (event.kind === 'injection' && plan.longActing)
      advice.hold('longActing', event.t + hours(plan.longActing.actionHours), now);
  }
  if (f.situation.mistake?.insulin === 'long') advice.hold('longActing', now + hours(24), now);
  if (advice.holdEnd === null) return;
  advice.hold('correction', advice.holdEnd, now);
  if (advice.holdsKetones) advice.hold('ketoneDose', advice.holdEnd, now);
};
