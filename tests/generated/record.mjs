// Records: a scene worth a night, then events that happen to be there too. Times crowd at the spans of the plan.
import { dayText, timeText, toHundredth } from './draw.mjs';
import { faultWords, glucoseReading, isMmol, ketoneReading, signWords, withinRange } from './readings.mjs';

const scenes = ['empty', 'correction', 'correction', 'needle', 'needle', 'needle', 'two', 'noise', 'noise', 'end', 'shown',
  'down', 'middle',
  'waiting', 'end', 'off', 'off', 'misTap', 'twice', 'beside', 'calls', 'closed', 'rest', 'grave'];
const kinds = ['incident', 'glucose', 'ketones', 'ketones', 'sign', 'seen', 'injection', 'pumpDose', 'pumpDose', 'offBody', 'mistake', 'changed', 'changed',
  'automation', 'pump', 'carbs', 'look', 'call', 'order', 'alarmSet', 'note', 'strike', 'long', 'expires'];

// The values of a calm end: under the middle in most draws.
export const calmGlucose = (draw, plan) => ({
  value: withinRange(isMmol(plan) ? 5 + draw.share() * 6 : 90 + draw.share() * 110, plan.glucoseUnit), unit: plan.glucoseUnit, from: 'finger' });

export const nightFor = (draw, plan, now, minutesEast) => {
  const lock = plan.limits.lockHours * 60, action = plan.rapid.actionHours * 60;
  const repeats = plan.ketones.rows.flatMap(row => (row.repeatHours ? [row.repeatHours * 60] : []));
  const edges = [lock, lock, action, plan.high.firstLook, plan.high.secondLook, ...repeats, ...repeats, 24 * 60, 30, 60];
  const time = seconds => timeText(draw, seconds, draw.chance(0.95) ? minutesEast : 0);
  const minutesAgo = (most = 1800) => {
    const where = draw.share();
    const minutes = where < 0.4 ? draw.pick(edges) + draw.pick([0, 0, -1, 1]) : where < 0.8 ? draw.whole(1, 300) : draw.whole(1, 1800);
    return Math.min(most, minutes);
  };
  const devices = ['syringe', 'pen'].filter(device => plan[device]);

  const events = [], injections = [], pumpDoses = [];
  const add = (minutes, kind, keys) => {
    const event = { id: `${draw.pick(['a', 'b', 'e', 'x'])}${events.length + 1}`, at: time(now - minutes * 60), kind, ...keys };
    events.push(event);
    return { event, minutes };
  };
  const after = (minutes, least, most) => Math.max(0, minutes - draw.whole(least, most));

  const inject = (minutes, keys = {}) => {
    const device = draw.pick(devices), step = plan[device].step;
    const units = keys.units ?? step * draw.whole(1, plan.dailyTotal > 25 ? 5 : 3);
    const event = { insulin: 'rapid', units, with: device, ...keys };
    const whole = draw.share();
    if (keys.units === undefined) {
      if (whole < 0.25) event.parts = { rescue: units, meal: 0, basal: 0 };
      else if (whole < 0.35) event.parts = { rescue: 0, meal: units, basal: 0 };
      else if (whole < 0.42) {
        event.parts = { rescue: 0, meal: 0, basal: units };
        if (draw.chance(0.6)) event.basalHours = draw.pick([0.5, 1, 2.5, 4]);
      }
      else if (whole < 0.52 && units > step) event.parts = { rescue: toHundredth(units - step), meal: step, basal: 0 };
    }
    if (draw.chance(0.75)) event.glucose = glucoseReading(draw, plan, plan.high.trigger);
    if (draw.chance(0.75) && !keys.ketones) event.ketones = ketoneReading(draw);
    if (draw.chance(0.1)) event.sure = false;
    const made = add(minutes, 'injection', event);
    injections.push(made);
    return made;
  };
  // Basal and a correction in one needle, decided on a reading around the trigger.
  const beside = minutes => {
    const device = draw.pick(devices), { step } = plan[device], edge = plan.high.trigger, tick = isMmol(plan) ? 0.1 : 1;
    const value = withinRange(edge + draw.pick([0, -tick, tick, -20 * tick, 20 * tick]), plan.glucoseUnit);
    return inject(minutes, {
      units: 3 * step, with: device, parts: { rescue: step, meal: 0, basal: 2 * step },
      ...(draw.chance(0.7) ? { basalHours: draw.pick([1, 3, 3.5, 4]) } : {}),
      ...(draw.chance(0.85) ? { glucose: { value, unit: plan.glucoseUnit, from: 'finger' } } : {}),
      ...(draw.chance(0.7) ? { ketones: ketoneReading(draw) } : {}),
    });
  };
  const called = (minutes, keys = {}) => add(minutes, 'call', { to: 'team', answered: draw.chance(0.6), ...keys });
  const pumpDose = (minutes, purpose) => pumpDoses.push(add(minutes, 'pumpDose', {
    units: toHundredth(draw.whole(1, 80) * 0.05), purpose, ...(draw.chance(0.8) ? { glucose: glucoseReading(draw, plan, plan.high.trigger) } : {}) }));
  const suspected = (minutes, least, most, share) => (draw.chance(share) ? { suspectedSince: time(now - (minutes + draw.whole(least, most)) * 60) } : {});

  const scene = draw.pick(scenes);
  if (scene === 'correction') pumpDose(minutesAgo(Math.round(action) + 1), 'correction');
  if (scene === 'needle' || scene === 'two') {
    const minutes = minutesAgo(500);
    inject(minutes);
    if (draw.chance(0.6))
      add(Math.max(0, minutes + draw.pick([0, -5, 30, 60, 61])), 'changed', { what: draw.pick([['set', 'reservoir'], ['set', 'reservoir', 'insulin'], ['set'], ['reservoir']]) });
    if (draw.chance(0.4)) pumpDose(minutes + draw.whole(5, 180), 'correction');
    if (draw.chance(0.3)) add(minutes + draw.whole(0, 120), 'incident', { state: 'opened', ...suspected(minutes + 120, 0, 240, 0.4) });
  }
  if (scene === 'two') {
    inject(minutesAgo(800));
    if (draw.chance(0.3)) inject(minutesAgo(400));
  }
  if (scene === 'end') {
    inject(Math.round(action) + draw.pick([0, 1, -1, 60, 120]));
    for (let i = 0; i < 2; ++i) {
      if (draw.chance(0.9)) add(draw.whole(20, 200), 'glucose', calmGlucose(draw, plan));
      if (draw.chance(0.9)) add(draw.whole(20, 200), 'ketones', { blood: draw.pick([0.1, 0.2, 0.5, 0.6]) });
    }
  }
  if (scene === 'shown' || draw.chance(0.05)) {
    const minutes = minutesAgo(400), units = draw.whole(1, 5);
    const parts = draw.pick([{ rescue: units, meal: 0, basal: 0 }, { rescue: 0, meal: units, basal: 0 }]);
    const shown = add(minutes, 'doseShown', { units, insulin: 'rapid', ...(draw.chance(0.3) ? { parts } : {}) }).event.id;
    if (draw.chance(0.3)) add(after(minutes, 0, 20), 'doseRefused', { shown });
    else if (draw.chance(0.4)) inject(after(minutes, 1, 20), { shown });
  }

  if (scene === 'waiting') {
    const { trigger, firstLook, secondLook } = plan.high, value = withinRange(trigger + (isMmol(plan) ? 8 : 140), plan.glucoseUnit);
    pumpDoses.push(add(draw.pick([1, firstLook - 1, firstLook, firstLook + 10, secondLook, Math.round(lock) - 1]), 'pumpDose', {
      units: 1.5, purpose: 'correction', glucose: { value, unit: plan.glucoseUnit, from: 'finger' } }));
  }
  if (scene === 'off') {
    const minutes = draw.pick([5, 60, 200, 1439, 1440, 1500, 2879, 2880, 4000]);
    add(minutes, 'pump', { state: 'off' });
    if (draw.chance(0.3)) {
      const run = draw.pick([29, 30, 31, 60]), again = draw.whole(1, 60);
      if (again + run < minutes) {
        add(again + run, 'pump', { state: 'on' });
        add(again, 'pump', { state: 'off' });
      }
    }
    for (let calls = draw.pick([0, 1, 1, 2]); calls > 0; --calls)
    {
      const before = draw.pick([0, -1, 1, 1440, 1441, 2880, minutes - 20, minutes - 2]);
      called(Math.max(0, minutes - before), { answered: draw.chance(0.8) });
    }
  }
  if (scene === 'misTap') {
    const minutes = draw.pick([20, 60, 119, Math.round(lock) - 5]), seconds = count => minutes - count / 60;
    const shown = add(minutes, 'doseShown', { units: 2, insulin: 'rapid' }).event.id;
    const rounds = draw.pick([1, 1, 1, 2]);
    for (let round = 0; round < rounds; ++round) {
      const start = 10 + round * 120, wait = draw.pick([1, 20, 59, 60, 61, 90]);
      const given = inject(seconds(start), { units: 2, ...(draw.chance(0.9) ? { shown } : {}) }).event.id;
      if (draw.chance(0.1)) add(seconds(start + wait / 2), 'look', { due: time(now + 600), what: ['glucose'] });
      if (draw.chance(0.1)) add(seconds(start + wait / 2), 'note', { text: 'the phone rang' });
      add(seconds(start + wait), 'strike', { target: given, reason: draw.chance(0.85) ? 'misTap' : 'typed wrongly' });
    }
  }
  if (scene === 'twice') {
    const minutes = draw.pick([Math.round(lock) + 5, Math.round(lock) + 1, Math.round(action) + 10, 130, 60]);
    const device = draw.pick(devices), { step } = plan[device];
    const first = inject(minutes, { units: step * draw.whole(1, 3), with: device }).event.id;
    if (draw.chance(0.5)) add(minutes + 5, 'changed', { what: ['set', 'reservoir'] });
    let strike;
    if (draw.chance(0.5)) strike = add(minutes - 12, 'strike', { target: first, reason: 'said wrong' }).event.id;
    const again = Math.max(0, minutes + draw.pick([-10, -6, 0, 6, 10]));
    inject(again, { units: step * draw.whole(1, 3), with: device, insteadOf: first });
    if (strike && draw.chance(0.5)) called(minutes - 15, { for: strike });
  }
  if (scene === 'beside') {
    beside(minutesAgo(400));
    if (draw.chance(0.4)) beside(minutesAgo(300));
    if (draw.chance(0.5)) add(minutesAgo(500), 'pump', { state: 'off' });
  }
  if (scene === 'calls' || scene === 'closed') {
    const ago = [Math.round(lock) + 10, 130, 200, Math.round(action) - 1, Math.round(action) + 1];
    for (let doses = plan.limits.dosesBeforeCall; doses > 0; --doses) inject(draw.pick(ago));
    if (scene === 'closed') add(draw.whole(20, 120), 'incident', { state: 'closed' });
    if (scene === 'closed' && draw.chance(0.5)) add(draw.whole(1, 19), 'incident', { state: 'opened' });
    if (draw.chance(0.7)) called(draw.pick([29, 30, 31, 90]), { answered: draw.chance(0.2) });
  }

  const oneMore = {
    incident: minutes => add(minutes, 'incident', draw.chance(0.6) ? { state: 'opened', ...suspected(minutes, 0, 300, 0.3) } : { state: 'closed' }),
    glucose: minutes => add(minutes, 'glucose', glucoseReading(draw, plan)),
    ketones: minutes => add(minutes, 'ketones', ketoneReading(draw)),
    sign: minutes => add(minutes, 'sign', { what: [draw.pick(signWords)] }),
    seen: minutes => {
      const what = draw.pick(faultWords);
      add(minutes, 'seen', { what: [what] });
      if (draw.chance(0.5)) return;
      if (what === 'heatedInsulin' && draw.chance(0.6)) {
        add(after(minutes, 0, 60), 'changed', { what: ['reservoir'] });
        if (draw.chance(0.7)) add(after(minutes, 0, 60), 'changed', { what: ['insulin'] });
        return;
      }
      if (what === 'pumpDead') add(after(minutes, 1, 60), 'pump', { state: 'on' });
      else add(after(minutes, 0, 60), 'changed', { what: [{ outOfInsulin: 'reservoir', heatedInsulin: 'insulin' }[what] ?? 'set'] });
    },
    injection: minutes => inject(minutes),
    long: minutes => add(minutes, 'injection', {
      insulin: 'long', units: draw.whole(2, 20), with: draw.pick(devices),
      ...(draw.chance(0.2) ? { zonesEast: draw.whole(-14, 14) } : {}) }),
    pumpDose: minutes => pumpDose(minutes, draw.pick(['correction', 'meal', 'automatic'])),
    offBody: minutes => add(minutes, 'offBody', { units: toHundredth(draw.whole(1, 80) * 0.05), tubingEnd: draw.pick(['sink', 'sink', 'body', 'unsure']) }),
    mistake: minutes => add(minutes, 'mistake', {
      what: draw.pick(['wrongInsulin', 'tooManyUnits', 'twice', 'offBodyIntoBody']), insulin: draw.pick(['rapid', 'rapid', 'long']), ...(draw.chance(0.7) ? { units: draw.whole(1, 12) } : {}) }),
    changed: minutes => add(minutes, 'changed', { what: draw.pick([['set'], ['set', 'reservoir'], ['insulin'], ['reservoir', 'insulin']]) }),
    automation: minutes => add(minutes, 'automation', { state: draw.pick(['paused', 'on']) }),
    pump: minutes => add(minutes, 'pump', { state: draw.pick(['off', 'on', 'on']) }),
    carbs: minutes => {
      const doses = [...injections, ...pumpDoses];
      add(minutes, 'carbs', { grams: draw.whole(5, 60), ...(doses.length && draw.chance(0.7) ? { for: draw.pick(doses).event.id } : {}) });
    },
    look: minutes => add(minutes, 'look', { due: time(now - minutes * 60 + 3600), what: draw.pick([['glucose'], ['ketones'], ['glucose', 'ketones']]) }),
    call: minutes => add(minutes, 'call', { to: draw.pick(['team', 'team', 'emergency', 'home']), answered: draw.chance(0.5) }),
    order: minutes => add(minutes, 'order', {
      by: 'Dr Made Up', units: draw.whole(1, 6), insulin: 'rapid', text: 'as agreed on the call',
      ...(draw.chance(0.4) ? { readBack: draw.chance(0.7) } : {}) }),
    alarmSet: minutes => add(minutes, 'alarmSet', { due: time(now - minutes * 60 + 3600) }),
    expires: minutes => add(minutes, 'expires', {
      what: draw.pick(['vial', 'strips', 'glucagon', 'other']), on: dayText(now + 86400 * draw.whole(-20, 90)),
      ...(draw.chance(0.5) ? { text: 'in the fridge door' } : {}) }),
    note: minutes => add(minutes, 'note', { text: 'slept badly' }),
    strike: minutes => {
      if (!events.length) return;
      const strike = add(minutes, 'strike', { target: draw.pick(events).id, reason: 'typed wrongly' }).event.id;
      if (draw.chance(0.5)) add(after(minutes, 0, 10), 'call', { to: 'team', answered: draw.chance(0.8), for: strike });
      else if (draw.chance(0.2)) add(after(minutes, 1, 1), 'strike', { target: strike, reason: 'was right after all' });
    },
  };
  for (let more = scene === 'empty' ? 0 : draw.pick([0, 0, 1, 2, 3, 5]); more > 0; --more) oneMore[draw.pick(kinds)](minutesAgo());

  for (const { event, minutes } of [...pumpDoses, ...injections])
    if ((event.purpose === 'meal' || event.parts?.meal > 0) && draw.chance(0.5)) add(after(minutes, 0, 10), 'carbs', { grams: draw.whole(5, 60), for: event.id });
  if (draw.chance(0.01)) add(-draw.pick([2, 3, 10]), 'note', { text: 'odd clock' });
  if (scene === 'down') {
    const device = plan.syringe ? 'syringe' : 'pen', spans = edges.filter(minutes => minutes >= 60 && minutes <= 400);
    inject(draw.pick(spans) + draw.pick([0, 0, 1, -1, 20]), { units: plan[device].step, with: device, ketones: { blood: draw.pick([1.2, 1.8, 2.4]) } });
  }
  // The order in the text is not the order in time.
  for (let i = events.length - 1; i > 0; --i) {
    const j = draw.whole(0, i);
    if (draw.chance(0.3)) [events[i], events[j]] = [events[j], events[i]];
  }
  return { scene, events, last: (injections[0] ?? pumpDoses[0])?.event, time };
};
