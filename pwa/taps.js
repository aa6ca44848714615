// A tap belongs to the page the person saw. The second tap of a double tap, and the tap of somebody who thought the first was lost,
// would land on whatever comes under the finger next: an answer nobody read the question of. Keys are typed fast and may repeat.
// Both numbers are ours: nobody reads a page and taps on it in so many milliseconds, and a finger hits the same spot to so many pixels.
const settles = 350;
const finger = 48;

// The clock of the taps themselves, which goes on while the page is busy.
const tapClock = () => new Event('drawn').timeStamp;
let drawnAt = -Infinity;
let last = null;   // of the taps that counted

export const pageDrawn = () => { drawnAt = tapClock(); };

// A keyboard's press and a script's have no place. A telephone is called by any tap.
const wasMeantForThePageBefore = tap => tap.detail > 0 && last && last.at < drawnAt && tap.timeStamp - drawnAt < settles
  && Math.hypot(tap.clientX - last.x, tap.clientY - last.y) < finger && !tap.target.closest('a[href^="tel:"]');

export const onTap = tap => {
  if (!(tap.detail > 1 && !tap.target.closest('.pad')) && !wasMeantForThePageBefore(tap)) {
    last = { x: tap.clientX, y: tap.clientY, at: tap.timeStamp };
    return;
  }
  tap.stopPropagation();
  tap.preventDefault();
};
