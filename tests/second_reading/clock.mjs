// Times as an answer tells them: on the clock of the situation, holds and waits in whole minutes, rounded up.
import { offsetOf } from './record.mjs';

const two = count => String(count).padStart(2, '0');

export const upToMinute = seconds => Math.ceil(seconds / 60) * 60;

export const clockAt = (seconds, now) => {
  const minutes = Math.floor((seconds + offsetOf(now)) / 60);
  const ofDay = ((minutes % 1440) + 1440) % 1440;
  return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
};
