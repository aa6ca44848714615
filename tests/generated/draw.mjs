// Numbers from a seed, the same on every machine, and the small choices made with them.
export const drawing = seed => {
  let state = (seed * 2654435761) >>> 0;
  const next = () => {
    state = (state + 0x6D2B79F5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const draw = {
    share: next,
    whole: (lowest, highest) => lowest + Math.floor(next() * (highest - lowest + 1)),
    chance: share => next() < share,
    pick: list => list[Math.floor(next() * list.length)],
    shuffled: list => list.map(item => [next(), item]).sort((a, b) => a[0] - b[0]).map(([, item]) => item),
  };
  return draw;
};

export const toTenth = value => Math.round(value * 10) / 10;
export const toHundredth = value => Math.round(value * 100) / 100;

const two = count => String(count).padStart(2, '0');
export const dayText = seconds => new Date(seconds * 1000).toISOString().slice(0, 10);
// UTC is written both ways it may be written.
export const timeText = (draw, seconds, minutesEast) => {
  const local = new Date((seconds + minutesEast * 60) * 1000).toISOString().slice(0, 19);
  if (minutesEast === 0) return local + draw.pick(['Z', '+00:00']);
  const size = Math.abs(minutesEast);
  return `${local}${minutesEast < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};
