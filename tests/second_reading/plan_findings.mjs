// What an advice adds where the plan in use could not be agreed today. The findings are the core's, for the review is not read a
// second time; what follows from them for an advice is worked out here.
import { teamToRing } from './contacts.mjs';
import { instant } from './record.mjs';
import { stepIds } from './steps.mjs';

const correction = /^\/plan\/(day\/(correctionFactor|target)|high|ketones|limits|dailyTotal|rapid|syringe|pen)/;
const grams = /^\/plan\/(day\/(correctionFactor|carbohydrateRatio)|rapid|syringe|pen)/;

const localOf = now => {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(now) ?? [null, '+', '0', '0'];
  const ahead = Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);
  return instant(now) + (sign === '-' ? -60 : 60) * ahead;
};

export const withPlanFindings = (answer, { plan, situation }, findings) => {
  if (!findings.length) return answer;
  const { cautions, call, dose, carbohydrateGrams, steps } = answer;
  const said = { ...answer, cautions: [...cautions, 'planFinding'].sort() };
  const some = places => findings.some(({ path }) => places.test(path));
  const showsCorrection = dose?.parts.rescue > 0 || cautions.includes('underStep');
  const showsGrams = dose?.parts.meal > 0 || carbohydrateGrams > 0;
  const bears = (showsCorrection && some(correction)) || (showsGrams && some(grams));
  if (!bears || call !== 'none') return said;
  const callTeam = { id: 'callTeam', key: 'step-call-team', slots: teamToRing(plan, localOf(situation.now)) };
  const order = ({ id }) => stepIds.indexOf(id);
  return { ...said, call: 'team', steps: [...steps, callTeam].sort((a, b) => order(a) - order(b)) };
};
