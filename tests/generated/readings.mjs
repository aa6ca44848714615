// Readings crowd at the edges of the plan, a display step to either side, and come in both units.
import { toTenth } from './draw.mjs';

export const signWords = ['drowsy', 'confused', 'fastBreathing', 'cannotKeepFluid', 'vomitedAgain', 'vomitedOnce', 'bellyPain', 'fitting', 'cannotSwallow'];
export const faultWords = ['leak', 'blood', 'bentCannula', 'cameOut', 'occlusionAlarm', 'outOfInsulin', 'heatedInsulin', 'pumpDead'];
const strips = ['negative', 'trace', 'small', 'moderate', 'large'];

export const isMmol = plan => plan.glucoseUnit === 'mmol/L';
export const withinRange = (value, unit) => (unit === 'mmol/L' ? toTenth(Math.min(50, Math.max(1, value))) : Math.round(Math.min(900, Math.max(18, value))));

const glucoseNumber = (draw, plan, near) => {
  const mmol = isMmol(plan), step = mmol ? 0.1 : 1;
  let value;
  if (near !== undefined && draw.chance(0.7)) {
    value = near + draw.pick([0, 0, step, -step, mmol ? 1 : 20, mmol ? 3 : 60, -plan.high.expectedFall, plan.high.expectedFall]);
  } else {
    const edge = draw.pick([plan.high.trigger, plan.high.trigger, plan.high.middle, plan.low.below, plan.ketones.carbohydrateOnlyBelow, plan.limits.dosingCeiling]);
    const where = draw.share();
    if (where < 0.35) value = edge + draw.pick([0, step, -step]);
    else if (where < 0.75) value = plan.high.trigger + draw.share() * (mmol ? 12 : 216);
    else if (where < 0.88) value = plan.low.below + draw.share() * (plan.high.trigger - plan.low.below);
    else value = mmol ? 2 + draw.share() * 28 : 36 + draw.share() * 500;
  }
  if (draw.chance(0.75)) return { value: withinRange(value, plan.glucoseUnit), unit: plan.glucoseUnit };
  const unit = mmol ? 'mg/dL' : 'mmol/L', converted = mmol ? value * 18.016 : value / 18.016;
  return { value: withinRange(converted + draw.pick(mmol ? [0, 0.5, -0.5] : [0, 0.03, -0.03]), unit), unit };
};

export const glucoseReading = (draw, plan, near) => {
  if (draw.chance(0.06)) return { reading: 'HI', from: 'finger' };
  if (draw.chance(0.02)) return { reading: 'LO', from: 'finger' };
  return { ...glucoseNumber(draw, plan, near), from: draw.chance(0.8) ? 'finger' : 'sensor' };
};

export const bloodKetones = draw => {
  const where = draw.share();
  if (where < 0.45) return draw.pick([0, 0.1, 0.3, 0.5, 0.6, 0.6, 0.7, 1.4, 1.5, 1.6]);
  if (where < 0.85) return toTenth(0.6 + draw.share() * 2.3);
  return where < 0.95 ? draw.pick([2.9, 3, 3.1, 4.5]) : 'HI';
};
export const strip = draw => ({ urine: draw.pick(strips) });
export const ketoneReading = draw => (draw.chance(0.8) ? { blood: bloodKetones(draw) } : strip(draw));
