// What the core answered, told by the clock of this phone. The core knows one offset, that of the moment it was asked at. On the night on
// which clocks are set, and in a page that was carried to another zone, a time is told as the clock shows it then: an alarm would ring an
// hour late, with no basal until it does.
import { clockOf, stamp } from './times.js';

const ofWall = text => Date.parse(`${text.slice(0, 16)}:00Z`);
const setOn = (clock, later) => new Date(Date.parse(`2000-01-01T${clock}:00Z`) + later).toISOString().slice(11, 16);
const moments = ['at', 'due', 'until', 'since'];
const dated = /^\d{4}-\d\d-\d\dT/;
// A clock time that stands alone is within half a day of the answer's first look.
const nearest = (clock, first) => {
  const moment = new Date(`${first.slice(0, 11)}${clock}:00${first.endsWith('Z') ? 'Z' : first.slice(-6)}`);
  const days = Math.round((Date.parse(first) - moment) / 86400000);
  return stamp(new Date(moment.getTime() + days * 86400000));
};
const retold = value => {
  if (!value || typeof value !== 'object') return value;
  for (const entry of Object.values(value)) retold(entry);
  if (!/^\d\d:\d\d$/.test(value.clock ?? '')) return value;
  for (const name of moments) {
    if (!dated.test(value[name] ?? '')) continue;
    const here = stamp(new Date(value[name]));
    value.clock = setOn(value.clock, ofWall(here) - ofWall(value[name]));
    value[name] = here;
    break;
  }
  return value;
};
export const onThisClock = answer => {
  const first = answer.looks?.[0]?.at ?? answer.looks?.[0]?.due;
  for (const { slots } of first && Array.isArray(answer.steps) ? answer.steps : [])
    for (const name of ['at', 'until']) if (/^\d\d:\d\d$/.test(slots?.[name] ?? '')) slots[name] = clockOf(nearest(slots[name], first));
  return retold(answer);
};
