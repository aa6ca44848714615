// What the person says now, often near to what the last dose was decided on.
import { dayText, toHundredth, toTenth } from './draw.mjs';
import { bloodKetones, faultWords, glucoseReading, isMmol, signWords, strip, withinRange } from './readings.mjs';
import { calmGlucose } from './record.mjs';

const ketonesNow = (draw, plan, scene, before) => {
  const where = draw.share();
  if (scene === 'middle' && where < 0.8) return { blood: draw.pick([0.6, 0.9, 1.5, 1.6, 2.2]) };
  if (scene === 'down' && where < 0.9) return { blood: draw.pick([0.6, 0.7, 0.9, 1.1]) };
  if (['end', 'waiting', 'rest', 'grave'].includes(scene) && where < 0.8) return { blood: draw.pick([0, 0.1, 0.3, 0.5]) };
  if (typeof before?.blood === 'number' && where < 0.5)
    return { blood: Math.max(0, toTenth(before.blood + draw.pick([0, 0, 0.1, -0.1, -0.2, -plan.ketones.expectedFall, 0.3]))) };
  if (where < 0.72) return { blood: bloodKetones(draw) };
  return where < 0.8 ? strip(draw) : { unknown: draw.pick(['notYet', 'noStrips', 'noStrips', 'error']) };
};

const glucoseNow = (draw, plan, { scene, last, time }, now) => {
  const near = last?.glucose?.unit === plan.glucoseUnit ? last.glucose.value : undefined;
  if (scene === 'down' || scene === 'middle')
    return { value: withinRange(isMmol(plan) ? 5 + draw.share() * 9 : 85 + draw.share() * 165, plan.glucoseUnit), unit: plan.glucoseUnit, from: 'finger' };
  if (scene === 'waiting' && draw.chance(0.8)) {
    const tick = isMmol(plan) ? 0.1 : 1;
    const value = withinRange(plan.high.trigger + draw.whole(0, 60) * tick, plan.glucoseUnit);
    return { value, unit: plan.glucoseUnit, from: 'finger' };
  }
  const calm = (['end', 'rest', 'grave'].includes(scene) && draw.chance(0.8)) || (scene === 'off' && draw.chance(0.5));
  const glucose = calm ? calmGlucose(draw, plan) : glucoseReading(draw, plan, near);
  if (draw.chance(0.2)) glucose.at = time(now - draw.pick([0, 5, 14, 15, 16, 20]) * 60);
  if (draw.chance(0.004)) glucose.at = time(now + draw.pick([60, 120, 121, 180]));
  if (draw.chance(glucose.reading === 'HI' ? 0.7 : 0.1)) glucose.repeated = true;
  if (glucose.from === 'sensor' && draw.chance(0.5)) glucose.noMeter = true;
  return glucose;
};

export const situationFor = (draw, plan, night, now, nowText) => {
  const { time } = night;
  const situation = { now: nowText };
  if (draw.chance(0.95)) situation.glucose = glucoseNow(draw, plan, night, now);
  situation.ketones = ketonesNow(draw, plan, night.scene, night.last?.ketones);
  if (!situation.ketones.unknown && draw.chance(0.12)) situation.ketones.at = time(now - draw.pick([5, 29, 30, 31, 60, 240]) * 60);
  situation.signs = draw.chance(0.11) ? [...new Set([draw.pick(signWords), ...(draw.chance(0.2) ? [draw.pick(signWords)] : [])])] : [];
  if (night.scene === 'grave')
    situation.signs = [draw.pick(['vomitedAgain', 'bellyPain', 'vomitedOnce', 'drowsy', 'cannotSwallow'])];
  situation.seen = draw.chance(0.1) ? [draw.pick(faultWords)] : [];
  if (draw.chance(0.2)) situation.carbs = draw.whole(1, 90);
  if (draw.chance(0.1)) situation.unwell = draw.chance(0.9);
  if (draw.chance(0.02))
    situation.mistake = { what: draw.pick(['wrongInsulin', 'tooManyUnits', 'twice', 'offBodyIntoBody']), insulin: draw.pick(['rapid', 'long']), ...(draw.chance(0.7) ? { units: draw.whole(1, 15) } : {}) };
  if (draw.chance(0.12)) situation.pumpOnBoard = toHundredth(draw.whole(0, 100) * 0.05);
  if (draw.chance(0.05)) situation.pumpOffersNothing = true;
  if (draw.chance(0.25)) situation.highSince = time(now - draw.pick([plan.high.automationMinutes, plan.high.automationMinutes - 1, 20, 200]) * 60);
  if (night.scene === 'rest' && draw.chance(0.4)) {
    situation.ketones = { unknown: 'noStrips' };
    situation.unwell = true;
  }
  if (draw.chance(0.03)) situation.recordInDoubt = draw.chance(0.7);
  if (draw.chance(0.15)) {
    const days = draw.chance(0.8) ? -draw.whole(1, 300) : draw.pick([0, 1, 1, 2, 2, 40]);
    situation.notBefore = dayText(now + 86400 * days);
  }
  if (draw.chance(0.3)) situation.with = draw.pick(['syringe', 'pen'].filter(device => plan[device]));
  return situation;
};
