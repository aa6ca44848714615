// Moments as text. No function here reads the clock: app.js does, and hands the moment over.

const two = value => String(value).padStart(2, '0');

// RFC 3339 with the offset of this place: the offset is what gives the core the local time of day.
export const stamp = moment => {
  const ahead = -moment.getTimezoneOffset();
  const size = Math.abs(ahead);
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}T${two(moment.getHours())}:${two(moment.getMinutes())}:${two(moment.getSeconds())}`
    + `${ahead < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};

export const clockOf = text => text.slice(11, 16);
export const dayOf = text => text.slice(0, 10);

// On the night on which clocks are set back an hour is shown twice: the second of two such moments, or null.
const shownAgain = moment => {
  const again = new Date(moment.getTime() + 3600000);
  return clockOf(stamp(again)) === clockOf(stamp(moment)) ? again : null;
};

// Four typed figures as the latest moment that has shown them on this clock, or null where no clock shows them.
export const lastTimeAt = (digits, now) => {
  if (!/^([01][0-9]|2[0-3])[0-5][0-9]$/.test(digits)) return null;
  const moment = new Date(now);
  moment.setHours(+digits.slice(0, 2), +digits.slice(2), 0, 0);
  if (moment > now) moment.setDate(moment.getDate() - 1);
  const again = shownAgain(moment);
  return again && again <= now ? again : moment;
};

// The same figures as the next moment that will show them.
export const nextTimeAt = (digits, now) => {
  const moment = lastTimeAt(digits, now);
  if (!moment) return null;
  const again = shownAgain(moment);
  if (again > now) return again;
  moment.setDate(moment.getDate() + 1);
  return moment;
};

// Minutes after which the danger signs are asked again: as long as the core lets a glucose reading stand.
export const signsLast = 15;

export const order = (a, b) => Date.parse(a) - Date.parse(b);
// What follows on something recorded is not before it, whatever a clock says that was set meanwhile: a hold would end too soon.
export const notBefore = (first, now) => (first && order(first, now) > 0 ? first : now);
export const minutesUntil = (text, now) => Math.ceil((Date.parse(text) - now) / 60000);

// At night the page is dark: from 21:00 to 07:00 by this clock.
export const isNight = clock => clock >= '21:00' || clock < '07:00';

// A quarter of an hour begun counts.
export const quartersUntil = (text, now) => Math.ceil((Date.parse(text) - now) / 900000);
// The hours until something expected, as the core takes them. Never none: what is late is still expected.
export const hoursUntil = (text, now) => String(Math.max(1, quartersUntil(text, now)) / 4);

// How late a look is, in the unit a person would say it in.
export const late = minutes => (minutes < 120 ? { number: String(minutes), unit: 'minutes' } : { number: String(Math.floor(minutes / 60)), unit: 'hours' });

// A span of an hour and more, as a person would say it; shorter ones are minutes.
export const inHours = minutes => (minutes < 60 ? null : { hours: String(Math.floor(minutes / 60)), minutes: String(minutes % 60) });
