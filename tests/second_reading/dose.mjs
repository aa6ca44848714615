// The dose and the carbohydrate to match, on exact fractions; rounded once per part, at the end.
import { exact, greater, lesser, none } from './fraction.mjs';

export const dosing = f => {
  const { plan, situation } = f, { limits, ketones } = plan;
  const device = plan[situation.with ?? (plan.syringe ? 'syringe' : 'pen')], step = exact(device.step);
  const cap = lesser(lesser(limits.singleDose, exact(limits.shareOfDaily).mul(plan.dailyTotal)), device.capacity);
  const whole = amount => exact(amount.div(step).floor()).mul(step);

  const unitsOf = (cell, net, alone, correction) => {
    if (cell === 'none') return null;
    if (cell.shareOfDaily !== undefined) return exact(cell.shareOfDaily).mul(plan.dailyTotal);
    if (cell.perKg !== undefined) return exact(cell.perKg).mul(plan.person.weightKg);
    if (cell.addUnits !== undefined) return alone ? exact(cell.addUnits) : net.add(cell.addUnits);
    return correction.gt(0) ? exact(cell.timesCorrection).mul(correction) : unitsOf(cell.fallback, net, alone, correction);
  };
  const cellNow = () => {
    const columns = ketones.columns;
    let at = 0;
    columns.forEach((edge, i) => { if (i > 0 && f.atOrAbove(f.G, edge)) at = i; });
    return f.row.cells[f.HI ? columns.length - 1 : at];
  };
  const extraOf = (rule, net, alone, correction) => {
    const units = cell => unitsOf(cell, net, alone, correction);
    if (rule === 'INJ') return f.HI ? units(ketones.hi) : null;
    const extra = units(rule === 'ANY' ? ketones.anyGlucose : cellNow());
    if (!f.HI) return extra;
    const atHI = units(ketones.hi);
    return extra && atHI ? greater(extra, atHI) : extra ?? atHI;
  };
  const choice = (rule, net, alone, correction) => {
    const extra = extraOf(rule, net, alone, correction), amountOfExtra = extra ?? none;
    const takesExtra = alone || (extra !== null && (ketones.combine === 'replace' || amountOfExtra.ge(net)));
    return { extra: amountOfExtra, takesExtra, amount: takesExtra ? amountOfExtra : net };
  };
  // `alone`: the ketone clock's dose, the extra without the correction.
  const rescueFor = (rule, onBoard, alone) => {
    const net = f.netOf(onBoard);
    const chosen = choice(rule, net, alone, f.correctionNow);
    let { extra, amount } = chosen;
    if (f.sensorOnly) {
      // Never more than the same number from a finger would give.
      const correction = f.correctionOf(f.number.v);
      const byFinger = choice(rule, greater(0, correction.sub(onBoard)), alone, correction).amount;
      if (amount.gt(byFinger)) extra = amount = byFinger;
    }
    const before = lesser(amount, cap), under = before.lt(step), steps = before.div(step);
    const rounded = plan.rounding === 'nearest' ? exact(steps.sub(exact('0.5')).ceil()) : exact(steps.floor());   // ties down
    return {
      net, extra, takesExtra: chosen.takesExtra, before, cut: amount.gt(cap) ? amount.sub(cap) : null, under,
      rounded: under ? none : lesser(rounded.mul(step), whole(cap)),
    };
  };
  const mealPart = (grams, rescue) => {
    if (!grams || f.vomiting) return none;
    return lesser(whole(exact(grams).div(f.ratio)), whole(greater(0, exact(device.capacity).sub(rescue))));
  };

  const upToFive = grams => exact(grams.div(5).ceil() * 5n);
  const matchedInFull = (rescue, onBoard) => upToFive(greater(0, rescue.add(onBoard).sub(f.correctionToMatch)).mul(f.ratio));
  return {
    device: situation.with ?? (plan.syringe ? 'syringe' : 'pen'), step, cap, cellNow, rescueFor, mealPart, matchedInFull, matched: (rescue, onBoard) => lesser(matchedInFull(rescue, onBoard), 60),
    gramsForALow: () => greater(plan.low.grams, lesser(upToFive(f.absorbed.mul(f.ratio)), 60)),
  };
};
