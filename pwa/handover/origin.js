// Where something came from, in words: whose key signed it, and when; or that nobody's did.
import { clockOf, dayOf, stamp } from '../times.js';

export const groups = fingerprint => fingerprint.match(/.{4}/g).join(' ');

export const originWords = (signed, words, day) => {
  if (!signed) return words('bring-unsigned');
  // On the clock of this place.
  const here = stamp(new Date(signed.at));
  const when = words('bring-when', { day: day(dayOf(here)), clock: clockOf(here) }), key = groups(signed.key);
  return signed.from ? words('bring-signed', { from: signed.from, when, key }) : words('bring-signed-unnamed', { when, key });
};
