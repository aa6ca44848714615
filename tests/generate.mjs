#!/usr/bin/env node
// Made-up requests of `advise`, valid and varied, from a seed: node tests/generate.mjs COUNT SEED, one request a line.
import { pathToFileURL } from 'node:url';
import { drawing, timeText } from './generated/draw.mjs';
import { planFor } from './generated/plan.mjs';
import { nightFor } from './generated/record.mjs';
import { situationFor } from './generated/situation.mjs';

const firstNight = Date.UTC(2026, 10, 25) / 1000;

const requestFrom = draw => {
  const minutesEast = draw.pick([0, 60, -300, 330, 60, 0]);
  const now = firstNight + draw.whole(0, 2 * 1440 - 1) * 60 + (draw.chance(0.1) ? draw.whole(0, 59) : 0);
  const plan = planFor(draw, now, minutesEast);
  const night = nightFor(draw, plan, now, minutesEast);
  const record = { format: 'stopgap.record', version: 1, planId: plan.id, events: night.events };
  return { plan, record, situation: situationFor(draw, plan, night, now, timeText(draw, now, minutesEast)) };
};

export function* requests(count, seed) {
  const draw = drawing(seed);
  for (let made = 0; made < count; ++made) yield requestFrom(draw);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [count = 100, seed = 1] = process.argv.slice(2).map(word => Number.parseInt(word, 10));
  for (const request of requests(count, seed)) process.stdout.write(`${JSON.stringify(request)}\n`);
}
